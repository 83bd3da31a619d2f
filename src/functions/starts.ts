import type { SheetFunction } from "./declare.ts";

export const startFunctions: readonly SheetFunction[] = [];
