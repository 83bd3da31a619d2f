/**
 * Single-flank infeed: depth to slide travel and back, and the chip that each flank takes.
 *
 * Depth h is radial; the slide, set over by a from the line square to the axis, travels s = h / cos a. A travel s moves
 * the tool s sin(a + f) square to a leading flank f, and s sin(f - a) square to a trailing one. Lengths in any one
 * unit, angles in degrees. Source: geometry.
 */
import {
  cos,
  finite,
  requireAbove,
  requireFlank,
  requireSetover,
  requireWithin,
  sin,
  tan,
} from "./bounds.ts";

export type Side = "leading" | "trailing";

/** Slide travel for a radial depth. @throws RangeError if depth < 0 or the set-over is not between -90 and 90 */
export function infeedForDepth(depth: number, setover: number): number {
  requireWithin("depth", depth, 0);
  requireSetover(setover);
  return finite("infeed", depth / cos(setover));
}

/** Radial depth for a slide travel. @throws RangeError as infeedForDepth */
export function depthForInfeed(infeed: number, setover: number): number {
  requireWithin("infeed", infeed, 0);
  requireSetover(setover);
  return infeed * cos(setover);
}

/**
 * Uncut chip thickness square to a flank. 0 on a flank that the set-over is past: that flank is not being cut there, it
 * is being left stepped.
 *
 * @param infeed slide travel of the pass, 0 or more
 * @throws RangeError if infeed < 0 or an angle is out of range
 */
export function flankChip(infeed: number, setover: number, flank: number, side: Side): number {
  requireWithin("infeed", infeed, 0);
  requireSetover(setover);
  requireFlank("flank", flank);
  const angle = side === "leading" ? setover + flank : flank - setover;
  return isPastFlank(setover, flank, side) ? 0 : infeed * sin(angle);
}

/** True when travel along this set-over moves the tool away from the finished flank on that side. */
export function isPastFlank(setover: number, flank: number, side: Side): boolean {
  return side === "leading" ? setover < -flank : setover > flank;
}

/**
 * Slide travel still to go when a diameter reads over what is wanted: (reading - wanted) / (2 cos a). Below 0 when the
 * reading is already under it.
 *
 * @throws RangeError if a reading is not above 0 or the set-over is not between -90 and 90
 */
export function correction(reading: number, wanted: number, setover: number): number {
  requireAbove("reading", reading);
  requireAbove("wanted", wanted);
  requireSetover(setover);
  return finite("travel", (reading - wanted) / (2 * cos(setover)));
}

/**
 * Side step of a top slide set along the bed, so that a tool that goes `depth` deeper moves along a flank.
 *
 * @throws RangeError if depth < 0 or the flank is outside 0 to below 90
 */
export function sideStep(depth: number, flank: number): number {
  requireWithin("depth", depth, 0);
  requireFlank("flank", flank);
  return finite("side step", depth * tan(flank));
}
