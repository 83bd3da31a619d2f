/**
 * Texts of the cells of a sheet that can be typed over, on top of slabs that are not touched: a large sheet need not be
 * copied for it.
 */
import { cellsOf, notableOf, type Packed, PackedCells, type Piece, slabRows } from "./packed-cells.ts";

/** What is asked of a map of texts. */
export interface Texts extends Iterable<[string, string]> {
  readonly size: number;
  get(cell: string): string | undefined;
  has(cell: string): boolean;
  set(cell: string, text: string): unknown;
  delete(cell: string): unknown;
  keys(): Iterable<string>;
}

export class LaidOver implements Texts {
  /** "" for a cell that is gone. */
  readonly over = new Map<string, string>();
  private count: number | undefined;

  /**
   * @param under the text of a cell
   * @param pieces together all of them
   */
  constructor(
    readonly under: (cell: string) => string | undefined,
    readonly pieces: readonly Piece[],
  ) {}

  get(cell: string): string | undefined {
    const text = this.over.get(cell) ?? this.under(cell);
    return text === "" ? undefined : text;
  }

  has(cell: string): boolean {
    return this.get(cell) !== undefined;
  }

  set(cell: string, text: string): void {
    if (this.count !== undefined) this.count += Number(text !== "") - Number(this.has(cell));
    this.over.set(cell, text);
  }

  delete(cell: string): void {
    this.set(cell, "");
  }

  get size(): number {
    if (this.count === undefined) {
      this.count = 0;
      for (const piece of this.pieces)
        this.count += piece instanceof PackedCells ? piece.packed.count : Object.keys(piece).length;
      for (const [cell, text] of this.over)
        this.count += Number(text !== "") - Number(this.under(cell) !== undefined);
    }
    return this.count;
  }

  *keys(): Generator<string> {
    for (const [cell] of this) yield cell;
  }

  *[Symbol.iterator](): Generator<[string, string]> {
    for (const piece of this.pieces) {
      const cells = cellsOf(piece);
      for (const cell of Object.keys(cells)) {
        const text = this.over.get(cell) ?? cells[cell]!;
        if (text !== "") yield [cell, text];
      }
    }
    for (const [cell, text] of this.over)
      if (text !== "" && this.under(cell) === undefined) yield [cell, text];
  }
}

/** Texts as they are sent: slabs that are packed already, and all others one by one; "" for one that a slab has no more. */
export function inParts(texts: Texts): { packed: readonly Packed[]; others: Iterable<[string, string]> } {
  if (!(texts instanceof LaidOver)) return { packed: [], others: texts };
  const packed = texts.pieces.flatMap((piece) => (piece instanceof PackedCells ? [piece.packed] : []));
  const others = function* (): Generator<[string, string]> {
    for (const piece of texts.pieces) if (!(piece instanceof PackedCells)) yield* Object.entries(piece);
    yield* texts.over;
  };
  return { packed, others: packed.length === 0 ? texts : others() };
}

/** Puts together what was sent in parts. */
export function fromParts(packed: readonly Packed[], others: Iterable<[string, string]>): Texts {
  const slabs: PackedCells[] = [];
  for (const one of packed) slabs[Math.floor(one.top / slabRows)] = new PackedCells(one);
  const at = (cell: string) => Math.floor((Number(/\d+$/.exec(cell)?.[0]) - 1) / slabRows);
  const texts = new LaidOver(
    (cell) => slabs[at(cell)]?.textAt(cell),
    slabs.filter((slab) => slab !== undefined),
  );
  for (const [cell, text] of others) texts.set(cell, text);
  return texts;
}

/** Formulas of a sheet, with their cells; figures of packed slabs are not gone through. */
export function* formulasIn(texts: Texts): Generator<[cell: string, text: string]> {
  if (!(texts instanceof LaidOver)) {
    for (const one of texts) if (one[1][0] === "=") yield one;
    return;
  }
  for (const piece of texts.pieces) {
    const cells = notableOf(piece);
    for (const cell of Object.keys(cells)) {
      const text = texts.over.get(cell) ?? cells[cell]!;
      if (text[0] === "=") yield [cell, text];
    }
  }
  for (const [cell, text] of texts.over)
    if (text[0] === "=" && texts.under(cell)?.[0] !== "=") yield [cell, text];
}
