// The exact contact against a search that solves none of its equations: tests/thread/seated.ts.
import fc from "fast-check";
import { expect, test } from "vitest";
import { betweenBalls } from "../../src/thread/balls.ts";
import { veeOf } from "../../src/thread/groove.ts";
import { largestInSharp, overWires, wiresOf } from "../../src/thread/wires.ts";
import { expectClose, seeded } from "../lathe/close.ts";
import { type Groove, searchedBall, searchedWire } from "./seated.ts";

/** Threads of pitch 1 with lead angles to 20 degrees, and a wire or ball that stands out and touches. */
const threads = (unequal: boolean) =>
  fc
    .record({
      included: fc.double({ min: 29, max: 65, noNaN: true }),
      // From 4 degrees up: a flank nearer to square touches a straight wire elsewhere too.
      share: fc.double({ min: 0.14, max: 0.48, noNaN: true }),
      leadAngle: fc.double({ min: 0.5, max: 20, noNaN: true }),
      lead: fc.integer({ min: 1, max: 4 }),
      size: fc.double({ min: 0.55, max: 0.8, noNaN: true }),
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

test.each([
  ["equal", false],
  ["unequal", true],
])(
  "a wire on %s flanks rests where a search over place and tip finds it, to 1e-9 of the pitch",
  (_, unequal) => {
    fc.assert(
      fc.property(threads(unequal), (thread) => {
        const { vee, lead, pitchDiameter, diameter } = thread;
        const start = (overWires(pitchDiameter, wiresOf(vee, diameter, lead, "normal")) - diameter) / 2;
        const found = 2 * searchedWire(grooveOf(thread, 1), diameter, start) + diameter;
        expectClose(overWires(pitchDiameter, wiresOf(vee, diameter, lead)), found, 1e-9);
      }),
      { ...seeded, numRuns: 150 },
    );
  },
  30_000,
);

test("balls in a nut, on equal flanks or unequal, rest where a search finds them, to 1e-9 of the pitch", () => {
  let seatedBalls = 0;
  fc.assert(
    fc.property(fc.oneof(threads(false), threads(true)), (thread) => {
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
      const found = 2 * searchedBall(grooveOf(thread, -1), diameter, start) - diameter;
      expectClose(reading, found, 1e-9);
    }),
    { ...seeded, numRuns: 300 },
  );
  expect(seatedBalls).toBeGreaterThan(250);
}, 30_000);
