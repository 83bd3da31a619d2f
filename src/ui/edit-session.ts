/**
 * The one edit that may be under way, shared by the grid and the entry line: which cell is active, what is typed so
 * far, and how it ends. What is typed is kept unless the person drops it. Fires `change`, and `leave` with the step
 * that the active cell takes.
 */
import type { Place } from "../engine/values.ts";
import type { Job } from "../job/job.ts";

export interface Edit {
  readonly place: Place;
  readonly text: string;
  /** The cell's text when the edit began; the same text again is no change. */
  readonly before: string;
  /** Typed over the old content: arrow keys keep and move. Else they move the caret. */
  readonly replacing: boolean;
  /** Which of the two has the caret. */
  readonly where: "cell" | "line";
  /** A list of words is open instead of a text field. */
  readonly choosing: boolean;
}

export interface Step {
  readonly rows: number;
  readonly columns: number;
}

export class EditSession extends EventTarget {
  active: Place = { sheet: "", row: 0, column: 0 };
  edit: Edit | undefined;
  private job: Job | undefined;

  /** Makes a cell the active one; an edit elsewhere is kept first. */
  stand(place: Place): void {
    const { sheet, row, column } = this.active;
    if (sheet === place.sheet && row === place.row && column === place.column) return;
    this.commit();
    this.active = place;
    this.tell();
  }

  /** Begins to edit the active cell; `text` takes the place of what is there. */
  begin(job: Job, how: { text?: string; where: "cell" | "line"; choosing?: boolean }): void {
    this.commit();
    const { sheet, row, column } = this.active;
    const before = job.cell(sheet, row, column).text;
    this.job = job;
    this.edit = {
      place: this.active,
      text: how.text ?? before,
      before,
      replacing: how.text !== undefined,
      where: how.where,
      choosing: how.choosing ?? false,
    };
    this.tell();
  }

  /** What the text reads now, or a change in how it is edited. */
  update(change: Partial<Pick<Edit, "text" | "replacing" | "where">>): void {
    if (!this.edit) return;
    this.edit = { ...this.edit, ...change };
    this.tell();
  }

  /** Keeps what is typed, as one undo step. True when nothing is left unkept. */
  commit(): boolean {
    const { edit, job } = this;
    if (!edit || !job) return true;
    this.edit = undefined;
    if (edit.text !== edit.before) job.setCells([{ ...edit.place, text: spelledAsListed(job, edit) }]);
    this.tell();
    return true;
  }

  /** Forgets what is typed. */
  drop(): void {
    if (!this.edit) return;
    this.edit = undefined;
    this.tell();
  }

  /** Keeps, and moves the active cell; the grid takes the focus. */
  leave(step: Step): void {
    this.commit();
    this.dispatchEvent(new CustomEvent<Step>("leave", { detail: step }));
  }

  private tell() {
    this.dispatchEvent(new Event("change"));
  }
}

/** A word of the cell's choices in whatever case becomes the word as listed. */
function spelledAsListed(job: Job, edit: Edit): string {
  const { sheet, row, column } = edit.place;
  const typed = edit.text.trim().toLowerCase();
  return job.cell(sheet, row, column).choices?.find((word) => word.toLowerCase() === typed) ?? edit.text;
}
