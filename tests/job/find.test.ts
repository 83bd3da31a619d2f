import { expect, test } from "vitest";
import { findCells, replacements } from "../../src/job/find.ts";
import { setLocked } from "../../src/job/locks.ts";
import { realJob } from "../ui/real-job.ts";

const cells = { A1: "Depth", B1: "=A3*2", A2: "depth of depth", A3: "21", B3: "x" };
const names = (found: readonly { row: number; column: number }[]) =>
  found.map(({ row, column }) => [row, column]);

test("words are found in reading order whatever their capitals, in what is typed and in what shows", () => {
  const job = realJob(cells);
  expect(names(findCells(job, { text: "DEPTH", values: true }))).toEqual([
    [0, 0],
    [1, 0],
  ]);
  expect(names(findCells(job, { text: "42", values: true }))).toEqual([[0, 1]]);
  expect(findCells(job, { text: "42", values: false })).toEqual([]);
  expect(findCells(job, { text: "", values: true })).toEqual([]);
  expect(findCells(job, { text: "depth", values: true, sheet: "Other" })).toEqual([]);
});

test("every place of a cell is replaced, the rest of its text stays, and locked cells are left out", () => {
  const job = realJob(cells);
  const found = findCells(job, { text: "depth", values: true });
  expect(replacements(job, found, "depth", "infeed").map(({ text }) => text)).toEqual([
    "infeed",
    "infeed of infeed",
  ]);
  setLocked(job, "Tool", { top: 0, left: 0, bottom: 0, right: 0 }, true);
  expect(replacements(job, found, "depth", "").map(({ text }) => text)).toEqual([" of "]);
  const shown = findCells(job, { text: "42", values: true });
  expect(replacements(job, shown, "42", "43")).toEqual([]);
});
