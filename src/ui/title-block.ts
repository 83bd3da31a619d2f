import { css, html, nothing } from "lit";
import { customElement, property } from "lit/decorators.js";
import { CalmElement } from "./calm-element.ts";
import type { Layout } from "./layout.ts";
import type { Fact } from "./operations.ts";
import { wordStyle } from "./word-style.ts";

/** Stands on every job, whatever its author wrote or left out. */
const always = [
  "Stop and isolate the spindle before setting or measuring.",
  "Lathe manual and shop rules come first.",
];

/** The foot of the page: the notes line with the job's cautions, and the title block. */
@customElement("title-block")
export class TitleBlock extends CalmElement {
  static override shadowRootOptions: ShadowRootInit = {
    ...CalmElement.shadowRootOptions,
    delegatesFocus: true,
  };
  static override styles = [
    wordStyle,
    css`
      :host {
        display: flex;
        min-width: 0;
        min-height: 60px;
        background: var(--paper-2);
        border-top: 2px solid var(--ink);
      }
      .notes {
        display: flex;
        flex: 1;
        gap: var(--s3);
        min-width: 0;
        padding: 6px var(--s3);
        font-size: var(--t-label);
        line-height: 1.45;
      }
      ol {
        flex: 1;
        min-width: 0;
        max-height: 6em;
        margin: 0;
        padding-left: 1.7em;
        overflow-y: auto;
      }
      .trouble {
        margin: 0 0 4px;
        color: var(--error);
        font-weight: 700;
      }
      .fold {
        flex: 1;
        min-width: 0;
        align-self: center;
      }
      summary {
        min-height: 24px;
        padding: 4px 0;
        cursor: pointer;
      }
      summary span {
        display: -webkit-inline-box;
        overflow: hidden;
        max-width: calc(100% - 24px);
        vertical-align: middle;
        -webkit-box-orient: vertical;
        -webkit-line-clamp: 2;
      }
      details[open] summary span {
        -webkit-line-clamp: none;
      }
      dl {
        display: grid;
        flex: none;
        grid-template-columns: repeat(4, auto);
        align-content: stretch;
        max-width: 62%;
        margin: 0;
        border-left: 2px solid var(--ink);
      }
      dl div {
        min-width: 0;
        padding: 1px 12px 2px 8px;
        border-left: 1px solid var(--ink);
        border-bottom: 1px solid var(--ink);
      }
      dl div:nth-child(4n + 1) {
        border-left: 0;
      }
      dl div.low {
        border-bottom: 0;
      }
      dl div.wide2 {
        grid-column: span 2;
      }
      dl div.wide3 {
        grid-column: span 3;
      }
      dl div.wide4 {
        grid-column: span 4;
      }
      dt {
        font-size: var(--t-label);
        line-height: 1.25;
        color: var(--ink-2);
      }
      dd {
        max-width: calc(190px * var(--k));
        margin: 0;
        overflow: hidden;
        text-overflow: ellipsis;
        white-space: nowrap;
        font-size: var(--t-note);
        font-weight: 700;
        line-height: 1.25;
      }
      .error dd {
        color: var(--error);
      }
      :host([layout="strip"]) dl div {
        padding: 6px 14px;
      }
      :host([layout="phone"]) {
        min-height: 44px;
      }
      :host([layout="phone"]) dl {
        grid-template-columns: auto;
        border-left-width: 1px;
      }
      @media (max-height: 560px) {
        :host {
          min-height: 40px;
        }
      }
    `,
  ];

  @property({ reflect: true }) layout: Layout = "card";
  @property({ attribute: false }) cautions: readonly string[] = [];
  @property({ attribute: false }) facts: readonly Fact[] = [];
  /** Why nothing is being kept; stays until it is again. */
  @property() trouble = "";
  /** True where the page is too low for two rows of facts. */
  @property({ type: Boolean }) low = false;

  override render() {
    return html`
      <section class="notes" aria-label="Notes">
        <span class="hatch" aria-hidden="true"></span>
        ${this.layout === "phone" || this.low ? this.folded() : this.list()}
      </section>
      ${this.block()}
    `;
  }

  private list() {
    return html`<div class="all"><slot name="notes"></slot>${this.troubleLine()}<ol tabindex="0" aria-label="Cautions">
      ${this.everyCaution.map((caution) => html`<li>${caution}</li>`)}
    </ol></div>`;
  }

  private folded() {
    const [first, ...others] = this.everyCaution;
    return html`<div class="fold"><slot name="notes"></slot><details>
      <summary>${this.troubleLine()}<span>${others.length > 0 ? html`<b>Cautions, ${this.everyCaution.length}:</b> ` : nothing}${first}</span></summary>
      <ol start="2" tabindex="0" aria-label="Further cautions">${others.map((caution) => html`<li>${caution}</li>`)}</ol>
    </details></div>`;
  }

  private troubleLine() {
    return this.trouble ? html`<p class="trouble">${this.trouble}</p>` : nothing;
  }

  private block() {
    const shown = this.chosen();
    const rest = (4 - (shown.length % 4)) % 4;
    const lastRow = Math.floor((shown.length - 1) / 4) * 4;
    return html`<dl aria-label="Title block">
      ${shown.map(({ label, value }, index) => {
        const classes = [
          index >= lastRow ? "low" : "",
          index === shown.length - 1 && rest > 0 && this.layout !== "phone" ? `wide${rest + 1}` : "",
          label === "Saved" && this.trouble ? "error" : "",
        ];
        return html`<div class=${classes.join(" ")}><dt>${label}</dt><dd title=${value}>${value}</dd></div>`;
      })}
    </dl>`;
  }

  /** A full block where there is room, one row of four on a tablet, the saved time alone on a phone. */
  private chosen(): readonly Fact[] {
    const saved = this.facts.filter(({ label }) => label === "Saved");
    if (this.layout === "phone") return saved;
    if (this.layout === "card" && !this.low) return [...this.facts.slice(0, -1).slice(0, 7), ...saved];
    const labels = this.low ? ["Thread"] : ["Thread", "Unit", "Leadscrew"];
    const wanted = this.facts.filter(({ label }) => labels.includes(label));
    return [...wanted, ...saved];
  }

  private get everyCaution(): readonly string[] {
    return this.cautions.length > 0 ? this.cautions : always;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    "title-block": TitleBlock;
  }
}
