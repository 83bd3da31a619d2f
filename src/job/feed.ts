/** What the engine is told when one document follows another. */
import { cellName, parseCell } from "../engine/address.ts";
import { type CellText, differingCells } from "./changes.ts";
import type { JobDocument, SheetDocument } from "./document.ts";
import { slabsIn, withTexts } from "./large-cells.ts";
import { fedText, type LengthUnit, readableCells } from "./readings.ts";

/** The cells of a document as the engine gets them. */
export function fed(document: JobDocument, unit: LengthUnit) {
  return {
    names: document.names,
    sheets: document.sheets.map((sheet) => {
      const texts = new Map<string, string>();
      for (const key of readableCells(sheet.cells)) {
        const typed = sheet.cells[key]!;
        const text = fedText(sheet, key, typed, unit);
        if (text !== typed) texts.set(key, text);
      }
      const cells = texts.size === 0 ? sheet.cells : withTexts(sheet.cells, texts);
      const pieces = slabsIn(cells);
      return pieces.length > 0 ? { name: sheet.name, cells, pieces } : { name: sheet.name, cells };
    }),
  };
}

/** The cells that the engine must be given anew; undefined when sheets or names differ and all of it must be. */
export function fedEdits(
  before: JobDocument,
  after: JobDocument,
  unit: LengthUnit,
): readonly CellText[] | undefined {
  const edits = differingCells(before, after);
  if (!edits) return undefined;
  const typed = edits.map((edit) => {
    const sheet = after.sheets.find(({ name }) => name === edit.sheet)!;
    return { ...edit, text: fedText(sheet, keyOf(edit), edit.text, unit) };
  });
  const read = after.sheets.flatMap((sheet, i) => {
    const old = before.sheets[i]!;
    const same = old.formats === sheet.formats && old.choices === sheet.choices;
    return same ? [] : reread(old, sheet, unit, unit);
  });
  return [...typed, ...read];
}

/** The cells that read otherwise after a change of the unit. */
export function unitEdits(document: JobDocument, from: LengthUnit, to: LengthUnit): CellText[] {
  return document.sheets.flatMap((sheet) => reread(sheet, sheet, from, to));
}

function reread(old: SheetDocument, sheet: SheetDocument, from: LengthUnit, to: LengthUnit): CellText[] {
  return readableCells(sheet.cells).flatMap((key) => {
    const text = sheet.cells[key]!;
    // What was typed anew is told anyway.
    if (old.cells[key] !== text) return [];
    const now = fedText(sheet, key, text, to);
    return now === fedText(old, key, text, from)
      ? []
      : [{ sheet: sheet.name, ...parseCell(key)!, text: now }];
  });
}

function keyOf({ row, column }: CellText): string {
  return cellName(row, column);
}
