/** Values kept of an earlier time: shown at once, as values of before, and gone when newer ones have come. */
import { expect, test } from "vitest";
import { parseCell } from "../../src/engine/address.ts";
import { FarValues } from "../../src/engine/far-values.ts";
import { mostKnown } from "../../src/engine/known-values.ts";
import { mostInPacket, packed } from "../../src/engine/packets.ts";
import { emptySheet } from "../../src/job/changes.ts";
import type { JobDocument } from "../../src/job/document.ts";
import { createJob, type Job, type KnownValues } from "../../src/job/job.ts";
import { InProcess } from "../engine/in-process.ts";
import { madeDocument, madeSheet } from "./made.ts";

function jobOf(cells: Record<string, string>): JobDocument {
  return madeDocument([madeSheet("First", {}), madeSheet("One", cells)]);
}

const sums = jobOf({
  A1: "1",
  B1: "=A1*10",
  C1: "=IF(A1>0,'x')",
  D1: '="at "&B1',
  E1: "=A1>0",
  F1: "=1/0",
  A3: "=SEQUENCE(3,2)",
});

function open(document: JobDocument, before?: unknown) {
  const far = new InProcess();
  const job = createJob(document, undefined, () => {}, undefined, far.setting, before);
  return { job, far };
}

const view = (job: Job, cell: string) => {
  const { row, column } = parseCell(cell)!;
  return job.cell("One", row, column);
};

function allOf(job: Job): KnownValues | undefined {
  const steps = job.knownValues();
  if (!steps) return undefined;
  for (;;) {
    const step = steps.next();
    if (step.done) return structuredClone(step.value);
  }
}

function keptOf(document: JobDocument): KnownValues {
  const { job, far } = open(document);
  expect(job.knownValues()).toBeUndefined();
  far.settle();
  return allOf(job)!;
}

test("They show at once and as stale, and are replaced", () => {
  const { job, far } = open(sums, keptOf(sums));
  expect(view(job, "B1")).toMatchObject({ value: 10, stale: true });
  expect(view(job, "D1")).toMatchObject({ value: "at 10", stale: true });
  expect(view(job, "E1")).toMatchObject({ value: true, stale: true });
  expect(view(job, "B5")).toMatchObject({ value: 6, stale: true, spilledFrom: "A3" });
  // An error is nothing to go by.
  expect(view(job, "F1")).toMatchObject({ value: null, stale: true });
  far.settle();
  expect(view(job, "B1").stale).toBeUndefined();
  expect(view(job, "B5")).toMatchObject({ value: 6, spilledFrom: "A3" });
  expect(view(job, "F1").value).toMatchObject({ error: "#DIV/0!" });
});

test("Those of another job are shown as stale only, and nothing of them is left", () => {
  const other = jobOf({ A1: "5", B1: "=A1*7", D1: "=A1", A3: "=SEQUENCE(4,4)", Z9: "=1+1" });
  const { job, far } = open(sums, keptOf(other));
  expect(view(job, "B1")).toMatchObject({ value: 35, stale: true });
  const fresh = open(sums);
  far.settle();
  fresh.far.settle();
  for (const cell of ["B1", "C1", "D1", "E1", "F1", "A3", "B5", "D3", "A6", "Z9"])
    expect([cell, view(job, cell)]).toEqual([cell, view(fresh.job, cell)]);
  const none = open(jobOf({ A1: "1", B1: "=A1" }), keptOf(sums));
  none.far.settle();
  expect(view(none.job, "A4")).toMatchObject({ text: "", value: null });
  expect(view(none.job, "A4").spilledFrom).toBeUndefined();
});

test("Nothing is kept that waits for a newer value", () => {
  const { job, far } = open(sums);
  far.settle();
  job.setCells([{ sheet: "One", row: 0, column: 0, text: "2" }]);
  expect(job.knownValues()).toBeUndefined();
  far.settle();
  const { spots, numbers } = allOf(job)!.packets[0]!;
  expect(numbers[spots.indexOf(1)]).toBe(20);
});

test("Many come in parts: the first ones at once, the others soon, and no more than a limit", {
  timeout: 60_000,
}, () => {
  const cells: Record<string, string> = { A1: "1" };
  for (let row = 1; row <= 9000; row++) cells[`B${row}`] = `=$A$1*${row}`;
  cells.D1 = "=ARRAYFORMULA(B1:B9000*2)";
  const many = { ...jobOf(cells), sheets: [{ ...emptySheet("One"), rows: 9000, cells }] };
  const kept = keptOf(many);
  expect(kept.packets.map(({ spots }) => spots.length)).toEqual([
    mostInPacket,
    mostInPacket,
    18_000 - 2 * mostInPacket,
  ]);
  const { job, far } = open(many, kept);
  expect(view(job, "B1")).toMatchObject({ value: 1, stale: true });
  expect(view(job, "B9000")).toMatchObject({ value: null, stale: true });
  // The worker has not answered yet.
  far.rest();
  expect(view(job, "B9000")).toMatchObject({ value: 9000, stale: true });
  expect(view(job, "D9000")).toMatchObject({ value: 18_000, stale: true });
  far.settle();
  expect(view(job, "B9000")).toMatchObject({ value: 9000 });
  expect(view(job, "B9000").stale).toBeUndefined();
});

const good = () => packed(1, [{ row: 0, column: 1, value: 99 }]);
const area = { sheet: 1, top: 2, left: 0, bottom: 4, right: 1 };
const spoilt: readonly (readonly [string, unknown])[] = [
  ["nothing", null],
  ["words", "values"],
  ["no packets", { filled: [] }],
  ["a packet that is none", { packets: [null], filled: [] }],
  ["a sheet that is not there", { packets: [{ ...good(), sheet: 2 }], filled: [] }],
  ["plain lists", { packets: [{ ...good(), spots: [1], numbers: [99] }], filled: [] }],
  [
    "places and numbers that do not match",
    { packets: [{ ...good(), numbers: new Float64Array(2) }], filled: [] },
  ],
  ["a place outside", { packets: [{ ...good(), spots: Int32Array.of(100_000 * 1024 + 1) }], filled: [] }],
  ["a place before the first", { packets: [{ ...good(), spots: Int32Array.of(-1) }], filled: [] }],
  ["words that are missing", { packets: [{ ...good(), numbers: Float64Array.of(Number.NaN) }], filled: [] }],
  [
    "a value that is a thing",
    {
      packets: [
        { ...good(), numbers: Float64Array.of(Number.NaN), others: [{ error: "#X!", message: "x" }] },
      ],
      filled: [],
    },
  ],
  [
    "too many",
    {
      packets: Array.from({ length: mostKnown / mostInPacket + 2 }, () => ({
        ...good(),
        spots: new Int32Array(mostInPacket),
        numbers: new Float64Array(mostInPacket),
      })),
      filled: [],
    },
  ],
  ["an area upside down", { packets: [good()], filled: [{ ...area, bottom: 1 }] }],
  ["an area without end", { packets: [good()], filled: [{ ...area, bottom: Number.POSITIVE_INFINITY }] }],
  ["an area on no sheet", { packets: [good()], filled: [{ ...area, sheet: -1 }] }],
];

test.each(spoilt)("What is spoilt is let be: %s", (_, before) => {
  const { job, far } = open(sums, before);
  expect(view(job, "B1")).toMatchObject({ value: null, stale: true });
  far.settle();
  expect(view(job, "B1").value).toBe(10);
});

test("An area whose formula is none, and values in cells that are typed, do not show", () => {
  const before = { packets: [packed(1, [{ row: 0, column: 0, value: 99 }])], filled: [{ ...area, top: 0 }] };
  const { job } = open(sums, before);
  expect(view(job, "A1").value).toBe(1);
  expect(view(job, "A2")).toMatchObject({ text: "", value: null });
  // The same is taken where nothing is wrong with it.
  expect(view(open(sums, { packets: [good()], filled: [area] }).job, "B1").value).toBe(99);
});

test("What the worker has said nothing of by the end of its first turn is not known", () => {
  const values = new FarValues();
  values.load({ sheets: [{ name: "One", cells: { A1: "=1", B1: "=2" } }], names: {} });
  for (const _ of values.recall({ packets: [packed(0, [{ row: 0, column: 1, value: 99 }])], filled: [] }));
  const cell = { sheet: 0, row: 0, col: 1 };
  const report = { turn: 2, done: 1, of: 2, packets: [packed(0, [{ row: 0, column: 0, value: 1 }])] };
  values.take({ ...report, ended: false });
  expect(values.valueAt(cell)).toBe(99);
  values.take({ ...report, ended: true });
  expect(values.valueAt(cell)).toBeNull();
  expect(values.valueAt({ ...cell, col: 0 })).toBe(1);
});
