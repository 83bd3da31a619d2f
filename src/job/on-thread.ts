/** An engine on the page's own thread: every value is there when an edit returns, but for those of large what-if tables. */
import type { EngineContent, EngineEdit } from "../engine/contents.ts";
import { Engine, type Log } from "../engine/engine.ts";
import { Answering, type Question } from "../engine/questions.ts";
import type { Reckoning } from "../engine/reckoner.ts";
import type { SheetFunction } from "../functions/declare.ts";
import type { Near } from "./job-values.ts";
import { type Later, WhatIfSlices } from "./whatif-slices.ts";

export class OnThread implements Near {
  private readonly engine: Engine;
  private readonly answering: Answering;
  private readonly tables: WhatIfSlices;

  /** @param tell values of what-if tables have come, or it was stopped */
  constructor(
    content: EngineContent,
    functions: readonly SheetFunction[],
    log: Log | undefined,
    later: Later | undefined,
    tell: () => void,
  ) {
    this.engine = new Engine(content, functions, log, later !== undefined);
    this.answering = new Answering(this.engine);
    this.tables = new WhatIfSlices(this.engine, later, tell);
  }

  load(content: EngineContent): void {
    this.answering.forget();
    this.engine.load(content);
  }

  setCells(edits: readonly EngineEdit[]): void {
    this.answering.forget();
    this.engine.setCells(edits);
  }

  /** An edit is complete: small what-if tables are done at once, the others are begun. */
  settle(): void {
    this.tables.follow();
  }

  value(sheet: string, row: number, column: number) {
    return this.engine.value(sheet, row, column);
  }

  note(sheet: string, row: number, column: number) {
    return this.engine.note(sheet, row, column);
  }

  figure(sheet: string, row: number, column: number) {
    return this.engine.figure(sheet, row, column);
  }

  spilledFrom(sheet: string, row: number, column: number) {
    return this.engine.spilledFrom(sheet, row, column);
  }

  isStale(sheet: string, row: number, column: number): boolean {
    return this.engine.isStale(sheet, row, column);
  }

  async ask(question: Question) {
    return this.answering.answer(question);
  }

  /** They are reckoned before anyone could see the others. */
  known(): undefined {
    return undefined;
  }

  get reckoning(): Reckoning | undefined {
    return this.tables.reckoning;
  }

  stop(): void {
    this.tables.stop();
  }

  goOn(): void {
    this.tables.resume();
  }

  end(): void {
    this.tables.stop();
  }
}
