import { expect, test } from "vitest";
import { type Found, findIn, mostFound, replacements, type Wish } from "../../src/job/find.ts";
import type { Job } from "../../src/job/job.ts";
import { setLocked } from "../../src/job/locks.ts";
import { realJob } from "../ui/real-job.ts";

/** All slices, one after the other. */
function look(job: Job, wish: Wish): Found & { readonly slices: number } {
  const slices = findIn(job, wish);
  for (let count = 1; ; count++) {
    const { done, value } = slices.next();
    if (done) return { ...value, slices: count };
  }
}

const findCells = (job: Job, wish: Wish) => look(job, wish).places;

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

test("a large sheet is looked through in slices, and very many finds are cut off", () => {
  const rows = mostFound / 10 + 1;
  const many = Array.from({ length: rows }, (_, row) => row + 1);
  const texts = many.flatMap((row) => [..."ABCDEFGHIJ"].map((column) => [`${column}${row}`, "7"]));
  const job = realJob(Object.fromEntries([...texts, [`C${rows}`, "last"]]));
  const last = look(job, { text: "LAST", values: true });
  expect(names(last.places)).toEqual([[rows - 1, 2]]);
  // As many cells as that take more than 30 slices.
  expect(last.slices).toBeGreaterThan(30);
  expect(look(job, { text: "7", values: false })).toMatchObject({ all: false });
  expect(look(job, { text: "7", values: false }).places).toHaveLength(mostFound);
  expect(look(job, { text: "absent", values: true })).toMatchObject({ places: [], all: true });
});
