import { css, html, LitElement, nothing } from "lit";
import { customElement, query, state } from "lit/decorators.js";
import { panelStyle } from "./panel-style.ts";
import { sentence } from "./sentence.ts";
import { wordStyle } from "./word-style.ts";

/** One thing that is asked for. */
export interface Field {
  readonly name: string;
  readonly label: string;
  /** Remark under the field. */
  readonly hint?: string;
  readonly kind: "line" | "lines" | "one of" | "yes";
  readonly value: string | boolean;
  /** For `one of`: value and word. */
  readonly options?: readonly (readonly [value: string, word: string])[];
}

export type Answers = Readonly<Record<string, string | boolean>>;

export interface Question {
  readonly title: string;
  readonly text?: string;
  readonly fields?: readonly Field[];
  /** Word that answers. */
  readonly go: string;
  /** Why the answers cannot be taken; undefined when they can. */
  readonly problem?: (answers: Answers) => string | undefined;
}

/** Asks the person for a few things at once, and gives what they answer. */
@customElement("ask-dialog")
export class AskDialog extends LitElement {
  static override styles = [
    wordStyle,
    panelStyle,
    css`
      form {
        display: contents;
      }
      .body {
        grid-template-columns: repeat(auto-fill, minmax(min(100%, 240px), 1fr));
        gap: var(--s2) var(--s4);
      }
      .text,
      .wrong,
      .lines {
        grid-column: 1 / -1;
      }
      .field {
        display: grid;
        gap: 2px;
        align-items: start;
        align-content: start;
        min-height: min-content;
      }
      .yes {
        display: flex;
        align-items: center;
        gap: var(--s2);
        min-height: max(28px, var(--target) - 8px);
      }
      input:not([type="checkbox"]),
      textarea,
      select {
        min-height: max(30px, var(--target));
        padding: 2px var(--s2);
        border: 1px solid var(--rule-2);
        background: var(--blue-wash);
        color: var(--ink);
        font: inherit;
      }
      .hint {
        font-size: var(--t-label);
        color: var(--ink-2);
      }
      .wrong {
        min-height: 1.35em;
        margin: 0;
        color: var(--error);
        font-weight: 700;
      }
      .text {
        max-width: 60ch;
        margin: 0;
        white-space: pre-line;
      }
    `,
  ];

  @state() private question: Question | undefined;
  @state() private wrong = "";
  @query("dialog") private readonly dialog!: HTMLDialogElement;
  @query("form") private readonly form!: HTMLFormElement | null;
  private settle: ((answers: Answers | undefined) => void) | undefined;

  /** @returns what was answered; undefined when the person would rather not */
  async ask(question: Question): Promise<Answers | undefined> {
    this.settle?.(undefined);
    this.question = question;
    this.wrong = "";
    await this.updateComplete;
    this.dialog.showModal();
    this.dialog.querySelector<HTMLElement>("input, textarea, select")?.focus();
    return new Promise((resolve) => {
      this.settle = resolve;
    });
  }

  override render() {
    const { question } = this;
    return html`<dialog aria-labelledby="title" @close=${() => this.answer(undefined)} @keydown=${stay}>
      ${
        question
          ? html`<form @submit=${this.onSubmit} @keydown=${this.onKey} novalidate>
              <div class="head"><h1 id="title">${question.title}</h1></div>
              <div class="body">
                ${question.text ? html`<p class="text">${question.text}</p>` : nothing}
                ${(question.fields ?? []).map((field) => fieldTemplate(field))}
                <p class="wrong" role="alert">${this.wrong}</p>
              </div>
              <div class="foot">
                <button class="act" type="button" @click=${() => this.dialog.close()}>Cancel</button>
                <button class="act go" type="submit">${question.go}</button>
              </div>
            </form>`
          : html`<h1 id="title" class="sr">Question</h1>`
      }
    </dialog>`;
  }

  /** Enter alone is a new line where there are several. */
  private readonly onKey = (event: KeyboardEvent) => {
    if (event.key !== "Enter" || !(event.ctrlKey || event.metaKey)) return;
    event.preventDefault();
    this.form?.requestSubmit();
  };

  private readonly onSubmit = (event: Event) => {
    event.preventDefault();
    const answers: Record<string, string | boolean> = {};
    for (const { name, kind } of this.question!.fields ?? []) {
      const control = this.form!.elements.namedItem(name) as HTMLInputElement;
      answers[name] = kind === "yes" ? control.checked : control.value;
    }
    const problem = this.question!.problem?.(answers);
    this.wrong = problem === undefined ? "" : sentence(problem);
    if (problem !== undefined) return;
    this.answer(answers);
    this.dialog.close();
  };

  private answer(answers: Answers | undefined) {
    const { settle } = this;
    this.settle = undefined;
    this.question = undefined;
    settle?.(answers);
  }
}

// The keys of a question are its own; the page and the grid under it have others.
function stay(event: KeyboardEvent): void {
  event.stopPropagation();
}

function fieldTemplate(field: Field) {
  const { name, label, hint, kind, value } = field;
  const under = hint ? html`<span class="hint">${hint}</span>` : nothing;
  if (kind === "yes") {
    return html`<label class="yes"><input type="checkbox" name=${name} .checked=${value === true} />${label}</label>`;
  }
  const control =
    kind === "lines"
      ? html`<textarea name=${name} rows="4" .value=${String(value)}></textarea>`
      : kind === "one of"
        ? html`<select name=${name}>
            ${field.options!.map(
              ([option, word]) =>
                html`<option value=${option} ?selected=${option === value}>${word}</option>`,
            )}
          </select>`
        : html`<input name=${name} autocomplete="off" spellcheck="false" .value=${String(value)} />`;
  return html`<label class="field ${kind === "lines" ? "lines" : ""}"><span>${label}</span>${control}${under}</label>`;
}

declare global {
  interface HTMLElementTagNameMap {
    "ask-dialog": AskDialog;
  }
}
