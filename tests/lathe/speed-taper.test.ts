// Expected values were computed independently of this code, to 7 digits, unless a test names another source.
import fc from "fast-check";
import { expect, test } from "vitest";
import { carriageSpeed, runOut, speedCap, spindleSpeed, surfaceSpeed } from "../../src/lathe/speed.ts";
import { tailstockOffset, taperHalfAngle } from "../../src/lathe/taper.ts";
import { between, expectClose, seeded } from "./close.ts";

test("metric and inch surface speeds give the spindle speed", () => {
  expectClose(spindleSpeed(20, 12, "mm"), 530.516477, 5e-7);
  expectClose(spindleSpeed(100, 0.5, "in"), 763.943727, 5e-7);
});

test("surface speed undoes spindle speed", () => {
  const number = between(0.1, 500);
  fc.assert(
    fc.property(number, number, fc.constantFrom("mm", "in"), (speed, diameter, unit) => {
      expectClose(surfaceSpeed(spindleSpeed(speed, diameter, unit), diameter, unit) / speed, 1, 1e-12);
    }),
    seeded,
  );
});

test("the same cut in both units turns at the same speed", () => {
  expectClose(spindleSpeed(30.48, 25.4, "mm"), spindleSpeed(100, 1, "in"), 1e-9);
});

test("the carriage runs rpm x lead in a minute", () => {
  expect(carriageSpeed(200, 1.5)).toBe(300);
  expect(runOut(200, 1.5, 1)).toBe(5);
});

test("the cap leaves time to open the half nuts inside the run-out", () => {
  expect(speedCap(5, 1.5)).toBe(200);
  expectClose(speedCap(5, 1.5, 1.5), 133.3333333);
  expectClose(runOut(speedCap(7, 2, 1.2), 2, 1.2), 7, 1e-12);
});

// BS 21 / ISO 7-1: taper 1 in 16 on diameter is 1 degree 47 minutes 24 seconds on the side.
test("a pipe taper of 1 in 16", () => {
  expect(tailstockOffset(200, 1 / 16)).toBe(6.25);
  expectClose(taperHalfAngle(1 / 16), 1.7899106);
  expectClose(taperHalfAngle(1 / 16), 1 + 47 / 60 + 24 / 3600, 0.5 / 3600);
});

test.each([
  [() => spindleSpeed(-1, 12, "mm"), "surface_speed must be 0 or more, got -1"],
  [() => spindleSpeed(20, 0, "mm"), "diameter must be greater than 0, got 0"],
  [() => spindleSpeed(1e308, 1e-10, "mm"), "rpm is too large"],
  [() => surfaceSpeed(-1, 12, "in"), "rpm must be 0 or more, got -1"],
  [() => carriageSpeed(200, 0), "lead must be greater than 0, got 0"],
  [() => runOut(200, 1.5, -1), "seconds must be 0 or more, got -1"],
  [() => speedCap(0, 1.5), "runout must be greater than 0, got 0"],
  [() => speedCap(5, 1.5, 0), "reaction_seconds must be greater than 0, got 0"],
  [() => tailstockOffset(0, 0.1), "length must be greater than 0, got 0"],
  [() => taperHalfAngle(-0.1), "taper must be 0 or more, got -0.1"],
])("refusal %# names argument, bound and value", (refused, says) => {
  expect(refused).toThrow(RangeError);
  expect(refused).toThrow(says);
});
