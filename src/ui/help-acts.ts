/** What helps a person to understand a cell or to find a function. */
import type { Place } from "../engine/values.ts";
import { sheetFunctions } from "../functions/index.ts";
import type { JobDocument } from "../job/document.ts";
import type { Job } from "../job/job.ts";
import { mostLinks, sensitivityOf, type Why, whyOf } from "../job/why.ts";
import type { PageActs } from "./page-acts.ts";

/** What was asked about a cell, and what is known of it. */
interface Asked<T> {
  readonly of: string;
  readonly job: Job;
  readonly document: JobDocument;
  list: readonly T[];
}

/** A list about a cell that is found elsewhere and comes a little later. What was known of the same cell stands until then. */
class Listed<T> {
  private asked: Asked<T> | undefined;

  /** @param come the list has come */
  constructor(private readonly come: () => void) {}

  /** As far as it is known. @param find asks for it; left out where that has to wait */
  of(job: Job, place: Place, find: (() => Promise<readonly T[]>) | undefined): readonly T[] {
    const of = JSON.stringify(place);
    const before = this.asked?.of === of && this.asked.job === job ? this.asked : undefined;
    if (before?.document === job.document || !find) return before?.list ?? [];
    const asked = { of, job, document: job.document, list: before?.list ?? [] };
    this.asked = asked;
    const take = (list: readonly T[]) => {
      asked.list = list;
      if (this.asked === asked) this.come();
    };
    void find().then(take, () => {
      // As when it is stopped: it is asked again when it is drawn again.
      if (this.asked === asked) this.asked = before;
    });
    return asked.list;
  }
}

export class HelpActs {
  /** Whether the drawer that says why is open. */
  why = false;
  private readonly drawAnew = () => {
    if (this.why) void this.acts.parts.draw();
  };
  /** Cells that read the one in hand. */
  private readonly readers = new Listed<Place>(this.drawAnew);
  /** What a little more of an input does to it. */
  private readonly felt = new Listed<string>(this.drawAnew);

  constructor(private readonly acts: PageActs) {}

  /** Why a cell shows what it shows; drawn anew when more of it is known. */
  whyOf(job: Job, place: Place): Why {
    const readers = this.readers.of(job, place, () => job.readers(place, mostLinks));
    // What is felt is asked for once the values are there.
    const felt = this.felt.of(job, place, job.reckoning ? undefined : () => sensitivityOf(job, place));
    return whyOf(job, place, sheetFunctions, readers, felt);
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
    void this.acts.parts.panel("guide-dialog").then((guide) => guide?.show(name));
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
