/** Several commands as one step of the history. */
import type { Job } from "./job.ts";

/** As much of a job as a command needs that makes a document from a document. */
export type Draft = Pick<Job, "document" | "put">;

/** Runs commands on a draft of the job; what they leave is one step, called `what`. */
export function oneStep(job: Draft, what: string, run: (draft: Draft) => void): void {
  let { document } = job;
  run({
    get document() {
      return document;
    },
    put(next) {
      document = next;
    },
  });
  if (document !== job.document) job.put(document, what);
}
