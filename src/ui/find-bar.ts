import { css, html, LitElement, nothing } from "lit";
import { customElement, property, query, state } from "lit/decorators.js";
import { cellName } from "../engine/address.ts";
import type { Place } from "../engine/values.ts";
import { findCells, replacements } from "../job/find.ts";
import type { Job } from "../job/job.ts";
import { wordStyle } from "./word-style.ts";

/**
 * Finds words in the job and puts others in their place. Fires `find-go` with the cell to show, and `find-done` when
 * it is closed. Opens over the head of the sheet.
 */
@customElement("find-bar")
export class FindBar extends LitElement {
  static override styles = [
    wordStyle,
    css`
      :host {
        display: block;
      }
      form {
        display: flex;
        flex-wrap: wrap;
        gap: var(--s2);
        align-items: end;
        padding: var(--s2) var(--s3);
        border: 2px solid var(--ink);
        border-top-width: 1px;
        background: var(--paper);
        color: var(--ink);
      }
      label {
        display: grid;
        font-size: var(--t-label);
        color: var(--ink-2);
      }
      label.yes {
        display: flex;
        align-items: center;
        gap: var(--s1);
        min-height: max(26px, var(--target) - 10px);
        color: var(--ink);
      }
      input:not([type="checkbox"]) {
        width: 150px;
        min-height: max(26px, var(--target) - 10px);
        border: 1px solid var(--rule-2);
        background: var(--blue-wash);
        color: var(--ink);
        font-size: var(--t-cell);
      }
      input[type="checkbox"] {
        width: 20px;
        height: 20px;
        margin: 0;
        accent-color: var(--blue);
      }
      .count {
        min-width: 90px;
        padding-bottom: 5px;
        font-size: var(--t-label);
      }
    `,
  ];

  @property({ attribute: false }) job: Job | undefined;
  /** The sheet in hand. */
  @property() sheet = "";
  @state() private shown = false;
  @state() private wanted = "";
  @state() private by = "";
  @state() private everywhere = true;
  @state() private told = "";
  /** The cell that was shown last. */
  private at: Place | undefined;
  @query("input") private readonly field!: HTMLInputElement | null;

  async open(): Promise<void> {
    this.shown = true;
    await this.updateComplete;
    this.field?.focus();
    this.field?.select();
  }

  close(): void {
    this.shown = false;
    this.told = "";
    this.dispatchEvent(new Event("find-done"));
  }

  override render() {
    if (!this.shown) return nothing;
    return html`<form role="search" aria-label="Find" @submit=${(event: Event) => event.preventDefault()} @keydown=${this.onKey}>
      <label
        >Find<input
          autocomplete="off"
          spellcheck="false"
          .value=${this.wanted}
          @input=${(event: Event) => this.want((event.target as HTMLInputElement).value)}
      /></label>
      <button class="act" type="button" @click=${() => this.go(-1)}>Previous</button>
      <button class="act" type="button" @click=${() => this.go(1)}>Next</button>
      <label
        >Put in its place<input
          autocomplete="off"
          spellcheck="false"
          .value=${this.by}
          @input=${(event: Event) => {
            this.by = (event.target as HTMLInputElement).value;
          }}
      /></label>
      <button class="act" type="button" @click=${this.replace}>Replace</button>
      <button class="act" type="button" @click=${this.replaceAll}>Replace all</button>
      <label class="yes"
        ><input
          type="checkbox"
          .checked=${this.everywhere}
          @change=${(event: Event) => {
            this.everywhere = (event.target as HTMLInputElement).checked;
            this.want(this.wanted);
          }}
        />in all operations</label
      >
      <span class="count" role="status">${this.told}</span>
      <button class="act" type="button" @click=${this.close}>Close</button>
    </form>`;
  }

  private get found(): Place[] {
    if (!this.job) return [];
    const only = this.everywhere ? {} : { sheet: this.sheet };
    return findCells(this.job, { text: this.wanted, values: true, ...only });
  }

  private want(text: string) {
    this.wanted = text;
    this.at = undefined;
    const { length } = this.found;
    this.told =
      text === "" ? "" : length === 0 ? "not found" : `${length} ${length === 1 ? "cell" : "cells"}`;
  }

  private go(by: 1 | -1) {
    const { found } = this;
    if (found.length === 0) {
      this.told = "not found";
      return;
    }
    const now = found.findIndex((place) => isSame(place, this.at));
    const next = now < 0 ? (by > 0 ? 0 : found.length - 1) : (now + by + found.length) % found.length;
    this.show(found, next);
  }

  private show(found: readonly Place[], at: number) {
    const place = found[at]!;
    this.at = place;
    this.told = `${at + 1} of ${found.length}, ${place.sheet} ${cellName(place.row, place.column)}`;
    this.dispatchEvent(new CustomEvent<Place>("find-go", { detail: place }));
  }

  /** Replaces in the cell that is shown, and goes on to the next. */
  private readonly replace = () => {
    const { job, at } = this;
    const here = at && this.found.some((place) => isSame(place, at));
    if (!job || !here) return this.go(1);
    const edits = replacements(job, [at], this.wanted, this.by);
    if (edits.length === 0) {
      this.told = "it only shows there: change what it comes from";
      return;
    }
    const reason = job.setCells(
      edits,
      `Replaced ${this.wanted} in ${at.sheet} ${cellName(at.row, at.column)}`,
    );
    if (reason !== undefined) {
      this.told = `not replaced: ${reason}`;
      return;
    }
    const { found } = this;
    const next = found.findIndex((place) => isAfter(job, place, at));
    if (found.length > 0) this.show(found, Math.max(0, next));
    else this.told = "replaced, no more";
  };

  private readonly replaceAll = () => {
    const { job } = this;
    if (!job) return;
    const edits = replacements(job, this.found, this.wanted, this.by);
    const cells = `${edits.length} ${edits.length === 1 ? "cell" : "cells"}`;
    if (edits.length === 0) {
      this.told = "nothing to replace";
      return;
    }
    const reason = job.setCells(edits, `Replaced ${this.wanted} in ${cells}`);
    this.told =
      reason === undefined ? `replaced in ${cells}; Undo takes it back` : `nothing replaced: ${reason}`;
  };

  private readonly onKey = (event: KeyboardEvent) => {
    if (event.isComposing) return;
    const inText = event.composedPath()[0] instanceof HTMLInputElement;
    if (event.key === "Escape") this.close();
    else if (event.key === "Enter" && inText) this.go(event.shiftKey ? -1 : 1);
    else return;
    event.preventDefault();
    event.stopPropagation();
  };
}

function isSame(a: Place, b: Place | undefined): boolean {
  return b !== undefined && a.sheet === b.sheet && a.row === b.row && a.column === b.column;
}

function isAfter(job: Job, place: Place, than: Place): boolean {
  const order = (sheet: string) => job.document.sheets.findIndex(({ name }) => name === sheet);
  return (order(place.sheet) - order(than.sheet) || place.row - than.row || place.column - than.column) > 0;
}

declare global {
  interface HTMLElementTagNameMap {
    "find-bar": FindBar;
  }
}
