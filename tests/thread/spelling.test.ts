// Spellings met on drawings and in the shop, and texts that are no thread at all.
import { expect, test } from "vitest";
import { cutDepth } from "../../src/thread/cutdepth.ts";
import { Unreadable } from "../../src/thread/failures.ts";
import { readThread } from "../../src/thread/read.ts";

test.each([
  // ISO 965-1 puts the starts in words behind lead and pitch.
  ["M16xPh3P1.5 (two starts)", "M16x3-P1.5"],
  ["M16xPh6P2-7H (three starts)", "M16x6-P2-7H"],
  ["1/2-10 Acme two start", "1/2-10 Acme 2 starts"],
  ["Sq 1-4 double-start", "Sq 1-4 2 starts"],
  ["M10-1.5", "M10"],
  ["M10-1.25-6g", "M10x1.25-6g"],
  ["M6-1.0 LH", "M6 LH"],
  ["M10 mm x 1.5 mm", "M10"],
  ["M10x1.5 - 6 g", "M10-6g"],
  ["M10 left", "M10 LH"],
  ["1/2-12 BSW (medium)", "1/2 BSW medium"],
  ["1/2 BSW close fit", "1/2 BSW close"],
  ["1/4-20 UNC class 2B", "1/4-20 UNC-2B"],
  ["1/2-13 NC-2", "1/2-13 NC-2"],
  ["1/2-13 NC class 3 nut", "1/2-13 NC-3 nut"],
  ['1/2" Whit', "1/2 BSW"],
  ["1-11 1/2 NPT", "1-11.5 NPT"],
  ["1 1/2 - 11 1/2 NPT", "1 1/2-11.5 NPT"],
  ["PF 1/2", "G 1/2"],
  ["PT 1/2", "R 1/2"],
  ["sharp V 3/4-10", "3/4-10 Sharp V"],
  ["#10-24 Sharp-V", "10-24 Sharp V"],
])("%s means %s", (given, meant) => {
  const thread = readThread(given);
  expect(thread.designation).toBe(meant);
  expect(readThread(meant).designation).toBe(meant);
});

// M10-6 may mean a grade without its position: only a listed pitch is taken for a pitch.
test.each(["M10-6", "M10-2", "M10-1.5g"])("%s is not taken for a pitch that the size has not", (text) => {
  expect(() => readThread(text)).toThrow("classes of M");
});

// Proportions of the sharp V thread: depth 0.866025 P, so the wire formula has D - 1.732051 P for its root.
test("a sharp V thread goes down to its corners", () => {
  const { major, pitchDia, minor, crestFlat, rootFlat, loadFlank } = readThread("1-8 Sharp V");
  expect(major - pitchDia).toBeCloseTo(0.866025 / 8, 6);
  expect(major - minor.external).toBeCloseTo(1.732051 / 8, 6);
  expect([crestFlat, rootFlat, loadFlank]).toEqual([0, 0, 30]);
  expect(() => readThread("1-8 Sharp V").limits()).toThrow("no limits of size are held for Sharp V threads");
});

test("a sharp V thread wants a sharp tool", () => {
  const thread = readThread("3/4-10 Sharp V");
  expect(cutDepth(thread, 0, "flat", "external")).toBeCloseTo(0.0866025, 7);
  for (const shape of ["flat", "radius"] as const)
    expect(() => cutDepth(thread, 0.01, shape, "external")).toThrow("must not be above 0 in");
});

// A bare size names a thread of each angle first, so that 55 degrees is not hidden behind kinds of 60.
test.each([
  ["1/4-20", "1/4-20 UNC, 1/4 BSW"],
  ["10x1.5", "M10"],
])("%s without a series is answered with %s", (text, nearest) => {
  expect(() => readThread(text)).toThrow(`; nearest: ${nearest}`);
});

// ISO 2903 is printed at hand for pitches below 5 mm and position e.
test.each([
  ["Tr 20x4-7e", false],
  ["Tr 40x7-7e", true],
  ["Tr 20x4-8c", true],
  ["Tr 40x7-7H", false],
])("limits of %s from memory are noted: %s", (text, noted) => {
  expect(readThread(text).limitsNote !== undefined).toBe(noted);
});

const long = (piece: string) => piece.repeat(Math.ceil(100_000 / piece.length));

test.each([
  ["digits", `${long("1")} UNC`],
  ["numbers", `${long("1 ")}UNC`],
  ["words", long("ab cd-")],
  ["spaces inside", `left${long(" ")}M10`],
  ["hyphens", `M10${long("-")}6g`],
  ["starts", long("2 starts ")],
  ["inch marks", `${long('"')}M10`],
  ["points", long("B.")],
  ["brackets", `Custom ${long("(")}`],
])("a text of a hundred thousand %s is refused at once, in few words", (_, text) => {
  let message = "";
  try {
    readThread(text);
  } catch (error) {
    expect(error).toBeInstanceOf(Unreadable);
    message = (error as Error).message;
  }
  expect(message).toContain("at most 200 letters");
  expect(message.length).toBeLessThan(300);
});

test.each(["1/0 BSW", "0/0 BSW", "1/0-20 UNC", `M${"9".repeat(190)}e9`])(
  "%s is refused without a word about NaN or Infinity",
  (text) => {
    expect(() => readThread(text)).toThrow(Unreadable);
    expect(() => readThread(text)).not.toThrow(/NaN|Infinity/);
  },
);
