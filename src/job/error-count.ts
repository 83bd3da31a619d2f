/**
 * How many cells of each sheet hold an error, and which is the first. Small jobs are counted when asked; in large ones,
 * and while values are awaited, the cells are gone through in slices between which the page can be used, and the last
 * count stands meanwhile.
 *
 * Only cells that hold something typed are looked at: a block's error stands in the cell that holds its formula.
 */
import { parseCell } from "../engine/address.ts";
import { isErrorValue, type Place } from "../engine/values.ts";
import type { SheetDocument } from "./document.ts";
import type { Job } from "./job.ts";
import { foundIn } from "./large-cells.ts";
import type { Later } from "./whatif-slices.ts";

export interface Errors {
  readonly count: number;
  /** The first by rows; undefined when there is none. */
  readonly first: Place | undefined;
}

/** Formulas that are looked at at once; each costs a few microseconds. */
const atOnce = 1500;
/** The same in a slice: while a job opens, each costs ten times as much. */
const inSlice = 500;
const none: Errors = { count: 0, first: undefined };
const formulas = new WeakMap<object, readonly string[]>();

export class ErrorCount {
  private counts: ReadonlyMap<string, Errors> = new Map();
  /** The state of the job that was counted. */
  private counted: number | undefined;
  /** The walk under way; another one ends it. */
  private walk = 0;
  /** Settles when the walk under way has ended, or has been broken off; undefined where the last count is the newest. */
  counting: Promise<void> | undefined;
  private end = () => {};

  /** Called when the count of a large job has come. */
  tell: () => void = () => {};

  /** @param later lets the page have its turn */
  constructor(
    private readonly job: Job,
    private readonly later: Later,
  ) {}

  on(sheet: string): Errors {
    if (this.counted !== this.job.changes) this.count();
    return this.counts.get(sheet) ?? none;
  }

  private count(): void {
    this.counted = this.job.changes;
    const places = this.job.document.sheets.flatMap((sheet) =>
      formulasOf(sheet).map((key) => ({ sheet: sheet.name, ...parseCell(key)! })),
    );
    this.walk += 1;
    const found = new Map<string, Errors>();
    const awaited = this.job.reckoning?.stopped === false;
    this.end();
    if (places.length <= atOnce && !awaited) {
      for (const place of places) this.look(place, found);
      this.counts = found;
    } else {
      this.counting = new Promise((done) => {
        this.end = () => {
          this.counting = undefined;
          done();
        };
      });
      this.goOn(places, 0, found, this.walk);
    }
  }

  private goOn(places: readonly Place[], from: number, found: Map<string, Errors>, walk: number): void {
    this.later(() => {
      // Values changed meanwhile: the next question starts anew.
      if (walk !== this.walk) return;
      if (this.counted !== this.job.changes) return this.end();
      const to = Math.min(places.length, from + inSlice);
      for (let at = from; at < to; at++) this.look(places[at]!, found);
      if (to < places.length) return this.goOn(places, to, found, walk);
      const before = this.counts;
      this.counts = found;
      this.end();
      if (differ(before, found)) this.tell();
    });
  }

  private look(place: Place, found: Map<string, Errors>): void {
    if (!isErrorValue(this.job.cell(place.sheet, place.row, place.column).value)) return;
    const { count, first } = found.get(place.sheet) ?? none;
    const earlier =
      first === undefined ||
      place.row < first.row ||
      (place.row === first.row && place.column < first.column);
    found.set(place.sheet, { count: count + 1, first: earlier ? place : first });
  }
}

/** Known at once for slabs that were looked through before. */
export function formulasOf({ cells }: Pick<SheetDocument, "cells">): readonly string[] {
  return foundIn(cells, formulas, (piece) =>
    Object.keys(piece).filter((key) => piece[key]!.startsWith("=")),
  ).flat();
}

function differ(one: ReadonlyMap<string, Errors>, other: ReadonlyMap<string, Errors>): boolean {
  if (one.size !== other.size) return true;
  return [...one].some(([sheet, { count, first }]) => {
    const there = other.get(sheet);
    return there?.count !== count || there.first?.row !== first?.row || there.first?.column !== first?.column;
  });
}
