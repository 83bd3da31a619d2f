/** A set-over on a scale that ends somewhere and has whole divisions. */
import { markFor, markWords, type Protractor } from "../lathe/protractor.ts";
import { declare, type Param, type SheetFunction } from "./declare.ts";

const params = [
  {
    name: "setover",
    type: "number",
    unit: "deg",
    doc: "Set-over from the line square to the lathe axis, -90 to 90.",
  },
  {
    name: "zero_line",
    type: "text",
    options: ["square", "bed", "obtuse"],
    doc: '"square": zero square to the bed; "bed": zero along the bed; "obtuse": along the bed from its other end.',
  },
  { name: "low", type: "number", unit: "deg", doc: "Lowest mark of the scale, 0 or more." },
  { name: "high", type: "number", unit: "deg", doc: "Highest mark of the scale, above low, up to 360." },
  {
    name: "division",
    type: "number",
    unit: "deg",
    fallback: 0,
    doc: "Smallest division of the scale; 0 when left out: read between the marks.",
  },
  {
    name: "counts",
    type: "text",
    options: ["both", "one"],
    fallback: "both",
    doc: '"both": the scale is marked to both sides of its zero; "one": to one side.',
  },
] as const satisfies readonly Param[];

const failures = (name: string) =>
  [
    {
      when: "nothing on the scale serves",
      formula: `=${name}(27.5, "bed", 0, 20)`,
      gives: "#N/A",
      says: "no mark from 0 to 20 gives a set-over of 27.5",
    },
    {
      when: "the scale has no length",
      formula: `=${name}(27.5, "bed", 60, 60)`,
      gives: "#NUM!",
      says: "low must be less than high, got 60 and 60",
    },
    {
      when: "the set-over is outside -90 to 90",
      formula: `=${name}(91, "bed", 0, 60)`,
      gives: "#NUM!",
      says: "setover must be from -90 to 90",
    },
  ] as const;

const source = "geometry; the words are our own";

function scale(
  zero: Protractor["zero"],
  low: number,
  high: number,
  division: number,
  counts: Protractor["counts"],
): Protractor {
  return { zero, low, high, division, counts };
}

export const protractorFunctions: readonly SheetFunction[] = [
  declare({
    name: "SETOVER.ONSCALE",
    family: "set-over",
    summary:
      "How to set a set-over on your own scale, in words: past its end by a pencil mark, or from the other side.",
    params,
    returns: {
      type: "text",
      doc: "The mark to set, counted from where, and what rounding to the division leaves. Half way between two marks the smaller set-over is taken.",
    },
    failures: failures("SETOVER.ONSCALE"),
    examples: [
      { formula: '=SETOVER.ONSCALE(27.5, "square", 0, 60)', value: "set 27.5", source: "as it is measured" },
      {
        formula: '=SETOVER.ONSCALE(27.5, "bed", 0, 60)',
        value:
          "62.5 is past your scale's end at 60. 62.5 from the bed is 27.5 from square to the bed (90 - 62.5). Stand the slide square to the bed, pencil a mark beside the scale's 0, then swing the slide back towards its zero until the pencil mark shows 27.5",
        source: "27.5 from square is 90 - 27.5 = 62.5 from the bed",
      },
      {
        formula: '=SETOVER.ONSCALE(29, "bed", 0, 90, 2)',
        value: "set 62; the set-over is then 1 under",
        source: "90 - 29 = 61 is half way between 60 and 62; 62 from the bed is 28 from square",
      },
      {
        formula: '=SETOVER.ONSCALE(-27.5, "bed", 0, 90)',
        value: "set 62.5 to the other side of zero",
        source: "90 + 27.5 = 117.5 one way round is 180 - 117.5 = 62.5 the other way",
      },
    ],
    source,
    compute: (setover, zero, low, high, division, counts) =>
      markWords(setover, scale(zero, low, high, division, counts)),
  }),
  declare({
    name: "SETOVER.MARK",
    family: "set-over",
    summary: "The mark of your own scale to set, as a number; SETOVER.ONSCALE says from where it counts.",
    params,
    returns: { type: "number", unit: "deg", doc: "A whole number of divisions." },
    failures: failures("SETOVER.MARK"),
    examples: [
      {
        formula: '=SETOVER.MARK(27.5, "bed", 0, 60)',
        value: 27.5,
        source: "62.5 is past the end at 60; from square it is 90 - 62.5",
      },
      {
        formula: '=SETOVER.MARK(26.5, "bed", 0, 90, 1)',
        value: 64,
        source: "90 - 26.5 = 63.5; of 63 and 64 the second sets 26, the smaller set-over",
      },
    ],
    source,
    compute: (setover, zero, low, high, division, counts) =>
      markFor(setover, scale(zero, low, high, division, counts)).reading,
  }),
  declare({
    name: "SETOVER.ROUNDED",
    family: "set-over",
    summary: "The set-over that the nearest mark of your own scale gives.",
    params,
    returns: { type: "number", unit: "deg", doc: "From the line square to the lathe axis." },
    failures: failures("SETOVER.ROUNDED"),
    examples: [
      {
        formula: '=SETOVER.ROUNDED(26.5, "bed", 0, 90, 1)',
        value: 26,
        source: "set to 64 from the bed: 90 - 64",
      },
      { formula: '=SETOVER.ROUNDED(29.3, "square", 0, 60, 0.5)', value: 29.5, source: "nearest half degree" },
    ],
    source,
    compute: (setover, zero, low, high, division, counts) =>
      markFor(setover, scale(zero, low, high, division, counts)).setover,
  }),
];
