/** The job as it runs: commands make a new document, the engine is told what differs, listeners are called. */
import { cellName, columnName, placeName, splitSheet } from "../engine/address.ts";
import { Engine, type Log } from "../engine/engine.ts";
import { limits } from "../engine/gate.ts";
import type { CellValue } from "../engine/values.ts";
import type { SheetFunction } from "../functions/declare.ts";
import { sheetFunctions } from "../functions/index.ts";
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
import type { CellFormat, JobDocument } from "./document.ts";
import { formatOf } from "./formats.ts";
import { History } from "./history.ts";
import type { CellEdit, CellView, Job, JobChange } from "./job.ts";
import { nameOfCell, nameProblem, sheetNameProblem, targetProblem } from "./names.ts";

/** @param functions what cells may call besides the engine's own functions */
export function createJob(
  document: JobDocument,
  functions: readonly SheetFunction[] = sheetFunctions,
  log?: Log,
): Job {
  return new RunningJob(document, functions, log);
}

class RunningJob implements Job {
  private readonly history: History;
  private readonly engine: Engine;
  private readonly listeners = new Set<(change: JobChange) => void>();

  constructor(document: JobDocument, functions: readonly SheetFunction[], log: Log | undefined) {
    this.history = new History(document);
    this.engine = new Engine(document, functions, log);
  }

  get document(): JobDocument {
    return this.history.document;
  }

  get unit(): "mm" | "in" {
    const name = Object.keys(this.document.names).find((each) => each.toLowerCase() === "unit");
    const value = name === undefined ? undefined : this.engine.evaluate(`=${name}`);
    return typeof value === "string" && /^\s*(in|inch|inches|")\s*$/i.test(value) ? "in" : "mm";
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
      format: formatOf(found, row, column),
    };
    const caution = this.engine.note(sheet, row, column);
    if (caution !== undefined) view.caution = caution;
    const choices = found.choices[key];
    if (choices) view.choices = choices;
    const note = found.notes[key];
    if (note !== undefined) view.note = note;
    if (anchor) view.spilledFrom = cellName(anchor.row, anchor.column);
    const name = nameOfCell(this.document, sheet, row, column);
    if (name !== undefined) view.name = name;
    return view;
  }

  setCells(edits: readonly CellEdit[], what?: string): void {
    const possible = edits.filter(
      ({ sheet, row, column }) =>
        this.has(sheet) && row >= 0 && row < limits.rows && column >= 0 && column < limits.columns,
    );
    const after = withCells(this.document, possible);
    this.take(after, what ?? wordsForCells(differingCells(this.document, after) ?? possible));
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
    this.take(withSheetRenamed(this.document, name, newName), `Renamed the sheet ${name} to ${newName}`);
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
    if (!found || (found.signedOff ?? false) === signed) return;
    this.take(
      withSheet(this.document, sheet, (old) => {
        const { signedOff: _, ...rest } = old;
        return (signed ? { ...rest, signedOff: true } : rest) as typeof old;
      }),
      `${signed ? "Signed off" : "Took back the sign-off of"} ${sheet}`,
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

  undo(): void {
    const before = this.document;
    const what = this.history.undo();
    if (what !== undefined) this.follow(before, `Undid: ${what}`);
  }

  redo(): void {
    const before = this.document;
    const what = this.history.redo();
    if (what !== undefined) this.follow(before, `Did again: ${what}`);
  }

  evaluate(formula: string, sheet?: string): CellValue | CellValue[][] {
    return this.engine.evaluate(formula, sheet !== undefined && this.has(sheet) ? sheet : undefined);
  }

  subscribe(listener: (change: JobChange) => void): () => void {
    this.listeners.add(listener);
    return () => this.listeners.delete(listener);
  }

  private has(sheet: string): boolean {
    return this.document.sheets.some((each) => each.name === sheet);
  }

  private take(after: JobDocument, what: string): void {
    const before = this.document;
    if (after === before) return;
    this.history.add(after, what);
    this.follow(before, what);
  }

  private follow(before: JobDocument, what: string): void {
    const edits = differingCells(before, this.document);
    if (!edits) this.engine.load(this.document);
    else if (edits.length > 0) this.engine.setCells(edits);
    for (const listener of [...this.listeners]) listener({ document: this.document, what });
  }
}
