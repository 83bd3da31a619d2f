/**
 * Where a wire or a ball comes to rest, found by searching: nothing of the equations in src/thread/contact.ts is used.
 *
 * A flank is swept by straight lines, one in each axial plane, and the distance of a straight line from another, or
 * from a point, is elementary. The least of these distances over all planes is what the flank leaves room for. The
 * wire is pushed in until it just touches both flanks, and tipped until it can be pushed in furthest.
 */

export interface Groove {
  readonly pitchDiameter: number;
  readonly pitch: number;
  readonly lead: number;
  /** Flank angles in degrees. */
  readonly upper: number;
  readonly lower: number;
  /** 1 for a screw, whose groove opens outwards; -1 for a nut. */
  readonly opens: 1 | -1;
}

export interface Least {
  readonly at: number;
  readonly value: number;
}

type Point = readonly [number, number, number];

const cross = (a: Point, b: Point): Point => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];
const dot = (a: Point, b: Point) => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const slopeOf = (degrees: number) => Math.tan((degrees * Math.PI) / 180);

/** A point on the pitch line and the direction of the flank's straight line in the axial plane at angle `f`. */
function generator(groove: Groove, side: 1 | -1, f: number): readonly [Point, Point] {
  const r = groove.pitchDiameter / 2;
  const upper = slopeOf(groove.upper);
  const lower = slopeOf(groove.lower);
  // The groove is half a pitch wide at the pitch line; its apex lies in the plane z = 0 at f = 0.
  const width = (groove.pitch / 2) * ((side === 1 ? upper : lower) / (upper + lower));
  const z = (groove.lead * f) / (2 * Math.PI) + side * width;
  const run = groove.opens * side * (side === 1 ? upper : lower);
  return [
    [r * Math.cos(f), r * Math.sin(f), z],
    [Math.cos(f), Math.sin(f), run],
  ];
}

/** Least value by golden section, and where. */
function least(f: (x: number) => number, low: number, high: number, width: number): Least {
  const golden = (Math.sqrt(5) - 1) / 2;
  let [a, b] = [low, high];
  let [c, d] = [b - golden * (b - a), a + golden * (b - a)];
  let [fc, fd] = [f(c), f(d)];
  while (b - a > width) {
    if (fc < fd) {
      [b, d, fd] = [d, c, fc];
      c = b - golden * (b - a);
      fc = f(c);
    } else {
      [a, c, fc] = [c, d, fd];
      d = a + golden * (b - a);
      fd = f(d);
    }
  }
  return fc < fd ? { at: c, value: fc } : { at: d, value: fd };
}

/** Least value where there may be several valleys: each that a row of places shows is searched. */
function leastOfAll(f: (x: number) => number, low: number, high: number, width: number): Least {
  const places = 24;
  const step = (high - low) / places;
  const values = Array.from({ length: places + 1 }, (_, i) => f(low + i * step));
  let best: Least = { at: low, value: Infinity };
  values.forEach((value, i) => {
    if (value > (values[i - 1] ?? Infinity) || value > (values[i + 1] ?? Infinity)) return;
    const middle = low + i * step;
    const valley = least(f, Math.max(low, middle - step), Math.min(high, middle + step), width);
    if (valley.value < best.value) best = valley;
  });
  return best;
}

/** Zero by secants. */
function zero(f: (x: number) => number, first: number, second: number): number {
  let [x0, x1] = [first, second];
  let [f0, f1] = [f(x0), f(x1)];
  for (let step = 0; step < 30 && f1 !== f0 && Math.abs(x1 - x0) > 1e-13; step++) {
    const x2 = x1 - (f1 * (x1 - x0)) / (f1 - f0);
    [x0, f0, x1] = [x1, f1, x2];
    f1 = f(x1);
  }
  return x1;
}

/** How far from 0 something holds, by halving. */
function lastOf(holds: (x: number) => boolean, most: number): number {
  let [low, high] = [0, most];
  while (high - low > 1e-12) {
    const middle = (low + high) / 2;
    if (holds(middle)) low = middle;
    else high = middle;
  }
  return low;
}

/** As far around as a flank that ends at this radius can be touched by what lies at the radius R. */
const roundTo = (radius: number, R: number) => Math.acos(Math.min(1, R / radius));
/** As a wire on the pitch line is within a quarter of a pitch of it. */
const quarter = ({ pitchDiameter, pitch }: Groove) =>
  roundTo((pitchDiameter + pitch / 2) / 2, pitchDiameter / 2);

/** How far a line of the flank is from the wire's axis, through (R, 0, z) and tipped by `tip`; below 0 past it. */
function gapToWire(groove: Groove, side: 1 | -1, R: number, z: number, tip: number, f: number): number {
  const axis: Point = [0, Math.cos(tip), Math.sin(tip)];
  const [point, direction] = generator(groove, side, f);
  const square = cross(direction, axis);
  const gap: Point = [point[0] - R, point[1], point[2] - z];
  // The common perpendicular is turned to point from the middle of the groove to this flank.
  return (dot(gap, square) * side * Math.sign(square[2])) / Math.hypot(...square);
}

function gapToBall(groove: Groove, side: 1 | -1, R: number, z: number, f: number): number {
  const [point, direction] = generator(groove, side, f);
  const gap: Point = [point[0] - R, point[1], point[2] - z];
  return Math.hypot(...cross(gap, direction)) / Math.hypot(...direction);
}

type Room = (side: 1 | -1, R: number, z: number) => Least;

/** Place at which both flanks leave just `half`. */
function seated(room: Room, half: number, start: number): { R: number; z: number } {
  const step = 0.01 * half;
  const middle = (R: number) => zero((z) => room(1, R, z).value - room(-1, R, z).value, -step, step);
  const R = zero((at) => room(1, at, middle(at)).value - half, start, start + step);
  return { R, z: middle(R) };
}

/** Where something rests, and round where each flank is touched. */
export interface Seated {
  readonly R: number;
  readonly z: number;
  readonly tip: number;
  readonly upperAt: number;
  readonly lowerAt: number;
}

/** A wire of this diameter at rest; `start` is a first guess of its distance from the thread axis. */
export function searchedWire(groove: Groove, diameter: number, start: number): Seated {
  const helix = Math.atan(groove.lead / (Math.PI * groove.pitchDiameter));
  const reach = quarter(groove);
  const room =
    (tip: number): Room =>
    (side, R, z) =>
      least((f) => gapToWire(groove, side, R, z, tip, f), -reach, reach, 1e-8);
  const seat = (tip: number) => seated(room(tip), diameter / 2, start);
  const tip = least((at) => seat(at).R, helix - 0.25, helix + 0.1, 1e-7).at;
  const { R, z } = seat(tip);
  return { R, z, tip, upperAt: room(tip)(1, R, z).at, lowerAt: room(tip)(-1, R, z).at };
}

/** How far from the thread axis the flank's line at the angle `f` comes nearest to the wire: foot of the common perpendicular. */
function touchedBy(groove: Groove, side: 1 | -1, R: number, z: number, tip: number, f: number): number {
  const axis: Point = [0, Math.cos(tip), Math.sin(tip)];
  const [point, direction] = generator(groove, side, f);
  const gap: Point = [R - point[0], -point[1], z - point[2]];
  const lean = dot(direction, axis);
  const along = (dot(gap, direction) - lean * dot(gap, axis)) / (dot(direction, direction) - lean * lean);
  return groove.pitchDiameter / 2 + along;
}

/** The greater of the radii at which a wire at rest touches. */
export function outermostTouch(groove: Groove, { R, z, tip, upperAt, lowerAt }: Seated): number {
  return Math.max(touchedBy(groove, 1, R, z, tip, upperAt), touchedBy(groove, -1, R, z, tip, lowerAt));
}

/**
 * Distance from the axis of a wire at rest that may touch anywhere along flanks that end at the radius `ends`, however
 * many valleys the gap has.
 */
export function searchedWireAnywhere(groove: Groove, diameter: number, start: number, ends: number): number {
  const half = diameter / 2;
  /** How far the wire can go towards one flank, along the thread axis. */
  const free = (side: 1 | -1, R: number, tip: number) => {
    // As the gap to a line falls evenly with the distance gone, two places tell where it is half the wire.
    const at = (f: number) => {
      const here = gapToWire(groove, side, R, 0, tip, f);
      return (here - half) / (here - gapToWire(groove, side, R, side, tip, f));
    };
    const inside = (f: number) => touchedBy(groove, side, R, side * at(f), tip, f) < ends;
    const end = (way: 1 | -1) => way * lastOf((f) => inside(way * f), Math.min(1.5, 1.6 * roundTo(ends, R)));
    return leastOfAll(at, end(-1), end(1), 1e-8).value;
  };
  const room = (R: number, tip: number) => free(1, R, tip) + free(-1, R, tip);
  // About square to the radius through the wire's middle, which lies further out than the pitch line.
  const climb = Math.atan(groove.lead / (2 * Math.PI * start));
  const most = (R: number) => -least((tip) => -room(R, tip), climb - 0.3, climb + 0.3, 1e-10).value;
  return zero(most, start, start + 0.01 * half);
}

/** A ball of this diameter at rest; `start` is a first guess of the distance of its centre from the thread axis. */
export function searchedBall(groove: Groove, diameter: number, start: number): Seated {
  const reach = quarter(groove);
  const room: Room = (side, R, z) => least((f) => gapToBall(groove, side, R, z, f), -reach, reach, 1e-8);
  const { R, z } = seated(room, diameter / 2, start);
  return { R, z, tip: 0, upperAt: room(1, R, z).at, lowerAt: room(-1, R, z).at };
}
