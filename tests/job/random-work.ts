/** Every command of the job, in an order that nobody would think of. */
import { cellName, placeName } from "../../src/engine/address.ts";
import { setAllowed } from "../../src/job/allowed.ts";
import type { Area } from "../../src/job/areas.ts";
import { clearFormats, mergeCells, setChoices, setNote, splitCells } from "../../src/job/blocks.ts";
import { looksOf, withLooks } from "../../src/job/carry.ts";
import type { CellFormat, JobDocument } from "../../src/job/document.ts";
import { fillEdits } from "../../src/job/fill.ts";
import type { Job } from "../../src/job/job.ts";
import type { Axis } from "../../src/job/lines.ts";
import { setFreeze, setHidden } from "../../src/job/lines-shown.ts";
import { lockFormulas, setLocked } from "../../src/job/locks.ts";
import { rangeName } from "../../src/job/references.ts";
import { sortRows } from "../../src/job/sort.ts";
import { deleteLines, insertLines, moveBlock, moveLines } from "../../src/job/structure.ts";
import { duplicateSheet, renameName, setTitle } from "../../src/job/whole-sheets.ts";

/** How many steps a test takes. */
export const steps = 2000;
/** The part of every sheet in which things happen. */
export const rows = 12;
export const columns = 7;

/** A generator of numbers below 1 that anyone can repeat: mulberry32. */
export function randomFrom(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
}

/** Where the work begins. */
export const first: JobDocument = {
  format: "halfangle job",
  version: 1,
  title: "Random work",
  purpose: "",
  scenario: "Invented for a test",
  source: "",
  cautions: [],
  names: { unit: "One!A1", pitch: "One!B2", table: "One!A3:C6" },
  sheets: ["One", "Second sheet"].map((name) => ({
    name,
    columns: { A: 120 },
    rows: 200,
    columnCount: 26,
    cells: {
      A1: "mm",
      B2: "1.5",
      A3: "3",
      B3: "1/2 in",
      C3: "=A3*pitch",
      A4: "1",
      C4: "=SUM(A3:B4)",
      D5: "=SUM(table)",
    },
    formats: { "A3:C6": { places: 2 }, B3: { as: "length" } },
    choices: {},
    notes: {},
    merged: [],
  })),
  check: { "One!C3": { value: 4.5, source: "3 x 1.5" } },
  kept: { from: "a later version" },
};

/** Does one command of the job, whichever chance asks for. */
export function worker(job: Job, random: () => number) {
  const below = (count: number) => Math.floor(random() * count);
  const one = <T>(list: readonly T[]): T => list[below(list.length)]!;
  const sheet = () => one(job.document.sheets).name;
  const spot = () => ({ sheet: sheet(), row: below(rows), column: below(columns) });
  const area = (): Area => {
    const { row, column } = spot();
    return { top: row, left: column, bottom: row + below(3), right: column + below(3) };
  };
  const axis = (): Axis => one(["row", "column"]);
  const reference = () => {
    const on = random() < 0.3 ? placeName({ ...spot(), row: 0, column: 0 }).replace(/A1$/, "") : "";
    const dollar = () => (random() < 0.2 ? "$" : "");
    const { row, column } = spot();
    const [letters, digits] = /^([A-Z]+)(\d+)$/.exec(cellName(row, column))!.slice(1);
    return `${on}${dollar()}${letters}${dollar()}${digits}`;
  };
  const text = () =>
    one([
      () => String(below(100) / 4),
      () => String(below(9)),
      () => `=${reference()}+${reference()}*2`,
      () => `=SUM(${rangeName(area())})`,
      () => `=IF(${reference()}>5,${reference()},"low")`,
      () => `=pitch*${reference()}`,
      () => "=COUNT(table)",
      () => "=SEQUENCE(2,2)",
      () => `${below(20)} mm`,
      () => `${1 + below(7)}/8 in`,
      () => "word",
      () => "",
      () => "=1+",
    ])();
  const format = (): CellFormat =>
    one([
      { as: "length" },
      { as: "text" },
      { bold: true },
      { as: "angle", places: 1 },
      { role: "input" },
    ] as const);
  const count = () => 1 + below(2);
  const acts: readonly (() => unknown)[] = [
    () => job.setCells([{ ...spot(), text: text() }]),
    () => job.setCells([{ ...spot(), text: text() }]),
    () => job.setCells(Array.from({ length: 4 }, () => ({ ...spot(), text: text() }))),
    () => job.setCells([{ sheet: job.document.sheets[0]!.name, row: 0, column: 0, text: one(["mm", "in"]) }]),
    () => insertLines(job, sheet(), axis(), below(rows), count()),
    () => deleteLines(job, sheet(), axis(), below(rows), count()),
    () => moveLines(job, sheet(), axis(), below(columns), count(), below(columns)),
    () => moveBlock(job, { sheet: sheet(), area: area() }, spot()),
    () => {
      const block = area();
      return sortRows(job, sheet(), block, block.left, one(["up", "down"] as const));
    },
    () => {
      const from = area();
      const to = one([
        { ...from, bottom: from.bottom + 2 },
        { ...from, right: from.right + 2 },
      ]);
      const on = sheet();
      const looks = job.document.sheets.find(({ name }) => name === on)!;
      const first = { row: from.top, column: from.left };
      job.setCells(fillEdits(job, on, from, to), "Filled", (document) =>
        withLooks(document, on, to, { looks, area: from, first }, "filled"),
      );
    },
    () => {
      const [from, goal] = [area(), area()];
      const [looks, to] = [one(job.document.sheets), sheet()];
      const edits = [{ sheet: to, row: goal.top, column: goal.left, text: text() }];
      const first = { row: goal.top, column: goal.left };
      job.setCells(edits, "Pasted", (document) =>
        withLooks(document, to, goal, { looks: looksOf(looks), area: from, first }, "copied"),
      );
    },
    () =>
      job.setName(
        one(["pitch", "table", "lead"]),
        `${placeName({ ...spot(), row: 0, column: 0 }).replace(/A1$/, "")}${rangeName(area())}`,
      ),
    () =>
      renameName(job, one(Object.keys(job.document.names).concat("none")), one(["pitch", "lead", "depth"])),
    () => job.removeName(one(["lead", "depth"])),
    () => job.setFormat(sheet(), rangeName(area()), format()),
    () => clearFormats(job, sheet(), area()),
    () => mergeCells(job, sheet(), area()),
    () => splitCells(job, sheet(), area()),
    () => setNote(job, sheet(), below(rows), below(columns), one(["", "a remark"])),
    () => setChoices(job, sheet(), area(), one([[], ["left", "right"]])),
    () => setAllowed(job, sheet(), area(), one([undefined, { least: "1 mm", most: 9 }])),
    () => setHidden(job, sheet(), axis(), { first: below(rows), last: rows }, random() < 0.5),
    () => setFreeze(job, sheet(), below(2), below(2)),
    () => (random() < 0.3 ? lockFormulas(job, sheet()) : setLocked(job, sheet(), area(), true)),
    () => setLocked(job, sheet(), { top: 0, left: 0, bottom: 300, right: 60 }, false),
    () => job.setColumnWidth(sheet(), below(columns), 40 + below(200)),
    () =>
      job.document.sheets.length < 4
        ? duplicateSheet(job, sheet())
        : job.removeSheet(job.document.sheets.at(-1)!.name),
    () => job.moveSheet(job.document.sheets.at(-1)!.name, 1),
    () => job.renameSheet(sheet(), one(["Bore", "My blank", "Stud"])),
    () => job.signOff(sheet(), random() < 0.5),
    () => setTitle(job, one(["Stud", "Nut"])),
    () => job.undo(),
    () => job.undo(),
    () => job.redo(),
    // Back by many steps now and then, so that all of them stay within what the history keeps.
    () => job.goToStep(job.stepsDone - below(16)),
    () => job.goToStep(job.stepsDone + below(9)),
  ];
  return () => one(acts)();
}
