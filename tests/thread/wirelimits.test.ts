// Unequal flanks and steep leads; equal flanks are in wires.test.ts. The groove is built here of points and lines.
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type Vee, veeOf } from "../../src/thread/groove.ts";
import {
  bestWire,
  bestWireOnHelix,
  largestWire,
  pickWire,
  smallestWire,
} from "../../src/thread/wirelimits.ts";
import { overWires, wiresOf } from "../../src/thread/wires.ts";
import { between, expectClose, seeded } from "../lathe/close.ts";

const slope = (degrees: number) => Math.tan((degrees * Math.PI) / 180);

/** Forms of pitch 1 with any truncation that leaves flank. */
const forms = fc
  .record({
    included: between(25, 80),
    share: between(0.1, 0.9),
    crest: between(0.02, 0.45),
    root: between(0, 0.4),
  })
  .map(({ included, share, crest, root }) => ({ vee: veeOf(1, included, included * share), crest, root }));

/** How far a point (x, y) is from the flank through the apex (0, 0) that leans `flank` to that side. */
const toFlank = (x: number, y: number, flank: number, side: 1 | -1) =>
  (y * slope(flank) - side * x) / Math.hypot(1, slope(flank));

/** A wire's middle in the vee, found by halving: apex at (0, 0), y towards the crest. */
function middle(vee: Vee, wire: number): { x: number; y: number } {
  const bisect = (f: (v: number) => number, low: number, high: number) => {
    let [a, b] = [low, high];
    for (let step = 0; step < 100; step++) {
      const m = (a + b) / 2;
      if (f(m) > 0) b = m;
      else a = m;
    }
    return (a + b) / 2;
  };
  const across = (y: number) =>
    bisect((x) => toFlank(x, y, vee.second, -1) - toFlank(x, y, vee.first, 1), -20, 20);
  const y = bisect((at) => toFlank(across(at), at, vee.first, 1) - wire / 2, 0, 50);
  return { x: across(y), y };
}

describe("wires for any truncation and unequal flanks", () => {
  test("the largest wire touches the steeper flank where the flat crest ends", () => {
    fc.assert(
      fc.property(forms, ({ vee, crest }) => {
        const wire = largestWire(vee, crest, "flat");
        const { y } = middle(vee, wire);
        const steeper = Math.min(vee.first, vee.second);
        // The place of contact lies below the middle by half the wire times the sine of the flank.
        const touched = y - (wire / 2) * Math.sin((steeper * Math.PI) / 180);
        const crestHeight = (1 - crest) / (slope(vee.first) + slope(vee.second));
        expectClose(touched, crestHeight, 1e-9);
      }),
      seeded,
    );
  });

  test("the smallest wire is flush with the crest, or lies on the flat of the root", () => {
    fc.assert(
      fc.property(forms, ({ vee, crest, root }) => {
        const wire = smallestWire(vee, crest, "flat", root);
        const { y } = middle(vee, wire);
        const tangents = slope(vee.first) + slope(vee.second);
        const overCrest = y + wire / 2 - (1 - crest) / tangents;
        const overRoot = y - wire / 2 - root / tangents;
        expect(Math.min(Math.abs(overCrest), Math.abs(overRoot))).toBeLessThan(1e-9);
        expect(Math.min(overCrest, overRoot)).toBeGreaterThan(-1e-9);
      }),
      seeded,
    );
  });

  test("a round crest asks for a wire that touches before it begins, and reaches its top", () => {
    const vee = veeOf(1, 52, 7);
    const radius = 0.08;
    // The crest circle: tangent to both flanks of the ridge, whose sharp top is H above the apex of the groove.
    const H = 1 / (slope(7) + slope(45));
    const ridge = middle(vee, 2 * radius);
    expectClose(
      smallestWire(vee, radius, "radius"),
      (() => {
        const top = H - (ridge.y - radius);
        let [low, high] = [0, 2];
        for (let step = 0; step < 100; step++) {
          const wire = (low + high) / 2;
          if (middle(vee, wire).y + wire / 2 > top) high = wire;
          else low = wire;
        }
        return low;
      })(),
      1e-9,
    );
    const ridgeTouch = ridge.y - radius * Math.sin((7 * Math.PI) / 180);
    const wire = largestWire(vee, radius, "radius");
    expectClose(middle(vee, wire).y - (wire / 2) * Math.sin((7 * Math.PI) / 180), H - ridgeTouch, 1e-9);
  });

  // A round of radius r runs on to the flanks r / tan 26 from the sharp crest; the shorter flank, of 7 degrees, is
  // H / cos 7 long. H is 1 / (tan 7 + tan 45), so r must stay under 0.4376578.
  test("a round crest on unequal flanks leaves some of the shorter one", () => {
    const steep = veeOf(1, 52, 7);
    expect(() => largestWire(steep, 0.4376, "radius")).not.toThrow();
    expect(() => largestWire(steep, 0.4377, "radius")).toThrow("crest must be less than 0.4376578");
  });

  test("smallest, largest and sharp come in that order, and all grow with the unit of length", () => {
    fc.assert(
      fc.property(forms, ({ vee, crest }) => {
        const [least, most] = [smallestWire(vee, crest, "flat"), largestWire(vee, crest, "flat")];
        expect(least).toBeGreaterThan(0);
        expect(most).toBeLessThan(largestWire(vee, 0, "flat"));
        const inches = { ...vee, pitch: 1 / 25.4 };
        expectClose(25.4 * smallestWire(inches, crest / 25.4, "flat"), least, 1e-12);
        expectClose(25.4 * largestWire(inches, crest / 25.4, "flat"), most, 1e-12);
        expectClose(25.4 * bestWire(inches), bestWire(vee), 1e-12);
      }),
      seeded,
    );
  });

  test("a wire for a buttress thread is picked by its own flanks", () => {
    // 7 and 45 degrees, pitch 4: the best is 2.1633 (see WIRE.BEST).
    expect(pickWire(veeOf(4, 52, 7), [1.65, 2.05, 2.55], 0.16316 * 4)).toBe(2.05);
  });
});

describe("the best wire", () => {
  test("on unequal flanks is the one for which an error shared by both flanks cancels", () => {
    fc.assert(
      fc.property(forms, ({ vee }) => {
        fc.pre(bestWire(vee) < 0.98 * largestWire(vee, 0, "flat"));
        const read = (by: number) =>
          overWires(
            5,
            wiresOf({ ...vee, first: vee.first + by, second: vee.second + by }, bestWire(vee), 0, "plain"),
          );
        // A twentieth of a degree moves it by its square only.
        expect(Math.abs(read(0.05) - read(-0.05))).toBeLessThan(2e-6);
      }),
      seeded,
    );
  });

  test.each([
    [29, 14.5],
    [60, 30],
    [52, 7],
    [33, 3],
  ])(
    "on a steep lead, %d degrees with one flank %d, reads the same for angles a little off",
    (included, one) => {
      const vee = veeOf(1, included, one);
      const wire = bestWireOnHelix(vee, 4.5, 2);
      const read = (by: number) =>
        overWires(4.5, wiresOf({ ...vee, first: vee.first + by, second: vee.second + by }, wire, 2));
      expect(Math.abs(read(0.02) - read(-0.02))).toBeLessThan(2e-9);
      expect(wire).toBeLessThan(bestWire(vee));
      expectClose(bestWireOnHelix(vee, 4.5, 0), bestWire(vee), 1e-12);
    },
  );

  test.each([
    [() => bestWireOnHelix(veeOf(1, 60), 0, 1), "pitch_dia must be greater than 0, got 0"],
    [() => bestWireOnHelix(veeOf(1, 60), 5, -1), "lead must be 0 or more, got -1"],
  ])("refusal %# names argument, bound and value", (refused, message) => {
    expect(refused).toThrow(RangeError);
    expect(refused).toThrow(message);
  });
});
