import type { SheetFunction } from "./declare.ts";

export const drawFunctions: readonly SheetFunction[] = [];
