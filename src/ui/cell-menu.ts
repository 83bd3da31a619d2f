import { css, html, LitElement, nothing } from "lit";
import { customElement, query, state } from "lit/decorators.js";
import { wordStyle } from "./word-style.ts";

export interface MenuItem {
  readonly id: string;
  readonly label: string;
  /** Group that it stands in, by its heading. */
  readonly group: string;
  /** Keys that do the same, for the eye. */
  readonly keys?: string;
}

/** How long a pause ends the word that is being typed, ms. */
const pause = 900;

/** The menu of the chosen cells, after the menu pattern of WAI-ARIA. Fires `choose` with the id of what was chosen. */
@customElement("cell-menu")
export class CellMenu extends LitElement {
  static override styles = [
    wordStyle,
    css`
      .menu {
        position: fixed;
        inset: auto;
        margin: 0;
        padding: var(--s1) 0;
        max-width: calc(100vw - 16px);
        max-height: calc(100vh - 16px);
        overflow-y: auto;
        border: 2px solid var(--ink);
        background: var(--paper);
        color: var(--ink);
        font: 400 var(--t-cell) / 1.35 var(--sans);
      }
      .columns {
        columns: 2;
        column-gap: 0;
        column-rule: 1px solid var(--rule);
      }
      @media (max-width: 599px) {
        .columns {
          columns: 1;
        }
      }
      [role="group"] {
        break-inside: avoid;
        padding-bottom: var(--s1);
      }
      .name {
        padding: 2px var(--s3);
        font-size: var(--t-label);
        color: var(--ink-2);
        border-bottom: 1px solid var(--rule);
      }
      .item {
        display: flex;
        justify-content: space-between;
        gap: var(--s5);
        width: 100%;
        min-height: max(26px, var(--target) - 10px);
        padding: 2px var(--s3);
        border: 0;
        background: none;
        text-align: left;
        align-items: center;
        cursor: pointer;
      }
      .item:hover,
      .item:focus {
        background: var(--blue-wash);
        color: var(--blue-deep);
      }
      .keys {
        color: var(--ink-2);
        font-size: var(--t-label);
        white-space: nowrap;
      }
      @media (pointer: coarse) {
        .item {
          min-height: 48px;
        }
        .keys {
          display: none;
        }
      }
    `,
  ];

  @state() private items: readonly MenuItem[] = [];
  @state() private label = "";
  @query(".menu") private readonly menu!: HTMLElement;
  private typed = "";
  private last = 0;

  get open(): boolean {
    return this.menu.matches(":popover-open");
  }

  /** Opens at a point of the window, the first item in hand. */
  async show(items: readonly MenuItem[], label: string, at: { x: number; y: number }): Promise<void> {
    this.items = items;
    this.label = label;
    await this.updateComplete;
    if (!this.open) this.menu.showPopover();
    document.addEventListener("pointerdown", this.onPress, { capture: true });
    document.addEventListener("keydown", this.onEscape, { capture: true });
    const { style } = this.menu;
    const { width, height } = this.menu.getBoundingClientRect();
    style.left = `${Math.max(8, Math.min(at.x, innerWidth - width - 8))}px`;
    style.top = `${Math.max(8, Math.min(at.y, innerHeight - height - 8))}px`;
    this.words[0]?.focus();
  }

  /** Closes, and says so: the cells get the focus back. A press elsewhere closes without a word. */
  hide(): void {
    if (!this.open) return;
    this.away();
    this.dispatchEvent(new Event("closed"));
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.deafen();
  }

  private away() {
    this.menu.hidePopover();
    this.deafen();
  }

  private deafen() {
    document.removeEventListener("pointerdown", this.onPress, { capture: true });
    document.removeEventListener("keydown", this.onEscape, { capture: true });
  }

  // A finger that is lifted from the cell takes the focus there, so the menu may not have it.
  private readonly onEscape = (event: KeyboardEvent) => {
    if (event.key !== "Escape") return;
    event.preventDefault();
    event.stopPropagation();
    this.hide();
  };

  // The browser's own way closes it when the finger that rested on the cell is lifted.
  private readonly onPress = (event: Event) => {
    if (!event.composedPath().includes(this.menu)) this.away();
  };

  override render() {
    const groups = [...new Set(this.items.map(({ group }) => group))];
    return html`<div
      class="menu"
      popover="manual"
      role="menu"
      aria-label=${this.label}
      @keydown=${this.onKey}
    >
      <div class="columns" role="presentation">
        ${groups.map(
          (group) => html`<div role="group" aria-label=${group}>
            <div class="name" aria-hidden="true">${group}</div>
            ${this.items
              .filter((item) => item.group === group)
              .map(
                (
                  item,
                ) => html`<button class="item" role="menuitem" tabindex="-1" @click=${() => this.choose(item)}>
                  ${item.label}${item.keys ? html`<span class="keys" aria-hidden="true">${item.keys}</span>` : nothing}
                </button>`,
              )}
          </div>`,
        )}
      </div>
    </div>`;
  }

  private get words(): HTMLElement[] {
    return [...this.renderRoot.querySelectorAll<HTMLElement>("[role=menuitem]")];
  }

  private choose({ id }: MenuItem) {
    this.hide();
    this.dispatchEvent(new CustomEvent<string>("choose", { detail: id }));
  }

  private readonly onKey = (event: KeyboardEvent) => {
    event.stopPropagation();
    const { words } = this;
    const now = words.findIndex((word) => word.matches(":focus"));
    const to = {
      ArrowDown: (now + 1) % words.length,
      ArrowUp: (now - 1 + words.length) % words.length,
      Home: 0,
      End: words.length - 1,
    }[event.key];
    if (to !== undefined) words[to]?.focus();
    else if (event.key === "Escape" || event.key === "Tab") this.hide();
    else if (event.key.length === 1 && event.key !== " " && !event.ctrlKey && !event.metaKey)
      this.seek(event, now);
    else return;
    event.preventDefault();
  };

  /** Goes to the next item that begins with what is typed. */
  private seek(event: KeyboardEvent, now: number) {
    this.typed = event.timeStamp - this.last > pause ? event.key : this.typed + event.key;
    this.last = event.timeStamp;
    const { words } = this;
    const from = this.typed.length > 1 ? now : now + 1;
    const round = [...words.slice(from), ...words.slice(0, from)];
    round
      .find((word) => word.textContent!.trim().toLowerCase().startsWith(this.typed.toLowerCase()))
      ?.focus();
  }
}

declare global {
  interface HTMLElementTagNameMap {
    "cell-menu": CellMenu;
  }
}
