import type { SheetFunction } from "./declare.ts";

export const drillFunctions: readonly SheetFunction[] = [];
