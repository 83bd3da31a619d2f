/** Reads a running job as the tests of the templates need it. */
import { cellName, parseRange, splitSheet } from "../../src/engine/address.ts";
import { type CellValue, isErrorValue } from "../../src/engine/values.ts";
import type { CellEdit, Job } from "../../src/job/job.ts";
import { setLocked } from "../../src/job/locks.ts";

/** Every cell that is an error, as `Sheet!A1: message`. */
export function faults(job: Job): string[] {
  const found: string[] = [];
  for (const sheet of job.document.sheets) {
    for (let row = 0; row < 100; row++) {
      for (let column = 0; column < 12; column++) {
        const { value } = job.cell(sheet.name, row, column);
        if (isErrorValue(value))
          found.push(`${sheet.name}!${cellName(row, column)}: ${value.error} ${value.message}`);
      }
    }
  }
  return found;
}

/** Value of a named cell, or of `Sheet!A1`. */
export function valueAt(job: Job, place: string): CellValue {
  const named = job.document.names[place] ?? place;
  const { sheet, rest } = splitSheet(named)!;
  const { top, left } = parseRange(rest)!;
  return job.cell(sheet, top, left).value;
}

/** Types as a person does: a locked cell fails the test. */
export function put(job: Job, edits: readonly CellEdit[]): void {
  const refused = job.setCells(edits);
  if (refused !== undefined) throw new Error(refused);
}

/** Frees named cells that hold a formula, as the cell menu does, so that another value can be typed there. */
export function unlock(job: Job, ...names: readonly string[]): void {
  for (const name of names) {
    const { sheet, rest } = splitSheet(job.document.names[name]!)!;
    setLocked(job, sheet, parseRange(rest)!, false);
  }
}
