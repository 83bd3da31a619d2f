// Expected values were computed independently of this code, to 7 digits.
import fc from "fast-check";
import { expect, test } from "vitest";
import {
  depthOffCentre,
  flankCut,
  flankForRake,
  offCentreFlank,
  sideClearance,
} from "../../src/lathe/tool.ts";
import { between, expectClose, seeded } from "./close.ts";

const radians = (degrees: number) => (degrees * Math.PI) / 180;

test("ten degrees of rake asks for a slightly smaller flank", () => {
  expectClose(flankForRake(30, 10, 0.92, 10), 29.6918394);
  expectClose(flankForRake(30, 10, 0.8118988, 8.3762, "internal"), 29.5471586);
});

test("the lead takes from the leading flank and gives to the trailing one", () => {
  expectClose(flankForRake(30, 10, 0.92, 10, "external", 1.5, "leading"), 29.3320085);
  expectClose(flankForRake(30, 10, 0.92, 10, "external", 1.5, "trailing"), 30.0491116);
});

test("without rake the flank is ground as it is, whatever the lead", () => {
  expectClose(flankForRake(30, 0, 0.92, 10), 30, 1e-10);
  expectClose(flankForRake(30, 0, 0.92, 10, "external", 1.5), 30, 1e-10);
  expectClose(flankForRake(30, 0, 0.92, 10, "internal"), 30, 1e-10);
});

test("an edge ground so meets the surface where the flank does", () => {
  const rakes = between(-20, 20);
  const depths = between(0.1, 2);
  fc.assert(
    fc.property(rakes, depths, fc.constantFrom("external", "internal"), (rake, depth, member) => {
      const surface = 5;
      const root = member === "external" ? surface - depth : surface + depth;
      const inward = member === "external" ? 1 : -1;
      // As far along the raked face as the flank is wide, the edge stands at the radius of the surface.
      const along =
        (depth * Math.tan(radians(30))) / Math.tan(radians(flankForRake(30, rake, depth, 10, member)));
      const reached = Math.hypot(
        root + inward * along * Math.cos(radians(rake)),
        along * Math.sin(radians(rake)),
      );
      expectClose(reached, surface, 1e-9);
    }),
    seeded,
  );
});

// The same edge followed the other way: along the raked face by `along`, it stands `along tan g` from the tool's centre
// line, and the flank it leaves in the axial plane goes from root to surface over the depth. Meanwhile the work turns by
// the angle at which the surface is met, and the thread moves on by that part of the lead.
test("a tool ground to the bare angle cuts another flank under rake and on a helix, as the edge is followed", () => {
  const edges = fc.record({
    rake: between(-20, 20),
    depth: between(0.1, 2),
    lead: between(0, 4),
    member: fc.constantFrom("external", "internal"),
    side: fc.constantFrom("leading", "trailing"),
  });
  fc.assert(
    fc.property(edges, ({ rake, depth, lead, member, side }) => {
      const inward = member === "external" ? 1 : -1;
      const root = 5 - inward * depth;
      // Length of the raked face between root and surface, found by halving.
      let [low, high] = [0, 10 * depth];
      for (let i = 0; i < 60; i++) {
        const s = (low + high) / 2;
        const at = Math.hypot(root + inward * s * Math.cos(radians(rake)), s * Math.sin(radians(rake)));
        if (inward * (at - 5) < 0) low = s;
        else high = s;
      }
      const turn = Math.atan2(low * Math.sin(radians(rake)), root + inward * low * Math.cos(radians(rake)));
      const advance = (lead * turn) / (2 * Math.PI);
      const width = low * Math.tan(radians(30)) + (side === "leading" ? advance : -advance);
      const left = Math.atan2(width, depth) * (180 / Math.PI);
      expectClose(flankCut(30, rake, depth, 10, member, lead, side), left, 1e-9);
    }),
    seeded,
  );
});

test("what is cut and what has to be ground undo each other, helix and all", () => {
  expectClose(flankCut(29.6918394, 10, 0.92, 10), 30, 1e-7);
  expectClose(flankCut(29.3320085, 10, 0.92, 10, "external", 1.5, "leading"), 30, 1e-7);
  expectClose(flankCut(30.0491116, 10, 0.92, 10, "external", 1.5, "trailing"), 30, 1e-7);
});

// Sides 3, 4, 5: touched off at 4 from the upright through the centre, fed 2, the tip stands at hypot(2, 3).
test("a tool off centre reaches less deep than it is fed", () => {
  expectClose(depthOffCentre(2, 10, 3), 5 - Math.sqrt(13), 1e-12);
  expect(depthOffCentre(2, 10, -3)).toBe(depthOffCentre(2, 10, 3));
  expectClose(depthOffCentre(0.92, 10, 0), 0.92, 1e-12);
});

test("the helix adds to the clearance of the leading side and takes from the trailing one", () => {
  expectClose(sideClearance(4, 15.5, "leading", 5), 9.6959889);
  expectClose(sideClearance(4, 20, "trailing", 5), 1.3573531);
});

test("a steep thread makes the trailing side lean the other way", () => {
  expect(sideClearance(10, 10, "trailing")).toBeLessThan(0);
});

test("a tool off centre cuts a larger flank, the same above as below", () => {
  expectClose(offCentreFlank(30, 0.92, 10, 0.5), 30.1532152);
  expect(offCentreFlank(30, 0.92, 10, -0.5)).toBe(offCentreFlank(30, 0.92, 10, 0.5));
  expectClose(offCentreFlank(30, 0.92, 10, 0), 30, 1e-10);
});

test.each([
  [() => flankForRake(90, 10, 0.92, 10), "flank must be from 0 to below 90 degrees, got 90"],
  [() => flankForRake(30, 90, 0.92, 10), "rake must be between -90 and 90 degrees, got 90"],
  [() => flankForRake(30, 10, 0, 10), "depth must be greater than 0, got 0"],
  [() => flankForRake(30, 10, 5, 10), "depth must be less than half the blank 5, got 5"],
  [() => flankForRake(30, 10, 1, 0, "internal"), "blank_dia must be greater than 0, got 0"],
  [
    () => flankForRake(30, 80, 1, 8, "internal"),
    "rake must be at most 53.13 degrees to reach this bore, got 80",
  ],
  [() => flankForRake(30, 10, 0.92, 10, "external", -1), "lead must be 0 or more, got -1"],
  [() => sideClearance(4, 0), "diameter must be greater than 0, got 0"],
  [() => sideClearance(4, 20, "leading", -1), "relief must be from 0 to below 90 degrees, got -1"],
  [() => flankCut(90, 10, 0.92, 10), "ground must be from 0 to below 90 degrees, got 90"],
  [() => flankCut(30, 90, 0.92, 10), "rake must be between -90 and 90 degrees, got 90"],
  [() => depthOffCentre(0.92, 10, 5), "height_error must be between -5 and 5, got 5"],
  [() => depthOffCentre(5, 10, 0), "depth must be less than half the blank 5, got 5"],
  [() => depthOffCentre(4.5, 10, 3), "infeed must be at most 4, got 4.5"],
  [() => offCentreFlank(30, 0.92, 10, 4.5), "height_error must be from -4.08 to 4.08, got 4.5"],
])("refusal %# names argument, bound and value", (refused, says) => {
  expect(refused).toThrow(RangeError);
  expect(refused).toThrow(says);
});
