import { css, html, LitElement, nothing } from "lit";
import { customElement, property, query, state } from "lit/decorators.js";
import { parseRange, splitSheet } from "../engine/address.ts";
import type { Place } from "../engine/values.ts";
import { cellText } from "../job/format.ts";
import type { Job } from "../job/job.ts";
import { renameName } from "../job/whole-sheets.ts";
import { openPanel } from "./open-panel.ts";
import { panelStyle } from "./panel-style.ts";
import { sentence } from "./sentence.ts";
import { wordStyle } from "./word-style.ts";

/** The names of a job: where each points, what stands there; to go there, to make new ones, to change and delete them. */
@customElement("name-list")
export class NameList extends LitElement {
  static override styles = [
    wordStyle,
    panelStyle,
    css`
      table {
        width: 100%;
        border-collapse: collapse;
      }
      th,
      td {
        padding: 2px var(--s2);
        border-bottom: 1px solid var(--rule);
        text-align: left;
        overflow-wrap: anywhere;
      }
      td.acts {
        text-align: right;
        white-space: nowrap;
      }
      input:not([type="checkbox"]) {
        min-height: max(28px, var(--target) - 8px);
        width: 12em;
        padding: 2px var(--s2);
        border: 1px solid var(--rule-2);
        background: var(--blue-wash);
        color: var(--ink);
        font: inherit;
      }
      form {
        display: flex;
        flex-wrap: wrap;
        gap: var(--s2);
        align-items: center;
      }
      .wrong {
        margin: 0;
        min-height: 1.35em;
        color: var(--error);
        font-weight: 700;
      }
    `,
  ];

  @property({ attribute: false }) job: Job | undefined;
  /** What is chosen in the grid, as `Thread!B2`: a new name points there unless another place is typed. */
  @property() here = "";
  @state() private renaming: string | undefined;
  @state() private wrong = "";
  @state() private told = "";
  @query("dialog") private readonly dialog!: HTMLDialogElement;

  show(): void {
    this.renaming = undefined;
    this.wrong = "";
    this.told = "";
    this.requestUpdate();
    openPanel(this.dialog);
  }

  override render() {
    const names = Object.entries(this.job?.document.names ?? {}).sort(([a], [b]) => a.localeCompare(b, "en"));
    return html`<dialog aria-labelledby="title">
      <div class="head">
        <h1 id="title">Names</h1>
        <button class="act go" @click=${() => this.dialog.close()}>Back to the job</button>
      </div>
      <div class="body" tabindex="0" role="region" aria-label="All names">
        <p class="wrong" role="alert">${this.wrong}</p>
        <div class="sr" role="status">${this.told}</div>
        ${
          names.length === 0
            ? html`<p>No cell has a name yet. Formulas can use a name anywhere in the job.</p>`
            : html`<table>
                <thead>
                  <tr>
                    <th scope="col">Name</th>
                    <th scope="col">Stands for</th>
                    <th scope="col">Shows</th>
                    <th scope="col"><span class="sr">What to do</span></th>
                  </tr>
                </thead>
                <tbody>
                  ${names.map(([name, target]) => this.row(name, target))}
                </tbody>
              </table>`
        }
      </div>
      <div class="foot">
        <form aria-label="New name" @submit=${this.onAdd}>
          <label>New name <input name="name" autocomplete="off" spellcheck="false" /></label>
          <label>for <input name="place" autocomplete="off" spellcheck="false" .value=${this.here} /></label>
          <button class="act" type="submit">Name it</button>
        </form>
      </div>
    </dialog>`;
  }

  private row(name: string, target: string) {
    return html`<tr>
      <th scope="row">
        ${
          this.renaming === name
            ? html`<input
                aria-label="New spelling of ${name}"
                .value=${name}
                @keydown=${(event: KeyboardEvent) => this.onNameKey(event, name)}
              />`
            : name
        }
      </th>
      <td>${target}</td>
      <td>${this.shows(target)}</td>
      <td class="acts">
        <button class="act" @click=${() => this.go(target)}>Go<span class="sr"> to ${name}</span></button>
        <button class="act" @click=${() => this.rename(name)}>Rename<span class="sr"> ${name}</span></button>
        <button class="act" @click=${() => this.drop(name)}>Delete<span class="sr"> ${name}</span></button>
      </td>
    </tr>`;
  }

  private shows(target: string) {
    const { job } = this;
    const place = placeOf(target);
    if (!job || !place) return nothing;
    const { top, left, bottom, right } = place;
    if (top !== bottom || left !== right) return `${(bottom - top + 1) * (right - left + 1)} cells`;
    return cellText(job.cell(place.sheet, top, left), job.unit);
  }

  private go(target: string) {
    const place = placeOf(target);
    if (!place) return;
    this.dialog.close();
    const detail: Place = { sheet: place.sheet, row: place.top, column: place.left };
    this.dispatchEvent(new CustomEvent<Place>("name-go", { detail }));
  }

  private async rename(name: string) {
    this.renaming = name;
    await this.updateComplete;
    const field = this.renderRoot.querySelector<HTMLInputElement>("td input, th input");
    field?.focus();
    field?.select();
  }

  private onNameKey(event: KeyboardEvent, name: string) {
    if (event.isComposing || (event.key !== "Enter" && event.key !== "Escape")) return;
    event.preventDefault();
    event.stopPropagation();
    const to = (event.target as HTMLInputElement).value.trim();
    const reason = event.key === "Enter" && this.job ? renameName(this.job, name, to) : undefined;
    this.answer(reason, event.key === "Enter" ? `Renamed ${name} to ${to}` : "");
    if (reason === undefined) this.renaming = undefined;
  }

  private drop(name: string) {
    this.job?.removeName(name);
    this.answer(undefined, `Deleted the name ${name}; Undo takes it back`);
  }

  private readonly onAdd = (event: Event) => {
    event.preventDefault();
    const form = event.target as HTMLFormElement;
    const [name, place] = ["name", "place"].map((part) => form.elements.namedItem(part) as HTMLInputElement);
    const typed = name!.value.trim();
    const names = Object.keys(this.job?.document.names ?? {});
    const taken = names.find((other) => other.toLowerCase() === typed.toLowerCase());
    const reason =
      taken === undefined
        ? this.job?.setName(typed, place!.value.trim())
        : `there is a name ${taken} already`;
    this.answer(reason, `Named ${place!.value} ${typed}`);
    if (reason === undefined) name!.value = "";
  };

  private answer(reason: string | undefined, done: string) {
    this.wrong = reason === undefined ? "" : sentence(reason);
    this.told = reason === undefined ? done : "";
    this.requestUpdate();
  }
}

function placeOf(target: string) {
  const found = splitSheet(target);
  const area = found && parseRange(found.rest);
  return found && area ? { sheet: found.sheet, ...area } : undefined;
}

declare global {
  interface HTMLElementTagNameMap {
    "name-list": NameList;
  }
}
