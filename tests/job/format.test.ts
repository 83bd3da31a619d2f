import Decimal from "decimal.js";
import fc from "fast-check";
import { expect, test } from "vitest";
import type { CellFormat } from "../../src/job/document.ts";
import { showValue } from "../../src/job/format.ts";

// Expected texts are written out by hand from the rules of rounding and of the signs; the properties at the end
// compare with decimal.js, which rounds in decimal and shares no code with ours.
const shown = (value: number, format: CellFormat, unit: "mm" | "in" = "mm") =>
  showValue(value, format, unit).text;

test.each([
  [0.1 + 0.2, {}, "0.3"],
  [1.3553593, {}, "1.355359"],
  [100, {}, "100"],
  [1e-7, {}, "1E-7"],
  [1.5e-9, {}, "1.5E-9"],
  [1e21, {}, "1E21"],
  [-0, {}, "0"],
  [12.5, { places: 0 }, "13"],
  [12, { unit: "div" }, "12 div"],
] as [number, CellFormat, string][])("plain %s as %o reads %s", (value, format, text) => {
  expect(shown(value, format)).toBe(text);
});

test.each([
  [2.675, 2, "2.68"],
  [1.005, 2, "1.01"],
  [-1.005, 2, "-1.01"],
  [0.5, 0, "1"],
  [9.9996, 3, "10.000"],
  [-0.0004, 3, "0.000"],
  [-0, 2, "0.00"],
  [1e-7, 3, "0.000"],
] as const)("%s to %i fixed places reads %s", (value, places, text) => {
  expect(shown(value, { as: "decimals", places })).toBe(text);
});

test("a length has 4 places in mm, 5 in inches, and the job's unit beside it", () => {
  expect(shown(1.52121, { as: "length" })).toBe("1.5212 mm");
  expect(shown(0.0533606, { as: "length" }, "in")).toBe("0.05336 in");
  expect(shown(0.02, { as: "length", places: 2 })).toBe("0.02 mm");
  expect(shown(13.5, { as: "length", places: 1, unit: "mm²" }, "in")).toBe("13.5 mm²");
});

test("the parts of a length are the integer, the point with its decimals and the unit", () => {
  expect(showValue(1.3553593, { as: "length" }, "mm")).toEqual({
    text: "1.3554 mm",
    align: "right",
    parts: { integer: "1", fraction: ".3554", degree: false, unit: "mm" },
  });
});

test("the degree sign hugs its figure and is no unit", () => {
  const angle = showValue(27.5, { as: "angle", places: 1 }, "mm");
  expect(angle.text).toBe("27.5°");
  expect(angle.parts).toEqual({ integer: "27", fraction: ".5", degree: true, unit: "" });
});

// 1°47′24″ is the half angle of a taper of 1 in 16, printed so in ISO 7-1: atan(1/32) = 1.7899106 degrees.
test.each([
  [1.7899106, 0, "1°47′24″"],
  [27.5, 0, "27°30′00″"],
  [23.75, 0, "23°45′00″"],
  [29.999999, 0, "30°00′00″"],
  [59.9999, 0, "60°00′00″"],
  [0.99999, 2, "0°59′59.96″"],
  [-0.5, 0, "-0°30′00″"],
  [-0.00001, 0, "0°00′00″"],
] as const)("%s degrees with %i places of a second reads %s", (value, places, text) => {
  expect(shown(value, { as: "dms", places })).toBe(text);
});

test.each([
  [1.5, "1 1/2 in"],
  [0.5, "1/2 in"],
  [0.421875, "27/64 in"],
  [0.42, "27/64 in"],
  [0.999, "1 in"],
  [2, "2 in"],
  [0, "0 in"],
  [-1.25, "-1 1/4 in"],
  [-0.001, "0 in"],
  [0.1875, "3/16 in"],
] as const)("%s inches reads %s to the nearest 64th in lowest terms", (value, text) => {
  expect(shown(value, { as: "fraction" })).toBe(text);
});

test("thou and percent shift the decimal point without a trace of binary", () => {
  expect(shown(0.0625, { as: "thou" })).toBe("62.5 thou");
  expect(shown(0.012, { as: "thou", places: 0 })).toBe("12 thou");
  expect(shown(0.07, { as: "percent", places: 6 })).toBe("7.000000 %");
  expect(shown(0.755, { as: "percent" })).toBe("75.5 %");
});

test("words, booleans and nothing", () => {
  expect(showValue("along the bed", {}, "mm")).toEqual({ text: "along the bed", align: "left" });
  expect(showValue("Depth", { role: "column" }, "mm").align).toBe("right");
  expect(showValue(true, {}, "mm").text).toBe("TRUE");
  expect(showValue(false, {}, "mm").text).toBe("FALSE");
  expect(showValue(null, {}, "mm").text).toBe("");
  expect(showValue(12, { as: "text" }, "mm")).toEqual({ text: "12", align: "left" });
  expect(showValue(1, { align: "center" }, "mm").align).toBe("center");
});

test("an error shows its code and short words, whatever the format", () => {
  const shownError = showValue(
    { error: "#NUM!", message: "setover must be under 90, got 95" },
    { as: "length" },
    "mm",
  );
  expect(shownError.text).toBe("#NUM! past limit");
  expect(shownError.error).toEqual({ code: "#NUM!", words: "past limit" });
  expect(showValue({ error: "#OTHER!", message: "" }, {}, "mm").text).toBe("#OTHER!");
});

test("fixed places agree with decimal.js rounding half away from zero", () => {
  fc.assert(
    fc.property(
      fc.double({ min: -1e6, max: 1e6, noNaN: true }),
      fc.integer({ min: 0, max: 6 }),
      (value, places) => {
        const expected = new Decimal(value)
          .toFixed(places, Decimal.ROUND_HALF_UP)
          .replace(/^-(?=0(\.0*)?$)/, "");
        expect(shown(value, { as: "decimals", places })).toBe(expected);
      },
    ),
    { seed: 20261125 },
  );
});

test("a fraction is within 1/128 inch of the value", () => {
  fc.assert(
    fc.property(fc.double({ min: -40, max: 40, noNaN: true }), (value) => {
      const [, sign, whole, above, below] =
        /^(-?)(?:(\d+)(?: |$|(?= in)))?(?:(\d+)\/(\d+))? ?in$/.exec(shown(value, { as: "fraction" })) ?? [];
      const read = Number(whole ?? 0) + (above === undefined ? 0 : Number(above) / Number(below));
      expect(Math.abs((sign === "-" ? -read : read) - value)).toBeLessThanOrEqual(1 / 128);
    }),
    { seed: 20261125 },
  );
});
