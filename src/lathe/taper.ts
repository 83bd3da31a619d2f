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

/**
 * Diameter of a cone at a distance along its axis from where it is known.
 *
 * @param diameter above 0
 * @param taper on diameter per length, 0 or more
 * @param distance towards the large end; negative towards the small one
 * @throws RangeError outside those ranges, or when the cone has run out
 */
export function diameterAlong(diameter: number, taper: number, distance: number): number {
  requireAbove("diameter", diameter);
  requireWithin("taper", taper, 0);
  const there = finite("diameter", diameter + distance * taper);
  if (!(there > 0)) {
    throw new RangeError(
      `distance must be greater than ${-diameter / taper}, got ${distance}: the cone ends there`,
    );
  }
  return there;
}

/**
 * Share by which a screw cut with the tailstock offset comes out short: the carriage runs along the bed, the pitch is
 * measured along the work's own axis, which stands at the half angle to it.
 *
 * @returns 1 - cos of the half angle
 * @throws RangeError if taper < 0
 */
export function leadLostByOffset(taper: number): number {
  requireWithin("taper", taper, 0);
  // Twice the squared half sine: the plain difference would lose its digits.
  return 2 * Math.sin(Math.atan(taper / 2) / 2) ** 2;
}
