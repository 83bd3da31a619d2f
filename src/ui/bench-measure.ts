/** The side of the bench view that takes a reading: the limits, the field, and what the reading asks for. */
import { html, nothing, type TemplateResult } from "lit";
import type { BenchJob } from "./bench-view.ts";
import { doubtWords } from "./bench-words.ts";

export interface MeasureForm {
  /** What the reading asks for, in sentences; "" when there was none here. */
  readonly asks: string;
  /** Ends measuring; left out where the step is to measure. */
  readonly drop: (() => void) | undefined;
  readonly keep: (event: Event) => void;
  /** Takes a reading out of the log, by its row there. */
  readonly takeOut: (index: number) => void;
}

export function measureForm(job: BenchJob, { asks, drop, keep, takeOut }: MeasureForm): TemplateResult {
  const { proof, problem } = job;
  const proven = proof.state === "in limits";
  return html`<form class="measure" @submit=${keep}>
    <div class="take">
      <label>Reading, ${job.unit}
        <input inputmode="decimal" autocomplete="off" spellcheck="false" enterkeyhint="done" aria-describedby="problem" aria-invalid=${problem ? "true" : nothing} />
      </label>
      <div class="acts">
        <button class="act go">Keep</button>
        ${drop ? html`<button class="act" type="button" @click=${drop}>Drop</button>` : nothing}
      </div>
      <p class="problem" id="problem" role="alert">${problem}</p>
      ${proofWords(job, asks)}
    </div>
    <dl class="verdict ${proven ? "proven" : ""}">${job.verdict.map(({ label, value }) => html`<div><dt>${label}</dt><dd>${value}</dd></div>`)}</dl>
    ${
      job.readings.length > 0
        ? html`<table>
            <caption>Readings so far</caption>
            <tbody>${job.readings.map(({ after, reading, index, forOther }) => html`<tr class=${forOther ? "other" : ""}><th scope="row">${after}</th><td>${reading}</td>${forOther ? html`<td>of another thread or wire</td>` : html`<td><button class="act" type="button" aria-label="Take out ${reading} after ${after}" @click=${() => takeOut(index)}>Take out</button></td>`}</tr>`)}</tbody>
          </table>`
        : nothing
    }
  </form>`;
}

/** What is proven, or still to be, and what the reading asks for. */
export function proofWords({ proof, doubt, unit }: BenchJob, asks: string): TemplateResult {
  const kind = doubt ? "doubted" : ({ "in limits": "holds", past: "wrong" }[proof.state as string] ?? "open");
  return html`<p class="proof ${kind}" role="status">${proof.words}${doubt ? html` <strong>${doubtWords(doubt, unit)}</strong>` : nothing}${asks === "" ? nothing : html` <b>${asks}</b>`}</p>`;
}
