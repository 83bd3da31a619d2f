// Expected values were computed independently of this code, to 7 digits, unless a test names another source.
import fc from "fast-check";
import { expect, test } from "vitest";
import {
  carriageSpeed,
  runOut,
  secondsFor,
  speedCap,
  speedNotAbove,
  spindleSpeed,
  surfaceSpeed,
} from "../../src/lathe/speed.ts";
import { materials, surfaceSpeedFor } from "../../src/lathe/surface-speed.ts";
import { diameterAlong, leadLostByOffset, tailstockOffset, taperHalfAngle } from "../../src/lathe/taper.ts";
import { taperDiameter } from "../../src/lathe/taper-thread.ts";
import { NothingFound } from "../../src/thread/failures.ts";
import { readThread } from "../../src/thread/read.ts";
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

test("the lathe's speed is the fastest that is not above the limit", () => {
  expect(speedNotAbove(108, [30, 170, 70, 110])).toBe(70);
  expect(speedNotAbove(110, [30, 170, 70, 110])).toBe(110);
  // 110 reckoned with a rounding is still 110.
  expect(speedNotAbove(110 * (1 - 1e-12), [70, 110])).toBe(110);
  expect(() => speedNotAbove(29.9, [45, 30])).toThrow(NothingFound);
  expect(() => speedNotAbove(29.9, [45, 30])).toThrow("every speed is above 29.9: the slowest is 30");
});

test("the time to run a distance undoes the distance run in a time", () => {
  expect(secondsFor(200, 1.5, 25)).toBe(5);
  const some = between(0.1, 200);
  fc.assert(
    fc.property(some, some, some, (rpm, lead, seconds) => {
      expectClose(secondsFor(rpm, lead, runOut(rpm, lead, seconds)) / seconds, 1, 1e-12);
    }),
    seeded,
  );
});

// A threading-tool maker's single-point chart, uncoated carbide, surface feet a minute: slowest and fastest.
test.each([
  ["cast iron", 75, 200],
  ["mild steel", 75, 200],
  ["tool steel", 75, 175],
  ["stainless steel", 75, 175],
  ["aluminium", 75, 250],
  ["brass", 75, 300],
] as const)("carbide in %s starts inside the maker's range", (material, slow, fast) => {
  const { speed } = surfaceSpeedFor(material, "in", "carbide");
  expect(speed).toBeGreaterThanOrEqual(slow);
  expect(speed).toBeLessThanOrEqual(fast);
});

test("every material has a screw-cutting speed for high-speed steel, slower than turning, and names its source", () => {
  for (const material of materials) {
    const { speed, source } = surfaceSpeedFor(material, "in");
    expect(source).toMatch(/^\d+ ft\/min: (common practice|table|slow end)/);
    expectClose(surfaceSpeedFor(material, "mm").speed, speed * 0.3048, 1e-12); // a foot is 0.3048 m
    for (const work of ["roughing", "finishing"] as const) {
      try {
        expect(surfaceSpeedFor(material, "in", "HSS", work).speed).toBeGreaterThan(speed);
      } catch (error) {
        expect(error).toBeInstanceOf(NothingFound);
      }
    }
  }
});

test("a speed that no table gives is not made up, and the message says what is known", () => {
  expect(() => surfaceSpeedFor("bronze", "mm", "carbide")).toThrow(
    "no speed is known for carbide threading in bronze: known are HSS threading, HSS roughing, HSS finishing",
  );
});

test("a cone grows by its taper along the axis", () => {
  expect(diameterAlong(20, 1 / 16, 8)).toBe(20.5);
  expect(diameterAlong(20, 1 / 16, -8)).toBe(19.5);
  expect(diameterAlong(20, 0, 1000)).toBe(20);
});

// ASME B1.20.1: E0 = E1 - L1/16, as printed; the last figure of E1 may round by half.
test.each([
  ["1/4-18 NPT", 0.2278, 0.47739],
  ["1/2-14 NPT", 0.32, 0.75843],
  ["1-11.5 NPT", 0.4, 1.21363],
  ["2 1/2-8 NPT", 0.682, 2.71953],
])("%s is E0 at the small end", (designation, handTight, small) => {
  expectClose(taperDiameter(readThread(designation), "pitch", -handTight), small, 6e-6);
});

test("the diameters of a taper thread keep their distance, those of a parallel one their size", () => {
  const pipe = readThread("R 1/2");
  expectClose(taperDiameter(pipe, "major", 0), 20.955, 1e-12); // ISO 7-1
  const gap = taperDiameter(pipe, "major", 5) - taperDiameter(pipe, "minor", 5);
  expectClose(gap, pipe.major - pipe.minor.external, 1e-12);
  expect(taperDiameter(readThread("M10"), "pitch", 7)).toBe(readThread("M10").pitchDia);
});

// 1 - 1/sqrt(1 + 1/1024), by long division; and a right angle's worth for a cone without end.
test("with the tailstock offset a pipe thread comes out 488 millionths short", () => {
  expectClose(leadLostByOffset(1 / 16), 0.0004879239129, 1e-13);
  expect(leadLostByOffset(0)).toBe(0);
  expectClose(leadLostByOffset(2), 1 - Math.SQRT1_2, 1e-12); // 45 degrees
});

test.each([
  [() => speedNotAbove(0, [30]), "limit must be greater than 0, got 0"],
  [() => speedNotAbove(50, [30, -1]), "speeds must be greater than 0, got -1"],
  [() => secondsFor(0, 1.5, 25), "rpm must be greater than 0, got 0"],
  [() => secondsFor(200, 1.5, -1), "distance must be 0 or more, got -1"],
  [() => diameterAlong(10, 0.5, -20), "distance must be greater than -20, got -20: the cone ends there"],
  [() => leadLostByOffset(-1), "taper must be 0 or more, got -1"],
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
