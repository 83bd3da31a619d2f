// Expected values were computed independently of this code, to 7 digits, unless a test names another source.
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { NothingFound } from "../../src/thread/failures.ts";
import { veeOf } from "../../src/thread/groove.ts";
import { bestWire, largestWire, pickWire, smallestWire } from "../../src/thread/wirelimits.ts";
import { largestInSharp, overWires, pitchDiameterFrom, wiresOf } from "../../src/thread/wires.ts";
import { expectClose, seeded } from "../lathe/close.ts";

const metric = veeOf(1.75, 60);
const methods = ["exact", "normal", "plain"] as const;
/** Included angle, crest and root per pitch. Source: ISO 68-1, ASME B1.5, BS 84; BS 93 leaves 0.6 P. */
const forms = [
  { name: "metric", included: 60, crest: 1 / 8, shape: "flat", root: 1 / 4 },
  { name: "Acme", included: 29, crest: 0.370691, shape: "flat", root: 0.370691 },
  { name: "Whitworth", included: 55, crest: 0.137329, shape: "radius", root: 0.137329 },
  { name: "BA", included: 47.5, crest: 0.1808346, shape: "radius", root: 0.1808346 },
] as const;

/** Screws with a wire that stands above the pitch line and touches. */
const screws = fc
  .record({
    pitch: fc.double({ min: 0.2, max: 10, noNaN: true }),
    included: fc.double({ min: 25, max: 70, noNaN: true }),
    share: fc.double({ min: 0.15, max: 0.85, noNaN: true }),
    leadAngle: fc.double({ min: 0.5, max: 20, noNaN: true }),
    starts: fc.integer({ min: 1, max: 4 }),
    size: fc.double({ min: 0.55, max: 0.95, noNaN: true }),
  })
  .map(({ pitch, included, share, leadAngle, starts, size }) => {
    const vee = veeOf(pitch, included, included * share);
    const lead = pitch * starts;
    const pitchDiameter = lead / (Math.PI * Math.tan((leadAngle * Math.PI) / 180));
    return { vee, included, lead, pitchDiameter, wire: size * largestInSharp(vee) };
  });

describe("reading over wires", () => {
  test.each([
    ["plain", 12.3474555],
    ["normal", 12.3494267],
    ["exact", 12.3493446],
  ] as const)("M12, 1 mm wires, %s", (method, reading) => {
    expectClose(overWires(10.863, wiresOf(metric, 1, 1.75, method)), reading);
    expectClose(pitchDiameterFrom(reading, wiresOf(metric, 1, 1.75, method)), 10.863, 1e-7);
  });

  test("unequal flanks, plain, whichever of the two is named", () => {
    for (const trailing of [7, 45]) {
      expectClose(overWires(1.85, wiresOf(veeOf(0.25, 52, trailing), 0.13, undefined, "plain")), 2.0377351);
    }
  });

  // One flank seen from behind is the other: turn the screw over.
  test("which of two unequal flanks is named makes no difference", () => {
    fc.assert(
      fc.property(screws, ({ vee, included, lead, pitchDiameter, wire }) => {
        const other = veeOf(vee.pitch, included, vee.first);
        for (const method of methods) {
          const reading = overWires(pitchDiameter, wiresOf(vee, wire, lead, method));
          expectClose(overWires(pitchDiameter, wiresOf(other, wire, lead, method)), reading, 1e-12 * reading);
        }
      }),
      seeded,
    );
  });

  test("nearly equal flanks read nearly as equal ones", () => {
    const nearly = overWires(10.863, wiresOf(veeOf(1.75, 60, 30 - 1e-7), 1, undefined));
    expectClose(nearly, overWires(10.863, wiresOf(metric, 1, undefined)), 1e-10);
  });

  test("the pitch diameter that a reading means gives that reading", () => {
    fc.assert(
      fc.property(screws, ({ vee, lead, pitchDiameter, wire }) => {
        for (const method of methods) {
          const wires = wiresOf(vee, wire, lead, method);
          const back = pitchDiameterFrom(overWires(pitchDiameter, wires), wires);
          expectClose(back, pitchDiameter, 1e-12 * pitchDiameter);
        }
      }),
      seeded,
    );
  });

  test("a sheet in another unit reads the same wires", () => {
    fc.assert(
      fc.property(screws, ({ vee, included, lead, pitchDiameter, wire }) => {
        const scale = 1 / 25.4;
        for (const method of methods) {
          const reading = overWires(pitchDiameter, wiresOf(vee, wire, lead, method));
          const inches = veeOf(vee.pitch * scale, included, vee.second);
          const scaled = overWires(
            pitchDiameter * scale,
            wiresOf(inches, wire * scale, lead * scale, method),
          );
          expectClose(scaled / scale, reading, 1e-12 * reading);
        }
      }),
      seeded,
    );
  });

  test("a lead lifts the wires, and none leaves all three methods alike", () => {
    fc.assert(
      fc.property(screws, ({ vee, lead, pitchDiameter, wire }) => {
        const read = (method: (typeof methods)[number], advance: number) =>
          overWires(pitchDiameter, wiresOf(vee, wire, advance, method));
        const plain = read("plain", lead);
        expect(read("exact", lead)).toBeGreaterThan(plain);
        expect(read("normal", lead)).toBeGreaterThan(plain);
        for (const method of methods) expect(read(method, 0)).toBe(plain);
        // A lead of next to nothing goes over into none.
        expectClose(read("exact", 1e-9 * lead), plain, 1e-9 * plain);
      }),
      seeded,
    );
  });

  test.each([
    [() => overWires(0, wiresOf(metric, 1, undefined)), "pitch_dia must be greater than 0, got 0"],
    [() => pitchDiameterFrom(-1, wiresOf(metric, 1, undefined)), "reading must be greater than 0, got -1"],
    [() => wiresOf(metric, 0, undefined), "wire must be greater than 0, got 0"],
    [() => wiresOf(metric, 1, -1), "lead must be 0 or more, got -1"],
    [() => veeOf(0, 60), "pitch must be greater than 0, got 0"],
    [() => veeOf(1, 180), "included must be above 0 and below 180 degrees, got 180"],
    [() => veeOf(1, 60, 60.1), "trailing_flank must be from 0 to the included angle 60, got 60.1"],
    [() => veeOf(1, 60, -0.1), "trailing_flank must be from 0 to the included angle 60, got -0.1"],
    [() => veeOf(1, 120, 100), "both flanks must be below 90 degrees, got 20 and 100"],
    [() => overWires(10.863, wiresOf(metric, 0.5, undefined)), "wire must stand above the pitch line"],
    [() => overWires(10.863, wiresOf(metric, 2.03, undefined)), "wire must be at most 2.020726 to touch"],
    [() => pitchDiameterFrom(12, wiresOf(metric, 0.5, undefined)), "wire must stand above the pitch line"],
    [
      () => pitchDiameterFrom(1, wiresOf(metric, 1, undefined)),
      "reading must be that of a pitch diameter above 0",
    ],
  ])("refusal %# names argument, bound and value", (refused, message) => {
    expect(refused).toThrow(RangeError);
    expect(refused).toThrow(message);
  });
});

describe("choice of wires", () => {
  test("best, largest and smallest of the standard forms", () => {
    expectClose(bestWire(veeOf(1.75, 60)), 1.010363);
    expectClose(largestWire(veeOf(1, 60), 0.125, "flat"), 1.010363);
    expectClose(largestWire(veeOf(1, 29), 0.370691, "flat"), 0.6500135);
    expectClose(largestWire(veeOf(1, 55), 0.137329, "radius"), 0.8527239);
    const smallest = [0.5051815, 0.4872631, 0.5056791, 0.4985243];
    for (const [at, { included, crest, shape, root }] of forms.entries()) {
      expectClose(smallestWire(veeOf(1, included), crest, shape, root), smallest[at]!);
    }
  });

  test("a wide root asks for a wire that clears it", () => {
    // The circle in a trapezoid: R (1 + sin a) / cos a is R sqrt 3 for 60 degrees.
    expectClose(smallestWire(veeOf(1, 60), 0.125, "flat", 0.5), 0.5 * Math.sqrt(3), 1e-12);
    expectClose(smallestWire(veeOf(1, 60), 0.1, "radius", 0.4), 0.8, 1e-12);
    // Flat crest and round root, as on a metric screw, and the other way about.
    expectClose(smallestWire(veeOf(1, 60), 0.125, "flat", 0.4, "radius"), 0.8, 1e-12);
    expectClose(smallestWire(veeOf(1, 60), 0.1, "radius", 0.5, "flat"), 0.5 * Math.sqrt(3), 1e-12);
    expect(pickWire(veeOf(1, 60), [0.6, 0.85], 0.125, "flat", 0.4, "radius")).toBe(0.85);
  });

  test.each(forms)(
    "$name: the best wire lies between smallest and largest",
    ({ included, crest, shape, root }) => {
      const best = bestWire(veeOf(1, included));
      expect(smallestWire(veeOf(1, included), crest, shape, root)).toBeLessThan(best);
      expect(largestWire(veeOf(1, included), crest, shape)).toBeGreaterThan(best);
    },
  );

  test("the best wire touches at the pitch line, where the flank angle does not matter", () => {
    const read = (included: number) =>
      overWires(10.863, wiresOf(veeOf(1.75, included), bestWire(veeOf(1.75, 60)), 0));
    // Half a degree of error in the angle moves the reading by its square only.
    expectClose(read(60.5), read(60), 3e-4);
    expect(Math.abs(read(60.5) - read(60))).toBeLessThan(
      0.1 *
        Math.abs(
          overWires(10.863, wiresOf(veeOf(1.75, 60.5), 1.6, 0)) - overWires(10.863, wiresOf(metric, 1.6, 0)),
        ),
    );
  });

  test("the largest wire touches where the flank ends, and the smallest is flush with the crest", () => {
    // Pitch line to the end of the flank of a metric screw is 3/8 H: the crest diameter is E + 3/4 H.
    const crest = 10.863 + 1.75 * 0.75 * (Math.sqrt(3) / 2);
    const flush = overWires(10.863, wiresOf(metric, smallestWire(veeOf(1.75, 60), 1.75 / 8, "flat"), 0));
    expectClose(flush, crest, 1e-12);
    const largest = largestWire(veeOf(1.75, 60), 1.75 / 8, "flat");
    const centre = overWires(10.863, wiresOf(metric, largest, 0)) - largest;
    // Touched at the wire's radius times sin 30 degrees below its centre, on either side.
    expectClose(centre - largest / 2, crest, 1e-12);
  });

  test("the nearest usable wire is picked, of two as near the larger", () => {
    expect(pickWire(veeOf(1.75, 60), [0.725, 0.895, 1.1])).toBe(1.1);
    const best = bestWire(veeOf(1, 60));
    expect(pickWire(veeOf(1, 60), [best - 0.05, best + 0.05])).toBe(best + 0.05);
    expect(pickWire(veeOf(1, 60), [best + 0.05, best - 0.05])).toBe(best + 0.05);
    expect(pickWire(veeOf(1, 60), [0.9, best + 0.01])).toBe(best + 0.01);
  });

  test("a wire that clears no root, or is past the flank, is not picked however near", () => {
    expect(pickWire(veeOf(1, 60), [0.6, 0.75], 0.125, "flat", 0.4)).toBe(0.75);
    expect(pickWire(veeOf(1, 60), [0.6, 0.51], 0.5)).toBe(0.51);
  });

  test.each([
    [() => pickWire(veeOf(1.75, 60), [0.29]), "none of the wires is from 0.884068 to 1.76814", NothingFound],
    [() => pickWire(veeOf(1.75, 60), []), "none of the wires is from", NothingFound],
    [() => pickWire(veeOf(1.75, 60), [0]), "wires must be greater than 0, got 0", RangeError],
    [() => bestWire(veeOf(1, 0)), "included must be above 0 and below 180 degrees, got 0", RangeError],
    [() => largestWire(veeOf(1, 60), -0.1, "flat"), "crest must be 0 or more, got -0.1", RangeError],
    [() => largestWire(veeOf(1, 60), 1, "flat"), "crest must be less than 1, got 1", RangeError],
    [
      () => smallestWire(veeOf(1, 60), 0.6, "radius"),
      "crest must be less than 0.5773503, got 0.6",
      RangeError,
    ],
    [() => smallestWire(veeOf(1, 60), 0.1, "flat", -1), "root must be 0 or more, got -1", RangeError],
  ])("refusal %# names argument, bound and value", (refused, message, kind) => {
    expect(refused).toThrow(kind);
    expect(refused).toThrow(message);
  });
});
