/**
 * Measuring a screw over three wires: which wires, what they read, and what pitch diameter a reading means.
 *
 *        ____ anvil ____        w   diameter of a wire
 *          O       O            M   reading, over two wires on one side and one opposite
 *     \  /   \  /   \  /        E   pitch diameter
 *      \/     \/     \/
 *
 * Lengths in any one unit, angles in degrees. The squeeze of the anvils on wire and flank is not in the figures.
 * Source: ASME B1.2 appendix B; Handbook H28; geometry.
 */
import { atRest } from "./contact.ts";
import { NothingFound } from "./failures.ts";
import { cos, sin, tan } from "./form.ts";
import { mayTouchFurther, restFurther } from "./furtherround.ts";
import {
  centrePerDiameter,
  leadCosine,
  type Method,
  requireIncluded,
  requireNotNegative,
  requirePositive,
  sharpHeight,
  type Vee,
} from "./groove.ts";

/** Steps after which a search gives up; four are usual. */
const MOST_STEPS = 40;

/** How far above the pitch line, in pitches, flanks are taken to reach: as far as on the highest standard form, DIN 513. */
const HIGHEST_FLANK = 3 / 8;

export type Crest = "flat" | "radius";

/** What is measured, and how: all but the pitch diameter or the reading itself. */
export interface Wires {
  readonly vee: Vee;
  /** Diameter of the wires. */
  readonly wire: number;
  /** Advance in one turn; 0 leaves it out of account. */
  readonly lead: number;
  readonly method: Method;
}

/** Wire that touches at the pitch diameter, where an error of the flank angle matters least: (P/2) sec(A/2). */
export function bestWire(pitch: number, included: number): number {
  requirePositive("pitch", pitch);
  requireIncluded(included);
  return pitch / (2 * cos(included / 2));
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
  const pitchDiameter = leadless ? plain : backTo(reading, plain, wires);
  if (!(pitchDiameter > 0)) {
    throw new RangeError(`reading must be that of a pitch diameter above 0 with this wire, got ${reading}`);
  }
  requireSeated(pitchDiameter, reading, wires);
  return pitchDiameter;
}

/** The reading grows by nearly as much as the pitch diameter, so that the secant closes in within a few steps. */
function backTo(reading: number, start: number, wires: Wires): number {
  let at = start;
  let left = reading - readingAt(at, wires);
  let rate = 1;
  for (let step = 0; step < MOST_STEPS && left !== 0; step++) {
    const next = at + left / rate;
    if (!(next > 0)) return next;
    const leftThere = reading - readingAt(next, wires);
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
  const seat = {
    apex: apex / 2,
    firstSlope: tan(vee.first),
    secondSlope: tan(vee.second),
    lead,
    diameter: wire,
  };
  const { radius, firstContact, secondContact } = atRest(seat);
  const flankTop = pitchDiameter / 2 + Math.min(HIGHEST_FLANK * vee.pitch, sharpHeight(vee) / 2);
  const lay = { ...seat, reach: Math.max(flankTop, firstContact, secondContact) };
  return 2 * (mayTouchFurther(lay, radius) ? restFurther(lay, radius) : radius) + wire;
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

/**
 * Largest wire for a crest: it touches where the straight flank ends. Flat F: (P - F) sec a; radius r: P sec a - 2 r.
 *
 * @param crest width of a flat crest or radius of a round one, 0 or more
 * @throws RangeError if the crest leaves no straight flank
 */
export function largestWire(pitch: number, included: number, crest: number, shape: Crest): number {
  requireCrest(pitch, included, crest, shape);
  const secant = 1 / cos(included / 2);
  return shape === "flat" ? (pitch - crest) * secant : pitch * secant - 2 * crest;
}

/**
 * Smallest wire for a crest and root: the larger of the one flush with the crest and the one that just clears the root.
 *
 * @param root width of a flat root or radius of a round one, 0 or more
 * @throws RangeError if crest or root leave no straight flank
 */
export function smallestWire(pitch: number, included: number, crest: number, shape: Crest, root = 0): number {
  requireCrest(pitch, included, crest, shape);
  requireNotNegative("root", root);
  const a = included / 2;
  const cosec = 1 / sin(a);
  const height =
    shape === "flat" ? (pitch - crest) / (2 * tan(a)) : pitch / (2 * tan(a)) - crest * (cosec - 1);
  const flush = (2 * height) / (1 + cosec);
  const clear = shape === "flat" ? (root * (1 + sin(a))) / cos(a) : 2 * root;
  return Math.max(flush, clear);
}

function requireCrest(pitch: number, included: number, crest: number, shape: Crest): void {
  requirePositive("pitch", pitch);
  requireIncluded(included);
  requireNotNegative("crest", crest);
  const bound = shape === "flat" ? pitch : pitch / (2 * cos(included / 2));
  if (!(crest < bound)) {
    throw new RangeError(`crest must be less than ${Number(bound.toPrecision(7))}, got ${crest}`);
  }
}

/**
 * The usable wire nearest the best one; a tie goes to the larger.
 *
 * @param crest width or radius; P/8 when left out
 * @throws RangeError if a wire is not above 0, or as for `smallestWire`
 * @throws NothingFound if none is usable
 */
export function pickWire(
  pitch: number,
  included: number,
  wires: readonly number[],
  crest = pitch / 8,
  shape: Crest = "flat",
  root = 0,
): number {
  const best = bestWire(pitch, included);
  const least = smallestWire(pitch, included, crest, shape, root);
  const most = largestWire(pitch, included, crest, shape);
  // Two wires as far from the best, or a wire just at a bound, must not be told apart by rounding.
  const dust = 1e-9 * pitch;
  let picked: number | undefined;
  for (const wire of wires) {
    requirePositive("wires", wire);
    if (wire < least - dust || wire > most + dust) continue;
    const nearer = picked === undefined ? Infinity : Math.abs(picked - best) - Math.abs(wire - best);
    if (nearer > dust || (nearer >= -dust && picked !== undefined && wire > picked)) picked = wire;
  }
  if (picked === undefined) {
    const shown = (value: number) => Number(value.toPrecision(6));
    throw new NothingFound(`none of the wires is from ${shown(least)} to ${shown(most)}`);
  }
  return picked;
}
