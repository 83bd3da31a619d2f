import type { SheetFunction } from "./declare.ts";

export const engageFunctions: readonly SheetFunction[] = [];
