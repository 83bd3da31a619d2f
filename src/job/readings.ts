/**
 * What a cell gives the engine for what was typed: a quantity such as `12.7mm` becomes the number in the cell's unit -
 * the job's unit for a length, degrees for an angle. The text in the job stays as typed, and is read again when the
 * unit or the format changes.
 */
import { cellName, parseCell } from "../engine/address.ts";
import type { Place } from "../engine/values.ts";
import { readDecimal } from "./decimal.ts";
import type { JobDocument, SheetDocument } from "./document.ts";
import { formatOf } from "./formats.ts";
import { foundIn } from "./large-cells.ts";
import { inUnit, nearest, type QuantityKind, readFraction, readQuantity } from "./quantity.ts";

export type LengthUnit = "mm" | "in";

/** What kind of number a cell takes, and in which unit; undefined when it takes text as text. */
interface Wanted {
  readonly kind: QuantityKind | undefined;
  readonly length: LengthUnit;
}

const wordRoles: readonly (string | undefined)[] = ["head", "label", "note", "caution", "column"];

function wantedAt(sheet: SheetDocument, key: string, unit: LengthUnit): Wanted | undefined {
  const { row, column } = parseCell(key)!;
  const { as, role, unit: beside } = formatOf(sheet, row, column);
  if (as === "text" || wordRoles.includes(role) || sheet.choices[key]) return undefined;
  if (as === "length") return { kind: "length", length: unit };
  if (as === "fraction" || as === "thou") return { kind: "length", length: "in" };
  if (as === "angle" || as === "dms") return { kind: "angle", length: unit };
  if (as === "percent" || as === "turns" || as === "date") return undefined;
  if (beside === "mm" || beside === "in") return { kind: "length", length: beside };
  return { kind: undefined, length: unit };
}

const looksLikeOne = /^\s*[+\-−]?\s*[\d.,].*[^\d.\s]/;

/** True for text that may be a quantity: neither formula nor plain number. */
export function mayBeQuantity(text: string): boolean {
  return text.length <= 60 && looksLikeOne.test(text);
}

const plainNumber = /^\s*[+-]?(?:\d+\.?\d*|\.\d+)(?:e[+-]?\d+)?\s*%?\s*$/i;

/** True for a number that would be shown in another way than it is written: `007`, `1.50`, `5%`. */
function losesItsWriting(text: string): boolean {
  return text.length <= 60 && plainNumber.test(text) && String(Number(text)) !== text.trim();
}

/** The text that the engine gets for the cell `key`. */
export function fedText(sheet: SheetDocument, key: string, text: string, unit: LengthUnit): string {
  const date = dateAt(sheet, key, text);
  if (date !== undefined) return String(date);
  if (losesItsWriting(text) && showsText(sheet, key)) return `'${text}`;
  if (!mayBeQuantity(text)) return text;
  const wanted = wantedAt(sheet, key, unit);
  if (!wanted) return text;
  const decimal = readDecimal(text);
  if (decimal) return decimal.text;
  const found = readQuantity(text);
  if (found && found.kind === (wanted.kind ?? found.kind))
    return String(inUnit(found, found.kind === "angle" ? "deg" : wanted.length));
  const bare = takesBareFraction(wanted) ? readFraction(text) : undefined;
  return bare ? String(nearest(bare.above, bare.below)) : text;
}

function showsText(sheet: SheetDocument, key: string): boolean {
  const { row, column } = parseCell(key)!;
  return formatOf(sheet, row, column).as === "text";
}

/** The number that a quantity typed into a cell stands for there; undefined for anything else. */
export function quantityAt(
  document: JobDocument,
  place: Place,
  text: string,
  unit: LengthUnit,
): number | undefined {
  const sheet = document.sheets.find(({ name }) => name === place.sheet);
  const fed = sheet ? fedText(sheet, cellName(place.row, place.column), text, unit) : text;
  return fed === text || fed.startsWith("'") ? undefined : Number(fed);
}

/** Nobody says 7/16 of a millimetre; where inches are meant, a fraction needs no unit. */
function takesBareFraction(wanted: Wanted): boolean {
  return wanted.kind === "angle" || (wanted.kind === "length" && wanted.length === "in");
}

/** Why a quantity stays text; undefined where it does not. */
export function unreadReason(
  sheet: SheetDocument,
  key: string,
  text: string,
  unit: LengthUnit,
): string | undefined {
  const wanted = mayBeQuantity(text) ? wantedAt(sheet, key, unit) : undefined;
  if (!wanted?.kind) return undefined;
  const found = readQuantity(text);
  if (found && found.kind !== wanted.kind)
    return `${text.trim()} is ${found.kind === "length" ? "a length" : "an angle"}, this cell takes ${wanted.kind === "length" ? "a length" : "an angle"}`;
  return readFraction(text) && !takesBareFraction(wanted)
    ? `${text.trim()} of what: write ${text.trim()} in`
    : undefined;
}

/** How to write what looks like a number and is kept as text; undefined where it is no fraction, or is one that is read. */
export function keptAsText(
  document: JobDocument,
  { sheet: name, row, column }: Place,
  text: string,
  unit: LengthUnit,
): string | undefined {
  const sheet = document.sheets.find((one) => one.name === name);
  const found = sheet && /^([+-]?)\s*(?:(\d+)[\s-]+)?(\d+\s*\/\s*\d+)$/.exec(text.trim());
  const key = cellName(row, column);
  if (!found || fedText(sheet, key, text, unit) !== text) return undefined;
  const wanted = wantedAt(sheet, key, unit);
  if (!wanted || wanted.kind) return undefined;
  if (!readFraction(text)) return "Kept as text: nothing can be divided by 0";
  const [, sign, whole, fraction] = found;
  const number = whole === undefined ? `${sign}${fraction}` : `${sign}(${whole}+${fraction})`;
  return `Kept as text; ${text.trim()} in for a length, =${number} for a number`;
}

const firstDay = Date.UTC(1899, 11, 30);

/** Days since 1899-12-30 for a date typed as 2026-11-25 into a cell that shows dates. */
function dateAt(sheet: SheetDocument, key: string, text: string): number | undefined {
  const found = /^\s*(\d{4})-(\d\d)-(\d\d)\s*$/.exec(text);
  if (!found) return undefined;
  const { row, column } = parseCell(key)!;
  if (formatOf(sheet, row, column).as !== "date") return undefined;
  const [year, month, day] = found.slice(1).map(Number) as [number, number, number];
  const time = Date.UTC(year, month - 1, day);
  const there = new Date(time);
  const isDay = there.getUTCMonth() === month - 1 && there.getUTCDate() === day;
  return isDay && time >= firstDay ? (time - firstDay) / 86_400_000 : undefined;
}

const candidates = new WeakMap<object, readonly string[]>();

/** Cells whose text may be read otherwise under another unit or format. */
export function readableCells(cells: SheetDocument["cells"]): readonly string[] {
  return foundIn(cells, candidates, (piece) =>
    Object.keys(piece).filter((key) => {
      const text = piece[key]!;
      return mayBeQuantity(text) || losesItsWriting(text) || /^\s*\d{4}-\d\d/.test(text);
    }),
  ).flat();
}
