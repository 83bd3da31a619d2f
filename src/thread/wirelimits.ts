/**
 * Which wires serve to measure a groove over, or which balls in a nut: the best, the smallest, the largest, the nearest at hand.
 *
 *      crest F           l, t  flank angles; A = l + t; H = P / (tan l + tan t), the sharp height
 *      __     __         L     from the apex along a flank to where a wire w touches: (w/2) cot(A/2)
 *        \ O /           K     from the apex to the wire's middle, per w/2: cos((t - l)/2) / sin(A/2)
 *         \_/   root R
 *
 * Lengths in any one unit, angles in degrees. Crest and root may be any truncation. Source: geometry; for equal flanks also
 * Handbook H28, ASME B1.5.
 */
import { NothingFound } from "./failures.ts";
import { cos, sin, tan } from "./form.ts";
import { centrePerDiameter, requireNotNegative, requirePositive, sharpHeight, type Vee } from "./groove.ts";
import { overWires, wiresOf } from "./wires.ts";

/** What a crest or root is: the width of a flat or the radius of a round. */
export type Crest = "flat" | "radius";

const MOST_STEPS = 60;

/**
 * Wire with which an error of the included angle matters least. On equal flanks it touches at the pitch line:
 * (P/2) sec(A/2). On unequal flanks no wire touches both there; an error shared by both flanks cancels for
 * 2 P (sec^2 l + sec^2 t) sin^2(A/2) / ((tan l + tan t)^2 (cos l + cos t)).
 */
export function bestWire({ pitch, first, second }: Vee): number {
  requirePositive("pitch", pitch);
  const half = (first + second) / 2;
  if (first === second) return pitch / (2 * cos(half));
  const secants = 1 / cos(first) ** 2 + 1 / cos(second) ** 2;
  const tangents = tan(first) + tan(second);
  return (2 * pitch * secants * sin(half) ** 2) / (tangents ** 2 * (cos(first) + cos(second)));
}

/**
 * The same on a helix: a little smaller, as the groove is narrower square to itself.
 *
 * @param pitchDiameter above 0
 * @param lead 0 or more
 * @throws RangeError outside those ranges, or when the lead is too steep
 */
export function bestWireOnHelix(vee: Vee, pitchDiameter: number, lead: number): number {
  requirePositive("pitch_dia", pitchDiameter);
  requireNotNegative("lead", lead);
  if (lead === 0) return bestWire(vee);
  return vee.first === vee.second
    ? touchingAtPitchLine(vee, pitchDiameter, lead)
    : leastTouchedByAngle(vee, pitchDiameter, lead);
}

/** A ball or wire on the pitch cylinder: its share s of the width and the turn of its centre use up P/4. */
function touchingAtPitchLine(vee: Vee, pitchDiameter: number, lead: number): number {
  const k = lead / (2 * Math.PI);
  const r = pitchDiameter / 2;
  const slope = tan(vee.first);
  const climb = k / r;
  let s = vee.pitch / 4;
  for (let step = 0; step < MOST_STEPS; step++) {
    const next = vee.pitch / 4 - k * Math.atan2(s * climb, r + s * slope);
    const change = Math.abs(next - s);
    s = next;
    if (change <= 1e-16 * vee.pitch) break;
  }
  if (!(s > 0)) throw new RangeError(`lead must be less steep for a wire at the pitch line, got ${lead}`);
  return 2 * s * Math.sqrt(1 + slope * slope + climb * climb);
}

/** Wire over which two included angles, a little less and a little more, read alike. */
function leastTouchedByAngle(vee: Vee, pitchDiameter: number, lead: number): number {
  const opened = (by: number): Vee => ({ ...vee, first: vee.first + by, second: vee.second + by });
  const [less, more] = [opened(-0.01), opened(0.01)];
  const change = (w: number) =>
    overWires(pitchDiameter, wiresOf(more, w, lead)) - overWires(pitchDiameter, wiresOf(less, w, lead));
  let at = bestWire(vee);
  let here = change(at);
  let next = at * 0.99;
  for (let step = 0; step < MOST_STEPS && here !== 0; step++) {
    const there = change(next);
    if (there === here) break;
    const after = next - (there * (next - at)) / (there - here);
    if (Math.abs(after - next) <= 1e-13 * at) return after;
    [at, here, next] = [next, there, after];
  }
  return at;
}

/**
 * Largest wire for a crest: it touches where the straight flank ends, first on the steeper one.
 * Equal flanks: flat F: (P - F) sec a; radius r: P sec a - 2 r.
 *
 * @param crest width of a flat crest or radius of a round one, 0 or more
 * @throws RangeError if the crest leaves no straight flank
 */
export function largestWire(vee: Vee, crest: number, shape: Crest): number {
  requireCrest(vee, crest, shape);
  const half = (vee.first + vee.second) / 2;
  const steeper = Math.min(vee.first, vee.second);
  const toSharp = sharpHeight(vee);
  // From the apex along the steeper flank to where it ends, as L = (w/2) cot(A/2).
  return shape === "flat"
    ? ((2 * toSharp * (vee.pitch - crest)) / vee.pitch / cos(steeper)) * tan(half)
    : (2 * toSharp * tan(half)) / cos(steeper) - 2 * crest;
}

/**
 * Smallest wire for a crest and root: the larger of the one flush with the crest and the one that just clears the root.
 *
 * @param root width of a flat root or radius of a round one, 0 or more
 * @param rootShape which of the two; as the crest when left out
 * @throws RangeError if the crest leaves no straight flank, or the root is below 0
 */
export function smallestWire(vee: Vee, crest: number, shape: Crest, root = 0, rootShape = shape): number {
  requireCrest(vee, crest, shape);
  requireNotNegative("root", root);
  const toMiddle = 2 * centrePerDiameter(vee);
  const toSharp = sharpHeight(vee);
  const toCrest =
    shape === "flat" ? (toSharp * (vee.pitch - crest)) / vee.pitch : toSharp - crest * (toMiddle - 1);
  const flush = (2 * toCrest) / (1 + toMiddle);
  const clear = rootShape === "flat" ? (2 * root * toSharp) / vee.pitch / (toMiddle - 1) : 2 * root;
  return Math.max(flush, clear);
}

function requireCrest(vee: Vee, crest: number, shape: Crest): void {
  requirePositive("pitch", vee.pitch);
  requireNotNegative("crest", crest);
  const half = (vee.first + vee.second) / 2;
  const steeper = Math.min(vee.first, vee.second);
  const bound = shape === "flat" ? vee.pitch : (sharpHeight(vee) * tan(half)) / cos(steeper);
  if (!(crest < bound)) {
    throw new RangeError(`crest must be less than ${Number(bound.toPrecision(7))}, got ${crest}`);
  }
}

/**
 * The usable wire nearest the best one; a tie goes to the larger.
 *
 * @param crest width or radius; P/8 when left out
 * @throws RangeError if a wire is not above 0, or as for `smallestWire`
 * @throws NothingFound if none is usable
 */
export function pickWire(
  vee: Vee,
  wires: readonly number[],
  crest = vee.pitch / 8,
  shape: Crest = "flat",
  root = 0,
  rootShape = shape,
): number {
  const best = bestWire(vee);
  const least = smallestWire(vee, crest, shape, root, rootShape);
  const most = largestWire(vee, crest, shape);
  // Two wires as far from the best, or a wire just at a bound, must not be told apart by rounding.
  const dust = 1e-9 * vee.pitch;
  let picked: number | undefined;
  for (const wire of wires) {
    requirePositive("wires", wire);
    if (wire < least - dust || wire > most + dust) continue;
    const nearer = picked === undefined ? Infinity : Math.abs(picked - best) - Math.abs(wire - best);
    if (nearer > dust || (nearer >= -dust && picked !== undefined && wire > picked)) picked = wire;
  }
  if (picked === undefined) {
    const shown = (value: number) => Number(value.toPrecision(6));
    throw new NothingFound(`none of the wires is from ${shown(least)} to ${shown(most)}`);
  }
  return picked;
}
