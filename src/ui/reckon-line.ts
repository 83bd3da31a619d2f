import { css, html, LitElement, nothing, type PropertyValues } from "lit";
import { customElement, property, state } from "lit/decorators.js";
import { grouped } from "../job/grouped.ts";
import type { Job } from "../job/job.ts";
import { wordStyle } from "./word-style.ts";

/** Values that take longer than this to come are told of, ms. */
const patience = 300;

/** How far values are that have still to come, in the notes line, with a word to stop it. Says nothing where they are quick. */
@customElement("reckon-line")
export class ReckonLine extends LitElement {
  static override styles = [
    wordStyle,
    css`
      :host {
        display: block;
      }
      .line {
        display: flex;
        flex-wrap: wrap;
        gap: 2px var(--s3);
        align-items: center;
        margin-bottom: 4px;
        font-weight: 700;
      }
      progress {
        width: 120px;
        height: 10px;
        accent-color: var(--blue);
      }
      .act {
        min-height: max(26px, var(--target) - 8px);
      }
    `,
  ];

  @property({ attribute: false }) job: Job | undefined;
  /** True once it has taken longer than anyone would wait unasked. */
  @state() private told = false;
  @state() private said = "";
  private timer: ReturnType<typeof setTimeout> | undefined;
  private stopJob: (() => void) | undefined;

  override disconnectedCallback(): void {
    this.stopJob?.();
    this.stopJob = undefined;
    clearTimeout(this.timer);
    super.disconnectedCallback();
  }

  protected override willUpdate(changed: PropertyValues<this>): void {
    if (!changed.has("job") && this.stopJob) return;
    this.stopJob?.();
    this.stopJob = this.job?.subscribe(() => this.follow());
    this.follow();
  }

  override render() {
    const reckoning = this.told ? this.job?.reckoning : undefined;
    return html`${
      reckoning
        ? html`<div class="line">
            <span>${reckoning.stopped ? "Stopped" : "Reckoning"}${amount(reckoning)}</span>
            <progress
              aria-label="Values reckoned"
              max=${reckoning.of || 1}
              value=${reckoning.of > reckoning.done || reckoning.stopped ? reckoning.done : nothing}
            ></progress>
            <button
              class="act"
              @click=${() => (reckoning.stopped ? this.job?.goOnReckoning() : this.job?.stopReckoning())}
            >
              ${reckoning.stopped ? "Go on" : "Stop"}
            </button>
          </div>`
        : nothing
    }
      <span class="sr" role="status">${this.said}</span>`;
  }

  private follow() {
    const reckoning = this.job?.reckoning;
    if (!reckoning) {
      clearTimeout(this.timer);
      this.timer = undefined;
      if (this.told) this.said = "All values reckoned.";
      this.told = false;
    } else if (!this.told) {
      this.timer ??= setTimeout(() => {
        this.told = true;
        this.said =
          reckoning.of > reckoning.done ? `Reckoning ${grouped(reckoning.of)} values.` : "Reckoning.";
      }, patience);
    } else if (reckoning.stopped) this.said = "Stopped. What is slanted is not reckoned yet.";
    this.requestUpdate();
  }
}

/** After an edit nobody knows beforehand how many values it reaches: then only those that are done are told. */
function amount({ done, of }: NonNullable<Job["reckoning"]>): string {
  if (of > done) return `, ${grouped(done)} of ${grouped(of)} values`;
  return done > 0 ? `, ${grouped(done)} values so far` : "";
}

declare global {
  interface HTMLElementTagNameMap {
    "reckon-line": ReckonLine;
  }
}
