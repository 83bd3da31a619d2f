import { html, LitElement, nothing } from "lit";
import { customElement, query, state } from "lit/decorators.js";
import type { Place } from "../engine/values.ts";
import { shownText } from "../job/format.ts";
import type { Job } from "../job/job.ts";
import type { Outcome, Point, Progress } from "../job/solve.ts";
import { outcomeWords, type SeekRequest, seek } from "../job/solve-job.ts";
import { labelOf, placeFrom, wordsFor } from "../job/whatif-places.ts";
import { likelyInput, numberFrom, suggestedLimits } from "../job/whatif-suggest.ts";
import { reasonOf } from "./desk.ts";
import type { Spot } from "./grid-keys.ts";
import { InputOffers } from "./input-offers.ts";
import { later, pause } from "./later.ts";
import { openPanel } from "./open-panel.ts";
import { panelStyle } from "./panel-style.ts";
import { sentence } from "./sentence.ts";
import { whatIfStyle } from "./whatif-style.ts";
import { wordStyle } from "./word-style.ts";

/** What was found, to be written. */
export interface Found {
  readonly request: SeekRequest;
  readonly point: Point;
}

/** How long a slice of the search may take, ms. */
const slice = 10;

type Field = "result" | "wanted" | "input" | "from" | "to";

/** Asks for a value that a cell shall reach by changing another one, and seeks it. Fires `found` with what to write. */
@customElement("seek-dialog")
export class SeekDialog extends LitElement {
  static override styles = [wordStyle, panelStyle, whatIfStyle];

  @state() private job: Job | undefined;
  @state() private sheet = "";
  @state() private fields: Readonly<Record<Field, string>> = {
    result: "",
    wanted: "",
    input: "",
    from: "",
    to: "",
  };
  /** Tries so far, while it seeks. */
  @state() private tries: number | undefined;
  @state() private told = "";
  @state() private wrong = false;
  @state() private found: Found | undefined;
  /** What is sought now. */
  private search: object | undefined;
  private readonly offers = new InputOffers(this);
  /** Settles when an input has been offered. */
  private suggesting: Promise<void> | undefined;
  @query("dialog") private readonly dialog!: HTMLDialogElement;

  /** Opens with the active cell as the one that shall reach a value. */
  show(job: Job, sheet: string, { row, column }: Spot): void {
    this.job = job;
    this.sheet = sheet;
    const place = { sheet, row, column };
    const { text } = job.cell(sheet, row, column);
    this.fields = { result: "", wanted: "", input: "", from: "", to: "" };
    if (text.startsWith("=")) {
      this.fields = { ...this.fields, result: wordsFor(job, place, sheet) };
      this.suggesting = this.suggest(job, place);
    }
    this.forget();
    void this.updateComplete.then(() => {
      openPanel(this.dialog);
      this.renderRoot.querySelector<HTMLInputElement>("[name=wanted]")?.focus();
    });
  }

  /** The input that is likeliest, unless the person has named one by then. */
  private async suggest(job: Job, result: Place): Promise<void> {
    const first = await likelyInput(job, result, pause).catch(() => undefined);
    if (first && this.job === job && this.fields.input === "")
      this.chooseInput(wordsFor(job, first, this.sheet));
  }

  close(): void {
    this.forget();
    this.dialog.close();
  }

  override render() {
    return html`<dialog aria-labelledby="title" @close=${this.forget}>
      <form novalidate autocomplete="off" @submit=${this.onSubmit}>${this.job ? this.body(this.job) : nothing}</form>
    </dialog>`;
  }

  private body(job: Job) {
    const result = placeFrom(job, this.fields.result, this.sheet);
    const input = placeFrom(job, this.fields.input, this.sheet);
    const offers = typeof result === "string" ? [] : this.offers.for(job, result);
    const seeking = this.tries !== undefined;
    return html`<div class="head"><h1 id="title">Seek: the input for a wanted value</h1></div>
      <div class="body">
        <datalist id="inputs">
          ${offers.map((place) => html`<option value=${wordsFor(job, place, this.sheet)}>${labelOf(job, place)}</option>`)}
        </datalist>
        <div class="three">${this.field("result", "Cell")} ${this.field("wanted", "Shall show")}</div>
        <p class="told">${this.now(job, result)}</p>
        <div class="three">
          ${this.field("input", "By changing", true)} ${this.field("from", "From")} ${this.field("to", "To")}
        </div>
        <p class="told">${this.now(job, input)}</p>
      </div>
      <div class="sum ${this.wrong ? "wrong" : this.found ? "good" : ""}">
        <span role="status">${this.told}</span>
        ${seeking ? html`<progress aria-label="Seeking"></progress>` : nothing}
      </div>
      <div class="foot">
        <button type="button" class="act" @click=${() => this.close()}>Back to the job</button>
        ${
          seeking
            ? html`<button type="button" class="act" @click=${this.onStop}>Stop</button>`
            : html`<button class="act ${this.found ? "" : "go"}">Seek</button>`
        }
        ${
          this.found
            ? html`<button type="button" class="act go keep" @click=${this.onKeep}>Keep ${this.shown(this.found.request.input, this.found.point.at)}</button>`
            : nothing
        }
      </div>`;
  }

  private field(name: Field, label: string, offers = false) {
    return html`<label class="field"
      >${label}<input
        name=${name}
        list=${offers ? "inputs" : nothing}
        .value=${this.fields[name]}
        @input=${(event: Event) => this.type(name, (event.target as HTMLInputElement).value)}
        @change=${(event: Event) => name === "input" && this.chooseInput((event.target as HTMLInputElement).value)}
    /></label>`;
  }

  private now(job: Job, place: Place | string): string {
    if (typeof place === "string") return "";
    const { value, format, text } = job.cell(place.sheet, place.row, place.column);
    return `${labelOf(job, place)}, now ${shownText(value, format, job.unit) || "empty"}${text.startsWith("=") ? `, by the formula ${text}` : ""}`;
  }

  private type(name: Field, text: string) {
    this.fields = { ...this.fields, [name]: text };
    this.forget();
  }

  /** Another input brings limits of its own. */
  private chooseInput(input: string) {
    const { job, sheet } = this;
    const place = job && placeFrom(job, input, sheet);
    if (!job || !place || typeof place === "string") return;
    const { from, to } = suggestedLimits(job, place);
    this.fields = { ...this.fields, input, from: String(from), to: String(to) };
  }

  private readonly forget = () => {
    this.search = undefined;
    this.tries = undefined;
    this.found = undefined;
    this.wrong = false;
    this.told = "";
  };

  private readonly onSubmit = async (event: SubmitEvent) => {
    event.preventDefault();
    const { job } = this;
    if (!job || this.search) return;
    this.forget();
    await this.suggesting;
    const { fields } = this;
    const request = await this.request(job);
    if (job !== this.job || fields !== this.fields || this.search) return;
    if (typeof request === "string") this.tell(request, true);
    else void this.seek(job, request);
  };

  private async request(job: Job): Promise<SeekRequest | string> {
    const { fields, sheet } = this;
    const result = placeFrom(job, fields.result, sheet);
    if (typeof result === "string") return `cell: ${result}`;
    const input = placeFrom(job, fields.input, sheet);
    if (typeof input === "string") return `by changing: ${input}`;
    const number = async (name: Field) =>
      (await numberFrom(job, fields[name], sheet).catch(() => undefined)) ?? Number.NaN;
    const [wanted, from, to] = [await number("wanted"), await number("from"), await number("to")];
    return { result, input, wanted, from, to };
  }

  private async seek(job: Job, request: SeekRequest): Promise<void> {
    const search = {};
    this.search = search;
    const seeking = (tries: number) => {
      this.tries = tries;
      this.told = tries === 0 ? "Seeking" : `Seeking, ${tries} tries`;
    };
    let end = performance.now() + slice;
    const goesOn = ({ tries }: Progress) => {
      if (this.search !== search) return false;
      if (performance.now() < end) return true;
      seeking(tries);
      return pause().then(() => {
        end = performance.now() + slice;
        return this.search === search;
      });
    };
    // Before the first step it has to be known which cells lie between.
    later(() => this.search === search && this.tries === undefined && seeking(0));
    const outcome = await seek(job, request, goesOn).catch(reasonOf);
    if (this.search !== search || outcome === undefined) return;
    if (typeof outcome !== "string") this.end(job, request, outcome);
    else {
      this.forget();
      this.tell(outcome, true);
    }
  }

  private end(job: Job, request: SeekRequest, outcome: Outcome) {
    this.forget();
    const show = {
      value: (value: number) => this.shown(request.result, value),
      input: (value: number) => this.shown(request.input, value),
    };
    const words = outcomeWords(job, request, outcome, show, this.sheet);
    this.tell(words, outcome.kind !== "found");
    if (outcome.kind !== "found") return;
    this.found = { request, point: outcome.point };
    void this.updateComplete.then(() => this.renderRoot.querySelector<HTMLElement>(".keep")?.focus());
  }

  private tell(reason: string, wrong: boolean) {
    this.wrong = wrong;
    this.told = sentence(reason);
  }

  /** A number as its cell would show it. */
  private shown({ sheet, row, column }: Place, value: number): string {
    const { job } = this;
    return job ? shownText(value, job.cell(sheet, row, column).format, job.unit) : "";
  }

  private readonly onStop = () => {
    this.forget();
    this.told = "Stopped.";
  };

  private readonly onKeep = () => {
    const { found } = this;
    if (!found) return;
    this.close();
    this.dispatchEvent(new CustomEvent<Found>("found", { detail: found }));
  };
}

declare global {
  interface HTMLElementTagNameMap {
    "seek-dialog": SeekDialog;
  }
}
