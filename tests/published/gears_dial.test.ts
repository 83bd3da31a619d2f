// Change-gear and thread-indicator figures of tests/published/gears_dial.csv; each row names its own source.
import { expect, test } from "vitest";
import { engagementTravel, travelPerTurn, usableMarks } from "../../src/lathe/engage.ts";
import { bestTrain } from "../../src/lathe/gear-search.ts";
import { leadCut, leadError, type Train } from "../../src/lathe/gears.ts";
import { publishedRows, type Row } from "./rows.ts";

const rows = publishedRows("gears_dial");

/** A box with a gear of 127 teeth: 20 to 120 by fives. */
const box = [...Array.from({ length: 21 }, (_, i) => 20 + 5 * i), 127];
/** 100/127 is what stands for 1/1.27. */
const inverse = leadCut(1, [[100, 127]]);

const pairOf = (text: string): Train => {
  const [, driver, driven] = /(\d+)\/(\d+)/.exec(text)!;
  return [[Number(driver), Number(driven)]];
};
const millionths = (wanted: number, cut: number) => leadError(wanted, cut, 1) * 1e6;

function ofGears({ designation, quantity }: Row): number | undefined {
  const metric = /^([\d.]+) mm pitch, (\d+) tpi lead screw$/.exec(designation);
  if (metric) return leadCut(1, bestTrain(Number(metric[1]), 25.4 / Number(metric[2]), box));
  if (designation === "127-tooth wheel") return engagementTravel(1, 25.4);
  if (designation.startsWith("3 mm lead, screw constant 6"))
    return bestTrain(3, 25.4 / 6, box).find(([, driven]) => driven === 127)![0];
  if (designation.endsWith("for 1.27")) return millionths(1.27, leadCut(1, pairOf(designation)));
  if (designation.endsWith("(inverse pair)")) {
    const cut = leadCut(1, pairOf(designation));
    if (quantity === "ratio") return cut;
    // 120/127 stands in a train with 60/120: 1.5 mm from 8 per inch.
    const own = leadCut(3.175, [[60, 120], ...pairOf(designation)]);
    return designation.startsWith("120") ? millionths(1.5, own) : millionths(inverse, cut);
  }
  if (designation === "63/80 pair") return leadError(inverse, leadCut(1, [[63, 80]]), 300);
  if (designation.startsWith("127/120 compound")) {
    return leadCut(1, [
      [60, 120],
      [120, 127],
    ]);
  }
  if (designation.startsWith("11 tpi")) {
    const train: Train = [
      [48, 36],
      [18, 66],
    ];
    return 1 / leadCut(1 / 4, train);
  }
  if (designation.startsWith("5 tpi from 2 tpi"))
    return box.find((wheel) => leadError(1 / 5, leadCut(1 / 2, [[40, wheel]])) === 0);
  return undefined;
}

/** Marks of a dial that may be used, for a wheel of so many teeth on a leadscrew of so many threads per inch. */
function ofDial({ designation, source }: Row): number | undefined {
  const wheel = /^(\d+) tpi lead screw, (\d+)-tooth dial wheel$/.exec(designation);
  if (wheel) return travelPerTurn(1 / Number(wheel[1]), Number(wheel[2]));
  const perInch = Number(/([\d.]+) tpi$/.exec(designation)?.[1]);
  const marks = (tpi: number, screw: number, teeth: number) =>
    usableMarks(1 / tpi, 1 / screw, teeth, 8).usable.length;
  if (designation.startsWith("8-mark dial 1 in/rev")) return marks(perInch, 16, 16);
  if (designation.startsWith("8-mark dial 2 in/rev")) return marks(perInch, 8, 16);
  if (source.includes("24-tooth wheel")) {
    // "Even": any of them.
    return Math.min(...[2, 10, 14, 22, 36].map((even) => marks(even, 6, 24)));
  }
  if (/^8-(line dial 4 in\/rev|mark dial, marks every 0.5 in)/.test(designation))
    return marks(perInch, 8, 32);
  return undefined;
}

const computed = (row: Row) => ofGears(row) ?? ofDial(row);

for (const row of rows) {
  const value = computed(row);
  if (value === undefined) continue;
  test(`${row.id} agrees with its source (${row.source})`, () => {
    expect(
      Math.abs(Math.abs(value) - Math.abs(row.value)),
      `${value} against ${row.text}`,
    ).toBeLessThanOrEqual(row.tolerance + 1e-9);
    // A printed size carries no sign; a relative error does.
    if (row.unit === "ppm") expect(Math.sign(Math.round(value))).toBe(Math.sign(row.value));
  });
}

test("every published row is compared", () => {
  expect(rows.filter((row) => computed(row) === undefined).map(({ id }) => id)).toEqual([]);
});
