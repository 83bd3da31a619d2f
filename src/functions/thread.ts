/** THREAD.*: everything that a designation says about a thread. */
import type { SheetFunction } from "./declare.ts";
import { threadMatch } from "./threadmatch.ts";
import { threadSizes } from "./threadsizes.ts";
import { threadWork } from "./threadwork.ts";

export const threadFunctions: readonly SheetFunction[] = [...threadSizes, ...threadWork, ...threadMatch];
