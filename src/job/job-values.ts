/**
 * The values of a running job, wherever they are reckoned: on this thread, where a value is there when the edit returns,
 * or in a worker, so that nothing keeps the page from the person.
 */
import { parseCell, splitSheet } from "../engine/address.ts";
import type { Log } from "../engine/engine.ts";
import { FarEngine, type FarSetting } from "../engine/far-engine.ts";
import type { KnownValues } from "../engine/known-values.ts";
import type { Reckoner } from "../engine/reckoner.ts";
import type { CellValue } from "../engine/values.ts";
import type { SheetFunction } from "../functions/declare.ts";
import type { JobDocument } from "./document.ts";
import { fed, fedEdits, unitEdits } from "./feed.ts";
import type { JobChange } from "./job.ts";
import type { Moves } from "./moves.ts";
import { OnThread } from "./on-thread.ts";
import type { LengthUnit } from "./readings.ts";
import type { Later } from "./whatif-slices.ts";

/** How a job gets a worker. */
export type Far = FarSetting;

export class JobValues {
  reckoner: Reckoner;
  /** What the lengths in the cells were last read in. */
  unit: LengthUnit = "mm";

  constructor(
    private document: JobDocument,
    private readonly functions: readonly SheetFunction[],
    private readonly log: Log | undefined,
    private readonly later: Later | undefined,
    far: Far | undefined,
    private readonly tell: (change: Pick<JobChange, "values" | "trouble">) => void,
    before?: KnownValues,
  ) {
    this.reckoner = far ? this.farEngine(far, before) : this.onThread();
    this.settle();
  }

  /**
   * The engine is told what differs between the document it knows and this one.
   * @param moves what is known of a cell goes with it, to be shown until newer values come
   */
  follow(document: JobDocument, moves?: Moves): void {
    const before = this.document;
    this.document = document;
    const edits = fedEdits(before, document, this.unit);
    if (!edits) this.reckoner.load(fed(document, this.unit), moves?.from);
    else if (edits.length > 0) this.reckoner.setCells(edits, moves?.from);
    this.settle();
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
        this.reckoner = this.onThread();
        this.settle();
        this.tell({ values: true });
      },
    };
    return new FarEngine(fed(this.document, this.unit), far, listener, this.functions, this.log, before);
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
