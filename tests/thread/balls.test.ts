// Expected values were computed independently of this code, to 7 digits, unless a test names another source.
import { expect, test } from "vitest";
import { betweenBalls } from "../../src/thread/balls.ts";
import { veeOf } from "../../src/thread/groove.ts";
import { overWires, wiresOf } from "../../src/thread/wires.ts";
import { expectClose } from "../lathe/close.ts";

const nut = veeOf(2.5, 60);

test.each([
  ["plain", 16.0410635],
  ["normal", 16.0389545],
  ["exact", 16.0388433],
] as const)("M20 nut, 1.5 mm balls, %s", (method, reading) => {
  expectClose(betweenBalls(18.376, nut, 1.5, 2.5, method), reading);
});

test("the lead is the pitch and the contact exact when nothing else is said", () => {
  expect(betweenBalls(18.376, nut, 1.5)).toBe(betweenBalls(18.376, nut, 1.5, 2.5, "exact"));
});

test("without lead the ball in a nut is the mirror image of the wire in a screw", () => {
  const screw = overWires(18.376, wiresOf(nut, 1.5, 0));
  for (const method of ["exact", "normal", "plain"] as const) {
    expectClose(18.376 - betweenBalls(18.376, nut, 1.5, 0, method), screw - 18.376, 1e-12);
  }
});

test("a sheet in another unit reads the same balls", () => {
  const inches = betweenBalls(18.376 / 25.4, veeOf(2.5 / 25.4, 60), 1.5 / 25.4);
  expectClose(inches * 25.4, betweenBalls(18.376, nut, 1.5), 1e-12);
});

test.each([
  [() => betweenBalls(0, nut, 1.5), "pitch_dia must be greater than 0, got 0"],
  [() => betweenBalls(18.376, nut, 0), "ball must be greater than 0, got 0"],
  [() => betweenBalls(18.376, nut, 1.5, -1), "lead must be 0 or more, got -1"],
  [
    () => betweenBalls(18.376, nut, 0.7),
    "ball must stand out of the pitch line, not sink into the groove, got 0.7",
  ],
  [() => betweenBalls(18.376, nut, 2.9), "ball must be at most 2.886751 to touch the flanks, got 2.9"],
  [() => betweenBalls(3, nut, 2.8, 0), "ball must leave room for one opposite, got 2.8"],
  [() => betweenBalls(4.614, veeOf(1, 22.5), 0.91, 4), "lead must be less steep for a diameter of 0.91"],
  [
    () => betweenBalls(5, veeOf(1, 29), 0.95, 4),
    "ball must be small enough to touch the flanks of so steep a thread",
  ],
])("refusal %# names argument, bound and value", (refused, message) => {
  expect(refused).toThrow(RangeError);
  expect(refused).toThrow(message);
});
