/** Every drawing of every template that ships, at the size it has on its sheet, for threads drawn by seeded chance. */
import { beforeAll, expect, test } from "vitest";
import "../../src/ui/tokens.css";
import { columnName, parseCell, parseRange } from "../../src/engine/address.ts";
import type { SheetDocument } from "../../src/job/document.ts";
import { readJob } from "../../src/job/file.ts";
import { createJob } from "../../src/job/job.ts";
import { namedArea } from "../../src/job/named.ts";
import { threads } from "./figures.ts";
import { faults, openPlate, show } from "./measured.ts";

beforeAll(openPlate);

const files = import.meta.glob<string>("../../sheets/*.json", {
  query: "?raw",
  import: "default",
  eager: true,
});

const many = 200;

/** Place and frame of each drawing of a sheet, px: rows are 28 high, columns 96 wide unless they say. */
function framesOf({ cells, merged, columns }: SheetDocument) {
  return Object.entries(cells).flatMap(([name, text]) => {
    const at = text.startsWith("=DRAW.") ? parseCell(name) : undefined;
    if (!at) return [];
    const areas = merged.flatMap((range) => parseRange(range) ?? []);
    const area = areas.find(({ top, left }) => top === at.row && left === at.column) ?? {
      top: at.row,
      bottom: at.row,
      left: at.column,
      right: at.column,
    };
    let width = 0;
    for (let column = area.left; column <= area.right; column++) width += columns[columnName(column)] ?? 96;
    return [{ ...at, name, width: width - 1, height: (area.bottom - area.top + 1) * 28 - 1 }];
  });
}

const drawnIn = Object.entries(files)
  .map(([path, text]) => ({ file: path.replace(/^.*\/|\.json$/g, ""), document: readJob(text) }))
  .filter(({ document }) => document.sheets.some((sheet) => framesOf(sheet).length > 0));

test("some templates draw", () => {
  expect(drawnIn.length).toBeGreaterThan(3);
});

test.each(drawnIn)(
  "in $file no text lies over another and nothing leaves the frame",
  ({ document }) => {
    const job = createJob(document);
    const thread = namedArea(job, "thread");
    const chosen = thread ? threads(many) : ["as shipped"];
    let seen = 0;
    for (const text of chosen) {
      if (thread) job.setCells([{ sheet: thread.sheet, row: thread.top, column: thread.left, text }]);
      for (const sheet of document.sheets) {
        for (const { row, column, name, width, height } of framesOf(sheet)) {
          const { figure } = job.cell(sheet.name, row, column);
          // A thread that this job cannot cut shows an error there instead.
          if (!figure) continue;
          seen += 1;
          expect([text, sheet.name, name, faults(show(figure, width, height))]).toEqual([
            text,
            sheet.name,
            name,
            [],
          ]);
        }
      }
    }
    expect(seen).toBeGreaterThan(thread ? chosen.length / 2 : 0);
  },
  400_000,
);
