/** The argument at the caret in words, so that help stands under the thing it explains. */
import { isRequired, type Param, type SheetFunction } from "../functions/declare.ts";
import { generalFunctions } from "../functions/general.ts";
import { callAt } from "../job/formula-parts.ts";

export interface ArgumentWords {
  /** "2 setover", or the whole call of a general function. */
  readonly name: string;
  readonly words: string;
  /** A call that works, as an example. */
  readonly example: string | undefined;
}

/** @returns undefined where the caret stands in no call that is known */
export function argumentWords(
  text: string,
  caret: number,
  functions: readonly SheetFunction[],
): ArgumentWords | undefined {
  const call = callAt(text, caret);
  if (!call) return undefined;
  const fn = functions.find(({ name }) => name === call.name);
  if (!fn) {
    const general = generalFunctions.find(({ name }) => name === call.name);
    return general && { name: general.call, words: general.summary, example: undefined };
  }
  const param = fn.params[call.argument];
  const example = fn.examples[0]?.formula;
  if (!param) return { name: fn.name, words: `takes ${countOf(fn.params.length)}.`, example };
  return { name: `${call.argument + 1} ${param.name}`, words: wordsOf(param), example };
}

function wordsOf(param: Param): string {
  const unit = param.unit ? `Unit: ${param.unit}.` : "";
  const options = param.options ? `${param.options.join(", ")}.` : "";
  const left = isRequired(param)
    ? ""
    : param.fallback === undefined
      ? "May be left out."
      : `${param.fallback} when left out.`;
  return [param.doc, unit, options, left].filter(Boolean).join(" ");
}

function countOf(many: number): string {
  return many === 1 ? "one argument" : many === 0 ? "no argument" : `${many} arguments`;
}
