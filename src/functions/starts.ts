import { startShift } from "../lathe/starts.ts";
import { declare, type SheetFunction } from "./declare.ts";

export const startFunctions: readonly SheetFunction[] = [
  declare({
    name: "START.SHIFT",
    family: "starts",
    summary: "How far a slide set parallel to the bed is advanced from the first start to another.",
    params: [
      { name: "lead", type: "number", unit: "length", doc: "Pitch x starts, above 0." },
      { name: "starts", type: "number", doc: "How many the thread has, whole, 1 or more." },
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
];
