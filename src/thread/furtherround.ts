/**
 * A straight wire that touches a nearly square flank further round than where it would rest.
 *
 * Seen along the wire a flank curves away from it, but a helix also twists: beside a flank within a few degrees of
 * square, on a steep lead, the twist wins before the flank ends, and the wire is held off by what it meets there.
 *
 *   flanks     z = k f + (r - a) T1  and  z = k f - (r - a) T2,  up to the radius `reach`
 *   wire       through (R, 0, z), tipped so that it climbs t in 1 along y; half its diameter is h
 *
 * The flank's straight line at the angle f stays h off the wire when
 *
 *   z <= k f - a T1 + R q - h sqrt(q^2 + t^2 + 1),  q =  T1 / cos f - t tan f
 *   z >= k f + a T2 + R q + h sqrt(q^2 + t^2 + 1),  q = -T2 / cos f - t tan f
 *
 * and is then touched at the radius (R -/+ h q / sqrt(q^2 + t^2 + 1)) / cos f. The least upper bound less the greatest lower bound
 * is the room in z; the wire rests where tipping can no more than make it nothing. That room is concave in t.
 *
 * Source: geometry; compared with a numerical search in the tests.
 */

export interface Lay {
  readonly apex: number;
  readonly firstSlope: number;
  readonly secondSlope: number;
  readonly lead: number;
  readonly diameter: number;
  /** Radius at which the flanks end. */
  readonly reach: number;
}

/** Places along the flank that are looked at before the lowest are narrowed down. */
const PLACES = 48;
const GOLDEN = (Math.sqrt(5) - 1) / 2;
const MOST_STEPS = 40;

/**
 * True where the twist may win before the flank ends. Along the wire the gap to the steeper flank is near
 * R (T f^2 / 2 - t f^3 / 3), so it closes at f = 3 T / (2 t). On 349 of 6,000 drawn threads a wire was held off: all had that
 * place at less than 0.95 of the angle at which the flank ends; 1.15 of it is asked for.
 *
 * @param contact radius at which the steeper flank is touched without it
 */
export function mayTouchFurther(lay: Lay, radius: number, contact: number): boolean {
  const climb = lay.lead / (2 * Math.PI * radius);
  const steeper = Math.min(lay.firstSlope, lay.secondSlope);
  // No flank goes further round than a quarter turn: most threads need no more than this.
  if (1.5 * steeper >= 1.15 * climb * (Math.PI / 2)) return false;
  const round = Math.acos(Math.min(1, Math.min(radius, contact) / lay.reach));
  return 1.5 * steeper < 1.15 * climb * round;
}

/** Distance of the wire's axis from the thread axis at rest, starting from where it would rest without such a touch. */
export function restFurther(lay: Lay, radius: number): number {
  const step = 1e-3 * lay.diameter;
  let at = radius;
  let room = mostRoom(lay, at);
  // The bounds along the flank can only lift it.
  if (room >= 0) return radius;
  let next = at + step;
  for (let count = 0; count < MOST_STEPS; count++) {
    const there = mostRoom(lay, next);
    const rate = (there - room) / (next - at);
    const change = there / rate;
    at = next;
    room = there;
    next = at - change;
    if (!(Math.abs(change) > 1e-14 * at)) break;
  }
  return Math.max(radius, next);
}

/** The most room in z that any tip gives. */
function mostRoom(lay: Lay, R: number): number {
  const climb = lay.lead / (2 * Math.PI * R);
  return -lowest((t) => -roomAt(lay, R, t), climb - 0.5, climb + 0.5, 1e-12);
}

function roomAt(lay: Lay, R: number, t: number): number {
  const { apex: a, firstSlope: T1, secondSlope: T2, lead, diameter } = lay;
  const k = lead / (2 * Math.PI);
  const h = diameter / 2;
  const thick = t * t + 1;
  const above = (f: number) => {
    const q = T1 / Math.cos(f) - t * Math.tan(f);
    return k * f - a * T1 + R * q - h * Math.sqrt(q * q + thick);
  };
  const below = (f: number) => {
    const q = -T2 / Math.cos(f) - t * Math.tan(f);
    return -(k * f + a * T2 + R * q + h * Math.sqrt(q * q + thick));
  };
  return leastAlong(above, endsOf(lay, R, t, T1)) + leastAlong(below, endsOf(lay, R, -t, T2));
}

/** The angles at which the place touched leaves the first flank; the second is the first seen in a mirror. */
function endsOf({ diameter, reach }: Lay, R: number, t: number, slope: number): readonly [number, number] {
  const h = diameter / 2;
  const end = (side: 1 | -1) => {
    let f = side * Math.acos(Math.min(1, R / reach));
    // The wire's thickness moves the place by little, so that going round a few times settles it.
    for (let count = 0; count < 12; count++) {
      const q = slope / Math.cos(f) - t * Math.tan(f);
      const offset = (h * q) / Math.sqrt(q * q + t * t + 1);
      f = side * Math.acos(Math.min(1, (R - offset) / reach));
    }
    return f;
  };
  return [end(-1), end(1)];
}

/** Least value between two places, wherever its valleys are. */
function leastAlong(f: (x: number) => number, [from, to]: readonly [number, number]): number {
  const step = (to - from) / PLACES;
  let least = Math.min(f(from), f(to));
  let [left, middle] = [f(from), f(from + step)];
  for (let place = 2; place <= PLACES; place++) {
    const right = f(from + place * step);
    if (middle <= left && middle <= right) {
      least = Math.min(least, lowest(f, from + (place - 2) * step, from + place * step, 1e-9));
    }
    [left, middle] = [middle, right];
  }
  return least;
}

/** Least value of a function with one valley, by golden section. */
function lowest(f: (x: number) => number, from: number, to: number, width: number): number {
  let [low, high] = [from, to];
  let [c, d] = [high - GOLDEN * (high - low), low + GOLDEN * (high - low)];
  let [fc, fd] = [f(c), f(d)];
  while (high - low > width) {
    if (fc < fd) {
      [high, d, fd] = [d, c, fc];
      c = high - GOLDEN * (high - low);
      fc = f(c);
    } else {
      [low, c, fc] = [c, d, fd];
      d = low + GOLDEN * (high - low);
      fd = f(d);
    }
  }
  return Math.min(fc, fd);
}
