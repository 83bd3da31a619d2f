import { depthOffCentre, flankCut, flankForRake, offCentreFlank, sideClearance } from "../lathe/tool.ts";
import { declare, type Param, type SheetFunction } from "./declare.ts";
import { member } from "./member.ts";

const flank = {
  name: "flank",
  type: "number",
  unit: "deg",
  doc: "Flank angle of the form, 0 to below 90.",
} as const satisfies Param;
const depth = {
  name: "depth",
  type: "number",
  unit: "length",
  doc: "Radial depth of the thread, above 0.",
} as const satisfies Param;
const side = {
  name: "side",
  type: "text",
  options: ["leading", "trailing"],
  fallback: "leading",
  doc: '"leading": the side towards the cut; "trailing": the other.',
} as const satisfies Param;
const blank = {
  name: "blank_dia",
  type: "number",
  unit: "length",
  doc: "Outside diameter of the screw's blank, or bore of the nut's; above 0.",
} as const satisfies Param;
const screwBlank = {
  ...blank,
  doc: "Outside diameter of the screw's blank, above 0.",
} as const satisfies Param;
const lead = {
  name: "lead",
  type: "number",
  unit: "length",
  fallback: 0,
  doc: "Lead; 0 leaves the helix out.",
} as const satisfies Param;

export const toolFunctions: readonly SheetFunction[] = [
  declare({
    name: "TOOL.FLANKFORRAKE",
    family: "tool",
    summary: "Flank angle to grind on a tool with top rake so that it cuts the right flank.",
    params: [
      flank,
      {
        name: "rake",
        type: "number",
        unit: "deg",
        doc: "Top rake, between -90 and 90; 0 gives the flank itself when the lead is left out.",
      },
      depth,
      blank,
      member,
      lead,
      side,
    ],
    returns: {
      type: "number",
      unit: "deg",
      doc: "From the tool's centre line, in the plane of the raked top face; right at root and crest.",
    },
    failures: [
      {
        when: "the thread is deeper than the blank",
        formula: "=TOOL.FLANKFORRAKE(30, 10, 6, 10)",
        gives: "#NUM!",
        says: "depth must be less than half the blank 5",
      },
      {
        when: "the top face does not reach the bore",
        formula: '=TOOL.FLANKFORRAKE(30, 80, 1, 8, "internal")',
        gives: "#NUM!",
        says: "rake must be at most",
      },
    ],
    examples: [
      { formula: "=TOOL.FLANKFORRAKE(30, 10, 0.92, 10)", value: 29.6918394 },
      { formula: '=TOOL.FLANKFORRAKE(30, 10, 0.92, 10, "external", 1.5)', value: 29.3320085 },
      { formula: '=TOOL.FLANKFORRAKE(30, 10, 0.92, 10, "external", 1.5, "trailing")', value: 30.0491116 },
      { formula: '=TOOL.FLANKFORRAKE(30, 10, 0.8118988, 8.3762, "internal")', value: 29.5471586 },
      { formula: "=TOOL.FLANKFORRAKE(30, 0, 0.92, 10)", value: 30 },
    ],
    source: "geometry",
    compute: flankForRake,
  }),
  declare({
    name: "TOOL.CLEARANCE",
    family: "tool",
    summary: "Side clearance to grind under an edge, from the vertical.",
    params: [
      { name: "lead", type: "number", unit: "length", doc: "Lead of the thread, 0 or more." },
      {
        name: "diameter",
        type: "number",
        unit: "length",
        doc: "Minor diameter for the leading side, major for the trailing one; above 0.",
      },
      side,
      {
        name: "relief",
        type: "number",
        unit: "deg",
        fallback: 3,
        doc: "Clearance wanted beside the helix; 3 when left out (common practice, no source).",
      },
    ],
    returns: {
      type: "number",
      unit: "deg",
      doc: "relief + helix angle leading, relief - helix angle trailing; below 0 the side leans the other way.",
    },
    failures: [
      {
        when: "the diameter is not above 0",
        formula: "=TOOL.CLEARANCE(4, 0)",
        gives: "#NUM!",
        says: "diameter must be greater than 0",
      },
      {
        when: "the lead is negative",
        formula: "=TOOL.CLEARANCE(-4, 20)",
        gives: "#NUM!",
        says: "lead must be 0 or more",
      },
    ],
    examples: [
      { formula: '=TOOL.CLEARANCE(4, 15.5, "leading", 5)', value: 9.6959889 },
      { formula: '=TOOL.CLEARANCE(4, 20, "trailing", 5)', value: 1.3573531 },
    ],
    source: "geometry; relief of 3 degrees: common practice, no source",
    compute: sideClearance,
  }),
  declare({
    name: "TOOL.OFFCENTRE",
    family: "tool",
    summary: "Flank angle that a flat-topped tool really cuts when it stands above or below centre.",
    params: [
      flank,
      depth,
      screwBlank,
      {
        name: "height_error",
        type: "number",
        unit: "length",
        doc: "Above or below centre, either sign; no more than the radius at the root.",
      },
    ],
    returns: { type: "number", unit: "deg", doc: "Mean flank angle from root to crest." },
    failures: [
      {
        when: "the tool misses the root",
        formula: "=TOOL.OFFCENTRE(30, 0.92, 10, 4.5)",
        gives: "#NUM!",
        says: "height_error must be from",
      },
      {
        when: "the thread is deeper than the blank",
        formula: "=TOOL.OFFCENTRE(30, 5, 10, 0)",
        gives: "#NUM!",
        says: "depth must be less than half the blank",
      },
    ],
    examples: [{ formula: "=TOOL.OFFCENTRE(30, 0.92, 10, 0.5)", value: 30.1532152 }],
    source: "geometry",
    compute: offCentreFlank,
  }),
  declare({
    name: "TOOL.FLANKCUT",
    family: "tool",
    summary: "Flank angle that an edge with top rake really cuts: what TOOL.FLANKFORRAKE puts right.",
    params: [
      {
        name: "ground",
        type: "number",
        unit: "deg",
        doc: "Flank angle as ground, in the plane of the raked top face, 0 to below 90.",
      },
      { name: "rake", type: "number", unit: "deg", doc: "Top rake, between -90 and 90." },
      depth,
      blank,
      member,
      lead,
      side,
    ],
    returns: { type: "number", unit: "deg", doc: "In the plane of the axis, mean from root to crest." },
    failures: [
      {
        when: "the thread is deeper than the blank",
        formula: "=TOOL.FLANKCUT(30, 10, 6, 10)",
        gives: "#NUM!",
        says: "depth must be less than half the blank 5",
      },
      {
        when: "the flank is ground away",
        formula: "=TOOL.FLANKCUT(90, 10, 0.92, 10)",
        gives: "#NUM!",
        says: "ground must be from 0 to below 90",
      },
    ],
    examples: [
      {
        formula: "=TOOL.FLANKCUT(29.6918394, 10, 0.92, 10)",
        value: 30,
        source: "the flank that TOOL.FLANKFORRAKE(30, 10, 0.92, 10) is to cut",
      },
      {
        formula: '=TOOL.FLANKCUT(29.3320085, 10, 0.92, 10, "external", 1.5)',
        value: 30,
        source: "the flank that TOOL.FLANKFORRAKE(30, 10, 0.92, 10, external, 1.5) is to cut",
      },
      { formula: "=TOOL.FLANKCUT(30, 0, 0.92, 10)", value: 30, source: "without rake the edge is the flank" },
    ],
    source: "geometry",
    compute: flankCut,
  }),
  declare({
    name: "TOOL.REACHED",
    family: "tool",
    summary: "Radial depth really reached by a tool above or below centre, touched off on the blank.",
    params: [
      {
        name: "infeed",
        type: "number",
        unit: "length",
        doc: "Fed in straight from touch-off, radial, above 0, less than half the blank.",
      },
      screwBlank,
      {
        name: "height_error",
        type: "number",
        unit: "length",
        doc: "Above or below centre, either sign; less than half the blank.",
      },
    ],
    returns: { type: "number", unit: "length", doc: "Less than the infeed: the root is left too large." },
    failures: [
      {
        when: "the tool misses the work",
        formula: "=TOOL.REACHED(0.92, 10, 5)",
        gives: "#NUM!",
        says: "height_error must be between -5 and 5",
      },
      {
        when: "the infeed passes the middle",
        formula: "=TOOL.REACHED(5, 10, 0)",
        gives: "#NUM!",
        says: "depth must be less than half the blank",
      },
    ],
    examples: [
      {
        formula: "=TOOL.REACHED(2, 10, 3)",
        value: 1.3944487,
        source: "sides 3, 4, 5: rest 2, root radius sqrt(13), 5 - 3.6055513",
      },
      { formula: "=TOOL.REACHED(0.92, 10, 0)", value: 0.92, source: "on centre the infeed is the depth" },
    ],
    source: "geometry",
    compute: depthOffCentre,
  }),
];
