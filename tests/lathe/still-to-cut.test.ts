/** Worked by hand from the geometry; the rule when the top slide is used is common practice, no source. */
import fc from "fast-check";
import { expect, test } from "vitest";
import { contradicts, cutsFor, type StillToCut } from "../../src/lathe/still-to-cut.ts";
import { between, seeded } from "./close.ts";

const asked: StillToCut = {
  rest: 0.05,
  slideDivision: 0.02,
  setover: 26.5,
  straightIn: 0.04,
  crossDivision: 0.02,
  crossReads: "radius",
  leastCut: 0.05,
  planned: [],
  lightest: 4,
};

test("what is kept for the cross slide goes straight in, in whole divisions that are never past it", () => {
  // 0.05 / 0.02 = 2.5
  expect(cutsFor(asked)).toMatchObject({ slide: [], cross: 2 });
  // A dial that reads diameter goes in by half of what it shows: 0.05 / 0.01.
  expect(cutsFor({ ...asked, crossReads: "diameter" })).toMatchObject({ slide: [], cross: 5 });
  expect(cutsFor({ ...asked, crossReads: "diameter" }).step.cross).toBe(0.01);
  expect(cutsFor({ ...asked, rest: 0.019 })).toMatchObject({ slide: [], cross: 0 });
});

test("more than that is wound on the top slide, no pass heavier than the lightest of the plan", () => {
  // (0.30 - 0.04) / (0.02 cos 26.5) = 0.26 / 0.0178987 = 14.53: 14 divisions as 4 + 4 + 4, and 2 are under the least cut of 3.
  expect(cutsFor({ ...asked, rest: 0.3 })).toMatchObject({ slide: [4, 4, 4], cross: 0 });
});

test("a plan whose lightest pass is under the least cut gives way to that", () => {
  // 14 divisions again, the least cut is 3 of them.
  expect(cutsFor({ ...asked, rest: 0.3, lightest: 1 })).toMatchObject({ slide: [3, 3, 3, 3], cross: 0 });
});

test("passes that the plan has still to come are taken first, the last of them as much as is left", () => {
  // 14 divisions: 6 + 5, and 3 that are left of the next 4.
  expect(cutsFor({ ...asked, rest: 0.3, planned: [6, 5, 4, 4] })).toMatchObject({
    slide: [6, 5, 3],
    cross: 0,
  });
});

test("less than the least cut for the top slide is left to the cross slide", () => {
  // (0.09 - 0.04) / 0.0178987 = 2.79: 2 divisions, under the least cut of 3. 0.09 / 0.02 = 4.5.
  expect(cutsFor({ ...asked, rest: 0.09 })).toMatchObject({ slide: [], cross: 4 });
});

test("the winding never goes past the rest, and leaves less than a least cut and what is kept", () => {
  const cases = fc.record({
    rest: between(0.001, 3),
    slideDivision: between(0.005, 0.05),
    setover: between(0, 44),
    straightIn: between(0, 0.1),
    leastCut: between(0, 0.1),
    planned: fc.array(fc.integer({ min: 1, max: 20 }), { maxLength: 12 }),
  });
  fc.assert(
    fc.property(cases, (some) => {
      const { slide, cross } = cutsFor({ ...asked, ...some, lightest: 20 });
      const cos = Math.cos((some.setover * Math.PI) / 180);
      const gone =
        slide.reduce((sum, wind) => sum + wind, 0) * some.slideDivision * cos + cross * asked.crossDivision;
      expect(gone).toBeLessThanOrEqual(some.rest * (1 + 1e-9));
      if (slide.length > 0) expect(cross).toBe(0);
      const least = Math.max(1, Math.ceil(some.leastCut / some.slideDivision - 1e-9));
      const left = some.rest - gone;
      if (slide.length > 0)
        expect(left).toBeLessThan(some.straightIn + least * some.slideDivision * cos + 1e-9);
      else expect(left).toBeLessThan(asked.crossDivision + 1e-9);
    }),
    seeded,
  );
});

test("a rest that no thread has is refused with what was given", () => {
  expect(() => cutsFor({ ...asked, rest: 0 })).toThrow("rest must be greater than 0, got 0");
  expect(() => cutsFor({ ...asked, rest: 100 })).toThrow("rest must take at most 200 passes, got 100");
  expect(() => cutsFor({ ...asked, lightest: 0 })).toThrow(RangeError);
});

test("a reading contradicts the winding beyond two divisions, or a quarter of the depth so far: common practice, no source", () => {
  // 0.402 deep: a quarter is 0.1005, more than two divisions of 0.0179.
  expect(contradicts(0.402, 0.5, 0.0179)).toBe(false);
  expect(contradicts(0.402, 0.503, 0.0179)).toBe(true);
  expect(contradicts(0.402, 0.301, 0.0179)).toBe(true);
  // 13.20 read where 14.17 was due is 0.485 deeper.
  expect(contradicts(0.402, 0.887, 0.0179)).toBe(true);
  // Hardly begun: two divisions.
  expect(contradicts(0, 0.035, 0.0179)).toBe(false);
  expect(contradicts(0, 0.036, 0.0179)).toBe(true);
  expect(contradicts(0, -0.036, 0.0179)).toBe(true);
  // A difference that is as large as the bound is within it.
  expect(contradicts(0.4, 0.3, 0.02)).toBe(false);
  expect(() => contradicts(-0.1, 0.2, 0.02)).toThrow("depth_due must be 0 or more, got -0.1");
  expect(() => contradicts(0.1, Number.NaN, 0.02)).toThrow(RangeError);
});
