import type { SheetFunction } from "./declare.ts";

const cell = "a cell, such as B5, or the name of one";

export const whatIfFunctions: readonly SheetFunction[] = [
  {
    name: "MULTIPLE.OPERATIONS",
    family: "what if",
    summary:
      "What a cell would show if one or two others held something else: a what-if table is made of these.",
    params: [
      { name: "formula_cell", type: "cell", doc: `Cell whose value is wanted: ${cell}.` },
      { name: "row_cell", type: "cell", doc: `Input that is replaced: ${cell}.` },
      { name: "row_replacement", type: "cell", doc: "Cell that stands in for it; a value will do." },
      { name: "column_cell", type: "cell", optional: true, doc: `Second input that is replaced: ${cell}.` },
      {
        name: "column_replacement",
        type: "cell",
        optional: true,
        doc: "Cell that stands in for the second one; a value will do.",
      },
    ],
    returns: { type: "number", doc: "The value of the formula cell, of whatever kind and unit that is." },
    failures: [
      {
        when: "an input is no cell",
        formula: "=MULTIPLE.OPERATIONS(A1, 5, 7)",
        gives: "#VALUE!",
        says: "row_cell must be a cell",
      },
      {
        when: "the second input has no replacement",
        formula: "=MULTIPLE.OPERATIONS(A1, A2, 7, A3)",
        gives: "#VALUE!",
        says: "column_replacement is missing",
      },
    ],
    examples: [
      {
        formula: "=MULTIPLE.OPERATIONS(A1, A1, 7)",
        value: 7,
        source: "the cell itself is replaced, so its value is the replacement",
      },
    ],
    source: "ISO/IEC 26300-2, MULTIPLE.OPERATIONS",
    compute: "in the engine",
  },
];
