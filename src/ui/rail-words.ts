import { css, html, nothing, type TemplateResult } from "lit";
import { customElement, property } from "lit/decorators.js";
import { CalmElement } from "./calm-element.ts";
import type { Layout } from "./layout.ts";
import { mark, markStyle } from "./mark.ts";
import type { Ground, Hand } from "./settings.ts";
import "./word-menu.ts";
import { wordStyle } from "./word-style.ts";

/** What a word on the rail asks for. */
export type Word =
  | "shelf"
  | "undo"
  | "redo"
  | "trial"
  | "seek"
  | "open"
  | "save"
  | "card"
  | "print"
  | "lathe"
  | "bench"
  | "why"
  | "guide"
  | "find"
  | "cells"
  | "names"
  | "history"
  | "title"
  | "duplicate"
  | "sign"
  | "rename"
  | "up"
  | "down"
  | "add"
  | "remove"
  | "large"
  | "ground"
  | "tab"
  | `hand ${Hand | "auto"}`;

/** The rail of words on top. Fires `word` with what was asked for. */
@customElement("rail-words")
export class RailWords extends CalmElement {
  static override shadowRootOptions: ShadowRootInit = {
    ...CalmElement.shadowRootOptions,
    delegatesFocus: true,
  };
  static override styles = [
    wordStyle,
    markStyle,
    css`
      :host {
        display: block;
        min-width: 0;
        background: var(--paper-2);
        border-bottom: 1px solid var(--rule-2);
      }
      .rail {
        display: flex;
        align-items: stretch;
        height: 100%;
        padding: 0 var(--s2);
      }
      .rail > * + .word::before,
      .rail > * + word-menu::before {
        content: "";
        position: absolute;
        left: 0;
        top: 32%;
        bottom: 32%;
        border-left: 1px solid var(--rule-2);
      }
      .rail > h1 + .word::before,
      .gap + .word::before,
      .gap + word-menu::before {
        display: none;
      }
      h1 {
        margin: 0 var(--s3) 0 var(--s2);
        align-self: center;
        min-width: 0;
        overflow: hidden;
        text-overflow: ellipsis;
        white-space: nowrap;
        font-size: calc(var(--t-head) + 1px);
        line-height: 1.2;
      }
      h1 span {
        display: block;
        overflow: hidden;
        text-overflow: ellipsis;
        font-size: var(--t-label);
        font-weight: 400;
        color: var(--ink-2);
      }
      .phone h1 {
        flex: 1;
      }
      .gap {
        container-type: inline-size;
        flex: 1;
        min-width: 0;
        align-self: center;
        padding: 0 var(--s3);
      }
      .gap span {
        display: -webkit-box;
        overflow: hidden;
        -webkit-box-orient: vertical;
        -webkit-line-clamp: 2;
        overflow-wrap: anywhere;
        font-size: var(--t-label);
        line-height: 1.3;
        color: var(--ink-2);
      }
      /* Two letters of a sentence help nobody. */
      @container (max-width: 90px) {
        .gap span {
          display: none;
        }
      }
      .rail > .mark {
        align-self: center;
        width: 34px;
        height: 30px;
      }
      word-menu .word {
        min-height: max(34px, var(--target));
        padding: 0 var(--s4);
        text-align: left;
        border-bottom: 1px solid var(--rule);
      }
      word-menu .word[aria-pressed="true"] {
        box-shadow: inset 5px 0 0 var(--blue);
      }
      .kbd {
        float: right;
        padding-left: var(--s5);
        font-weight: 400;
        color: var(--ink-2);
      }
      @media (pointer: coarse) {
        .kbd {
          display: none;
        }
      }
    `,
  ];

  @property() layout: Layout = "card";
  /** True where the rail has no room for all its words. */
  @property({ type: Boolean }) narrow = false;
  @property() heading = "";
  @property() under = "";
  /** What the last step did, for the eye; it is spoken elsewhere. */
  @property() lastly = "";
  @property() undoes: string | undefined;
  @property() redoes: string | undefined;
  @property() ground: Ground = "paper";
  @property({ type: Boolean }) large = false;
  @property() hand: Hand | undefined;
  /** Whether Tab goes to the next cell. */
  @property({ type: Boolean }) tab = false;
  /** Where the operation in hand stands among the others. */
  @property({ type: Boolean }) first = false;
  @property({ type: Boolean }) last = false;
  @property({ type: Boolean }) signedOff = false;
  /** What the operation was signed for and is no more. */
  @property() signedFor = "";
  /** Whether the drawer that says why is open. */
  @property({ type: Boolean }) why = false;

  override render() {
    const { layout, narrow } = this;
    const phone = layout === "phone";
    return html`
      <div class="rail ${layout}" role="toolbar" aria-label="Rail">
        ${phone ? mark : nothing}
        <h1 class=${layout === "card" ? "sr" : ""}>${this.heading}${phone ? html`<span>${this.under}</span>` : nothing}</h1>
        ${phone ? nothing : this.word("shelf", "Shelf")} ${this.step("undo", "Undo", this.undoes)}
        ${phone ? nothing : this.step("redo", "Redo", this.redoes)}
        ${narrow ? nothing : [...this.whatIfWords(), this.word("open", "Open"), this.word("save", "Save", "Save to a file, Ctrl S"), this.word("print", "Print"), this.word("lathe", "Lathe"), this.operationMenu(), html`<word-menu label="Sheet">${this.sheetWords()}</word-menu>`, this.word("find", "Find", "Find and replace, Ctrl F")]}
        ${phone ? nothing : html`<span class="gap" aria-hidden="true"><span>${this.lastly}</span></span>`}
        ${
          narrow
            ? html`<word-menu label="More">
                ${phone ? [this.word("shelf", "Shelf"), this.word("card", "Card"), this.word("bench", "Bench"), this.step("redo", "Redo", this.redoes)] : nothing}
                ${this.whatIfWords()} ${this.word("open", "Open")} ${this.word("save", "Save")} ${this.word("print", "Print")} ${this.word("lathe", "Lathe")} ${this.word("find", "Find")} ${this.helpWords()} ${this.sheetWords()} ${this.operationWords()} ${this.lookWords()}
                ${this.handWords("Hand: ")}
              </word-menu>`
            : html`<word-menu label="Look">${this.lookWords()} ${this.handWords("Hand: ")}</word-menu>
                ${this.helpWords()}`
        }
        ${phone ? nothing : [this.word("card", "Card"), this.word("bench", "Bench")]}
      </div>
    `;
  }

  private sheetWords(): TemplateResult[] {
    return [
      this.word("cells", "Commands for cells", "A right click or a long press", "Shift F10"),
      this.word("names", "Names"),
      this.word("history", "History"),
      this.word("title", "Title of the job"),
    ];
  }

  private operationMenu() {
    return html`<word-menu label="Operation">${this.operationWords()}</word-menu>`;
  }

  private operationWords(): TemplateResult[] {
    const sign = this.signedOff ? "Signed off" : this.signedFor ? "Sign off again" : "Sign off";
    return [
      this.toggle("sign", sign, this.signedOff, this.signedFor || undefined),
      this.word("rename", "Rename operation", "F2 on the route card", "F2"),
      this.word("up", "Move up", undefined, "Alt ↑", this.first),
      this.word("down", "Move down", undefined, "Alt ↓", this.last),
      this.word("add", "Add operation"),
      this.word("duplicate", "Copy operation"),
      this.word("remove", "Delete operation", "It can be undone", "Del", this.first && this.last),
    ];
  }

  private whatIfWords(): TemplateResult[] {
    return [
      this.word("trial", "Trial", "A what-if table: results for other values of an input"),
      this.word("seek", "Seek", "The input for which a cell shows a wanted value"),
    ];
  }

  private helpWords(): TemplateResult[] {
    return [this.word("guide", "Functions"), this.toggle("why", "Why", this.why)];
  }

  private lookWords(): TemplateResult[] {
    return [
      this.toggle("large", "Large type", this.large),
      this.toggle("ground", "Slate", this.ground === "slate"),
      this.toggle("tab", "Tab: next cell", this.tab, "Else Tab leaves the sheet; F6 always does"),
    ];
  }

  private handWords(before: string): TemplateResult[] {
    return [
      this.toggle("hand auto", `${before}by the pointer`, this.hand === undefined),
      this.toggle("hand desk", `${before}desk`, this.hand === "desk"),
      this.toggle("hand touch", `${before}touch`, this.hand === "touch"),
      this.toggle("hand gloves", `${before}gloves, lathe stopped`, this.hand === "gloves"),
    ];
  }

  private word(word: Word, label: string, title?: string, key?: string, off = false) {
    return html`<button class="word" title=${title ?? nothing} aria-disabled=${off || nothing} @click=${() => off || this.ask(word)}>
      ${label}${key ? html`<span class="kbd" aria-hidden="true">${key}</span>` : nothing}
    </button>`;
  }

  private step(word: Word, label: string, what: string | undefined) {
    // Not `disabled`: undoing the last step must not throw the focus off the word that did it.
    return html`<button
      class="word"
      aria-disabled=${what === undefined || nothing}
      title=${what ?? `nothing to ${word}`}
      @click=${() => what !== undefined && this.ask(word)}
    >
      ${label}
    </button>`;
  }

  private toggle(word: Word, label: string, on: boolean, title?: string) {
    return html`<button class="word" title=${title ?? nothing} aria-pressed=${on} @click=${() => this.ask(word)}>${label}</button>`;
  }

  private ask(word: Word) {
    this.dispatchEvent(new CustomEvent<Word>("word", { detail: word }));
  }
}

declare global {
  interface HTMLElementTagNameMap {
    "rail-words": RailWords;
  }
}
