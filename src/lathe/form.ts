/**
 * The triangle and the trapezium that a thread form is made of, in the axial plane.
 *
 *      |<------ P ------>|
 *         c
 *       ____             __      c crest flat, r root flat
 *      /    \           /        l leading, t trailing flank angle, from the line square to the axis
 *     /   l | t\       /         h depth; H height of the triangle when c = r = 0
 *    /           \____/
 *                  r
 *
 * Lengths in any one unit, angles in degrees. Source: geometry.
 */
import { finite, requireAbove, requireFlank, requireWithin, tan } from "./bounds.ts";

/** The two flank angles of a form. Alike on a symmetric form. */
export interface Flanks {
  readonly leading: number;
  readonly trailing: number;
}

/**
 * Splits an included angle.
 *
 * @param included above 0 to below 180, or 0 for a square form
 * @param trailing trailing flank angle, 0 to `included`; half of it when left out
 * @throws RangeError outside those ranges, or when a flank would reach 90 degrees
 */
export function splitIncluded(included: number, trailing?: number): Flanks {
  if (!(included >= 0 && included < 180)) {
    throw new RangeError(`included must be from 0 to below 180 degrees, got ${included}`);
  }
  const back = trailing ?? included / 2;
  requireWithin("trailing_flank", back, 0, included);
  const flanks = { leading: included - back, trailing: back };
  requireFlank("trailing_flank", flanks.trailing);
  requireFlank("leading flank (included - trailing_flank)", flanks.leading);
  return flanks;
}

/**
 * Height of the sharp triangle: pitch / (tan a + tan b).
 *
 * @throws RangeError if the pitch is not above 0, a flank is outside 0 to below 90, or both flanks are square
 */
export function sharpHeight(pitch: number, flank: number, otherFlank = flank): number {
  requireAbove("pitch", pitch);
  requireFlank("flank", flank);
  requireFlank("other_flank", otherFlank);
  const width = tan(flank) + tan(otherFlank);
  if (width === 0) throw new RangeError("flank must be greater than 0 on one side at least, got 0 and 0");
  return finite("height", pitch / width);
}

/**
 * Depth between a crest flat and a root flat: (pitch - crest - root) / (tan l + tan t).
 *
 * @throws RangeError if the flats are negative or leave no depth, or the angles are out of range
 */
export function formDepth(pitch: number, flanks: Flanks, crestFlat: number, rootFlat: number): number {
  requireWithin("crest_flat", crestFlat, 0);
  requireWithin("root_flat", rootFlat, 0);
  const height = sharpHeight(pitch, flanks.leading, flanks.trailing);
  if (!(crestFlat + rootFlat < pitch)) {
    throw new RangeError(
      `crest_flat + root_flat must be less than the pitch ${pitch}, got ${crestFlat + rootFlat}`,
    );
  }
  return height * ((pitch - crestFlat - rootFlat) / pitch);
}
