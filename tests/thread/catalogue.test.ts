// Properties that hold for every size, pitch, member and class of every series; no expected values.
import { expect, test } from "vitest";
import { threadSizes } from "../../src/functions/threadsizes.ts";
import { threadWork } from "../../src/functions/threadwork.ts";
import { catalogue } from "../../src/thread/catalogue.ts";
import { NothingFound } from "../../src/thread/failures.ts";
import { readThread } from "../../src/thread/read.ts";
import type { Series } from "../../src/thread/series.ts";
import type { LengthUnit, Limits, Member, Thread } from "../../src/thread/thread.ts";
import { caller } from "../functions/call.ts";

/** Every class that some series has; each is asked whether it takes it. */
const grades = ["3", "4", "5", "6", "7", "8", "9"];
const classTexts = [
  ...grades.flatMap((grade) => [..."abcdefghEFGH"].map((position) => grade + position)),
  ..."5g6g 4h6h 7g6g 3h4h 4H5H 5H6H 4H6H 1A 2A 3A 1B 2B 3B 2G 3G 4G 2C 3C 4C 2 3 A B".split(" "),
  ..."close medium free normal".split(" "),
];

/** Series without a list of sizes, by an example. */
const examples = [
  "3/4-10 Sharp V",
  "1-13 UNS",
  "1-13 UNRS",
  "1-13 UNJS",
  "3/4-14 Whit",
  "2-4 Butt",
  "2-4 Push-Butt",
  "Sq 1-4",
];
examples.push("Sq 40x7", "1-5 Acme-2C", "1-5 Acme-3C nut", "M20x3-P1.5", "Tr 40x14 P7");

const listed = (series: Series) =>
  series.sizes.flatMap((size) =>
    size.pitches.filter((pitch) => pitch > 0).map((pitch) => series.list(size, pitch)),
  );

/** What can stand behind a size: nothing, the word nut, every class of the series. */
function suffixes(series: Series): readonly string[] {
  const found = new Set(["", series.member === "internal" ? "" : " nut"]);
  for (const text of classTexts) {
    for (const nut of [false, true]) {
      const fit = series.classes.read(text, nut);
      if (fit) found.add(series.classes.write(fit));
    }
  }
  return [...found];
}

/** The tabled sizes with every class, and without one. */
function designations(series: Series): readonly string[] {
  const behind = suffixes(series);
  return listed(series).flatMap((text) => behind.map((suffix) => text + suffix));
}

/** Undefined where the standard has no limits, which must say why. */
function limitsOf(thread: Thread, member: Member): Limits | undefined {
  try {
    return thread.limits(member);
  } catch (error) {
    if (!(error instanceof NothingFound)) throw error;
    expect(error.message).toMatch(/^no (class )?limits/);
    return undefined;
  }
}

const members = ["external", "internal"] as const;

/** Everything that a thread says of itself. */
function figures(thread: Thread): string {
  const { form, limits: _, classTaken: __, ...plain } = thread;
  return JSON.stringify([plain, form.name, members.map((member) => limitsOf(thread, member) ?? "none")]);
}

/** What is wrong with a thread, in words. */
function faults(thread: Thread): readonly string[] {
  const found: string[] = [];
  const rule = (holds: boolean, what: string) => holds || found.push(`${thread.designation}: ${what}`);
  const { major, pitchDia, minor, depth } = thread;
  for (const member of members) {
    rule(minor[member] < pitchDia && pitchDia < major, `${member} minor < pitch < major`);
    rule(minor[member] > 0 && depth[member] > 0, `${member} minor and depth above 0`);
    // A nut may be deeper than from basic minor to basic major, never shallower.
    rule(2 * depth[member] >= major - minor[member] - 0.011, `${member} depth reaches from minor to major`);
  }
  for (const member of [thread.member]) {
    const limits = limitsOf(thread, member);
    if (!limits) continue;
    for (const diameter of ["major", "pitch", "minor"] as const) {
      const { max = Number.NaN, min = Number.NaN } = limits[diameter];
      rule(!(max <= min), `${member} ${diameter} go and not-go in order`);
      for (const value of [max, min]) rule(Number.isNaN(value) || value > 0, `${member} ${diameter} above 0`);
      const basic = { major, pitch: pitchDia, minor: minor[member] }[diameter];
      // Go is on the basic size's own side: a parallel screw is never larger, a nut never smaller; both may round.
      const go = member === "external" ? max - basic : basic - min;
      const fits = thread.taper > 0 || ["Rp", "NPSC"].includes(thread.series);
      rule(fits || Number.isNaN(go) || go < 0.0006, `${member} ${diameter} go does not pass basic`);
    }
    for (const end of ["max", "min"] as const) {
      const {
        major: D = Number.NaN,
        pitch: E = Number.NaN,
        minor: d = Number.NaN,
      } = {
        major: limits.major[end],
        pitch: limits.pitch[end],
        minor: limits.minor[end],
      };
      rule(!(d >= E) && !(E >= D) && !(d >= D), `${member} ${end}: minor < pitch < major`);
    }
  }
  return found;
}

for (const series of catalogue.filter(({ sizes }) => sizes.length > 0)) {
  test(`every size of ${series.name} in every class has diameters and limits in order`, () => {
    expect(designations(series).flatMap((text) => faults(readThread(text)))).toEqual([]);
  }, 30_000);

  test(`every size of ${series.name} in every class and either hand reads back to the same thread`, () => {
    const different = designations(series).flatMap((text, i) => {
      const given = i % 3 === 0 ? `${text} LH` : text;
      const thread = readThread(given);
      const again = readThread(thread.designation);
      // 1/4-20 UN is UNC: a constant pitch that coarse, fine or extra-fine has is theirs.
      const own = /^UN[RJ]?$/.test(series.name)
        ? thread.series.startsWith(series.name)
        : thread.series === series.name;
      return own && figures(again) === figures(thread) ? [] : [given];
    });
    expect(different).toEqual([]);
  }, 60_000);
}

test.each(examples)("%s, of a series without a list, keeps to the same rules", (text) => {
  const thread = readThread(text);
  expect(faults(thread)).toEqual([]);
  expect(readThread(thread.designation).designation).toBe(thread.designation);
});

const call = caller([...threadSizes, ...threadWork]);

/** Every length that a designation has; undefined where its form or standard has none, for the same reason in both units. */
const lengths: readonly (readonly [name: string, ...before: string[]])[] = [
  ...["MAJOR", "PITCH", "LEAD", "PITCHDIA", "MINOR", "DEPTH"].map((name) => [`THREAD.${name}`] as const),
  ...["radius", "flat"].flatMap((shape) => [
    ["THREAD.ROOT", shape] as const,
    ["THREAD.CREST", shape] as const,
  ]),
  ...["major", "pitch", "minor"].flatMap((diameter) => [
    ["THREAD.LIMIT", diameter, "max"] as const,
    ["THREAD.LIMIT", diameter, "min"] as const,
    ["THREAD.TARGET", diameter] as const,
  ]),
];

function lengthIn(unit: LengthUnit, name: string, ...given: string[]): number | string {
  try {
    const answer = call(name, ...given, unit);
    return typeof answer === "object" && "value" in answer ? (answer.value as number) : (answer as number);
  } catch (error) {
    if (!(error instanceof NothingFound)) throw error;
    return error.message;
  }
}

test("inches and millimetres say the same of every size and limit, to a part in 1e12", () => {
  let compared = 0;
  const different: string[] = [];
  for (const text of [...catalogue.flatMap(listed), ...examples].flatMap((each) => [each, `${each} nut`])) {
    for (const [name, ...before] of lengths) {
      const mm = lengthIn("mm", name, text, ...before);
      const inches = lengthIn("in", name, text, ...before);
      if (typeof mm === "number" && typeof inches === "number") compared += 1;
      const alike =
        typeof mm === "number" && typeof inches === "number"
          ? Math.abs(mm - inches * 25.4) <= 1e-12 * Math.abs(mm)
          : mm === inches;
      if (!alike) different.push(`${name} ${text} ${before.join(" ")}: ${mm} against ${inches}`);
    }
  }
  expect(different).toEqual([]);
  expect(compared).toBeGreaterThan(50_000);
}, 60_000);

test("no two series answer to one word, and every series has a listed or an exemplary thread", () => {
  const words = catalogue.flatMap((series) => series.words);
  expect(new Set(words).size).toBe(words.length);
  const shown = new Set(examples.map((text) => readThread(text).series));
  const hidden = catalogue.filter(({ name, sizes }) => sizes.length === 0 && !shown.has(name));
  expect(hidden.map(({ name }) => name)).toEqual(["Custom"]);
});
