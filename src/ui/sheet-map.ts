/** What the grid asks of a sheet: its size, what it holds and where, its merged ranges. Made once for each state of the job. */
import { parseCell, parseRange } from "../engine/address.ts";
import { largestSheet } from "../job/changes.ts";
import type { SheetDocument } from "../job/document.ts";
import type { CellView, Job } from "../job/job.ts";
import { foundIn, lastUsed } from "../job/large-cells.ts";
import { frozenOf, linesOf } from "../job/lines-shown.ts";
import type { Ground, Spot } from "./grid-keys.ts";
import { GridLines } from "./grid-lines.ts";
import { type Area, contains } from "./grid-window.ts";
import { type Slot, slotsOf } from "./slots.ts";

/** Room in every sheet, whatever its file says. */
const leastRows = 200;
const leastColumns = 26;

const drawing = new WeakMap<object, readonly string[]>();

/** Cells whose formula may draw. */
function withDrawing(cells: SheetDocument["cells"]): readonly string[] {
  return Object.keys(cells).filter((name) => cells[name]![0] === "=" && /DRAW\./i.test(cells[name]!));
}

export class SheetMap {
  readonly sheet: SheetDocument | undefined;
  readonly rows: number;
  readonly columns: number;
  readonly used: Spot;
  readonly merged: readonly Area[];
  readonly rowLines: GridLines;
  readonly columnLines: GridLines;
  readonly slots: ReadonlyMap<number, Slot>;
  private readonly views = new Map<string, CellView>();
  private drawn: ReturnType<SheetMap["figures"]> | undefined;

  constructor(
    readonly job: Job,
    readonly name: string,
    /** Room that was gone into past the end of the sheet. */
    room: { readonly rows: number; readonly columns: number } = { rows: 0, columns: 0 },
  ) {
    this.sheet = job.document.sheets.find((sheet) => sheet.name === name);
    this.rows = Math.max(leastRows, this.sheet?.rows ?? 0, room.rows);
    this.columns = Math.max(leastColumns, this.sheet?.columnCount ?? 0, room.columns);
    this.merged = (this.sheet?.merged ?? []).flatMap((range) => parseRange(range) ?? []);
    const hidden = this.sheet?.hidden ?? [];
    const frozen = frozenOf(this.sheet);
    this.rowLines = new GridLines(this.rows, linesOf(hidden, "row"), frozen.rows);
    this.columnLines = new GridLines(this.columns, linesOf(hidden, "column"), frozen.columns);
    this.slots = slotsOf(this.sheet, job.unit);
    const used = lastUsed(this.sheet?.cells ?? {});
    this.used = {
      row: Math.min(this.rows - 1, used.row),
      column: Math.min(this.columns - 1, used.column),
    };
  }

  /** Asked of the job once only, and only for cells that are needed. */
  view(row: number, column: number): CellView {
    const key = `${row} ${column}`;
    let view = this.views.get(key);
    if (!view) {
      view = this.job.cell(this.name, row, column);
      this.views.set(key, view);
    }
    return view;
  }

  filled(row: number, column: number): boolean {
    const { text, value } = this.view(row, column);
    return text !== "" || (value !== null && value !== "");
  }

  /** What the drawings of the sheet show and where, in the order of their cells. */
  figures(): readonly { readonly figure: NonNullable<CellView["figure"]>; readonly area: Area }[] {
    this.drawn ??= foundIn(this.sheet?.cells ?? {}, drawing, withDrawing)
      .flat()
      .flatMap((name) => {
        const place = parseCell(name);
        const figure = place && this.view(place.row, place.column).figure;
        return figure ? [{ figure, area: this.areaAt(place.row, place.column) }] : [];
      });
    return this.drawn;
  }

  /** The merged range over a cell, or the cell itself. */
  areaAt(row: number, column: number): Area {
    const area = this.merged.find((one) => contains(one, row, column));
    return area ?? { top: row, left: column, bottom: row, right: column };
  }

  /** The area at a place, or at the nearest place on the sheet. */
  nearest(row: number, column: number): Area {
    const within = (place: number, lines: GridLines) =>
      lines.near(Math.max(0, Math.min(lines.all - 1, place)));
    return this.areaAt(within(row, this.rowLines), within(column, this.columnLines));
  }

  /** Last column that the text of a cell may run on over, as far as `last`. */
  runsTo(area: Area, last: number): number {
    const { value, format } = this.view(area.top, area.left);
    const closed = format.role === "input" || format.role === "column" || (format.align ?? "left") !== "left";
    if (typeof value !== "string" || value === "" || closed || area.bottom > area.top) return area.right;
    let column = area.right;
    while (column < last && this.open(area.top, column + 1)) column++;
    return column;
  }

  private open(row: number, column: number): boolean {
    const { role } = this.view(row, column).format;
    const plain = role === undefined || role === "head" || role === "label" || role === "note";
    const area = this.areaAt(row, column);
    return plain && area.left === area.right && area.top === area.bottom && !this.filled(row, column);
  }

  ground(page: number): Ground {
    return {
      rows: this.rows,
      columns: this.columns,
      most: largestSheet,
      page,
      used: this.used,
      filled: (row, column) => this.filled(row, column),
      areaAt: (row, column) => this.areaAt(row, column),
      passRow: (row, by) =>
        row < this.rows && this.rowLines.isHidden(row) ? this.rowLines.step(row, by) : row,
      passColumn: (column, by) =>
        column < this.columns && this.columnLines.isHidden(column)
          ? this.columnLines.step(column, by)
          : column,
    };
  }
}
