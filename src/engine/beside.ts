/**
 * What stands beside the values: notes of doubtful ones, and what drawings show. The engine below knows neither; the
 * functions tell of them while a cell is reckoned.
 */
import type { Drawn } from "../functions/declare.ts";
import type { Cell } from "./plugin.ts";

type Figure = Drawn["figure"];

export class Beside {
  /** Counts edits: what was told in an earlier edit may be stale. */
  private edit = 0;
  private readonly notes = new Map<string, { edit: number; notes: Set<string> }>();
  /** Drawings made in a cell in one edit, by the text that stands for them. */
  private readonly figures = new Map<string, { edit: number; byText: Map<string, Figure> }>();
  private tried = new Set<string>();

  /** An edit begins. */
  next(): void {
    this.edit += 1;
  }

  clear(): void {
    this.notes.clear();
    this.figures.clear();
  }

  /** The contents of `cell` are about to change. */
  forget(cell: Cell): void {
    this.notes.delete(keyOf(cell));
    this.figures.delete(keyOf(cell));
  }

  /** True when something stands or stood beside the value of `cell`. */
  knows(cell: Cell): boolean {
    return this.notes.has(keyOf(cell)) || this.figures.has(keyOf(cell));
  }

  /** A doubtful value was reckoned in `cell`, or in a formula that is tried out. */
  tellNote(note: string, cell: Cell | undefined): void {
    if (!cell) {
      this.tried.add(note);
      return;
    }
    const kept = this.notes.get(keyOf(cell));
    if (kept?.edit === this.edit) kept.notes.add(note);
    else this.notes.set(keyOf(cell), { edit: this.edit, notes: new Set([note]) });
  }

  tellDrawing({ value, figure }: Drawn, cell: Cell | undefined): void {
    if (!cell) return;
    const kept = this.figures.get(keyOf(cell));
    if (kept?.edit === this.edit) kept.byText.set(value, figure);
    else this.figures.set(keyOf(cell), { edit: this.edit, byText: new Map([[value, figure]]) });
  }

  /**
   * Note of a cell, several joined by semicolons.
   *
   * @param again tries the formula of the cell out
   */
  note(cell: Cell, again: () => void): string | undefined {
    const kept = this.notes.get(keyOf(cell));
    if (!kept) return undefined;
    if (kept.edit !== this.edit) {
      // The formula may have taken another branch since, without calling the function that had a doubt.
      this.tried = new Set();
      again();
      kept.notes = this.tried;
      kept.edit = this.edit;
    }
    return kept.notes.size > 0 ? [...kept.notes].join("; ") : undefined;
  }

  /** What the drawing shows that the value stands for; a formula that took another branch since has another value. */
  figure(cell: Cell, reckoned: () => unknown): Figure | undefined {
    const kept = this.figures.get(keyOf(cell));
    // Most cells have no drawing, and asking for a value costs something.
    const value = kept && reckoned();
    return typeof value === "string" ? kept?.byText.get(value) : undefined;
  }
}

function keyOf({ sheet, row, col }: Cell): string {
  return `${sheet},${row},${col}`;
}
