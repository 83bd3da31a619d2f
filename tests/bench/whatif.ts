/**
 * What a what-if table costs: 50 x 40 values over the full thread job, against 2,000 single recalculations of the cells
 * that each value needs, in an engine that holds nothing else. And how long the page is kept from anything else when
 * the table is reckoned in slices.
 */
import { readFileSync } from "node:fs";
import { cellName, parseCell, splitSheet } from "../../src/engine/address.ts";
import { Engine } from "../../src/engine/engine.ts";
import type { CellValue, Place } from "../../src/engine/values.ts";
import { sheetFunctions } from "../../src/functions/index.ts";
import { readJob } from "../../src/job/file.ts";
import { createJob, type Job } from "../../src/job/job.ts";
import { planTable, type TableInput } from "../../src/job/whatif.ts";

const tableSheet = "Table";
const rows = 50;
const columns = 40;

interface Case {
  readonly result: string;
  readonly down: readonly [name: string, first: number, step: number];
  readonly across: readonly [name: string, first: number, step: number];
}

const cases: readonly Case[] = [
  { result: "speed_limit", down: ["surface_speed", 6, 0.5], across: ["runout", 2, 0.25] },
  { result: "wire_target", down: ["wire", 1, 0.005], across: ["target", 11.1, 0.005] },
  { result: "slide_to_wind", down: ["measured", 12.7, 0.01], across: ["back_off", 0.5, 0.05] },
];

const document = readJob(readFileSync("sheets/full-thread-job.json", "utf8"));

function placeOf(name: string): Place {
  const { sheet, rest } = splitSheet(document.names[name]!)!;
  return { sheet, ...parseCell(rest)! };
}

function inputOf([name, first, step]: Case["down"], count: number): TableInput {
  return { place: placeOf(name), values: { kind: "steps", first, step, count } };
}

/** The job, with an empty sheet for the table. */
function jobFor(later?: (work: () => void) => void): Job {
  const job = createJob(document, undefined, () => {}, later);
  job.addSheet(tableSheet);
  return job;
}

function plan(job: Job, { result, down, across }: Case) {
  const inputs = [inputOf(down, rows), inputOf(across, columns)];
  const made = planTable(job, {
    results: [placeOf(result)],
    inputs,
    at: { sheet: tableSheet, row: 0, column: 0 },
    over: false,
  });
  if ("problem" in made) throw new Error(made.problem);
  return made;
}

function tableIn(job: Job, sheet: string): CellValue[] {
  return Array.from(
    { length: rows * columns },
    (_, i) => job.cell(sheet, 2 + Math.floor(i / columns), 1 + (i % columns)).value,
  );
}

/** The cells that `result` needs, as they are typed, and nothing else; the inputs are typed in one after the other. */
async function singly({
  result,
  down,
  across,
}: Case): Promise<{ values: CellValue[]; time: number; cells: number }> {
  const job = createJob(document, undefined, () => {});
  const needed = [
    ...(await job.precedents(placeOf(result))),
    ...[down, across].map(([name]) => placeOf(name)),
  ];
  const sheets = document.sheets.map(({ name, cells }) => {
    const own = needed
      .filter((place) => place.sheet === name)
      .map(({ row, column }) => cellName(row, column));
    return {
      name,
      cells: Object.fromEntries(own.flatMap((cell) => (cells[cell] ? [[cell, cells[cell]]] : []))),
    };
  });
  const engine = new Engine({ sheets, names: document.names }, sheetFunctions, () => {});
  const at = placeOf(result);
  const values: CellValue[] = [];
  const start = performance.now();
  for (let row = 0; row < rows; row++) {
    for (let column = 0; column < columns; column++) {
      engine.setCells([
        { ...placeOf(down[0]), text: step(down, row) },
        { ...placeOf(across[0]), text: step(across, column) },
      ]);
      values.push(engine.value(at.sheet, at.row, at.column));
    }
  }
  return {
    values,
    time: performance.now() - start,
    cells: new Set(needed.map((place) => JSON.stringify(place))).size,
  };
}

function step([, first, by]: Case["down"], i: number): string {
  return String(Number((first + i * by).toPrecision(15)));
}

/** The time to write the table, its 2,000 formulas read and reckoned; and the time to reckon it anew after an edit. */
function atOnce(one: Case): { values: CellValue[]; writing: number; anew: number } {
  const job = jobFor();
  const { document: made, what, place } = plan(job, one);
  let start = performance.now();
  job.put(made, what);
  const writing = performance.now() - start;
  const at = placeOf(one.result);
  // The same formula, typed with a space: every value of the table is reckoned again.
  const text = `${job.cell(at.sheet, at.row, at.column).text} `;
  start = performance.now();
  job.setCells([{ ...at, text }]);
  const anew = performance.now() - start;
  return { values: tableIn(job, place.sheet), writing, anew };
}

function inSlices(one: Case): { values: CellValue[]; slices: number[] } {
  let work: (() => void) | undefined;
  const job = jobFor((next) => {
    work = next;
  });
  const { document: made, what, place } = plan(job, one);
  job.put(made, what);
  const slices: number[] = [];
  while (work) {
    const next = work;
    work = undefined;
    const start = performance.now();
    next();
    slices.push(performance.now() - start);
  }
  return { values: tableIn(job, place.sheet), slices };
}

/** Prints what each table costs. @param rounds how often; medians are printed */
export async function whatIfTimes(
  rounds: number,
  median: (times: readonly number[]) => number,
): Promise<void> {
  console.log(
    `\nwhat-if tables of ${rows} x ${columns} values over the full thread job, medians of ${rounds} rounds`,
  );
  for (const one of cases) {
    const single: number[] = [];
    const writing: number[] = [];
    const anew: number[] = [];
    let cells = 0;
    let slices: number[] = [];
    for (let round = 0; round < rounds; round++) {
      const direct = await singly(one);
      const made = atOnce(one);
      const sliced = inSlices(one);
      for (const values of [made.values, sliced.values])
        if (JSON.stringify(values) !== JSON.stringify(direct.values))
          throw new Error(`${one.result} differs`);
      single.push(direct.time);
      writing.push(made.writing);
      anew.push(made.anew);
      cells = direct.cells;
      slices = [...slices, ...sliced.slices].sort((a, b) => a - b);
    }
    const [base, time] = [median(single), median(anew)];
    console.log(
      `${one.result} by ${one.down[0]} and ${one.across[0]}, ${cells} cells needed: table ${time.toFixed(0)} ms,` +
        ` 2000 single recalculations ${base.toFixed(0)} ms, ratio ${(time / base).toFixed(2)}, to stay below 3;` +
        ` with the writing of its formulas ${median(writing).toFixed(0)} ms, ratio ${(median(writing) / base).toFixed(2)}`,
    );
    console.log(
      `    in slices: median ${median(slices).toFixed(1)} ms, 99 % within` +
        ` ${slices[Math.floor(slices.length * 0.99)]!.toFixed(1)} ms, longest ${slices.at(-1)!.toFixed(1)} ms`,
    );
  }
}
