import { expect, test } from "vitest";
import { formLines } from "../../src/drawing/profile.ts";
import { drawWires, seatIn } from "../../src/drawing/wires.ts";
import type { WiresFigure } from "../../src/lathe/figure.ts";
import { drawn, pointsOf, threads, wiresFigure } from "./figures.ts";

test("a wire touches both flanks square to them, for every thread", () => {
  let seen = 0;
  for (const text of threads(80)) {
    const figure = wiresFigure(text);
    if (!figure) continue;
    seen += 1;
    const { centre, first, second } = seatIn(figure);
    const { opens } = formLines(figure.shape);
    const { loadFlank, clearanceFlank, pitch } = figure.shape;
    for (const [place, flank, side] of [
      [first, loadFlank, -1],
      [second, clearanceFlank, 1],
    ] as const) {
      expect(Math.hypot(place[0] - centre[0], place[1] - centre[1])).toBeCloseTo(figure.wire / 2, 9);
      // The flank goes through the pitch line a quarter of a pitch from the middle of the groove.
      const above = opens * (place[1] - figure.at / 2);
      expect(place[0]).toBeCloseTo(side * (pitch / 4 + above * Math.tan((flank * Math.PI) / 180)), 9);
    }
  }
  expect(seen).toBeGreaterThan(50);
});

test("wires stand as high as the handbook formula without lead says", () => {
  // E + w (1 + cosec 30) - (P/2) cot 30 for E 10.863, P 1.75, w 1: 12.3474555, computed independently.
  const figure = { ...(drawn("WIRES", "M12", 1, "mm").figure as WiresFigure), at: 10.863 };
  const { centre } = seatIn(figure);
  expect(2 * centre[1] + figure.wire).toBeCloseTo(12.3474555, 6);
});

test("the reading for the middle of the class limits stands in bold blue, with what it is over", () => {
  const of = drawWires(drawn("WIRES", "M12x1.75-6g", 1, "mm").figure as WiresFigure, 460, 400);
  const reading = of.labels.find((label) => label.text === "12.24")!;
  expect(reading.look).toBe("set bold");
  expect(of.labels.map((label) => label.text)).toEqual(expect.arrayContaining(["over wires", "ø10.754"]));
  const balls = drawWires(drawn("WIRES", "M20x2.5-6H", 1.5, "mm").figure as WiresFigure, 460, 400);
  expect(balls.labels.map((label) => label.text)).toContain("between balls");
});

test("wires are round and of their size beside the pitch", () => {
  const figure = drawn("WIRES", "1/2 BSW", 1.2, "mm").figure as WiresFigure;
  const of = drawWires(figure, 600, 500);
  const wires = of.shapes.filter((shape) => shape.part === "wire");
  expect(wires).toHaveLength(3);
  const radius = Number(/a([\d.]+) /.exec(wires[0]!.d)![1]);
  const left = wires.slice(0, 2).map((shape) => pointsOf(`${shape.d.split("a")[0]}`)[0]![0]);
  // Two of them are a pitch apart: 25.4/12 mm.
  expect((2 * radius) / (left[1]! - left[0]!)).toBeCloseTo(1.2 / (25.4 / 12), 4);
});
