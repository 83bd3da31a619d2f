import type { SheetFunction } from "./declare.ts";

export const measureFunctions: readonly SheetFunction[] = [];
