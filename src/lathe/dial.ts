/**
 * Dials: travel in divisions, rounding to whole divisions, and the reading as a person says it.
 *
 * A dial that reads diameter shows twice the travel. A count of divisions within 1e-9 of a whole one is whole. Travel and
 * division in any one unit. Source: geometry; the words are our own.
 */
import { ceilWhole, finite, floorWhole, requireAbove, requireWithin } from "./bounds.ts";

/** What one division of the dial stands for. */
export type DialReads = "radius" | "diameter";
export type Rounding = "nearest" | "under" | "over";

/** Travel of the slide for one division. @throws RangeError if division is not above 0 */
export function stepOf(division: number, reads: DialReads): number {
  requireAbove("division", division);
  return reads === "diameter" ? division / 2 : division;
}

/** Divisions to wind for a travel; sign kept. @throws RangeError if division is not above 0 */
export function dialDivisions(travel: number, division: number, reads: DialReads = "radius"): number {
  return finite("number of divisions", travel / stepOf(division, reads));
}

/**
 * Travel as whole divisions. Ties go to the smaller travel; "under" and "over" go by size, sign kept.
 *
 * @throws RangeError if division is not above 0
 */
export function roundToDial(
  travel: number,
  division: number,
  rounding: Rounding = "nearest",
  reads: DialReads = "radius",
): number {
  const count = dialDivisions(Math.abs(travel), division, reads);
  const under = floorWhole(count);
  const over = ceilWhole(count);
  // A travel that is whole already keeps its own digits.
  if (under === over) return under === 0 ? 0 : travel;
  const nearest = count - under <= 0.5 + 1e-9 ? under : over;
  const whole = rounding === "under" ? under : rounding === "over" ? over : nearest;
  return whole === 0 ? 0 : Math.sign(travel) * whole * stepOf(division, reads);
}

/**
 * The reading as text: "12", "1 turn", "2 turns + 3", "1 turn + 12.4", "back 1 turn + 12"; with a start,
 * "1 turn, stop at 2". Divisions are rounded to a tenth before they are split into turns.
 *
 * @param perTurn divisions in a full turn, above 0; need not be whole
 * @param start division that stands at the mark before winding, 0 to perTurn; left out: count from zero
 * @throws RangeError outside those ranges
 */
export function dialReading(
  travel: number,
  division: number,
  perTurn: number,
  start?: number,
  reads: DialReads = "radius",
): string {
  requireAbove("per_turn", perTurn);
  const tenths = toTenth(dialDivisions(Math.abs(travel), division, reads));
  const back = travel < 0 && tenths > 0;
  const { turns, rest } = splitTurns(tenths, perTurn);
  const turnText = turns === 0 ? "" : turns === 1 ? "1 turn" : `${turns} turns`;
  let text: string;
  if (start === undefined) {
    if (turns === 0) text = String(rest);
    else text = rest === 0 ? turnText : `${turnText} + ${rest}`;
  } else {
    requireWithin("start", start, 0, perTurn);
    const stop = remainder(back ? start - tenths : start + tenths, perTurn);
    text = turns === 0 ? `stop at ${stop}` : `${turnText}, stop at ${stop}`;
  }
  return back ? `back ${text}` : text;
}

/** Full turns and what is left, to a tenth; a rest that rounds up to a whole turn counts as one. */
export function splitTurns(divisions: number, perTurn: number): { turns: number; rest: number } {
  const turns = floorWhole(finite("number of turns", divisions / perTurn));
  const rest = toTenth(Math.max(0, divisions - turns * perTurn));
  return rest >= perTurn ? { turns: turns + 1, rest: 0 } : { turns, rest };
}

/** Where on the dial a count of divisions ends, to a tenth. */
function remainder(divisions: number, perTurn: number): number {
  const rest = toTenth(divisions - floorWhole(divisions / perTurn) * perTurn);
  return rest >= perTurn || rest <= 0 ? 0 : rest;
}

function toTenth(divisions: number): number {
  return finite("number of divisions", Math.round(divisions * 10)) / 10;
}
