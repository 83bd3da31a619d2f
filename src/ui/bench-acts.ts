/** What the bench view asks for: the place in the passes, which outlives the page, readings, and a screen that stays lit. */
import {
  benchFacts,
  benchFigure,
  benchVerdict,
  readingEdits,
  readingsOf,
  stepName,
  takesReadings,
} from "../job/bench.ts";
import { stepsOf } from "../job/steps.ts";
import type { BenchAct, BenchJob } from "./bench-view.ts";
import { pictureOf } from "./drawing-cell.ts";
import type { PageActs } from "./page-acts.ts";

interface Standing {
  readonly at: number;
  readonly open: boolean;
}

const place = "halfangle.bench";
/** Jobs whose place is kept; older ones start again at the first pass. */
const mostKept = 20;

export class BenchActs {
  at = 0;
  awake = false;
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

  show(): void {
    const { job, parts } = this.acts;
    if (!job || !this.acts.commit()) return;
    const { steps } = stepsOf(job);
    this.at = Math.max(0, Math.min(this.standing?.at ?? 0, steps.length - 1));
    parts.element("bench-view")?.show();
    this.stand(true);
    void this.keepLit();
    void parts.draw();
  }

  did(did: BenchAct): void {
    const { job, parts } = this.acts;
    if (did.act === "go") {
      this.at = did.at;
      this.stand(true);
    }
    if (did.act === "leave") {
      this.stand(false);
      void this.light?.release().catch(() => undefined);
      this.light = undefined;
    }
    if (did.act === "reading" && job) {
      const step = stepsOf(job).steps[this.at];
      const what = step ? `Reading after ${stepName(step)}` : "Reading";
      this.acts.command(() => job.setCells(readingEdits(job, did.text, step), what));
    }
    void parts.draw();
  }

  /** What the view shows; nothing while it is closed. */
  get view(): BenchJob | undefined {
    const { job } = this.acts;
    if (!job || !this.open) return undefined;
    const plan = stepsOf(job);
    const figure = benchFigure(job, plan.steps, this.at);
    return {
      plan,
      facts: benchFacts(job),
      verdict: benchVerdict(job),
      readings: readingsOf(job),
      takesReadings: takesReadings(job),
      unit: job.unit,
      figure: figure && pictureOf(figure, 240, 124, 1),
    };
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

  private get standing(): Standing | undefined {
    return readPlaces()[this.acts.parts.desk.openId];
  }

  private stand(open: boolean): void {
    const { [this.acts.parts.desk.openId]: _, ...others } = readPlaces();
    const kept = Object.entries(others).slice(-(mostKept - 1));
    const places = Object.fromEntries([...kept, [this.acts.parts.desk.openId, { at: this.at, open }]]);
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
  const { at, open } = kept as Record<string, unknown>;
  return Number.isInteger(at) && typeof open === "boolean";
}
