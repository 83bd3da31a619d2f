/** Numbers typed into the fields of a panel. A formula is reckoned in a worker, and the panel is drawn anew when it has come. */
import type { Job } from "../job/job.ts";
import { numberFrom, plainNumber } from "../job/whatif-suggest.ts";

export class TypedNumbers {
  private job: Job | undefined;
  private known = new Map<string, number | undefined>();
  private readonly asked = new Map<string, Promise<void>>();

  constructor(private readonly panel: { requestUpdate(): void }) {}

  /** Undefined for what is no number, and for a formula that has been asked for. */
  of(job: Job, text: string, sheet: string): number | undefined {
    const plain = plainNumber(job, text);
    if (plain !== undefined || text.trim() === "") return plain;
    if (this.job !== job) {
      this.job = job;
      this.known.clear();
    }
    const key = `${sheet}!${text}`;
    if (!this.known.has(key) && !this.asked.has(key)) this.asked.set(key, this.ask(job, text, sheet, key));
    return this.known.get(key);
  }

  /** Settles when what has been asked for has come. */
  async settle(): Promise<void> {
    await Promise.all(this.asked.values());
  }

  /** The panel is opened anew: cells may have changed. */
  forget(): void {
    this.known.clear();
  }

  private async ask(job: Job, text: string, sheet: string, key: string): Promise<void> {
    const found = await numberFrom(job, text, sheet).catch(() => undefined);
    this.asked.delete(key);
    this.known.set(key, found);
    this.panel.requestUpdate();
  }
}
