/** What helps a person to understand a cell or to find a function. */
import type { Place } from "../engine/values.ts";
import type { PageActs } from "./page-acts.ts";

export class HelpActs {
  /** Whether the drawer that says why is open. */
  why = false;

  constructor(private readonly acts: PageActs) {}

  turnWhy(): void {
    this.why = !this.why;
    void this.acts.parts.draw();
  }

  /** Closes the drawer, and the sheet is in hand again. @returns false where it was not open */
  leaveWhy(): boolean {
    if (!this.why) return false;
    this.turnWhy();
    this.acts.parts.element("sheet-grid")?.focus();
    return true;
  }

  /** @param name function to show first */
  showGuide(name?: string): void {
    // It names the cell that an example goes into, and the page is not drawn anew for every step over the sheet.
    void this.acts.parts.draw().then(() => this.acts.parts.element("guide-dialog")?.show(name));
  }

  /** An example goes into the active cell and stands there to be changed, kept or dropped. */
  put(formula: string): void {
    const { job, parts } = this.acts;
    if (!job) return;
    parts.element("guide-dialog")?.close();
    parts.session.begin(job, { text: formula, where: "line" });
    void parts.draw().then(() => parts.element("entry-line")?.focus());
  }

  /** Takes another cell in hand, on whichever sheet it stands. */
  go({ sheet, row, column }: Place): void {
    const { desk } = this.acts.parts;
    if (!this.acts.commit()) return;
    desk.chooseSheet(sheet);
    desk.choosePlace({ row, column });
    this.acts.showPlace();
    void this.acts.parts.draw();
  }
}
