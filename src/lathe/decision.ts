/**
 * Is a size within its limits, when the measurement itself is uncertain by U?
 *
 *        out   | can't tell |      in      | can't tell |   out
 *     ---------|-----|------|--------------|------|-----|---------
 *             L-U    L     L+U            H-U     H    H+U
 *
 * The uncertainty counts against whoever makes the claim: "in" is proved, and so is "out". Between the two nothing is.
 * Source: ISO 14253-1, decision rules for proving conformity or nonconformity; its rule with the expanded uncertainty U.
 */
import { requireWithin } from "./bounds.ts";

export type Verdict = "in" | "out" | "can't be told";

/**
 * @param uncertainty expanded uncertainty U, 0 or more
 * @param lower smallest size allowed, if there is one; @param upper largest
 * @throws RangeError if there is no limit, or the lower is above the upper
 */
export function verdict(value: number, uncertainty: number, lower?: number, upper?: number): Verdict {
  requireWithin("uncertainty", uncertainty, 0);
  if (lower === undefined && upper === undefined) {
    throw new RangeError("lower or upper must be given, got neither");
  }
  const [low, high] = [lower ?? -Infinity, upper ?? Infinity];
  if (low > high) throw new RangeError(`lower must not be above upper ${high}, got ${low}`);
  // A size just on a bound must not be told by rounding.
  const dust = 1e-12 * Math.abs(value);
  if (value < low - uncertainty - dust || value > high + uncertainty + dust) return "out";
  const proved = value >= low + uncertainty - dust && value <= high - uncertainty + dust;
  return proved ? "in" : "can't be told";
}
