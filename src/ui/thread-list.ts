import { html, LitElement, nothing } from "lit";
import { customElement, query, state } from "lit/decorators.js";
import { type Coverage, knownThreads, type Reading, tryDesignation } from "../functions/threadlist.ts";
import { openPanel } from "./open-panel.ts";
import { panelStyle } from "./panel-style.ts";
import { threadListStyle } from "./thread-list-style.ts";
import { wordStyle } from "./word-style.ts";

const columns = ["Series", "Write it as", "Sizes and form from", "Limits of size", "How sure"] as const;

/** Which threads are known, from which source and how sure; and how a designation is read. */
@customElement("thread-list")
export class ThreadList extends LitElement {
  static override styles = [wordStyle, panelStyle, threadListStyle];

  /** The list is drawn when it is first asked for. */
  @state() private rows: readonly Coverage[] = [];
  @state() private tried: Reading | undefined;
  @query("dialog") private readonly dialog!: HTMLDialogElement;

  show(): void {
    if (this.rows.length === 0) this.rows = knownThreads();
    openPanel(this.dialog);
  }

  close(): void {
    this.dialog.close();
  }

  override render() {
    return html`<dialog aria-labelledby="title" @click=${this.onBackdrop}>
      <div class="head">
        <h1 id="title">Threads it knows</h1>
        <button class="act go" @click=${this.close}>Back</button>
      </div>
      <div class="body" tabindex="0" role="region" aria-label="List of threads">
        <div class="try">
          <label>
            Try a designation
            <input autocomplete="off" spellcheck="false" placeholder="1/2-12 BSW" @input=${this.onTry} />
          </label>
          ${this.answer()}
        </div>
        <table role="table" aria-labelledby="title">
          <thead role="rowgroup">
            <tr role="row">
              ${columns.map((column) => html`<th scope="col" role="columnheader">${column}</th>`)}
            </tr>
          </thead>
          <tbody role="rowgroup">
            ${this.rows.map((row) => this.row(row))}
          </tbody>
        </table>
      </div>
      <div class="foot">
        <p>Figures from memory carry a note in the sheet. A thread that carries load, pressure or people needs its governing standard.</p>
      </div>
    </dialog>`;
  }

  private answer() {
    const { tried } = this;
    return html`<p role="status" class=${tried?.read === false ? "not" : ""}>
      ${tried ? html`${tried.words}${tried.doubt === "" ? nothing : html`. <b>Note: ${tried.doubt}</b>`}` : nothing}
    </p>`;
  }

  private row({ series, example, sizes, limits, sure }: Coverage) {
    const cell = (label: string, text: string) =>
      html`<td role="cell" class=${/memory/i.test(text) ? "memory" : ""}>
        <span aria-hidden="true">${label}: </span>${text}
      </td>`;
    return html`<tr role="row">
      <th scope="row" role="rowheader">${series}</th>
      <td role="cell" class="written">
        <span aria-hidden="true">${columns[1]}: </span>${example.split(", ").map((each) => html`<bdi>${each}</bdi> `)}
      </td>
      ${cell(columns[2], sizes)} ${cell(columns[3], limits)} ${cell(columns[4], sure)}
    </tr>`;
  }

  private readonly onTry = ({ target }: Event) => {
    const text = (target as HTMLInputElement).value.trim();
    this.tried = text === "" ? undefined : tryDesignation(text);
  };

  private onBackdrop(event: MouseEvent) {
    // The dialog's children cover it, so that a click on itself is one outside.
    if (event.target === this.dialog) this.close();
  }
}

declare global {
  interface HTMLElementTagNameMap {
    "thread-list": ThreadList;
  }
}
