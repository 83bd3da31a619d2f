import { bestBoxedTrain, bestTrain } from "../lathe/gear-search.ts";
import { boxedText, trainText } from "../lathe/gears.ts";
import { declare, type Param, type SheetFunction } from "./declare.ts";

const lead = {
  name: "lead",
  type: "number",
  unit: "length",
  doc: "Lead wanted, above 0: pitch x starts.",
} as const satisfies Param;
const leadscrewLead = {
  name: "leadscrew_lead",
  type: "number",
  unit: "length",
  doc: "Lead of the leadscrew, above 0. 8 per inch: 1/8 in or 3.175 mm.",
} as const satisfies Param;
const gearsAtHand = {
  name: "gears",
  type: "numbers",
  unit: "teeth",
  doc: "The gears at hand, one a cell, repeats for several of a size; up to 48 sizes.",
} as const satisfies Param;
const rank = {
  name: "rank",
  type: "number",
  fallback: 1,
  doc: "1 for the best train, 2 for the next; whole.",
} as const satisfies Param;
const clearance = {
  name: "clearance",
  type: "number",
  unit: "teeth",
  fallback: 15,
  doc: "In a compound train a pair must reach past the gear on the next stud by this many teeth: 2 + shaft or nut diameter / module.",
} as const satisfies Param;
const largest = {
  name: "largest",
  type: "number",
  unit: "teeth",
  optional: true,
  doc: "Largest wheel for which the banjo has room, above 0. Left out: any.",
} as const satisfies Param;
const best =
  "Best is the least error (equal within 1e-9 of the lead), then fewer gears, more teeth in all, a larger first driver";
const source = "geometry; the clearance at the studs is common practice, no source";

export const gearSearchFunctions: readonly SheetFunction[] = [
  declare({
    name: "GEAR.TRAIN",
    family: "gears",
    summary: "The best train for a lead from the gears at hand, the second best, and so on.",
    params: [lead, leadscrewLead, gearsAtHand, rank, clearance, largest],
    returns: {
      type: "text",
      doc: `Drivers over driven, from the spindle on; "30/80" takes any idler between. ${best}.`,
    },
    failures: [
      {
        when: "the gears make no train",
        formula: "=GEAR.TRAIN(1.5, 4, {40})",
        gives: "#N/A",
        says: "no train can be made of the gears 40",
      },
      {
        when: "there are fewer trains than that",
        formula: "=GEAR.TRAIN(1.5, 4, {30;80}, 3)",
        gives: "#N/A",
        says: "rank must be at most 2",
      },
      {
        when: "the lead is not above 0",
        formula: "=GEAR.TRAIN(0, 4, {30;80})",
        gives: "#NUM!",
        says: "lead must be greater than 0, got 0",
      },
      {
        when: "a gear has half a tooth",
        formula: "=GEAR.TRAIN(1.5, 4, {30.5;80})",
        gives: "#NUM!",
        says: "gears must be a whole number of 1 or more, got 30.5",
      },
      {
        when: "every gear is too large for the banjo",
        formula: "=GEAR.TRAIN(1.5, 4, {100;120}, 1, 15, 90)",
        gives: "#N/A",
        says: "no train can be made of no gears up to 90 teeth",
      },
    ],
    examples: [
      {
        formula: "=GEAR.TRAIN(1.5, 3.175, {20;25;30;35;38;40;45;50;55;60;63;65;70})",
        value: "65/50 × 20/55",
      },
      { formula: "=GEAR.TRAIN(1.75, 3, {20;25;30;35;38;40;45;50;55;60;63;65;70})", value: "35/60" },
      {
        formula: "=GEAR.TRAIN(1.5, 3.175, {20;40;50;60;127}, 1, 15, 127)",
        value: "60/127",
        source: "60 x 3.175 / 127 is 1.5 by hand",
      },
    ],
    source,
    compute: (wanted, leadscrew, gears, place, gap, most) =>
      trainText(bestTrain(wanted, leadscrew, gears, place, { clearance: gap, largest: most })),
  }),
  declare({
    name: "GEAR.BOXTRAIN",
    family: "gears",
    summary: "The best train and gearbox position for a lead, the second best, and so on.",
    params: [
      lead,
      leadscrewLead,
      gearsAtHand,
      {
        name: "ratios",
        type: "numbers",
        unit: "ratio",
        doc: "Turns of the leadscrew for one of the gearbox's input, position by position, one a cell; above 0, up to 64.",
      },
      rank,
      clearance,
      largest,
    ],
    returns: {
      type: "text",
      doc: `"65/50 × 20/55, box 3": the train, and the third of the ratios. ${best}, the lower position.`,
    },
    failures: [
      {
        when: "a ratio is not above 0",
        formula: "=GEAR.BOXTRAIN(1.5, 4, {30;80}, {1;0.5;-2})",
        gives: "#NUM!",
        says: "ratios must be greater than 0, got -2",
      },
      {
        when: "there are fewer trains than that",
        formula: "=GEAR.BOXTRAIN(1.5, 4, {30;80}, {1;2}, 5)",
        gives: "#N/A",
        says: "rank must be at most 4",
      },
    ],
    examples: [
      {
        formula: "=GEAR.BOXTRAIN(3, 4, {30;80}, {0.5;1;2})",
        value: "30/80, box 3",
        source: "4 x 30/80 x 2 by hand",
      },
      {
        formula: "=GEAR.BOXTRAIN(1.5, 4, {20;45}, {1;1/6;1/2;3/4}, 1)",
        value: "45/20, box 2",
        source: "4 x 45/20 x 1/6 is 1.5 by hand",
      },
    ],
    source,
    compute: (wanted, leadscrew, gears, ratios, place, gap, most) =>
      boxedText(bestBoxedTrain(wanted, leadscrew, gears, ratios, place, { clearance: gap, largest: most })),
  }),
];
