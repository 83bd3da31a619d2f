/**
 * What was typed, and what goes into the engine for it.
 *
 * The engine can be made to hang, to run out of stack or to store what it cannot read back. Everything that it is
 * given goes through here: harmless formulas pass in the engine's own spelling, others stay out with a reason.
 */

import { columnName, parseCell } from "./address.ts";
import { plainNumber } from "./arguments.ts";
import { type Token, tokens } from "./formula.ts";

export type Entry =
  | { readonly kind: "empty" }
  | { readonly kind: "number"; readonly value: number }
  | { readonly kind: "boolean"; readonly value: boolean }
  | { readonly kind: "text"; readonly value: string }
  | { readonly kind: "formula"; readonly formula: string; readonly reach: Reach }
  | { readonly kind: "refused"; readonly reason: string; readonly error?: string };

/** How far down and right a formula refers: rows and columns, counted from 1; 0 when it refers to no cell. */
export interface Reach {
  readonly rows: number;
  readonly columns: number;
}

export const limits = {
  length: 8192,
  nesting: 64,
  operators: 500,
  /** Cells in all ranges of one formula together. */
  rangeCells: 100_000,
  rows: 100_000,
  columns: 702,
} as const;

/** Functions that take a criterion, in which other programs read * and ? as wildcards. */
const criterionFunctions = /^(COUNTIFS?|SUMIFS?|AVERAGEIFS?|MAXIFS|MINIFS|MATCH|VLOOKUP|HLOOKUP|XLOOKUP)$/i;

/** @param typed what the person typed into a cell, as it is */
export function enter(typed: string): Entry {
  if (typed === "") return { kind: "empty" };
  if (typed.startsWith("'")) return { kind: "text", value: typed.slice(1) };
  if (typed.startsWith("=")) return enterFormula(typed);
  const number = plainNumber(typed);
  if (number !== undefined) return { kind: "number", value: number };
  const percent = typed.trim().endsWith("%") ? plainNumber(typed.trim().slice(0, -1)) : undefined;
  if (percent !== undefined) return { kind: "number", value: percent / 100 };
  if (/^\s*true\s*$/i.test(typed)) return { kind: "boolean", value: true };
  if (/^\s*false\s*$/i.test(typed)) return { kind: "boolean", value: false };
  return { kind: "text", value: typed };
}

function enterFormula(typed: string): Entry {
  if (typed.length > limits.length) {
    return refused(`a formula may have ${limits.length} characters, this one has ${typed.length}`);
  }
  const parts = tokens(typed);
  const problem = spellingProblem(parts) ?? structureProblem(parts);
  if (problem) return refused(problem);
  const reach = reachOf(parts);
  if (typeof reach === "string") return refused(reach);
  return { kind: "formula", formula: parts.map(inEngineSpelling).join(""), reach };
}

function refused(reason: string): Entry {
  return { kind: "refused", reason };
}

function spellingProblem(parts: readonly Token[]): string | undefined {
  for (const part of parts) {
    if (part.kind !== "unknown") continue;
    if (part.text === '"') return `the text that begins at character ${part.at + 1} has no closing quote`;
    if (part.text === "'")
      return `the sheet name that begins at character ${part.at + 1} is not closed, or no ! follows it`;
    return `character ${part.at + 1}, ${part.text}, has no meaning in a formula`;
  }
  if (parts.every((part) => part.kind === "space" || part.text === "="))
    return "nothing follows the equals sign";
  return undefined;
}

function structureProblem(parts: readonly Token[]): string | undefined {
  const open: Token[] = [];
  let deepest = 0;
  let operators = -1; // the leading "=" is none
  for (const [i, part] of parts.entries()) {
    if (part.kind === "open") {
      open.push(part);
      deepest = Math.max(deepest, open.length);
    } else if (part.kind === "close") {
      const opened = open.pop();
      if (!opened) return `the ${part.text} at character ${part.at + 1} closes nothing`;
      if ((opened.text === "(") !== (part.text === ")")) {
        return `the ${part.text} at character ${part.at + 1} does not fit the ${opened.text} at character ${opened.at + 1}`;
      }
    } else if (part.kind === "operator" && !/^[,;:%]$/.test(part.text)) {
      operators += 1;
    } else if (part.kind === "string" && /[*?]/.test(part.text)) {
      const caller = callerOf(parts, i);
      if (caller && criterionFunctions.test(caller)) {
        return `${caller.toUpperCase()} compares whole text here, * and ? are no wildcards: compare with LEFT, RIGHT or SEARCH`;
      }
    }
  }
  const unclosed = open.at(-1);
  if (unclosed) return `the ${unclosed.text} at character ${unclosed.at + 1} is not closed`;
  if (deepest > limits.nesting) return `brackets may be nested ${limits.nesting} deep, here ${deepest}`;
  if (operators > limits.operators)
    return `a formula may have ${limits.operators} operators, this one has ${operators}`;
  return undefined;
}

/** Name of the function whose bracket the part at `index` stands in. */
function callerOf(parts: readonly Token[], index: number): string | undefined {
  let depth = 0;
  for (let i = index - 1; i > 0; i--) {
    const part = parts[i]!;
    if (part.kind === "close") depth += 1;
    else if (part.kind === "open" && depth > 0) depth -= 1;
    else if (part.kind === "open") return parts[i - 1]!.kind === "word" ? parts[i - 1]!.text : undefined;
  }
  return undefined;
}

/** How far the references go, or why that is too far. */
function reachOf(parts: readonly Token[]): Reach | string {
  let rows = 0;
  let columns = 0;
  let cells = 0;
  const solid = parts.filter((part) => part.kind !== "space");
  for (const [i, part] of solid.entries()) {
    if (part.kind !== "word" && part.kind !== "number") continue;
    if (solid[i + 1]?.text === "(") {
      const problem = generatedProblem(part.text, solid, i + 2);
      if (problem) return problem;
      continue;
    }
    const corner = cornerOf(part.text);
    if (!corner) continue;
    const isRange = solid[i + 1]?.text === ":";
    const afterRange = solid[i - 1]?.text === ":" || solid[i - 2]?.text === ":";
    // `5` is a whole row only beside a colon, `AB` a whole column likewise; else they are a number and a name.
    if ((corner.row === undefined || corner.column === undefined) && !isRange && !afterRange) continue;
    if ((corner.row ?? 0) >= limits.rows)
      return `row ${corner.row! + 1} is past the last one, ${limits.rows}`;
    if ((corner.column ?? 0) >= limits.columns) {
      return `column ${part.text.replace(/[$\d]/g, "").toUpperCase()} is past the last one, ${columnName(limits.columns - 1)}`;
    }
    rows = Math.max(rows, (corner.row ?? -1) + 1);
    columns = Math.max(columns, (corner.column ?? -1) + 1);
    if (!isRange) continue;
    const other = solid[i + 2]?.kind === "sheet" ? solid[i + 3] : solid[i + 2];
    const end = other && cornerOf(other.text);
    if (!end) continue;
    const high = corner.row === undefined ? 1000 : Math.abs((end.row ?? corner.row) - corner.row) + 1;
    const wide =
      corner.column === undefined ? 100 : Math.abs((end.column ?? corner.column) - corner.column) + 1;
    cells += high * wide;
  }
  if (cells > limits.rangeCells)
    return `the ranges of a formula may hold ${limits.rangeCells} cells, here ${cells}`;
  return { rows, columns };
}

/** SEQUENCE and REPT make as much as their numbers say. */
function generatedProblem(name: string, parts: readonly Token[], first: number): string | undefined {
  const wanted = { SEQUENCE: limits.rangeCells, REPT: 32_767, RANDARRAY: limits.rangeCells }[
    name.toUpperCase()
  ];
  if (wanted === undefined) return undefined;
  let made = 1;
  let depth = 0;
  for (const part of parts.slice(first)) {
    if (part.kind === "open") depth += 1;
    if (part.kind === "close" && depth-- === 0) break;
    if (depth === 0 && part.kind === "number") made *= Math.max(1, Number(part.text));
  }
  return made > wanted ? `${name.toUpperCase()} may make ${wanted} here, not ${made}` : undefined;
}

function cornerOf(word: string): { row?: number; column?: number } | undefined {
  const cell = parseCell(word);
  if (cell) return cell;
  if (/^\$?[1-9]\d*$/.test(word)) return { row: Number(word.replace("$", "")) - 1 };
  if (/^\$?[A-Za-z]{1,3}$/.test(word)) return { column: parseCell(`${word}1`)!.column };
  return undefined;
}

/** The engine reads no capital E in a number, and no quote or backslash inside a text. */
function inEngineSpelling(part: Token): string {
  if (part.kind === "number") return part.text.replace("E", "e");
  if (part.kind !== "string") return part.text;
  const inside = part.text.slice(1, -1).replaceAll('""', '"');
  if (!/["\\]/.test(inside)) return part.text;
  const pieces = inside.split(/(["\\])/).filter((piece) => piece !== "");
  return `(${pieces.map((piece) => (piece === '"' ? "CHAR(34)" : piece === "\\" ? "CHAR(92)" : `"${piece}"`)).join("&")})`;
}
