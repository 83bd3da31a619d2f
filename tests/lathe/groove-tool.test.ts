// The true profile is reckoned here point by point, from circles about the axis: where the edge meets each radius, and how
// far the helix has moved on by then.
import fc from "fast-check";
import { expect, test } from "vitest";
import { halfWidth } from "../../src/lathe/groove-outline.ts";
import { axialTool, type GroundTool } from "../../src/lathe/groove-tool.ts";
import { between, expectClose, seeded } from "./close.ts";

const rad = (degrees: number) => (degrees * Math.PI) / 180;

/** Half width of the ground tool in its own top face, `along` it from the tip. */
function groundHalfWidth({ nose, shape, ...tool }: GroundTool, side: "leading" | "trailing", along: number) {
  const flank = rad(tool[side]);
  if (shape === "flat") return nose / 2 + along * Math.tan(flank);
  const contact = nose * (1 - Math.sin(flank));
  if (along <= contact) return Math.sqrt(along * (2 * nose - along));
  return nose * Math.cos(flank) + (along - contact) * Math.tan(flank);
}

/** Radial height above the root, and axial half width on that side, of the point of the edge `along` the top face. */
function pointOf(tool: GroundTool, side: "leading" | "trailing", root: number, lead: number, along: number) {
  const rake = rad(tool.rake);
  const radius = Math.hypot(root + along * Math.cos(rake), along * Math.sin(rake));
  const turn = Math.asin((along * Math.sin(rake)) / radius);
  const sign = side === "leading" ? 1 : -1;
  return {
    height: radius - root,
    width: groundHalfWidth(tool, side, along) + (sign * lead * turn) / (2 * Math.PI),
  };
}

const tools = fc.record({
  leading: between(10, 45),
  trailing: between(10, 45),
  nose: between(0, 0.2),
  shape: fc.constantFrom<"flat" | "radius">("flat", "radius"),
  rake: between(-10, 15),
});

test("without rake the tool leaves its own profile", () => {
  const tool = { leading: 30, trailing: 25, nose: 0.1, shape: "radius", rake: 0 } as const;
  const axial = axialTool(tool, 0.9, 10, "external", 1.5);
  expectClose(axial.leading, 30, 1e-9);
  expectClose(axial.trailing, 25, 1e-9);
  expect(axial.nose).toBe(0.1);
});

test("a flat-nosed tool comes right at the root and at the surface", () => {
  fc.assert(
    fc.property(tools, between(0.3, 1.5), between(8, 40), between(0, 3), (given, depth, blank, lead) => {
      const tool = { ...given, shape: "flat" } as const;
      const axial = axialTool(tool, depth, blank, "external", lead);
      const root = blank / 2 - depth;
      const rake = rad(tool.rake);
      const face = -root * Math.cos(rake) + Math.sqrt((blank / 2) ** 2 - (root * Math.sin(rake)) ** 2);
      for (const side of ["leading", "trailing"] as const) {
        const surface = pointOf(tool, side, root, lead, face);
        expectClose(surface.height, depth, 1e-9);
        expectClose(halfWidth(axial, side, depth), surface.width, 1e-9);
        expectClose(halfWidth(axial, side, 0), tool.nose / 2, 1e-12);
      }
    }),
    seeded,
  );
});

test("between root and surface the straight flank is off by less than a two-hundredth of the depth", () => {
  fc.assert(
    fc.property(
      tools,
      between(0.3, 1.5),
      between(12, 40),
      between(0.05, 0.95),
      (given, depth, blank, part) => {
        const tool = { ...given, shape: "flat" } as const;
        const axial = axialTool(tool, depth, blank);
        for (const side of ["leading", "trailing"] as const) {
          const point = pointOf(tool, side, blank / 2 - depth, 0, part * depth);
          expect(Math.abs(halfWidth(axial, side, point.height) - point.width)).toBeLessThan(depth / 200);
        }
      },
    ),
    { ...seeded, numRuns: 300 },
  );
});

test("where the root is deepest a round nose is as blunt as radius / cos rake", () => {
  const tool = { leading: 30, trailing: 30, nose: 0.2, shape: "radius", rake: 12 } as const;
  const axial = axialTool(tool, 0.9, 20);
  for (const along of [1e-5, 1e-4]) {
    const { height, width } = pointOf(tool, "leading", 9.1, 0, along);
    // Radius of curvature from width and height; the height above the tip is far smaller than the nose.
    expectClose(width ** 2 / (2 * height) / axial.nose, 1, 1e-3);
  }
});

test("a nose that is negative is refused", () => {
  const tool = { leading: 30, trailing: 30, nose: -0.1, shape: "flat", rake: 0 } as const;
  expect(() => axialTool(tool, 0.9, 10)).toThrow("nose must be 0 or more, got -0.1");
});
