/** Finding words in the cells of a job, and putting others in their place. */
import { parseCell } from "../engine/address.ts";
import { cellsOf } from "../engine/packed-cells.ts";
import type { Place } from "../engine/values.ts";
import { cellText } from "./format.ts";
import type { CellEdit, Job } from "./job.ts";
import { type Cells, slabsIn } from "./large-cells.ts";
import { isLocked } from "./locks.ts";

export interface Wish {
  readonly text: string;
  /** Look at what cells show as well as at what was typed. */
  readonly values: boolean;
  /** The only sheet that is looked at. */
  readonly sheet?: string;
}

export interface Found {
  /** Sheet by sheet in reading order. */
  readonly places: readonly Place[];
  /** False where there are more: very many are of no use to anyone. */
  readonly all: boolean;
}

/** Most cells that are found. */
export const mostFound = 50_000;
/** Cells that are looked at between two turns of the page; each costs a few microseconds. */
const inSlice = 1500;

/**
 * Cells that hold the text; capitals do not count.
 *
 * @returns looks through slice by slice, and tells after each how many cells it was
 */
export function* findIn(job: Job, { text, values, sheet: only }: Wish): Generator<number, Found> {
  const wanted = text.toLowerCase();
  const places: Place[] = [];
  let looked = 0;
  for (const { name: sheet, cells } of wanted === "" ? [] : job.document.sheets) {
    if (only !== undefined && sheet !== only) continue;
    for (const piece of piecesOf(cells))
      for (const key of inReadingOrder(Object.keys(piece))) {
        const place = { sheet, ...key };
        const view = job.cell(sheet, place.row, place.column);
        const holds =
          view.text.toLowerCase().includes(wanted) ||
          (values && cellText(view, job.unit).toLowerCase().includes(wanted));
        if (holds && places.length === mostFound) return { places, all: false };
        if (holds) places.push(place);
        looked += 1;
        if (looked % inSlice === 0) yield inSlice;
      }
  }
  return { places, all: true };
}

/** The cells of a sheet in parts that follow each other, so that those of a large one are not all taken apart at once. */
function* piecesOf(cells: Cells): Generator<Cells> {
  const slabs = slabsIn(cells);
  if (slabs.length === 0) yield cells;
  for (const slab of slabs) yield cellsOf(slab);
}

function inReadingOrder(names: readonly string[]): { readonly row: number; readonly column: number }[] {
  return names.map((name) => parseCell(name)!).sort((a, b) => a.row - b.row || a.column - b.column);
}

/** The edits that put `by` in place of the text in these cells; cells that are locked or only show it are left out. */
export function replacements(job: Job, places: readonly Place[], text: string, by: string): CellEdit[] {
  return places.flatMap((place) => {
    const sheet = job.document.sheets.find(({ name }) => name === place.sheet);
    const before = job.cell(place.sheet, place.row, place.column).text;
    const after = replaced(before, text, by);
    if (!sheet || after === before || isLocked(sheet, place.row, place.column)) return [];
    return [{ ...place, text: after }];
  });
}

function replaced(text: string, wanted: string, by: string): string {
  if (wanted === "") return text;
  const low = text.toLowerCase();
  const find = wanted.toLowerCase();
  let after = "";
  let from = 0;
  for (let at = low.indexOf(find); at >= 0; at = low.indexOf(find, from)) {
    after += text.slice(from, at) + by;
    from = at + find.length;
  }
  return after + text.slice(from);
}
