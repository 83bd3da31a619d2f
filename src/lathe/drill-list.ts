/**
 * Stock drills: number and letter drills after ASME B94.11M, fractions of an inch by 64ths, and metric sizes as shops
 * stock them (common practice after the steps of ISO 235, from memory).
 *
 * Number and letter sizes are held against printed tables in the tests, but for those listed as remembered below.
 */
import { convertLength, type LengthUnit } from "../thread/thread.ts";

export type Series = "metric" | "number" | "letter" | "fraction";

export interface Drill {
  /** As a person asks for it, and as drillSize reads it back. */
  readonly name: string;
  readonly series: Series;
  readonly size: number;
  readonly unit: LengthUnit;
  /** The size is from memory: no printed table was at hand. */
  readonly remembered?: true;
}

/** Ten-thousandths of an inch, No. 1 first. */
const NUMBERS = [
  2280, 2210, 2130, 2090, 2055, 2040, 2010, 1990, 1960, 1935, 1910, 1890, 1850, 1820, 1800, 1770, 1730, 1695,
  1660, 1610, 1590, 1570, 1540, 1520, 1495, 1470, 1440, 1405, 1360, 1285, 1200, 1160, 1130, 1110, 1100, 1065,
  1040, 1015, 995, 980, 960, 935, 890, 860, 820, 810, 785, 760, 730, 700, 670, 635, 595, 550, 520, 465, 430,
  420, 410, 400, 390, 380, 370, 360, 350, 330, 320, 310, 292, 280, 260, 250, 240, 225, 210, 200, 180, 160,
  145, 135,
] as const;

/** Thousandths of an inch, A first. */
const LETTERS = [
  234, 238, 242, 246, 250, 257, 261, 266, 272, 277, 281, 290, 295, 302, 316, 323, 332, 339, 348, 358, 368,
  377, 386, 397, 404, 413,
] as const;

/** Sizes that no printed table at hand confirms. */
const REMEMBERED: ReadonlySet<string> = new Set(["No. 13", "No. 28"]);

/** Hundredths of a millimetre: from, to, step. Quarters are stocked among the tenths for tapping. */
const METRIC = [
  [30, 300, 5],
  [310, 1400, 10],
  [325, 1375, 50],
  [1425, 3200, 25],
  [3250, 5000, 50],
] as const;

/** @returns 5/16 for 20 of 64 */
function sixtyFourths(count: number): string {
  let [top, bottom] = [count, 64];
  while (top % 2 === 0 && bottom > 1) [top, bottom] = [top / 2, bottom / 2];
  return bottom === 1 ? `${top} in` : `${top}/${bottom}`;
}

function metricSizes(): readonly number[] {
  const hundredths = METRIC.flatMap(([from, to, step]) =>
    Array.from({ length: Math.round((to - from) / step) + 1 }, (_, i) => from + i * step),
  );
  return hundredths.sort((a, b) => a - b).map((size) => size / 100);
}

/** Every stock drill. Of drills of one size the series that comes first here is named. */
export const stockDrills: readonly Drill[] = [
  ...metricSizes().map((size): Drill => ({ name: `${size} mm`, series: "metric", size, unit: "mm" })),
  ...Array.from(
    { length: 64 },
    (_, i): Drill => ({ name: sixtyFourths(i + 1), series: "fraction", size: (i + 1) / 64, unit: "in" }),
  ),
  ...NUMBERS.map(
    (size, i): Drill => ({ name: `No. ${i + 1}`, series: "number", size: size / 10_000, unit: "in" }),
  ),
  ...LETTERS.map(
    (size, i): Drill => ({
      name: String.fromCharCode("A".charCodeAt(0) + i),
      series: "letter",
      size: size / 1000,
      unit: "in",
    }),
  ),
].map((drill) => (REMEMBERED.has(drill.name) ? { ...drill, remembered: true } : drill));

/** Its diameter in the unit asked for. */
export function sizeIn(drill: Drill, unit: LengthUnit): number {
  return convertLength(drill.size, drill.unit, unit);
}
