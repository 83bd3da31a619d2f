// Areas are checked by a general polygon library on the same tools in the same places, and by the closed form of one tool
// at full depth; chips and overcuts by formulas written out by hand beside each check.
import fc from "fast-check";
import { difference, type Geom, union } from "polyclip-ts";
import { expect, test } from "vitest";
import { type Groove, grooveArea, grooveOf } from "../../src/lathe/chip-area.ts";
import { alongSetover, cutGroove, deviationFrom, overcutAt } from "../../src/lathe/groove.ts";
import { halfWidth, outlineArea, outlineDepth, type Place } from "../../src/lathe/groove-outline.ts";
import { between, expectClose, seeded } from "./close.ts";
import { tools, wandering } from "./groove-tools.ts";

const rad = (degrees: number) => (degrees * Math.PI) / 180;

/** A round nose is a polygon of this many chords: each tool then lacks up to r^2 pi^3 / (12 chords^2). */
const chords = 80;
const missing = ({ nose, shape }: Groove) =>
  shape === "radius" ? (nose ** 2 * Math.PI ** 3) / (12 * chords ** 2) : 0;

/** Corners of a tool above its tip, drawn from its angles alone. */
function toolPolygon({ leading, trailing, nose, shape }: Groove, { axial, radial }: Place): Geom {
  const points: [number, number][] = [];
  const up = radial + 1;
  if (shape === "flat" || nose === 0) {
    points.push([axial - nose / 2, radial], [axial + nose / 2, radial]);
    points.push([axial + nose / 2 + up * Math.tan(rad(leading)), radial - up]);
    points.push([axial - nose / 2 - up * Math.tan(rad(trailing)), radial - up]);
  } else {
    const steps = chords;
    for (let k = 0; k <= steps; k++) {
      // Direction of the radius, from straight down, from the trailing contact to the leading one.
      const turn = rad(-(90 - trailing)) + (rad(180 - leading - trailing) * k) / steps;
      points.push([axial + nose * Math.sin(turn), radial - nose + nose * Math.cos(turn)]);
    }
    const [x1, y1] = points.at(-1)!;
    const [x0, y0] = points[0]!;
    points.push([x1 + (y1 + 1) * Math.tan(rad(leading)), -1], [x0 - (y0 + 1) * Math.tan(rad(trailing)), -1]);
  }
  return [points];
}

/** Everything above the surface, where there is no work. */
const air: Geom = [
  [
    [-100, -100],
    [100, -100],
    [100, 0],
    [-100, 0],
  ],
];

const polygonArea = (geometry: ReturnType<typeof union>) =>
  geometry.flat().reduce((sum, ring) => {
    let twice = 0;
    for (let i = 0; i + 1 < ring.length; i++) {
      const [[ax, ay], [bx, by]] = [ring[i]!, ring[i + 1]!];
      twice += ax * by - bx * ay;
    }
    return sum + twice / 2;
  }, 0);

const cutByPolygons = (tool: Groove, places: readonly Place[]) => {
  const [first, ...rest] = places.filter(({ radial }) => radial > 0).map((place) => toolPolygon(tool, place));
  return difference(union(first!, ...rest), air);
};

test("the groove of any passes has the area that a polygon library finds for the same tools", () => {
  fc.assert(
    fc.property(tools, wandering, (tool, places) => {
      const area = outlineArea(cutGroove(tool, places).at(-1)!.outline);
      const expected = Math.abs(polygonArea(cutByPolygons(tool, places)));
      expectClose(area, expected, missing(tool) * places.length + 1e-9);
    }),
    { ...seeded, numRuns: 30 },
  );
});

test("each layer has the area of what the polygon library finds new in it", () => {
  fc.assert(
    fc.property(tools, wandering, (tool, places) => {
      const layers = cutGroove(tool, places);
      let before = 0;
      places.forEach((_, k) => {
        const after = Math.abs(polygonArea(cutByPolygons(tool, places.slice(0, k + 1))));
        expectClose(layers[k]!.area, after - before, 2 * missing(tool) * (k + 1) + 1e-9);
        before = after;
      });
    }),
    { ...seeded, numRuns: 12 },
  );
});

test("the areas of all passes add up to the area of the groove", () => {
  fc.assert(
    fc.property(tools, wandering, (tool, places) => {
      const layers = cutGroove(tool, places);
      const sum = layers.reduce((total, { area }) => total + area, 0);
      expectClose(sum / outlineArea(layers.at(-1)!.outline), 1, 1e-9);
      for (const { area, areaOf } of layers) {
        expectClose(areaOf.leading + areaOf.nose + areaOf.trailing, area, 1e-12);
      }
    }),
    { ...seeded, numRuns: 300 },
  );
});

test("one pass leaves the closed form of its tool", () => {
  fc.assert(
    fc.property(tools, between(0.001, 2), (tool, depth) => {
      const [layer] = cutGroove(tool, [{ axial: 0, radial: depth }]);
      expectClose(layer!.area / grooveArea(depth, tool), 1, 1e-9);
    }),
    { ...seeded, numRuns: 300 },
  );
});

/** Passes along a set-over, as shares of the full slide travel, rising to 1. */
const rising = fc
  .array(between(0.05, 1), { minLength: 1, maxLength: 12 })
  .map((steps) =>
    steps.map((_, k) => steps.slice(0, k + 1).reduce((a, b) => a + b) / steps.reduce((a, b) => a + b)),
  );

const withinFlanks = fc
  .record({ tool: tools, share: between(0, 1), travel: between(0.2, 2), rising })
  .map(({ tool, share, travel, rising: shares }) => {
    const setover = -tool.leading + share * (tool.leading + tool.trailing);
    return { tool, setover, places: shares.map((part) => alongSetover(part * travel, setover)) };
  });

test("a set-over between the flanks overcuts nothing and leaves nothing, whatever the tool and passes", () => {
  fc.assert(
    fc.property(withinFlanks, between(0, 1), ({ tool, places }, level) => {
      const last = places.at(-1)!;
      const outline = cutGroove(tool, places).at(-1)!.outline;
      const { over, left, trailing, leading } = deviationFrom(outline, tool, last);
      for (const figure of [over, left, trailing, leading]) expectClose(figure, 0, 1e-9);
      for (const side of ["leading", "trailing"] as const) {
        expectClose(overcutAt(tool, places, tool, last, side, level * last.radial), 0, 1e-9);
      }
    }),
    { ...seeded, numRuns: 300 },
  );
});

test("past the trailing flank the surface is overcut by (depth - first depth)(tan a - tan t)", () => {
  fc.assert(
    fc.property(tools, between(0.5, 20), between(0.3, 2), rising, (tool, past, travel, shares) => {
      const setover = tool.trailing + past;
      const places = shares.map((share) => alongSetover(share * travel, setover));
      const [first, last] = [places[0]!, places.at(-1)!];
      // The formula is for straight flanks: the first pass reaches past the rounded part of its nose.
      fc.pre(tool.shape === "flat" || first.radial >= tool.nose);
      const expected = (last.radial - first.radial) * (Math.tan(rad(setover)) - Math.tan(rad(tool.trailing)));
      expectClose(overcutAt(tool, places, tool, last, "trailing", 0), expected, 1e-9);
      const outline = cutGroove(tool, places).at(-1)!.outline;
      const deviation = deviationFrom(outline, tool, last);
      expectClose(deviation.trailing, expected, 1e-9);
      expect(deviation.over > 0).toBe(shares.length > 1);
      expectClose(deviation.leading, 0, 1e-12);
    }),
    { ...seeded, numRuns: 300 },
  );
});

test("chips on the flanks of single-flank infeed are s sin(a + l) and s sin(t - a)", () => {
  fc.assert(
    fc.property(withinFlanks, ({ tool, setover, places }) => {
      let before: Place = { axial: 0, radial: 0 };
      for (const { place, chip } of cutGroove(tool, places)) {
        const s = Math.hypot(place.axial - before.axial, place.radial - before.radial);
        expectClose(chip.leading, s * Math.sin(rad(setover + tool.leading)), 1e-12);
        expectClose(chip.trailing, s * Math.sin(rad(tool.trailing - setover)), 1e-12);
        // A flat nose goes straight deeper; a point or a round nose meets the whole travel.
        const flat = tool.shape === "flat" && tool.nose > 0;
        const along = Math.abs(setover) < 90 - Math.max(tool.leading, tool.trailing);
        if (flat) expectClose(chip.nose, s * Math.cos(rad(setover)), 1e-12);
        else if (along) expectClose(chip.nose, s, 1e-12);
        before = place;
      }
    }),
    { ...seeded, numRuns: 200 },
  );
});

// By hand: straight in with a sharp 60-degree tool, 1 deep then 2: areas tan 30 and 3 tan 30, each flank takes sin 30.
test("a sharp tool straight in takes tan 30, then three times that, evenly on both flanks", () => {
  const tool = grooveOf(60, 0);
  const [one, two] = cutGroove(tool, [
    { axial: 0, radial: 1 },
    { axial: 0, radial: 2 },
  ]);
  expectClose(one!.area, 1 / Math.sqrt(3), 1e-12);
  expectClose(two!.area, 3 / Math.sqrt(3), 1e-12);
  expectClose(two!.areaOf.leading, two!.areaOf.trailing, 1e-12);
  expectClose(two!.chip.leading, 0.5, 1e-12);
  expectClose(two!.chip.nose, 1, 1e-12);
  expectClose(two!.width.leading, 2 / Math.cos(Math.PI / 6), 1e-12);
});

// By hand: along the trailing flank of a sharp 60-degree tool the trailing edge slides along itself; the leading one moves
// s sin 60 = 1 square to itself, s = 1 / cos 30. Areas are those of straight in.
test("along the trailing flank only the leading edge cuts", () => {
  const tool = grooveOf(60, 0);
  const places = [1, 2].map((depth) => alongSetover(depth / Math.cos(rad(30)), 30));
  const [, two] = cutGroove(tool, places);
  expectClose(two!.areaOf.trailing, 0, 1e-12);
  expect(two!.width.trailing).toBe(0);
  expectClose(two!.area, 3 / Math.sqrt(3), 1e-12);
  expectClose(two!.chip.leading, 1, 1e-12);
});

// By hand: a second pass moved 0.1 to the leading side at the same depth: the leading flank takes 0.1 cos 30, the rest nothing.
test("a side step at one depth takes its cosine from one flank", () => {
  const tool = grooveOf(60, 0.2);
  const [, two] = cutGroove(tool, [
    { axial: 0, radial: 1 },
    { axial: 0.1, radial: 1 },
  ]);
  expectClose(two!.chip.leading, 0.1 * Math.cos(rad(30)), 1e-12);
  expect(two!.chip.trailing).toBe(0);
  expectClose(two!.area, 0.1, 1e-12);
});

test("the nose chip is the longest way between the flanks that no earlier place shortens", () => {
  fc.assert(
    fc.property(tools, wandering, (tool, places) => {
      fc.pre(tool.shape === "radius" || tool.nose === 0);
      const [front, back] = [rad(90 - tool.leading), -rad(90 - tool.trailing)];
      for (const { pass, place, chip } of cutGroove(tool, places)) {
        const been = [{ axial: 0, radial: 0 }, ...places.slice(0, pass - 1)];
        let longest = 0;
        for (let k = 0; k <= 4000; k++) {
          const way = back + ((front - back) * k) / 4000;
          const shift = ({ axial, radial }: Place) =>
            (place.axial - axial) * Math.sin(way) + (place.radial - radial) * Math.cos(way);
          longest = Math.max(longest, Math.min(...been.map(shift)));
        }
        // The scan misses the top by up to half a step of pi / 4000 times the longest way there is, 2.5.
        expectClose(chip.nose, longest, 1e-3);
      }
    }),
    { ...seeded, numRuns: 40 },
  );
});

test("a spring pass takes nothing", () => {
  const place = { axial: 0.1, radial: 0.8 };
  const [, spring] = cutGroove(grooveOf(55, 0.2, undefined, "radius"), [place, place]);
  expect(spring!.area).toBe(0);
  expect(spring!.chip).toEqual({ leading: 0, nose: 0, trailing: 0 });
  expect(spring!.width).toEqual({ leading: 0, nose: 0, trailing: 0 });
});

test("a tool that does not reach the surface cuts nothing", () => {
  const [layer] = cutGroove(grooveOf(60, 0.1), [{ axial: 0, radial: -0.1 }]);
  expect(layer!.area).toBe(0);
  expect(layer!.outline).toEqual([]);
});

test("over and left are the areas that the polygon library finds on either side of the form", () => {
  const flat = tools.filter(({ shape, nose }) => shape === "flat" || nose === 0);
  const place = fc.record({ axial: between(-0.2, 0.2), radial: between(0.2, 1.5) });
  fc.assert(
    fc.property(flat, flat, wandering, place, (tool, form, places, at) => {
      const outline = cutGroove(tool, places).at(-1)!.outline;
      const { over, left } = deviationFrom(outline, form, at);
      const cut = cutByPolygons(tool, places);
      const wanted = cutByPolygons(form, [at]);
      expectClose(over, Math.abs(polygonArea(difference(cut, wanted))), 1e-8);
      expectClose(left, Math.abs(polygonArea(difference(wanted, cut))), 1e-8);
    }),
    { ...seeded, numRuns: 60 },
  );
});

// By hand: sharp 60-degree cuts at 0 and 0.5 along the axis, both 1 deep, leave a ridge between them. A third cut midway
// takes a rhombus out of it, 0.25 wide and 0.25 / tan 30 high.
test("a pass inside all earlier ones takes the ridge between them", () => {
  const tool = grooveOf(60, 0);
  const layers = cutGroove(tool, [
    { axial: 0, radial: 1 },
    { axial: 0.5, radial: 1 },
    { axial: 0.25, radial: 1 },
  ]);
  const ridge = layers[2]!;
  expectClose(ridge.area, (0.25 * 0.25) / Math.tan(rad(30)) / 2, 1e-12);
  expect(ridge.chip).toMatchObject({ leading: 0, trailing: 0 });
  expectClose(ridge.areaOf.leading, ridge.area / 2, 1e-12);
  expectClose(ridge.areaOf.trailing, ridge.area / 2, 1e-12);
});

test("a square flank that steps sideways cuts with the whole wall", () => {
  const tool = grooveOf(0, 0.5);
  const [, two] = cutGroove(tool, [
    { axial: 0, radial: 0.8 },
    { axial: 0.1, radial: 0.8 },
  ]);
  expectClose(two!.width.leading, 0.8, 1e-12);
  expectClose(two!.areaOf.leading, 0.08, 1e-12);
  expect(two!.areaOf.trailing).toBe(0);
});

test("overcut at a level is read off the outline too", () => {
  const steps = fc.record({
    tool: tools,
    past: between(1, 20),
    travel: between(0.3, 1.5),
    level: between(0, 0.95),
  });
  fc.assert(
    fc.property(steps, rising, ({ tool, past, travel, level }, shares) => {
      fc.pre(tool.trailing > 0);
      const places = shares.map((share) => alongSetover(share * travel, tool.trailing + past));
      const last = places.at(-1)!;
      const y = level * last.radial;
      const over = overcutAt(tool, places, tool, last, "trailing", y);
      const edge = last.axial - halfWidth(tool, "trailing", last.radial - y);
      const outline = cutGroove(tool, places).at(-1)!.outline;
      // The groove reaches the level at the overcut, and not beyond it.
      expect(outlineDepth(outline, edge - over + 1e-9)).toBeGreaterThanOrEqual(y - 1e-6);
      expect(outlineDepth(outline, edge - over - 1e-6)).toBeLessThan(y + 1e-12);
    }),
    { ...seeded, numRuns: 200 },
  );
});

// Arc lengths by hand: r (180 - l - t) degrees where the whole nose is in, 2 r acos(1 - d / r) where only its tip is.
test("the nose cuts with the length of its arc, the flanks with theirs", () => {
  const tool = grooveOf(55, 0.3, undefined, "radius");
  const whole = cutGroove(tool, [{ axial: 0, radial: 1 }])[0]!.width;
  expectClose(whole.nose, 0.3 * rad(125), 1e-12);
  const contact = 0.3 * (1 - Math.sin(rad(27.5)));
  expectClose(whole.leading, (1 - contact) / Math.cos(rad(27.5)), 1e-12);
  const tip = cutGroove(tool, [{ axial: 0, radial: 0.1 }])[0]!.width;
  expectClose(tip.nose, 2 * 0.3 * Math.acos(1 - 0.1 / 0.3), 1e-12);
  expect(tip.leading).toBe(0);
});

// Mean of s cos(direction - a) between the flanks, by its integral; Simpson's rule stands for it within a hundredth.
test("the nose has its share of the area by its mean chip", () => {
  const tool = grooveOf(60, 0.25, undefined, "radius");
  for (const setover of [0, 15, 30]) {
    const [first, second] = [1, 1.15].map((travel) => alongSetover(travel, setover));
    const { width, chip, areaOf } = cutGroove(tool, [first!, second!])[1]!;
    const mean = (0.15 * (Math.sin(rad(60 - setover)) - Math.sin(rad(-60 - setover)))) / rad(120);
    const share = (width.nose * mean) / (width.leading * chip.leading);
    expectClose(areaOf.nose / areaOf.leading / share, 1, 0.01);
  }
});
