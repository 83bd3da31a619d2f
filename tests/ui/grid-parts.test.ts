import { expect, test } from "vitest";
import { asTabbed, asTable, fromTabbed, pastedTexts } from "../../src/ui/grid-clip.ts";
import {
  columnsInView,
  indexAt,
  indexes,
  reuse,
  reveal,
  rowsInView,
  withMerged,
} from "../../src/ui/grid-window.ts";
import { asNumbersHere } from "../../src/ui/pasted-numbers.ts";
import { roomOf, slotsOf } from "../../src/ui/slots.ts";

// Row heights and column edges are chosen so that the expected indexes can be counted off by hand.
const edges = [0, 100, 150, 250, 300];

test("the rows in view have four to spare on each side, and one length wherever they are", () => {
  expect(rowsInView(0, 280, 28, 200)).toEqual({ first: 0, last: 18 });
  expect(rowsInView(2800, 280, 28, 200)).toEqual({ first: 96, last: 114 });
  expect(rowsInView(99999, 280, 28, 200)).toEqual({ first: 181, last: 199 });
  expect(rowsInView(0, 280, 28, 5)).toEqual({ first: 0, last: 4 });
});

test("the columns in view have one to spare on each side", () => {
  expect(columnsInView(0, 90, edges)).toEqual({ first: 0, last: 1 });
  expect(columnsInView(160, 50, edges)).toEqual({ first: 1, last: 3 });
  expect([-5, 99, 100, 260, 999].map((x) => indexAt(x, edges))).toEqual([0, 0, 1, 3, 3]);
});

test("a merged range that shows has its first cell drawn", () => {
  const area = { top: 2, left: 0, bottom: 12, right: 3 };
  expect(withMerged({ first: 10, last: 20 }, { first: 2, last: 3 }, [area])).toEqual({
    rows: { first: 2, last: 20 },
    columns: { first: 0, last: 3 },
  });
  const away = { top: 2, left: 0, bottom: 5, right: 3 };
  expect(withMerged({ first: 10, last: 20 }, { first: 2, last: 3 }, [away]).rows.first).toBe(10);
});

test("the pinned row stands in its place among the others", () => {
  expect(indexes({ first: 3, last: 5 }, 0)).toEqual([0, 3, 4, 5]);
  expect(indexes({ first: 3, last: 5 }, 4)).toEqual([3, 4, 5]);
  expect(indexes({ first: 3, last: 5 }, 9)).toEqual([3, 4, 5, 9]);
});

test("rows that stay keep their slot, rows that come take a free one", () => {
  const first = reuse(new Map(), [0, 1, 2]);
  expect([...first]).toEqual([
    [0, 0],
    [1, 1],
    [2, 2],
  ]);
  const second = reuse(first, [0, 2, 3, 4]);
  expect([...second]).toEqual([
    [0, 0],
    [2, 2],
    [3, 1],
    [4, 3],
  ]);
});

test("a view scrolls only as far as it must", () => {
  expect(reveal(100, 200, 150, 180)).toBe(100);
  expect(reveal(100, 200, 50, 80)).toBe(50);
  expect(reveal(100, 200, 290, 320)).toBe(120);
  expect(reveal(100, 200, 150, 500)).toBe(150);
});

// RFC 4180 section 2, rules 5 to 7, with tabs for commas.
test("tabbed text is quoted where it must be, and read back as it was", () => {
  const cells = ["plain", 'say "so"', "two\nlines", "a\ttab", ""];
  const tabbed = asTabbed([cells.map((text) => ({ text, value: text })), [{ text: "7", value: 7 }]]);
  expect(tabbed).toBe('plain\t"say ""so"""\t"two\nlines"\t"a\ttab"\t\n7');
  expect(fromTabbed(tabbed)).toEqual([cells, ["7"]]);
  expect(fromTabbed("1\r\n2\r\n")).toEqual([["1"], ["2"]]);
  expect(fromTabbed('1/2" drill\tx')).toEqual([['1/2" drill', "x"]]);
  expect(fromTabbed("")).toEqual([]);
});

test("a table of our own comes back as typed, moved; any other is ignored for its text", () => {
  const table = asTable([[{ text: '=B2&"<mm>"', value: "1<mm>" }]], 1, 0);
  expect(table).toContain("1&lt;mm&gt;");
  expect(pastedTexts(table, "1<mm>", 3, 1)).toEqual({ rows: [['=C4&"<mm>"']], read: undefined });
  expect(pastedTexts("<table><tr><td>5</td></tr></table>", "6", 0, 0).rows).toEqual([["6"]]);
});

// What other programs write, in the ways of writing numbers that CLDR gives for en, de, fr and de-CH. A point is a decimal
// point always, as in a shop (ISO 80000-1, 7.3.2, has the comma and the point as decimal signs, and neither for thousands).
test.each([
  [["1,5", "x", "12"], ["1.5", "x", "12"], undefined],
  [
    ["1,5", "1.234", "2,5", "12.345", "3.5", "0,75"],
    ["1.5", "1.234", "2.5", "12.345", "3.5", "0.75"],
    undefined,
  ],
  [["1.234,5", "1.250"], ["1234.5", "1.250"], undefined],
  [["1\u00a0234,5", "1'234.5"], ["1234.5", "1234.5"], undefined],
  // Three figures after a comma may be thousands: that is said.
  [["1,234"], ["1.234"], "read 1,234 as 1.234"],
  [["20,445", "1,5", "2,125"], ["20.445", "1.5", "2.125"], "read 20,445 as 20.445 and 1 more the same way"],
  // They are thousands where the same block shows it, and nothing in it shows the other.
  [["1,234.5", "1,250", "1.125"], ["1234.5", "1250", "1.125"], "read 1,250 as 1250"],
  [["1,5", "1,234.5", "1,250"], ["1.5", "1234.5", "1.250"], "read 1,250 as 1.250"],
  [["=A1", "1/2-12 BSW", "20,40,60", "100,127,120", "1.234.567", ""], undefined, undefined],
])("numbers %j are pasted as %j, and the page says %s", (pasted, read, said) => {
  expect(asNumbersHere([pasted])).toEqual({ rows: [read ?? pasted], read: said });
});

test("the slots of a column have room for its longest fraction and unit", () => {
  const sheet = {
    name: "Tool",
    columns: {},
    rows: 200,
    columnCount: 26,
    cells: {},
    formats: {
      "B2:B4": { as: "length" },
      B5: { unit: "div" },
      B6: { unit: "rev/min" },
      C1: { as: "angle", places: 1 },
    },
    choices: {},
    notes: {},
    merged: [],
  } as const;
  const slots = slotsOf(sheet, "mm");
  expect(slots.get(1)).toEqual({ places: 4, unit: 3 });
  expect(slots.get(2)).toEqual({ places: 1, unit: 0 });
  const short = { integer: "0", fraction: ".02", degree: false, unit: "mm" };
  const full = { integer: "0", fraction: ".0200", degree: false, unit: "mm" };
  const slot = slots.get(1)!;
  // Two figures of 0.65 em are missing.
  expect(roomOf(short, slot, 9).fraction - roomOf(full, slot, 9).fraction).toBe(130);
  expect(roomOf(full, slot, 2)).toEqual({ fraction: 0, lane: 0 });
});
