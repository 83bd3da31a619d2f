import type { SheetFunction } from "./declare.ts";

export const speedFunctions: readonly SheetFunction[] = [];
