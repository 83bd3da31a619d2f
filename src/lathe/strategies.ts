/**
 * Infeed strategies: the whole schedule of passes for each way of putting on the cut, in whole divisions of the dials.
 *
 *   straight in           cross slide only; both flanks cut
 *   single flank          top slide set over to the trailing flank; the leading edge cuts, the trailing one slides
 *   modified flank        set-over backed off a little; the trailing edge skims
 *   alternating flanks    cross slide in, top slide (along the bed) one side step each time: along the trailing flank,
 *                         then along the leading one, so that the edges take turns
 *   flank then straight   backed off as above, the last passes straight in on the cross slide
 *
 * Every move runs between the two flanks, so that nothing is overcut and the groove ends as the tool's own form. Depths
 * are radial; lengths in any one unit, angles in degrees. Source: common practice, no source; areas and chips geometry.
 */
import { ceilWhole, cos, floorWhole, requireAbove, requireWhole, requireWithin, sin } from "./bounds.ts";
import type { Groove } from "./chip-area.ts";
import { type DialReads, stepOf } from "./dial.ts";
import { cutGroove, type Layer } from "./groove.ts";
import type { Place } from "./groove-outline.ts";
import { sideStep } from "./infeed.ts";
import { MOST_PASSES, tooSmall } from "./plan-divisions.ts";
import { backedOff } from "./setover.ts";
import { type ShareRule, shareOut } from "./strategy-shares.ts";

export const strategies = [
  "straight in",
  "single flank",
  "modified flank",
  "alternating flanks",
  "flank then straight",
] as const;
export type Strategy = (typeof strategies)[number];

/** "whole": stop at the last whole division; "exact": the last pass takes the part of a division that is left. */
export type Ending = "whole" | "exact";

export interface ScheduleRequest {
  readonly strategy: Strategy;
  /** Radial depth to reach. */
  readonly depth: number;
  readonly groove: Groove;
  /** Travel of the top slide for one division. */
  readonly slideDivision: number;
  /** Radial depth: the first pass takes at most this, and no pass less than that. */
  readonly firstDepth: number;
  readonly leastDepth: number;
  readonly rule?: ShareRule;
  /** Of a pass to the one before, for the rule "ratio". */
  readonly ratio?: number;
  /** One division of the cross slide as its dial is marked; that of the top slide when left out. */
  readonly crossDivision?: number | undefined;
  readonly crossReads?: DialReads;
  /** Degrees off the trailing flank, for "modified flank" and "flank then straight". */
  readonly backOff?: number;
  /** Radial depth kept for the cross slide in "flank then straight"; two of its divisions when left out. */
  readonly straightIn?: number | undefined;
  readonly spring?: number;
  readonly ends?: Ending;
}

export interface SchedulePass {
  /** What to do, in words. */
  readonly what: string;
  /** Divisions to wind on each dial, and from zero; the top slide's are signed in "alternating flanks": + leading side. */
  readonly cross: number;
  readonly slide: number;
  readonly crossTotal: number;
  readonly slideTotal: number;
  readonly layer: Layer;
}

export interface Schedule {
  /** Set-over of the top slide, from the line square to the axis; 90, along the bed, in "alternating flanks". */
  readonly setover: number;
  readonly passes: readonly SchedulePass[];
  /** Radial depth reached, and what is left to the wanted one. */
  readonly reached: number;
  readonly rest: number;
  readonly reasons: readonly string[];
}

/** One pass before the groove is reckoned. */
interface Move {
  readonly what: string;
  readonly cross: number;
  readonly slide: number;
}

/** @throws RangeError if a number is outside its range, or when no sensible schedule exists */
export function schedule(request: ScheduleRequest): Schedule {
  const { strategy, depth, groove, slideDivision, firstDepth, leastDepth, spring = 1 } = request;
  requireAbove("depth", depth);
  requireAbove("slide_division", slideDivision);
  requireAbove("first_depth", firstDepth);
  requireWithin("least_depth", leastDepth, 0);
  const springs = requireWhole("spring", spring, 0);
  const crossStep = stepOf(request.crossDivision ?? slideDivision, request.crossReads ?? "radius");
  const setover = setoverOf(request);
  const onSlide = strategy !== "straight in" && strategy !== "alternating flanks";
  const step = onSlide ? slideDivision * cos(setover) : crossStep;
  const kept = strategy === "flank then straight" ? (request.straightIn ?? 2 * crossStep) : 0;
  requireWithin("straight_in", kept, 0);

  const main = mainPasses(request, step, kept);
  const moves: Move[] = main.winds.map((wind, k) => {
    if (onSlide) return { what: "slide", cross: 0, slide: wind };
    if (strategy === "straight in") return { what: "straight in, cross slide", cross: wind, slide: 0 };
    return stepAside(wind, k, wind * crossStep, request);
  });
  if (strategy === "flank then straight") moves.push(...straightMoves(request, main.reached, crossStep));
  if (moves.length + springs > MOST_PASSES) throw tooSmall(`${moves.length + springs} passes`);
  for (let k = 0; k < springs; k++) moves.push({ what: "spring", cross: 0, slide: 0 });

  const passes = cut(moves, groove, setover, slideDivision, crossStep);
  const reached = passes.at(-1)!.layer.place.radial;
  const rest = Math.max(0, depth - reached);
  const reasons = [...main.reasons];
  if (rest > 1e-9 * depth) {
    reasons.push(
      `The schedule ends ${short(rest)} short of the depth: whole divisions are rounded down, and only a measurement may ask for more.`,
    );
  }
  return { setover, passes, reached, rest: rest > 1e-12 * depth ? rest : 0, reasons };
}

function setoverOf({ strategy, groove, backOff = 0.5 }: ScheduleRequest): number {
  if (strategy === "straight in") return 0;
  if (strategy === "alternating flanks") return 90;
  if (strategy === "single flank") return groove.trailing;
  const setover = backedOff(groove.trailing, backOff);
  if (setover > groove.trailing || setover < -groove.leading) {
    throw new RangeError(
      `back_off must be from 0 to the included angle ${groove.leading + groove.trailing}, got ${backOff}`,
    );
  }
  return setover;
}

/** Divisions of the slide that puts on the depth, pass by pass. */
function mainPasses(
  {
    depth,
    groove,
    firstDepth,
    leastDepth,
    rule = "area",
    ratio = 0.8,
    ends = "whole",
    strategy,
  }: ScheduleRequest,
  step: number,
  kept: number,
): { winds: readonly number[]; reached: number; reasons: readonly string[] } {
  const total = floorWhole((depth - kept) / step);
  if (total < 1) {
    throw new RangeError(
      `depth ${depth} must leave one division (${short(step)} radially) at least${kept > 0 ? ` beside straight_in ${short(kept)}` : ""}`,
    );
  }
  if (total > 100_000) throw tooSmall(`${total} divisions`);
  const most = floorWhole(firstDepth / step);
  const least = Math.max(1, ceilWhole(leastDepth / step));
  if (most < 1) {
    throw new RangeError(
      `first_depth must be one division (${short(step)} radially) or more, got ${firstDepth}`,
    );
  }
  if (least > most) {
    throw new RangeError(
      `least_depth must not be more than first_depth in whole divisions, got ${least} and ${most} divisions`,
    );
  }
  const shares = shareOut(rule, { total, most, least, step, groove }, ratio);
  const winds = [...shares.divisions];
  const reasons = [
    ...wholeReasons("first", firstDepth / step, most, step),
    ...wholeReasons("least", leastDepth / step, least, step),
    ...shares.reasons,
  ];
  const left = depth / step - total;
  if (ends === "exact" && strategy !== "flank then straight" && left > 1e-9) {
    winds[winds.length - 1] = winds.at(-1)! + left;
    reasons.push(`The last pass winds ${left.toFixed(2)} of a division more, to end on the depth itself.`);
  }
  return { winds, reached: total * step, reasons };
}

function wholeReasons(which: "first" | "least", exact: number, whole: number, step: number): string[] {
  if (exact === 0 || Math.abs(exact - whole) <= 1e-6) return [];
  return [
    `The ${which} cut is rounded ${which === "first" ? "down" : "up"} to ${whole} ${whole === 1 ? "division" : "divisions"}, ${short(whole * step)} radially.`,
  ];
}

/** In on the cross slide and one step on the top slide, so that the tool moves along one of its flanks. */
function stepAside(
  wind: number,
  k: number,
  deeper: number,
  { groove, slideDivision }: ScheduleRequest,
): Move {
  const along = k % 2 === 0 ? "trailing" : "leading";
  // Rounded down, so that the edge that should slide skims and never leaves its flank.
  const steps = floorWhole(sideStep(deeper, groove[along]) / slideDivision);
  const sign = along === "trailing" ? 1 : -1;
  return {
    what: `in, then a side step along the ${along} flank`,
    cross: wind,
    slide: steps === 0 ? 0 : sign * steps,
  };
}

/** Straight-in passes: a division each, and at the end the part of one when the depth itself is asked for. */
function straightMoves({ depth, ends }: ScheduleRequest, from: number, crossStep: number): Move[] {
  const what = "straight in, cross slide";
  const exact = (depth - from) / crossStep;
  const whole = floorWhole(exact);
  if (whole > MOST_PASSES) throw tooSmall(`${whole} passes straight in`);
  const moves = Array.from({ length: whole }, () => ({ what, cross: 1, slide: 0 }));
  if (ends === "exact" && exact - whole > 1e-9) moves.push({ what, cross: exact - whole, slide: 0 });
  return moves;
}

function cut(
  moves: readonly Move[],
  groove: Groove,
  setover: number,
  slideDivision: number,
  crossStep: number,
): readonly SchedulePass[] {
  // Along the bed the slide puts on no depth at all, not even a crumb.
  const deeper = setover === 90 ? 0 : cos(setover);
  let [cross, slide] = [0, 0];
  const totals = moves.map((move) => {
    cross += move.cross;
    slide += move.slide;
    return { crossTotal: cross, slideTotal: slide };
  });
  const places: Place[] = totals.map(({ crossTotal, slideTotal }) => ({
    axial: slideTotal * slideDivision * sin(setover),
    radial: crossTotal * crossStep + slideTotal * slideDivision * deeper,
  }));
  const layers = cutGroove(groove, places);
  return moves.map((move, k) => ({ ...move, ...totals[k]!, layer: layers[k]! }));
}

/** A length in a sentence: four significant digits. */
function short(length: number): string {
  return String(Number(length.toPrecision(4)));
}
