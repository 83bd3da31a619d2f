// The built-in sort of numbers is the other method.
import fc from "fast-check";
import { expect, test } from "vitest";
import { smallestFirst } from "../../src/lathe/smallest.ts";
import { seeded } from "./close.ts";

test("the smallest few come to the front, whatever the order and however many are alike", () => {
  const number = fc.oneof(fc.integer({ min: 0, max: 6 }), fc.double({ noNaN: true }));
  fc.assert(
    fc.property(fc.array(number, { maxLength: 60 }), fc.integer({ min: 1, max: 70 }), (numbers, count) => {
      const sorted = Float64Array.from(numbers).sort();
      const found = smallestFirst(Float64Array.from(numbers), count);
      expect([...found.slice().sort()]).toEqual([...sorted.subarray(0, count)]);
    }),
    { ...seeded, numRuns: 2000 },
  );
});
