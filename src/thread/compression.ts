/**
 * What the measuring force squeezes out of a reading over three wires: wire on anvil and wire on flank.
 *
 *      ____ anvil ____  F        each wire of the pair carries F/2, the one opposite F
 *        O       O
 *      \  /\  /\  /            wire on anvil   cylinder on a plane, along the length 2 a of the wire under the anvil
 *       \/  \/  \/             wire on flank    cylinders crossed at right angles: the wire, and the flank, which is curved round
 *                                                the axis like a cylinder of the diameter E / sin(flank)
 *
 * Forces in newtons, moduli in GPa (1000 N/mm2), lengths in mm. Elastic bodies; the wire's own diameter as it is under no load.
 * V = (1 - n^2) / (pi E) for each body, n Poisson's ratio.
 *
 * Source: M. J. Puttock and E. G. Thwaite, Elastic compression of spheres and cylinders at point and line contact, CSIRO
 * 1969, cases 6 and 9, after Hertz; the curvature of the flank is that of a cone.
 */
import { cos, sin } from "./form.ts";
import { requireNotNegative, requirePositive, type Vee } from "./groove.ts";

/** Steel, as CSIRO 1969 and NIST Monograph 180 (V = 1.39e-6 mm2/N) have it within a percent. */
export const STEEL = 208;
const POISSON = 0.3;

/** (1 - n^2) / (pi E) in mm2/N. @param modulus in GPa, above 0 */
export function yielding(modulus: number): number {
  requirePositive("modulus", modulus);
  return (1 - POISSON * POISSON) / (Math.PI * modulus * 1000);
}

/**
 * Approach of a cylinder to a plane: p (V1 + V2) (1 + ln(8 a^2 / ((V1 + V2) p D))), with p = F / 2a.
 *
 * @param force N, 0 or more
 * @param diameter mm @param length mm of contact, 2 a
 * @param give V1 + V2, mm2/N
 */
export function lineApproach(force: number, diameter: number, length: number, give: number): number {
  if (force === 0) return 0;
  const perLength = force / length;
  return perLength * give * (1 + Math.log((2 * length * length) / (give * perLength * diameter)));
}

/**
 * Approach of two cylinders crossed at right angles, or of any two bodies whose gap is x^2 / D1 + y^2 / D2, by Hertz.
 *
 * @param force N, 0 or more
 * @param one mm @param other mm, the two diameters
 * @param give V1 + V2, mm2/N
 */
export function crossedApproach(force: number, one: number, other: number, give: number): number {
  if (force === 0) return 0;
  const [small, large] = one < other ? [one, other] : [other, one];
  // The contact is an ellipse; its short axis over its long one is what the ratio of the curvatures asks for.
  let [low, high] = [1e-9, 1];
  for (let step = 0; step < 100; step++) {
    const middle = Math.sqrt(low * high);
    const { K, D } = ellipse(middle);
    if ((K - D) / (middle * middle * D) > large / small) low = middle;
    else high = middle;
  }
  const { K, D } = ellipse(Math.sqrt(low * high));
  // Long half axis cubed = 3 F D / (2 pi E* A), with 1 / E* = pi (V1 + V2) and A = 1 / large.
  const long = Math.cbrt(1.5 * force * give * D * large);
  return (1.5 * force * give * K) / long;
}

/** Complete elliptic integrals for an ellipse of axes 1 and k: K, and D = (K - E) / (1 - k^2), by the arithmetic-geometric mean. */
function ellipse(k: number): { K: number; D: number } {
  let [a, g] = [1, k];
  // D / K = 1/2 + the sum of 2^(n-1) c_n^2 / (1 - k^2), of which the first is written out so that it holds at k = 1 too.
  let c = (1 - k) / 2;
  let square = (1 - k) / (4 * (1 + k));
  let share = 0.5;
  // Each step squares what is left: more than these only turn rounding over.
  for (let weight = 1; weight < 1024 && square > 1e-18; weight *= 2) {
    share += weight * square;
    [a, g] = [(a + g) / 2, Math.sqrt(a * g)];
    const next = (a - g) / 2;
    square *= c === 0 ? 0 : (next / c) ** 2;
    c = next;
  }
  const K = Math.PI / (a + g);
  return { K, D: K * share };
}

export interface Squeeze {
  /** Measuring force, N. */
  readonly force: number;
  /** Length of wire under the anvil, mm. */
  readonly anvil: number;
  /** Moduli of wire and of work, GPa; the anvil is taken to be like the wire. */
  readonly wireModulus: number;
  readonly workModulus: number;
}

/**
 * How much less a micrometer reads over three wires under its measuring force than under none, mm.
 *
 * @param pitchDiameter mm, above 0 @param wire mm, above 0
 * @throws RangeError if a length or modulus is not above 0, the force is below 0, or a flank is square to the axis
 */
export function compressionOverWires(
  pitchDiameter: number,
  vee: Vee,
  wire: number,
  squeeze: Squeeze,
): number {
  const { force, anvil, wireModulus, workModulus } = squeeze;
  requirePositive("pitch_dia", pitchDiameter);
  requirePositive("wire", wire);
  requireNotNegative("force", force);
  requirePositive("anvil", anvil);
  const wireGive = yielding(wireModulus);
  const flankGive = wireGive + yielding(workModulus);
  const sink = (load: number) =>
    lineApproach(load, wire, anvil, 2 * wireGive) + flankSink(load, pitchDiameter, vee, wire, flankGive);
  return sink(force / 2) + sink(force);
}

/** How far a wire sinks towards the axis under a load: both flanks give way square to themselves. */
function flankSink(load: number, pitchDiameter: number, vee: Vee, wire: number, give: number): number {
  const { first: l, second: t } = vee;
  if (!(Math.min(l, t) > 0)) {
    throw new RangeError(`both flanks must be above 0 degrees, got ${l} and ${t}`);
  }
  const both = sin(l + t);
  const give1 = crossedApproach((load * cos(t)) / both, wire, pitchDiameter / sin(l), give);
  const give2 = crossedApproach((load * cos(l)) / both, wire, pitchDiameter / sin(t), give);
  return (give1 * cos(t) + give2 * cos(l)) / both;
}
