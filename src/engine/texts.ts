/**
 * Texts of the cells of a sheet that can be typed over, on top of a record that is not touched: a large one need not be
 * copied for it.
 */

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
  private readonly over = new Map<string, string>();

  /** @param pieces together all of `under` */
  constructor(
    private readonly under: Readonly<Record<string, string>>,
    private readonly pieces: readonly Readonly<Record<string, string>>[],
  ) {}

  get(cell: string): string | undefined {
    const text = this.over.get(cell) ?? this.under[cell];
    return text === "" ? undefined : text;
  }

  has(cell: string): boolean {
    return this.get(cell) !== undefined;
  }

  set(cell: string, text: string): void {
    this.over.set(cell, text);
  }

  delete(cell: string): void {
    this.over.set(cell, "");
  }

  get size(): number {
    let size = 0;
    for (const _ of this) size += 1;
    return size;
  }

  *keys(): Generator<string> {
    for (const [cell] of this) yield cell;
  }

  *[Symbol.iterator](): Generator<[string, string]> {
    for (const piece of this.pieces) {
      for (const cell of Object.keys(piece)) {
        const text = this.over.get(cell) ?? piece[cell]!;
        if (text !== "") yield [cell, text];
      }
    }
    for (const [cell, text] of this.over)
      if (text !== "" && this.under[cell] === undefined) yield [cell, text];
  }
}
