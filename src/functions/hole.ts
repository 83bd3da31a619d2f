import type { SheetFunction } from "./declare.ts";

export const holeFunctions: readonly SheetFunction[] = [];
