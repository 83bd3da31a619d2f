// Outlines are held against single tools found by halving; loops against the area of their layer, by Green's theorem.
import fc from "fast-check";
import { expect, test } from "vitest";
import { grooveOf } from "../../src/lathe/chip-area.ts";
import { cutGroove, layerLoops } from "../../src/lathe/groove.ts";
import { halfWidth, outlineDepth, type Stroke, strokesOf } from "../../src/lathe/groove-outline.ts";
import { between, expectClose, seeded } from "./close.ts";
import { tools, wandering } from "./groove-tools.ts";

test("the depth of a groove is the deepest of its tools everywhere", () => {
  fc.assert(
    fc.property(tools, wandering, between(-2, 2), (tool, places, x) => {
      const outline = cutGroove(tool, places).at(-1)!.outline;
      // Depth of one tool at x, found from its width by halving: 80 steps.
      const reach = places.map(({ axial, radial }) => {
        const side = x >= axial ? "leading" : "trailing";
        if (halfWidth(tool, side, radial) < Math.abs(x - axial)) return 0;
        let [low, high] = [0, radial];
        for (let k = 0; k < 80; k++) {
          const middle = (low + high) / 2;
          if (halfWidth(tool, side, middle) >= Math.abs(x - axial)) high = middle;
          else low = middle;
        }
        return radial - high;
      });
      const expected = Math.max(0, ...reach);
      expectClose(outlineDepth(outline, x), expected, 1e-9);
    }),
    { ...seeded, numRuns: 300 },
  );
});

/** Area inside a closed loop: Green's theorem, an arc by 2,000 chords. */
function loopArea(loop: readonly Stroke[]): number {
  let twice = 0;
  for (const { from, to, arc } of loop) {
    if (!arc) {
      twice += from.x * to.y - to.x * from.y;
      continue;
    }
    const turn = (p: { x: number; y: number }) => Math.atan2(p.x - arc.centre.x, p.y - arc.centre.y);
    const [start, end] = [turn(from), turn(to)];
    let [px, py] = [from.x, from.y];
    for (let k = 1; k <= 2000; k++) {
      const angle = start + ((end - start) * k) / 2000;
      const x = arc.centre.x + arc.radius * Math.sin(angle);
      const y = arc.centre.y + arc.radius * Math.cos(angle);
      twice += px * y - x * py;
      [px, py] = [x, y];
    }
  }
  return Math.abs(twice / 2);
}

test("the loops of a layer close, and hold its area", () => {
  fc.assert(
    fc.property(tools, wandering, (tool, places) => {
      const layers = cutGroove(tool, places);
      for (const { pass, area } of layers) {
        const loops = layerLoops(tool, layers, pass);
        for (const loop of loops) {
          loop.forEach(({ from }, k) => {
            const before = loop.at(k - 1)!.to;
            expectClose(Math.hypot(from.x - before.x, from.y - before.y), 0, 1e-9);
          });
        }
        expectClose(
          loops.reduce((sum, loop) => sum + loopArea(loop), 0),
          area,
          1e-6,
        );
      }
    }),
    { ...seeded, numRuns: 60 },
  );
});

test("the strokes of an outline run from surface to surface without a gap", () => {
  fc.assert(
    fc.property(tools, wandering, (tool, places) => {
      for (const run of strokesOf(cutGroove(tool, places).at(-1)!.outline)) {
        expectClose(run[0]!.from.y, 0, 1e-9);
        expectClose(run.at(-1)!.to.y, 0, 1e-9);
        run.slice(1).forEach(({ from }, k) => {
          expectClose(Math.hypot(from.x - run[k]!.to.x, from.y - run[k]!.to.y), 0, 1e-9);
        });
      }
    }),
    { ...seeded, numRuns: 50 },
  );
});

test("a square flank is drawn as a wall", () => {
  const [layer] = cutGroove(grooveOf(0, 1), [{ axial: 0, radial: 2 }]);
  expect(strokesOf(layer!.outline)[0]!.map(({ edge, to }) => [edge, to.x, to.y])).toEqual([
    ["wall", -0.5, 2],
    ["nose", 0.5, 2],
    ["wall", 0.5, 0],
  ]);
});
