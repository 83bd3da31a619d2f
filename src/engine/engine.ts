/**
 * The values of a job: a cache that can be thrown away and rebuilt from the contents at any moment.
 *
 * Whatever the engine below throws, the contents here stay whole: it is rebuilt from them, and a formula that breaks
 * it every time is kept out with a reason until something changes.
 */
import * as hyperformula from "hyperformula";
import { HyperFormula, NotAFormulaError } from "hyperformula";
import type { Drawn, SheetFunction } from "../functions/declare.ts";
import { cellName } from "./address.ts";
import { Beside } from "./beside.ts";
import { Cone, keyOf, Precedents, type Whole } from "./cone.ts";
import { configOf, growTo, roomAtFirst } from "./config.ts";
import {
  type CellEntry,
  Contents,
  type EngineContent,
  type EngineEdit,
  rawOf,
  type ValueEdit,
} from "./contents.ts";
import { Figures } from "./figures.ts";
import { type Entry, enter } from "./gate.ts";
import { cellValueOf, unreadableFormula } from "./messages.ts";
import { addNames, cellOf } from "./names.ts";
import { type Cell, type MadePlugin, makePlugin, refusalFunction } from "./plugin.ts";
import { type Heard, hearReckoned } from "./recomputing.ts";
import { Spills } from "./spills.ts";
import { Tabulated } from "./tabulated.ts";
import { type CellValue, type ErrorValue, isErrorValue, type Place } from "./values.ts";
import { dependentsIn, markDirty, readsIn, typedIn } from "./whole.ts";

export type { EngineContent, EngineEdit } from "./contents.ts";

export type Log = (what: string, error: unknown) => void;

/** What-if values in the arguments of others, one inside the other: nobody needs more. */
const mostRounds = 20;

export class Engine {
  /** Faults that were caught, ours or the engine's; for the curious and for tests. */
  readonly log: Log;
  private readonly made: MadePlugin;
  private readonly spills = new Spills();
  private hf!: HyperFormula;
  private readonly held = new Contents();
  private room = roomAtFirst;
  /** Errors that stand in cells, and why formulas were refused, by their number in the engine. */
  private reasons: ErrorValue[] = [];
  /** Cells whose formula broke the engine, by `Sheet!A1`, with the reason. */
  private broken = new Map<string, string>();
  private readonly beside = new Beside();
  /** What-if tables. Their values come with the others, or later when they are asked for in slices. */
  private readonly tables: Tabulated;
  /** Cells that depend on some that waited for a value after the last edit. */
  private behind: ReadonlySet<string> | undefined;

  constructor(
    content: EngineContent,
    private readonly functions: readonly SheetFunction[],
    log: Log = (what, error) => console.error(what, error),
    private readonly later = false,
    private readonly heard?: Heard,
  ) {
    this.log = log;
    this.tables = new Tabulated(
      () => this.whole(),
      (cells) => this.reckonAgain(cells),
    );
    this.made = makePlugin(hyperformula, functions, {
      note: (note, cell) => this.beside.tellNote(note, cell),
      drawn: (drawn, cell) => this.beside.tellDrawing(drawn, cell),
      size: (cell, rows, columns, fits) => this.spills.tell(cell, rows, columns, fits),
      fault: (name, error) => log(`fault in ${name}`, error),
      refusal: (number) => this.reasons[number],
      cellNamed: (name) => cellOf(this.held.names, name, (sheet) => this.held.indexOf(sheet)),
      tabulated: (trial, cell) => this.tables.ask(trial, cell),
    });
    this.load(content);
  }

  /** Takes another content: after opening a job, and after any change of sheets or names. */
  load(content: EngineContent): void {
    const more = this.hf && this.held.extend(content);
    if (more) {
      const numbers = more.sheets.map((name) => this.hf.getSheetId(this.hf.addSheet(name)));
      const first = this.held.sheets.length - more.sheets.length;
      // A formula that named a sheet which is not there may have taken the next number for it.
      if (numbers.every((number, index) => number === first + index)) {
        this.change(more.entries);
        return;
      }
    }
    this.held.load(content);
    this.tables.forgetLast();
    this.rebuild();
  }

  /** Builds everything anew from the contents. */
  rebuild(): void {
    this.broken.clear();
    try {
      this.build();
    } catch (error) {
      this.log("the engine could not be built at once", error);
      this.buildOneByOne();
    }
    if (!this.later) this.reckonTables();
  }

  /** @throws RangeError if a sheet is unknown or a cell lies outside the largest sheet */
  setCells(edits: readonly EngineEdit[]): void {
    this.change(this.held.type(edits));
  }

  /** Puts values where nothing is typed, or over what is typed until it is typed again. */
  setValues(edits: readonly ValueEdit[]): void {
    this.change(this.held.put(edits));
  }

  /** True while the value is that of an earlier edit, since a what-if table behind it is still being reckoned. */
  isStale(sheet: string, row: number, column: number): boolean {
    const cell = this.tables.left > 0 && this.cell(sheet, row, column);
    if (!cell) return false;
    this.behind ??= dependentsIn(this.hf, this.tables.waitingCells());
    return this.tables.isWaiting(cell) || this.behind.has(keyOf(cell));
  }

  /** For whoever passes all values on: cells by number, and what stands beside them. */
  get inner() {
    return { hf: this.hf, held: this.held, spills: this.spills, beside: this.beside };
  }

  /** Cells of what-if tables that wait for their value. */
  get tablesLeft(): number {
    return this.tables.left;
  }

  /** Reckons what-if tables until all is known or `enough` says so. @returns true when all is known */
  reckonTables(enough?: () => boolean): boolean {
    return this.tables.advance(enough);
  }

  /** The cells between inputs and results, to be tried with other inputs; the job stays as it is. */
  cone(results: readonly Place[], inputs: readonly Place[]): { cone: Cone; dependent: boolean[] } {
    const cells = [results, inputs].map((places) => places.map((place) => this.held.cellAt(place)));
    const precedents = new Precedents(this.whole(), cells[0]!, cells[1]!);
    const dependent = cells[0]!.map((cell) => precedents.onTheWay.has(keyOf(cell)));
    const cone = new Cone();
    cone.adopt(precedents);
    return { cone, dependent };
  }

  /** Every cell that the value of `place` is reckoned from. */
  precedents(place: Place): Place[] {
    const found = new Precedents(this.whole(), [this.held.cellAt(place)], []).all;
    return found.map((cell) => this.held.placeAt(cell));
  }

  value(sheet: string, row: number, column: number): CellValue {
    const cell = this.cell(sheet, row, column);
    if (!cell) return null;
    try {
      const given = this.hf.getCellValue(cell);
      if (typeof given === "number" && Number.isFinite(given)) return given;
      const value = this.valueFrom(given, cell);
      return isErrorValue(value) && value.error === "#SPILL!" ? this.spillError(cell, value) : value;
    } catch (error) {
      this.log(`no value at ${sheet}!${cellName(row, column)}`, error);
      return { error: "#ERROR!", message: "the value could not be read" };
    }
  }

  /** Note of a doubtful value, several joined by semicolons. */
  note(sheet: string, row: number, column: number): string | undefined {
    const cell = this.cell(sheet, row, column);
    return cell && this.beside.note(cell, () => this.tryOut(cell));
  }

  /** What the drawing in a cell shows; a cell whose value is anything but the drawing itself has none. */
  figure(sheet: string, row: number, column: number): Drawn["figure"] | undefined {
    const cell = this.cell(sheet, row, column);
    return cell && this.beside.figure(cell, () => this.value(sheet, row, column));
  }

  /** The cell whose block function fills this one, if another one does. */
  spilledFrom(sheet: string, row: number, column: number): { row: number; column: number } | undefined {
    const cell = this.cell(sheet, row, column);
    const anchor = cell && this.spills.anchorOf(cell, this.hf);
    return anchor && { row: anchor.row, column: anchor.col };
  }

  /** One formula reckoned as if it stood on `sheet` (the first one if not said), changing nothing. */
  evaluate(formula: string, sheet?: string): CellValue | CellValue[][] {
    const entry = enter(formula);
    if (entry.kind === "refused") return { error: "#ERROR!", message: entry.reason };
    if (entry.kind === "empty") return null;
    if (entry.kind !== "formula") return entry.value;
    if (!this.fits(0, 0, entry)) {
      this.room = growTo(this.room, entry.reach.rows, entry.reach.columns);
      this.rebuild();
    }
    const on = sheet === undefined ? 0 : this.held.indexOf(sheet);
    try {
      let given = this.hf.calculateFormula(entry.formula, on);
      for (let round = 0; round < mostRounds && this.tables.settleTried(); round++)
        given = this.hf.calculateFormula(entry.formula, on);
      if (!Array.isArray(given)) return this.valueFrom(given);
      const rows = given.map((row) => row.map((value) => this.valueFrom(value)));
      return rows.length === 1 && rows[0]!.length === 1 ? rows[0]![0]! : rows;
    } catch (error) {
      if (error instanceof NotAFormulaError) return { error: "#ERROR!", message: unreadableFormula };
      this.log(`${formula} broke the engine`, error);
      this.rebuild();
      return { error: "#ERROR!", message: brokenBy(error) };
    }
  }

  private change(changes: readonly CellEntry[]): void {
    this.beside.next();
    this.behind = undefined;
    const fits = changes.every(({ cell, entry }) => this.fits(cell.row, cell.col, entry));
    // A formula that broke the engine may work with the new values: only a fresh build can tell.
    if (!fits || this.broken.size > 0) {
      this.rebuild();
      return;
    }
    this.tables.touch(changes.map(({ cell }) => cell));
    this.tables.begin();
    try {
      this.together(() => {
        for (const { cell, entry } of changes) this.put(cell, entry);
      });
      this.settleSpills();
      // Two blocks want the same cells: as after opening the job, the one that is read first has them.
      if (this.spills.contested(this.hf)) this.rebuild();
    } catch (error) {
      this.log("an edit broke the engine, it is built anew", error);
      this.rebuild();
    }
    if (!this.later) this.reckonTables();
  }

  /** Reckons cells once more: what they asked for has come. */
  private reckonAgain(cells: readonly Cell[]): void {
    this.beside.next();
    try {
      this.together(() => markDirty(this.hf, cells));
      this.settleSpills();
    } catch (error) {
      this.log("the values of a table broke the engine, it is built anew", error);
      this.rebuild();
    }
  }

  /** A block that takes more cells, or fewer, changes what stands in them. */
  private settleSpills(): void {
    const entered = this.spills.settle(this.hf);
    if (entered.length > 0) this.tables.touch(entered);
  }

  private whole(): Whole {
    const { hf } = this;
    const { sheets, names } = this.held;
    return {
      sheets,
      names,
      reads: (cell) => readsIn(hf, cell),
      valueAt: (cell) => this.value(sheets[cell.sheet]!.name, cell.row, cell.col),
      blocks: () => this.spills.blocks(hf),
      typedIn: (area) => typedIn(sheets, area),
      make: (content) => new Engine(content, this.functions, this.log),
    };
  }

  private build(): void {
    this.hf?.destroy();
    this.beside.next();
    this.behind = undefined;
    this.reasons = [];
    this.beside.clear();
    this.spills.clear();
    this.tables.clear();
    const figures = new Figures(this.held, (error) => this.refusal(error));
    const entries = figures.takeFrom(this.inOrder(figures.others));
    this.room = figures.roomFor(this.room, entries);
    this.hf = this.emptyEngine(figures);
    this.together(() => {
      figures.enterInto(this.hf);
      for (const { cell, entry } of entries) this.put(cell, entry);
    });
    this.spills.settle(this.hf);
  }

  /** Finds the formulas that break the engine by entering one after the other, and leaves them out. */
  private buildOneByOne(): void {
    for (let found = 0; found < 50; found++) {
      this.hf = this.emptyEngine();
      this.spills.clear();
      this.tables.clear();
      const entries = this.inOrder(this.held.entries());
      entries.sort((a, b) => Number(a.entry.kind === "formula") - Number(b.entry.kind === "formula"));
      const culprit = entries.find(({ cell, entry }) => {
        try {
          this.put(cell, entry);
          this.spills.settle(this.hf);
          return false;
        } catch (error) {
          this.broken.set(this.held.nameOf(cell), brokenBy(error));
          return true;
        }
      });
      if (!culprit) return;
    }
    for (const { cell, entry } of this.held.entries()) {
      if (entry.kind === "formula")
        this.broken.set(this.held.nameOf(cell), "too many formulas break the engine");
    }
    this.build();
  }

  /** @param figures what it may begin with */
  private emptyEngine(figures?: Figures): HyperFormula {
    const config = configOf(this.made, this.room);
    const hf = figures?.begin(config) ?? HyperFormula.buildEmpty(config);
    if (this.heard) hearReckoned(hf, this.heard);
    const { sheets, names } = this.held;
    for (const { name } of sheets) if (!hf.doesSheetExist(name)) hf.addSheet(name);
    for (const name of addNames(hf, names))
      this.log(`the name ${name} cannot be used for ${names[name]}`, undefined);
    return hf;
  }

  /** In reading order, so that what comes of them does not depend on which was typed first. */
  private inOrder(entries: readonly CellEntry[]): CellEntry[] {
    const inOrder = ({ cell: a }: CellEntry, { cell: b }: CellEntry) =>
      a.sheet - b.sheet || a.row - b.row || a.col - b.col;
    return [...entries].sort(inOrder).map(({ cell, entry }) => {
      const reason = this.broken.get(this.held.nameOf(cell));
      return { cell, entry: reason === undefined ? entry : { kind: "refused", reason } };
    });
  }

  private put(cell: Cell, entry: Entry): void {
    const address = { sheet: cell.sheet, row: cell.row, col: cell.col };
    const raw = rawOf(entry, (error) => this.refusal(error));
    this.beside.forget(address);
    this.spills.forget(address);
    this.tables.forget(address);
    this.hf.setCellContents(address, raw);
    if (typeof raw === "string" && raw.startsWith("=")) this.spills.entered(address, raw);
  }

  private refusal(reason: ErrorValue): string {
    return `=${refusalFunction}(${this.reasons.push(reason) - 1})`;
  }

  /** Several changes with one reckoning at the end. */
  private together(work: () => void): void {
    this.hf.suspendEvaluation();
    try {
      work();
    } finally {
      this.hf.resumeEvaluation();
    }
  }

  private fits(row: number, column: number, entry: Entry): boolean {
    const reach = entry.kind === "formula" ? entry.reach : { rows: 0, columns: 0 };
    const { rows, columns } = this.room;
    return Math.max(row + 1, reach.rows) <= rows && Math.max(column + 1, reach.columns) <= columns;
  }

  private cell(sheet: string, row: number, column: number): Cell | undefined {
    const index = this.held.indexOf(sheet);
    const { rows, columns } = this.room;
    const inside = index >= 0 && row >= 0 && column >= 0 && row < rows && column < columns;
    return inside ? { sheet: index, row, col: column } : undefined;
  }

  private valueFrom(given: unknown, cell?: Cell): CellValue {
    return cellValueOf(given, cell && this.held.nameOf(cell));
  }

  private spillError(cell: Cell, value: ErrorValue): CellValue {
    const message = this.spills.blockedReason(cell, this.hf, (taken) => this.held.nameOf(taken));
    return message === undefined ? value : { ...value, message };
  }

  private tryOut(cell: Cell): void {
    this.evaluate(this.held.textAt(cell), this.held.placeAt(cell).sheet);
  }
}

function brokenBy(error: unknown): string {
  return `the formula cannot be reckoned: ${error instanceof Error ? error.message : String(error)}`;
}
