/**
 * The values of a running job, wherever they are reckoned: on this thread, where a value is there when the edit returns,
 * or in a worker, so that nothing keeps the page from the person.
 */
import { parseCell, splitSheet } from "../engine/address.ts";
import type { EngineContent } from "../engine/contents.ts";
import { FarEngine, type FarSetting } from "../engine/far-engine.ts";
import type { KnownValues } from "../engine/known-values.ts";
import type { Reckoner, Reckoning } from "../engine/reckoner.ts";
import type { CellValue } from "../engine/values.ts";
import type { JobDocument } from "./document.ts";
import { fed, fedEdits, unitEdits } from "./feed.ts";
import type { JobChange } from "./job.ts";
import type { Moves } from "./moves.ts";
import type { LengthUnit } from "./readings.ts";

/** How a job gets a worker. */
export interface Far extends FarSetting {
  /** Runs work in a task of its own, before anything is drawn; without it all of a command is one task. */
  readonly soon?: (work: () => void) => void;
}

/** An engine on this thread. */
export interface Near extends Reckoner {
  /** An edit is complete. */
  settle(): void;
}

export type MakeNear = (content: EngineContent, tell: () => void) => Near;

/** On this thread, or in a worker; then the engine of this thread is had where there is no worker, and may take a while. */
export type Way =
  | { readonly near: MakeNear; readonly far?: undefined }
  | { readonly far: Far; readonly near: () => MakeNear | Promise<MakeNear> };

interface Untold {
  readonly before: JobDocument;
  readonly moves: Moves | undefined;
  /** What differs, once that is known. */
  edits?: ReturnType<typeof fedEdits>;
}

export class JobValues {
  /** What the lengths in the cells were last read in. */
  unit: LengthUnit = "mm";
  private engine: Reckoner;
  private near: Near | undefined;
  /** The document that the engine knows, while it has not been told of a change; and where cells have gone since. */
  private untold: Untold | undefined;
  private readonly soon: Far["soon"];
  /** No worker can be had, and the engine of this thread has been asked for. */
  private unable = false;

  constructor(
    private document: JobDocument,
    way: Way,
    private readonly tell: (change: Pick<JobChange, "values" | "trouble">) => void,
    before?: KnownValues,
  ) {
    this.soon = way.far?.soon;
    this.engine = way.far ? this.farEngine(way.far, way.near, before) : this.takeNear(way.near);
    this.settle();
  }

  /**
   * The engine is told what differs between the document it knows and this one.
   * @param moves what is known of a cell goes with it, to be shown until newer values come
   */
  follow(document: JobDocument, moves?: Moves): void {
    this.catchUp();
    const before = this.document;
    this.document = document;
    if (this.soon && moves) {
      const untold: Untold = { before, moves };
      this.untold = untold;
      // Of many cells, finding out what differs takes as long as telling it: that makes two tasks.
      this.soon(() => {
        if (this.untold === untold) untold.edits = fedEdits(before, document, this.unit);
      });
      this.soon(() => {
        this.catchUp();
        // Nothing had to be reckoned: no one else would tell those who wait for it.
        if (!this.reckoning) this.tell({ values: true });
      });
    } else this.tellEngine({ before, moves });
  }

  /** Knows of every change: whoever asks for a value first has the engine told. */
  get reckoner(): Reckoner {
    this.catchUp();
    return this.engine;
  }

  get reckoning(): Reckoning | undefined {
    return this.untold ? { done: 0, of: 0, stopped: false } : this.engine.reckoning;
  }

  private catchUp(): void {
    const { untold } = this;
    this.untold = undefined;
    if (untold) this.tellEngine(untold);
  }

  private tellEngine(untold: Untold): void {
    const { document, engine } = this;
    const { before, moves } = untold;
    const edits = "edits" in untold ? untold.edits : fedEdits(before, document, this.unit);
    if (!edits) engine.load(fed(document, this.unit), moves?.from);
    else if (edits.length > 0) engine.setCells(edits, moves?.from);
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

  private takeNear(make: MakeNear): Near {
    this.near = make(fed(this.document, this.unit), () => this.tell({ values: true }));
    return this.near;
  }

  private farEngine(far: Far, near: () => MakeNear | Promise<MakeNear>, before?: KnownValues): FarEngine {
    const listener = {
      values: () => {
        this.followUnit();
        this.tell({ values: true });
      },
      trouble: (trouble: string) => this.tell({ values: true, trouble }),
      unable: () => {
        if (this.unable) return;
        this.unable = true;
        const make = near();
        if (typeof make === "function") this.comeNear(make);
        else
          void make.then(
            (made) => this.comeNear(made),
            (error) => this.without(error),
          );
      },
    };
    return new FarEngine(fed(this.document, this.unit), far, listener, before);
  }

  private comeNear(make: MakeNear): void {
    this.untold = undefined;
    this.engine = this.takeNear(make);
    this.settle();
    this.tell({ values: true });
  }

  /** Neither a worker nor an engine here: it is tried again when the person goes on, or with the next edit. */
  private without(error: unknown): void {
    this.unable = false;
    const reason = error instanceof Error ? error.message : String(error);
    this.tell({
      values: true,
      trouble: `Nothing is reckoned: there is no worker, and the engine cannot be fetched (${reason}).`,
    });
    this.engine.stop();
  }

  private settle(): void {
    this.followUnit();
    this.near?.settle();
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
