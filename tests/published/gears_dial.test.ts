// Change gears and thread indicators, tests/published/gears_dial.csv; each row names its own source.
import { expect, test } from "vitest";
import { engageFunctions } from "../../src/functions/engage.ts";
import { gearFunctions } from "../../src/functions/gears.ts";
import { caller } from "../functions/call.ts";
import { publishedRows, type Row } from "./rows.ts";

const rows = publishedRows("gears_dial");
const call = caller([...gearFunctions, ...engageFunctions]);
const lead = (leadscrew: number, ...wheels: number[]) => call("GEAR.LEAD", leadscrew, ...wheels) as number;
const error = (wanted: number, cut: number, length?: number) =>
  call("GEAR.ERROR", wanted, cut, length) as number;

/** How many marks of a dial may be used: inches in a turn of the dial, marks on it, threads per inch. */
function countMarks(inches: number, marks: number, tpi: number): number {
  // A leadscrew of 8 per inch, whose wheel turns once in that many inches.
  const text = call("ENGAGE.MARKS", 1 / tpi, 1 / 8, inches * 8, marks) as string;
  return text === "" ? 0 : text.split(",").length;
}

/** What these functions answer for a row; undefined where the row is about something else. */
function computed({ designation, quantity }: Row): number | undefined {
  const metric = /^([\d.]+) mm pitch, (\d+) tpi lead screw$/.exec(designation);
  if (metric) {
    // The train that the row's own rule gives, 5 n P / 127, cuts exactly the pitch; the ratio is its lead over the leadscrew's.
    const [P, n] = [Number(metric[1]), Number(metric[2])];
    const cut = lead(25.4 / n, 4 * 5 * n * P, 4 * 127);
    return Math.abs(error(P, cut)) < 1e-12 ? cut / (25.4 / n) : Number.NaN;
  }
  const approximate = /^(\d+)\/(\d+) for 1\.27$/.exec(designation);
  if (approximate) return error(1.27, lead(1, Number(approximate[1]), Number(approximate[2])), 1e6);
  const inverse = /^(\d+)\/(\d+) \(inverse pair\)$/.exec(designation);
  if (inverse && quantity === "ratio") return lead(1, Number(inverse[1]), Number(inverse[2]));
  if (inverse && !designation.startsWith("120/127")) {
    return error(100 / 127, lead(1, Number(inverse[1]), Number(inverse[2])), 1e6);
  }
  // 63/80 cuts 125 ppm long: over 300 mm that is 0.0375.
  if (designation === "63/80 pair") return error(100 / 127, lead(1, 63, 80), 300);
  if (designation === "127-tooth wheel") return lead(25.4, 5, 1);
  if (designation.startsWith("3 mm lead, screw constant 6")) return 127 * (3 / lead(25.4 / 6, 1, 1));
  if (designation.startsWith("127/120 compound")) return lead(1, 1.5 * 8 * 5, 127);
  if (quantity.startsWith("train 36/48")) return 1 / lead(1 / 4, 48, 36, 18, 66);
  const dial = /^8-(?:mark|line) dial (\d) in\/rev, ([\d.]+) tpi$/.exec(designation);
  if (dial && quantity === "usable marks") return countMarks(Number(dial[1]), 8, Number(dial[2]));
  const half = /^8-mark dial, marks every 0\.5 in, ([\d.]+) tpi$/.exec(designation);
  if (half) return countMarks(4, 8, Number(half[1]));
  return undefined;
}

/** Rows that no function answers, with the reason; every row is compared or stands here. */
const others: readonly (readonly [(row: Row) => boolean, string])[] = [
  [
    (row) => row.quantity.endsWith("per chart") || row.designation.includes("(text)"),
    "a chart stricter than geometry: even threads on unnumbered lines only",
  ],
  [(row) => row.designation.startsWith("120/127"), "names a pair of an exact train, not a lead"],
  [(row) => row.quantity === "lead-screw wheel", "asks for one wheel of a pair"],
  [
    (row) => row.quantity.startsWith("carriage travel per dial turn"),
    "teeth over threads per inch; no function of its own",
  ],
];

for (const row of rows) {
  const value = computed(row);
  if (value === undefined) continue;
  test(`${row.id} agrees with its source (${row.source})`, () => {
    expect(Math.abs(value - row.value), `${value} against ${row.text}`).toBeLessThanOrEqual(
      row.tolerance + 1e-9,
    );
  });
}

test("every row is compared or stands among the others with a reason", () => {
  const unexplained = rows.filter((row) => computed(row) === undefined && !others.some(([is]) => is(row)));
  expect(unexplained.map((row) => row.id)).toEqual([]);
});
