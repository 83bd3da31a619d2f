/**
 * Measuring a screw over three wires: what they read, and what pitch diameter a reading means.
 *
 *        ____ anvil ____        w   diameter of a wire
 *          O       O            M   reading, over two wires on one side and one opposite
 *     \  /   \  /   \  /        E   pitch diameter
 *      \/     \/     \/
 *
 * Lengths in any one unit, angles in degrees. The squeeze of the anvils on wire and
 * flank is not in the figures: compression.ts has it.
 * Source: ASME B1.2 appendix B; Handbook H28; geometry.
 */
import { atRest } from "./contact.ts";
import { sin, tan } from "./form.ts";
import { mayTouchFurther, restFurther } from "./furtherround.ts";
import {
  centrePerDiameter,
  leadCosine,
  type Method,
  requireNotNegative,
  requirePositive,
  sharpHeight,
  type Vee,
} from "./groove.ts";

/** Steps after which a search gives up; four are usual. */
const MOST_STEPS = 40;

/** How far above the pitch line, in pitches, flanks are taken to reach: as far as on the highest standard form, DIN 513. */
const HIGHEST_FLANK = 3 / 8;

/** What is measured, and how: all but the pitch diameter or the reading itself. */
export interface Wires {
  readonly vee: Vee;
  /** Diameter of the wires. */
  readonly wire: number;
  /** Advance in one turn; 0 leaves it out of account. */
  readonly lead: number;
  readonly method: Method;
}

/**
 * @param wire above 0
 * @param lead 0 or more; the pitch when left out
 * @throws RangeError outside those ranges
 */
export function wiresOf(vee: Vee, wire: number, lead: number | undefined, method: Method = "exact"): Wires {
  requirePositive("wire", wire);
  const advance = lead ?? vee.pitch;
  requireNotNegative("lead", advance);
  return { vee, wire, lead: advance, method };
}

/**
 * Reading over three wires.
 *
 * @throws RangeError if the pitch diameter is not above 0, or the wire sinks below the pitch line, and so below any
 *   crest, or is too large for even a sharp crest
 */
export function overWires(pitchDiameter: number, wires: Wires): number {
  requirePositive("pitch_dia", pitchDiameter);
  const reading = readingAt(pitchDiameter, wires);
  requireSeated(pitchDiameter, reading, wires);
  return reading;
}

/**
 * Pitch diameter from a reading over three wires.
 *
 * @throws RangeError as for the reading, or if no pitch diameter above 0 gives that reading
 */
export function pitchDiameterFrom(reading: number, wires: Wires): number {
  requirePositive("reading", reading);
  const { vee, wire } = wires;
  // The lead lifts the wire, so that the true pitch diameter is never above this one.
  const plain = reading + sharpHeight(vee) - wire * (1 + 2 * centrePerDiameter(vee));
  const leadless = wires.method === "plain" || wires.lead === 0 || plain <= 0;
  const pitchDiameter = leadless ? plain : backTo(reading, plain, (at) => readingAt(at, wires));
  if (!(pitchDiameter > 0)) {
    throw new RangeError(`reading must be that of a pitch diameter above 0 with this wire, got ${reading}`);
  }
  requireSeated(pitchDiameter, reading, wires);
  return pitchDiameter;
}

/**
 * Pitch diameter of a reading that grows by nearly as much as the pitch diameter, so that the secant closes in within a
 * few steps; not above 0 when there is none.
 */
export function backTo(reading: number, start: number, readingAt: (pitchDiameter: number) => number): number {
  let at = start;
  let left = reading - readingAt(at);
  let rate = 1;
  for (let step = 0; step < MOST_STEPS && left !== 0; step++) {
    const next = at + left / rate;
    if (!(next > 0)) return next;
    const leftThere = reading - readingAt(next);
    // As near as rounding lets it come.
    if (Math.abs(leftThere) >= Math.abs(left)) return at;
    rate = (left - leftThere) / (next - at);
    at = next;
    left = leftThere;
  }
  return at;
}

function readingAt(pitchDiameter: number, wires: Wires): number {
  const { vee, wire, lead, method } = wires;
  const apex = pitchDiameter - sharpHeight(vee);
  if (method === "plain" || lead === 0) return apex + wire * (1 + 2 * centrePerDiameter(vee));
  if (method === "normal") {
    return apex + wire * (1 + 2 * centrePerDiameter(vee, leadCosine(lead, pitchDiameter)));
  }
  const lay = {
    apex: apex / 2,
    firstSlope: tan(vee.first),
    secondSlope: tan(vee.second),
    lead,
    diameter: wire,
    reach: pitchDiameter / 2 + Math.min(HIGHEST_FLANK * vee.pitch, (pitchDiameter - apex) / 2),
  };
  const { radius, firstContact, secondContact } = atRest(lay);
  lay.reach = Math.max(lay.reach, firstContact, secondContact);
  const steeper = vee.first < vee.second ? firstContact : secondContact;
  return 2 * (mayTouchFurther(lay, radius, steeper) ? restFurther(lay, radius) : radius) + wire;
}

/** The crest is not known here, but it is no lower than the pitch line and no higher than a sharp one. */
function requireSeated(pitchDiameter: number, reading: number, { vee, wire }: Wires): void {
  if (!(reading > pitchDiameter)) {
    throw new RangeError(`wire must stand above the pitch line, not sink into the groove, got ${wire}`);
  }
  const largest = largestInSharp(vee);
  if (wire > largest * (1 + 1e-12)) {
    throw new RangeError(
      `wire must be at most ${Number(largest.toPrecision(7))} to touch the flanks, got ${wire}`,
    );
  }
}

/** Largest wire or ball that still touches both flanks when they run out to a sharp edge. */
export function largestInSharp(vee: Vee): number {
  // The steeper flank is touched furthest out.
  const steeper = Math.min(vee.first, vee.second);
  return sharpHeight(vee) / (centrePerDiameter(vee) - sin(steeper) / 2);
}
