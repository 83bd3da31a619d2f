/**
 * The exact reading over wires against another method: no equations are solved here. A straight wire lies at the radius
 * that the reading gives; its clearance from the flank is found by plain search over the helicoid, and it may tip as it likes.
 * It rests there when the best that tipping can do is to touch: the largest smallest distance is half the wire.
 */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { ballFunctions } from "../../src/functions/balls.ts";
import { measureFunctions } from "../../src/functions/measure.ts";
import { caller } from "../functions/call.ts";

const call = caller([...measureFunctions, ...ballFunctions]);

interface Given {
  readonly angle: number;
  readonly pitch: number;
  readonly starts: number;
  readonly leadAngle: number;
  readonly size: number;
}

const radians = Math.PI / 180;

/** Smallest value of a function with one valley between two places, by golden section. */
function valley(f: (x: number) => number, from: number, to: number): number {
  const ratio = (Math.sqrt(5) - 1) / 2;
  let [low, high] = [from, to];
  let [a, b] = [high - ratio * (high - low), low + ratio * (high - low)];
  let [fa, fb] = [f(a), f(b)];
  for (let step = 0; step < 70; step++) {
    if (fa < fb) {
      [high, b, fb] = [b, a, fa];
      a = high - ratio * (high - low);
      fa = f(a);
    } else {
      [low, a, fa] = [a, b, fb];
      b = low + ratio * (high - low);
      fb = f(b);
    }
  }
  return Math.min(fa, fb);
}

/** Smallest distance of a wire's axis at radius R, tipped by b, from one flank of a symmetric groove. */
function clearance(R: number, b: number, E: number, P: number, lead: number, included: number): number {
  const slope = Math.tan((included / 2) * radians);
  const rise = lead / (2 * Math.PI);
  const along = (turn: number) => {
    // Square to the wire both offsets are straight lines in r, so the nearest r has a closed form.
    const x1 = Math.cos(turn);
    const y0 = (rise * turn + P / 4 - (E / 2) * slope) * Math.cos(b);
    const y1 = slope * Math.cos(b) - Math.sin(turn) * Math.sin(b);
    const r = (R * x1 - y0 * y1) / (x1 * x1 + y1 * y1);
    return Math.hypot(r * x1 - R, y0 + r * y1);
  };
  // It touches beside the groove, far less than a pitch round the core: beyond that are other valleys.
  return valley(along, -P / E, P / E);
}

const given: fc.Arbitrary<Given> = fc.record({
  angle: fc.constantFrom(29, 30, 47.5, 55, 60),
  pitch: fc.integer({ min: 20, max: 800 }).map((n) => n / 100),
  starts: fc.integer({ min: 1, max: 4 }),
  leadAngle: fc.integer({ min: 5, max: 200 }).map((n) => n / 10),
  size: fc.integer({ min: 92, max: 115 }).map((n) => n / 100),
});

describe("the exact reading over wires", () => {
  test("leaves a wire that may tip just touching the helicoid, for lead angles to 20 degrees", () => {
    fc.assert(
      fc.property(given, ({ angle, pitch, starts, leadAngle, size }) => {
        const lead = pitch * starts;
        const E = lead / (Math.PI * Math.tan(leadAngle * radians));
        fc.pre(E > 2 * pitch);
        const wire = ((pitch / 2) * size) / Math.cos((angle / 2) * radians);
        const reading = call("WIRE.READING", E, pitch, wire, angle, lead, "exact") as number;
        const R = (reading - wire) / 2;
        const best = -valley(
          (b) => -clearance(R, b, E, pitch, lead, angle),
          (leadAngle - 6) * radians,
          (leadAngle + 6) * radians,
        );
        expect(Math.abs(best - wire / 2) / pitch).toBeLessThan(1e-9);
      }),
      { seed: 20261125, numRuns: 200 },
    );
  });

  test("gives back the pitch diameter that it was reckoned from", () => {
    fc.assert(
      fc.property(given, ({ angle, pitch, starts, leadAngle, size }) => {
        const lead = pitch * starts;
        const E = lead / (Math.PI * Math.tan(leadAngle * radians));
        fc.pre(E > 2 * pitch);
        const wire = ((pitch / 2) * size) / Math.cos((angle / 2) * radians);
        for (const method of ["exact", "normal", "plain"]) {
          const reading = call("WIRE.READING", E, pitch, wire, angle, lead, method) as number;
          const back = call("WIRE.PITCHDIA", reading, pitch, wire, angle, lead, method) as number;
          expect(Math.abs(back - E) / E).toBeLessThan(1e-11);
        }
      }),
      { seed: 20261125, numRuns: 100 },
    );
  });

  // Computed independently of this code, to seven digits.
  test("is 12.3493446 for M12x1.75 with a 1 mm wire, and 16.0388433 between balls in an M20x2.5 nut", () => {
    expect(call("WIRE.READING", 10.863, 1.75, 1, 60, 1.75, "exact")).toBeCloseTo(12.3493446, 7);
    expect(call("BALL.READING", 18.376, 2.5, 1.5, 60, 2.5, "exact")).toBeCloseTo(16.0388433, 7);
  });
});
