/** Calls a declared function as a sheet would: by name, with what is left out filled in from its declaration. */
import type { Noted, Result, SheetFunction } from "../../src/functions/declare.ts";

export function caller(functions: readonly SheetFunction[]) {
  return (name: string, ...given: readonly (number | string | readonly number[] | undefined)[]): Result => {
    const fn = functions.find((candidate) => candidate.name === name);
    if (!fn) throw new Error(`no function ${name}`);
    const compute = fn.compute as unknown as (...args: readonly unknown[]) => Result;
    return compute(...fn.params.map((param, i) => given[i] ?? param.fallback));
  };
}

/** The plain value and the note of a result. */
export function parted(result: Result): { value: Result; note: string } {
  return typeof result === "object" && "note" in result ? (result as Noted) : { value: result, note: "" };
}
