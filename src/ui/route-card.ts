import { html, nothing, svg } from "lit";
import { customElement, property, query, state } from "lit/decorators.js";
import { live } from "lit/directives/live.js";
import { repeat } from "lit/directives/repeat.js";
import { CalmElement } from "./calm-element.ts";
import type { Layout } from "./layout.ts";
import { mark, markStyle } from "./mark.ts";
import { nextNumber, numberedName, type Operation, troubleWords } from "./operations.ts";
import { routeStyle } from "./route-style.ts";
import { wordStyle } from "./word-style.ts";

/** What was done on the route card. */
export type RouteAct =
  | { readonly act: "choose" | "remove" | "first error"; readonly name: string }
  | { readonly act: "sign"; readonly name: string; readonly signed: boolean }
  | { readonly act: "rename"; readonly name: string; readonly newName: string }
  | { readonly act: "move"; readonly name: string; readonly by: -1 | 1 }
  | { readonly act: "add" };

/** The operations of a job, numbered in tens, each with its answer and its sign-off box. Fires `route`. */
@customElement("route-card")
export class RouteCard extends CalmElement {
  static override shadowRootOptions: ShadowRootInit = {
    ...CalmElement.shadowRootOptions,
    delegatesFocus: true,
  };
  static override styles = [wordStyle, markStyle, routeStyle];

  @property() layout: Layout = "card";
  @property({ attribute: false }) operations: readonly Operation[] = [];
  /** Name of the operation in hand. */
  @property() here = "";
  @property() job = "";
  @property() scenario = "";
  @state() private renaming: string | undefined;
  @query("input.name") private readonly nameField!: HTMLInputElement | null;

  /** Puts the name of the operation in hand up for change. */
  async rename(name = this.here): Promise<void> {
    this.renaming = name;
    await this.updateComplete;
    this.nameField?.focus();
    this.nameField?.select();
  }

  override focus(): void {
    this.renderRoot.querySelector<HTMLElement>('[aria-current="page"]')?.focus();
  }

  /** Puts the focus on an operation by its name. */
  focusOn(name: string): void {
    const at = this.operations.findIndex((operation) => operation.name === name);
    this.renderRoot.querySelectorAll<HTMLElement>(".row button.op")[at]?.focus();
  }

  override render() {
    const { operations, layout } = this;
    const next = nextNumber(operations);
    return html`
      <nav class=${layout} aria-label="Route card">
        ${
          layout === "phone"
            ? nothing
            : html`<div class="head">${mark}${layout === "card" ? html`<span>Halfangle</span>` : nothing}</div>`
        }
        ${
          layout === "card"
            ? html`<div class="job"><b>${this.job}</b>${this.scenario ? html`<span title=${this.scenario}>${this.scenario}</span>` : nothing}</div>`
            : nothing
        }
        <ol>
          ${repeat(
            operations,
            (operation) => operation.name,
            (operation) => this.row(operation),
          )}
          ${layout === "phone" ? nothing : this.adder(next)}
        </ol>
        ${layout === "card" ? this.tally() : nothing}
      </nav>
    `;
  }

  protected override updated(changed: Map<PropertyKey, unknown>): void {
    if (!changed.has("here") && !changed.has("layout")) return;
    // With the frame, which lays the page out in any case.
    requestAnimationFrame(() =>
      this.renderRoot
        .querySelector('[aria-current="page"]')
        ?.scrollIntoView({ block: "nearest", inline: "nearest" }),
    );
  }

  private adder(next: number) {
    const card = this.layout === "card";
    return html`<li class="add">
      <button class="op" title="Add operation" @click=${() => this.did({ act: "add" })}>
        <span class="no ${next > 99 ? "long" : ""}" aria-hidden=${card || nothing}>${card ? next : "Add"}</span>
        <span class=${card ? "nm" : "sr"}>${card ? "Add operation" : "operation"}</span>
      </button>
    </li>`;
  }

  private row(operation: Operation) {
    const { name, number, cautions, errors, signedOff, signedFor } = operation;
    const here = name === this.here;
    const warned = cautions + errors > 0;
    const { layout } = this;
    const card = layout === "card";
    const result = [operation.result, troubleWords(operation)].filter(Boolean).join(", ");
    const stale = signedFor !== "";
    const told = [result, signedFor].filter(Boolean).join("; ");
    // Where there is room for a number only, a sheet without one is known by its first letters.
    const short = number ?? (card ? "" : name.slice(0, 3));
    return html`
      <li class="row ${here ? "here" : ""} ${warned ? "warn" : ""} ${errors > 0 ? "wrong" : ""} ${signedOff ? "ok" : ""} ${stale ? "other" : ""}">
        <button
          class="op"
          aria-current=${here ? "page" : nothing}
          title=${card ? nothing : `${numberedName(operation)}${told ? `: ${told}` : ""}`}
          @click=${() => this.did({ act: "choose", name })}
          @dblclick=${() => this.rename(name)}
          @keydown=${(event: KeyboardEvent) => this.onKey(event, operation)}
        >
          <span class="no ${String(short).length > 2 ? "long" : ""}">${short}</span>
          <span class="words ${layout === "phone" ? "sr" : ""}"><span class="nm">${name}</span> <span class=${card ? "res" : "sr"}>${result}</span>${stale ? html` <span class=${card ? "for" : "sr"}>${signedFor}</span>` : nothing}</span>
        </button>
        ${
          this.layout === "phone" || number === undefined
            ? nothing
            : html`<label class="box" title=${stale ? `${signedFor}. Press to sign off again.` : nothing}>
                <input
                  type="checkbox"
                  .checked=${live(signedOff)}
                  aria-label="Sign off ${number} ${name}${stale ? ` again: ${signedFor}` : ""}"
                  @change=${(event: Event) => this.did({ act: "sign", name, signed: (event.target as HTMLInputElement).checked })}
                />
                <span class="square">${signedOff || stale ? svg`<svg viewBox="0 0 14 14" aria-hidden="true"><path d="M2 7.5L5.5 11L12 3" /></svg>` : nothing}</span>
              </label>`
        }
        ${this.renaming === name ? this.field(operation) : nothing}
      </li>
    `;
  }

  private field(operation: Operation) {
    const { name, number } = operation;
    return html`<input
      class="name"
      aria-label=${number === undefined ? "Name of the sheet" : `Name of operation ${number}`}
      maxlength="40"
      spellcheck="false"
      .value=${name}
      @keydown=${(event: KeyboardEvent) => this.onNameKey(event, name)}
      @blur=${(event: FocusEvent) => this.keepName(name, (event.target as HTMLInputElement).value)}
    />`;
  }

  private tally() {
    const own = this.operations.filter(({ number }) => number !== undefined);
    const signed = own.filter((operation) => operation.signedOff).length;
    const cautions = this.operations.reduce((sum, operation) => sum + operation.cautions, 0);
    const errors = this.operations.reduce((sum, operation) => sum + operation.errors, 0);
    const wrong = this.operations.find((operation) => operation.errors > 0);
    return html`<div class="tally">
      <span><b>${signed} of ${own.length}</b> signed off</span>
      ${
        wrong
          ? html`<span class="errors"><b>${errors}</b> ${errors === 1 ? "error" : "errors"}
              <button class="act" @click=${() => this.did({ act: "first error", name: wrong.name })}>Go to the first</button></span>`
          : nothing
      }
      <span><b>${cautions === 0 ? "No" : cautions}</b> ${cautions === 1 ? "caution" : "cautions"}</span>
    </div>`;
  }

  private onKey(event: KeyboardEvent, { name }: Operation) {
    if (event.key === "F2") void this.rename(name);
    else if (event.key === "Delete") this.did({ act: "remove", name });
    else if (event.altKey && event.key === "ArrowUp") this.did({ act: "move", name, by: -1 });
    else if (event.altKey && event.key === "ArrowDown") this.did({ act: "move", name, by: 1 });
    else if (event.key === "Home") this.step(event, Number.NEGATIVE_INFINITY);
    else if (event.key === "End") this.step(event, Number.POSITIVE_INFINITY);
    else if (event.key === "ArrowDown" || event.key === "ArrowRight") this.step(event, 1);
    else if (event.key === "ArrowUp" || event.key === "ArrowLeft") this.step(event, -1);
    else return;
    event.preventDefault();
  }

  private step(event: KeyboardEvent, by: number) {
    const all = [...this.renderRoot.querySelectorAll<HTMLElement>("button.op")];
    const to = all.indexOf(event.currentTarget as HTMLElement) + by;
    all[Math.max(0, Math.min(to, all.length - 1))]?.focus();
  }

  private onNameKey(event: KeyboardEvent, name: string) {
    if (event.isComposing || (event.key !== "Enter" && event.key !== "Escape")) return;
    event.preventDefault();
    event.stopPropagation();
    const typed = (event.target as HTMLInputElement).value;
    this.keepName(name, event.key === "Enter" ? typed : name);
    void this.updateComplete.then(() => this.focus());
  }

  private keepName(name: string, typed: string) {
    // Removing the field blurs it, which would keep the name a second time.
    if (this.renaming === undefined) return;
    this.renaming = undefined;
    const newName = typed.trim();
    if (newName !== "" && newName !== name) this.did({ act: "rename", name, newName });
  }

  private did(act: RouteAct) {
    this.dispatchEvent(new CustomEvent<RouteAct>("route", { detail: act }));
  }
}

declare global {
  interface HTMLElementTagNameMap {
    "route-card": RouteCard;
  }
}
