/**
 * Depth after each pass, number of passes, and chip area of a pass.
 *
 * "area" gives every pass the same chip area; "even" the same depth. Depth is radial; lengths in any one unit, angles in
 * degrees. Source: common practice; the areas are geometry (chip-area.ts).
 */
import { ceilWhole, finite, requireAbove, requireWhole, requireWithin } from "./bounds.ts";
import { depthForArea, type Groove, grooveArea } from "./chip-area.ts";

export type Spread = "area" | "even";

/**
 * Cumulative radial depth after `pass` of `passes`.
 *
 * @param pass whole, 0 to `passes`
 * @throws RangeError if depth is not above 0, or the passes are not whole numbers in that range
 */
export function depthAfter(
  depth: number,
  pass: number,
  passes: number,
  spread: Spread,
  groove: Groove,
): number {
  requireAbove("depth", depth);
  const count = requireWhole("passes", passes, 1);
  const done = requireWhole("pass", pass, 0);
  if (done > count) throw new RangeError(`pass must be at most the number of passes ${count}, got ${pass}`);
  if (done === count) return depth;
  if (spread === "even") return (depth * done) / count;
  return depthForArea((grooveArea(depth, groove) * done) / count, groove);
}

/** Passes needed so that none takes more than the first. @throws RangeError if a depth is not above 0 */
export function passCount(depth: number, firstDepth: number, spread: Spread, groove: Groove): number {
  requireAbove("depth", depth);
  requireAbove("first_depth", firstDepth);
  if (firstDepth >= depth) return 1;
  const ratio =
    spread === "even" ? depth / firstDepth : grooveArea(depth, groove) / grooveArea(firstDepth, groove);
  return ceilWhole(finite("number of passes", ratio));
}

/** Chip area between two depths. @throws RangeError unless 0 <= from <= to */
export function passArea(fromDepth: number, toDepth: number, groove: Groove): number {
  requireWithin("to_depth", toDepth, 0);
  requireWithin("from_depth", fromDepth, 0, toDepth);
  return grooveArea(toDepth, groove) - grooveArea(fromDepth, groove);
}
