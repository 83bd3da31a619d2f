/**
 * Change gears: the lead that a train cuts, how far that is off, and what the error uses up of a fit.
 *
 *     spindle - driver  driven - lead screw            lead cut = leadscrew lead x drivers / driven
 *                    \  /
 *                   (stud)   a compound train is a/b × c/d: b and c turn together on the stud
 *
 * Lengths in any one unit, gears in teeth. Source: geometry.
 */
import { NothingFound, Unreadable } from "../thread/failures.ts";
import { finite, requireAbove, requireWhole, requireWithin, tan } from "./bounds.ts";

/** A driver and the gear that it drives. */
export type Pair = readonly [driver: number, driven: number];

/** Pairs from the spindle to the lead screw. */
export type Train = readonly Pair[];

/** A train, and the position of a gearbox behind it, from 1 in the order in which its ratios are listed. */
export interface Boxed {
  readonly train: Train;
  readonly position: number;
}

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

/** `65/50 × 20/55, box 3` */
export function boxedText({ train, position }: Boxed): string {
  return `${trainText(train)}, box ${position}`;
}

/** Reads a train as trainText and boxedText write it, without its gearbox. @throws Unreadable for anything else */
export function readTrain(text: string): Train {
  return readBoxed(text).train;
}

/**
 * One wheel of a train: 1 the first driver, 2 the gear that it drives, 3 and 4 the second pair.
 *
 * @throws Unreadable when the text is no train
 * @throws NothingFound when the train has no such wheel
 */
export function wheelOf(text: string, place: number): number {
  const wheels = readTrain(text).flat();
  const teeth = wheels[requireWhole("place", place, 1) - 1];
  if (teeth === undefined) {
    throw new NothingFound(`place must be at most ${wheels.length}, the wheels of this train, got ${place}`);
  }
  return teeth;
}

/** No position where the text names none; `x`, `X`, `*` and `·` are taken for the cross. */
function readBoxed(text: string): { readonly train: Train; readonly position?: number } {
  const [, gears, position] = /^(.*?)(?:,\s*box\s+(\d{1,2})\s*)?$/i.exec(text) ?? [];
  const train = (gears ?? text).split(/[×xX*·]/).map((pair): Pair => {
    const found = /^\s*(\d{1,4})\s*\/\s*(\d{1,4})\s*$/.exec(pair);
    const [driver, driven] = [Number(found?.[1]), Number(found?.[2])];
    if (!(driver >= 1 && driven >= 1)) {
      throw new Unreadable(
        `cannot read "${text}" as a train: drivers over driven, like "30/80" or "65/50 × 20/55", with ", box 3" behind it for a gearbox`,
      );
    }
    return [driver, driven];
  });
  return position === undefined ? { train } : { train, position: Number(position) };
}

/**
 * Lead cut by a train as it is written, through a gearbox where the text names its position.
 *
 * @param ratios of the gearbox, position by position
 * @throws Unreadable when the text is no train, or names a position and there are no ratios
 * @throws RangeError when there is no such position, or a lead or ratio is not above 0
 */
export function leadOfText(text: string, leadscrewLead: number, ratios: readonly number[] = []): number {
  const { train, position } = readBoxed(text);
  if (position === undefined) return leadCut(leadscrewLead, train);
  if (ratios.length === 0) {
    throw new Unreadable(`ratios are missing: "${text}" goes through a gearbox`);
  }
  const ratio = ratios[position - 1];
  if (ratio === undefined) {
    throw new RangeError(`train must name a box from 1 to ${ratios.length}, got ${position}`);
  }
  requireAbove("ratios", ratio);
  return finite("lead", leadCut(leadscrewLead, train) * ratio);
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
 * How far a lead is off, in millionths of it; plus: too long.
 *
 * @throws RangeError when a lead is not above 0
 */
export function leadErrorMillionths(wanted: number, cut: number): number {
  return leadError(wanted, cut, 1_000_000);
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
