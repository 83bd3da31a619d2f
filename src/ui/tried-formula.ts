/**
 * What the formula that is being typed would give. It is reckoned elsewhere and may take its time: one question is open at
 * a time, and what was typed meanwhile is asked when that is answered, so that no letter makes the edit itself wait.
 */
import type { CellValue } from "../engine/values.ts";
import type { Job } from "../job/job.ts";

type Asked = { readonly of: string; readonly document: unknown };

export class TriedFormula {
  private asked: Asked | undefined;
  private answered: Asked | undefined;
  private value: CellValue | undefined;
  private open: object | undefined;

  constructor(private readonly told: () => void) {}

  /** Nothing is typed any more. */
  forget(): void {
    this.asked = this.answered = this.value = this.open = undefined;
  }

  /** The value known last, `late` while it is that of an earlier text or of the job as it was. */
  of(job: Job, formula: string): { readonly value: CellValue | undefined; readonly late: boolean } {
    if (this.asked?.of !== formula || this.asked.document !== job.document) {
      this.asked = { of: formula, document: job.document };
      if (!this.open) void this.ask(job);
    }
    return { value: this.value, late: this.answered !== this.asked };
  }

  private async ask(job: Job): Promise<void> {
    const open = {};
    this.open = open;
    while (this.asked && this.answered !== this.asked) {
      const { asked } = this;
      const value = await job.evaluate(asked.of).catch(() => undefined);
      if (this.open !== open) return;
      this.value = Array.isArray(value) ? value[0]?.[0] : value;
      this.answered = asked;
      this.told();
    }
    this.open = undefined;
  }
}
