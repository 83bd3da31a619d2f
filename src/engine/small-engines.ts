/**
 * What the page reckons by itself while the values of a job come from a worker: a formula that is being typed. It needs
 * a few cells of the job only; what those hold is known.
 */
import * as hyperformula from "hyperformula";
import { HyperFormula } from "hyperformula";
import type { SheetFunction } from "../functions/declare.ts";
import { type Area, keyOf, Precedents, type Reads, type Whole } from "./cone.ts";
import { configOf } from "./config.ts";
import type { Contents } from "./contents.ts";
import { Engine, type Log } from "./engine.ts";
import { enter, limits } from "./gate.ts";
import { addNames } from "./names.ts";
import { type Cell, makePlugin } from "./plugin.ts";
import type { CellValue, Place } from "./values.ts";
import { readsIn, typedIn } from "./whole.ts";

/** What is known of the job. */
export interface Known {
  readonly held: Contents;
  valueAt(cell: Cell): CellValue;
  /** Areas that block functions take, or would take. */
  blocks(): readonly Area[];
}

export class SmallEngines {
  /** Reads formulas, and reckons nothing. */
  private reader: HyperFormula | undefined;
  private trying: Engine | undefined;
  /** Cells that the engine for trying holds. */
  private put = new Map<string, Cell>();

  constructor(
    private readonly known: Known,
    private readonly functions: readonly SheetFunction[],
    private readonly log: Log | undefined,
  ) {}

  /** Sheets or names are others. */
  clear(): void {
    this.reader?.destroy();
    this.reader = undefined;
    this.trying = undefined;
    this.put.clear();
  }

  evaluate(formula: string, sheet: string | undefined): CellValue | CellValue[][] {
    const { held } = this.known;
    this.trying ??= new Engine(this.empty(), this.functions, this.log);
    const on = sheet === undefined ? 0 : held.indexOf(sheet);
    const first = this.readsOf({ sheet: on, row: 0, col: 0 }, formula);
    const cells = [...first.cells, ...first.areas.flatMap((area) => this.filledIn(area))];
    // A what-if value needs the formulas on the way to it, any other only what its cells hold.
    const withFormulas = /MULTIPLE\.OPERATIONS/i.test(formula);
    const needed = withFormulas ? new Precedents(this.whole(), cells, []).all : cells;
    const wanted = new Map(needed.map((cell) => [keyOf(cell), cell]));
    const gone = [...this.put].filter(([key]) => !wanted.has(key)).map(([, cell]) => cell);
    const typed = [...gone.map((cell) => ({ ...held.placeAt(cell), text: "" }))];
    const values: (Place & { value: CellValue })[] = [];
    for (const cell of wanted.values()) {
      const text = withFormulas ? held.textAt(cell) : "";
      if (text !== "") typed.push({ ...held.placeAt(cell), text });
      else values.push({ ...held.placeAt(cell), value: this.known.valueAt(cell) });
    }
    this.put = wanted;
    if (typed.length > 0) this.trying.setCells(typed);
    if (values.length > 0) this.trying.setValues(values);
    return this.trying.evaluate(formula, sheet);
  }

  private whole(): Whole {
    const { held } = this.known;
    return {
      sheets: held.sheets,
      names: held.names,
      reads: (cell) => this.readsOf(cell, held.textAt(cell)),
      valueAt: (cell) => this.known.valueAt(cell),
      blocks: () => this.known.blocks(),
      typedIn: (area) => typedIn(held.sheets, area),
      make: (content) => new Engine(content, this.functions, this.log),
    };
  }

  private readsOf(cell: Cell, text: string): Reads {
    const entry = text.startsWith("=") ? enter(text) : undefined;
    if (entry?.kind !== "formula") return { cells: [], areas: [] };
    this.reader ??= this.makeReader();
    const { reader } = this;
    try {
      reader.setCellContents(cell, entry.formula);
      return readsIn(reader, cell);
    } finally {
      reader.setCellContents(cell, null);
    }
  }

  /** Cells of an area that hold something. */
  private filledIn(area: Area): Cell[] {
    const { held } = this.known;
    const filled = [...typedIn(held.sheets, area)];
    for (const block of this.known.blocks()) {
      if (block.sheet !== area.sheet) continue;
      for (let row = Math.max(block.top, area.top); row <= Math.min(block.bottom, area.bottom); row++)
        for (let col = Math.max(block.left, area.left); col <= Math.min(block.right, area.right); col++)
          filled.push({ sheet: area.sheet, row, col });
    }
    return filled;
  }

  private makeReader(): HyperFormula {
    const { held } = this.known;
    const made = makePlugin(hyperformula, this.functions);
    const reader = HyperFormula.buildEmpty(configOf(made, { rows: limits.rows, columns: limits.columns }));
    for (const { name } of held.sheets) reader.addSheet(name);
    addNames(reader, held.names);
    reader.suspendEvaluation();
    return reader;
  }

  private empty() {
    const { held } = this.known;
    return { names: held.names, sheets: held.sheets.map(({ name }) => ({ name, cells: {} })) };
  }
}
