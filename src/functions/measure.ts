/** WIRE.* and BALL.*: measuring over wires and between balls. */
import { betweenBalls } from "../thread/balls.ts";
import { veeOf } from "../thread/groove.ts";
import {
  bestWire,
  largestWire,
  overWires,
  pickWire,
  pitchDiameterFrom,
  smallestWire,
  wiresOf,
} from "../thread/wires.ts";
import { declare, type Param, type SheetFunction } from "./declare.ts";

const pitch = {
  name: "pitch",
  type: "number",
  unit: "length",
  doc: "Axial distance from one thread to the next, above 0; for several starts not the lead.",
} as const satisfies Param;
const included = {
  name: "included",
  type: "number",
  unit: "deg",
  doc: "Included angle of the thread, above 0 and below 180.",
} as const satisfies Param;
const pitchDia = {
  name: "pitch_dia",
  type: "number",
  unit: "length",
  doc: "Pitch (effective) diameter, above 0.",
} as const satisfies Param;
const wire = {
  name: "wire",
  type: "number",
  unit: "length",
  doc: "Diameter of the wires, above 0: measure them, do not trust the nominal size.",
} as const satisfies Param;
const lead = {
  name: "lead",
  type: "number",
  unit: "length",
  optional: true,
  doc: "Advance in one turn, 0 or more; the pitch when left out.",
} as const satisfies Param;
const method = {
  name: "method",
  type: "text",
  options: ["exact", "normal", "plain"],
  fallback: "exact",
  doc: '"exact": touching both helical flanks; "normal": in the section square to the helix; "plain": as if there were no lead.',
} as const satisfies Param;
const trailingFlank = {
  name: "trailing_flank",
  type: "number",
  unit: "deg",
  optional: true,
  doc: "One of two unequal flank angles, 0 to the included angle; left out: half of it. Which of the two makes no difference.",
} as const satisfies Param;
const crestDoc = "Width of a flat crest or radius of a round one, 0 or more, less than would leave no flank";
const crest = {
  name: "crest",
  type: "number",
  unit: "length",
  doc: `${crestDoc}.`,
} as const satisfies Param;
const shape = {
  name: "shape",
  type: "text",
  options: ["flat", "radius"],
  fallback: "flat",
  doc: "What crest and root are.",
} as const satisfies Param;
const root = {
  name: "root",
  type: "number",
  unit: "length",
  fallback: 0,
  doc: "Width of a flat root or radius of a round one; 0, sharp, when left out.",
} as const satisfies Param;

const overWiresSource =
  "ASME B1.2 appendix B and Handbook H28 (plain and normal); exact: geometry of a straight cylinder on two helicoids";
const touchesSource = "geometry; Handbook H28, ASME B1.5";

export const measureFunctions: readonly SheetFunction[] = [
  declare({
    name: "WIRE.BEST",
    family: "measure",
    summary: "Wire that touches the flanks at the pitch line, where an error of the angle matters least.",
    params: [pitch, included],
    returns: { type: "number", unit: "length", doc: "Diameter of the wire." },
    failures: [
      {
        when: "the pitch is not above 0",
        formula: "=WIRE.BEST(-1.75, 60)",
        gives: "#NUM!",
        says: "pitch must be greater than 0",
      },
      {
        when: "there is no angle",
        formula: "=WIRE.BEST(1.75, 0)",
        gives: "#NUM!",
        says: "included must be above 0 and below 180 degrees",
      },
    ],
    examples: [{ formula: "=WIRE.BEST(1.75, 60)", value: 1.010363 }],
    source: "ASME B1.2 appendix B; Handbook H28",
    compute: bestWire,
  }),
  declare({
    name: "WIRE.READING",
    family: "measure",
    summary: "What a micrometer reads over three wires in a screw.",
    params: [pitchDia, pitch, wire, included, lead, method, trailingFlank],
    returns: {
      type: "number",
      unit: "length",
      doc: "Over two wires on one side and one opposite, at no more measuring force than the wires and work are made for.",
    },
    failures: [
      {
        when: "the wire sinks into the groove",
        formula: "=WIRE.READING(10.863, 1.75, 0.4, 60)",
        gives: "#NUM!",
        says: "wire must stand above the pitch line",
      },
      {
        when: "the wire is too large for the groove",
        formula: "=WIRE.READING(10.863, 1.75, 2.1, 60)",
        gives: "#NUM!",
        says: "wire must be at most 2.020726",
      },
      {
        when: "the trailing flank is more than the included angle",
        formula: '=WIRE.READING(10.863, 1.75, 1, 60, 1.75, "plain", 61)',
        gives: "#NUM!",
        says: "trailing_flank must be from 0 to the included angle 60",
      },
      {
        when: "the lead is below 0",
        formula: "=WIRE.READING(10.863, 1.75, 1, 60, -1.75)",
        gives: "#NUM!",
        says: "lead must be 0 or more",
      },
    ],
    examples: [
      { formula: "=WIRE.READING(10.863, 1.75, 1, 60)", value: 12.3493446 },
      { formula: '=WIRE.READING(10.863, 1.75, 1, 60, 1.75, "normal")', value: 12.3494267 },
      { formula: '=WIRE.READING(10.863, 1.75, 1, 60, 1.75, "plain")', value: 12.3474555 },
      { formula: '=WIRE.READING(1.85, 0.25, 0.13, 52, , "plain", 7)', value: 2.0377351 },
    ],
    source: overWiresSource,
    compute: (diameter, P, w, angle, advance, how, trailing) =>
      overWires(diameter, wiresOf(veeOf(P, angle, trailing), w, advance, how)),
  }),
  declare({
    name: "WIRE.PITCHDIA",
    family: "measure",
    summary: "Pitch diameter of a screw from what a micrometer reads over three wires.",
    params: [
      {
        name: "reading",
        type: "number",
        unit: "length",
        doc: "Over two wires on one side and one opposite, above 0.",
      },
      pitch,
      wire,
      included,
      lead,
      method,
      trailingFlank,
    ],
    returns: { type: "number", unit: "length", doc: "Pitch (effective) diameter." },
    failures: [
      {
        when: "the reading is less than the wires alone would give",
        formula: "=WIRE.PITCHDIA(1, 1.75, 1, 60)",
        gives: "#NUM!",
        says: "reading must be that of a pitch diameter above 0",
      },
      {
        when: "the wire is too large for the groove",
        formula: "=WIRE.PITCHDIA(12.35, 1.75, 2.1, 60)",
        gives: "#NUM!",
        says: "wire must be at most 2.020726",
      },
    ],
    examples: [
      { formula: "=WIRE.PITCHDIA(12.3493446, 1.75, 1, 60)", value: 10.863 },
      { formula: '=WIRE.PITCHDIA(12.3474555, 1.75, 1, 60, 1.75, "plain")', value: 10.863 },
    ],
    source: overWiresSource,
    compute: (reading, P, w, angle, advance, how, trailing) =>
      pitchDiameterFrom(reading, wiresOf(veeOf(P, angle, trailing), w, advance, how)),
  }),
  declare({
    name: "WIRE.LARGEST",
    family: "measure",
    summary: "Largest wire that still touches the flanks and not the edge of the crest.",
    params: [pitch, included, crest, shape],
    returns: { type: "number", unit: "length", doc: "Touches where the straight flank ends." },
    failures: [
      {
        when: "the crest leaves no flank",
        formula: "=WIRE.LARGEST(1, 60, 1)",
        gives: "#NUM!",
        says: "crest must be less than 1",
      },
    ],
    examples: [
      { formula: "=WIRE.LARGEST(1, 60, 0.125)", value: 1.010363 },
      { formula: "=WIRE.LARGEST(1, 29, 0.370691)", value: 0.6500135 },
      { formula: '=WIRE.LARGEST(1, 55, 0.137329, "radius")', value: 0.8527239 },
    ],
    source: touchesSource,
    compute: largestWire,
  }),
  declare({
    name: "WIRE.SMALLEST",
    family: "measure",
    summary: "Smallest wire that reaches up to the crest and clears the root.",
    params: [pitch, included, crest, shape, root],
    returns: {
      type: "number",
      unit: "length",
      doc: "The larger of the wire flush with the crest and the wire that just clears the root.",
    },
    failures: [
      {
        when: "the crest radius leaves no flank",
        formula: '=WIRE.SMALLEST(1, 60, 0.6, "radius")',
        gives: "#NUM!",
        says: "crest must be less than 0.5773503",
      },
      {
        when: "the root is below 0",
        formula: '=WIRE.SMALLEST(1, 60, 0.125, "flat", -0.1)',
        gives: "#NUM!",
        says: "root must be 0 or more",
      },
    ],
    examples: [
      { formula: '=WIRE.SMALLEST(1, 60, 0.125, "flat", 0.25)', value: 0.5051815 },
      { formula: "=WIRE.SMALLEST(1, 29, 0.370691)", value: 0.4872631 },
      { formula: '=WIRE.SMALLEST(1, 55, 0.137329, "radius", 0.137329)', value: 0.5056791 },
      { formula: '=WIRE.SMALLEST(1, 47.5, 0.1808346, "radius", 0.1808346)', value: 0.4985243 },
    ],
    source: touchesSource,
    compute: smallestWire,
  }),
  declare({
    name: "WIRE.PICK",
    family: "measure",
    summary: "The usable wire of a set that is nearest the best one.",
    params: [
      pitch,
      included,
      {
        name: "wires",
        type: "numbers",
        unit: "length",
        doc: "Diameters of the wires at hand, each above 0.",
      },
      { ...crest, optional: true, doc: `${crestDoc}; an eighth of the pitch when left out.` },
      shape,
      root,
    ],
    returns: {
      type: "number",
      unit: "length",
      doc: "Not below WIRE.SMALLEST nor above WIRE.LARGEST; of two as near, the larger.",
    },
    failures: [
      {
        when: "none is usable",
        formula: "=WIRE.PICK(1.75, 60, {0.29;0.455})",
        gives: "#N/A",
        says: "none of the wires is from 0.884068 to 1.76814",
      },
      {
        when: "a wire is not above 0",
        formula: "=WIRE.PICK(1.75, 60, {0.895;-1.1})",
        gives: "#NUM!",
        says: "wires must be greater than 0, got -1.1",
      },
    ],
    examples: [{ formula: "=WIRE.PICK(1.75, 60, {0.725;0.895;1.1})", value: 1.1 }],
    source: touchesSource,
    compute: pickWire,
  }),
  declare({
    name: "BALL.READING",
    family: "measure",
    summary: "Distance between the inner faces of three balls in a nut.",
    params: [
      pitchDia,
      pitch,
      {
        name: "ball",
        type: "number",
        unit: "length",
        doc: "Diameter of the balls, above 0.",
      },
      included,
      lead,
      method,
    ],
    returns: {
      type: "number",
      unit: "length",
      doc: "Square to the axis, two balls on one side and one opposite. Add twice the ball for the distance over the balls.",
    },
    failures: [
      {
        when: "the ball sinks into the groove",
        formula: "=BALL.READING(18.376, 2.5, 0.5, 60)",
        gives: "#NUM!",
        says: "ball must stand out of the pitch line",
      },
      {
        when: "the ball is too large for the groove",
        formula: "=BALL.READING(18.376, 2.5, 3, 60)",
        gives: "#NUM!",
        says: "ball must be at most 2.886751",
      },
    ],
    examples: [
      { formula: "=BALL.READING(18.376, 2.5, 1.5, 60)", value: 16.0388433 },
      { formula: '=BALL.READING(18.376, 2.5, 1.5, 60, 2.5, "normal")', value: 16.0389545 },
      { formula: '=BALL.READING(18.376, 2.5, 1.5, 60, 2.5, "plain")', value: 16.0410635 },
    ],
    source: "geometry of a sphere on two helicoids",
    compute: (diameter, P, w, angle, advance, how) =>
      betweenBalls(diameter, veeOf(P, angle), w, advance, how),
  }),
];
