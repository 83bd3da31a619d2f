import type { SheetFunction } from "./declare.ts";

export const setoverFunctions: readonly SheetFunction[] = [];
