/** The job as it runs: commands make a new document, the engine is told what differs, listeners are called. */
import { cellName, columnName, placeName, splitSheet } from "../engine/address.ts";
import { limits } from "../engine/gate.ts";
import { type KnownValues, readKnown } from "../engine/known-values.ts";
import type { Reckoner, Reckoning } from "../engine/reckoner.ts";
import { type CellValue, isErrorValue, type Place } from "../engine/values.ts";
import { allowedAt, outsideReason } from "./allowed.ts";
import {
  differingCells,
  emptySheet,
  withCells,
  withFormat,
  withoutSheet,
  withSheet,
  withSheetMoved,
  withSheetRenamed,
  wordsForCells,
} from "./changes.ts";
import type { CellFormat, JobDocument, SheetDocument } from "./document.ts";
import { formatOf } from "./formats.ts";
import { History } from "./history.ts";
import type { CellEdit, CellView, Job, JobChange, Trial } from "./job.ts";
import { JobValues, type Way } from "./job-values.ts";
import { tooManyCells } from "./large-cells.ts";
import { isLocked, lockReason } from "./locks.ts";
import { type Moves, sheetRenamed } from "./moves.ts";
import { nameOfCell, nameProblem, sheetNameProblem, targetProblem } from "./names.ts";
import { partsOfNote } from "./note-parts.ts";
import { type LengthUnit, unreadReason } from "./readings.ts";
import { answersAsShown, answersPutIn, signedForAnother, signedForNow } from "./signed.ts";
import { formatAsTaken, takenFor } from "./taken-for.ts";

/** @param before values that were kept of this very document, to show until a worker has reckoned; anything else is let be */
export function startJob(document: JobDocument, way: Way, before?: unknown): Job {
  return new RunningJob(document, way, readKnown(before, document.sheets.length));
}

class RunningJob implements Job {
  changes = 0;
  private readonly history: History;
  private readonly values: JobValues;
  private readonly listeners = new Set<(change: JobChange) => void>();

  constructor(document: JobDocument, way: Way, before: KnownValues | undefined) {
    this.history = new History(document);
    this.values = new JobValues(document, way, (change) => this.hear(change), before);
  }

  get document(): JobDocument {
    return this.history.document;
  }

  get unit(): LengthUnit {
    return this.values.unit;
  }

  private get engine(): Reckoner {
    return this.values.reckoner;
  }

  get canUndo(): string | undefined {
    return this.history.canUndo;
  }

  get canRedo(): string | undefined {
    return this.history.canRedo;
  }

  cell(sheet: string, row: number, column: number): CellView {
    const found = this.document.sheets.find((each) => each.name === sheet);
    if (!found) return { text: "", value: null, format: {} };
    const key = cellName(row, column);
    const text = found.cells[key] ?? "";
    const anchor = text === "" ? this.engine.spilledFrom(sheet, row, column) : undefined;
    const view: { -readonly [K in keyof CellView]: CellView[K] } = {
      text,
      value: text === "" && !anchor ? null : this.engine.value(sheet, row, column),
      format: this.formatAt(found, row, column),
    };
    const asTaken = formatAsTaken(this.document, { sheet, row, column }, view, this.unit);
    if (asTaken) view.format = asTaken;
    const reckoned = text[0] === "=" || anchor !== undefined;
    const note = reckoned ? this.engine.note(sheet, row, column) : undefined;
    const { doubt, taken } = partsOfNote(note);
    if (taken !== undefined) view.taken = taken;
    const cautions = [doubt, this.inputCaution(found, row, column, view)];
    const caution = cautions.filter((each) => each !== undefined).join("; ");
    if (caution !== "") view.caution = caution;
    const figure = reckoned ? this.engine.figure(sheet, row, column) : undefined;
    if (figure) view.figure = figure;
    if (isLocked(found, row, column)) view.locked = true;
    if (reckoned && this.engine.isStale(sheet, row, column)) {
      view.stale = true;
      if (isErrorValue(view.value)) view.value = null;
    }
    const choices = found.choices[key];
    if (choices) view.choices = choices;
    const remark = found.notes[key];
    if (remark !== undefined) view.note = remark;
    if (anchor) view.spilledFrom = cellName(anchor.row, anchor.column);
    const name = nameOfCell(this.document, sheet, row, column);
    if (name !== undefined) view.name = name;
    return view;
  }

  /** The format, with the divisions of a dial looked up where the format names the cell that holds them. */
  private formatAt(sheet: SheetDocument, row: number, column: number): CellFormat {
    const format = formatOf(sheet, row, column);
    if (typeof format.perTurn !== "string") return format;
    const { perTurn, ...rest } = format;
    const value = this.values.named(perTurn);
    return typeof value === "number" && value >= 1 ? { ...rest, perTurn: value } : rest;
  }

  private inputCaution(
    sheet: SheetDocument,
    row: number,
    column: number,
    { text, value, format }: CellView,
  ): string | undefined {
    const key = cellName(row, column);
    const unread = unreadReason(sheet, key, text, this.unit);
    if (unread !== undefined) return unread;
    const allowed = sheet.allowed && allowedAt(sheet, row, column);
    return allowed && outsideReason(value, allowed, format, sheet.choices[key], this.unit);
  }

  put(document: JobDocument, what: string, moves?: Moves): void {
    this.take(document, what, moves);
  }

  setCells(
    edits: readonly CellEdit[],
    what?: string,
    also: (document: JobDocument) => JobDocument = (document) => document,
  ): string | undefined {
    const possible = edits.filter(
      ({ sheet, row, column }) =>
        this.has(sheet) && row >= 0 && row < limits.rows && column >= 0 && column < limits.columns,
    );
    const locked = possible.find((at) => this.isLockedAt(at));
    if (locked) return lockReason(locked.row, locked.column);
    const texts = withCells(this.document, possible);
    const typed = also(texts);
    if (typed === this.document) return undefined;
    const words = what ?? wordsForCells(differingCells(this.document, typed) ?? possible);
    const readings = texts === this.document ? [] : takenFor(this, possible);
    this.take(
      withCells(
        typed,
        readings.filter((at) => !this.isLockedAt(at)),
      ),
      words,
    );
    return undefined;
  }

  setFormat(sheet: string, range: string, format: CellFormat): void {
    if (!this.has(sheet)) return;
    this.take(withFormat(this.document, sheet, range, format), `Changed the format of ${sheet} ${range}`);
  }

  setColumnWidth(sheet: string, column: number, width: number): void {
    const found = this.document.sheets.find((each) => each.name === sheet);
    const letter = columnName(column);
    const kept = Math.round(Math.max(0, Math.min(width, 4000)));
    if (!found || found.columns[letter] === kept) return;
    this.take(
      withSheet(this.document, sheet, (old) => ({
        ...old,
        columns: { ...old.columns, [letter]: kept },
      })),
      `Changed the width of column ${letter} in ${sheet}`,
    );
  }

  addSheet(name = "Sheet 1"): string {
    const others = this.document.sheets.map((sheet) => sheet.name);
    const wish = sheetNameProblem(name, []) ? "Sheet 1" : name;
    const stem = wish.replace(/ \d+$/, "");
    let free = wish;
    for (let n = 2; sheetNameProblem(free, others); n++) free = `${stem.slice(0, 50)} ${n}`;
    this.take(
      { ...this.document, sheets: [...this.document.sheets, emptySheet(free)] },
      `Added the sheet ${free}`,
    );
    return free;
  }

  renameSheet(name: string, newName: string): string | undefined {
    if (!this.has(name)) return `there is no sheet "${name}"`;
    const others = this.document.sheets.map((sheet) => sheet.name).filter((other) => other !== name);
    const problem = sheetNameProblem(newName, others);
    if (problem !== undefined || newName === name) return problem;
    const many = tooManyCells(this.document.sheets);
    if (many !== undefined) return many;
    const after = withSheetRenamed(this.document, name, newName);
    this.take(after, `Renamed the sheet ${name} to ${newName}`, sheetRenamed(name, newName));
    return undefined;
  }

  removeSheet(name: string): string | undefined {
    if (!this.has(name)) return `there is no sheet "${name}"`;
    if (this.document.sheets.length === 1) return "a job keeps at least one sheet";
    this.take(withoutSheet(this.document, name), `Removed the sheet ${name}`);
    return undefined;
  }

  moveSheet(name: string, to: number): void {
    this.take(withSheetMoved(this.document, name, to), `Moved the sheet ${name}`);
  }

  signOff(sheet: string, signed: boolean): void {
    const found = this.document.sheets.find((each) => each.name === sheet);
    if (!found) return;
    const before = found.signedOff ?? false;
    if (before === signed && !(signed && signedForAnother(this, found))) return;
    const signedFor = signedForNow(this, found);
    const told = Object.keys(signedFor).length > 0;
    this.take(
      withSheet(this.document, sheet, (old) => {
        const { signedOff: _, signedFor: __, ...rest } = old;
        return (signed ? { ...rest, signedOff: true, ...(told ? { signedFor } : {}) } : rest) as typeof old;
      }),
      `${signed ? (before ? "Signed off again" : "Signed off") : "Took back the sign-off of"} ${sheet}`,
    );
  }

  setName(name: string, target: string): string | undefined {
    const problem =
      nameProblem(name) ??
      targetProblem(
        target,
        this.document.sheets.map((sheet) => sheet.name),
      );
    if (problem !== undefined) return problem;
    // Formulas read names without regard to case, so an older spelling gives way.
    const others = Object.entries(this.document.names).filter(
      ([old]) => old.toLowerCase() !== name.toLowerCase(),
    );
    const { sheet, rest } = splitSheet(target)!;
    const place = placeName({ sheet, row: 0, column: 0 }).replace(
      /A1$/,
      rest.replaceAll("$", "").toUpperCase(),
    );
    this.take(
      { ...this.document, names: Object.fromEntries([...others, [name, place]]) },
      `Named ${place} ${name}`,
    );
    return undefined;
  }

  removeName(name: string): void {
    if (!Object.hasOwn(this.document.names, name)) return;
    const names = Object.fromEntries(Object.entries(this.document.names).filter(([other]) => other !== name));
    this.take({ ...this.document, names }, `Removed the name ${name}`);
  }

  get steps(): readonly string[] {
    return this.history.steps;
  }

  get stepsDone(): number {
    return this.history.stepsDone;
  }

  goToStep(done: number): void {
    const wanted = Math.max(0, Math.min(done, this.history.steps.length));
    const from = this.history.stepsDone;
    if (wanted === from) return;
    const moves = this.history.goTo(wanted);
    const steps = Math.abs(wanted - from);
    this.follow(`${wanted < from ? "Undid" : "Did again"} ${steps} ${steps === 1 ? "step" : "steps"}`, moves);
  }

  undo(): void {
    const step = this.history.undo();
    if (step) this.follow(`Undid: ${step.what}`, step.moves);
  }

  redo(): void {
    const step = this.history.redo();
    if (step) this.follow(`Did again: ${step.what}`, step.moves);
  }

  async evaluate(formula: string, sheet?: string): Promise<CellValue | CellValue[][]> {
    const on = sheet !== undefined && this.has(sheet) ? sheet : undefined;
    return (await this.engine.ask({ kind: "evaluate", formula, sheet: on })).given;
  }

  async trial(results: readonly Place[], inputs: readonly Place[]): Promise<Trial> {
    const ask = (values: readonly CellValue[]) => this.engine.ask({ kind: "trial", results, inputs, values });
    const { dependent } = await ask([]);
    return { dependent, at: async (values) => (await ask(values)).values };
  }

  async precedents(place: Place): Promise<readonly Place[]> {
    return (await this.engine.ask({ kind: "precedents", place })).places;
  }

  async readers(place: Place, most: number): Promise<readonly Place[]> {
    return (await this.engine.ask({ kind: "readers", place, most })).places;
  }

  get reckoning(): Reckoning | undefined {
    return this.values.reckoning;
  }

  stopReckoning(): void {
    this.engine.stop();
  }

  goOnReckoning(): void {
    this.engine.goOn();
  }

  knownValues(): Generator<void, KnownValues> | undefined {
    return this.engine.known();
  }

  subscribe(listener: (change: JobChange) => void): () => void {
    this.listeners.add(listener);
    return () => this.listeners.delete(listener);
  }

  close(): void {
    this.engine.end();
  }

  private isLockedAt({ sheet, row, column }: Place): boolean {
    const on = this.document.sheets.find(({ name }) => name === sheet);
    return on !== undefined && isLocked(on, row, column);
  }

  private has(sheet: string): boolean {
    return this.document.sheets.some((each) => each.name === sheet);
  }

  private take(after: JobDocument, what: string, moves?: Moves): void {
    if (after === this.document) return;
    this.history.add(answersAsShown(this, after), what, moves);
    this.follow(what, moves);
  }

  private follow(what: string, moves?: Moves): void {
    this.values.follow(this.document, moves);
    this.completeSignOffs();
    this.tell({ what });
  }

  private hear({ values, ...change }: Pick<JobChange, "values" | "trouble">): void {
    const isOther = this.completeSignOffs();
    this.tell({ what: "", ...change, ...(values && !isOther ? { values } : {}) });
  }

  /** What a sign-off was given for is a part of it: no step of its own. @returns whether the document is another */
  private completeSignOffs(): boolean {
    const whole = answersPutIn(this);
    if (!whole) return false;
    // Steps keep it as it was: whoever goes back there has the answer put in once more.
    this.history.document = whole;
    this.values.follow(whole);
    return true;
  }

  private tell(change: Omit<JobChange, "document">): void {
    this.changes += 1;
    for (const listener of [...this.listeners]) listener({ document: this.document, ...change });
  }
}
