// Turning the work: expected values by hand.
import fc from "fast-check";
import { expect, test } from "vitest";
import { startDivisions, startTeeth } from "../../src/lathe/indexing.ts";
import { NothingFound } from "../../src/thread/failures.ts";
import { seeded } from "./close.ts";

test("a start is its share of a turn, in divisions and in teeth", () => {
  expect([1, 2, 3].map((start) => startDivisions(12, 3, start))).toEqual([0, 4, 8]);
  expect(startTeeth(40, 2, 2)).toBe(20);
  // A gear that turns half as fast as the spindle: 30 teeth a turn.
  expect(startTeeth(60, 3, 3, 0.5)).toBe(20);
  // A gear that turns 4/3 times: 60 teeth a turn, held as a number that is no whole one.
  expect(startTeeth(45, 4, 2, 4 / 3)).toBe(15);
});

test("all starts together turn the work once, and the steps between them are alike", () => {
  fc.assert(
    fc.property(fc.integer({ min: 1, max: 12 }), fc.integer({ min: 1, max: 20 }), (starts, step) => {
      for (let start = 1; start <= starts; start++) {
        expect(startDivisions(starts * step, starts, start)).toBe((start - 1) * step);
        expect(startTeeth(starts * step, starts, start)).toBe((start - 1) * step);
      }
    }),
    seeded,
  );
});

test.each([
  [() => startDivisions(12, 5, 2), "12 divisions do not part into 5 starts: start 2 is at 2.4"],
  [() => startTeeth(40, 3, 2), "40 teeth at 1 turns do not part into 3 starts: start 2 is at 13.333"],
])("what is no whole number is not found %#", (refused, says) => {
  expect(refused).toThrow(NothingFound);
  expect(refused).toThrow(says);
});

test.each([
  [() => startDivisions(0, 2, 1), "divisions must be a whole number of 1 or more, got 0"],
  [() => startDivisions(12, 2, 3), "start must be from 1 to 2, got 3"],
  [() => startTeeth(40.5, 2, 1), "teeth must be a whole number of 1 or more, got 40.5"],
  [() => startTeeth(40, 2, 1, -1), "turns must be greater than 0, got -1"],
])("refusal %# names argument, bound and value", (refused, says) => {
  expect(refused).toThrow(RangeError);
  expect(refused).toThrow(says);
});
