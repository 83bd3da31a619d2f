import { LitElement } from "lit";
import { property, query, state } from "lit/decorators.js";
import type { SheetFunction } from "../functions/declare.ts";
import { largestSheet } from "../job/changes.ts";
import type { Job } from "../job/job.ts";
import { EditSession } from "./edit-session.ts";
import { GridGeometry } from "./grid-geometry.ts";
import type { Ground, Spot } from "./grid-keys.ts";
import type { Band } from "./grid-pointer.ts";
import { type Area, columnsInView, indexAt, reveal, rowsInView, withMerged } from "./grid-window.ts";
import { SheetMap } from "./sheet-map.ts";
import { noTraces, type Traces } from "./traces.ts";

/** Room that is made at once where the end of a sheet is passed. */
const moreRoom = { rows: 100, columns: 5 };

/** Views narrower than this are phones, px. */
const phone = 600;

/** Share of the view that frozen lines may take. */
const mostFrozen = 0.6;

/** Where the parts of a sheet stand on the screen: what is in view, and which cell is at a point. */
export abstract class SheetRoom extends LitElement {
  @property({ attribute: false }) job: Job | undefined;
  @property() sheet = "";
  /** Shared with the entry line, which edits the same cell. */
  @property({ attribute: false }) session = new EditSession();
  /** Colours and completion while a formula is typed; a finger has the plain field. */
  @property({ type: Boolean }) rich = false;
  /** Tab goes to the next cell instead of leaving the grid. */
  @property({ type: Boolean }) tabMoves = false;
  @property({ attribute: false }) functions: readonly SheetFunction[] = [];
  /** Cells that the one in hand comes from and goes to. */
  @property({ attribute: false }) traced: Traces = noTraces;
  /** Corners of the range; the active cell lies in it. */
  @state() protected from: Spot = { row: 0, column: 0 };
  @state() protected to: Spot = { row: 0, column: 0 };
  /** What was cut or copied and is still marked. */
  @state() marked: { readonly sheet: string; readonly area: Area } | undefined;
  /** What the fill handle would fill, while it is drawn. */
  @state() protected filling: Area | undefined;
  @query(".scroll") protected readonly scroller!: HTMLElement | null;
  @query(".probe") protected readonly probe!: HTMLElement;

  map: SheetMap | undefined;
  private room = { sheet: "", rows: 0, columns: 0 };
  protected readonly geometry = new GridGeometry();
  protected size = { row: 28, head: 22, zone: 36, scale: 1, width: 0, height: 0 };
  /** How far the sheet is scrolled, as the last scroll event had it: asking the element lays out the page. */
  protected scrolled = { left: 0, top: 0 };

  /** Zero-based; the cell that has or would have the focus. */
  get active(): Spot {
    const { row, column } = this.session.active;
    return { row, column };
  }

  protected override createRenderRoot() {
    const root = super.createRenderRoot() as ShadowRoot;
    root.adoptedStyleSheets = [...root.adoptedStyleSheets, this.geometry.styles];
    return root;
  }

  protected get narrow(): boolean {
    return this.size.width > 0 && this.size.width < phone;
  }

  /** The map of the sheet as it is now, with the room that was gone into. */
  protected mapped(job: Job): SheetMap {
    if (this.room.sheet !== this.sheet) this.room = { sheet: this.sheet, rows: 0, columns: 0 };
    return new SheetMap(job, this.sheet, this.room);
  }

  /** Makes room past the end of the sheet for a cell, and some more, as far as a sheet can grow. */
  protected roomFor(row: number, column: number): void {
    const { map, job, area, band } = this;
    if (!map || !job || (row < map.rows && column < map.columns)) return;
    const rows = row < map.rows ? map.rows : Math.min(largestSheet.rows, row + moreRoom.rows);
    const columns =
      column < map.columns ? map.columns : Math.min(largestSheet.columns, column + moreRoom.columns);
    this.room = { sheet: this.sheet, rows, columns };
    this.map = this.mapped(job);
    // Whole columns and rows stay whole.
    const whole = { row: area.bottom, column: area.right };
    if (band === "columns") whole.row = this.map.rows - 1;
    if (band === "rows") whole.column = this.map.columns - 1;
    if (band) this.from = { row: area.top, column: area.left };
    if (band) this.to = whole;
    this.layColumns();
    if (this.scroller) this.layOut();
  }

  protected layColumns(): void {
    const { zone, scale, width } = this.size;
    // On a phone a label and its value stand side by side, whatever widths the job was made with.
    const widest = this.narrow ? Math.floor((width - zone) / 2) : Number.POSITIVE_INFINITY;
    this.geometry.row = this.size.row;
    if (!this.map) return;
    this.geometry.lay(this.map.sheet, this.map.columnLines, zone, scale, widest);
    this.layFrozen(this.map);
  }

  /** Lines that would take most of the view scroll like the others. */
  private layFrozen(map: SheetMap) {
    const { rowLines, columnLines } = map;
    const { size } = this;
    rowLines.roomy = true;
    columnLines.roomy = true;
    const still = this.frozenSize(map);
    rowLines.roomy = size.height === 0 || still.height <= mostFrozen * (size.height - size.head);
    columnLines.roomy = size.width === 0 || still.width <= mostFrozen * (size.width - size.zone);
  }

  /** Runs after a resize, and when the density or the type size changes. */
  protected measure() {
    const { scroller, probe } = this;
    if (!scroller) return;
    const corner = scroller.querySelector<HTMLElement>(".corner")!;
    const size = {
      row: probe.offsetHeight,
      head: corner.parentElement!.offsetHeight,
      zone: corner.offsetWidth,
      scale: probe.offsetWidth / 100,
      width: scroller.clientWidth,
      height: scroller.clientHeight,
    };
    if (JSON.stringify(size) === JSON.stringify(this.size)) return;
    // Less room: a panel or a keyboard has come, and the cell in hand is not to be under it. Or none was known so far.
    const moved =
      this.size.height === 0 ||
      size.row !== this.size.row ||
      size.scale !== this.size.scale ||
      size.width < this.size.width ||
      size.height < this.size.height;
    this.size = size;
    this.requestUpdate();
    if (moved) void this.updateComplete.then(() => this.revealActive());
  }

  /** Rows and overlays get their places by script, column by column they have them from the style sheet. */
  protected layOut() {
    const { scroller, size, area, map } = this;
    const { edges } = this.geometry;
    const { rowLines } = map!;
    scroller!.querySelector<HTMLElement>(".canvas")!.style.height =
      `${size.head + rowLines.count * size.row}px`;
    for (const row of scroller!.querySelectorAll<HTMLElement>(".row")) {
      const index = Number(row.getAttribute("aria-rowindex")) - 2;
      const from = row.parentElement!.classList.contains("frozen") ? 0 : size.head;
      row.style.top = `${from + rowLines.placeOf(index) * size.row}px`;
    }
    const bottom = rowLines.placeOf(area.bottom + 1);
    this.layOver(".box", area);
    if (this.marked?.sheet === this.sheet) this.layOver(".held", this.marked.area);
    if (this.filling) this.layOver(".filling", this.filling);
    const fill = scroller!.querySelector<HTMLElement>(".fill")!.style;
    fill.left = `${size.zone + edges[area.right + 1]!}px`;
    fill.top = `${size.head + bottom * size.row}px`;
  }

  private layOver(selector: string, area: Area) {
    const { size, map } = this;
    const { edges } = this.geometry;
    const top = map!.rowLines.placeOf(area.top);
    const bottom = map!.rowLines.placeOf(area.bottom + 1);
    const right = edges[area.right + 1] ?? edges.at(-1)!;
    const { style } = this.scroller!.querySelector<HTMLElement>(selector)!;
    style.left = `${size.zone + edges[area.left]!}px`;
    style.top = `${size.head + top * size.row}px`;
    style.width = `${right - edges[area.left]!}px`;
    style.height = `${(bottom - top) * size.row}px`;
  }

  protected window(map: SheetMap) {
    const { size, geometry } = this;
    const frozen = this.frozenSize(map);
    const left = this.scrolled.left + frozen.width;
    const top = this.scrolled.top + frozen.height;
    const high = Math.max(0, size.height - size.head - frozen.height);
    const { first, last } = rowsInView(top, high, size.row, map.rowLines.count);
    const rows = { first: map.rowLines.at(first), last: map.rowLines.at(last) };
    const columns = columnsInView(left, Math.max(0, size.width - size.zone - frozen.width), geometry.edges);
    return withMerged(rows, columns, map.merged);
  }

  /** The range that is chosen; the active cell where it is only that. */
  get area(): Area {
    const { from, to, map } = this;
    const corners = [from, to].map(
      ({ row, column }) => map?.areaAt(row, column) ?? { top: row, left: column, bottom: row, right: column },
    );
    return {
      top: Math.min(...corners.map((one) => one.top)),
      left: Math.min(...corners.map((one) => one.left)),
      bottom: Math.max(...corners.map((one) => one.bottom)),
      right: Math.max(...corners.map((one) => one.right)),
    };
  }

  /** Whether the whole height or width of the sheet is chosen: columns, rows, or neither. */
  protected get band(): Band {
    const { area, map } = this;
    if (!map) return undefined;
    if (area.left === 0 && area.right === map.columns - 1) return "rows";
    return area.top === 0 && area.bottom === map.rows - 1 ? "columns" : undefined;
  }

  /** Whether a cell lies in what is chosen; of a zone mark all of its row or column must. */
  protected holds({ row, column }: Spot): boolean {
    const { area, map } = this;
    const last = { row: (map?.rows ?? 0) - 1, column: (map?.columns ?? 0) - 1 };
    const rows = row < 0 ? area.top === 0 && area.bottom === last.row : area.top <= row && row <= area.bottom;
    const columns =
      column < 0
        ? area.left === 0 && area.right === last.column
        : area.left <= column && column <= area.right;
    return rows && columns;
  }

  /** The first cell that is whole in view. */
  protected firstSeen(): Spot {
    const { scroller, size, map, geometry } = this;
    if (!scroller || !map || size.row === 0) return { row: 0, column: 0 };
    const { rowLines, columnLines } = map;
    const down = rowLines.frozen > 0 ? 0 : Math.ceil(scroller.scrollTop / size.row);
    const right = columnLines.frozen > 0 ? 0 : scroller.scrollLeft;
    const column = geometry.edges.findIndex((edge) => edge >= right);
    return { row: rowLines.at(down), column: columnLines.at(columnLines.placeOf(Math.max(0, column))) };
  }

  /** What the frozen lines take of the view, px. */
  private frozenSize({ rowLines, columnLines }: SheetMap): { height: number; width: number } {
    const first = columnLines.at(columnLines.frozen);
    return { height: rowLines.frozen * this.size.row, width: this.geometry.edges[first] ?? 0 };
  }

  protected revealActive(): void {
    if (this.map) this.reveal(this.map.areaAt(this.active.row, this.active.column));
  }

  /** Scrolls so that the area shows, and not a pixel more. */
  protected reveal(area: Area): void {
    const { scroller, size, geometry } = this;
    if (!scroller || size.height === 0) return;
    const { rowLines, columnLines } = this.map!;
    const still = this.frozenSize(this.map!);
    const view = {
      height: size.height - size.head - still.height,
      width: size.width - size.zone - still.width,
    };
    const first = rowLines.placeOf(area.top);
    const last = rowLines.placeOf(area.bottom + 1);
    const down = this.scrolled.top + still.height;
    const right = this.scrolled.left + still.width;
    const top = first < rowLines.frozen ? down : reveal(down, view.height, first * size.row, last * size.row);
    const left =
      columnLines.placeOf(area.left) < columnLines.frozen
        ? right
        : reveal(right, view.width, geometry.edges[area.left]!, geometry.edges[area.right + 1]!);
    if (top === down && left === right) return;
    scroller.scrollTo({ top: top - still.height, left: left - still.width, behavior: "instant" });
    this.noteScroll();
  }

  protected noteScroll(): void {
    const { scrollLeft: left = 0, scrollTop: top = 0 } = this.scroller ?? {};
    this.scrolled = { left, top };
  }

  /** Rows of one screen less a row. */
  protected get page(): number {
    return Math.max(1, Math.floor((this.size.height - this.size.head) / this.size.row) - 1);
  }

  protected ground(map: SheetMap): Ground {
    return { ...map.ground(this.page), tab: this.tabMoves };
  }

  /** Row and column under the point, clamped to the sheet. */
  protected spotAt(event: PointerEvent): Spot {
    const { scroller, size, map, geometry } = this;
    const box = scroller!.getBoundingClientRect();
    const still = this.frozenSize(map!);
    const y = event.clientY - box.top - size.head;
    const x = event.clientX - box.left - size.zone;
    // Frozen lines stand where they are however far the sheet is scrolled.
    const down = y < still.height ? y : y + scroller!.scrollTop;
    const right = x < still.width ? x : x + scroller!.scrollLeft;
    return { row: map!.rowLines.at(Math.floor(down / size.row)), column: indexAt(right, geometry.edges) };
  }

  /** The same, with -1 where the point is on the zone marks. */
  protected markAt(event: PointerEvent): Spot {
    const box = this.scroller!.getBoundingClientRect();
    const { row, column } = this.spotAt(event);
    return {
      row: event.clientY - box.top < this.size.head ? -1 : row,
      column: event.clientX - box.left < this.size.zone ? -1 : column,
    };
  }
}
