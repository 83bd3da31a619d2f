/** THREAD functions for the work on one thread: limits, depth to cut, custom notes. */
import { customNote } from "../thread/custom.ts";
import { cutDepth } from "../thread/cutdepth.ts";
import { limit, target } from "../thread/limits.ts";
import { readThread } from "../thread/read.ts";
import { convertLength } from "../thread/thread.ts";
import { declare, type SheetFunction } from "./declare.ts";
import {
  designationParam,
  lengthOf,
  limitOf,
  memberOf,
  memberParam,
  unitParam,
  unreadableDesignation,
} from "./designated.ts";

const diameterParam = {
  name: "diameter",
  type: "text",
  options: ["pitch", "major", "minor"],
  doc: "pitch, major or minor.",
} as const;

export const threadWork: readonly SheetFunction[] = [
  declare({
    name: "THREAD.CUTDEPTH",
    family: "thread",
    summary: "Radial depth at which a tool with this nose brings the pitch diameter to the target.",
    params: [
      designationParam,
      {
        name: "nose",
        type: "number",
        unit: "length",
        doc: "Width of the flat or radius of the tool's nose; 0 when sharp.",
      },
      {
        name: "shape",
        type: "text",
        options: ["flat", "radius"],
        fallback: "flat",
        doc: "What nose measures.",
      },
      unitParam,
      memberParam,
      {
        name: "blank",
        type: "number",
        unit: "length",
        optional: true,
        doc: "Outside diameter of the blank, or bore of the nut; left out, the basic major or minor diameter.",
      },
      {
        name: "target",
        type: "number",
        unit: "length",
        optional: true,
        doc: "Pitch diameter wanted; left out, basic.",
      },
    ],
    returns: { type: "number", unit: "length", doc: "Depth on radius from the surface of the blank." },
    failures: [
      unreadableDesignation('=THREAD.CUTDEPTH("M",0)'),
      {
        when: "the nose is too wide: the groove would not contain the basic profile",
        formula: '=THREAD.CUTDEPTH("M10",0.4)',
        gives: "#NUM!",
        says: "nose flat must not be above 0.375",
      },
      {
        when: "the nose is negative",
        formula: '=THREAD.CUTDEPTH("M10",-0.1)',
        gives: "#NUM!",
        says: "nose must be 0 or more",
      },
    ],
    examples: [
      { formula: '=THREAD.CUTDEPTH("M10",0)', value: 1.1366583 },
      { formula: '=THREAD.CUTDEPTH("M10",0.375)', value: 0.8118988 },
      { formula: '=THREAD.CUTDEPTH("M10",0.2165064,"radius")', value: 0.920152, within: 1e-7 },
      { formula: '=THREAD.CUTDEPTH("M10-6H",0)', value: 0.9742786 },
      { formula: '=THREAD.CUTDEPTH("M10-6g",0.1875,"flat","mm","external",9.85,8.928)', value: 0.9481393 },
      { formula: '=THREAD.CUTDEPTH("2-4 Butt",0.4,"radius")', value: 4.2700347 },
    ],
    source: "geometry",
    compute: (designation, nose, shape, unit, member, blank, wanted) => {
      const thread = readThread(designation);
      const own = (length: number) => convertLength(length, unit, thread.unit);
      const depth = cutDepth(
        thread,
        own(nose),
        shape,
        memberOf(thread, member),
        blank === undefined ? undefined : own(blank),
        wanted === undefined ? undefined : own(wanted),
      );
      return lengthOf(thread, depth, unit);
    },
  }),
  declare({
    name: "THREAD.LIMIT",
    family: "thread",
    summary: "Limit of size for the class in the designation.",
    params: [
      designationParam,
      { ...diameterParam, options: ["major", "pitch", "minor"] },
      { name: "end", type: "text", options: ["max", "min"], doc: "Upper or lower limit." },
      unitParam,
    ],
    returns: {
      type: "number",
      unit: "length",
      doc: "The limit; without a class the usual one of the standard: 6g, 2A, medium ...",
    },
    failures: [
      unreadableDesignation('=THREAD.LIMIT("M10-6q","pitch","max")'),
      {
        when: "the standard states no such limit",
        formula: '=THREAD.LIMIT("M10-6H","major","max")',
        gives: "#N/A",
        says: "no major diameter max",
      },
    ],
    examples: [
      { formula: '=THREAD.LIMIT("M12-6g","pitch","min")', value: 10.679, within: 1e-9, source: "ISO 965-2" },
      { formula: '=THREAD.LIMIT("M10-5H","minor","max")', value: 8.612, within: 1e-9, source: "ISO 965-1" },
      {
        formula: '=THREAD.LIMIT("1/4-20 UNC-2A","pitch","max","in")',
        value: 0.2164,
        within: 1e-9,
        source: "ASME B1.1",
      },
      { formula: '=THREAD.LIMIT("0 BA nut","pitch","max")', value: 5.55, within: 1e-9, source: "BS 93" },
    ],
    source: "Standard of the designated thread",
    compute: (designation, diameter, end, unit) => {
      const thread = readThread(designation);
      return limitOf(thread, limit(thread, diameter, end), unit);
    },
  }),
  declare({
    name: "THREAD.TARGET",
    family: "thread",
    summary: "Size to aim at: the middle between the two limits of the class.",
    params: [designationParam, diameterParam, unitParam],
    returns: { type: "number", unit: "length", doc: "Mean of the two limits." },
    failures: [
      unreadableDesignation('=THREAD.TARGET("","pitch")'),
      {
        when: "one of the limits is not stated",
        formula: '=THREAD.TARGET("M10-6H","major")',
        gives: "#N/A",
        says: "no major diameter max",
      },
    ],
    examples: [{ formula: '=THREAD.TARGET("M10-6g","pitch")', value: 8.928 }],
    source: "Standard of the designated thread; the mean is common practice",
    compute: (designation, diameter, unit) => {
      const thread = readThread(designation);
      return limitOf(thread, target(thread, diameter), unit);
    },
  }),
  declare({
    name: "THREAD.CUSTOM",
    family: "thread",
    summary: "Note for a thread of no standard, which every THREAD function takes as a designation.",
    params: [
      { name: "major", type: "number", unit: "length", doc: "Major diameter, above 0." },
      { name: "pitch", type: "number", unit: "length", doc: "Pitch, above 0 (not the lead)." },
      {
        name: "load_flank",
        type: "number",
        unit: "deg",
        doc: "Angle of the flank that carries the load, from the line square to the axis.",
      },
      { name: "clearance_flank", type: "number", unit: "deg", doc: "Angle of the other flank." },
      {
        name: "depth",
        type: "number",
        unit: "length",
        doc: "Radial depth, less than half the major diameter.",
      },
      {
        name: "root_flat",
        type: "number",
        unit: "length",
        optional: true,
        doc: "Width of the root flat; left out, root and crest are alike.",
      },
      { name: "starts", type: "number", fallback: 1, doc: "Number of starts, 1 to 24." },
      unitParam,
    ],
    returns: { type: "text", doc: "The note." },
    failures: [
      {
        when: "the depth leaves no crest or root",
        formula: "=THREAD.CUSTOM(20,2,30,30,2)",
        gives: "#NUM!",
        says: "depth must leave a root and crest",
      },
      {
        when: "the pitch is not above 0",
        formula: "=THREAD.CUSTOM(20,0,30,30,1)",
        gives: "#NUM!",
        says: "pitch must be greater than 0",
      },
    ],
    examples: [
      { formula: "=THREAD.CUSTOM(20,2.5,30,30,1.5)", value: "Custom 20x2.5 mm, flanks 30/30, depth 1.5" },
      {
        formula: "=THREAD.PITCHDIA(THREAD.CUSTOM(20,4,0,0,2))",
        value: 18,
        source: "geometry: square, half the depth on each side",
      },
    ],
    source: "geometry",
    compute: (major, pitch, loadFlank, clearanceFlank, depth, rootFlat, starts, unit) =>
      customNote({ major, pitch, loadFlank, clearanceFlank, depth, rootFlat, starts, unit }),
  }),
];
