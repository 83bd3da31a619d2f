import { expect, test } from "vitest";
import { catalogue } from "../../src/thread/catalogue.ts";
import { NothingFound } from "../../src/thread/failures.ts";
import { type Diameter, limit, target } from "../../src/thread/limits.ts";
import { readThread } from "../../src/thread/read.ts";
import type { Limits, Member } from "../../src/thread/thread.ts";

const designations = catalogue.flatMap((series) =>
  series.sizes.flatMap((size) =>
    size.pitches.filter((pitch) => pitch > 0).map((pitch) => series.list(size, pitch)),
  ),
);

/** The limits of a thread, undefined where its standard has none. */
function stated(text: string, member: Member): Limits | undefined {
  try {
    return readThread(text).limits(member);
  } catch (error) {
    if (error instanceof NothingFound) return undefined;
    throw error;
  }
}

test("limits of every tabled size are in order, and a screw goes into its nut", () => {
  let compared = 0;
  for (const text of designations) {
    const screw = stated(text, "external");
    const nut = stated(text, "internal");
    for (const diameter of ["major", "pitch", "minor"] as const) {
      for (const limits of [screw, nut]) {
        const { max, min } = limits?.[diameter] ?? {};
        if (max !== undefined && min !== undefined) expect(min, `${text} ${diameter}`).toBeLessThan(max);
      }
      const largest = screw?.[diameter].max;
      const smallest = nut?.[diameter].min;
      if (largest !== undefined && smallest !== undefined) {
        compared += 1;
        expect(largest, `${text} ${diameter}`).toBeLessThanOrEqual(smallest + 1e-9);
      }
    }
  }
  expect(compared).toBeGreaterThan(1500);
});

// 1 1/8-12 UNF-2B and M10-6g as in ASME B1.1 and ISO 965-2; the mean is arithmetic.
test("the target is the mean of the two limits", () => {
  expect(target(readThread("M10-6g"), "pitch")).toBeCloseTo((8.994 + 8.862) / 2, 9);
});

test.each<[string, Diameter, "max" | "min", string]>([
  ["M10-6H", "major", "max", "gives the nut no major diameter max"],
  ["1/4-20 UNC", "minor", "min", "gives the screw no minor diameter min"],
  ["1/4-26 BSC", "pitch", "max", "gives the screw no pitch diameter max"],
  ["M10-5g", "major", "min", "major diameter grades are 4, 6, 8, got 5"],
  ["M400x6", "pitch", "min", "0.99 to 355 mm, got 400"],
  ["20 BA", "pitch", "min", "BA 0 to 16"],
  ["12 BA close", "pitch", "min", "close bolts are BA 0 to 10"],
  ["M2x0.25-6e", "pitch", "max", "position e is not used"],
])("%s has no %s diameter %s, and the message says why", (text, diameter, end, says) => {
  expect(() => limit(readThread(text), diameter, end)).toThrow(NothingFound);
  expect(() => limit(readThread(text), diameter, end)).toThrow(says);
});

// ASME B1.20.1 table 4 as in a machinists' handbook, 27th ed. p. 1864: NPSC, inches.
test.each([
  ["1/8", 0.34, 0.3701, 0.3771],
  ["1/4", 0.442, 0.4864, 0.4968],
  ["1/2", 0.715, 0.7717, 0.7851],
  ["1", 1.161, 1.2305, 1.2468],
  ["1-1/2", 1.745, 1.8142, 1.8305],
  ["3", 3.277, 3.3768, 3.4002],
])("%s NPSC has the printed minor and pitch diameters", (size, minor, least, most) => {
  const limits = readThread(`${size} NPSC`).limits();
  expect(limits.minor.min).toBeCloseTo(minor, 9);
  expect(limits.pitch.min).toBeCloseTo(least, 9);
  expect(limits.pitch.max).toBeCloseTo(most, 9);
});
