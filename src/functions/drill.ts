import { type Drill, sizeIn } from "../lathe/drill-list.ts";
import { beyond, drillNamed, nearestDrill } from "../lathe/drills.ts";
import { declare, type Param, type Result, type SheetFunction } from "./declare.ts";

const unit = {
  name: "unit",
  type: "text",
  options: ["mm", "in"],
  fallback: "mm",
  doc: "Unit of the size.",
} as const satisfies Param;

const source =
  "ASME B94.11M for number and letter drills; metric stock is common practice after ISO 235, from memory";

/** A value with what is doubtful about it, if anything. */
function noted(value: number | string, drill: Drill, also?: string): Result {
  const notes = [
    ...(also === undefined ? [] : [also]),
    ...(drill.remembered ? [`the size of ${drill.name} is from memory`] : []),
  ];
  return notes.length === 0 ? value : { value, note: notes.join("; ") };
}

export const drillFunctions: readonly SheetFunction[] = [
  declare({
    name: "DRILL.SIZE",
    family: "hole",
    summary: "Diameter of a drill from its name.",
    params: [
      {
        name: "name",
        type: "text",
        doc: 'Number drill "#7" or "No. 7" (1 to 80), letter "F", inch fraction "1/4" or "1 1/4", or a size with its unit, "6.8 mm".',
      },
      unit,
    ],
    returns: {
      type: "number",
      unit: "length",
      doc: "In mm, or in inches when asked. A note says where a size is from memory.",
    },
    failures: [
      {
        when: "the number stands alone",
        formula: '=DRILL.SIZE("7")',
        gives: "#VALUE!",
        says: "No. 7 or 7 mm?",
      },
      {
        when: "the text names no drill",
        formula: '=DRILL.SIZE("large")',
        gives: "#VALUE!",
        says: 'cannot read "large" as a drill',
      },
      {
        when: "there is no such number",
        formula: '=DRILL.SIZE("#81")',
        gives: "#N/A",
        says: "number drills run from No. 1 to No. 80",
      },
      {
        when: "the size is 0",
        formula: '=DRILL.SIZE("0 mm")',
        gives: "#NUM!",
        says: "size of the drill must be greater than 0, got 0",
      },
    ],
    examples: [
      { formula: '=DRILL.SIZE("F", "in")', value: 0.257 },
      { formula: '=DRILL.SIZE("#7", "in")', value: 0.201, source: "ASME B94.11M" },
      { formula: '=DRILL.SIZE("1/4")', value: 6.35, source: "1 in is 25.4 mm" },
      { formula: '=DRILL.SIZE("6.8 mm")', value: 6.8, source: "the size itself" },
    ],
    source,
    compute: (name, lengthUnit) => {
      const drill = drillNamed(name);
      return noted(sizeIn(drill, lengthUnit), drill);
    },
  }),
  declare({
    name: "DRILL.NEAREST",
    family: "hole",
    summary: "Name of the stock drill for a size.",
    params: [
      { name: "size", type: "number", unit: "length", doc: "Diameter wanted, above 0." },
      {
        name: "series",
        type: "text",
        options: ["any", "metric", "number", "letter", "fraction"],
        fallback: "any",
        doc: "Which drills to choose from; of one size metric is named before fraction, number and letter.",
      },
      {
        name: "rounding",
        type: "text",
        options: ["nearest", "under", "over"],
        fallback: "nearest",
        doc: "Half way between two the smaller is named. under and over allow a drill of just this size.",
      },
      unit,
    ],
    returns: {
      type: "text",
      doc: '"6.8 mm", "1/4", "No. 7" or "F", as DRILL.SIZE reads it. A note says when the size is outside the drills of the series.',
    },
    failures: [
      {
        when: "the size is not above 0",
        formula: "=DRILL.NEAREST(0)",
        gives: "#NUM!",
        says: "size must be greater than 0, got 0",
      },
      {
        when: "no drill is that large",
        formula: '=DRILL.NEAREST(12, "letter", "over")',
        gives: "#N/A",
        says: "no letter drill is 12 mm or over",
      },
      {
        when: "the series is another word",
        formula: '=DRILL.NEAREST(12, "gauge")',
        gives: "#VALUE!",
        says: "fraction",
      },
    ],
    examples: [
      {
        formula: '=DRILL.NEAREST(0.2, "number", "nearest", "in")',
        value: "No. 8",
        source: "ASME B94.11M: 0.199",
      },
      {
        formula: '=DRILL.NEAREST(0.2, "number", "over", "in")',
        value: "No. 7",
        source: "ASME B94.11M: 0.201",
      },
      {
        formula: '=DRILL.NEAREST(6.5, "letter", "under")',
        value: "E",
        source: "ASME B94.11M: 0.250 in, F is 0.257",
      },
      { formula: '=DRILL.NEAREST(8.5, "metric")', value: "8.5 mm", source: "the size itself" },
    ],
    source,
    compute: (size, series, rounding, lengthUnit) => {
      const drill = nearestDrill(size, series, rounding, lengthUnit);
      const outside = beyond(size, series, lengthUnit);
      return noted(
        drill.name,
        drill,
        outside && `the size is ${outside} ${series === "any" ? "stock" : series} drill`,
      );
    },
  }),
];
