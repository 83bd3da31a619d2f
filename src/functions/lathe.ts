import type { SheetFunction } from "./declare.ts";

export const latheFunctions: readonly SheetFunction[] = [];
