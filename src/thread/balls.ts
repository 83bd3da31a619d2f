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
import { backTo, largestInSharp } from "./wires.ts";

/** Which faces of the balls the reading is taken between; a T-probe touches with a ball on each arm, so it is measured the same way. */
export type Faces = "inner" | "centres" | "outer";

/** What each way adds to the distance between the inner faces. */
const BALLS_MORE = { inner: 0, centres: 1, outer: 2 } as const;

/** What is measured, and how: all but the pitch diameter or the reading itself. */
export interface Balls {
  readonly vee: Vee;
  /** Diameter of the balls. */
  readonly ball: number;
  /** Advance in one turn; 0 leaves it out of account. */
  readonly lead: number;
  readonly method: Method;
  readonly faces: Faces;
}

/**
 * Reading between, or over, three balls in a nut, two on one side and one opposite.
 *
 * @throws RangeError if a size is not above 0 or the lead below 0, or if the ball sinks behind the pitch line, is too large for
 *   even a sharp crest, or does not fit into the bore with one opposite
 */
export function overBalls(pitchDiameter: number, balls: Balls): number {
  const { vee, ball, lead, method, faces } = balls;
  return betweenBalls(pitchDiameter, vee, ball, lead, method) + BALLS_MORE[faces] * ball;
}

/**
 * Pitch diameter of a nut from a reading over balls.
 *
 * @throws RangeError as for the reading
 */
export function nutPitchDiameterFrom(reading: number, balls: Balls): number {
  const { vee, ball, lead, method, faces } = balls;
  requirePositive("reading", reading);
  requirePositive("ball", ball);
  requireNotNegative("lead", lead);
  const between = reading - BALLS_MORE[faces] * ball;
  // The lead holds the balls off the thread, so that the pitch diameter is never below this one.
  const plain = between - sharpHeight(vee) + ball * (1 + 2 * centrePerDiameter(vee));
  const leadless = method === "plain" || lead === 0 || plain <= 0;
  const pitchDiameter = leadless
    ? plain
    : backTo(between, plain, (at) => readingAt(at, vee, ball, lead, method));
  if (!(pitchDiameter > 0)) {
    throw new RangeError(`reading must be that of a pitch diameter above 0 with this ball, got ${reading}`);
  }
  // What cannot be read cannot have been read.
  betweenBalls(pitchDiameter, vee, ball, lead, method);
  return pitchDiameter;
}

/**
 * Distance between the inner faces.
 *
 * @param lead 0 or more; the pitch when left out
 * @throws RangeError as for overBalls
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
