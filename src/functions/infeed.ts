import { correction, depthForInfeed, flankChip, infeedForDepth, isPastFlank } from "../lathe/infeed.ts";
import { declare, type Param, type SheetFunction } from "./declare.ts";

const setover = {
  name: "setover",
  type: "number",
  unit: "deg",
  doc: "Set-over from the line square to the lathe axis, between -90 and 90.",
} as const satisfies Param;

export const infeedFunctions: readonly SheetFunction[] = [
  declare({
    name: "FLANK.INFEED",
    family: "infeed",
    summary: "Travel of the set-over slide for a radial depth: depth / cos a.",
    params: [{ name: "depth", type: "number", unit: "length", doc: "Radial depth, 0 or more." }, setover],
    returns: { type: "number", unit: "length", doc: "Slide travel." },
    failures: [
      {
        when: "the set-over lies along the bed",
        formula: "=FLANK.INFEED(1, 90)",
        gives: "#NUM!",
        says: "setover must be between -90 and 90",
      },
      {
        when: "the depth is negative",
        formula: "=FLANK.INFEED(-1, 27)",
        gives: "#NUM!",
        says: "depth must be 0 or more, got -1",
      },
      { when: "the set-over is left out", formula: "=FLANK.INFEED(1)", gives: "#VALUE!", says: "setover" },
    ],
    examples: [{ formula: "=FLANK.INFEED(1.3554, 27)", value: 1.521201 }],
    source: "geometry",
    compute: infeedForDepth,
  }),
  declare({
    name: "FLANK.DEPTH",
    family: "infeed",
    summary: "Radial depth that a travel of the set-over slide gives: travel x cos a.",
    params: [{ name: "infeed", type: "number", unit: "length", doc: "Slide travel, 0 or more." }, setover],
    returns: { type: "number", unit: "length", doc: "Radial depth." },
    failures: [
      {
        when: "the set-over is outside -90 to 90",
        formula: "=FLANK.DEPTH(1, -90)",
        gives: "#NUM!",
        says: "setover must be between -90 and 90",
      },
      {
        when: "the travel is negative",
        formula: "=FLANK.DEPTH(-0.1, 27)",
        gives: "#NUM!",
        says: "infeed must be 0 or more",
      },
    ],
    examples: [
      {
        formula: "=FLANK.DEPTH(1.521201, 27)",
        value: 1.3554,
        source: "inverse of FLANK.INFEED(1.3554, 27) = 1.5212010",
        within: 5e-7,
      },
    ],
    source: "geometry",
    compute: depthForInfeed,
  }),
  declare({
    name: "FLANK.CHIP",
    family: "infeed",
    summary: "Uncut chip thickness that a pass takes square to one flank.",
    params: [
      { name: "infeed", type: "number", unit: "length", doc: "Slide travel of the pass, 0 or more." },
      setover,
      { name: "flank", type: "number", unit: "deg", doc: "Angle of that flank, 0 to below 90." },
      {
        name: "side",
        type: "text",
        options: ["leading", "trailing"],
        doc: '"leading": towards the cut; "trailing": the other.',
      },
    ],
    returns: {
      type: "number",
      unit: "length",
      doc: "s sin(a + f) on the leading, s sin(f - a) on the trailing flank; 0 with a note where the set-over is past the flank.",
    },
    failures: [
      {
        when: "the travel is negative",
        formula: '=FLANK.CHIP(-0.1, 29.5, 30, "leading")',
        gives: "#NUM!",
        says: "infeed must be 0 or more",
      },
      { when: "the side is left out", formula: "=FLANK.CHIP(0.1, 29.5, 30)", gives: "#VALUE!", says: "side" },
    ],
    examples: [
      { formula: '=FLANK.CHIP(0.1, 29.5, 30, "trailing")', value: 0.0008727, within: 5e-8 },
      { formula: '=FLANK.CHIP(0.1, 0, 30, "leading")', value: 0.05, source: "straight in: s sin 30 degrees" },
      {
        formula: '=FLANK.CHIP(0.1, 35, 30, "trailing")',
        value: 0,
        source: "past the trailing flank nothing is cut there",
      },
    ],
    source: "geometry",
    compute: (infeed, angle, flank, side) => {
      const value = flankChip(infeed, angle, flank, side);
      if (!isPastFlank(angle, flank, side)) return value;
      return { value, note: `set-over past the ${side} flank: earlier passes cut outside the finished form` };
    },
  }),
  declare({
    name: "FLANK.CORRECTION",
    family: "infeed",
    summary:
      "Slide travel still to go when the diameter reads over what is wanted: (reading - wanted) / (2 cos a).",
    params: [
      {
        name: "reading",
        type: "number",
        unit: "length",
        doc: "What is measured, over wires or direct, above 0.",
      },
      { name: "wanted", type: "number", unit: "length", doc: "What it should be, above 0." },
      setover,
    ],
    returns: {
      type: "number",
      unit: "length",
      doc: "Slide travel; below 0 when the reading is under what is wanted.",
    },
    failures: [
      {
        when: "a reading is not above 0",
        formula: "=FLANK.CORRECTION(0, 12.35, 27)",
        gives: "#NUM!",
        says: "reading must be greater than 0",
      },
      {
        when: "the set-over is outside -90 to 90",
        formula: "=FLANK.CORRECTION(12.46, 12.35, 95)",
        gives: "#NUM!",
        says: "setover",
      },
    ],
    examples: [{ formula: "=FLANK.CORRECTION(12.46, 12.35, 27)", value: 0.0617279, within: 5e-8 }],
    source: "geometry",
    compute: (reading, wanted, angle) => {
      const value = correction(reading, wanted, angle);
      if (value >= 0) return value;
      return {
        value,
        note: "the reading is under what is wanted: a screw is past its size, stop cutting; in a nut read between balls this is the travel still to go",
      };
    },
  }),
];
