/**
 * The one edit that may be under way, shared by the grid and the entry line: which cell is active, what is typed so
 * far, and how it ends. What is typed is kept unless the person drops it. Fires `change`, `leave` with the step that the
 * active cell takes, `refused` with the reason where the cell is locked, and `remarked` with what is to be known of what
 * was kept: a caution, how a number was read, that it is text.
 */
import type { Place } from "../engine/values.ts";
import { doubtIn } from "../job/decimal.ts";
import type { Job } from "../job/job.ts";
import { keptAsText, quantityAt } from "../job/readings.ts";
import { reckoned } from "./reckoned.ts";

export interface Edit {
  readonly place: Place;
  readonly text: string;
  /** The cell's text when the edit began; the same text again is no change. */
  readonly before: string;
  /** Typed over the old content: arrow keys keep and move. Else they move the caret. */
  readonly replacing: boolean;
  /** Which of the two has the caret. */
  readonly where: "cell" | "line";
  /** Where the caret stands, as far as the field tells it; else at the end. */
  readonly caret?: number;
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
  /** The person wants letters on the screen's keyboard where figures belong. */
  letters = false;
  private job: Job | undefined;
  private size: string | undefined;
  /** The address pointed at last, and the formula before and after it. */
  private pointed: { readonly before: string; readonly address: string; readonly after: string } | undefined;

  /** How large the range is that is chosen: "198 by 4", rows and columns; undefined for one cell. */
  get chosen(): string | undefined {
    return this.size;
  }

  /** Told while the grid is drawn: whoever shows it is told afterwards. */
  choose(size: string | undefined): void {
    if (this.size === size) return;
    this.size = size;
    queueMicrotask(() => this.dispatchEvent(new Event("chosen")));
  }

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

  turnLetters(): void {
    this.letters = !this.letters;
    this.tell();
  }

  /** What the text reads now, or a change in how it is edited. */
  update(change: Partial<Pick<Edit, "text" | "replacing" | "where" | "caret">>): void {
    if (!this.edit) return;
    this.edit = { ...this.edit, ...change };
    this.tell();
  }

  /** Keeps what is typed, as one undo step. True when nothing is left unkept. */
  commit(): boolean {
    const { edit, job } = this;
    if (!edit || !job) return true;
    this.edit = undefined;
    this.letters = false;
    this.pointed = undefined;
    if (edit.text !== edit.before) {
      const reason = job.setCells([{ ...edit.place, text: spelledAsListed(job, edit) }]);
      if (reason !== undefined) this.dispatchEvent(new CustomEvent("refused", { detail: reason }));
      else {
        this.remark(job, edit);
        this.warn(job, edit.place);
      }
    }
    this.tell();
    return true;
  }

  /** A number that was read in one of two ways, or text that looks like a number. */
  private remark({ document, unit }: Job, { place, text }: Edit) {
    const doubt = doubtIn(text);
    const read = doubt !== undefined && quantityAt(document, place, text, unit) !== undefined;
    const words = read ? `Read ${doubt}` : keptAsText(document, place, text, unit);
    if (words !== undefined) this.dispatchEvent(new CustomEvent("remarked", { detail: words }));
  }

  /** A value that is doubtful is kept, and said to be so. */
  private warn(job: Job, { sheet, row, column }: Place) {
    const { stale, caution } = job.cell(sheet, row, column);
    if (stale)
      void reckoned(job).then(
        () => job.cell(sheet, row, column).stale || this.warn(job, { sheet, row, column }),
      );
    else if (caution !== undefined)
      this.dispatchEvent(new CustomEvent("remarked", { detail: `Caution: ${caution}` }));
  }

  /** True while nothing has been typed since a cell was pointed at: the next one takes its place. */
  get isPointing(): boolean {
    const { edit, pointed } = this;
    return pointed !== undefined && edit?.text === pointed.before + pointed.address + pointed.after;
  }

  /** True where a formula waits for a cell. */
  get awaitsCell(): boolean {
    if (!this.edit?.text.startsWith("=")) return false;
    return /[=(,;:+\-*/^&<>{]\s*$/.test(this.aroundAddress[0]);
  }

  private get aroundAddress(): readonly [before: string, after: string] {
    if (this.isPointing) return [this.pointed!.before, this.pointed!.after];
    const { text, caret = text.length } = this.edit!;
    return [text.slice(0, caret), text.slice(caret)];
  }

  /**
   * Puts the address of a cell that was pointed at into the formula, in place of the one pointed at before.
   *
   * @returns false where the formula does not wait for one
   */
  point(address: string): boolean {
    if (!this.awaitsCell) return false;
    const [before, after] = this.aroundAddress;
    this.pointed = { before, address, after };
    this.update({ text: before + address + after, caret: before.length + address.length });
    return true;
  }

  /** Forgets what is typed. */
  drop(): void {
    if (!this.edit) return;
    this.edit = undefined;
    this.letters = false;
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
