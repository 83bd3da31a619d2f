import type { SheetFunction } from "./declare.ts";

export const unitFunctions: readonly SheetFunction[] = [];
