/**
 * What a reading asks for: the depth still to go as whole divisions, on the top slide as long as that leaves what is kept
 * for the cross slide, else straight in. After either the thread is measured again.
 *
 * Lengths radial, in any one unit; wound travel along the slide that is wound. Common practice, no source; that winding
 * never goes past the depth still to go is geometry: a slide set over by a goes in by cos a of what is wound.
 */
import { ceilWhole, cos, finite, floorWhole, requireAbove, requireSetover, requireWithin } from "./bounds.ts";
import { type DialReads, stepOf } from "./dial.ts";

export interface StillToCut {
  /** Still to go by the reading, above 0. */
  readonly rest: number;
  /** Travel of the top slide for one division. */
  readonly slideDivision: number;
  readonly setover: number;
  /** Kept for the cross slide. */
  readonly straightIn: number;
  readonly crossDivision: number;
  readonly crossReads: DialReads;
  /** Travel under which a tool rubs. */
  readonly leastCut: number;
  /** Divisions of the slide passes that the plan has still to come. */
  readonly planned: readonly number[];
  /** Divisions of the lightest slide pass of the plan: what a pass at full depth may take. */
  readonly lightest: number;
}

export interface Cuts {
  /** Divisions of each pass on the top slide. */
  readonly slide: readonly number[];
  /** Divisions straight in, one a pass; only when there is nothing for the top slide. */
  readonly cross: number;
  /** Radial depth that one division goes in, on either slide. */
  readonly step: { readonly slide: number; readonly cross: number };
}

/** A reading that asks for more passes than this is no reading. */
const mostPasses = 200;

/** @throws RangeError if a number is outside its range, or the rest would take more than 200 passes */
export function cutsFor(asked: StillToCut): Cuts {
  const { rest, slideDivision, straightIn, leastCut, lightest } = asked;
  requireAbove("rest", rest);
  const step = goesIn(asked);
  requireWithin("straight_in", straightIn, 0);
  requireWithin("least_cut", leastCut, 0);
  const least = Math.max(1, ceilWhole(leastCut / slideDivision));
  requireWithin("lightest", lightest, 1);
  const total = floorWhole((rest - straightIn) / step.slide);
  if (total < least) {
    const cross = floorWhole(rest / step.cross);
    if (cross > mostPasses) throw tooMany(rest);
    return { slide: [], cross, step };
  }
  const slide: number[] = [];
  for (let left = total; left >= least; ) {
    const pass = Math.min(asked.planned[slide.length] ?? Math.max(lightest, least), left);
    slide.push(pass);
    left -= pass;
    if (slide.length > mostPasses) throw tooMany(rest);
  }
  return { slide, cross: 0, step };
}

/** Radial depth that one division goes in. @throws RangeError if a division or the set-over is outside its range */
export function goesIn({
  slideDivision,
  setover,
  crossDivision,
  crossReads,
}: Pick<StillToCut, "slideDivision" | "setover" | "crossDivision" | "crossReads">): Cuts["step"] {
  requireAbove("slide_division", slideDivision);
  requireSetover(setover);
  return { slide: slideDivision * cos(setover), cross: stepOf(crossDivision, crossReads) };
}

/**
 * True when a reading contradicts what was wound: the depth that it shows is further from the depth due than two divisions
 * of the top slide go in, and than a quarter of the depth due. So much may come of work and tool that give way, of the size of
 * the blank and of the point of the tool. Common practice, no source.
 *
 * @param depthDue radial depth that the passes so far should have reached, at least 0
 * @param depthRead the same by the reading; below 0 where the work is larger than it was begun with
 * @param slideStep radial depth of one division of the top slide
 * @throws RangeError if one of them is outside its range
 */
export function contradicts(depthDue: number, depthRead: number, slideStep: number): boolean {
  requireWithin("depth_due", depthDue, 0);
  requireAbove("slide_step", slideStep);
  const allowed = Math.max(2 * slideStep, depthDue / 4);
  return Math.abs(finite("depth_read", depthRead) - depthDue) > allowed + 1e-9;
}

function tooMany(rest: number): RangeError {
  return new RangeError(`rest must take at most ${mostPasses} passes, got ${rest}`);
}
