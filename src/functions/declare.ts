/**
 * One declaration per sheet function: name, arguments, failures, examples and source are written here once, and
 * engine, completion, help, reference page and tests all read it.
 */
import type { Figure } from "../lathe/figure.ts";

/** What an argument is measured in. "length" is whatever one unit the sheet uses: the same in as out. */
export type Unit =
  | "length"
  | "length2"
  | "mm"
  | "in"
  | "deg"
  | "per inch"
  | "rev/min"
  | "m/min or ft/min"
  | "s"
  | "teeth"
  | "divisions"
  | "%"
  | "ratio"
  | "N"
  | "GPa";

export interface Param {
  /** As help and error messages show it: a word, or words joined by underscores. */
  readonly name: string;
  /**
   * "numbers" takes a range (or one cell, or an inline array) and gets the numbers in it, blanks left out. "cell" takes
   * a cell itself and not its value.
   */
  readonly type: "number" | "text" | "numbers" | "cell";
  readonly unit?: Unit;
  /** One line: what it is, and what is accepted. */
  readonly doc: string;
  /** The words accepted, matched without regard to case and handed on in this spelling; the first is the default
   *  unless the argument is required. */
  readonly options?: readonly string[];
  /** Value used when the argument is left out. */
  readonly fallback?: number | string;
  /** May be left out without a fixed default: `compute` then gets undefined. `doc` says what happens. */
  readonly optional?: true;
}

export type Scalar = number | string | boolean;

/** A value that is computed but doubtful: the sheet shows the note beside the plain value. */
export interface Noted {
  readonly value: number | string;
  readonly note: string;
}

/** A note that begins so is no doubt about the value: it says what was taken where nothing was given. */
export const nothingGiven = "no class given";

/** A value that is a drawing: as text it is a short description, and what it shows goes beside it. */
export interface Drawn {
  readonly value: string;
  readonly figure: Figure;
  readonly note?: string;
}

/** Rows of a block function. Every row has the same number of columns; "" is an empty place. */
export type Block = readonly (readonly Scalar[])[];

export type Result = number | string | Noted | Drawn | Block;

/** What an argument arrives as. */
export type Given = number | string | readonly number[] | undefined;

export interface Failure {
  readonly when: string;
  readonly formula: string;
  readonly gives: "#NUM!" | "#VALUE!" | "#N/A";
  /** Words that the message must hold. */
  readonly says?: string;
}

export interface Example {
  readonly formula: string;
  /** Expected result; for a block, its first row or the whole of it. */
  readonly value: number | string;
  /** Largest difference allowed; default half a unit of the seventh significant digit. */
  readonly within?: number;
  /** Where the expected value comes from, when it is not the source of the function. */
  readonly source?: string;
}

export interface SheetFunction {
  readonly name: string;
  /** Job step that the function guide files it under. */
  readonly family:
    | "thread"
    | "form"
    | "set-over"
    | "infeed"
    | "passes"
    | "dial"
    | "measure"
    | "gears"
    | "half nuts"
    | "starts"
    | "speed"
    | "hole"
    | "tool"
    | "taper"
    | "force"
    | "uncertainty"
    | "drawing"
    | "what if"
    | "units";
  /** One line that completion shows. */
  readonly summary: string;
  readonly params: readonly Param[];
  readonly returns: {
    readonly type: "number" | "text" | "block" | "drawing";
    readonly unit?: Unit;
    readonly doc: string;
  };
  readonly failures: readonly Failure[];
  readonly examples: readonly Example[];
  /** Standard or handbook, or "common practice, no source", or "geometry". */
  readonly source: string;
  /** "in the engine" where the values of the arguments are not enough: it needs the cells behind them. */
  readonly compute: ((...args: never[]) => Result) | "in the engine";
}

/** A function that is reckoned from the values of its arguments alone. */
export type PlainFunction = SheetFunction & { readonly compute: (...args: never[]) => Result };

type ValueOf<P extends Param> = P["type"] extends "numbers"
  ? readonly number[]
  : P["type"] extends "number"
    ? number
    : P extends { readonly options: infer O extends readonly string[] }
      ? O[number]
      : string;

type Values<P extends readonly Param[]> = {
  [K in keyof P]: P[K] extends { readonly optional: true } ? ValueOf<P[K]> | undefined : ValueOf<P[K]>;
};

/** Does nothing at run time; when compiling it ties `compute` to `params`. */
export function declare<const P extends readonly Param[]>(
  fn: Omit<SheetFunction, "params" | "compute"> & {
    readonly params: P;
    readonly compute: (...args: Values<P>) => Result;
  },
): SheetFunction {
  return fn as unknown as SheetFunction;
}

/** `NAME(required, [optional])`, as help, completion and reference show it. */
export function signature(fn: SheetFunction): string {
  return `${fn.name}(${fn.params.map((p) => (isRequired(p) ? p.name : `[${p.name}]`)).join(", ")})`;
}

/** True when leaving the argument out is an error. */
export function isRequired(param: Param): boolean {
  return param.fallback === undefined && param.optional !== true;
}
