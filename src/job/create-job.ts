/** A job with the engine at hand: on this thread, or beside it where a worker is given. */
import type { Log } from "../engine/engine.ts";
import type { SheetFunction } from "../functions/declare.ts";
import { sheetFunctions } from "../functions/index.ts";
import type { JobDocument } from "./document.ts";
import type { Job } from "./job.ts";
import type { Far, MakeNear } from "./job-values.ts";
import { OnThread } from "./on-thread.ts";
import { startJob } from "./running.ts";
import type { Later } from "./whatif-slices.ts";

/**
 * @param functions what cells may call besides the engine's own functions
 * @param later lets what-if tables be reckoned in slices; without it they are reckoned with every edit
 * @param far how the job gets a worker; without it it is reckoned on this thread
 * @param before values that were kept of this very document, to show until a worker has reckoned
 */
export function createJob(
  document: JobDocument,
  functions: readonly SheetFunction[] = sheetFunctions,
  log?: Log,
  later?: Later,
  far?: Far,
  before?: unknown,
): Job {
  const near: MakeNear = (content, tell) => new OnThread(content, functions, log, later, tell);
  return startJob(document, far ? { far, near: () => near } : { near }, before);
}
