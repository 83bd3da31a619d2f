import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { JobDocument, SheetDocument } from "../../src/job/document.ts";
import { mapReferences, renameIn } from "../../src/job/formula-text.ts";
import { createJob, type Job } from "../../src/job/job.ts";
import { type LineChange, lineAfter, linesAfter, spanAfter } from "../../src/job/lines.ts";
import { setFreeze, setHidden } from "../../src/job/lines-shown.ts";
import { setLocked } from "../../src/job/locks.ts";
import { sortRows, tableAround } from "../../src/job/sort.ts";
import { deleteLines, insertLines, moveBlock, moveLines } from "../../src/job/structure.ts";
import { madeDocument, madeSheet as sheet } from "./made.ts";

const jobOf = (sheets: SheetDocument[], more: Partial<JobDocument> = {}): Job =>
  createJob(madeDocument(sheets, more), [], (what, error) => {
    throw new Error(what, { cause: error });
  });

const cellsOf = (job: Job, at = 0) => job.document.sheets[at]!.cells;

describe("the numbers of lines", () => {
  const changes: fc.Arbitrary<LineChange> = fc
    .record({
      act: fc.constantFrom("insert", "delete", "move"),
      at: fc.nat(12),
      count: fc.integer({ min: 1, max: 4 }),
      to: fc.nat(16),
    })
    .map(({ act, at, count, to }) =>
      act === "move"
        ? { act, at, count, to: to > at && to < at + count ? at : to }
        : { act: act as "insert", at, count },
    );

  test("after a change are those of a list that is spliced the same way", () => {
    fc.assert(
      fc.property(changes, (change) => {
        const list: (number | undefined)[] = Array.from({ length: 24 }, (_, i) => i);
        if (change.act === "insert") list.splice(change.at, 0, ...Array<undefined>(change.count));
        const taken = change.act === "insert" ? [] : list.splice(change.at, change.count);
        if (change.act === "move")
          list.splice(change.to > change.at ? change.to - change.count : change.to, 0, ...taken);
        for (let line = 0; line < 24; line++) {
          const at = list.indexOf(line);
          expect(lineAfter(change, line)).toBe(at < 0 ? undefined : at);
        }
      }),
      { seed: 20261125 },
    );
  });

  test("of a span hold every line that was in it and stayed, and nothing that was not next to it", () => {
    fc.assert(
      fc.property(changes, fc.nat(14), fc.nat(6), (change, first, more) => {
        const lines = Array.from({ length: more + 1 }, (_, i) => lineAfter(change, first + i)).filter(
          (line) => line !== undefined,
        );
        const held = linesAfter(change, first, first + more).flatMap((run) =>
          Array.from({ length: run.last - run.first + 1 }, (_, i) => run.first + i),
        );
        for (const line of lines) expect(held).toContain(line);
        const span = spanAfter(change, first, first + more);
        if (lines.length === 0) expect(span).toBeUndefined();
        else expect(span!.first).toBeLessThanOrEqual(span!.last);
      }),
      { seed: 20261125 },
    );
  });
});

describe("references in the text of a formula", () => {
  const seen = (formula: string) => {
    const found: unknown[] = [];
    mapReferences(formula, (reference) => {
      found.push([reference.sheet, reference.first.row, reference.first.column, reference.last?.row]);
      return reference;
    });
    return found;
  };

  test("are cells, ranges, whole rows and columns, on a named sheet or none", () => {
    expect(seen("=A1+'My tool'!$B$2:C9*SUM(2:5)-SUM(D:D)")).toEqual([
      [undefined, 0, 0, undefined],
      ["My tool", 1, 1, 8],
      [undefined, 1, undefined, 4],
      [undefined, undefined, 3, undefined],
    ]);
  });

  test("are not functions, texts, names or plain numbers", () => {
    expect(seen('=LOG10(2)&"A1"&pitch&5')).toEqual([]);
  });

  test("follow a name that is renamed, but no function of the same letters", () => {
    expect(renameIn('=pitch*PITCH+pitch(2)&"pitch"', "pitch", "p_big")).toBe('=p_big*p_big+pitch(2)&"pitch"');
  });
});

describe("inserting rows and columns", () => {
  test("moves cells, and every reference, name, result, format, choice, note and check with them", () => {
    const job = jobOf(
      [
        sheet(
          "A",
          { A1: "1", A3: "3", B1: "=SUM(A1:A3)", B3: "=$A$3*2" },
          {
            result: "B3",
            formats: { A3: { bold: true }, "A1:A3": { places: 2 } },
            choices: { A3: ["3", "4"] },
            notes: { B3: "twice" },
            merged: ["C3:D3"],
            allowed: { A3: { most: 9 } },
          },
        ),
        sheet("B", { A1: "=A!A3", A2: "=A3" }),
      ],
      { names: { third: "A!A3" }, check: { "A!B3": { value: 6, source: "2 x 3" } } },
    );
    expect(insertLines(job, "A", "row", 1, 2)).toBeUndefined();
    const [a, b] = job.document.sheets;
    expect(a!.cells).toEqual({ A1: "1", A5: "3", B1: "=SUM(A1:A5)", B5: "=$A$5*2" });
    expect(a).toMatchObject({
      result: "B5",
      formats: { A5: { bold: true }, "A1:A5": { places: 2 } },
      choices: { A5: ["3", "4"] },
      notes: { B5: "twice" },
      merged: ["C5:D5"],
      allowed: { A5: { most: 9 } },
    });
    expect(b!.cells).toEqual({ A1: "=A!A5", A2: "=A3" });
    expect(job.document.names).toEqual({ third: "A!A5" });
    expect(Object.keys(job.document.check)).toEqual(["A!B5"]);
    expect(job.cell("A", 4, 1).value).toBe(6);
    expect(job.cell("B", 0, 0).value).toBe(3);
    expect(job.canUndo).toBe("Inserted rows 2 to 3 in A");
    job.undo();
    expect(cellsOf(job)).toEqual({ A1: "1", A3: "3", B1: "=SUM(A1:A3)", B3: "=$A$3*2" });
  });

  test("moves widths, hidden and frozen columns too", () => {
    const job = jobOf([
      sheet("A", { A1: "=C1", C1: "5" }, { columns: { C: 40 }, hidden: ["C:C", "4:4"], freeze: "B2" }),
    ]);
    insertLines(job, "A", "column", 0, 1);
    expect(job.document.sheets[0]).toMatchObject({
      cells: { B1: "=D1", D1: "5" },
      columns: { D: 40 },
      hidden: ["D:D", "4:4"],
      freeze: "C2",
    });
  });

  test("gives the new row the format that the rows on both sides share", () => {
    const job = jobOf([
      sheet(
        "A",
        {},
        { formats: { A1: { bold: true }, A2: { bold: true }, B1: { places: 1 }, B2: { places: 2 } } },
      ),
    ]);
    insertLines(job, "A", "row", 1, 1);
    expect(job.document.sheets[0]!.formats).toEqual({
      A1: { bold: true },
      A2: { bold: true },
      A3: { bold: true },
      B1: { places: 1 },
      B3: { places: 2 },
    });
  });

  test("is refused with a reason where the last cells would be past the largest sheet", () => {
    const job = jobOf([sheet("A", { A100000: "1" }, { rows: 100_000 })]);
    expect(insertLines(job, "A", "row", 0, 1)).toMatch(/a sheet may have 100000 rows/);
    expect(job.canUndo).toBeUndefined();
  });
});

describe("deleting rows and columns", () => {
  test("shrinks ranges, and a reference to what is gone says so", () => {
    const job = jobOf([sheet("A", { A1: "1", A2: "2", A3: "3", C1: "=SUM(A1:A3)", C3: "=A2+1" })], {
      names: { second: "A!A2", all: "A!A1:A3" },
    });
    deleteLines(job, "A", "row", 1, 1);
    expect(cellsOf(job)).toEqual({ A1: "1", A2: "3", C1: "=SUM(A1:A2)", C2: "=#REF!+1" });
    expect(job.document.names).toEqual({ all: "A!A1:A2" });
    expect(job.cell("A", 0, 2).value).toBe(4);
    expect(job.cell("A", 1, 2).value).toMatchObject({ error: "#REF!" });
  });

  test("lets the format that won before win still, where two ranges become the same", () => {
    const formats = { "A1:A2": { places: 1 }, "A1:A3": { places: 2, bold: true } };
    const job = jobOf([sheet("A", {}, { formats })]);
    deleteLines(job, "A", "row", 2, 1);
    expect(job.document.sheets[0]!.formats).toEqual({ "A1:A2": { places: 1, bold: true } });
  });

  test("leaves locked cells alone and says which", () => {
    const job = jobOf([sheet("A", { A2: "=1+1" })]);
    setLocked(job, "A", { top: 1, left: 0, bottom: 1, right: 0 }, true);
    expect(deleteLines(job, "A", "row", 1, 1)).toBe("A2 is locked: unlock it first");
    expect(cellsOf(job)).toEqual({ A2: "=1+1" });
  });
});

describe("moving rows and columns", () => {
  test("takes references along, and a range keeps the rows that change places within it", () => {
    const job = jobOf([sheet("A", { A1: "1", A2: "2", A3: "3", B1: "=A3", C1: "=SUM(A1:A3)" })]);
    expect(moveLines(job, "A", "row", 2, 1, 0)).toBeUndefined();
    expect(cellsOf(job)).toEqual({ A1: "3", A2: "1", A3: "2", B2: "=A1", C2: "=SUM(A1:A3)" });
    expect(job.cell("A", 1, 1).value).toBe(3);
  });

  test("tears no merged cells apart", () => {
    const job = jobOf([sheet("A", {}, { merged: ["A1:A2"] })]);
    expect(moveLines(job, "A", "row", 0, 1, 5)).toBe("the merged cells A1:A2 would be torn apart");
  });
});

describe("moving a block of cells", () => {
  test("takes references along, its own and those to it, and overwrites what stood there", () => {
    const job = jobOf([
      sheet(
        "A",
        { A1: "5", B1: "=A1+C1", C1: "1", D5: "old", E1: "=B1", F1: "=SUM(A1:B1)" },
        { notes: { A1: "n" } },
      ),
    ]);
    moveBlock(
      job,
      { sheet: "A", area: { top: 0, left: 0, bottom: 0, right: 1 } },
      { sheet: "A", row: 4, column: 2 },
    );
    expect(cellsOf(job)).toEqual({ C5: "5", D5: "=C5+C1", C1: "1", E1: "=D5", F1: "=SUM(C5:D5)" });
    expect(job.document.sheets[0]!.notes).toEqual({ C5: "n" });
    expect(job.cell("A", 4, 3).value).toBe(6);
  });

  test("goes to another sheet with its references named", () => {
    const job = jobOf([sheet("A", { A1: "=B1*2", B1: "4", C1: "=A1" }), sheet("My tool", { A1: "x" })], {
      names: { twice: "A!A1" },
    });
    moveBlock(
      job,
      { sheet: "A", area: { top: 0, left: 0, bottom: 0, right: 0 } },
      { sheet: "My tool", row: 0, column: 0 },
    );
    expect(cellsOf(job)).toEqual({ B1: "4", C1: "='My tool'!A1" });
    expect(cellsOf(job, 1)).toEqual({ A1: "=A!B1*2" });
    expect(job.document.names).toEqual({ twice: "'My tool'!A1" });
    expect(job.cell("A", 0, 2).value).toBe(8);
  });

  test("takes only its own part of a format that reaches further", () => {
    const job = jobOf([sheet("A", { A2: "1" }, { formats: { "A1:A3": { bold: true } } })]);
    moveBlock(
      job,
      { sheet: "A", area: { top: 1, left: 0, bottom: 1, right: 0 } },
      { sheet: "A", row: 1, column: 4 },
    );
    expect([0, 1, 2].map((row) => job.cell("A", row, 0).format.bold)).toEqual([true, undefined, true]);
    expect(job.cell("A", 1, 4).format.bold).toBe(true);
  });
});

describe("sorting a table", () => {
  const table = () =>
    jobOf([
      sheet(
        "A",
        {
          A1: "b",
          B1: "3",
          C1: "=B1*2",
          A2: "a",
          B2: "10",
          C2: "=B2*2",
          A4: "c",
          B4: "=1+1",
          C4: "=B4*2",
          E1: "=B1",
        },
        { formats: { A1: { bold: true } }, notes: { A4: "third" } },
      ),
    ]);
  const area = { top: 0, left: 0, bottom: 3, right: 2 };

  test("goes by values, takes formulas, formats and notes along, and puts empty rows last", () => {
    const job = table();
    expect(sortRows(job, "A", area, 1, "up")).toBeUndefined();
    expect(cellsOf(job)).toEqual({
      A1: "c",
      B1: "=1+1",
      C1: "=B1*2",
      A2: "b",
      B2: "3",
      C2: "=B2*2",
      A3: "a",
      B3: "10",
      C3: "=B3*2",
      E1: "=B1",
    });
    expect(job.document.sheets[0]).toMatchObject({ formats: { A2: { bold: true } }, notes: { A1: "third" } });
    sortRows(job, "A", area, 1, "down");
    expect([0, 1, 2, 3].map((row) => job.cell("A", row, 1).value)).toEqual([10, 3, 2, null]);
  });

  test("takes cells merged within a row along, and orders by what they show", () => {
    const job = jobOf([
      sheet(
        "A",
        { A1: "3", B1: "9", C1: "x", A2: "1", B2: "7", C2: "y", A3: "2", B3: "8", C3: "z" },
        { merged: ["A1:B1", "E1:E3"] },
      ),
    ]);
    // Column B of row 1 lies under A1, which shows 3: 3, 7, 8.
    expect(sortRows(job, "A", { top: 0, left: 0, bottom: 2, right: 2 }, 1, "down")).toBeUndefined();
    expect([0, 1, 2].map((row) => job.cell("A", row, 2).value)).toEqual(["z", "y", "x"]);
    expect(job.document.sheets[0]!.merged).toEqual(["A3:B3", "E1:E3"]);
    expect(job.cell("A", 2, 1).text).toBe("9");
    job.undo();
    expect(job.document.sheets[0]!.merged).toEqual(["A1:B1", "E1:E3"]);
  });

  test.each(["A1:A2", "C2:D2", "B2:B4"])("is refused where it would tear %s", (merged) => {
    const job = jobOf([sheet("A", { A1: "2", A2: "1", A3: "0", B2: "5" }, { merged: [merged] })]);
    expect(sortRows(job, "A", { top: 0, left: 0, bottom: 2, right: 2 }, 0, "up")).toContain(
      `${merged} is merged past one row or past the table, and sorting would tear it`,
    );
    expect(job.document.sheets[0]!.merged).toEqual([merged]);
    expect(job.cell("A", 0, 0).text).toBe("2");
  });

  test("is refused where a block function fills the cells", () => {
    const job = jobOf([sheet("A", { A1: "=SEQUENCE(3)" })]);
    expect(sortRows(job, "A", { top: 0, left: 0, bottom: 2, right: 0 }, 0, "down")).toBe(
      "A2 is filled by the formula in A1",
    );
  });

  test.each([
    ["=B1+1", "the row above"],
    ["=SUM(B$1:B2)", "a range that begins in a fixed row"],
    ["=E1*2", "a cell beside the table"],
    ["=Other!A9", "another sheet"],
  ])("is refused where %s reads %s", (formula) => {
    const job = jobOf([
      sheet("A", { A1: "2", B1: "5", A2: "1", B2: "6", A3: "3", B3: formula }),
      sheet("Other", {}),
    ]);
    expect(sortRows(job, "A", { top: 0, left: 0, bottom: 2, right: 1 }, 0, "up")).toBe(
      "B3 reads another row, and sorted it would read a different one: put $ before the row in its formula, or sort values only",
    );
    expect(cellsOf(job)).toMatchObject({ A1: "2", B3: formula });
    expect(job.canUndo).toBeUndefined();
  });

  test("takes formulas along that read their own row, fixed rows and whole columns", () => {
    const job = jobOf([
      sheet("A", { A1: "2", B1: "=A1*$E$1+E$2", A2: "1", B2: "=SUM(F:F)+A2", E1: "10", F9: "4" }),
    ]);
    expect(sortRows(job, "A", { top: 0, left: 0, bottom: 1, right: 1 }, 0, "up")).toBeUndefined();
    expect(cellsOf(job)).toMatchObject({ A1: "1", B1: "=SUM(F:F)+A1", A2: "2", B2: "=A2*$E$1+E$2" });
  });

  test("takes a first row of words over numbers for headings, and no other", () => {
    const around = (cells: Record<string, string>) => tableAround(jobOf([sheet("A", cells)]), "A", 2, 0);
    expect(around({ A1: "Feed", B1: "Mark", A2: "3", B2: "x", A3: "1", B3: "y" })).toMatchObject({ top: 1 });
    expect(around({ A1: "Feed", A2: "slow", A3: "quick" })).toMatchObject({ top: 0 });
    expect(around({ A1: "Feed", B1: "7", A2: "3", B2: "8", A3: "1", B3: "9" })).toMatchObject({ top: 0 });
  });

  test("finds the table around a cell, less the row of its headings", () => {
    const job = jobOf([
      sheet(
        "A",
        { A1: "Job", A3: "Pass", B3: "Depth", A4: "1", B4: "2", A5: "2", B5: "3" },
        { formats: { "A3:B3": { role: "column" } } },
      ),
    ]);
    expect(tableAround(job, "A", 4, 1)).toEqual({ top: 3, left: 0, bottom: 4, right: 1 });
  });
});

test("hiding and freezing are steps of their own, and hidden rows are named in runs", () => {
  const job = jobOf([sheet("A", {})]);
  setHidden(job, "A", "row", { first: 4, last: 6 }, true);
  setHidden(job, "A", "row", { first: 7, last: 7 }, true);
  setHidden(job, "A", "row", { first: 5, last: 5 }, false);
  expect(job.document.sheets[0]!.hidden).toEqual(["5:5", "7:8"]);
  setFreeze(job, "A", 1, 0);
  expect(job.document.sheets[0]!.freeze).toBe("A2");
  expect(job.steps).toHaveLength(4);
  for (let i = 0; i < 4; i++) job.undo();
  expect(job.document.sheets[0]).toEqual(sheet("A", {}));
});
