/** From a designation to the thread it names. */
import { build, Misclassed } from "./build.ts";
import { catalogue } from "./catalogue.ts";
import { Misread, mostStarts, unreadable } from "./grammar.ts";
import { nearestClasses, nearestInSeries, nearestSeries, type Reads, whereStopped } from "./nearest.ts";
import { whyNotHeld } from "./notheld.ts";
import type { Asked, Series } from "./series.ts";
import { plainText } from "./text.ts";
import type { Thread } from "./thread.ts";

const seriesByWord: ReadonlyMap<string, Series> = new Map(
  catalogue.flatMap((series) => series.words.map((word) => [word, series] as const)),
);

// Sheets ask for the same few designations over and over, also for those that cannot be read.
const known = new Map<string, Thread | Misread>();
const mostKnown = 512;

/**
 * The thread that a designation names, as the standards write it; case, spaces, x or ×, comma or point and inch marks
 * are forgiven.
 *
 * @param designation such as "M10x1.5-6g", "1/4-20 UNC", "1/2 BSW", "2 BA nut", or a note of THREAD.CUSTOM
 * @throws Unreadable saying what was read and where reading stopped
 */
export function readThread(designation: string): Thread {
  const before = known.get(designation);
  const answer = before ?? readOrMisread(designation);
  if (before === undefined) {
    if (known.size >= mostKnown) known.clear();
    known.set(designation, answer);
  }
  if (answer instanceof Misread) throw answer;
  return answer;
}

function readOrMisread(designation: string): Thread | Misread {
  try {
    return read(designation);
  } catch (error) {
    if (error instanceof Misread) return error;
    throw error;
  }
}

const reads: Reads = (text) => {
  try {
    return read(text, false);
  } catch (error) {
    // A number outside its domain is no thread either.
    if (error instanceof RangeError) return undefined;
    throw error;
  }
};

const wordPattern = /[a-z]+(?:[\s-]+(?:acme|butt|v\b))?/gi;

/** No thread needs so many letters, and what is longer would only be slow to refuse. */
const mostLetters = 200;

/** @param helpful a failure says what is near, which costs more reading */
function read(given: string, helpful = true): Thread {
  const designation = given.trim();
  if (designation.length > mostLetters) {
    const begins = `${designation.slice(0, 30)}...`;
    throw unreadable(begins, `a designation has at most ${mostLetters} letters, got ${designation.length}`);
  }
  let text = plainText(designation);
  if (text === "") throw unreadable(designation, "it is empty", { read: "", at: "" });
  let hand: Thread["hand"] = "right";
  let nut = false;
  let starts: number | undefined;
  const inches = readInches(text);
  if (inches) text = text.replace(inches.all, `-${Number((1 / inches.pitch).toPrecision(12))}`);
  // Most designations have none of these words.
  if (sharedWords.test(text)) {
    text = text.replace(gluedHand, (all, before: string, hand: string) =>
      /\d/.test(before) || seriesByWord.has(before.toLowerCase()) ? `${before} ${hand}` : all,
    );
    text = text.replace(
      /[\s-]*(?<![a-z])(?:(LH|left(?:[\s-]?hand(?:ed)?)?)|RH|right(?:[\s-]?hand(?:ed)?)?)\b/gi,
      (_, left) => {
        if (left !== undefined) hand = "left";
        return "";
      },
    );
    text = text.replace(/[\s-]*\bnut\b/gi, () => {
      nut = true;
      return "";
    });
    if (!/^custom/i.test(text)) {
      text = text.replace(startsInWords, (_, count: string) => {
        starts = countWords[count.toLowerCase()] ?? Number(count);
        return "";
      });
    }
  }
  if (inches?.lead !== undefined) starts = startsOf(designation, inches, starts);
  if (starts !== undefined && (starts < 1 || starts > mostStarts)) {
    throw unreadable(designation, `starts must be from 1 to ${mostStarts}, got ${starts}`, {
      read: text,
      at: `${starts} starts`,
    });
  }
  const found = findSeries(text);
  if (!found) {
    const bare = /^[\d\s./x*-]+$/i.test(text);
    const why = bare
      ? "it does not say which series (M, UNC, UNF, BSW, BA ...)"
      : (whyNotHeld(text) ??
        (/\b(?:coarse|fine)\b/i.test(text)
          ? "coarse or fine does not say which series: write M, UNC, UNF, BSW or BSF"
          : "no thread series in it is known"));
    if (!helpful) throw unreadable(designation, why);
    const { stop, nearest } = nearestSeries(text, reads);
    throw new Misread(designation, why, stop, nearest);
  }
  const { series, before, after } = found;
  let asked: Asked | undefined;
  try {
    asked = series.read({ text: designation, before, after, nut, starts }, series);
    return build(designation, asked, starts ?? asked.starts, nut, hand);
  } catch (error) {
    if (!helpful || !(error instanceof Misread)) throw error;
    const near =
      asked && error instanceof Misclassed
        ? nearestClasses(asked, error.stop?.at ?? "", nut)
        : nearestInSeries(series, before, after);
    const nearest = [...new Set(near.flatMap((text) => reads(text)?.designation ?? []))];
    throw new Misread(designation, error.why, error.stop ?? whereStopped(series, before, after), nearest);
  }
}

/** ASME B1.5 and B1.1 write pitch and lead of several starts in inches: 2.875-0.4P-0.8L Acme. */
const pitchAndLead = /(?<=\d)\s*-\s*((?=[\d.]*[1-9])\d*\.\d+)\s*P(?:\s*-\s*(\d*\.\d+)\s*L)?(?![a-z\d])/i;

interface Inches {
  readonly all: string;
  readonly pitch: number;
  readonly lead: number | undefined;
}

function readInches(text: string): Inches | undefined {
  const found = pitchAndLead.exec(text);
  if (!found) return undefined;
  const [all, pitch, lead] = found;
  return { all, pitch: Number(pitch), lead: lead === undefined ? undefined : Number(lead) };
}

function startsOf(text: string, { all, pitch, lead = pitch }: Inches, stated: number | undefined): number {
  const stop = { read: text.slice(0, text.indexOf(all)), at: all };
  const count = Math.round(lead / pitch);
  // Printed pitches and leads have four decimals.
  if (!(Math.abs(lead - count * pitch) <= 0.0001 * (count + 1)))
    throw unreadable(text, `the lead ${lead} is not a whole number of pitches ${pitch}`, stop);
  if (stated !== undefined && stated !== count)
    throw unreadable(
      text,
      `a lead of ${lead} and a pitch of ${pitch} make ${count} starts, not ${stated}`,
      stop,
    );
  return count;
}

/** A hand written on to the class or the name of the series: 2ALH, 6gLH, UNFLH. */
const gluedHand = /(\d[a-z]|(?<![a-z])[a-z]+?)([LR]H)\b/gi;

const sharedWords = /[lr]h|left|right|nut|start/i;

/** ISO 965-1 writes "(two starts)" behind lead and pitch. */
const countWords: Readonly<Record<string, number>> = {
  single: 1,
  one: 1,
  double: 2,
  twin: 2,
  two: 2,
  triple: 3,
  three: 3,
  quadruple: 4,
  four: 4,
  five: 5,
  six: 6,
};
const startsInWords = new RegExp(
  String.raw`[\s,(-]*\b(\d+|${Object.keys(countWords).join("|")})[\s-]?starts?\b\)?`,
  "gi",
);

function findSeries(text: string): { series: Series; before: string; after: string } | undefined {
  wordPattern.lastIndex = 0;
  for (let match = wordPattern.exec(text); match !== null; match = wordPattern.exec(text)) {
    const words = match[0].toLowerCase();
    const gap = /[\s-]/.exec(words);
    const whole = seriesByWord.get(gap ? words.replace(/[\s-]/g, "") : words);
    if (whole) return cut(text, match.index, words.length, whole);
    const first = gap && words.slice(0, gap.index);
    const firstSeries = first === null ? undefined : seriesByWord.get(first);
    if (firstSeries) return cut(text, match.index, first!.length, firstSeries);
  }
  return undefined;
}

function cut(text: string, at: number, length: number, series: Series) {
  const before = text.slice(0, at).replace(/[\s-]+$/, "");
  const after = text.slice(at + length).replace(/^[\s-]+/, "");
  return { series, before, after };
}
