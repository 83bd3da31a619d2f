import type { SheetFunction } from "./declare.ts";

export const wireMethodFunctions: readonly SheetFunction[] = [];
