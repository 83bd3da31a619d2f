/** What is put on paper: the shop card, a sheet, a range or the whole job. What is looked at is what gets printed. */
import { html, nothing, type TemplateResult } from "lit";
import { behindWords } from "../job/behind.ts";
import { cardOf } from "../job/card.ts";
import type { Job } from "../job/job.ts";
import { rangeName } from "../job/references.ts";
import { pictureOf } from "./drawing-cell.ts";
import type { Area } from "./grid-window.ts";
import type { PageActs } from "./page-acts.ts";
import { type Page, type PaperName, printArea, roomOn } from "./paper.ts";
import { bundles, mostRows, numbersWidth, printTable, usedArea, widthOf } from "./print-table.ts";
import { reckoned } from "./reckoned.ts";
import { dateAndTime } from "./saved-words.ts";
import { SheetMap } from "./sheet-map.ts";
import { shopCard } from "./shop-card.ts";

export interface PrintChoice {
  readonly what: "sheet" | "range" | "job";
  readonly paper: PaperName;
  readonly landscape: boolean;
  readonly toWidth: boolean;
  readonly grid: boolean;
  readonly headings: boolean;
}

const cardPage: Page = { paper: "A5", landscape: false, margin: 0 };
const margin = 10;
/** Room for the drawing on the card, px. */
const cardFigure = { width: 214, height: 250 } as const;
/** Under this share of its size nobody reads type at a machine. */
const leastScale = 0.55;

export class PaperActs {
  choice: PrintChoice = {
    what: "sheet",
    paper: "A4",
    landscape: false,
    toWidth: true,
    grid: true,
    headings: true,
  };

  constructor(private readonly acts: PageActs) {
    // Also for the browser's own print command, which asks nobody.
    addEventListener("beforeprint", () => this.put());
  }

  async showCard(): Promise<void> {
    if (this.acts.job && this.acts.commit()) (await this.acts.parts.panel("card-dialog"))?.show();
  }

  async showPrint(): Promise<void> {
    if (!this.acts.job || !this.acts.commit()) return;
    (await this.acts.parts.panel("print-dialog"))?.show();
    void this.acts.parts.draw();
  }

  choose(choice: Partial<PrintChoice>): void {
    this.choice = { ...this.choice, ...choice };
    void this.acts.parts.draw();
  }

  async print(): Promise<void> {
    const { job } = this.acts;
    if (job) await reckoned(job);
    this.put();
    await document.fonts.ready;
    print();
  }

  /** The range that is chosen in the grid, as it is called. */
  get rangeName(): string {
    return rangeName(this.chosen);
  }

  /** What stands in the way of reading it, "" when nothing does. */
  get remark(): string {
    const { job } = this.acts;
    if (!job || !this.acts.parts.element("print-dialog")?.open) return "";
    const parts = this.parts(job);
    const scale = Math.min(...parts.map(({ map, area }) => this.scaleFor(map, area)));
    const rows = Math.max(...parts.map(({ area }) => area.bottom - area.top + 1));
    if (rows > mostRows) return `Only the first ${mostRows} of ${rows} rows are printed.`;
    if (this.choice.toWidth && scale < leastScale)
      return `The type gets ${Math.round(scale * 100)} % of its size. Turn the page, take larger paper, or print across several pages.`;
    return "";
  }

  private put(): void {
    const { job, parts } = this.acts;
    if (!job) return;
    if (parts.element("card-dialog")?.open) printArea().put(html`${this.card(job)}`, cardPage, 1);
    else this.putSheets(job);
  }

  card(job: Job): TemplateResult[] {
    const card = cardOf(job);
    const { drawing: at } = card;
    const drawn = at && job.cell(at.sheet, at.top, at.left).figure;
    return shopCard(
      card,
      drawn && pictureOf(drawn, cardFigure.width, cardFigure.height, 1),
      dateAndTime(Date.now()),
    );
  }

  private putSheets(job: Job) {
    const { choice } = this;
    const parts = this.parts(job);
    const scale = choice.toWidth ? Math.min(...parts.map(({ map, area }) => this.scaleFor(map, area))) : 1;
    printArea().put(html`${parts.map(({ map, area }) => this.onPaper(job, map, area))}`, this.page, scale);
  }

  private onPaper(job: Job, map: SheetMap, area: Area): TemplateResult {
    const { choice } = this;
    const room = roomOn(this.page).width - (choice.headings ? numbersWidth : 0);
    const pages = choice.toWidth ? [area] : bundles(map, area, room);
    const number = job.document.sheets.find(({ name }) => name === map.name)?.operation;
    const behind = behindWords(job);
    return html`${pages.map(
      (columns) => html`<section class="bundle">
        <div class="top">
          <b>${[number, map.name].filter((part) => part !== undefined).join(" ")}</b>
          <span>${job.document.title}${choice.what === "range" ? `, ${rangeName(area)}` : ""}</span>
        </div>
        ${behind ? html`<p class="behind">${behind}</p>` : nothing}
        ${printTable(map, { ...area, left: columns.left, right: columns.right }, choice)}
      </section>`,
    )}`;
  }

  private get page(): Page {
    return { paper: this.choice.paper, landscape: this.choice.landscape, margin };
  }

  private get chosen(): Area {
    return this.acts.parts.element("sheet-grid")?.area ?? { top: 0, left: 0, bottom: 0, right: 0 };
  }

  private parts(job: Job): { map: SheetMap; area: Area }[] {
    const { what } = this.choice;
    const names = what === "job" ? job.document.sheets.map(({ name }) => name) : [this.acts.sheet];
    return names.map((name) => {
      const map = new SheetMap(job, name);
      return { map, area: what === "range" ? this.chosen : usedArea(map) };
    });
  }

  private scaleFor(map: SheetMap, { left, right }: Area): number {
    let width = this.choice.headings ? numbersWidth : 0;
    for (let column = left; column <= right; column++) width += widthOf(map, column);
    return Math.min(1, roomOn(this.page).width / width);
  }
}
