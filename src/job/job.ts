/**
 * The running job: the document, its history and the values that the engine gives back.
 *
 * Every command is one undo step. Commands never throw for what a person typed: text that the gate refuses stays in
 * the cell as typed and its value is an error with the reason; a name that cannot be used is answered with the reason.
 */
import type { KnownValues } from "../engine/known-values.ts";
import type { Reckoning } from "../engine/reckoner.ts";
import type { CellValue, Place } from "../engine/values.ts";
import type { Drawn } from "../functions/declare.ts";
import type { CellFormat, JobDocument } from "./document.ts";
import type { Moves } from "./moves.ts";

export type { KnownValues } from "../engine/known-values.ts";
export { createJob } from "./create-job.ts";

export interface CellEdit {
  readonly sheet: string;
  readonly row: number;
  readonly column: number;
  readonly text: string;
}

export interface CellView {
  /** As typed; "" when empty (or when filled by a block function from another cell). */
  readonly text: string;
  readonly value: CellValue;
  readonly format: CellFormat;
  /** Note of a doubtful value. */
  readonly caution?: string;
  /** What was taken where nothing was given; the value is as sure as any. */
  readonly taken?: string;
  /** What the drawing shows, where the value is one; the value is then its text. */
  readonly figure?: Drawn["figure"];
  readonly choices?: readonly string[];
  readonly note?: string;
  /** Anchor cell (`A5`) when the value is spilled from a block function there. */
  readonly spilledFrom?: string;
  readonly name?: string;
  readonly locked?: true;
  /** The value is that of an earlier edit, or none: a newer one is still being reckoned. */
  readonly stale?: true;
}

/** Results with other values in some cells; the job stays as it is. */
export interface Trial {
  /** For each result, whether it depends on an input at all. */
  readonly dependent: readonly boolean[];
  /** The results, in order, with these values in the inputs. @returns rejects where nothing comes of it */
  at(inputs: readonly CellValue[]): Promise<readonly CellValue[]>;
}

export interface JobChange {
  readonly document: JobDocument;
  /** What the step was, as history shows it: "Typed in Thread!B2"; "" where none was done. */
  readonly what: string;
  /** The document is the same: values that were still being reckoned have come. */
  readonly values?: true;
  /** What went wrong while values were reckoned, for the person. */
  readonly trouble?: string;
}

export interface Job {
  readonly document: JobDocument;
  /** The job's display unit: the value of the cell named `unit`, "mm" when there is none. */
  readonly unit: "mm" | "in";
  cell(sheet: string, row: number, column: number): CellView;
  /**
   * Cells outside the largest sheet (100,000 rows, 702 columns) and on unknown sheets are left alone. Nothing is done
   * where one of the cells is locked; then the answer says which.
   * @param also what is done in the same step besides
   */
  setCells(
    edits: readonly CellEdit[],
    what?: string,
    also?: (document: JobDocument) => JobDocument,
  ): string | undefined;
  /**
   * Makes `document`, a changed copy of this job's, the job: one step, called `what`.
   * @param moves where its cells have gone, or that their formulas read otherwise and mean the same
   */
  put(document: JobDocument, what: string, moves?: Moves): void;
  setFormat(sheet: string, range: string, format: CellFormat): void;
  setColumnWidth(sheet: string, column: number, width: number): void;
  /** The name it got: the one asked for, made unique, or the next free "Sheet 2". */
  addSheet(name?: string): string;
  /** Why the name cannot be used; undefined when it is done. References in formulas follow. */
  renameSheet(name: string, newName: string): string | undefined;
  /** Why it cannot be removed; undefined when it is done. */
  removeSheet(name: string): string | undefined;
  moveSheet(name: string, to: number): void;
  /** An answer that is still being reckoned is put in when it has come. */
  signOff(sheet: string, signed: boolean): void;
  /** Names a cell or range (`Thread!B2`, `Thread!B2:B9`). Why it cannot; undefined when it is done. */
  setName(name: string, target: string): string | undefined;
  removeName(name: string): void;
  /** undefined when there is nothing to undo / redo; else what it would undo. */
  readonly canUndo: string | undefined;
  readonly canRedo: string | undefined;
  undo(): void;
  redo(): void;
  /** What every step was, oldest first, those that were taken back included. */
  readonly steps: readonly string[];
  /** How many of them are done. */
  readonly stepsDone: number;
  /** Undoes or does again until `done` of the steps are done. */
  goToStep(done: number): void;
  /** One formula reckoned in the context of the job (as on `sheet`, or the first one), without changing it. */
  evaluate(formula: string, sheet?: string): Promise<CellValue | CellValue[][]>;
  /** @returns rejects where nothing comes of it, as when reckoning is stopped */
  trial(results: readonly Place[], inputs: readonly Place[]): Promise<Trial>;
  /** Every cell that the value of a cell is reckoned from: itself, what it reads, what that reads, and so on. */
  precedents(place: Place): Promise<readonly Place[]>;
  /** The first cells whose formula reads a cell, by its address, by a name or within a range; in reading order. */
  readers(place: Place, most: number): Promise<readonly Place[]>;
  /** How far the values are that have still to come; undefined when all are known. */
  readonly reckoning: Reckoning | undefined;
  /** Leaves values that are not known yet as they are, stale, until the next edit. */
  stopReckoning(): void;
  goOnReckoning(): void;
  /**
   * The values, step by step, to be kept beside the stored job and given to `createJob` when it is opened again;
   * undefined while newer ones are awaited, and where they come so quickly that there is no need.
   */
  knownValues(): Generator<void, KnownValues> | undefined;
  /** Counts the changes, before they are told: what was found out of a job holds while this stays as it is. */
  readonly changes: number;
  /** Called after every command, undo and redo, and when values have come later. Returns the way to stop it. */
  subscribe(listener: (change: JobChange) => void): () => void;
  /** Lets go of the worker that reckons for it, if there is one. */
  close(): void;
}
