/** What a running job asks of whatever reckons its values: an engine on the page's own thread, or one in a worker. */
import type { Drawn } from "../functions/declare.ts";
import type { EngineContent, EngineEdit } from "./contents.ts";
import type { KnownValues } from "./known-values.ts";
import type { Answer, Question } from "./questions.ts";
import type { CellValue, Place } from "./values.ts";

/** How far values are that have still to come. */
export interface Reckoning {
  readonly done: number;
  /** 0 while it is not known how many there are. */
  readonly of: number;
  /** True after it was stopped: nothing more comes until it goes on. */
  readonly stopped: boolean;
}

/** Where a cell was before cells were moved; undefined for one that is new. Its last value goes with it. */
export type Origin = (place: Place) => Place | undefined;

export interface Reckoner {
  /** Takes another content: after opening a job, and after any change of sheets or names. */
  load(content: EngineContent, origin?: Origin): void;
  setCells(edits: readonly EngineEdit[], origin?: Origin): void;
  /** The last value that is known; null where none is. */
  value(sheet: string, row: number, column: number): CellValue;
  note(sheet: string, row: number, column: number): string | undefined;
  figure(sheet: string, row: number, column: number): Drawn["figure"] | undefined;
  spilledFrom(sheet: string, row: number, column: number): { row: number; column: number } | undefined;
  /** True while a newer value is awaited, or the value of a table behind it. */
  isStale(sheet: string, row: number, column: number): boolean;
  /** @returns rejects where nothing comes of it, as when reckoning is stopped */
  ask(question: Question): Promise<Answer>;
  /** What is known, step by step, so that it can be kept for another time; undefined where there is no need to. */
  known(): Generator<void, KnownValues> | undefined;
  /** Undefined when all values are known. */
  readonly reckoning: Reckoning | undefined;
  stop(): void;
  goOn(): void;
  /** It is not needed any more. */
  end(): void;
}
