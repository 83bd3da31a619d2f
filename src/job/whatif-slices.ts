/**
 * When the values of what-if tables are reckoned. Without a clock they come with every edit; with one they come in
 * slices between which the page can be used, and what is not known yet is stale meanwhile.
 */
import type { Engine } from "../engine/engine.ts";
import type { Reckoning } from "../engine/reckoner.ts";

/** Runs work as soon as the page has had its turn. */
export type Later = (work: () => void) => void;

/** How long a slice may take, ms: short enough for a key press in between. */
const slice = 10;
/** How often values that have come are shown, ms. */
const showing = 120;

export class WhatIfSlices {
  private of = 0;
  private stopped = false;
  private awaited = false;
  private shown = 0;

  /** @param tell values have come, or it was stopped */
  constructor(
    private readonly engine: Engine,
    private readonly later: Later | undefined,
    private readonly tell: () => void,
  ) {}

  /** Undefined when all values are known. */
  get reckoning(): Reckoning | undefined {
    const left = this.engine.tablesLeft;
    return left === 0 ? undefined : { done: this.of - left, of: this.of, stopped: this.stopped };
  }

  /** An edit was made: small tables are done at once, the others are begun. */
  follow(): void {
    const left = this.engine.tablesLeft;
    // What was under way before goes on; nothing of it is told twice.
    this.of = left === 0 ? 0 : Math.max(this.of, left);
    if (left === 0) return;
    this.stopped = false;
    this.shown = performance.now();
    this.work();
    this.goOn();
  }

  stop(): void {
    if (this.engine.tablesLeft === 0 || this.stopped) return;
    this.stopped = true;
    this.tell();
  }

  resume(): void {
    if (!this.stopped) return;
    this.stopped = false;
    this.goOn();
    this.tell();
  }

  private goOn(): void {
    if (this.awaited || this.stopped || this.engine.tablesLeft === 0) return;
    this.awaited = true;
    this.later?.(() => {
      this.awaited = false;
      if (this.stopped || this.engine.tablesLeft === 0) return;
      const done = this.work();
      if (!done) this.of = Math.max(this.of, this.engine.tablesLeft);
      const now = performance.now();
      if (done || now - this.shown >= showing) {
        this.shown = now;
        this.tell();
      }
      this.goOn();
    });
  }

  private work(): boolean {
    const end = performance.now() + slice;
    const done = this.engine.reckonTables(() => performance.now() >= end);
    if (done) this.of = 0;
    return done;
  }
}
