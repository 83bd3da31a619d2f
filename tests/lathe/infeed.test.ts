// Expected values were computed independently of this code, to 7 digits, unless a test names another source.
import fc from "fast-check";
import { expect, test } from "vitest";
import {
  correction,
  depthForInfeed,
  flankChip,
  infeedForDepth,
  isPastFlank,
} from "../../src/lathe/infeed.ts";
import { between, expectClose, seeded } from "./close.ts";

test("the slide travels depth / cos a", () => {
  expectClose(infeedForDepth(1.3554, 27), 1.521201);
});

test("depth from travel undoes travel from depth", () => {
  const depths = between(0, 20);
  fc.assert(
    fc.property(depths, between(-89, 89), (depth, setover) => {
      expectClose(depthForInfeed(infeedForDepth(depth, setover), setover), depth, 1e-12);
    }),
    seeded,
  );
});

test("half a degree of back-off leaves the trailing edge a skim of 0.9 percent of the infeed", () => {
  expectClose(flankChip(0.1, 29.5, 30, "trailing"), 0.0008727);
});

test("straight in, both flanks take the sine of their angle", () => {
  expectClose(flankChip(0.1, 0, 30, "leading"), 0.05, 1e-15); // sin 30 degrees is one half
  expectClose(flankChip(0.1, 0, 30, "trailing"), 0.05, 1e-15);
});

test("the chip is how far the tool moved square to the flank", () => {
  const angles = between(0, 45);
  fc.assert(
    fc.property(angles, angles, (setover, flank) => {
      const [a, f] = [setover, flank].map((degrees) => (degrees * Math.PI) / 180) as [number, number];
      // The tool moves towards the leading side by sin a and into the work by cos a; the flank's normal is (cos f, sin f).
      const moved = Math.sin(a) * Math.cos(f) + Math.cos(a) * Math.sin(f);
      expectClose(flankChip(1, setover, flank, "leading"), moved, 1e-12);
      const other = -Math.sin(a) * Math.cos(f) + Math.cos(a) * Math.sin(f);
      expectClose(flankChip(1, setover, flank, "trailing"), Math.max(0, other), 1e-12);
    }),
    seeded,
  );
});

test("a flank that the set-over is past takes no chip", () => {
  expect(flankChip(0.1, 35, 30, "trailing")).toBe(0);
  expect(flankChip(0.1, -35, 30, "leading")).toBe(0);
  expect(isPastFlank(30, 30, "trailing")).toBe(false);
});

test("what the wires read over goes back as slide travel", () => {
  expectClose(correction(12.46, 12.35, 27), 0.0617279);
});

test.each([
  [() => infeedForDepth(-1, 27), "depth must be 0 or more, got -1"],
  [() => infeedForDepth(1, 90), "setover must be between -90 and 90 degrees, got 90"],
  [() => depthForInfeed(-0.1, 27), "infeed must be 0 or more, got -0.1"],
  [() => flankChip(0.1, 29.5, 90, "leading"), "flank must be from 0 to below 90 degrees, got 90"],
  [() => correction(0, 12.35, 27), "reading must be greater than 0, got 0"],
  [() => correction(12.46, -1, 27), "wanted must be greater than 0, got -1"],
])("refusal %# names argument, bound and value", (refused, says) => {
  expect(refused).toThrow(RangeError);
  expect(refused).toThrow(says);
});
