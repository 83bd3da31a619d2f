import fc from "fast-check";
import { expect, test } from "vitest";
import { drawPasses } from "../../src/drawing/passes.ts";
import { grooveOf } from "../../src/lathe/chip-area.ts";
import { passArea } from "../../src/lathe/passes.ts";
import { passesAsked, passesFigure, pointsOf, seed, shoelace } from "./figures.ts";

const frames = fc.tuple(fc.integer({ min: 250, max: 900 }), fc.integer({ min: 200, max: 800 }));

/** Pixels to one unit of length, from the depth of the groove as it is drawn. */
function scaleOf(of: ReturnType<typeof drawPasses>, depth: number): number {
  const ys = pointsOf(of.shapes.find((shape) => shape.part === "groove")!.d).map(([, y]) => y);
  return (Math.max(...ys) - Math.min(...ys)) / depth;
}

const areaOf = (of: ReturnType<typeof drawPasses>, part: string) =>
  of.shapes
    .filter((shape) => shape.part === part)
    .reduce((sum, shape) => sum + shoelace(pointsOf(shape.d)), 0);

test("every layer has the area that PASS.AREA gives, to 0.1 %", () => {
  // Set-overs inside the flanks: there each layer is what one tool takes between two depths.
  const inside = fc.double({ min: -0.95, max: 1, noNaN: true });
  fc.assert(
    fc.property(passesAsked(inside), frames, (asked, [width, height]) => {
      const of = drawPasses(passesFigure(asked), width, height);
      const scale = scaleOf(of, asked.depths.at(-1)!);
      const tool = grooveOf(asked.included, asked.nose, asked.trailing, asked.shape);
      asked.depths.forEach((depth, i) => {
        const area = passArea(asked.depths[i - 1] ?? 0, depth, tool);
        const drawn = areaOf(of, `pass-${i + 1}`) / scale ** 2;
        // Places are kept to a ten-thousandth of a pixel, which the thinnest layers feel.
        expect(Math.abs(drawn - area)).toBeLessThan(0.001 * area + 0.05 / scale ** 2);
      });
    }),
    { ...seed, numRuns: 150 },
  );
});

test("printed areas: a flat of 0.19 to 0.92 deep, and a 7/45 buttress to 4.2", () => {
  // PASS.AREA(0, 0.92, 60, 0.19) and PASS.AREA(0, 4.2, 52, 0.5, 7), computed independently.
  for (const [depth, included, nose, trailing, setover, area] of [
    [0.92, 60, 0.19, 30, 29, 0.6634693],
    [4.2, 52, 0.5, 7, 6, 12.0029598],
  ] as const) {
    const depths = [0.4 * depth, 0.7 * depth, depth];
    const figure = passesFigure({
      depths,
      setover,
      included,
      nose,
      trailing,
      shape: "flat",
      next: undefined,
    });
    const of = drawPasses(figure, 600, 500);
    const all = depths.reduce((sum, _, i) => sum + areaOf(of, `pass-${i + 1}`), 0);
    expect(all / scaleOf(of, depth) ** 2 / area).toBeCloseTo(1, 3);
  }
});

test("the overcut is drawn as wide at the surface as SETOVER.MISCUT says", () => {
  // SETOVER.MISCUT(1.3554, 35, 27.5, 0.3) = 0.1895926, computed independently.
  const figure = passesFigure({
    depths: [0.3, 0.6, 0.9, 1.1, 1.3554],
    setover: 35,
    included: 55,
    nose: 0,
    trailing: 27.5,
    shape: "flat",
    next: 4,
  });
  const of = drawPasses(figure, 600, 500);
  const rings = of.shapes.filter((shape) => shape.part === "overcut").flatMap((shape) => pointsOf(shape.d));
  const surface = Math.min(...rings.map(([, y]) => y));
  const xs = rings.filter(([, y]) => y === surface).map(([x]) => x);
  expect((Math.max(...xs) - Math.min(...xs)) / scaleOf(of, 1.3554)).toBeCloseTo(0.1895926, 4);
  expect(
    of.labels.some((label) => label.text.includes("Overcut 0.1896") && label.look.includes("warn")),
  ).toBe(true);
});

test("a set-over inside the flank overcuts nothing", () => {
  fc.assert(
    fc.property(passesAsked(fc.double({ min: 0, max: 1, noNaN: true })), (asked) => {
      const of = drawPasses(passesFigure(asked), 400, 300);
      expect(areaOf(of, "overcut")).toBeLessThan(0.01);
    }),
    { ...seed, numRuns: 50 },
  );
});

test("cut passes are tinted, the next is solid, those to come are dashed, and the words say so", () => {
  const of = drawPasses(
    passesFigure({
      depths: [0.5, 0.8, 1],
      setover: 27,
      included: 55,
      nose: 0.1,
      trailing: 27.5,
      shape: "radius",
      next: 2,
    }),
    500,
    400,
  );
  const looks = [1, 2, 3].map((pass) => of.shapes.find((shape) => shape.part === `pass-${pass}`)!.look);
  expect(looks).toEqual(["layer chip", "layer next", "layer to-come"]);
  expect(of.labels.map((label) => label.text)).toEqual(
    expect.arrayContaining([
      "Next: pass 2 of 3",
      "chip 0.2741 on the leading, 0.00294 on the trailing flank",
    ]),
  );
  // Slide travel 0.3 / cos 27 times sin(27 + 27.5) and sin(27.5 - 27): by hand.
  expect(of.says).toContain("its chip is 0.2741 thick on the leading and 0.00294 on the trailing flank");
});

test("the slide's line leans by the set-over", () => {
  const of = drawPasses(
    passesFigure({
      depths: [0.5, 1],
      setover: 26.5,
      included: 55,
      nose: 0,
      trailing: 27.5,
      shape: "flat",
      next: 1,
    }),
    500,
    400,
  );
  const [from, to] = pointsOf(of.shapes.find((shape) => shape.part === "infeed")!.d);
  // Up and towards the trailing side, which is on the right.
  expect((Math.atan2(to![0] - from![0], from![1] - to![1]) * 180) / Math.PI).toBeCloseTo(26.5, 2);
});

test("the side that leads is the side that the carriage runs to: right for a thread cut away from the headstock", () => {
  const asked = {
    depths: [0.3, 0.6, 0.9],
    setover: 29,
    included: 60,
    nose: 0,
    trailing: 30,
    shape: "flat" as const,
    next: undefined,
  };
  for (const [direction, way] of [
    ["in", -1],
    ["out", 1],
  ] as const) {
    const of = drawPasses(passesFigure({ ...asked, direction }), 600, 400);
    const ends = (part: string) =>
      pointsOf(of.shapes.find((shape) => shape.part === part)!.d).map(([x]) => x);
    const [tip, tail] = ends("cut");
    expect(Math.sign(tip! - tail!), `cut, ${direction}`).toBe(way);
    // The tool comes down its line from the other side, and each pass takes its chip from the flank that leads.
    const [touch, from] = ends("infeed");
    expect(Math.sign(touch! - from!), `infeed, ${direction}`).toBe(way);
    const xs = ends("pass-3");
    const chip = way * (xs.reduce((sum, x) => sum + x, 0) / xs.length - touch!);
    expect(chip, `chip, ${direction}`).toBeGreaterThan(0);
    const flank = (word: string) => of.labels.find(({ text }) => text === `${word} flank`)!.x;
    expect(Math.sign(flank("leading") - flank("trailing")), `flanks, ${direction}`).toBe(way);
  }
});
