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
  ["1/4-20 UNC-2ALH", "1/4-20 UNC-2A LH"],
  ["1/4-20 UNC-2BLH", "1/4-20 UNC-2B LH"],
  ["M12x1.5-6gLH", "M12x1.5-6g LH"],
  ["1-5 Acme-2GLH", "1-5 Acme-2G LH"],
  ["M6-6hRH", "M6-6h"],
  ["1/2-20 UNFLH", "1/2-20 UNF LH"],
  ["2 BALH", "2 BA LH"],
  ["G 1/2BLH", "G 1/2 B LH"],
  // ISO 261: the coarse pitch of M12 is 1.75, the only fine one of M6 is 0.75.
  ["M12 coarse", "M12"],
  ["M12 coarse-6g LH", "M12-6g LH"],
  ["MJ12 coarse", "MJ12x1.75"],
  ["M12x1.75 coarse", "M12"],
  ["M12x1.5 fine", "M12x1.5"],
  ["M6 fine", "M6x0.75"],
  ["1/2-12 BSW (medium)", "1/2 BSW medium"],
  ["1/2 BSW close fit", "1/2 BSW close"],
  ["1/4-20 UNC class 2B", "1/4-20 UNC-2B"],
  ["1/2-13 NC-2", "1/2-13 NC-2"],
  ["1-5 Acme class 2C", "1-5 Acme-2C"],
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

// Fine pitches by ISO 261; dryseal threads are ASME B1.20.3; the class 9H is one of the seven of ISO 2903-2; that 5C and
// 6C are not for new work is what gauge makers print of ASME B1.5.
test.each([
  ["M12 fine", "M12 has several fine pitches: write M12x1.5 or M12x1.25 or M12x1"],
  ["M15 coarse", "M15 has no coarse pitch in ISO 261: write M15x1.5 or M15x1"],
  ["M13 fine", "M13 has no fine pitch in ISO 261: write the pitch"],
  ["M12x1.75 fine", "M12x1.75 is not fine: that is M12x1.5 or M12x1.25 or M12x1"],
  ["M12x1.5 coarse", "M12x1.5 is not coarse: that is M12x1.75"],
  ["1/4 coarse", "coarse or fine does not say which series: write M, UNC, UNF, BSW or BSF"],
  ["1/4-18 NPTF", "NPTF is a dryseal pipe thread of ASME B1.20.3"],
  ["1/2-14 NPTF-1", "whose crests and roots are not at hand and whose limits are gauged"],
  ["1/4-18 NPSF", "NPSF is a dryseal pipe thread"],
  [
    "Tr 20x4-9H",
    "the tolerances of the nut class 9H of ISO 2903 are not at hand; classes held: screw 7, 8 or 9",
  ],
  ["Tr 20x4-6H", "classes of Tr: screw 7, 8 or 9 with e or c such as 7e; nut 7H, 8H"],
  [
    "1-5 Acme-5C",
    "5C and 6C are of older editions of ASME B1.5, not for new work, and their limits are not at hand",
  ],
  ["1-5 Acme class 6C nut", "classes held: screw 2C, 3C, 4C; nut 2C, 3C, 4C"],
])("%s is refused with what to write, or what is not held: %s", (text, says) => {
  expect(() => readThread(text)).toThrow(says);
  expect(() => readThread(text)).toThrow(Unreadable);
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
