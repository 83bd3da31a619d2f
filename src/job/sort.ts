/** Sorts the rows of a table by one of its columns. */
import { cellName, parseCell, parseRange } from "../engine/address.ts";
import { type CellValue, isErrorValue } from "../engine/values.ts";
import { type Area, common, holds, isInside, without } from "./areas.ts";
import { withSheet } from "./changes.ts";
import type { CellFormat, SheetDocument } from "./document.ts";
import { type Corner, mapReferences, movedReference } from "./formula-text.ts";
import type { Job } from "./job.ts";
import { textsIn, tooManyCells } from "./large-cells.ts";
import { lockReasonIn } from "./locks.ts";
import { rowsSorted } from "./moves.ts";
import { rangeName } from "./references.ts";

export type SortWay = "up" | "down";

/**
 * Puts the rows of `area` in the order of column `by`: numbers, then words, then the rest; empty cells last either way.
 * Rows that are equal keep their order. Cells merged within one row go with it; merged over several rows they would be
 * torn, and it is refused; so is a table with a formula that reads another row, which would come to read a different one.
 * Formats, notes and choices go with their cells; formulas elsewhere point to the same places as before.
 *
 * @returns why it cannot be done; undefined when it is done
 */
export function sortRows(job: Job, sheet: string, area: Area, by: number, way: SortWay): string | undefined {
  const found = job.document.sheets.find((each) => each.name === sheet);
  if (!found) return undefined;
  const reason = tooManyCells(job.document.sheets) ?? unsortable(job, found, area);
  if (reason !== undefined) return reason;
  const rows = Array.from({ length: area.bottom - area.top + 1 }, (_, i) => area.top + i);
  // Of merged cells the first one shows.
  const shown = (row: number) =>
    found.merged.map((key) => parseRange(key)!).find((one) => holds(one, row, by))?.left ?? by;
  const views = rows.map((row) => [row, job.cell(sheet, row, shown(row))] as const);
  const late = views.find(([, { stale }]) => stale);
  if (late) return `${cellName(late[0], shown(late[0]))} is not reckoned yet, and the order depends on it`;
  const keys = new Map(views.map(([row, { value }]) => [row, value]));
  const sorted = [...rows].sort((a, b) => inOrder(keys.get(a)!, keys.get(b)!, way) || a - b);
  if (sorted.every((row, i) => row === rows[i])) return "the rows stand in that order already";
  const to = new Map(sorted.map((row, i) => [row, area.top + i]));
  const after = permuted(found, area, to);
  if (typeof after === "string") return after;
  job.put(
    withSheet(job.document, sheet, () => after),
    `Sorted ${rangeName(area)} in ${sheet} by column ${cellName(0, by).slice(0, -1)}, ${way}`,
    rowsSorted(sheet, area, to),
  );
  return undefined;
}

function unsortable(job: Job, sheet: SheetDocument, area: Area): string | undefined {
  if (area.top === area.bottom) return "one row alone has no order: select the rows to sort";
  const lock = lockReasonIn(sheet, area);
  if (lock !== undefined) return lock;
  const torn = sheet.merged.find((key) => {
    const one = parseRange(key)!;
    return common(one, area) && (one.top !== one.bottom || !isInside(one, area));
  });
  if (torn !== undefined)
    return `${torn} is merged past one row or past the table, and sorting would tear it: split it first`;
  for (let row = area.top; row <= area.bottom; row++) {
    for (let column = area.left; column <= area.right; column++) {
      // Where something is typed no block can be.
      if (sheet.cells[cellName(row, column)] !== undefined) continue;
      const { spilledFrom } = job.cell(sheet.name, row, column);
      if (spilledFrom !== undefined)
        return `${cellName(row, column)} is filled by the formula in ${spilledFrom}`;
    }
  }
  return undefined;
}

/** Made at the first use: that takes long. */
let words: Intl.Collator | undefined;

function inOrder(a: CellValue, b: CellValue, way: SortWay): number {
  const [rankA, rankB] = [rank(a), rank(b)];
  // What is empty or broken has no place in the order, so it does not turn with it.
  if (rankA !== rankB) return rankA >= 3 || rankB >= 3 || way === "up" ? rankA - rankB : rankB - rankA;
  words ??= new Intl.Collator("en", { numeric: true });
  const up =
    typeof a === "number" ? a - (b as number) : typeof a === "string" ? words.compare(a, b as string) : 0;
  return way === "up" ? up : -up;
}

function rank(value: CellValue): number {
  if (typeof value === "number") return 0;
  if (typeof value === "string" && value !== "") return 1;
  if (typeof value === "boolean") return 2;
  return isErrorValue(value) ? 3 : 4;
}

/** @returns why it cannot be done, where a formula would read other cells than before */
function permuted(sheet: SheetDocument, area: Area, to: ReadonlyMap<number, number>): SheetDocument | string {
  const keyOf = (key: string): string => {
    const { row, column } = parseCell(key)!;
    return holds(area, row, column) ? cellName(to.get(row)!, column) : key;
  };
  const keyed = <T>(record: Readonly<Record<string, T>>): Record<string, T> =>
    Object.fromEntries(Object.entries(record).map(([key, value]) => [keyOf(key), value]));
  let leaning: string | undefined;
  const cells = Object.fromEntries(
    textsIn(sheet.cells).map(([key, text]) => {
      const { row, column } = parseCell(key)!;
      if (!holds(area, row, column)) return [key, text];
      const down = to.get(row)! - row;
      const moved = mapReferences(text, (reference) => {
        if (isElsewhere(reference.first, row) || (reference.last && isElsewhere(reference.last, row)))
          leaning ??= key;
        return down === 0 ? reference : movedReference(reference, down, 0);
      });
      return [down === 0 ? key : cellName(row + down, column), moved];
    }),
  );
  if (leaning !== undefined)
    return `${leaning} reads another row, and sorted it would read a different one: put $ before the row in its formula, or sort values only`;
  return {
    ...sheet,
    cells,
    merged: sheet.merged.map((key) => {
      const one = parseRange(key)!;
      return isInside(one, area)
        ? rangeName({ ...one, top: to.get(one.top)!, bottom: to.get(one.top)! })
        : key;
    }),
    choices: keyed(sheet.choices),
    notes: keyed(sheet.notes),
    formats: byRange(sheet.formats, area, to),
    ...(sheet.allowed ? { allowed: byRange(sheet.allowed, area, to) } : {}),
  };
}

/** In another row than the formula, and not held there. */
function isElsewhere({ row, rowFixed }: Corner, than: number): boolean {
  return row !== undefined && !rowFixed && row !== than;
}

function byRange<T extends CellFormat | object>(
  record: Readonly<Record<string, T>>,
  area: Area,
  to: ReadonlyMap<number, number>,
): Record<string, T> {
  const after: Record<string, T> = {};
  for (const [key, value] of Object.entries(record)) {
    const place = parseRange(key)!;
    const inside = common(place, area);
    const whole = inside && inside.top === area.top && inside.bottom === area.bottom;
    const pieces = !inside || whole ? [place] : [...without(place, area), ...rowsOf(inside, to)];
    for (const piece of pieces) {
      const first = cellName(piece.top, piece.left);
      const name = key.includes(":") ? `${first}:${cellName(piece.bottom, piece.right)}` : first;
      after[name] = after[name] ? { ...value, ...after[name] } : value;
    }
  }
  return after;
}

/** The rows where they stand now, those that are neighbours joined. */
function rowsOf(area: Area, to: ReadonlyMap<number, number>): Area[] {
  const rows: number[] = [];
  for (let row = area.top; row <= area.bottom; row++) rows.push(to.get(row)!);
  const runs: Area[] = [];
  for (const row of rows.sort((a, b) => a - b)) {
    const last = runs.at(-1);
    if (last && last.bottom + 1 === row) runs[runs.length - 1] = { ...last, bottom: row };
    else runs.push({ ...area, top: row, bottom: row });
  }
  return runs;
}

/** The table around a cell: as far as filled cells go without an empty row or column, less a row of column headings. */
export function tableAround(job: Job, sheet: string, row: number, column: number): Area {
  const found = job.document.sheets.find((each) => each.name === sheet);
  const filled = (r: number, c: number) => {
    if (r < 0 || c < 0) return false;
    if (found?.cells[cellName(r, c)] !== undefined) return true;
    const view = job.cell(sheet, r, c);
    return view.text !== "" || (view.value !== null && view.value !== "");
  };
  let area: Area = { top: row, left: column, bottom: row, right: column };
  const looked = new Map<number, number>();
  const most = (found?.rows ?? 0) * (found?.columnCount ?? 0);
  for (let grown = true, rounds = 0; grown && rounds <= most; rounds++) {
    const { top, left, bottom, right } = area;
    const inRow = (r: number) => range(left - 1, right + 1).some((c) => filled(r, c));
    const inColumn = (c: number) => range(looked.get(c) ?? top, bottom).some((r) => filled(r, c));
    const next = {
      top: inRow(top - 1) ? top - 1 : top,
      left: inColumn(left - 1) ? left - 1 : left,
      bottom: inRow(bottom + 1) ? bottom + 1 : bottom,
      right: inColumn(right + 1) ? right + 1 : right,
    };
    // Found empty as far down as this: with a row more, only that one is new. Rows above are looked at all anew.
    for (const c of [left - 1, right + 1])
      if (next.top === top) looked.set(c, bottom + 1);
      else looked.delete(c);
    grown = !isInside(next, area);
    area = next;
  }
  const isHeading = (r: number) =>
    range(area.left, area.right).some((c) => job.cell(sheet, r, c).format.role === "column");
  let { top } = area;
  for (let r = area.top; r < row; r++) if (isHeading(r)) top = r + 1;
  if (top === area.top && top < row && isWordsOverNumbers(job, sheet, area)) top += 1;
  return { ...area, top };
}

/** The first row of a table that has words only, some of them over numbers, is its headings. */
function isWordsOverNumbers(job: Job, sheet: string, { top, left, right }: Area): boolean {
  const value = (r: number, c: number) => job.cell(sheet, r, c).value;
  const columns = range(left, right);
  const words = columns.filter((c) => typeof value(top, c) === "string" && value(top, c) !== "");
  const rest = columns.filter((c) => value(top, c) !== null && value(top, c) !== "");
  return words.length === rest.length && words.some((c) => typeof value(top + 1, c) === "number");
}

function range(first: number, last: number): number[] {
  return Array.from({ length: last - first + 1 }, (_, i) => first + i);
}
