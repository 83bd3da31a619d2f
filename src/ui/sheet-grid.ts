import { html, nothing, type PropertyValues } from "lit";
import { customElement, query } from "lit/decorators.js";
import { cellName } from "../engine/address.ts";
import type { Place } from "../engine/values.ts";
import { fitColumns } from "./cell-commands.ts";
import { CellField } from "./cell-field.ts";
import { CommandedGrid } from "./commanded-grid.ts";
import "./choice-list.ts";
import type { ChoiceList } from "./choice-list.ts";
import type { EditSession, Step } from "./edit-session.ts";
import { beside, editIntentOf, type Intent, intentOf, type Spot } from "./grid-keys.ts";
import { GridPointer } from "./grid-pointer.ts";
import { soon } from "./own-task.ts";
import { screenKeys } from "./screen-keys.ts";
import type { SheetMap } from "./sheet-map.ts";

/**
 * One sheet as a grid. Draws the part of it that is in view, and the active row wherever that is.
 *
 * Fires `cell-active` {row, column} when another cell is active, `cell-typing` {text} while one is edited, `undo-step`
 * ("undo" or "redo"), which a page that takes undo steps itself prevents, and `grid-said` {text, wrong} with what was
 * done or refused.
 */
@customElement("sheet-grid")
export class SheetGrid extends CommandedGrid {
  @query("choice-list") private readonly choices!: ChoiceList | null;

  private readonly resizes = new ResizeObserver(() => this.measure());
  private wantReveal = false;
  private hadFocus = false;
  private updating = false;
  private placed: ChoiceList | null = null;
  private knownEditor: Element | null = null;
  private readonly field = new CellField(
    this,
    ({ text, caret }) => this.type(text, caret),
    ({ caret }) => this.session.update({ caret }),
  );
  private pointed: HTMLElement | undefined;
  /** The active cell as this grid last drew it; others may stand on another cell too. */
  private known: Place | undefined;
  private stopJob: (() => void) | undefined;

  /** Makes a cell the active one and brings it into view. */
  override goTo(row: number, column: number, options: { focus?: boolean; extend?: boolean } = {}): void {
    if (options.extend || options.focus) this.roomFor(row, column);
    const { map } = this;
    if (!map) return;
    const area = map.nearest(row, column);
    const spot = { row: area.top, column: area.left };
    if (options.extend) {
      this.session.commit();
      this.to = spot;
      this.said = this.chosenWords();
    } else this.stand(spot);
    if (options.focus) this.wantFocus = true;
    this.reveal(options.extend ? this.endOf(area) : area);
    this.requestUpdate();
  }

  /** Begins to edit the active cell; `text` takes the place of what is there. */
  startEdit(text?: string): void {
    const { job, map } = this;
    if (!job || !map) return;
    const { row, column } = this.active;
    const { spilledFrom, choices, locked } = map.view(row, column);
    const cell = cellName(row, column);
    if (spilledFrom !== undefined || locked) {
      this.refuse(
        locked
          ? `${cell} is locked: unlock it in the cell menu`
          : `${cell} is filled by the formula in ${spilledFrom}: change it there`,
      );
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
    // Where the focus is elsewhere the next key is for the cells, too.
    if (!this.updating && !this.holdsFocus) this.performUpdate();
  }

  override connectedCallback(): void {
    super.connectedCallback();
    this.listen(this.session);
    this.follow();
    if (this.scroller) this.watchSize(this.scroller);
  }

  override disconnectedCallback(): void {
    this.session.commit();
    this.listen(this.session, "remove");
    this.stopJob?.();
    this.resizes.disconnect();
    super.disconnectedCallback();
  }

  protected override willUpdate(changed: PropertyValues<this>): void {
    this.updating = true;
    this.hadFocus = this.holdsFocus;
    if (changed.has("session")) {
      const before = changed.get("session");
      if (before) this.listen(before, "remove");
      this.listen(this.session);
    }
    if (changed.has("job")) this.follow();
    if ((changed.has("job") || changed.has("sheet")) && this.job) {
      this.session.commit();
      this.map = this.mapped(this.job);
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
    if (!this.session.edit) this.field.rest();
  }

  protected override editor(map: SheetMap) {
    const { edit } = this.session;
    if (edit?.place.sheet !== this.sheet) return undefined;
    const { row, column } = edit.place;
    if (edit.where === "line") return html`<span class="typed">${edit.text}</span>`;
    const field = edit.choosing ? undefined : this.field.template(edit);
    if (field) return field;
    if (!edit.choosing) {
      return html`<textarea
        aria-label="Cell ${cellName(row, column)}"
        rows="1"
        inputmode=${this.rich ? nothing : screenKeys(map.view(row, column), this.session.letters)}
        autocomplete="off"
        autocapitalize="off"
        spellcheck="false"
        .value=${edit.text}
        @input=${(event: Event) => this.type((event.target as HTMLTextAreaElement).value)}
      ></textarea>`;
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
    const isNew = target instanceof HTMLTextAreaElement && target !== this.knownEditor;
    if ((this.wantFocus || this.hadFocus) && target && !this.underMenu) {
      if ((this.renderRoot as ShadowRoot).activeElement !== target) target.focus({ preventScroll: true });
      if (isNew) target.setSelectionRange(target.value.length, target.value.length);
    }
    if (target instanceof HTMLTextAreaElement) this.fitEditor(target);
    this.knownEditor = target instanceof HTMLTextAreaElement ? target : null;
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
      chooseRange: (from, to, band) => this.chooseRange(from, to, band),
      chooseBand: (spot, extend) => this.chooseBand(spot, extend),
      holds: (spot) => this.holds(spot),
      edit: () => this.startEdit(),
      onWedge: (event, spot) => this.onWedge(event, spot),
      menu: (at) => void this.openMenu(at),
      fillTo: (spot) => this.showFilling(spot),
      fillBeside: () => this.fillBeside(),
      fill: (spot) => this.fillTo(spot),
      width: (column, width) => this.geometry.draw(column, width),
      keepWidth: (column, width) => this.keepWidth(column, width),
      fit: (column) => {
        if (this.ready) fitColumns(this.ready, column, column);
        this.tellDone(this.job?.canUndo);
      },
      widthNow: (column) => this.geometry.edges[column + 1]! - this.geometry.edges[column]!,
      awaits: () => this.session.awaitsCell,
      point: (from, to) => this.point(from, to),
      corners: () => ({
        from: { row: this.area.top, column: this.area.left },
        to: { row: this.area.bottom, column: this.area.right },
        band: this.band,
      }),
    });
    this.watchSize(scroller);
    // The page is laid out for it: that is a task of its own.
    soon(() => this.isConnected && this.measure());
  }

  /** The field grows with its text, as far as the view goes. */
  private fitEditor(input: HTMLTextAreaElement) {
    const right = this.scroller!.getBoundingClientRect().left + this.size.width;
    const cell = input.parentElement!.getBoundingClientRect();
    input.style.maxWidth = `${Math.max(cell.width, right - cell.left)}px`;
  }

  private watchSize(scroller: HTMLElement) {
    this.resizes.observe(scroller);
    this.resizes.observe(this.probe);
  }

  protected override focusTarget(): HTMLElement | undefined {
    const { edit } = this.session;
    if (edit?.place.sheet === this.sheet) {
      if (edit.where === "line") return undefined;
      return (
        this.renderRoot.querySelector<HTMLElement>(
          edit.choosing ? "choice-list" : ".edit textarea, .edit formula-field",
        ) ?? undefined
      );
    }
    return this.renderRoot.querySelector<HTMLElement>(".c.active") ?? undefined;
  }

  /** The cell in hand was hidden, perhaps by Redo: the nearest one that shows is taken. */
  private leaveHidden() {
    const { map, active } = this;
    const gone = map?.rowLines.isHidden(active.row) || map?.columnLines.isHidden(active.column);
    if (gone && this.session.active.sheet === this.sheet) this.goTo(active.row, active.column);
  }

  private follow() {
    this.stopJob?.();
    this.stopJob = this.job?.subscribe(() => {
      if (this.job) this.map = this.mapped(this.job);
      this.leaveHidden();
      this.requestUpdate();
    });
  }

  private heard(): readonly [kind: string, on: (event: Event) => void][] {
    return [
      ["change", this.onSession],
      ["leave", this.onLeave],
      ["refused", this.onRefused],
      ["remarked", this.onRemarked],
    ];
  }

  private listen(session: EditSession, to: "add" | "remove" = "add") {
    for (const [kind, on] of this.heard()) session[`${to}EventListener`](kind, on);
  }

  private readonly onSession = () => this.requestUpdate();

  private readonly onRemarked = (event: Event) => this.say((event as CustomEvent<string>).detail);

  private readonly onRefused = (event: Event) => this.refuse((event as CustomEvent<string>).detail);

  private readonly onLeave = (event: Event) => {
    const { map, active } = this;
    if (!map) return;
    const to = beside(active.row, active.column, (event as CustomEvent<Step>).detail, this.ground(map));
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

  private type(text: string, caret = text.length) {
    this.session.update({ text, caret });
    this.tell("cell-typing", { text });
  }

  protected readonly onKey = (event: KeyboardEvent): void => {
    if (event.isComposing || !this.map) return;
    const { edit } = this.session;
    if (edit?.where === "cell") {
      // Completion takes its keys first.
      if (event.defaultPrevented || this.pointByKey(event)) return;
      const intent = editIntentOf(event, edit.replacing);
      if (!intent) return;
      event.preventDefault();
      event.stopPropagation();
      if (intent.act === "leave") this.session.leave(intent.step);
      else if (intent.act === "caret") this.session.update({ replacing: !edit.replacing });
      else if (intent.act === "break") this.breakLine();
      else this.session.drop();
      return;
    }
    const head = this.to;
    const intent = intentOf(event, this.active, head, this.ground(this.map));
    if (!intent || (intent.act === "collapse" && this.atRest)) return;
    event.preventDefault();
    this.act(intent);
  };

  private act(intent: Intent) {
    const { map, active } = this;
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
      case "undo":
      case "redo":
        return this.step(intent.act);
      case "menu":
        return void this.openMenu();
      case "collapse":
        this.clipboard.drop();
        this.from = this.to = active;
        return;
      default:
        return void this.run(intent.act);
    }
  }

  private breakLine() {
    const field = this.focusTarget();
    if (!(field instanceof HTMLTextAreaElement)) return;
    field.setRangeText("\n", field.selectionStart, field.selectionEnd, "end");
    this.type(field.value);
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
}

declare global {
  interface HTMLElementTagNameMap {
    "sheet-grid": SheetGrid;
  }
}
