/** Waiting until the values of a job are there: they are reckoned in a worker. */
import type { Job } from "../job/job.ts";

/** Whoever asked for something waits no longer than this, ms: what is known by then has to do. */
const patience = 2000;

/** Settles when all values of the job are known, or when no more are to come; at once where that is so already. */
export function reckoned(job: Job, most = patience): Promise<void> {
  const isDone = () => !job.reckoning || job.reckoning.stopped;
  if (isDone()) return Promise.resolve();
  return new Promise((done) => {
    const timer = Number.isFinite(most) ? setTimeout(() => end(), most) : undefined;
    const stop = job.subscribe(() => isDone() && end());
    const end = () => {
      clearTimeout(timer);
      stop();
      done();
    };
  });
}
