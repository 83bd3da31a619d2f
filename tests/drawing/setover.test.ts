import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { drawSetover } from "../../src/drawing/setover.ts";
import type { SetoverFigure } from "../../src/lathe/figure.ts";
import { drawn, pointsOf, seed, setoverFigures } from "./figures.ts";

const sizes = fc.tuple(fc.integer({ min: 160, max: 900 }), fc.integer({ min: 130, max: 800 }));

function drawing(...args: unknown[]) {
  const { figure } = drawn("SETOVER", ...args);
  return drawSetover(figure as SetoverFigure, 360, 560);
}

/** Direction of a line of the drawing, degrees, 0 to the right and 90 towards the person. */
function direction(of: ReturnType<typeof drawSetover>, part: string): number {
  const [from, to] = pointsOf(of.shapes.find((shape) => shape.part === part)!.d);
  return (Math.atan2(to![1] - from![1], to![0] - from![0]) * 180) / Math.PI;
}

test("the slide stands at the set-over from square to 0.01 degree, at any size", () => {
  fc.assert(
    fc.property(setoverFigures, sizes, (figure, [width, height]) => {
      const of = drawSetover(figure, width, height);
      // Outside right-hand the handle goes right, and inside or left-hand the other way (common practice, no source).
      const right = (figure.hand === "right") === (figure.member === "external");
      const turned = right ? 90 - direction(of, "setting") : direction(of, "setting") - 90;
      expect(Math.abs(turned - figure.setover)).toBeLessThan(0.01);
    }),
    { ...seed, numRuns: 120 },
  );
});

test("the line of the scale's zero and the slide stand as far apart as the scale reads", () => {
  fc.assert(
    fc.property(setoverFigures, (figure) => {
      if (figure.zeroLine === "square") return;
      const of = drawSetover(figure, 400, 500);
      const apart = Math.abs(direction(of, "setting") - direction(of, "zero"));
      expect(Math.abs(Math.min(apart, 360 - apart) - figure.reading)).toBeLessThan(0.01);
    }),
    { ...seed, numRuns: 80 },
  );
});

test("a flank well away from the setting is drawn at its own angle", () => {
  const of = drawing(20, "bed", 27.5);
  expect(90 - direction(of, "flank")).toBeCloseTo(27.5, 2);
  expect(of.shapes.some((shape) => shape.part === "flank" && shape.look === "flank")).toBe(true);
});

describe("labels", () => {
  const texts = (of: ReturnType<typeof drawSetover>, look: string) =>
    of.labels.filter((label) => label.look.split(" ").includes(look)).map((label) => label.text);

  test("the setting is blue and bold, the flank is muted and says that it is the flank", () => {
    // 90 - 26.5 and 90 - 27.5.
    const of = drawing(26.5, "bed", 27.5);
    expect(texts(of, "set")).toEqual(expect.arrayContaining(["63.5°", "26.5°"]));
    expect(texts(of, "muted")).toEqual(expect.arrayContaining(["flank 62.5°", "flank 27.5°"]));
    for (const text of [...texts(of, "set"), ...texts(of, "bold")]) expect(text).not.toContain("flank");
  });

  test("which way to swing stands at the handle", () => {
    expect(drawing(29).labels.map((label) => label.text)).toEqual(
      expect.arrayContaining(["handle right", "wind in"]),
    );
    const inside = drawing(29, "square", undefined, "right", "internal");
    expect(inside.labels.map((label) => label.text)).toEqual(
      expect.arrayContaining(["handle left", "wind back"]),
    );
  });

  test("where the lathe's own scale shows another figure, that one is the one to set", () => {
    const of = drawing(26.5, "bed", 27.5, "right", "external", 26.5);
    const first = of.labels.find((label) => label.look === "set bold")!;
    expect(first.text).toBe("26.5°");
    expect(of.labels.map((label) => label.text)).toEqual(
      expect.arrayContaining(["mark on your scale", "bed scale 63.5°"]),
    );
    expect(of.labels.some((label) => label.text === "63.5°")).toBe(false);
    expect(of.says).toContain("this lathe's own scale shows 26.5° there");
    // A scale that shows the full reading is drawn as if nothing were said.
    expect(drawing(26.5, "bed", 27.5, "right", "external", 63.5)).toEqual(drawing(26.5, "bed", 27.5));
  });

  // Set 64, flank 62.5. Near by, whole degrees are figured; from 64 to an end at 50 each fifth; to one at 90 each tenth.
  test.each([
    [0, 90, 1, [61, 65]],
    [0, 50, 5, [50, 50]],
    [78, 90, 5, [80, 80]],
    [89, 180, 10, [90, 90]],
  ])(
    "a scale from %d to %d has figures at each %d, long marks there and shorter ones between",
    (low, high, each, [least, most]) => {
      const of = drawing(26, "bed", 27.5, "right", "external", undefined, low, high);
      const figures = of.labels
        .map(({ text }) => text)
        .filter((text) => /^[\d.]+$/.test(text) && text !== "0");
      expect(figures.length).toBeGreaterThan(0);
      for (const text of figures) expect(Number(text) % each, text).toBe(0);
      const shown = figures.map(Number);
      expect(Math.min(...shown)).toBeGreaterThanOrEqual(least!);
      expect(Math.max(...shown)).toBeLessThanOrEqual(most!);
    },
  );

  // 90 - 26 = 64 from the bed, past a scale that ends at 60.
  test("a scale that ends short is drawn to its end, and the setting is said to be off it", () => {
    const of = drawing(26, "bed", 27.5, "right", "external", undefined, 0, 60);
    expect(texts(of, "warn")).toEqual(["off your scale, 60.0°", "ends at 60.0°"]);
    expect(texts(of, "set")).toContain("off it: 64.0°");
    expect(of.says).toContain("reads 64.0°; that is off this lathe's scale, which ends at 60.0°");
    // Marks grow to the left or right as the figures do; none lies past the end, and the setting does.
    const [x] = pointsOf(of.shapes.find(({ part }) => part === "scale-end")!.d)[0]!;
    const scale = pointsOf(of.shapes.find(({ part }) => part === "scale")!.d).map(([at]) => at);
    const [set] = pointsOf(of.shapes.find(({ part }) => part === "set-mark")!.d)[0]!;
    expect(Math.max(...scale)).toBeLessThan(x + 2);
    expect(set).toBeGreaterThan(x + 10);
    const figures = of.labels.map(({ text }) => text).filter((text) => /^\d+$/.test(text));
    expect(figures).toContain("59");
    expect(figures.filter((text) => Number(text) > 60)).toEqual([]);
    // The flank on the last mark itself, and the setting past it: the scale is there as well.
    const close = drawing(29, "bed", 30, "right", "external", undefined, 0, 60);
    const line = pointsOf(close.shapes.find(({ part }) => part === "scale")!.d).map(([at]) => at);
    expect(Math.max(...line) - Math.min(...line)).toBeGreaterThan(60);
    // The same scale with its last mark at 90 shows the setting as any other.
    expect(texts(drawing(26, "bed", 27.5, "right", "external", undefined, 0, 90), "warn")).toEqual([]);
  });

  test("below 0 the handle is drawn and told on the other side, at 0 square", () => {
    const words = (setover: number) => drawing(setover).labels.map((label) => label.text);
    expect(words(-20)).toContain("handle left");
    expect(90 - direction(drawing(-20), "setting")).toBeCloseTo(-20, 2);
    expect(words(0)).toContain("handle square");
  });

  test("a setting past the flank says by how much", () => {
    expect(texts(drawing(30, "square", 27.5), "warn")).toEqual(["past the flank by 2.5°"]);
    expect(texts(drawing(27.5, "square", 27.5), "warn")).toEqual([]);
  });
});

test("the description says setting, reading, flank and swing", () => {
  expect(drawing(26.5, "bed", 27.5).says).toBe(
    "Plan view, headstock left: the top slide set over 26.5° from the line square to the lathe axis, right-hand external thread, handle right, wind in; a protractor zeroed along the bed reads 63.5°; the flank lies at 27.5°, where that scale reads 62.5°, not to be set.",
  );
});

/** Length of the straight lines of a drawing that run through the letters of a label, px, by points along them. */
function linesThrough(of: ReturnType<typeof drawSetover>, { box }: (typeof of.labels)[number]): number {
  const letters = { ...box, top: box.top + 0.2 * (box.bottom - box.top), bottom: box.bottom - 2 };
  const every = 0.25;
  let length = 0;
  for (const { d } of of.shapes) {
    if (d.includes("A")) continue;
    const points = pointsOf(d);
    const ring = d.endsWith("Z") ? [...points, points[0]!] : points;
    ring.slice(1).forEach(([x1, y1], i) => {
      const [x0, y0] = ring[i]!;
      const count = Math.ceil(Math.sqrt((x1 - x0) ** 2 + (y1 - y0) ** 2) / every);
      for (let k = 0; k < count; k++) {
        const [x, y] = [x0 + ((x1 - x0) * k) / count, y0 + ((y1 - y0) * k) / count];
        if (x > letters.left && x < letters.right && y > letters.top && y < letters.bottom) length += every;
      }
    });
  }
  return length;
}

test("the words for the axis and for the zero never lie over the slides, however narrow the card", () => {
  for (const [width, height] of [
    [160, 200],
    [207, 242],
    [260, 300],
    [399, 335],
  ] as const)
    for (const zero of ["bed", "obtuse"])
      for (const hand of ["right", "left"])
        for (const member of ["external", "internal"]) {
          const { figure } = drawn("SETOVER", 26.5, zero, 27.5, hand, member);
          const of = drawSetover(figure as SetoverFigure, width, height);
          for (const label of of.labels.filter(({ text }) => /^(lathe axis|0, along.*|the bed)$/.test(text)))
            expect(linesThrough(of, label), `${label.text}, ${hand} ${member} ${zero} ${width}`).toBeLessThan(
              8,
            );
        }
});
