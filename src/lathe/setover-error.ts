/**
 * What a set-over that is off does, and how exact it has to be.
 *
 * The slide is believed to stand at a and stands at b = a + error. Winding s = h / cos a reaches h cos b / cos a, not h.
 * Past the trailing flank t the passes step down along b: the flank leans from its own angle towards b, stepped, and is
 * cut away outside the form. Finishing straight in moves the tool deeper but not sideways, and cleans the flank only when
 * the form's own flank reaches the first pass again. A negative set-over does the same to the leading flank.
 *
 * Depths are radial; lengths in any one unit, angles in degrees from the line square to the axis. Source: geometry.
 */
import {
  cos,
  degrees,
  finite,
  requireAbove,
  requireFlank,
  requireSetover,
  requireWithin,
  sin,
  tan,
} from "./bounds.ts";
import type { Flanks } from "./form.ts";
import { miscut } from "./setover.ts";

/**
 * Radial depth that the dial's travel for `depth` really reaches.
 *
 * @param setover that the travel was reckoned for; @param error of the setting, either sign
 * @throws RangeError if the depth is not above 0, or a set-over is not between -90 and 90
 */
export function depthWithError(depth: number, setover: number, error: number): number {
  requireAbove("depth", depth);
  requireSetover(setover);
  requireStanding(setover + error, error);
  return finite("depth", (depth * cos(setover + error)) / cos(setover));
}

function requireStanding(setover: number, error: number): void {
  if (!(setover > -90 && setover < 90)) {
    throw new RangeError(`error must leave a set-over between -90 and 90 degrees, got ${error}`);
  }
}

/**
 * Mean flank angle from root to surface of a flank that passes along `setover` leave: its own, and past it more.
 *
 * @param depth reached
 * @param setover held against the trailing flank when 0 or more, its size against the leading one below 0
 * @param flank angle of that flank as the tool has it
 * @param firstDepth radial depth of the first pass, 0 to depth
 * @throws RangeError outside those ranges
 */
export function flankLeft(depth: number, setover: number, flank: number, firstDepth = 0): number {
  const over = miscut(depth, setover, flank, firstDepth);
  if (over === 0) return flank;
  return degrees(Math.atan(tan(flank) + over / depth));
}

/**
 * Height of the step that a pass leaves on a flank that its set-over is past, square to the flank: s sin(a - f).
 *
 * @param infeed slide travel of the pass, 0 or more
 * @returns 0 when the set-over is not past the flank
 * @throws RangeError outside those ranges
 */
export function flankStep(infeed: number, setover: number, flank: number): number {
  requireWithin("infeed", infeed, 0);
  requireSetover(setover);
  requireFlank("flank", flank);
  return infeed * Math.max(0, sin(Math.abs(setover) - flank));
}

/**
 * Axial overcut at the surface that is left after finishing straight in from `reached` to `depth`.
 *
 * @param reached radial depth at which the slide was left alone, first_depth to depth
 * @returns 0 when the straight-in passes clean the flank
 * @throws RangeError outside those ranges
 */
export function overcutLeft(
  depth: number,
  setover: number,
  flank: number,
  firstDepth: number,
  reached: number,
): number {
  requireAbove("depth", depth);
  requireSetover(setover);
  requireFlank("flank", flank);
  requireWithin("first_depth", firstDepth, 0, depth);
  requireWithin("reached", reached, firstDepth, depth);
  const stepped = (reached - firstDepth) * (tan(Math.abs(setover)) - tan(flank));
  if (!(stepped > 0)) return 0;
  return finite("overcut", Math.max(0, stepped - (depth - reached) * tan(flank)));
}

/**
 * Change of the pitch diameter of a screw from what the dial promised: less depth makes it larger, overcut smaller. Of a
 * nut the same with the other sign.
 *
 * @param flanks of the tool; both must not be square
 * @param level of the pitch line below the surface, 0 to depth
 * @throws RangeError outside those ranges
 */
export function pitchDiameterChange(
  depth: number,
  setover: number,
  error: number,
  flanks: Flanks,
  firstDepth: number,
  level: number,
): number {
  const reached = depthWithError(depth, setover, error);
  const standing = setover + error;
  requireWithin("first_depth", firstDepth, 0, depth);
  requireWithin("level", level, 0, depth);
  const spread = tan(flanks.leading) + tan(flanks.trailing);
  if (spread === 0) throw new RangeError("included must be greater than 0, got 0");
  const flank = standing >= 0 ? flanks.trailing : flanks.leading;
  const real = (wanted: number) => Math.min(reached, (wanted * cos(standing)) / cos(setover));
  const over = miscut(reached, standing, flank, real(firstDepth), Math.min(level, reached));
  return finite("change", 2 * (depth - reached) - (2 * over) / spread);
}

/**
 * Largest set-over that keeps a flank within an allowed error: how exact it has to be set.
 *
 * @param allowed degrees that the mean flank angle may be off, above 0, leaving it below 90
 * @param firstDepth radial depth of the first pass, 0 to below depth
 * @returns the set-over; a setting has this less the set-over as room. Below 90: 90 itself is never reached
 * @throws RangeError outside those ranges
 */
export function largestSetover(depth: number, flank: number, allowed: number, firstDepth = 0): number {
  requireAbove("depth", depth);
  requireFlank("flank", flank);
  requireAbove("allowed", allowed);
  if (!(flank + allowed < 90)) {
    throw new RangeError(`allowed must leave a flank below 90 degrees, got ${allowed}`);
  }
  requireWithin("first_depth", firstDepth, 0, depth);
  if (firstDepth === depth)
    throw new RangeError(`first_depth must be less than depth ${depth}, got ${firstDepth}`);
  const lean = (tan(flank + allowed) - tan(flank)) / (1 - firstDepth / depth);
  return degrees(Math.atan(tan(flank) + lean));
}

/**
 * Share of the leading edge's chip that the trailing edge takes at this set-over: sin(t - a) / sin(a + l).
 *
 * @returns 0 at the trailing flank and past it
 * @throws RangeError if the leading edge does not cut at all, or an angle is out of range
 */
export function trailingShare(setover: number, { leading, trailing }: Flanks): number {
  requireSetover(setover);
  if (!(setover > -leading)) {
    throw new RangeError(
      `setover must be greater than ${-leading}, where the leading edge stops cutting, got ${setover}`,
    );
  }
  return Math.max(0, sin(trailing - setover)) / sin(setover + leading);
}

/**
 * Set-over at which the trailing edge takes this share of the leading edge's chip: the other way round.
 *
 * @param share 0 or more; 1 on a symmetric form is straight in
 */
export function setoverForShare(share: number, { leading, trailing }: Flanks): number {
  requireWithin("share", share, 0);
  const across = sin(trailing) - share * sin(leading);
  const along = cos(trailing) + share * cos(leading);
  return degrees(Math.atan2(across, along));
}
