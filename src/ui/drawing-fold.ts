import { css, html, LitElement, nothing } from "lit";
import { customElement, property, state } from "lit/decorators.js";
import { describeFigure, nameOfFigure } from "../drawing/draw.ts";
import { drawingStyle } from "../drawing/style.ts";
import type { CellView } from "../job/job.ts";
import { pictureOf } from "./drawing-cell.ts";

type Figure = NonNullable<CellView["figure"]>;

/** Drawings that have no room beside the columns, above the sheet: one open at a time, or none. */
@customElement("drawing-fold")
export class DrawingFold extends LitElement {
  static override styles = [
    drawingStyle,
    css`
      :host {
        display: block;
        border-bottom: 1px solid var(--ink);
        background: var(--paper);
        color: var(--ink);
      }
      .names {
        display: flex;
        background: var(--paper-2);
        overflow-x: auto;
      }
      button {
        flex: 0 1 240px;
        min-height: max(44px, var(--target));
        padding: 0 14px;
        border: 0;
        border-right: 1px solid var(--rule);
        border-bottom: 3px solid transparent;
        background: var(--paper-2);
        color: var(--ink);
        font: inherit;
        text-align: left;
      }
      button::after {
        content: "";
        display: inline-block;
        margin-left: 10px;
        border: 5px solid transparent;
        border-top: 6px solid currentColor;
        border-bottom: 0;
        vertical-align: 2px;
      }
      button[aria-expanded="true"]::after {
        border-top: 0;
        border-bottom: 6px solid currentColor;
      }
      button[aria-expanded="true"] {
        border-bottom-color: var(--blue);
        background: var(--paper);
        font-weight: 700;
      }
      button:focus-visible {
        outline: var(--ring) solid var(--blue);
        outline-offset: calc(-1 * var(--ring));
      }
      .open {
        height: min(34vh, 300px);
        height: min(34dvh, 300px);
      }
      p {
        margin: 0;
        padding: 8px 14px;
      }
    `,
  ];

  @property({ attribute: false }) figures: readonly Figure[] = [];
  /** None is open before the person opens one. */
  @property({ type: Boolean }) shut = false;
  /** Name of the open drawing; undefined before the person has chosen, "" when all are folded. */
  @state() private chosen: string | undefined;
  @state() private width = 0;

  private frame = 0;

  private readonly resizes = new ResizeObserver(([entry]) => {
    // In the next frame: drawn at once it would move the grid, which watches its size too.
    cancelAnimationFrame(this.frame);
    this.frame = requestAnimationFrame(() => {
      this.width = entry!.contentRect.width;
    });
  });

  override connectedCallback(): void {
    super.connectedCallback();
    this.resizes.observe(this);
  }

  override disconnectedCallback(): void {
    this.resizes.disconnect();
    cancelAnimationFrame(this.frame);
    super.disconnectedCallback();
  }

  override render() {
    const names = this.figures.map(nameOfFigure);
    // With the keyboard of the phone up, or on its side, the sheet needs the room.
    const first = this.shut || innerHeight < 560 ? "" : names[0];
    const wanted = this.chosen ?? first;
    const open = wanted !== "" && wanted !== undefined && !names.includes(wanted) ? names[0] : wanted;
    const figure = this.figures[names.indexOf(open ?? "")];
    return html`<div class="names">
        ${names.map(
          (name) => html`<button
            aria-expanded=${name === open}
            @click=${() => {
              this.chosen = name === open ? "" : name;
            }}
          >${name}</button>`,
        )}
      </div>
      ${figure ? html`<div class="open">${this.picture(figure)}</div>` : nothing}`;
  }

  private picture(figure: Figure) {
    if (this.width === 0) return nothing;
    const height = Math.min(0.34 * innerHeight, 300);
    return pictureOf(figure, this.width, height, 1) ?? html`<p>${describeFigure(figure)}</p>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    "drawing-fold": DrawingFold;
  }
}
