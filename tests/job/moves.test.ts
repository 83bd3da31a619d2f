/** Values go where their cells go, at once, and newer ones come after them. */
import { describe, expect, test } from "vitest";
import { cellName } from "../../src/engine/address.ts";
import { isErrorValue } from "../../src/engine/values.ts";
import type { JobDocument } from "../../src/job/document.ts";
import { createJob, type Job } from "../../src/job/job.ts";
import { type LineChange, lineAfter, lineBefore } from "../../src/job/lines.ts";
import { inPlace, joined, linesMoved, reversed, rowsSorted, sheetRenamed } from "../../src/job/moves.ts";
import { sortRows } from "../../src/job/sort.ts";
import { deleteLines, insertLines, moveBlock, moveLines } from "../../src/job/structure.ts";
import { duplicateSheet, renameName } from "../../src/job/whole-sheets.ts";
import { InProcess } from "../engine/in-process.ts";
import { madeDocument, madeSheet } from "./made.ts";
import { randomFrom } from "./random-work.ts";

describe("lines", () => {
  const changes: LineChange[] = [
    { act: "insert", at: 3, count: 2 },
    { act: "delete", at: 0, count: 4 },
    { act: "move", at: 2, count: 3, to: 9 },
    { act: "move", at: 6, count: 2, to: 1 },
    { act: "move", at: 4, count: 1, to: 6 },
  ];
  test.each(changes)("have the number before that they had: $act $at", (change) => {
    for (let line = 0; line < 20; line++) {
      const after = lineAfter(change, line);
      if (after !== undefined) expect([line, lineBefore(change, after)]).toEqual([line, line]);
      const before = lineBefore(change, line);
      if (before !== undefined) expect([line, lineAfter(change, before)]).toEqual([line, line]);
    }
  });
});

test("Moves one after the other, and back, end where they began", () => {
  const rows = new Map([1, 2, 3].map((row, i) => [row, [3, 1, 2][i]!]));
  const all = [
    linesMoved("One", "row", { act: "insert", at: 2, count: 3 }),
    rowsSorted("One", { left: 0, right: 2 }, rows),
    sheetRenamed("One", "Two"),
    inPlace,
    linesMoved("Two", "column", { act: "move", at: 1, count: 1, to: 4 }),
  ].reduce(joined);
  for (let row = 0; row < 6; row++)
    for (let column = 0; column < 5; column++) {
      const there = all.to({ sheet: "One", row, column })!;
      expect(there.sheet).toBe("Two");
      expect(reversed(all).to(there)).toEqual({ sheet: "One", row, column });
    }
});

/** Every formula reads its own row only, so that a value stays what it is wherever its row goes. */
function rows(): JobDocument {
  const cells: Record<string, string> = {};
  for (let row = 1; row <= 24; row++) {
    cells[`A${row}`] = String((row * 37) % 101);
    cells[`B${row}`] = `=A${row}*1000+factor`;
    cells[`C${row}`] = `="of "&B${row}`;
    if (row % 6 === 0) cells[`E${row}`] = `=SEQUENCE(2,2)*${row}`;
  }
  return madeDocument([madeSheet("Base", { A1: "7", A2: "=A1*2" }), madeSheet("Rows", cells)], {
    names: { factor: "Base!A1" },
  });
}

type Act = (job: Job, random: () => number) => void;
const upTo = (random: () => number, most: number) => Math.floor(random() * most);
const sheetNow = (job: Job) => job.document.sheets[1]!.name;

const acts: Readonly<Record<string, Act>> = {
  insert: (job, random) =>
    insertLines(job, sheetNow(job), random() < 0.7 ? "row" : "column", upTo(random, 8), 1 + upTo(random, 3)),
  delete: (job, random) => deleteLines(job, sheetNow(job), "row", upTo(random, 20), 1 + upTo(random, 2)),
  move: (job, random) =>
    moveLines(job, sheetNow(job), random() < 0.7 ? "row" : "column", upTo(random, 8), 2, upTo(random, 16)),
  sort: (job) => sortRows(job, sheetNow(job), { top: 0, left: 0, bottom: 4, right: 2 }, 0, "down"),
  block: (job, random) =>
    moveBlock(
      job,
      { sheet: sheetNow(job), area: { top: upTo(random, 10), left: 0, bottom: 12, right: 3 } },
      { sheet: sheetNow(job), row: 60 + upTo(random, 20), column: upTo(random, 3) },
    ),
  "rename sheet": (job, random) => job.renameSheet(sheetNow(job), `Rows ${2 + upTo(random, 90)}`),
  "rename name": (job, random) =>
    renameName(job, Object.keys(job.document.names)[0]!, `factor_${upTo(random, 90)}`),
  copy: (job) => duplicateSheet(job, sheetNow(job)),
  undo: (job) => job.undo(),
  redo: (job) => job.redo(),
  "go to": (job, random) => job.goToStep(upTo(random, job.steps.length + 1)),
};

/** What may bring back cells that were gone, or that were an error. */
const back = ["delete", "undo", "redo", "go to"];

/** What differs of the cells, as far as a value is known on the thread that is no error. */
function differing(near: Job, far: Job, andStale: boolean): string[] {
  return near.document.sheets.flatMap(({ name, cells }) => {
    const found: string[] = [];
    for (let row = 0; row < 100; row++)
      for (let column = 0; column < 14; column++) {
        const wanted = near.cell(name, row, column);
        if (isErrorValue(wanted.value) || (wanted.text === "" && wanted.spilledFrom === undefined)) continue;
        // A formula that has lost what it reads keeps its last value until it is known.
        const got = far.cell(name, row, column);
        const same = got.value === wanted.value && got.spilledFrom === wanted.spilledFrom;
        if (!same || (andStale && got.stale))
          found.push(
            `${name} ${cellName(row, column)} ${cells[cellName(row, column)]}: ${JSON.stringify(got)} for ${JSON.stringify(wanted.value)}`,
          );
      }
    return found;
  });
}

test.each([1, 2, 3, 4])(
  "Values move along with their cells, and are replaced: seed %i",
  { timeout: 120_000 },
  (seed) => {
    const far = new InProcess();
    const near = createJob(rows(), undefined, () => {});
    const job = createJob(rows(), undefined, () => {}, undefined, far.setting);
    far.settle();
    const random = randomFrom(20261128 + seed);
    const names = Object.keys(acts);
    let settled = true;
    const shown = new Set<string>();
    for (let round = 0; round < 40; round++) {
      const which = names[upTo(random, names.length)]!;
      const own = 1 + upTo(random, 1e9);
      for (const one of [near, job]) acts[which]!(one, randomFrom(own));
      expect(job.document).toEqual(near.document);
      const before = differing(near, job, false);
      // What was deleted, or was an error, and comes back is not known yet.
      const wrong = before.filter(
        (text) => !(back.includes(which) || !settled) || !text.includes('"value":null'),
      );
      expect([which, wrong]).toEqual([which, []]);
      if (before.length === 0) shown.add(which);
      settled = random() < 0.6;
      if (settled) {
        far.settle();
        expect([which, differing(near, job, true)]).toEqual([which, []]);
      }
    }
    expect(shown.size).toBeGreaterThan(8);
  },
);

test("What a cell knew is not shown in the cell that stands there now", () => {
  const far = new InProcess();
  const job = createJob(rows(), undefined, () => {}, undefined, far.setting);
  far.settle();
  job.setCells([{ sheet: "Rows", row: 0, column: 0, text: "1" }]);
  far.work();
  // The batch for B1 is on its way when a row is put in above it: it must not land in what stands in row 1 then.
  insertLines(job, "Rows", "row", 0, 1);
  job.setCells([{ sheet: "Rows", row: 0, column: 1, text: "=1+1" }]);
  far.read();
  expect(job.cell("Rows", 0, 1)).toMatchObject({ value: null, stale: true });
  far.settle();
  expect([job.cell("Rows", 0, 1).value, job.cell("Rows", 1, 1).value]).toEqual([2, 1007]);
});
