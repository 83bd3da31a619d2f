/** Commands that insert, delete and move whole rows and columns, and that move a block of cells. */
import { cellName, parseCell, parseRange } from "../engine/address.ts";
import { limits } from "../engine/gate.ts";
import type { Place } from "../engine/values.ts";
import { type Area, common, holds, isInside, moved, without } from "./areas.ts";
import { smallestSheet, withSheet } from "./changes.ts";
import type { JobDocument, SheetDocument } from "./document.ts";
import type { Job } from "./job.ts";
import { lastUsed, tooManyCells } from "./large-cells.ts";
import { type Axis, type LineChange, lineAfter, linesAfter, spanAfter } from "./lines.ts";
import { linesOf, linesText } from "./lines-shown.ts";
import { lockReasonIn, withUnlocked } from "./locks.ts";
import { linesMoved, type Moves } from "./moves.ts";
import { rangeName } from "./references.ts";
import { type OnSheet, type Relocation, relocated } from "./relocate.ts";

const whole: Area = { top: 0, left: 0, bottom: limits.rows - 1, right: limits.columns - 1 };

/**
 * Puts empty rows or columns in before line `at`. They take the formats that the lines on both sides share.
 *
 * @returns why it cannot be done; undefined when it is done
 */
export function insertLines(
  job: Job,
  sheet: string,
  axis: Axis,
  at: number,
  count: number,
): string | undefined {
  const found = sheetOf(job, sheet);
  if (!found || count < 1) return undefined;
  const many = tooManyCells(job.document.sheets);
  if (many !== undefined) return many;
  const most = axis === "row" ? limits.rows : limits.columns;
  const used = lastUsed(found.cells)[axis];
  if (Math.max(used + 1, at) + count > most)
    return `a sheet may have ${most} ${axis}s, and with ${count} more the last cells would be past that`;
  const change: LineChange = { act: "insert", at, count };
  const after = withLines(job.document, sheet, axis, change);
  job.put(
    withUnlocked(withSharedFormats(after, found, axis, at, count), sheet, bandOf(axis, at, count)),
    wordsFor("Inserted", axis, at, count, sheet),
    linesMoved(sheet, axis, change),
  );
  return undefined;
}

/** @returns why it cannot be done; undefined when it is done */
export function deleteLines(
  job: Job,
  sheet: string,
  axis: Axis,
  at: number,
  count: number,
): string | undefined {
  const found = sheetOf(job, sheet);
  if (!found || count < 1) return undefined;
  const many = tooManyCells(job.document.sheets);
  if (many !== undefined) return many;
  const lock = lockReasonIn(found, bandOf(axis, at, count));
  if (lock !== undefined) return lock;
  const change: LineChange = { act: "delete", at, count };
  job.put(
    withLines(job.document, sheet, axis, change),
    wordsFor("Deleted", axis, at, count, sheet),
    linesMoved(sheet, axis, change),
  );
  return undefined;
}

/**
 * Moves rows or columns to before line `to`.
 *
 * @returns why it cannot be done; undefined when it is done
 */
export function moveLines(
  job: Job,
  sheet: string,
  axis: Axis,
  at: number,
  count: number,
  to: number,
): string | undefined {
  const found = sheetOf(job, sheet);
  if (!found || count < 1 || (to >= at && to <= at + count)) return undefined;
  const many = tooManyCells(job.document.sheets);
  if (many !== undefined) return many;
  const change: LineChange = { act: "move", at, count, to };
  for (const key of found.merged) {
    const area = parseRange(key)!;
    const [first, last] = axis === "row" ? [area.top, area.bottom] : [area.left, area.right];
    const runs = linesAfter(change, first, last);
    if (runs.length !== 1) return `the merged cells ${key} would be torn apart`;
  }
  job.put(
    withLines(job.document, sheet, axis, change),
    wordsFor("Moved", axis, at, count, sheet),
    linesMoved(sheet, axis, change),
  );
  return undefined;
}

/**
 * Moves a block of cells with all that belongs to them; what stood in the new place goes.
 *
 * @returns why it cannot be done; undefined when it is done
 */
export function moveBlock(
  job: Job,
  from: { readonly sheet: string; readonly area: Area },
  to: { readonly sheet: string; readonly row: number; readonly column: number },
): string | undefined {
  const source = sheetOf(job, from.sheet);
  const target = sheetOf(job, to.sheet);
  if (!source || !target) return "the sheet of the cells is gone";
  const many = tooManyCells(job.document.sheets);
  if (many !== undefined) return many;
  const area = from.area;
  const down = to.row - area.top;
  const right = to.column - area.left;
  const goal = moved(area, down, right);
  if (from.sheet === to.sheet && down === 0 && right === 0) return undefined;
  if (!isInside(goal, whole)) return "the cells would be past the edge of the largest sheet";
  const lock = lockReasonIn(source, area) ?? lockReasonIn(target, goal);
  if (lock !== undefined) return lock;
  const torn = tornBy(source, area) ?? tornBy(target, goal);
  if (torn !== undefined) return `the merged cells ${torn} would be torn apart`;
  const move = blockMove(from.sheet, area, to.sheet, goal);
  const after = relocated(job.document, move);
  job.put(
    withSheet(after, to.sheet, (sheet) => ({
      ...sheet,
      rows: Math.max(sheet.rows, goal.bottom + 1),
      columnCount: Math.max(sheet.columnCount, goal.right + 1),
    })),
    `Moved ${rangeName(area)} of ${from.sheet} to ${cellName(goal.top, goal.left)}${to.sheet === from.sheet ? "" : ` of ${to.sheet}`}`,
    blockMoved(move, { sheet: from.sheet, area }, { sheet: to.sheet, area: goal }),
  );
  return undefined;
}

function blockMove(sheet: string, area: Area, toSheet: string, goal: Area): Relocation {
  const down = goal.top - area.top;
  const right = goal.left - area.left;
  return {
    sheet,
    toSheet,
    cell: (row, column) =>
      holds(area, row, column)
        ? { sheet: toSheet, row: row + down, column: column + right }
        : { sheet, row, column },
    overwrites: (row, column) => holds(goal, row, column),
    reference: (place) =>
      isInside(place, area) ? { sheet: toSheet, area: moved(place, down, right) } : { sheet, area: place },
    pieces: (name, place) => {
      const comes = name === sheet ? common(place, area) : undefined;
      let stays = name === sheet ? without(place, area) : [place];
      if (name === toSheet) stays = stays.flatMap((piece) => without(piece, goal));
      return [
        ...stays.map((piece) => ({ sheet: name, area: piece })),
        ...(comes ? [{ sheet: toSheet, area: moved(comes, down, right) }] : []),
      ];
    },
  };
}

/** Where the cells of the block go; those that stood in the new place are gone. */
function blockMoved(move: Relocation, source: OnSheet, goal: OnSheet): Moves {
  const isIn = ({ sheet, area }: OnSheet, place: Place) =>
    place.sheet === sheet && holds(area, place.row, place.column);
  const down = goal.area.top - source.area.top;
  const right = goal.area.left - source.area.left;
  return {
    to(place) {
      if (isIn(source, place)) return move.cell(place.row, place.column);
      return isIn(goal, place) ? undefined : place;
    },
    from(place) {
      if (isIn(goal, place))
        return { sheet: source.sheet, row: place.row - down, column: place.column - right };
      return isIn(source, place) ? undefined : place;
    },
  };
}

function lineMove(sheet: string, axis: Axis, change: LineChange): Relocation {
  const isRow = axis === "row";
  const most = isRow ? limits.rows : limits.columns;
  const span = (area: Area) =>
    (isRow ? [area.top, area.bottom] : [area.left, area.right]) as [number, number];
  const put = (area: Area, first: number, last: number): Area =>
    isRow ? { ...area, top: first, bottom: last } : { ...area, left: first, right: last };
  return {
    sheet,
    toSheet: sheet,
    cell(row, column) {
      const line = lineAfter(change, isRow ? row : column);
      if (line === undefined || line >= most) return undefined;
      return isRow ? { sheet, row: line, column } : { sheet, row, column: line };
    },
    reference(area) {
      const [first, last] = span(area);
      // A reference to a whole column has no rows to lose.
      if (first === 0 && last === most - 1) return { sheet, area };
      const after = spanAfter(change, first, last);
      return after && after.first < most
        ? { sheet, area: put(area, after.first, Math.min(after.last, most - 1)) }
        : undefined;
    },
    pieces(name, area) {
      if (name !== sheet) return [{ sheet: name, area }];
      return linesAfter(change, ...span(area))
        .filter((run) => run.first < most)
        .map((run) => ({ sheet, area: put(area, run.first, Math.min(run.last, most - 1)) }));
    },
  };
}

function withLines(document: JobDocument, name: string, axis: Axis, change: LineChange): JobDocument {
  const after = relocated(document, lineMove(name, axis, change));
  return withSheet(after, name, (sheet) => sizesAfter(sheet, axis, change));
}

/** Widths, hidden and frozen lines, and the room of the sheet. */
function sizesAfter(sheet: SheetDocument, axis: Axis, change: LineChange): SheetDocument {
  const { hidden, freeze, ...rest } = sheet;
  const grows = change.act === "insert" ? change.count : change.act === "delete" ? -change.count : 0;
  const size = (now: number, least: number, most: number) =>
    Math.max(Math.min(least, now), Math.min(most, now + grows));
  const spans = linesOf(hidden ?? [], axis).flatMap(({ first, last }) => linesAfter(change, first, last));
  const kept = [
    ...spans.map((span) => linesText(axis, span)),
    ...(hidden ?? []).filter((text) => /\d/.test(text) !== (axis === "row")),
  ];
  const corner = freeze === undefined ? undefined : freezeAfter(freeze, axis, change);
  return {
    ...rest,
    columns: axis === "row" ? sheet.columns : columnsAfter(sheet.columns, change),
    rows: axis === "row" ? size(sheet.rows, smallestSheet.rows, limits.rows) : sheet.rows,
    columnCount:
      axis === "column" ? size(sheet.columnCount, smallestSheet.columns, limits.columns) : sheet.columnCount,
    ...(kept.length > 0 ? { hidden: kept } : {}),
    ...(corner === undefined ? {} : { freeze: corner }),
  };
}

function columnsAfter(columns: SheetDocument["columns"], change: LineChange): SheetDocument["columns"] {
  return Object.fromEntries(
    Object.entries(columns).flatMap(([letters, width]) => {
      const to = lineAfter(change, parseCell(`${letters}1`)!.column);
      return to === undefined || to >= limits.columns ? [] : [[cellName(0, to).slice(0, -1), width]];
    }),
  );
}

/** The frozen part keeps its lines: it grows by what is put among them and shrinks by what is taken out. */
function freezeAfter(freeze: string, axis: Axis, change: LineChange): string | undefined {
  const { row, column } = parseCell(freeze)!;
  const count = axis === "row" ? row : column;
  if (change.act === "move" || count === 0) return freeze;
  const span = spanAfter(change, 0, count - 1);
  const left = span ? span.last + 1 : 0;
  const [rows, columns] = axis === "row" ? [left, column] : [row, left];
  return rows === 0 && columns === 0 ? undefined : cellName(rows, columns);
}

/** A new line among single cells of one format gets that format too; ranges grow by themselves. */
function withSharedFormats(
  document: JobDocument,
  before: SheetDocument,
  axis: Axis,
  at: number,
  count: number,
): JobDocument {
  const added: [string, SheetDocument["formats"][string]][] = [];
  for (const [key, format] of Object.entries(before.formats)) {
    const cell = key.includes(":") ? undefined : parseCell(key);
    if (!cell || (axis === "row" ? cell.row : cell.column) !== at - 1) continue;
    const next = axis === "row" ? cellName(at, cell.column) : cellName(cell.row, at);
    if (JSON.stringify(before.formats[next]) !== JSON.stringify(format)) continue;
    for (let line = at; line < at + count; line++)
      added.push([axis === "row" ? cellName(line, cell.column) : cellName(cell.row, line), format]);
  }
  if (added.length === 0) return document;
  return withSheet(document, before.name, (sheet) => ({
    ...sheet,
    formats: { ...sheet.formats, ...Object.fromEntries(added) },
  }));
}

function tornBy(sheet: SheetDocument, area: Area): string | undefined {
  return sheet.merged.find((key) => {
    const merged = parseRange(key)!;
    return common(merged, area) && !isInside(merged, area);
  });
}

function bandOf(axis: Axis, at: number, count: number): Area {
  return axis === "row"
    ? { ...whole, top: at, bottom: at + count - 1 }
    : { ...whole, left: at, right: at + count - 1 };
}

function sheetOf(job: Job, name: string): SheetDocument | undefined {
  return job.document.sheets.find((sheet) => sheet.name === name);
}

function wordsFor(did: string, axis: Axis, at: number, count: number, sheet: string): string {
  const text = linesText(axis, { first: at, last: at + count - 1 });
  const [first, last] = text.split(":");
  return count === 1
    ? `${did} ${axis} ${first} in ${sheet}`
    : `${did} ${axis}s ${first} to ${last} in ${sheet}`;
}
