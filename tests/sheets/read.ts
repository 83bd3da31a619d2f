/** Reads a running job as the tests of the templates need it. */
import { cellName, parseRange, splitSheet } from "../../src/engine/address.ts";
import { type CellValue, isErrorValue } from "../../src/engine/values.ts";
import type { Job } from "../../src/job/job.ts";

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
