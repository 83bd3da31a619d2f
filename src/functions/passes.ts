import type { SheetFunction } from "./declare.ts";

export const passFunctions: readonly SheetFunction[] = [];
