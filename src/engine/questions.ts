/** What can be asked about cells besides their values. The answer takes the whole engine, and is given where that is. */
import { type Cone, keyOf } from "./cone.ts";
import type { Engine } from "./engine.ts";
import type { CellValue, Place } from "./values.ts";
import { readersIn } from "./whole.ts";

export type Question =
  /** One formula as if it stood on `sheet`, the first one if not said; nothing is changed. */
  | { readonly kind: "evaluate"; readonly formula: string; readonly sheet: string | undefined }
  /** Every cell that the value of `place` is reckoned from, the near ones first. */
  | { readonly kind: "precedents"; readonly place: Place }
  /** The first cells whose formula reads `place`, in reading order. */
  | { readonly kind: "readers"; readonly place: Place; readonly most: number }
  /** Results with other values in some cells; the job stays as it is. Without values: what depends on what. */
  | {
      readonly kind: "trial";
      readonly results: readonly Place[];
      readonly inputs: readonly Place[];
      readonly values: readonly CellValue[];
    };

export interface Answer {
  readonly places: readonly Place[];
  /** For each result, whether it depends on an input at all. */
  readonly dependent: readonly boolean[];
  readonly values: readonly CellValue[];
  /** Of a formula. */
  readonly given: CellValue | CellValue[][];
}

const nothing: Answer = { places: [], dependent: [], values: [], given: null };

export class Answering {
  /** The cells of the last trial: they are tried again and again. */
  private cut:
    | { readonly of: string; readonly cone: Cone; readonly dependent: readonly boolean[] }
    | undefined;

  constructor(private readonly engine: Engine) {}

  answer(question: Question): Answer {
    const { engine } = this;
    switch (question.kind) {
      case "evaluate":
        return { ...nothing, given: engine.evaluate(question.formula, question.sheet) };
      case "precedents":
        return { ...nothing, places: engine.precedents(question.place) };
      case "readers":
        return { ...nothing, places: this.readers(question.place).slice(0, question.most) };
      case "trial": {
        const { results, inputs, values } = question;
        const of = JSON.stringify([results, inputs]);
        if (this.cut?.of !== of) this.cut = { of, ...engine.cone(results, inputs) };
        const { cone, dependent } = this.cut;
        return {
          ...nothing,
          dependent,
          values: values.length === 0 ? [] : cone.at(values).map(({ value }) => value),
        };
      }
    }
  }

  /** The cells hold something else. */
  forget(): void {
    this.cut = undefined;
  }

  private readers(place: Place): Place[] {
    const { hf, held } = this.engine.inner;
    const found = new Map(readersIn(hf, held.cellAt(place)).map((cell) => [keyOf(cell), cell]));
    const inOrder = [...found.values()].sort((a, b) => a.sheet - b.sheet || a.row - b.row || a.col - b.col);
    return inOrder.map((cell) => held.placeAt(cell));
  }
}
