// The exact contact against a search that solves none of its equations, carried on in decimals of 24 digits:
// tests/thread/seated.ts and seated-precisely.ts.
import fc from "fast-check";
import { expect, test } from "vitest";
import { betweenBalls } from "../../src/thread/balls.ts";
import { sharpHeight, veeOf } from "../../src/thread/groove.ts";
import { largestInSharp, overWires, wiresOf } from "../../src/thread/wires.ts";
import { between, expectClose, seeded } from "../lathe/close.ts";
import { type Groove, outermostTouch, searchedBall, searchedWire, searchedWireAnywhere } from "./seated.ts";
import { preciseBall, preciseWire } from "./seated-precisely.ts";

/** Threads of pitch 1 with lead angles to 20 degrees, and a wire or ball that stands out and touches. */
const threads = (unequal: boolean) =>
  fc
    .record({
      included: between(29, 65),
      // From 6 degrees up: below, a straight wire may touch elsewhere too, which has its own test.
      share: between(0.22, 0.48),
      leadAngle: between(0.5, 20),
      lead: fc.integer({ min: 1, max: 4 }),
      size: between(0.55, 0.8),
    })
    .map(({ included, share, leadAngle, lead, size }) => {
      const vee = veeOf(1, included, unequal ? included * share : undefined);
      const pitchDiameter = lead / (Math.PI * Math.tan((leadAngle * Math.PI) / 180));
      return { vee, lead, pitchDiameter, diameter: size * largestInSharp(vee) };
    })
    .filter(({ pitchDiameter }) => pitchDiameter > 2);

const grooveOf = (
  { vee, lead, pitchDiameter }: { vee: ReturnType<typeof veeOf>; lead: number; pitchDiameter: number },
  opens: 1 | -1,
): Groove => ({ pitchDiameter, pitch: 1, lead, upper: vee.first, lower: vee.second, opens });

const eitherKind = fc.oneof(threads(false), threads(true));

test("a wire, on equal flanks or unequal, rests where a search in 24 digits finds it, on 200 threads, to 1e-9 of the pitch", () => {
  fc.assert(
    fc.property(eitherKind, (thread) => {
      const { vee, lead, pitchDiameter, diameter } = thread;
      const start = (overWires(pitchDiameter, wiresOf(vee, diameter, lead, "normal")) - diameter) / 2;
      const groove = grooveOf(thread, 1);
      const found = preciseWire(groove, diameter, searchedWire(groove, diameter, start));
      expectClose(overWires(pitchDiameter, wiresOf(vee, diameter, lead)), 2 * found + diameter, 1e-9);
    }),
    { ...seeded, numRuns: 200 },
  );
}, 60_000);

test("balls in a nut, on equal flanks or unequal, rest where a search in 24 digits finds them", () => {
  let seatedBalls = 0;
  fc.assert(
    fc.property(eitherKind, (thread) => {
      const { vee, lead, pitchDiameter, diameter } = thread;
      let reading: number;
      try {
        reading = betweenBalls(pitchDiameter, vee, diameter, lead);
      } catch {
        // On the steepest of these threads the larger balls hang on the crest; how many do not is counted.
        return;
      }
      seatedBalls++;
      const start = (betweenBalls(pitchDiameter, vee, diameter, lead, "normal") + diameter) / 2;
      const groove = grooveOf(thread, -1);
      const found = preciseBall(groove, diameter, searchedBall(groove, diameter, start));
      expectClose(reading, 2 * found - diameter, 1e-9);
    }),
    { ...seeded, numRuns: 120 },
  );
  expect(seatedBalls).toBeGreaterThan(100);
}, 60_000);

// Flanks of half a degree to 4 degrees: the wire is held off by what it touches further round, up to where the flanks end.
test("a wire on nearly square flanks rests where a search along the whole flank finds it, to 1e-9 of the pitch", () => {
  let heldOff = 0;
  const steep = fc.record({
    steeper: between(0.5, 4),
    other: between(20, 45),
    leadAngle: between(3, 14),
    lead: fc.integer({ min: 1, max: 4 }),
    size: between(0.52, 0.6),
  });
  fc.assert(
    fc.property(steep, ({ steeper, other, leadAngle, lead, size }) => {
      const vee = veeOf(1, steeper + other, steeper);
      const pitchDiameter = lead / (Math.PI * Math.tan((leadAngle * Math.PI) / 180));
      fc.pre(pitchDiameter > 2);
      const diameter = size * largestInSharp(vee);
      const groove = grooveOf({ vee, lead, pitchDiameter }, 1);
      const start = (overWires(pitchDiameter, wiresOf(vee, diameter, lead, "normal")) - diameter) / 2;
      const local = searchedWire(groove, diameter, start);
      // No standard form has flanks that reach more than 3/8 P above the pitch line (DIN 513).
      const ends = pitchDiameter / 2 + Math.min(3 / 8, sharpHeight(vee) / 2);
      fc.pre(outermostTouch(groove, local) < ends - 0.01);
      const found = searchedWireAnywhere(groove, diameter, start, ends);
      if (found > local.R + 1e-6) heldOff++;
      expectClose(overWires(pitchDiameter, wiresOf(vee, diameter, lead)), 2 * found + diameter, 1e-9);
    }),
    { ...seeded, numRuns: 24, endOnFailure: true },
  );
  expect(heldOff).toBeGreaterThan(5);
}, 60_000);
