import { css, html, LitElement } from "lit";
import { customElement, property, state } from "lit/decorators.js";

/** How long a pause ends the word that is being typed, ms. */
const pause = 900;

/**
 * The words that may be chosen in a cell, as a list over the page. Fires `choose` {text} with each word that becomes
 * the one in hand, and `chosen` when it is picked by hand; the keys that end an edit are the grid's.
 */
@customElement("choice-list")
export class ChoiceList extends LitElement {
  static override styles = css`
    :host {
      position: fixed;
      inset: auto;
      box-sizing: border-box;
      margin: 0;
      padding: 0;
      border: 2px solid var(--ink);
      background: var(--paper);
      color: var(--ink);
      max-height: min(60vh, 420px);
      overflow: auto;
      font: 400 var(--t-cell) / 1.35 var(--sans);
    }
    ul {
      margin: 0;
      padding: 0;
      list-style: none;
      outline: 0;
    }
    li {
      display: flex;
      align-items: center;
      min-height: max(28px, var(--row));
      padding: 0 12px 0 6px;
      border-bottom: 1px solid var(--rule);
      white-space: nowrap;
      cursor: pointer;
    }
    li:last-child {
      border-bottom: 0;
    }
    li:hover {
      background: var(--blue-wash);
    }
    li[aria-selected="true"] {
      background: var(--blue);
      color: var(--on-blue);
    }
    @media (forced-colors: active) {
      li[aria-selected="true"] {
        forced-color-adjust: none;
        background: Highlight;
        color: HighlightText;
      }
    }
  `;

  @property({ attribute: false }) words: readonly string[] = [];
  /** The word in hand. */
  @property() text = "";
  /** As `B6`, for the name of the list. */
  @property() cell = "";
  @state() private typed = "";
  private last = 0;

  override connectedCallback(): void {
    super.connectedCallback();
    this.popover = "manual";
  }

  /** Opens below or above the cell, whichever has the room. */
  place(cell: DOMRect): void {
    if (!this.matches(":popover-open")) this.showPopover();
    const { style } = this;
    style.minWidth = `${cell.width}px`;
    const { width, height } = this.getBoundingClientRect();
    style.left = `${Math.max(0, Math.min(cell.left, innerWidth - width))}px`;
    const below = cell.bottom + height <= innerHeight || cell.top < height;
    style.top = `${below ? Math.min(cell.bottom, Math.max(0, innerHeight - height)) : cell.top - height}px`;
  }

  override focus(): void {
    this.renderRoot.querySelector<HTMLElement>("ul")?.focus({ preventScroll: true });
  }

  /** Goes to the first word that begins with what is typed; letters in quick succession belong to one word. */
  seek(letter: string, now: number): void {
    this.typed = now - this.last > pause ? letter : this.typed + letter;
    this.last = now;
    const start = (text: string) => text.toLowerCase().startsWith(this.typed.toLowerCase());
    const found = this.words.find(start);
    if (found !== undefined) this.choose(found);
    else if (this.typed.length > 1 && [...this.typed].every((one) => one === letter)) this.next(letter);
  }

  override render() {
    const at = this.words.indexOf(this.text);
    return html`<ul
      role="listbox"
      tabindex="-1"
      aria-label="Choices for ${this.cell}"
      aria-activedescendant=${at < 0 ? "" : `word-${at}`}
      @keydown=${this.onKey}
    >
      ${this.words.map(
        (word, index) => html`<li
          role="option"
          id="word-${index}"
          aria-selected=${index === at ? "true" : "false"}
          @pointerdown=${(event: Event) => event.preventDefault()}
          @click=${() => {
            this.choose(word);
            this.dispatchEvent(new Event("chosen"));
          }}
        >
          ${word}
        </li>`,
      )}
    </ul>`;
  }

  protected override updated(): void {
    this.renderRoot.querySelector('[aria-selected="true"]')?.scrollIntoView({ block: "nearest" });
  }

  private readonly onKey = (event: KeyboardEvent) => {
    if (event.isComposing || event.ctrlKey || event.metaKey || event.altKey) return;
    const at = this.words.indexOf(this.text);
    const last = this.words.length - 1;
    const to = { ArrowDown: Math.min(last, at + 1), ArrowUp: Math.max(0, at - 1), Home: 0, End: last }[
      event.key
    ];
    if (to !== undefined) this.choose(this.words[to]!);
    else if (event.key === " " && event.timeStamp - this.last > pause)
      this.dispatchEvent(new Event("chosen"));
    else if (event.key.length === 1) this.seek(event.key, event.timeStamp);
    else return;
    event.preventDefault();
    event.stopPropagation();
  };

  /** The same letter again and again walks through the words that begin with it. */
  private next(letter: string) {
    const from = this.words.indexOf(this.text) + 1;
    const round = [...this.words.slice(from), ...this.words.slice(0, from)];
    const found = round.find((word) => word.toLowerCase().startsWith(letter.toLowerCase()));
    if (found !== undefined) this.choose(found);
  }

  private choose(text: string) {
    this.text = text;
    this.dispatchEvent(new CustomEvent<string>("choose", { detail: text }));
  }
}

declare global {
  interface HTMLElementTagNameMap {
    "choice-list": ChoiceList;
  }
}
