/**
 * From the reading now to the reading wanted, and what the next pass will bring by what the last ones brought.
 *
 * A reading over wires falls by twice the radial depth; between balls in a nut it grows by as much. Work and tool spring
 * away from the cut: of what stands between the tool's setting and the work, a pass takes a share s, and the rest waits for the
 * next one, or for a spring pass:
 *
 *     got = s (asked + lag),   lag = all that was asked less all that was got
 *
 * Lengths in any one unit, all on the diameter. Source: geometry; the share is our own, fitted to the log by least squares.
 */
import { cos, floorWhole, requireAbove, requireSetover, requireWithin } from "./bounds.ts";
import { type DialReads, stepOf } from "./dial.ts";

/** A screw's reading falls as it is cut, a nut's grows. */
export type Reads = "external" | "internal";

/**
 * Whole divisions still to wind: never past the reading wanted; 0 when it is reached or passed.
 *
 * @param setover of the slide that is wound, degrees; 0 for the cross slide
 * @throws RangeError if a reading or division is not above 0 or the set-over not between -90 and 90
 */
export function stillToWind(
  reading: number,
  wanted: number,
  division: number,
  setover: number,
  reads: DialReads,
  member: Reads,
): number {
  requireAbove("reading", reading);
  requireAbove("wanted", wanted);
  const left = member === "external" ? reading - wanted : wanted - reading;
  return Math.max(0, floorWhole(left / askedFor(1, division, setover, reads)));
}

/** What a winding asks for, on the diameter: 2 x travel x cos a. @throws RangeError as for stillToWind */
export function askedFor(divisions: number, division: number, setover: number, reads: DialReads): number {
  requireWithin("divisions", divisions, 0);
  requireSetover(setover);
  return 2 * divisions * stepOf(division, reads) * cos(setover);
}

/** Readings in order, the first before anything was asked for, and what was asked for before each of the others. */
export interface Log {
  readonly readings: readonly number[];
  readonly asked: readonly number[];
  readonly member: Reads;
}

/** What each pass got, and what stood before it: asked for and left over. @throws RangeError if the two do not belong together */
function passesOf({ readings, asked, member }: Log): { got: number; before: number }[] {
  if (readings.length !== asked.length + 1) {
    throw new RangeError(`readings must be one more than asked, ${asked.length + 1}, got ${readings.length}`);
  }
  const sign = member === "external" ? 1 : -1;
  let lag = 0;
  return asked.map((ask, i) => {
    requireWithin("asked", ask, 0);
    const got = sign * (readings[i]! - readings[i + 1]!);
    const before = ask + lag;
    lag = before - got;
    return { got, before };
  });
}

/** What was asked for and has not come off yet; below 0 when more came off. @throws RangeError if the log does not fit */
export function lagOf(log: Log): number {
  const last = passesOf(log).at(-1);
  return last === undefined ? 0 : last.before - last.got;
}

/**
 * Share of what stands before the tool that a pass takes; 1 before anything is logged.
 *
 * @throws RangeError if the log does not fit, or nothing was asked for in it
 */
export function shareOf(log: Log): number {
  const passes = passesOf(log);
  if (passes.length === 0) return 1;
  const squares = passes.reduce((sum, { before }) => sum + before * before, 0);
  if (!(squares > 0)) throw new RangeError("asked must be above 0 in one pass at least, got none");
  return passes.reduce((sum, { got, before }) => sum + got * before, 0) / squares;
}

/** Reading to expect after the next pass. @param next what it asks for, 0 for a spring pass */
export function nextReading(log: Log, next: number): number {
  requireWithin("next", next, 0);
  const taken = shareOf(log) * (next + lagOf(log));
  return log.readings.at(-1)! + (log.member === "external" ? -taken : taken);
}

/** Reading if all that was asked for came off at once: the furthest that the next pass may go. */
export function furthestReading(log: Log, next: number): number {
  requireWithin("next", next, 0);
  const taken = next + Math.max(0, lagOf(log));
  return log.readings.at(-1)! + (log.member === "external" ? -taken : taken);
}
