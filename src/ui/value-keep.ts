/**
 * Keeps the last values of a large job beside it, while the page has nothing else to do, so that they can be shown at
 * once when it is opened again. Nothing depends on them.
 */
import type { Job } from "../job/job.ts";
import type { Keep } from "./keep.ts";
import { later } from "./later.ts";

/** Nothing has happened for so long, ms: whoever types goes on typing. */
const quiet = 1500;

export class ValueKeep {
  private timer: ReturnType<typeof setTimeout> | undefined;
  private keeping: object | undefined;

  /** @param revision of the job in the keep, when that is the job as it is now */
  constructor(
    private readonly keep: Keep,
    private readonly id: string,
    private readonly job: Job,
    private readonly revision: () => number | undefined,
  ) {}

  /** Something has changed, or values have come. */
  touch(): void {
    this.stop();
    this.timer = setTimeout(() => this.begin(), quiet);
  }

  stop(): void {
    clearTimeout(this.timer);
    this.keeping = undefined;
  }

  private begin(): void {
    const revision = this.revision();
    const steps = revision === undefined ? undefined : this.job.knownValues();
    if (revision === undefined || !steps) return;
    const keeping = {};
    this.keeping = keeping;
    const goOn = () => {
      if (this.keeping !== keeping) return;
      const step = steps.next();
      if (!step.done) later(goOn);
      // Whatever stands in the way: they are reckoned again.
      else void this.keep.keepValues(this.id, revision, step.value).catch(() => undefined);
    };
    goOn();
  }
}
