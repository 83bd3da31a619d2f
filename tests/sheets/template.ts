/** A template with some of its blanks filled in, and what its named cells show. */
import { readFileSync } from "node:fs";
import { parseRange, splitSheet } from "../../src/engine/address.ts";
import { readJob } from "../../src/job/file.ts";
import { type CellEdit, createJob, type Job } from "../../src/job/job.ts";
import { put, unlock, valueAt } from "./read.ts";

/**
 * @returns a function that opens the template and types into named cells; `over` names formulas that another value is
 *   typed over
 */
export function template(name: string) {
  const text = readFileSync(`sheets/${name}.json`, "utf8");
  return (inputs: Readonly<Record<string, string>> = {}, ...over: readonly string[]): Job => {
    const job = createJob(readJob(text));
    unlock(job, ...over);
    put(
      job,
      Object.entries(inputs).flatMap(([cell, typed]) => editsOf(job, cell, [typed])),
    );
    return job;
  };
}

/** Types into a named cell, or down the whole of a named column from its top. */
export function type(job: Job, name: string, ...typed: readonly string[]): void {
  put(job, editsOf(job, name, typed));
}

function editsOf(job: Job, name: string, typed: readonly string[]): CellEdit[] {
  const { sheet, rest } = splitSheet(job.document.names[name]!)!;
  const { top, bottom, left } = parseRange(rest)!;
  const down = typed.length === 1 ? 1 : bottom - top + 1;
  return Array.from({ length: down }, (_, i) => ({
    sheet,
    row: top + i,
    column: left,
    text: typed[i] ?? "",
  }));
}

export const number = (job: Job, name: string) => valueAt(job, name) as number;
