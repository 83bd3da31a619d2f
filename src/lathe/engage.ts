/**
 * When the half nuts may be closed again: by the thread indicator, or after a known travel against a stop.
 *
 * The carriage may be anywhere that is a whole number of leadscrew pitches (there the nuts close) and a whole number of
 * leads of the thread (there the tool falls into its groove) from where the first cut began.
 *
 * Lengths in any one unit. Source: geometry.
 */
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
  requireAbove("lead", lead);
  requireAbove("leadscrew_lead", leadscrewLead);
  const teeth = requireCount("wheel_teeth", wheelTeeth, MOST);
  const count = requireCount("marks", marks, MOST);
  const start = requireCount("first", first, count);
  const leadsATurn = finite("wheel_teeth x leadscrew_lead / lead", (teeth * leadscrewLead) / lead);
  const creep = Math.abs(leadsATurn - Math.round(leadsATurn));
  // A turn shorter than a lead is near 0 leads, which is no lead at all.
  if (leadsATurn < 0.5 || creep > WHOLE_LEADS) return { usable: [], creep };
  const usable = Array.from({ length: count }, (_, i) => i + 1).filter((mark) => {
    const turn = (mark - start) / count;
    return isWhole(turn * teeth, WHOLE_PITCHES) && isWhole(turn * leadsATurn, WHOLE_LEADS);
  });
  return { usable, creep };
}

/**
 * Carriage travel after which the nuts may close with no indicator: the least common multiple of both leads.
 *
 * @throws RangeError when a lead is not above 0, or is outside 1e-9 to 1e9
 */
export function engagementTravel(lead: number, leadscrewLead: number): number {
  return exactly("lead", lead).lcm(exactly("leadscrew_lead", leadscrewLead)).valueOf();
}

function isWhole(value: number, within: number): boolean {
  return Math.abs(value - Math.round(value)) <= within;
}

function requireCount(name: string, value: number, most: number): number {
  const whole = requireWhole(name, value, 1);
  if (whole > most) throw new RangeError(`${name} must be from 1 to ${most}, got ${whole}`);
  return whole;
}
