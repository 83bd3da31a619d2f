/** Values of one sheet as they came from the worker, in slabs of a column: millions of numbers take little room so. */
import type { Drawn } from "../functions/declare.ts";
import { columnOf, type Packet, rowOf, spotOf, type Told } from "./packets.ts";
import type { CellValue } from "./values.ts";

/** Rows of a slab. */
const high = 256;

interface Slab {
  /** NaN where the value is no number. */
  readonly numbers: Float64Array;
  /** The turn that a value is of; 0 where none is known. */
  readonly turns: Uint32Array;
  readonly others: Map<number, CellValue>;
}

interface Beside {
  readonly note: string | undefined;
  readonly figure: Drawn["figure"] | undefined;
}

export interface Known {
  readonly value: CellValue;
  readonly turn: number;
  readonly beside: Beside | undefined;
}

export class ValueStore {
  private readonly slabs = new Map<number, Slab>();
  private readonly besides = new Map<number, Beside>();

  /** @param oldest values of earlier turns count as not known */
  constructor(public oldest = 1) {}

  /** Undefined where none is known. */
  value(row: number, column: number): CellValue | undefined {
    const slab = this.slabs.get(slabOf(row, column));
    const at = row % high;
    if (!slab || slab.turns[at]! < this.oldest) return undefined;
    const number = slab.numbers[at]!;
    return Number.isNaN(number) ? slab.others.get(at)! : number;
  }

  /** The turn that the value is of; 0 where none is known. */
  turn(row: number, column: number): number {
    return this.slabs.get(slabOf(row, column))?.turns[row % high] ?? 0;
  }

  note(row: number, column: number): string | undefined {
    return this.besides.get(besideOf(row, column))?.note;
  }

  figure(row: number, column: number): Drawn["figure"] | undefined {
    return this.besides.get(besideOf(row, column))?.figure;
  }

  put(row: number, column: number, value: CellValue, turn: number): void {
    const slab = this.slabAt(row, column);
    const at = row % high;
    slab.turns[at] = turn;
    if (typeof value === "number") slab.numbers[at] = value;
    else {
      slab.numbers[at] = Number.NaN;
      slab.others.set(at, value);
    }
    this.besides.delete(besideOf(row, column));
  }

  putBeside(row: number, column: number, beside: Beside): void {
    this.besides.set(besideOf(row, column), beside);
  }

  /** Takes over what a packet holds, but nothing that is older than what is here. */
  take({ spots, numbers, others, beside }: Packet, turn: number): void {
    let other = 0;
    const late = new Set<number>();
    for (const [i, spot] of spots.entries()) {
      const number = numbers[i]!;
      const value = Number.isNaN(number) ? others[other++]! : number;
      if (this.turn(rowOf(spot), columnOf(spot)) > turn) late.add(i);
      else this.put(rowOf(spot), columnOf(spot), value, turn);
    }
    for (const [i, note, figure] of beside) {
      const spot = spots[i]!;
      if (!late.has(i)) this.putBeside(rowOf(spot), columnOf(spot), { note, figure });
    }
  }

  /** All that is known of a cell. */
  known(row: number, column: number): Known | undefined {
    const value = this.value(row, column);
    if (value === undefined) return undefined;
    return { value, turn: this.turn(row, column), beside: this.besides.get(besideOf(row, column)) };
  }

  /** Takes over what was known of some cell; undefined for nothing. */
  keep(row: number, column: number, known: Known | undefined): void {
    this.put(row, column, known?.value ?? null, known?.turn ?? 0);
    if (known?.beside) this.putBeside(row, column, known.beside);
  }

  /** Numbers, words and truths with their places, those of the upper rows first. What shows more than that is left out. */
  *plain(): Generator<Told> {
    const inOrder = [...this.slabs].sort(([a], [b]) => a - b);
    for (const [key, { numbers, turns, others }] of inOrder) {
      const top = rowOf(key) * high;
      const column = columnOf(key);
      for (let at = 0; at < high; at++) {
        if (turns[at]! < this.oldest) continue;
        const number = numbers[at]!;
        const value = Number.isNaN(number) ? others.get(at)! : number;
        if (value === null || typeof value === "object" || this.figure(top + at, column)) continue;
        yield { row: top + at, column, value };
      }
    }
  }

  private slabAt(row: number, column: number): Slab {
    const key = slabOf(row, column);
    let slab = this.slabs.get(key);
    if (!slab) {
      slab = { numbers: new Float64Array(high), turns: new Uint32Array(high), others: new Map() };
      this.slabs.set(key, slab);
    }
    return slab;
  }
}

const slabOf = (row: number, column: number): number => spotOf(Math.floor(row / high), column);
const besideOf = spotOf;
