/** THREAD functions that give the basic sizes and angles of a thread. */
import { Unreadable } from "../thread/failures.ts";
import { readThread } from "../thread/read.ts";
import type { LengthUnit, Member, Thread } from "../thread/thread.ts";
import { declare, type SheetFunction } from "./declare.ts";
import {
  designationParam,
  lengthOf,
  memberOf,
  memberParam,
  noted,
  notedText,
  required,
  unitParam,
  unreadableDesignation,
} from "./designated.ts";

const source = "Standard of the designated thread";

/** Reads the designation and answers a length of that thread in the unit asked for. */
const lengthIn = (length: (thread: Thread) => number) => (designation: string, unit: LengthUnit) => {
  const thread = readThread(designation);
  return lengthOf(thread, length(thread), unit);
};

/** The same for a length that screw and nut have each of their own. */
const ofMember =
  (length: (thread: Thread, member: Member) => number) =>
  (designation: string, unit: LengthUnit, stated: Member | undefined) =>
    lengthIn((thread) => length(thread, memberOf(thread, stated)))(designation, unit);

/** Reads the designation and answers a plain number, count or angle of that thread. */
const numberOf = (number: (thread: Thread) => number) => (designation: string) => {
  const thread = readThread(designation);
  return noted(thread, number(thread));
};

export const threadSizes: readonly SheetFunction[] = [
  declare({
    name: "THREAD.MAJOR",
    family: "thread",
    summary: "Basic major diameter of a thread.",
    params: [designationParam, unitParam],
    returns: {
      type: "number",
      unit: "length",
      doc: "Basic major diameter; of a taper thread at the gauge plane.",
    },
    failures: [unreadableDesignation('=THREAD.MAJOR("10x1.5")')],
    examples: [
      { formula: '=THREAD.MAJOR("M10")', value: 10 },
      { formula: '=THREAD.MAJOR("1/4-20 UNC","in")', value: 0.25 },
      { formula: '=THREAD.MAJOR("10-32 UNF","in")', value: 0.19, source: "ASME B1.1" },
      { formula: '=THREAD.MAJOR("6-12 UN","in")', value: 6 },
    ],
    source,
    compute: lengthIn((thread) => thread.major),
  }),
  declare({
    name: "THREAD.PITCH",
    family: "thread",
    summary: "Pitch: the distance from one thread groove to the next.",
    params: [designationParam, unitParam],
    returns: { type: "number", unit: "length", doc: "Pitch along the axis." },
    failures: [unreadableDesignation('=THREAD.PITCH("thread")')],
    examples: [
      { formula: '=THREAD.PITCH("M10")', value: 1.5 },
      { formula: '=THREAD.PITCH("M20x3-P1.5-6H")', value: 1.5 },
      { formula: '=THREAD.PITCH("0 BA")', value: 1, source: "BS 93" },
    ],
    source,
    compute: lengthIn((thread) => thread.pitch),
  }),
  declare({
    name: "THREAD.LEAD",
    family: "thread",
    summary: "Lead: pitch times starts, the advance in one turn.",
    params: [designationParam, unitParam],
    returns: { type: "number", unit: "length", doc: "Lead along the axis." },
    failures: [unreadableDesignation('=THREAD.LEAD("M20x3-P2")')],
    examples: [{ formula: '=THREAD.LEAD("M20x3-P1.5-6H")', value: 3 }],
    source,
    compute: lengthIn((thread) => thread.pitch * thread.starts),
  }),
  declare({
    name: "THREAD.STARTS",
    family: "thread",
    summary: "Number of starts.",
    params: [designationParam],
    returns: { type: "number", doc: "1 for a common thread." },
    failures: [unreadableDesignation('=THREAD.STARTS("")')],
    examples: [
      { formula: '=THREAD.STARTS("M20x3-P1.5-6H")', value: 2 },
      { formula: '=THREAD.STARTS("M10")', value: 1 },
    ],
    source,
    compute: numberOf((thread) => thread.starts),
  }),
  declare({
    name: "THREAD.HAND",
    family: "thread",
    summary: "Hand of a thread: left where the designation says LH, else right.",
    params: [designationParam],
    returns: { type: "text", doc: '"right" or "left".' },
    failures: [unreadableDesignation('=THREAD.HAND("left")')],
    examples: [
      { formula: '=THREAD.HAND("Tr 20x4-7e LH")', value: "left", source: "ISO 2901 and ISO 5408: LH" },
      { formula: '=THREAD.HAND("M10")', value: "right" },
    ],
    source,
    compute: (designation) => {
      const thread = readThread(designation);
      return notedText([thread], thread.hand);
    },
  }),
  declare({
    name: "THREAD.TPI",
    family: "thread",
    summary: "Threads per inch.",
    params: [designationParam],
    returns: { type: "number", unit: "per inch", doc: "One inch divided by the pitch." },
    failures: [unreadableDesignation('=THREAD.TPI("1/4-28 UNC")')],
    examples: [
      { formula: '=THREAD.TPI("1/2 BSW")', value: 12, source: "BS 84" },
      { formula: '=THREAD.TPI("M10x1.27")', value: 20 },
    ],
    source,
    compute: (designation) => {
      const thread = readThread(designation);
      // 1/(1/n) need not be n in binary, and people compare threads per inch with whole numbers.
      const tpi = (thread.unit === "in" ? 1 : 25.4) / thread.pitch;
      return noted(thread, Math.abs(tpi - Math.round(tpi)) < 1e-9 ? Math.round(tpi) : tpi);
    },
  }),
  declare({
    name: "THREAD.ANGLE",
    family: "thread",
    summary: "Included angle between the flanks.",
    params: [designationParam],
    returns: { type: "number", unit: "deg", doc: "Both flank angles together." },
    failures: [unreadableDesignation('=THREAD.ANGLE("60 degrees")')],
    examples: [
      { formula: '=THREAD.ANGLE("1/2-12 BSW")', value: 55 },
      { formula: '=THREAD.ANGLE("2 BA")', value: 47.5 },
      { formula: '=THREAD.ANGLE("M10")', value: 60 },
    ],
    source,
    compute: numberOf((thread) => thread.loadFlank + thread.clearanceFlank),
  }),
  declare({
    name: "THREAD.FLANK",
    family: "thread",
    summary: "Flank angle, from the line square to the axis.",
    params: [
      designationParam,
      {
        name: "flank",
        type: "text",
        options: ["load", "clearance", "leading", "trailing"],
        optional: true,
        doc: "On a form with unequal flanks load or clearance must be said; on a symmetric form any of the words will do.",
      },
    ],
    returns: { type: "number", unit: "deg", doc: "Angle of that flank." },
    failures: [
      unreadableDesignation('=THREAD.FLANK("?","load")'),
      {
        when: "the flanks are unequal and neither load nor clearance is said",
        formula: '=THREAD.FLANK("S 48x8","leading")',
        gives: "#VALUE!",
        says: "say load or clearance: which one leads depends on the direction of the cut",
      },
    ],
    examples: [
      { formula: '=THREAD.FLANK("1/2-12 BSW")', value: 27.5 },
      { formula: '=THREAD.FLANK("S 48x8","load")', value: 3 },
      { formula: '=THREAD.FLANK("S 48x8","clearance")', value: 30 },
      { formula: '=THREAD.FLANK("M10","leading")', value: 30 },
    ],
    source,
    compute: (designation, flank) => {
      const thread = readThread(designation);
      const { loadFlank, clearanceFlank } = thread;
      if (flank === "load" || loadFlank === clearanceFlank) return noted(thread, loadFlank);
      if (flank === "clearance") return noted(thread, clearanceFlank);
      throw new Unreadable("say load or clearance: which one leads depends on the direction of the cut");
    },
  }),
  declare({
    name: "THREAD.PITCHDIA",
    family: "thread",
    summary: "Basic pitch (effective) diameter.",
    params: [designationParam, unitParam],
    returns: {
      type: "number",
      unit: "length",
      doc: "Where thread and groove are equally wide; rounded where the standard prints it by its own rule.",
    },
    failures: [unreadableDesignation('=THREAD.PITCHDIA("M10y2")')],
    examples: [
      { formula: '=THREAD.PITCHDIA("M10")', value: 9.026, within: 0.0005, source: "ISO 724" },
      { formula: '=THREAD.PITCHDIA("1/2 BSW","in")', value: 0.4466, within: 1e-9, source: "BS 84" },
      { formula: '=THREAD.PITCHDIA("2 BA")', value: 4.215, within: 1e-9, source: "BS 93" },
    ],
    source,
    compute: lengthIn((thread) => thread.pitchDia),
  }),
  declare({
    name: "THREAD.MINOR",
    family: "thread",
    summary: "Minor diameter: of the design form of the screw, or basic of the nut.",
    params: [designationParam, unitParam, memberParam],
    returns: { type: "number", unit: "length", doc: "Minor diameter of that member." },
    failures: [unreadableDesignation('=THREAD.MINOR("M","mm")')],
    examples: [
      { formula: '=THREAD.MINOR("M10","mm","internal")', value: 8.376, within: 0.0005, source: "ISO 724" },
      { formula: '=THREAD.MINOR("M10-6H")', value: 8.376, within: 0.0005, source: "ISO 724" },
      { formula: '=THREAD.MINOR("1/2 BSW","in")', value: 0.3932, within: 1e-9, source: "BS 84" },
    ],
    source,
    compute: ofMember((thread, member) => thread.minor[member]),
  }),
  declare({
    name: "THREAD.DEPTH",
    family: "thread",
    summary: "Radial depth of the design form. For any other tool nose see THREAD.CUTDEPTH.",
    params: [designationParam, unitParam, memberParam],
    returns: {
      type: "number",
      unit: "length",
      doc: "Major to minor of that member, on radius. Right only for a tool whose nose is that of THREAD.ROOT; THREAD.CUTDEPTH takes the real nose, blank and target.",
    },
    failures: [unreadableDesignation('=THREAD.DEPTH("")')],
    examples: [
      {
        formula: '=THREAD.DEPTH("1/2-12 BSW","in")',
        value: 0.0533606,
        within: 5e-8,
        source: "BS 84, 0.640327 P",
      },
      { formula: '=THREAD.DEPTH("M10")', value: 0.920152 },
    ],
    source,
    compute: ofMember((thread, member) => thread.depth[member]),
  }),
  declare({
    name: "THREAD.ROOT",
    family: "thread",
    summary: "Root of the design form of the screw: its radius or its flat.",
    params: [
      designationParam,
      { name: "shape", type: "text", options: ["radius", "flat"], doc: "Which of the two is wanted." },
      unitParam,
    ],
    returns: { type: "number", unit: "length", doc: "Root radius, or width of the root flat." },
    failures: [
      unreadableDesignation('=THREAD.ROOT("12","flat")'),
      {
        when: "the form has no such root",
        formula: '=THREAD.ROOT("1/2 BSW","flat")',
        gives: "#N/A",
        says: "has no root flat",
      },
    ],
    examples: [
      { formula: '=THREAD.ROOT("M10","radius")', value: 0.2165064, source: "DIN 13-1, H/6" },
      { formula: '=THREAD.ROOT("0 BA","radius")', value: 0.1808, within: 0.00005, source: "BS 93" },
    ],
    source,
    compute: (designation, shape, unit) => {
      const thread = readThread(designation);
      const value = shape === "radius" ? thread.rootRadius : thread.rootFlat;
      return lengthOf(thread, required(thread, value, `root ${shape}`), unit);
    },
  }),
  declare({
    name: "THREAD.CREST",
    family: "thread",
    summary: "Crest of the design form of the screw: its flat or its radius.",
    params: [
      designationParam,
      { name: "shape", type: "text", options: ["flat", "radius"], doc: "Which of the two is wanted." },
      unitParam,
    ],
    returns: { type: "number", unit: "length", doc: "Width of the crest flat, or crest radius." },
    failures: [
      unreadableDesignation('=THREAD.CREST("12","flat")'),
      {
        when: "the form has no such crest",
        formula: '=THREAD.CREST("M10","radius")',
        gives: "#N/A",
        says: "has no crest radius",
      },
    ],
    examples: [{ formula: '=THREAD.CREST("M10","flat")', value: 0.1875, source: "ISO 68-1, P/8" }],
    source,
    compute: (designation, shape, unit) => {
      const thread = readThread(designation);
      const value = shape === "radius" ? thread.crestRadius : thread.crestFlat;
      return lengthOf(thread, required(thread, value, `crest ${shape}`), unit);
    },
  }),
  declare({
    name: "THREAD.HELIX",
    family: "thread",
    summary: "Lead (helix) angle.",
    params: [
      designationParam,
      {
        name: "diameter",
        type: "text",
        options: ["pitch", "major", "minor"],
        fallback: "pitch",
        doc: "At which basic diameter.",
      },
    ],
    returns: { type: "number", unit: "deg", doc: "atan(lead / (pi x diameter))." },
    failures: [unreadableDesignation('=THREAD.HELIX("coarse")')],
    examples: [
      { formula: '=THREAD.HELIX("1-20 UNEF")', value: 0.95, within: 0.009, source: "ASME B1.1 table 4c" },
      { formula: '=THREAD.HELIX("6-32 UNC")', value: 4.8333, within: 0.009, source: "ASME B1.1 table 4a" },
    ],
    source: "geometry",
    compute: (designation, diameter) => {
      const thread = readThread(designation);
      const at =
        diameter === "major"
          ? thread.major
          : diameter === "minor"
            ? thread.minor[thread.member]
            : thread.pitchDia;
      return noted(thread, (Math.atan((thread.pitch * thread.starts) / (Math.PI * at)) * 180) / Math.PI);
    },
  }),
  declare({
    name: "THREAD.TAPER",
    family: "thread",
    summary: "Taper on diameter per length; 0 when parallel.",
    params: [designationParam],
    returns: { type: "number", unit: "ratio", doc: "0.0625 is 1 in 16." },
    failures: [unreadableDesignation('=THREAD.TAPER("taper")')],
    examples: [
      { formula: '=THREAD.TAPER("1/4-18 NPT")', value: 0.0625 },
      { formula: '=THREAD.TAPER("M10")', value: 0 },
    ],
    source,
    compute: numberOf((thread) => thread.taper),
  }),
];
