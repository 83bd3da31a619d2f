import { css, html, LitElement, nothing } from "lit";
import { customElement, property } from "lit/decorators.js";
import type { Place } from "../engine/values.ts";
import type { Why, WhyLink } from "../job/why.ts";
import { sentence } from "./sentence.ts";
import { wordStyle } from "./word-style.ts";

/** Says of the active cell why it shows what it shows. Fires `go` with a place, and `leave`. */
@customElement("why-drawer")
export class WhyDrawer extends LitElement {
  static override styles = [
    wordStyle,
    css`
      :host {
        display: block;
        box-sizing: border-box;
        min-width: 0;
        overflow: auto;
        background: var(--paper-2);
        border-left: 1px solid var(--rule-2);
        font-size: var(--t-note);
        line-height: 1.45;
      }
      aside {
        display: grid;
        grid-template-columns: minmax(0, 1fr);
        gap: var(--s4);
        padding: var(--s3) var(--s4) var(--s5);
      }
      header {
        display: flex;
        gap: var(--s3);
        align-items: baseline;
        justify-content: space-between;
      }
      h2 {
        margin: 0;
        font-size: var(--t-head);
      }
      h3 {
        display: flex;
        gap: var(--s2);
        align-items: center;
        margin: 0 0 4px;
        font-size: var(--t-label);
        color: var(--ink-2);
      }
      h3::after {
        content: "";
        flex: 1;
        border-top: 1px dashed var(--rule-2);
      }
      p,
      ul {
        margin: 0;
        padding: 0;
        list-style: none;
        overflow-wrap: anywhere;
      }
      p + p {
        margin-top: 4px;
      }
      .worked {
        padding: var(--s2) var(--s3);
        border: 1px solid var(--rule);
        background: var(--paper);
        font-family: var(--formula);
        font-size: var(--t-cell);
      }
      .wrong {
        padding: var(--s2) var(--s3);
        border: 1px dotted var(--error);
        background: var(--error-wash);
        color: var(--error);
      }
      .doubt {
        padding: var(--s2) var(--s3);
        border-left: 6px double var(--caution);
        background: var(--caution-wash);
        color: var(--caution);
      }
      li {
        display: flex;
        gap: var(--s3);
        align-items: center;
        justify-content: space-between;
        border-bottom: 1px solid var(--rule);
      }
      .link {
        min-height: max(26px, var(--target) - 8px);
        padding: 0;
        border: 0;
        background: none;
        color: var(--blue);
        text-align: left;
        text-decoration: underline;
        text-underline-offset: 3px;
        cursor: pointer;
      }
      li > * {
        min-width: 0;
      }
      li span {
        flex: none;
        max-width: 50%;
        overflow: hidden;
        text-overflow: ellipsis;
        white-space: nowrap;
      }
      .muted {
        color: var(--ink-2);
      }
      .act {
        min-height: max(26px, var(--target));
      }
    `,
  ];

  @property({ attribute: false }) why: Why | undefined;

  override render() {
    const { why } = this;
    if (!why) return nothing;
    return html`<aside aria-label="Why">
      <header>
        <h2>${why.label || why.address}</h2>
        <span class="muted">${[why.label ? why.address : "", why.name].filter(Boolean).join(", ")}</span>
        <button class="act" @click=${() => this.dispatchEvent(new CustomEvent("leave"))}>Close</button>
      </header>
      ${why.error ? this.wrong(why.error) : nothing}
      ${why.caution ? html`<p class="doubt">${why.caution}</p>` : nothing} ${why.taken ? html`<p>${sentence(why.taken)}</p>` : nothing}
      ${why.note ? html`<p>${why.note}</p>` : nothing}
      ${why.functions.length > 0 ? html`<div>${why.functions.map(({ name, summary }) => html`<p><b>${name}</b> ${summary}</p>`)}</div>` : nothing}
      ${why.is ? html`<p>${why.is}</p>` : nothing}
      ${this.worked(why)} ${why.is ? nothing : this.links("Comes from", why.comesFrom, "No other cell: the formula has all it needs.")}
      ${why.words ? nothing : this.links("Goes to", why.goesTo, "No formula names it.")}
      ${
        why.ifWrong.length > 0
          ? html`<div><h3>If it is wrong</h3>${why.ifWrong.map((line) => html`<p>${line}</p>`)}</div>`
          : nothing
      }
      ${
        why.functions.length > 0
          ? html`<div><h3>Source</h3>${why.functions.map(({ name, source }) => html`<p>${name}: ${source}</p>`)}</div>`
          : nothing
      }
    </aside>`;
  }

  private wrong({ code, message, from }: NonNullable<Why["error"]>) {
    return html`<div class="wrong" role="status">
      <p><b>${code}</b> ${message}</p>
      ${from ? html`<p>It began in ${this.link(from)}</p>` : nothing}
    </div>`;
  }

  private worked({ formula, filled, value }: Why) {
    if (formula === undefined) return nothing;
    return html`<div class="worked">
      <p>${formula}</p>
      ${filled === formula ? nothing : html`<p>${filled}</p>`}
      <p>= <b>${value}</b></p>
    </div>`;
  }

  private links(title: string, links: readonly WhyLink[], none: string) {
    return html`<div>
      <h3>${title}</h3>
      ${
        links.length === 0
          ? html`<p class="muted">${none}</p>`
          : html`<ul aria-label=${title}>${links.map((link) => html`<li>${this.link(link)}<span>${link.value}</span></li>`)}</ul>`
      }
    </div>`;
  }

  private link({ place, address, label }: WhyLink) {
    return html`<button class="link" @click=${() => this.dispatchEvent(new CustomEvent<Place>("go", { detail: place }))}>
      ${[address, label].filter(Boolean).join(" ")}
    </button>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    "why-drawer": WhyDrawer;
  }
}
