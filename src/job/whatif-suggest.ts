/** What the fields of a what-if table and of a search begin with, and the numbers that are typed into them. */
import type { Place } from "../engine/values.ts";
import { readDecimal } from "./decimal.ts";
import type { Job } from "./job.ts";
import { inUnit, readQuantity } from "./quantity.ts";
import { inputsOf } from "./whatif-places.ts";

/** A number, a length or angle with its unit, or a formula without its equals sign; undefined where it is none of these. */
export async function numberFrom(job: Job, text: string, sheet: string): Promise<number | undefined> {
  const typed = text.trim();
  if (typed === "" || plainNumber(job, typed) !== undefined) return plainNumber(job, typed);
  const value = await job.evaluate(typed.startsWith("=") ? typed : `=${typed}`, sheet);
  return typeof value === "number" ? value : undefined;
}

/** The same where nothing has to be reckoned for it; undefined for a formula. */
export function plainNumber(job: Job, text: string): number | undefined {
  const quantity = readQuantity(text);
  if (quantity) return inUnit(quantity, quantity.kind === "angle" ? "deg" : job.unit);
  const number = readDecimal(text)?.text ?? text;
  return /^\s*[+-]?(?:\d+\.?\d*|\.\d+)(?:e[+-]?\d+)?\s*$/i.test(number) ? Number(number) : undefined;
}

export interface Steps {
  readonly first: number;
  readonly step: number;
  readonly count: number;
}

/** Eleven round values about the present one; words to choose from where the cell has them. */
export function suggestedValues(job: Job, { sheet, row, column }: Place): Steps | readonly string[] {
  const { value, choices } = job.cell(sheet, row, column);
  if (choices?.length) return choices;
  if (typeof value !== "number") return typeof value === "string" && value !== "" ? [value] : [];
  const step = roundStep(Math.abs(value) / 20);
  const middle = Math.round(value / step) * step;
  const lowest = middle - 5 * step;
  return { first: tidy(value > 0 && lowest <= 0 ? step : lowest), step: tidy(step), count: 11 };
}

/** From nothing to twice the present value. */
export function suggestedLimits(job: Job, { sheet, row, column }: Place): { from: number; to: number } {
  const { value } = job.cell(sheet, row, column);
  const now = typeof value === "number" ? value : 0;
  if (now === 0) return { from: -1, to: 1 };
  const far = tidy(2 * now);
  return now > 0 ? { from: 0, to: far } : { from: far, to: 0 };
}

/** The nearest of 1, 2 and 5 with any zeros. */
function roundStep(size: number): number {
  if (!(size > 0)) return 1;
  const power = 10 ** Math.floor(Math.log10(size));
  const digit = size / power;
  return power * (digit < 1.5 ? 1 : digit < 3.5 ? 2 : digit < 7.5 ? 5 : 10);
}

function tidy(number: number): number {
  return Number(number.toPrecision(6));
}

/** The first likely input on which a result really depends where it stands now; the likeliest one where none shows. */
export async function likelyInput(
  job: Job,
  result: Place,
  pause?: () => Promise<void>,
): Promise<Place | undefined> {
  const all = await inputsOf(job, result, pause);
  const isNumber = ({ sheet, row, column }: Place) => typeof job.cell(sheet, row, column).value === "number";
  const isBlank = ({ sheet, row, column }: Place) => job.cell(sheet, row, column).format.role === "input";
  const numbers = all.filter(isNumber);
  const blanks = numbers.filter(isBlank);
  const formulas = numbers.filter((one) => !isBlank(one));
  return (
    (await firstThatMatters(job, result, blanks.slice(0, few))) ??
    (await firstThatMatters(job, result, formulas.slice(0, few))) ??
    all[0]
  );
}

/** Inputs that are tried before one is offered. */
const few = 4;

async function firstThatMatters(
  job: Job,
  result: Place,
  inputs: readonly Place[],
): Promise<Place | undefined> {
  if (inputs.length === 0) return undefined;
  const now = inputs.map(({ sheet, row, column }) => job.cell(sheet, row, column).value as number);
  const trial = await job.trial([result], inputs);
  const shown = async (values: readonly number[]) => JSON.stringify(await trial.at(values));
  const before = await shown(now);
  for (const [i, input] of inputs.entries())
    for (const factor of [1.1, 0.8]) {
      const other = now.map((value, at) => (at === i ? value * factor + 0.01 : value));
      if ((await shown(other)) !== before) return input;
    }
  return undefined;
}
