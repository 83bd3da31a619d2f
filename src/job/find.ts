/** Finding words in the cells of a job, and putting others in their place. */
import { parseCell } from "../engine/address.ts";
import type { Place } from "../engine/values.ts";
import { cellText } from "./format.ts";
import type { CellEdit, Job } from "./job.ts";
import { isLocked } from "./locks.ts";

export interface Wish {
  readonly text: string;
  /** Look at what cells show as well as at what was typed. */
  readonly values: boolean;
  /** The only sheet that is looked at. */
  readonly sheet?: string;
}

/** Cells that hold the text, sheet by sheet in reading order. Capitals do not count. */
export function findCells(job: Job, wish: Wish): Place[] {
  const wanted = wish.text.toLowerCase();
  if (wanted === "") return [];
  return job.document.sheets
    .filter(({ name }) => wish.sheet === undefined || name === wish.sheet)
    .flatMap((sheet) =>
      Object.keys(sheet.cells)
        .map((key) => ({ sheet: sheet.name, ...parseCell(key)! }))
        .sort((a, b) => a.row - b.row || a.column - b.column)
        .filter((place) => {
          const view = job.cell(place.sheet, place.row, place.column);
          if (view.text.toLowerCase().includes(wanted)) return true;
          return wish.values && cellText(view, job.unit).toLowerCase().includes(wanted);
        }),
    );
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
