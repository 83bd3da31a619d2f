/**
 * Cells that change their place, and all that points to them: formulas, names, the answer of an operation, checks.
 * What goes with a cell - format, note, choices, limits, lock - goes where its cell goes.
 */
import { cellName, parseCell, parseRange, sheetPrefix, splitSheet } from "../engine/address.ts";
import { limits } from "../engine/gate.ts";
import { type Area, isInside } from "./areas.ts";
import type { CellFormat, JobDocument, SheetDocument } from "./document.ts";
import { type Corner, type FormulaReference, mapReferences } from "./formula-text.ts";
import { textsIn } from "./large-cells.ts";
import { rangeName } from "./references.ts";

export interface OnSheet {
  readonly sheet: string;
  readonly area: Area;
}

export interface Relocation {
  /** The sheet whose cells move. */
  readonly sheet: string;
  /** The sheet that they are on afterwards. */
  readonly toSheet: string;
  /** Where a cell of `sheet` is afterwards; undefined when it is gone. */
  cell(row: number, column: number): { sheet: string; row: number; column: number } | undefined;
  /** True for a cell of `toSheet` that is overwritten by one that comes. */
  overwrites?(row: number, column: number): boolean;
  /** Where a reference to an area of `sheet` points afterwards; undefined when it points nowhere. */
  reference(area: Area): OnSheet | undefined;
  /** Where the very cells of an area are afterwards. */
  pieces(sheet: string, area: Area): readonly OnSheet[];
}

export function relocated(document: JobDocument, by: Relocation): JobDocument {
  const place = (text: string): string | undefined => placeAfter(text, by);
  return {
    ...document,
    names: mapped(document.names, (name, target) => {
      const to = place(target);
      return to === undefined ? undefined : [name, to];
    }),
    sheets: document.sheets.map((sheet) => sheetAfter(document, sheet, by)),
    check: mapped(document.check, (target, check) => {
      const to = place(target);
      return to === undefined ? undefined : [to, check];
    }),
  };
}

/** The same record when nothing in it changes: the engine is built anew for other names. */
function mapped<T>(
  record: Readonly<Record<string, T>>,
  map: (key: string, value: T) => [string, T] | undefined,
): Readonly<Record<string, T>> {
  const entries = Object.entries(record);
  const after = entries.map(([key, value]) => map(key, value));
  const same = after.every((entry, i) => entry?.[0] === entries[i]![0] && entry[1] === entries[i]![1]);
  return same ? record : Object.fromEntries(after.filter((entry) => entry !== undefined));
}

function placeAfter(text: string, by: Relocation): string | undefined {
  const found = splitSheet(text);
  const area = found && parseRange(found.rest);
  if (!found || !area || !isNamed(found.sheet, by.sheet)) return text;
  const to = by.reference(area);
  return to && sheetPrefix(to.sheet) + rangeName(to.area);
}

function isNamed(one: string, other: string): boolean {
  return one === other || one.toLowerCase() === other.toLowerCase();
}

function sheetAfter(document: JobDocument, sheet: SheetDocument, by: Relocation): SheetDocument {
  const touched = sheet.name === by.sheet || sheet.name === by.toSheet;
  const cells = cellsAfter(document, sheet, by, touched);
  if (!touched) return cells === sheet.cells ? sheet : { ...sheet, cells };
  const sources = document.sheets.filter((each) => each.name === by.sheet || each.name === by.toSheet);
  const own = <T>(part: (from: SheetDocument) => Readonly<Record<string, T>> | undefined) =>
    keyedAfter(sheet.name, sources, part, by);
  const areas = (part: (from: SheetDocument) => readonly string[] | undefined) =>
    sources.flatMap((from) =>
      (part(from) ?? []).flatMap((key) => {
        const area = parseRange(key)!;
        return by
          .pieces(from.name, area)
          .flatMap((to) => (to.sheet === sheet.name ? [rangeName(to.area)] : []));
      }),
    );
  const { result: _, locked: __, allowed: ___, ...rest } = sheet;
  const result = sheet.name === by.sheet ? resultAfter(sheet, by) : sheet.result;
  const locked = [...new Set(areas((from) => from.locked))];
  const allowed = rangesAfter(sheet.name, sources, (from) => from.allowed, by);
  return {
    ...rest,
    ...(result === undefined ? {} : { result }),
    cells,
    formats: rangesAfter(sheet.name, sources, (from) => from.formats, by),
    choices: own((from) => from.choices),
    notes: own((from) => from.notes),
    merged: sources.flatMap((from) => from.merged.flatMap((key) => mergedAfter(sheet.name, from, key, by))),
    ...(locked.length > 0 ? { locked } : {}),
    ...(Object.keys(allowed).length > 0 ? { allowed } : {}),
  };
}

function resultAfter(sheet: SheetDocument, by: Relocation): string | undefined {
  const cell = sheet.result === undefined ? undefined : parseCell(sheet.result);
  if (!cell) return sheet.result;
  const to = by.reference({ top: cell.row, bottom: cell.row, left: cell.column, right: cell.column });
  return to?.sheet === sheet.name ? rangeName(to.area) : undefined;
}

function mergedAfter(name: string, from: SheetDocument, key: string, by: Relocation): string[] {
  const area = parseRange(key)!;
  const to = from.name === by.sheet ? by.reference(area) : { sheet: from.name, area };
  const single = to && to.area.top === to.area.bottom && to.area.left === to.area.right;
  return to?.sheet === name && !single ? [rangeName(to.area)] : [];
}

function cellsAfter(
  document: JobDocument,
  sheet: SheetDocument,
  by: Relocation,
  touched: boolean,
): SheetDocument["cells"] {
  const cells: Record<string, string> = {};
  let same = true;
  const sources = touched
    ? document.sheets.filter((each) => each.name === by.sheet || each.name === by.toSheet)
    : [sheet];
  for (const from of sources) {
    for (const [key, text] of textsIn(from.cells)) {
      const to = cellAfter(from.name, key, by);
      if (to?.sheet !== sheet.name) {
        same &&= from !== sheet;
        continue;
      }
      const after = formulaAfter(text, from.name, sheet.name, by);
      cells[to.key] = after;
      same &&= from === sheet && to.key === key && after === text;
    }
  }
  return same ? sheet.cells : cells;
}

function cellAfter(name: string, key: string, by: Relocation): { sheet: string; key: string } | undefined {
  const { row, column } = parseCell(key)!;
  const moves = name === by.sheet;
  const to = moves ? by.cell(row, column) : { sheet: name, row, column };
  const stays = to?.sheet === name && to.row === row && to.column === column;
  if (stays && name === by.toSheet && by.overwrites?.(row, column)) return undefined;
  return to && { sheet: to.sheet, key: cellName(to.row, to.column) };
}

/** A formula of `home` as it reads on `newHome`, when cells have changed their places. */
function formulaAfter(formula: string, home: string, newHome: string, by: Relocation): string {
  return mapReferences(formula, (reference) => {
    const on = reference.sheet ?? home;
    const area = areaOf(reference);
    const to = isNamed(on, by.sheet) ? by.reference(area) : { sheet: on, area };
    if (!to) return undefined;
    const sameArea = isInside(to.area, area) && isInside(area, to.area);
    const stays = isNamed(to.sheet, on) && (reference.sheet !== undefined || isNamed(home, newHome));
    if (sameArea && stays) return reference;
    const sheet = reference.sheet === undefined && isNamed(to.sheet, newHome) ? undefined : to.sheet;
    return { sheet, ...cornersOf(to.area, reference) };
  });
}

function areaOf({ first, last = first }: FormulaReference): Area {
  const rows = first.row === undefined ? [0, limits.rows - 1] : [first.row, last.row!];
  const columns = first.column === undefined ? [0, limits.columns - 1] : [first.column, last.column!];
  return {
    top: Math.min(...rows),
    left: Math.min(...columns),
    bottom: Math.max(...rows),
    right: Math.max(...columns),
  };
}

function cornersOf(
  { top, left, bottom, right }: Area,
  { first, last }: FormulaReference,
): { first: Corner; last: Corner | undefined } {
  const corner = (like: Corner, row: number, column: number): Corner => ({
    ...like,
    row: like.row === undefined ? undefined : row,
    column: like.column === undefined ? undefined : column,
  });
  return { first: corner(first, top, left), last: last && corner(last, bottom, right) };
}

/** What is kept cell by cell. */
function keyedAfter<T>(
  name: string,
  sources: readonly SheetDocument[],
  part: (from: SheetDocument) => Readonly<Record<string, T>> | undefined,
  by: Relocation,
): Record<string, T> {
  const after: Record<string, T> = {};
  for (const from of sources) {
    for (const [key, value] of Object.entries(part(from) ?? {})) {
      const to = cellAfter(from.name, key, by);
      if (to?.sheet === name) after[to.key] = value;
    }
  }
  return after;
}

/** What is kept by cell or range. A range stays one even when a single cell is left: single cells overrule ranges. */
function rangesAfter<T extends CellFormat | object>(
  name: string,
  sources: readonly SheetDocument[],
  part: (from: SheetDocument) => Readonly<Record<string, T>> | undefined,
  by: Relocation,
): Record<string, T> {
  const after: Record<string, T> = {};
  for (const from of sources) {
    for (const [key, value] of Object.entries(part(from) ?? {})) {
      for (const to of by.pieces(from.name, parseRange(key)!)) {
        if (to.sheet !== name) continue;
        const first = cellName(to.area.top, to.area.left);
        const place = key.includes(":") ? `${first}:${cellName(to.area.bottom, to.area.right)}` : first;
        // Two that come to lie on each other: the earlier one wins.
        after[place] = after[place] ? { ...value, ...after[place] } : value;
      }
    }
  }
  return after;
}
