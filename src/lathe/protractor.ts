/**
 * A set-over on a scale that has an end and whole divisions: which mark to set, counted from where, and what the set-over
 * then is.
 *
 *     zero line        A line looks the same turned half round: a reading t is the line of t - 180 and t + 180 too, and
 *      | t  /          it stands t - 90 from the line square to the scale's zero.
 *      |---/ slide
 *      |  /  ............ square to the zero line
 *
 * Angles in degrees; a set-over is measured from the line square to the lathe axis. Source: geometry; the words are ours.
 */
import { NothingFound } from "../thread/failures.ts";
import { requireWithin } from "./bounds.ts";
import { type Scale, scaleReading } from "./setover.ts";

export interface Protractor {
  readonly zero: Scale;
  /** Lowest and highest mark, counted from the zero. */
  readonly low: number;
  readonly high: number;
  /** Smallest division, 0 to read between the marks. */
  readonly division: number;
  /** "both": marked to both sides of the zero; "one": to one side. */
  readonly counts: "both" | "one";
}

export interface Mark {
  /** What the scale is set to. */
  readonly reading: number;
  /** Where that is counted from: the zero, the zero but to its other side, or the line square to the zero. */
  readonly from: "zero" | "other side" | "square";
  /** Seen from the line square to the zero, is the mark to the side of the zero? */
  readonly towardsZero: boolean;
  /** Set-over that this mark gives. */
  readonly setover: number;
  /** What an endless scale would read, without rounding. */
  readonly exact: number;
}

/** Which way the set-over grows with the reading. */
const SENSE: Readonly<Record<Scale, 1 | -1>> = { square: 1, bed: -1, obtuse: 1 };
/** How far past an end of the scale still counts as on it. */
const END = 1e-9;

/**
 * The mark to set: on the scale as it is counted, else to the other side of its zero, else as the complement from the line
 * square to its zero. Rounded to the nearest division; half way goes to the smaller set-over, which never overcuts.
 *
 * @throws RangeError for a set-over outside -90 to 90, a scale outside 0 to 360, or without room between its ends
 * @throws NothingFound when none of the three is on the scale
 */
export function markFor(setover: number, scale: Protractor): Mark {
  const exact = scaleReading(setover, scale.zero);
  requireWithin("low", scale.low, 0, 360);
  requireWithin("high", scale.high, 0, 360);
  if (!(scale.low < scale.high)) {
    throw new RangeError(`low must be less than high, got ${scale.low} and ${scale.high}`);
  }
  requireWithin("division", scale.division, 0, 90);
  const fits = (reading: number) => reading >= scale.low - END && reading <= scale.high + END;
  const sided = (from: Mark["from"], angle: number): Mark | undefined => {
    const { reading, off } = rounded(
      Math.abs(angle),
      scale.division,
      Math.sign(angle) * sense(setover, scale.zero),
    );
    if (!fits(reading)) return undefined;
    const got = setover + SENSE[scale.zero] * Math.sign(angle || 1) * off;
    return { reading, from, towardsZero: angle < 0 === exact >= 0, setover: got, exact };
  };
  for (const angle of [exact, exact - 180, exact + 180]) {
    const to = angle >= 0 ? "zero" : "other side";
    if (to === "other side" && scale.counts === "one") continue;
    const mark = sided(to, angle);
    if (mark) return mark;
  }
  const across = exact >= 0 ? exact - 90 : exact + 90;
  // A scale marked to one side only cannot be turned back from there.
  const mark = across >= 0 || scale.counts === "both" ? sided("square", across) : undefined;
  if (mark) return mark;
  throw new NothingFound(
    `no mark from ${scale.low} to ${scale.high} gives a set-over of ${shown(setover)}: set it by a bevel gauge and prove it by indicator`,
  );
}

/** Whether a larger reading makes a larger (1) or smaller (-1) size of set-over. */
function sense(setover: number, zero: Scale): number {
  return SENSE[zero] * (setover < 0 ? -1 : 1);
}

/** To the nearest division; half way to the side that makes the set-over smaller. */
function rounded(reading: number, division: number, grows: number): { reading: number; off: number } {
  if (division === 0) return { reading, off: 0 };
  const count = reading / division;
  const half = Math.abs(count - Math.floor(count) - 0.5) < 1e-9;
  const whole = half ? (grows > 0 ? Math.floor(count) : Math.ceil(count)) : Math.round(count);
  return { reading: whole * division, off: whole * division - reading };
}

/** What to do, in words: `set 63; the set-over is then 0.5 under`. */
export function markWords(setover: number, scale: Protractor): string {
  const mark = markFor(setover, scale);
  const off = mark.setover - setover;
  const left =
    Math.abs(off) < 5e-5
      ? ""
      : `; the set-over is then ${shown(Math.abs(off))} ${Math.abs(mark.setover) < Math.abs(setover) ? "under" : "over"}`;
  return `${act(mark, scale)}${left}`;
}

/** Where a scale counts from, and the line square to that. */
const lines: Readonly<
  Record<Scale, { readonly zero: string; readonly across: string; readonly stand: string }>
> = {
  square: { zero: "square to the bed", across: "the bed", stand: "along the bed" },
  bed: { zero: "the bed", across: "square to the bed", stand: "square to the bed" },
  obtuse: { zero: "the bed's other end", across: "square to the bed", stand: "square to the bed" },
};

function act({ reading, from, towardsZero, exact }: Mark, { zero, low, high }: Protractor): string {
  if (from === "zero") return `set ${shown(reading)}`;
  if (from === "other side") return `set ${shown(reading)} to the other side of zero`;
  const size = Math.abs(exact);
  const sum = size > 90 ? `${shown(size)} - 90` : `90 - ${shown(size)}`;
  const { zero: counted, across, stand } = lines[zero];
  // The scale's own index is of no use there: a second one is made where its 0 stands with the slide turned by a quarter.
  return `${missing(exact, low, high)}. ${shown(size)} from ${counted} is ${shown(Math.abs(size - 90))} from ${across} (${sum}). Stand the slide ${stand}, pencil a mark beside the scale's 0, then swing the slide ${towardsZero ? "back towards" : "on, away from"} its zero until the pencil mark shows ${shown(reading)}`;
}

function missing(exact: number, low: number, high: number): string {
  if (exact < 0) return `${shown(-exact)} to the other side of zero is off your scale`;
  return exact > high
    ? `${shown(exact)} is past your scale's end at ${shown(high)}`
    : `${shown(exact)} is before your scale's beginning at ${shown(low)}`;
}

/** Up to four decimals. */
function shown(degrees: number): string {
  return String(Number(degrees.toFixed(4)));
}
