/** Checks of what a drawing is to show, where no other computation makes them. */
import { Unreadable } from "../thread/failures.ts";
import { requireAbove, requireSetover, requireWhole, requireWithin } from "./bounds.ts";

/** No dial has more, and more could not be told apart on paper. */
const mostMarks = 200;

/**
 * Marks of a list such as "4,8", in their order.
 *
 * @throws Unreadable when the list is not one of numbers with commas between
 * @throws RangeError for a mark that is not on a dial with this many
 */
export function usableList(text: string, count: number): { usable: readonly number[]; marks: number } {
  const marks = requireWhole("marks", count, 1);
  requireWithin("marks", marks, 1, mostMarks);
  if (text.trim() === "") return { usable: [], marks };
  const usable = text.split(/[,;]/).map((each) => {
    if (!/^\s*\d{1,6}\s*$/.test(each)) {
      throw new Unreadable(`cannot read "${text}" as marks: numbers with commas between, like "4,8"`);
    }
    return Number(each);
  });
  for (const mark of usable) requireWithin("usable marks", mark, 1, marks);
  return { usable: [...new Set(usable)].sort((a, b) => a - b), marks };
}

/**
 * Depths of passes that a groove can be drawn from; equal ones (spring passes) may follow each other.
 *
 * @throws RangeError for none or too many, one that is not above 0, one that is less than the one before it, or a
 *   set-over of 90 degrees or more
 */
export function requireDepths(depths: readonly number[], setover: number): void {
  requireSetover(setover);
  if (depths.length > mostPasses) {
    throw new RangeError(`depths must be at most ${mostPasses} passes, got ${depths.length}`);
  }
  depths.forEach((depth, i) => {
    requireAbove("depths", depth);
    if (i > 0 && depth < depths[i - 1]!) {
      throw new RangeError(`depths must not fall, got ${depth} after ${depths[i - 1]}`);
    }
  });
}

const mostPasses = 500;
