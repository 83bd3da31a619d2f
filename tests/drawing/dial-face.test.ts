import { describe, expect, test } from "vitest";
import { dialAngle, figureStep } from "../../src/drawing/dial-face.ts";

describe("the face of a dial", () => {
  test("turns clockwise from zero at the top, a full turn in 360 degrees", () => {
    expect(dialAngle(0, 50)).toBe(0);
    expect(dialAngle(12.5, 50)).toBe(90);
    expect(dialAngle(100, 250)).toBe(144);
  });

  test("has no more than twelve figures, at steps that are read without thinking", () => {
    expect([12, 25, 40, 50, 100, 125, 200, 250, 1000].map(figureStep)).toEqual([
      1, 5, 5, 5, 10, 20, 20, 50, 100,
    ]);
  });
});
