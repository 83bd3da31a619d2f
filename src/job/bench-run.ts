/**
 * The steps at the bench: those of the plan, and after each reading those that it asks for instead of the planned ones.
 *
 * A reading in its limits ends the cutting. One that is not asks for passes on the top slide as long as more is left than
 * is kept for the cross slide, else straight in with spring passes; either way the thread is measured again. One that cannot
 * be of this thread asks for nothing but another.
 */
import type { DialReads } from "../lathe/dial.ts";
import { type Cuts, cutsFor } from "../lathe/still-to-cut.ts";
import { proofOfReading } from "./bench-proof.ts";
import type { Job } from "./job.ts";
import { namedNumber, namedWords } from "./named.ts";
import { type Step, type Steps, type Stop, windOn } from "./steps.ts";

/** A reading, and the index of the step after which it was taken. */
export interface Round {
  readonly at: number;
  readonly reading: number;
}

const again: Step = { kind: "measure", pass: "measure", what: "stop, isolate, measure again" };

/** The steps of the plan with those after each reading in place. */
export function runOf(job: Job, plan: Steps, rounds: readonly Round[]): readonly Step[] {
  let run = plan.steps;
  for (const { at, reading } of rounds) {
    if (at >= run.length) break;
    const done = run.slice(0, at + 1);
    run = [...done, ...askedBy(job, plan, done, run.slice(at + 1), reading)];
  }
  return run;
}

/** Steps that a reading asks for after those that are done; what was to come where the job does not say enough. */
function askedBy(
  job: Job,
  plan: Steps,
  done: readonly Step[],
  ahead: readonly Step[],
  reading: number,
): readonly Step[] {
  const { state, rest, again: doubted } = proofOfReading(job, reading);
  if (doubted) return [again];
  if (state === "in limits" || state === "past") return [];
  if (rest === undefined) return ahead;
  if (rest === 0) return [];
  const lathe = latheOf(job);
  const slideWinds = (steps: readonly Step[]) =>
    steps.flatMap(({ kind, wind }) => (kind === "slide" && wind !== undefined ? wind : []));
  const planned = slideWinds(plan.steps);
  if (!lathe || planned.length === 0) return ahead;
  let cuts: Cuts;
  try {
    cuts = cutsFor({ ...lathe, rest, planned: slideWinds(ahead), lightest: Math.min(...planned) });
  } catch (error) {
    if (error instanceof RangeError) return [again];
    throw error;
  }
  const after = new Winding(plan, done, rest);
  const slide = cuts.slide.map((wind) => after.on("slide", wind, cuts.step.slide));
  if (slide.length > 0) return [...slide, again];
  const straight = Array.from({ length: cuts.cross }, () => after.on("straight in", 1, cuts.step.cross));
  const springs = plan.steps.filter(({ kind }) => kind === "spring").length;
  return [...straight, ...Array.from({ length: Math.max(1, springs) }, () => after.spring()), again];
}

/** Winds on from where the dials stand after the steps that are done. */
class Winding {
  private readonly stands: Record<"slide" | "straight in", Stop>;
  private passes: number;

  constructor(
    private readonly plan: Steps,
    done: readonly Step[],
    private rest: number,
  ) {
    const stand = (kind: "slide" | "straight in") =>
      done.findLast((step) => step.kind === kind)?.to ??
      (kind === "slide" ? plan.steps.find((step) => step.kind === kind)?.from : undefined) ?? {
        turns: 0,
        division: 0,
      };
    this.stands = { slide: stand("slide"), "straight in": stand("straight in") };
    this.passes = done.filter(({ kind }) => kind === "slide").length;
  }

  on(kind: "slide" | "straight in", wind: number, radialStep: number): Step {
    const from = this.stands[kind];
    const to = windOn(from, wind, kind, this.plan.perTurn);
    this.stands[kind] = to;
    this.rest = Math.max(0, this.rest - wind * radialStep);
    const what = kind === "slide" ? "slide" : "straight in, cross slide";
    if (kind === "slide") this.passes += 1;
    const pass = kind === "slide" ? String(this.passes) : "X";
    return { kind, pass, what, wind, from, to, ...this.left() };
  }

  spring(): Step {
    return { kind: "spring", pass: "S", what: "spring", ...this.left() };
  }

  private left(): Pick<Step, "rest" | "depth"> {
    const { depth } = this.plan;
    return { rest: this.rest, ...(depth === undefined ? {} : { depth: Math.max(0, depth - this.rest) }) };
  }
}

/** What the slides of this job do; undefined where it does not name all of it. */
export function latheOf(job: Job) {
  const slideDivision = namedNumber(job, "slide_moves") ?? namedNumber(job, "slide_division");
  const setover = namedNumber(job, "setover");
  const straightIn = namedNumber(job, "straight_in");
  const crossDivision = namedNumber(job, "cross_division");
  const leastCut = namedNumber(job, "least_cut");
  const reads = namedWords(job, "cross_reads") ?? "radius";
  if (
    slideDivision === undefined ||
    setover === undefined ||
    straightIn === undefined ||
    crossDivision === undefined ||
    leastCut === undefined ||
    (reads !== "radius" && reads !== "diameter")
  )
    return undefined;
  const crossReads: DialReads = reads;
  return { slideDivision, setover, straightIn, crossDivision, leastCut, crossReads };
}

/** What a plan is known by: another one makes the place in it, and its readings, doubtful. */
export function planMark({ steps }: Steps): string {
  return steps.map(({ pass, wind }) => `${pass}${wind === undefined ? "" : `+${wind}`}`).join(" ");
}

/** What comes next after a reading, in sentences; "" when nothing does. */
export function askedInWords(steps: readonly Step[]): string {
  const count = (kind: Step["kind"]) => steps.filter((step) => step.kind === kind).length;
  const wound = (kind: Step["kind"]) =>
    steps.reduce((sum, step) => sum + (step.kind === kind ? (step.wind ?? 0) : 0), 0);
  const passes = (many: number, word: string) => `${many} ${word}${many === 1 ? "" : "es"}`;
  const divisions = (many: number) => `${many} ${many === 1 ? "division" : "divisions"}`;
  if (steps.length === 0) return "";
  const slide = count("slide");
  const straight = count("straight in");
  const springs = count("spring");
  const measured = steps.at(-1)?.kind === "measure";
  if (measured && steps.length === 1) return "Next: measure again.";
  const parts = [
    ...(slide > 0 ? [`${passes(slide, "pass")} on the top slide, ${divisions(wound("slide"))} in all`] : []),
    ...(straight > 0 ? [`${divisions(wound("straight in"))} straight in on the cross slide`] : []),
    ...(springs > 0 ? [passes(springs, "spring pass")] : []),
    ...(measured ? ["then measure"] : []),
  ];
  // The sheet says what all that is left would be on either slide: here is why less is wound.
  const why = !measured
    ? ""
    : slide > 0 && straight === 0
      ? " The rest is kept for the cross slide."
      : slide === 0 && straight > 0
        ? " What is left is for the cross slide."
        : slide === 0 && springs > 0
          ? " Less than a division of the cross slide is left."
          : "";
  return `Next: ${parts.join(", ")}.${why}`;
}
