// Expected values were computed independently of this code, to 7 digits, unless a test names another source.
import fc from "fast-check";
import { expect, test } from "vitest";
import { formDepth, sharpHeight, splitIncluded } from "../../src/lathe/form.ts";
import { between, expectClose, seeded } from "./close.ts";

test("the sharp triangle of a 60 degree form is 0.866 of the pitch high", () => {
  expectClose(sharpHeight(1, 30), 0.8660254);
});

test("unequal flanks share the pitch by their tangents", () => {
  expectClose(sharpHeight(2, 3, 45), 1.900404);
});

// BS 84 prints H = 0.960491 P and depth 0.640327 P = 2H/3.
test("the Whitworth triangle is as BS 84 prints it", () => {
  expectClose(sharpHeight(1, 27.5), 0.960491, 5e-7);
});

test("the depth between flats is that of M10 x 1.5 with a quarter-pitch root", () => {
  expectClose(formDepth(1.5, splitIncluded(60), 0.1875, 0.375), 0.8118988);
});

// ASME B1.9 geometry: H = 0.89064 P for 7 and 45 degrees.
test("a buttress form splits into its two flanks", () => {
  expect(splitIncluded(52, 7)).toEqual({ leading: 45, trailing: 7 });
  expectClose(formDepth(1, splitIncluded(52, 7), 0, 0), 0.89064, 5e-6);
});

test("flats and depth fill the pitch again", () => {
  const angle = between(1, 60);
  const flat = between(0, 0.45);
  fc.assert(
    fc.property(angle, angle, flat, flat, (leading, trailing, crest, root) => {
      const depth = formDepth(1, { leading, trailing }, crest, root);
      const radians = Math.PI / 180;
      const flanks = depth * (Math.tan(leading * radians) + Math.tan(trailing * radians));
      expectClose(crest + flanks + root, 1, 1e-12);
    }),
    seeded,
  );
});

test.each([
  [() => sharpHeight(0, 30), "pitch must be greater than 0, got 0"],
  [() => sharpHeight(1, -1), "flank must be from 0 to below 90 degrees, got -1"],
  [() => sharpHeight(1, 30, 90), "other_flank must be from 0 to below 90 degrees, got 90"],
  [() => sharpHeight(1, 0), "flank must be greater than 0"],
  [
    () => formDepth(1, splitIncluded(60), 0.6, 0.4),
    "crest_flat + root_flat must be less than the pitch 1, got 1",
  ],
  [() => formDepth(1, splitIncluded(60), 0, -0.1), "root_flat must be 0 or more, got -0.1"],
  [() => splitIncluded(180), "included must be from 0 to below 180 degrees, got 180"],
  [() => splitIncluded(60, 61), "trailing_flank must be from 0 to 60, got 61"],
])("refusal %# names argument, bound and value", (refused, says) => {
  expect(refused).toThrow(RangeError);
  expect(refused).toThrow(says);
});
