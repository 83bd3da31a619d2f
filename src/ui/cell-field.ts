/** The field with colours in which a formula is written in its cell, and when it is there. */
import { html, type TemplateResult } from "lit";
import { cellName } from "../engine/address.ts";
import type { Place } from "../engine/values.ts";
import type { SheetFunction } from "../functions/declare.ts";
import type { Job } from "../job/job.ts";
import type { Edit } from "./edit-session.ts";
import type { FieldState } from "./formula-field.ts";
import { inksOf, offersFor } from "./formula-offers.ts";

export interface CellFieldHost {
  readonly job: Job | undefined;
  readonly sheet: string;
  readonly functions: readonly SheetFunction[];
  /** False under a finger, whose keyboard knows plain fields best. */
  readonly rich: boolean;
}

export class CellField {
  /** Cell of the edit that it was decided for: the field does not change under an edit. */
  private begun: Place | undefined;
  private coloured = false;

  constructor(
    private readonly host: CellFieldHost,
    private readonly typed: (state: FieldState) => void,
    private readonly moved: (state: FieldState) => void,
  ) {}

  /** @returns undefined where the plain field is to be used */
  template(edit: Edit): TemplateResult | undefined {
    const { place, text } = edit;
    if (this.begun !== place) {
      const wanted = this.host.rich && text.startsWith("=");
      this.coloured = wanted && customElements.get("formula-field") !== undefined;
      // Fetched at the first formula, for the next one.
      if (wanted && !this.coloured) void import("./formula-field.ts");
    }
    this.begun = place;
    if (!this.coloured) return undefined;
    return html`<formula-field
      inCell
      label="Cell ${cellName(place.row, place.column)}"
      .text=${text}
      .caret=${edit.caret}
      .inked=${this.inked}
      .offers=${this.offers}
      @typed=${(event: CustomEvent<FieldState>) => this.typed(event.detail)}
      @caret=${(event: CustomEvent<FieldState>) => this.moved(event.detail)}
    ></formula-field>`;
  }

  /** No edit is under way. */
  rest(): void {
    this.begun = undefined;
  }

  private readonly inked = (text: string) => {
    const { job, sheet } = this.host;
    return job ? inksOf(text, job, sheet) : [];
  };

  private readonly offers = (word: string) => {
    const { job, functions } = this.host;
    return job ? offersFor(word, job, functions) : [];
  };
}
