/** A very large job is kept in parts of its text: together the file, and one edit changes one of them. */
import { expect, test } from "vitest";
import { PackedCells, packedOf } from "../../src/engine/packed-cells.ts";
import { withCells } from "../../src/job/changes.ts";
import { writeJob } from "../../src/job/file.ts";
import { isSamePart, partsOf, type TextPart } from "../../src/job/file-parts.ts";
import { createJob } from "../../src/job/job.ts";
import { fromSlabs, inSlabs, slabsIn } from "../../src/job/large-cells.ts";
import { sortRows } from "../../src/job/sort.ts";
import { deleteLines, insertLines, moveBlock, moveLines } from "../../src/job/structure.ts";
import { InProcess } from "../engine/in-process.ts";
import { madeDocument, madeSheet } from "./made.ts";

const rows = 12_800;
const cells: Record<string, string> = {};
for (let row = 1; row <= rows; row++) {
  cells[`A${row}`] = String(row / 8);
  cells[`B${row}`] = row % 9 === 0 ? 'a "b"\n\\' : `=A${row}*2`;
}
const slabs = inSlabs(cells);
const packed = fromSlabs(
  slabsIn(slabs).map((slab, i) => (i % 3 === 0 ? slab : new PackedCells(packedOf(slab as never)!))),
);
const few = madeSheet("Few", { A1: "1" });
const documents = [slabs, packed].map((large) =>
  madeDocument([few, madeSheet("Many", large, { rows }), few, madeSheet("More", large, { rows })], {
    title: 'Many "cells"',
  }),
);

const textOf = (parts: readonly TextPart[]) => parts.map((part) => part.text()).join("");

test.each(["slabs", "packed ones too"])("The parts are the text of the file: %s", (kind) => {
  const document = documents[kind === "slabs" ? 0 : 1]!;
  const parts = partsOf(document)!;
  expect(parts.length).toBeGreaterThan(20);
  expect(textOf(parts) === writeJob(document)).toBe(true);
  expect(writeJob(document) === writeJob(documents[0]!)).toBe(true);
});

test("A job that is not so large has none", () => {
  expect(partsOf(madeDocument([few]))).toBeUndefined();
});

test("An edit changes one part, and another title the first one", () => {
  const document = documents[1]!;
  const before = partsOf(document)!;
  const changed = (after: readonly TextPart[]) =>
    after.flatMap((part, i) => (isSamePart(part, before[i]) ? [] : [i]));
  expect(changed(partsOf(document)!)).toEqual([]);
  const edited = withCells(document, [{ sheet: "Many", row: 5000, column: 0, text: "typed" }]);
  const after = partsOf(edited)!;
  // Row 5001 is in slab 79 of 64 rows, and that in the fifth part of 16 slabs after the one before the cells.
  expect(changed(after)).toEqual([5]);
  expect(textOf(after) === writeJob(edited)).toBe(true);
  expect(textOf(after)).toContain('"A5001": "typed"');
  expect(changed(partsOf({ ...document, title: "Other" })!)).toEqual([0]);
});

test("What goes through every cell is refused above 300,000 of them, and nothing is changed", () => {
  const sheets = Array.from({ length: 12 }, (_, i) => madeSheet(`Many ${i}`, packed, { rows }));
  const job = createJob(
    { ...documents[1]!, sheets },
    undefined,
    () => {},
    undefined,
    new InProcess().setting,
  );
  const reason = /a job of 307,200 cells has too many for that: 300,000 at most$/;
  const from = { sheet: "Many 0", area: { top: 0, left: 0, bottom: 1, right: 1 } };
  expect(insertLines(job, "Many 0", "row", 3, 1)).toMatch(reason);
  expect(deleteLines(job, "Many 0", "row", 3, 1)).toMatch(reason);
  expect(moveLines(job, "Many 0", "row", 3, 1, 9)).toMatch(reason);
  expect(moveBlock(job, from, { sheet: "Many 0", row: 9, column: 5 })).toMatch(reason);
  expect(sortRows(job, "Many 0", from.area, 0, "down")).toMatch(reason);
  expect(job.renameSheet("Many 0", "Other")).toMatch(reason);
  expect(job.canUndo).toBeUndefined();
});
