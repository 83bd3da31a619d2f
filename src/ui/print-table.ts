/** A range of a sheet as a plain table for paper: headings that every page repeats, one body row for each row. */
import { html, nothing, type TemplateResult } from "lit";
import { columnName } from "../engine/address.ts";
import { showValue } from "../job/format.ts";
import { pictureOf } from "./drawing-cell.ts";
import type { GridLines } from "./grid-lines.ts";
import type { Area } from "./grid-window.ts";
import type { SheetMap } from "./sheet-map.ts";

export interface TableLook {
  readonly grid: boolean;
  readonly headings: boolean;
}

/** Width of a column that has none of its own, and of the row numbers, px. */
const usualWidth = 96;
export const numbersWidth = 34;
/** Of a printed row, px; text that needs more makes it higher. */
const rowHeight = 27;
/** A sheet longer than this is cut: nobody takes that to the lathe, and the browser would stand still. */
export const mostRows = 2000;

/** All that a sheet holds, with what block functions have filled. */
export function usedArea(map: SheetMap): Area {
  let { row: bottom, column: right } = map.used;
  for (const merged of map.merged) {
    bottom = Math.max(bottom, merged.bottom);
    right = Math.max(right, merged.right);
  }
  const rowFilled = (row: number) => anyOf(0, right, (column) => map.filled(row, column));
  const columnFilled = (column: number) => anyOf(0, bottom, (row) => map.filled(row, column));
  while (right + 1 < map.columns && columnFilled(right + 1)) right += 1;
  while (bottom + 1 < map.rows && rowFilled(bottom + 1)) bottom += 1;
  while (right + 1 < map.columns && columnFilled(right + 1)) right += 1;
  return { top: 0, left: 0, bottom, right };
}

/** Of a column on paper, px; hidden ones take no room. */
export function widthOf(map: SheetMap, column: number): number {
  if (map.columnLines.isHidden(column)) return 0;
  return map.sheet?.columns[columnName(column)] ?? usualWidth;
}

function spanOf(map: SheetMap, left: number, right: number): number {
  let width = 0;
  for (let column = left; column <= right; column++) width += widthOf(map, column);
  return width;
}

/** Columns of the area in bundles that each fit a width; a single column that is too wide makes one of its own. */
export function bundles(
  map: SheetMap,
  { left, right }: Area,
  room: number,
): { left: number; right: number }[] {
  const made: { left: number; right: number }[] = [];
  let from = left;
  let wide = 0;
  for (let column = left; column <= right; column++) {
    const width = widthOf(map, column);
    if (column > from && wide + width > room) {
      made.push({ left: from, right: column - 1 });
      from = column;
      wide = 0;
    }
    wide += width;
  }
  made.push({ left: from, right });
  return made;
}

export function printTable(map: SheetMap, area: Area, look: TableLook): TemplateResult {
  const columns = range(area.left, area.right).filter((column) => !map.columnLines.isHidden(column));
  const rows = range(area.top, Math.min(area.bottom, area.top + mostRows - 1)).filter(
    (row) => !map.rowLines.isHidden(row),
  );
  return html`<table class=${look.grid ? "grid" : ""}>
    <colgroup>
      ${look.headings ? html`<col width=${numbersWidth} />` : nothing}
      ${columns.map((column) => html`<col width=${widthOf(map, column)} />`)}
    </colgroup>
    ${
      look.headings
        ? html`<thead>
            <tr>
              <td></td>
              ${columns.map((column) => html`<th scope="col">${columnName(column)}</th>`)}
            </tr>
          </thead>`
        : nothing
    }
    <tbody>
      ${rows.map(
        (row) => html`<tr>
          ${look.headings ? html`<th scope="row">${row + 1}</th>` : nothing}${cellsOf(map, area, row)}
        </tr>`,
      )}
    </tbody>
  </table>`;
}

function cellsOf(map: SheetMap, area: Area, row: number): TemplateResult[] {
  const cells: TemplateResult[] = [];
  for (let column = area.left; column <= area.right; column++) {
    if (map.columnLines.isHidden(column)) continue;
    const merged = map.areaAt(row, column);
    const first =
      row === firstShown(map.rowLines, Math.max(merged.top, area.top)) &&
      column === firstShown(map.columnLines, Math.max(merged.left, area.left));
    if (!first) continue;
    const cell = cellOf(map, area, merged);
    cells.push(cell.content);
    column = cell.lastColumn;
  }
  return cells;
}

function cellOf(map: SheetMap, area: Area, merged: Area): { content: TemplateResult; lastColumn: number } {
  const view = map.view(merged.top, merged.left);
  const { text, align, error } = showValue(view.value, view.format, map.job.unit);
  const lastColumn = Math.min(area.right, Math.max(merged.right, map.runsTo(merged, area.right)));
  const left = Math.max(merged.left, area.left);
  const shownIn = (lines: GridLines, from: number, to: number) =>
    range(from, to).filter((line) => !lines.isHidden(line)).length;
  const high = shownIn(map.rowLines, Math.max(merged.top, area.top), Math.min(merged.bottom, area.bottom));
  const wide = shownIn(map.columnLines, left, lastColumn);
  const caution = view.caution !== undefined || (view.format.role === "caution" && text !== "");
  const classes = [
    align,
    view.format.role && view.format.role !== "caution" ? view.format.role : "",
    view.format.bold ? "bold" : "",
    view.format.italic ? "italic" : "",
    view.format.shade ? "shade" : "",
    ...(view.format.border ?? []).map((edge) => `edge-${edge}`),
    error ? "error" : "",
    caution ? "caution" : "",
  ];
  const picture = view.figure && pictureOf(view.figure, spanOf(map, left, lastColumn), high * rowHeight, 1);
  if (picture) classes.push("plate");
  const content = html`<td
    class=${classes.filter(Boolean).join(" ")}
    colspan=${wide > 1 ? wide : nothing}
    rowspan=${high > 1 ? high : nothing}
  >${picture ?? text}${view.caution ? html`<small>${view.caution}</small>` : nothing}</td>`;
  return { content, lastColumn };
}

/** The line itself, or the next one that shows. */
function firstShown(lines: GridLines, line: number): number {
  let at = line;
  while (at < lines.all - 1 && lines.isHidden(at)) at += 1;
  return at;
}

function range(from: number, to: number): number[] {
  return Array.from({ length: Math.max(0, to - from + 1) }, (_, index) => from + index);
}

function anyOf(from: number, to: number, test: (at: number) => boolean): boolean {
  for (let at = from; at <= to; at++) if (test(at)) return true;
  return false;
}
