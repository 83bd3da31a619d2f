/**
 * Makes one plugin of the declared functions, for any copy of the engine: its classes come from the caller, since
 * `instanceof` and the engine's registry hold within one copy only.
 *
 * Nothing leaves a function but a plain value, an error with a message, or a block that fits the cells reserved for
 * it: a thrown exception, undefined, NaN or a block larger than announced leaves the engine unusable.
 */
import type * as Engine from "hyperformula";
import type {
  Block,
  Drawn,
  Given,
  Noted,
  PlainFunction,
  Scalar,
  SheetFunction,
} from "../functions/declare.ts";
import { NothingFound, Unreadable } from "../thread/failures.ts";
import { type Kit, leftOut, type Reader, Refused, readersOf, tooMany } from "./arguments.ts";
import { engineError, multipleOperations, type Tabulating } from "./multiple-operations.ts";
import type { ErrorValue } from "./values.ts";

/** The part of the engine that the plugin is made from; the module `hyperformula` itself fits. */
export type EngineClasses = Pick<
  typeof Engine,
  | "FunctionPlugin"
  | "CellError"
  | "ErrorType"
  | "SimpleRangeValue"
  | "ArraySize"
  | "EmptyValue"
  | "FunctionArgumentType"
>;

/** Zero-based, as the engine counts. */
export interface Cell {
  readonly sheet: number;
  readonly row: number;
  readonly col: number;
}

/** What the plugin tells whoever runs the engine. */
export interface Listener extends Tabulating {
  /** A drawing was made in `cell`; its value there is its text. Undefined while a formula is tried out. */
  drawn?(drawn: Drawn, cell: Cell | undefined): void;
  /** The block in `cell` needs this room; `fits` is false when the formula has to be entered again. */
  size?(cell: Cell, rows: number, columns: number, fits: boolean): void;
  /** A declaration broke its promise. */
  fault?(name: string, error: unknown): void;
  /** Why the formula with this number was not let in, or the error that stands in its place. */
  refusal?(number: number): ErrorValue | undefined;
}

export interface MadePlugin {
  readonly plugin: Engine.FunctionPluginDefinition;
  /** For the `extendFunctions` of each language in use: a function without a translation is #NAME?. */
  readonly translations: Record<string, string>;
}

/** Stands in the engine for a formula that the gate refused, so that cells depending on it show the error too. */
export const refusalFunction = "FORMULA.REFUSED";

// The engine does not export its syntax-tree types; these are the parts relied upon.
export interface Ast {
  readonly type: string;
  readonly args: readonly Ast[];
  /** What stands in parentheses. */
  readonly expression?: Ast;
  /** Of a name. */
  readonly expressionName?: string;
  /** Of a reference to a cell. */
  readonly reference?: { toSimpleCellAddress(base: Cell): Cell };
}
export interface State {
  readonly formulaAddress: Cell;
  readonly arraysFlag: boolean;
  readonly formulaVertex?: { readonly width?: number; readonly height?: number; readonly formula?: Ast };
}
export interface Host {
  evaluateAst(ast: Ast, state: State): unknown;
}
export type Method = (this: Host, ast: Ast, state: State) => unknown;

/** @param functions the declarations; their names must be unique */
export function makePlugin(
  engine: EngineClasses,
  functions: readonly SheetFunction[],
  listener: Listener = {},
): MadePlugin {
  const { CellError, ErrorType, SimpleRangeValue, ArraySize, EmptyValue, FunctionArgumentType } = engine;
  const kit: Kit = {
    isError: (value) => value instanceof CellError,
    isRange: (value): value is Engine.SimpleRangeValue => value instanceof SimpleRangeValue,
    empty: EmptyValue,
  };

  class DeclaredFunctions extends engine.FunctionPlugin {}
  const implemented: Engine.ImplementedFunctions = {};
  // The engine looks for methods among the class's own properties only.
  const methods = DeclaredFunctions.prototype as unknown as Record<string, Method>;

  for (const fn of functions) {
    const method = `call_${fn.name.replace(/\W/g, "_")}`;
    const readers = readersOf(fn, kit);
    const isBlock = fn.returns.type === "block";
    implemented[fn.name] = {
      method,
      parameters: fn.params.map((param) => ({
        argumentType: param.type === "numbers" ? FunctionArgumentType.RANGE : FunctionArgumentType.SCALAR,
      })),
      ...(isBlock ? { vectorizationForbidden: true, sizeOfResultArrayMethod: `${method}_size` } : {}),
    };
    if (!isPlain(fn)) {
      methods[method] = multipleOperations(engine, kit, fn, listener);
      continue;
    }
    methods[method] = isBlock ? blockMethod(fn, readers) : scalarMethod(fn, readers);
    if (isBlock) methods[`${method}_size`] = sizeMethod(fn, readers);
  }
  implemented[refusalFunction] = {
    method: "refused",
    parameters: [{ argumentType: FunctionArgumentType.NUMBER }],
  };
  methods.refused = function (ast, state) {
    const number = ast.args[0] === undefined ? undefined : this.evaluateAst(ast.args[0], state);
    const reason = typeof number === "number" ? listener.refusal?.(number) : undefined;
    return engineError(engine, reason ?? { error: "#ERROR!", message: "this formula was refused" });
  };
  // A plain assignment, not a static block: the engine reads it from the finished class.
  DeclaredFunctions.implementedFunctions = implemented;

  return {
    plugin: DeclaredFunctions as unknown as Engine.FunctionPluginDefinition,
    translations: Object.fromEntries(Object.keys(implemented).map((name) => [name, name])),
  };

  function scalarMethod(fn: PlainFunction, readers: readonly Reader[]): Method {
    return function (ast, state) {
      const values = evaluate(this, fn, ast, state);
      if (!Array.isArray(values)) return values;
      if (state.arraysFlag && values.some((value, i) => fn.params[i]!.type !== "numbers" && isLarge(value))) {
        return spread(fn, readers, values, state);
      }
      return one(fn, readers, values, state);
    };
  }

  function blockMethod(fn: PlainFunction, readers: readonly Reader[]): Method {
    return function (ast, state) {
      const values = evaluate(this, fn, ast, state);
      const rows = Array.isArray(values) ? callBlock(fn, readers, values) : values;
      const vertex = state.formulaVertex;
      // Inside another function, or tried out without a cell, nothing was reserved and nothing can be outgrown.
      if (!vertex || withoutParentheses(vertex.formula) !== ast) {
        return Array.isArray(rows) ? SimpleRangeValue.onlyValues(rows) : rows;
      }
      const reserved = { rows: vertex.height ?? 1, columns: vertex.width ?? 1 };
      const needed = Array.isArray(rows)
        ? { rows: rows.length, columns: rows[0]!.length }
        : { rows: 1, columns: 1 };
      const fits = needed.rows === reserved.rows && needed.columns === reserved.columns;
      listener.size?.(state.formulaAddress, needed.rows, needed.columns, fits);
      if (!Array.isArray(rows)) return rows;
      if (needed.rows > reserved.rows || needed.columns > reserved.columns) {
        return new CellError(ErrorType.SPILL, `needs ${needed.rows} x ${needed.columns} cells`);
      }
      // Too large a reservation is filled up with empty cells by the engine until the formula is entered again.
      return needed.rows === 1 && needed.columns === 1 ? rows[0]![0] : SimpleRangeValue.onlyValues(rows);
    };
  }

  // The engine asks for the size when a formula is entered, and never again. Cells that are not reckoned yet make
  // this fail; the block then comes out larger than reserved and is entered again after the edit.
  function sizeMethod(fn: PlainFunction, readers: readonly Reader[]): Method {
    return function (ast, state) {
      try {
        const values = evaluate(this, fn, ast, state);
        const rows = Array.isArray(values) ? callBlock(fn, readers, values) : undefined;
        if (Array.isArray(rows)) {
          listener.size?.(state.formulaAddress, rows.length, rows[0]!.length, true);
          return new ArraySize(rows[0]!.length, rows.length);
        }
      } catch {
        // Not known yet.
      }
      return ArraySize.scalar();
    };
  }

  /** The values of the arguments that were written, or an error when there are too many. */
  function evaluate(host: Host, fn: SheetFunction, ast: Ast, state: State): unknown[] | object {
    const { args } = ast;
    if (args.length > fn.params.length) return new CellError(ErrorType.VALUE, tooMany(fn, args.length));
    const values: unknown[] = new Array(args.length);
    for (let i = 0; i < args.length; i++) {
      const arg = args[i]!;
      values[i] = arg.type === "EMPTY" ? EmptyValue : host.evaluateAst(arg, state);
    }
    return values;
  }

  /** The arguments as `compute` takes them, or the error that one of them is. */
  function read(fn: SheetFunction, readers: readonly Reader[], values: readonly unknown[]): Given[] | object {
    const ready: Given[] = new Array(readers.length);
    for (let i = 0; i < readers.length; i++) {
      const value = values[i];
      // Most arguments of most calls are plain numbers: those take no detour.
      const got =
        typeof value === "number" && fn.params[i]!.type === "number"
          ? value
          : i < values.length
            ? readers[i]!(value)
            : leftOut(fn.params[i]!);
      if (got instanceof Refused) return new CellError(ErrorType.VALUE, got.message);
      if (got instanceof CellError) return got;
      ready[i] = got as Given;
    }
    return ready;
  }

  function one(
    fn: PlainFunction,
    readers: readonly Reader[],
    values: readonly unknown[],
    state: State,
  ): unknown {
    const ready = read(fn, readers, values);
    if (!Array.isArray(ready)) return ready;
    try {
      const result = fn.compute(...(ready as never[]));
      if (typeof result === "number" && Number.isFinite(result)) return result;
      if (typeof result === "string") return result;
      if (isDrawn(result)) {
        listener.drawn?.(result, state.formulaVertex && state.formulaAddress);
        if (result.note !== undefined)
          listener.note?.(result.note, state.formulaVertex && state.formulaAddress);
        return result.value;
      }
      if (isNoted(result)) {
        // A formula that is tried out has no vertex; its address is the sheet's first cell whatever it is for.
        listener.note?.(result.note, state.formulaVertex && state.formulaAddress);
        return scalar(fn, result.value);
      }
      return typeof result === "number"
        ? scalar(fn, result)
        : fault(fn, new Error("result is no number, text or noted value"));
    } catch (error) {
      return refusal(fn, error);
    }
  }

  function callBlock(
    fn: PlainFunction,
    readers: readonly Reader[],
    values: readonly unknown[],
  ): InternalScalar[][] | object {
    const ready = read(fn, readers, values);
    if (!Array.isArray(ready)) return ready;
    try {
      const result = fn.compute(...(ready as never[])) as Block;
      const width = Array.isArray(result) ? (result[0]?.length ?? 0) : 0;
      if (width === 0 || result.some((row) => row.length !== width)) {
        return fault(fn, new Error("result is no block of equal rows"));
      }
      return result.map((row) => row.map((value) => (value === "" ? EmptyValue : scalar(fn, value))));
    } catch (error) {
      return refusal(fn, error);
    }
  }

  /** In array formulas: one call per place, single values repeated along the larger ones. */
  function spread(
    fn: PlainFunction,
    readers: readonly Reader[],
    values: readonly unknown[],
    state: State,
  ): unknown {
    const ranges = values.map((value, i) =>
      fn.params[i]!.type !== "numbers" && kit.isRange(value) ? value.data : undefined,
    );
    const height = Math.max(...ranges.map((data) => data?.length ?? 1));
    const width = Math.max(...ranges.map((data) => data?.[0]?.length ?? 1));
    const rows = Array.from({ length: height }, (_, row) =>
      Array.from(
        { length: width },
        (_, column) =>
          one(
            fn,
            readers,
            values.map((value, i) => place(ranges[i], row, column, value)),
            state,
          ) as InternalScalar,
      ),
    );
    return SimpleRangeValue.onlyValues(rows);
  }

  function place(
    data: readonly (readonly unknown[])[] | undefined,
    row: number,
    column: number,
    value: unknown,
  ): unknown {
    if (!data) return value;
    const line = data[data.length === 1 ? 0 : row];
    const found = line?.[line.length === 1 ? 0 : column];
    return found === undefined ? new CellError(ErrorType.NA, "the ranges differ in size") : found;
  }

  function isLarge(value: unknown): boolean {
    return kit.isRange(value) && (value.data.length > 1 || (value.data[0]?.length ?? 0) > 1);
  }

  function scalar(fn: SheetFunction, value: Scalar): InternalScalar {
    if (typeof value === "number" && !Number.isFinite(value)) {
      return new CellError(ErrorType.NUM, `${fn.name} has no finite result for these arguments`);
    }
    if (typeof value === "number" || typeof value === "string" || typeof value === "boolean") return value;
    return fault(fn, new Error(`result holds ${typeof value}`));
  }

  function refusal(fn: SheetFunction, error: unknown): Engine.CellError {
    if (error instanceof Unreadable) return new CellError(ErrorType.VALUE, error.message);
    if (error instanceof NothingFound) return new CellError(ErrorType.NA, error.message);
    // The interpreter throws RangeErrors of its own, for endless recursion and wrong array lengths: those are faults.
    if (
      error instanceof RangeError &&
      !/^(Maximum call stack|Invalid (array|string|typed array) length|Array buffer)/.test(error.message)
    ) {
      return new CellError(ErrorType.NUM, error.message);
    }
    return fault(fn, error);
  }

  function fault(fn: SheetFunction, error: unknown): Engine.CellError {
    listener.fault?.(fn.name, error);
    return new CellError(ErrorType.ERROR, `internal error in ${fn.name}: please report it`);
  }
}

function isPlain(fn: SheetFunction): fn is PlainFunction {
  return fn.compute !== "in the engine";
}

type InternalScalar = number | string | boolean | Engine.CellError | typeof Engine.EmptyValue;

function withoutParentheses(formula: Ast | undefined): Ast | undefined {
  let inner = formula;
  while (inner?.type === "PARENTHESES") inner = inner.expression;
  return inner;
}

function isDrawn(result: unknown): result is Drawn {
  return typeof result === "object" && result !== null && "figure" in result;
}

function isNoted(result: unknown): result is Noted {
  return typeof result === "object" && result !== null && "note" in result && "value" in result;
}
