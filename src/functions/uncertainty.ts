/** UNCERTAINTY.* and DECIDE.*: how far a measured size may be off, and what that leaves to be said about its limits. */
import { verdict } from "../lathe/decision.ts";
import { studentFactor } from "../lathe/student.ts";
import {
  combined,
  effectiveFreedom,
  expanded,
  mean,
  spread,
  uncertaintyOfLimits,
  uncertaintyOfMean,
  uncertaintyOfResolution,
} from "../lathe/uncertainty.ts";
import { declare, type Param, type SheetFunction } from "./declare.ts";

const readings = {
  name: "readings",
  type: "numbers",
  unit: "length",
  doc: "Repeat readings of the same thing, one a cell; blanks are left out.",
} as const satisfies Param;
const contributions = {
  name: "contributions",
  type: "numbers",
  unit: "length",
  doc: "Sensitivity times standard uncertainty of each input, one a cell, in the unit of the result.",
} as const satisfies Param;
const freedoms = {
  name: "freedoms",
  type: "numbers",
  doc: "Degrees of freedom of each contribution, above 0: one less than the readings; 1e9 for what is well known.",
} as const satisfies Param;
const probability = {
  name: "probability",
  type: "number",
  unit: "ratio",
  fallback: 0.95,
  doc: "Above 0 and at most 0.9999: how sure it shall be.",
} as const satisfies Param;

const oneReading = {
  when: "there is one reading only",
  gives: "#NUM!",
  says: "readings must be at least 2, got 1",
} as const;
const unlike = {
  when: "there are not as many freedoms as contributions",
  gives: "#NUM!",
  says: "freedoms must be 2, one a contribution, got 1",
} as const;
const endGauge = "JCGM 100, H.1, calibration of an end gauge, in nanometres";

export const uncertaintyFunctions: readonly SheetFunction[] = [
  declare({
    name: "UNCERTAINTY.MEAN",
    family: "uncertainty",
    summary: "Mean of repeat readings.",
    params: [readings],
    returns: { type: "number", unit: "length", doc: "The best estimate from them." },
    failures: [
      {
        when: "a cell holds words",
        formula: '=UNCERTAINTY.MEAN({12.352;"about"})',
        gives: "#VALUE!",
        says: "readings must hold numbers only",
      },
    ],
    examples: [{ formula: "=UNCERTAINTY.MEAN({12.352;12.355;12.351;12.354;12.353})", value: 12.353 }],
    source: "JCGM 100, 4.2.1",
    compute: mean,
  }),
  declare({
    name: "UNCERTAINTY.SPREAD",
    family: "uncertainty",
    summary: "Spread of repeat readings: their standard deviation, with n - 1.",
    params: [readings],
    returns: { type: "number", unit: "length", doc: "Standard deviation of one reading." },
    failures: [{ ...oneReading, formula: "=UNCERTAINTY.SPREAD({12.352})" }],
    examples: [{ formula: "=UNCERTAINTY.SPREAD({12.352;12.355;12.351;12.354;12.353})", value: 0.001581139 }],
    source: "JCGM 100, 4.2.2",
    compute: spread,
  }),
  declare({
    name: "UNCERTAINTY.REPEAT",
    family: "uncertainty",
    summary: "Standard uncertainty of the mean of repeat readings.",
    params: [readings],
    returns: {
      type: "number",
      unit: "length",
      doc: "Spread / root of the count; its freedom is the count less 1.",
    },
    failures: [{ ...oneReading, formula: "=UNCERTAINTY.REPEAT({12.352})" }],
    examples: [{ formula: "=UNCERTAINTY.REPEAT({12.352;12.355;12.351;12.354;12.353})", value: 0.0007071068 }],
    source: "JCGM 100, 4.2.3",
    compute: uncertaintyOfMean,
  }),
  declare({
    name: "UNCERTAINTY.LIMITS",
    family: "uncertainty",
    summary: "Standard uncertainty of something known to lie within plus or minus a limit.",
    params: [
      { name: "half_width", type: "number", unit: "length", doc: "The plus or minus, 0 or more." },
      {
        name: "likely",
        type: "text",
        options: ["even", "middle", "ends"],
        fallback: "even",
        doc: "even: anywhere alike; middle: near the middle rather; ends: in a cycle, mostly near the ends.",
      },
    ],
    returns: { type: "number", unit: "length", doc: "half_width / root of 3, 6 or 2." },
    failures: [
      {
        when: "the limit is below 0",
        formula: "=UNCERTAINTY.LIMITS(-0.004)",
        gives: "#NUM!",
        says: "half_width must be 0 or more",
      },
    ],
    examples: [
      { formula: "=UNCERTAINTY.LIMITS(0.004)", value: 0.002309401 },
      { formula: '=UNCERTAINTY.LIMITS(0.004, "middle")', value: 0.001632993 },
      { formula: '=UNCERTAINTY.LIMITS(0.004, "ends")', value: 0.002828427 },
    ],
    source: "JCGM 100, 4.3.7, 4.3.9 and H.1.3.4",
    compute: uncertaintyOfLimits,
  }),
  declare({
    name: "UNCERTAINTY.RESOLUTION",
    family: "uncertainty",
    summary: "Standard uncertainty of reading to whole steps of a dial or display.",
    params: [{ name: "step", type: "number", unit: "length", doc: "Smallest step that is read, 0 or more." }],
    returns: { type: "number", unit: "length", doc: "step / (2 root 3)." },
    failures: [
      {
        when: "the step is below 0",
        formula: "=UNCERTAINTY.RESOLUTION(-0.01)",
        gives: "#NUM!",
        says: "step must be 0 or more",
      },
    ],
    examples: [{ formula: "=UNCERTAINTY.RESOLUTION(0.01)", value: 0.002886751 }],
    source: "JCGM 100, F.2.2.1",
    compute: uncertaintyOfResolution,
  }),
  declare({
    name: "UNCERTAINTY.COMBINED",
    family: "uncertainty",
    summary: "Combined standard uncertainty of independent contributions.",
    params: [contributions],
    returns: { type: "number", unit: "length", doc: "Root of the sum of the squares." },
    failures: [
      {
        when: "a cell holds words",
        formula: '=UNCERTAINTY.COMBINED({25;"small"})',
        gives: "#VALUE!",
        says: "contributions must hold numbers only",
      },
    ],
    examples: [
      { formula: "=UNCERTAINTY.COMBINED({25;9.7;2.9;16.6})", value: 32, within: 0.5, source: endGauge },
      { formula: "=UNCERTAINTY.COMBINED({3;4})", value: 5 },
    ],
    source: "JCGM 100, 5.1.2",
    compute: combined,
  }),
  declare({
    name: "UNCERTAINTY.FREEDOM",
    family: "uncertainty",
    summary: "Effective degrees of freedom of a combined uncertainty (Welch-Satterthwaite).",
    params: [contributions, freedoms],
    returns: { type: "number", doc: "Not rounded; the coverage factor drops what is past the whole number." },
    failures: [
      { ...unlike, formula: "=UNCERTAINTY.FREEDOM({1;2}, {5})" },
      {
        when: "there is nothing to combine",
        formula: "=UNCERTAINTY.FREEDOM({0;0}, {5;5})",
        gives: "#NUM!",
        says: "contributions must not all be 0",
      },
    ],
    examples: [
      {
        formula: "=UNCERTAINTY.FREEDOM({25;9.7;2.9;16.6}, {18;25.6;50;2})",
        value: 16.7,
        within: 0.1,
        source: endGauge,
      },
    ],
    source: "JCGM 100, G.4.1",
    compute: effectiveFreedom,
  }),
  declare({
    name: "UNCERTAINTY.COVERAGE",
    family: "uncertainty",
    summary: "Coverage factor: Student's t for a freedom and a probability.",
    params: [
      {
        name: "freedom",
        type: "number",
        doc: "Degrees of freedom, 1 or more; what is past the whole number is dropped.",
      },
      probability,
    ],
    returns: { type: "number", unit: "ratio", doc: "Near 2 for 0.95 when the freedom is large." },
    failures: [
      {
        when: "the freedom is below 1",
        formula: "=UNCERTAINTY.COVERAGE(0.5)",
        gives: "#NUM!",
        says: "freedom must be 1 or more",
      },
      {
        when: "the probability is certain",
        formula: "=UNCERTAINTY.COVERAGE(5, 1)",
        gives: "#NUM!",
        says: "probability must be above 0 and at most 0.9999",
      },
    ],
    examples: [
      { formula: "=UNCERTAINTY.COVERAGE(16.7, 0.99)", value: 2.920782, source: "table of Student's t" },
      { formula: "=UNCERTAINTY.COVERAGE(4)", value: 2.776445, source: "table of Student's t" },
      { formula: "=UNCERTAINTY.COVERAGE(1e9)", value: 1.959964, source: "table of the normal distribution" },
    ],
    source: "JCGM 100, G.4.1 and table G.2",
    compute: (freedom, share) => studentFactor(share, freedom),
  }),
  declare({
    name: "UNCERTAINTY.EXPANDED",
    family: "uncertainty",
    summary: "Expanded uncertainty U: the combined one times the coverage factor for its effective freedom.",
    params: [contributions, freedoms, probability],
    returns: { type: "number", unit: "length", doc: "The plus or minus to state." },
    failures: [{ ...unlike, formula: "=UNCERTAINTY.EXPANDED({1;2}, {5})" }],
    examples: [
      {
        formula: "=UNCERTAINTY.EXPANDED({25;9.7;2.9;16.6}, {18;25.6;50;2}, 0.99)",
        value: 93,
        within: 0.5,
        source: endGauge,
      },
    ],
    source: "JCGM 100, G.4.1",
    compute: expanded,
  }),
  declare({
    name: "DECIDE.VERDICT",
    family: "uncertainty",
    summary: "In its limits, out of them, or not to be told with this uncertainty.",
    params: [
      { name: "value", type: "number", unit: "length", doc: "Size found." },
      { name: "uncertainty", type: "number", unit: "length", doc: "Expanded uncertainty U, 0 or more." },
      {
        name: "lower",
        type: "number",
        unit: "length",
        optional: true,
        doc: "Smallest size; left out: none.",
      },
      { name: "upper", type: "number", unit: "length", optional: true, doc: "Largest size; left out: none." },
    ],
    returns: { type: "text", doc: "in, out, or can't be told: nearer to a limit than U." },
    failures: [
      {
        when: "there is no limit",
        formula: "=DECIDE.VERDICT(10.75, 0.005)",
        gives: "#NUM!",
        says: "lower or upper must be given",
      },
      {
        when: "the limits are exchanged",
        formula: "=DECIDE.VERDICT(10.75, 0.005, 10.829, 10.679)",
        gives: "#NUM!",
        says: "lower must not be above upper",
      },
    ],
    examples: [
      { formula: "=DECIDE.VERDICT(10.75, 0.005, 10.679, 10.829)", value: "in" },
      { formula: "=DECIDE.VERDICT(10.682, 0.005, 10.679, 10.829)", value: "can't be told" },
      { formula: "=DECIDE.VERDICT(10.67, 0.005, 10.679, 10.829)", value: "out" },
      { formula: "=DECIDE.VERDICT(10.67, 0.005, , 10.829)", value: "in" },
    ],
    source: "ISO 14253-1",
    compute: verdict,
  }),
];
