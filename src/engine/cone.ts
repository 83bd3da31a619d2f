/**
 * The cells between inputs and results, on their own: a small engine in which the inputs can be changed many times
 * without anything else of the job being reckoned.
 *
 * Cells on the way from an input to a result go in as formulas. What those need besides goes in as plain values.
 */
import { cellName, parseCell } from "./address.ts";
import type { EngineContent, EngineEdit, ValueEdit } from "./contents.ts";
import type { Engine } from "./engine.ts";
import type { Cell } from "./plugin.ts";
import type { Texts } from "./texts.ts";
import type { CellValue } from "./values.ts";

/** Zero-based corners on a sheet. */
export interface Area {
  readonly sheet: number;
  readonly top: number;
  readonly left: number;
  readonly bottom: number;
  readonly right: number;
}

/** What a formula reads: single cells, and areas whose cells may be filled or not. */
export interface Reads {
  readonly cells: readonly Cell[];
  readonly areas: readonly Area[];
}

/** What the cone is cut out of. */
export interface Whole {
  readonly sheets: readonly {
    readonly name: string;
    readonly cells: Pick<Texts, "get" | "has" | "keys" | "size">;
  }[];
  readonly names: Readonly<Record<string, string>>;
  reads(cell: Cell): Reads;
  valueAt(cell: Cell): CellValue;
  /** Formulas that fill, or would fill, more than their own cell, with the cells that they take. */
  blocks(): readonly Area[];
  /** Cells with something typed in them. */
  typedIn(area: Area): readonly Cell[];
  make(content: EngineContent): Engine;
}

/** A result for one set of inputs. */
export interface Answer {
  readonly value: CellValue;
  readonly note?: string;
}

export interface Change {
  readonly cell: Cell;
  readonly value: CellValue;
}

export const keyOf = ({ sheet, row, col }: Cell): string => `${sheet},${row},${col}`;

export const contains = (area: Area, { sheet, row, col }: Cell): boolean =>
  area.sheet === sheet && row >= area.top && row <= area.bottom && col >= area.left && col <= area.right;

/** Everything that results are reckoned from, as far as it does not lie behind one of the inputs. */
export class Precedents {
  private readonly nodes = new Map<string, Reads>();
  private readonly cells = new Map<string, Cell>();
  private readonly areas = new Map<string, { readonly area: Area; readonly members: readonly Cell[] }>();
  private readonly blocks: readonly Area[];
  /** Cells whose value depends on an input. */
  readonly onTheWay: ReadonlySet<string>;

  constructor(
    readonly whole: Whole,
    readonly results: readonly Cell[],
    readonly inputs: readonly Cell[],
  ) {
    this.blocks = whole.blocks();
    const stops = new Set(inputs.map(keyOf));
    const open = [...results];
    // Near ones first: who asks for the precedents gets them in that order.
    for (let next = 0; next < open.length; next++) {
      const cell = open[next]!;
      const key = keyOf(cell);
      if (this.nodes.has(key) || stops.has(key)) continue;
      const reads = this.readsOf(cell);
      this.nodes.set(key, reads);
      this.cells.set(key, cell);
      open.push(...reads.cells);
      for (const area of reads.areas) open.push(...this.membersOf(area));
    }
    this.onTheWay = this.dependents();
  }

  /** The cells, and not the inputs: the results, what they read, what those read, and so on. */
  get all(): Cell[] {
    return [...this.cells.values()];
  }

  /** True when a result is reckoned from the value of `cell`. */
  reads(cell: Cell): boolean {
    return this.nodes.has(keyOf(cell));
  }

  /** True when typing into `cell` may change a result. */
  has(cell: Cell): boolean {
    if (this.reads(cell)) return true;
    if (this.inputs.some((input) => keyOf(input) === keyOf(cell))) return false;
    for (const { area } of this.areas.values()) if (contains(area, cell)) return true;
    // Something typed into the room of a block leaves it without room.
    return this.blocks.some(
      (block) => contains(longest(block), cell) && this.nodes.has(keyOf(cornerOf(block))),
    );
  }

  /** What the small engine holds. */
  content(): EngineContent {
    const { whole } = this;
    const sheets = whole.sheets.map(({ name }) => ({
      name,
      cells: {} as Record<string, string>,
      values: {} as Record<string, CellValue>,
    }));
    const freeze = (cell: Cell) => {
      const key = keyOf(cell);
      if (this.onTheWay.has(key) || this.inputs.some((input) => keyOf(input) === key)) return;
      const value = whole.valueAt(cell);
      if (value !== null) sheets[cell.sheet]!.values[cellName(cell.row, cell.col)] = value;
    };
    for (const cell of [...this.results, ...this.inputs]) freeze(cell);
    for (const key of this.onTheWay) {
      const cell = this.cells.get(key)!;
      const name = cellName(cell.row, cell.col);
      const text = whole.sheets[cell.sheet]!.cells.get(name);
      // A cell that a block fills is on the way, but has no text of its own.
      if (text !== undefined) sheets[cell.sheet]!.cells[name] = text;
      const { cells, areas } = this.nodes.get(key)!;
      cells.forEach(freeze);
      for (const area of areas) this.filledIn(area).forEach(freeze);
    }
    for (const block of this.blocks) {
      if (!this.onTheWay.has(keyOf(cornerOf(block)))) continue;
      // With other inputs the block may grow, as far as there is room for it in the job.
      whole.typedIn(longest(block)).forEach(freeze);
    }
    return { sheets, names: whole.names };
  }

  private readsOf(cell: Cell): Reads {
    const own = this.whole.reads(cell);
    const name = cellName(cell.row, cell.col);
    if (this.whole.sheets[cell.sheet]?.cells.has(name)) return own;
    const anchors = this.blocks.filter((block) => contains(longest(block), cell)).map(cornerOf);
    return anchors.length === 0 ? own : { cells: [...own.cells, ...anchors], areas: own.areas };
  }

  /** Cells of an area that hold something typed, and the formulas whose blocks reach into it or may come to. */
  private membersOf(area: Area): readonly Cell[] {
    const key = `${area.sheet},${area.top},${area.left},${area.bottom},${area.right}`;
    let known = this.areas.get(key);
    if (!known) {
      const anchors = this.blocks.filter((block) => meet(longest(block), area)).map(cornerOf);
      known = { area, members: [...this.whole.typedIn(area), ...anchors] };
      this.areas.set(key, known);
    }
    return known.members;
  }

  private filledIn(area: Area): Cell[] {
    const filled = [...this.whole.typedIn(area)];
    for (const block of this.blocks) {
      if (!meet(block, area) || this.onTheWay.has(keyOf(cornerOf(block)))) continue;
      const { sheet } = block;
      for (let row = Math.max(block.top, area.top); row <= Math.min(block.bottom, area.bottom); row++)
        for (let col = Math.max(block.left, area.left); col <= Math.min(block.right, area.right); col++)
          filled.push({ sheet, row, col });
    }
    return filled;
  }

  private dependents(): Set<string> {
    const readers = new Map<string, string[]>();
    const add = (from: Cell, to: string) => {
      const key = keyOf(from);
      const list = readers.get(key);
      if (list) list.push(to);
      else readers.set(key, [to]);
    };
    for (const [key, { cells, areas }] of this.nodes) {
      for (const cell of cells) add(cell, key);
      for (const area of areas) {
        for (const cell of this.membersOf(area)) add(cell, key);
        for (const input of this.inputs) if (contains(area, input)) add(input, key);
      }
    }
    const found = new Set<string>();
    const open = this.inputs.map(keyOf);
    for (let key = open.pop(); key !== undefined; key = open.pop()) {
      for (const reader of readers.get(key) ?? []) {
        if (found.has(reader)) continue;
        found.add(reader);
        open.push(reader);
      }
    }
    return found;
  }
}

/** Results reckoned again and again with other inputs. */
export class Cone {
  private engine: Engine | undefined;
  private content: EngineContent = { sheets: [], names: {} };
  private precedents: Precedents | undefined;
  /** What the inputs hold now. */
  private held: (CellValue | undefined)[] = [];

  /** Takes over other cells, or the same ones with other contents. An engine is dear to make, so it is kept. */
  adopt(next: Precedents): void {
    const content = next.content();
    const before = this.content;
    const inputs = this.precedents?.inputs ?? [];
    this.precedents = next;
    this.content = content;
    this.held = next.inputs.map(() => undefined);
    const same =
      before.names === content.names &&
      before.sheets.length === content.sheets.length &&
      before.sheets.every(({ name }, i) => name === content.sheets[i]!.name);
    if (!this.engine || !same) {
      this.engine = next.whole.make(content);
      return;
    }
    const typed: EngineEdit[] = [];
    const put: ValueEdit[] = [];
    for (const [i, { name: sheet, cells, values = {} }] of content.sheets.entries()) {
      const old = before.sheets[i]!;
      const leftOver = inputs
        .filter((input) => input.sheet === i)
        .map((input) => cellName(input.row, input.col));
      const names = [cells, values, old.cells, old.values ?? {}].flatMap(Object.keys);
      for (const name of new Set([...names, ...leftOver])) {
        const place = { sheet, ...parseCell(name)! };
        const text = cells[name];
        const value = values[name];
        const unchanged =
          !leftOver.includes(name) && old.cells[name] === text && isSame(old.values?.[name], value);
        if (unchanged) continue;
        if (value === undefined || text !== undefined) typed.push({ ...place, text: text ?? "" });
        else put.push({ ...place, value });
      }
    }
    if (typed.length > 0) this.engine.setCells(typed);
    if (put.length > 0) this.engine.setValues(put);
  }

  /** The results with these values in the inputs, in the order that both were named. */
  at(values: readonly CellValue[]): Answer[] {
    const { engine, precedents } = this;
    if (!engine || !precedents) return [];
    const sheets = precedents.whole.sheets;
    const changes = precedents.inputs.flatMap(({ sheet, row, col }, i) =>
      Object.is(this.held[i], values[i])
        ? []
        : [{ sheet: sheets[sheet]!.name, row, column: col, value: values[i]! }],
    );
    this.held = [...values];
    if (changes.length > 0) engine.setValues(changes);
    return precedents.results.map(({ sheet, row, col }) => {
      const { name } = sheets[sheet]!;
      const value = engine.value(name, row, col);
      const note = engine.note(name, row, col);
      return note === undefined ? { value } : { value, note };
    });
  }
}

function isSame(one: CellValue | undefined, other: CellValue | undefined): boolean {
  return Object.is(one, other) || JSON.stringify(one) === JSON.stringify(other);
}

export function cornerOf({ sheet, top, left }: Area): Cell {
  return { sheet, row: top, col: left };
}

/** A block may have more rows with other inputs; its columns are always the same. */
function longest(block: Area): Area {
  return { ...block, bottom: Number.POSITIVE_INFINITY };
}

function meet(one: Area, other: Area): boolean {
  return (
    one.sheet === other.sheet &&
    one.top <= other.bottom &&
    other.top <= one.bottom &&
    one.left <= other.right &&
    other.left <= one.right
  );
}
