/** A job of the page: reckoned in a worker. The engine is fetched to the page only where no worker can be had. */
import type { JobDocument } from "./document.ts";
import type { Job } from "./job.ts";
import type { Far, MakeNear } from "./job-values.ts";
import { startJob } from "./running.ts";
import type { Later } from "./whatif-slices.ts";

/**
 * @param later lets what-if tables be reckoned in slices where there is no worker
 * @param before values that were kept of this very document, to show until the worker has reckoned
 */
export function createFarJob(document: JobDocument, far: Far, later: Later, before?: unknown): Job {
  const near = async (): Promise<MakeNear> => (await import("./near.ts")).nearWith(later);
  return startJob(document, { far, near }, before);
}
