import type { SheetFunction } from "./declare.ts";

export const formFunctions: readonly SheetFunction[] = [];
