/** What the words about sheets and cells do: finding, names, history, the title, a copy of an operation. */
import { sheetPrefix } from "../engine/address.ts";
import type { Place } from "../engine/values.ts";
import { rangeName } from "../job/references.ts";
import { duplicateSheet, setTitle } from "../job/whole-sheets.ts";
import type { PageActs } from "./page-acts.ts";

export class SheetActs {
  constructor(private readonly page: PageActs) {}

  find(): void {
    this.page.commit();
    void this.page.parts.element("find-bar")?.open();
  }

  /** Opens the menu of the chosen cells. */
  cells(): void {
    void this.page.parts.element("sheet-grid")?.openMenu();
  }

  async names(): Promise<void> {
    this.page.commit();
    (await this.page.parts.panel("name-list"))?.show();
  }

  async history(): Promise<void> {
    this.page.commit();
    (await this.page.parts.panel("history-list"))?.show();
  }

  /** What is chosen, as a name points to it. */
  get here(): string {
    const grid = this.page.parts.element("sheet-grid");
    return grid ? `${sheetPrefix(this.page.sheet)}${rangeName(grid.area)}` : "";
  }

  /** Shows a cell, on whichever sheet it is. */
  goTo(place: Place, focus: boolean): void {
    const { parts } = this.page;
    this.page.choose(place.sheet);
    void parts
      .draw()
      .then(() => parts.element("sheet-grid")?.updateComplete)
      .then(() => parts.element("sheet-grid")?.goTo(place.row, place.column, { focus }));
  }

  goToStep(done: number): void {
    const { job } = this.page;
    if (!job) return;
    job.goToStep(done);
    const what = job.canUndo;
    this.page.parts.said.say(
      what === undefined ? "The job is as it was opened." : `The job is as it was after: ${what}`,
    );
    this.page.showPlace();
  }

  async title(): Promise<void> {
    const { job, parts } = this.page;
    if (!job) return;
    const answers = await parts.element("sheet-grid")?.ask({
      title: "Title of the job",
      fields: [{ name: "title", label: "Title", kind: "line", value: job.document.title }],
      go: "Call it so",
      problem: (given) => (String(given.title).trim() === "" ? "a job has a title" : undefined),
    });
    if (answers) this.page.command(() => setTitle(job, String(answers.title)));
  }

  duplicate(): void {
    const { job } = this.page;
    if (!job) return;
    this.page.command(() => {
      const copy = duplicateSheet(job, this.page.sheet);
      if (copy !== undefined) this.page.choose(copy);
    });
  }
}
