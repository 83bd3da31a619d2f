/** The pass plan as a block of rows, and the reasons for what it adjusted. */
import { grooveOf, type NoseShape } from "../lathe/chip-area.ts";
import type { DialReads } from "../lathe/dial.ts";
import { type Plan, type PlanRow, planPasses } from "../lathe/plan.ts";
import { type Block, declare, type Failure, type Param, type SheetFunction } from "./declare.ts";
import { depthToReach } from "./depths.ts";
import { crossDivision, crossReads } from "./slides.ts";
import { included, nose, shape, trailingFlank } from "./toolform.ts";

const planParams = [
  depthToReach,
  {
    name: "setover",
    type: "number",
    unit: "deg",
    doc: "Set-over from the line square to the axis, not above the trailing flank.",
  },
  included,
  nose,
  {
    name: "slide_division",
    type: "number",
    unit: "length",
    doc: "Travel of the set-over slide for one division, above 0.",
  },
  {
    name: "first_cut",
    type: "number",
    unit: "length",
    doc: "Most slide travel for the first pass, a division or more.",
  },
  {
    name: "least_cut",
    type: "number",
    unit: "length",
    doc: "Least slide travel for a pass, not more than first_cut; about 0.05 mm or 0.002 in for steel (common practice, no source).",
  },
  {
    name: "straight_in",
    type: "number",
    unit: "length",
    optional: true,
    doc: "Radial depth kept for the cross slide; left out: two of its divisions.",
  },
  crossDivision,
  trailingFlank,
  shape,
  crossReads,
  { name: "spring", type: "number", fallback: 2, doc: "Spring passes, whole; 2 when left out." },
  {
    name: "per_turn",
    type: "number",
    unit: "divisions",
    fallback: 0,
    doc: "Divisions in a turn of the slide's dial; 0: readings in plain divisions.",
  },
  {
    name: "start",
    type: "number",
    unit: "divisions",
    fallback: 0,
    doc: "Division of the slide's dial at touch-off; 0 when left out.",
  },
] as const satisfies readonly Param[];

function planOf(
  depth: number,
  setover: number,
  included: number,
  nose: number,
  slideDivision: number,
  firstCut: number,
  leastCut: number,
  straightIn: number | undefined,
  crossDivision: number | undefined,
  trailingFlank: number | undefined,
  shape: NoseShape,
  crossReads: DialReads,
  spring: number,
  perTurn: number,
  start: number,
): Plan {
  const groove = grooveOf(included, nose, trailingFlank, shape);
  return planPasses({
    depth,
    setover,
    groove,
    slideDivision,
    firstCut,
    leastCut,
    straightIn,
    crossDivision,
    crossReads,
    spring,
    perTurn,
    start,
  });
}

/** The ten columns, in this order; "" where one has no meaning. */
function toBlock(rows: readonly PlanRow[]): Block {
  return rows.map((row) => [
    row.pass,
    row.what,
    row.wind ?? "",
    row.total ?? "",
    row.reading ?? "",
    row.travel ?? "",
    row.depth ?? "",
    row.chipLeading ?? "",
    row.chipTrailing ?? "",
    row.area ?? "",
  ]);
}

const failures: readonly (Omit<Failure, "formula"> & { readonly arguments: string })[] = [
  {
    when: "the set-over is above the trailing flank",
    arguments: "1.2, 35, 60, 0.1, 0.02, 0.3, 0.06",
    gives: "#NUM!",
    says: "no plan is made: setover 35 is above the trailing flank 30",
  },
  {
    when: "the division is not above 0",
    arguments: "1.2, 29, 60, 0.1, 0, 0.3, 0.06",
    gives: "#NUM!",
    says: "slide_division must be greater than 0",
  },
  {
    when: "the cut is far too small for the depth",
    arguments: "12, 29, 60, 0.1, 0.001, 0.001, 0",
    gives: "#NUM!",
    says: "the first cut or division is too small for this depth",
  },
  {
    when: "the least cut is more than the first",
    arguments: "1.2, 29, 60, 0.1, 0.02, 0.1, 0.2",
    gives: "#NUM!",
    says: "least_cut must not be more than first_cut",
  },
];

const call = (name: string, text: string) => `=${name}(${text})`;
const failuresOf = (name: string): readonly Failure[] =>
  failures.map(({ arguments: given, ...failure }) => ({ ...failure, formula: call(name, given) }));

/** 1/2-12 BSW with a round nose of the form's own radius, on a dial of 0.02 mm and 50 to the turn. */
const whitworth =
  '1.3553593, 27, 55, 0.2906798, 0.02, 0.3, 0.06, 0.04, 0.02, 27.5, "radius", "radius", 2, 50';
/** M20x2.5-6g, blank 19.80 mm, flat nose, on an inch dial of a thousandth. */
const metric = "0.062496, 29.5, 60, 2.5/8/25.4, 0.001, 0.012, 0.002, 0.002";

export const planFunctions: readonly SheetFunction[] = [
  declare({
    name: "PASS.PLAN",
    family: "passes",
    summary:
      "The whole pass plan: scratch pass, slide passes in whole divisions, measure, straight in, spring passes.",
    params: planParams,
    returns: {
      type: "block",
      doc: "A row for each step; columns: pass, what, wind, total, reading, travel, depth, chip on the leading flank, chip on the trailing flank, area. Numbers of straight-in rows are cross-slide divisions.",
    },
    failures: failuresOf("PASS.PLAN"),
    examples: [
      { formula: `=INDEX(PASS.PLAN(${whitworth}), 1, 2)`, value: "scratch pass, check the pitch" },
      { formula: `=INDEX(PASS.PLAN(${whitworth}), 2, 3)`, value: 14 },
      { formula: `=INDEX(PASS.PLAN(${whitworth}), 13, 4)`, value: 73 },
      {
        formula: `=INDEX(PASS.PLAN(${whitworth}), 13, 5)`,
        value: "1 turn + 23",
        source: "73 divisions at 50 to the turn",
      },
      { formula: `=INDEX(PASS.PLAN(${metric}), 18, 4)`, value: 69 },
      { formula: `=INDEX(PASS.PLAN(${metric}), 18, 7)`, value: 0.06005, within: 0.000005 },
    ],
    source: "common practice, no source",
    compute: (...given) => toBlock(planOf(...given).rows),
  }),
  declare({
    name: "PASS.REASONS",
    family: "passes",
    summary: "Why PASS.PLAN came out as it did: a sentence for each adjustment. Takes the same arguments.",
    params: planParams,
    returns: {
      type: "text",
      doc: 'Sentences joined by a space; "Nothing was adjusted." when there were none.',
    },
    failures: failuresOf("PASS.REASONS"),
    examples: [
      {
        formula: "=PASS.REASONS(0.54, 0, 60, 0, 0.02, 0.5, 0.02, 0.04)",
        value: "Nothing was adjusted.",
        source:
          "one pass of 25 divisions of 0.02 is the first cut, and 2 x 0.02 straight in end on the depth",
      },
    ],
    source: "common practice, no source",
    compute: (...given) => planOf(...given).reasons.join(" ") || "Nothing was adjusted.",
  }),
];
