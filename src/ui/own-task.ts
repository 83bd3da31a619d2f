/**
 * Drawing in a task of its own: before the next frame, but not in the task that asked for it. A command and what draws
 * its outcome together would hold up the next key for longer than either.
 */

interface Scheduler {
  postTask(work: () => void, options: { priority: "user-blocking" }): Promise<unknown>;
}

const { scheduler } = globalThis as { scheduler?: Scheduler };

/** Runs work in a task of its own, before the next frame. */
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

const waiting = new Set<() => void>();
let hurried = false;

/** Settles in a task of its own; at once where the person has gone on already. */
export function ownTask(): Promise<void> {
  if (hurried) return Promise.resolve();
  return new Promise((done) => {
    const settle = () => {
      waiting.delete(settle);
      done();
    };
    waiting.add(settle);
    soon(settle);
  });
}

/** What the person does next belongs to what is to be drawn: that is drawn before anyone hears of it. */
function hurry(): void {
  if (waiting.size === 0) return;
  hurried = true;
  soon(() => {
    hurried = false;
  });
  for (const settle of [...waiting]) settle();
}

for (const type of ["keydown", "beforeinput", "pointerdown", "pointerup", "click"])
  addEventListener(type, hurry, true);
