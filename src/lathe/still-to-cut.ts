/**
 * What a reading asks for: the depth still to go as whole divisions, on the top slide as long as that leaves what is kept
 * for the cross slide, else straight in. After either the thread is measured again.
 *
 * Lengths radial, in any one unit; wound travel along the slide that is wound. Common practice, no source; that winding
 * never goes past the depth still to go is geometry: a slide set over by a goes in by cos a of what is wound.
 */
import { ceilWhole, cos, floorWhole, requireAbove, requireSetover, requireWithin } from "./bounds.ts";
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
  const { rest, slideDivision, setover, straightIn, crossDivision, crossReads, leastCut, lightest } = asked;
  requireAbove("rest", rest);
  requireAbove("slide_division", slideDivision);
  requireSetover(setover);
  requireWithin("straight_in", straightIn, 0);
  requireWithin("least_cut", leastCut, 0);
  const crossStep = stepOf(crossDivision, crossReads);
  const least = Math.max(1, ceilWhole(leastCut / slideDivision));
  requireWithin("lightest", lightest, 1);
  const step = { slide: slideDivision * cos(setover), cross: crossStep };
  const total = floorWhole((rest - straightIn) / step.slide);
  if (total < least) {
    const cross = floorWhole(rest / crossStep);
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

function tooMany(rest: number): RangeError {
  return new RangeError(`rest must take at most ${mostPasses} passes, got ${rest}`);
}
