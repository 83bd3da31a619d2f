/** Whole schedules for each infeed strategy, and the rules they share the depth out by. */
import { grooveOf, type NoseShape } from "../lathe/chip-area.ts";
import type { DialReads } from "../lathe/dial.ts";
import { type Ending, type Schedule, type Strategy, schedule, strategies } from "../lathe/strategies.ts";
import { reducedDepth, type ShareRule } from "../lathe/strategy-shares.ts";
import { threadTime } from "../lathe/thread-time.ts";
import { type Block, declare, type Failure, type Param, type SheetFunction } from "./declare.ts";
import { depth, depthToReach, pass, passes } from "./depths.ts";
import { crossDivision, crossReads } from "./slides.ts";
import { included, nose, shape, trailingFlank } from "./toolform.ts";

const scheduleParams = [
  {
    name: "strategy",
    type: "text",
    options: strategies,
    doc: '"straight in": cross slide only; "single flank": top slide at the trailing flank; "modified flank": backed off it; "alternating flanks": top slide along the bed, a side step each pass; "flank then straight": backed off, the last passes straight in.',
  },
  depthToReach,
  included,
  nose,
  {
    name: "slide_division",
    type: "number",
    unit: "length",
    doc: "Travel of the top slide for one division, above 0.",
  },
  {
    name: "first_depth",
    type: "number",
    unit: "length",
    doc: "Most radial depth of the first pass, a division or more.",
  },
  {
    name: "least_depth",
    type: "number",
    unit: "length",
    doc: "Least radial depth of a pass that still cuts, not more than first_depth; about 0.05 mm or 0.002 in for steel (common practice, no source).",
  },
  {
    name: "rule",
    type: "text",
    options: ["area", "even", "ratio"],
    fallback: "area",
    doc: '"area": every pass takes the same chip area; "even": the same depth; "ratio": each takes ratio times the one before.',
  },
  trailingFlank,
  shape,
  crossDivision,
  crossReads,
  {
    name: "back_off",
    type: "number",
    unit: "deg",
    fallback: 0.5,
    doc: "Off the trailing flank, for modified flank and flank then straight; 0.5 when left out.",
  },
  {
    name: "straight_in",
    type: "number",
    unit: "length",
    optional: true,
    doc: "Radial depth kept for the cross slide in flank then straight; left out: two of its divisions.",
  },
  { name: "spring", type: "number", fallback: 1, doc: "Spring passes, whole; 1 when left out." },
  {
    name: "ends",
    type: "text",
    options: ["whole", "exact"],
    fallback: "whole",
    doc: '"whole": on the last whole division, never past the depth; "exact": the last pass winds the part of a division that is left.',
  },
  {
    name: "ratio",
    type: "number",
    unit: "ratio",
    fallback: 0.8,
    doc: "Of a pass to the one before for the rule ratio, above 0 to 1; 0.8 when left out.",
  },
] as const satisfies readonly Param[];

function scheduleOf(
  strategy: Strategy,
  depth: number,
  included: number,
  nose: number,
  slideDivision: number,
  firstDepth: number,
  leastDepth: number,
  rule: ShareRule,
  trailingFlank: number | undefined,
  shape: NoseShape,
  crossDivision: number | undefined,
  crossReads: DialReads,
  backOff: number,
  straightIn: number | undefined,
  spring: number,
  ends: Ending,
  ratio: number,
): Schedule {
  const groove = grooveOf(included, nose, trailingFlank, shape);
  return schedule({
    strategy,
    depth,
    groove,
    slideDivision,
    firstDepth,
    leastDepth,
    rule,
    ratio,
    crossDivision,
    crossReads,
    backOff,
    straightIn,
    spring,
    ends,
  });
}

/** The seventeen columns, in this order. */
function toBlock({ passes }: Schedule): Block {
  return passes.map(({ what, cross, slide, crossTotal, slideTotal, layer }, k) => {
    const { chip, areaOf, width } = layer;
    return [
      what === "spring" ? "S" : k + 1,
      what,
      cross,
      slide,
      crossTotal,
      slideTotal,
      layer.place.radial,
      chip.leading,
      chip.nose,
      chip.trailing,
      layer.area,
      areaOf.leading,
      areaOf.nose,
      areaOf.trailing,
      width.leading,
      width.nose,
      width.trailing,
    ];
  });
}

const call = (name: string, text: string) => `=${name}(${text})`;

const failuresOf = (name: string): readonly Failure[] =>
  (
    [
      [
        "the strategy is no word of the five",
        '"zigzag", 1.2, 60, 0, 0.02, 0.3, 0.04',
        "#VALUE!",
        "straight in",
      ],
      [
        "the division is not above 0",
        '"straight in", 1.2, 60, 0, 0, 0.3, 0.04',
        "#NUM!",
        "slide_division must be greater than 0",
      ],
      [
        "the least cut is more than the first",
        '"straight in", 1.2, 60, 0, 0.02, 0.3, 0.4',
        "#NUM!",
        "least_depth must not be more than first_depth",
      ],
      [
        "the back-off is negative",
        '"modified flank", 1.2, 60, 0, 0.02, 0.3, 0.04, , , , , , -1',
        "#NUM!",
        "back_off must be from 0 to the included angle",
      ],
      [
        "the cut is far too small for the depth",
        '"straight in", 12, 60, 0, 0.001, 0.001, 0',
        "#NUM!",
        "too small for this depth",
      ],
    ] as const
  ).map(([when, given, gives, says]) => ({ when, formula: call(name, given), gives, says }));

/** A sharp 60-degree tool, 1.2 deep, equal depths. */
const even = '"straight in", 1.2, 60, 0, 0.02, 0.3, 0.04, "even"';
const sideSteps = '"alternating flanks", 1.2, 60, 0, 0.02, 0.3, 0.04, "even"';
const single = '"single flank", 1.2, 60, 0, 0.02, 0.4, 0.04, "even"';

export const strategyFunctions: readonly SheetFunction[] = [
  declare({
    name: "PASS.SCHEDULE",
    family: "passes",
    summary: "Whole schedule of passes for an infeed strategy, in whole divisions of both slides.",
    params: scheduleParams,
    returns: {
      type: "block",
      doc: "A row for each pass; columns: pass, what, cross slide divisions, top slide divisions (alternating flanks: + to the leading side), totals of both, depth, chip thickness on leading flank, nose and trailing flank, area, its shares on these three, length of these three that cuts. The sum of the areas is the finished groove.",
    },
    failures: failuresOf("PASS.SCHEDULE"),
    examples: [
      {
        formula: `=INDEX(PASS.SCHEDULE(${even}), 4, 5)`,
        value: 60,
        source: "60 divisions of 0.02 are the depth of 1.2: four passes of 15",
      },
      {
        formula: `=INDEX(PASS.SCHEDULE(${even}), 2, 8)`,
        value: 0.15,
        source: "straight in by 0.3: 0.3 sin 30 degrees on each flank",
      },
      {
        formula: `=INDEX(PASS.SCHEDULE(${sideSteps}), 2, 4)`,
        value: -8,
        source: "0.3 tan 30 degrees is 8.66 divisions of 0.02, rounded down; the second step goes back",
      },
      {
        formula: `=INDEX(PASS.SCHEDULE(${single}), 3, 6)`,
        value: 69,
        source: "1.2 / cos 30 degrees is 69.28 divisions of 0.02",
      },
      {
        formula: `=INDEX(PASS.SCHEDULE(${single}), 3, 10)`,
        value: 0,
        within: 1e-12,
        source: "along the trailing flank the trailing edge only slides",
      },
    ],
    source: "common practice, no source; areas and chips geometry",
    compute: (...given) => toBlock(scheduleOf(...given)),
  }),
  declare({
    name: "PASS.WHY",
    family: "passes",
    summary:
      "Why PASS.SCHEDULE came out as it did: a sentence for each adjustment. Takes the same arguments.",
    params: scheduleParams,
    returns: {
      type: "text",
      doc: 'Sentences joined by a space; "Nothing was adjusted." when there were none.',
    },
    failures: failuresOf("PASS.WHY"),
    examples: [
      {
        formula: `=PASS.WHY(${even})`,
        value: "Nothing was adjusted.",
        source: "0.3 is 15 divisions, 0.04 is 2, and 1.2 is 60",
      },
      {
        formula: `=PASS.WHY(${even.replace("0.3,", "0.31,")})`,
        value: "The first cut is rounded down to 15 divisions, 0.3 radially.",
        source: "0.31 / 0.02 is 15.5 divisions",
      },
    ],
    source: "common practice, no source",
    compute: (...given) => scheduleOf(...given).reasons.join(" ") || "Nothing was adjusted.",
  }),
  declare({
    name: "PASS.REDUCED",
    family: "passes",
    summary:
      "Radial depth reached after a pass when each takes a fixed ratio of the one before: h (1 - r^k)/(1 - r^n).",
    params: [
      depth,
      pass,
      passes,
      {
        name: "ratio",
        type: "number",
        unit: "ratio",
        doc: "Of a pass to the one before, above 0 to 1; 1 is equal depth.",
      },
    ],
    returns: { type: "number", unit: "length", doc: "From the surface, radial." },
    failures: [
      {
        when: "the ratio is above 1",
        formula: "=PASS.REDUCED(1.2, 3, 8, 1.1)",
        gives: "#NUM!",
        says: "ratio must be greater than 0 and at most 1",
      },
      {
        when: "the pass comes after the last",
        formula: "=PASS.REDUCED(1.2, 9, 8, 0.8)",
        gives: "#NUM!",
        says: "pass must be at most the number of passes 8",
      },
    ],
    examples: [
      {
        formula: "=PASS.REDUCED(1.2, 3, 8, 0.8)",
        value: 0.7036535,
        source: "1.2 (1 - 0.8^3)/(1 - 0.8^8), reckoned apart",
      },
      { formula: "=PASS.REDUCED(1, 1, 3, 0.5)", value: 0.5714286, source: "4/7" },
    ],
    source: "geometric series; the rule is common practice, no source",
    compute: reducedDepth,
  }),
  declare({
    name: "PASS.TIME",
    family: "passes",
    summary: "Time for a thread: cutting, bringing the carriage back, and setting the next pass.",
    params: [
      {
        name: "passes",
        type: "number",
        doc: "Passes that run along the work, scratch and spring among them.",
      },
      {
        name: "travel",
        type: "number",
        unit: "length",
        doc: "Run of the carriage in a pass: run-in, thread and run-out, above 0.",
      },
      { name: "lead", type: "number", unit: "length", doc: "Lead of the thread, above 0." },
      { name: "rpm", type: "number", unit: "rev/min", doc: "Spindle speed while cutting, above 0." },
      {
        name: "setting_seconds",
        type: "number",
        unit: "s",
        fallback: 15,
        doc: "To draw the tool, set the dial and take the next mark, each pass; 15 when left out (common practice, no source).",
      },
      {
        name: "return_seconds",
        type: "number",
        unit: "s",
        fallback: 5,
        doc: "To bring the carriage back by hand, each pass; 5 when left out (common practice, no source).",
      },
      {
        name: "return_rpm",
        type: "number",
        unit: "rev/min",
        optional: true,
        doc: "Spindle speed in reverse where the half nuts stay closed; left out: back by hand.",
      },
    ],
    returns: { type: "number", unit: "s", doc: "After the last pass nothing is brought back or set." },
    failures: [
      {
        when: "the passes are not whole",
        formula: "=PASS.TIME(2.5, 30, 1.75, 100)",
        gives: "#NUM!",
        says: "passes must be a whole number",
      },
      {
        when: "the spindle stands",
        formula: "=PASS.TIME(12, 30, 1.75, 0)",
        gives: "#NUM!",
        says: "rpm must be greater than 0",
      },
    ],
    examples: [
      {
        formula: "=PASS.TIME(12, 30, 1.75, 100)",
        value: 343.4285714,
        source: "12 x 30/1.75 x 60/100 + 11 x (15 + 5), by hand",
      },
      {
        formula: "=PASS.TIME(12, 30, 1.75, 100, 15, 0, 150)",
        value: 363.8571429,
        source: "12 x 30/1.75 x 60/100 + 11 x 15 + 11 x 30/1.75 x 60/150, by hand",
      },
    ],
    source: "geometry; the seconds are what the person's hands need",
    compute: (passes, travel, lead, rpm, setting, back, returnRpm) =>
      threadTime({ passes, travel, lead, rpm, setting, back, returnRpm }).all,
  }),
];
