// Expected values were computed independently of this code.
import fc from "fast-check";
import { expect, test } from "vitest";
import { startShift } from "../../src/lathe/starts.ts";
import { expectClose, seeded } from "./close.ts";

test("the second of two starts lies half a lead on", () => {
  expect(startShift(3, 2, 2)).toBe(1.5);
  expect(startShift(3, 1, 1)).toBe(0);
});

test("starts lie one pitch apart, and the first comes again after one lead", () => {
  fc.assert(
    fc.property(fc.integer({ min: 1, max: 12 }), fc.integer({ min: 1, max: 40 }), (starts, pitch) => {
      const shifts = Array.from({ length: starts }, (_, i) => startShift(pitch * starts, starts, i + 1));
      expect(shifts[0]).toBe(0);
      shifts.forEach((shift, i) => {
        const next = shifts[i + 1] ?? pitch * starts;
        expectClose(next - shift, pitch, 1e-12);
      });
    }),
    seeded,
  );
});

test.each([
  [() => startShift(0, 2, 1), "lead must be greater than 0, got 0"],
  [() => startShift(3, 0, 1), "starts must be a whole number of 1 or more, got 0"],
  [() => startShift(3, 1.5, 1), "starts must be a whole number of 1 or more, got 1.5"],
  [() => startShift(3, 2, 0), "start must be a whole number of 1 or more, got 0"],
  [() => startShift(3, 2, 3), "start must be from 1 to 2, got 3"],
])("refusal %# names argument, bound and value", (refused, says) => {
  expect(refused).toThrow(RangeError);
  expect(refused).toThrow(says);
});
