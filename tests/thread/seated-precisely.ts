/**
 * The search of seated.ts carried on in decimals of 24 digits, from the place that it found: the least distance of the
 * flank's straight lines from the wire or ball, by parabolas, and the place where both flanks leave just half its diameter, by
 * secants. Still no equation of src/thread/contact.ts is used.
 */
import { Decimal } from "decimal.js";
import type { Groove, Seated } from "./seated.ts";

const D = Decimal.clone({ precision: 24 });
type Decimal24 = InstanceType<typeof Decimal>;
type Point = readonly [Decimal24, Decimal24, Decimal24];
/** A point on it and its direction. */
type Line = readonly [Point, Point];

const pi = D.acos(-1);

const cross = (a: Point, b: Point): Point => [
  a[1].times(b[2]).minus(a[2].times(b[1])),
  a[2].times(b[0]).minus(a[0].times(b[2])),
  a[0].times(b[1]).minus(a[1].times(b[0])),
];
const dot = (a: Point, b: Point) => a[0].times(b[0]).plus(a[1].times(b[1])).plus(a[2].times(b[2]));
const long = (a: Point) => dot(a, a).sqrt();

/** Straight lines of one flank: a point on the pitch line and the direction, for an angle round the axis. */
function linesOf(groove: Groove, side: 1 | -1): (f: Decimal24) => Line {
  const slope = (degrees: number) => D.tan(pi.times(degrees).div(180));
  const [upper, lower] = [slope(groove.upper), slope(groove.lower)];
  const own = side === 1 ? upper : lower;
  const r = new D(groove.pitchDiameter).div(2);
  const width = new D(groove.pitch).div(2).times(own).div(upper.plus(lower)).times(side);
  const rise = new D(groove.lead).div(pi.times(2));
  const run = own.times(side * groove.opens);
  return (f) => {
    const [c, s] = [D.cos(f), D.sin(f)];
    return [
      [r.times(c), r.times(s), rise.times(f).plus(width)],
      [c, s, run],
    ];
  };
}

/**
 * Least value near a place that is known to some 1e-8: a parabola through three points, then its lowest point. What
 * belongs to a place is reckoned once for the three.
 */
function leastNear<At>(
  place: (x: Decimal24) => At,
  at: number,
  step: number,
): (f: (at: At) => Decimal24) => Decimal24 {
  const h = new D(step);
  const middle = new D(at);
  const [a, b, c] = [place(middle.minus(h)), place(middle), place(middle.plus(h))];
  return (f) => {
    const [left, centre, right] = [f(a), f(b), f(c)];
    const bend = left.plus(right).minus(centre.times(2));
    return f(place(middle.plus(left.minus(right).times(h).div(bend.times(2)))));
  };
}

/** Zero near a place that is known to some 1e-8, by secants. */
function zeroNear(f: (x: Decimal24) => Decimal24, at: Decimal24): Decimal24 {
  let [x0, x1] = [at, at.plus(1e-8)];
  let [f0, f1] = [f(x0), f(x1)];
  for (let step = 0; step < 4 && f1.abs().gt(1e-14); step++) {
    const x2 = x1.minus(f1.times(x1.minus(x0)).div(f1.minus(f0)));
    [x0, f0, x1] = [x1, f1, x2];
    f1 = f(x1);
  }
  return x1;
}

function rest(
  room: (side: 1 | -1, R: Decimal24, z: Decimal24) => Decimal24,
  diameter: number,
  found: Seated,
) {
  const half = new D(diameter).div(2);
  let z = new D(found.z);
  return zeroNear((R) => {
    z = zeroNear((at) => room(1, R, at).minus(room(-1, R, at)), z);
    return room(1, R, z).minus(half);
  }, new D(found.R));
}

/** The least gap along each flank, by what the gap of one of its lines is. */
function leastOnFlanks(groove: Groove, found: Seated) {
  const least = {
    1: leastNear(linesOf(groove, 1), found.upperAt, 1e-5),
    [-1]: leastNear(linesOf(groove, -1), found.lowerAt, 1e-5),
  } as const;
  return (side: 1 | -1, gap: (line: Line) => Decimal24) => least[side](gap);
}

/** Distance of a wire's axis from the thread axis. */
export function preciseWire(groove: Groove, diameter: number, found: Seated): number {
  const least = leastOnFlanks(groove, found);
  const byTip = (axis: Point) => {
    const room = (side: 1 | -1, R: Decimal24, z: Decimal24) =>
      least(side, ([point, direction]) => {
        const square = cross(direction, axis);
        const gap: Point = [point[0].minus(R), point[1], point[2].minus(z)];
        const facing = square[2].isNegative() ? -side : side;
        return dot(gap, square).times(facing).div(long(square));
      });
    return rest(room, diameter, found);
  };
  const axisAt = (tip: Decimal24): Point => [new D(0), D.cos(tip), D.sin(tip)];
  return leastNear(axisAt, found.tip, 1e-4)(byTip).toNumber();
}

/** Distance of a ball's centre from the thread axis. */
export function preciseBall(groove: Groove, diameter: number, found: Seated): number {
  const least = leastOnFlanks(groove, found);
  const room = (side: 1 | -1, R: Decimal24, z: Decimal24) =>
    least(side, ([point, direction]) => {
      const gap: Point = [point[0].minus(R), point[1], point[2].minus(z)];
      return long(cross(gap, direction)).div(long(direction));
    });
  return rest(room, diameter, found).toNumber();
}
