/** A job that reckons, with one sheet named Tool, for tests of what the grid does to it. The scenario is invented. */
import type { JobDocument, SheetDocument } from "../../src/job/document.ts";
import { createJob, type Job } from "../../src/job/job.ts";

export function realJob(
  cells: Record<string, string>,
  more: Partial<SheetDocument> = {},
  names: JobDocument["names"] = {},
): Job {
  return createJob(
    {
      format: "halfangle job",
      version: 1,
      title: "Spindle nose cap",
      purpose: "",
      scenario: "Invented for a test",
      source: "none",
      cautions: [],
      names,
      sheets: [
        {
          name: "Tool",
          columns: {},
          rows: 200,
          columnCount: 26,
          cells,
          formats: {},
          choices: {},
          notes: {},
          merged: [],
          ...more,
        },
      ],
      check: {},
    },
    [],
  );
}

/** The sheet as it stands. */
export function toolOf(job: Job): SheetDocument {
  return job.document.sheets[0]!;
}
