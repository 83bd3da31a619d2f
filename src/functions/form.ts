import { formDepth, sharpHeight, splitIncluded } from "../lathe/form.ts";
import { declare, type SheetFunction } from "./declare.ts";

export const formFunctions: readonly SheetFunction[] = [
  declare({
    name: "FORM.HEIGHT",
    family: "form",
    summary: "Height of the sharp triangle that a thread form is cut from: pitch / (tan a + tan b).",
    params: [
      { name: "pitch", type: "number", unit: "length", doc: "Pitch, above 0." },
      {
        name: "flank",
        type: "number",
        unit: "deg",
        doc: "Flank angle from the line square to the axis, 0 to below 90.",
      },
      {
        name: "other_flank",
        type: "number",
        unit: "deg",
        optional: true,
        doc: "The other flank angle; left out: the same.",
      },
    ],
    returns: { type: "number", unit: "length", doc: "Height of the triangle, radial." },
    failures: [
      {
        when: "the pitch is not above 0",
        formula: "=FORM.HEIGHT(-1, 30)",
        gives: "#NUM!",
        says: "pitch must be greater than 0, got -1",
      },
      {
        when: "a flank reaches 90 degrees",
        formula: "=FORM.HEIGHT(1, 90)",
        gives: "#NUM!",
        says: "flank must be from 0 to below 90",
      },
      {
        when: "both flanks are square, so there is no triangle",
        formula: "=FORM.HEIGHT(1, 0, 0)",
        gives: "#NUM!",
        says: "flank",
      },
      { when: "the flank is left out", formula: "=FORM.HEIGHT(1)", gives: "#VALUE!", says: "flank" },
    ],
    examples: [
      { formula: "=FORM.HEIGHT(1, 30)", value: 0.8660254 },
      { formula: "=FORM.HEIGHT(2, 3, 45)", value: 1.900404 },
    ],
    source: "geometry",
    compute: (pitch, flank, otherFlank) => sharpHeight(pitch, flank, otherFlank),
  }),
  declare({
    name: "FORM.DEPTH",
    family: "form",
    summary: "Radial depth of a form between its crest flat and its root flat.",
    params: [
      { name: "pitch", type: "number", unit: "length", doc: "Pitch, above 0." },
      { name: "included", type: "number", unit: "deg", doc: "Included angle, above 0 to below 180." },
      { name: "crest_flat", type: "number", unit: "length", doc: "Width of the crest flat, 0 or more." },
      {
        name: "root_flat",
        type: "number",
        unit: "length",
        doc: "Width of the root flat, 0 or more; both together less than the pitch.",
      },
      {
        name: "trailing_flank",
        type: "number",
        unit: "deg",
        optional: true,
        doc: "Flank away from the cut; left out: half the included angle.",
      },
    ],
    returns: { type: "number", unit: "length", doc: "(pitch - crest - root) / (tan l + tan t)." },
    failures: [
      {
        when: "the flats leave no depth",
        formula: "=FORM.DEPTH(1, 60, 0.5, 0.5)",
        gives: "#NUM!",
        says: "crest_flat + root_flat must be less than the pitch",
      },
      {
        when: "a flat is negative",
        formula: "=FORM.DEPTH(1, 60, -0.1, 0)",
        gives: "#NUM!",
        says: "crest_flat must be 0 or more",
      },
      {
        when: "the trailing flank is more than the included angle",
        formula: "=FORM.DEPTH(1, 60, 0, 0, 61)",
        gives: "#NUM!",
        says: "trailing_flank must be from 0 to 60",
      },
    ],
    examples: [{ formula: "=FORM.DEPTH(1.5, 60, 0.1875, 0.375)", value: 0.8118988 }],
    source: "geometry",
    compute: (pitch, included, crestFlat, rootFlat, trailingFlank) =>
      formDepth(pitch, splitIncluded(included, trailingFlank), crestFlat, rootFlat),
  }),
];
