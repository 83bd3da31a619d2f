/** What goes with copied and filled cells besides their texts. */
import { expect, test } from "vitest";
import { type Carried, withLooks } from "../../src/job/carry.ts";
import { withFormat } from "../../src/job/changes.ts";
import type { CellFormat, SheetDocument } from "../../src/job/document.ts";
import { formatOf } from "../../src/job/formats.ts";
import { madeDocument, madeSheet } from "./made.ts";
import { randomFrom } from "./random-work.ts";

const area = (top: number, left: number, bottom = top, right = left) => ({ top, left, bottom, right });

const sheetOf = (more: Partial<SheetDocument>) => madeSheet("A", {}, more);

/** The sheet after the cells at `from` have been carried to `goal`. */
function carried(
  sheet: SheetDocument,
  goal: ReturnType<typeof area>,
  from: ReturnType<typeof area>,
  { how = "copied", first = goal }: { how?: "copied" | "filled"; first?: { top: number; left: number } } = {},
  looks: Carried["looks"] = sheet,
): SheetDocument {
  const what = { looks, area: from, first: { row: first.top, column: first.left } };
  return withLooks(madeDocument([sheet]), "A", goal, what, how).sheets[0]!;
}

test("a cell carries its format, and a cell without one takes away what was there", () => {
  const sheet = sheetOf({ formats: { A1: { as: "dms", bold: true }, B2: { as: "length", shade: true } } });
  expect(carried(sheet, area(1, 1), area(0, 0)).formats).toEqual({
    A1: { as: "dms", bold: true },
    B2: { as: "dms", bold: true },
  });
  expect(carried(sheet, area(1, 1), area(4, 4)).formats).toEqual({ A1: { as: "dms", bold: true } });
});

test("neighbours of one format make one range, on a paste of a thousand cells too", () => {
  const sheet = sheetOf({ formats: { A1: { as: "dms" } } });
  expect(Object.keys(carried(sheet, area(0, 2, 499, 3), area(0, 0)).formats)).toEqual(["C1:D500", "A1"]);
  const columns = sheetOf({ formats: { "A1:A9": { as: "dms" }, "B1:B9": { as: "length" } } });
  expect(Object.keys(carried(columns, area(9, 3, 17, 4), area(0, 0, 8, 1)).formats)).toEqual([
    "D10:D18",
    "E10:E18",
    "A1:A9",
    "B1:B9",
  ]);
});

test("nothing is written where cells look so already, and nothing is the same document", () => {
  const sheet = sheetOf({ formats: { "A1:A9": { as: "dms" } }, notes: { A1: "n", A2: "n" } });
  expect(carried(sheet, area(1, 0), area(0, 0))).toBe(sheet);
  const document = madeDocument([sheetOf({})]);
  const what = { looks: document.sheets[0]!, area: area(0, 0), first: { row: 4, column: 4 } };
  expect(withLooks(document, "A", area(4, 4, 9, 9), what, "copied")).toBe(document);
});

test("a blank stays a blank, and keeps how it reads its number if it says so", () => {
  const formats: Record<string, CellFormat> = {
    A1: { as: "dms", bold: true, role: "key" },
    B1: { role: "input" },
    C1: { role: "input", as: "length", places: 3 },
  };
  const sheet = sheetOf({ formats, choices: { C1: ["1", "2"] }, notes: { C1: "over the wires" } });
  const after = carried(sheet, area(0, 1, 0, 2), area(0, 0));
  expect(formatOf(after, 0, 1)).toEqual({ as: "dms", bold: true, role: "input" });
  expect(formatOf(after, 0, 2)).toEqual({ as: "length", places: 3, bold: true, role: "input" });
  expect([after.choices, after.notes]).toEqual([sheet.choices, sheet.notes]);
  expect(carried(sheet, area(0, 1, 0, 2), area(8, 8))).toBe(sheet);
  // Elsewhere a copy of a blank is a blank.
  expect(formatOf(carried(sheet, area(5, 5), area(0, 1)), 5, 5)).toEqual({ role: "input" });
});

test("a copy carries the note and the choices, or takes them away; filling leaves them", () => {
  const sheet = sheetOf({
    notes: { A1: "turned twice", B2: "gone" },
    choices: { A1: ["left", "right"], B2: ["up"] },
  });
  const copy = carried(sheet, area(1, 1), area(0, 0));
  expect(copy.notes).toEqual({ A1: "turned twice", B2: "turned twice" });
  expect(copy.choices.B2).toEqual(["left", "right"]);
  const none = carried(sheet, area(1, 1), area(7, 7));
  expect([none.notes, none.choices]).toEqual([{ A1: "turned twice" }, { A1: ["left", "right"] }]);
  expect(carried(sheet, area(1, 1), area(0, 0), { how: "filled" })).toBe(sheet);
});

test("upwards and to the left the formats of the source are repeated from its end", () => {
  const sheet = sheetOf({ formats: { A4: { as: "dms" }, A5: { as: "length" } } });
  const first = { top: 3, left: 0 };
  const after = carried(sheet, area(0, 0, 4, 0), area(3, 0, 4, 0), { how: "filled", first });
  expect([0, 1, 2, 3, 4].map((row) => formatOf(after, row, 0).as)).toEqual([
    "length",
    "dms",
    "length",
    "dms",
    "length",
  ]);
});

test("whatever ranges and cells lie there, each cell of the goal has the format of its source and no other cell changes", () => {
  const random = randomFrom(20261128);
  const below = (count: number) => Math.floor(random() * count);
  const some = (): ReturnType<typeof area> => {
    const [row, column] = [below(6), below(6)];
    return area(row, column, row + below(4), column + below(4));
  };
  const parts: readonly CellFormat[] = [
    { as: "dms" },
    { as: "length", places: 2 },
    { bold: true },
    { bold: true, as: "angle" },
    { shade: true, border: ["top"] },
  ];
  for (let round = 0; round < 400; round++) {
    let document = madeDocument([sheetOf({})]);
    for (let n = 0; n < 6; n++) {
      const { top, left, bottom, right } = some();
      const last = random() < 0.5 ? "" : `:${String.fromCharCode(65 + right)}${bottom + 1}`;
      const range = `${String.fromCharCode(65 + left)}${top + 1}${last}`;
      document = withFormat(document, "A", range, parts[below(parts.length)]!);
    }
    const before = document.sheets[0]!;
    const [from, goal] = [some(), some()];
    const after = carried(before, goal, from);
    for (let row = 0; row < 12; row++) {
      for (let column = 0; column < 12; column++) {
        const inGoal = row >= goal.top && row <= goal.bottom && column >= goal.left && column <= goal.right;
        const source = [
          from.top + ((row - goal.top) % (from.bottom - from.top + 1)),
          from.left + ((column - goal.left) % (from.right - from.left + 1)),
        ] as const;
        expect(formatOf(after, row, column)).toEqual(
          inGoal ? formatOf(before, ...source) : formatOf(before, row, column),
        );
      }
    }
  }
});
