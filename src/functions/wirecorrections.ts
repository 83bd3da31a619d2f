/** WIRE.*: what a set of wires as it is, a deviation, or the measuring force does to a reading. */
import { compressionOverWires, STEEL } from "../thread/compression.ts";
import { requirePositive, veeOf } from "../thread/groove.ts";
import { convertLength } from "../thread/thread.ts";
import { meanOfSet, sensitivity } from "../thread/wiremethods.ts";
import { declare, type SheetFunction } from "./declare.ts";
import { unitParam } from "./designated.ts";
import {
  grooveAndWires,
  included,
  noReading,
  pitchDia,
  reading,
  trailingFlank,
  wire,
  wiresGiven,
} from "./measured.ts";

export const wireCorrections: readonly SheetFunction[] = [
  declare({
    name: "WIRE.MEAN",
    family: "measure",
    summary: "The one diameter that stands for a set of three wires as calibrated.",
    params: [
      { name: "pair_one", type: "number", unit: "length", doc: "One wire of the two side by side, above 0." },
      { name: "pair_two", type: "number", unit: "length", doc: "The other of the two, above 0." },
      { name: "opposite", type: "number", unit: "length", doc: "The wire on the other side, above 0." },
    ],
    returns: { type: "number", unit: "length", doc: "A quarter of each of the pair and half of the third." },
    failures: [
      {
        when: "a wire is not above 0",
        formula: "=WIRE.MEAN(1, 0, 1)",
        gives: "#NUM!",
        says: "pair_two must be",
      },
    ],
    examples: [{ formula: "=WIRE.MEAN(1.001, 0.999, 1.002)", value: 1.001 }],
    source: "geometry",
    compute: meanOfSet,
  }),
  declare({
    name: "WIRE.SENSITIVITY",
    family: "measure",
    summary: "How much the pitch diameter found changes with one of the things it is reckoned from.",
    params: [
      {
        name: "input",
        type: "text",
        options: ["reading", "wire", "pitch", "angle"],
        doc: "reading, wire, pitch (the lead goes with it) or angle (the included angle).",
      },
      reading,
      ...grooveAndWires,
    ],
    returns: {
      type: "number",
      unit: "ratio",
      doc: "Length per length; for the angle length per degree. Times a deviation it is what the deviation does.",
    },
    failures: [
      {
        when: "the input is none of these",
        formula: '=WIRE.SENSITIVITY("lead", 12.35, 1.75, 1, 60)',
        gives: "#VALUE!",
        says: "angle",
      },
      { ...noReading, formula: '=WIRE.SENSITIVITY("wire", 0, 1.75, 1, 60)' },
    ],
    examples: [
      {
        formula: '=WIRE.SENSITIVITY("wire", 12.3474555, 1.75, 1, 60, , "plain")',
        value: -3,
        source: "-(1 + cosec 30)",
      },
      {
        formula: '=WIRE.SENSITIVITY("pitch", 12.3474555, 1.75, 1, 60, , "plain")',
        value: 0.8660254,
        source: "(1/2) cot 30",
      },
      {
        formula: '=WIRE.SENSITIVITY("angle", 12.3474555, 1.75, 1, 60, , "plain")',
        value: -0.00031327251,
        within: 1e-7,
        source: "(w cos 30 - P/2) / (2 sin^2 30) for a radian of the included angle",
      },
    ],
    source: "geometry; JCGM 100, sensitivity coefficients",
    compute: (input, M, ...given) => sensitivity(input, M, wiresGiven(...given)),
  }),
  declare({
    name: "WIRE.COMPRESSION",
    family: "measure",
    summary:
      "How much less a micrometer reads over three wires because its force squeezes them and the flanks.",
    params: [
      pitchDia,
      wire,
      included,
      { name: "force", type: "number", unit: "N", doc: "Measuring force, 0 or more." },
      unitParam,
      trailingFlank,
      {
        name: "anvil",
        type: "number",
        unit: "length",
        optional: true,
        doc: "Length of wire under the anvil, above 0; left out, 6.5 mm (common practice, no source).",
      },
      {
        name: "work_modulus",
        type: "number",
        unit: "GPa",
        fallback: STEEL,
        doc: "Modulus of elasticity of the work: steel 208, brass about 100.",
      },
      {
        name: "wire_modulus",
        type: "number",
        unit: "GPa",
        fallback: STEEL,
        doc: "Modulus of elasticity of wires and anvils: steel 208.",
      },
    ],
    returns: {
      type: "number",
      unit: "length",
      doc: "Add it to the reading, unless the wires were calibrated to make up for it. Poisson's ratio 0.3.",
    },
    failures: [
      {
        when: "the force is below 0",
        formula: "=WIRE.COMPRESSION(10.863, 1, 60, -5)",
        gives: "#NUM!",
        says: "force must be 0 or more",
      },
      {
        when: "a flank is square to the axis",
        formula: '=WIRE.COMPRESSION(10.863, 1, 45, 5, "mm", 0)',
        gives: "#NUM!",
        says: "both flanks must be above 0 degrees",
      },
    ],
    examples: [
      {
        formula: "=WIRE.COMPRESSION(10.863, 1, 60, 5)",
        value: 0.002299252,
        source: "Hertz's equations solved to 25 digits with another library's elliptic integrals",
      },
      {
        formula: '=WIRE.COMPRESSION(50, 3, 52, 10, "mm", 7)',
        value: 0.002535243,
        source: "the same, for unequal flanks",
      },
      {
        formula: '=WIRE.COMPRESSION(10.863, 1, 60, 5, "mm", , , 100)',
        value: 0.00304613,
        source: "the same, for brass",
      },
    ],
    source: "Puttock and Thwaite, CSIRO 1969, cases 6 and 9 (Hertz); the flank as a cone",
    compute: (E, w, angle, force, unit, trailing, anvil, workModulus, wireModulus) => {
      requirePositive("pitch_dia", E);
      const mm = (length: number) => convertLength(length, unit, "mm");
      const squeezed = compressionOverWires(mm(E), veeOf(1, angle, trailing), mm(w), {
        force,
        anvil: anvil === undefined ? 6.5 : mm(anvil),
        wireModulus,
        workModulus,
      });
      return convertLength(squeezed, "mm", unit);
    },
  }),
];
