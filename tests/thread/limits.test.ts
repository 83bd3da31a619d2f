import { expect, test } from "vitest";
import { catalogue } from "../../src/thread/catalogue.ts";
import { NothingFound } from "../../src/thread/failures.ts";
import { type Diameter, limit, target } from "../../src/thread/limits.ts";
import { deviation } from "../../src/thread/metriclimits.ts";
import { readThread } from "../../src/thread/read.ts";
import type { Limits, Member } from "../../src/thread/thread.ts";
import { trapezoidDeviation } from "../../src/thread/trapezoidal.ts";

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
    // A taper screw is meant to bind in its nut.
    if (readThread(text).taper > 0) continue;
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
  ["1/4-26 BSC", "pitch", "max", "no limits of size are held for BSC threads"],
  ["M10-5g", "major", "min", "major diameter grades are 4, 6, 8, got 5"],
  ["M400x6", "pitch", "min", "0.99 to 355 mm, got 400"],
  ["20 BA", "pitch", "min", "BA 0 to 16"],
  ["12 BA close", "pitch", "min", "close bolts are BA 0 to 10"],
  ["M2x0.25-6e", "pitch", "max", "position e is not used"],
])("%s has no %s diameter %s, and the message says why", (text, diameter, end, says) => {
  expect(() => limit(readThread(text), diameter, end)).toThrow(NothingFound);
  expect(() => limit(readThread(text), diameter, end)).toThrow(says);
});

const near = (value: number | undefined, printed: number, tolerance: number) =>
  expect(Math.abs(value! - printed)).toBeLessThanOrEqual(tolerance + 1e-9);

// A power-screw maker's table of external Acme threads, class 2G, inches: major, pitch and minor, largest and smallest.
test.each<[string, ...number[]]>([
  ["3/8-12", 0.375, 0.37, 0.3284, 0.3161, 0.2817, 0.2632],
  ["1/2-10", 0.5, 0.495, 0.4443, 0.4306, 0.38, 0.3594],
  ["5/8-8", 0.625, 0.6188, 0.5562, 0.5408, 0.48, 0.457],
  ["3/4-6", 0.75, 0.7417, 0.6598, 0.6424, 0.5633, 0.5371],
  ["7/8-6", 0.875, 0.8667, 0.7842, 0.7663, 0.6883, 0.6615],
  ["1-5", 1, 0.99, 0.892, 0.8726, 0.78, 0.7509],
])("%s Acme-2G has the limits in print", (size, ...printed) => {
  const { major, pitch, minor } = readThread(`${size} Acme-2G`).limits();
  const ours = [major.max, major.min, pitch.max, pitch.min, minor.max, minor.min];
  // One unit of the last decimal: the table rounds the basic pitch diameter on its own.
  for (const [i, value] of ours.entries()) near(value, printed[i]!, 0.0001);
});

// A published Acme data sheet, smallest minor diameter of the screw and largest of the nut, inches.
test.each([
  ["1/4-16", "3G", 0.1702, 0.1925],
  ["1/4-16", "4G", 0.1722, 0.1925],
  ["3/8-12", "3G", 0.273, 0.2967],
  ["3/8-12", "4G", 0.2755, 0.2967],
  ["1/2-10", "3G", 0.3704, 0.405],
  ["1/2-10", "4G", 0.3731, 0.405],
  ["5/8-8", "2G", 0.457, 0.5063],
  ["3/4-6", "3G", 0.5511, 0.5917],
  ["3/4-6", "4G", 0.5546, 0.5917],
] as const)("%s Acme-%s has the minor diameters in print", (size, fit, screw, nut) => {
  const thread = readThread(`${size} Acme-${fit}`);
  near(thread.limits("external").minor.min, screw, 0.0001);
  near(thread.limits("internal").minor.max, nut, 0.0001);
});

// ASME B1.9 table 4 as in a machinists' handbook, 27th ed. p. 1854: class 2 tolerance of the pitch diameter, inches.
// (Its 0.0068 for 2 in and 16 threads comes of 0.0173 in place of 0.01733; the formula gives 0.0069.)
test.each([
  [0.6, 20, 0.0056],
  [0.5, 16, 0.006],
  [0.75, 16, 0.0062],
  [1.5, 16, 0.0065],
  [3, 16, 0.0073],
  [1, 12, 0.0069],
  [5, 12, 0.0084],
  [1, 10, 0.0074],
  [2.5, 10, 0.008],
  [4, 10, 0.0084],
  [6, 10, 0.0089],
  [8, 10, 0.0095],
  [12, 10, 0.0102],
])("a buttress thread of %d in, %d threads per inch has a tolerance of %d in", (D, tpi, printed) => {
  const { pitch, major } = readThread(`${D}-${tpi} Butt-2`).limits();
  near(pitch.max! - pitch.min!, printed, 0);
  near(major.max! - major.min!, printed, 0);
});

// The allowance is the class 3 tolerance, two thirds of class 2 (same handbook, p. 1855).
test("a buttress screw stands two thirds of its class 2 tolerance under the basic size", () => {
  near(4 - readThread("4-10 Butt").limits().major.max!, (2 / 3) * 0.0084, 0.00005);
});

// ISO 2903 limits of external threads, class 7e, table on an engineering reference site: major, pitch and minor, mm.
test.each<[string, ...number[]]>([
  ["Tr 8x1.5", 8, 7.85, 7.183, 7.013, 6.2, 5.921],
  ["Tr 9x2", 9, 8.82, 7.929, 7.739, 6.5, 6.191],
  ["Tr 12x3", 12, 11.764, 10.415, 10.191, 8.5, 8.135],
  ["Tr 16x4", 16, 15.7, 13.905, 13.64, 11.5, 11.074],
  ["Tr 320x5", 320, 319.665, 317.394, 317.019, 314.5, Number.NaN],
])("%s-7e has the limits in print", (text, ...printed) => {
  const { major, pitch, minor } = readThread(`${text}-7e`).limits();
  const ours = [major.max, major.min, pitch.max, pitch.min, minor.max, minor.min];
  // That table rounds the smallest minor diameter down.
  for (const [i, value] of printed.entries()) {
    if (!Number.isNaN(value)) near(ours[i], value, i === 5 ? 0.001 : 0);
  }
});

// ASME B1.5-1988 tables 10 and 12 as in a machinists' handbook, 27th ed. p. 1841 and 1842: allowances of the pitch diameter,
// of the nut's major and minor diameter; tolerances of the minor diameter, and of the major one of screw and nut; inches.
test.each<[string, string, ...number[]]>([
  ["1/4-16", "2C", 0.004, 0.0005, 0.0062, 0.005, 0.0017, 0.0017],
  ["1/4-16", "3C", 0.003, 0.0005, 0.0062, 0.005, 0.0007, 0.0017],
  ["1/4-16", "4C", 0.002, 0.0005, 0.0062, 0.005, 0.0005, 0.001],
  ["3/8-12", "3C", 0.0037, 0.0006, 0.0083, 0.005, 0.0009, 0.0021],
  ["1/2-10", "2C", 0.0057, 0.0007, 0.01, 0.005, 0.0025, 0.0025],
  ["1/2-10", "4C", 0.0028, 0.0007, 0.01, 0.005, 0.0007, 0.0014],
  ["5/8-8", "3C", 0.0047, 0.0008, 0.0125, 0.0062, 0.0012, 0.0028],
  ["3/4-6", "2C", 0.0069, 0.0009, 0.0167, 0.0083, 0.003, 0.003],
  ["3/4-6", "4C", 0.0035, 0.0009, 0.0167, 0.0083, 0.0009, 0.0017],
])("%s Acme-%s has the centralizing allowances and tolerances in print", (size, fit, ...printed) => {
  const screw = readThread(`${size} Acme-${fit}`);
  const nut = readThread(`${size} Acme-${fit} nut`).limits();
  const { major: D, pitch: P } = screw;
  const { major, pitch, minor } = screw.limits();
  const [pitchAllowance, majorAllowance, minorAllowance, minorTolerance, screwMajor, nutMajor] = printed;
  near(D - P / 2 - pitch.max!, pitchAllowance!, 0.00005);
  near(nut.major.min! - D, majorAllowance!, 0);
  near(nut.minor.min! - (D - P), minorAllowance!, 0.0001);
  near(nut.minor.max! - nut.minor.min!, minorTolerance!, 0);
  near(major.max! - major.min!, screwMajor!, 0);
  near(nut.major.max! - nut.major.min!, nutMajor!, 0);
  // Formula 5 of the same tables: the screw's minor diameter is D - P less 0.010 or 0.020.
  near(D - P - minor.max!, size === "1/4-16" || size === "3/8-12" ? 0.01 : 0.02, 0.0001);
});

// ISO 2903 deviations of trapezoidal screws of the same pitch, in tests/published; ISO 965-1 has the same for c.
test.each([1.5, 2, 3, 4, 5, 6, 8])("position c at a pitch of %d mm is that of a trapezoidal screw", (P) => {
  expect(deviation("c", P)).toBe(trapezoidDeviation("c", P));
});

// ISO 965-1, from memory: d lies between c and e at every pitch, and the amounts grow with the pitch.
test("the coating positions a to d stand in order outside position e, and say that they are from memory", () => {
  for (const P of [1, 1.25, 1.5, 1.75, 2, 2.5, 3, 3.5, 4, 4.5, 5, 5.5, 6, 8]) {
    const amounts = ["a", "b", "c", "d", "e"].map((position) => deviation(position, P));
    expect(amounts).toEqual([...amounts].sort((first, second) => second - first));
  }
  const coated = readThread("M10-6d");
  expect(coated.limitsNote).toContain("from memory");
  expect(10 - coated.limits().major.max!).toBeCloseTo(0.095, 9);
  expect(readThread("M10-6g").limitsNote).toBeUndefined();
  expect(() => readThread("M6x0.75-6a").limits()).toThrow("position a is not used at pitch 0.75 mm");
});

// ISO 7-1 table 1: a turn of the screw, a turn and a quarter of the nut, a turn and a half of either from 2 1/2 up, are a
// sixteenth of that length on diameter.
test.each([
  ["R 1/8", 0.907 / 16],
  ["R 1/2", 1.814 / 16],
  ["R 3", (1.5 * 2.309) / 16],
  ["Rc 1/8", (1.25 * 0.907) / 16],
  ["Rc 1", (1.25 * 2.309) / 16],
])("%s may be %d mm either way on diameter at the gauge plane", (text, deviation) => {
  const thread = readThread(text);
  const { max, min } = thread.limits().pitch;
  near(max! - thread.pitchDia, deviation, 0.0005);
  near(thread.pitchDia - min!, deviation, 0.0005);
});

// ISO 7-1 table 1: permitted deviation of the parallel internal thread, mm.
test.each([
  ["Rp 1/8", 0.071],
  ["Rp 1/4", 0.104],
  ["Rp 1/2", 0.142],
  ["Rp 1", 0.18],
  ["Rp 3", 0.216],
])("every diameter of %s may be %d mm either way of basic", (text, deviation) => {
  const thread = readThread(text);
  const { major, pitch, minor } = thread.limits();
  for (const [limits, basic] of [
    [major, thread.major],
    [pitch, thread.pitchDia],
    [minor, thread.minor.internal],
  ] as const) {
    near(limits.max! - basic, deviation, 0);
    near(basic - limits.min!, deviation, 0);
  }
});

// Geometry of ASME B1.15: an arc of 5H/24 that touches both flanks ends 2H/3 below the crest, 4H/3 on diameter.
test("a large-radius Unified screw is 4H/3 smaller at the root than at the crest", () => {
  const H = Math.sqrt(3) / 2 / 28;
  near(readThread("1/4-28 UNJF-3A").limits().minor.max, 0.25 - (4 / 3) * H, 0.00005);
  // And the least radius of 0.15011 P ends 0.56580 P on diameter below the pitch diameter.
  const { minor, pitch } = readThread("1/4-28 UNJF-3A").limits();
  near(minor.min, pitch.min! - 0.5658 / 28, 0.00006);
});

// ISO 5855-1 and ASME B1.15: basic minor diameter of the nut D - 0.97428 P.
test("a large-radius nut is bored wider", () => {
  near(readThread("1-8 UNJC-3B").limits().minor.min, 1 - 0.97428 / 8, 0.0005);
  near(readThread("MJ20x2.5-4H5H").limits().minor.min, 20 - 0.97428 * 2.5, 0.0005);
});

// ASME B1.1: the tolerance of the nut's minor diameter is 0.15 P for fewer than four threads per inch.
test("a nut of three threads per inch has a minor diameter tolerance of 0.15 P", () => {
  const { min, max } = readThread("4-3 UNS-2B").limits().minor;
  near(max! - min!, 0.05, 0.0005);
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

// ASME B1.1 table of limits: from No. 6 up the minor diameter of the nut is printed to three decimals, below to four; the
// row of 5-40 from memory.
test.each([
  ["5-40 UNC-2B", 0.0979, 0.1062],
  ["6-32 UNC-2B", 0.104, 0.114],
])("%s has the printed minor diameters to the last figure", (text, least, most) => {
  const { min, max } = readThread(text).limits().minor;
  expect([min, max]).toEqual([least, most]);
});

// ISO 228-1 table 1: the major diameter of the screw may be twice the class A tolerance of the pitch diameter under.
test.each([
  ["G 1/8", 9.728, 9.514],
  ["G 1/2", 20.955, 20.671],
  ["G 1", 33.249, 32.889],
])("%s A has the printed major diameters", (text, most, least) => {
  const { max, min } = readThread(text).limits("external").major;
  expect(max).toBeCloseTo(most, 9);
  expect(min).toBeCloseTo(least, 9);
});

// ASME B1.9: class 3 has two thirds of the tolerance of class 2.
test.each(["2-4 Butt", "1/2-16 Butt", "10-2 Butt"])("%s: class 3 has two thirds of class 2", (size) => {
  const tolerances = (fit: string) =>
    [`${size}-${fit}`, `${size}-${fit} nut`].map((text) => {
      const { max, min } = readThread(text).limits().pitch;
      return max! - min!;
    });
  tolerances("3").forEach((tolerance, k) => {
    near(tolerance, (2 / 3) * tolerances("2")[k]!, 0.0001);
  });
});

// Position e of Tr is printed for the pitches below 5 mm; from 5 up, and position c, are from memory.
test.each([
  ["Tr 20x4-7e", false],
  ["Tr 22x5-7e", true],
  ["Tr 20x4-8c", true],
  ["Tr 22x5-7H", false],
])("whether %s is cautioned about: %s", (text, doubtful) => {
  expect(readThread(text).limitsNote !== undefined).toBe(doubtful);
});

// The cone falls by a sixteenth of the gauge length: 19.793 - 8.2/16 by ISO 7-1.
test("the small end of R 1/2 lies a gauge length down the cone", () => {
  expect(readThread("R 1/2").gauge!.smallEnd).toBeCloseTo(19.2805, 9);
});

// ASME B1.20.1 ends NPSC at 4 in; NPT is listed here to 12 in.
test("the largest sizes of the American pipe threads are among them", () => {
  expect(readThread("4 NPSC").designation).toBe("4-8 NPSC");
  expect(readThread("12 NPT").designation).toBe("12-8 NPT");
  expect(() => readThread("5 NPSC")).toThrow("cannot read");
});

// ASME B1.20.1: the ridge of NPSL is 0.666025 P high on both sides of the groove.
test("NPSL is as deep in the nut as on the screw", () => {
  const { major, minor, pitch } = readThread("1/2 NPSL");
  near(major - minor.external, 2 * 0.666025 * pitch, 1e-9);
  near(minor.internal, minor.external, 1e-9);
});
