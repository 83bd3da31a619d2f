import { describe, expect, test } from "vitest";
import { callAt, formulaParts, turnDollars, wordBefore } from "../../src/job/formula-parts.ts";

const said = (text: string) =>
  formulaParts(text).map(({ kind, from, to }) => `${kind} ${text.slice(from, to)}`);

describe("the parts of a formula", () => {
  test("are told apart by what they are", () => {
    expect(said("=IF(depth>$B$2, 'Set-over'!B4 * 1.5, \"none\")")).toEqual([
      "sign =",
      "function IF",
      "bracket (",
      "name depth",
      "sign >",
      "reference $B$2",
      "sign ,",
      "sheet 'Set-over'!",
      "reference B4",
      "sign *",
      "number 1.5",
      "sign ,",
      'text "none"',
      "bracket )",
    ]);
  });

  test("a word is a function only before a bracket", () => {
    expect(said("=SIN (1)+sin")).toContain("function SIN");
    expect(said("=SIN (1)+sin")).toContain("name sin");
  });

  test("text that is no formula has none", () => {
    expect(said("M12x1.5")).toEqual([]);
  });
});

describe("the call at the caret", () => {
  const text = "=ROUND(FLANK.INFEED(depth, setover), 2)";
  test.each([
    [text.indexOf("depth"), "FLANK.INFEED", 0],
    [text.indexOf("setover"), "FLANK.INFEED", 1],
    [text.indexOf(" 2"), "ROUND", 1],
    [text.indexOf("FLANK"), "ROUND", 0],
  ])("at %i is %s, argument %i", (caret, name, argument) => {
    expect(callAt(text, caret)).toMatchObject({ name, argument });
  });

  test("is none before the bracket, after it, or in plain text", () => {
    expect(callAt(text, 3)).toBeUndefined();
    expect(callAt(text, text.length)).toBeUndefined();
    expect(callAt("IF(1", 4)).toBeUndefined();
  });

  test("does not count commas in quotes or in an inline array", () => {
    expect(callAt('=THREAD.LIMIT("a,b",', 20)).toMatchObject({ argument: 1 });
    expect(callAt('=THREAD.LIMIT("a,b', 18)).toMatchObject({ argument: 0 });
    const array = "=WIRE.PICK(1,60,{1,2,3},";
    expect(callAt(array, array.indexOf("3"))).toMatchObject({ name: "WIRE.PICK", argument: 2 });
    expect(callAt(array, array.length)).toMatchObject({ argument: 3 });
  });

  test("is known while the closing bracket is still to be typed", () => {
    expect(callAt("=THREAD.MAJOR(", 14)).toEqual({ name: "THREAD.MAJOR", argument: 0, from: 1 });
  });
});

describe("completion", () => {
  test("knows the word before the caret", () => {
    expect(wordBefore("=1+THREAD.MA", 12)).toEqual({ from: 3, word: "THREAD.MA" });
    expect(wordBefore("=1+THREAD.MA", 5)).toEqual({ from: 3, word: "TH" });
  });

  test("offers nothing after a number, a bracket, in quotes or outside a formula", () => {
    for (const text of ["=12", "=SUM(", '="TH', "TH", "=A1:"])
      expect(wordBefore(text, text.length)).toBeUndefined();
  });
});

describe("dollar signs", () => {
  test("go round with each turn and the caret stays at the reference", () => {
    let text = "=B5*2";
    const seen = [];
    for (let turn = 0; turn < 4; turn++) {
      const turned = turnDollars(text, 2)!;
      expect(turned.caret).toBe(turned.text.indexOf("*"));
      text = turned.text;
      seen.push(text);
    }
    expect(seen).toEqual(["=$B$5*2", "=B$5*2", "=$B5*2", "=B5*2"]);
  });

  test("only the reference at the caret is turned", () => {
    expect(turnDollars("=A1+B2", 5)!.text).toBe("=A1+$B$2");
    expect(turnDollars("=A1+2", 5)).toBeUndefined();
    expect(turnDollars("A1", 1)).toBeUndefined();
  });
});
