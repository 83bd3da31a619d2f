import { describe, expect, test } from "vitest";
import { grooveSides, surface } from "../../src/drawing/profile.ts";
import { drawThread } from "../../src/drawing/thread.ts";
import type { ThreadFigure } from "../../src/lathe/figure.ts";
import { pointsOf, threadFigure, threads } from "./figures.ts";

const figureOf = (text: string, unit?: "mm" | "in") => threadFigure(text, unit) as ThreadFigure;

function drawnProfile(text: string) {
  const figure = figureOf(text);
  const of = drawThread(figure, 600, 500);
  return { figure, of, points: pointsOf(of.shapes.find((shape) => shape.part === "profile")!.d) };
}

/** Pixels to a unit, from the pitch line, which is 1.66 pitches long. */
function scaleOf({ figure, of }: ReturnType<typeof drawnProfile>): number {
  const [from, to] = pointsOf(of.shapes.find((shape) => shape.part === "pitch-line")!.d);
  return (to![0] - from![0]) / (1.66 * figure.shape.pitch);
}

describe("the profile", () => {
  // Depth of the form in pitches as the standards print it.
  test.each([
    ["1/2-12 BSW", 0.640327, "BS 84"],
    ["0 BA", 0.6, "BS 93"],
    ["Tr 40x7", 0.5 + 0.5 / 7, "ISO 2904: half the pitch and a clearance of 0.5 mm"],
    ["S 48x8", 0.86777, "DIN 513"],
  ])("of %s is %d pitches deep (%s)", (text, pitches) => {
    const profile = drawnProfile(text);
    const ys = profile.points.map(([, y]) => y);
    const depth = (Math.max(...ys) - Math.min(...ys)) / scaleOf(profile) / profile.figure.shape.pitch;
    expect(depth).toBeCloseTo(pitches, 3);
  });

  test.each([
    ["1/2-12 BSW", 27.5, 27.5],
    ["M12", 30, 30],
    ["2-4 Butt", 7, 45],
    ["S 48x8", 3, 30],
    ["1-5 Acme", 14.5, 14.5],
  ])("of %s has flanks of %d and %d degrees on paper", (text, left, right) => {
    const { points } = drawnProfile(text);
    const ys = points.map(([, y]) => y);
    const middle = (Math.min(...ys) + Math.max(...ys)) / 2;
    const slopes = points.flatMap(([x, y], i) => {
      const [nx, ny] = points[i + 1] ?? [x, y];
      // Where the line goes through the middle of its depth it is a flank.
      const cuts = y < middle !== ny < middle && Math.abs(ny - y) > 1;
      return cuts ? [(Math.atan((nx - x) / (ny - y)) * 180) / Math.PI] : [];
    });
    const down = slopes.filter((slope) => slope >= 0);
    const up = slopes.filter((slope) => slope < 0).map((slope) => -slope);
    for (const slope of down) expect(slope).toBeCloseTo(left, 2);
    for (const slope of up) expect(slope).toBeCloseTo(right, 2);
    expect(down.length + up.length).toBeGreaterThan(1);
  });

  test("is half a pitch wide at the pitch line, for every thread", () => {
    for (const text of threads(60)) {
      const { shape } = figureOf(text);
      const { left, right } = grooveSides(shape, shape.pitchDia / 2);
      expect((left + right) / shape.pitch).toBeCloseTo(0.5, 9);
    }
  });

  test("stays between crest and root and never runs back", () => {
    for (const text of threads(60)) {
      const { shape } = figureOf(text);
      const points = surface(shape, -1, 1);
      for (const [i, [x, r]] of points.entries()) {
        expect(r).toBeLessThanOrEqual(shape.major / 2 + 1e-9);
        expect(r).toBeGreaterThanOrEqual(shape.minor / 2 - 1e-9);
        if (i > 0) expect(x).toBeGreaterThanOrEqual(points[i - 1]![0] - 1e-9);
      }
    }
  });
});

test("a tolerance zone is as high on paper as the class is wide, to the profile's scale", () => {
  // M12-6g: pitch diameter 10.679 to 10.829 (ISO 965-2).
  const profile = drawnProfile("M12-6g");
  const zone = pointsOf(profile.of.shapes.find((shape) => shape.part === "zone-pitch")!.d).map(([, y]) => y);
  expect((Math.max(...zone) - Math.min(...zone)) / scaleOf(profile)).toBeCloseTo((10.829 - 10.679) / 2, 4);
});

test("diameters stand with their limits, and the description has them all", () => {
  const { of } = drawnProfile("M12-6g");
  const texts = of.labels.map((label) => label.text);
  // ISO 724 and ISO 965-2.
  expect(texts).toEqual(
    expect.arrayContaining(["major ø12", "pitch ø10.863", "10.679 to 10.829", "P 1.75", "60.0°", "6g"]),
  );
  expect(of.says).toContain("pitch diameter 10.863 mm, class 6g 10.679 to 10.829");
});

test("a nut opens towards the axis, a screw away from it", () => {
  expect(figureOf("M12-6H").shape.member).toBe("internal");
  const metal = (text: string) => {
    const { of, points } = drawnProfile(text);
    const body = pointsOf(of.shapes.find((shape) => shape.look === "metal")!.d).map(([, y]) => y);
    const edge = points.map(([, y]) => y);
    return Math.max(...body) - Math.max(...edge) > Math.min(...edge) - Math.min(...body) ? "below" : "above";
  };
  expect([metal("M12-6g"), metal("M12-6H")]).toEqual(["below", "above"]);
});
