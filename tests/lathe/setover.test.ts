// Expected values were computed independently of this code, to 7 digits, unless a test names another source.
import fc from "fast-check";
import { expect, test } from "vitest";
import {
  acrossBed,
  alongBed,
  backedOff,
  foundSetover,
  miscut,
  rescueDepth,
  scaleReading,
  setoverAngle,
  setoverByTwo,
  setoverFromScale,
  swing,
} from "../../src/lathe/setover.ts";
import { between, expectClose, seeded } from "./close.ts";

const tan = (degrees: number) => Math.tan((degrees * Math.PI) / 180);
const setovers = between(-89, 89);

test("half the included angle less the back-off is the set-over", () => {
  expect(setoverAngle(55)).toBe(27.5);
  expect(setoverAngle(60, 0.5)).toBe(29.5);
  expect(backedOff(7, 1)).toBe(6);
});

// Common practice: a scale zeroed along the bed reads 62.5 for Whitworth, from its other end 117.5.
test("the scale words agree with what Whitworth is set to", () => {
  expect(scaleReading(27.5, "square")).toBe(27.5);
  expect(scaleReading(27.5, "bed")).toBe(62.5);
  expect(scaleReading(27.5, "obtuse")).toBe(117.5);
});

test("a scale reading leads back to its set-over", () => {
  fc.assert(
    fc.property(setovers, fc.constantFrom("square", "bed", "obtuse"), (setover, scale) => {
      expectClose(setoverFromScale(scaleReading(setover, scale), scale), setover, 1e-12);
    }),
    seeded,
  );
});

test("an indicator along the bed shows the sine, one across it the cosine", () => {
  expectClose(alongBed(10, 27.5), 4.6174861);
  expectClose(acrossBed(10, 60), 5, 1e-12); // cos 60 degrees is one half
  expect(acrossBed(10, 90)).toBe(0);
});

test("a reading over a known travel finds the set-over", () => {
  expectClose(foundSetover(10, 4.6, "along"), 27.3871075);
  expectClose(setoverByTwo(4.6, 8.88), 27.3849706);
});

test("what the indicators show finds the set-over again, each by its own way", () => {
  fc.assert(
    fc.property(setovers, between(0.1, 100), (setover, travel) => {
      const along = alongBed(travel, setover);
      const across = acrossBed(travel, setover);
      expectClose(foundSetover(travel, along, "along"), setover, 1e-6);
      expectClose(foundSetover(travel, across, "across"), Math.abs(setover), 1e-5);
      expectClose(setoverByTwo(along, across), setover, 1e-9);
    }),
    seeded,
  );
});

// Standing at the lathe, headstock left; common practice, no source.
test("the handle swings so that the tool moves into the work and towards where the carriage goes", () => {
  expect(swing("right", "internal", "in")).toBe("handle left, wind back");
  expect(swing("right")).toBe("handle right, wind in");
  expect(swing("left")).toBe("handle left, wind in");
  expect(swing("right", "internal")).toBe("handle left, wind back");
  expect(swing("left", "internal")).toBe("handle right, wind back");
});

test("a stated direction of the cut decides, whichever the hand", () => {
  expect(swing("left", "external", "in")).toBe("handle right, wind in");
  expect(swing("right", "external", "out")).toBe("handle left, wind in");
});

test("the overcut at the surface and further down", () => {
  expectClose(miscut(1.3554, 35, 27.5, 0.3), 0.1895926);
  expectClose(miscut(1.3554, 35, 27.5, 0.3, 0.68), 0.1213292);
});

test("a negative set-over is held against the leading flank by its size", () => {
  expect(miscut(1.3554, -35, 27.5, 0.3)).toBe(miscut(1.3554, 35, 27.5, 0.3));
});

test("a set-over not past the flank overcuts nothing", () => {
  fc.assert(
    fc.property(between(0, 80), between(0, 1), (flank, share) => {
      expect(miscut(1, flank * share, flank, 0.2)).toBe(0);
    }),
    seeded,
  );
});

test("the overcut is the furthest that any pass reaches beyond the finished flank", () => {
  const share = between(0.01, 0.99);
  fc.assert(
    fc.property(share, share, between(20, 40), between(15, 35), (first, level, setover, flank) => {
      let furthest = 0;
      for (let k = 0; k <= 400; k++) {
        const depth = first + ((1 - first) * k) / 400;
        if (depth < level) continue;
        // Where this pass puts the flank at that level, from the axis of the finished groove.
        const reach = (1 - depth) * tan(setover) + (depth - level) * tan(flank);
        furthest = Math.max(furthest, reach - (1 - level) * tan(flank));
      }
      expectClose(
        miscut(1, setover, flank, first, level),
        furthest,
        3e-3 * (setover > flank ? 1 : 0) + 1e-12,
      );
    }),
    seeded,
  );
});

test("straight in still cleans the flank down to the rescue depth", () => {
  expectClose(rescueDepth(1.2269, 35, 30, 0.3), 1.0642676);
});

test("at the rescue depth the metal still to come off just covers the step", () => {
  const depth = 1.2269;
  const reached = rescueDepth(depth, 35, 30, 0.3);
  expectClose((depth - reached) * tan(30), (reached - 0.3) * (tan(35) - tan(30)), 1e-12);
});

test("a set-over that is not past the flank can be finished from any depth", () => {
  expect(rescueDepth(1.2, 29, 30, 0.3)).toBe(1.2);
  expect(rescueDepth(1.2, 0, 0, 0.3)).toBe(1.2);
});

test.each([
  [() => setoverAngle(180), "included must be from 0 to below 180 degrees, got 180"],
  [() => setoverAngle(60, 121), "back_off must leave a set-over between -90 and 90 degrees, got 121"],
  [() => scaleReading(91, "bed"), "setover must be from -90 to 90, got 91"],
  [() => setoverFromScale(-1, "obtuse"), "reading must be from 0 to 180, got -1"],
  [() => setoverFromScale(120, "square"), "reading must be from -90 to 90, got 120"],
  [() => alongBed(10, -91), "setover must be from -90 to 90, got -91"],
  [() => acrossBed(10, 91), "setover must be from -90 to 90, got 91"],
  [() => foundSetover(10, 10.1, "along"), "reading must be from -10 to 10, got 10.1"],
  [() => foundSetover(10, -1, "across"), "reading must be from 0 to 10, got -1"],
  [() => foundSetover(0, 0, "along"), "travel must be greater than 0, got 0"],
  [() => setoverByTwo(0, 0), "along and across must not both be 0"],
  [() => setoverByTwo(1, -1), "across must be 0 or more, got -1"],
  [() => miscut(0, 35, 30), "depth must be greater than 0, got 0"],
  [() => miscut(1, 90, 30), "setover must be between -90 and 90 degrees, got 90"],
  [() => miscut(1, 35, 30, 1.1), "first_depth must be from 0 to 1, got 1.1"],
  [() => miscut(1, 35, 30, 0.1, -0.1), "level must be from 0 to 1, got -0.1"],
  [() => rescueDepth(1, -35, 30, 0.3), "setover must be from 0 to below 90 degrees, got -35"],
])("refusal %# names argument, bound and value", (refused, says) => {
  expect(refused).toThrow(RangeError);
  expect(refused).toThrow(says);
});
