/** What the panels Trial and Seek ask for, done with the job. */
import { takeFound } from "../job/solve-job.ts";
import type { TablePlan } from "../job/whatif.ts";
import type { PageActs } from "./page-acts.ts";
import type { Found } from "./seek-dialog.ts";

export class WhatIfActs {
  constructor(private readonly acts: PageActs) {}

  async showTrial(): Promise<void> {
    const { job, sheet, parts } = this.acts;
    const area = parts.element("sheet-grid")?.area;
    if (!job || !area || !this.acts.commit()) return;
    const panel = await parts.panel("trial-dialog");
    if (job === this.acts.job) panel?.show(job, sheet, area);
  }

  async showSeek(): Promise<void> {
    const { job, sheet, parts } = this.acts;
    const { place } = parts.desk;
    if (!job || !this.acts.commit()) return;
    const panel = await parts.panel("seek-dialog");
    if (job === this.acts.job) panel?.show(job, sheet, place);
  }

  /** Writes a table and goes to it. */
  make({ document, what, place }: TablePlan): void {
    this.acts.command(() => this.acts.job?.put(document, what));
    this.acts.choose(place.sheet);
    void this.acts.parts
      .draw()
      .then(() => this.acts.parts.element("sheet-grid")?.goTo(place.top, place.left, { focus: true }));
  }

  keep({ request, point }: Found): void {
    const { job } = this.acts;
    if (!job) return;
    this.acts.command(() => takeFound(job, request, point));
    this.acts.parts.element("sheet-grid")?.focus();
  }
}
