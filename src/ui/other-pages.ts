/** Pages of the same browser tell each other which job they have open and when they wrote it. */
type Word =
  | { readonly kind: "open"; readonly job: string; readonly page: string }
  | { readonly kind: "also"; readonly job: string; readonly page: string }
  | { readonly kind: "left"; readonly job: string; readonly page: string }
  | { readonly kind: "wrote"; readonly job: string; readonly page: string; readonly revision: number };

export class OtherPages {
  private readonly page = crypto.randomUUID();
  private readonly others = new Set<string>();
  private readonly channel =
    typeof BroadcastChannel === "undefined" ? undefined : new BroadcastChannel("halfangle");
  private job: string | undefined;

  /**
   * @param changed called when the number of other pages on this job changes
   * @param wrote called when another page has written this job
   */
  constructor(
    private readonly changed: () => void,
    private readonly wrote: (revision: number) => void,
  ) {
    this.channel?.addEventListener("message", (event: MessageEvent<Word>) => this.hear(event.data));
  }

  /** True while another page has this job open. */
  get shared(): boolean {
    return this.others.size > 0;
  }

  open(job: string): void {
    this.leave();
    this.job = job;
    this.channel?.postMessage({ kind: "open", job, page: this.page } satisfies Word);
  }

  tellWritten(revision: number): void {
    if (this.job)
      this.channel?.postMessage({ kind: "wrote", job: this.job, page: this.page, revision } satisfies Word);
  }

  leave(): void {
    if (this.job) this.channel?.postMessage({ kind: "left", job: this.job, page: this.page } satisfies Word);
    this.job = undefined;
    this.others.clear();
  }

  private hear(word: Word): void {
    if (word.job !== this.job || word.page === this.page) return;
    if (word.kind === "wrote") this.wrote(word.revision);
    if (word.kind === "open")
      this.channel?.postMessage({ kind: "also", job: word.job, page: this.page } satisfies Word);
    const before = this.others.size;
    if (word.kind === "left") this.others.delete(word.page);
    else this.others.add(word.page);
    if (this.others.size !== before) this.changed();
  }
}
