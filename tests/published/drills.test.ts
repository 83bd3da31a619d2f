// Drills, tapping drills and percentages of thread of tests/published/drills.csv; each row names its own source.
import { expect, test } from "vitest";
import { stockDrills } from "../../src/lathe/drill-list.ts";
import { drillNamed, drillSize, nearestDrill } from "../../src/lathe/drills.ts";
import { boreFor, engagementOf } from "../../src/thread/bore.ts";
import { readThread } from "../../src/thread/read.ts";
import { convertLength } from "../../src/thread/thread.ts";
import { publishedRows, type Row } from "./rows.ts";

const rows = publishedRows("drills");

/** The table prints size and threads per inch; the series makes no difference to the basic sizes. */
const unified = (designation: string) => readThread(`${designation} UN`);

/** The threads of the 75 % tables, as we read them. */
function nameOf(designation: string): string | undefined {
  const [, series, size, perInch] = /^(ME|BA|Brass|BSW) (\S+)(?: x (\d+))?$/.exec(designation) ?? [];
  if (series === undefined) return undefined;
  if (perInch === undefined) return `${size} ${series}`;
  return `${size}-${perInch} ${series === "ME" ? "ME" : "BSB"}`;
}

/**
 * Rows of the "about 75 %" tables whose drill is for another percentage, further from 75 than its own rounding, and why.
 * A test below holds each of them to its words.
 */
const others: ReadonlyMap<string, { readonly percent: number; readonly why: string }> = new Map([
  ["ME 5/32 x 40", { percent: 82, why: "the stock drill below; 3.36 would be for 75 %" }],
  ["ME 3/16 x 40", { percent: 81, why: "the stock drill below; 4.15 would be for 75 %" }],
  ["ME 1/4 x 40", { percent: 68, why: "the stock drill above; 5.74 would be for 75 %" }],
  ["BSW 3/16", { percent: 71, why: "the stock drill above; 3.75 would be for 75 %" }],
  ["BSW 1/4", { percent: 71, why: "the stock drill above; 5.13 would be for 75 %" }],
  ["Brass 5/16 x 26", { percent: 63, why: "a fine thread in thin brass: 7.00 would be for 75 %" }],
  ["Brass 3/8 x 26", { percent: 58, why: "a fine thread in thin brass: 8.59 would be for 75 %" }],
]);

/** What these functions answer for a row; undefined where the row is about something else. */
function computed({ designation, quantity }: Row): number | undefined {
  const drill = /^((?:No\.|Letter) \w+) drill$/.exec(designation)?.[1];
  if (drill !== undefined) return drillSize(drill, "in");
  // An inch tapping drill is printed with its name.
  const name = /^tapping drill \((.+)\)$/.exec(quantity)?.[1];
  if (name !== undefined) return drillSize(/^\d+$/.test(name) ? `#${name}` : name, "in");
  if (designation.startsWith("M") && !designation.startsWith("ME") && quantity.startsWith("tapping drill")) {
    const { major, pitch } = readThread(designation);
    return drillSize(nearestDrill(major - pitch, "metric", "nearest", "mm").name, "mm");
  }
  const drilled = /^percent of full thread with ([\d.]+) in drill$/.exec(quantity)?.[1];
  if (drilled !== undefined) return engagementOf(unified(designation), Number(drilled), "drill");
  const hole = /^hole for (\d+) % thread, (1.299|1.0825) form$/.exec(quantity);
  if (hole) {
    return boreFor(unified(designation), Number(hole[1]), hole[2] === "1.299" ? "drill" : "basic");
  }
  const name75 = nameOf(designation);
  if (name75 === undefined || others.has(designation)) return undefined;
  const thread = readThread(name75);
  return convertLength(boreFor(thread, 75, "basic"), thread.unit, "mm");
}

for (const row of rows) {
  const value = computed(row);
  if (value === undefined) continue;
  test(`${row.id} agrees with its source (${row.source})`, () => {
    expect(Math.abs(value - row.value), `${value} against ${row.text}`).toBeLessThanOrEqual(
      row.tolerance + 1e-9,
    );
  });
}

/** Drills that the file lacks, as other tables print them, in inches. */
const elsewhere: readonly (readonly [string, Readonly<Record<string, number>>])[] = [
  [
    "drills and preferred sizes, v.2 of 2007, public domain, circuitousroot.com",
    {
      56: 0.0465,
      57: 0.043,
      58: 0.042,
      61: 0.039,
      62: 0.038,
      64: 0.036,
      65: 0.035,
      68: 0.031,
      75: 0.021,
      78: 0.016,
      79: 0.0145,
    },
  ],
  [
    "tap and clearance drills for American National screws, hole size page of a robotics team",
    { 32: 0.116, 43: 0.089, 46: 0.081, 47: 0.0785, 50: 0.07 },
  ],
  ["a tool seller's chart of most used number drills", { 4: 0.209, 10: 0.1935 }],
  [
    "tap drill sizes for threads of American National form, table of an engineers' handbook",
    { 12: 0.189, 16: 0.177, F: 0.257, I: 0.272, J: 0.277, Q: 0.332 },
  ],
  ["tap drill chart for cutting and forming taps", { 8: 0.199, 15: 0.18, M: 0.295, Y: 0.404 }],
  [
    "letters A to Z in an open metric and inch drill chart, three decimals",
    { C: 0.242, E: 0.25, F: 0.257, J: 0.277, M: 0.295, P: 0.323, Q: 0.332, R: 0.339, Y: 0.404 },
  ],
];
for (const [source, sizes] of elsewhere) {
  test(`drills ${Object.keys(sizes).join(", ")} agree with another table (${source})`, () => {
    for (const [name, size] of Object.entries(sizes))
      expect(drillSize(/^\d/.test(name) ? `#${name}` : name, "in")).toBe(size);
  });
}

test("a number or letter drill is either confirmed by a printed table here, or marked as from memory", () => {
  const printed = rows
    .filter((row) => row.confidence !== "memory")
    .flatMap(({ designation, quantity }) => {
      const own = /^((?:No\.|Letter) \w+) drill$/.exec(designation)?.[1];
      const tapping = /^tapping drill \((.+)\)$/.exec(quantity)?.[1];
      return [own, tapping && (/^\d+$/.test(tapping) ? `#${tapping}` : tapping)].filter((name) => !!name);
    })
    .map((name) => drillNamed(name as string).name);
  const others = elsewhere.flatMap(([, sizes]) =>
    Object.keys(sizes).map((name) => (/^\d/.test(name) ? `No. ${name}` : name)),
  );
  const confirmed = new Set([...printed, ...others]);
  for (const { name, series, remembered } of stockDrills) {
    if (series === "number" || series === "letter") expect(confirmed.has(name), name).toBe(!remembered);
    else expect(remembered, name).toBe(undefined);
  }
});

test("every published row is compared, or left out for a stated reason", () => {
  const left = rows.filter((row) => computed(row) === undefined);
  expect(left.map(({ designation }) => designation).sort()).toEqual([...others.keys()].sort());
});

test("a drill left out because it is not for 75 % is for the percentage that is said, and off by more than its rounding", () => {
  const left = rows.filter((row) => others.has(row.designation));
  expect(left).toHaveLength(others.size);
  for (const { designation, value, tolerance } of left) {
    const { percent, why } = others.get(designation)!;
    const { major, pitch, unit } = readThread(nameOf(designation)!);
    // By hand: a Whitworth form is 0.640327 of its pitch deep, and so much of 2 x that depth stands in the hole.
    const deep = 2 * 0.640327 * convertLength(pitch, unit, "mm");
    const size = convertLength(major, unit, "mm");
    expect(Math.abs((100 * (size - value)) / deep - percent), designation).toBeLessThanOrEqual(0.5);
    const for75 = size - 0.75 * deep;
    expect(why).toContain(for75.toFixed(2));
    expect(Math.abs(for75 - value), designation).toBeGreaterThan(tolerance);
    // Drills go up by a tenth of a millimetre there.
    if (why.startsWith("the stock drill")) expect(Math.abs(for75 - value)).toBeLessThan(0.1);
    if (why.startsWith("the stock drill above")) expect(value).toBeGreaterThan(for75);
    if (why.startsWith("the stock drill below")) expect(value).toBeLessThan(for75);
  }
});
