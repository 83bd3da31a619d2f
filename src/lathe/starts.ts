/** Threads of several starts. Source: geometry. */
import { requireAbove, requireWhole } from "./bounds.ts";

/**
 * How far a slide set parallel to the bed is advanced from the first start to this one: lead (start - 1)/starts.
 *
 * @param lead above 0: pitch x starts
 * @param starts whole, 1 or more
 * @param start whole, 1 to starts; the first needs no shift
 * @throws RangeError outside those ranges
 */
export function startShift(lead: number, starts: number, start: number): number {
  requireAbove("lead", lead);
  const count = requireWhole("starts", starts, 1);
  const which = requireWhole("start", start, 1);
  if (which > count) throw new RangeError(`start must be from 1 to ${count}, got ${which}`);
  return (lead * (which - 1)) / count;
}
