/** Seeks the number in one cell of a job for which another shows a wanted value. */
import { isErrorValue, type Place } from "../engine/values.ts";
import type { Job } from "./job.ts";
import { isLocked, lockReason } from "./locks.ts";
import { type Outcome, type Point, type Progress, solve } from "./solve.ts";
import { wordsFor } from "./whatif-places.ts";

export interface SeekRequest {
  readonly result: Place;
  readonly wanted: number;
  readonly input: Place;
  readonly from: number;
  readonly to: number;
}

/** Why this cannot be sought; undefined when it can. */
export function seekProblem(job: Job, request: SeekRequest): string | undefined {
  const { result, input, wanted, from, to } = request;
  const words = (place: Place) => wordsFor(job, place);
  if (![wanted, from, to].every(Number.isFinite)) return "the wanted value and the limits must be numbers";
  if (from >= to) return "the second limit must be more than the first";
  const { spilledFrom, locked } = job.cell(input.sheet, input.row, input.column);
  if (spilledFrom !== undefined) return `${words(input)} is filled by the formula in ${spilledFrom}`;
  if (locked) return lockReason(input.row, input.column);
  const same = result.sheet === input.sheet && result.row === input.row && result.column === input.column;
  if (same) return `${words(input)} can't be sought by changing itself`;
  return undefined;
}

/**
 * The search, one reckoning of the cells between the two at each step.
 *
 * @param goesOn is told how often it was tried before each step, and ends the search by false
 * @returns what came of it, or why it could not be sought; undefined when it was ended
 */
export async function seek(
  job: Job,
  request: SeekRequest,
  goesOn: (progress: Progress) => boolean | Promise<boolean> = () => true,
): Promise<Outcome | string | undefined> {
  const problem = seekProblem(job, request);
  if (problem !== undefined) return problem;
  const { result, input, wanted, from, to } = request;
  const trial = await job.trial([result], [input]);
  if (!trial.dependent[0]) return `${wordsFor(job, result)} does not depend on ${wordsFor(job, input)}`;
  const now = job.cell(input.sheet, input.row, input.column).value;
  const search = solve({ wanted, from, to, start: typeof now === "number" ? now : undefined });
  let turn = search.next();
  while (!turn.done) {
    const going = goesOn(turn.value);
    if (going !== true && !(await going)) return undefined;
    const [value] = await trial.at([turn.value.at]);
    turn = search.next(typeof value === "number" ? value : undefined);
  }
  return turn.value;
}

/** Writes what was found into the input: one step. @returns why it could not */
export function takeFound(
  job: Job,
  { result, input, wanted }: SeekRequest,
  { at }: Point,
): string | undefined {
  const sheet = job.document.sheets.find(({ name }) => name === input.sheet);
  if (!sheet) return `there is no sheet "${input.sheet}"`;
  if (isLocked(sheet, input.row, input.column)) return lockReason(input.row, input.column);
  const what = `Sought ${wordsFor(job, result)} ${wanted} by ${wordsFor(job, input)}: ${at}`;
  return job.setCells([{ ...input, text: String(at) }], what);
}

/**
 * What came of it, as a sentence without its full stop.
 *
 * @param show writes a value and an input as they are shown
 * @param sheet cells on it are named without their sheet
 */
export function outcomeWords(
  job: Job,
  { result, input, wanted, from, to }: SeekRequest,
  outcome: Outcome,
  show: { readonly value: (value: number) => string; readonly input: (value: number) => string },
  sheet?: string,
): string {
  const [target, changed] = [wordsFor(job, result, sheet), wordsFor(job, input, sheet)];
  const { value, input: at } = show;
  const between = `with ${changed} from ${at(from)} to ${at(to)}`;
  switch (outcome.kind) {
    case "found":
      return `found: ${changed} ${at(outcome.point.at)} gives ${target} ${value(outcome.point.gives)}`;
    case "jump": {
      const [first, second] =
        outcome.below.at < outcome.above.at ? [outcome.below, outcome.above] : [outcome.above, outcome.below];
      return `no value gives exactly ${value(wanted)}: ${target} jumps from ${value(first.gives)} to ${value(second.gives)} near ${changed} ${at(second.at)}`;
    }
    case "pole":
      return `no solution: ${between}, ${target} is never ${value(wanted)}; it runs off without end near ${at(outcome.near)}`;
    case "none":
      return `no solution: ${between}, ${target} goes from ${value(outcome.least.gives)} to ${value(outcome.most.gives)}; nearest is ${value(outcome.nearest.gives)} at ${at(outcome.nearest.at)}`;
    case "empty":
      return `no solution: ${between}, ${target} is no number anywhere${reason(job, result)}`;
  }
}

function reason(job: Job, { sheet, row, column }: Place): string {
  const { value } = job.cell(sheet, row, column);
  return isErrorValue(value) && value.message !== "" ? `; now it says: ${value.message}` : "";
}
