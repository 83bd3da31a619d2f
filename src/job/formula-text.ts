/** References and names in the text of a formula, rewritten where they stand; all else stays as it was typed. */
import { columnIndex, columnName, sheetPrefix } from "../engine/address.ts";
import { sheetOf, type Token, tokens } from "../engine/formula.ts";

/** One end of a reference; a whole row has no column, a whole column no row. Counted from 0. */
export interface Corner {
  readonly row: number | undefined;
  readonly column: number | undefined;
  /** A dollar sign stands before it. */
  readonly rowFixed: boolean;
  readonly columnFixed: boolean;
}

export interface FormulaReference {
  /** As the formula names it; undefined when it names none. */
  readonly sheet: string | undefined;
  readonly first: Corner;
  /** undefined for a single cell. */
  readonly last: Corner | undefined;
}

/** Gives what a reference becomes; undefined when its cells are gone. The same object leaves it as typed. */
export type ReferenceMap = (reference: FormulaReference) => FormulaReference | undefined;

export function mapReferences(formula: string, map: ReferenceMap): string {
  if (!formula.startsWith("=")) return formula;
  if (!isIntricate.test(formula)) return mapCells(formula, map);
  const parts = tokens(formula);
  let text = "";
  for (let i = 0; i < parts.length; ) {
    const found = referenceAt(parts, i);
    if (!found) {
      text += parts[i]!.text;
      i += 1;
      continue;
    }
    const becomes = map(found.reference);
    if (becomes === found.reference)
      text += parts
        .slice(i, found.end)
        .map((part) => part.text)
        .join("");
    else text += becomes ? written(becomes) : "#REF!";
    i = found.end;
  }
  return text;
}

/** Text in quotes, other sheets, ranges, error values, numbers with letters behind them, and letters beyond the plain ones. */
const isIntricate = /["'!:#\u0080-\uffff]|\$\$|(?<![\w.$])[\d.]+[A-Za-z_$]/;
const plainWord = /(\$?)([A-Za-z]{1,3})(\$?)([1-9]\d{0,6})(?![\w.$])(?!\s*\()|[\w.$]+/g;

/** The same for a formula that names single cells of its own sheet only: most do, and it takes a fraction of the time. */
function mapCells(formula: string, map: ReferenceMap): string {
  return formula.replace(plainWord, (text, columnDollar, letters, rowDollar, digits) => {
    if (letters === undefined) return text;
    const first: Corner = {
      row: Number(digits) - 1,
      column: columnIndex(letters),
      rowFixed: rowDollar === "$",
      columnFixed: columnDollar === "$",
    };
    const reference: FormulaReference = { sheet: undefined, first, last: undefined };
    const becomes = map(reference);
    return becomes === reference ? text : becomes ? written(becomes) : "#REF!";
  });
}

function referenceAt(
  parts: readonly Token[],
  start: number,
): { reference: FormulaReference; end: number } | undefined {
  const named = parts[start]!.kind === "sheet";
  const sheet = named ? sheetOf(parts[start]!) : undefined;
  const at = named ? start + 1 : start;
  const first = cornerOf(parts[at]);
  if (!first || parts[solid(parts, at + 1)]?.text === "(") return undefined;
  const colon = solid(parts, at + 1);
  if (parts[colon]?.text === ":") {
    let end = solid(parts, colon + 1);
    if (parts[end]?.kind === "sheet") end += 1;
    const last = cornerOf(parts[end]);
    if (last && isWhole(last) === isWhole(first)) return { reference: { sheet, first, last }, end: end + 1 };
  }
  // `5` and `AB` are a row and a column only beside a colon.
  if (isWhole(first) !== "cell") return undefined;
  return { reference: { sheet, first, last: undefined }, end: at + 1 };
}

function solid(parts: readonly Token[], from: number): number {
  let at = from;
  while (parts[at]?.kind === "space") at += 1;
  return at;
}

function cornerOf(part: Token | undefined): Corner | undefined {
  if (!part || (part.kind !== "word" && part.kind !== "number")) return undefined;
  const found = /^(?:(\$?)([A-Za-z]{1,3}))?(?:(\$?)([1-9]\d{0,6}))?$/.exec(part.text);
  if (!found || part.text === "") return undefined;
  const [, columnDollar, letters, rowDollar, digits] = found;
  return {
    row: digits === undefined ? undefined : Number(digits) - 1,
    column: letters === undefined ? undefined : columnIndex(letters),
    rowFixed: rowDollar === "$",
    columnFixed: columnDollar === "$",
  };
}

function isWhole({ row, column }: Corner): "row" | "column" | "cell" {
  return column === undefined ? "row" : row === undefined ? "column" : "cell";
}

function written({ sheet, first, last }: FormulaReference): string {
  const prefix = sheet === undefined ? "" : sheetPrefix(sheet);
  return prefix + cornerText(first) + (last ? `:${cornerText(last)}` : "");
}

function cornerText({ row, column, rowFixed, columnFixed }: Corner): string {
  const letters = column === undefined ? "" : `${columnFixed ? "$" : ""}${columnName(column)}`;
  return row === undefined ? letters : `${letters}${rowFixed ? "$" : ""}${row + 1}`;
}

/** The formula as it reads when copied; parts with `$` stay, a reference moved off the sheet becomes #REF!. */
export function moveFormula(formula: string, rows: number, columns: number): string {
  if (rows === 0 && columns === 0) return formula;
  return mapReferences(formula, (reference) => movedReference(reference, rows, columns));
}

/** The same for one of its references; undefined where it is moved off the sheet. */
export function movedReference(
  reference: FormulaReference,
  rows: number,
  columns: number,
): FormulaReference | undefined {
  const first = movedCorner(reference.first, rows, columns);
  const last = reference.last && movedCorner(reference.last, rows, columns);
  if (!first || (reference.last && !last)) return undefined;
  return { sheet: reference.sheet, first, last };
}

function movedCorner(corner: Corner, rows: number, columns: number): Corner | undefined {
  const row = corner.row === undefined || corner.rowFixed ? corner.row : corner.row + rows;
  const column = corner.column === undefined || corner.columnFixed ? corner.column : corner.column + columns;
  return (row ?? 0) < 0 || (column ?? 0) < 0 ? undefined : { ...corner, row, column };
}

/** The formula with the name `from` written `to`, wherever it stands for a cell. Case does not count. */
export function renameIn(formula: string, from: string, to: string): string {
  if (!formula.startsWith("=")) return formula;
  const parts = tokens(formula);
  return parts
    .map((part, i) =>
      part.kind === "word" &&
      part.text.toLowerCase() === from.toLowerCase() &&
      parts[solid(parts, i + 1)]?.text !== "("
        ? to
        : part.text,
    )
    .join("");
}
