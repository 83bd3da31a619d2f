import { dialDivisions, dialReading, roundToDial } from "../lathe/dial.ts";
import { declare, type Param, type SheetFunction } from "./declare.ts";
import { division, reads } from "./slides.ts";

const travel = {
  name: "travel",
  type: "number",
  unit: "length",
  doc: "Travel of the slide; the sign is kept.",
} as const satisfies Param;
const noDivision = {
  when: "the division is not above 0",
  gives: "#NUM!",
  says: "division must be greater than 0, got 0",
} as const;

export const dialFunctions: readonly SheetFunction[] = [
  declare({
    name: "DIAL.DIVISIONS",
    family: "dial",
    summary: "Divisions to wind for a travel.",
    params: [travel, division, reads],
    returns: { type: "number", unit: "divisions", doc: "Not rounded." },
    failures: [
      { ...noDivision, formula: "=DIAL.DIVISIONS(1, 0)" },
      {
        when: "the dial reads another word",
        formula: '=DIAL.DIVISIONS(1, 0.02, "thou")',
        gives: "#VALUE!",
        says: "diameter",
      },
    ],
    examples: [{ formula: '=DIAL.DIVISIONS(0.5, 0.02, "diameter")', value: 50 }],
    source: "geometry",
    compute: dialDivisions,
  }),
  declare({
    name: "DIAL.ROUND",
    family: "dial",
    summary: "Travel as whole divisions of the dial.",
    params: [
      travel,
      division,
      {
        name: "rounding",
        type: "text",
        options: ["nearest", "under", "over"],
        fallback: "nearest",
        doc: 'A tie goes to the smaller travel; "under" and "over" go by size, sign kept.',
      },
      reads,
    ],
    returns: {
      type: "number",
      unit: "length",
      doc: "Travel; on a diameter dial a whole number of half divisions.",
    },
    failures: [
      { ...noDivision, formula: "=DIAL.ROUND(1, 0)" },
      { when: "the travel is left out", formula: "=DIAL.ROUND(, 0.02)", gives: "#VALUE!", says: "travel" },
    ],
    examples: [
      { formula: "=DIAL.ROUND(1.047, 0.02)", value: 1.04 },
      { formula: '=DIAL.ROUND(1.047, 0.02, "nearest", "diameter")', value: 1.05 },
      { formula: '=DIAL.ROUND(0.3, 0.1, "under")', value: 0.3 },
    ],
    source: "geometry",
    compute: roundToDial,
  }),
  declare({
    name: "DIAL.READING",
    family: "dial",
    summary: "A travel as a person reads it off the dial: full turns and divisions.",
    params: [
      travel,
      division,
      {
        name: "per_turn",
        type: "number",
        unit: "divisions",
        doc: "Divisions in a full turn, above 0; need not be whole.",
      },
      {
        name: "start",
        type: "number",
        unit: "divisions",
        optional: true,
        doc: "Division at the mark before winding, 0 to per_turn. Left out: counted from zero.",
      },
      reads,
    ],
    returns: {
      type: "text",
      doc: '"12", "1 turn", "2 turns + 3", "back 1 turn + 12"; with a start "1 turn, stop at 2". To a tenth of a division.',
    },
    failures: [
      { ...noDivision, formula: "=DIAL.READING(1, 0, 40)" },
      {
        when: "a turn has no divisions",
        formula: "=DIAL.READING(1, 0.02, 0)",
        gives: "#NUM!",
        says: "per_turn must be greater than 0",
      },
      {
        when: "the start is not on the dial",
        formula: "=DIAL.READING(1, 0.02, 40, 41)",
        gives: "#NUM!",
        says: "start must be from 0 to 40",
      },
    ],
    examples: [
      { formula: "=DIAL.READING(1.04, 0.02, 40)", value: "1 turn + 12" },
      { formula: "=DIAL.READING(0.7999, 0.02, 40)", value: "1 turn" },
      { formula: "=DIAL.READING(0.24, 0.02, 40)", value: "12" },
      { formula: "=DIAL.READING(1.04, 0.02, 40, 30)", value: "1 turn, stop at 2" },
    ],
    source: "geometry; the words are our own",
    compute: dialReading,
  }),
];
