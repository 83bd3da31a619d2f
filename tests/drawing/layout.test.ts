import fc from "fast-check";
import { expect, test } from "vitest";
import { describeFigure, drawingOf, leastFrame } from "../../src/drawing/draw.ts";
import { boxesMeet, sectionLining, spreadOut } from "../../src/drawing/geometry.ts";
import { type Drawing, Plate, spots } from "../../src/drawing/plate.ts";
import type { Figure } from "../../src/lathe/figure.ts";
import {
  drawn,
  passesAsked,
  passesFigure,
  pointsOf,
  seed,
  setoverFigures,
  threadFigure,
  threads,
  wiresFigure,
} from "./figures.ts";

const frames = fc.tuple(
  fc.integer({ min: leastFrame.width, max: 1000 }),
  fc.integer({ min: leastFrame.height, max: 900 }),
);

const others: readonly Figure[] = [
  ["TRAIN", "40/60"],
  ["TRAIN", "65/50 × 20/55"],
  ["TRAIN", "20/127 × 100/30 × 40/50, box 3"],
  ["MARKS", "1,2,3,4,5,6,7,8", 8],
  ["MARKS", "", 16],
  ["MARKS", "3,9", 200],
  ["LINES", [1, 2, 3], [4, 5, 6]],
  ["LINES", [0, 5, 9], [1e-5, 2e-5, 3e-5], [0, 0, 0], undefined, undefined, "x; y; a rather long name; b"],
  ["LINES", [1, 2, 3, 4], [5, -3, 2, 1], [1, 1, 1, 1], [2, 2, 2, 2], undefined, "pass; mm", "columns"],
  ["LINES", [1], [1e9]],
].map(([name, ...args]) => drawn(name as string, ...args).figure);

const shapes = threads(200);
const figures: fc.Arbitrary<Figure> = fc.oneof(
  setoverFigures,
  fc.constantFrom(...shapes).map((text) => threadFigure(text)),
  fc.constantFrom(...shapes.flatMap((text) => wiresFigure(text) ?? [])),
  passesAsked(fc.double({ min: -1.5, max: 1.6, noNaN: true })).map(passesFigure),
  fc.constantFrom(...others),
);

/** What lies over something else or outside of the frame. */
function faults({ width, height, shapes: lines, labels }: Drawing): string[] {
  const found: string[] = [];
  labels.forEach((label, i) => {
    const { left, right, top, bottom } = label.box;
    if (left < 0 || top < 0 || right > width || bottom > height)
      found.push(`"${label.text}" leaves the frame`);
    for (const other of labels.slice(i + 1)) {
      if (boxesMeet(label.box, other.box, -0.01)) found.push(`"${label.text}" lies over "${other.text}"`);
    }
  });
  for (const { d, look } of lines) {
    for (const [x, y] of pointsOf(d.replaceAll(",", " "))) {
      if (x < -0.01 || y < -0.01 || x > width + 0.01 || y > height + 0.01) {
        found.push(`${look} reaches ${x}, ${y} in ${width} x ${height}`);
        break;
      }
    }
    if (/NaN|Infinity|undefined/.test(d)) found.push(`${look} has no place`);
  }
  return found;
}

test("no label lies over another and nothing leaves the frame, for any figure in a frame of any size", () => {
  fc.assert(
    fc.property(figures, frames, (figure, [width, height]) => {
      expect(faults(drawingOf(figure, width, height))).toEqual([]);
    }),
    { ...seed, numRuns: 200 },
  );
});

test("what has to be set is there at every size that is drawn", () => {
  fc.assert(
    fc.property(setoverFigures, frames, (figure, [width, height]) => {
      const settings = drawingOf(figure, width, height).labels.filter((label) => label.look === "set bold");
      expect(settings.length).toBeGreaterThan(0);
    }),
    { ...seed, numRuns: 100 },
  );
});

test("in a frame too small for a drawing none is made", () => {
  expect(() => drawingOf(others[0]!, 100, 300)).toThrow(RangeError);
  expect(() => drawingOf(others[0]!, 300, 60)).toThrow(/frame must be at least/);
});

test("every figure is told in words that hold no gap", () => {
  fc.assert(
    fc.property(figures, (figure) => {
      const words = describeFigure(figure);
      expect(words).toMatch(/^[A-Z].{30,}\.$/);
      expect(words).not.toMatch(/NaN|undefined|Infinity|\[object/);
    }),
    { ...seed, numRuns: 200 },
  );
});

test("labels are no smaller than 12 px and grow in large frames", () => {
  const size = (width: number, height: number) =>
    Math.min(...drawingOf(others[1]!, width, height).labels.map((label) => label.size));
  expect(size(200, 160)).toBe(12);
  expect(size(900, 800)).toBeGreaterThan(15);
});

test("a label takes the first place that is free, and goes without when none is", () => {
  const plate = new Plate(200, 100);
  expect(plate.label("one", spots([100, 50], "over"))).toBe(true);
  expect(plate.label("two", [...spots([100, 50], "over"), ...spots([100, 80], "over")])).toBe(true);
  expect(plate.label("three", spots([100, 50], "over"))).toBe(false);
  expect(plate.label("four", spots([100, 50], "over"), { must: true })).toBe(true);
  expect(plate.done("").labels.map((label) => label.text)).toEqual(["one", "two", "four"]);
});

test("section lining stays inside its outline and keeps its spacing", () => {
  const square: [number, number][] = [
    [10, 10],
    [110, 10],
    [110, 60],
    [10, 60],
  ];
  const lines = sectionLining(square, 6);
  for (const line of lines) {
    for (const [x, y] of line) {
      expect(x).toBeGreaterThanOrEqual(10 - 1e-9);
      expect(x).toBeLessThanOrEqual(110 + 1e-9);
      expect(y).toBeGreaterThanOrEqual(10 - 1e-9);
      expect(y).toBeLessThanOrEqual(60 + 1e-9);
    }
  }
  // The diagonal extent of 150 over the root of 2, in steps of 6.
  expect(lines.length).toBeGreaterThanOrEqual(Math.floor(150 / Math.SQRT2 / 6) - 1);
});

test("places that are too close are spread and keep their order", () => {
  expect(spreadOut([10, 12, 50], 20, 0, 100)).toEqual([10, 30, 50]);
  expect(spreadOut([90, 95, 99], 20, 0, 100)).toEqual([60, 80, 100]);
});
