import type { SheetFunction } from "./declare.ts";

export const uncertaintyFunctions: readonly SheetFunction[] = [];
