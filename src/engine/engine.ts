/**
 * The values of a job: a cache that can be thrown away and rebuilt from the contents at any moment.
 *
 * Whatever the engine below throws, the contents here stay whole: it is rebuilt from them, and a formula that breaks
 * it every time is kept out with a reason until something changes.
 */
import * as hyperformula from "hyperformula";
import { HyperFormula, NotAFormulaError, type RawCellContent } from "hyperformula";
import type { SheetFunction } from "../functions/declare.ts";
import { cellName, parseCell, placeName, sheetPrefix, splitSheet } from "./address.ts";
import { configOf, growTo, roomAtFirst } from "./config.ts";
import { type Entry, enter, limits } from "./gate.ts";
import { cellValueOf, unreadableFormula } from "./messages.ts";
import { type Cell, type MadePlugin, makePlugin, refusalFunction } from "./plugin.ts";
import { Spills } from "./spills.ts";
import { type CellValue, type ErrorValue, isErrorValue } from "./values.ts";

export interface EngineContent {
  readonly sheets: readonly { readonly name: string; readonly cells: Readonly<Record<string, string>> }[];
  /** Name to `Sheet!B2` or `Sheet!B2:B9`. */
  readonly names: Readonly<Record<string, string>>;
}

export interface EngineEdit {
  readonly sheet: string;
  readonly row: number;
  readonly column: number;
  /** As typed; "" empties the cell. */
  readonly text: string;
}

export type Log = (what: string, error: unknown) => void;

export class Engine {
  /** Faults that were caught, ours or the engine's; for the curious and for tests. */
  readonly log: Log;
  private readonly made: MadePlugin;
  private readonly spills = new Spills();
  private hf!: HyperFormula;
  private names: Readonly<Record<string, string>> = {};
  private sheets: { name: string; cells: Map<string, string> }[] = [];
  private room = roomAtFirst;
  /** Why formulas were refused, by the number that stands for them in the engine. */
  private reasons: string[] = [];
  /** Cells whose formula broke the engine, by `Sheet!A1`, with the reason. */
  private broken = new Map<string, string>();
  /** Counts edits: a note of an earlier edit may be stale. */
  private edit = 0;
  private readonly notes = new Map<string, { edit: number; notes: Set<string> }>();
  private tried = new Set<string>();

  constructor(
    content: EngineContent,
    functions: readonly SheetFunction[],
    log: Log = (what, error) => console.error(what, error),
  ) {
    this.log = log;
    this.made = makePlugin(hyperformula, functions, {
      note: (note, cell) => this.keepNote(note, cell),
      size: (cell, rows, columns, fits) => this.spills.tell(cell, rows, columns, fits),
      fault: (name, error) => log(`fault in ${name}`, error),
      refusal: (number) => this.reasons[number],
    });
    this.load(content);
  }

  /** Takes another content: after opening a job, and after any change of sheets or names. */
  load(content: EngineContent): void {
    this.names = content.names;
    this.sheets = content.sheets.map(({ name, cells }) => ({ name, cells: new Map(Object.entries(cells)) }));
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
  }

  /** @throws RangeError if a sheet is unknown or a cell lies outside the largest sheet */
  setCells(edits: readonly EngineEdit[]): void {
    for (const { sheet, row, column } of edits) this.requirePlace(sheet, row, column);
    for (const { sheet, row, column, text } of edits) {
      const cells = this.sheets[this.sheetIndex(sheet)]!.cells;
      if (text === "") cells.delete(cellName(row, column));
      else cells.set(cellName(row, column), text);
    }
    this.edit += 1;
    const entries = edits.map((edit) => ({ edit, entry: enter(edit.text) }));
    const fits = entries.every(({ edit, entry }) => this.fits(edit.row, edit.column, entry));
    // A formula that broke the engine may work with the new values: only a fresh build can tell.
    if (!fits || this.broken.size > 0) {
      this.rebuild();
      return;
    }
    try {
      this.together(() => {
        for (const { edit, entry } of entries) {
          this.put({ sheet: this.sheetIndex(edit.sheet), row: edit.row, col: edit.column }, entry);
        }
      });
      this.spills.settle(this.hf);
    } catch (error) {
      this.log("an edit broke the engine, it is built anew", error);
      this.rebuild();
    }
  }

  value(sheet: string, row: number, column: number): CellValue {
    const cell = this.cell(sheet, row, column);
    if (!cell) return null;
    try {
      const value = this.valueFrom(this.hf.getCellValue(cell), cell);
      return isErrorValue(value) && value.error === "#SPILL!" ? this.spillError(cell, value) : value;
    } catch (error) {
      this.log(`no value at ${sheet}!${cellName(row, column)}`, error);
      return { error: "#ERROR!", message: "the value could not be read" };
    }
  }

  /** Note of a doubtful value, several joined by semicolons. */
  note(sheet: string, row: number, column: number): string | undefined {
    const cell = this.cell(sheet, row, column);
    const kept = cell && this.notes.get(keyOf(cell));
    if (!cell || !kept) return undefined;
    if (kept.edit !== this.edit) {
      // The formula may have taken another branch since, without calling the function that had a doubt.
      kept.notes = this.notesOf(cell);
      kept.edit = this.edit;
    }
    return kept.notes.size > 0 ? [...kept.notes].join("; ") : undefined;
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
    const on = sheet === undefined ? 0 : this.sheetIndex(sheet);
    try {
      const given = this.hf.calculateFormula(entry.formula, on);
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

  private build(): void {
    this.hf?.destroy();
    this.edit += 1;
    this.reasons = [];
    this.notes.clear();
    this.spills.clear();
    const entries = this.entries();
    for (const { row, col, entry } of entries) {
      const reach = entry.kind === "formula" ? entry.reach : { rows: 0, columns: 0 };
      this.room = growTo(this.room, Math.max(row + 1, reach.rows), Math.max(col + 1, reach.columns));
    }
    this.hf = this.emptyEngine();
    this.together(() => {
      for (const cell of entries) this.put(cell, cell.entry);
    });
    this.spills.settle(this.hf);
  }

  /** Finds the formulas that break the engine by entering one after the other, and leaves them out. */
  private buildOneByOne(): void {
    for (let found = 0; found < 50; found++) {
      this.hf = this.emptyEngine();
      this.spills.clear();
      const entries = this.entries();
      entries.sort((a, b) => Number(a.entry.kind === "formula") - Number(b.entry.kind === "formula"));
      const culprit = entries.find((cell) => {
        try {
          this.put(cell, cell.entry);
          this.spills.settle(this.hf);
          return false;
        } catch (error) {
          this.broken.set(this.placeOf(cell), brokenBy(error));
          return true;
        }
      });
      if (!culprit) return;
    }
    for (const cell of this.entries()) {
      if (cell.entry.kind === "formula")
        this.broken.set(this.placeOf(cell), "too many formulas break the engine");
    }
    this.build();
  }

  private emptyEngine(): HyperFormula {
    const hf = HyperFormula.buildEmpty(configOf(this.made, this.room));
    for (const { name } of this.sheets) hf.addSheet(name);
    hf.addNamedExpression("TRUE", "=TRUE()");
    hf.addNamedExpression("FALSE", "=FALSE()");
    for (const [name, target] of Object.entries(this.names)) {
      const formula = absolute(target);
      if (formula && hf.isItPossibleToAddNamedExpression(name, formula)) hf.addNamedExpression(name, formula);
      else this.log(`the name ${name} cannot be used for ${target}`, undefined);
    }
    return hf;
  }

  private entries(): (Cell & { entry: Entry })[] {
    return this.sheets.flatMap(({ cells }, sheet) =>
      [...cells].flatMap(([name, text]) => {
        const place = parseCell(name);
        if (!place) return [];
        const cell = { sheet, row: place.row, col: place.column };
        const reason = this.broken.get(this.placeOf(cell));
        return [
          { ...cell, entry: reason === undefined ? enter(text) : ({ kind: "refused", reason } as const) },
        ];
      }),
    );
  }

  private put(cell: Cell, entry: Entry): void {
    const address = { sheet: cell.sheet, row: cell.row, col: cell.col };
    const raw = this.rawOf(entry);
    this.notes.delete(keyOf(address));
    this.spills.forget(address);
    this.hf.setCellContents(address, raw);
    if (typeof raw === "string" && raw.startsWith("=")) this.spills.entered(address, raw);
  }

  private rawOf(entry: Entry): RawCellContent {
    switch (entry.kind) {
      case "empty":
        return null;
      case "text":
        return `'${entry.value}`;
      case "refused":
        return this.refusal(entry.reason);
      case "formula":
        return entry.formula;
      default:
        return entry.value;
    }
  }

  private refusal(reason: string): string {
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
    return (
      Math.max(row + 1, reach.rows) <= this.room.rows &&
      Math.max(column + 1, reach.columns) <= this.room.columns
    );
  }

  private requirePlace(sheet: string, row: number, column: number): void {
    if (this.sheetIndex(sheet) < 0) throw new RangeError(`there is no sheet "${sheet}"`);
    const inside = row >= 0 && row < limits.rows && column >= 0 && column < limits.columns;
    if (!inside)
      throw new RangeError(
        `cell must lie within ${limits.rows} rows and ${limits.columns} columns, got row ${row + 1}, column ${column + 1}`,
      );
  }

  private sheetIndex(name: string): number {
    return this.sheets.findIndex((sheet) => sheet.name === name);
  }

  private cell(sheet: string, row: number, column: number): Cell | undefined {
    const index = this.sheetIndex(sheet);
    const inside =
      index >= 0 && row >= 0 && column >= 0 && row < this.room.rows && column < this.room.columns;
    return inside ? { sheet: index, row, col: column } : undefined;
  }

  private placeOf(cell: Cell): string {
    return placeName({ sheet: this.sheets[cell.sheet]!.name, row: cell.row, column: cell.col });
  }

  private valueFrom(given: unknown, cell?: Cell): CellValue {
    return cellValueOf(given, cell && this.placeOf(cell));
  }

  private spillError(cell: Cell, value: ErrorValue): CellValue {
    const room = this.spills.roomFor(cell);
    if (!room) return value;
    const taken = this.spills.inTheWay(cell, this.hf);
    return {
      ...value,
      message: `needs ${room.rows} x ${room.columns} cells${taken ? `, but ${this.placeOf(taken)} is not empty` : ""}`,
    };
  }

  private keepNote(note: string, cell: Cell | undefined): void {
    if (!cell) {
      this.tried.add(note);
      return;
    }
    const kept = this.notes.get(keyOf(cell));
    if (kept?.edit === this.edit) kept.notes.add(note);
    else this.notes.set(keyOf(cell), { edit: this.edit, notes: new Set([note]) });
  }

  private notesOf(cell: Cell): Set<string> {
    this.tried = new Set();
    const { name, cells } = this.sheets[cell.sheet]!;
    this.evaluate(cells.get(cellName(cell.row, cell.col)) ?? "", name);
    return this.tried;
  }
}

function brokenBy(error: unknown): string {
  return `the formula cannot be reckoned: ${error instanceof Error ? error.message : String(error)}`;
}

function keyOf({ sheet, row, col }: Cell): string {
  return `${sheet},${row},${col}`;
}

/** `Sheet!B2:B9` as the formula of a name: with dollar signs, else it would move with the cell that uses it. */
function absolute(target: string): string | undefined {
  const found = splitSheet(target);
  const corners = found?.rest.split(":").map(parseCell);
  if (!found || !corners || corners.length > 2) return undefined;
  const dollars = corners.map(
    (corner) => corner && cellName(corner.row, corner.column).replace(/^([A-Z]+)/, "$$$1$$"),
  );
  return dollars.includes(undefined) ? undefined : `=${sheetPrefix(found.sheet)}${dollars.join(":")}`;
}
