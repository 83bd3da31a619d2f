/**
 * Taper turning. A taper is given on diameter per length (1/16 for pipe threads). Source: geometry.
 */
import { degrees, finite, requireAbove, requireWithin } from "./bounds.ts";

/**
 * Tailstock offset.
 *
 * @param length whole work between centres, not the tapered part, above 0
 * @param taper on diameter per length, 0 or more
 * @throws RangeError outside those ranges
 */
export function tailstockOffset(length: number, taper: number): number {
  requireAbove("length", length);
  requireWithin("taper", taper, 0);
  return finite("offset", (length * taper) / 2);
}

/** Half angle of the taper, to the axis, degrees. @throws RangeError if taper < 0 */
export function taperHalfAngle(taper: number): number {
  requireWithin("taper", taper, 0);
  return degrees(Math.atan(taper / 2));
}
