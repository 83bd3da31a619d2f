/**
 * What the person can do to the job on the desk, whichever part of the page asked for it: the rail, the route card, a
 * key or a panel. Every act ends in one command of the job and in words about what it did.
 */
import type { Source } from "../job/read-far.ts";
import { formulasReading } from "../job/references.ts";
import { type Desk, reasonOf } from "./desk.ts";
import type { EditSession } from "./edit-session.ts";
import type { FileIntake } from "./file-intake.ts";
import { fileName, saveBlob } from "./files.ts";
import { countedOperations, numberedName, type Operation, operationsOf, troubleWords } from "./operations.ts";
import type { PanelName } from "./panels.ts";
import { reckoned } from "./reckoned.ts";
import type { RouteAct } from "./route-card.ts";
import type { SaidLine } from "./said.ts";
import { sentence } from "./sentence.ts";
import type { Settings } from "./settings.ts";

/** The parts of the page that acts work on. */
export interface PageParts {
  readonly desk: Desk;
  readonly session: EditSession;
  readonly settings: Settings;
  readonly intake: FileIntake;
  readonly said: SaidLine;
  /** The element of the page with this tag, as soon as it is drawn. */
  element<T extends keyof HTMLElementTagNameMap>(tag: T): HTMLElementTagNameMap[T] | null;
  /** A panel over the page, to be shown; undefined where nothing is to be: what there is to say of it has been said. */
  panel<Name extends PanelName>(name: Name): Promise<HTMLElementTagNameMap[Name] | undefined>;
  /** Draws the page anew, and tells when that is done. */
  draw(): Promise<unknown>;
}

/** Reading a longer file takes so long that it is said, and can be stopped; bytes. */
const longWait = 4_000_000;

export class PageActs {
  constructor(readonly parts: PageParts) {}

  get job() {
    return this.parts.desk.job;
  }

  /** Name of the sheet in hand. */
  get sheet(): string {
    return this.parts.desk.sheet;
  }

  /** Keeps what is being typed. */
  commit(): boolean {
    return this.parts.session.commit();
  }

  /** Runs a command of the job, which may answer why it could not, and says what it did. */
  command(run: () => unknown): void {
    const { job } = this;
    if (!job || !this.commit()) return;
    const before = job.canUndo;
    const reason = run();
    if (typeof reason === "string") this.parts.said.alarm(sentence(reason));
    else if (job.canUndo !== undefined && job.canUndo !== before)
      this.parts.said.say(`${job.canUndo}. Undo takes it back.`);
    void this.parts.draw();
  }

  step(which: "undo" | "redo"): void {
    const { job } = this;
    if (!job) return;
    const what = which === "undo" ? job.canUndo : job.canRedo;
    if (what === undefined) {
      this.parts.said.say(`Nothing to ${which}.`);
      return;
    }
    job[which]();
    this.parts.said.say(`${which === "undo" ? "Undone" : "Done again"}: ${what}`);
    this.showPlace();
    void this.parts.draw();
  }

  /** Takes another sheet in hand. */
  choose(sheet: string): void {
    if (sheet === this.sheet || !this.commit()) return;
    this.parts.desk.chooseSheet(sheet);
    this.showPlace();
    void this.parts.draw();
  }

  /** Puts the active cell of the sheet in hand where the person left it. */
  showPlace(): void {
    const { desk, session } = this.parts;
    const { sheet, place } = desk;
    session.stand({ sheet, ...place });
    // The grid can bring it into view once it has drawn that sheet.
    void this.parts
      .draw()
      .then(() => this.parts.element("sheet-grid")?.updateComplete)
      .then(() => desk.sheet === sheet && this.parts.element("sheet-grid")?.goTo(place.row, place.column));
  }

  route(did: RouteAct): void {
    const { job } = this;
    if (!job) return;
    if (did.act === "choose") this.choose(did.name);
    if (did.act === "sign") void this.signOff(did.name, did.signed);
    if (did.act === "first error") this.showFirstError(did.name);
    if (did.act === "rename") this.rename(did.name, did.newName);
    if (did.act === "move") this.move(did.name, did.by);
    if (did.act === "remove") void this.drop(did.name);
    if (did.act === "add") {
      this.command(() => this.choose(job.addSheet()));
      // Typing goes into the new sheet, and Enter makes no second one.
      void this.parts.draw().then(() => this.parts.element("sheet-grid")?.focus());
    }
  }

  sign(): void {
    const operation = this.job && operationsOf(this.job).find(({ name }) => name === this.sheet);
    if (operation) this.route({ act: "sign", name: operation.name, signed: !operation.signedOff });
  }

  /** An operation with an error in it, or one that may hold some, is signed off only when that is said again. */
  private async signOff(name: string, signed: boolean): Promise<void> {
    const { job } = this;
    const { said } = this.parts;
    if (!job) return;
    const find = (operations: readonly Operation[]) => operations.find((each) => each.name === name);
    const before = find(operationsOf(job));
    if (!before) return;
    if (before.number === undefined) {
      said.say(`${name} is no operation: it has no sign-off.`);
      return;
    }
    // What is still being reckoned shows no errors: it is signed at once, lest it be lost, and looked at afterwards.
    const isAtOnce = job.reckoning ? !job.reckoning.stopped : before.errors === 0;
    if (!signed || isAtOnce) this.command(() => job.signOff(name, signed));
    if (!signed) return;
    await reckoned(job);
    const operation = find(job.reckoning ? operationsOf(job) : await countedOperations(job));
    if (job !== this.job || !operation) return;
    if (operation.errors === 0 && !job.reckoning) {
      if (!isAtOnce) this.command(() => job.signOff(name, true));
      return;
    }
    if (isAtOnce) {
      const { signedOff } = job.document.sheets.find((sheet) => sheet.name === name)!;
      if (!signedOff) return;
      job.signOff(name, false);
    }
    // The box on the card must not show what was not done, and nothing else of the card has changed.
    this.parts.element("route-card")?.requestUpdate();
    const why = operation.errors > 0 ? `it holds ${troubleWords(operation)}` : "not all of it is reckoned";
    const warning = `${numberedName(operation)} is not signed off: ${why}.`;
    const first = {
      word: "Go to the first error",
      act: () => {
        said.settle(warning);
        this.showFirstError(name);
      },
    };
    const all = {
      word: "Sign off all the same",
      act: () => {
        said.settle(warning);
        this.command(() => job.signOff(name, true));
      },
    };
    said.alarm(warning, operation.errors > 0 ? [first, all] : [all]);
  }

  private showFirstError(name: string): void {
    const { job, parts } = this;
    const at = job && operationsOf(job).find((each) => each.name === name)?.firstError;
    if (!at) return;
    this.choose(at.sheet);
    void parts
      .draw()
      .then(() => parts.element("sheet-grid")?.updateComplete)
      .then(() => parts.element("sheet-grid")?.goTo(at.row, at.column, { focus: true }));
  }

  move(name: string, by: -1 | 1): void {
    const { job } = this;
    const to = (job?.document.sheets.findIndex((sheet) => sheet.name === name) ?? -1) + by;
    if (job && to >= 0 && to < job.document.sheets.length) this.command(() => job.moveSheet(name, to));
  }

  private rename(name: string, newName: string): void {
    const { job, parts } = this;
    const onCard = parts.element("route-card")?.matches(":focus-within");
    this.command(() => job?.renameSheet(name, newName));
    this.showPlace();
    const done = job?.document.sheets.some((sheet) => sheet.name === newName);
    if (onCard) void this.toOperation(done ? newName : name);
  }

  /** An operation that others read is deleted only when that is said again. */
  async drop(name: string): Promise<void> {
    const { job, parts } = this;
    if (!job || !this.commit()) return;
    if (job.document.sheets.length === 1) {
      parts.said.say("A job keeps at least one operation.");
      return;
    }
    const onCard = parts.element("route-card")?.matches(":focus-within");
    const many = formulasReading(job.document, name);
    const answers =
      many === 0
        ? {}
        : await parts.element("sheet-grid")?.ask({
            title: `Delete ${name}?`,
            text: `${readWords(many)} Undo takes it back.`,
            go: "Delete it",
          });
    if (answers && job === this.job) {
      this.command(() => job.removeSheet(name));
      this.showPlace();
    }
    if (onCard) await this.toOperation(answers ? this.sheet : name);
  }

  /** Puts the focus on an operation of the route card, as soon as it is drawn. */
  async toOperation(name: string): Promise<void> {
    await this.parts.draw();
    const card = this.parts.element("route-card");
    await card?.updateComplete;
    card?.focusOn(name);
  }

  async saveFile(): Promise<void> {
    this.commit();
    const { job } = this.parts.desk;
    if (!job) return;
    const name = fileName(job.document.title);
    saveBlob(name, await this.parts.desk.file());
    this.parts.said.say(`Saved to the file ${name}.`);
  }

  async takeFile(name: string, source: Promise<Source>): Promise<void> {
    const { desk, said } = this.parts;
    let reading = "";
    try {
      const job = await source;
      if (!this.commit()) return;
      const stop = new AbortController();
      const size = typeof job === "string" ? job.length : job.size;
      if (size > longWait) {
        reading = `Reading ${name}, ${Math.round(size / 1e6)} MB. The job on the desk can be used meanwhile.`;
        said.alarm(reading, [{ word: "Stop", act: () => stop.abort() }]);
      }
      await desk.openText(job, stop.signal);
      this.parts.element("shelf-dialog")?.close();
      said.settle();
      said.say(`Opened ${name}.`);
    } catch (error) {
      // The alert stands behind a dialog, where nobody would see or hear it.
      this.parts.element("shelf-dialog")?.close();
      said.settle(reading);
      said.alarm(
        `${name} was not opened: ${reasonOf(error)}. The job on the desk is unchanged.`,
        [],
        "file not opened",
      );
    }
  }

  /** Runs what the browser may refuse, and says so where it does. */
  async attempt(run: () => Promise<unknown>): Promise<void> {
    try {
      await run();
    } catch (error) {
      this.parts.element("shelf-dialog")?.close();
      this.parts.said.alarm(sentence(reasonOf(error)));
    }
  }
}

function readWords(formulas: number | undefined): string {
  if (formulas === undefined) return "Formulas on other operations may read it, and will then show an error.";
  if (formulas === 1) return "1 formula on another operation reads it and will show an error.";
  return `${formulas} formulas on other operations read it and will show an error.`;
}
