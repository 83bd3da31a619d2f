import fc from "fast-check";
import { expect, test } from "vitest";
import { GridLines } from "../../src/ui/grid-lines.ts";

test("places and lines are each other's way back, hidden lines have the place of the next that shows", () => {
  const spans = fc.array(
    fc.tuple(fc.nat(40), fc.nat(6)).map(([first, more]) => ({ first, last: first + more })),
    { maxLength: 4 },
  );
  fc.assert(
    fc.property(spans, fc.integer({ min: 1, max: 40 }), (hidden, all) => {
      const lines = new GridLines(all, hidden, 0);
      const gone = (line: number) => hidden.some(({ first, last }) => line >= first && line <= last);
      const shown = Array.from({ length: all }, (_, i) => i).filter((line) => !gone(line));
      // A sheet of which nothing would show shows all.
      const expected = shown.length === 0 ? Array.from({ length: all }, (_, i) => i) : shown;
      expect(Array.from({ length: lines.count }, (_, place) => lines.at(place))).toEqual(expected);
      for (let line = 0; line < all; line++) {
        const next = expected.findIndex((each) => each >= line);
        expect(lines.placeOf(line)).toBe(next < 0 ? expected.length : next);
        expect(lines.isHidden(line)).toBe(!expected.includes(line));
        expect(expected).toContain(lines.near(line));
      }
    }),
    { seed: 20261125 },
  );
});

test("a step passes over hidden lines and stays on the sheet", () => {
  const lines = new GridLines(10, [{ first: 2, last: 4 }], 0);
  expect([
    lines.step(1, 1),
    lines.step(5, -1),
    lines.step(9, 1),
    lines.step(0, -1),
    lines.step(3, 1),
    lines.step(3, -1),
  ]).toEqual([5, 1, 9, 0, 5, 1]);
});

test("frozen lines are drawn apart from those in view, and the pinned one among those", () => {
  const lines = new GridLines(100, [{ first: 1, last: 1 }], 3);
  expect(lines.frozen).toBe(2);
  expect(lines.drawn({ first: 50, last: 52 }, 80)).toEqual({ frozen: [0, 2], scrolled: [50, 51, 52, 80] });
  expect(lines.drawn({ first: 0, last: 4 }, 2)).toEqual({ frozen: [0, 2], scrolled: [3, 4] });
});
