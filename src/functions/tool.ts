import type { SheetFunction } from "./declare.ts";

export const toolFunctions: readonly SheetFunction[] = [];
