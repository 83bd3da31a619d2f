/** What helps a person to understand a cell or to find a function. */
import type { Place } from "../engine/values.ts";
import { sheetFunctions } from "../functions/index.ts";
import type { JobDocument } from "../job/document.ts";
import type { Job } from "../job/job.ts";
import { mostLinks, sensitivityOf, type Why, whyOf } from "../job/why.ts";
import type { PageActs } from "./page-acts.ts";

/** The cell that something was asked about. */
interface Asked {
  readonly of: string;
  readonly job: Job;
  readonly document: JobDocument;
}

export class HelpActs {
  /** Whether the drawer that says why is open. */
  why = false;
  /** Cells that read the one in hand, as far as they are known. */
  private read: (Asked & { by: readonly Place[] }) | undefined;
  /** What a little more of an input does to it. */
  private felt: (Asked & { lines: readonly string[] }) | undefined;

  constructor(private readonly acts: PageActs) {}

  /** Why a cell shows what it shows. Which cells read it comes a little later in a large job, and it is drawn anew then. */
  whyOf(job: Job, place: Place): Why {
    const of = JSON.stringify(place);
    // What was known of the same cell stands until then.
    const before = this.read?.of === of && this.read.job === job ? this.read : undefined;
    if (before?.document !== job.document) {
      const asked = { of, job, document: job.document, by: before?.by ?? [] };
      this.read = asked;
      const take = (by: readonly Place[]) => {
        asked.by = by;
        if (this.read === asked && this.why) void this.acts.parts.draw();
      };
      void job.readers(place, mostLinks).then(take, () => {
        // As when it is stopped: it is asked again when it is drawn again.
        if (this.read === asked) this.read = before;
      });
    }
    return whyOf(job, place, sheetFunctions, this.read?.by ?? [], this.feltBy(job, place, of));
  }

  /** As far as it is known: it is reckoned elsewhere, once the values are there. */
  private feltBy(job: Job, place: Place, of: string): readonly string[] {
    const known = this.felt?.of === of && this.felt.job === job ? this.felt : undefined;
    if (known?.document === job.document || job.reckoning) return known?.lines ?? [];
    const asked = { of, job, document: job.document, lines: known?.lines ?? [] };
    this.felt = asked;
    const take = (lines: readonly string[]) => {
      asked.lines = lines;
      if (this.felt === asked && this.why) void this.acts.parts.draw();
    };
    void sensitivityOf(job, place).then(take, () => {
      if (this.felt === asked) this.felt = known;
    });
    return asked.lines;
  }

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
