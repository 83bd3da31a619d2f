/**
 * The field of the entry line with colours, matching brackets and completion. Fetched when it is first needed; until then,
 * and under a finger, a plain text field does the same without them.
 */
import {
  acceptCompletion,
  autocompletion,
  type Completion,
  type CompletionContext,
  type CompletionResult,
  closeBrackets,
  closeBracketsKeymap,
  completionKeymap,
  insertBracket,
} from "@codemirror/autocomplete";
import { history, historyKeymap, insertNewline, standardKeymap } from "@codemirror/commands";
import { bracketMatching } from "@codemirror/language";
import { EditorState, type Extension, RangeSetBuilder, StateEffect, StateField } from "@codemirror/state";
import { Decoration, type DecorationSet, EditorView, keymap } from "@codemirror/view";
import { html, LitElement, type PropertyValues } from "lit";
import { customElement, property, query } from "lit/decorators.js";
import { formulaParts, turnDollars, wordBefore } from "../job/formula-parts.ts";
import { formulaFieldStyle } from "./formula-field-style.ts";
import type { Inked, Offer } from "./formula-offers.ts";

export interface FieldState {
  readonly text: string;
  readonly caret: number;
}

/** Fires `typed` and `caret` with the text and where the caret stands. */
@customElement("formula-field")
export class FormulaField extends LitElement {
  static override shadowRootOptions: ShadowRootInit = {
    ...LitElement.shadowRootOptions,
    delegatesFocus: true,
  };
  static override styles = formulaFieldStyle;

  @property() text = "";
  /** Where the caret goes with a text from outside; to its end when nothing is said. */
  @property({ attribute: false }) caret: number | undefined;
  @property() label = "";
  @property({ type: Boolean }) fixed = false;
  /** In a cell the arrow keys may leave it: they are then the grid's. */
  @property({ type: Boolean }) inCell = false;
  /** References of a text, in the inks that the grid gives them. */
  @property({ attribute: false }) inked: (text: string) => readonly Inked[] = () => [];
  @property({ attribute: false }) offers: (word: string) => readonly Offer[] = () => [];
  @query(".field") private readonly place!: HTMLElement;
  private view: EditorView | undefined;
  /** While the text is being put in from outside nobody has typed it. */
  private putting = false;

  /** Asked for before there was anything to focus. */
  private wanted = false;

  override focus(): void {
    this.wanted = this.view === undefined;
    this.view?.focus();
  }

  /** Takes over at once what it was given. */
  catchUp(): void {
    if (this.isUpdatePending) this.performUpdate();
  }

  override render() {
    return html`<div class="field"></div>`;
  }

  protected override firstUpdated(): void {
    this.view = new EditorView({
      parent: this.place,
      root: this.renderRoot as ShadowRoot,
      state: EditorState.create({
        doc: this.text,
        selection: { anchor: Math.min(this.caret ?? this.text.length, this.text.length) },
        extensions: this.extensions(),
      }),
    });
    if (this.wanted) this.view.focus();
  }

  protected override updated(changed: PropertyValues<this>): void {
    const { view } = this;
    if (!view) return;
    const now = view.state.doc.toString();
    if (changed.has("text") && this.text !== now) {
      this.putting = true;
      const anchor = Math.min(this.caret ?? this.text.length, this.text.length);
      view.dispatch({ changes: difference(now, this.text), selection: { anchor } });
      this.putting = false;
    }
    if (changed.has("inked")) view.dispatch({ effects: paintAgain.of(null) });
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.view?.destroy();
    this.view = undefined;
  }

  private extensions(): Extension[] {
    return [
      EditorState.transactionFilter.of((change) =>
        change.isUserEvent("input.paste") &&
        change.newDoc.lines > 1 &&
        change.newDoc.sliceString(0, 1) === "="
          ? [change, { changes: joined(change.newDoc.toString()), sequential: true }]
          : change,
      ),
      EditorView.contentAttributes.of(() => ({
        "aria-label": this.label,
        autocapitalize: "off",
        spellcheck: "false",
      })),
      EditorState.changeFilter.of(() => this.putting || !this.fixed),
      // A quote may be an inch mark, and outside of a formula a bracket is just a bracket.
      EditorState.languageData.of((state) => [
        { closeBrackets: { brackets: state.sliceDoc(0, 1) === "=" ? ["(", "{"] : [] } },
      ]),
      keymap.of([
        { key: "F4", run: (view) => turn(view) },
        { key: "Alt-Enter", run: insertNewline },
        { key: "Tab", run: acceptCompletion },
        ...completionKeymap,
        ...closeBracketsKeymap,
        ...historyKeymap,
        ...standardKeymap.filter(({ key }) => !this.isOthers(key ?? "")),
      ]),
      history(),
      bracketMatching(),
      closeBrackets(),
      colours((text) => this.inked(text)),
      autocompletion({
        override: [(context) => this.complete(context)],
        icons: false,
        activateOnTyping: true,
        // A key that is pressed while the list is there is meant for it.
        interactionDelay: 0,
        addToOptions: [{ render: wordsBeside, position: 80 }],
      }),
      EditorView.updateListener.of((update) => {
        if (this.putting) return;
        if (update.docChanged) this.tell("typed");
        else if (update.selectionSet) this.tell("caret");
      }),
    ];
  }

  /** Keys that end the edit or belong to the grid. */
  private isOthers(key: string): boolean {
    return key === "Enter" || key === "Tab" || key === "Escape" || (this.inCell && key.startsWith("Arrow"));
  }

  private complete({ state, pos, explicit }: CompletionContext): CompletionResult | null {
    const found = wordBefore(state.doc.toString(), pos);
    if (!found || (found.word.length < 2 && !explicit)) return null;
    return {
      from: found.from,
      options: this.offers(found.word).map(asCompletion),
      filter: false,
    };
  }

  private tell(what: "typed" | "caret") {
    const { state } = this.view!;
    const detail: FieldState = { text: state.doc.toString(), caret: state.selection.main.head };
    this.dispatchEvent(new CustomEvent<FieldState>(what, { detail }));
  }
}

/** Only what differs: a bracket that was put in by itself can still be typed over. */
function difference(before: string, after: string) {
  const most = Math.min(before.length, after.length);
  let from = 0;
  while (from < most && before[from] === after[from]) from += 1;
  let same = 0;
  while (same < most - from && before.at(-1 - same) === after.at(-1 - same)) same += 1;
  return { from, to: before.length - same, insert: after.slice(from, after.length - same) };
}

/** What is pasted into a formula over several lines is joined by spaces; lines that were broken here stay. */
function joined(text: string) {
  return { from: 0, to: text.length, insert: text.replace(/\s*\n\s*/g, " ") };
}

function turn(view: EditorView): boolean {
  const turned = turnDollars(view.state.doc.toString(), view.state.selection.main.head);
  if (!turned) return false;
  view.dispatch({
    changes: { from: 0, to: view.state.doc.length, insert: turned.text },
    selection: { anchor: turned.caret },
    userEvent: "input",
  });
  return true;
}

function asCompletion({ label, words, kind, call }: Offer): Completion {
  const apply = (view: EditorView, _: Completion, from: number, to: number) => {
    view.dispatch({
      changes: { from, to, insert: label },
      selection: { anchor: from + label.length },
      userEvent: "input.complete",
    });
    if (kind !== "function" || view.state.sliceDoc(from + label.length, from + label.length + 1) === "(")
      return;
    // A bracket put in this way is one that the closing one may be typed over.
    const bracket = insertBracket(view.state, "(");
    if (bracket) view.dispatch(bracket);
  };
  return { label, type: kind, apply, detail: words, ...(call ? { info: call } : {}) };
}

/** The one line beside an offer is our own element, so that it can be cut with an ellipsis. */
function wordsBeside(completion: Completion): Node {
  const span = document.createElement("span");
  span.className = "words";
  span.textContent = completion.detail ?? "";
  return span;
}

const paintAgain = StateEffect.define<null>();

function colours(inked: (text: string) => readonly Inked[]): Extension {
  const paint = (state: EditorState): DecorationSet => {
    const text = state.doc.toString();
    const inks = inked(text);
    const builder = new RangeSetBuilder<Decoration>();
    for (const { kind, from, to } of formulaParts(text)) {
      const ink = inks.find((one) => one.from <= from && to <= one.to);
      builder.add(from, to, Decoration.mark({ class: ink ? `ink a${ink.ink}` : `part-${kind}` }));
    }
    return builder.finish();
  };
  return StateField.define<DecorationSet>({
    create: paint,
    update: (now, change) =>
      change.docChanged || change.effects.some((effect) => effect.is(paintAgain)) ? paint(change.state) : now,
    provide: (field) => EditorView.decorations.from(field),
  });
}

declare global {
  interface HTMLElementTagNameMap {
    "formula-field": FormulaField;
  }
}
