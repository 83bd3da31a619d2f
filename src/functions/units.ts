import { convert } from "../lathe/convert.ts";
import { declare, type SheetFunction } from "./declare.ts";

const names =
  'names keep their case, SI prefixes as the standard allows: "mm", "in", "ft", "m/s", "ft/min", "kg", "lbm", "N", "lbf", "kPa", "psi", "deg"';

export const unitFunctions: readonly SheetFunction[] = [
  declare({
    name: "CONVERT",
    family: "units",
    summary: "A number in one unit, given in another: length, speed, mass, force, pressure, angle.",
    params: [
      { name: "number", type: "number", doc: "Any number." },
      { name: "from", type: "text", doc: `Unit it is in; ${names}.` },
      { name: "to", type: "text", doc: "Unit wanted, of the same kind." },
    ],
    returns: { type: "number", doc: "The number in the unit wanted." },
    failures: [
      {
        when: "the two do not measure the same thing",
        formula: '=CONVERT(1, "in", "kg")',
        gives: "#N/A",
        says: "do not convert",
      },
      { when: "a unit is not known", formula: '=CONVERT(1, "IN", "mm")', gives: "#N/A", says: "IN" },
      { when: "a unit is left out", formula: '=CONVERT(1, "in")', gives: "#VALUE!", says: "to" },
    ],
    examples: [
      { formula: '=CONVERT(1, "in", "mm")', value: 25.4 },
      { formula: '=CONVERT(100, "ft/min", "m/min")', value: 30.48 },
      { formula: '=CONVERT(1, "deg", "arcmin")', value: 60, source: "definition of the minute of arc" },
    ],
    source: 'ISO/IEC 26300-2, CONVERT; besides it "deg", "rad", "arcmin", "ft/min" and "m/min" are our own',
    compute: convert,
  }),
];
