// Other ways over wires: each is laid out here as circles in the axial plane, or comes from the handbook that is named.
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { heldOffByAngle } from "../../src/thread/anvil.ts";
import { type Balls, nutPitchDiameterFrom, overBalls } from "../../src/thread/balls.ts";
import { veeOf } from "../../src/thread/groove.ts";
import {
  meanOfSet,
  overOneWire,
  overTaper,
  overTwoWires,
  pitchDiameterFromOne,
  pitchDiameterFromTwo,
  pitchDiameterOfTaper,
  sensitivity,
} from "../../src/thread/wiremethods.ts";
import { largestInSharp, overWires, pitchDiameterFrom, wiresOf } from "../../src/thread/wires.ts";
import { between, expectClose, seeded } from "../lathe/close.ts";

const degree = Math.PI / 180;
const metric = wiresOf(veeOf(1.75, 60), 1, undefined);

/** Screws with a wire that stands above the pitch line and touches. */
const screws = fc
  .record({
    pitch: between(0.2, 10),
    included: between(28, 70),
    share: between(0.3, 0.7),
    leadAngle: between(0.5, 15),
    starts: fc.integer({ min: 1, max: 4 }),
    size: between(0.55, 0.85),
    method: fc.constantFrom("exact" as const, "normal" as const, "plain" as const),
  })
  .map(({ pitch, included, share, leadAngle, starts, size, method }) => {
    const vee = veeOf(pitch, included, included * share);
    const lead = pitch * starts;
    const E = lead / (Math.PI * Math.tan(leadAngle * degree));
    return { E, wires: wiresOf(vee, size * largestInSharp(vee), lead, method) };
  });

describe("two wires", () => {
  test("square to the axis read what three read", () => {
    fc.assert(
      fc.property(screws, ({ E, wires }) => {
        expectClose(overTwoWires(E, wires), overWires(E, wires), 1e-12 * E);
      }),
      seeded,
    );
  });

  test("out of square read the width of two circles seen askew", () => {
    // M12x1.75: middles half a pitch apart along the axis. The reading is how wide they lie across the slanted line.
    const R = (overWires(10.863, metric) - 1) / 2;
    const tilt = 1.5 * degree;
    const across = ([z, r]: readonly [number, number]) => z * Math.sin(tilt) + r * Math.cos(tilt);
    const wide = across([0.875, R]) + 0.5 - (across([0, -R]) - 0.5);
    expectClose(overTwoWires(10.863, metric, 1.5), wide, 1e-12);
    // By hand: a degree reads 0.0135 high, where three wires would not let it stand askew at all.
    expectClose(overTwoWires(10.863, metric, 1) - overTwoWires(10.863, metric), 0.0135423, 1e-6);
  });

  test("of even starts lie opposite each other, so that tilt matters by its square only", () => {
    const double = wiresOf(veeOf(1.75, 60), 1, 3.5);
    const square = overTwoWires(10.863, double);
    expectClose(overTwoWires(10.863, double, 1), (square - 1) * Math.cos(degree) + 1, 1e-12);
    expectClose(overTwoWires(10.863, double, -1), overTwoWires(10.863, double, 1), 1e-12);
  });

  test("of two starts whose lead is cut a little short lie as good as opposite each other", () => {
    const short = wiresOf(veeOf(1.75, 60), 1, 3.4996);
    // Half of 0.0004 apart along the axis, times the sine of a degree.
    const square = overTwoWires(10.863, short);
    expectClose(
      overTwoWires(10.863, short, 1) - ((square - 1) * Math.cos(degree) + 1),
      0.0002 * Math.sin(degree),
      1e-9,
    );
  });

  test("give back the pitch diameter", () => {
    fc.assert(
      fc.property(screws, between(-3, 3), ({ E, wires }, tilt) => {
        expectClose(pitchDiameterFromTwo(overTwoWires(E, wires, tilt), wires, tilt), E, 1e-11 * E);
      }),
      seeded,
    );
  });

  test("are refused too far out of square", () => {
    expect(() => overTwoWires(10.863, metric, 45)).toThrow(
      "tilt must be above -45 and below 45 degrees, got 45",
    );
    expect(() => pitchDiameterFromTwo(12, metric, -50)).toThrow("tilt must be above -45");
  });
});

describe("one wire and the crests opposite", () => {
  test("read from the crest line to the top of the wire", () => {
    const R = (overWires(10.863, metric) - 1) / 2;
    expectClose(overOneWire(10.863, 11.8, metric), R + 0.5 + 5.9, 1e-12);
  });

  test("give back the pitch diameter", () => {
    fc.assert(
      fc.property(screws, between(0.3, 0.99), ({ E, wires }, share) => {
        const major = E + share * (overWires(E, wires) - E);
        expectClose(pitchDiameterFromOne(overOneWire(E, major, wires), major, wires), E, 1e-11 * E);
      }),
      seeded,
    );
  });

  test("are refused when the wire does not stand above the crests", () => {
    expect(() => overOneWire(10.863, 12.4, metric)).toThrow(
      "wire must stand above the crests of the major diameter 12.4",
    );
    expect(() => pitchDiameterFromOne(12, 12.1, metric)).toThrow("wire must stand above the crests");
  });
});

describe("three wires on a taper", () => {
  // Handbook (31st edition, p. 2138), measuring taper threads by three wires: M = (E - cot a / 2N + W (1 + csc a)) / sec b; for
  // American pipe threads M = (E - 0.866025 P + 3 W) / 1.00049. Good for tapers to 3/4 in a foot, it says, though not exact.
  test.each([
    [0.77843, 14, 0.045],
    [0.96768, 14, 0.0412],
    [1.21363, 11.5, 0.0502],
    [2.29627, 11.5, 0.055],
    [4.29156, 8, 0.0722],
  ])(
    "agree with the handbook's short form to 0.0005 of the wire: pitch diameter %d, %d per inch, wire %d",
    (E, n, w) => {
      const handbook = (E - 0.866025 / n + 3 * w) / 1.00049;
      const exact = overTaper(E, 1 / 16, wiresOf(veeOf(1 / n, 60), w, undefined, "plain"));
      expect(Math.abs(exact - handbook)).toBeLessThan(0.0005 * w + 0.0003 / n + 3e-6 * E);
    },
  );

  test("are the slanted width of three circles in grooves along the cone", () => {
    // The groove's flanks stand 30 degrees off square; its pitch line rises by half the taper. All in the axial plane.
    const [E, taper, P, w] = [20, 0.2, 2, 1.2];
    const rise = taper / 2;
    const cot = 1 / Math.tan(30 * degree);
    // Half a pitch of the rising pitch line is cut out by the groove: its apex, below the place where E is measured.
    const depth = P / 2 / (1 / (cot - rise) + 1 / (cot + rise));
    const R = E / 2 - depth + w;
    const b = Math.atan(rise);
    // The pair lies at (-P/2, R - rise P/2) and (P/2, R + rise P/2); the third at (0, -R).
    const across = (z: number, r: number) => r * Math.cos(b) - z * Math.sin(b);
    const anvil = across(-P / 2, R - (rise * P) / 2) + w / 2;
    expectClose(across(P / 2, R + (rise * P) / 2) + w / 2, anvil, 1e-12);
    const far = across(0, -R) - w / 2;
    expectClose(overTaper(E, taper, wiresOf(veeOf(P, 60), w, 0)), anvil - far, 1e-12);
  });

  test("give back the pitch diameter, and without taper read as on a straight thread", () => {
    fc.assert(
      fc.property(screws, between(0, 0.3), ({ E, wires }, taper) => {
        const alike = { ...wires, vee: veeOf(wires.vee.pitch, 60), wire: 0.57735 * wires.vee.pitch };
        expectClose(pitchDiameterOfTaper(overTaper(E, taper, alike), taper, alike), E, 1e-11 * E);
        expectClose(overTaper(E, 0, alike), overWires(E, alike), 1e-12 * E);
      }),
      seeded,
    );
  });

  test.each([
    [() => overTaper(20, -0.1, metric), "taper must be 0 or more, got -0.1"],
    [() => overTaper(20, 4, metric), "taper must be less than 3.4641, got 4"],
    [() => overTaper(20, 0.1, wiresOf(veeOf(2, 52, 7), 1.1, 2)), "flanks must be alike on a taper thread"],
  ])("refusal %# names argument, bound and value", (refused, message) => {
    expect(refused).toThrow(RangeError);
    expect(refused).toThrow(message);
  });
});

describe("a set of wires that are not quite alike", () => {
  test("reads as three of the mean that stands for it", () => {
    // Each wire's top is its own reading's half away from the axis; the anvil lies on the pair, so at the mean of the two.
    const top = (w: number) => overWires(10.863, wiresOf(veeOf(1.75, 60), w, undefined)) / 2;
    const [a, b, c] = [1.004, 0.997, 1.002];
    const reading = (top(a) + top(b)) / 2 + top(c);
    const mean = wiresOf(veeOf(1.75, 60), meanOfSet(a, b, c), undefined);
    expectClose(overWires(10.863, mean), reading, 1e-6);
  });

  test("a wire a micrometre over its size takes three micrometres off the pitch diameter", () => {
    // 1 + cosec 30 = 3, and on M12x1.75 a little more for the lead.
    const effect = sensitivity("wire", overWires(10.863, metric), metric);
    expectClose(effect, -3, 3e-3);
    const reading = overWires(10.863, metric);
    const found = pitchDiameterFrom(reading, { ...metric, wire: 1.001 });
    expectClose(found - 10.863, effect * 0.001, 1e-8);
  });

  test.each(["reading", "wire", "pitch", "angle"] as const)(
    "%s: a small change does what its sensitivity says",
    (input) => {
      fc.assert(
        fc.property(screws, ({ E, wires }) => {
          const reading = overWires(E, wires);
          const rate = sensitivity(input, reading, wires);
          const by = input === "angle" ? 0.002 : 2e-5 * wires.wire;
          const { vee } = wires;
          const grown = (vee.pitch + by) / vee.pitch;
          const found = {
            reading: () => pitchDiameterFrom(reading + by, wires),
            wire: () => pitchDiameterFrom(reading, wiresOf(vee, wires.wire + by, wires.lead, wires.method)),
            pitch: () =>
              pitchDiameterFrom(
                reading,
                wiresOf(
                  veeOf(vee.pitch + by, vee.first + vee.second, vee.second),
                  wires.wire,
                  wires.lead * grown,
                  wires.method,
                ),
              ),
            angle: () =>
              pitchDiameterFrom(
                reading,
                wiresOf(
                  veeOf(vee.pitch, vee.first + vee.second + by, vee.second + by / 2),
                  wires.wire,
                  wires.lead,
                  wires.method,
                ),
              ),
          }[input]();
          expectClose(found - E, rate * by, 1e-7 * wires.vee.pitch);
        }),
        seeded,
      );
    },
  );
});

describe("balls and T-probes", () => {
  const nuts = screws.map(({ E, wires: { vee, lead, method } }) => ({
    E,
    balls: { vee, ball: 0.6 * largestInSharp(vee), lead, method, faces: "inner" } as Balls,
  }));

  test("give back the pitch diameter of the nut, between or over their faces", () => {
    let read = 0;
    fc.assert(
      fc.property(
        nuts,
        fc.constantFrom("inner" as const, "centres" as const, "outer" as const),
        ({ E, balls }, faces) => {
          const those = { ...balls, faces };
          fc.pre(E > 2 * balls.lead);
          let reading: number;
          try {
            reading = overBalls(E, those);
          } catch {
            // In a small steep nut the balls do not pass each other; how many do is counted.
            return;
          }
          read++;
          expectClose(nutPitchDiameterFrom(reading, those), E, 1e-11 * E);
        },
      ),
      seeded,
    );
    expect(read).toBeGreaterThan(70);
  });

  test("over the faces is two balls more than between them", () => {
    const balls: Balls = { vee: veeOf(2.5, 60), ball: 1.5, lead: 2.5, method: "exact", faces: "outer" };
    // 16.0388433 was computed independently of this code.
    expectClose(overBalls(18.376, balls), 16.0388433 + 3);
    expectClose(overBalls(18.376, { ...balls, faces: "centres" }), 16.0388433 + 1.5);
  });

  test.each([
    [-1, "reading must be greater than 0, got -1"],
    [0.5, "reading must be that of a pitch diameter above 0 with this ball, got 0.5"],
  ])("a reading of %d is refused", (reading, message) => {
    const balls: Balls = { vee: veeOf(2.5, 60), ball: 1.5, lead: 2.5, method: "exact", faces: "outer" };
    expect(() => nutPitchDiameterFrom(reading, balls)).toThrow(message);
  });
});

describe("a thread micrometer", () => {
  /** Cone and vee as outlines, lowered on groove and thread until they touch: how far apart their own pitch lines are. */
  function lowered(pitch: number, thread: number, own: number, tip: number, widest: number): number {
    const [a, c] = [Math.tan((thread / 2) * degree), Math.tan((own / 2) * degree)];
    // Half widths at a height above the pitch line: of the groove, and of the cone whose own pitch line stands `up` above it.
    let [coneUp, veeUp] = [-Infinity, -Infinity];
    for (let i = 0; i <= 2000; i++) {
      const width = tip + ((widest - tip) * i) / 2000;
      // Where the cone is this wide, above its own pitch line; and where the groove is as wide.
      const ofCone = (width - pitch / 2) / (2 * c);
      const ofGroove = (width - pitch / 2) / (2 * a);
      coneUp = Math.max(coneUp, ofGroove - ofCone);
      // The vee is as wide below its own pitch line as the thread is below its pitch line.
      veeUp = Math.max(veeUp, ofCone - ofGroove);
    }
    return coneUp + veeUp;
  }

  test("reads high by what cone and vee are held off, whichever is the more pointed", () => {
    const micrometers = fc.record({
      pitch: between(0.5, 6),
      thread: between(28, 62),
      off: between(-3, 3),
      tip: between(0, 0.45),
      widest: between(0.55, 1),
    });
    fc.assert(
      fc.property(micrometers, ({ pitch, thread, off, tip, widest }) => {
        const own = { angle: thread + off, tip: tip * pitch, widest: widest * pitch };
        const high = heldOffByAngle(pitch, thread, own);
        expectClose(high, lowered(pitch, thread, own.angle, own.tip, own.widest), 1e-12 * pitch);
        expect(high).toBeGreaterThanOrEqual(0);
      }),
      seeded,
    );
  });

  test("reads true on a thread of its own angle", () => {
    expect(heldOffByAngle(1.75, 60, { angle: 60, tip: 0.3, widest: 1.5 })).toBe(0);
  });

  test.each([
    [0, 0.3, 1.5, "cone_angle must be above 0 and below 180 degrees, got 0"],
    [60, 0.9, 1.5, "tip must be from 0 to below half the pitch 0.875, got 0.9"],
    [60, 0.3, 1.8, "widest must be above half the pitch 0.875, not above the pitch, got 1.8"],
  ])("angle %d, tip %d, widest %d is refused", (angle, tip, widest, message) => {
    expect(() => heldOffByAngle(1.75, 60, { angle, tip, widest })).toThrow(message);
  });
});
