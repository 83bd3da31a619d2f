/** A job that nobody looks at, for what comes of it. */
import type { JobDocument } from "../job/document.ts";
import { createFarJob } from "../job/far-job.ts";
import type { Job } from "../job/job.ts";
import { far } from "./far-thread.ts";
import { later } from "./later.ts";
import { reckoned } from "./reckoned.ts";

/** The job with all its values; its worker is let go of. */
export async function reckonedJob(document: JobDocument): Promise<Job> {
  const job = createFarJob(document, far, later);
  await reckoned(job, Number.POSITIVE_INFINITY);
  job.close();
  return job;
}
