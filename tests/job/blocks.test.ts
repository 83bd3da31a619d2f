import { describe, expect, test } from "vitest";
import { allowedProblem, setAllowed } from "../../src/job/allowed.ts";
import { clearFormats, mergeCells, setChoices, setNote, splitCells } from "../../src/job/blocks.ts";
import type { JobDocument, SheetDocument } from "../../src/job/document.ts";
import { readJob, writeJob } from "../../src/job/file.ts";
import { fillEdits } from "../../src/job/fill.ts";
import { showValue } from "../../src/job/format.ts";
import { createJob } from "../../src/job/job.ts";
import { lockedCells, lockFormulas, lockReason, setLocked, unlockAll } from "../../src/job/locks.ts";
import { insertLines } from "../../src/job/structure.ts";
import { duplicateSheet, renameName, setTitle } from "../../src/job/whole-sheets.ts";
import { madeDocument, madeSheet } from "./made.ts";

const area = (top: number, left: number, bottom = top, right = left) => ({ top, left, bottom, right });

const jobOf = (
  cells: Record<string, string>,
  more: Partial<SheetDocument> = {},
  rest: Partial<JobDocument> = {},
) => createJob(madeDocument([madeSheet("A", cells, more)], rest), []);

describe("locked cells", () => {
  test("take no typing, and nothing of a larger step that reaches them is done", () => {
    const job = jobOf({ A1: "1", A2: "=A1*2" });
    lockFormulas(job, "A");
    expect(job.document.sheets[0]!.locked).toEqual(["A2"]);
    expect(job.cell("A", 1, 0).locked).toBe(true);
    const edits = [0, 1].map((row) => ({ sheet: "A", row, column: 0, text: "9" }));
    expect(job.setCells(edits)).toBe("A2 is locked: unlock it first");
    expect(job.cell("A", 0, 0).text).toBe("1");
    setLocked(job, "A", area(1, 0), false);
    expect(job.setCells(edits)).toBeUndefined();
    expect(job.cell("A", 1, 0).text).toBe("9");
  });

  test("are the formulas of a sheet, but never a blank that comes with a proposal", () => {
    const job = jobOf({ A1: "=1+1", A2: "=A1", B1: "=A1" }, { formats: { A2: { role: "input" } } });
    lockFormulas(job, "A");
    expect(job.document.sheets[0]!.locked).toEqual(["A1", "B1"]);
    unlockAll(job, "A");
    expect(job.document.sheets[0]!.locked).toBeUndefined();
    expect(job.canUndo).toBe("Unlocked A");
    job.undo();
    expect(job.document.sheets[0]!.locked).toEqual(["A1", "B1"]);
  });

  test("let rows in between that can be typed into", () => {
    const job = jobOf({ A1: "=1+1", A2: "=A1+1", A3: "=A2+1" }, { locked: ["A1:A3"] });
    insertLines(job, "A", "row", 1, 2);
    expect(job.document.sheets[0]!.locked).toEqual(["A1", "A4:A5"]);
    expect(job.setCells([{ sheet: "A", row: 2, column: 0, text: "7" }])).toBeUndefined();
    expect(job.setCells([{ sheet: "A", row: 3, column: 0, text: "7" }])).toMatch(/^A4 is locked/);
  });

  test("are named by the reason that refuses, and by no other", () => {
    expect(lockedCells(lockReason(3, 1))).toBe("B4");
    expect(lockedCells("B4:B7 is locked: unlock it first")).toBe("B4:B7");
    expect(lockedCells("the merged cells B4 would be torn apart")).toBeUndefined();
  });

  test("in the middle of a locked range can be freed alone", () => {
    const job = jobOf({});
    setLocked(job, "A", area(0, 0, 4, 0), true);
    setLocked(job, "A", area(2, 0), false);
    setLocked(job, "A", area(9, 3), true);
    expect([1, 2, 3].map((row) => job.cell("A", row, 0).locked)).toEqual([true, undefined, true]);
  });
});

describe("limits of an input", () => {
  test("keep a value outside as typed, with a caution that says so", () => {
    const job = jobOf({ A1: "7", A2: "12", A3: "2.5", A4: "x", A5: "5", A6: "10" });
    setAllowed(job, "A", area(0, 0, 5, 0), { least: 5, most: 10, whole: true });
    const cautions = [0, 1, 2, 3, 4, 5].map((row) => job.cell("A", row, 0).caution);
    expect(cautions).toEqual([
      undefined,
      "over the most allowed, 10",
      "under the least allowed, 5",
      "a number is wanted here",
      undefined,
      undefined,
    ]);
    expect(job.cell("A", 1, 0).value).toBe(12);
  });

  test("with a unit hold in millimetres and in inches", () => {
    const job = jobOf(
      { A1: "mm", B1: "0.1" },
      { formats: { B1: { as: "length" } } },
      { names: { unit: "A!A1" } },
    );
    setAllowed(job, "A", area(0, 1), { least: "0.2 mm" });
    expect(job.cell("A", 0, 1).caution).toBe("under the least allowed, 0.2 mm");
    job.setCells([{ sheet: "A", row: 0, column: 0, text: "in" }]);
    expect(job.cell("A", 0, 1).caution).toBeUndefined();
  });

  test("may be the listed words alone, and say it in words of their own", () => {
    const job = jobOf({ A1: "left", A2: "LEFT", A3: "up" });
    setChoices(job, "A", area(0, 0, 2, 0), ["left", "right"]);
    setAllowed(job, "A", area(0, 0, 2, 0), { listed: true });
    expect([0, 1, 2].map((row) => job.cell("A", row, 0).caution)).toEqual([
      undefined,
      undefined,
      "not one of left, right",
    ]);
    setAllowed(job, "A", area(2, 0), { listed: true, message: "a thread has two hands" });
    expect(job.cell("A", 2, 0).caution).toBe("a thread has two hands");
  });

  test("that make no sense are refused with a reason", () => {
    expect(allowedProblem({ least: 5, most: 1 })).toBe("the least, 5, is over the most, 1");
    expect(allowedProblem({ least: "a bit" })).toBe("a bit is no number and no quantity such as 0.2 mm");
    expect(allowedProblem({ least: "0.2 mm", most: 3 })).toBeUndefined();
  });
});

describe("merging, notes, choices and formats", () => {
  test("are single steps that undo takes back to the first byte", () => {
    const job = jobOf({ A1: "1" }, { formats: { "A1:B2": { bold: true } } });
    const start = writeJob(job.document);
    expect(mergeCells(job, "A", area(0, 0))).toBe("select two cells or more to merge them");
    mergeCells(job, "A", area(0, 0, 1, 1));
    mergeCells(job, "A", area(1, 1, 2, 2));
    expect(job.document.sheets[0]!.merged).toEqual(["B2:C3"]);
    splitCells(job, "A", area(0, 0, 5, 5));
    setNote(job, "A", 0, 0, " turned in two settings ");
    expect(job.cell("A", 0, 0).note).toBe("turned in two settings");
    setChoices(job, "A", area(0, 0, 0, 1), ["a", "b", "a", " "]);
    expect(job.cell("A", 0, 1).choices).toEqual(["a", "b"]);
    clearFormats(job, "A", area(0, 0));
    expect([0, 1].map((column) => job.cell("A", 0, column).format.bold)).toEqual([undefined, true]);
    expect(job.steps).toHaveLength(6);
    job.goToStep(0);
    expect(writeJob(job.document)).toBe(start);
    job.goToStep(6);
    expect(job.cell("A", 0, 0).note).toBe("turned in two settings");
  });
});

test("formats taken from a part leave every other cell as it was, also where two ranges come to be of one size", () => {
  const formats = {
    "A1:B1": { bold: true },
    "A1:D1": { shade: true },
    "A1:C1": { bold: false, italic: true },
    "A1:A1": { align: "right" },
  } as const;
  const job = jobOf({}, { formats });
  const before = job.cell("A", 0, 0).format;
  clearFormats(job, "A", area(0, 1, 0, 3));
  expect(job.cell("A", 0, 0).format).toEqual(before);
  expect([1, 2, 3].map((column) => job.cell("A", 0, column).format)).toEqual([{}, {}, {}]);
});

describe("filling", () => {
  const texts = (cells: Record<string, string>, from: ReturnType<typeof area>, to: ReturnType<typeof area>) =>
    fillEdits(jobOf(cells), "A", from, to).map(({ text }) => text);

  test("repeats a formula with its references moved", () => {
    expect(texts({ B1: "=A1*$C$1" }, area(0, 1), area(0, 1, 2, 1))).toEqual(["=A2*$C$1", "=A3*$C$1"]);
    expect(texts({ B1: "=A1" }, area(0, 1), area(0, 1, 0, 3))).toEqual(["=B1", "=C1"]);
  });

  test("repeats one number, and goes on with the step of two", () => {
    expect(texts({ A1: "5" }, area(0, 0), area(0, 0, 2, 0))).toEqual(["5", "5"]);
    expect(texts({ A1: "0.1", A2: "0.2" }, area(0, 0, 1, 0), area(0, 0, 4, 0))).toEqual([
      "0.3",
      "0.4",
      "0.5",
    ]);
    expect(texts({ A3: "3", A4: "2" }, area(2, 0, 3, 0), area(0, 0, 3, 0))).toEqual(["5", "4"]);
    expect(texts({ A1: "1", A2: "2", A3: "4" }, area(0, 0, 2, 0), area(0, 0, 4, 0))).toEqual(["1", "2"]);
  });
});

describe("whole sheets, the title and names", () => {
  test("a copy of a sheet points to its own cells, is not signed off, and stands after the first", () => {
    const job = jobOf({ A1: "2", B1: "=A!A1*A1" }, { signedOff: true, operation: 10 });
    expect(duplicateSheet(job, "A")).toBe("A 2");
    const copy = job.document.sheets[1]!;
    expect(copy.cells.B1).toBe("='A 2'!A1*A1");
    expect(copy.signedOff).toBeUndefined();
    expect(job.cell("A 2", 0, 1).value).toBe(4);
  });

  test("a renamed name is renamed in every formula", () => {
    const turns = { C1: { as: "turns", perTurn: "pitch" } } as const;
    const job = jobOf(
      { A1: "2", B1: "=pitch*2" },
      { formats: turns },
      { names: { pitch: "A!A1", depth: "A!B1" } },
    );
    expect(renameName(job, "pitch", "Depth")).toBe("there is a name depth already");
    expect(renameName(job, "pitch", "M10")).toMatch(/reads as a cell/);
    expect(renameName(job, "pitch", "lead")).toBeUndefined();
    expect(job.document.sheets[0]!.cells.B1).toBe("=lead*2");
    expect(job.document.sheets[0]!.formats.C1).toEqual({ as: "turns", perTurn: "lead" });
    expect(job.cell("A", 0, 1).value).toBe(4);
  });

  test("a job keeps a title", () => {
    const job = jobOf({});
    expect(setTitle(job, "  ")).toBe("a job has a title");
    expect(setTitle(job, "Stud")).toBeUndefined();
    expect(job.document.title).toBe("Stud");
  });
});

describe("new formats", () => {
  test("show divisions of a dial as turns, with the divisions named by a cell", () => {
    const show = (value: number, perTurn?: number) =>
      showValue(value, { as: "turns", ...(perTurn === undefined ? {} : { perTurn }) }).text;
    expect([52, 50, 7, 0, -62.5, 49.96].map((value) => show(value, 50))).toEqual([
      "1 turn + 2",
      "1 turn",
      "7",
      "0",
      "-1 turn + 12.5",
      "1 turn",
    ]);
    expect(show(52)).toBe("52");
    const job = jobOf(
      { A1: "40", B1: "92" },
      { formats: { B1: { as: "turns", perTurn: "per_turn" } } },
      { names: { per_turn: "A!A1" } },
    );
    expect(job.cell("A", 0, 1).format.perTurn).toBe(40);
  });

  test("show dates as ISO 8601 writes them", () => {
    // 2026-11-25 is day 46351: 126 years of 365 days and 31 leap days from 1900-01-01, which is day 2, and 328 days more.
    expect(showValue(2 + 126 * 365 + 31 + 328, { as: "date" }).text).toBe("2026-11-25");
    expect(showValue(-1, { as: "date" }).text).toBe("-1");
  });
});

test("what a sheet can hold is read and written back byte for byte", () => {
  const job = jobOf(
    { A1: "1" },
    {
      formats: {
        A1: { as: "turns", perTurn: "per_turn", italic: true, shade: true, border: ["top", "left"] },
      },
      locked: ["A1:A3"],
      allowed: { A1: { least: "0.2 mm", most: 5, message: "m" } },
      hidden: ["2:3", "C:D"],
      freeze: "B2",
    },
  );
  const text = writeJob(job.document);
  expect(writeJob(readJob(text))).toBe(text);
  expect(readJob(text).sheets).toEqual(job.document.sheets);
  expect(() => readJob(text.replace('"2:3"', '"3"'))).toThrow(
    "must be rows such as 5:7 or columns such as C:D",
  );
});
