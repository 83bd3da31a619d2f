/**
 * The page's side of an engine in a worker. It answers at once with the last value that is known, and tells when newer
 * ones have come.
 *
 * The worker may be ended and started again at any moment: everything that it holds can be sent once more from here.
 */
import type { Drawn } from "../functions/declare.ts";
import { cellName } from "./address.ts";
import type { Contents, EngineContent, EngineEdit } from "./contents.ts";
import { FarQuestions } from "./far-questions.ts";
import { FarValues, firstTurn } from "./far-values.ts";
import type { KnownValues } from "./known-values.ts";
import { type Order, type Reply, type Report, spotOf } from "./packets.ts";
import type { Answer, Question } from "./questions.ts";
import type { Origin, Reckoner, Reckoning } from "./reckoner.ts";
import { inParts } from "./texts.ts";
import type { CellValue } from "./values.ts";

/** A worker that has been started. */
export interface FarThread {
  post(order: Order): void;
  end(): void;
  /** It has nothing to do: another job may have it. */
  leave(): void;
}

/** Starts a worker. @param died it cannot be started, or has broken down */
export type StartThread = (
  heard: (message: Report | Reply) => void,
  died: (reason: string) => void,
) => FarThread;

export interface FarSetting {
  readonly start: StartThread;
  /** Runs work after the page has had its turn. */
  readonly later: (work: () => void) => void;
  /** Calls after some time, ms, unless it is called off. @returns the way to call it off */
  readonly alarm: (ring: () => void, after: number) => () => void;
}

export interface FarListener {
  /** Newer values have come, or how far it is has changed. */
  values(): void;
  /** Something that the person has to know. */
  trouble(text: string): void;
  /** No worker can be had here. */
  unable(): void;
}

/** A worker that gives no sign of life for so long hangs, ms. */
export const silence = 20_000;
/** And longer by this for each cell, ms: putting very many into an engine gives no sign either. */
const silencePerCell = 0.02;
/** A worker that holds more cells than this is not left to another job: it would hold them until that has begun. */
const mostLeft = 20_000;
/** Cells of one message. */
const part = 2000;
/** Packed slabs of one message. */
const slabs = 16;
/** How long sending may keep the page from anything else, ms. */
const burst = 8;

export class FarEngine implements Reckoner {
  private readonly values = new FarValues();
  private thread: FarThread | undefined;
  /** False until the worker has reported anything. */
  private alive = false;
  /** The last turn that was ordered, the last one that has ended, and the first one whose reports still fit. */
  private turn = firstTurn;
  private ended = firstTurn;
  private fitting = 0;
  private last: Report | undefined;
  private stopped = false;
  /** Nothing is reckoned any more: nobody would end a worker that was started now. */
  private closed = false;
  private callOff: (() => void) | undefined;
  /** What the turns under way may change, where that is known. */
  private readonly reach = new Map<number, ReadonlyMap<number, ReadonlySet<number>>>();
  private readonly edits = new Map<number, readonly EngineEdit[]>();
  private outbox: Iterator<Order>[] = [];
  private sending = false;
  private broken = 0;
  private readonly questions = new FarQuestions();

  constructor(
    content: EngineContent,
    private readonly setting: FarSetting,
    private readonly listener: FarListener,
    before?: KnownValues,
  ) {
    this.load(content);
    if (!before) return;
    const parts = this.values.recall(before);
    parts.next();
    this.recall(parts);
  }

  load(content: EngineContent, origin?: Origin): void {
    this.values.load(content, origin);
    this.sendAll();
  }

  known(): Generator<void, KnownValues> | undefined {
    return this.ended === this.turn ? this.values.known() : undefined;
  }

  setCells(edits: readonly EngineEdit[], origin?: Origin): void {
    const tell = this.values.type(edits, origin);
    // What is still on the way would land in cells that have moved since.
    const torn = origin !== undefined && this.ended !== this.turn;
    if (this.stopped || !this.thread || torn) {
      this.sendAll();
      return;
    }
    this.turn += 1;
    this.edits.set(this.turn, edits);
    const order: Order = { order: "type", turn: this.turn, edits, tell };
    this.send([order].values());
  }

  value(sheet: string, row: number, column: number): CellValue {
    return this.values.valueAt({ sheet: this.held.indexOf(sheet), row, col: column });
  }

  note(sheet: string, row: number, column: number): string | undefined {
    return this.values.note({ sheet, row, column });
  }

  figure(sheet: string, row: number, column: number): Drawn["figure"] | undefined {
    return this.values.figure({ sheet, row, column });
  }

  spilledFrom(sheet: string, row: number, column: number): { row: number; column: number } | undefined {
    return this.values.spilledFrom({ sheet, row, column });
  }

  isStale(sheet: string, row: number, column: number): boolean {
    if (this.ended === this.turn) return false;
    const known = this.values.turn({ sheet, row, column });
    if (known === undefined || known >= this.turn) return false;
    const index = this.held.indexOf(sheet);
    for (let turn = this.ended + 1; turn <= this.turn; turn++) {
      const reach = this.reach.get(turn);
      if (!reach || reach.get(index)?.has(spotOf(row, column))) return true;
    }
    return false;
  }

  ask(question: Question): Promise<Answer> {
    if (this.closed) return Promise.reject(new Error("the job was closed"));
    if (this.stopped) return Promise.reject(new Error("reckoning is stopped: let it go on first"));
    return this.questions.ask(question, (order) => {
      if (this.thread) this.send([order].values());
      else this.sendAll();
    });
  }

  get reckoning(): Reckoning | undefined {
    if (this.ended === this.turn) return undefined;
    const { last, stopped } = this;
    const current = last && last.turn > this.ended ? last : undefined;
    return { done: current?.done ?? 0, of: current?.of ?? 0, stopped };
  }

  /** Ends the worker: that alone interrupts a formula. What it knew is sent to the next one. */
  stop(): void {
    if (this.ended === this.turn || this.stopped) return;
    this.stopped = true;
    this.endThread();
    this.questions.drop("it was stopped");
    this.listener.values();
  }

  goOn(): void {
    if (!this.stopped) return;
    this.sendAll();
    this.listener.values();
  }

  end(): void {
    const rests = this.ended === this.turn && this.outbox.length === 0 && !this.questions.waiting;
    if (rests && this.cellCount <= mostLeft) {
      this.thread?.leave();
      this.thread = undefined;
    }
    this.closed = true;
    this.stopped = true;
    this.endThread();
    this.questions.drop("the job was closed");
  }

  private get held(): Contents {
    return this.values.held;
  }

  /** One part after the other, each when the page has had its turn. */
  private recall(parts: Iterator<void>): void {
    this.setting.later(() => {
      if (parts.next().done) this.listener.values();
      else this.recall(parts);
    });
  }

  /** Begins anew with all that there is: in a new worker where there is none, or in the same. */
  private sendAll(): void {
    this.stopped = this.closed;
    this.turn += 1;
    if (this.closed) return;
    this.fitting = this.turn;
    this.reach.clear();
    this.edits.clear();
    this.outbox = [];
    this.send(this.everything(this.turn));
    if (this.questions.waiting) this.send(this.questions.orders());
  }

  /** All that there is as orders, put together as they are sent. */
  private *everything(turn: number): Generator<Order> {
    const { names, sheets } = this.held;
    yield { order: "begin", names, sheets: sheets.map(({ name }) => name) };
    for (const [sheet, { cells, values }] of sheets.entries()) {
      const { packed, others } = inParts(cells);
      for (let from = 0; from < packed.length; from += slabs)
        yield { order: "part", sheet, cells: [], values: [], packed: packed.slice(from, from + slabs) };
      let some: [string, string][] = [];
      for (const cell of others) {
        if (some.push(cell) < part) continue;
        yield { order: "part", sheet, cells: some, values: [] };
        some = [];
      }
      yield { order: "part", sheet, cells: some, values: [...values] };
    }
    yield { order: "build", turn };
  }

  private send(orders: Iterator<Order>): void {
    this.outbox.push(orders);
    if (!this.thread) this.startThread();
    this.watch();
    if (!this.sending) this.pump();
  }

  /** Small contents go out at once; of large ones a part, then the page has its turn. */
  private pump(): void {
    const { thread, outbox } = this;
    if (!thread) return;
    const end = performance.now() + burst;
    while (outbox.length > 0 && performance.now() < end) {
      const next = outbox[0]!.next();
      if (next.done) outbox.shift();
      else thread.post(next.value);
    }
    this.sending = outbox.length > 0;
    if (this.sending)
      this.setting.later(() => {
        this.sending = false;
        this.pump();
      });
  }

  private startThread(): void {
    this.alive = false;
    const thread: FarThread = this.setting.start(
      (message) => {
        if (this.thread !== thread) return;
        if ("answers" in message) this.hearAnswer(message);
        else this.hear(message);
      },
      (reason) => {
        if (this.thread === thread) this.died(reason);
      },
    );
    this.thread = thread;
  }

  private endThread(): void {
    this.callOff?.();
    this.callOff = undefined;
    this.thread?.end();
    this.thread = undefined;
    this.outbox = [];
  }

  private hear(report: Report): void {
    this.alive = true;
    // What belongs to a content that has been replaced since no longer fits any cell.
    if (report.turn < this.fitting) {
      this.watch();
      return;
    }
    this.last = report;
    this.values.take(report);
    if (report.reach) {
      const spots = report.reach.map(({ sheet, spots }): [number, Set<number>] => [sheet, new Set(spots)]);
      this.reach.set(report.turn, new Map(spots));
    }
    // What was typed is in, and is not to blame if nothing more comes.
    if (report.entered)
      for (const turn of this.edits.keys()) if (turn <= report.turn) this.edits.delete(turn);
    if (report.ended) {
      this.ended = report.turn;
      this.broken = 0;
      for (const turn of this.reach.keys()) if (turn <= report.turn) this.reach.delete(turn);
    }
    this.watch();
    if (!report.more) this.listener.values();
  }

  private hearAnswer(reply: Reply): void {
    this.questions.hear(reply);
    this.watch();
  }

  private get silence(): number {
    return silence + this.cellCount * silencePerCell;
  }

  private get cellCount(): number {
    return this.held.sheets.reduce((sum, { cells }) => sum + cells.size, 0);
  }

  /** Waits for the next sign of life. */
  private watch(): void {
    this.callOff?.();
    const waits = this.ended !== this.turn || this.questions.waiting;
    this.callOff = !waits ? undefined : this.setting.alarm(() => this.hangs(), this.silence);
  }

  /** A formula that was typed last is left out until it is changed; a content that hangs as it is stops. */
  private hangs(): void {
    const seconds = Math.round(this.silence / 1000);
    this.questions.drop(`nothing came of it for ${seconds} s`);
    if (this.ended === this.turn) {
      this.endThread();
      this.sendAll();
      return;
    }
    const first = [...this.edits.keys()].find((turn) => turn > this.ended);
    const typed = first === undefined || first !== this.ended + 1 ? [] : this.edits.get(first)!;
    const formulas = typed.filter(({ text }) => text[0] === "=");
    if (formulas.length === 0) {
      this.stopped = true;
      this.endThread();
      this.listener.trouble(
        `Reckoning was stopped: nothing came of it for ${seconds} s. What is slanted is not reckoned.`,
      );
      this.listener.values();
      return;
    }
    this.endThread();
    this.held.put(
      formulas.map((edit) => ({
        ...edit,
        value: {
          error: "#ERROR!",
          message: `left out: it kept everything else from being reckoned for ${seconds} s. Change the formula`,
        },
      })),
    );
    const [{ row, column }] = formulas as [EngineEdit];
    const others = formulas.length === 1 ? "" : ` and ${formulas.length - 1} more`;
    this.listener.trouble(
      `The formula in ${cellName(row, column)}${others} was left out: nothing else was reckoned for ${seconds} s. All values are being reckoned again.`,
    );
    this.sendAll();
    this.listener.values();
  }

  private died(reason: string): void {
    const { alive } = this;
    this.endThread();
    this.questions.drop(reason);
    if (!alive && this.broken === 0 && this.ended === firstTurn) {
      this.listener.unable();
      return;
    }
    this.broken += 1;
    if (this.broken > 1) {
      this.stopped = true;
      this.listener.trouble(`Reckoning has broken down twice and was stopped: ${reason}.`);
    } else {
      this.listener.trouble(`Reckoning has broken down and is begun again: ${reason}.`);
      this.sendAll();
    }
    this.listener.values();
  }
}
