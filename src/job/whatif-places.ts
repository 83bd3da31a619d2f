/** Cells as a person names them in a field: by name, by address on the sheet in hand, or with the sheet before it. */
import { cellName, parseRange, sheetPrefix, splitSheet } from "../engine/address.ts";
import { isErrorValue, type Place } from "../engine/values.ts";
import { type Area, sizeOf } from "./areas.ts";
import type { Job } from "./job.ts";
import { namedArea } from "./named.ts";
import { nameOfCell } from "./names.ts";

export interface SheetArea extends Area {
  readonly sheet: string;
}

/** @returns the range that `text` names, or why it names none; a text is a reason */
export function areaFrom(job: Job, text: string, sheet: string): SheetArea | string {
  const wanted = text.trim();
  if (wanted === "") return "name a cell, such as B5, or one of the job's names";
  const named = namedArea(job, wanted);
  if (named) return named;
  const split = splitSheet(wanted);
  const area = parseRange(split ? split.rest : wanted);
  if (!area) return `there is no cell or name "${wanted}"`;
  const wish = split?.sheet ?? sheet;
  const on = job.document.sheets.find(({ name }) => name.toLowerCase() === wish.toLowerCase());
  return on ? { sheet: on.name, ...area } : `there is no sheet "${wish}"`;
}

export function placeFrom(job: Job, text: string, sheet: string): Place | string {
  const area = areaFrom(job, text, sheet);
  if (typeof area === "string") return area;
  if (sizeOf(area) > 1) return `${text.trim()} is ${sizeOf(area)} cells: name one of them`;
  return { sheet: area.sheet, row: area.top, column: area.left };
}

/** Several cells and ranges, with commas or semicolons between them. */
export function placesFrom(job: Job, text: string, sheet: string, most: number): readonly Place[] | string {
  const parts = text.split(/[,;]/).filter((part) => part.trim() !== "");
  if (parts.length === 0) return "name a cell, such as B5, or one of the job's names";
  const places: Place[] = [];
  for (const part of parts) {
    const area = areaFrom(job, part, sheet);
    if (typeof area === "string") return area;
    if (places.length + sizeOf(area) > most) return `at most ${most} cells, please`;
    for (let row = area.top; row <= area.bottom; row++)
      for (let column = area.left; column <= area.right; column++)
        places.push({ sheet: area.sheet, row, column });
  }
  return places;
}

/** The cell as a person names it: by its name, else by its address, with the sheet where that is another one. */
export function wordsFor(job: Job, place: Place, sheet?: string): string {
  const name = nameOfCell(job.document, place.sheet, place.row, place.column);
  const prefix = place.sheet === sheet ? "" : sheetPrefix(place.sheet);
  return name ?? prefix + cellName(place.row, place.column);
}

/** What the cell is: the words to the left of it; its name or address where there are none. */
export function labelOf(job: Job, place: Place): string {
  for (let column = place.column - 1; column >= 0; column--) {
    const { value } = job.cell(place.sheet, place.row, column);
    if (typeof value === "string" && value.trim() !== "") return value.trim();
  }
  return wordsFor(job, place);
}

/**
 * Cells whose change may change a value, the likely ones first: blanks with a number and a name, and the near ones.
 *
 * @param pause settles after the page has had its turn
 */
export async function inputsOf(
  job: Job,
  place: Place,
  pause: () => Promise<void> = () => Promise.resolve(),
): Promise<Place[]> {
  const all = (await job.precedents(place)).slice(1);
  const found: { readonly one: Place; readonly rank: readonly number[] }[] = [];
  let end = performance.now() + 8;
  for (const [distance, one] of all.entries()) {
    if (distance % 64 === 63 && performance.now() >= end) {
      await pause();
      end = performance.now() + 8;
    }
    const { text, value, format, spilledFrom, name } = job.cell(one.sheet, one.row, one.column);
    if (text === "" || spilledFrom !== undefined || isErrorValue(value)) continue;
    const blank = format.role === "input" || !text.startsWith("=");
    const unlikely = [!blank, typeof value !== "number", name === undefined].map(Number);
    if (blank || name !== undefined) found.push({ one, rank: [...unlikely, distance] });
  }
  return found.sort((a, b) => inOrder(a.rank, b.rank)).map(({ one }) => one);
}

function inOrder(a: readonly number[], b: readonly number[]): number {
  const i = a.findIndex((rank, at) => rank !== b[at]);
  return i < 0 ? 0 : a[i]! - b[i]!;
}
