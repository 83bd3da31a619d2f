// Expected values were computed independently of this code, to 7 digits.
import fc from "fast-check";
import { expect, test } from "vitest";
import { type Groove, grooveArea, grooveOf } from "../../src/lathe/chip-area.ts";
import { depthAfter, passArea, passCount } from "../../src/lathe/passes.ts";
import { between, expectClose, seeded } from "./close.ts";

const sharp = grooveOf(60, 0);
const whitworth = grooveOf(55, 0.2906798, 27.5, "radius");

test("equal area with a sharp tool grows with the square root of the pass", () => {
  expectClose(depthAfter(0.92, 4, 9, "area", sharp), 0.6133333);
});

test("a flat or round nose changes the depths of equal area", () => {
  expectClose(depthAfter(0.92, 4, 9, "area", grooveOf(60, 0.19)), 0.5688131);
  expectClose(depthAfter(4.2, 4, 9, "area", grooveOf(52, 0.5, 7)), 2.6692965);
  expectClose(depthAfter(1.3553593, 4, 9, "area", whitworth), 0.8232925);
});

test("even passes share the depth", () => {
  expectClose(depthAfter(0.9, 4, 9, "even", sharp), 0.4, 1e-15);
});

test("the count of passes follows from the first depth", () => {
  expect(passCount(0.92, 0.25, "area", sharp)).toBe(14);
  expect(passCount(0.92, 0.25, "area", grooveOf(60, 0.19))).toBe(8);
  expect(passCount(0.92, 0.25, "even", sharp)).toBe(4); // 0.92 / 0.25 = 3.68
  expect(passCount(0.92, 0.92, "area", sharp)).toBe(1);
  expect(passCount(0.92, 2, "area", sharp)).toBe(1);
});

test("a count that is whole but for rounding is not raised", () => {
  expect(passCount(0.3, 0.1, "even", sharp)).toBe(3);
  expect(passCount(0.3, 0.1, "area", sharp)).toBe(9);
  expect(passCount(2.1, 0.7, "even", sharp)).toBe(3); // 2.1 / 0.7 is a hair over 3 in a computer
});

test("the area of one pass is the difference of two grooves", () => {
  expectClose(passArea(0, 0.92, grooveOf(60, 0.19)), 0.6634693);
  expectClose(passArea(0, 4.2, grooveOf(52, 0.5, 7)), 12.0029598);
  expectClose(passArea(0, 1.3553593, whitworth), 1.4240457);
});

const angle = between(1, 50);
const grooves: fc.Arbitrary<Groove> = fc.record({
  leading: angle,
  trailing: angle,
  nose: between(0, 1),
  shape: fc.constantFrom("flat", "radius"),
});
const depths = between(0.05, 6);
const passes = fc.integer({ min: 1, max: 40 });

test("passes of equal area rise to the full depth, add up to the groove, and are alike", () => {
  fc.assert(
    fc.property(depths, passes, grooves, (depth, count, groove) => {
      let before = 0;
      let sum = 0;
      for (let pass = 1; pass <= count; pass++) {
        const reached = depthAfter(depth, pass, count, "area", groove);
        expect(reached).toBeGreaterThan(before);
        const area = passArea(before, reached, groove);
        expectClose(area / (grooveArea(depth, groove) / count), 1, 1e-7);
        sum += area;
        before = reached;
      }
      expect(before).toBe(depth);
      expectClose(sum / grooveArea(depth, groove), 1, 1e-9);
    }),
    seeded,
  );
});

test("depths go with the length unit, and the count does not change with it", () => {
  fc.assert(
    fc.property(depths, passes, grooves, (depth, count, groove) => {
      const inches: Groove = { ...groove, nose: groove.nose / 25.4 };
      const pass = Math.ceil(count / 2);
      const inInches = depthAfter(depth / 25.4, pass, count, "area", inches) * 25.4;
      expectClose(inInches / depthAfter(depth, pass, count, "area", groove), 1, 1e-9);
      expect(passCount(depth / 25.4, depth / 25.4 / 3.3, "area", inches)).toBe(
        passCount(depth, depth / 3.3, "area", groove),
      );
    }),
    seeded,
  );
});

test.each([
  [() => depthAfter(0, 1, 9, "area", sharp), "depth must be greater than 0, got 0"],
  [() => depthAfter(1, 10, 9, "area", sharp), "pass must be at most the number of passes 9, got 10"],
  [() => depthAfter(1, 1.5, 9, "area", sharp), "pass must be a whole number of 0 or more, got 1.5"],
  [() => depthAfter(1, 0, 0, "even", sharp), "passes must be a whole number of 1 or more, got 0"],
  [() => passCount(1, 0, "area", sharp), "first_depth must be greater than 0, got 0"],
  [() => passArea(0.9, 0.5, sharp), "from_depth must be from 0 to 0.5, got 0.9"],
])("refusal %# names argument, bound and value", (refused, says) => {
  expect(refused).toThrow(RangeError);
  expect(refused).toThrow(says);
});

test("a pass within a billionth of a whole number is that pass", () => {
  expect(depthAfter(0.92, 4 + 5e-10, 9, "area", sharp)).toBe(depthAfter(0.92, 4, 9, "area", sharp));
});
