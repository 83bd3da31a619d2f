/** Arguments that the functions of measuring over wires and balls share. */
import { veeOf } from "../thread/groove.ts";
import { type Wires, wiresOf } from "../thread/wires.ts";
import type { Param } from "./declare.ts";

export const pitch = {
  name: "pitch",
  type: "number",
  unit: "length",
  doc: "Axial distance from one thread to the next, above 0; for several starts not the lead.",
} as const satisfies Param;
export const included = {
  name: "included",
  type: "number",
  unit: "deg",
  doc: "Included angle of the thread, above 0 and below 180.",
} as const satisfies Param;
export const pitchDia = {
  name: "pitch_dia",
  type: "number",
  unit: "length",
  doc: "Pitch (effective) diameter, above 0.",
} as const satisfies Param;
export const wire = {
  name: "wire",
  type: "number",
  unit: "length",
  doc: "Diameter of the wires, above 0: measure them, do not trust the nominal size.",
} as const satisfies Param;
export const lead = {
  name: "lead",
  type: "number",
  unit: "length",
  optional: true,
  doc: "Advance in one turn, 0 or more; the pitch when left out.",
} as const satisfies Param;
export const method = {
  name: "method",
  type: "text",
  options: ["exact", "normal", "plain"],
  fallback: "exact",
  doc: '"exact": touching both helical flanks; "normal": in the section square to the helix; "plain": as if there were no lead.',
} as const satisfies Param;
export const trailingFlank = {
  name: "trailing_flank",
  type: "number",
  unit: "deg",
  optional: true,
  doc: "One of two unequal flank angles, 0 to the included angle; left out: half of it. Which of the two makes no difference.",
} as const satisfies Param;
export const crestDoc =
  "Width of a flat crest or radius of a round one, 0 or more, less than would leave no flank";
export const crest = {
  name: "crest",
  type: "number",
  unit: "length",
  doc: `${crestDoc}.`,
} as const satisfies Param;
export const shape = {
  name: "shape",
  type: "text",
  options: ["flat", "radius"],
  fallback: "flat",
  doc: "What crest and root are.",
} as const satisfies Param;
export const rootShape = {
  name: "root_shape",
  type: "text",
  options: ["flat", "radius"],
  optional: true,
  doc: "What the root is, where it is not what the crest is.",
} as const satisfies Param;
export const root = {
  name: "root",
  type: "number",
  unit: "length",
  fallback: 0,
  doc: "Width of a flat root or radius of a round one; 0, sharp, when left out.",
} as const satisfies Param;
export const reading = {
  name: "reading",
  type: "number",
  unit: "length",
  doc: "What the micrometer reads, above 0.",
} as const satisfies Param;

/** A groove and the wires in it, in the order of the arguments; `wiresGiven` makes of them what is measured. */
export const grooveAndWires = [pitch, wire, included, lead, method, trailingFlank] as const;

export function wiresGiven(
  axialPitch: number,
  diameter: number,
  angle: number,
  advance: number | undefined,
  how: Wires["method"],
  trailing?: number,
): Wires {
  return wiresOf(veeOf(axialPitch, angle, trailing), diameter, advance, how);
}

/** A reading that is none, for every function that takes one. */
export const noReading = {
  when: "the reading is not above 0",
  gives: "#NUM!",
  says: "reading must be greater than 0",
} as const;
