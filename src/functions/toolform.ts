/** Arguments that say what form the tool is ground to. */
import type { Param } from "./declare.ts";

export const included = {
  name: "included",
  type: "number",
  unit: "deg",
  doc: "Included angle of the tool, 0 to below 180.",
} as const satisfies Param;
export const trailingFlank = {
  name: "trailing_flank",
  type: "number",
  unit: "deg",
  optional: true,
  doc: "0 to the included angle; left out: half of it.",
} as const satisfies Param;
export const nose = {
  name: "nose",
  type: "number",
  unit: "length",
  doc: "Width of a flat nose or radius of a round one, 0 or more.",
} as const satisfies Param;
export const noseOrSharp = {
  ...nose,
  fallback: 0,
  doc: "Width of a flat nose or radius of a round one; 0, sharp, when left out.",
} as const satisfies Param;
export const shape = {
  name: "shape",
  type: "text",
  options: ["flat", "radius"],
  fallback: "flat",
  doc: "What the nose is.",
} as const satisfies Param;
