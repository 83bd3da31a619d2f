/**
 * Looking for words in a job while the page can be used. Only the last question is gone into; what it has found stands as
 * long as the job is as it was.
 */
import { type Found, findIn, type Wish } from "../job/find.ts";
import type { Job } from "../job/job.ts";
import { countCells } from "../job/large-cells.ts";
import { later } from "./later.ts";

interface Known {
  readonly job: Job;
  readonly changes: number;
  readonly of: string;
  readonly found: Found;
}

export class CellSearch {
  private known: Known | undefined;
  private question = 0;

  /** @param tell how much has been looked through, from 0 to 1; undefined at the end */
  constructor(private readonly tell: (share: number | undefined) => void) {}

  /** @param then is told what there is: at once in a small job */
  find(job: Job, wish: Wish, then: (found: Found) => void): void {
    this.stop();
    const of = JSON.stringify(wish);
    const { known, question } = this;
    const { changes, document } = job;
    if (known?.job === job && known.changes === changes && known.of === of) {
      then(known.found);
      return;
    }
    const slices = findIn(job, wish);
    const most = countCells(job.document.sheets.filter(({ name }) => name === (wish.sheet ?? name)));
    let looked = 0;
    const goOn = () => {
      if (question !== this.question) return;
      // Cells may be gone from where they were looked for, and others have come where that is done.
      if (job.document !== document) return this.find(job, wish, then);
      const slice = slices.next();
      if (!slice.done) {
        looked += slice.value;
        this.tell(looked / most);
        later(goOn);
        return;
      }
      this.tell(undefined);
      this.known = { job, changes, of, found: slice.value };
      then(slice.value);
    };
    goOn();
  }

  /** Nobody waits for an answer any more. */
  stop(): void {
    this.question += 1;
    this.tell(undefined);
  }

  /** Another job is looked through from now on. */
  forget(): void {
    this.stop();
    this.known = undefined;
  }
}
