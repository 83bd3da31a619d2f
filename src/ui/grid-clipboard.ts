/** Cut, copy and paste of the grid. What was cut stays where it is, marked, until it is pasted: then it moves, and references follow. */

import { type Carried, looksOf } from "../job/carry.ts";
import { emptySheet } from "../job/changes.ts";
import { moveFormula } from "../job/formula-text.ts";
import type { Job } from "../job/job.ts";
import { rangeName } from "../job/references.ts";
import { moveBlock } from "../job/structure.ts";
import { asTabbed, asTable, isOurs, pastedTexts } from "./grid-clip.ts";
import { clippedRows, pasteArea, pasteRows } from "./grid-commands.ts";
import type { GridHost } from "./grid-host.ts";
import type { Area } from "./grid-window.ts";
import type { PastedNumbers } from "./pasted-numbers.ts";

/** From so many cells on a paste asks first. */
const many = 5000;

/** What was cut or copied here. */
interface Held {
  /** The job they are of; once it is closed it need not stay. */
  readonly job: WeakRef<Job>;
  readonly sheet: string;
  readonly area: Area;
  /** The cells as typed. */
  readonly typed: readonly (readonly string[])[];
  /** What they look like, with the cells that hold something. */
  readonly from: Omit<Carried, "first">;
  readonly cut: boolean;
  /** The clipboard as it was left; other text in it means that something else was copied since. */
  readonly text: string;
}

export class GridClipboard {
  private held: Held | undefined;

  constructor(private readonly host: GridHost) {}

  /** Forgets what was cut or copied, and its mark. */
  drop(): void {
    this.held = undefined;
    this.host.marked = undefined;
  }

  /** Puts what is chosen into the clipboard of a copy or cut event. */
  put(data: DataTransfer, cut: boolean): void {
    const held = this.hold(cut);
    if (!held) return;
    data.setData("text/plain", held.text);
    data.setData("text/html", held.html);
  }

  /** The same without an event, as the cell menu does. @throws what the browser says where it does not let the page */
  async write(cut: boolean): Promise<void> {
    const held = this.hold(cut);
    if (!held) return;
    const blob = (text: string, type: string) => new Blob([text], { type });
    await navigator.clipboard.write([
      new ClipboardItem({
        "text/plain": blob(held.text, "text/plain"),
        "text/html": blob(held.html, "text/html"),
      }),
    ]);
  }

  private hold(cut: boolean): { text: string; html: string } | undefined {
    const { map, area, sheet } = this.host;
    if (!map) return undefined;
    const rows = clippedRows(map, area);
    const text = asTabbed(rows);
    this.held = {
      job: new WeakRef(map.job),
      sheet,
      area,
      typed: rows.map((row) => row.map((cell) => cell.text)),
      from: {
        looks: looksOf(map.sheet ?? emptySheet(sheet)),
        area: { ...area, bottom: area.top + rows.length - 1 },
      },
      cut,
      text,
    };
    this.host.marked = { sheet, area };
    const done = `${cut ? "Cut" : "Copied"} ${rangeName(area)}${cut ? ", paste moves it" : ""}`;
    const late = rows.flat().filter(({ stale }) => stale).length;
    // The clipboard is open for as long as the event lasts: values that come afterwards are too late for it.
    this.host.say(late === 0 ? done : `${done}; ${lateWords(late)}`);
    return { text, html: asTable(rows, area.top, area.left) };
  }

  /** The rows to paste: our own formulas point as far from their new cells as they did from the old ones. */
  private rowsFrom(text: string, html: string, { top, left }: Area): PastedNumbers {
    const { held } = this;
    if (held?.text !== text.replace(/\r\n/g, "\n")) return pastedTexts(html, text, top, left);
    const rows = held.typed.map((row) =>
      row.map((cell) => moveFormula(cell, top - held.area.top, left - held.area.left)),
    );
    return { rows, read: undefined };
  }

  async take(text: string, html: string): Promise<void> {
    const { host, held } = this;
    const { map, area, job, sheet } = host;
    if (!map || !job) return;
    const own = held?.text === text.replace(/\r\n/g, "\n");
    // What was cut in another job stays there: no step of this one could bring it back.
    if (own && held.cut && held.job.deref() === job) {
      this.drop();
      const reason = moveBlock(job, held, { sheet, row: area.top, column: area.left });
      if (reason !== undefined) return host.refuse(reason);
      const { top, left, bottom, right } = held.area;
      host.goTo(area.top, area.left);
      host.choose(
        { row: area.top, column: area.left },
        { row: area.top + bottom - top, column: area.left + right - left },
      );
      return host.say(job.canUndo ?? "");
    }
    const { rows, read } = this.rowsFrom(text, html, area);
    const place = pasteArea(rows, area);
    const cells = (place.bottom - place.top + 1) * (place.right - place.left + 1);
    if (rows.length === 0) return host.say("The clipboard holds no text");
    if (cells > many) {
      const sure = await host.ask({
        title: "Paste so much?",
        text: `${rows.length} rows would be pasted at ${rangeName(place)}: ${cells} cells.`,
        go: "Paste",
      });
      if (!sure) return host.say("Nothing was pasted");
    }
    const done = pasteRows(map, rows, place, own && isOurs(html) ? held.from : undefined);
    if (typeof done !== "string") return host.refuse(done.reason);
    host.goTo(place.top, place.left);
    host.choose({ row: place.top, column: place.left }, { row: place.bottom, column: place.right });
    host.say(read === undefined ? done : `${done}; ${read}`);
  }
}

function lateWords(figures: number): string {
  return figures === 1
    ? "1 figure is not reckoned yet: as text it may be that of before"
    : `${figures} figures are not reckoned yet: as text they may be those of before`;
}
