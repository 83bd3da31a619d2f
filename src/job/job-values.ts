/**
 * The values of a running job, wherever they are reckoned: small jobs on the page's own thread, where a value is there
 * when the edit returns; large ones, and those that take long, in a worker.
 */
import { parseCell, splitSheet } from "../engine/address.ts";
import type { Log } from "../engine/engine.ts";
import { FarEngine, type FarSetting } from "../engine/far-engine.ts";
import type { KnownValues } from "../engine/known-values.ts";
import type { Reckoner } from "../engine/reckoner.ts";
import type { CellValue } from "../engine/values.ts";
import type { SheetFunction } from "../functions/declare.ts";
import type { JobDocument, SheetDocument } from "./document.ts";
import { fed, fedEdits, unitEdits } from "./feed.ts";
import type { JobChange } from "./job.ts";
import { foundIn } from "./large-cells.ts";
import type { Moves } from "./moves.ts";
import { OnThread } from "./on-thread.ts";
import type { LengthUnit } from "./readings.ts";
import type { Later } from "./whatif-slices.ts";

/** When a job is reckoned in a worker, and how one is had. */
export interface Far extends FarSetting {
  /** With so many formulas, from the beginning. Five other cells count as one: they cost about as much. */
  readonly formulas: number;
  /** After an edit that took longer than this on the page's own thread, ms. */
  readonly longest: number;
}

export class JobValues {
  reckoner: Reckoner;
  /** What the lengths in the cells were last read in. */
  unit: LengthUnit = "mm";
  /** There is no worker to be had. */
  private unable = false;

  constructor(
    private document: JobDocument,
    private readonly functions: readonly SheetFunction[],
    private readonly log: Log | undefined,
    private readonly later: Later | undefined,
    private readonly far: Far | undefined,
    private readonly tell: (change: Pick<JobChange, "values" | "trouble">) => void,
    before?: KnownValues,
  ) {
    const large = far !== undefined && weightIn(document) >= far.formulas;
    this.reckoner = large ? this.farEngine(far, before) : this.onThread();
    this.settle();
  }

  /**
   * The engine is told what differs between the document it knows and this one.
   * @param moves what is known of a cell goes with it, to be shown until newer values come
   */
  follow(document: JobDocument, moves?: Moves): void {
    const before = this.document;
    this.document = document;
    const start = performance.now();
    const edits = fedEdits(before, document, this.unit);
    if (!edits) this.reckoner.load(fed(document, this.unit), moves?.from);
    else if (edits.length > 0) this.reckoner.setCells(edits, moves?.from);
    this.settle();
    this.chooseThread(performance.now() - start);
  }

  /** The value of the cell with this name; undefined where the name stands for no cell. */
  named(name: string): CellValue | undefined {
    const { names } = this.document;
    const key = Object.keys(names).find((each) => each.toLowerCase() === name.toLowerCase());
    const target = key === undefined ? undefined : splitSheet(names[key]!);
    const cell = target && parseCell(target.rest);
    return target && cell ? this.reckoner.value(target.sheet, cell.row, cell.column) : undefined;
  }

  private onThread(): OnThread {
    return new OnThread(fed(this.document, this.unit), this.functions, this.log, this.later, () =>
      this.tell({ values: true }),
    );
  }

  private farEngine(far: Far, before?: KnownValues): FarEngine {
    const listener = {
      values: () => {
        this.followUnit();
        this.tell({ values: true });
      },
      trouble: (trouble: string) => this.tell({ values: true, trouble }),
      unable: () => {
        this.unable = true;
        this.reckoner = this.onThread();
        this.settle();
        this.tell({ values: true });
      },
    };
    return new FarEngine(fed(this.document, this.unit), far, listener, this.functions, this.log, before);
  }

  private chooseThread(took: number): void {
    const { far, reckoner } = this;
    if (!far || this.unable || !(reckoner instanceof OnThread)) return;
    if (took <= far.longest && weightIn(this.document) < far.formulas) return;
    const there = this.farEngine(far);
    there.seed(reckoner, reckoner.blocks);
    reckoner.end();
    this.reckoner = there;
  }

  private settle(): void {
    this.followUnit();
    if (this.reckoner instanceof OnThread) this.reckoner.settle();
  }

  /** Reads lengths anew when the unit of the job has changed. They may themselves decide on the unit: once is enough. */
  private followUnit(): void {
    const unit = this.unitNow();
    if (unit === this.unit) return;
    const edits = unitEdits(this.document, this.unit, unit);
    this.unit = unit;
    if (edits.length > 0) this.reckoner.setCells(edits);
  }

  /** By the value of the cell named `unit`. While that is still being reckoned, it is what it was. */
  private unitNow(): LengthUnit {
    const value = this.named("unit");
    if (value === null && this.reckoner.reckoning) return this.unit;
    return typeof value === "string" && /^\s*(in|inch|inches|")\s*$/i.test(value) ? "in" : "mm";
  }
}

const weighed = new WeakMap<object, number>();

function weightOf(cells: SheetDocument["cells"]): number {
  const texts = Object.values(cells);
  const formulas = texts.filter((text) => text[0] === "=").length;
  return formulas + (texts.length - formulas) / 5;
}

function weightIn({ sheets }: JobDocument): number {
  let sum = 0;
  for (const { cells } of sheets) {
    for (const weight of foundIn(cells, weighed, weightOf)) sum += weight;
  }
  return sum;
}
