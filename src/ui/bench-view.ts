import { html, LitElement, nothing, type TemplateResult } from "lit";
import { customElement, property, query, state } from "lit/decorators.js";
import { type DialTurn, dialFace } from "../drawing/dial-face.ts";
import { type Stair, staircase, stairHeight, stairWidth } from "../drawing/staircase.ts";
import { drawingStyle } from "../drawing/style.ts";
import { type BenchFact, type BenchReading, stepName } from "../job/bench.ts";
import { type Step, type Steps, stopText } from "../job/steps.ts";
import { benchMeasureStyle } from "./bench-measure-style.ts";
import { benchStyle } from "./bench-style.ts";
import { wordStyle } from "./word-style.ts";

export type BenchAct =
  | { readonly act: "go"; readonly at: number }
  | { readonly act: "reading"; readonly text: string }
  | { readonly act: "leave" };

/** What the bench view shows of the job. */
export interface BenchJob {
  readonly plan: Steps;
  readonly facts: readonly BenchFact[];
  readonly verdict: readonly BenchFact[];
  readonly readings: readonly BenchReading[];
  readonly takesReadings: boolean;
  readonly unit: string;
  /** The groove in layers, when the job has that drawing. */
  readonly figure: TemplateResult | undefined;
}

const backKeys = new Set(["ArrowLeft", "ArrowUp", "Backspace", "PageUp"]);
const quietKeys = new Set([
  "Tab",
  "Shift",
  "Control",
  "Alt",
  "Meta",
  "CapsLock",
  "Escape",
  "ContextMenu",
  "Dead",
]);

/** One pass at a time, in figures that are read at arm's length. Fires `bench` with what was asked for. */
@customElement("bench-view")
export class BenchView extends LitElement {
  static override styles = [wordStyle, drawingStyle, benchStyle, benchMeasureStyle];

  @property({ attribute: false }) job: BenchJob | undefined;
  /** Index of the step in hand. */
  @property({ type: Number }) at = 0;
  /** False where the screen may go dark by itself. */
  @property({ type: Boolean }) awake = false;
  @state() private measuring = false;
  @query("dialog") private readonly dialog!: HTMLDialogElement;
  @query(".next") private readonly nextPad!: HTMLButtonElement | null;
  @query("input") private readonly field!: HTMLInputElement | null;

  /** A plan that got shorter under the person's hand ends with its last step. */
  private get here(): number {
    return Math.max(0, Math.min(this.at, (this.job?.plan.steps.length ?? 1) - 1));
  }

  get open(): boolean {
    return this.dialog.open;
  }

  show(): void {
    this.measuring = false;
    if (!this.dialog.open) this.dialog.showModal();
  }

  protected override updated(): void {
    // It opens empty and is filled by the next drawing of the page; only then is there something to hold the focus.
    if (this.dialog.open && !(this.renderRoot as ShadowRoot).activeElement?.matches("button, input"))
      this.nextPad?.focus();
  }

  close(): void {
    this.dialog.close();
  }

  override render() {
    const { job } = this;
    return html`<dialog
      aria-label="Bench"
      @keydown=${this.onKey}
      @cancel=${this.onCancel}
      @close=${() => this.ask({ act: "leave" })}
    >
      ${job ? (job.plan.steps.length > 0 ? this.bench(job) : this.nothingToDo(job)) : nothing}
    </dialog>`;
  }

  private nothingToDo({ plan }: BenchJob) {
    return html`<div class="none">
      <h1>No passes to show</h1>
      <p>${plan.trouble ?? ""}.</p>
      <p>The bench view follows the block of PASS.PLAN in a range named plan.</p>
      <button class="act go" @click=${() => this.close()}>Leave</button>
    </div>`;
  }

  private bench(job: BenchJob) {
    const { steps, perTurn, depth } = job.plan;
    const step = steps[this.here]!;
    const before = steps[this.here - 1];
    const after = steps[this.here + 1];
    return html`
      ${this.pad("back", "Back", before, perTurn)}
      <div class="top">
        <h1>${capital(stepName(step))} <small>${this.ofHowMany(step, steps)}</small></h1>
        ${this.stairs(steps, depth)}
        ${job.takesReadings ? html`<button class="act" aria-expanded=${this.measuring} @click=${this.turnOver}>Measure</button>` : nothing}
        <button class="act" @click=${() => this.close()}>Leave</button>
      </div>
      <div class="main">${this.measuring ? this.measure(job) : this.winding(step, perTurn)}</div>
      <div class="facts">
        ${
          step.depth === undefined
            ? nothing
            : html`<dl><dt>Depth after</dt><dd>${depthText(step.depth, job.unit)}<small>of ${depthText(depth ?? 0, job.unit)} ${job.unit}</small><small>${depthText(Math.max(0, (depth ?? 0) - step.depth), job.unit)} left</small></dd></dl>`
        }
        ${job.facts.map(({ label, value }) => html`<dl><dt>${label}</dt><dd>${value}</dd></dl>`)}
        ${job.figure ? html`<div class="groove">${job.figure}</div>` : nothing}
      </div>
      <div class="saybar"><i class="hatch" aria-hidden="true"></i><span>${sayings[step.kind]}${this.awake ? "" : " The screen may go dark: this browser does not keep it lit."}</span></div>
      ${this.pad("next", "Next", after, perTurn)}
      <p class="sr" role="status">${this.spoken(step, perTurn)}</p>
    `;
  }

  private pad(side: "back" | "next", word: string, step: Step | undefined, perTurn: number | undefined) {
    const to = side === "back" ? this.here - 1 : this.here + 1;
    const edge = side === "back" ? "first step" : "last step: done";
    const points = side === "back" ? "M56 8L16 48L56 88" : "M16 8L56 48L16 88";
    return html`<button class="pad ${side}" aria-disabled=${step ? nothing : "true"} @click=${() => step && this.go(to)}>
      <svg viewBox="0 0 72 96" aria-hidden="true"><path d=${points} fill="none" stroke="currentColor" stroke-width="12" /></svg>
      ${word}<span>${step ? stepName(step) : edge}<br />${step?.to ? stopText(step.to, step.kind === "slide" ? perTurn : undefined) : nothing}</span>
    </button>`;
  }

  private stairs(steps: readonly Step[], depth: number | undefined) {
    const stairs = steps.map((step, index): Stair => {
      const cuts = step.kind === "slide" || step.kind === "straight in";
      const letter = { scratch: "", slide: "", "straight in": "X", spring: "S", measure: "M" }[step.kind];
      return {
        reach: cuts && depth ? (step.depth ?? 0) / depth : step.kind === "scratch" ? 0.05 : undefined,
        letter,
        state: index < this.here ? "done" : index === this.here ? "next" : "to come",
      };
    });
    return html`<svg class="stairs" viewBox="0 0 ${stairWidth(stairs.length)} ${stairHeight}" role="img" aria-label="Step ${this.here + 1} of ${steps.length}">
      ${staircase(stairs)}
    </svg>`;
  }

  private winding(step: Step, perTurn: number | undefined) {
    if (!step.to || !step.from) return html`<div class="words"><p>${capital(step.what)}</p></div>`;
    const cross = step.kind === "straight in";
    const turn: DialTurn | undefined =
      perTurn === undefined || cross
        ? undefined
        : { perTurn, from: step.from.division, to: step.to.division, by: step.wind ?? 0 };
    const big = (figure: number, word: string) =>
      html`<div class="big"><b>${figure}</b><span>${word}</span></div>`;
    return html`
      ${turn ? html`<svg class="dial" viewBox="0 0 400 400" role="img" aria-label="Dial: from ${turn.from} on by ${turn.by} to ${turn.to}">${dialFace(turn)}</svg>` : nothing}
      <div class="readout">
        <p>Wind the ${cross ? "cross slide" : "top slide"} to</p>
        ${turn ? big(step.to.turns, "turn +") : nothing} ${big(step.to.division, "divisions")}
        <p class="add">
          from ${stopText(step.from, turn ? perTurn : undefined)}, on by <b>${step.wind ?? 0}</b>
        </p>
      </div>
    `;
  }

  private measure(job: BenchJob) {
    return html`<form class="measure" @submit=${this.keepReading}>
      <div>
        <p>Spindle stopped and isolated, thread deburred and clean.</p>
        <label>Reading over the wires, ${job.unit}
          <input inputmode="decimal" autocomplete="off" spellcheck="false" />
        </label>
        <div class="acts"><button class="act go">Keep</button><button class="act" type="button" @click=${this.turnOver}>Drop</button></div>
      </div>
      <dl class="verdict">${job.verdict.map(({ label, value }) => html`<div><dt>${label}</dt><dd>${value}</dd></div>`)}</dl>
      ${
        job.readings.length > 0
          ? html`<table>
              <caption>Readings so far</caption>
              <tbody>${job.readings.map(({ after, reading }) => html`<tr><th scope="row">${after}</th><td>${reading}</td></tr>`)}</tbody>
            </table>`
          : nothing
      }
    </form>`;
  }

  private ofHowMany(step: Step, steps: readonly Step[]) {
    const same = steps.filter(({ kind }) => kind === step.kind);
    if (step.kind === "slide") return `of ${same.length}`;
    return same.length > 1 ? `${same.indexOf(step) + 1} of ${same.length}` : nothing;
  }

  private spoken(step: Step, perTurn: number | undefined): string {
    const name = capital(stepName(step));
    if (!step.to) return `${name}: ${step.what}`;
    const turns = perTurn !== undefined && step.kind === "slide" ? `${step.to.turns} turn plus ` : "";
    return `${name}: wind on by ${step.wind} divisions, to ${turns}${step.to.division}`;
  }

  private readonly onKey = (event: KeyboardEvent) => {
    const target = event.composedPath()[0];
    if (target instanceof HTMLInputElement || event.ctrlKey || event.metaKey || event.altKey) return;
    // A key that is held down must not run through the passes.
    if (event.repeat || quietKeys.has(event.key) || /^F\d/.test(event.key)) return;
    const presses = target instanceof HTMLButtonElement && (event.key === "Enter" || event.key === " ");
    if (presses) return;
    event.preventDefault();
    if (event.key.toLowerCase() === "m" && this.job?.takesReadings) this.turnOver();
    else this.go(this.here + (backKeys.has(event.key) ? -1 : 1));
  };

  private readonly onCancel = (event: Event) => {
    if (!this.measuring) return;
    event.preventDefault();
    this.turnOver();
  };

  private readonly turnOver = () => {
    this.measuring = !this.measuring;
    void this.updateComplete.then(() => (this.measuring ? this.field : this.nextPad)?.focus());
  };

  private readonly keepReading = (event: Event) => {
    event.preventDefault();
    const text = this.field?.value.trim() ?? "";
    if (text === "") return;
    this.ask({ act: "reading", text });
    if (this.field) this.field.value = "";
  };

  private go(to: number) {
    const last = (this.job?.plan.steps.length ?? 1) - 1;
    if (to < 0 || to > last) return;
    this.measuring = false;
    this.ask({ act: "go", at: to });
  }

  private ask(act: BenchAct) {
    this.dispatchEvent(new CustomEvent<BenchAct>("bench", { detail: act }));
  }
}

const windOn =
  "Half nuts open, tool clear, carriage back: then wind on. Spindle stopped before you measure or touch the thread.";
const sayings: Readonly<Record<Step["kind"], string>> = {
  scratch: "A scratch only: stop the spindle, then hold a pitch gauge to it before you go on.",
  slide: windOn,
  measure: "Stop and isolate the spindle. Deburr, then measure. No hand near the work while it turns.",
  "straight in":
    "The top slide stays where it is. The cross slide counts from its own touch-off. Spindle stopped before you touch the thread.",
  spring: "The same reading again, until no chip comes. Spindle stopped before you touch the thread.",
};

function capital(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1);
}

function depthText(depth: number, unit: string): string {
  return depth.toFixed(unit === "in" ? 4 : 3);
}

declare global {
  interface HTMLElementTagNameMap {
    "bench-view": BenchView;
  }
}
