import type { SheetFunction } from "./declare.ts";

export const strategyFunctions: readonly SheetFunction[] = [];
