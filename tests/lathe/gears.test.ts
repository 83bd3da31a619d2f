// Expected values were computed independently of this code, to 7 digits, unless a test names another source.
import fc from "fast-check";
import { expect, test } from "vitest";
import {
  boxedText,
  leadCut,
  leadError,
  leadErrorMillionths,
  leadOfText,
  readTrain,
  roomForLeadError,
  trainText,
} from "../../src/lathe/gears.ts";
import { Unreadable } from "../../src/thread/failures.ts";
import { expectClose, seeded } from "./close.ts";

test("drivers lengthen the lead and driven gears shorten it", () => {
  expect(leadCut(4, [[30, 80]])).toBe(1.5);
  expectClose(
    leadCut(3.175, [
      [65, 50],
      [20, 55],
    ]),
    1.5009091,
  );
});

// 25.4 = 127/5, so 127 teeth make inch and metric exact.
test("a gear of 127 teeth cuts metric leads exactly from an inch leadscrew", () => {
  expectClose(leadCut(25.4 / 8, [[60, 127]]), 1.5, 1e-15);
});

test("a train reads as it is written", () => {
  const teeth = fc.integer({ min: 1, max: 200 });
  const trains = fc.array(fc.tuple(teeth, teeth), { minLength: 1, maxLength: 3 });
  fc.assert(
    fc.property(trains, fc.constantFrom("×", "x", "X", "*", "·"), (train, cross) => {
      expect(readTrain(trainText(train))).toEqual(train);
      expect(readTrain(trainText(train).replaceAll(" × ", cross))).toEqual(train);
    }),
    seeded,
  );
});

test("spaces in a train do not matter", () => {
  expect(readTrain("  65 / 50X20/55 ")).toEqual([
    [65, 50],
    [20, 55],
  ]);
});

test("a train through a gearbox reads as it is written, and its position picks the ratio", () => {
  const train = [[30, 80]] as const;
  expect(boxedText({ train, position: 3 })).toBe("30/80, box 3");
  expect(readTrain("30/80, box 3")).toEqual(train);
  // 4 x 30/80 is 1.5; the positions halve it, leave it and double it.
  for (const [text, lead] of [
    ["30/80, box 1", 0.75],
    ["30/80 , BOX 2 ", 1.5],
    ["30/80,box 3", 3],
    ["30/80", 1.5],
  ] as const)
    expect(leadOfText(text, 4, [0.5, 1, 2])).toBe(lead);
});

test("a position that the gearbox has not, or no gearbox, is refused", () => {
  expect(() => leadOfText("30/80, box 4", 4, [0.5, 1, 2])).toThrow("a box from 1 to 3, got 4");
  expect(() => leadOfText("30/80, box 0", 4, [0.5, 1, 2])).toThrow("a box from 1 to 3, got 0");
  expect(() => leadOfText("30/80, box 1", 4)).toThrow(Unreadable);
  expect(() => leadOfText("30/80, box 1", 4, [0])).toThrow("ratios must be greater than 0, got 0");
});

// By hand: 63 x 1.27 / 80 is 1.000125; 3302/3300 is 2/3300 too much.
test("an error in millionths", () => {
  expectClose(leadErrorMillionths(1 / 1.27, 63 / 80), 125, 1e-8);
  expectClose(leadErrorMillionths(1.5, 1651 / 1100), 2e6 / 3300, 1e-8);
  expect(leadErrorMillionths(1.5, 1.5)).toBe(0);
});

test.each([
  "",
  "65",
  "65/50 20/55",
  "65/50 ×",
  "65/0",
  "0/50",
  "65.5/50",
  "-65/50",
  "a/b",
  "65/50 + 20/55",
  "30/80, box",
  "30/80 box 2",
])("%j is no train, and the message shows one", (text) => {
  expect(() => readTrain(text)).toThrow(Unreadable);
  expect(() => readTrain(text)).toThrow(
    `cannot read "${text}" as a train: drivers over driven, like "30/80" or "65/50 × 20/55"`,
  );
});

test("a lead too long is a plus, in one turn and over a length", () => {
  const cut = leadCut(3.175, [
    [65, 50],
    [20, 55],
  ]);
  expectClose(leadError(1.5, cut), 0.0009091);
  expectClose(leadError(1.5, cut, 25), 0.0151515);
  expect(leadError(1.5, 1.499)).toBeLessThan(0);
  expect(leadError(1.5, cut, 0)).toBe(0);
});

test("a lead error uses up its size times cot A/2 on the pitch diameter, whichever its sign", () => {
  expectClose(roomForLeadError(1 / 66, 60), 0.0262432);
  expectClose(roomForLeadError(0.01, 90), 0.01, 1e-15); // cot 45 degrees is 1
  expect(roomForLeadError(-1 / 66, 60)).toBe(roomForLeadError(1 / 66, 60));
});

test.each([
  [() => leadCut(0, [[30, 80]]), "leadscrew_lead must be greater than 0, got 0"],
  [() => leadCut(4, [[0, 80]]), "driver must be a whole number of 1 or more, got 0"],
  [() => leadCut(4, [[30, 80.5]]), "driven must be a whole number of 1 or more, got 80.5"],
  [
    () =>
      leadCut(4, [
        [30, 80],
        [-1, 20],
      ]),
    "driver2 must be a whole number of 1 or more, got -1",
  ],
  [
    () =>
      leadCut(4, [
        [30, 80],
        [20, 0],
      ]),
    "driven2 must be a whole number of 1 or more, got 0",
  ],
  [() => leadCut(Number.MAX_VALUE, [[30, 20]]), "lead is too large for a number to hold"],
  [() => leadError(0, 1.5), "lead_wanted must be greater than 0, got 0"],
  [() => leadError(1.5, -1.5), "lead_cut must be greater than 0, got -1.5"],
  [() => leadError(1.5, 1.5, -1), "length must be 0 or more, got -1"],
  [() => roomForLeadError(0.01, 0), "included must be between 0 and 180 degrees, got 0"],
  [() => roomForLeadError(0.01, 180), "included must be between 0 and 180 degrees, got 180"],
])("refusal %# names argument, bound and value", (refused, says) => {
  expect(refused).toThrow(RangeError);
  expect(refused).toThrow(says);
});
