import type { SheetFunction } from "./declare.ts";

export const grooveFunctions: readonly SheetFunction[] = [];
