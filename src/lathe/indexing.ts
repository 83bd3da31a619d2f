/**
 * Coming from one start of a thread to another by turning the work against the lead screw: by the divisions of a faceplate
 * or chuck plate, or by teeth of a change gear. The work turns by 1/starts of a turn for each start.
 *
 * Source: geometry.
 */
import { NothingFound } from "../thread/failures.ts";
import { requireAbove, requireWhole } from "./bounds.ts";

/** How near to a whole number counts as whole. */
const WHOLE = 1e-9;

/**
 * Divisions to turn the work by, from the first start to this one.
 *
 * @param divisions in a turn of the faceplate, whole, 1 or more
 * @param starts whole, 1 or more
 * @param start whole, 1 to starts
 * @throws RangeError outside those ranges
 * @throws NothingFound when that is no whole number of divisions
 */
export function startDivisions(divisions: number, starts: number, start: number): number {
  const count = requireWhole("divisions", divisions, 1);
  return wholeShare(count, `${count} divisions`, starts, start);
}

/**
 * Teeth by which a gear is moved on against the one it meshes with, from the first start to this one.
 *
 * @param teeth of the gear, whole, 1 or more
 * @param turns of that gear for one of the spindle, above 0
 * @throws RangeError outside those ranges
 * @throws NothingFound when that is no whole number of teeth
 */
export function startTeeth(teeth: number, starts: number, start: number, turns = 1): number {
  const count = requireWhole("teeth", teeth, 1);
  requireAbove("turns", turns);
  return wholeShare(count * turns, `${count} teeth at ${turns} turns`, starts, start);
}

function wholeShare(whole: number, what: string, starts: number, start: number): number {
  const count = requireWhole("starts", starts, 1);
  const which = requireWhole("start", start, 1);
  if (which > count) throw new RangeError(`start must be from 1 to ${count}, got ${which}`);
  const share = (whole * (which - 1)) / count;
  const near = Math.round(share);
  if (Math.abs(share - near) > WHOLE * Math.max(1, share)) {
    throw new NothingFound(
      `${what} do not part into ${count} starts: start ${which} is at ${trimmed(share)}`,
    );
  }
  return near;
}

function trimmed(value: number): string {
  return String(Number(value.toFixed(3)));
}
