import { html } from "lit";
import { query } from "lit/decorators.js";
import { cellName, sheetPrefix } from "../engine/address.ts";
import { rangeName } from "../job/references.ts";
import "./ask-dialog.ts";
import type { AskDialog } from "./ask-dialog.ts";
import { cellCommands, type Ready } from "./cell-commands.ts";
import "./cell-menu.ts";
import type { CellMenu } from "./cell-menu.ts";
import { GridClipboard } from "./grid-clipboard.ts";
import { fillFrom, type Refused } from "./grid-commands.ts";
import type { GridHost } from "./grid-host.ts";
import { intentOf, type Spot } from "./grid-keys.ts";
import type { Band } from "./grid-pointer.ts";
import { type Area, sizeWords } from "./grid-window.ts";
import { ownTask } from "./own-task.ts";
import { SheetView } from "./sheet-view.ts";
import { widthOfTexts } from "./text-width.ts";

/** What the grid did, or could not do. */
export interface GridSaid {
  readonly text: string;
  readonly wrong: boolean;
}

/** A sheet that commands can be given to: by the cell menu, the clipboard, the fill handle and the edges of columns. */
export abstract class CommandedGrid extends SheetView implements GridHost {
  @query("ask-dialog") private readonly asker!: AskDialog;
  @query("cell-menu") private readonly menu!: CellMenu | null;

  protected readonly clipboard = new GridClipboard(this);
  /** The cells that a formula was last pointed at. */
  private lastPointed: { readonly from: Spot; readonly to: Spot } | undefined;

  abstract goTo(row: number, column: number, options?: { focus?: boolean; extend?: boolean }): void;
  protected abstract focusTarget(): HTMLElement | undefined;

  /** The grid as commands work on it; undefined while there is no sheet. */
  protected get ready(): Ready | undefined {
    return this.job && this.map ? (this as unknown as Ready) : undefined;
  }

  /** In a task of its own, but for the clipboard: some browsers give it only within the press. */
  private async runFromMenu(id: string): Promise<void> {
    if (!["cut", "copy", "paste"].includes(id)) await ownTask();
    await this.run(id);
  }

  /** Does one of the cell commands. */
  async run(id: string): Promise<void> {
    const { ready } = this;
    const command = cellCommands.find((one) => one.id === id);
    if (!ready || !command || !this.session.commit()) return;
    if (id === "cut" || id === "copy") {
      await this.clipboard.write(id === "cut").catch(() => {
        this.refuse(`the browser keeps the clipboard from the page: press Ctrl ${id === "cut" ? "X" : "C"}`);
      });
      this.focus();
      return;
    }
    if (id === "paste") return this.pasteByMenu();
    this.tellDone(await command.run(ready));
  }

  private async pasteByMenu() {
    try {
      const [item] = await navigator.clipboard.read();
      const held = async (type: string) =>
        item?.types.includes(type) ? (await item.getType(type)).text() : "";
      await this.clipboard.take(await held("text/plain"), await held("text/html"));
    } catch {
      this.refuse("the browser keeps the clipboard from the page: press Ctrl V");
    }
    this.focus();
  }

  protected tellDone(done: string | Refused | undefined): void {
    if (typeof done === "object") this.refuse(done.reason);
    else if (done) this.say(done);
    this.focus();
  }

  say(text: string): void {
    // The same words twice in a row are spoken twice.
    this.said = text === this.said ? `${text}\u00a0` : text;
    this.tell("grid-said", { text, wrong: false });
  }

  refuse(reason: string): void {
    this.said = reason;
    this.tell("grid-said", { text: reason, wrong: true });
  }

  readonly ask: AskDialog["ask"] = async (question) => {
    const answers = await this.asker.ask(question);
    this.focus();
    return answers;
  };

  /** The cell menu has the keys: drawing the cells again must not take them from it. */
  protected get underMenu(): boolean {
    return this.menu?.open === true;
  }

  /** Opens the menu of the chosen cells at a point, or at the cell in hand. */
  async openMenu(at?: { x: number; y: number }) {
    const { ready, active } = this;
    if (!ready || !this.session.commit()) return;
    const items = cellCommands.flatMap((command) => {
      const label = command.label(ready);
      return label === undefined ? [] : [{ ...command, label }];
    });
    const box = this.focusTarget()?.getBoundingClientRect();
    const place = at ?? { x: box?.left ?? 0, y: box?.bottom ?? 0 };
    const what = rangeName(this.area);
    await this.menu?.show(
      items,
      `Commands for ${what === cellName(active.row, active.column) ? `cell ${what}` : what}`,
      place,
    );
  }

  protected override overlays() {
    return html`<cell-menu
        @choose=${({ detail }: CustomEvent<string>) => void this.runFromMenu(detail)}
        @closed=${() => this.focus()}
      ></cell-menu>
      <ask-dialog></ask-dialog>`;
  }

  widthOf(column: number): number {
    return this.map ? widthOfTexts(this.map, column, this) : 0;
  }

  protected keepWidth(column: number, width: number) {
    this.job?.setColumnWidth(this.sheet, column, width / this.geometry.scale);
    this.say(this.job?.canUndo ?? "");
  }

  /** What the fill handle takes in when it is let go over a cell. */
  protected filled(spot: Spot): Area {
    const { area } = this;
    const down = spot.row < area.top ? area.top - spot.row : Math.max(0, spot.row - area.bottom);
    const right = spot.column < area.left ? area.left - spot.column : Math.max(0, spot.column - area.right);
    return down >= right
      ? { ...area, top: Math.min(area.top, spot.row), bottom: Math.max(area.bottom, spot.row) }
      : { ...area, left: Math.min(area.left, spot.column), right: Math.max(area.right, spot.column) };
  }

  protected showFilling(spot: Spot | undefined) {
    this.filling = spot && this.filled(spot);
    if (spot) this.reveal({ top: spot.row, left: spot.column, bottom: spot.row, right: spot.column });
  }

  /** Fills down as far as the column on the left reaches, else the one on the right. */
  protected fillBeside() {
    const { map, area } = this;
    if (!map) return;
    const { filled, rows } = map.ground(1);
    const reach = (column: number) => {
      let row = area.bottom;
      while (column >= 0 && column < map.columns && row + 1 < rows && filled(row + 1, column)) row += 1;
      return row;
    };
    const row = [area.left - 1, area.right + 1].map(reach).find((last) => last > area.bottom);
    if (row === undefined) this.say("Nothing is filled beside it to go along with");
    else this.fillTo({ row, column: area.right });
  }

  protected fillTo(spot: Spot) {
    const { map, area } = this;
    this.filling = undefined;
    if (!map) return;
    const whole = this.filled(spot);
    this.tellDone(fillFrom(map, area, whole));
    this.from = { row: whole.top, column: whole.left };
    this.to = { row: whole.bottom, column: whole.right };
  }

  /** While a formula waits for a cell, a press gives its address. @returns false where no cell is waited for */
  protected point(from: Spot, to: Spot): boolean {
    const area = {
      top: Math.min(from.row, to.row),
      left: Math.min(from.column, to.column),
      bottom: Math.max(from.row, to.row),
      right: Math.max(from.column, to.column),
    };
    const { edit } = this.session;
    const prefix = edit?.place.sheet === this.sheet ? "" : sheetPrefix(this.sheet);
    this.lastPointed = { from, to };
    return this.session.point(`${prefix}${rangeName(area)}`);
  }

  /** Arrow keys point too, where a formula that is typed over a cell waits for one. @returns false where it does not */
  protected pointByKey(event: KeyboardEvent): boolean {
    const { map, session, lastPointed, active } = this;
    if (!map || event.altKey || !event.key.startsWith("Arrow")) return false;
    if (!session.edit?.replacing || !session.awaitsCell) return false;
    const last = session.isPointing ? lastPointed : undefined;
    const at = last?.to ?? active;
    const intent = intentOf(event, at, at, this.ground(map));
    if (intent?.act !== "go") return false;
    event.preventDefault();
    event.stopPropagation();
    const { to } = intent;
    this.roomFor(to.row, to.column);
    this.point(intent.extend && last ? last.from : to, to);
    this.reveal((this.map ?? map).areaAt(to.row, to.column));
    this.said = cellName(to.row, to.column);
    return true;
  }

  protected step(which: "undo" | "redo") {
    const { job } = this;
    if (!job || !this.tell("undo-step", which)) return;
    const what = which === "undo" ? job.canUndo : job.canRedo;
    if (what !== undefined) job[which]();
    this.say(
      what === undefined ? `Nothing to ${which}` : `${which === "undo" ? "Undone" : "Done again"}: ${what}`,
    );
  }

  choose(from: Spot, to: Spot): void {
    this.from = from;
    this.to = to;
    this.said = this.chosenWords();
  }

  protected chosenWords(): string {
    return [`${rangeName(this.area)} selected`, sizeWords(this.area)].filter(Boolean).join(", ");
  }

  /** A press on the zone marks takes the row, the column or all of the sheet; `extend` all from the first one taken. */
  protected chooseBand(spot: Spot, extend = false) {
    const { map, active } = this;
    if (!map) return;
    this.session.commit();
    if (!extend) {
      const seen = this.firstSeen();
      const at = {
        row: spot.row < 0 ? seen.row : spot.row,
        column: spot.column < 0 ? seen.column : spot.column,
      };
      this.goTo(at.row, at.column, { focus: true });
    }
    // Those taken before begin where the cell in hand stands.
    const first = extend ? active : spot;
    const last = { row: map.rows - 1, column: map.columns - 1 };
    const wide = spot.column < 0;
    const high = spot.row < 0;
    this.choose(
      { row: high ? 0 : first.row, column: wide ? 0 : first.column },
      { row: high ? last.row : spot.row, column: wide ? last.column : spot.column },
    );
    if (extend)
      this.reveal({
        top: high ? active.row : spot.row,
        bottom: high ? active.row : spot.row,
        left: wide ? active.column : spot.column,
        right: wide ? active.column : spot.column,
      });
  }

  /** The grips draw a range; of whole rows or columns they take in more of them. */
  protected chooseRange(from: Spot, to: Spot, band: Band): void {
    const { map } = this;
    const last = { row: (map?.rows ?? 1) - 1, column: (map?.columns ?? 1) - 1 };
    if (band === "rows") this.choose({ ...from, column: 0 }, { ...to, column: last.column });
    else if (band === "columns") this.choose({ ...from, row: 0 }, { ...to, row: last.row });
    else this.choose(from, to);
    this.reveal(this.endOf({ top: to.row, left: to.column, bottom: to.row, right: to.column }));
  }

  /** What to bring into view of the moved end of a range: of whole rows not the far end of them. */
  protected endOf(area: Area): Area {
    const { band, active } = this;
    if (band === "rows") return { ...area, left: active.column, right: active.column };
    return band === "columns" ? { ...area, top: active.row, bottom: active.row } : area;
  }

  protected tell(name: string, detail: unknown): boolean {
    return this.dispatchEvent(
      new CustomEvent(name, { detail, bubbles: true, composed: true, cancelable: true }),
    );
  }

  protected readonly onClipboard = (event: ClipboardEvent): void => {
    const { clipboardData: held } = event;
    if (this.session.edit || !this.map || !held) return;
    event.preventDefault();
    if (event.type === "paste")
      void this.clipboard.take(held.getData("text/plain"), held.getData("text/html"));
    else this.clipboard.put(held, event.type === "cut");
  };

  protected readonly onMenu = (event: PointerEvent): void => {
    if (this.session.edit?.where === "cell") return;
    event.preventDefault();
    if (this.underMenu) return;
    // From the keyboard there is no point, and the menu opens at the cell.
    const byKey = event.button < 0 || event.pointerType === "";
    const spot = this.markAt(event);
    if (!byKey && !this.holds(spot)) {
      if (spot.row < 0 || spot.column < 0) this.chooseBand(spot);
      else this.goTo(spot.row, spot.column, { focus: true });
    }
    void this.openMenu(byKey ? undefined : { x: event.clientX, y: event.clientY });
  };
}
