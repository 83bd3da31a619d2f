/** What the bench view says in words. */
import { html, nothing, type TemplateResult } from "lit";
import { stepName } from "../job/bench.ts";
import type { Doubt } from "../job/bench-doubt.ts";
import { type Step, stopText } from "../job/steps.ts";
import type { BenchJob } from "./bench-view.ts";
import { capital } from "./sentence.ts";

const windOn =
  "Half nuts open, tool clear, carriage back: then wind on. Spindle stopped before you measure or touch the thread.";
const windOnClosed =
  "Half nuts stay closed: tool clear, reverse the spindle until the carriage is back, then wind on. Spindle stopped before you measure or touch the thread.";
const sayings: Readonly<Record<Step["kind"], string>> = {
  scratch: "A scratch only: stop the spindle, then hold a pitch gauge to it before you go on.",
  slide: windOn,
  measure: "Stop and isolate the spindle. Deburr, then measure. No hand near the work while it turns.",
  "straight in":
    "The top slide stays where it is. The cross slide counts from its own touch-off. Spindle stopped before you touch the thread.",
  spring: "The same reading again, until no chip comes. Spindle stopped before you touch the thread.",
};

export function stepWords(step: Step, perTurn: number | undefined): TemplateResult {
  return html`${stepName(step)}${step.to ? html`<br />${stopText(step.to, step.kind === "slide" ? perTurn : undefined)}` : nothing}`;
}

export function sayingOf({ kind }: Step, { closed, plan }: BenchJob): string {
  const saying = kind === "slide" && closed ? windOnClosed : sayings[kind];
  return plan.back ? saying.replace("then wind on", "then wind back") : saying;
}

export function depthText(depth: number, unit: string): string {
  return depth.toFixed(unit === "in" ? 4 : 3);
}

/** A depth in sight: by the reading where there is one here, which the plan's own figures would contradict. */
export function depthFact({ plan, proof, readAt, unit }: BenchJob, step: Step, here: number) {
  const left = (label: string, rest: number) =>
    html`<dl><dt>${label}</dt><dd>${depthText(rest, unit)} ${unit}<small>radial</small></dd></dl>`;
  if (readAt === here && proof.rest !== undefined && !proof.again)
    return left("Left, by the reading", proof.rest);
  if (step.rest !== undefined) return left("Left after, by the reading", step.rest);
  if (step.depth === undefined) return nothing;
  const whole = plan.depth ?? 0;
  return html`<dl><dt>Depth after</dt><dd>${depthText(step.depth, unit)}<small>of ${depthText(whole, unit)} ${unit}, depth of the plan</small><small>${depthText(Math.max(0, whole - step.depth), unit)} left</small></dd></dl>`;
}

/** That the reading does not go with what was wound. */
export function doubtWords({ due, left }: Doubt, unit: string): string {
  const length = (depth: number) => `${depthText(depth, unit)} ${unit}`;
  return `What was wound so far should have left ${length(due)}, this reading leaves ${length(left)}: measure again before you go on.`;
}

/**
 * What to know before what the step says: that the figures are late, the plan another one, or the reading doubtful.
 *
 * @param takes the field stands open, where the doubt is said at length
 */
export function warningWords({ changed, startsAgain, behind, doubt }: BenchJob, takes: boolean) {
  const late = html`${behind ? html`<b>${behind}</b> ` : nothing}${doubt && !takes ? html`<b>The last reading does not go with what was wound: measure again before you go on.</b> ` : nothing}`;
  if (!changed) return late;
  return html`${late}<b>The plan is another one than when you last stood here${startsAgain ? ", so it starts at step 1" : ""}: look where the dial stands.</b> `;
}

/** Whether to start again, with its two answers. */
export function againQuestion({ proof }: BenchJob, again: () => void, goOn: () => void) {
  return html`<b>Start again at pass 1?</b>
    ${proof.state === "no reading" ? "" : "The reading is emptied, which Undo takes back; the log stays."}
    <span class="answers">
      <button class="act go" @click=${again}>Yes, start again</button>
      <button class="act" @click=${goOn}>Go on here</button>
    </span>`;
}

/** The step in hand, for the ear. */
export function spokenWords(step: Step, perTurn: number | undefined, back: boolean | undefined): string {
  const name = capital(stepName(step));
  if (!step.to) return `${name}: ${step.what}`;
  const turns = perTurn !== undefined && step.kind === "slide" ? `${step.to.turns} turn plus ` : "";
  const divisions = step.wind === 1 ? "division" : "divisions";
  return `${name}: wind ${back ? "back" : "on"} by ${step.wind} ${divisions}, to ${turns}${step.to.division}`;
}

/** "of 12", or "1 of 2" where the steps of a kind have no numbers of their own. */
export function ofHowMany(step: Step, steps: readonly Step[], here: number) {
  const same = steps.filter(({ kind }) => kind === step.kind);
  const upToHere = steps.slice(0, here + 1).filter(({ kind }) => kind === step.kind);
  if (step.kind === "slide") return `of ${same.length}`;
  return same.length > 1 ? `${upToHere.length} of ${same.length}` : nothing;
}
