/** Arguments that say how deep the thread and its passes are. Depth is radial. */
import type { Param } from "./declare.ts";

export const depth = {
  name: "depth",
  type: "number",
  unit: "length",
  doc: "Full radial depth, above 0.",
} as const satisfies Param;
export const depthToReach = {
  ...depth,
  doc: "Radial depth to reach, above 0: THREAD.CUTDEPTH with the real blank, nose and target.",
} as const satisfies Param;
export const firstDepth = {
  name: "first_depth",
  type: "number",
  unit: "length",
  doc: "Radial depth of the first pass, 0 to depth.",
} as const satisfies Param;
export const pass = {
  name: "pass",
  type: "number",
  doc: "Number of the pass, whole, 0 to passes.",
} as const satisfies Param;
export const passes = {
  name: "passes",
  type: "number",
  doc: "How many in all, whole, 1 or more.",
} as const satisfies Param;
/** The flank that a set-over is held against. */
export const flank = {
  name: "flank",
  type: "number",
  unit: "deg",
  doc: "Angle of that flank, 0 to below 90.",
} as const satisfies Param;
export const infeed = {
  name: "infeed",
  type: "number",
  unit: "length",
  doc: "Slide travel of the pass, 0 or more.",
} as const satisfies Param;
