import type { SheetFunction } from "./declare.ts";

export const infeedFunctions: readonly SheetFunction[] = [];
