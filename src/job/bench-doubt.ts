/** Whether the last reading at the bench goes with what was wound before it. */
import { contradicts, goesIn } from "../lathe/still-to-cut.ts";
import { proofOfReading } from "./bench-proof.ts";
import { latheOf, type Round, runOf } from "./bench-run.ts";
import type { Job } from "./job.ts";
import type { Step, Steps } from "./steps.ts";

/** Radial depths still to go. */
export interface Doubt {
  /** What the divisions wound so far should have left. */
  readonly due: number;
  /** What the reading leaves. */
  readonly left: number;
}

/**
 * The doubt about the last of these readings; undefined where it goes with the winding, or the job does not say enough.
 *
 * A reading that is not doubted is what the next one is held to, since it tells more than the dial. One that is doubted is
 * not: the winding is counted on from the good one before it.
 */
export function doubtOf(job: Job, plan: Steps, rounds: readonly Round[]): Doubt | undefined {
  const { depth } = plan;
  const step = divisionsOf(job);
  if (depth === undefined || !step) return undefined;
  const run = runOf(job, plan, rounds);
  const first = run.slice(0, (rounds[0]?.at ?? 0) + 1);
  let deep = Math.max(0, first.findLast((each) => each.depth !== undefined)?.depth ?? 0);
  let upTo = first.length;
  let doubt: Doubt | undefined;
  for (const { at, reading } of rounds) {
    deep += woundIn(run.slice(upTo, at + 1), step);
    upTo = Math.max(upTo, at + 1);
    const { rest: left, again } = proofOfReading(job, reading);
    doubt = undefined;
    // What cannot be of this thread is refused with words of its own.
    if (left === undefined || again) continue;
    if (contradicts(deep, depth - left, step.slide)) doubt = { due: Math.max(0, depth - deep), left };
    else deep = Math.max(0, depth - left);
  }
  return doubt;
}

function woundIn(steps: readonly Step[], { slide, cross }: { slide: number; cross: number }): number {
  return steps.reduce((sum, { kind, wind = 0 }) => {
    if (kind === "slide") return sum + wind * slide;
    return kind === "straight in" ? sum + wind * cross : sum;
  }, 0);
}

/** What a division of either slide goes in; undefined where the job does not say, or no lathe has it. */
function divisionsOf(job: Job) {
  const lathe = latheOf(job);
  try {
    return lathe && goesIn(lathe);
  } catch (error) {
    if (error instanceof RangeError) return undefined;
    throw error;
  }
}
