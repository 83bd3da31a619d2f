/**
 * The set-over top slide: which way, how far, how a scale shows it, how it is proved, and what an error does.
 *
 *                 square to the axis
 *        trailing |  . slide travels here: parallel to the trailing flank
 *           flank | .
 *               \ |.  a      a  set-over, from the line square to the axis; positive leans towards the trailing side
 *    ____________\|____      h  radial depth     L  travel of the slide
 *          axis ->           along the bed it moves L sin a, square to the bed L cos a
 *
 * Angles in degrees, lengths in any one unit. Source: geometry; the scale words are common practice.
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

/** Where the slide's protractor has its zero. */
export type Scale = "square" | "bed" | "obtuse";
export type Hand = "right" | "left";
export type Member = "external" | "internal";
/** "in": the carriage runs toward the headstock while cutting; "out": away from it. */
export type Direction = "in" | "out";

/**
 * Half the included angle less a back-off, for symmetric forms.
 *
 * @throws RangeError if included is outside 0 to below 180, or the result outside -90 to 90
 */
export function setoverAngle(included: number, backOff = 0): number {
  if (!(included >= 0 && included < 180)) {
    throw new RangeError(`included must be from 0 to below 180 degrees, got ${included}`);
  }
  return backedOff(included / 2, backOff);
}

/** The trailing flank angle less a back-off. @throws RangeError if the result is outside -90 to 90 */
export function backedOff(trailingFlank: number, backOff: number): number {
  const setover = trailingFlank - backOff;
  if (!(setover > -90 && setover < 90)) {
    throw new RangeError(`back_off must leave a set-over between -90 and 90 degrees, got ${backOff}`);
  }
  return setover;
}

/** What a protractor reads at this set-over. @throws RangeError outside -90 to 90 */
export function scaleReading(setover: number, scale: Scale): number {
  requireWithin("setover", setover, -90, 90);
  if (scale === "square") return setover;
  return scale === "bed" ? 90 - setover : 90 + setover;
}

/** Set-over from what the protractor reads. @throws RangeError if that set-over is outside -90 to 90 */
export function setoverFromScale(reading: number, scale: Scale): number {
  const [low, high] = scale === "square" ? [-90, 90] : [0, 180];
  requireWithin("reading", reading, low, high);
  if (scale === "square") return reading;
  return scale === "bed" ? 90 - reading : reading - 90;
}

/** What an indicator along the bed shows for this travel of the slide: L sin a. */
export function alongBed(travel: number, setover: number): number {
  requireWithin("setover", setover, -90, 90);
  return finite("reading", travel * sin(setover));
}

/** What an indicator square to the bed shows for this travel of the slide: L cos a. */
export function acrossBed(travel: number, setover: number): number {
  requireWithin("setover", setover, -90, 90);
  // cos 90 degrees leaves a rounding crumb.
  return Math.abs(setover) === 90 ? 0 : finite("reading", travel * cos(setover));
}

/**
 * Set-over found from one indicator reading. "along" keeps the sign of the reading; "across" cannot see it.
 *
 * @throws RangeError if travel is not above 0 or the reading is larger than the travel
 */
export function foundSetover(travel: number, reading: number, way: "along" | "across"): number {
  requireAbove("travel", travel);
  requireWithin("reading", reading, way === "along" ? -travel : 0, travel);
  const ratio = reading / travel;
  return degrees(way === "along" ? Math.asin(ratio) : Math.acos(ratio));
}

/** Set-over from two readings over the same travel: atan(along / across). @throws RangeError if across < 0 or both 0 */
export function setoverByTwo(along: number, across: number): number {
  requireWithin("across", across, 0);
  requireWithin("along", along, -Number.MAX_VALUE);
  if (along === 0 && across === 0) {
    throw new RangeError("along and across must not both be 0: move the slide first");
  }
  return degrees(Math.atan2(along, across));
}

/**
 * Which way the handle end of the slide goes, and how the cut is put on, standing at the lathe with the headstock left.
 *
 * The tool moves into the work and towards where the carriage is going. Inside (tool facing you) "into the work" is
 * towards you, so the handle swings the other way and the cut is put on by winding back.
 *
 * @param direction the way the carriage runs while cutting; when left out, the way a forward-turning spindle needs:
 *   toward the headstock for a right-hand thread, away from it for a left-hand one
 */
export function swing(hand: Hand, member: Member = "external", direction?: Direction): string {
  const inward = (direction ?? (hand === "right" ? "in" : "out")) === "in";
  const right = inward === (member === "external");
  return `handle ${right ? "right" : "left"}, wind ${member === "external" ? "in" : "back"}`;
}

/**
 * Axial overcut outside the finished form, at `level` below the surface: exact at the surface, an upper bound below the
 * first pass. A first pass that only takes the round of a nose overcuts less than this.
 *
 * @param setover 0 and above is held against the trailing flank, below 0 its size against the leading one
 * @param flank angle of that flank
 * @param firstDepth radial depth of the first pass, 0 to depth
 * @param level 0 to depth
 * @throws RangeError outside those ranges
 */
export function miscut(depth: number, setover: number, flank: number, firstDepth = 0, level = 0): number {
  requireAbove("depth", depth);
  requireSetover(setover);
  requireFlank("flank", flank);
  requireWithin("first_depth", firstDepth, 0, depth);
  requireWithin("level", level, 0, depth);
  const steps = depth - Math.max(firstDepth, level);
  return finite("overcut", Math.max(0, steps * (tan(Math.abs(setover)) - tan(flank))));
}

/**
 * Deepest depth at which finishing straight in still cleans a flank that a set-over past it has stepped.
 *
 * @param setover 0 to below 90; for one past the leading flank its size, with the leading flank
 * @param firstDepth radial depth of the first pass, 0 to depth
 * @returns `depth` when the set-over is not past the flank: nothing is lost
 * @throws RangeError outside those ranges
 */
export function rescueDepth(depth: number, setover: number, flank: number, firstDepth: number): number {
  requireAbove("depth", depth);
  if (!(setover >= 0 && setover < 90)) {
    throw new RangeError(
      `setover must be from 0 to below 90 degrees, got ${setover}: past the leading flank give its size and that flank`,
    );
  }
  requireFlank("trailing_flank", flank);
  requireWithin("first_depth", firstDepth, 0, depth);
  if (setover <= flank) return depth;
  return (depth * tan(flank) + firstDepth * (tan(setover) - tan(flank))) / tan(setover);
}
