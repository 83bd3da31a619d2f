// Formulas are held against the groove itself, cut pass by pass along the wrong line; numbers were reckoned apart.
import fc from "fast-check";
import { expect, test } from "vitest";
import { grooveOf } from "../../src/lathe/chip-area.ts";
import { alongSetover, cutGroove, deviationFrom, overcutAt } from "../../src/lathe/groove.ts";
import { halfWidth, type Outline, type Place } from "../../src/lathe/groove-outline.ts";
import { depthAt } from "../../src/lathe/groove-piece.ts";
import { miscut, rescueDepth } from "../../src/lathe/setover.ts";
import {
  depthWithError,
  flankLeft,
  flankStep,
  largestSetover,
  overcutLeft,
  pitchDiameterChange,
  setoverForShare,
  trailingShare,
} from "../../src/lathe/setover-error.ts";
import { between, expectClose, seeded } from "./close.ts";

const rad = (degrees: number) => (degrees * Math.PI) / 180;
const tan = (degrees: number) => Math.tan(rad(degrees));

/** Passes of equal travel along a set-over: the first reaches `first`, the last `depth`. */
function passesAlong(setover: number, first: number, depth: number, count: number): Place[] {
  return Array.from({ length: count }, (_, k) =>
    alongSetover((first + ((depth - first) * k) / (count - 1)) / Math.cos(rad(setover)), setover),
  );
}

const cases = fc.record({
  leading: between(5, 45),
  trailing: between(5, 45),
  nose: between(0, 0.2),
  past: between(0.5, 15),
  depth: between(0.6, 2),
  share: between(0.15, 0.6),
  count: fc.integer({ min: 2, max: 9 }),
});

test("winding the reckoned travel along another line reaches travel x cos of where the slide stands", () => {
  expectClose(depthWithError(1.2, 29, 3), 1.1635431);
  fc.assert(
    fc.property(between(0, 40), between(-5, 5), between(0.1, 3), (setover, error, depth) => {
      const travel = depth / Math.cos(rad(setover));
      expectClose(depthWithError(depth, setover, error), alongSetover(travel, setover + error).radial, 1e-12);
    }),
    seeded,
  );
});

test("the mean flank is that of a line from the root's corner to where the groove meets the surface", () => {
  expectClose(flankLeft(1.2, 33, 30, 0.3), 32.2680383886746);
  fc.assert(
    fc.property(cases, ({ leading, trailing, nose, past, depth, share, count }) => {
      const tool = grooveOf(leading + trailing, nose, trailing);
      const setover = trailing + past;
      const places = passesAlong(setover, share * depth, depth, count);
      const corner = places.at(-1)!.axial - nose / 2;
      const outer = cutGroove(tool, places).at(-1)!.outline[0]!.x0;
      const expected = (Math.atan((corner - outer) / depth) * 180) / Math.PI;
      expectClose(flankLeft(depth, setover, trailing, share * depth), expected, 1e-9);
    }),
    seeded,
  );
});

test("inside the flank it keeps the tool's angle, and no step is left", () => {
  expect(flankLeft(1.2, 28, 30, 0.3)).toBe(30);
  expect(flankStep(0.1, 28, 30)).toBe(0);
});

test("a step is as high as the tool moves off the flank, square to it", () => {
  fc.assert(
    fc.property(between(5, 45), between(0.5, 15), between(0.01, 0.5), (flank, past, infeed) => {
      const { axial, radial } = alongSetover(infeed, flank + past);
      // Distance between the two parallel flanks.
      const expected = axial * Math.cos(rad(flank)) - radial * Math.sin(rad(flank));
      expectClose(flankStep(infeed, flank + past, flank), expected, 1e-12);
    }),
    seeded,
  );
});

test("what finishing straight in leaves is what the groove then shows at the surface", () => {
  expectClose(overcutLeft(1.2269, 35, 30, 0.3, 1.1), 0.0250200661, 1e-9);
  fc.assert(
    fc.property(cases, between(0.3, 1), ({ leading, trailing, nose, past, depth, share, count }, part) => {
      const tool = grooveOf(leading + trailing, nose, trailing);
      const setover = trailing + past;
      const first = share * depth;
      const reached = first + part * (depth - first);
      const places = passesAlong(setover, first, reached, count);
      const last = { axial: places.at(-1)!.axial, radial: depth };
      const all = [...places, last];
      const expected = overcutAt(tool, all, tool, last, "trailing", 0);
      expectClose(overcutLeft(depth, setover, trailing, first, reached), expected, 1e-9);
      expectClose(deviationFrom(cutGroove(tool, all).at(-1)!.outline, tool, last).trailing, expected, 1e-9);
    }),
    { ...seeded, numRuns: 200 },
  );
});

test("straight in cleans the flank down to the rescue depth, and no deeper", () => {
  fc.assert(
    fc.property(cases, ({ trailing, past, depth, share }) => {
      const setover = trailing + past;
      const first = share * depth;
      const rescue = rescueDepth(depth, setover, trailing, first);
      expectClose(overcutLeft(depth, setover, trailing, first, rescue), 0, 1e-12);
      const deeper = rescue + 0.01 * (depth - rescue);
      expect(overcutLeft(depth, setover, trailing, first, deeper)).toBeGreaterThan(0);
      expect(overcutLeft(depth, setover, trailing, first, (first + rescue) / 2)).toBe(0);
    }),
    seeded,
  );
});

test("the overcut formula is never under what the groove shows, whatever the nose and the level", () => {
  const levels = fc.record({ past: between(0.5, 15), share: between(0.02, 0.6), level: between(0, 1) });
  const round = fc.record({ leading: between(5, 45), trailing: between(5, 45), nose: between(0, 0.6) });
  fc.assert(
    fc.property(round, levels, fc.integer({ min: 2, max: 9 }), (form, { past, share, level }, count) => {
      const tool = grooveOf(form.leading + form.trailing, form.nose, form.trailing, "radius");
      const places = passesAlong(form.trailing + past, share, 1, count);
      const shows = overcutAt(tool, places, tool, places.at(-1)!, "trailing", level);
      const bound = miscut(1, form.trailing + past, form.trailing, share, level);
      expect(shows).toBeLessThanOrEqual(bound + 1e-12);
    }),
    { ...seeded, numRuns: 300 },
  );
});

test("a negative set-over past the leading flank is held against that flank", () => {
  expectClose(overcutLeft(1.2269, -35, 30, 0.3, 1.1), overcutLeft(1.2269, 35, 30, 0.3, 1.1), 1e-15);
  expectClose(flankLeft(1.2, -33, 30, 0.3), flankLeft(1.2, 33, 30, 0.3), 1e-15);
});

/** Level at which an outline is `width` wide, by halving. Both of its sides must be one above the other there. */
function levelOfWidth(outline: Outline, width: number): number {
  const at = (level: number) => {
    const inside = outline.filter(
      (piece) => Math.max(depthAt(piece, piece.x0), depthAt(piece, piece.x1)) >= level,
    );
    const reach = (piece: (typeof inside)[number], end: "x0" | "x1") => {
      // Outermost place of the piece that is as deep as the level.
      if (depthAt(piece, piece[end]) >= level) return piece[end];
      let [out, within] = [piece[end], end === "x0" ? piece.x1 : piece.x0];
      for (let k = 0; k < 80; k++) {
        const middle = (out + within) / 2;
        if (depthAt(piece, middle) >= level) within = middle;
        else out = middle;
      }
      return within;
    };
    return reach(inside.at(-1)!, "x1") - reach(inside[0]!, "x0");
  };
  let [low, high] = [0, 0.95];
  for (let k = 0; k < 60; k++) {
    const middle = (low + high) / 2;
    if (at(middle) >= width) low = middle;
    else high = middle;
  }
  return low;
}

test("the pitch diameter changes as the level at which the groove has its width", () => {
  const flats = fc.record({
    leading: between(15, 40),
    trailing: between(15, 40),
    nose: between(0.05, 0.3),
    off: between(-2, 1),
    error: between(-4, 4),
    level: between(0.2, 0.45),
    // Past the trailing flank, or below 0 past the leading one.
    way: fc.constantFrom(1, -1),
  });
  fc.assert(
    fc.property(flats, ({ leading, trailing, nose, off, error, level, way }) => {
      const tool = grooveOf(leading + trailing, nose, trailing);
      const [depth, first] = [1, 0.6];
      const setover = way * ((way > 0 ? trailing : leading) + off);
      const travels = [0.6, 0.8, 1].map((part) => part / Math.cos(rad(setover)));
      const outline = cutGroove(
        tool,
        travels.map((travel) => alongSetover(travel, setover + error)),
      ).at(-1)!.outline;
      const width = halfWidth(tool, "leading", depth - level) + halfWidth(tool, "trailing", depth - level);
      const found = levelOfWidth(outline, width);
      // Only where the first pass reaches past both levels is the formula more than a bound.
      fc.pre(found < 0.55 && found > 0.05);
      expectClose(pitchDiameterChange(depth, setover, error, tool, first, level), -2 * (found - level), 1e-6);
    }),
    { ...seeded, numRuns: 100 },
  );
});

test("below the first pass the change is a bound: the groove is no wider than the bottoms of its steps", () => {
  expectClose(
    pitchDiameterChange(1.2, 29, 3, { leading: 30, trailing: 30 }, 0.3, 0.5),
    0.0183005999657,
    1e-9,
  );
});

test("the largest set-over leaves just the flank error that is allowed", () => {
  expectClose(largestSetover(1.2, 30, 0.5, 0.3), 30.66553584718449, 1e-9);
  fc.assert(
    fc.property(
      between(3, 45),
      between(0.05, 5),
      between(0.2, 3),
      between(0, 0.9),
      (flank, allowed, depth, part) => {
        const setover = largestSetover(depth, flank, allowed, part * depth);
        expectClose(flankLeft(depth, setover, flank, part * depth), flank + allowed, 1e-9);
      },
    ),
    seeded,
  );
});

test("the trailing share is that of the two chips, and leads back to its set-over", () => {
  fc.assert(
    fc.property(between(5, 45), between(5, 45), between(0, 1), (leading, trailing, part) => {
      const flanks = { leading, trailing };
      const setover = -leading + 0.1 + part * (trailing + leading - 0.1);
      const share = trailingShare(setover, flanks);
      const [layer] = cutGroove(grooveOf(leading + trailing, 0.1, trailing), [alongSetover(1, setover)]);
      expectClose(share, layer!.chip.trailing / layer!.chip.leading, 1e-9);
      expectClose(setoverForShare(share, flanks), setover, 1e-9);
    }),
    seeded,
  );
  expectClose(tan(setoverForShare(1, { leading: 30, trailing: 30 })), 0, 1e-12);
});

test.each<[() => unknown, string]>([
  [() => depthWithError(0, 29, 1), "depth must be greater than 0, got 0"],
  [() => depthWithError(1, 29, -120), "error must leave a set-over between -90 and 90 degrees, got -120"],
  [() => flankStep(-1, 29, 30), "infeed must be 0 or more, got -1"],
  [() => overcutLeft(1, 35, 30, 0.3, 0.2), "reached must be from 0.3 to 1, got 0.2"],
  [() => overcutLeft(1, 35, 90, 0.3, 0.5), "flank must be from 0 to below 90 degrees, got 90"],
  [() => largestSetover(1, 30, 60), "allowed must leave a flank below 90 degrees, got 60"],
  [() => largestSetover(1, 30, 1, 1), "first_depth must be less than depth 1, got 1"],
  [() => trailingShare(-31, { leading: 30, trailing: 30 }), "setover must be greater than -30"],
  [() => setoverForShare(-1, { leading: 30, trailing: 30 }), "share must be 0 or more, got -1"],
  [
    () => pitchDiameterChange(1, 0, 0, { leading: 0, trailing: 0 }, 0.1, 0.5),
    "included must be greater than 0, got 0",
  ],
])("set-over error refusal %# says why", (call, says) => {
  expect(call).toThrow(RangeError);
  expect(call).toThrow(says);
});
