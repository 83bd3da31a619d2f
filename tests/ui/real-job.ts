/** A job that reckons, with one sheet named Tool, for tests of what the grid does to it. The scenario is invented. */
import type { JobDocument, SheetDocument } from "../../src/job/document.ts";
import { createJob, type Job } from "../../src/job/job.ts";
import { madeDocument, madeSheet } from "../job/made.ts";

export function realJob(
  cells: Record<string, string>,
  more: Partial<SheetDocument> = {},
  names: JobDocument["names"] = {},
): Job {
  const document = madeDocument([madeSheet("Tool", cells, more)], { title: "Spindle nose cap", names });
  return createJob(document, []);
}

/** The sheet as it stands. */
export function toolOf(job: Job): SheetDocument {
  return job.document.sheets[0]!;
}
