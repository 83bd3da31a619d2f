/** Slabs packed as one text are to everyone the record that they were. */
import { expect, test } from "vitest";
import { Engine } from "../../src/engine/engine.ts";
import { type Cells, eachPacked, PackedCells, packedOf } from "../../src/engine/packed-cells.ts";
import { formulasIn, fromParts, inParts, LaidOver } from "../../src/engine/texts.ts";

/** Rows from `first` on: figures, words, a formula, and holes. */
function rows(first: number, count: number): Record<string, string> {
  const cells: Record<string, string> = {};
  for (let row = first; row < first + count; row++) {
    cells[`A${row}`] = String(row / 8);
    if (row % 5 > 0) cells[`B${row}`] = String(-row);
    if (row % 7 === 0) cells[`C${row}`] = `=A${row}*2`;
    cells[`D${row}`] = row % 3 === 0 ? "1,5" : "007";
  }
  return cells;
}

test("What is packed comes out as it went in", () => {
  const cells = rows(65, 64);
  const packed = packedOf(cells)!;
  expect(new PackedCells(packed).cells).toEqual(cells);
  expect(Object.keys(new PackedCells(packed).cells)).toEqual(Object.keys(cells));
  expect(packed).toMatchObject({ top: 64, count: Object.keys(cells).length, last: { row: 127, column: 3 } });
  expect(packed.notable).toEqual(
    Object.fromEntries(Object.entries(cells).filter(([, text]) => /[=,]/.test(text))),
  );
  const told: Record<string, string> = {};
  eachPacked(packed, (row, column, text) => (told[`${"ABCD"[column]}${row + 1}`] = text));
  expect(told).toEqual(cells);
});

test("Nothing is packed that would be lost by it, or that would take more room", () => {
  const spoilt = (text: string) => packedOf({ ...rows(1, 64), B7: text });
  expect(spoilt("a\u0001b")).toBeUndefined();
  expect(spoilt("a\u0002b")).toBeUndefined();
  expect(spoilt("")).toBeUndefined();
  expect(spoilt("a\tb\nc")).toBeDefined();
  expect(packedOf({ A1: "1", B2: "2" })).toBeUndefined();
  expect(
    packedOf(Object.fromEntries(Array.from({ length: 64 }, (_, i) => [`ZZ${i + 1}`, "1"]))),
  ).toBeUndefined();
});

function laid(pieces: readonly Cells[]): LaidOver {
  const all: Cells = Object.assign({}, ...pieces);
  return new LaidOver(
    (cell) => all[cell],
    pieces.map((piece, i) => (i % 2 === 0 ? new PackedCells(packedOf(piece)!) : piece)),
  );
}

test("Texts go to another thread in parts, with what was typed over them", () => {
  const texts = laid([rows(1, 64), rows(65, 64), rows(129, 64)]);
  const before = texts.size;
  texts.set("A3", "typed");
  texts.set("C7", "");
  texts.set("C14", "=1");
  texts.set("Z500", "=2");
  texts.set("A70", "also");
  texts.delete("A71");
  expect(texts.size).toBe(before - 1);
  const { packed, others } = inParts(texts);
  expect(packed).toHaveLength(2);
  const there = fromParts(structuredClone(packed), structuredClone([...others]));
  const sorted = (all: Iterable<[string, string]>) => [...all].sort(([a], [b]) => a.localeCompare(b));
  expect(sorted(there)).toEqual(sorted(texts));
  expect(there.size).toBe(texts.size);
  for (const cell of ["A3", "C7", "C14", "Z500", "A70", "A71", "D9", "A999"])
    expect([cell, there.get(cell)]).toEqual([cell, texts.get(cell)]);
  const formulas = sorted([...texts].filter(([, text]) => text[0] === "="));
  expect(sorted(formulasIn(texts))).toEqual(formulas);
  expect(sorted(formulasIn(there))).toEqual(formulas);
});

test("An engine that begins with very many figures has the values of one that enters them one by one", () => {
  const pieces = Array.from({ length: 120 }, (_, i) => rows(i * 64 + 1, 64));
  const cells: Record<string, string> = Object.assign({}, ...pieces);
  const others = {
    F1: "=SUM(A1:B7680)",
    F2: "=COUNT(C1:C7680)",
    F3: "=SEQUENCE(2,2)",
    G3: "in the way",
    F7: "=G7",
    G7: "'=no",
  };
  const texts = laid(pieces);
  for (const [cell, text] of Object.entries(others)) texts.set(cell, text);
  texts.set("A5", "1000000");
  const names = { all: "One!A1:A7680" };
  const made = (content: object) => new Engine({ sheets: [content as never], names }, [], () => {});
  const whole = made({ name: "One", cells: { ...cells, ...others, A5: "1000000" } });
  const packed = made({ name: "One", cells: {}, texts });
  // A name that is a number keeps the engine from beginning with them.
  const slow = made({ name: "1", cells: { ...cells, ...others, A5: "1000000" } });
  const edits = (sheet: string) => [
    { sheet, row: 5, column: 0, text: "=nope" },
    { sheet, row: 8, column: 1, text: "12" },
  ];
  for (const round of [0, 1]) {
    for (const [row, column] of [
      [0, 5],
      [1, 5],
      [2, 5],
      [6, 5],
      [13, 2],
      [4, 0],
      [2, 0],
      [8, 1],
      [7679, 0],
      [7679, 3],
      [2, 6],
    ] as const) {
      const value = slow.value("1", row, column);
      const at = (one: Engine) => JSON.stringify(one.value("One", row, column))?.replaceAll("One!", "1!");
      expect([round, row, column, at(whole), at(packed)]).toEqual([
        round,
        row,
        column,
        JSON.stringify(value),
        JSON.stringify(value),
      ]);
    }
    whole.setCells(edits("One"));
    packed.setCells(edits("One"));
    slow.setCells(edits("1"));
  }
  expect(whole.value("One", 0, 5)).toMatchObject({ error: "#NAME?" });
}, 60_000);
