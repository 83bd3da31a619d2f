/**
 * MULTIPLE.OPERATIONS as ISO/IEC 26300-2 defines it: the value that a cell would have if references to one or two
 * other cells were references to replacements.
 *
 * Here the arguments are read: which cells are meant, and what the replacements hold. Whoever runs the engine reckons
 * the values (tabulated.ts). The engine sees ordinary references, so it knows what the cell depends on.
 */
import { isRequired, type SheetFunction } from "../functions/declare.ts";
import { type Kit, leftOut, Refused, tooMany } from "./arguments.ts";
import type { Answer, Change } from "./cone.ts";
import type { Ast, Cell, EngineClasses, Host, Method, State } from "./plugin.ts";
import { type CellValue, type ErrorValue, isErrorValue } from "./values.ts";

/** What a cell would hold if others held something else. */
export interface Trial {
  readonly result: Cell;
  readonly inputs: readonly Change[];
}

export interface Tabulating {
  /** The cell that a name of the job stands for; a text says why it stands for none. */
  cellNamed?(name: string): Cell | string;
  /** The answer, as far as it is known; undefined when nobody reckons it here. */
  tabulated?(trial: Trial, cell: Cell | undefined): Answer | undefined;
  /** A doubtful value was reckoned in `cell`; undefined while a formula is tried out without a cell. */
  note?(note: string, cell: Cell | undefined): void;
}

/** How the engine's error types are written. */
const codes: Readonly<Record<string, string>> = {
  DIV_BY_ZERO: "#DIV/0!",
  NAME: "#NAME?",
  VALUE: "#VALUE!",
  NUM: "#NUM!",
  NA: "#N/A",
  CYCLE: "#CYCLE!",
  REF: "#REF!",
  SPILL: "#SPILL!",
  ERROR: "#ERROR!",
};

/** An error as the engine keeps it. */
export function engineError({ CellError, ErrorType }: EngineClasses, { error, message }: ErrorValue) {
  const type = Object.keys(codes).find((each) => codes[each] === error) ?? "ERROR";
  return new CellError(ErrorType[type as keyof typeof ErrorType], message);
}

/** The method that the plugin registers for the declaration `fn`. */
export function multipleOperations(
  engine: EngineClasses,
  kit: Kit,
  fn: SheetFunction,
  listener: Tabulating,
): Method {
  const { EmptyValue, CellError } = engine;
  const refuse = (message: string) => engineError(engine, { error: "#VALUE!", message });

  return function (ast, state) {
    const { args } = ast;
    if (args.length > fn.params.length) return refuse(tooMany(fn, args.length));
    const given = fn.params.map((_, i) => (args[i]?.type === "EMPTY" ? undefined : args[i]));
    const second = given[3] !== undefined || given[4] !== undefined;
    for (const [i, param] of fn.params.entries()) {
      if (given[i] || (!isRequired(param) && !second)) continue;
      const absent = leftOut({ name: param.name, type: param.type, doc: param.doc });
      return refuse(absent instanceof Refused ? absent.message : `${param.name} is missing`);
    }
    const result = cellIn(given[0]!, fn.params[0]!.name, state);
    if (typeof result === "string") return refuse(result);
    const inputs: Change[] = [];
    for (const i of second ? [1, 3] : [1]) {
      const cell = cellIn(given[i]!, fn.params[i]!.name, state);
      if (typeof cell === "string") return refuse(cell);
      const value = valueIn(this, given[i + 1]!, state);
      if (value === undefined) return refuse(`${fn.params[i + 1]!.name} must be one cell or value`);
      // The same cell replaced twice: the first replacement stands, as when both are read from left to right.
      if (!inputs.some(({ cell: { sheet, row, col } }) => sameCell({ sheet, row, col }, cell)))
        inputs.push({ cell, value });
    }
    const here = state.formulaVertex && state.formulaAddress;
    const answer = listener.tabulated?.({ result, inputs }, here);
    if (!answer) return refuse(`${fn.name} works in the cells of a job only`);
    const { value, note } = answer;
    if (note !== undefined) listener.note?.(note, here);
    return value === null ? EmptyValue : isErrorValue(value) ? engineError(engine, value) : value;
  };

  function cellIn(ast: Ast, name: string, state: State): Cell | string {
    if (ast.type === "PARENTHESES" && ast.expression) return cellIn(ast.expression, name, state);
    if (ast.type === "NAMED_EXPRESSION") {
      const found = listener.cellNamed?.(ast.expressionName ?? "");
      return typeof found === "object"
        ? found
        : `${name} must be one cell: ${found ?? "the name is not known"}`;
    }
    const cell = ast.type === "CELL_REFERENCE" && ast.reference?.toSimpleCellAddress(state.formulaAddress);
    return cell || `${name} must be a cell, such as B5, or the name of one`;
  }

  function valueIn(host: Host, ast: Ast, state: State): CellValue | undefined {
    let value = host.evaluateAst(ast, state);
    if (kit.isRange(value)) {
      if (value.data.length !== 1 || value.data[0]?.length !== 1) return undefined;
      value = value.data[0][0];
    }
    if (value instanceof CellError) {
      const code = codes[value.type] ?? "#ERROR!";
      return { error: code, message: value.message ?? "" };
    }
    if (value === EmptyValue || value === null || value === undefined) return null;
    if (typeof value === "object")
      return "val" in value && typeof value.val === "number" ? value.val : undefined;
    return value as CellValue;
  }
}

function sameCell(one: Cell, other: Cell): boolean {
  return one.sheet === other.sheet && one.row === other.row && one.col === other.col;
}
