/** WIND.*: how far there is still to wind, and what the log of the passes says about the next one. */
import {
  askedFor,
  furthestReading,
  lagOf,
  nextReading,
  shareOf,
  stillToWind,
} from "../lathe/still-to-wind.ts";
import { declare, type Param, type SheetFunction } from "./declare.ts";
import { member as screwOrNut } from "./member.ts";
import { division, reads } from "./slides.ts";

const setover = {
  name: "setover",
  type: "number",
  unit: "deg",
  fallback: 0,
  doc: "Set-over of the slide that is wound, from square; 0 for the cross slide.",
} as const satisfies Param;
const member = {
  ...screwOrNut,
  doc: "A screw's reading falls as it is cut, a nut's grows.",
} as const satisfies Param;
const readings = {
  name: "readings",
  type: "numbers",
  unit: "length",
  doc: "Readings in order, the first before any of the passes logged: one more than asked.",
} as const satisfies Param;
const asked = {
  name: "asked",
  type: "numbers",
  unit: "length",
  doc: "What each pass asked for on the diameter (WIND.ASKED), 0 for a spring pass.",
} as const satisfies Param;
const next = {
  name: "next",
  type: "number",
  unit: "length",
  doc: "What the next pass asks for on the diameter, 0 for a spring pass.",
} as const satisfies Param;

const misfit = {
  when: "readings and passes do not belong together",
  gives: "#NUM!",
  says: "readings must be one more than asked, 3, got 2",
} as const;
const source = "geometry; that a pass takes a share of what stands before it is our own";

export const windFunctions: readonly SheetFunction[] = [
  declare({
    name: "WIND.STILL",
    family: "measure",
    summary: "Whole divisions still to wind from the reading now to the reading wanted, never past it.",
    params: [
      { name: "reading", type: "number", unit: "length", doc: "Reading now, above 0." },
      { name: "wanted", type: "number", unit: "length", doc: "Reading to reach, above 0." },
      division,
      setover,
      reads,
      member,
    ],
    returns: { type: "number", unit: "divisions", doc: "0 when it is reached or passed." },
    failures: [
      {
        when: "the division is not above 0",
        formula: "=WIND.STILL(12.46, 12.35, 0)",
        gives: "#NUM!",
        says: "division must be greater than 0",
      },
      {
        when: "the reading is not above 0",
        formula: "=WIND.STILL(0, 12.35, 0.02)",
        gives: "#NUM!",
        says: "reading must be greater than 0",
      },
    ],
    examples: [
      { formula: "=WIND.STILL(12.46, 12.35, 0.02, 26.5)", value: 3, source: "0.055 / cos 26.5 = 0.0615" },
      { formula: "=WIND.STILL(12.46, 12.35, 0.02)", value: 2, source: "0.055 / 0.02" },
      { formula: '=WIND.STILL(16.0, 16.1, 0.02, 0, "radius", "internal")', value: 2, source: "0.05 / 0.02" },
    ],
    source: "geometry",
    compute: stillToWind,
  }),
  declare({
    name: "WIND.ASKED",
    family: "measure",
    summary: "What a winding asks for, on the diameter.",
    params: [
      { name: "divisions", type: "number", unit: "divisions", doc: "Divisions wound, 0 or more." },
      division,
      setover,
      reads,
    ],
    returns: { type: "number", unit: "length", doc: "Twice the radial depth that the winding makes." },
    failures: [
      {
        when: "it is wound back",
        formula: "=WIND.ASKED(-1, 0.02)",
        gives: "#NUM!",
        says: "divisions must be 0 or more",
      },
    ],
    examples: [
      { formula: "=WIND.ASKED(3, 0.02, 60)", value: 0.06, source: "2 x 0.06 x cos 60" },
      { formula: '=WIND.ASKED(3, 0.02, 0, "diameter")', value: 0.06 },
    ],
    source: "geometry",
    compute: askedFor,
  }),
  declare({
    name: "WIND.LAG",
    family: "measure",
    summary: "What was asked for and has not come off yet: the spring of work and tool.",
    params: [readings, asked, member],
    returns: {
      type: "number",
      unit: "length",
      doc: "On the diameter; below 0 when more came off than was asked.",
    },
    failures: [{ ...misfit, formula: "=WIND.LAG({13;12.9}, {0.12;0.08})" }],
    examples: [{ formula: "=WIND.LAG({13;12.9;12.82}, {0.12;0.08})", value: 0.02 }],
    source: "geometry",
    compute: (measured, wanted, of) => lagOf({ readings: measured, asked: wanted, member: of }),
  }),
  declare({
    name: "WIND.SHARE",
    family: "measure",
    summary: "Share of what stands before the tool that a pass really takes, by the log.",
    params: [readings, asked, member],
    returns: { type: "number", unit: "ratio", doc: "1 when nothing springs; fitted by least squares." },
    failures: [
      { ...misfit, formula: "=WIND.SHARE({13;12.9}, {0.12;0.08})" },
      {
        when: "nothing was asked for",
        formula: "=WIND.SHARE({13;13}, {0})",
        gives: "#NUM!",
        says: "asked must be above 0 in one pass at least",
      },
    ],
    examples: [
      {
        formula: "=WIND.SHARE({13;12.9;12.82}, {0.12;0.08})",
        value: 0.8196721,
        source: "(0.1 x 0.12 + 0.08 x 0.1) / (0.12^2 + 0.1^2)",
      },
    ],
    source,
    compute: (measured, wanted, of) => shareOf({ readings: measured, asked: wanted, member: of }),
  }),
  declare({
    name: "WIND.NEXT",
    family: "measure",
    summary: "Reading to expect after the next pass, by what the logged passes brought.",
    params: [readings, asked, next, member],
    returns: {
      type: "number",
      unit: "length",
      doc: "The last reading less the share of what then stands before the tool.",
    },
    failures: [
      { ...misfit, formula: "=WIND.NEXT({13;12.9}, {0.12;0.08}, 0.05)" },
      {
        when: "it is wound back",
        formula: "=WIND.NEXT({13;12.9}, {0.12}, -0.05)",
        gives: "#NUM!",
        says: "next must be 0 or more",
      },
    ],
    examples: [{ formula: "=WIND.NEXT({13;12.9;12.82}, {0.12;0.08}, 0.05)", value: 12.762623 }],
    source,
    compute: (measured, wanted, then, of) =>
      nextReading({ readings: measured, asked: wanted, member: of }, then),
  }),
  declare({
    name: "WIND.FURTHEST",
    family: "measure",
    summary: "Reading if all the spring let go in the next pass: the furthest that it may go.",
    params: [readings, asked, next, member],
    returns: { type: "number", unit: "length", doc: "Compare it with the limit before winding." },
    failures: [{ ...misfit, formula: "=WIND.FURTHEST({13;12.9}, {0.12;0.08}, 0.05)" }],
    examples: [{ formula: "=WIND.FURTHEST({13;12.9;12.82}, {0.12;0.08}, 0.05)", value: 12.75 }],
    source: "geometry",
    compute: (measured, wanted, then, of) =>
      furthestReading({ readings: measured, asked: wanted, member: of }, then),
  }),
];
