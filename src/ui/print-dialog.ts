import { html, LitElement } from "lit";
import { customElement, property, query } from "lit/decorators.js";
import { openPanel } from "./open-panel.ts";
import { panelStyle } from "./panel-style.ts";
import { papers } from "./paper.ts";
import type { PrintChoice } from "./paper-acts.ts";
import { wordStyle } from "./word-style.ts";

/** Asks what of the job goes on which paper. Fires `choice` with what was changed, and `print`. */
@customElement("print-dialog")
export class PrintDialog extends LitElement {
  static override styles = [wordStyle, panelStyle];

  @property({ attribute: false }) choice: PrintChoice | undefined;
  @property() sheet = "";
  /** Name of the range that is chosen in the grid. */
  @property() range = "";
  @property() remark = "";
  @query("dialog") private readonly dialog!: HTMLDialogElement;

  get open(): boolean {
    return this.dialog.open;
  }

  show(): void {
    openPanel(this.dialog);
  }

  override render() {
    const { choice } = this;
    return html`<dialog aria-labelledby="title">
      <div class="head"><h1 id="title">Print</h1></div>
      <div class="body">
        ${
          choice &&
          html`<fieldset>
              <legend>What</legend>
              ${this.radio("what", "sheet", `this sheet, ${this.sheet}`)}
              ${this.radio("what", "range", `what is chosen, ${this.range}`)} ${this.radio("what", "job", "every sheet of the job")}
            </fieldset>
            <fieldset>
              <legend>Paper</legend>
              ${Object.keys(papers).map((paper) => this.radio("paper", paper, paper))}
              ${this.check("landscape", "across the long side")}
            </fieldset>
            <fieldset>
              <legend>Look</legend>
              ${this.check("toWidth", "scaled to the width of the page")} ${this.check("grid", "lines of the grid")}
              ${this.check("headings", "letters and numbers, on every page")}
            </fieldset>
            <p class="remark" role="status">${this.remark}</p>`
        }
      </div>
      <div class="foot">
        <button class="act" @click=${() => this.dialog.close()}>Back to the job</button>
        <button class="act go" @click=${() => this.dispatchEvent(new CustomEvent("print"))}>Print</button>
      </div>
    </dialog>`;
  }

  private radio(part: "what" | "paper", value: string, label: string) {
    return html`<label
      ><input
        type="radio"
        name=${part}
        .checked=${this.choice?.[part] === value}
        @change=${() => this.change({ [part]: value })}
      />${label}</label
    >`;
  }

  private check(part: "landscape" | "toWidth" | "grid" | "headings", label: string) {
    return html`<label
      ><input
        type="checkbox"
        .checked=${this.choice?.[part] ?? false}
        @change=${(event: Event) => this.change({ [part]: (event.target as HTMLInputElement).checked })}
      />${label}</label
    >`;
  }

  private change(choice: Partial<PrintChoice>) {
    this.dispatchEvent(new CustomEvent<Partial<PrintChoice>>("choice", { detail: choice }));
  }
}

declare global {
  interface HTMLElementTagNameMap {
    "print-dialog": PrintDialog;
  }
}
