// Drills, tapping drills and percentages of thread of tests/published/drills.csv; each row names its own source.
import { expect, test } from "vitest";
import { stockDrills } from "../../src/lathe/drill-list.ts";
import { drillNamed, drillSize, nearestDrill } from "../../src/lathe/drills.ts";
import { boreFor, engagementOf } from "../../src/thread/bore.ts";
import { readThread } from "../../src/thread/read.ts";
import { convertLength } from "../../src/thread/thread.ts";
import { publishedRows, type Row, testRows } from "./rows.ts";
import { unmatched } from "./unmatched.ts";

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
  if (name75 === undefined) return undefined;
  // The smallest stock drill that leaves 75 %, to the whole per cent: a smaller one would leave a fuller thread.
  const thread = readThread(name75);
  const bore = convertLength(boreFor(thread, 75.5, "basic"), thread.unit, "mm");
  return nearestDrill(bore, "metric", "over", "mm").size;
}

testRows(rows, computed);

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

test("a drill that is not the next one over 75 % is for the percentage that is said, and off by more than its rounding", () => {
  const listed = rows.filter(({ id }) => id in unmatched);
  expect(listed).toHaveLength(4);
  for (const { id, designation, value, tolerance } of listed) {
    const why = unmatched[id]!;
    const { major, pitch, unit } = readThread(nameOf(designation)!);
    // By hand: a Whitworth form is 0.640327 of its pitch deep, and so much of 2 x that depth stands in the hole.
    const deep = 2 * 0.640327 * convertLength(pitch, unit, "mm");
    const size = convertLength(major, unit, "mm");
    expect(Math.abs((100 * (size - value)) / deep - Number.parseFloat(why)), designation).toBeLessThanOrEqual(
      0.5,
    );
    const for75 = size - 0.75 * deep;
    expect(why).toContain(`${for75.toFixed(2)} would be for 75 %`);
    expect(Math.abs(for75 - value), designation).toBeGreaterThan(tolerance);
    if (why.includes("the stock drill below")) expect(value).toBeLessThan(for75);
    else expect(value).toBeGreaterThan(for75 + 0.1);
  }
});
