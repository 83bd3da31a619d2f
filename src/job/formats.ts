/** Which format a cell has, of the single cells and ranges that a sheet lists. */
import { cellName, parseRange } from "../engine/address.ts";
import type { Area } from "./areas.ts";
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

/** Adds a range behind the others. Where one of the very same cells is among them, this one goes in by halves. */
export function addRange(after: Record<string, CellFormat>, area: Area, format: CellFormat): void {
  const { top, left, bottom, right } = area;
  // A range stays one even when a single cell is left: single cells overrule ranges.
  const key = `${cellName(top, left)}:${cellName(bottom, right)}`;
  const same = after[key];
  if (!same) after[key] = format;
  else if (bottom > top) {
    const middle = (top + bottom) >> 1;
    addRange(after, { ...area, bottom: middle }, format);
    addRange(after, { ...area, top: middle + 1 }, format);
  } else if (right > left) {
    const middle = (left + right) >> 1;
    addRange(after, { ...area, right: middle }, format);
    addRange(after, { ...area, left: middle + 1 }, format);
  } else {
    const ranges = Object.entries(after).filter(([each]) => each.includes(":"));
    const known = formatOf({ formats: Object.fromEntries(ranges) }, top, left);
    const more = Object.entries(format).filter(([attribute]) => !Object.hasOwn(known, attribute));
    after[key] = { ...same, ...Object.fromEntries(more) };
  }
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
