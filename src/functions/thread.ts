import type { SheetFunction } from "./declare.ts";

export const threadFunctions: readonly SheetFunction[] = [];
