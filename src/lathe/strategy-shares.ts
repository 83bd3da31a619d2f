/**
 * How the depth is shared out between the passes: equal chip area, equal depth, or each pass a fixed ratio of the one
 * before. Whole divisions, no pass over the first cut, none under the least cut, and a sum that is exactly the total.
 *
 * Source: common practice, no source.
 */
import { ceilWhole, requireAbove, requireWhole } from "./bounds.ts";
import {
  divideSlide,
  falling,
  heldSentence,
  joinShort,
  MOST_PASSES,
  type SlidePasses,
  type SlideWork,
  tooSmall,
} from "./plan-divisions.ts";

export type ShareRule = "area" | "even" | "ratio";

/**
 * @param ratio of a pass to the one before, above 0 to 1; only the rule "ratio" reads it
 * @throws RangeError when the limits clash, or nobody would wind that many passes
 */
export function shareOut(rule: ShareRule, work: SlideWork, ratio: number): SlidePasses {
  if (rule === "area") return divideSlide(work);
  return rule === "even" ? evenly(work) : byRatio(work, ratio);
}

function evenly({ total, most, least }: SlideWork): SlidePasses {
  const count = ceilWhole(total / most);
  if (count > MOST_PASSES) throw tooSmall(`${count} passes`);
  const each = Math.floor(total / count);
  if (each < least && count > 1) {
    throw new RangeError(
      `no plan is made: first_depth (${most} divisions) and least_depth (${least} divisions) do not fit ${total} divisions, raise first_depth or lower least_depth`,
    );
  }
  const over = total - each * count;
  return { divisions: Array.from({ length: count }, (_, k) => (k < over ? each + 1 : each)), reasons: [] };
}

function byRatio(work: SlideWork, ratio: number): SlidePasses {
  requireRatio(ratio);
  const { total, most, least } = work;
  const divisions: number[] = [];
  let ideal = most;
  let wanted = 0;
  let done = 0;
  let held = Number.POSITIVE_INFINITY;
  while (done < total) {
    if (divisions.length >= MOST_PASSES) throw tooSmall(`more than ${MOST_PASSES} passes`);
    if (ideal < least) held = Math.min(held, divisions.length);
    wanted += Math.max(ideal, least);
    const upTo = Math.min(total, Math.round(wanted));
    divisions.push(upTo - done);
    done = upTo;
    ideal *= ratio;
  }
  // A last pass too thin to cut is shared out; where that would lift one over the first cut, one pass more is not thin.
  const tidy = joinShort(divisions.sort(falling), least);
  if (tidy[0]! > most) {
    throw new RangeError(
      `no plan is made: first_depth (${most} divisions) and least_depth (${least} divisions) do not fit ${total} divisions, raise first_depth or lower least_depth`,
    );
  }
  return { divisions: tidy, reasons: held < tidy.length ? [heldSentence(held, tidy.length, work)] : [] };
}

function requireRatio(ratio: number): void {
  if (!(ratio > 0 && ratio <= 1)) {
    throw new RangeError(`ratio must be greater than 0 and at most 1, got ${ratio}`);
  }
}

/**
 * Cumulative depth after a pass when each takes `ratio` times the depth of the one before: h (1 - r^k) / (1 - r^n).
 *
 * @param pass whole, 0 to `passes`
 * @throws RangeError outside those ranges
 */
export function reducedDepth(depth: number, pass: number, passes: number, ratio: number): number {
  requireAbove("depth", depth);
  requireRatio(ratio);
  const count = requireWhole("passes", passes, 1);
  const done = requireWhole("pass", pass, 0);
  if (done > count) throw new RangeError(`pass must be at most the number of passes ${count}, got ${pass}`);
  if (done === count) return depth;
  if (ratio === 1) return (depth * done) / count;
  // expm1 keeps the digits of a ratio next to 1.
  const log = Math.log(ratio);
  return (depth * Math.expm1(done * log)) / Math.expm1(count * log);
}
