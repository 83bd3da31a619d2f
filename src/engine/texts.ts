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

  constructor(private readonly under: Readonly<Record<string, string>>) {}

  get(cell: string): string | undefined {
    const text = this.over.get(cell) ?? (Object.hasOwn(this.under, cell) ? this.under[cell] : undefined);
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
    for (const _ of this.keys()) size += 1;
    return size;
  }

  *keys(): Iterable<string> & Generator<string> {
    // Of what is no plain record, Object.keys would ask for every cell.
    for (const cell of Reflect.ownKeys(this.under) as string[]) if (this.over.get(cell) !== "") yield cell;
    for (const [cell, text] of this.over) if (text !== "" && !Object.hasOwn(this.under, cell)) yield cell;
  }

  *[Symbol.iterator](): Generator<[string, string]> {
    for (const cell of this.keys()) yield [cell, this.get(cell)!];
  }
}
