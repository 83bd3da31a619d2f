import type { SheetFunction } from "./declare.ts";
import { protractorFunctions } from "./protractor.ts";
import { taperThreadFunctions } from "./taper-thread.ts";

export const latheFunctions: readonly SheetFunction[] = [...protractorFunctions, ...taperThreadFunctions];
