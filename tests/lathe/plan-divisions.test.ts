// Divisions worked out apart from this code, by the rules at the head of plan-divisions.ts, for a tool whose flat nose and
// flanks give a groove of nose x h + h^2 / 2, all in divisions. The rules are common practice, no source.
import fc from "fast-check";
import { expect, test } from "vitest";
import { grooveOf } from "../../src/lathe/chip-area.ts";
import { divideSlide, joinShort } from "../../src/lathe/plan-divisions.ts";
import { seeded } from "./close.ts";

/** Depth of a division. */
const step = 0.02;

/** tan of half of it is one half. */
const included = (2 * Math.atan(0.5) * 180) / Math.PI;

const divide = (total: number, most: number, least: number, nose: number) =>
  divideSlide({ total, most, least, step, groove: grooveOf(included, nose * step) });

test.each([
  // Nine over for two passes of at least 4: the odd one goes to the first of them.
  [26, 11, 4, 5, [8, 5, 5, 4, 4]],
  [24, 9, 4, 10, [7, 5, 4, 4, 4]],
  [25, 12, 5, 5, [9, 6, 5, 5]],
  [98, 22, 6, 20, [19, 13, 9, 9, 8, 8, 7, 7, 6, 6, 6]],
])(
  "%d divisions, first %d, least %d, nose %d: equal area, thin passes lifted",
  (total, most, least, nose, are) => {
    expect(divide(total, most, least, nose).divisions).toEqual(are);
  },
);

// A sharp tool: the area is as the depth squared, so a pass from d reaches the whole part of the root of d^2 + 10^2.
test("where even the least cut is more than the first cut's area, each pass takes what that area holds", () => {
  const ones = (count: number) => Array.from({ length: count }, () => 1);
  expect(divide(60, 10, 1, 0).divisions).toEqual([10, 4, 3, 2, 2, 2, 2, ...ones(35)]);
});

test("a last pass that is too thin is shared out among those before it", () => {
  const threes = (count: number) => Array.from({ length: count }, () => 3);
  // 61 - 10 - 4 is fifteen passes of 3 and 2 over.
  expect(divide(61, 10, 3, 0).divisions).toEqual([10, 4, 4, 4, ...threes(13)]);
  expect(joinShort([10, 5, 2], 3)).toEqual([10, 4, 3]);
  expect(joinShort([10, 6, 2], 3)).toEqual([10, 4, 4]);
  expect(joinShort([10, 3, 3, 2], 3)).toEqual([10, 4, 4]);
  expect(joinShort([10, 3], 3)).toEqual([10, 3]);
  expect(joinShort([2], 3)).toEqual([2]);
});

test("sharing out loses no division and leaves no pass too thin", () => {
  const lists = fc.array(fc.integer({ min: 4, max: 20 }), { minLength: 1, maxLength: 12 });
  fc.assert(
    fc.property(lists, fc.integer({ min: 1, max: 6 }), (passes, last) => {
      const falling = [...passes].sort((a, b) => b - a);
      const shared = joinShort([...falling, last], 4);
      const sum = (values: readonly number[]) => values.reduce((a, b) => a + b);
      expect(sum(shared)).toBe(sum(passes) + last);
      expect(Math.min(...shared)).toBeGreaterThanOrEqual(4);
    }),
    seeded,
  );
});

test("what is less than the least cut is one pass, and the reason is told", () => {
  expect(divide(2, 15, 3, 0)).toEqual({
    divisions: [2],
    reasons: ["All 2 divisions together are less than the least cut of 3."],
  });
});
