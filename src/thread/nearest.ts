/** What a designation that cannot be read comes nearest to, and how far it was understood. For messages only. */
import { catalogue } from "./catalogue.ts";
import type { Stop } from "./grammar.ts";
import type { Asked, Series, Size } from "./series.ts";
import { fractionText, fractionValue, inchSize } from "./text.ts";
import type { Member, Thread } from "./thread.ts";

/** Gives the thread that a text names, undefined when it names none. */
export type Reads = (text: string) => Thread | undefined;

/** A size, perhaps with a pitch behind it. */
const roughly = new RegExp(
  String.raw`^(#|no\.?\s*)?(${inchSize})(?:\s*[-x*\s]\s*(?:1\s*\/\s*)?(\d*\.?\d+)(?!\s*\/))?`,
  "i",
);

const mostNamed = 3;

/** How far a designation of a known series was read, for a series that does not say so itself. */
export function whereStopped(series: Series, before: string, after: string): Stop {
  const given = before === "" ? after : before;
  const size = roughly.exec(given)?.[2];
  if (size === undefined) return { read: series.name, at: given };
  const known =
    series.sizes.length === 0 || series.sizes.some((each) => position(each, series) === fractionValue(size));
  const at = given.slice(given.indexOf(size)).trim();
  if (!known) return { read: series.name, at };
  return { read: `${series.name} ${size}`, at: at.slice(size.length).replace(/^[\s\-x*]+/i, "") };
}

const isNumberSize = (size: Size, series: Series) =>
  series.numberSizes === true && size.major < 0.22 && /^\d+$/.test(size.name);

/** Number by which a person looks for a size: its nominal size, or the diameter of a number size. */
function position(size: Size, series: Series): number {
  return isNumberSize(size, series) ? size.major : fractionValue(size.name);
}

/** Designations of the series, and of its relations, that are nearest in size and pitch. */
export function nearestInSeries(series: Series, before: string, after: string): readonly string[] {
  const found = roughly.exec(before === "" ? after : before);
  if (!found || series.sizes.length === 0) return [];
  const [, mark, size = "", pitch] = found;
  const wanted = pitch === undefined ? undefined : Number(pitch);
  const value = fractionValue(size);
  const named = [...nearestSizes(series, value, wanted, mark !== undefined)];
  if (wanted !== undefined && Number.isFinite(value)) named.push(...relations(series, value, wanted));
  return [...new Set(named)];
}

function nearestSizes(
  series: Series,
  value: number,
  wanted: number | undefined,
  marked: boolean,
): readonly string[] {
  // 7-32 is No. 7, as no inch size of a number series is so fine.
  const byNumber =
    series.numberSizes && (marked || (Number.isInteger(value) && value > 4 && !(wanted! < 20)));
  const where = (size: Size) => (byNumber ? Number(size.name) : position(size, series));
  const gap = (size: Size) => Math.abs(where(size) - value);
  const sizes = (
    byNumber ? series.sizes.filter((size) => isNumberSize(size, series)) : [...series.sizes]
  ).sort((a, b) => gap(a) - gap(b));
  const [first] = sizes;
  if (!first) return [];
  if (gap(first) < 1e-9)
    return nearPitches(first, wanted)
      .slice(0, 2)
      .map((pitch) => series.list(first, pitch));
  const other = sizes.find((size) => where(size) > value !== where(first) > value);
  return [first, other].flatMap((size) => (size ? [series.list(size, nearPitches(size, wanted)[0]!)] : []));
}

function nearPitches(size: Size, wanted: number | undefined): readonly number[] {
  const pitches = size.pitches.filter((pitch) => pitch > 0);
  return wanted === undefined ? pitches : pitches.sort((a, b) => Math.abs(a - wanted) - Math.abs(b - wanted));
}

/** The same size and pitch in another series, and as a special of the same form. */
function relations(series: Series, value: number, wanted: number): readonly string[] {
  // A pipe size is no diameter.
  if (series.sizes.some((size) => position(size, series) !== size.major)) return [];
  const alike = catalogue.filter(
    (other) => other !== series && other.unit === series.unit && other.perInch === series.perInch,
  );
  const strangeness = (other: Series) =>
    (other.standard === series.standard ? 0 : 2) + (other.form.loadFlank === series.form.loadFlank ? 0 : 1);
  const namesake = alike
    .flatMap((other) =>
      other.sizes
        .filter((size) => size.major === value && size.pitches.includes(wanted))
        .map((size) => ({ name: other.list(size, wanted), strange: strangeness(other) })),
    )
    .sort((a, b) => a.strange - b.strange)
    .slice(0, 1);
  const special = alike
    .filter((other) => other.sizes.length === 0 && other.form === series.form)
    .map((other) => other.list({ name: fractionText(value), major: value, pitches: [wanted] }, wanted));
  return [...namesake.map(({ name }) => name), ...special];
}

/** What a text without a known series may mean. */
export function nearestSeries(
  text: string,
  reads: Reads,
): { readonly stop: Stop; readonly nearest: readonly string[] } {
  const size = roughly.exec(text)?.[0].trim() ?? "";
  const stop = { read: size, at: text.slice(size.length).replace(/^[\s-]+/, "") };
  const guesses = /^[\d\s./x*#-]+$/i.test(text) ? unnamed(text, reads) : misspelt(text, reads);
  return { stop, nearest: [...new Set(guesses)].slice(0, mostNamed) };
}

/** Series that have this size and pitch, when none is named: the first of each included angle, then the others. */
function unnamed(text: string, reads: Reads): readonly string[] {
  const threads = catalogue
    .filter((series) => series.sizes.length > 0)
    .flatMap((series) => {
      const thread = reads(`${series.name} ${text}`);
      return thread?.series === series.name && thread.note === undefined ? [thread] : [];
    });
  const angle = ({ loadFlank, clearanceFlank }: Thread) => loadFlank + clearanceFlank;
  const firsts = threads.filter(
    (thread) => threads.find((other) => angle(other) === angle(thread)) === thread,
  );
  return [...new Set([...firsts, ...threads])].map(({ designation }) => designation);
}

/** The text with a word put right, fewest letters changed first, and words that were only cut short before others. */
function misspelt(text: string, reads: Reads): readonly string[] {
  const guesses: { designation: string; letters: number; cut: boolean; doubtful: boolean }[] = [];
  for (const word of text.matchAll(/[a-z]{2,}(?:[\s-]+(?:acme|butt))?/gi)) {
    const plain = word[0].toLowerCase().replace(/[\s-]/g, "");
    const room = plain.length < 4 ? 1 : 2;
    for (const series of catalogue) {
      const letters = Math.min(...series.words.map((known) => letterChanges(plain, known, room)));
      if (letters > room) continue;
      const mended = text.slice(0, word.index) + series.name + text.slice(word.index + word[0].length);
      const thread = reads(mended);
      if (!thread) continue;
      const cut = series.words.some((known) => known.startsWith(plain));
      guesses.push({ designation: thread.designation, letters, cut, doubtful: thread.note !== undefined });
    }
  }
  return guesses
    .sort(
      (a, b) =>
        a.letters - b.letters || Number(b.cut) - Number(a.cut) || Number(a.doubtful) - Number(b.doubtful),
    )
    .map(({ designation }) => designation);
}

/** The thread with the class that is a letter off, and with the usual class of the screw and of the nut. */
export function nearestClasses(
  { series, written, major }: Asked,
  stated: string,
  nut: boolean,
): readonly string[] {
  const { classes } = series;
  const meant = stated.toLowerCase();
  // Codes such as 6q are a letter from many others; only a word says what was meant.
  const spelt = (classes.accepted.match(/[a-z]{4,}/gi) ?? [])
    .filter((word) => letterChanges(meant, word.toLowerCase(), 1) <= 1)
    .flatMap((word) => classes.read(word, nut) ?? [])
    .slice(0, 1);
  const members: readonly Member[] = nut ? ["internal"] : ["external", "internal"];
  const usual = members.map((member) => ({ member, name: classes.usual(member, major) }));
  return [...spelt, ...usual].map((fit) => written + classes.write(fit)).slice(0, mostNamed);
}

/**
 * Letters to put in, leave out, change or swap with a neighbour until one word is the other.
 *
 * @param most words whose lengths differ by more are not looked at; the answer is then this difference
 */
function letterChanges(a: string, b: string, most: number): number {
  const least = Math.abs(a.length - b.length);
  if (least > most) return least;
  const rows: number[][] = [Array.from({ length: b.length + 1 }, (_, j) => j)];
  for (let i = 1; i <= a.length; i++) {
    const row = [i];
    for (let j = 1; j <= b.length; j++) {
      const same = a[i - 1] === b[j - 1] ? 0 : 1;
      row[j] = Math.min(rows[i - 1]![j]! + 1, row[j - 1]! + 1, rows[i - 1]![j - 1]! + same);
      if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1])
        row[j] = Math.min(row[j]!, rows[i - 2]![j - 2]! + 1);
    }
    rows.push(row);
  }
  return rows[a.length]![b.length]!;
}
