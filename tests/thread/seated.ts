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

/** Least value by golden section. */
function least(f: (x: number) => number, low: number, high: number, width: number): number {
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
  return Math.min(fc, fd);
}

/** Zero by secants. */
function zero(f: (x: number) => number, first: number, second: number): number {
  let [x0, x1] = [first, second];
  let [f0, f1] = [f(x0), f(x1)];
  for (let step = 0; step < 30 && f1 !== f0 && Math.abs(x1 - x0) > 1e-15; step++) {
    const x2 = x1 - (f1 * (x1 - x0)) / (f1 - f0);
    [x0, f0, x1] = [x1, f1, x2];
    f1 = f(x1);
  }
  return x1;
}

/** As far around as a wire on the pitch line is within a quarter of a pitch of it: beyond, there is no flank. */
const reachOf = ({ pitchDiameter, pitch }: Groove) => Math.acos(pitchDiameter / (pitchDiameter + pitch / 2));

/** How far a flank is from the wire's axis, through (R, 0, z) and tipped by `tip`; below 0 past it. */
function roomForWire(groove: Groove, side: 1 | -1, R: number, z: number, tip: number): number {
  const axis: Point = [0, Math.cos(tip), Math.sin(tip)];
  const reach = reachOf(groove);
  const gapAt = (f: number) => {
    const [point, direction] = generator(groove, side, f);
    const square = cross(direction, axis);
    const gap: Point = [point[0] - R, point[1], point[2] - z];
    // The common perpendicular is turned to point from the middle of the groove to this flank.
    return (dot(gap, square) * side * Math.sign(square[2])) / Math.hypot(...square);
  };
  return least(gapAt, -reach, reach, 1e-8);
}

function roomForBall(groove: Groove, side: 1 | -1, R: number, z: number): number {
  const reach = reachOf(groove);
  const gapAt = (f: number) => {
    const [point, direction] = generator(groove, side, f);
    const gap: Point = [point[0] - R, point[1], point[2] - z];
    return Math.hypot(...cross(gap, direction)) / Math.hypot(...direction);
  };
  return least(gapAt, -reach, reach, 1e-8);
}

/** Distance from the axis at which both flanks leave just `half`. */
function seated(room: (side: 1 | -1, R: number, z: number) => number, half: number, start: number): number {
  const step = 0.01 * half;
  const middle = (R: number) => zero((z) => room(1, R, z) - room(-1, R, z), -step, step);
  return zero((R) => room(1, R, middle(R)) - half, start, start + step);
}

/** From the thread axis to the axis of a wire of this diameter at rest; `start` is a first guess. */
export function searchedWire(groove: Groove, diameter: number, start: number): number {
  const helix = Math.atan(groove.lead / (Math.PI * groove.pitchDiameter));
  const room = (tip: number) =>
    seated((side, R, z) => roomForWire(groove, side, R, z, tip), diameter / 2, start);
  return least(room, helix - 0.25, helix + 0.1, 1e-7);
}

/** From the thread axis to the centre of a ball of this diameter at rest; `start` is a first guess. */
export function searchedBall(groove: Groove, diameter: number, start: number): number {
  return seated((side, R, z) => roomForBall(groove, side, R, z), diameter / 2, start);
}
