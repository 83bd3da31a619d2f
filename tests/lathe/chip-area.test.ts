// Areas are checked against values computed independently of this code, to 7 digits, and against the area inside the
// tool's outline added up strip by strip.
import fc from "fast-check";
import { expect, test } from "vitest";
import { depthForArea, type Groove, grooveArea, grooveOf } from "../../src/lathe/chip-area.ts";
import { between, expectClose, seeded } from "./close.ts";

const whitworth = grooveOf(55, 0.2906798, 27.5, "radius");

test("a flat nose takes a trapezium", () => {
  expectClose(grooveArea(0.92, grooveOf(60, 0.19)), 0.6634693);
});

test("unequal flanks each take their own share", () => {
  expectClose(grooveArea(4.2, grooveOf(52, 0.5, 7)), 12.0029598);
});

test("a round nose takes circle sectors, then the flanks", () => {
  expectClose(grooveArea(1.3553593, whitworth), 1.4240457);
});

/** Half the tool's width at height y above its tip: the tightest of all the lines that touch the nose circle there. */
function outline(y: number, r: number, flank: number): number {
  let width = Infinity;
  const last = ((90 - flank) * Math.PI) / 180;
  for (let k = 1; k <= 2000; k++) {
    const turn = (last * k) / 2000;
    width = Math.min(width, (r + (y - r) * Math.cos(turn)) / Math.sin(turn));
  }
  return width;
}

function addedUp(depth: number, r: number, leading: number, trailing: number): number {
  const strips = 1500;
  let area = 0;
  for (let k = 0; k < strips; k++) {
    const y = ((k + 0.5) * depth) / strips;
    area += (outline(y, r, leading) + outline(y, r, trailing)) * (depth / strips);
  }
  return area;
}

test.each([
  { depth: 1.3553593, r: 0.2906798, leading: 27.5, trailing: 27.5 },
  { depth: 0.1, r: 0.29, leading: 27.5, trailing: 27.5 },
  { depth: 0.5, r: 0.7, leading: 45, trailing: 7 },
  { depth: 4.27, r: 0.4, leading: 45, trailing: 7 },
  { depth: 2, r: 0.5, leading: 0, trailing: 0 },
])(
  "the round-nosed area at depth $depth agrees with its strips added up",
  ({ depth, r, leading, trailing }) => {
    const area = grooveArea(depth, { leading, trailing, nose: r, shape: "radius" });
    expectClose(area / addedUp(depth, r, leading, trailing), 1, 5e-5);
  },
);

const angle = between(0, 60);
const grooves: fc.Arbitrary<Groove> = fc.record({
  leading: angle,
  trailing: angle,
  nose: between(0.001, 2),
  shape: fc.constantFrom("flat", "radius"),
});
const depths = between(1e-4, 8);

test("depth for an area undoes area for a depth", () => {
  fc.assert(
    fc.property(depths, grooves, (depth, groove) => {
      expectClose(depthForArea(grooveArea(depth, groove), groove) / depth, 1, 1e-9);
    }),
    { ...seeded, numRuns: 1000 },
  );
});

test("a sharp point has an inverse too, and an area of 0 is at depth 0", () => {
  const sharp = grooveOf(60, 0);
  expectClose(depthForArea(grooveArea(0.7, sharp), sharp), 0.7, 1e-15);
  expect(depthForArea(0, sharp)).toBe(0);
  expect(depthForArea(0, whitworth)).toBe(0);
});

test("area goes with the square of the length unit", () => {
  fc.assert(
    fc.property(depths, grooves, (depth, groove) => {
      const inMillimetres = grooveArea(depth * 25.4, { ...groove, nose: groove.nose * 25.4 });
      expectClose(inMillimetres / (grooveArea(depth, groove) * 25.4 ** 2), 1, 1e-12);
    }),
    seeded,
  );
});

test("a round nose runs on smoothly where the flank begins", () => {
  fc.assert(
    fc.property(grooves, (groove) => {
      const contact = groove.nose * (1 - Math.sin((groove.trailing * Math.PI) / 180));
      const below = grooveArea(contact * (1 - 1e-9), { ...groove, shape: "radius" });
      const above = grooveArea(contact * (1 + 1e-9), { ...groove, shape: "radius" });
      expectClose(above / below, 1, 1e-7);
    }),
    seeded,
  );
});

test.each([
  [() => grooveOf(60, -0.1), "nose must be 0 or more, got -0.1"],
  [() => grooveOf(0, 0), "nose must be greater than 0 when the included angle is 0, got 0"],
  [() => grooveArea(-1, whitworth), "depth must be 0 or more, got -1"],
  [() => depthForArea(-1, whitworth), "area must be 0 or more, got -1"],
  [() => grooveArea(1e200, grooveOf(60, 0)), "area is too large"],
])("refusal %# names argument, bound and value", (refused, says) => {
  expect(refused).toThrow(RangeError);
  expect(refused).toThrow(says);
});
