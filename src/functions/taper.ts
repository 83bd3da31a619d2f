import { tailstockOffset, taperHalfAngle } from "../lathe/taper.ts";
import { declare, type Param, type SheetFunction } from "./declare.ts";

/** Of work turned between centres as of a pipe thread. */
export const taper = {
  name: "taper",
  type: "number",
  unit: "ratio",
  doc: "On diameter per length, 0 or more: 1/16 for pipe threads.",
} as const satisfies Param;

export const taperFunctions: readonly SheetFunction[] = [
  declare({
    name: "TAPER.SETOVER",
    family: "taper",
    summary: "Offset of the tailstock for turning a taper between centres.",
    params: [
      {
        name: "length",
        type: "number",
        unit: "length",
        doc: "Length of the whole work between centres, not of the tapered part; above 0.",
      },
      taper,
    ],
    returns: { type: "number", unit: "length", doc: "length x taper / 2." },
    failures: [
      {
        when: "the length is not above 0",
        formula: "=TAPER.SETOVER(0, 0.0625)",
        gives: "#NUM!",
        says: "length must be greater than 0",
      },
      { when: "the taper is left out", formula: "=TAPER.SETOVER(200)", gives: "#VALUE!", says: "taper" },
    ],
    examples: [{ formula: "=TAPER.SETOVER(200, 1/16)", value: 6.25 }],
    source: "geometry",
    compute: tailstockOffset,
  }),
  declare({
    name: "TAPER.ANGLE",
    family: "taper",
    summary: "Half angle of a taper: what a slide or taper attachment is set to.",
    params: [taper],
    returns: { type: "number", unit: "deg", doc: "From the axis of the work." },
    failures: [
      {
        when: "the taper is negative",
        formula: "=TAPER.ANGLE(-0.1)",
        gives: "#NUM!",
        says: "taper must be 0 or more",
      },
    ],
    examples: [{ formula: "=TAPER.ANGLE(1/16)", value: 1.7899106 }],
    source: "geometry",
    compute: taperHalfAngle,
  }),
];
