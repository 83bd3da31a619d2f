/** What-if tables in the worker: the page is answered while a table is under way. */
import { expect, test } from "vitest";
import { cellName } from "../../src/engine/address.ts";
import { FarSide } from "../../src/engine/far-side.ts";
import type { Report } from "../../src/engine/packets.ts";
import { sheetFunctions } from "../../src/functions/index.ts";

const rows = 40;

/** A worker's side with a table of 40 squares, built in turn 1. Every look at the clock is 60 ms later. */
function withTable() {
  const reports: Report[] = [];
  const works: (() => void)[] = [];
  let time = 0;
  const now = () => {
    time += 60;
    return time;
  };
  const side = new FarSide(
    (message) => "turn" in message && reports.push(message),
    sheetFunctions,
    () => {},
    now,
    (work) => works.push(work),
  );
  const cells: [string, string][] = [
    ["A1", "2"],
    ["B1", "=A1*A1"],
  ];
  for (let row = 1; row <= rows; row++)
    cells.push([`D${row}`, String(row)], [`E${row}`, `=MULTIPLE.OPERATIONS($B$1,$A$1,D${row})`]);
  side.take({ order: "begin", names: {}, sheets: ["Job"] });
  side.take({ order: "part", sheet: 0, cells, values: [] });
  side.take({ order: "build", turn: 1 });
  const known = () => {
    const values = new Map<string, number>();
    for (const { packets } of reports)
      for (const { spots, numbers } of packets)
        for (const [i, spot] of spots.entries())
          values.set(cellName(Math.floor(spot / 1024), spot % 1024), numbers[i]!);
    return values;
  };
  return { side, reports, works, known };
}

test("a long table is reported slice by slice, and ends its turn when all of it is known", () => {
  const { reports, works, known } = withTable();
  expect(reports.at(-1)).toMatchObject({ turn: 1, ended: false, entered: true, of: rows });
  const first = reports.at(-1)!.done;
  let before = first;
  while (works.length > 0) {
    works.shift()!();
    const { done, ended } = reports.at(-1)!;
    if (ended) break;
    // A slice is over after 100 ms, which are two looks at the clock.
    expect(done).toBeGreaterThan(before);
    expect(done - before).toBeLessThanOrEqual(3);
    before = done;
  }
  expect(reports.at(-1)).toMatchObject({ turn: 1, ended: true });
  expect(reports.filter(({ ended }) => ended)).toHaveLength(1);
  expect(known().get("E40")).toBe(1600);
});

test("what is typed meanwhile is answered before the rest of the table, and the table is not forgotten", () => {
  const { side, reports, works, known } = withTable();
  side.take({
    order: "type",
    turn: 2,
    tell: [],
    edits: [{ sheet: "Job", row: 0, column: 7, text: "=A1+40" }],
  });
  expect(known().get("H1")).toBe(42);
  expect(reports.at(-1)).toMatchObject({ turn: 2, ended: false, of: rows });
  while (works.length > 0) works.shift()!();
  expect(reports.filter(({ ended }) => ended).map(({ turn }) => turn)).toEqual([2]);
  const values = known();
  for (let row = 1; row <= rows; row++) expect([row, values.get(`E${row}`)]).toEqual([row, row * row]);
});
