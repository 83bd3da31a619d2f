import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { drawLines, niceSteps } from "../../src/drawing/lines.ts";
import { drawMarks } from "../../src/drawing/marks.ts";
import { drawTrain } from "../../src/drawing/train.ts";
import type { LinesFigure, MarksFigure, TrainFigure } from "../../src/lathe/figure.ts";
import { drawn, pointsOf, seed } from "./figures.ts";

describe("an axis", () => {
  test("has steps of 1, 2 or 5, holds all values and has no more steps than were wanted and two", () => {
    const value = fc.double({ min: -1e6, max: 1e6, noNaN: true });
    fc.assert(
      fc.property(value, value, fc.integer({ min: 1, max: 12 }), (a, b, most) => {
        const [least, greatest] = [Math.min(a, b), Math.max(a, b)];
        if (greatest - least < 1e-9) return;
        const { from, to, step, ticks } = niceSteps(least, greatest, most);
        const slack = 1e-6 * (to - from);
        expect(from).toBeLessThanOrEqual(least + slack);
        expect(to).toBeGreaterThanOrEqual(greatest - slack);
        const mantissa = step / 10 ** Math.floor(Math.log10(step) + 1e-9);
        expect([1, 2, 5].some((nice) => Math.abs(mantissa - nice) < 1e-6)).toBe(true);
        expect(ticks.length).toBeLessThanOrEqual(most + 3);
      }),
      seed,
    );
  });

  test.each([
    [0, 0.28, 6, ["0", "0.05", "0.1", "0.15", "0.2", "0.25", "0.3"]],
    [-3, 10, 7, ["−4", "−2", "0", "2", "4", "6", "8", "10"]],
    [5, 5, 4, ["2", "4", "6", "8"]],
  ])("from %d to %d in %d steps reads well", (least, greatest, most, texts) => {
    const { ticks, text } = niceSteps(least, greatest, most);
    expect(ticks.map(text)).toEqual(texts);
  });
});

describe("a plot", () => {
  const titles = "set-over; travel; along; across; third; fourth";

  test("puts every point where its value is on the axis", () => {
    const x = [0, 10, 30, 60];
    const y = [0, 1.736, 5, 8.66];
    const of = drawLines(
      drawn("LINES", x, y, undefined, undefined, undefined, titles).figure as LinesFigure,
      500,
      400,
    );
    const points = pointsOf(of.shapes.find((shape) => shape.part === "series-1")!.d.replaceAll(",", " "));
    const [first, last] = [points[0]!, points[3]!];
    points.forEach(([px, py], i) => {
      expect((px - first[0]) / (last[0] - first[0])).toBeCloseTo(x[i]! / 60, 3);
      expect((py - first[1]) / (last[1] - first[1])).toBeCloseTo(y[i]! / 8.66, 3);
    });
  });

  test("tells up to four series apart by pattern, by sign and by name", () => {
    const y = [1, 2, 3];
    const of = drawLines(drawn("LINES", y, y, y, y, y, titles).figure as LinesFigure, 700, 400);
    for (const [n, name] of ["along", "across", "third", "fourth"].entries()) {
      expect(of.shapes.some((shape) => shape.look === `series series-${n + 1}`)).toBe(true);
      expect(of.shapes.some((shape) => shape.look === `series-sign series-sign-${n + 1}`)).toBe(true);
      expect(of.labels.some((label) => label.text === name)).toBe(true);
    }
    expect(of.labels.map((label) => label.text)).toEqual(expect.arrayContaining(["set-over", "travel"]));
  });

  test("has columns from zero as high as their values", () => {
    const y = [0.28, 0.14, -0.07];
    const figure = drawn(
      "LINES",
      [1, 2, 3],
      y,
      undefined,
      undefined,
      undefined,
      "pass; travel, mm",
      "columns",
    ).figure;
    const of = drawLines(figure as LinesFigure, 400, 300);
    const heights = y.map((_, i) => {
      const ys = pointsOf(of.shapes.find((shape) => shape.part === `column-1-${i + 1}`)!.d).map(
        (point) => point[1],
      );
      return ys[0]! - ys[1]!;
    });
    expect(heights[1]! / heights[0]!).toBeCloseTo(0.5, 4);
    expect(heights[2]! / heights[0]!).toBeCloseTo(-0.25, 4);
  });
});

describe("a train", () => {
  test("stands with its pitch circles touching where gears mesh", () => {
    const of = drawTrain(drawn("TRAIN", "65/50 × 20/55").figure as TrainFigure, 460, 300);
    const wheel = (teeth: number) => {
      const { d } = of.shapes.find((shape) => shape.part === `wheel-${teeth}`)!;
      const [left] = pointsOf(d.split("a")[0]!);
      const radius = Number(/a([\d.]+) /.exec(d)![1]);
      return { x: left![0] + radius, y: left![1], radius };
    };
    const [a, b, c, d] = [65, 50, 20, 55].map(wheel);
    const apart = (one: typeof a, other: typeof a) => Math.hypot(one!.x - other!.x, one!.y - other!.y);
    expect(apart(a, b)).toBeCloseTo(a!.radius + b!.radius, 2);
    expect(apart(c, d)).toBeCloseTo(c!.radius + d!.radius, 2);
    expect(apart(b, c)).toBeLessThan(0.01);
    expect(a!.radius / c!.radius).toBeCloseTo(65 / 20, 3);
    expect(of.labels.map((label) => label.text)).toEqual(
      expect.arrayContaining(["65", "50", "20", "55", "spindle", "leadscrew"]),
    );
  });

  test("of one pair has an idler of any size between, drawn as a phantom", () => {
    const of = drawTrain(drawn("TRAIN", "40/60").figure as TrainFigure, 460, 260);
    expect(of.shapes.some((shape) => shape.look.startsWith("phantom"))).toBe(true);
    expect(of.labels.some((label) => label.text === "idler, any")).toBe(true);
  });
});

describe("the thread indicator", () => {
  const dial = (usable: string, marks: number) =>
    drawMarks(drawn("MARKS", usable, marks).figure as MarksFigure, 300, 300);

  test("has every mark in its place, the last at the index, and the usable ones apart by weight and ink", () => {
    const of = dial("4,8", 8);
    const look = (mark: number) => of.shapes.find((shape) => shape.part === `mark-${mark}`)!.look;
    expect([1, 2, 3, 4, 5, 6, 7, 8].map(look)).toEqual([
      "faint",
      "faint",
      "faint",
      "set",
      "faint",
      "faint",
      "faint",
      "set",
    ]);
    const [rim, inner] = pointsOf(of.shapes.find((shape) => shape.part === "mark-2")!.d);
    // A quarter of a turn from the index: to the right, level.
    expect(rim![1]).toBeCloseTo(inner![1], 3);
    expect(rim![0]).toBeGreaterThan(inner![0]);
  });

  test("says that none serves", () => {
    const texts = dial("", 8).labels.map((label) => label.text);
    expect(texts).toEqual(expect.arrayContaining(["No mark may be used twice", "keep closed and reverse"]));
  });
});
