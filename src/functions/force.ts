import type { SheetFunction } from "./declare.ts";

export const forceFunctions: readonly SheetFunction[] = [];
