/** A worker that is none: its side runs in the same process, when the test says so, and what is sent is copied. */
import type { FarSetting } from "../../src/engine/far-engine.ts";
import { FarSide } from "../../src/engine/far-side.ts";
import type { Order, Reply, Report } from "../../src/engine/packets.ts";
import type { SheetFunction } from "../../src/functions/declare.ts";
import { sheetFunctions } from "../../src/functions/index.ts";

/** A worker, its mail, and the clock that watches it. */
export class InProcess {
  /** How many workers were started. */
  started = 0;
  /** How many were left to another job. */
  left = 0;
  /** What the worker has not read yet, and what the page has not. */
  orders: Order[] = [];
  reports: Report[] = [];
  replies: Reply[] = [];
  /** Where it is set, nothing is answered any more. */
  hangs = false;
  /** How long the page waits for a sign of life, ms. */
  patience = 0;
  private side: FarSide | undefined;
  private hear: ((message: Report | Reply) => void) | undefined;
  private die: ((reason: string) => void) | undefined;
  private works: (() => void)[] = [];
  private ring: (() => void) | undefined;

  constructor(
    private readonly functions: readonly SheetFunction[] = sheetFunctions,
    private readonly now?: () => number,
  ) {}

  readonly setting: FarSetting = {
    start: (hear, die) => {
      this.started += 1;
      this.hear = hear;
      this.die = die;
      this.hangs = false;
      const side = new FarSide(
        (message) => {
          if (this.side !== side) return;
          const copy = structuredClone(message);
          if ("answers" in copy) this.replies.push(copy);
          else this.reports.push(copy);
        },
        this.functions,
        () => {},
        this.now,
      );
      this.side = side;
      const end = () => {
        this.orders = [];
        this.side = undefined;
      };
      const leave = () => {
        this.left += 1;
        end();
      };
      return { post: (order) => this.orders.push(structuredClone(order)), end, leave };
    },
    later: (work) => this.works.push(work),
    alarm: (ring, after) => {
      this.patience = after;
      this.ring = ring;
      return () => {
        if (this.ring === ring) this.ring = undefined;
      };
    },
  };

  /** The page does what it has put off. */
  rest(): void {
    while (this.works.length > 0) this.works.shift()!();
  }

  /** The worker does what it was ordered. */
  work(): void {
    this.rest();
    if (this.hangs) return;
    for (let order = this.orders.shift(); order; order = this.orders.shift()) {
      this.side?.take(order);
      this.rest();
    }
  }

  /** The page reads its mail. */
  read(): void {
    for (let report = this.reports.shift(); report; report = this.reports.shift()) this.hear?.(report);
    for (let reply = this.replies.shift(); reply; reply = this.replies.shift()) this.hear?.(reply);
  }

  /** Both, until there is nothing to do. */
  settle(): void {
    while (this.works.length + this.orders.length + this.reports.length + this.replies.length > 0) {
      this.work();
      this.read();
    }
  }

  /** What comes of a promise that takes several answers. */
  async awaiting<T>(promise: Promise<T>): Promise<T> {
    let open = true;
    const over = () => {
      open = false;
    };
    promise.then(over, over);
    while (open) {
      this.settle();
      await new Promise((done) => setTimeout(done));
    }
    return promise;
  }

  breakDown(reason: string): void {
    this.die?.(reason);
  }

  /** True while the page waits for a sign of life. */
  get watched(): boolean {
    return this.ring !== undefined;
  }

  /** The page has waited too long. */
  ringAlarm(): void {
    this.ring?.();
  }
}
