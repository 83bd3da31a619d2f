/** Cell addresses as the open standard's references are written: `A1`, `B2:C9`, `Sheet!A1`, `'My sheet'!$A$1`. */
import type { Place } from "./values.ts";

/** Zero-based column to letters: 0 is A, 26 is AA. */
export function columnName(column: number): string {
  let name = "";
  for (let rest = column; rest >= 0; rest = Math.floor(rest / 26) - 1)
    name = String.fromCharCode(65 + (rest % 26)) + name;
  return name;
}

/** Letters to zero-based column. @throws RangeError if it is no column name of one to three letters */
export function columnIndex(name: string): number {
  if (!/^[A-Za-z]{1,3}$/.test(name))
    throw new RangeError(`column must be one to three letters, got "${name}"`);
  let index = 0;
  for (let i = 0; i < name.length; i++) index = index * 26 + (name.charCodeAt(i) & ~32) - 64;
  return index - 1;
}

/** Names of columns that were asked for: every cell in hand asks for one. */
const columnNames: string[] = [];

/** Zero-based row and column to `A1`. */
export function cellName(row: number, column: number): string {
  const letters = columnNames[column] ?? columnName(column);
  if (column < 1024) columnNames[column] = letters;
  return letters + (row + 1);
}

/** `A1` or `$A$1` to zero-based row and column; undefined if it is no cell address. */
export function parseCell(text: string): { row: number; column: number } | undefined {
  // Sign by sign: sheets of a hundred thousand cells are read with this, and patterns are slow at it.
  const { length } = text;
  let at = text.charCodeAt(0) === dollar ? 1 : 0;
  const letters = at;
  let column = 0;
  for (; at < length; at++) {
    const code = text.charCodeAt(at) & ~32;
    if (code < 65 || code > 90 || text.charCodeAt(at) < 65) break;
    column = column * 26 + code - 64;
  }
  if (at === letters || at > letters + 3) return undefined;
  if (text.charCodeAt(at) === dollar) at += 1;
  const digits = at;
  let row = 0;
  for (; at < length; at++) {
    const digit = text.charCodeAt(at) - 48;
    if (digit < 0 || digit > 9) return undefined;
    row = row * 10 + digit;
  }
  const isRow = at > digits && at <= digits + 7 && text.charCodeAt(digits) !== 48;
  return isRow ? { column: column - 1, row: row - 1 } : undefined;
}

const dollar = 36;

/** `A1` or `A1:B9` to zero-based corners, sorted; undefined if it is neither. */
export function parseRange(
  text: string,
): { top: number; left: number; bottom: number; right: number } | undefined {
  const [first, second, more] = text.split(":");
  if (first === undefined || more !== undefined) return undefined;
  const a = parseCell(first);
  const b = parseCell(second ?? first);
  if (!a || !b) return undefined;
  return {
    top: Math.min(a.row, b.row),
    left: Math.min(a.column, b.column),
    bottom: Math.max(a.row, b.row),
    right: Math.max(a.column, b.column),
  };
}

/** Sheet name as a formula needs it: quoted unless it is a plain word. */
export function sheetPrefix(sheet: string): string {
  return /^[A-Za-z_][A-Za-z0-9_]*$/.test(sheet) && !parseCell(sheet)
    ? `${sheet}!`
    : `'${sheet.replaceAll("'", "''")}'!`;
}

/** `Sheet!A1`, quoted where needed. */
export function placeName(place: Place): string {
  return sheetPrefix(place.sheet) + cellName(place.row, place.column);
}

/** Splits `Sheet!rest` or `'My sheet'!rest`; undefined when no sheet is named. */
export function splitSheet(text: string): { sheet: string; rest: string } | undefined {
  const quoted = /^'((?:[^']|'')+)'!(.+)$/.exec(text);
  if (quoted) return { sheet: quoted[1]!.replaceAll("''", "'"), rest: quoted[2]! };
  const plain = /^([^'!]+)!(.+)$/.exec(text);
  return plain ? { sheet: plain[1]!, rest: plain[2]! } : undefined;
}
