import { css, html, LitElement, nothing, type PropertyValues } from "lit";
import { customElement, property, query, state } from "lit/decorators.js";
import { cellName } from "../engine/address.ts";
import type { Place } from "../engine/values.ts";
import { type Found, replacements } from "../job/find.ts";
import { grouped } from "../job/grouped.ts";
import type { Job } from "../job/job.ts";
import { CellSearch } from "./cell-search.ts";
import { wordStyle } from "./word-style.ts";

/** A search that takes longer is told of, and can be stopped, ms. */
const patience = 300;

/**
 * Finds words in the job and puts others in their place. Fires `find-go` with the cell to show, and `find-done` when
 * it is closed. Opens between the entry line and the sheet.
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
  @property({ type: Boolean, reflect: true }) shown = false;
  @state() private wanted = "";
  @state() private by = "";
  @state() private everywhere = true;
  @state() private told = "";
  /** How much of the job has been looked through, in words, once that takes long. */
  @state() private looking = "";
  private since = 0;
  private readonly search = new CellSearch((share) => {
    if (share === undefined) this.since = 0;
    else if (this.since === 0) this.since = performance.now();
    const long = share !== undefined && performance.now() - this.since > patience;
    this.looking = long ? `Looking, ${Math.floor(share * 100)}\u00a0%` : "";
  });
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
    this.search.stop();
    this.shown = false;
    this.told = "";
    this.dispatchEvent(new Event("find-done"));
  }

  protected override willUpdate(changed: PropertyValues<this>): void {
    if (!changed.has("job")) return;
    this.search.forget();
    this.at = undefined;
    this.told = "";
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
      <span class="count" role="status">${this.looking ? "" : this.told}</span>
      ${
        this.looking
          ? html`<span class="count">${this.looking}</span>
              <button class="act" type="button" @click=${() => this.stop()}>Stop</button>`
          : nothing
      }
      <button class="act" type="button" @click=${this.close}>Close</button>
    </form>`;
  }

  /** Goes on when it is known which cells there are. */
  private look(then: (job: Job, found: Found) => void) {
    const { job } = this;
    if (!job) return;
    const only = this.everywhere ? {} : { sheet: this.sheet };
    this.search.find(job, { text: this.wanted, values: true, ...only }, (found) => then(job, found));
  }

  private stop() {
    this.search.stop();
    this.told = "stopped";
    this.field?.focus();
  }

  private want(text: string) {
    this.wanted = text;
    this.at = undefined;
    this.told = "";
    this.look((_, found) => {
      const { length } = found.places;
      this.told =
        text === ""
          ? ""
          : length === 0
            ? "not found"
            : `${amountOf(found)} ${length === 1 ? "cell" : "cells"}`;
    });
  }

  private go(by: 1 | -1) {
    this.look((_, found) => {
      const { places } = found;
      if (places.length === 0) {
        this.told = "not found";
        return;
      }
      const now = places.findIndex((place) => isSame(place, this.at));
      this.show(
        found,
        now < 0 ? (by > 0 ? 0 : places.length - 1) : (now + by + places.length) % places.length,
      );
    });
  }

  private show(found: Found, at: number) {
    const place = found.places[at]!;
    this.at = place;
    this.told = `${at + 1} of ${amountOf(found)}, ${place.sheet} ${cellName(place.row, place.column)}`;
    this.dispatchEvent(new CustomEvent<Place>("find-go", { detail: place }));
  }

  /** Replaces in the cell that is shown, and goes on to the next. */
  private readonly replace = () => {
    const { at, by } = this;
    this.look((job, { places }) => {
      if (!at || !places.some((place) => isSame(place, at))) return this.go(1);
      const edits = replacements(job, [at], this.wanted, by);
      if (edits.length === 0) {
        this.told = "it only shows there: change what it comes from";
        return;
      }
      const reason = job.setCells(
        edits,
        `Replaced ${this.wanted} in ${at.sheet} ${cellName(at.row, at.column)}`,
      );
      if (reason === undefined) this.look((_, found) => this.showAfter(job, at, found));
      else this.told = `not replaced: ${reason}`;
    });
  };

  private showAfter(job: Job, at: Place, found: Found) {
    const next = found.places.findIndex((place) => isAfter(job, place, at));
    if (found.places.length > 0) this.show(found, Math.max(0, next));
    else this.told = "replaced, no more";
  }

  private readonly replaceAll = () => {
    // What is typed while it is looked for comes too late.
    const { by } = this;
    this.look((job, { places, all }) => {
      const edits = replacements(job, places, this.wanted, by);
      const cells = `${grouped(edits.length)} ${edits.length === 1 ? "cell" : "cells"}`;
      if (edits.length === 0 || !all) {
        this.told = all
          ? "nothing to replace"
          : `nothing replaced: more than ${grouped(places.length)} cells hold it`;
        return;
      }
      const reason = job.setCells(edits, `Replaced ${this.wanted} in ${cells}`);
      this.told =
        reason === undefined ? `replaced in ${cells}; Undo takes it back` : `nothing replaced: ${reason}`;
    });
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

function amountOf({ places, all }: Found): string {
  return all ? grouped(places.length) : `more than ${grouped(places.length)}`;
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
