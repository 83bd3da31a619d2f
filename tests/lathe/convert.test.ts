// Factors are checked against mathjs (units) and, where mathjs has none or rounds, against the exact definition named
// beside the value.
import fc from "fast-check";
import { unit } from "mathjs";
import { expect, test } from "vitest";
import { convert } from "../../src/lathe/convert.ts";
import { NothingFound } from "../../src/thread/failures.ts";
import { expectClose, seeded } from "./close.ts";

test.each([
  ["in", "mm", "in", "mm"],
  ["ft", "m", "ft", "m"],
  ["yd", "cm", "yd", "cm"],
  ["mi", "km", "mile", "km"],
  ["ang", "nm", "angstrom", "nm"],
  ["mm", "in", "mm", "in"],
  ["um", "in", "um", "in"],
  ["m/s", "ft/min", "m/s", "ft/min"],
  ["ft/min", "m/min", "ft/minute", "m/minute"],
  ["mph", "km/h", "mi/h", "km/h"],
  ["g", "kg", "g", "kg"],
  ["lbm", "kg", "lbm", "kg"],
  ["ozm", "g", "ounce", "g"],
  ["grain", "mg", "grain", "mg"],
  ["stone", "lbm", "stone", "lbm"],
  ["ton", "kg", "ton", "kg"],
  ["lbf", "N", "lbf", "N"],
  ["dyn", "uN", "dyne", "uN"],
  ["psi", "kPa", "psi", "kPa"],
  ["atm", "Pa", "atm", "Pa"],
  ["deg", "rad", "deg", "rad"],
  ["rad", "arcmin", "rad", "arcmin"],
])("1 %s is as many %s as mathjs says", (from, to, theirFrom, theirTo) => {
  // mathjs rounds the pound force to about nine digits.
  expectClose(convert(1, from, to) / unit(1, theirFrom).toNumber(theirTo), 1, 2e-7);
});

test.each([
  { of: 1, from: "in", to: "mm", is: 25.4, source: "international yard and pound, 1959" },
  { of: 100, from: "ft/min", to: "m/min", is: 30.48, source: "international foot, 1959" },
  { of: 1, from: "lbm", to: "kg", is: 0.45359237, source: "international pound, 1959" },
  { of: 1, from: "lbf", to: "N", is: 4.4482216152605, source: "pound times 9.80665 m/s2" },
  { of: 1, from: "psi", to: "Pa", is: 6894.757293168361, source: "pound force on a square inch" },
  { of: 1, from: "atm", to: "Pa", is: 101325, source: "10th CGPM, 1954" },
  { of: 760, from: "Torr", to: "atm", is: 1, source: "definition of the torr" },
  { of: 1, from: "mmHg", to: "Pa", is: 133.322387415, source: "13.5951 g/cm3 times 9.80665 m/s2" },
  { of: 1, from: "Nmi", to: "m", is: 1852, source: "nautical mile, 1929" },
  { of: 1, from: "kn", to: "km/h", is: 1.852, source: "nautical mile an hour" },
  { of: 1, from: "admkn", to: "ft/min", is: 6080 / 60, source: "Admiralty mile of 6080 ft an hour" },
  { of: 3937, from: "survey_mi", to: "m", is: 5280 * 1200, source: "US survey foot, 1200/3937 m" },
  { of: 72, from: "Pica", to: "in", is: 1, source: "72 to the inch" },
  { of: 6, from: "pica", to: "in", is: 1, source: "6 to the inch" },
  { of: 1, from: "ell", to: "in", is: 45, source: "English ell" },
  { of: 1, from: "ly", to: "km", is: 9460730472580.8, source: "IAU: Julian year at 299792458 m/s" },
  { of: 1, from: "parsec", to: "Pm", is: 30.85677581491367, source: "IAU 2015 resolution B2" },
  { of: 1, from: "sg", to: "kg", is: 14.593902937206364, source: "pound force times s2 per foot" },
  { of: 1, from: "u", to: "yg", is: 1.66053906892, source: "CODATA 2022" },
  { of: 1, from: "pweight", to: "grain", is: 24, source: "troy weight" },
  { of: 1, from: "lcwt", to: "lbm", is: 112, source: "imperial hundredweight" },
  { of: 1, from: "cwt", to: "lbm", is: 100, source: "short hundredweight" },
  { of: 1, from: "LTON", to: "lbm", is: 2240, source: "imperial ton" },
  { of: 1, from: "kpond", to: "N", is: 9.80665, source: "standard gravity, 3rd CGPM, 1901" },
  { of: 1, from: "deg", to: "arcmin", is: 60, source: "definition of the minute of arc" },
])("$of $from is $is $to ($source)", ({ of, from, to, is }) => {
  expectClose(convert(of, from, to) / is, 1, 4e-16);
});

test("inches to millimetres and back keep every digit", () => {
  fc.assert(
    fc.property(fc.integer({ min: 1, max: 100_000 }), (thou) => {
      const inches = thou / 1000;
      expect(Math.abs(convert(convert(inches, "in", "mm"), "mm", "in") - inches)).toBeLessThanOrEqual(
        inches * 2.3e-16,
      );
    }),
    seeded,
  );
});

test("prefixes stand before metric names only, and da is not d", () => {
  expect(convert(1, "km", "dam")).toBe(100);
  expect(convert(1, "em", "m")).toBe(10);
  expect(convert(1, "m", "dm")).toBe(10);
  expect(convert(1, "MPa", "kPa")).toBe(1000);
  expect(convert(1500, "mm/min", "m/min")).toBe(1.5);
  for (const name of ["kin", "kft", "mlbm", "kdeg", "mkn"]) {
    expect(() => convert(1, name, "m")).toThrow(NothingFound);
  }
});

test.each([
  ["in", "kg", "these do not convert"],
  ["IN", "mm", 'unit "IN" is not known'],
  ["mm", "Mm ", 'unit "Mm " is not known'],
  ["", "mm", 'unit "" is not known'],
  ["constructor", "m", "is not known"],
])("%s to %s finds nothing", (from, to, says) => {
  expect(() => convert(1, from, to)).toThrow(NothingFound);
  expect(() => convert(1, from, to)).toThrow(says);
});

test("a result beyond a number is refused", () => {
  expect(() => convert(1e300, "parsec", "ym")).toThrow("result is too large");
});
