import { css, html, LitElement } from "lit";
import { customElement, state } from "lit/decorators.js";
import { wordStyle } from "./word-style.ts";

/** A word beside a message, and what it does. */
export interface Offer {
  readonly word: string;
  readonly act: () => void;
}

interface Alarm {
  readonly text: string;
  readonly offers: readonly Offer[];
  readonly kind: string;
}

/**
 * What the page says: one polite region for what was done, and messages that stay until they are closed. Messages
 * lie over the sheet and push nothing aside. Fires `said` with every polite text, for the rail to show.
 */
@customElement("said-line")
export class SaidLine extends LitElement {
  static override styles = [
    wordStyle,
    css`
      :host {
        display: block;
        pointer-events: none;
      }
      .alarm {
        display: flex;
        align-items: stretch;
        gap: var(--s3);
        margin-top: var(--s2);
        border: 2px solid var(--error);
        background: var(--error-wash);
        color: var(--ink);
        pointer-events: auto;
      }
      .mark {
        flex: none;
        width: 14px;
        background: radial-gradient(circle at 50% 3px, var(--error) 2px, transparent 2.6px) 0 0 / 14px 7px;
      }
      p {
        flex: 1;
        min-width: 0;
        margin: 0;
        padding: var(--s2) 0;
        align-self: center;
        overflow-wrap: anywhere;
        white-space: pre-line;
      }
      .acts {
        display: flex;
        flex-wrap: wrap;
        align-content: center;
        gap: 4px;
        padding: var(--s1) var(--s2);
      }
    `,
  ];

  @state() private polite = "";
  @state() private alarms: readonly Alarm[] = [];

  /** Something was done. The same words twice in a row are spoken twice. */
  say(text: string): void {
    // A live region speaks when its text changes; a no-break space makes the same words a change.
    this.polite = text === this.polite ? `${text}\u00a0` : text;
    this.dispatchEvent(new CustomEvent("said", { detail: text }));
  }

  /**
   * Something went wrong. Stays until it is closed, or until `settle` is called with the same text.
   *
   * @param kind takes the place of what was said of this kind before
   */
  alarm(text: string, offers: readonly Offer[] = [], kind = text): void {
    const others = this.alarms.filter((other) => other.text !== text && other.kind !== kind);
    this.alarms = [...others, { text, offers, kind }].slice(-3);
  }

  /** Closes the newest message. @returns false when there is none */
  dismiss(): boolean {
    const last = this.alarms.at(-1);
    if (!last) return false;
    if (this.matches(":focus-within")) this.close(last.text);
    else this.settle(last.text);
    return true;
  }

  settle(text?: string): void {
    this.alarms = text === undefined ? [] : this.alarms.filter((alarm) => alarm.text !== text);
  }

  private close(text: string) {
    this.settle(text);
    // The word that had the focus is gone.
    this.dispatchEvent(new CustomEvent("panel-closed", { bubbles: true, composed: true }));
  }

  override render() {
    return html`
      <div class="sr" role="status">${this.polite}</div>
      <div role="alert">
        ${this.alarms.map(
          ({ text, offers }) => html`<div class="alarm">
            <span class="mark" aria-hidden="true"></span>
            <p>${text}</p>
            <span class="acts">
              ${offers.map(
                ({ word, act }) => html`<button
                  class="act go"
                  @click=${() => {
                    this.settle(text);
                    act();
                  }}
                >
                  ${word}
                </button>`,
              )}
              <button class="act" @click=${() => this.close(text)}>Close<span class="sr"> message</span></button>
            </span>
          </div>`,
        )}
      </div>
    `;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    "said-line": SaidLine;
  }
}
