/**
 * Work in a task of its own: before the next frame, but not in the task that asked for it. A command and what draws its
 * outcome together would hold up the next key for longer than either.
 */

interface Scheduler {
  postTask(work: () => void, options: { priority: "user-blocking" }): Promise<unknown>;
}

const { scheduler } = globalThis as { scheduler?: Scheduler };

export function soon(work: () => void): void {
  if (scheduler) {
    void scheduler.postTask(work, { priority: "user-blocking" });
    return;
  }
  const { port1, port2 } = new MessageChannel();
  port1.onmessage = () => {
    port1.close();
    work();
  };
  port2.postMessage(0);
}

/** Settles in a task of its own. */
export function ownTask(): Promise<void> {
  return new Promise((done) => soon(done));
}
