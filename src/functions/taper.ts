import type { SheetFunction } from "./declare.ts";

export const taperFunctions: readonly SheetFunction[] = [];
