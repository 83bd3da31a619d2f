/** Documents made from documents: each function gives a new one that shares with the old what did not change. */
import { cellName, parseCell, parseRange, placeName, sheetPrefix, splitSheet } from "../engine/address.ts";
import { renameSheetIn } from "../engine/formula.ts";
import { limits } from "../engine/gate.ts";
import type { CellFormat, JobDocument, SheetDocument } from "./document.ts";
import { inSlabs, mayDiffer, textsIn, withTexts } from "./large-cells.ts";

/** Rows and columns that a sheet can have. */
export const largestSheet = { rows: limits.rows, columns: limits.columns } as const;

export const smallestSheet = { rows: 200, columns: 26 } as const;

export interface CellText {
  readonly sheet: string;
  readonly row: number;
  readonly column: number;
  readonly text: string;
}

export function emptySheet(name: string): SheetDocument {
  return {
    name,
    columns: {},
    rows: smallestSheet.rows,
    columnCount: smallestSheet.columns,
    cells: {},
    formats: {},
    choices: {},
    notes: {},
    merged: [],
  };
}

/** The same document when nothing differs. */
export function withCells(document: JobDocument, edits: readonly CellText[]): JobDocument {
  // The last text for a cell counts.
  const last = new Map(edits.map((edit) => [placeName(edit), edit]));
  const sheets = document.sheets.map((sheet) => {
    const own = [...last.values()].filter(
      ({ sheet: name, row, column, text }) =>
        name === sheet.name && (sheet.cells[cellName(row, column)] ?? "") !== text,
    );
    if (own.length === 0) return sheet;
    const texts = new Map(own.map(({ row, column, text }) => [cellName(row, column), text]));
    const cells = withTexts(inSlabs(sheet.cells), texts);
    let { rows, columnCount } = sheet;
    for (const { row, column, text } of own) {
      if (text === "") continue;
      rows = Math.max(rows, row + 1);
      columnCount = Math.max(columnCount, column + 1);
    }
    return { ...sheet, cells, rows, columnCount };
  });
  return sheets.every((sheet, i) => sheet === document.sheets[i]) ? document : { ...document, sheets };
}

export function withSheet(
  document: JobDocument,
  name: string,
  change: (sheet: SheetDocument) => SheetDocument,
): JobDocument {
  return {
    ...document,
    sheets: document.sheets.map((sheet) => (sheet.name === name ? change(sheet) : sheet)),
  };
}

/** Lays `format` over a range: it wins over every format that the range had before. */
export function withFormat(
  document: JobDocument,
  name: string,
  range: string,
  format: CellFormat,
): JobDocument {
  const wanted = parseRange(range);
  if (!wanted) return document;
  return withSheet(document, name, (sheet) => {
    const others: [string, CellFormat][] = [];
    let own: CellFormat = format;
    for (const [key, old] of Object.entries(sheet.formats)) {
      const place = parseRange(key);
      if (key === range) own = { ...old, ...format };
      else if (place && inside(place, wanted)) others.push([key, { ...old, ...format }]);
      else others.push([key, old]);
    }
    // The first range wins, so the new one goes before the others.
    return { ...sheet, formats: Object.fromEntries([[range, own], ...others]) };
  });
}

function inside(
  place: NonNullable<ReturnType<typeof parseRange>>,
  range: NonNullable<ReturnType<typeof parseRange>>,
): boolean {
  return (
    place.top >= range.top &&
    place.bottom <= range.bottom &&
    place.left >= range.left &&
    place.right <= range.right
  );
}

/** Renames a sheet, and with it every reference to it in formulas, names and checks. */
export function withSheetRenamed(document: JobDocument, from: string, to: string): JobDocument {
  const prefix = sheetPrefix(to);
  const moved = (place: string): string => {
    const found = splitSheet(place);
    return found?.sheet === from ? prefix + found.rest : place;
  };
  return {
    ...document,
    names: Object.fromEntries(Object.entries(document.names).map(([name, target]) => [name, moved(target)])),
    sheets: document.sheets.map((sheet) => ({
      ...sheet,
      name: sheet.name === from ? to : sheet.name,
      cells: Object.fromEntries(
        textsIn(sheet.cells).map(([cell, text]) => [
          cell,
          text.startsWith("=") ? renameSheetIn(text, from, prefix) : text,
        ]),
      ),
    })),
    check: Object.fromEntries(Object.entries(document.check).map(([place, check]) => [moved(place), check])),
  };
}

/** Takes a sheet away, and the names and checks that point to it. */
export function withoutSheet(document: JobDocument, name: string): JobDocument {
  const stays = (place: string) => splitSheet(place)?.sheet !== name;
  return {
    ...document,
    names: Object.fromEntries(Object.entries(document.names).filter(([, target]) => stays(target))),
    sheets: document.sheets.filter((sheet) => sheet.name !== name),
    check: Object.fromEntries(Object.entries(document.check).filter(([place]) => stays(place))),
  };
}

export function withSheetMoved(document: JobDocument, name: string, to: number): JobDocument {
  const sheets = document.sheets.filter((sheet) => sheet.name !== name);
  const moved = document.sheets.find((sheet) => sheet.name === name);
  if (!moved) return document;
  sheets.splice(Math.max(0, Math.min(to, sheets.length)), 0, moved);
  return sheets.every((sheet, i) => sheet === document.sheets[i]) ? document : { ...document, sheets };
}

/** The cells that differ between two documents; undefined when sheets or names differ too. */
export function differingCells(before: JobDocument, after: JobDocument): CellText[] | undefined {
  if (before.names !== after.names || before.sheets.length !== after.sheets.length) return undefined;
  const edits: CellText[] = [];
  for (const [i, sheet] of after.sheets.entries()) {
    const old = before.sheets[i]!;
    if (old.name !== sheet.name) return undefined;
    if (old.cells === sheet.cells) continue;
    for (const cell of mayDiffer(old.cells, sheet.cells)) {
      const text = sheet.cells[cell] ?? "";
      const place = text === (old.cells[cell] ?? "") ? undefined : parseCell(cell);
      if (place) edits.push({ sheet: sheet.name, ...place, text });
    }
  }
  return edits;
}

/** What a step that types into cells is called. */
export function wordsForCells(edits: readonly CellText[]): string {
  const [first] = edits;
  if (!first) return "Nothing changed";
  const where = placeName(first);
  if (edits.length === 1) return first.text === "" ? `Emptied ${where}` : `Typed in ${where}`;
  return `${edits.every((edit) => edit.text === "") ? "Emptied" : "Changed"} ${edits.length} cells from ${where}`;
}
