/**
 * The pass plan of a job as steps, one to do after the other: what the shop card lists and the bench view shows.
 *
 * Read from the block of PASS.PLAN in the range named `plan`, with the dial in the cells named `slide_per_turn` and
 * `touch_off`. The stops are counted in divisions from zero on the dial, so that what a dial shows is a matter of turns.
 *
 * In a bore the cut is put on by winding back: where the cell named `swing` says so, stops are counted back from touch-off,
 * and the figures of the dial run down.
 */
import { type CellValue, isErrorValue, type Place } from "../engine/values.ts";
import { splitTurns } from "../lathe/dial.ts";
import type { Job } from "./job.ts";
import { namedArea, namedNumber, namedWords } from "./named.ts";

export type StepKind = "scratch" | "slide" | "measure" | "straight in" | "spring";

/** Where a dial stands. */
export interface Stop {
  readonly turns: number;
  readonly division: number;
  /** The figure that the dial of the top slide shows there, where that is not the division: it is wound back. */
  readonly shows?: number;
}

export interface Step {
  readonly kind: StepKind;
  /** As the plan has it: "1", "X", "S". */
  readonly pass: string;
  /** In the plan's own words. */
  readonly what: string;
  /** Divisions to wind on, where the step winds. */
  readonly wind?: number;
  /** Divisions from touch-off on the slide of this step. */
  readonly total?: number;
  readonly from?: Stop;
  readonly to?: Stop;
  /** Radial, in the job's unit. */
  readonly depth?: number;
  /** Radial depth that is left after it by the reading that asked for it. */
  readonly rest?: number;
  /** Chip on each flank, in the job's unit. */
  readonly chip?: { readonly leading: number; readonly trailing: number };
}

export interface Steps {
  readonly steps: readonly Step[];
  /** Divisions in a turn of the top slide's dial; undefined when the job does not say. */
  readonly perTurn: number | undefined;
  /** True when both slides are wound back to put the cut on. */
  readonly back: boolean;
  /** Deepest the plan goes, radial. */
  readonly depth: number | undefined;
  /** Why there are no steps. */
  readonly trouble?: string;
}

const kinds: readonly (readonly [RegExp, StepKind])[] = [
  [/^scratch$/i, "scratch"],
  [/^measure$/i, "measure"],
  [/^X$/i, "straight in"],
  [/^S$/i, "spring"],
  [/^\d+$/, "slide"],
];

function kindOf(value: CellValue): StepKind | undefined {
  return kinds.find(([pattern]) => pattern.test(String(value ?? "")))?.[1];
}

/** Whether the plan has a row below this one: where a function gives it, one of the same block. */
function goesOn(job: Job, { sheet, row, column }: Place): boolean {
  const { spilledFrom } = job.cell(sheet, row, column);
  const below = job.cell(sheet, row + 1, column);
  return kindOf(below.value) !== undefined && (!spilledFrom || below.spilledFrom === spilledFrom);
}

/** @returns the steps, or none and the reason in words */
export function stepsOf(job: Job): Steps {
  const area = namedArea(job, "plan");
  const perTurn = positive(namedNumber(job, "slide_per_turn"));
  const back = /\bback\b/i.test(namedWords(job, "swing") ?? "");
  const none = { steps: [], perTurn, back, depth: undefined };
  if (!area) return { ...none, trouble: "No range of this job is named plan" };
  const touchOff = namedNumber(job, "touch_off") ?? 0;
  const steps: Step[] = [];
  // Wound back, a stop is so many divisions from touch-off, whatever the dial shows there.
  const start = { slide: back ? 0 : touchOff, "straight in": 0 };
  const stood = { ...start };
  const stopAt = (divisions: number, slide: "slide" | "straight in"): Stop => {
    const there = stop(divisions, slide, perTurn);
    if (!back || slide !== "slide" || perTurn === undefined) return there;
    return { ...there, shows: around(touchOff - divisions, perTurn) };
  };
  for (let row = area.top; row <= area.bottom; row++) {
    const at = (column: number) => job.cell(area.sheet, row, area.left + column).value;
    const first = at(0);
    if (isErrorValue(first)) return { ...none, trouble: first.message };
    const kind = kindOf(first);
    if (!kind) continue;
    // A plan that is not whole would leave out the last measurement.
    if (row === area.bottom && goesOn(job, { sheet: area.sheet, row, column: area.left }))
      return {
        ...none,
        trouble: "The plan goes on below the range named plan: name more rows, or let it take fewer passes",
      };
    const wind = numberIn(at(2));
    const total = numberIn(at(3));
    const slide = kind === "slide" || kind === "straight in" ? kind : undefined;
    const stops =
      slide && total !== undefined
        ? {
            from: stopAt(stood[slide], slide),
            to: stopAt(total + start[slide], slide),
          }
        : {};
    if (slide && total !== undefined) stood[slide] = total + start[slide];
    const depth = numberIn(at(6));
    const [leading, trailing] = [numberIn(at(7)), numberIn(at(8))];
    steps.push({
      kind,
      pass: String(first),
      what: String(at(1) ?? ""),
      ...(wind === undefined ? {} : { wind }),
      ...(total === undefined ? {} : { total }),
      ...(depth === undefined ? {} : { depth }),
      ...(leading === undefined || trailing === undefined ? {} : { chip: { leading, trailing } }),
      ...stops,
    });
  }
  const depths = steps.flatMap(({ depth }) => depth ?? []);
  if (steps.length === 0) return { ...none, trouble: "The range named plan is empty" };
  return { steps, perTurn, back, depth: depths.length > 0 ? Math.max(...depths) : undefined };
}

/** A stop as a card says it: "1 + 22", or the bare division where the turns are not known. */
export function stopText({ turns, division }: Stop, perTurn: number | undefined): string {
  return perTurn === undefined ? String(division) : `${turns} + ${division}`;
}

/** Where the dial stands after it was wound on. */
export function windOn(
  from: Stop,
  wind: number,
  kind: "slide" | "straight in",
  perTurn: number | undefined,
): Stop {
  const to = stop(from.turns * (perTurn ?? 0) + from.division + wind, kind, perTurn);
  return from.shows === undefined || perTurn === undefined
    ? to
    : { ...to, shows: around(from.shows - wind, perTurn) };
}

/** The division under the mark, 0 to perTurn. */
function around(division: number, perTurn: number): number {
  const there = ((division % perTurn) + perTurn) % perTurn;
  return Math.abs(there - perTurn) < 1e-9 ? 0 : there;
}

/** The cross slide counts from its own touch-off; how many divisions its turn has the plan does not know. */
function stop(divisions: number, slide: "slide" | "straight in", perTurn: number | undefined): Stop {
  if (slide === "straight in" || perTurn === undefined) return { turns: 0, division: divisions };
  const { turns, rest } = splitTurns(divisions, perTurn);
  return { turns, division: rest };
}

function numberIn(value: CellValue): number | undefined {
  return typeof value === "number" ? value : undefined;
}

function positive(value: number | undefined): number | undefined {
  return value !== undefined && value > 0 ? value : undefined;
}
