import type { SheetFunction } from "./declare.ts";

export const gearFunctions: readonly SheetFunction[] = [];
