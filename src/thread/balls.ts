/**
 * Measuring a nut over balls: two in neighbouring grooves on one side, one in the groove opposite.
 *
 *      /\     /\        w   diameter of a ball
 *     /  \O/ \  \O/     the reading is the distance between the inner faces of the balls, square to the axis;
 *    nut                 add 2 w for the distance over them
 *
 * Lengths in any one unit, angles in degrees. Source: geometry.
 */
import { atRest } from "./contact.ts";
import { tan } from "./form.ts";
import {
  centrePerDiameter,
  leadCosine,
  type Method,
  requireNotNegative,
  requirePositive,
  sharpHeight,
  type Vee,
} from "./groove.ts";
import { largestInSharp } from "./wires.ts";

/**
 * @param lead 0 or more; the pitch when left out
 * @throws RangeError outside those ranges, or if the ball sinks behind the pitch line, is too large for even a sharp
 *   crest, or does not fit into the bore with one opposite
 */
export function betweenBalls(
  pitchDiameter: number,
  vee: Vee,
  ball: number,
  lead = vee.pitch,
  method: Method = "exact",
): number {
  requirePositive("pitch_dia", pitchDiameter);
  requirePositive("ball", ball);
  requireNotNegative("lead", lead);
  const largest = largestInSharp(vee);
  if (ball > largest * (1 + 1e-12)) {
    throw new RangeError(
      `ball must be at most ${Number(largest.toPrecision(7))} to touch the flanks, got ${ball}`,
    );
  }
  const reading = readingAt(pitchDiameter, vee, ball, lead, method);
  if (!(reading < pitchDiameter)) {
    throw new RangeError(`ball must stand out of the pitch line, not sink into the groove, got ${ball}`);
  }
  if (!(reading > 0)) throw new RangeError(`ball must leave room for one opposite, got ${ball}`);
  return reading;
}

function readingAt(pitchDiameter: number, vee: Vee, ball: number, lead: number, method: Method): number {
  const apex = pitchDiameter + sharpHeight(vee);
  if (method === "plain" || lead === 0) return apex - ball * (1 + 2 * centrePerDiameter(vee));
  if (method === "normal") {
    return apex - ball * (1 + 2 * centrePerDiameter(vee, leadCosine(lead, pitchDiameter)));
  }
  const { radius, firstContact, secondContact } = atRest({
    apex: apex / 2,
    firstSlope: -tan(vee.first),
    secondSlope: -tan(vee.second),
    lead,
    diameter: ball,
  });
  // Deep in a steep bore there are places that both flanks would reach if they went on past a sharp crest.
  if (Math.min(firstContact, secondContact) < (pitchDiameter - sharpHeight(vee)) / 2) {
    throw new RangeError(`ball must be small enough to touch the flanks of so steep a thread, got ${ball}`);
  }
  return 2 * radius - ball;
}
