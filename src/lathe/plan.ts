/**
 * The pass plan: scratch pass, slide passes in whole divisions, a stop to measure, straight in on the cross slide, spring
 * passes.
 *
 * Depth h is radial, the slide is set over by a, one division of it is q: a division goes q cos a deeper. Slide passes
 * stop at floor((h - c) / (q cos a)) divisions, c being kept back for the cross slide. How the divisions are shared out
 * is in plan-divisions.ts. Lengths in any one unit, angles in degrees. Source: common practice, no source.
 */
import {
  ceilWhole,
  cos,
  floorWhole,
  requireAbove,
  requireSetover,
  requireWhole,
  requireWithin,
  sin,
} from "./bounds.ts";
import { type Groove, grooveArea } from "./chip-area.ts";
import { type DialReads, dialReading, stepOf } from "./dial.ts";
import { flankChip } from "./infeed.ts";
import { divideSlide, tooSmall } from "./plan-divisions.ts";

/** No plan has more straight-in and spring passes than this. */
const MOST_FINISHING = 400;
const MOST_DIVISIONS = 100_000;

export interface PlanRequest {
  /** Radial depth to reach. */
  readonly depth: number;
  readonly setover: number;
  readonly groove: Groove;
  /** Travel of the set-over slide for one division of its dial. */
  readonly slideDivision: number;
  /** Slide travel: the first pass takes at most this, and no pass less than that. */
  readonly firstCut: number;
  readonly leastCut: number;
  /** Radial depth kept for the cross slide; two of its divisions when left out. */
  readonly straightIn?: number | undefined;
  /** One division of the cross slide as its dial is marked; that of the slide when left out. */
  readonly crossDivision?: number | undefined;
  readonly crossReads?: DialReads;
  /** Spring passes at the end. */
  readonly spring?: number;
  /** Divisions in a turn of the slide's dial; 0 gives readings in plain divisions. */
  readonly perTurn?: number;
  /** Division of the slide's dial at touch-off. */
  readonly start?: number;
}

/** One line of the plan. A field is absent where it has no meaning. */
export interface PlanRow {
  /** Number of the slide pass, or the kind of the row: "X" straight in, "S" spring. */
  readonly pass: number | "scratch" | "measure" | "X" | "S";
  /** What to do, in words. */
  readonly what: string;
  /** Divisions to wind: of the slide, or of the cross slide when straight in. */
  readonly wind?: number;
  /** Divisions from zero on that dial. */
  readonly total?: number;
  readonly reading?: string;
  /** Slide travel from zero. */
  readonly travel?: number;
  /** Radial depth reached. */
  readonly depth?: number;
  /** Uncut chip thickness on each flank. */
  readonly chipLeading?: number;
  readonly chipTrailing?: number;
  /** Chip area of this pass. */
  readonly area?: number;
}

export interface Plan {
  readonly rows: readonly PlanRow[];
  /** A sentence for every adjustment the plan made; empty when there was none. */
  readonly reasons: readonly string[];
}

/**
 * @throws RangeError if a number is outside its range, if the set-over is above the trailing flank (or a negative one
 *   beyond the leading flank), or if no sensible plan exists
 */
export function planPasses(request: PlanRequest): Plan {
  const { depth, setover, groove, slideDivision: q, firstCut, leastCut, spring = 2 } = request;
  requireAbove("depth", depth);
  requireAbove("slide_division", q);
  requireAbove("first_cut", firstCut);
  requireWithin("least_cut", leastCut, 0);
  refuseMiscut(setover, groove);
  const springs = requireWhole("spring", spring, 0);
  const crossStep = stepOf(request.crossDivision ?? q, request.crossReads ?? "radius");
  const keptBack = request.straightIn ?? 2 * crossStep;
  requireWithin("straight_in", keptBack, 0);

  const step = q * cos(setover);
  const total = floorWhole((depth - keptBack) / step);
  if (total < 1) {
    throw new RangeError(
      `depth ${depth} less straight_in ${short(keptBack)} must leave one division of the slide (${short(step)} radially) at least`,
    );
  }
  if (total > MOST_DIVISIONS) throw tooSmall(`${total} divisions`);
  const most = floorWhole(firstCut / q);
  const least = Math.max(1, ceilWhole(leastCut / q));
  if (most < 1) {
    throw new RangeError(`first_cut must be one slide_division ${q} or more, got ${firstCut}`);
  }
  if (least > most) {
    throw new RangeError(
      `least_cut must not be more than first_cut in whole divisions, got ${least} and ${most} divisions`,
    );
  }
  const slide = divideSlide({ total, most, least, step, groove });
  const rest = depth - total * step;
  const straight = floorWhole(rest / crossStep);
  if (straight + springs > MOST_FINISHING) {
    throw new RangeError(
      `straight_in and spring must make at most ${MOST_FINISHING} passes, got ${straight + springs}: make straight_in smaller`,
    );
  }

  const rows: PlanRow[] = [
    { pass: "scratch", what: "scratch pass, check the pitch" },
    ...slideRows(slide.divisions, step, request),
    { pass: "measure", what: "stop, isolate, deburr, measure" },
    ...straightRows(straight, crossStep, total * step, groove),
  ];
  const reached = total * step + straight * crossStep;
  for (let k = 0; k < springs; k++) rows.push({ pass: "S", what: "spring", depth: reached });
  if (straight + springs > 0) rows.push({ pass: "measure", what: "stop, isolate, measure again" });

  const reasons = [
    ...wholeReasons(request, most, least),
    ...slide.reasons,
    ...straightReasons(rest, keptBack, crossStep, depth),
  ];
  return { rows, reasons };
}

/** @throws RangeError when passes along this set-over would cut outside the finished form */
function refuseMiscut(setover: number, groove: Groove): void {
  requireSetover(setover);
  const past = "so the earlier passes would cut outside the finished form";
  if (setover > groove.trailing + 1e-9) {
    throw new RangeError(
      `no plan is made: setover ${setover} is above the trailing flank ${groove.trailing}, ${past}`,
    );
  }
  if (setover < -groove.leading - 1e-9) {
    throw new RangeError(
      `no plan is made: setover ${setover} is beyond the leading flank ${groove.leading} on the other side, ${past}`,
    );
  }
}

function slideRows(divisions: readonly number[], step: number, request: PlanRequest): PlanRow[] {
  const { setover, groove, slideDivision: q } = request;
  let total = 0;
  return divisions.map((wind, k) => {
    const before = grooveArea(total * step, groove);
    total += wind;
    return {
      pass: k + 1,
      what: "slide",
      wind,
      total,
      reading: slideReading(total, request),
      travel: total * q,
      depth: total * step,
      chipLeading: flankChip(wind * q, setover, groove.leading, "leading"),
      chipTrailing: flankChip(wind * q, setover, groove.trailing, "trailing"),
      area: grooveArea(total * step, groove) - before,
    };
  });
}

/** One row for each division of the cross slide. */
function straightRows(count: number, crossStep: number, from: number, groove: Groove): PlanRow[] {
  return Array.from({ length: count }, (_, k) => {
    const depth = from + (k + 1) * crossStep;
    return {
      pass: "X" as const,
      what: "straight in, cross slide",
      wind: 1,
      total: k + 1,
      reading: String(k + 1),
      depth,
      chipLeading: crossStep * sin(groove.leading),
      chipTrailing: crossStep * sin(groove.trailing),
      area: grooveArea(depth, groove) - grooveArea(from + k * crossStep, groove),
    };
  });
}

/** Sentences for what the cross slide gets besides what was kept back for it. */
function straightReasons(rest: number, keptBack: number, crossStep: number, depth: number): string[] {
  const reasons: string[] = [];
  const straight = floorWhole(rest / crossStep);
  const asked = floorWhole(keptBack / crossStep);
  if (straight > asked) {
    reasons.push(
      `The slide stops on a whole division, which leaves ${straight} divisions for the cross slide instead of ${asked}.`,
    );
  }
  const left = rest - straight * crossStep;
  if (left <= 1e-9 * depth) return reasons;
  reasons.push(
    straight === 0
      ? `The slide ends ${short(left)} short of the depth, less than a division of the cross slide: only a measurement may ask for more.`
      : `Straight in ends ${short(left)} short of the depth: whole divisions are rounded down, and only a measurement may ask for more.`,
  );
  return reasons;
}

function slideReading(total: number, { slideDivision, perTurn = 0, start = 0 }: PlanRequest): string {
  requireWithin("per_turn", perTurn, 0);
  if (perTurn > 0)
    return dialReading(total * slideDivision, slideDivision, perTurn, start === 0 ? undefined : start);
  requireWithin("start", start, 0);
  return String(Math.round((start + total) * 10) / 10);
}

/** Sentences for limits that are no whole number of divisions. */
function wholeReasons(
  { firstCut, leastCut, slideDivision: q }: PlanRequest,
  most: number,
  least: number,
): string[] {
  const reasons: string[] = [];
  if (Math.abs(firstCut / q - most) > 1e-6) {
    reasons.push(`The first cut is rounded down to ${most} divisions, ${short(most * q)}.`);
  }
  if (leastCut > 0 && Math.abs(leastCut / q - least) > 1e-6) {
    reasons.push(`The least cut is rounded up to ${least} divisions, ${short(least * q)}.`);
  }
  return reasons;
}

/** A length in a sentence: four significant digits. */
function short(length: number): string {
  return String(Number(length.toPrecision(4)));
}
