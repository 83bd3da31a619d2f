import { html, LitElement, nothing, type PropertyValues } from "lit";
import { customElement, property, query, state } from "lit/decorators.js";
import { cellName } from "../engine/address.ts";
import { type CellValue, isErrorValue } from "../engine/values.ts";
import type { SheetFunction } from "../functions/declare.ts";
import { cellText, shownText } from "../job/format.ts";
import { wordBefore } from "../job/formula-parts.ts";
import type { CellView, Job } from "../job/job.ts";
import { quantityAt } from "../job/readings.ts";
import { distinctReferences, onSheet, referencesOf } from "../job/references.ts";
import { argumentWords } from "./argument-words.ts";
import { CalmElement } from "./calm-element.ts";
import { EditSession } from "./edit-session.ts";
import { entryStyle } from "./entry-style.ts";
import type { FieldState, FormulaField } from "./formula-field.ts";
import { inksOf, mostDimensions, offersFor } from "./formula-offers.ts";
import { editIntentOf } from "./grid-keys.ts";
import { ownTask } from "./own-task.ts";
import { screenKeys } from "./screen-keys.ts";
import { sentence } from "./sentence.ts";
import { TriedFormula } from "./tried-formula.ts";

/** Letters that may need more lines than a phone has for them. */
const longRemark = 90;

/**
 * The active cell as it was typed, what it gives, and under it the value of every cell that its formula names.
 * Editing here and in the cell is one edit, in the session that both share.
 */
@customElement("entry-line")
export class EntryLine extends CalmElement {
  static override styles = entryStyle;

  @property({ attribute: false }) job: Job | undefined;
  @property({ attribute: false }) session = new EditSession();
  /** Colours and completion while typing; a finger has the plain field. */
  @property({ type: Boolean }) rich = false;
  @property({ attribute: false }) functions: readonly SheetFunction[] = [];
  @state() private fetched = false;
  @state() private caret = 0;
  @query("textarea, formula-field") private readonly input!: HTMLElement | null;
  /** Which of the two fields is shown: never changed under an edit. */
  private coloured = false;
  private moves = false;

  private stopJob: (() => void) | undefined;
  private readonly trial = new TriedFormula(() => this.requestUpdate());

  override focus(): void {
    this.input?.focus();
  }

  override connectedCallback(): void {
    super.connectedCallback();
    for (const kind of ["keydown", "beforeinput"])
      this.addEventListener(kind, this.catchUp, { capture: true });
    this.listen(this.session);
    this.follow();
  }

  override disconnectedCallback(): void {
    this.unlisten(this.session);
    this.stopJob?.();
    super.disconnectedCallback();
  }

  /** What a formula would give takes a while to reckon: the next key goes first. */
  protected override scheduleUpdate(): Promise<unknown> {
    return ownTask().then(() => super.scheduleUpdate());
  }

  /** Draws what has not been drawn yet: what is typed next goes into the text as it is now, not as it was before a press. */
  private readonly catchUp = () => {
    if (!this.isUpdatePending) return;
    this.performUpdate();
    const { input } = this;
    if (input && "catchUp" in input) (input as FormulaField).catchUp();
  };

  protected override willUpdate(changed: PropertyValues<this>): void {
    if (changed.has("session")) {
      const before = changed.get("session");
      if (before) this.unlisten(before);
      this.listen(this.session);
    }
    if (changed.has("job")) this.follow();
    if (!this.session.edit || changed.has("job")) this.trial.forget();
  }

  protected override updated(): void {
    const field = this.input;
    if (!this.moves || !field) return;
    this.moves = false;
    void (field instanceof LitElement ? field.updateComplete : Promise.resolve()).then(() => field.focus());
  }

  override render() {
    const { job, session } = this;
    const { sheet, row, column } = session.active;
    if (!job?.document.sheets.some(({ name }) => name === sheet)) return nothing;
    const view = job.cell(sheet, row, column);
    const { edit } = session;
    const text = edit?.text ?? view.text;
    const coloured = this.fetched && this.rich;
    if (!edit && coloured !== this.coloured) {
      this.coloured = coloured;
      // The caret was in the plain field that goes.
      this.moves = (this.renderRoot as ShadowRoot).activeElement !== null;
    }
    const several = text.includes("\n") ? "several" : "";
    return html`<section aria-label="Entry line" class="${edit ? "editing" : ""} ${several}">
      <div class="balloon"><b>${cellName(row, column)}</b></div>
      ${this.field(view, text)}
      ${this.gives(view, text)} ${this.lane(view, text)}
      ${
        edit
          ? html`<div class="acts">
              ${
                this.rich
                  ? nothing
                  : screenKeys(view, false) === "text"
                    ? html`<button @pointerdown=${hold} @click=${this.breakLine}>New line</button>`
                    : html`<button aria-pressed=${session.letters} @pointerdown=${hold} @click=${() => session.turnLetters()}>
                      Letters
                    </button>`
              }
              <button class="go" @pointerdown=${hold} @click=${() => session.leave({ rows: 1, columns: 0 })}>
                Keep <kbd aria-hidden="true">Enter</kbd>
              </button>
              <button @pointerdown=${hold} @click=${this.onDrop}>Drop <kbd aria-hidden="true">Esc</kbd></button>
            </div>`
          : nothing
      }
    </section>`;
  }

  private field(view: CellView, text: string) {
    const fixed = view.spilledFrom !== undefined || view.locked === true;
    if (this.coloured) {
      return html`<formula-field
        label="Entry line"
        .text=${text}
        .fixed=${fixed}
        .inked=${this.inked}
        .offers=${this.offers}
        @typed=${(event: CustomEvent<FieldState>) => this.typed(event.detail)}
        .caret=${this.session.edit?.caret}
        @caret=${(event: CustomEvent<FieldState>) => this.stood(event.detail.caret)}
        @focusin=${this.onFocus}
        @focusout=${this.onBlur}
        @keydown=${this.onKey}
      ></formula-field>`;
    }
    return html`<textarea
      aria-label="Entry line"
      rows="1"
      enterkeyhint="done"
      inputmode=${this.rich ? nothing : screenKeys(view, this.session.letters)}
      autocomplete="off"
      autocapitalize="off"
      spellcheck="false"
      ?readonly=${fixed}
      .value=${text}
      @beforeinput=${this.onBreak}
      @input=${this.onInput}
      @focus=${this.onFocus}
      @blur=${this.onBlur}
      @keydown=${this.onKey}
      @select=${this.onCaret}
      @keyup=${this.onCaret}
      @click=${this.onCaret}
    ></textarea>`;
  }

  private readonly inked = (text: string) =>
    this.job ? inksOf(text, this.job, this.session.active.sheet) : [];

  private readonly offers = (word: string) => (this.job ? offersFor(word, this.job, this.functions) : []);

  /** The value that the cell shows; while a formula is typed, what it would give. */
  private gives(view: CellView, text: string) {
    const { job, session } = this;
    const quantity = quantityAt(job!.document, session.active, text, job!.unit);
    const typed = session.edit !== undefined && text.startsWith("=");
    const value = !session.edit ? view.value : typed ? this.tried(text) : quantity;
    const formula = text.startsWith("=") || view.spilledFrom !== undefined || quantity !== undefined;
    if (value === undefined || value === null || (!formula && !isErrorValue(value))) {
      return html`<div class="gives"></div>`;
    }
    const late = typed && this.givenBy(text).late;
    return html`<div class="gives" role="group" aria-label="Gives">
      <span class="u">gives</span>
      <b class=${late ? "late" : nothing}>${cellText({ value, format: view.format }, job!.unit)}</b>
    </div>`;
  }

  /** A formula as far as it is typed; undefined while it does not read. */
  private tried(text: string): CellValue | undefined {
    const { value } = this.givenBy(text);
    return isErrorValue(value) ? undefined : value;
  }

  /** What the formula that is being typed gives, or gave a few letters ago. */
  private givenBy(text: string) {
    return this.trial.of(this.job!, onSheet(text, this.session.active.sheet));
  }

  private lane(view: CellView, text: string) {
    const says: unknown[] = [];
    const { chosen } = this.session;
    if (chosen !== undefined && !this.session.edit) says.push(html`<span>${chosen}</span>`);
    if (!this.session.edit && isErrorValue(view.value)) {
      const { error, message, from } = view.value;
      const place = from === undefined ? "" : ` It began in ${from}.`;
      says.push(html`<span class="wrong">${message === "" ? error : sentence(message)}${place}</span>`);
    }
    if (view.caution) says.push(html`<span class="caution">${sentence(view.caution)}</span>`);
    if (view.taken && !this.session.edit) says.push(html`<span>${sentence(view.taken)}</span>`);
    const lines = text.split("\n").length;
    if (lines > 1 && !this.session.edit) says.push(html`<span>${lines} lines.</span>`);
    if (view.locked) says.push(html`<span>Locked: the cell menu unlocks it.</span>`);
    if (view.spilledFrom !== undefined)
      says.push(html`<span>Filled by the formula in ${view.spilledFrom}.</span>`);
    if (view.note) says.push(html`<span>${view.note}</span>`);
    if (view.choices?.length && this.session.edit)
      says.push(html`<span>One of: ${view.choices.join(", ")}</span>`);
    const { edit } = this.session;
    const caret = edit?.where === "cell" ? (edit.caret ?? text.length) : this.caret;
    const argument = edit && argumentWords(text, caret, this.functions);
    if (argument) {
      const { name, words, example } = argument;
      says.push(
        html`<span class="argument"><b>${name}</b> ${words}${example ? html` <i>${example}</i>` : nothing}</span>`,
      );
    } else if (this.session.edit && text.startsWith("=")) {
      const { value } = this.givenBy(text);
      // While names are offered that begin or go on like this word, it is not wrong yet.
      const word = wordBefore(text, caret)?.word ?? "";
      const going = word.length > 1 && offersFor(word, this.job!, this.functions).length > 0;
      if (isErrorValue(value) && value.message !== "" && !(going && value.error === "#NAME?"))
        says.push(html`<span class="wrong">${sentence(value.message)}</span>`);
    }
    const dimensions = this.dimensions(text);
    // A long remark scrolls on a phone, and what scrolls must be reached by key.
    const long = (view.note?.length ?? 0) > longRemark;
    return html`<div class="lane ${this.session.edit ? "" : "whole"}" tabindex=${long ? 0 : nothing}>
      ${dimensions.length === 0 ? nothing : html`<ul class="dims" aria-label="Values in the formula">${dimensions}</ul>`}${says}
    </div>`;
  }

  private dimensions(text: string) {
    const { job, session } = this;
    return distinctReferences(referencesOf(text, session.active.sheet, job!.document.names))
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

  private listen(session: EditSession) {
    for (const kind of ["change", "chosen"]) session.addEventListener(kind, this.onChange);
  }

  private unlisten(session: EditSession) {
    for (const kind of ["change", "chosen"]) session.removeEventListener(kind, this.onChange);
  }

  private follow() {
    this.stopJob?.();
    this.stopJob = this.job?.subscribe(this.onChange);
  }

  private readonly onChange = () => this.requestUpdate();

  private readonly onInput = (event: Event) => {
    const { value, selectionStart } = event.target as HTMLTextAreaElement;
    this.typed({ text: value, caret: selectionStart ?? value.length });
  };

  private readonly onCaret = (event: Event) => {
    const { value, selectionStart } = event.target as HTMLTextAreaElement;
    this.stood(selectionStart ?? value.length);
  };

  private stood(caret: number) {
    this.caret = caret;
    this.session.update({ caret });
  }

  private typed({ text, caret }: FieldState) {
    this.caret = caret;
    if (!this.session.edit) this.session.begin(this.job!, { where: "line" });
    this.session.update({ text, where: "line", caret });
    this.dispatchEvent(new CustomEvent("cell-typing", { detail: { text }, bubbles: true, composed: true }));
  }

  private readonly onFocus = () => {
    if (this.rich && !this.fetched) void import("./formula-field.ts").then(() => (this.fetched = true));
    if (this.session.edit) this.session.update({ where: "line" });
  };

  private readonly onBlur = (event: FocusEvent) => {
    const to = event.relatedTarget;
    const own = to instanceof Node && this.renderRoot.contains(to);
    if (this.session.edit?.where === "line" && document.hasFocus() && !own) this.session.commit();
  };

  private readonly onKey = (event: KeyboardEvent) => {
    // Completion takes its keys first.
    if (event.isComposing || event.defaultPrevented) return;
    // Arrow keys move the caret here, whatever was typed in the cell before.
    const intent = editIntentOf(event, false);
    if (!intent || intent.act === "caret") return;
    const { edit } = this.session;
    if (intent.act === "break") {
      // The field with colours has this key by itself.
      event.preventDefault();
      this.breakLine();
      return;
    }
    if (intent.act === "leave" && event.key === "Tab" && !edit) return;
    event.preventDefault();
    event.stopPropagation();
    if (intent.act === "leave") this.session.leave(intent.step);
    else this.onDrop();
  };

  /** A line break at the caret. */
  private readonly breakLine = () => {
    const field = this.input;
    if (!(field instanceof HTMLTextAreaElement) || field.readOnly) return;
    field.setRangeText("\n", field.selectionStart, field.selectionEnd, "end");
    this.typed({ text: field.value, caret: field.selectionStart });
  };

  /** The Enter of some screen keyboards comes without a key. */
  private readonly onBreak = (event: InputEvent) => {
    if (event.inputType !== "insertLineBreak") return;
    event.preventDefault();
    this.session.leave({ rows: 1, columns: 0 });
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

declare global {
  interface HTMLElementTagNameMap {
    "entry-line": EntryLine;
  }
}
