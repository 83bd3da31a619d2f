import {
  carriageSpeed,
  runOut,
  secondsFor,
  speedCap,
  speedNotAbove,
  spindleSpeed,
  surfaceSpeed,
} from "../lathe/speed.ts";
import { materials, surfaceSpeedFor } from "../lathe/surface-speed.ts";
import { declare, type Param, type SheetFunction } from "./declare.ts";

const unit = {
  name: "unit",
  type: "text",
  options: ["mm", "in"],
  doc: 'Required: "mm" with m/min, or "in" with ft/min.',
} as const satisfies Param;
const diameter = {
  name: "diameter",
  type: "number",
  unit: "length",
  doc: "Diameter being cut, above 0.",
} as const satisfies Param;
const rpm = {
  name: "rpm",
  type: "number",
  unit: "rev/min",
  doc: "Spindle speed, 0 or more.",
} as const satisfies Param;
const lead = {
  name: "lead",
  type: "number",
  unit: "length",
  doc: "Lead of the thread (not the pitch, with several starts), above 0.",
} as const satisfies Param;

export const speedFunctions: readonly SheetFunction[] = [
  declare({
    name: "SPEED.RPM",
    family: "speed",
    summary: "Spindle speed for a surface speed.",
    params: [
      { name: "surface_speed", type: "number", unit: "m/min or ft/min", doc: "0 or more." },
      diameter,
      unit,
    ],
    returns: {
      type: "number",
      unit: "rev/min",
      doc: "Cap it with SPEED.CAP; the machine's manual has the last word.",
    },
    failures: [
      { when: "the unit is not told", formula: "=SPEED.RPM(20, 12)", gives: "#VALUE!", says: "unit" },
      {
        when: "the diameter is not above 0",
        formula: '=SPEED.RPM(20, 0, "mm")',
        gives: "#NUM!",
        says: "diameter must be greater than 0",
      },
    ],
    examples: [
      { formula: '=SPEED.RPM(20, 12, "mm")', value: 530.516477 },
      { formula: '=SPEED.RPM(100, 0.5, "in")', value: 763.943727 },
    ],
    source: "geometry",
    compute: spindleSpeed,
  }),
  declare({
    name: "SPEED.SURFACE",
    family: "speed",
    summary: "Surface speed at a spindle speed.",
    params: [rpm, diameter, unit],
    returns: { type: "number", unit: "m/min or ft/min", doc: "m/min with mm, ft/min with in." },
    failures: [
      { when: "the unit is not told", formula: "=SPEED.SURFACE(200, 12)", gives: "#VALUE!", says: "unit" },
      {
        when: "the speed is negative",
        formula: '=SPEED.SURFACE(-1, 12, "mm")',
        gives: "#NUM!",
        says: "rpm must be 0 or more",
      },
    ],
    examples: [
      {
        formula: '=SPEED.SURFACE(530.516477, 12, "mm")',
        value: 20,
        source: "inverse of SPEED.RPM(20, 12, mm) = 530.516477",
      },
    ],
    source: "geometry",
    compute: surfaceSpeed,
  }),
  declare({
    name: "SPEED.CARRIAGE",
    family: "speed",
    summary: "How fast the carriage runs while cutting: rpm x lead.",
    params: [rpm, lead],
    returns: { type: "number", unit: "length", doc: "Length per minute." },
    failures: [
      {
        when: "the lead is not above 0",
        formula: "=SPEED.CARRIAGE(200, 0)",
        gives: "#NUM!",
        says: "lead must be greater than 0",
      },
    ],
    examples: [{ formula: "=SPEED.CARRIAGE(200, 1.5)", value: 300, source: "200 turns of 1.5" }],
    source: "geometry",
    compute: carriageSpeed,
  }),
  declare({
    name: "SPEED.RUNOUT",
    family: "speed",
    summary: "How far the carriage runs in a time: the room needed to open the half nuts.",
    params: [rpm, lead, { name: "seconds", type: "number", unit: "s", doc: "0 or more." }],
    returns: { type: "number", unit: "length", doc: "rpm x lead x seconds / 60." },
    failures: [
      {
        when: "the time is negative",
        formula: "=SPEED.RUNOUT(200, 1.5, -1)",
        gives: "#NUM!",
        says: "seconds must be 0 or more",
      },
    ],
    examples: [{ formula: "=SPEED.RUNOUT(200, 1.5, 1)", value: 5 }],
    source: "geometry",
    compute: runOut,
  }),
  declare({
    name: "SPEED.CAP",
    family: "speed",
    summary: "Highest spindle speed at which a person can open the half nuts inside the run-out.",
    params: [
      { name: "runout", type: "number", unit: "length", doc: "Room after the end of the thread, above 0." },
      lead,
      {
        name: "reaction_seconds",
        type: "number",
        unit: "s",
        fallback: 1,
        doc: "All of seeing, deciding and lifting the lever; 1 when left out.",
      },
    ],
    returns: {
      type: "number",
      unit: "rev/min",
      doc: "60 x runout / (lead x seconds). Start well below it until the rhythm is sure.",
    },
    failures: [
      {
        when: "there is no run-out",
        formula: "=SPEED.CAP(0, 1.5)",
        gives: "#NUM!",
        says: "runout must be greater than 0",
      },
      {
        when: "the reaction time is 0",
        formula: "=SPEED.CAP(5, 1.5, 0)",
        gives: "#NUM!",
        says: "reaction_seconds must be greater than 0",
      },
    ],
    examples: [
      { formula: "=SPEED.CAP(5, 1.5)", value: 200 },
      { formula: "=SPEED.CAP(5, 1.5, 1.5)", value: 133.3333333 },
    ],
    source: "geometry; the reaction time is common practice, no source",
    compute: speedCap,
  }),
  declare({
    name: "SPEED.PICK",
    family: "speed",
    summary: "The fastest of the lathe's speeds that is not above a limit.",
    params: [
      {
        name: "limit",
        type: "number",
        unit: "rev/min",
        doc: "Above 0: the lower of SPEED.RPM and SPEED.CAP.",
      },
      { name: "speeds", type: "numbers", unit: "rev/min", doc: "The speeds of the lathe, one a cell." },
    ],
    returns: { type: "number", unit: "rev/min", doc: "One of the speeds." },
    failures: [
      {
        when: "every speed is too fast",
        formula: "=SPEED.PICK(22, {70;30;45})",
        gives: "#N/A",
        says: "every speed is above 22: the slowest is 30",
      },
      {
        when: "the limit is 0",
        formula: "=SPEED.PICK(0, {30;45})",
        gives: "#NUM!",
        says: "limit must be greater than 0, got 0",
      },
    ],
    examples: [
      { formula: "=SPEED.PICK(108, {30;45;70;110;170})", value: 70, source: "110 is above 108" },
      {
        formula: "=SPEED.PICK(110, {30;45;70;110;170})",
        value: 110,
        source: "just the limit is not above it",
      },
    ],
    source: "geometry",
    compute: speedNotAbove,
  }),
  declare({
    name: "SPEED.TIME",
    family: "speed",
    summary: "Seconds in which the carriage runs a distance: to the run-out, or over a thread.",
    params: [
      { ...rpm, doc: "Spindle speed, above 0." },
      lead,
      { name: "distance", type: "number", unit: "length", doc: "0 or more." },
    ],
    returns: { type: "number", unit: "s", doc: "60 x distance / (rpm x lead)." },
    failures: [
      {
        when: "the spindle stands still",
        formula: "=SPEED.TIME(0, 1.5, 25)",
        gives: "#NUM!",
        says: "rpm must be greater than 0, got 0",
      },
    ],
    examples: [
      { formula: "=SPEED.TIME(200, 1.5, 25)", value: 5, source: "200 turns of 1.5 are 300 a minute" },
    ],
    source: "geometry",
    compute: secondsFor,
  }),
  declare({
    name: "SPEED.MATERIAL",
    family: "speed",
    summary: "Surface speed to start from, for a material and a tool; a note says which table it comes from.",
    params: [
      { name: "material", type: "text", options: materials, doc: "Material of the work." },
      unit,
      {
        name: "tool",
        type: "text",
        options: ["HSS", "carbide"],
        fallback: "HSS",
        doc: "High-speed steel, or uncoated carbide.",
      },
      {
        name: "work",
        type: "text",
        options: ["threading", "roughing", "finishing"],
        fallback: "threading",
        doc: "Screw cutting, or plain turning of the blank.",
      },
    ],
    returns: {
      type: "number",
      unit: "m/min or ft/min",
      doc: "m/min with mm, ft/min with in; always with a note. Slower when in doubt: the hand sets the limit, see SPEED.CAP.",
    },
    failures: [
      { when: "the unit is not told", formula: '=SPEED.MATERIAL("brass")', gives: "#VALUE!", says: "unit" },
      {
        when: "no table gives that speed",
        formula: '=SPEED.MATERIAL("bronze", "mm", "carbide")',
        gives: "#N/A",
        says: "no speed is known for carbide threading in bronze",
      },
      {
        when: "the material is another word",
        formula: '=SPEED.MATERIAL("wood", "mm")',
        gives: "#VALUE!",
        says: "mild steel",
      },
    ],
    examples: [
      {
        formula: '=SPEED.MATERIAL("cast iron", "in", "HSS", "finishing")',
        value: 80,
        source: "table 7.1 of a lathe operator's manual",
      },
      {
        formula: '=SPEED.MATERIAL("mild steel", "mm")',
        value: 10.668,
        source: "35 ft/min, common practice from memory, x 0.3048",
      },
      {
        formula: '=SPEED.MATERIAL("tool steel", "in", "carbide")',
        value: 75,
        source: "a threading-tool maker's chart: 75 to 175 ft/min, uncoated",
      },
    ],
    source: "tables of the trade, each named in the note; no standard",
    compute: (material, lengthUnit, tool, work) => {
      const { speed, source } = surfaceSpeedFor(material, lengthUnit, tool, work);
      return { value: speed, note: source };
    },
  }),
];
