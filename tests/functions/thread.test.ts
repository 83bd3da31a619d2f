import fc from "fast-check";
import { expect, test } from "vitest";
import { ballFunctions } from "../../src/functions/balls.ts";
import { holeFunctions } from "../../src/functions/hole.ts";
import { threadFunctions } from "../../src/functions/thread.ts";
import { NothingFound, Unreadable } from "../../src/thread/failures.ts";
import { caller, parted } from "./call.ts";

const call = caller([...threadFunctions, ...holeFunctions, ...ballFunctions]);
const value = (name: string, ...args: Parameters<typeof call> extends [string, ...infer A] ? A : never) =>
  parted(call(name, ...args)).value as number;

// Values that the published description of these functions gives, computed independently to seven digits.
test.each<[string, ...(number | string | undefined)[]]>([
  ["THREAD.DEPTH", "1/2-12 BSW", "in", undefined, 0.0533606],
  ["THREAD.DEPTH", "M10", 0.920152],
  ["THREAD.CUTDEPTH", "M10", 0, 1.1366583],
  ["THREAD.CUTDEPTH", "M10", 0.375, 0.8118988],
  ["THREAD.CUTDEPTH", "M10", 0.2165064, "radius", 0.920152],
  ["THREAD.CUTDEPTH", "M10-6H", 0, 0.9742786],
  ["THREAD.CUTDEPTH", "M10-6g", 0.1875, "flat", "mm", "external", 9.85, 8.928, 0.9481393],
  ["THREAD.CUTDEPTH", "2-4 Butt", 0.4, "radius", 4.2700347],
  ["THREAD.FLANK", "S 48x8", "load", 3],
  ["THREAD.FLANK", "S 48x8", "clearance", 30],
  ["THREAD.TAPER", "1/4-18 NPT", 0.0625],
  ["THREAD.ROOT", "M10", "flat", 0.375],
  ["THREAD.TARGET", "M10-6g", "pitch", 8.928],
  ["HOLE.BORE", "M10", 75, 8.7821518],
  ["HOLE.BORE", "M10", 75, "mm", "drill", 8.5385821],
  ["HOLE.ENGAGEMENT", "M10", 8.5, 92.376043],
  ["HOLE.ENGAGEMENT", "M10", 8.5, "mm", "drill", 76.9800359],
  ["THREAD.LEAD", "M20x3-P1.5-6H", 3],
  ["THREAD.PITCH", "M20x3-P1.5-6H", 1.5],
])("%s(%s ...) gives the value computed independently", (name, ...rest) => {
  const expected = rest.at(-1) as number;
  expect(Math.abs(value(name, ...rest.slice(0, -1)) - expected)).toBeLessThanOrEqual(
    Math.abs(expected) * 5e-8 + 5e-8,
  );
});

// ISO 68-1: the nut is 5/8 H deep, 0.541266 of 1.5; its root is P/8 wide, the screw's crest too. ASME B1.9: 7 and 45 degrees.
test("nut and screw have each their own depth, and unequal flanks add up", () => {
  expect(value("THREAD.DEPTH", "M10", "mm", "internal")).toBeCloseTo(0.8118988, 7);
  expect(value("THREAD.DEPTH", "M10-6H")).toBeCloseTo(0.8118988, 7);
  expect(value("THREAD.ANGLE", "2-4 Butt")).toBe(52);
});

// Between 1.5 mm balls in an M20 nut, computed independently: 16.0388433 with its lead, 16.0410635 without any.
test("the lead that is given counts between balls, both ways", () => {
  expect(value("BALL.READING", 18.376, 2.5, 1.5, 60)).toBeCloseTo(16.0388433, 6);
  expect(value("BALL.READING", 18.376, 2.5, 1.5, 60, 0)).toBeCloseTo(16.0410635, 6);
  expect(value("BALL.PITCHDIA", 16.0410635, 2.5, 1.5, 60, 0)).toBeCloseTo(18.376, 6);
});

// Without lead a ball in a nut is the mirror image of a wire in a screw, which on 7/45 flanks reads 2.0377351, computed
// independently.
test("the trailing flank that is given counts between balls", () => {
  const flanks = [0.25, 0.13, 52, 0, "plain", 7] as const;
  expect(value("BALL.READING", 1.85, ...flanks)).toBeCloseTo(2 * 1.85 - 2.0377351, 7);
  expect(value("BALL.PITCHDIA", 2 * 1.85 - 2.0377351, ...flanks)).toBeCloseTo(1.85, 6);
});

test("a bore outside the limits of the nut's class carries a note", () => {
  expect(parted(call("HOLE.BORE", "M10", 75)).note).toBe("bore above the 6H maximum 8.676 mm");
  expect(parted(call("HOLE.BORE", "M10-5H", 100)).note).toBe("");
  expect(parted(call("HOLE.ENGAGEMENT", "M10", 8.2)).note).toBe("bore below the 6H minimum 8.376 mm");
  expect(parted(call("HOLE.ENGAGEMENT", "M10", 8.5)).note).toBe("");
});

test("figures from memory carry a note that says so", () => {
  expect(parted(call("THREAD.LIMIT", "1/4-28 UNJF", "pitch", "max", "in")).note).toContain("from memory");
  expect(parted(call("THREAD.LIMIT", "MJ6x1", "pitch", "max")).note).toContain("from memory");
  expect(parted(call("THREAD.PITCHDIA", "1-5 Acme-2G", "in")).note).toBe("");
});

test("limits of a pitch that the tables do not have carry a note, and others do not", () => {
  expect(parted(call("THREAD.LIMIT", "M10x1.1", "pitch", "max")).note).toContain("no pitch of 1.1 mm");
  expect(parted(call("THREAD.LIMIT", "M10x1.25-6g", "pitch", "max")).note).toBe("");
});

test("a stated member wins over the class", () => {
  expect(value("THREAD.MINOR", "M10-6H", "mm", "external")).toBe(value("THREAD.MINOR", "M10"));
  expect(value("THREAD.CUTDEPTH", "M10", 0, "flat", "mm", "internal")).toBe(
    value("THREAD.CUTDEPTH", "M10-6H", 0),
  );
});

test("a nose wider than the groove may have is refused", () => {
  for (const [text, nose, shape, member] of [
    ["M10", 0.376, "flat", "external"],
    ["M10", 0.2166, "radius", "external"],
    ["M10", 0.188, "flat", "internal"],
    ["1/4-20 UNC", 0.3176, "flat", "external"],
    ["1/2 BSW", 0.2908, "radius", "external"],
    ["1/2 BSW", 0.3529, "flat", "external"],
    ["0 BA", 0.182, "radius", "external"],
  ] as const) {
    expect(() => call("THREAD.CUTDEPTH", text, nose, shape, "mm", member), text).toThrow(
      /nose (flat|radius) must not be above/,
    );
  }
  expect(value("THREAD.CUTDEPTH", "1/2 BSW", 0.3527, "flat")).toBeGreaterThan(1.3);
});

test("a square custom thread is cut with a flat of half the pitch and no other", () => {
  const square = call("THREAD.CUSTOM", 20, 4, 0, 0, 2) as string;
  expect(value("THREAD.CUTDEPTH", square, 2)).toBe(2);
  expect(() => call("THREAD.CUTDEPTH", square, 1.9)).toThrow("half the pitch");
});

test("unequal flanks are told apart by load and clearance only", () => {
  const note = call("THREAD.CUSTOM", 40, 6, 3, 30, 4) as string;
  expect([call("THREAD.FLANK", note, "load"), call("THREAD.FLANK", note, "clearance")]).toEqual([3, 30]);
  for (const flank of [undefined, "leading", "trailing"]) {
    expect(() => call("THREAD.FLANK", note, flank)).toThrow(Unreadable);
    expect(() => call("THREAD.FLANK", note, flank)).toThrow(
      "say load or clearance: which one leads depends on the direction of the cut",
    );
  }
});

test("a symmetric form gives its one flank angle whichever is asked for", () => {
  expect(
    ["load", "clearance", "leading", "trailing", undefined].map((flank) =>
      call("THREAD.FLANK", "M10", flank),
    ),
  ).toEqual([30, 30, 30, 30, 30]);
});

test("what a form does not have is not found", () => {
  expect(() => call("THREAD.ROOT", "1/2 BSW", "flat")).toThrow(NothingFound);
  expect(() => call("THREAD.CREST", "M10", "radius")).toThrow(NothingFound);
});

test("threads that only the angle tells apart are named together until the angle is known", () => {
  expect(call("THREAD.MATCH", 0.248, 0.05, 1, "in")).toBe("1/4-20 UNC or 1/4 BSW");
  expect(call("THREAD.MATCH", 0.248, 0.05, 1, "in", undefined, 60)).toBe("1/4-20 UNC");
  expect(call("THREAD.MATCH", 4.65, 0.81, 1, "mm")).toBe("2 BA");
});

test("a candidate that is not there is not found", () => {
  expect(() => call("THREAD.MATCH", 10, 7.77)).toThrow(NothingFound);
  expect(() => call("THREAD.MATCH", 10, 1.5, 500)).toThrow(NothingFound);
  expect(() => call("THREAD.MATCH", 10, 1.5, 1.5)).toThrow("rank must be a whole number");
});

test("a measured basic size is found again, among the first candidates, for every coarse metric thread", () => {
  for (const [d, P] of [
    [3, 0.5],
    [5, 0.8],
    [10, 1.5],
    [20, 2.5],
    [36, 4],
    [64, 6],
  ] as const) {
    expect(call("THREAD.MATCH", d, P)).toContain(`M${d}`);
  }
});

test("inch and millimetre views of a length agree", () => {
  const names = [
    "THREAD.MAJOR",
    "THREAD.PITCH",
    "THREAD.LEAD",
    "THREAD.PITCHDIA",
    "THREAD.MINOR",
    "THREAD.DEPTH",
  ];
  const texts = [
    "M10",
    "G 1/2",
    "1/4-18 NPT",
    "1-5 Acme",
    "Tr 20x4",
    "S 48x8",
    "2-4 Butt",
    "Rd 40x1/6",
    "Sq 1-4",
    "1/4-20 UNC",
    "1/2 BSW",
    "2 BA",
    "MJ6x1",
    "6-12 UN-3B",
    "M20x3-P1.5",
  ];
  fc.assert(
    fc.property(fc.constantFrom(...names), fc.constantFrom(...texts), (name, text) => {
      const mm = value(name, text, "mm");
      expect(Math.abs(value(name, text, "in") * 25.4 - mm)).toBeLessThanOrEqual(mm * 1e-12);
    }),
    { seed: 20261125 },
  );
});

test("a custom note keeps its numbers through reading", () => {
  const size = fc.double({ min: 1, max: 200, noNaN: true });
  fc.assert(
    fc.property(
      size,
      fc.double({ min: 0.01, max: 0.2, noNaN: true }),
      fc.integer({ min: 0, max: 40 }),
      fc.integer({ min: 1, max: 40 }),
      (major, share, load, clearance) => {
        const pitch = major * share;
        const depth = pitch * 0.3;
        const note = call(
          "THREAD.CUSTOM",
          major,
          pitch,
          load,
          clearance,
          depth,
          undefined,
          2,
          "in",
        ) as string;
        expect(value("THREAD.MAJOR", note, "in")).toBe(major);
        expect(value("THREAD.LEAD", note, "in")).toBe(2 * pitch);
        expect(value("THREAD.DEPTH", note, "in")).toBe(depth);
        expect(value("THREAD.PITCHDIA", note, "in")).toBeCloseTo(major - depth, 9);
      },
    ),
    { seed: 20261125 },
  );
});

test.each<[string, (number | string | undefined)[], string]>([
  ["THREAD.CUSTOM", [0, 1, 30, 30, 0.5], "major must be greater than 0, got 0"],
  ["THREAD.CUSTOM", [20, -1, 30, 30, 0.5], "pitch must be greater than 0, got -1"],
  ["THREAD.CUSTOM", [20, 2, 90, 30, 0.5], "load_flank must be between"],
  ["THREAD.CUSTOM", [20, 2, 30, 30, 2], "depth must leave a root and crest"],
  ["THREAD.CUSTOM", [20, 2, 30, 30, 1, undefined, 1.5], "starts must be a whole number"],
  ["HOLE.BORE", ["M10", 0], "engagement_percent must be above 0"],
  ["HOLE.ENGAGEMENT", ["M10", 11], "bore must be above 0 and not above the major diameter 10, got 11"],
  ["THREAD.MATCH", [10, 0], "pitch must be greater than 0, got 0"],
])("%s%j names the argument, the bound and the value", (name, args, says) => {
  expect(() => call(name, ...args)).toThrow(RangeError);
  expect(() => call(name, ...args)).toThrow(says);
});
