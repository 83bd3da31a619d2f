/** The three ways in which designations give size and pitch: diameter x pitch, size-threads per inch, or a number. */
import { Unreadable } from "./failures.ts";
import type { Asked, Parts, Series, Size } from "./series.ts";
import { fractionText, fractionValue, inchSize } from "./text.ts";

export const examples =
  "M10x1.5-6g, 1/4-20 UNC-2A, 1/2-12 BSW, 2 BA, G 1/2, 1/4-18 NPT, 1-5 Acme-2G or Tr 20x4";

/** How far a designation was understood, and the text at which reading stopped; "" is its end. */
export interface Stop {
  readonly read: string;
  readonly at: string;
}

/** A designation that cannot be read, as whoever gave up saw it; the reader adds where that was and what is near. */
export class Misread extends Unreadable {
  constructor(
    readonly text: string,
    readonly why: string,
    readonly stop: Stop | undefined,
    readonly nearest: readonly string[] = [],
  ) {
    const where =
      stop &&
      [
        stop.read === "" ? "read nothing" : `read ${stop.read}`,
        stop.at === "" ? "stopped at the end" : `stopped at "${stop.at}"`,
      ].join(", ");
    const near = nearest.length === 0 ? "" : `; nearest: ${nearest.join(", ")}`;
    super(
      `cannot read "${text}" as a thread: ${where === undefined ? "" : `${where}: `}${why}${near}; write for example ${examples}`,
    );
  }
}

/** Error for a designation: what was given, why it cannot be read and, where the caller knows it, where reading stopped. */
export function unreadable(text: string, why: string, stop?: Stop): Misread {
  return new Misread(text, why, stop);
}

const sizesByName = new WeakMap<readonly Size[], Map<number, Size>>();

/** The tabled size of that diameter. */
export function findSize(sizes: readonly Size[], major: number): Size | undefined {
  let index = sizesByName.get(sizes);
  if (!index) {
    index = new Map(sizes.map((size) => [size.major, size]));
    sizesByName.set(sizes, index);
  }
  return index.get(major);
}

const pitchPattern =
  /^(\d*\.?\d+)(?:\s*mm\b)?(?:\s*[x*]\s*(?:ph\s*)?(\d*\.?\d+)(?:[\s\-(]*p\s*(\d*\.?\d+)\s*\)?)?(?:\s*mm\b)?)?/i;
/** A pitch behind a hyphen, as in M10-1.5; no class is a bare number. */
const hyphenPitch = /^\s*-\s*(\d*\.?\d+)(?:\s*mm\b)?(?=$|[\s-])/;

/** Largest number of starts that is taken for more than a slip of the pen. */
export const mostStarts = 24;

/** M20, M20x1.5, M20x3-P1.5, M20xPh3P1.5, each after the name; any diameter and pitch. */
export function byPitch(parts: Parts, series: Series): Asked {
  const given = parts.before === "" ? parts.after : `${parts.before} ${parts.after}`;
  const found = pitchPattern.exec(given);
  if (!found)
    throw unreadable(parts.text, `after ${series.name} a diameter is wanted`, {
      read: series.name,
      at: given,
    });
  const [plain, diameter = "", crossed, third] = found;
  const major = positive(parts.text, Number(diameter), "diameter");
  const size = findSize(series.sizes, major);
  const hyphened = crossed === undefined ? hyphenPitch.exec(given.slice(plain.length)) : null;
  const listed = hyphened && size?.pitches.includes(Number(hyphened[1])) ? hyphened : undefined;
  const all = plain + (listed?.[0] ?? "");
  const second = crossed ?? listed?.[1];
  const usual = size?.pitches.find((pitch) => pitch > 0);
  const lead = second === undefined ? undefined : positive(parts.text, Number(second), "pitch");
  const pitch = third === undefined ? (lead ?? usual) : positive(parts.text, Number(third), "pitch");
  if (pitch === undefined) {
    const head = `${series.prefix ?? series.name}${diameter}`;
    const near = around(series.sizes, major)[0]?.pitches.find((p) => p > 0) ?? 1;
    throw unreadable(parts.text, `${head} has no usual pitch: write the pitch too, such as ${head}x${near}`, {
      read: head,
      at: given.slice(all.length).trim(),
    });
  }
  if (lead === undefined && size?.pitches[0] === 0 && size.pitches.length > 2) {
    const choice = size.pitches.slice(1).map((p) => `${series.name}${size.name}x${p}`);
    const read = `${series.name}${size.name}`;
    throw unreadable(parts.text, `${read} has no coarse pitch: write ${choice.join(", ")}`, {
      read,
      at: given.slice(all.length).trim(),
    });
  }
  const starts = third === undefined || lead === undefined ? (parts.starts ?? 1) : Math.round(lead / pitch);
  if (third !== undefined && (starts < 1 || starts > mostStarts || Math.abs(lead! / pitch - starts) > 1e-6)) {
    throw unreadable(parts.text, `the lead ${lead} is not a whole number of pitches ${pitch}`, {
      read: `${series.prefix ?? series.name}${diameter}x${second}`,
      at: third,
    });
  }
  const head = `${series.prefix ?? series.name}${major}`;
  const single = size?.pitches.includes(pitch) ? series.list(size, pitch) : `${head}x${pitch}`;
  return {
    series,
    name: String(major),
    major,
    pitch,
    starts,
    rest: given.slice(all.length),
    written:
      starts === 1
        ? single
        : `${head}x${Number((pitch * starts).toPrecision(12))}${series.leadMark ?? "-P"}${pitch}`,
  };
}

const sizesInOrder = new WeakMap<readonly Size[], readonly Size[]>();

/** The tabled sizes next below and next above a diameter, the nearer one first; one at the ends of the table. */
export function around(sizes: readonly Size[], major: number): readonly Size[] {
  let order = sizesInOrder.get(sizes);
  if (!order) {
    order = [...sizes].sort((a, b) => a.major - b.major);
    sizesInOrder.set(sizes, order);
  }
  let from = 0;
  let to = order.length;
  while (from < to) {
    const middle = (from + to) >> 1;
    if (order[middle]!.major <= major) from = middle + 1;
    else to = middle;
  }
  const [below, above] = [order[from - 1], order[from]];
  if (!below || !above) return [below ?? above!];
  return major - below.major <= above.major - major ? [below, above] : [above, below];
}

function positive(text: string, value: number, what: string): number {
  if (!(value > 0 && Number.isFinite(value))) {
    const got = Number.isFinite(value) ? `, got ${value}` : " and finite";
    throw unreadable(text, `the ${what} must be greater than 0${got}`);
  }
  return value;
}

/** Error for text that stands between the size and the name of the series. */
export function betweenSizeAndName(text: string, read: string, leftOver: string, series: Series): Misread {
  const why = `between the size and ${series.name} nothing but the pitch is wanted`;
  return unreadable(text, why, { read: read.trim(), at: leftOver });
}

export interface InchSize {
  readonly name: string;
  readonly major: number;
  /** Threads per inch as written, undefined when left out. */
  readonly tpi: number | undefined;
  readonly rest: string;
}

const marked = String.raw`(?:#|no\.?\s*)(\d+)`;
const inchPattern = new RegExp(
  String.raw`^(?:${marked}|(${inchSize}))(?:\s*[-x*\s]\s*((?:\d+[\s-]+\d+\/\d+)|\d*\.?\d+)(?:\s*(?:tpi|t\.p\.i\.))?(?![\d\/a-z]))?`,
  "i",
);

/** Number sizes: name, and the fewest threads per inch with which a plain number means the number size. */
const fewestThreads: Readonly<Record<string, number>> = {
  0: 56,
  1: 48,
  2: 40,
  3: 36,
  4: 30,
  5: 30,
  6: 24,
  8: 24,
  10: 20,
  12: 20,
};

/** Diameter of a number size, inches. Source: ASME B1.1. */
export function numberSize(n: number): number {
  return Number((0.06 + 0.013 * n).toFixed(3));
}

/** Number sizes by their diameter: 0.190-32 is 10-32. */
const numberNames: ReadonlyMap<number, string> = new Map(
  Object.keys(fewestThreads).map((name) => [numberSize(Number(name)), name]),
);

/** 1/4-20, 0.250-20, 1 1/8-12, 10-32, #10-32, 3/8. */
export function readInchSize(parts: Parts, series: Series): InchSize {
  const numbers = series.numberSizes === true;
  const found = inchPattern.exec(parts.before) ?? inchPattern.exec(parts.after);
  const given = parts.before === "" ? parts.after : parts.before;
  if (!found)
    throw unreadable(parts.text, `a size such as 1/4 is wanted beside ${series.name}`, {
      read: series.name,
      at: given,
    });
  const inFront = inchPattern.test(parts.before);
  const leftOver = (inFront ? parts.before : parts.after).slice(found[0].length).trim();
  if (inFront && leftOver !== "") throw betweenSizeAndName(parts.text, found[0], leftOver, series);
  const rest = inFront ? parts.after : leftOver;
  const tpi =
    found[3] === undefined ? undefined : positive(parts.text, fractionValue(found[3]), "threads per inch");
  const number = found[1] ?? found[2] ?? "";
  if (numbers && found[1] === undefined && tpi === undefined && /^[1234]$/.test(number)) {
    throw unreadable(
      parts.text,
      `${number} may be No. ${number} or ${number} in: write the threads per inch too`,
    );
  }
  const fewest = fewestThreads[number];
  const isNumber =
    numbers &&
    (found[1] !== undefined ||
      (fewest !== undefined && (tpi === undefined ? Number(number) > 4 || number === "0" : tpi >= fewest)));
  if (found[1] !== undefined && !numbers) throw unreadable(parts.text, `${series.name} has no number sizes`);
  if (isNumber) return { name: number, major: numberSize(Number(number)), tpi, rest };
  const major = positive(parts.text, fractionValue(number), "diameter");
  const asNumber = numbers ? numberNames.get(major) : undefined;
  return { name: asNumber ?? fractionText(major), major, tpi, rest };
}

/** Inch series with a table: a size has one or more threads per inch, and no others. */
export function byTable(parts: Parts, series: Series): Asked {
  const size = readInchSize(parts, series);
  const tabled = findSize(series.sizes, size.major);
  if (!tabled) {
    throw unreadable(parts.text, `${series.name} has no such size`);
  }
  const tpi = size.tpi ?? tabled.pitches[0]!;
  if (!tabled.pitches.includes(tpi)) {
    throw unreadable(
      parts.text,
      `${tabled.name} ${series.name} has ${tabled.pitches.join(" or ")} threads per inch, not ${tpi}`,
      { read: `${tabled.name} ${series.name}`, at: String(tpi) },
    );
  }
  return {
    series,
    name: tabled.name,
    major: tabled.major,
    pitch: 1 / tpi,
    starts: 1,
    rest: size.rest,
    written: series.list(tabled, tpi),
  };
}

/** Inch series of any size and pitch; a tabled size may leave its threads per inch out. */
export function byThreads(parts: Parts, series: Series): Asked {
  const { name, major, tpi, rest } = readInchSize(parts, series);
  const threads = tpi ?? findSize(series.sizes, major)?.pitches[0];
  if (threads === undefined) {
    throw unreadable(
      parts.text,
      `write the threads per inch too, such as ${name}-${major < 1 ? 10 : 4} ${series.name}`,
    );
  }
  const size: Size = { name, major, pitches: [threads] };
  return { series, name, major, pitch: 1 / threads, starts: 1, rest, written: series.list(size, threads) };
}

/** Inch sizes from text: "1/4 20|1/2 12" gives sizes of those diameters and threads per inch. */
export function inchSizes(table: string): readonly Size[] {
  return table.split(/[|\n]/).map((row) => {
    const [name = "", ...pitches] = row.split(" ");
    const value = fractionValue(name);
    return { name: fractionText(value), major: value, pitches: pitches.map(Number) };
  });
}
