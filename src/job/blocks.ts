/** Commands on a block of cells: merging, notes, choices, and formats taken away. */
import { cellName, parseCell, parseRange } from "../engine/address.ts";
import { type Area, common, holds, without } from "./areas.ts";
import { withSheet } from "./changes.ts";
import type { CellFormat, SheetDocument } from "./document.ts";
import { addRange } from "./formats.ts";
import type { Job } from "./job.ts";
import type { Draft } from "./one-step.ts";
import { rangeName } from "./references.ts";

/**
 * Shows a range as one cell. What the other cells hold stays in them, out of sight.
 *
 * @returns why it cannot be done; undefined when it is done
 */
export function mergeCells(job: Job, sheet: string, area: Area): string | undefined {
  const found = sheetOf(job, sheet);
  if (!found) return undefined;
  if (area.top === area.bottom && area.left === area.right) return "select two cells or more to merge them";
  const others = found.merged.filter((key) => !common(parseRange(key)!, area));
  change(job, sheet, { merged: [...others, rangeName(area)] }, `Merged ${rangeName(area)} in ${sheet}`);
  return undefined;
}

/** Shows the cells of merged ranges that reach into `area` by themselves again. */
export function splitCells(job: Job, sheet: string, area: Area): string | undefined {
  const found = sheetOf(job, sheet);
  if (!found) return undefined;
  const merged = found.merged.filter((key) => !common(parseRange(key)!, area));
  if (merged.length === found.merged.length) return "no merged cells are selected";
  change(job, sheet, { merged }, `Split ${rangeName(area)} in ${sheet}`);
  return undefined;
}

/** Keeps a remark with a cell; "" takes it away. */
export function setNote(job: Job, sheet: string, row: number, column: number, text: string): void {
  const found = sheetOf(job, sheet);
  const key = cellName(row, column);
  const note = text.trim();
  if (!found || (found.notes[key] ?? "") === note) return;
  const { [key]: _, ...others } = found.notes;
  change(
    job,
    sheet,
    { notes: note === "" ? others : { ...others, [key]: note } },
    `${note === "" ? "Took away" : "Wrote"} the note of ${key} in ${sheet}`,
  );
}

/** Words that may be chosen in every cell of a range; none of them lets anything be typed. */
export function setChoices(job: Draft, sheet: string, area: Area, words: readonly string[]): void {
  const found = sheetOf(job, sheet);
  if (!found) return;
  const kept = [...new Set(words.map((word) => word.trim()).filter(Boolean))];
  const choices = Object.fromEntries(
    Object.entries(found.choices).filter(([key]) => {
      const { row, column } = parseCell(key)!;
      return !holds(area, row, column);
    }),
  );
  if (kept.length > 0) for (const key of keysOf(area)) choices[key] = kept;
  if (JSON.stringify(choices) === JSON.stringify(found.choices)) return;
  const did = kept.length > 0 ? "Set" : "Took away";
  change(job, sheet, { choices }, `${did} the choices of ${rangeName(area)} in ${sheet}`);
}

/** Takes every format from a range. */
export function clearFormats(job: Job, sheet: string, area: Area): void {
  const found = sheetOf(job, sheet);
  const formats = found && formatsOutside(found, area);
  if (!formats || JSON.stringify(formats) === JSON.stringify(found.formats)) return;
  change(job, sheet, { formats }, `Took away the formats of ${rangeName(area)} in ${sheet}`);
}

/** Gives a range this format and no other. */
export function replaceFormats(job: Job, sheet: string, area: Area, format: CellFormat): void {
  const found = sheetOf(job, sheet);
  if (!found) return;
  const formats = { [rangeName(area)]: format, ...formatsOutside(found, area) };
  change(job, sheet, { formats }, `Changed the format of ${rangeName(area)} in ${sheet}`);
}

function formatsOutside(sheet: SheetDocument, area: Area): Record<string, CellFormat> {
  const formats: Record<string, CellFormat> = {};
  for (const [key, format] of Object.entries(sheet.formats)) {
    const place = parseRange(key)!;
    if (key.includes(":")) for (const piece of without(place, area)) addRange(formats, piece, format);
    else if (!common(place, area)) formats[key] = format;
  }
  return formats;
}

/** Sets the widths of columns, px at normal type. */
export function setWidths(job: Job, sheet: string, widths: ReadonlyMap<number, number>): void {
  const found = sheetOf(job, sheet);
  const letters = [...widths.keys()].map((column) => cellName(0, column).slice(0, -1));
  if (!found || letters.length === 0) return;
  const columns = { ...found.columns };
  for (const [column, width] of widths)
    columns[cellName(0, column).slice(0, -1)] = Math.round(Math.max(0, Math.min(width, 4000)));
  if (JSON.stringify(columns) === JSON.stringify(found.columns)) return;
  const of = letters.length === 1 ? `column ${letters[0]}` : `columns ${letters[0]} to ${letters.at(-1)}`;
  change(job, sheet, { columns }, `Changed the width of ${of} in ${sheet}`);
}

function keysOf(area: Area): string[] {
  const keys: string[] = [];
  for (let row = area.top; row <= area.bottom; row++)
    for (let column = area.left; column <= area.right; column++) keys.push(cellName(row, column));
  return keys;
}

function sheetOf(job: Draft, name: string): SheetDocument | undefined {
  return job.document.sheets.find((sheet) => sheet.name === name);
}

function change(job: Draft, sheet: string, part: Partial<SheetDocument>, what: string): void {
  job.put(
    withSheet(job.document, sheet, (old) => ({ ...old, ...part })),
    what,
  );
}
