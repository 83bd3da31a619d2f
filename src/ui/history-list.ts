import { css, html, LitElement, nothing } from "lit";
import { customElement, property, query } from "lit/decorators.js";
import type { Job } from "../job/job.ts";
import { openPanel } from "./open-panel.ts";
import { panelStyle } from "./panel-style.ts";
import { wordStyle } from "./word-style.ts";

/** Steps shown; the older ones are reached step by step with Undo. */
const mostSteps = 300;

/** What was done to the job since it was opened, newest first. Fires `history-go` with how many of the steps are to be done. */
@customElement("history-list")
export class HistoryList extends LitElement {
  static override styles = [
    wordStyle,
    panelStyle,
    css`
      ol {
        margin: 0;
        padding: 0;
        list-style: none;
      }
      li button {
        display: flex;
        gap: var(--s3);
        width: 100%;
        min-height: max(28px, var(--target));
        padding: 2px var(--s3);
        border: 0;
        border-bottom: 1px solid var(--rule);
        background: none;
        text-align: left;
        align-items: center;
        cursor: pointer;
        overflow-wrap: anywhere;
      }
      li button:hover {
        background: var(--blue-wash);
        color: var(--blue-deep);
      }
      [aria-current] {
        font-weight: 700;
        box-shadow: inset 5px 0 0 var(--blue);
      }
      .undone {
        color: var(--ink-2);
        font-style: italic;
      }
      .state {
        margin-left: auto;
        font-size: var(--t-label);
        white-space: nowrap;
      }
    `,
  ];

  @property({ attribute: false }) job: Job | undefined;
  @query("dialog") private readonly dialog!: HTMLDialogElement;

  show(): void {
    this.requestUpdate();
    openPanel(this.dialog);
  }

  override render() {
    const steps = this.job?.steps ?? [];
    const done = this.job?.stepsDone ?? 0;
    const rows = ["As it was opened", ...steps].map((what, index) => ({ what, index }));
    return html`<dialog aria-labelledby="title">
      <div class="head">
        <h1 id="title">History</h1>
        <button class="act go" @click=${() => this.dialog.close()}>Back to the job</button>
      </div>
      <div class="body" tabindex="0" role="region" aria-label="Steps">
        <p>Choose a step, and the job is as it was after it. What is undone can be done again until something else is done.</p>
        <ol aria-label="Steps, newest first">
          ${rows
            .reverse()
            .slice(0, mostSteps)
            .map(({ what, index }) => this.row(what, index, done))}
        </ol>
      </div>
    </dialog>`;
  }

  private row(what: string, index: number, done: number) {
    const here = index === done;
    return html`<li>
      <button class=${index > done ? "undone" : ""} aria-current=${here ? "step" : nothing} @click=${() => this.go(index)}>
        ${what}<span class="state">${here ? "the job now" : index > done ? "undone" : nothing}</span>
      </button>
    </li>`;
  }

  private go(index: number) {
    this.dispatchEvent(new CustomEvent<number>("history-go", { detail: index }));
    this.requestUpdate();
  }
}

declare global {
  interface HTMLElementTagNameMap {
    "history-list": HistoryList;
  }
}
