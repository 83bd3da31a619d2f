import { expect, test } from "vitest";
import { moveFormula } from "../../src/job/formula-text.ts";
import { onSheet, rangeName, referencesOf } from "../../src/job/references.ts";

const names = { setover: "Setover!B5", passes: "'Pass plan'!A4:E15" };

test("references are found with their place, sheet and corners", () => {
  expect(referencesOf("=B2*$C$3", "Tool")).toEqual([
    { text: "B2", start: 1, sheet: "Tool", top: 1, left: 1, bottom: 1, right: 1 },
    { text: "$C$3", start: 4, sheet: "Tool", top: 2, left: 2, bottom: 2, right: 2 },
  ]);
  expect(referencesOf("=SUM('Pass plan'!C4:C15)", "Tool")).toEqual([
    { text: "'Pass plan'!C4:C15", start: 5, sheet: "Pass plan", top: 3, left: 2, bottom: 14, right: 2 },
  ]);
});

test("a name is a reference in either case, a function of the same letters is not", () => {
  const found = referencesOf("=FLANK.INFEED(depth, SETOVER) + setover(1)", "Tool", names);
  expect(found.map(({ text, sheet }) => [text, sheet])).toEqual([["SETOVER", "Setover"]]);
  expect(referencesOf("=passes", "Tool", names)[0]).toMatchObject({
    sheet: "Pass plan",
    top: 3,
    bottom: 14,
    right: 4,
  });
});

test("words in quotes, functions that look like cells and plain text hold no reference", () => {
  expect(referencesOf('=THREAD.PITCH("M12 B5")', "Tool")).toEqual([]);
  expect(referencesOf("=LOG10(2)", "Tool")).toEqual([]);
  expect(referencesOf("B5", "Tool")).toEqual([]);
});

test("a moved formula points as far from its new cell as from the old one", () => {
  expect(moveFormula("=B2+$B2+B$2+$B$2", 1, 1)).toBe("=C3+$B3+C$2+$B$2");
  expect(moveFormula("=SUM(Tool!A1:A3)", 2, 0)).toBe("=SUM(Tool!A3:A5)");
  expect(moveFormula('=B2&"B2"', 1, 0)).toBe('=B3&"B2"');
  expect(moveFormula("=A1", -1, 0)).toBe("=#REF!");
  expect(moveFormula("A1", 1, 1)).toBe("A1");
});

test("a formula is sent to its sheet where it names none", () => {
  expect(onSheet("=B2+Tool!B3+setover", "Pass plan")).toBe("='Pass plan'!B2+Tool!B3+setover");
});

test("a range of one cell has the name of the cell", () => {
  expect(rangeName({ top: 1, left: 1, bottom: 1, right: 1 })).toBe("B2");
  expect(rangeName({ top: 1, left: 1, bottom: 8, right: 2 })).toBe("B2:C9");
});
