import fc from "fast-check";
import { expect, test } from "vitest";
import { cutDepth } from "../../src/thread/cutdepth.ts";
import { readThread } from "../../src/thread/read.ts";

const seeded = { seed: 20261125 };
const degree = Math.PI / 180;

const threads = ["M10", "1/4-20 UNC", "1-5 Acme", "Tr 40x7", "S 48x8", "2-4 Butt", "MJ10x1.5"];

/** Half a turn of the groove: how wide a flat tool that ends `below` the pitch line cuts at that line. */
function widthByFlat(nose: number, below: number, l: number, t: number): number {
  return nose + below * (Math.tan(l * degree) + Math.tan(t * degree));
}

/**
 * How wide a round-nosed tool cuts at the pitch line, from the arc itself: the flanks are the lines at these angles that
 * touch a circle of radius r whose lowest point is `below` the line.
 */
function widthByArc(r: number, below: number, l: number, t: number): number {
  const centre = below - r;
  // A line at angle a from the vertical that touches the circle passes r / cos a beside its centre, at its height.
  const side = (a: number) => r / Math.cos(a * degree) + centre * Math.tan(a * degree);
  return side(l) + side(t);
}

test("a flat nose at the depth given cuts a groove half a pitch wide at the target diameter", () => {
  fc.assert(
    fc.property(
      fc.constantFrom(...threads),
      fc.double({ min: 0, max: 0.12, noNaN: true }),
      fc.double({ min: -0.05, max: 0.05, noNaN: true }),
      fc.double({ min: 0, max: 0.05, noNaN: true }),
      (text, share, over, under) => {
        const thread = readThread(text);
        const { pitch: P, loadFlank: l, clearanceFlank: t } = thread;
        const nose = share * P;
        const blank = thread.major + over * P;
        const target = thread.pitchDia - under * P;
        const depth = cutDepth(thread, nose, "flat", "external", blank, target);
        const below = depth - (blank - target) / 2;
        expect(widthByFlat(nose, below, l, t)).toBeCloseTo(P / 2, 9);
      },
    ),
    seeded,
  );
});

test("a round nose at the depth given cuts a groove half a pitch wide, on unequal flanks too", () => {
  fc.assert(
    fc.property(fc.constantFrom(...threads), fc.double({ min: 0, max: 0.03, noNaN: true }), (text, share) => {
      const thread = readThread(text);
      const { pitch: P, loadFlank: l, clearanceFlank: t } = thread;
      const r = share * P;
      const bore = thread.minor.internal;
      const depth = cutDepth(thread, r, "radius", "internal");
      const below = depth - (thread.pitchDia - bore) / 2;
      // On unequal flanks the lowest point of the arc is still an arc point: both flanks touch the same circle.
      expect(widthByArc(r, below, l, t)).toBeCloseTo(P / 2, 9);
    }),
    seeded,
  );
});

// The root of each standard's design form, cut by a tool of just that root, gives the standard's depth.
test.each([
  ["M10", "radius"],
  ["1/4-20 UNC", "flat"],
  ["1-5 Acme", "flat"],
  ["1-5 Stub Acme", "flat"],
  ["Tr 40x7", "flat"],
  ["S 48x8", "radius"],
  ["2-4 Butt", "radius"],
  ["Rd 40x1/6", "radius"],
  ["1/4-26 BSC", "radius"],
  ["MJ10x1.5", "radius"],
  ["1/4-28 UNJF", "radius"],
  ["1/4-20 NC", "flat"],
  ["8-12 Whit", "radius"],
] as const)("the design root of %s cuts the design depth", (text, shape) => {
  const thread = readThread(text);
  const root = shape === "radius" ? thread.rootRadius! : thread.rootFlat!;
  const tolerance = 1e-4 * thread.pitch;
  expect(Math.abs(cutDepth(thread, root, shape, "external") - thread.depth.external)).toBeLessThan(
    tolerance * 5,
  );
});

test("the largest radius leaves the flanks at the corners of the basic root", () => {
  // H/6 for the ISO screw and H/12 for its nut; 0.12427 P as DIN 513 prints it.
  const H = (Math.sqrt(3) / 2) * 1.5;
  const refused = (text: string, r: number, member: "external" | "internal") => () =>
    cutDepth(readThread(text), r, "radius", member);
  expect(refused("M10", H / 6 + 1e-5, "external")).toThrow("0.2165064 mm");
  expect(refused("M10", H / 6, "external")).not.toThrow();
  expect(refused("M10", H / 12 + 1e-5, "internal")).toThrow("nose radius");
  expect(refused("M10", H / 12, "internal")).not.toThrow();
  expect(refused("S 48x8", 0.1243 * 8, "external")).toThrow("nose radius");
  expect(refused("S 48x8", 0.12426 * 8, "external")).not.toThrow();
});

test("impossible noses, blanks and targets are refused by name", () => {
  const thread = readThread("M10");
  expect(() => cutDepth(thread, -0.1, "flat", "external")).toThrow("nose must be 0 or more, got -0.1");
  expect(() => cutDepth(thread, 0, "flat", "external", 0)).toThrow("blank must be greater than 0, got 0");
  expect(() => cutDepth(thread, 0, "flat", "external", 10, 0)).toThrow(
    "target must be greater than 0, got 0",
  );
  expect(() => cutDepth(thread, 0, "flat", "external", 5, 9)).toThrow("leaves nothing to cut");
});
