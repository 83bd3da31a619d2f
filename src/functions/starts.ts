import { startDivisions, startTeeth } from "../lathe/indexing.ts";
import { startShift } from "../lathe/starts.ts";
import { declare, type Param, type SheetFunction } from "./declare.ts";

const starts = {
  name: "starts",
  type: "number",
  doc: "How many the thread has, whole, 1 or more.",
} as const satisfies Param;
const start = {
  name: "start",
  type: "number",
  fallback: 2,
  doc: "Which one, whole, 1 to starts; 2 when left out.",
} as const satisfies Param;

export const startFunctions: readonly SheetFunction[] = [
  declare({
    name: "START.SHIFT",
    family: "starts",
    summary: "How far a slide set parallel to the bed is advanced from the first start to another.",
    params: [
      { name: "lead", type: "number", unit: "length", doc: "Pitch x starts, above 0." },
      starts,
      { name: "start", type: "number", doc: "Which one, whole, 1 to starts; 1 needs no shift." },
    ],
    returns: { type: "number", unit: "length", doc: "Counted from the first start." },
    failures: [
      {
        when: "the thread has no such start",
        formula: "=START.SHIFT(3, 2, 3)",
        gives: "#NUM!",
        says: "start must be from 1 to 2, got 3",
      },
      {
        when: "the starts are not whole",
        formula: "=START.SHIFT(3, 1.5, 1)",
        gives: "#NUM!",
        says: "starts must be a whole number of 1 or more, got 1.5",
      },
    ],
    examples: [{ formula: "=START.SHIFT(3, 2, 2)", value: 1.5 }],
    source: "geometry",
    compute: startShift,
  }),
  declare({
    name: "START.DIVISIONS",
    family: "starts",
    summary:
      "Divisions of a faceplate or chuck plate by which the work is turned from the first start to another.",
    params: [
      {
        name: "divisions",
        type: "number",
        unit: "divisions",
        doc: "In a whole turn: slots, pins or holes; whole, 1 or more.",
      },
      starts,
      start,
    ],
    returns: {
      type: "number",
      unit: "divisions",
      doc: "Counted from the first start; the leadscrew and the gears stand still.",
    },
    failures: [
      {
        when: "the divisions do not part into the starts",
        formula: "=START.DIVISIONS(12, 5)",
        gives: "#N/A",
        says: "12 divisions do not part into 5 starts: start 2 is at 2.4",
      },
      {
        when: "the thread has no such start",
        formula: "=START.DIVISIONS(12, 3, 4)",
        gives: "#NUM!",
        says: "start must be from 1 to 3, got 4",
      },
    ],
    examples: [
      { formula: "=START.DIVISIONS(12, 3)", value: 4, source: "a third of a turn of twelve" },
      { formula: "=START.DIVISIONS(60, 4, 4)", value: 45, source: "three quarters of sixty" },
    ],
    source: "geometry",
    compute: startDivisions,
  }),
  declare({
    name: "START.TEETH",
    family: "starts",
    summary: "Teeth by which a change gear is moved on against its mate from the first start to another.",
    params: [
      { name: "teeth", type: "number", unit: "teeth", doc: "Of the gear that is moved, whole, 1 or more." },
      starts,
      start,
      {
        name: "turns",
        type: "number",
        fallback: 1,
        doc: "Turns of that gear for one of the spindle, above 0: 1 for the first driver where nothing comes before it.",
      },
    ],
    returns: {
      type: "number",
      unit: "teeth",
      doc: "Mark the teeth in mesh, swing the gears apart, turn the spindle until that many teeth have passed the mark.",
    },
    failures: [
      {
        when: "the teeth do not part into the starts",
        formula: "=START.TEETH(40, 3)",
        gives: "#N/A",
        says: "40 teeth at 1 turns do not part into 3 starts: start 2 is at 13.333",
      },
      {
        when: "the gear does not turn",
        formula: "=START.TEETH(40, 2, 2, 0)",
        gives: "#NUM!",
        says: "turns must be greater than 0, got 0",
      },
    ],
    examples: [
      { formula: "=START.TEETH(40, 2)", value: 20, source: "half a turn of 40 teeth" },
      { formula: "=START.TEETH(60, 3, 3, 0.5)", value: 20, source: "two thirds of 30 teeth a turn" },
    ],
    source: "geometry",
    compute: startTeeth,
  }),
];
