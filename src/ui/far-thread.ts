/** How a job gets a worker for its values. One is started with the page, so that it is ready when the first job is. */
import workerScript from "../engine/worker.ts?worker&url";
import fileScript from "../job/file-worker.ts?worker&url";
import type { Far } from "../job/job-values.ts";
import type { StartReading } from "../job/read-far.ts";
import { later } from "./later.ts";
import { ownScript } from "./own-script.ts";
import { soon } from "./own-task.ts";

/** A worker of one of the page's own scripts. @returns undefined where none can be had; that is told later */
function started<Heard>(
  script: string,
  heard: (message: Heard) => void,
  died: (reason: string) => void,
): Worker | undefined {
  try {
    const worker = new Worker(ownScript(script) as string, { type: "module" });
    worker.addEventListener("message", ({ data }) => heard(data));
    worker.addEventListener("error", ({ message }) => died(message || "the worker cannot be loaded"));
    return worker;
  } catch (error) {
    const reason = error instanceof Error ? error.message : String(error);
    later(() => died(reason));
    return undefined;
  }
}

type Heard = Parameters<Far["start"]>[0];

/** A worker that reckons, for whichever job has it. */
class Hand {
  heard!: Heard;
  died!: (reason: string) => void;
  /** Why it died while no job had it. */
  dead: string | undefined;

  constructor() {
    this.rest();
  }

  /** No job has it: nothing of the last one is held on to. */
  rest(): void {
    this.heard = () => {};
    this.died = (reason) => {
      this.dead = reason;
    };
  }

  readonly worker = started<Parameters<Heard>[0]>(
    workerScript,
    (report) => this.heard(report),
    (reason) => this.died(reason),
  );
}

/** Has nothing to do. */
let spare: Hand | undefined;
/** No job has asked for one so far. */
let unasked = true;

soon(() => {
  if (unasked) spare = new Hand();
});

export const far: Far = {
  start(heard, died) {
    unasked = false;
    // One that broke down while it waited is no reason to do without.
    const hand = spare && spare.dead === undefined ? spare : new Hand();
    if (hand !== spare) spare?.worker?.terminate();
    spare = undefined;
    hand.heard = heard;
    hand.died = died;
    return {
      post: (order) => hand.worker?.postMessage(order),
      end: () => hand.worker?.terminate(),
      leave() {
        if (spare) hand.worker?.terminate();
        else {
          hand.rest();
          spare = hand;
        }
      },
    };
  },
  later,
  soon,
  alarm(ring, after) {
    const timer = setTimeout(ring, after);
    return () => clearTimeout(timer);
  },
};

export const startReading: StartReading = (source, heard, died) => {
  const worker = started(fileScript, heard, died);
  worker?.postMessage(source);
  return () => worker?.terminate();
};
