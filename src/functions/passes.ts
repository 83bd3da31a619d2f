import { grooveOf } from "../lathe/chip-area.ts";
import { depthAfter, passArea, passCount } from "../lathe/passes.ts";
import { declare, type Param, type SheetFunction } from "./declare.ts";
import { depth, pass, passes } from "./depths.ts";
import { planFunctions } from "./plan.ts";
import { noseOrSharp, shape, trailingFlank } from "./toolform.ts";

const spread = {
  name: "spread",
  type: "text",
  options: ["area", "even"],
  fallback: "area",
  doc: '"area": every pass takes the same chip area; "even": the same depth.',
} as const satisfies Param;
const included = {
  name: "included",
  type: "number",
  unit: "deg",
  fallback: 60,
  doc: "Included angle of the tool, 0 to below 180; 60 when left out.",
} as const satisfies Param;
export const passFunctions: readonly SheetFunction[] = [
  declare({
    name: "PASS.DEPTH",
    family: "passes",
    summary:
      "Radial depth reached after a pass, when every pass takes the same chip area (or the same depth).",
    params: [depth, pass, passes, spread, included, noseOrSharp, trailingFlank, shape],
    returns: { type: "number", unit: "length", doc: "From the surface, radial." },
    failures: [
      {
        when: "the pass comes after the last",
        formula: "=PASS.DEPTH(0.92, 10, 9)",
        gives: "#NUM!",
        says: "pass must be at most the number of passes 9, got 10",
      },
      {
        when: "the passes are not whole",
        formula: "=PASS.DEPTH(0.92, 1, 8.5)",
        gives: "#NUM!",
        says: "passes must be a whole number",
      },
      {
        when: "the nose is negative",
        formula: '=PASS.DEPTH(0.92, 4, 9, "area", 60, -0.1)',
        gives: "#NUM!",
        says: "nose must be 0 or more",
      },
    ],
    examples: [
      { formula: "=PASS.DEPTH(0.92, 4, 9)", value: 0.6133333 },
      { formula: '=PASS.DEPTH(0.92, 4, 9, "area", 60, 0.19)', value: 0.5688131 },
      { formula: '=PASS.DEPTH(4.2, 4, 9, "area", 52, 0.5, 7)', value: 2.6692965 },
      { formula: '=PASS.DEPTH(1.3553593, 4, 9, "area", 55, 0.2906798, 27.5, "radius")', value: 0.8232925 },
    ],
    source: "geometry; equal chip area is common practice, no source",
    compute: (full, pass, passes, how, angle, width, trailing, nosed) =>
      depthAfter(full, pass, passes, how, grooveOf(angle, width, trailing, nosed)),
  }),
  declare({
    name: "PASS.COUNT",
    family: "passes",
    summary: "How many passes are needed so that none takes more than the first.",
    params: [
      depth,
      {
        name: "first_depth",
        type: "number",
        unit: "length",
        doc: "Radial depth of the first pass, above 0.",
      },
      spread,
      included,
      noseOrSharp,
      trailingFlank,
      shape,
    ],
    returns: { type: "number", doc: "Whole; 1 when the first pass reaches the depth." },
    failures: [
      {
        when: "the first pass has no depth",
        formula: "=PASS.COUNT(0.92, 0)",
        gives: "#NUM!",
        says: "first_depth must be greater than 0",
      },
      {
        when: "the depth is not above 0",
        formula: "=PASS.COUNT(0, 0.25)",
        gives: "#NUM!",
        says: "depth must be greater than 0",
      },
    ],
    examples: [
      { formula: "=PASS.COUNT(0.92, 0.25)", value: 14 },
      { formula: '=PASS.COUNT(0.92, 0.25, "area", 60, 0.19)', value: 8 },
      { formula: '=PASS.COUNT(0.92, 0.25, "even")', value: 4, source: "0.92 / 0.25 = 3.68, rounded up" },
    ],
    source: "geometry; equal chip area is common practice, no source",
    compute: (full, first, how, angle, width, trailing, nosed) =>
      passCount(full, first, how, grooveOf(angle, width, trailing, nosed)),
  }),
  declare({
    name: "PASS.AREA",
    family: "passes",
    summary: "Chip area that a pass takes between two radial depths.",
    params: [
      { name: "from_depth", type: "number", unit: "length", doc: "Where the pass starts, 0 to to_depth." },
      { name: "to_depth", type: "number", unit: "length", doc: "Where it ends." },
      included,
      noseOrSharp,
      trailingFlank,
      shape,
    ],
    returns: {
      type: "number",
      unit: "length2",
      doc: "In the axial plane; holds while the set-over is not above the trailing flank.",
    },
    failures: [
      {
        when: "the pass would come out again",
        formula: "=PASS.AREA(0.9, 0.5)",
        gives: "#NUM!",
        says: "from_depth must be from 0 to 0.5, got 0.9",
      },
      {
        when: "a sharp point stands between square flanks",
        formula: "=PASS.AREA(0, 1, 0)",
        gives: "#NUM!",
        says: "nose must be greater than 0",
      },
    ],
    examples: [
      { formula: "=PASS.AREA(0, 0.92, 60, 0.19)", value: 0.6634693 },
      { formula: "=PASS.AREA(0, 4.2, 52, 0.5, 7)", value: 12.0029598 },
      { formula: '=PASS.AREA(0, 1.3553593, 55, 0.2906798, 27.5, "radius")', value: 1.4240457 },
    ],
    source: "geometry",
    compute: (from, to, angle, width, trailing, nosed) =>
      passArea(from, to, grooveOf(angle, width, trailing, nosed)),
  }),
  ...planFunctions,
];
