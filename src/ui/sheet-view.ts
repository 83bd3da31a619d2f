import { html, nothing, type TemplateResult } from "lit";
import { state } from "lit/decorators.js";
import { repeat } from "lit/directives/repeat.js";
import { columnName } from "../engine/address.ts";
import type { Place } from "../engine/values.ts";
import type { Job } from "../job/job.ts";
import { distinctReferences, type Reference, rangeName, referencesOf } from "../job/references.ts";
import { cellTemplate } from "./cell-view.ts";
import { plateStyle } from "./drawing-cell.ts";
import { traceAt } from "./traces.ts";
import "./drawing-fold.ts";
import { gridMarksStyle } from "./grid-marks-style.ts";
import { gridStyle } from "./grid-style.ts";
import { type Area, contains, reuse, type Span, sizeWords } from "./grid-window.ts";
import { ownTask } from "./own-task.ts";
import type { SheetMap } from "./sheet-map.ts";
import { SheetRoom } from "./sheet-room.ts";

/** References of a formula that get a frame; there are four inks for them. */
const mostFramed = 4;

/** Values that come within this time are not worth a change of looks, ms. */
const patience = 300;

/** Rows that come to be drawn in one task as the grid begins. */
const rowsAtOnce = 12;

/** Share of the width of a drawing that has to show. */
const enoughOfIt = 0.75;

/** How a sheet is drawn: the part in view, the active row wherever it is, and the range. What it does is in sheet-grid.ts. */
export abstract class SheetView extends SheetRoom {
  static override styles = [gridStyle, gridMarksStyle, ...plateStyle];

  @state() protected said = "";
  protected wantFocus = false;
  private slots: ReadonlyMap<number, number> = new Map();
  private frame = 0;
  /** Values have been awaited for long: those of earlier edits are marked. */
  private late = false;
  /** The job whose values those are. */
  private awaited: Job | undefined;
  private timer: ReturnType<typeof setTimeout> | undefined;
  /** Rows that are drawn at the most. */
  private mostRows = 0;
  /** First column drawn in the row that is typed into. */
  private begun: { readonly of: Place; readonly first: number } | undefined;

  protected abstract editor(map: SheetMap): TemplateResult | undefined;
  protected abstract readonly onKey: (event: KeyboardEvent) => void;
  protected abstract readonly onFocusIn: (event: FocusEvent) => void;
  protected abstract readonly onFocusOut: (event: FocusEvent) => void;
  protected abstract readonly onClipboard: (event: ClipboardEvent) => void;
  /** What opens over the grid. */
  protected abstract overlays(): TemplateResult;
  protected abstract readonly onMenu: (event: PointerEvent) => void;

  /** Whether a cell has it, and not the menu over the cells: values may come while that is open. */
  protected get holdsFocus(): boolean {
    const held = (this.renderRoot as ShadowRoot).activeElement;
    return held !== null && this.scroller?.contains(held) === true;
  }

  /** A command and what draws its outcome are two tasks; a field that is typed into is there at once. */
  protected override scheduleUpdate(): Promise<unknown> | undefined {
    const typing = this.session.edit?.where === "cell";
    if (typing || (this.wantFocus && !this.holdsFocus)) {
      super.scheduleUpdate();
      return undefined;
    }
    return ownTask().then(() => super.scheduleUpdate());
  }

  override render() {
    const { map, active } = this;
    if (!map) return nothing;
    const { rows: seen, columns } = this.window(map);
    const rows = this.begunRows(seen);
    const drawnRows = map.rowLines.drawn(rows, active.row);
    const drawnColumns = map.columnLines.drawn(columns, active.column);
    const area = this.area;
    const references = this.references();
    this.session.choose(this.isOneCell(map, area) ? undefined : sizeWords(area));
    this.slots = reuse(this.slots, drawnRows.scrolled);
    const key = (row: number) => this.slots.get(row);
    const rowOf = (row: number) => this.rowTemplate(map, row, columns, area, references);
    const folded = this.outOfView(map);
    return html`
      ${folded.length > 0 ? html`<drawing-fold .figures=${folded} ?shut=${!this.narrow}></drawing-fold>` : nothing}
      <div
        class="scroll ${this.isLate() ? "late" : ""}"
        role="grid"
        aria-label="Sheet ${this.sheet}"
        aria-rowcount=${map.rows + 1}
        aria-colcount=${map.columns + 1}
        aria-multiselectable="true"
        @scroll=${this.onScroll}
        @keydown=${this.onKey}
        @focusin=${this.onFocusIn}
        @focusout=${this.onFocusOut}
        @copy=${this.onClipboard}
        @cut=${this.onClipboard}
        @paste=${this.onClipboard}
        @contextmenu=${this.onMenu}
      >
        <div class="canvas" role="presentation">
          <div class="heads" role="row" aria-rowindex="1">
            <div class="rh corner" role="columnheader" aria-rowindex="1" aria-colindex="1">
              <span class="sr">Row</span>
            </div>
            ${[...drawnColumns.frozen, ...drawnColumns.scrolled].map((column) => this.headTemplate(map, column, area))}
          </div>
          ${
            drawnRows.frozen.length > 0
              ? html`<div class="frozen" role="rowgroup">${repeat(drawnRows.frozen, (row) => row, rowOf)}</div>`
              : nothing
          }
          <div role="rowgroup">${repeat(drawnRows.scrolled, key, rowOf)}</div>
          <div class="box ${this.isOneCell(map, area) ? "one" : (this.band ?? "")}" aria-hidden="true">
            <i class="grip from"></i><i class="grip to"></i>
          </div>
          <div class="held" aria-hidden="true" ?hidden=${this.marked?.sheet !== this.sheet}></div>
          <div class="held filling" aria-hidden="true" ?hidden=${!this.filling}></div>
          <i class="fill" aria-hidden="true" title="Drag to fill"></i>
        </div>
      </div>
      <div class="probe" aria-hidden="true"></div>
      <div class="sr" role="status">${this.said}</div>
      ${this.overlays()}
    `;
  }

  /** One mark on the sheet: a clock for each cell would hold up every edit. */
  private isLate(): boolean {
    const { job } = this;
    if (!job?.reckoning || job !== this.awaited) {
      clearTimeout(this.timer);
      this.timer = undefined;
      this.late = false;
    }
    this.awaited = job;
    if (job?.reckoning)
      this.timer ??= setTimeout(() => {
        this.late = true;
        this.requestUpdate();
      }, patience);
    return this.late;
  }

  /** The first time the rows come in some tasks: elements that are new take long. */
  private begunRows({ first, last }: Span): Span {
    if (this.mostRows > last - first) return { first, last };
    this.mostRows += rowsAtOnce;
    const reach = Math.min(last, first + this.mostRows - 1);
    if (reach < last) void this.updateComplete.then(() => this.requestUpdate());
    return { first, last: reach };
  }

  /** Nothing is marked, and one cell is chosen: Escape is for the page. */
  protected get atRest(): boolean {
    return !this.marked && this.map !== undefined && this.isOneCell(this.map, this.area);
  }

  /** True for a single cell, and for a merged one. */
  private isOneCell(map: SheetMap, area: Area): boolean {
    return rangeName(map.areaAt(this.active.row, this.active.column)) === rangeName(area);
  }

  private headTemplate(map: SheetMap, column: number, area: Area): TemplateResult {
    const { columnLines } = map;
    const classes = [
      "hc",
      `k${column}`,
      column >= area.left && column <= area.right ? "on" : "",
      columnLines.isAfterHidden(column) ? "gone" : "",
      columnLines.placeOf(column) < columnLines.frozen ? "fz" : "",
    ];
    return html`<div role="columnheader" class=${classes.join(" ")} aria-rowindex="1" aria-colindex=${column + 2}
      >${columnName(column)}<i class="width" aria-hidden="true" data-column=${column}></i></div>`;
  }

  protected rowTemplate(
    map: SheetMap,
    row: number,
    columns: { first: number; last: number },
    area: Area,
    references: readonly Reference[],
  ): TemplateResult {
    const { active } = this;
    const { rowLines, columnLines } = map;
    const marks = [
      row >= area.top && row <= area.bottom ? "on" : "",
      rowLines.isAfterHidden(row) ? "gone" : "",
    ];
    const { frozen, scrolled } = columnLines.drawn(
      this.steady(row, columns),
      row === active.row ? active.column : columns.first,
    );
    const lastFrozen = frozen.at(-1) ?? -1;
    const cells = [...frozen, ...scrolled].map((column) => {
      const place = map.areaAt(row, column);
      // Only the first cell of a merged range is there; it covers the others.
      if (place.top !== row || place.left !== column) return nothing;
      const isActive = row === active.row && column === active.column;
      const number = references.findIndex((one) => contains(one, row, column)) + 1;
      const reference = references[number - 1];
      return cellTemplate(
        {
          view: map.view(row, column),
          area: place,
          active: isActive,
          selected: contains(area, row, column),
          rows: rowLines.placeOf(place.bottom + 1) - rowLines.placeOf(place.top),
          frozen: column <= lastFrozen,
          runsTo: map.runsTo(place, column <= lastFrozen ? lastFrozen : columns.last),
          slot: map.slots.get(column),
          unit: map.job.unit,
          reference: reference && { number, first: reference.top === row && reference.left === column },
          traced: reference ? undefined : traceAt(this.traced, row, column),
          editor: isActive ? this.editor(map) : undefined,
        },
        this.geometry,
      );
    });
    return html`<div class="row" role="row" aria-rowindex=${row + 2}>
      <div class="rh ${marks.join(" ")}" role="rowheader" aria-rowindex=${row + 2} aria-colindex="1">${row + 1}</div>
      ${cells}
    </div>`;
  }

  /**
   * The columns of a row that is typed into begin where they began with the edit, or further left: were cells taken away
   * before it, the field would become that of another cell, and lose its caret.
   */
  private steady(row: number, columns: Span): Span {
    const { edit } = this.session;
    if (edit?.where !== "cell" || row !== edit.place.row || edit.place.sheet !== this.sheet) return columns;
    const known = this.begun?.of === edit.place ? this.begun.first : columns.first;
    this.begun = { of: edit.place, first: Math.min(known, columns.first) };
    return { ...columns, first: this.begun.first };
  }

  /** Drawings of which little shows beside the columns: they fold above the sheet. */
  private outOfView(map: SheetMap) {
    const { edges } = this.geometry;
    const room = this.size.width - this.size.zone;
    return map.figures().flatMap(({ figure, area }) => {
      const [left, right] = [edges[area.left]!, edges[area.right + 1]!];
      return this.size.width > 0 && room - left < (this.narrow ? 1 : enoughOfIt) * (right - left)
        ? [figure]
        : [];
    });
  }

  private references(): Reference[] {
    const { edit } = this.session;
    if (!edit?.text.startsWith("=") || !this.job) return [];
    const all = referencesOf(edit.text, edit.place.sheet, this.job.document.names);
    const found = distinctReferences(all).slice(0, mostFramed);
    return found.map((one) => (one.sheet === this.sheet ? one : { ...one, top: -1, bottom: -1 }));
  }
  private readonly onScroll = () => {
    const { scroller, scrolled, map } = this;
    const known = scrolled.top === scroller?.scrollTop;
    this.noteScroll();
    // By hand to the very end, and not by what brings a cell into view.
    const end = scroller && scroller.scrollTop + scroller.clientHeight >= scroller.scrollHeight - 1;
    if (map && end && !known && scroller.scrollTop > 0) this.roomFor(map.rows, 0);
    this.frame ||= requestAnimationFrame(() => {
      this.frame = 0;
      this.requestUpdate();
    });
  };

  override disconnectedCallback(): void {
    cancelAnimationFrame(this.frame);
    this.frame = 0;
    super.disconnectedCallback();
  }
}
