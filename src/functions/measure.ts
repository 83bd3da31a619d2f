/** WIRE.*: which wires serve, and three of them. */
import { veeOf } from "../thread/groove.ts";
import { bestWire, bestWireOnHelix, largestWire, pickWire, smallestWire } from "../thread/wirelimits.ts";
import { overWires, pitchDiameterFrom } from "../thread/wires.ts";
import { declare, type SheetFunction } from "./declare.ts";
import {
  crest,
  crestDoc,
  grooveAndWires,
  included,
  lead,
  pitch,
  pitchDia,
  root,
  rootShape,
  shape,
  trailingFlank,
  wiresGiven,
} from "./measured.ts";

const overWiresSource =
  "ASME B1.2 appendix B and Handbook H28 (plain and normal); exact: geometry of a straight cylinder on two helicoids";
const touchesSource = "geometry; Handbook H28, ASME B1.5";

export const measureFunctions: readonly SheetFunction[] = [
  declare({
    name: "WIRE.BEST",
    family: "measure",
    summary: "Wire that touches the flanks at the pitch line, where an error of the angle matters least.",
    params: [
      pitch,
      included,
      trailingFlank,
      {
        ...pitchDia,
        optional: true,
        doc: "Pitch diameter, above 0, to take the lead into account; left out: no lead.",
      },
      {
        ...lead,
        doc: "Advance in one turn, 0 or more; the pitch when left out. Counts with a pitch diameter only.",
      },
    ],
    returns: {
      type: "number",
      unit: "length",
      doc: "On unequal flanks: the wire for which an error shared by both flanks cancels.",
    },
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
    examples: [
      { formula: "=WIRE.BEST(1.75, 60)", value: 1.010363 },
      {
        formula: "=WIRE.BEST(1, 29, , 7.276578, 2)",
        value: 0.51443,
        within: 0.00002,
        source: "ASME B1.5, best wire for 29 degrees, lead angle 5 degrees, two starts",
      },
      {
        formula: "=WIRE.BEST(4, 52, 7)",
        value: 2.1633115,
        source: "geometry: d(reading)/d(both flanks) = 0, reckoned by hand",
      },
    ],
    source: "ASME B1.2 appendix B; Handbook H28; unequal flanks and lead: geometry",
    compute: (P, angle, trailing, diameter, advance) => {
      const vee = veeOf(P, angle, trailing);
      return diameter === undefined ? bestWire(vee) : bestWireOnHelix(vee, diameter, advance ?? P);
    },
  }),
  declare({
    name: "WIRE.READING",
    family: "measure",
    summary: "What a micrometer reads over three wires in a screw.",
    params: [pitchDia, ...grooveAndWires],
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
    compute: (diameter, ...given) => overWires(diameter, wiresGiven(...given)),
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
      ...grooveAndWires,
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
    compute: (reading, ...given) => pitchDiameterFrom(reading, wiresGiven(...given)),
  }),
  declare({
    name: "WIRE.LARGEST",
    family: "measure",
    summary: "Largest wire that still touches the flanks and not the edge of the crest.",
    params: [pitch, included, crest, shape, trailingFlank],
    returns: {
      type: "number",
      unit: "length",
      doc: "Touches where the straight flank ends. For balls give the crest of the nut.",
    },
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
    compute: (P, angle, flat, how, trailing) => largestWire(veeOf(P, angle, trailing), flat, how),
  }),
  declare({
    name: "WIRE.SMALLEST",
    family: "measure",
    summary: "Smallest wire that reaches up to the crest and clears the root.",
    params: [pitch, included, crest, shape, root, trailingFlank, rootShape],
    returns: {
      type: "number",
      unit: "length",
      doc: "The larger of the wire flush with the crest and the wire that just clears the root. For balls give crest and root of the nut.",
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
      {
        formula: '=WIRE.SMALLEST(1, 60, 0.125, "flat", 0.3, , "radius")',
        value: 0.6,
        source: "a wire of the root's own radius",
      },
    ],
    source: touchesSource,
    compute: (P, angle, top, how, bottom, trailing, howBottom) =>
      smallestWire(veeOf(P, angle, trailing), top, how, bottom, howBottom),
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
      trailingFlank,
      rootShape,
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
    compute: (P, angle, wires, top, how, bottom, trailing, howBottom) =>
      pickWire(veeOf(P, angle, trailing), wires, top, how, bottom, howBottom),
  }),
];
