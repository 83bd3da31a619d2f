// Expected fractions are exact arithmetic: 1 in is 25.4 mm, 25.4 = 127/5.
import fc from "fast-check";
import { expect, test } from "vitest";
import { exactly } from "../../src/lathe/exact.ts";
import { seeded } from "./close.ts";

test.each([
  [3.175, "127/40"],
  [25.4 / 8, "127/40"],
  [25.4 / 12, "127/60"],
  [2.1166666666666663, "127/60"],
  [1 / 12, "1/12"],
  [2 / 23, "2/23"],
  [0.1 + 0.2, "3/10"],
  [1.5, "3/2"],
  [4, "4"],
  [1.0583333, "10583333/10000000"],
])("%d is %s", (value, fraction) => {
  expect(exactly("lead", value).toFraction()).toBe(fraction);
});

test("a fraction that a few multiplications and divisions have rounded is found again", () => {
  const count = (max: number) => fc.integer({ min: 1, max });
  fc.assert(
    fc.property(count(2000), count(2000), count(127), count(127), (top, bottom, driver, driven) => {
      const found = exactly("lead", ((top / bottom) * driver) / driven);
      // Equal cross products: the same fraction.
      expect(found.n * BigInt(bottom * driven)).toBe(found.d * BigInt(top * driver));
    }),
    seeded,
  );
});

test("any lead is met to its last bits", () => {
  fc.assert(
    fc.property(fc.double({ min: 1e-9, max: 1e9, noNaN: true }), (value) => {
      const found = exactly("lead", value).valueOf();
      expect(Math.abs(found - value)).toBeLessThanOrEqual(value * 4e-15);
    }),
    seeded,
  );
});

test("what is not above 0, or no lead by any measure, is refused by name", () => {
  for (const value of [0, -1, Number.NaN, Infinity]) {
    expect(() => exactly("lead", value)).toThrow(`lead must be greater than 0, got ${value}`);
  }
  for (const value of [5e-324, 1e-10, 1e10, 1e300]) {
    expect(() => exactly("lead", value)).toThrow(`lead must be from 1e-9 to 1000000000, got ${value}`);
  }
});
