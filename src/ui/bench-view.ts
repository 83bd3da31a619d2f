import { html, LitElement, nothing, type PropertyValues, type TemplateResult } from "lit";
import { customElement, property, query, state } from "lit/decorators.js";
import { type DialTurn, dialFace } from "../drawing/dial-face.ts";
import { drawingStyle } from "../drawing/style.ts";
import { type BenchFact, type BenchReading, stepName } from "../job/bench.ts";
import type { Doubt } from "../job/bench-doubt.ts";
import type { Proof } from "../job/bench-proof.ts";
import { askedInWords } from "../job/bench-run.ts";
import { type Step, type Steps, stopText } from "../job/steps.ts";
import { backKeys, beginsNumber, isQuiet } from "./bench-keys.ts";
import { measureForm, proofWords } from "./bench-measure.ts";
import { benchMeasureStyle } from "./bench-measure-style.ts";
import { stairsOf } from "./bench-stairs.ts";
import { benchStyle } from "./bench-style.ts";
import {
  againQuestion,
  depthFact,
  ofHowMany,
  sayingOf,
  spokenWords,
  stepWords,
  warningWords,
} from "./bench-words.ts";
import { dialStyle } from "./dial-style.ts";
import { openPanel } from "./open-panel.ts";
import { capital } from "./sentence.ts";
import { wordStyle } from "./word-style.ts";

export type BenchAct =
  | { readonly act: "go"; readonly at: number }
  | { readonly act: "reading"; readonly text: string }
  | { readonly act: "take out"; readonly index: number }
  | { readonly act: "again" | "leave" };

/** What the bench view shows of the job. */
export interface BenchJob {
  readonly plan: Steps;
  readonly facts: readonly BenchFact[];
  readonly verdict: readonly BenchFact[];
  readonly readings: readonly BenchReading[];
  readonly takesReadings: boolean;
  readonly proof: Proof;
  /** Where the last reading does not go with what was wound. */
  readonly doubt: Doubt | undefined;
  /** Index of the step after which the last reading was taken. */
  readonly readAt: number | undefined;
  /** Why what was typed is no reading; "" when it is one. */
  readonly problem: string;
  /** The plan is another one than when the person last stood here. */
  readonly changed: boolean;
  /** For that reason it begins at the first step. */
  readonly startsAgain: boolean;
  /** That figures may be of before; "" where they are not. */
  readonly behind: string;
  /** The half nuts are never opened. */
  readonly closed: boolean;
  readonly unit: string;
  /** The groove in layers, when the job has that drawing. */
  readonly figure: TemplateResult | undefined;
}

/** A second press that comes sooner than this, ms, is a bounce of the hand, not a step. */
const bounce = 350;

/** One pass at a time, in figures that are read at arm's length. Fires `bench` with what was asked for. */
@customElement("bench-view")
export class BenchView extends LitElement {
  static override styles = [wordStyle, drawingStyle, benchStyle, dialStyle, benchMeasureStyle];

  @property({ attribute: false }) job: BenchJob | undefined;
  /** Index of the step in hand. */
  @property({ type: Number }) at = 0;
  /** False where the screen may go dark by itself. */
  @property({ type: Boolean }) awake = false;
  @state() private measuring = false;
  /** Whether to start again is being asked. */
  @state() private asking = false;
  @query("dialog") private readonly dialog!: HTMLDialogElement;
  @query(".pad.next") private readonly nextPad!: HTMLButtonElement | null;
  @query("input") private readonly field!: HTMLInputElement | null;

  private pressed = Number.NEGATIVE_INFINITY;
  /** A reading was handed in, and the answer is awaited. */
  private kept = false;

  /** A plan that got shorter under the person's hand ends with its last step. */
  private get here(): number {
    return Math.max(0, Math.min(this.at, (this.job?.plan.steps.length ?? 1) - 1));
  }

  /** The field stands open where the step is to measure. */
  private get takes(): boolean {
    const { job } = this;
    if (!job?.takesReadings) return false;
    return this.measuring || job.plan.steps[this.here]?.kind === "measure";
  }

  get open(): boolean {
    return this.dialog.open;
  }

  show(): void {
    this.measuring = false;
    this.asking = false;
    openPanel(this.dialog);
  }

  protected override updated(changed: PropertyValues<this>): void {
    if (!this.dialog.open) return;
    if (this.kept && changed.has("job")) this.answer();
    const { takes, field } = this;
    if (changed.has("at") && takes && document.documentElement.dataset.hand === "desk") field?.focus();
    // It opens empty and is filled by the next drawing of the page; only then is there something to hold the focus.
    if (!(this.renderRoot as ShadowRoot).activeElement?.matches("button, input")) this.nextPad?.focus();
  }

  /** After a reading that is one, the next key goes on with what it asks for. */
  private answer() {
    this.kept = false;
    if (this.job?.problem) return this.field?.focus();
    if (this.field) this.field.value = "";
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
    const { steps, perTurn } = job.plan;
    const step = steps[this.here]!;
    return html`
      ${this.back(steps[this.here - 1], perTurn)}
      <div class="top">
        <h1>${capital(stepName(step))} <small>${ofHowMany(step, steps, this.here)}</small></h1>
        ${stairsOf(job.plan, this.here)}
        ${job.takesReadings && step.kind !== "measure" ? html`<button class="act" aria-expanded=${this.measuring} @click=${this.turnOver}>Measure</button>` : nothing}
        ${this.here > 0 || this.asking ? html`<button class="act again" aria-expanded=${this.asking} @click=${this.turnAsking}>Start again<span class="sr"> at pass 1</span></button>` : nothing}
        <button class="act" @click=${() => this.close()}>Leave</button>
      </div>
      <div class="main">${this.takes ? this.measure(job, step) : this.winding(job, step, perTurn)}</div>
      <div class="facts ${this.takes ? "measures" : ""}">
        ${depthFact(job, step, this.here)}
        ${job.facts.map(({ label, value }) => html`<dl><dt>${label}</dt><dd>${value}</dd></dl>`)}
        ${job.figure ? html`<div class="groove">${job.figure}</div>` : nothing}
      </div>
      <div class="saybar"><i class="hatch" aria-hidden="true"></i><span>${this.asking ? againQuestion(job, this.startAgain, this.turnAsking) : html`${warningWords(job, this.takes)}${sayingOf(step, job)}${this.awake ? "" : " The screen may go dark: this browser does not keep it lit."}`}</span></div>
      ${this.next(job, steps[this.here + 1], perTurn)}
      <p class="sr" role="status">${spokenWords(step, perTurn, job.plan.back)}</p>
    `;
  }

  private back(step: Step | undefined, perTurn: number | undefined) {
    const press = step && ((event: MouseEvent) => this.press(event, this.here - 1));
    return this.pad({
      side: "back",
      word: "Back",
      says: step ? stepWords(step, perTurn) : "first step",
      press,
    });
  }

  /** At the end nothing is done before a reading in its limits says so. */
  private next(job: BenchJob, step: Step | undefined, perTurn: number | undefined) {
    if (step) {
      const unread =
        job.takesReadings && job.plan.steps[this.here]?.kind === "measure" && job.readAt !== this.here;
      const says = unread ? html`${stepWords(step, perTurn)}<br />no reading yet` : stepWords(step, perTurn);
      return this.pad({
        side: "next",
        word: "Next",
        says,
        press: (event) => this.press(event, this.here + 1),
      });
    }
    const { state } = job.proof;
    const end = (word: string, why: string) =>
      this.pad({
        side: "next",
        word,
        says: html`${why}<br />leave the bench`,
        press: (event) => this.leave(event),
      });
    if (state === "in limits") return end("Done", "in its limits");
    if (state === "past") return end("Stop", "past its limits");
    if (!job.takesReadings) return end("Leave", "last step, not proven");
    return this.pad({
      side: "next",
      word: "Measure",
      says: "not proven: measure",
      press: () => this.toField(),
    });
  }

  private pad({ side, word, says, press }: Pad) {
    const points = side === "back" ? "M56 8L16 48L56 88" : "M16 8L56 48L16 88";
    return html`<button class="pad ${side}" aria-disabled=${press ? nothing : "true"} @click=${press}>
      <svg viewBox="0 0 72 96" aria-hidden="true"><path d=${points} fill="none" stroke="currentColor" stroke-width="12" /></svg>
      ${word}<span>${says}</span>
    </button>`;
  }

  private winding(job: BenchJob, step: Step, perTurn: number | undefined) {
    if (!step.to || !step.from) {
      const last = this.here === job.plan.steps.length - 1;
      return html`<div class="words"><p>${capital(step.what)}</p>${last ? proofWords(job, "") : nothing}</div>`;
    }
    const cross = step.kind === "straight in";
    const turn: DialTurn | undefined =
      perTurn === undefined || cross
        ? undefined
        : {
            perTurn,
            from: step.from.shows ?? step.from.division,
            to: step.to.shows ?? step.to.division,
            by: step.wind ?? 0,
            back: job.plan.back,
          };
    const { back } = job.plan;
    const big = (figure: number, word: string) =>
      html`<div class="big"><b>${figure}</b><span>${word}</span></div>`;
    return html`
      ${turn ? html`<svg class="dial" viewBox="0 0 400 400" role="img" aria-label="Dial: from ${turn.from} ${back ? "back" : "on"} by ${turn.by} to ${turn.to}">${dialFace(turn)}</svg>` : nothing}
      <div class="readout">
        <p>Wind the ${cross ? "cross slide" : "top slide"} ${back ? "back to" : "to"}</p>
        ${turn ? big(step.to.turns, "turn +") : nothing} ${big(step.to.division, step.to.division === 1 ? "division" : "divisions")}
        <p class="add">
          from ${stopText(step.from, turn ? perTurn : undefined)}, ${back ? "back" : "on"} by <b>${step.wind ?? 0}</b>${step.to.shows === undefined ? nothing : html`<small>The dial runs down and shows ${step.to.shows}.</small>`}
        </p>
      </div>
    `;
  }

  private measure(job: BenchJob, step: Step) {
    const read = job.readAt === this.here;
    return measureForm(job, {
      asks: read ? askedInWords(job.plan.steps.slice(this.here + 1)) : "",
      drop: step.kind === "measure" ? undefined : this.turnOver,
      keep: this.keepReading,
      takeOut: (index) => {
        this.ask({ act: "take out", index });
        this.nextPad?.focus();
      },
    });
  }

  private readonly onKey = (event: KeyboardEvent) => {
    const target = event.composedPath()[0];
    const turns = event.key === "PageUp" || event.key === "PageDown";
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    // A browser lets no more than one close request be refused in a row: the key itself always can be.
    if (event.key === "Escape") return event.repeat ? event.preventDefault() : this.onCancel(event);
    const measures = event.key.toLowerCase() === "m";
    if (target instanceof HTMLInputElement && !turns) {
      // The hand is where M brings it.
      if (measures && target.value === "") event.preventDefault();
      return;
    }
    // A key that is held down must not run through the passes, nor press the pad again and again.
    if (event.repeat && event.key !== "Tab") event.preventDefault();
    if (event.repeat || isQuiet(event.key)) return;
    const presses = target instanceof HTMLButtonElement && (event.key === "Enter" || event.key === " ");
    if (presses) return;
    event.preventDefault();
    // What was asked waits for its answer.
    if (this.asking) return;
    if (beginsNumber(event.key)) this.begin(event.key);
    else if (measures && this.job?.takesReadings) this.toField();
    else this.go(this.here + (backKeys.has(event.key) ? -1 : 1));
  };

  private readonly onCancel = (event: Event): void => {
    if (this.asking) {
      event.preventDefault();
      this.turnAsking();
      return;
    }
    if (!this.measuring) return;
    event.preventDefault();
    this.turnOver();
  };

  private readonly turnOver = () => {
    this.measuring = !this.measuring;
    void this.updateComplete.then(() => (this.measuring ? this.field : this.nextPad)?.focus());
  };

  private toField() {
    if (!this.takes) this.turnOver();
    else this.field?.focus();
  }

  /** Opens the reading with what was typed; where none is taken that does nothing. */
  private begin(text: string) {
    if (!this.job?.takesReadings) return;
    this.toField();
    void this.updateComplete.then(() => {
      const { field } = this;
      if (!field) return;
      field.focus();
      field.setRangeText(text, field.value.length, field.value.length, "end");
    });
  }

  private press(event: MouseEvent, to: number) {
    if (!this.bounced(event)) this.go(to);
  }

  private leave(event: MouseEvent) {
    if (!this.bounced(event)) this.close();
  }

  /** A pad was pressed: twice in one blow of the hand is once. A key that presses it has no clicks to count. */
  private bounced({ detail }: MouseEvent): boolean {
    const now = performance.now();
    if (detail > 0 && now - this.pressed < bounce) return true;
    this.pressed = now;
    return false;
  }

  private readonly turnAsking = () => {
    this.asking = !this.asking;
    void this.updateComplete.then(() => {
      const answer = this.renderRoot.querySelector<HTMLElement>(this.asking ? ".answers .act" : ".again");
      (answer ?? this.nextPad)?.focus();
    });
  };

  private readonly startAgain = () => {
    this.asking = false;
    this.measuring = false;
    this.at = 0;
    this.ask({ act: "again" });
    void this.updateComplete.then(() => this.nextPad?.focus());
  };

  private readonly keepReading = (event: Event) => {
    event.preventDefault();
    const text = this.field?.value.trim() ?? "";
    if (text === "") return;
    this.ask({ act: "reading", text });
    this.kept = true;
  };

  private go(to: number) {
    const last = (this.job?.plan.steps.length ?? 1) - 1;
    if (to < 0 || to > last) return;
    this.measuring = false;
    this.asking = false;
    // At once: the next key may come before the page is drawn again.
    this.at = to;
    this.ask({ act: "go", at: to });
  }

  private ask(act: BenchAct) {
    this.dispatchEvent(new CustomEvent<BenchAct>("bench", { detail: act }));
  }
}

interface Pad {
  readonly side: "back" | "next";
  readonly word: string;
  readonly says: TemplateResult | string;
  /** Undefined when there is nothing to be had by pressing it. */
  readonly press: ((event: MouseEvent) => void) | undefined;
}

declare global {
  interface HTMLElementTagNameMap {
    "bench-view": BenchView;
  }
}
