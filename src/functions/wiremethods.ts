/** WIRE.* and CONE.*: other ways of measuring a screw than over three wires. */
import { heldOffByAngle } from "../thread/anvil.ts";
import { requirePositive } from "../thread/groove.ts";
import {
  overOneWire,
  overTaper,
  overTwoWires,
  pitchDiameterFromOne,
  pitchDiameterFromTwo,
  pitchDiameterOfTaper,
} from "../thread/wiremethods.ts";
import { ballFunctions } from "./balls.ts";
import { declare, type Param, type SheetFunction } from "./declare.ts";
import {
  grooveAndWires,
  included,
  lead,
  method,
  noReading,
  pitch,
  pitchDia,
  reading,
  wire,
  wiresGiven,
} from "./measured.ts";
import { windFunctions } from "./wind.ts";
import { wireCorrections } from "./wirecorrections.ts";

const tilt = {
  name: "tilt",
  type: "number",
  unit: "deg",
  fallback: 0,
  doc: "How far the micrometer stands out of square to the axis, above -45 and below 45; either sign.",
} as const satisfies Param;
const major = {
  name: "major",
  type: "number",
  unit: "length",
  doc: "Diameter over the crests as measured on this work, above 0.",
} as const satisfies Param;
const taper = {
  name: "taper",
  type: "number",
  unit: "ratio",
  doc: "Taper on diameter per length, 0 or more: 1/16 for pipe threads.",
} as const satisfies Param;

const sunk = {
  when: "the wire sinks into the groove",
  gives: "#NUM!",
  says: "wire must stand above the pitch line",
} as const;
const geometry = "geometry; the reading over three wires as WIRE.READING";
const taperSource = "geometry; Handbook H28, ASME B1.20.1 but for terms below 0.0005 of the wire";

const ways: readonly SheetFunction[] = [
  declare({
    name: "WIRE.TWO",
    family: "measure",
    summary: "What a micrometer reads over two wires, one on each side, and what it reads out of square.",
    params: [pitchDia, ...grooveAndWires, tilt],
    returns: {
      type: "number",
      unit: "length",
      doc: "Square to the axis the same as over three wires; out of square wrong in proportion, on odd starts.",
    },
    failures: [
      { ...sunk, formula: "=WIRE.TWO(10.863, 1.75, 0.4, 60)" },
      {
        when: "the micrometer is tilted too far",
        formula: "=WIRE.TWO(10.863, 1.75, 1, 60, , , , 45)",
        gives: "#NUM!",
        says: "tilt must be above -45 and below 45 degrees",
      },
    ],
    examples: [
      { formula: "=WIRE.TWO(10.863, 1.75, 1, 60)", value: 12.3493446 },
      { formula: "=WIRE.TWO(10.863, 1.75, 1, 60, , , , 1)", value: 12.3628869 },
    ],
    source: geometry,
    compute: (E, P, w, angle, advance, how, trailing, lean) =>
      overTwoWires(E, wiresGiven(P, w, angle, advance, how, trailing), lean),
  }),
  declare({
    name: "WIRE.FROMTWO",
    family: "measure",
    summary: "Pitch diameter of a screw from what a micrometer reads over two wires.",
    params: [reading, ...grooveAndWires, tilt],
    returns: { type: "number", unit: "length", doc: "Pitch (effective) diameter." },
    failures: [{ ...noReading, formula: "=WIRE.FROMTWO(0, 1.75, 1, 60)" }],
    examples: [{ formula: "=WIRE.FROMTWO(12.3628869, 1.75, 1, 60, , , , 1)", value: 10.863 }],
    source: geometry,
    compute: (M, P, w, angle, advance, how, trailing, lean) =>
      pitchDiameterFromTwo(M, wiresGiven(P, w, angle, advance, how, trailing), lean),
  }),
  declare({
    name: "WIRE.ONE",
    family: "measure",
    summary: "What a micrometer reads over one wire, or a pair under a flat anvil, and the crests opposite.",
    params: [pitchDia, major, ...grooveAndWires],
    returns: {
      type: "number",
      unit: "length",
      doc: "Half of the reading over three wires and half of the major diameter: crests out of true count, so take the mean of two readings half a turn apart.",
    },
    failures: [
      { ...sunk, formula: "=WIRE.ONE(10.863, 11.8, 1.75, 0.4, 60)" },
      {
        when: "the wire does not stand above the crests",
        formula: "=WIRE.ONE(10.863, 13, 1.75, 1, 60)",
        gives: "#NUM!",
        says: "wire must stand above the crests of the major diameter 13",
      },
    ],
    examples: [{ formula: "=WIRE.ONE(10.863, 11.8, 1.75, 1, 60)", value: 12.0746723 }],
    source: geometry,
    compute: (E, over, ...given) => overOneWire(E, over, wiresGiven(...given)),
  }),
  declare({
    name: "WIRE.FROMONE",
    family: "measure",
    summary: "Pitch diameter of a screw from a reading over one wire, or a pair, and the crests opposite.",
    params: [reading, major, ...grooveAndWires],
    returns: { type: "number", unit: "length", doc: "Pitch (effective) diameter." },
    failures: [{ ...noReading, formula: "=WIRE.FROMONE(0, 11.8, 1.75, 1, 60)" }],
    examples: [{ formula: "=WIRE.FROMONE(12.0746723, 11.8, 1.75, 1, 60)", value: 10.863 }],
    source: geometry,
    compute: (M, over, ...given) => pitchDiameterFromOne(M, over, wiresGiven(...given)),
  }),
  declare({
    name: "WIRE.TAPER",
    family: "measure",
    summary: "What a micrometer reads over three wires on a taper thread.",
    params: [pitchDia, taper, pitch, wire, included, lead, method],
    returns: {
      type: "number",
      unit: "length",
      doc: "With the single wire at the place of that pitch diameter and the other two on either side of it.",
    },
    failures: [
      { ...sunk, formula: "=WIRE.TAPER(0.77843, 1/16, 1/14, 0.01, 60)" },
      {
        when: "the taper is below 0",
        formula: "=WIRE.TAPER(0.77843, -1/16, 1/14, 0.045, 60)",
        gives: "#NUM!",
        says: "taper must be 0 or more",
      },
    ],
    examples: [
      {
        formula: '=WIRE.TAPER(0.77843, 1/16, 1/14, 0.045, 60, , "plain")',
        value: 0.8511976,
        source:
          "centres of three circles in the axial plane, by hand; the handbooks' short form gives 0.8511540",
      },
    ],
    source: taperSource,
    compute: (E, slope, ...given) => overTaper(E, slope, wiresGiven(...given)),
  }),
  declare({
    name: "WIRE.FROMTAPER",
    family: "measure",
    summary: "Pitch diameter of a taper thread, at the single wire, from a reading over three wires.",
    params: [reading, taper, pitch, wire, included, lead, method],
    returns: { type: "number", unit: "length", doc: "Pitch (effective) diameter at the single wire." },
    failures: [{ ...noReading, formula: "=WIRE.FROMTAPER(0, 1/16, 1/14, 0.045, 60)" }],
    examples: [
      { formula: '=WIRE.FROMTAPER(0.8511976238, 1/16, 1/14, 0.045, 60, , "plain")', value: 0.77843 },
    ],
    source: taperSource,
    compute: (M, slope, ...given) => pitchDiameterOfTaper(M, slope, wiresGiven(...given)),
  }),
];

const coneAngle = {
  name: "cone_angle",
  type: "number",
  unit: "deg",
  doc: "Included angle of the micrometer's cone and vee, above 0 and below 180.",
} as const satisfies Param;
const tip = {
  name: "tip",
  type: "number",
  unit: "length",
  doc: "Width of the cone's tip and of the bottom of the vee, 0 to below half the pitch.",
} as const satisfies Param;
const widest = {
  name: "widest",
  type: "number",
  unit: "length",
  doc: "Width of cone and mouth of the vee where contact ends, above half the pitch, at most the pitch.",
} as const satisfies Param;
const coneSource = "geometry in the axial plane; the lead is left out";

const cones: readonly SheetFunction[] = [
  declare({
    name: "CONE.READING",
    family: "measure",
    summary: "What a thread micrometer, cone and vee, reads on a thread whose angle is not its own.",
    params: [pitchDia, pitch, included, coneAngle, tip, widest],
    returns: {
      type: "number",
      unit: "length",
      doc: "The pitch diameter when the angles agree, else more; set to nothing with the cone home in the vee.",
    },
    failures: [
      {
        when: "the tip is wider than the groove at the pitch line",
        formula: "=CONE.READING(10.863, 1.75, 60, 60, 1, 1.5)",
        gives: "#NUM!",
        says: "tip must be from 0 to below half the pitch",
      },
      {
        when: "the contact ends at the pitch line",
        formula: "=CONE.READING(10.863, 1.75, 60, 60, 0.3, 0.8)",
        gives: "#NUM!",
        says: "widest must be above half the pitch",
      },
    ],
    examples: [
      { formula: "=CONE.READING(10.863, 1.75, 60, 60, 0.3, 1.5)", value: 10.863 },
      {
        formula: "=CONE.READING(10.863, 1.75, 60, 59.5, 0.3, 1.5)",
        value: 10.8735518,
        source: "|cot 29.75 - cot 30| (1.5 - 0.3) / 2 by hand",
      },
    ],
    source: coneSource,
    compute: (E, P, angle, cone, least, most) => {
      requirePositive("pitch_dia", E);
      return E + heldOffByAngle(P, angle, { angle: cone, tip: least, widest: most });
    },
  }),
  declare({
    name: "CONE.PITCHDIA",
    family: "measure",
    summary: "Pitch diameter from a thread micrometer, cone and vee, whose angle is not the thread's own.",
    params: [reading, pitch, included, coneAngle, tip, widest],
    returns: { type: "number", unit: "length", doc: "Pitch (effective) diameter." },
    failures: [
      {
        when: "the reading is no more than the angles alone would give",
        formula: "=CONE.PITCHDIA(0.001, 1.75, 60, 55, 0.3, 1.5)",
        gives: "#NUM!",
        says: "reading must be that of a pitch diameter above 0",
      },
    ],
    examples: [{ formula: "=CONE.PITCHDIA(10.8735518, 1.75, 60, 59.5, 0.3, 1.5)", value: 10.863 }],
    source: coneSource,
    compute: (M, P, angle, cone, least, most) => {
      requirePositive("reading", M);
      const E = M - heldOffByAngle(P, angle, { angle: cone, tip: least, widest: most });
      if (!(E > 0)) throw new RangeError(`reading must be that of a pitch diameter above 0, got ${M}`);
      return E;
    },
  }),
];

export const wireMethodFunctions: readonly SheetFunction[] = [
  ...ballFunctions,
  ...ways,
  ...wireCorrections,
  ...cones,
  ...windFunctions,
];
