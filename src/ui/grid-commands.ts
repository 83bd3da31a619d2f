/** The commands of the grid that change many cells at once, each of them one step of the job's history. */

import { type Carried, withLooks } from "../job/carry.ts";
import { largestSheet } from "../job/changes.ts";
import type { JobDocument } from "../job/document.ts";
import { fillEdits } from "../job/fill.ts";
import { moveFormula } from "../job/formula-text.ts";
import type { CellEdit, CellView } from "../job/job.ts";
import { rangeName } from "../job/references.ts";
import type { Area } from "./grid-window.ts";
import type { SheetMap } from "./sheet-map.ts";

/** More cells than this are never put in at one stroke. */
const mostCells = 200_000;

/** Why something was not done. */
export interface Refused {
  readonly reason: string;
}

/** Clears the cells of the area that hold something. Returns what was done, for the reader of the page. */
export function clearArea(map: SheetMap, area: Area): string | Refused {
  const edits = edit(map, within(area, map), (row, column) =>
    map.view(row, column).text === "" ? undefined : "",
  );
  return put(map, edits, `Cleared ${rangeName(area)}`);
}

/** Fills the area from its first row downwards, or from its first column to the right. */
export function fillArea(map: SheetMap, area: Area, way: "down" | "right"): string | Refused {
  const first = way === "down" ? { ...area, bottom: area.top } : { ...area, right: area.left };
  return fillFrom(map, first, within(area, map));
}

/** Fills from `source` into the rest of `area`: down, up, right or left of it. */
export function fillFrom(map: SheetMap, source: Area, area: Area): string | Refused {
  const edits = fillEdits(map.job, map.name, source, area);
  const what = `Filled ${rangeName(area)}`;
  if (!map.sheet) return "";
  const first = { row: source.top, column: source.left };
  const from: Carried = { looks: map.sheet, area: source, first };
  return put(map, edits, what, (document) => withLooks(document, map.name, area, from, "filled"));
}

/** The cells of the area, row by row, without the empty rows below all that the sheet holds. */
export function clippedRows(map: SheetMap, area: Area): CellView[][] {
  const bottom = Math.min(area.bottom, Math.max(map.used.row, area.top));
  const rows: CellView[][] = [];
  for (let row = area.top; row <= bottom; row++) {
    const cells: CellView[] = [];
    for (let column = area.left; column <= area.right; column++) cells.push(map.view(row, column));
    rows.push(cells);
  }
  return rows;
}

/** The range that pasted rows take: theirs, or the selected one where it holds them a whole number of times. */
export function pasteArea(rows: readonly (readonly string[])[], area: Area): Area {
  const high = rows.length;
  const wide = Math.max(0, ...rows.map((row) => row.length));
  const tall = area.bottom - area.top + 1;
  const broad = area.right - area.left + 1;
  const repeats = high > 0 && wide > 0 && tall % high === 0 && broad % wide === 0;
  return repeats
    ? area
    : { top: area.top, left: area.left, bottom: area.top + high - 1, right: area.left + wide - 1 };
}

/**
 * Puts the rows in, again and again where the area is larger. The sheet grows with them, as far as a sheet can.
 *
 * @param from cells of the page that bring their looks along
 */
export function pasteRows(
  map: SheetMap,
  rows: readonly (readonly string[])[],
  area: Area,
  from?: Omit<Carried, "first">,
): string | Refused {
  const high = rows.length;
  const wide = Math.max(0, ...rows.map((row) => row.length));
  const bottom = Math.min(area.bottom, largestSheet.rows - 1);
  const end = Math.min(area.right, largestSheet.columns - 1);
  const lost = bottom < area.bottom || end < area.right;
  const goal = { ...area, bottom, right: end };
  const edits = edit(map, goal, (row, column) => {
    const down = row - area.top;
    const right = column - area.left;
    const text = rows[down % high]?.[right % wide];
    // A formula that is repeated moves on with its copy; the first copy has been moved by the reader of the clipboard.
    return text === undefined ? undefined : moveFormula(text, down - (down % high), right - (right % wide));
  });
  const carried = from && { ...from, first: { row: area.top, column: area.left } };
  const done = put(map, edits, `Pasted ${high} by ${wide} cells at ${rangeName(area)}`, (document) =>
    carried ? withLooks(document, map.name, goal, carried, "copied") : document,
  );
  return lost && typeof done === "string" ? `${done}; what lies past the largest sheet is left out` : done;
}

function within(area: Area, map: SheetMap): Area {
  return {
    ...area,
    bottom: Math.min(area.bottom, map.rows - 1),
    right: Math.min(area.right, map.columns - 1),
  };
}

function edit(
  map: SheetMap,
  area: Area,
  textOf: (row: number, column: number) => string | undefined,
): CellEdit[] {
  const edits: CellEdit[] = [];
  for (let row = area.top; row <= area.bottom && edits.length <= mostCells; row++) {
    for (let column = area.left; column <= area.right; column++) {
      const text = textOf(row, column);
      if (text !== undefined) edits.push({ sheet: map.name, row, column, text });
    }
  }
  return edits;
}

function put(
  map: SheetMap,
  edits: readonly CellEdit[],
  what: string,
  also?: (document: JobDocument) => JobDocument,
): string | Refused {
  if (edits.length === 0) return "";
  if (edits.length > mostCells) return { reason: `more than ${mostCells} cells at once are too many` };
  const reason = map.job.setCells(edits, what, also);
  return reason === undefined ? what : { reason };
}
