/**
 * Change gears: the lead that a train cuts, how far that is off, and what the error uses up of a fit.
 *
 *     spindle - driver  driven - lead screw            lead cut = leadscrew lead x drivers / driven
 *                    \  /
 *                   (stud)   a compound train is a/b × c/d: b and c turn together on the stud
 *
 * Lengths in any one unit, gears in teeth. Source: geometry.
 */
import { Unreadable } from "../thread/failures.ts";
import { finite, requireAbove, requireWhole, requireWithin, tan } from "./bounds.ts";

/** A driver and the gear that it drives. */
export type Pair = readonly [driver: number, driven: number];

/** Pairs from the spindle to the lead screw. */
export type Train = readonly Pair[];

/**
 * Lead cut by a train.
 *
 * @param leadscrewLead above 0, times any fixed gearbox ratio
 * @throws RangeError when the lead or a gear is not above 0, or a gear is not whole
 */
export function leadCut(leadscrewLead: number, train: Train): number {
  requireAbove("leadscrew_lead", leadscrewLead);
  let [drivers, driven] = [1, 1];
  train.forEach(([a, b], i) => {
    const place = i === 0 ? "" : String(i + 1);
    drivers *= requireWhole(`driver${place}`, a, 1);
    driven *= requireWhole(`driven${place}`, b, 1);
  });
  return finite("lead", (leadscrewLead * drivers) / driven);
}

/** `65/50 × 20/55` */
export function trainText(train: Train): string {
  return train.map(([a, b]) => `${a}/${b}`).join(" × ");
}

/**
 * Reads a train as trainText writes it; `x`, `X`, `*` and `·` are taken for the cross.
 *
 * @throws Unreadable for anything else
 */
export function readTrain(text: string): Train {
  const pairs = text.split(/[×xX*·]/).map((pair) => /^\s*(\d{1,4})\s*\/\s*(\d{1,4})\s*$/.exec(pair));
  return pairs.map((found) => {
    const [driver, driven] = [Number(found?.[1]), Number(found?.[2])];
    if (!(driver >= 1 && driven >= 1)) {
      throw new Unreadable(
        `cannot read "${text}" as a train: drivers over driven, like "30/80" or "65/50 × 20/55"`,
      );
    }
    return [driver, driven];
  });
}

/**
 * How far a lead is too long (plus) or too short, in one turn or accumulated over a length.
 *
 * @param length 0 or more; left out: one turn
 * @throws RangeError when a lead is not above 0 or the length is negative
 */
export function leadError(wanted: number, cut: number, length?: number): number {
  requireAbove("lead_wanted", wanted);
  requireAbove("lead_cut", cut);
  if (length === undefined) return cut - wanted;
  requireWithin("length", length, 0);
  // Difference first: cut / wanted - 1 would lose the digits that matter.
  return finite("error", (length * (cut - wanted)) / wanted);
}

/**
 * Room on the pitch diameter that a lead error over the length of engagement uses up: its size times cot(A/2). A lead
 * too short uses up as much as one too long.
 *
 * @throws RangeError unless included is between 0 and 180
 */
export function roomForLeadError(error: number, included: number): number {
  if (!(included > 0 && included < 180)) {
    throw new RangeError(`included must be between 0 and 180 degrees, got ${included}`);
  }
  return finite("room", Math.abs(error) / tan(included / 2));
}
