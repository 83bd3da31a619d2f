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

export class Autosave {
  private writing: Promise<void> | undefined;
  private timer: ReturnType<typeof setTimeout> | undefined;
  private dirty = false;
  private stopped = false;
  private failed = false;
  /** Parts of the text as they are in the keep. */
  private texts: readonly TextPart[] | undefined;

  /**
   * @param revision of what is in the keep; 0 for a job that is not there yet
   * @param shared true while another page has this job open too
   */
  constructor(
    private readonly keep: Keep,
    readonly id: string,
    private revision: number,
    private readonly snapshot: Snapshot,
    private readonly report: (saved: Saved) => void,
    private readonly shared: () => boolean,
    /** Settles when a snapshot takes no time; undefined where it takes none now. */
    private readonly ready: () => Promise<void> | undefined = () => undefined,
  ) {}

  get unkept(): boolean {
    return this.dirty;
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

  /** Everything changed so far is written when this settles. */
  async flush(): Promise<void> {
    await this.writing;
    if (this.dirty) await this.write();
  }

  /** For the moment the page goes away: there is no time to wait for an answer. */
  flushAtOnce(): void {
    if (!this.dirty || this.stopped) return;
    if (this.shared()) {
      void this.write();
      return;
    }
    this.dirty = false;
    const { record, texts } = this.next();
    void this.keep.writeAtOnce(record, this.changed(texts)).catch(() => undefined);
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

  private async write(): Promise<void> {
    clearTimeout(this.timer);
    this.timer = undefined;
    if (this.stopped) return;
    this.dirty = false;
    this.writing = this.attempt().finally(() => {
      this.writing = undefined;
    });
    await this.writing;
    if (this.stopped) return;
    this.timer = setTimeout(
      () => {
        this.timer = undefined;
        if (this.dirty) void this.write();
      },
      this.failed ? pauseAfterFailure : pause,
    );
  }

  private async attempt(): Promise<void> {
    try {
      const waiting = this.ready();
      if (waiting) await waiting;
      const { record, texts } = this.next();
      this.failed = false;
      const kept = await this.keep.write(record, this.changed(texts));
      this.texts = kept ? texts : undefined;
      if (kept) this.report({ state: "kept", when: record.changed, revision: record.revision });
      else this.overtakenBy(Number.POSITIVE_INFINITY);
    } catch (error) {
      this.revision -= 1;
      this.texts = undefined;
      // The keep may be full of values that can be reckoned again.
      void this.keep.dropValues().catch(() => undefined);
      this.failed = true;
      this.dirty = true;
      this.report({ state: "failing", reason: error instanceof Error ? error.message : String(error) });
    }
  }

  private next(): { record: KeptJob; texts: readonly TextPart[] | undefined } {
    this.revision += 1;
    const { texts, ...shown } = this.snapshot();
    const record = { ...shown, id: this.id, changed: Date.now(), revision: this.revision };
    return { record: texts ? { ...record, parts: texts.length } : record, texts };
  }

  /** Parts that are not in the keep as they are. */
  private changed(texts: readonly TextPart[] = []): [number, () => string][] {
    return texts.flatMap((part, i) =>
      isSamePart(part, this.texts?.[i]) ? [] : [[i, () => part.text()] as [number, () => string]],
    );
  }
}
