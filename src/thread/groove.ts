/**
 * The vee that a wire or a ball rests in: two straight flanks in the axial plane, with no root or crest of its own.
 *
 *      \           |           /      l, t  flank angles, from the line square to the axis
 *       \  l       |     t    /       P/2   width of the vee at the pitch diameter E
 *   -----\-------- P/2 ------/-----   E/2
 *         \        |        /
 *          \       |       /
 *           apex, P / (2 (tan l + tan t)) beyond the pitch line
 *
 * Lengths in any one unit, angles in degrees. Source: geometry.
 */
import { tan } from "./form.ts";

export interface Vee {
  readonly pitch: number;
  /** Flank angles; `first` + `second` is the included angle. */
  readonly first: number;
  readonly second: number;
}

/** How a reading takes account of the lead. */
export type Method = "exact" | "normal" | "plain";

/**
 * @param included included angle, above 0 and below 180
 * @param trailing one of two unequal flank angles, 0 to included; half the included angle when left out
 * @throws RangeError outside those ranges, or for a pitch that is not above 0
 */
export function veeOf(pitch: number, included: number, trailing?: number): Vee {
  requirePositive("pitch", pitch);
  requireIncluded(included);
  const second = trailing ?? included / 2;
  const first = included - second;
  if (!(second >= 0 && first >= 0)) {
    throw new RangeError(`trailing_flank must be from 0 to the included angle ${included}, got ${second}`);
  }
  if (!(first < 90 && second < 90)) {
    throw new RangeError(`both flanks must be below 90 degrees, got ${first} and ${second}`);
  }
  return { pitch, first, second };
}

/** Height of the sharp triangle, apex of the vee to sharp crest: P / (tan l + tan t). */
export function sharpHeight({ pitch, first, second }: Vee): number {
  return pitch / (tan(first) + tan(second));
}

/** @throws RangeError unless value is above 0 and finite */
export function requirePositive(name: string, value: number): void {
  if (!(value > 0 && value < Infinity)) throw new RangeError(`${name} must be greater than 0, got ${value}`);
}

/** @throws RangeError unless value is 0 or more and finite */
export function requireNotNegative(name: string, value: number): void {
  if (!(value >= 0 && value < Infinity)) throw new RangeError(`${name} must be 0 or more, got ${value}`);
}

/** @throws RangeError unless the angle is above 0 and below 180 degrees */
export function requireIncluded(included: number): void {
  if (!(included > 0 && included < 180)) {
    throw new RangeError(`included must be above 0 and below 180 degrees, got ${included}`);
  }
}

/**
 * How far from the apex of the vee, radially, a wire or ball has its centre when the lead is left out of account, per
 * unit of its diameter: cos((t - l)/2) / (2 sin((l + t)/2)), which is cosec(A/2)/2 for equal flanks.
 *
 * @param shrink 1 for the axial section; the cosine of the lead angle for the section square to the helix
 */
export function centrePerDiameter({ first, second }: Vee, shrink = 1): number {
  const l = Math.atan(tan(first) * shrink);
  const t = Math.atan(tan(second) * shrink);
  return Math.cos((t - l) / 2) / (2 * Math.sin((l + t) / 2));
}

/** Cosine of the lead angle at the pitch diameter. */
export function leadCosine(lead: number, pitchDiameter: number): number {
  return 1 / Math.hypot(1, lead / (Math.PI * pitchDiameter));
}
