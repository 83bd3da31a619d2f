/** DRAW.LINES: plots. */
import { Unreadable } from "../thread/failures.ts";
import { declare, type Param, type SheetFunction } from "./declare.ts";

const more = (name: string) =>
  ({
    name,
    type: "numbers",
    optional: true,
    doc: "Values of another series, as many as x has.",
  }) as const satisfies Param;

const mostPoints = 5000;

export const drawLinesFunctions: readonly SheetFunction[] = [
  declare({
    name: "DRAW.LINES",
    family: "drawing",
    summary: "Plot of up to four series as lines or columns, with axes in round steps.",
    params: [
      { name: "x", type: "numbers", doc: "Range of x values; one at least." },
      { name: "y", type: "numbers", doc: "Range of values of the first series, as many as x has." },
      more("second"),
      more("third"),
      more("fourth"),
      {
        name: "titles",
        type: "text",
        fallback: "",
        doc: 'Words with semicolons between: x axis; y axis; name of each series, as "pass; slide travel, mm; plan; cut".',
      },
      {
        name: "as",
        type: "text",
        options: ["lines", "columns"],
        fallback: "lines",
        doc: "lines, or columns side by side.",
      },
    ],
    returns: { type: "drawing", doc: "As text: how many points of what." },
    failures: [
      {
        when: "a series is shorter or longer than x",
        formula: "=DRAW.LINES({1;2;3},{4;5})",
        gives: "#VALUE!",
        says: "y must hold as many values as x, 3, got 2",
      },
    ],
    examples: [
      { formula: "=DRAW.LINES({1;2;3},{4;5;6})", value: "Plot of 3 points" },
      {
        formula: '=DRAW.LINES({1;2;3},{4;5;6},{3;3;2},,,"pass; travel, mm; plan; cut","columns")',
        value: "Columns, 3 points each, of plan, cut over pass",
      },
    ],
    source: "common practice, no source",
    compute: (x, y, second, third, fourth, titles, as) => {
      const given = { y, second, third, fourth };
      const [xTitle = "", yTitle = "", ...names] = titles.split(";").map((word) => word.trim());
      const series = Object.entries(given).flatMap(([name, values]) => {
        if (values === undefined) return [];
        if (values.length !== x.length) {
          throw new Unreadable(
            `${name} must hold as many values as x, ${x.length}, got ${values.length}; blanks are passed over`,
          );
        }
        return [{ y: values }];
      });
      if (x.length > mostPoints)
        throw new RangeError(`x must be at most ${mostPoints} values, got ${x.length}`);
      const named = series.map((one, i) => ({
        ...one,
        name: names[i] || (i === 0 && yTitle) || `series ${i + 1}`,
      }));
      const points = `${x.length} ${x.length === 1 ? "point" : "points"}`;
      const what = as === "columns" ? `Columns, ${points}` : `Plot of ${points}`;
      const of =
        names.length > 0 || yTitle !== "" ? ` each, of ${named.map((one) => one.name).join(", ")}` : "";
      return {
        value: `${what}${of}${xTitle && ` over ${xTitle}`}`,
        figure: { kind: "lines", as, x, series: named, xTitle, yTitle },
      };
    },
  }),
];
