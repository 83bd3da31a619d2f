import { diameterAlong, leadLostByOffset } from "../lathe/taper.ts";
import { taperDiameter, taperLength } from "../lathe/taper-thread.ts";
import { readThread } from "../thread/read.ts";
import { convertLength } from "../thread/thread.ts";
import { declare, type SheetFunction } from "./declare.ts";
import { designationParam, lengthOf, unitParam, unreadableDesignation } from "./designated.ts";
import { taper } from "./taper.ts";

export const taperThreadFunctions: readonly SheetFunction[] = [
  declare({
    name: "TAPER.DIA",
    family: "taper",
    summary: "Diameter of a cone at a distance along its axis from where it is known.",
    params: [
      { name: "diameter", type: "number", unit: "length", doc: "Where it is known, above 0." },
      taper,
      {
        name: "distance",
        type: "number",
        unit: "length",
        doc: "Along the axis towards the large end; negative towards the small one.",
      },
    ],
    returns: { type: "number", unit: "length", doc: "diameter + distance x taper." },
    failures: [
      {
        when: "the cone has run out",
        formula: "=TAPER.DIA(10, 0.5, -20)",
        gives: "#NUM!",
        says: "distance must be greater than -20",
      },
    ],
    examples: [
      { formula: "=TAPER.DIA(20, 1/16, 8)", value: 20.5, source: "8/16 by hand" },
      {
        formula: "=TAPER.DIA(0.77843, 1/16, -0.32)",
        value: 0.75843,
        source: "ASME B1.20.1, 1/2 NPT: E1 and E0",
      },
    ],
    source: "geometry",
    compute: diameterAlong,
  }),
  declare({
    name: "TAPER.AT",
    family: "taper",
    summary: "A diameter of a taper thread at a distance from its gauge plane.",
    params: [
      designationParam,
      {
        name: "which",
        type: "text",
        options: ["pitch", "major", "minor"],
        fallback: "pitch",
        doc: "The diameter that is wanted.",
      },
      {
        name: "distance",
        type: "number",
        unit: "length",
        fallback: 0,
        doc: "From the gauge plane towards the large end; negative towards the small one, as -TAPER.LENGTH(...) for the small end.",
      },
      unitParam,
    ],
    returns: { type: "number", unit: "length", doc: "Of a parallel thread the same everywhere." },
    failures: [
      unreadableDesignation('=TAPER.AT("pipe")'),
      {
        when: "the cone has run out",
        formula: '=TAPER.AT("1/2-14 NPT", "pitch", -20, "in")',
        gives: "#NUM!",
        says: "the cone ends there",
      },
    ],
    examples: [
      {
        formula: '=TAPER.AT("1/2-14 NPT", "pitch", -0.32, "in")',
        value: 0.75843,
        within: 5e-6,
        source: "ASME B1.20.1: E0 at the small end",
      },
      {
        formula: '=TAPER.AT("R 1/2", "major", 0, "mm")',
        value: 20.955,
        source: "ISO 7-1: major diameter at the gauge plane",
      },
      {
        formula: '=TAPER.AT("R 1/2", "major", -8.2)',
        value: 20.4425,
        source: "20.955 - 8.2/16 by hand",
      },
    ],
    source: "Standard of the designated thread; geometry of a cone",
    compute: (designation, which, distance, unit) => {
      const thread = readThread(designation);
      const there = taperDiameter(thread, which, convertLength(distance, unit, thread.unit));
      return lengthOf(thread, there, unit);
    },
  }),
  declare({
    name: "TAPER.LENGTH",
    family: "taper",
    summary: "Lengths along the axis of a taper pipe thread: to the gauge plane, useful, vanish, tolerance.",
    params: [
      designationParam,
      {
        name: "which",
        type: "text",
        options: ["gauge", "useful", "vanish", "tolerance"],
        fallback: "gauge",
        doc: '"gauge": small end to gauge plane (L1 of NPT); "useful": full thread (L2); "vanish": run-out of a die (V); "tolerance": either way on the gauge length.',
      },
      unitParam,
    ],
    returns: { type: "number", unit: "length", doc: "Of the screw, along its axis." },
    failures: [
      unreadableDesignation('=TAPER.LENGTH("pipe")'),
      {
        when: "the thread is parallel",
        formula: '=TAPER.LENGTH("M10")',
        gives: "#N/A",
        says: "designation must be of a taper pipe thread, got M10",
      },
      {
        when: "the standard gives no such length",
        formula: '=TAPER.LENGTH("R 1/2", "vanish")',
        gives: "#N/A",
        says: "ISO 7-1 gives no length for the vanish",
      },
    ],
    examples: [
      { formula: '=TAPER.LENGTH("1/2-14 NPT", "gauge", "in")', value: 0.32, source: "ASME B1.20.1 L1" },
      {
        formula: '=TAPER.LENGTH("1/2-14 NPT", "useful", "in")',
        value: 0.5337,
        within: 5e-5,
        source: "ASME B1.20.1 L2, as printed",
      },
      {
        formula: '=TAPER.LENGTH("1/2-14 NPT", "vanish", "in")',
        value: 0.2478,
        within: 1e-4,
        source: "ASME B1.20.1 V, as printed",
      },
      { formula: '=TAPER.LENGTH("R 1/2")', value: 8.2, source: "ISO 7-1 basic gauge length, as printed" },
    ],
    source: "ASME B1.20.1; ISO 7-1, turns from memory",
    compute: (designation, which, unit) => {
      const thread = readThread(designation);
      return lengthOf(thread, taperLength(thread, which), unit);
    },
  }),
  declare({
    name: "TAPER.LEADLOST",
    family: "taper",
    summary: "Share by which a screw cut with the tailstock offset comes out short.",
    params: [taper],
    returns: {
      type: "number",
      unit: "ratio",
      doc: "1 - cos of the half angle: the carriage runs along the bed, the pitch is measured along the work. A taper attachment loses nothing.",
    },
    failures: [
      {
        when: "the taper is negative",
        formula: "=TAPER.LEADLOST(-0.1)",
        gives: "#NUM!",
        says: "taper must be 0 or more",
      },
    ],
    examples: [
      {
        formula: "=TAPER.LEADLOST(1/16)",
        value: 0.0004879239,
        within: 5e-11,
        source: "1 - 1/sqrt(1 + 1/1024), by long division",
      },
    ],
    source: "geometry",
    compute: leadLostByOffset,
  }),
];
