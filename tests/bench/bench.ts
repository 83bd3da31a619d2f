/**
 * What reckoning in the sheet costs, as ratios within one run: 1,000 infeed strategies of 40 passes each, all depending
 * on one cell, against the same loops in plain code and against the engine's own arithmetic on as many cells; and the
 * reading of designations against additions.
 *
 * Milliseconds depend on the machine; the ratios are what to compare. Variants take turns, medians are printed.
 */
import { columnName } from "../../src/engine/address.ts";
import { Engine } from "../../src/engine/engine.ts";
import { sheetFunctions } from "../../src/functions/index.ts";
import { grooveOf } from "../../src/lathe/chip-area.ts";
import { depthAfter } from "../../src/lathe/passes.ts";
import { gearTimes } from "./gears.ts";
import { infeedTimes } from "./infeed.ts";
import { measureTimes } from "./measure.ts";
import { readingCount, readingTimes } from "./reading.ts";
import { whatIfTimes } from "./whatif.ts";

const strategies = 1000;
const passes = 40;
const rounds = 7;
const cells = strategies * passes;

/** Column A holds the depths, row 1 the pass numbers from B on; the nose that all depend on is in A1. */
function sheetOf(formula: (row: number, column: string) => string): Record<string, string> {
  const sheet: Record<string, string> = { A1: "0.1" };
  for (let pass = 1; pass <= passes; pass++) sheet[`${columnName(pass)}1`] = String(pass);
  for (let row = 2; row < strategies + 2; row++) {
    sheet[`A${row}`] = String(0.5 + row / 1000);
    for (let pass = 1; pass <= passes; pass++) {
      const column = columnName(pass);
      sheet[`${column}${row}`] = formula(row, column);
    }
  }
  return sheet;
}

function arraySheet(): Record<string, string> {
  const last = columnName(passes);
  return {
    ...sheetOf(() => ""),
    B2: `=ARRAYFORMULA(PASS.DEPTH(A2:A${strategies + 1},B1:${last}1,${passes},"area",60,A1))`,
  };
}

interface Variant {
  readonly name: string;
  readonly times: number[];
  /** Reckons all cells with this nose, and gives the last one. */
  readonly run: (nose: number) => unknown;
}

function inEngine(name: string, sheet: Record<string, string>): Variant {
  const filled = Object.fromEntries(Object.entries(sheet).filter(([, text]) => text !== ""));
  const start = performance.now();
  const engine = new Engine({ sheets: [{ name: "Plan", cells: filled }], names: {} }, sheetFunctions);
  console.log(`built: ${name}, ${(performance.now() - start).toFixed(0)} ms`);
  return {
    name,
    times: [],
    run(nose) {
      engine.setCells([{ sheet: "Plan", row: 0, column: 0, text: String(nose) }]);
      return engine.value("Plan", strategies, passes);
    },
  };
}

const plain: Variant = {
  name: "the same loops in plain code",
  times: [],
  run(nose) {
    const groove = grooveOf(60, nose);
    let last = 0;
    for (let row = 2; row < strategies + 2; row++) {
      const depth = 0.5 + row / 1000;
      for (let pass = 1; pass <= passes; pass++) last = depthAfter(depth, pass, passes, "area", groove);
    }
    return last;
  },
};

const variants: readonly Variant[] = [
  plain,
  inEngine(
    "the engine's own arithmetic, a formula a cell",
    sheetOf((row, column) => `=$A${row}*SQRT(${column}$1/${passes})-$A$1`),
  ),
  inEngine(
    "PASS.DEPTH, a formula a cell",
    sheetOf((row, column) => `=PASS.DEPTH($A${row},${column}$1,${passes},"area",60,$A$1)`),
  ),
  inEngine("PASS.DEPTH, one array formula", arraySheet()),
];

for (let round = 0; round < rounds; round++) {
  const nose = 0.1 + round / 100;
  const results = variants.map((variant) => {
    const start = performance.now();
    const result = variant.run(nose);
    variant.times.push(performance.now() - start);
    return result;
  });
  // A measurement of something that was not reckoned is worth nothing.
  if (results[2] !== results[0] || results[3] !== results[0])
    throw new Error(`results differ: ${results.join(", ")}`);
}

const median = (times: readonly number[]): number =>
  [...times].sort((a, b) => a - b)[Math.floor(times.length / 2)]!;
const [base, arithmetic] = [median(variants[0]!.times), median(variants[1]!.times)];
console.log(`\n${strategies} strategies x ${passes} passes = ${cells} cells, medians of ${rounds} rounds`);
for (const { name, times } of variants) {
  const time = median(times);
  console.log(
    `${name.padEnd(50)} ${time.toFixed(1).padStart(8)} ms ${((time / cells) * 1000).toFixed(3).padStart(8)} us a cell` +
      ` ${(time / base).toFixed(1).padStart(7)} x plain code ${(time / arithmetic).toFixed(2).padStart(6)} x arithmetic`,
  );
}

const { additions, readings } = readingTimes(rounds);
const [adding, reading] = [median(additions), median(readings)];
console.log(
  `\n${readingCount} designations, none read before: ${reading.toFixed(1)} ms; as many additions of two cells in the engine:` +
    ` ${adding.toFixed(1)} ms; ratio ${(reading / adding).toFixed(2)}, to stay below 5`,
);

await whatIfTimes(3, median);

gearTimes(15, median);

measureTimes(101, median);

infeedTimes(9, median);
