import type { SheetFunction } from "./declare.ts";

export const dialFunctions: readonly SheetFunction[] = [];
