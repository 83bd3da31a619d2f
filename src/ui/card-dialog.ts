import { css, html, LitElement, nothing, type TemplateResult } from "lit";
import { customElement, property, query, state } from "lit/decorators.js";
import { drawingStyle } from "../drawing/style.ts";
import { openPanel } from "./open-panel.ts";
import { panelStyle } from "./panel-style.ts";
import { paperColours } from "./paper-style.ts";
import { cardStyle } from "./shop-card-style.ts";
import { wordStyle } from "./word-style.ts";

/** Shows the shop card as it will stand on paper. Fires `print`. */
@customElement("card-dialog")
export class CardDialog extends LitElement {
  static override styles = [
    wordStyle,
    panelStyle,
    drawingStyle,
    cardStyle,
    css`
      dialog {
        width: min(calc(148mm + 72px), 100vw - 16px);
        background: var(--desk);
      }
      .body {
        justify-content: start;
        padding: var(--s4);
        margin: 0 auto;
        max-width: 100%;
      }
      .paper {
        ${paperColours}
        display: grid;
        gap: var(--s4);
      }
      @media (max-width: 640px) {
        .paper {
          zoom: 0.62;
        }
        .body {
          padding: var(--s2);
        }
      }
    `,
  ];

  /** Makes the pages of the card; asked for only while it is shown. */
  @property({ attribute: false }) pages: (() => TemplateResult[]) | undefined;
  @state() private shown = false;
  @query("dialog") private readonly dialog!: HTMLDialogElement;

  get open(): boolean {
    return this.dialog.open;
  }

  show(): void {
    this.shown = true;
    openPanel(this.dialog);
  }

  override render() {
    return html`<dialog aria-labelledby="title" @close=${() => (this.shown = false)}>
      <div class="head">
        <h1 id="title">Card</h1>
        <button class="act" @click=${() => this.dialog.close()}>Back to the job</button>
        <button class="act go" @click=${() => this.dispatchEvent(new CustomEvent("print"))}>Print the card</button>
      </div>
      <div class="body" tabindex="0" role="region" aria-label="The card, A5">
        ${this.shown && this.pages ? html`<div class="paper">${this.pages()}</div>` : nothing}
      </div>
    </dialog>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    "card-dialog": CardDialog;
  }
}
