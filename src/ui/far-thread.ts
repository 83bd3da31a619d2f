/** How a job gets a worker for its values, and when: the numbers are measured, see DEVELOPERS.md. */
import workerScript from "../engine/worker.ts?worker&url";
import fileScript from "../job/file-worker.ts?worker&url";
import type { Far } from "../job/job-values.ts";
import type { StartReading } from "../job/read-far.ts";
import { later } from "./later.ts";
import { ownScript } from "./own-script.ts";

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

export const far: Far = {
  formulas: 500,
  longest: 50,
  start(heard, died) {
    const worker = started(workerScript, heard, died);
    return { post: (order) => worker?.postMessage(order), end: () => worker?.terminate() };
  },
  later,
  alarm(ring, after) {
    const timer = setTimeout(ring, after);
    return () => clearTimeout(timer);
  },
};

export const startReading: StartReading = (text, heard, died) => {
  const worker = started(fileScript, heard, died);
  worker?.postMessage(text);
  return () => worker?.terminate();
};
