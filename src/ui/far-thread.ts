/** How a job gets a worker for its values, and when: the numbers are measured, see DEVELOPERS.md. */
import workerScript from "../engine/worker.ts?worker&url";
import type { Far } from "../job/job-values.ts";
import { later } from "./later.ts";
import { ownScript } from "./own-script.ts";

export const far: Far = {
  formulas: 500,
  longest: 50,
  start(heard, died) {
    try {
      const worker = new Worker(ownScript(workerScript) as string, { type: "module" });
      worker.addEventListener("message", ({ data }) => heard(data));
      worker.addEventListener("error", ({ message }) => died(message || "the worker cannot be loaded"));
      return {
        post: (order) => worker.postMessage(order),
        end: () => worker.terminate(),
      };
    } catch (error) {
      const reason = error instanceof Error ? error.message : String(error);
      later(() => died(reason));
      return { post: () => {}, end: () => {} };
    }
  },
  later,
  alarm(ring, after) {
    const timer = setTimeout(ring, after);
    return () => clearTimeout(timer);
  },
};
