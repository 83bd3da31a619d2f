import { css, html, LitElement, nothing } from "lit";
import { customElement, property, query } from "lit/decorators.js";
import { openPanel } from "./open-panel.ts";
import { panelStyle } from "./panel-style.ts";
import { wordStyle } from "./word-style.ts";

/** A lathe to choose from. */
export interface LatheCard {
  readonly id: string;
  readonly name: string;
  /** What it is known by: leadscrew, dials, gears. */
  readonly facts: string;
  /** Kept on this device by the person, not shipped. */
  readonly mine: boolean;
}

export type LatheAct =
  | { readonly act: "take" | "open"; readonly id: string }
  | { readonly act: "keep"; readonly name: string };

/** The lathes at hand, to take one over into the job. Fires `lathe` with what was asked for. */
@customElement("lathe-dialog")
export class LatheDialog extends LitElement {
  static override styles = [
    wordStyle,
    panelStyle,
    css`
      dialog {
        width: min(760px, 100vw - 32px);
      }
      ul {
        display: grid;
        gap: var(--s3);
        margin: 0;
        padding: 0;
        list-style: none;
      }
      li {
        display: flex;
        flex-wrap: wrap;
        gap: var(--s2) var(--s4);
        align-items: center;
        padding: var(--s3);
        border: 1px solid var(--rule-2);
        background: var(--card);
      }
      li > div {
        flex: 1 1 260px;
      }
      li p,
      .body > p {
        margin: 0;
        font-size: var(--t-note);
        color: var(--ink-2);
      }
      .act {
        min-height: max(34px, var(--target));
        padding: 2px var(--s4);
      }
      form {
        display: flex;
        flex-wrap: wrap;
        gap: var(--s2) var(--s3);
        align-items: end;
        padding-top: var(--s3);
        border-top: 1px solid var(--rule-2);
      }
      form label {
        display: grid;
        flex: 1 1 220px;
        align-items: stretch;
      }
      form input {
        min-height: max(34px, var(--target));
        padding: 2px var(--s2);
        border: 0;
        border-bottom: 2px solid var(--blue);
        background: var(--blue-wash);
      }
    `,
  ];

  @property({ attribute: false }) lathes: readonly LatheCard[] = [];
  /** What the job takes from a lathe, in words; "" when it takes nothing. */
  @property() takes = "";
  @query("dialog") private readonly dialog!: HTMLDialogElement;
  @query("input") private readonly field!: HTMLInputElement | null;

  get open(): boolean {
    return this.dialog.open;
  }

  show(): void {
    openPanel(this.dialog);
  }

  close(): void {
    this.dialog.close();
  }

  override render() {
    return html`<dialog aria-labelledby="title">
      <div class="head">
        <h1 id="title">Lathe</h1>
        <button class="act" @click=${() => this.close()}>Back to the job</button>
      </div>
      <div class="body">
        <p>
          ${
            this.takes === ""
              ? "This job has no cells for a lathe. Name them as the lathe's sheet does: leadscrew, gears, slide_division, zero_line and so on."
              : `This job takes from a lathe: ${this.takes}. Every number then stands in whole divisions of that lathe.`
          }
        </p>
        <ul aria-label="Lathes">
          ${this.lathes.map(
            ({ id, name, facts, mine }) => html`<li>
              <div>
                <b>${name}</b>
                <p>${facts}${mine ? "" : "; invented"}</p>
              </div>
              <button class="act" @click=${() => this.ask({ act: "open", id })}>
                ${mine ? "Open its sheet" : "Start your own from it"}<span class="sr"> ${name}</span>
              </button>
              ${
                this.takes === ""
                  ? nothing
                  : html`<button class="act go" @click=${() => this.ask({ act: "take", id })}>Take over<span class="sr"> ${name}</span></button>`
              }
            </li>`,
          )}
        </ul>
        ${
          this.takes === ""
            ? nothing
            : html`<form @submit=${this.keep}>
                <label>Name of the lathe in this job<input autocomplete="off" spellcheck="false" /></label>
                <button class="act">Keep it as one of mine</button>
              </form>`
        }
      </div>
      <div class="foot"><p>What the machine's own manual says comes first.</p></div>
    </dialog>`;
  }

  private readonly keep = (event: Event) => {
    event.preventDefault();
    const name = this.field?.value.trim() ?? "";
    if (name === "") this.field?.focus();
    else this.ask({ act: "keep", name });
  };

  private ask(act: LatheAct) {
    this.dispatchEvent(new CustomEvent<LatheAct>("lathe", { detail: act }));
  }
}

declare global {
  interface HTMLElementTagNameMap {
    "lathe-dialog": LatheDialog;
  }
}
