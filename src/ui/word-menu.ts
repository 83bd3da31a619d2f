import { css, html, LitElement } from "lit";
import { customElement, property, query, state } from "lit/decorators.js";
import { wordStyle } from "./word-style.ts";

/** A word that opens a short list of words, which are put into its slot as buttons. */
@customElement("word-menu")
export class WordMenu extends LitElement {
  static override shadowRootOptions: ShadowRootInit = {
    ...LitElement.shadowRootOptions,
    delegatesFocus: true,
  };
  static override styles = [
    wordStyle,
    css`
      :host {
        display: flex;
        position: relative;
      }
      .word {
        flex: 1;
        padding-right: 26px;
      }
      .word::after {
        content: "";
        position: absolute;
        right: 11px;
        top: 50%;
        margin-top: -3px;
        border: 5px solid transparent;
        border-top: 6px solid currentColor;
        border-bottom: 0;
      }
      .list {
        position: fixed;
        inset: auto;
        margin: 0;
        padding: 0;
        min-width: 180px;
        max-height: calc(100vh - 80px);
        overflow-y: auto;
        border: 2px solid var(--ink);
        background: var(--paper);
        color: var(--ink);
        font: 400 var(--t-cell) / 1.35 var(--sans);
      }
      .list:popover-open {
        display: grid;
      }
    `,
  ];

  @property() label = "";
  @state() private open = false;
  @query(".word") private readonly word!: HTMLButtonElement;
  @query(".list") private readonly list!: HTMLElement;

  override render() {
    return html`
      <button class="word" aria-expanded=${this.open} aria-haspopup="true" popovertarget="list" @keydown=${this.onKey}>
        ${this.label}
      </button>
      <div class="list" id="list" popover @beforetoggle=${this.place} @click=${this.close} @keydown=${this.onKey}>
        <slot></slot>
      </div>
    `;
  }

  private place(event: ToggleEvent) {
    // Known at once: the next key may be Escape.
    this.open = event.newState === "open";
    if (!this.open) return;
    const box = this.word.getBoundingClientRect();
    const { style } = this.list;
    style.top = `${box.bottom}px`;
    // Opens towards the middle of the page, so that it always has room.
    const onRight = box.left + box.width / 2 > innerWidth / 2;
    style.left = onRight ? "auto" : `${box.left}px`;
    style.right = onRight ? `${Math.max(0, document.documentElement.clientWidth - box.right)}px` : "auto";
  }

  private close() {
    // Unless the word has led elsewhere, the focus goes back to where the list was opened.
    const held = this.querySelector(":focus") !== null;
    this.list.hidePopover();
    if (held) this.word.focus();
  }

  private onKey(event: KeyboardEvent) {
    if (event.key === "Escape" && this.open) {
      // The page has this key too: one press closes one thing.
      event.preventDefault();
      this.list.hidePopover();
      this.word.focus();
      return;
    }
    const step = { ArrowDown: 1, ArrowUp: -1, Home: 1, End: -1 }[event.key];
    const toEnd = event.key === "Home" || event.key === "End";
    if (step === undefined || (toEnd && !this.open)) return;
    event.preventDefault();
    if (!this.open) this.list.showPopover();
    const words = [...this.querySelectorAll<HTMLElement>("button, [tabindex]")].filter((word) =>
      word.checkVisibility(),
    );
    const now = toEnd ? -1 : words.findIndex((word) => word.matches(":focus"));
    words[now < 0 ? (step > 0 ? 0 : words.length - 1) : (now + step + words.length) % words.length]?.focus();
  }
}

declare global {
  interface HTMLElementTagNameMap {
    "word-menu": WordMenu;
  }
}
