import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { cellName, parseCell } from "../../src/engine/address.ts";
import type { JobDocument, SheetDocument } from "../../src/job/document.ts";
import { readJob, writeJob } from "../../src/job/file.ts";
import { formatOf } from "../../src/job/formats.ts";
import { createJob } from "../../src/job/job.ts";
import { isLocked, lockFormulas } from "../../src/job/locks.ts";
import { deleteLines, insertLines } from "../../src/job/structure.ts";
import { faults, valueAt } from "./read.ts";

const templates = readdirSync("sheets").map((file) => ({
  file,
  text: readFileSync(`sheets/${file}`, "utf8"),
}));

describe.each(templates)("sheets/$file", ({ text }) => {
  test("is canonical text", () => {
    expect(writeJob(readJob(text))).toBe(text);
  });

  test("shows no error as shipped", () => {
    expect(faults(createJob(readJob(text)))).toEqual([]);
  });

  test("holds its check values, each with a source", () => {
    const document = readJob(text);
    const job = createJob(document);
    expect(Object.keys(document.check).length).toBeGreaterThan(0);
    for (const [place, check] of Object.entries(document.check)) {
      expect(check.source).not.toBe("");
      const value = valueAt(job, place);
      if (typeof check.value === "number") {
        expect(Math.abs((value as number) - check.value), place).toBeLessThanOrEqual(check.within ?? 1e-9);
      } else expect(value, place).toBe(check.value);
    }
  });

  // Locks are against slips of the hand: whatever is there to be filled in stays free.
  test("has every formula locked and every blank free", () => {
    const document = readJob(text);
    const job = createJob(document);
    for (const { name, locked } of document.sheets) {
      lockFormulas(job, name);
      expect(sheetOf(job.document, name).locked, name).toEqual(locked);
    }
    for (const sheet of document.sheets) {
      let formulas = 0;
      for (let row = 0; row < 130; row++) {
        for (let column = 0; column < 20; column++) {
          const blank = formatOf(sheet, row, column).role === "input";
          const formula = (sheet.cells[cellName(row, column)] ?? "").startsWith("=");
          if (formula && !blank) formulas++;
          expect(isLocked(sheet, row, column), `${sheet.name}!${cellName(row, column)}`).toBe(
            formula && !blank,
          );
        }
      }
      if (sheet.name !== "Cautions") expect(formulas, sheet.name).toBeGreaterThan(0);
    }
  });

  test("takes whatever is typed into its blanks, and undoes it", () => {
    const document = readJob(text);
    const job = createJob(document);
    const edits = document.sheets.flatMap((sheet) =>
      Object.keys(sheet.cells).flatMap((key) => {
        const { row, column } = parseCell(key)!;
        const blank = formatOf(sheet, row, column).role === "input";
        return blank ? [{ sheet: sheet.name, row, column, text: sheet.choices[key]?.at(-1) ?? "1" }] : [];
      }),
    );
    expect(edits.length).toBeGreaterThan(3);
    expect(job.setCells(edits)).toBeUndefined();
    job.undo();
    expect(job.document).toBe(document);
  });

  test("is signed off, given rows and sheets, and copied, with its locks", () => {
    const job = createJob(readJob(text));
    const [{ name }] = job.document.sheets as [SheetDocument];
    job.signOff(name, true);
    expect(sheetOf(job.document, name).signedOff).toBe(true);
    expect(insertLines(job, name, "row", 3, 2)).toBeUndefined();
    const put = job.setCells([0, 1, 2].map((column) => ({ sheet: name, row: 3, column, text: "mine" })));
    expect(put).toBeUndefined();
    expect(faults(job)).toEqual([]);
    expect(deleteLines(job, name, "row", 3, 2)).toBeUndefined();
    expect(sheetOf(job.document, name).locked?.length).toBeGreaterThan(0);
    expect(writeJob(readJob(writeJob(job.document)))).toBe(writeJob(job.document));
  });
});

const sheetOf = (document: JobDocument, name: string) => document.sheets.find((each) => each.name === name)!;
