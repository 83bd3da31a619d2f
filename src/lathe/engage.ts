/**
 * When the half nuts may be closed again: by the thread indicator, or after a known travel against a stop.
 *
 * The carriage may be anywhere that is a whole number of leadscrew pitches (there the nuts close) and a whole number of
 * leads of the thread (there the tool falls into its groove) from where the first cut began.
 *
 * Lengths in any one unit. Source: geometry.
 */
import { NothingFound } from "../thread/failures.ts";
import { finite, requireAbove, requireWhole } from "./bounds.ts";
import { exactly } from "./exact.ts";

/** How near to whole counts: pitches of the leadscrew, and leads of the thread. */
const WHOLE_PITCHES = 1e-9;
const WHOLE_LEADS = 1e-4;
/** No wheel or dial has more, and every mark is looked at. */
const MOST = 1000;

export interface Marks {
  /** Marks, first to last, that may be used every time they come round; none when no mark may be used twice. */
  readonly usable: readonly number[];
  /** Leads by which a turn of the wheel misses a whole number: what adds up, turn by turn. */
  readonly creep: number;
}

/**
 * Marks of the thread indicator on which the half nuts may be closed every time they come round.
 *
 * A whole turn of the wheel must be a whole number of leads, or else no mark may be used twice.
 *
 * @param lead of the thread, all its starts; best as the train cuts it
 * @param wheelTeeth teeth of the wheel on the leadscrew
 * @param marks on its dial, numbered from 1, evenly spaced
 * @param first the mark on which the first cut was started; left out: the last
 * @throws RangeError when a lead is not above 0, or a number is not whole or out of its range
 */
export function usableMarks(
  lead: number,
  leadscrewLead: number,
  wheelTeeth: number,
  marks: number,
  first = marks,
): Marks {
  return startMarks(lead, 1, 1, leadscrewLead, wheelTeeth, marks, first);
}

/**
 * Marks that bring the tool into one start of a thread of several, every time they come round, when start 1 was begun on
 * the mark `first`.
 *
 * A carriage that is let in when n more pitches of the leadscrew have gone by runs n pitches behind for good: it cuts
 * where (start - 1) leads / starts ahead is n pitches behind, but for whole leads. Ahead is where the carriage runs to
 * while cutting, as in startShift; the marks are numbered as they come round then.
 *
 * @param starts whole, 1 to 1000
 * @param start whole, 1 to starts
 * @throws RangeError as usableMarks, or when there is no such start
 */
export function startMarks(
  lead: number,
  starts: number,
  start: number,
  leadscrewLead: number,
  wheelTeeth: number,
  marks: number,
  first = marks,
): Marks {
  requireAbove("lead", lead);
  const parts = requireCount("starts", starts, MOST);
  const ahead = (requireCount("start", start, parts) - 1) / parts;
  requireAbove("leadscrew_lead", leadscrewLead);
  const teeth = requireCount("wheel_teeth", wheelTeeth, MOST);
  const count = requireCount("marks", marks, MOST);
  const begun = requireCount("first", first, count);
  const leadsATurn = finite("wheel_teeth x leadscrew_lead / lead", (teeth * leadscrewLead) / lead);
  const creep = Math.abs(leadsATurn - Math.round(leadsATurn));
  // A turn shorter than a lead is near 0 leads, which is no lead at all.
  if (leadsATurn < 0.5 || creep > WHOLE_LEADS) return { usable: [], creep };
  const usable = Array.from({ length: count }, (_, i) => i + 1).filter((mark) => {
    const turn = (mark - begun) / count;
    return isWhole(turn * teeth, WHOLE_PITCHES) && isWhole(turn * leadsATurn + ahead, WHOLE_LEADS);
  });
  return { usable, creep };
}

/**
 * Which wheel of the indicator to put on: the one whose usable marks come soonest after each other. Of equal ones the
 * first listed.
 *
 * @param wheels teeth, one number a wheel
 * @param marks on its dial: one number for all wheels, or one for each
 * @returns place in the list, from 0
 * @throws RangeError as usableMarks, or when there are other numbers of wheels and marks
 * @throws NothingFound when no wheel has a mark that may be used twice
 */
export function bestWheel(
  lead: number,
  leadscrewLead: number,
  wheels: readonly number[],
  marks: readonly number[],
): number {
  if (marks.length !== 1 && marks.length !== wheels.length) {
    throw new RangeError(
      `marks must be one number, or one for each of the ${wheels.length} wheels, got ${marks.length}`,
    );
  }
  let [best, least] = [-1, Infinity];
  wheels.forEach((teeth, i) => {
    const { usable } = usableMarks(lead, leadscrewLead, teeth, marks[i] ?? marks[0]!);
    // Pitches of the leadscrew that go by from one usable mark to the next.
    const wait = teeth / usable.length;
    if (wait < least - WHOLE_PITCHES) [best, least] = [i, wait];
  });
  if (best < 0) {
    throw new NothingFound(
      "no wheel has a mark that may be used twice: keep the half nuts closed and reverse",
    );
  }
  return best;
}

/**
 * Length that goes by under a carriage at rest while the indicator turns once.
 *
 * @throws RangeError when the lead is not above 0, or the teeth are not whole or out of their range
 */
export function travelPerTurn(leadscrewLead: number, wheelTeeth: number): number {
  requireAbove("leadscrew_lead", leadscrewLead);
  return finite("travel", requireCount("wheel_teeth", wheelTeeth, MOST) * leadscrewLead);
}

/**
 * Carriage travel after which the nuts may close with no indicator: the least common multiple of both leads.
 *
 * @throws RangeError when a lead is not above 0, or is outside 1e-9 to 1e9
 */
export function engagementTravel(lead: number, leadscrewLead: number): number {
  return exactly("lead", lead).lcm(exactly("leadscrew_lead", leadscrewLead)).valueOf();
}

/**
 * True where the nuts find a groove each time they close: a pitch of the leadscrew is a whole number of leads.
 *
 * @throws RangeError when a lead is not above 0
 */
export function engagesAnywhere(lead: number, leadscrewLead: number): boolean {
  requireAbove("lead", lead);
  requireAbove("leadscrew_lead", leadscrewLead);
  const leads = leadscrewLead / lead;
  return leads >= 0.5 && isWhole(leads, 1e-6);
}

function isWhole(value: number, within: number): boolean {
  return Math.abs(value - Math.round(value)) <= within;
}

function requireCount(name: string, value: number, most: number): number {
  const whole = requireWhole(name, value, 1);
  if (whole > most) throw new RangeError(`${name} must be from 1 to ${most}, got ${whole}`);
  return whole;
}
