import { html, LitElement, nothing, type PropertyValues } from "lit";
import { customElement, property, query } from "lit/decorators.js";
import { cellName } from "../engine/address.ts";
import { type CellValue, isErrorValue } from "../engine/values.ts";
import { shownText } from "../job/format.ts";
import type { CellView, Job } from "../job/job.ts";
import { onSheet, referencesOf } from "../job/references.ts";
import { EditSession } from "./edit-session.ts";
import { entryStyle } from "./entry-style.ts";
import { editIntentOf } from "./grid-keys.ts";

/** References shown with their values; the inks and line patterns are four. */
const mostDimensions = 4;

/** Letters that may need more lines than a phone has for them. */
const longRemark = 90;

/**
 * The active cell as it was typed, what it gives, and under it the value of every cell that its formula names.
 * Editing here and in the cell is one edit, in the session that both share.
 */
@customElement("entry-line")
export class EntryLine extends LitElement {
  static override styles = entryStyle;

  @property({ attribute: false }) job: Job | undefined;
  @property({ attribute: false }) session = new EditSession();
  @query("input") private readonly input!: HTMLInputElement | null;

  private stopJob: (() => void) | undefined;

  override focus(): void {
    this.input?.focus();
  }

  override connectedCallback(): void {
    super.connectedCallback();
    this.session.addEventListener("change", this.onChange);
    this.follow();
  }

  override disconnectedCallback(): void {
    this.session.removeEventListener("change", this.onChange);
    this.stopJob?.();
    super.disconnectedCallback();
  }

  protected override willUpdate(changed: PropertyValues<this>): void {
    if (changed.has("session")) {
      changed.get("session")?.removeEventListener("change", this.onChange);
      this.session.addEventListener("change", this.onChange);
    }
    if (changed.has("job")) this.follow();
  }

  override render() {
    const { job, session } = this;
    const { sheet, row, column } = session.active;
    if (!job?.document.sheets.some(({ name }) => name === sheet)) return nothing;
    const view = job.cell(sheet, row, column);
    const { edit } = session;
    const text = edit?.text ?? view.text;
    return html`<section aria-label="Entry line" class=${edit ? "editing" : ""}>
      <div class="balloon"><b>${cellName(row, column)}</b></div>
      <input
        aria-label="Entry line"
        autocomplete="off"
        autocapitalize="off"
        spellcheck="false"
        ?readonly=${view.spilledFrom !== undefined}
        .value=${text}
        @input=${this.onInput}
        @focus=${this.onFocus}
        @blur=${this.onBlur}
        @keydown=${this.onKey}
      />
      ${this.gives(view, text)} ${this.lane(view, text)}
      ${
        edit
          ? html`<div class="acts">
              <button class="go" @pointerdown=${hold} @click=${() => session.leave({ rows: 1, columns: 0 })}>
                Keep <kbd aria-hidden="true">Enter</kbd>
              </button>
              <button @pointerdown=${hold} @click=${this.onDrop}>Drop <kbd aria-hidden="true">Esc</kbd></button>
            </div>`
          : nothing
      }
    </section>`;
  }

  /** The value that the cell shows; while a formula is typed, what it would give. */
  private gives(view: CellView, text: string) {
    const { job, session } = this;
    const value =
      session.edit && text.startsWith("=") ? this.tried(text) : session.edit ? undefined : view.value;
    const formula = text.startsWith("=") || view.spilledFrom !== undefined;
    if (value === undefined || value === null || (!formula && !isErrorValue(value))) {
      return html`<div class="gives"></div>`;
    }
    return html`<div class="gives" role="group" aria-label="Gives">
      <span class="u">gives</span>
      <b>${isErrorValue(value) ? value.error : shownText(value, view.format, job!.unit)}</b>
    </div>`;
  }

  /** A formula as far as it is typed; undefined while it does not read. */
  private tried(text: string): CellValue | undefined {
    const value = this.job!.evaluate(onSheet(text, this.session.active.sheet));
    if (Array.isArray(value)) return value[0]?.[0];
    return isErrorValue(value) ? undefined : value;
  }

  private lane(view: CellView, text: string) {
    const says: unknown[] = [];
    if (!this.session.edit && isErrorValue(view.value)) {
      const { error, message, from } = view.value;
      const place = from === undefined ? "" : ` It began in ${from}.`;
      says.push(html`<span class="wrong">${message === "" ? error : sentence(message)}${place}</span>`);
    }
    if (view.caution) says.push(html`<span class="caution">${sentence(view.caution)}</span>`);
    if (view.spilledFrom !== undefined)
      says.push(html`<span>Filled by the formula in ${view.spilledFrom}.</span>`);
    if (view.note) says.push(html`<span>${view.note}</span>`);
    if (view.choices?.length && this.session.edit)
      says.push(html`<span>One of: ${view.choices.join(", ")}</span>`);
    const dimensions = this.dimensions(text);
    // A long remark scrolls on a phone, and what scrolls must be reached by key.
    const long = (view.note?.length ?? 0) > longRemark;
    return html`<div class="lane ${this.session.edit ? "" : "whole"}" tabindex=${long ? 0 : nothing}>
      ${dimensions.length === 0 ? nothing : html`<ul class="dims" aria-label="Values in the formula">${dimensions}</ul>`}${says}
    </div>`;
  }

  private dimensions(text: string) {
    const { job, session } = this;
    return referencesOf(text, session.active.sheet, job!.document.names)
      .slice(0, mostDimensions)
      .map(({ text: name, sheet, top, left, bottom, right }, index) => {
        const cells = (bottom - top + 1) * (right - left + 1);
        const view =
          cells === 1 &&
          job!.document.sheets.some((one) => one.name === sheet) &&
          job!.cell(sheet, top, left);
        const value = view
          ? shownText(view.value, view.format, job!.unit) || "empty"
          : cells === 1
            ? "no such sheet"
            : `${cells} cells`;
        return html`<li class="dim a${index + 1}"><span>${name}</span><i aria-hidden="true"></i><b>${value}</b></li>`;
      });
  }

  private follow() {
    this.stopJob?.();
    this.stopJob = this.job?.subscribe(this.onChange);
  }

  private readonly onChange = () => this.requestUpdate();

  private readonly onInput = (event: Event) => {
    const text = (event.target as HTMLInputElement).value;
    if (!this.session.edit) this.session.begin(this.job!, { where: "line" });
    this.session.update({ text, where: "line" });
    this.dispatchEvent(new CustomEvent("cell-typing", { detail: { text }, bubbles: true, composed: true }));
  };

  private readonly onFocus = () => {
    if (this.session.edit) this.session.update({ where: "line" });
  };

  private readonly onBlur = (event: FocusEvent) => {
    const to = event.relatedTarget;
    const own = to instanceof Node && this.renderRoot.contains(to);
    if (this.session.edit?.where === "line" && document.hasFocus() && !own) this.session.commit();
  };

  private readonly onKey = (event: KeyboardEvent) => {
    if (event.isComposing) return;
    // Arrow keys move the caret here, whatever was typed in the cell before.
    const intent = editIntentOf(event, false);
    if (!intent || intent.act === "caret" || intent.act === "break") return;
    const { edit } = this.session;
    if (intent.act === "leave" && event.key === "Tab" && !edit) return;
    event.preventDefault();
    event.stopPropagation();
    if (intent.act === "leave") this.session.leave(intent.step);
    else this.onDrop();
  };

  private readonly onDrop = () => {
    this.session.drop();
    this.session.leave({ rows: 0, columns: 0 });
  };
}

// A press on a button must not take the focus from the text, which would keep it.
function hold(event: Event): void {
  event.preventDefault();
}

function sentence(text: string): string {
  const end = /[.!?]$/.test(text) ? "" : ".";
  return text.charAt(0).toUpperCase() + text.slice(1) + end;
}

declare global {
  interface HTMLElementTagNameMap {
    "entry-line": EntryLine;
  }
}
