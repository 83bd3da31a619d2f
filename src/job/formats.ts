/** Which format a cell has, of the single cells and ranges that a sheet lists. */
import { cellName, parseRange } from "../engine/address.ts";
import type { CellFormat, SheetDocument } from "./document.ts";

interface RangeFormat {
  readonly top: number;
  readonly left: number;
  readonly bottom: number;
  readonly right: number;
  readonly format: CellFormat;
}

const cache = new WeakMap<object, readonly RangeFormat[]>();
const none: CellFormat = {};

/** Attribute by attribute: the cell's own format, else the first range that has the attribute. */
export function formatOf(sheet: Pick<SheetDocument, "formats">, row: number, column: number): CellFormat {
  const own = sheet.formats[cellName(row, column)];
  const ranges = rangesOf(sheet.formats).filter(
    (range) => row >= range.top && row <= range.bottom && column >= range.left && column <= range.right,
  );
  if (ranges.length === 0) return own ?? none;
  if (ranges.length === 1 && !own) return ranges[0]!.format;
  return Object.assign({}, ...ranges.map((range) => range.format).reverse(), own);
}

function rangesOf(formats: SheetDocument["formats"]): readonly RangeFormat[] {
  let found = cache.get(formats);
  if (!found) {
    found = Object.entries(formats).flatMap(([key, format]) => {
      const range = key.includes(":") ? parseRange(key) : undefined;
      return range ? [{ ...range, format }] : [];
    });
    cache.set(formats, found);
  }
  return found;
}
