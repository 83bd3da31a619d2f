import { html, type PropertyValues } from "lit";
import { customElement, query } from "lit/decorators.js";
import { cellName } from "../engine/address.ts";
import type { Place } from "../engine/values.ts";
import { rangeName } from "../job/references.ts";
import "./choice-list.ts";
import type { ChoiceList } from "./choice-list.ts";
import type { EditSession, Step } from "./edit-session.ts";
import { asTabbed, asTable, pastedTexts } from "./grid-clip.ts";
import { clearArea, clippedRows, fillArea, pasteArea, pasteRows } from "./grid-commands.ts";
import { beside, editIntentOf, type Intent, intentOf, type Spot } from "./grid-keys.ts";
import { GridPointer } from "./grid-pointer.ts";
import { SheetMap } from "./sheet-map.ts";
import { SheetView } from "./sheet-view.ts";

/**
 * One sheet as a grid. Draws the part of it that is in view, and the active row wherever that is.
 *
 * Fires `cell-active` {row, column} when another cell is active, `cell-typing` {text} while one is edited, and
 * `undo-step` ("undo" or "redo"), which a page that takes undo steps itself prevents.
 */
@customElement("sheet-grid")
export class SheetGrid extends SheetView {
  @query("choice-list") private readonly choices!: ChoiceList | null;

  private readonly resizes = new ResizeObserver(() => this.measure());
  private wantFocus = false;
  private wantReveal = false;
  private hadFocus = false;
  private updating = false;
  private placed: ChoiceList | null = null;
  private knownEditor: Element | null = null;
  private pointed: HTMLElement | undefined;
  /** The active cell as this grid last drew it; others may stand on another cell too. */
  private known: Place | undefined;
  private stopJob: (() => void) | undefined;

  /** Makes a cell the active one and brings it into view. */
  goTo(row: number, column: number, options: { focus?: boolean; extend?: boolean } = {}): void {
    const { map } = this;
    if (!map) return;
    const area = map.nearest(row, column);
    const spot = { row: area.top, column: area.left };
    if (options.extend) {
      this.session.commit();
      this.to = spot;
      this.said = `${rangeName(this.area)} selected`;
    } else this.stand(spot);
    if (options.focus) this.wantFocus = true;
    this.reveal(area);
    this.requestUpdate();
  }

  /** Begins to edit the active cell; `text` takes the place of what is there. */
  startEdit(text?: string): void {
    const { job, map } = this;
    if (!job || !map) return;
    const { row, column } = this.active;
    const { spilledFrom, choices } = map.view(row, column);
    if (spilledFrom !== undefined) {
      this.said = `Filled by the formula in ${spilledFrom}; change it there`;
      return;
    }
    this.reveal(map.areaAt(row, column));
    const choosing = (choices?.length ?? 0) > 0 && !text?.startsWith("=");
    this.session.begin(job, { where: "cell", choosing, ...(text === undefined || choosing ? {} : { text }) });
    this.wantFocus = true;
    const now = performance.now();
    if (choosing && text !== undefined) void this.updateComplete.then(() => this.choices?.seek(text, now));
  }

  override focus(): void {
    this.wantFocus = true;
    this.requestUpdate();
  }

  override connectedCallback(): void {
    super.connectedCallback();
    this.listen(this.session);
    this.follow();
    if (this.scroller) this.watchSize(this.scroller);
  }

  override disconnectedCallback(): void {
    this.session.commit();
    this.unlisten(this.session);
    this.stopJob?.();
    this.resizes.disconnect();
    super.disconnectedCallback();
  }

  protected override willUpdate(changed: PropertyValues<this>): void {
    this.updating = true;
    this.hadFocus = (this.renderRoot as ShadowRoot).activeElement !== null;
    if (changed.has("session")) {
      const before = changed.get("session");
      if (before) this.unlisten(before);
      this.listen(this.session);
    }
    if (changed.has("job")) this.follow();
    if ((changed.has("job") || changed.has("sheet")) && this.job) {
      this.session.commit();
      this.map = new SheetMap(this.job, this.sheet);
      if (this.session.active.sheet !== this.sheet)
        this.session.stand({ sheet: this.sheet, row: 0, column: 0 });
      this.known = undefined;
    }
    if (this.known !== this.session.active) {
      this.from = this.to = this.active;
      this.wantReveal = true;
      this.known = this.session.active;
    }
    this.layColumns();
  }

  protected override editor(map: SheetMap) {
    const { edit } = this.session;
    if (edit?.place.sheet !== this.sheet) return undefined;
    const { row, column } = edit.place;
    if (edit.where === "line") return html`<span class="typed">${edit.text}</span>`;
    if (!edit.choosing) {
      return html`<input
        aria-label="Cell ${cellName(row, column)}"
        autocomplete="off"
        autocapitalize="off"
        spellcheck="false"
        .value=${edit.text}
        @input=${(event: Event) => this.type((event.target as HTMLInputElement).value)}
      />`;
    }
    return html`<span class="typed">${edit.text}</span>
      <choice-list
        .words=${map.view(row, column).choices ?? []}
        .text=${edit.text}
        .cell=${cellName(row, column)}
        @choose=${(event: CustomEvent<string>) => this.type(event.detail)}
        @chosen=${() => {
          this.wantFocus = true;
          this.session.commit();
        }}
      ></choice-list>`;
  }

  protected override updated(): void {
    this.updating = false;
    const { scroller } = this;
    if (!scroller) return;
    if (this.pointed !== scroller) this.firstDrawn(scroller);
    this.layOut();
    if (this.wantReveal) this.revealActive();
    this.wantReveal = false;
    const target = this.focusTarget();
    const isNew = target instanceof HTMLInputElement && target !== this.knownEditor;
    if ((this.wantFocus || this.hadFocus) && target) {
      if ((this.renderRoot as ShadowRoot).activeElement !== target) target.focus({ preventScroll: true });
      if (isNew) target.setSelectionRange(target.value.length, target.value.length);
    }
    if (target instanceof HTMLInputElement) this.fitEditor(target);
    this.knownEditor = target instanceof HTMLInputElement ? target : null;
    this.wantFocus = false;
    const list = this.choices;
    if (list && list !== this.placed) void this.openList(list);
    this.placed = list;
  }

  private async openList(list: ChoiceList) {
    await list.updateComplete;
    const cell = list.closest("[role=gridcell]");
    if (!cell || !list.isConnected) return;
    list.place(cell.getBoundingClientRect());
    list.focus();
  }

  private firstDrawn(scroller: HTMLElement) {
    this.pointed = scroller;
    new GridPointer(scroller, {
      spotAt: (event) => this.spotAt(event),
      markAt: (event) => this.markAt(event),
      active: () => this.active,
      choose: (spot, extend) => this.goTo(spot.row, spot.column, { focus: true, extend }),
      chooseRange: (from, to) => {
        this.from = from;
        this.to = to;
      },
      chooseBand: (spot) => this.chooseBand(spot),
      edit: () => this.startEdit(),
      onWedge: (event, spot) => this.onWedge(event, spot),
      corners: () => ({
        from: { row: this.area.top, column: this.area.left },
        to: { row: this.area.bottom, column: this.area.right },
      }),
    });
    this.watchSize(scroller);
    this.measure();
  }

  /** The field grows with its text, as far as the view goes. */
  private fitEditor(input: HTMLInputElement) {
    const right = this.scroller!.getBoundingClientRect().left + this.size.width;
    const cell = input.parentElement!.getBoundingClientRect();
    input.style.maxWidth = `${Math.max(cell.width, right - cell.left)}px`;
  }

  private watchSize(scroller: HTMLElement) {
    this.resizes.observe(scroller);
    this.resizes.observe(this.probe);
  }

  private focusTarget(): HTMLElement | undefined {
    const { edit } = this.session;
    if (edit?.place.sheet === this.sheet) {
      if (edit.where === "line") return undefined;
      return (
        this.renderRoot.querySelector<HTMLElement>(edit.choosing ? "choice-list" : ".edit input") ?? undefined
      );
    }
    return this.renderRoot.querySelector<HTMLElement>(".c.active") ?? undefined;
  }

  private follow() {
    this.stopJob?.();
    this.stopJob = this.job?.subscribe(() => {
      if (this.job) this.map = new SheetMap(this.job, this.sheet);
      this.requestUpdate();
    });
  }

  private listen(session: EditSession) {
    session.addEventListener("change", this.onSession);
    session.addEventListener("leave", this.onLeave);
  }

  private unlisten(session: EditSession) {
    session.removeEventListener("change", this.onSession);
    session.removeEventListener("leave", this.onLeave);
  }

  private readonly onSession = () => this.requestUpdate();

  private readonly onLeave = (event: Event) => {
    const { map, active } = this;
    if (!map) return;
    const to = beside(active.row, active.column, (event as CustomEvent<Step>).detail, map.ground(this.page));
    this.goTo(to.row, to.column, { focus: true });
  };

  private stand(spot: Spot) {
    const before = this.active;
    this.session.stand({ sheet: this.sheet, ...spot });
    this.session.commit();
    this.from = this.to = spot;
    this.known = this.session.active;
    if (before.row !== spot.row || before.column !== spot.column) this.tell("cell-active", spot);
  }

  private type(text: string) {
    this.session.update({ text });
    this.tell("cell-typing", { text });
  }

  private tell(name: string, detail: unknown): boolean {
    return this.dispatchEvent(
      new CustomEvent(name, { detail, bubbles: true, composed: true, cancelable: true }),
    );
  }

  protected readonly onKey = (event: KeyboardEvent): void => {
    if (event.isComposing || !this.map) return;
    const { edit } = this.session;
    if (edit?.where === "cell") {
      const intent = editIntentOf(event, edit.replacing);
      if (!intent) return;
      event.preventDefault();
      event.stopPropagation();
      if (intent.act === "leave") this.session.leave(intent.step);
      else if (intent.act === "caret") this.session.update({ replacing: !edit.replacing });
      else this.session.drop();
      return;
    }
    const head = this.to;
    const intent = intentOf(event, this.active, head, this.map.ground(this.page));
    if (!intent) return;
    event.preventDefault();
    this.act(intent);
  };

  private act(intent: Intent) {
    const { map, active, area } = this;
    if (!map) return;
    switch (intent.act) {
      case "go":
        return this.goTo(intent.to.row, intent.to.column, { focus: true, extend: intent.extend });
      case "select":
        return this.choose(intent.from, intent.to);
      case "type":
        return this.startEdit(intent.text);
      case "edit":
        return this.startEdit();
      case "choose":
        if (map.view(active.row, active.column).choices?.length) this.startEdit();
        return;
      case "clear":
        this.said = clearArea(map, area) || "Nothing to clear";
        return;
      case "fill down":
      case "fill right":
        this.said = fillArea(map, area, intent.act === "fill down" ? "down" : "right");
        return;
      case "undo":
      case "redo":
        return this.step(intent.act);
      case "collapse":
        this.from = this.to = active;
        return;
    }
  }

  private step(which: "undo" | "redo") {
    const { job } = this;
    if (!job || !this.tell("undo-step", which)) return;
    const what = which === "undo" ? job.canUndo : job.canRedo;
    if (what !== undefined) job[which]();
    this.said =
      what === undefined ? `Nothing to ${which}` : `${which === "undo" ? "Undone" : "Done again"}: ${what}`;
  }

  private choose(from: Spot, to: Spot) {
    this.from = from;
    this.to = to;
    this.said = `${rangeName(this.area)} selected`;
  }

  /** A press on the zone marks takes the row, the column or all of the sheet. */
  private chooseBand(spot: Spot) {
    const { map } = this;
    if (!map) return;
    this.session.commit();
    const from = { row: Math.max(0, spot.row), column: Math.max(0, spot.column) };
    this.goTo(from.row, from.column, { focus: true });
    this.choose(from, {
      row: spot.row < 0 ? map.rows - 1 : spot.row,
      column: spot.column < 0 ? map.columns - 1 : spot.column,
    });
  }

  private onWedge(event: PointerEvent, { row, column }: Spot): boolean {
    const { map, scroller, size, geometry } = this;
    if (row < 0 || column < 0 || !map?.view(row, column).choices?.length) return false;
    const right =
      scroller!.getBoundingClientRect().left + size.zone + geometry.edges[column + 1]! - scroller!.scrollLeft;
    return event.clientX > right - 28;
  }

  protected readonly onFocusIn = (event: FocusEvent): void => {
    const cell = event.target instanceof HTMLElement ? event.target.closest("[role=gridcell]") : null;
    if (!cell || this.updating) return;
    const row = Number(cell.getAttribute("aria-rowindex")) - 2;
    const column = Number(cell.getAttribute("aria-colindex")) - 2;
    if (row !== this.active.row || column !== this.active.column) this.goTo(row, column, { focus: true });
  };

  protected readonly onFocusOut = (event: FocusEvent): void => {
    const { edit } = this.session;
    // Lit may move the row of the editor while it draws; another window is no reason to end an edit.
    if (this.updating || edit?.where !== "cell" || !document.hasFocus()) return;
    const to = event.relatedTarget;
    if (to instanceof Element && (to.localName === "entry-line" || to.closest(".edit"))) return;
    this.session.commit();
  };

  protected readonly onClipboard = (event: ClipboardEvent): void => {
    const { map, area } = this;
    if (this.session.edit || !map || !event.clipboardData) return;
    event.preventDefault();
    if (event.type === "paste") {
      const { clipboardData: held } = event;
      const rows = pastedTexts(held.getData("text/html"), held.getData("text/plain"), area.top, area.left);
      const place = pasteArea(rows, area);
      this.said = pasteRows(map, rows, place);
      this.from = { row: place.top, column: place.left };
      this.to = { row: Math.min(place.bottom, map.rows - 1), column: Math.min(place.right, map.columns - 1) };
      this.session.stand({ sheet: this.sheet, ...this.from });
      this.known = this.session.active;
      return;
    }
    const rows = clippedRows(map, area);
    event.clipboardData.setData("text/plain", asTabbed(rows));
    event.clipboardData.setData("text/html", asTable(rows, area.top, area.left));
    this.said = event.type === "cut" ? clearArea(map, area) : `Copied ${rangeName(area)}`;
  };
}

declare global {
  interface HTMLElementTagNameMap {
    "sheet-grid": SheetGrid;
  }
}
