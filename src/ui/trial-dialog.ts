import { html, LitElement, nothing } from "lit";
import { customElement, query, state } from "lit/decorators.js";
import type { Place } from "../engine/values.ts";
import { shownText } from "../job/format.ts";
import { grouped } from "../job/grouped.ts";
import type { Job } from "../job/job.ts";
import { rangeName } from "../job/references.ts";
import { planTable, type TableInput, type TablePlan, type TableProblem, type Values } from "../job/whatif.ts";
import { areaFrom, labelOf, placeFrom, placesFrom, wordsFor } from "../job/whatif-places.ts";
import { likelyInput, suggestedValues } from "../job/whatif-suggest.ts";
import type { Area } from "./grid-window.ts";
import { InputOffers } from "./input-offers.ts";
import { pause } from "./later.ts";
import { openPanel } from "./open-panel.ts";
import { panelStyle } from "./panel-style.ts";
import { sentence } from "./sentence.ts";
import { TypedNumbers } from "./typed-numbers.ts";
import { whatIfStyle } from "./whatif-style.ts";
import { wordStyle } from "./word-style.ts";

/** Results that a table may show side by side. */
const mostResults = 40;

/** What is typed for one input. */
interface InputFields {
  readonly cell: string;
  readonly kind: Values["kind"];
  readonly first: string;
  readonly step: string;
  readonly count: string;
  readonly list: string;
  readonly range: string;
}

const noInput: InputFields = {
  cell: "",
  kind: "steps",
  first: "",
  step: "",
  count: "",
  list: "",
  range: "",
};

const kinds: readonly (readonly [Values["kind"], string])[] = [
  ["steps", "start and step"],
  ["list", "a list"],
  ["cells", "from cells"],
];

/** Asks for a what-if table: results against values of one or two inputs. Fires `table` with what is to be written. */
@customElement("trial-dialog")
export class TrialDialog extends LitElement {
  static override styles = [wordStyle, panelStyle, whatIfStyle];

  @state() private job: Job | undefined;
  @state() private sheet = "";
  @state() private results = "";
  @state() private down: InputFields = noInput;
  @state() private across: InputFields = noInput;
  @state() private second = false;
  @state() private own = true;
  @state() private corner = "";
  @state() private over = false;
  private readonly offers = new InputOffers(this);
  /** Settles when an input has been offered. */
  private suggesting: Promise<void> | undefined;
  private readonly numbers = new TypedNumbers(this);
  @query("dialog") private readonly dialog!: HTMLDialogElement;

  /** Opens with what is selected: formulas as results, the first blank that they depend on as the input. */
  show(job: Job, sheet: string, selected: Area): void {
    this.job = job;
    this.sheet = sheet;
    this.numbers.forget();
    const results = formulasIn(job, sheet, selected);
    this.results = results.map((place) => wordsFor(job, place, sheet)).join(", ");
    this.down = noInput;
    if (results[0]) this.suggesting = this.suggest(job, results[0]);
    this.across = noInput;
    this.second = this.over = false;
    this.own = true;
    this.corner = rangeName({ ...selected, bottom: selected.top, right: selected.left });
    void this.updateComplete.then(() => openPanel(this.dialog));
  }

  /** The input that is likeliest, unless the person has named one by then. */
  private async suggest(job: Job, result: Place): Promise<void> {
    const first = await likelyInput(job, result, pause).catch(() => undefined);
    if (first && this.job === job && this.down === noInput)
      this.down = this.fieldsFor(wordsFor(job, first, this.sheet));
  }

  close(): void {
    this.dialog.close();
  }

  override render() {
    return html`<dialog aria-labelledby="title">
      <form novalidate autocomplete="off" @submit=${this.onSubmit}>${this.job ? this.body(this.job) : nothing}</form>
    </dialog>`;
  }

  private body(job: Job) {
    const places = placesFrom(job, this.results, this.sheet, mostResults);
    const plan = this.plan(job, places);
    const offers = typeof places === "string" ? [] : this.offers.for(job, places[0]!);
    return html`<div class="head"><h1 id="title">Trial: a what-if table</h1></div>
      <div class="body">
        <label class="field"
          >Results, cells or names with commas between
          <input name="results" .value=${this.results} @input=${this.onResults} />
        </label>
        <p class="told">${
          typeof places === "string"
            ? ""
            : places
                .slice(0, 4)
                .map((place) => this.told(job, place))
                .join("; ")
        }${typeof places !== "string" && places.length > 4 ? `; and ${places.length - 4} more` : ""}</p>
        <datalist id="inputs">
          ${offers.map((place) => html`<option value=${wordsFor(job, place, this.sheet)}>${labelOf(job, place)}</option>`)}
        </datalist>
        ${this.inputPart(job, "down", this.second ? "Input, down the table" : "Input")}
        <label
          ><input type="checkbox" .checked=${this.second} @change=${(event: Event) => (this.second = checked(event))} />a second
          input, across</label
        >
        ${this.second ? this.inputPart(job, "across", "Second input, across the table") : nothing}
        <fieldset>
          <legend>Where</legend>
          <label><input type="radio" name="where" .checked=${this.own} @change=${() => (this.own = true)} />on a sheet of its own</label>
          <label
            ><input type="radio" name="where" .checked=${!this.own} @change=${() => (this.own = false)} />from a cell of the job
            on</label
          >
        </fieldset>
        ${
          this.own
            ? nothing
            : html`<label class="field"
                >Its first cell
                <input name="corner" .value=${this.corner} @input=${(event: Event) => (this.corner = typed(event))} />
              </label>`
        }
        ${
          this.over || ("taken" in plan && plan.taken !== undefined)
            ? html`<label
                ><input type="checkbox" .checked=${this.over} @change=${(event: Event) => (this.over = checked(event))} />write over
                what is there</label
              >`
            : nothing
        }
      </div>
      <p class="sum ${"problem" in plan ? "wrong" : ""}" role="status">${sumOf(plan)}</p>
      <div class="foot">
        <button type="button" class="act" @click=${() => this.close()}>Back to the job</button>
        <button class="act go" aria-disabled=${"problem" in plan || nothing}>Make the table</button>
      </div>`;
  }

  private inputPart(job: Job, which: "down" | "across", legend: string) {
    const fields = this[which];
    const place = placeFrom(job, fields.cell, this.sheet);
    const field = (name: keyof InputFields, label: string) =>
      html`<label class="field"
        >${label}<input
          name="${which} ${name}"
          .value=${fields[name]}
          @input=${(event: Event) => this.change(which, { [name]: typed(event) })}
      /></label>`;
    return html`<fieldset class="part">
      <legend>${legend}</legend>
      <div class="three">
        <label class="field"
          >Cell to change
          <input
            name="${which} cell"
            list="inputs"
            .value=${fields.cell}
            @input=${(event: Event) => this.change(which, { cell: typed(event) })}
            @change=${(event: Event) => this.choose(which, typed(event))}
          />
        </label>
        <label class="field"
          >Values
          <select
            .value=${fields.kind}
            @change=${(event: Event) => this.change(which, { kind: (event.target as HTMLSelectElement).value as Values["kind"] })}
          >
            ${kinds.map(([kind, words]) => html`<option value=${kind} ?selected=${kind === fields.kind}>${words}</option>`)}
          </select>
        </label>
      </div>
      <p class="told">${typeof place === "string" ? "" : this.told(job, place)}</p>
      <div class="three">
        ${
          fields.kind === "steps"
            ? [field("first", "Start"), field("step", "Step"), field("count", "How many")]
            : fields.kind === "list"
              ? field("list", "Values, with semicolons between")
              : field("range", "Cells with the values, such as F2:F9")
        }
      </div>
    </fieldset>`;
  }

  /** What a cell is and shows now. */
  private told(job: Job, place: Place): string {
    const { value, format } = job.cell(place.sheet, place.row, place.column);
    return `${labelOf(job, place)}, now ${shownText(value, format, job.unit) || "empty"}`;
  }

  private plan(job: Job, places: readonly Place[] | string): TablePlan | TableProblem {
    if (typeof places === "string") return { problem: `results: ${places}` };
    const inputs: TableInput[] = [];
    for (const fields of this.second ? [this.down, this.across] : [this.down]) {
      const input = this.inputFrom(job, fields);
      if (typeof input === "string") return { problem: `input: ${input}` };
      inputs.push(input);
    }
    const at = this.own ? undefined : placeFrom(job, this.corner, this.sheet);
    if (typeof at === "string") return { problem: `first cell: ${at}` };
    return planTable(job, { results: places, inputs, at, over: this.over });
  }

  private inputFrom(job: Job, fields: InputFields): TableInput | string {
    const place = placeFrom(job, fields.cell, this.sheet);
    if (typeof place === "string") return place;
    if (fields.kind === "list") return { place, values: { kind: "list", texts: fields.list.split(";") } };
    if (fields.kind === "cells") {
      const area = areaFrom(job, fields.range, this.sheet);
      return typeof area === "string" ? area : { place, values: { kind: "cells", area } };
    }
    const number = (text: string) => this.numbers.of(job, text, this.sheet) ?? Number.NaN;
    const [first, step, count] = [number(fields.first), number(fields.step), number(fields.count)];
    return { place, values: { kind: "steps", first, step, count } };
  }

  private fieldsFor(cell: string): InputFields {
    const { job, sheet } = this;
    const place = job && placeFrom(job, cell, sheet);
    if (!job || !place || typeof place === "string") return { ...noInput, cell };
    const values = suggestedValues(job, place);
    if ("first" in values) {
      const { first, step, count } = values;
      return { ...noInput, cell, first: String(first), step: String(step), count: String(count) };
    }
    return { ...noInput, cell, kind: "list", list: values.join("; ") };
  }

  private change(which: "down" | "across", fields: Partial<InputFields>) {
    this[which] = { ...this[which], ...fields };
  }

  /** Another input brings values of its own. */
  private choose(which: "down" | "across", cell: string) {
    this[which] = this.fieldsFor(cell);
  }

  private readonly onResults = (event: Event) => {
    this.results = typed(event);
  };

  private readonly onSubmit = async (event: SubmitEvent) => {
    event.preventDefault();
    const { job } = this;
    await this.suggesting;
    await this.numbers.settle();
    if (!job || job !== this.job) return;
    const plan = this.plan(job, placesFrom(job, this.results, this.sheet, mostResults));
    if ("problem" in plan) return;
    this.close();
    this.dispatchEvent(new CustomEvent<TablePlan>("table", { detail: plan }));
  };
}

function formulasIn(job: Job, sheet: string, { top, left, bottom, right }: Area): Place[] {
  const found: Place[] = [];
  for (let row = top; row <= bottom && found.length < mostResults; row++)
    for (let column = left; column <= right && found.length < mostResults; column++)
      if (job.cell(sheet, row, column).text.startsWith("=")) found.push({ sheet, row, column });
  return found;
}

function sumOf(plan: TablePlan | TableProblem): string {
  if ("problem" in plan) return sentence(plan.problem);
  const { place, values } = plan;
  return `${grouped(values)} ${values === 1 ? "value" : "values"}, written to ${place.sheet} ${rangeName(place)}. Undo takes the whole table away.`;
}

function typed(event: Event): string {
  return (event.target as HTMLInputElement).value;
}

function checked(event: Event): boolean {
  return (event.target as HTMLInputElement).checked;
}

declare global {
  interface HTMLElementTagNameMap {
    "trial-dialog": TrialDialog;
  }
}
