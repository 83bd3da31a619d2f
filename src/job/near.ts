/** The engine for the page itself, in a file of the build of its own. */
import { sheetFunctions } from "../functions/index.ts";
import type { MakeNear } from "./job-values.ts";
import { OnThread } from "./on-thread.ts";
import type { Later } from "./whatif-slices.ts";

export function nearWith(later: Later): MakeNear {
  return (content, tell) => new OnThread(content, sheetFunctions, undefined, later, tell);
}
