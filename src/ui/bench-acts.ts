/** What the bench view asks for: the place in the passes, which outlives the page, readings, and a screen that stays lit. */
import { behindWords } from "../job/behind.ts";
import {
  benchFacts,
  benchFigure,
  benchVerdict,
  keepsClosed,
  readingEdits,
  readingIn,
  readingsOf,
  stepName,
  takenOut,
  takesReadings,
  withoutReading,
} from "../job/bench.ts";
import { doubtOf } from "../job/bench-doubt.ts";
import { proofOf } from "../job/bench-proof.ts";
import { planMark, type Round, runOf } from "../job/bench-run.ts";
import type { Job } from "../job/job.ts";
import { type Steps, stepsOf } from "../job/steps.ts";
import type { BenchAct, BenchJob } from "./bench-view.ts";
import { pictureOf } from "./drawing-cell.ts";
import type { PageActs } from "./page-acts.ts";
import { reckoned } from "./reckoned.ts";

interface Standing {
  readonly at: number;
  readonly open: boolean;
  /** Readings that were taken here, each with the step it was taken after. */
  readonly rounds: readonly Round[];
  /** The plan that all this was in. */
  readonly plan: string;
}

const place = "halfangle.bench";
/** Jobs whose place is kept; older ones start again at the first pass. */
const mostKept = 20;

export class BenchActs {
  at = 0;
  awake = false;
  private rounds: readonly Round[] = [];
  private plan = "";
  private problem = "";
  /** The plan was found to be another one as the bench was opened. */
  private anew = false;
  private light: WakeLockSentinel | undefined;

  constructor(private readonly acts: PageActs) {
    // The browser puts the light out when the page is not looked at.
    document.addEventListener("visibilitychange", () => {
      if (document.visibilityState === "visible" && this.open) void this.keepLit();
    });
  }

  private get open(): boolean {
    return this.acts.parts.element("bench-view")?.open ?? false;
  }

  /** Another job is on the desk: goes on where that was left at the bench. */
  opened(): void {
    const standing = this.standing;
    this.at = standing?.at ?? 0;
    if (standing?.open) void this.acts.parts.draw().then(() => this.show());
  }

  async show(): Promise<void> {
    const { job, parts } = this.acts;
    if (!job || !this.acts.commit()) return;
    // The steps come of the values.
    await reckoned(job);
    if (job !== this.acts.job) return;
    const plan = stepsOf(job);
    const { standing } = this;
    this.rounds = standing?.rounds ?? [];
    this.plan = standing?.plan ?? planMark(plan);
    // Values may still be on their way: whether it is another plan, and has as many steps, shows when they have come.
    const another = !job.reckoning && plan.steps.length > 0 && this.plan !== planMark(plan);
    this.at = another ? 0 : (standing?.at ?? 0);
    this.anew = another;
    this.problem = "";
    const bench = await parts.panel("bench-view");
    if (!bench || job !== this.acts.job) return;
    bench.show();
    this.stand(true);
    void this.keepLit();
    void parts.draw();
  }

  did(did: BenchAct): void {
    const { job, parts } = this.acts;
    if (did.act === "go") {
      this.at = did.at;
      this.problem = "";
      if (job) this.follow(stepsOf(job));
      this.stand(true);
    }
    if (did.act === "again" && job) this.startAgain(job);
    if (did.act === "leave") {
      this.stand(false);
      void this.light?.release().catch(() => undefined);
      this.light = undefined;
    }
    if (did.act === "take out" && job) this.takeOut(job, did.index);
    if (did.act === "reading" && job) {
      const { at } = this;
      void reckoned(job).then(() => {
        if (job !== this.acts.job) return;
        this.read(job, did.text, at);
        void parts.draw();
      });
    }
    void parts.draw();
  }

  /** What the view shows; nothing while it is closed. */
  get view(): BenchJob | undefined {
    const { job } = this.acts;
    if (!job || !this.open) return undefined;
    const plan = stepsOf(job);
    this.backInPlan(plan);
    const steps = this.run(job, plan);
    const rounds = this.goodRounds(job, plan);
    const doubt = doubtOf(job, plan, rounds);
    const figure = benchFigure(job, steps, this.at);
    return {
      plan: { ...plan, steps },
      facts: benchFacts(job),
      verdict: benchVerdict(job, doubt !== undefined),
      readings: readingsOf(job),
      takesReadings: takesReadings(job),
      proof: proofOf(job),
      doubt,
      readAt: rounds.at(-1)?.at,
      problem: this.problem,
      changed: this.plan !== planMark(plan),
      startsAgain: this.anew,
      behind: behindWords(job),
      closed: keepsClosed(job),
      unit: job.unit,
      figure: figure && pictureOf(figure, 240, 124, 1),
    };
  }

  /** For another piece of work: the reading in the job is of the one before. */
  private startAgain(job: Job) {
    this.acts.command(() => withoutReading(job));
    this.follow(stepsOf(job));
    this.at = 0;
    this.rounds = [];
    this.problem = "";
    this.stand(true);
  }

  /** @param here the step in hand as the reading was typed */
  private read(job: Job, text: string, here: number) {
    const plan = stepsOf(job);
    const done = this.run(job, plan).slice(0, here + 1);
    // A measuring step is known by what was cut before it.
    const step = done.findLast(({ kind }) => kind !== "measure");
    const reading = readingIn(job, text);
    this.problem = reading === undefined ? `"${text}" is no reading: a number, with a point.` : "";
    if (reading === undefined) return;
    const before = this.goodRounds(job, plan).filter(({ at }) => at < here);
    const what = step ? `Reading after ${stepName(step)}` : "Reading";
    this.acts.command(() => job.setCells(readingEdits(job, text, step), what));
    this.follow(plan);
    this.rounds = [...before, { at: here, reading }];
    this.stand(true);
  }

  private takeOut(job: Job, index: number) {
    const log = readingsOf(job);
    const [before, out] = [log[index - 1], log[index]];
    this.problem = "";
    this.acts.command(() => job.setCells(takenOut(job, index), "Reading taken out of the log"));
    this.stand(true);
    const last = this.rounds.at(-1);
    if (!last || !before || before.after !== out?.after || log[index + 1]) return;
    // One that was read before it after the same step asks for what it did then.
    void reckoned(job).then(() => {
      const { reading } = proofOf(job);
      if (job !== this.acts.job || reading === undefined) return;
      this.rounds = [...this.rounds.filter((round) => round !== last), { at: last.at, reading }];
      this.stand(true);
      void this.acts.parts.draw();
    });
  }

  private run(job: Job, plan: Steps) {
    return runOf(job, plan, this.goodRounds(job, plan));
  }

  /** Readings up to the one that stands in the job: one that was taken back, or is of another plan, asks for nothing. */
  private goodRounds(job: Job, plan: Steps): readonly Round[] {
    if (this.plan !== planMark(plan)) return [];
    const { reading: now } = proofOf(job);
    return this.rounds.slice(0, this.rounds.findLastIndex(({ reading }) => reading === now) + 1);
  }

  /** The person goes on with this plan, whichever it was before. */
  private follow(plan: Steps) {
    const mark = planMark(plan);
    this.anew = false;
    if (this.plan === mark) return;
    this.plan = mark;
    this.rounds = [];
  }

  private async keepLit(): Promise<void> {
    try {
      this.light = await navigator.wakeLock?.request("screen");
      this.awake = this.light !== undefined;
    } catch {
      this.awake = false;
    }
    await this.acts.parts.draw();
  }

  /** Nothing was done in the other plan, and it is the one before again: goes on where that was left. */
  private backInPlan(plan: Steps) {
    if (!this.anew || this.plan !== planMark(plan)) return;
    this.anew = false;
    this.at = this.standing?.at ?? 0;
  }

  private get standing(): Standing | undefined {
    return readPlaces()[this.acts.parts.desk.openId];
  }

  private stand(open: boolean): void {
    const { [this.acts.parts.desk.openId]: _, ...others } = readPlaces();
    const kept = Object.entries(others).slice(-(mostKept - 1));
    const { rounds, plan } = this;
    // Until something is done in another plan the place in the one before is kept.
    const at = this.anew ? (this.standing?.at ?? 0) : this.at;
    const standing: Standing = { at, open, rounds, plan };
    const places = Object.fromEntries([...kept, [this.acts.parts.desk.openId, standing]]);
    try {
      localStorage.setItem(place, JSON.stringify(places));
    } catch {
      // Refused or full: the place then lasts as long as the page.
    }
  }
}

function readPlaces(): Record<string, Standing> {
  try {
    const kept: unknown = JSON.parse(localStorage.getItem(place) ?? "{}");
    if (typeof kept !== "object" || kept === null) return {};
    return Object.fromEntries(Object.entries(kept).filter(([, standing]) => isStanding(standing)));
  } catch {
    return {};
  }
}

function isStanding(kept: unknown): kept is Standing {
  if (typeof kept !== "object" || kept === null) return false;
  const { at, open, rounds, plan } = kept as Record<string, unknown>;
  const whole = Number.isInteger(at) && typeof open === "boolean" && typeof plan === "string";
  return whole && Array.isArray(rounds) && rounds.length < 100 && rounds.every(isRound);
}

function isRound(kept: unknown): kept is Round {
  if (typeof kept !== "object" || kept === null) return false;
  const { at, reading } = kept as Record<string, unknown>;
  return Number.isInteger(at) && (at as number) >= 0 && Number.isFinite(reading);
}
