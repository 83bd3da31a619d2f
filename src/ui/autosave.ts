/** Writes the open job to the keep: at once when nothing is under way, then at most every third of a second. */
import { isSamePart, type TextPart } from "../job/file-parts.ts";
import type { Keep, KeptJob } from "./keep.ts";

export type Saved =
  | { readonly state: "not yet" }
  | { readonly state: "kept"; readonly when: number; readonly revision: number }
  | { readonly state: "failing"; readonly reason: string }
  /** Another page wrote this job; from now on nothing is written here. */
  | { readonly state: "overtaken" };

export type Snapshot = () => Pick<KeptJob, "text" | "title" | "thread" | "route"> & {
  /** The text where it is very long; `text` is empty then. */
  readonly texts?: readonly TextPart[] | undefined;
};

const pause = 300;
/** A full disk is not asked again at once. */
const pauseAfterFailure = 5000;

/** The job as it is written once. */
interface Writing {
  readonly record: KeptJob;
  readonly texts: readonly TextPart[] | undefined;
  /** Parts that may not be in the keep as they are. */
  readonly changed: readonly [part: number, text: () => string][];
}

export class Autosave {
  private writing: Promise<void> | undefined;
  private timer: ReturnType<typeof setTimeout> | undefined;
  /** Something has changed that nothing was asked to write. */
  private dirty = false;
  private stopped = false;
  private failed = false;
  /** The last revision that was asked for, and the last one that is known to be in the keep. */
  private revision: number;
  private last: Writing | undefined;
  /** Parts of the text that are in the keep as they are here, whichever of the writings under way come through. */
  private texts: readonly (TextPart | undefined)[] = [];

  /**
   * @param kept revision of what is in the keep; 0 for a job that is not there yet
   * @param shared true while another page has this job open too
   */
  constructor(
    private readonly keep: Keep,
    readonly id: string,
    private kept: number,
    private readonly snapshot: Snapshot,
    private readonly report: (saved: Saved) => void,
    private readonly shared: () => boolean,
    /** Settles when a snapshot takes no time; undefined where it takes none now. */
    private readonly ready: () => Promise<void> | undefined = () => undefined,
  ) {
    this.revision = kept;
  }

  /** The revision in the keep, when that is the job as it is now. */
  get settled(): number | undefined {
    return this.dirty || this.writing || this.stopped || this.revision === 0 ? undefined : this.revision;
  }

  /** The job has changed. */
  touch(): void {
    if (this.stopped) return;
    this.dirty = true;
    if (!this.writing && this.timer === undefined) void this.write();
  }

  /** Everything is written when this settles, what was changed meanwhile too; or it has failed. */
  async flush(): Promise<void> {
    await this.writing;
    while (this.dirty && !this.stopped) {
      await this.write();
      if (this.failed) return;
    }
  }

  /**
   * For the moment the page goes away: there is no time to wait for an answer. What is being written by then may not
   * get through either.
   */
  flushAtOnce(): void {
    if (this.stopped || !(this.dirty || this.writing)) return;
    if (this.shared()) {
      if (this.dirty) void this.write(true);
      return;
    }
    const next = this.next();
    this.keep.writeAtOnce(next.record, next.changed).then(
      () => this.done(next),
      (error) => {
        this.fail(error);
        if (!this.writing) this.rest();
      },
    );
  }

  /** Another page wrote revision `theirs` of this job. */
  overtakenBy(theirs: number): void {
    if (this.stopped || theirs < this.revision) return;
    this.stop();
    this.report({ state: "overtaken" });
  }

  stop(): void {
    this.stopped = true;
    clearTimeout(this.timer);
    this.timer = undefined;
  }

  private async write(atOnce = false): Promise<void> {
    clearTimeout(this.timer);
    this.timer = undefined;
    if (this.stopped) return;
    const writing = this.attempt(atOnce).finally(() => {
      if (this.writing === writing) this.writing = undefined;
    });
    this.writing = writing;
    await writing;
    this.rest();
  }

  private rest(): void {
    clearTimeout(this.timer);
    this.timer = undefined;
    if (this.stopped) return;
    this.timer = setTimeout(
      () => {
        this.timer = undefined;
        if (this.dirty) void this.write();
      },
      this.failed ? pauseAfterFailure : pause,
    );
  }

  private async attempt(atOnce: boolean): Promise<void> {
    try {
      const waiting = atOnce ? undefined : this.ready();
      if (waiting) await waiting;
      const next = this.next();
      if (await this.keep.write(next.record, next.changed)) this.done(next);
      else this.overtakenBy(Number.POSITIVE_INFINITY);
    } catch (error) {
      this.fail(error);
    }
  }

  private done(written: Writing): void {
    const { changed: when, revision } = written.record;
    this.failed = false;
    this.kept = Math.max(this.kept, revision);
    this.revision = Math.max(this.revision, revision);
    if (this.last === written) this.texts = written.texts ?? [];
    if (!this.stopped) this.report({ state: "kept", when, revision });
  }

  private fail(error: unknown): void {
    this.revision = this.kept;
    this.texts = [];
    this.failed = true;
    this.dirty = true;
    // The keep may be full of values that can be reckoned again.
    void this.keep.dropValues().catch(() => undefined);
    if (this.stopped) return;
    this.report({ state: "failing", reason: error instanceof Error ? error.message : String(error) });
  }

  private next(): Writing {
    const { texts, ...shown } = this.snapshot();
    this.dirty = false;
    this.revision += 1;
    const record = { ...shown, id: this.id, changed: Date.now(), revision: this.revision };
    const sure = (texts ?? []).map((part, i) => (isSamePart(part, this.texts[i]) ? part : undefined));
    const changed = (texts ?? []).flatMap((part, i): Writing["changed"] =>
      sure[i] ? [] : [[i, () => part.text()]],
    );
    this.texts = sure;
    this.last = { record: texts ? { ...record, parts: texts.length } : record, texts, changed };
    return this.last;
  }
}
