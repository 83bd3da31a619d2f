import { html, LitElement, nothing } from "lit";
import { customElement, property, query, state } from "lit/decorators.js";
import { isRequired, type Param, type SheetFunction, signature } from "../functions/declare.ts";
import { findFunctions, type JobStep, jobSteps } from "../functions/steps.ts";
import { guideStyle } from "./guide-style.ts";
import { openPanel } from "./open-panel.ts";
import { panelStyle } from "./panel-style.ts";
import { wordStyle } from "./word-style.ts";

/** Every function by job step and by name, with its words, an example and its source. Fires `example` with a formula. */
@customElement("guide-dialog")
export class GuideDialog extends LitElement {
  static override styles = [wordStyle, panelStyle, guideStyle];

  @property({ attribute: false }) functions: readonly SheetFunction[] = [];
  /** The cell that an example would go into. */
  @property() cell = "";
  @state() private step: JobStep | undefined;
  @state() private sought = "";
  @state() private chosen = "";
  @query("dialog") private readonly dialog!: HTMLDialogElement;
  @query("input") private readonly field!: HTMLInputElement;

  get open(): boolean {
    return this.dialog.open;
  }

  /** @param name function to start with */
  show(name = ""): void {
    if (name !== "") this.chosen = name;
    openPanel(this.dialog);
    this.field.select();
  }

  close(): void {
    this.dialog.close();
  }

  override render() {
    const found = findFunctions(this.functions, this.sought, this.step);
    const chosen = found.find(({ name }) => name === this.chosen) ?? found[0];
    return html`<dialog aria-labelledby="title">
      <div class="head">
        <h1 id="title">Functions</h1>
        <label class="find">Find
          <input type="search" autocomplete="off" spellcheck="false" .value=${this.sought} @input=${this.onFind} />
        </label>
        <button class="act" @click=${() => this.close()}>Back to the job</button>
      </div>
      <div class="guide">
        <div class="steps" role="group" aria-label="Steps of the job">
          ${this.stepWord(undefined, "All")} ${jobSteps.map((step) => this.stepWord(step, step.name))}
        </div>
        <ul class="list" aria-label="Functions found">
          ${found.map(
            (fn) => html`<li>
              <button aria-current=${fn === chosen} @click=${() => (this.chosen = fn.name)}>
                <b>${fn.name}</b><small>${fn.summary}</small>
              </button>
            </li>`,
          )}
        </ul>
        <div class="one" role="region" aria-label="Function" tabindex="0">
          ${chosen ? this.one(chosen) : html`<p class="none">No function has all of these words.</p>`}
        </div>
      </div>
      <div class="foot"><span role="status">${found.length} of ${this.functions.length} functions</span></div>
    </dialog>`;
  }

  private stepWord(step: JobStep | undefined, name: string) {
    return html`<button class="word" aria-pressed=${this.step === step} @click=${() => (this.step = step)}>${name}</button>`;
  }

  private one(fn: SheetFunction) {
    return html`<h2>${signature(fn)}</h2>
      <p>${fn.summary}</p>
      <h3>Arguments</h3>
      <dl>${fn.params.map((param) => html`<dt>${param.name}</dt><dd>${wordsOf(param)}</dd>`)}</dl>
      <h3>Gives</h3>
      <p>${fn.returns.doc}${fn.returns.unit ? ` Unit: ${fn.returns.unit}.` : ""}</p>
      <h3>Examples</h3>
      ${fn.examples.map(
        ({ formula, value }) => html`<div class="example">
          <code>${formula}</code><b>${value}</b>
          <button class="act" @click=${() => this.put(formula)}>
            Put into ${this.cell}<span class="sr">: ${formula}</span>
          </button>
        </div>`,
      )}
      ${
        fn.failures.length > 0
          ? html`<h3>If it cannot</h3>
              ${fn.failures.map(({ when, gives }) => html`<p>${gives} when ${when}</p>`)}`
          : nothing
      }
      <h3>Source</h3>
      <p>${fn.source}</p>`;
  }

  private readonly onFind = (event: Event) => {
    this.sought = (event.target as HTMLInputElement).value;
  };

  private put(formula: string) {
    this.dispatchEvent(new CustomEvent<string>("example", { detail: formula }));
  }
}

/** An argument in words: what it is, its unit, whether it may be left out. */
function wordsOf(param: Param): string {
  const options = param.options ? `One of ${param.options.join(", ")}.` : "";
  const left = isRequired(param)
    ? ""
    : param.fallback === undefined
      ? "May be left out."
      : `${param.fallback} when left out.`;
  return [param.doc, param.unit ? `Unit: ${param.unit}.` : "", options, left].filter(Boolean).join(" ");
}

declare global {
  interface HTMLElementTagNameMap {
    "guide-dialog": GuideDialog;
  }
}
