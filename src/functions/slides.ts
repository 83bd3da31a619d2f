/** Arguments about the slides: how the top slide stands, and what the dials are marked in and read. */
import type { Param } from "./declare.ts";

export const setover = {
  name: "setover",
  type: "number",
  unit: "deg",
  doc: "Set-over from the line square to the lathe axis, between -90 and 90.",
} as const satisfies Param;
export const division = {
  name: "division",
  type: "number",
  unit: "length",
  doc: "One division as the dial is marked, above 0.",
} as const satisfies Param;
export const reads = {
  name: "reads",
  type: "text",
  options: ["radius", "diameter"],
  fallback: "radius",
  doc: '"radius": the dial shows the travel; "diameter": it shows twice the travel.',
} as const satisfies Param;
export const crossDivision = {
  name: "cross_division",
  type: "number",
  unit: "length",
  optional: true,
  doc: "One division of the cross slide as marked; left out: as slide_division.",
} as const satisfies Param;
export const crossReads = {
  ...reads,
  name: "cross_reads",
  doc: "What the cross slide's dial shows.",
} as const satisfies Param;
