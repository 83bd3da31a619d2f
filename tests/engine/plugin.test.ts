import { afterEach, describe, expect, test } from "vitest";
import { Engine } from "../../src/engine/engine.ts";
import { samples } from "./samples.ts";

function engineWith(cells: Record<string, string>): { engine: Engine; faults: string[] } {
  const faults: string[] = [];
  const engine = new Engine({ sheets: [{ name: "Work", cells }], names: {} }, samples, (what) =>
    faults.push(what),
  );
  return { engine, faults };
}

function reckoned(formula: string, cells: Record<string, string> = {}) {
  return engineWith(cells).engine.evaluate(formula);
}

describe("arguments", () => {
  test("a blank argument and an empty cell both count as left out", () => {
    expect(reckoned("=TEST.ADD(1)")).toBe(11);
    expect(reckoned("=TEST.ADD(1,)")).toBe(11);
    expect(reckoned("=TEST.ADD(1,B5)")).toBe(11);
    expect(reckoned("=TEST.ADD(1,B5:B5,4)")).toBe(15);
    expect(reckoned("=TEST.ADD(1,0)")).toBe(1);
    expect(reckoned('=TEST.SIDE("M10",B5)')).toBe("M10/external");
  });

  test("a required argument that is left out is named", () => {
    const missing = { error: "#VALUE!", message: expect.stringContaining("first is missing") };
    expect(reckoned("=TEST.ADD()")).toMatchObject(missing);
    expect(reckoned("=TEST.ADD(,2)")).toMatchObject(missing);
    expect(reckoned("=TEST.ADD(C9)")).toMatchObject(missing);
    expect(reckoned("=TEST.SUM(C1:C9)")).toMatchObject({
      error: "#VALUE!",
      message: expect.stringContaining("gears"),
    });
  });

  test("numbers may be written as text, and nothing else passes for a number", () => {
    expect(reckoned('=TEST.ADD("12",0)')).toBe(12);
    expect(reckoned("=TEST.ADD(A1,0)", { A1: "'12.5" })).toBe(12.5);
    expect(reckoned("=TEST.ADD(50%,0)")).toBe(0.5);
    expect(reckoned("=TEST.ADD(TRUE,0)")).toMatchObject({
      error: "#VALUE!",
      message: "first must be a number, got TRUE",
    });
    expect(reckoned('=TEST.ADD("M10")')).toMatchObject({
      error: "#VALUE!",
      message: 'first must be a number, got text "M10"',
    });
    expect(reckoned('=TEST.ADD(1,"")')).toMatchObject({
      error: "#VALUE!",
      message: 'second must be a number, got text ""',
    });
    expect(reckoned('=TEST.ADD("0,5")')).toMatchObject({ message: expect.stringContaining("write 0.5") });
  });

  test("option words are matched without regard to case, and listed when none matches", () => {
    expect(reckoned('=TEST.SIDE("M10","INTERNAL")')).toBe("M10/internal");
    expect(reckoned('=TEST.SIDE("M10","inside")')).toMatchObject({
      error: "#VALUE!",
      message: 'side must be one of "external", "internal", got text "inside"',
    });
    expect(reckoned("=TEST.SIDE(7)")).toBe("7/external");
    expect(reckoned("=TEST.SIDE(FALSE)")).toMatchObject({ error: "#VALUE!" });
  });

  test("a range larger than one cell is no single value", () => {
    const cells = { A1: "1", A2: "2" };
    expect(reckoned("=TEST.ADD(A1:A1,0)", cells)).toBe(1);
    expect(reckoned("=TEST.ADD(A1:A2)", cells)).toMatchObject({
      error: "#VALUE!",
      message: "first must be one value, got a range of 2 x 1 cells",
    });
  });

  test("a range of numbers loses its blanks, and text in it is refused", () => {
    expect(reckoned("=TEST.SUM(A1:B3)", { A1: "20", B2: "30", A3: "'50" })).toBe(100);
    expect(reckoned("=TEST.SUM({1,2;3,4})")).toBe(10);
    expect(reckoned("=TEST.SUM(7)")).toBe(7);
    expect(reckoned("=TEST.SUM(A1:A2)", { A1: "20", A2: "gear" })).toMatchObject({
      error: "#VALUE!",
      message: 'gears must hold numbers only, got text "gear"',
    });
    expect(reckoned("=TEST.SUM(A1:A2)", { A1: "20", A2: "=1/0" })).toMatchObject({ error: "#DIV/0!" });
  });

  test("too many arguments are refused with the signature", () => {
    expect(reckoned("=TEST.ADD(1,2,3,4)")).toMatchObject({
      error: "#VALUE!",
      message: "TEST.ADD takes at most 3 arguments, got 4: TEST.ADD(first, [second], [third])",
    });
  });

  test("an error in an argument is handed on with the cell where it began", () => {
    const { engine } = engineWith({ A1: "=TEST.POISON(9)", B1: "=TEST.ADD(A1)", C1: "=B1*2" });
    const error = { error: "#NUM!", message: "pitch must be above 0, got -1" };
    expect(engine.value("Work", 0, 0)).toEqual(error);
    expect(engine.value("Work", 0, 1)).toEqual({ ...error, from: "Work!A1" });
    expect(engine.value("Work", 0, 2)).toEqual({ ...error, from: "Work!A1" });
  });

  test("in an array formula a function takes each cell of a range", () => {
    const { engine } = engineWith({ A1: "1", A2: "2", A3: "3", B1: "=ARRAYFORMULA(TEST.ADD(A1:A3,100))" });
    expect([0, 1, 2].map((row) => engine.value("Work", row, 1))).toEqual([101, 102, 103]);
  });
});

describe("failures", () => {
  test("each kind of refusal becomes its error value with the message", () => {
    expect(reckoned("=TEST.POISON(9)")).toEqual({ error: "#NUM!", message: "pitch must be above 0, got -1" });
    expect(reckoned("=TEST.POISON(10)")).toEqual({
      error: "#VALUE!",
      message: "designation cannot be read: M10z",
    });
    expect(reckoned("=TEST.POISON(11)")).toEqual({ error: "#N/A", message: "no wire fits" });
  });

  test("a result that is not finite never leaves a function", () => {
    expect(reckoned("=TEST.POISON(4)")).toMatchObject({ error: "#NUM!" });
    expect(reckoned("=TEST.POISON(5)")).toMatchObject({ error: "#NUM!" });
  });

  test.each([1, 2, 3, 6, 7, 8])(
    "a declaration that breaks its promise (%i) is an internal error, logged, and harms nothing else",
    (kind) => {
      const { engine, faults } = engineWith({
        A1: `=TEST.POISON(${kind})`,
        A2: "=TEST.ADD(1,1)",
        A3: "=A2+1",
      });
      expect(engine.value("Work", 0, 0)).toMatchObject({
        error: "#ERROR!",
        message: expect.stringContaining("internal error"),
      });
      expect(faults).toContain("fault in TEST.POISON");
      expect(engine.value("Work", 2, 0)).toBe(3);
      engine.setCells([{ sheet: "Work", row: 1, column: 0, text: "5" }]);
      expect(engine.value("Work", 2, 0)).toBe(6);
    },
  );
});

describe("notes", () => {
  test("the note of a doubtful value is kept beside the plain value", () => {
    const { engine } = engineWith({
      A1: "8.78",
      B1: "=TEST.DOUBTFUL(A1)",
      C1: "=ROUND(TEST.DOUBTFUL(A1),1)",
      D1: "=B1+1",
    });
    expect(engine.value("Work", 0, 1)).toBe(8.78);
    expect(engine.note("Work", 0, 1)).toBe("bore 8.78 is above 8");
    expect(engine.note("Work", 0, 2)).toBe("bore 8.78 is above 8");
    expect(engine.note("Work", 0, 3)).toBeUndefined();
  });

  test("a stale note vanishes when the cell is reckoned again without one", () => {
    const { engine } = engineWith({ A1: "9", A2: "1", B1: "=IF(A2>0,TEST.DOUBTFUL(A1),5)" });
    expect(engine.note("Work", 0, 1)).toBe("bore 9 is above 8");
    engine.setCells([{ sheet: "Work", row: 0, column: 0, text: "8.5" }]);
    expect(engine.note("Work", 0, 1)).toBe("bore 8.5 is above 8");
    engine.setCells([{ sheet: "Work", row: 0, column: 0, text: "7" }]);
    expect(engine.note("Work", 0, 1)).toBeUndefined();
    engine.setCells([{ sheet: "Work", row: 0, column: 0, text: "9" }]);
    expect(engine.note("Work", 0, 1)).toBe("bore 9 is above 8");
    engine.setCells([{ sheet: "Work", row: 1, column: 0, text: "0" }]);
    expect(engine.value("Work", 0, 1)).toBe(5);
    expect(engine.note("Work", 0, 1)).toBeUndefined();
  });

  test("a note stays while other cells change", () => {
    const { engine } = engineWith({ A1: "9", B1: "=TEST.DOUBTFUL(A1)" });
    engine.setCells([{ sheet: "Work", row: 7, column: 7, text: "x" }]);
    expect(engine.note("Work", 0, 1)).toBe("bore 9 is above 8");
    engine.setCells([{ sheet: "Work", row: 0, column: 1, text: "" }]);
    expect(engine.note("Work", 0, 1)).toBeUndefined();
  });
});

describe("blocks", () => {
  // The engine recovers from what breaks it by being built anew: here nothing may break it.
  const logged: string[] = [];
  const engineWith = (cells: Record<string, string>) => ({
    engine: new Engine({ sheets: [{ name: "Work", cells }], names: {} }, samples, (what) =>
      logged.push(what),
    ),
  });
  afterEach(() => expect(logged.splice(0)).toEqual([]));

  const column = (engine: Engine, count: number) =>
    Array.from({ length: count }, (_, row) => engine.value("Work", row + 1, 0));
  const set = (engine: Engine, row: number, col: number, text: string) =>
    engine.setCells([{ sheet: "Work", row, column: col, text }]);

  test("a block spills from its cell and follows its arguments, larger and smaller", () => {
    const { engine } = engineWith({ A1: "3", A2: "=TEST.ROWS(A1)", D1: "=SUM(A2:A9)" });
    expect(column(engine, 5)).toEqual([1, 2, 3, null, null]);
    expect(engine.value("Work", 2, 1)).toBe("row 2");
    expect(engine.value("Work", 1, 1)).toBeNull();
    set(engine, 0, 0, "5");
    expect(column(engine, 6)).toEqual([1, 2, 3, 4, 5, null]);
    expect(engine.value("Work", 0, 3)).toBe(15);
    set(engine, 0, 0, "2");
    expect(column(engine, 5)).toEqual([1, 2, null, null, null]);
    expect(engine.value("Work", 0, 3)).toBe(3);
    expect(engine.spilledFrom("Work", 2, 1)).toEqual({ row: 1, column: 0 });
    expect(engine.spilledFrom("Work", 1, 0)).toBeUndefined();
    expect(engine.spilledFrom("Work", 3, 0)).toBeUndefined();
  });

  test("a block sized by a formula that is itself not reckoned yet gets its room", () => {
    const { engine } = engineWith({ A2: "=TEST.ROWS(C1)", C1: "=C2+1", C2: "=C3*1", C3: "2" });
    expect(column(engine, 4)).toEqual([1, 2, 3, null]);
  });

  test("a block sized by another block settles", () => {
    const { engine } = engineWith({ A1: "2", A2: "=TEST.ROWS(A1)", D2: "=TEST.ROWS(SUM(A2:A9))" });
    expect(engine.value("Work", 3, 3)).toBe(3);
    set(engine, 0, 0, "3");
    expect(engine.value("Work", 6, 3)).toBe(6);
    expect(engine.value("Work", 7, 3)).toBeNull();
  });

  test("a block that has no room says what it needs and what is in the way, and spills when that is gone", () => {
    const { engine } = engineWith({ A1: "3", A2: "=TEST.ROWS(A1)", A4: "mine", C1: "=A2" });
    expect(engine.value("Work", 1, 0)).toEqual({
      error: "#SPILL!",
      message: "needs 3 x 2 cells, but Work!A4 is not empty",
    });
    expect(engine.value("Work", 3, 0)).toBe("mine");
    expect(engine.value("Work", 0, 2)).toMatchObject({ error: "#SPILL!" });
    set(engine, 3, 0, "");
    expect(column(engine, 4)).toEqual([1, 2, 3, null]);
    expect(engine.value("Work", 0, 2)).toBe(1);
  });

  test("typing into a block blocks it, and emptying the cell lets it spill again", () => {
    const { engine } = engineWith({ A1: "3", A2: "=TEST.ROWS(A1)" });
    set(engine, 2, 0, "mine");
    expect(engine.value("Work", 2, 0)).toBe("mine");
    expect(engine.value("Work", 1, 0)).toMatchObject({
      error: "#SPILL!",
      message: expect.stringContaining("Work!A3"),
    });
    expect(engine.value("Work", 3, 0)).toBeNull();
    set(engine, 2, 0, "");
    expect(column(engine, 4)).toEqual([1, 2, 3, null]);
  });

  test("a block that outgrows its place into a taken cell is blocked, and comes back", () => {
    const { engine } = engineWith({ A1: "2", A2: "=TEST.ROWS(A1)", A5: "taken" });
    set(engine, 0, 0, "4");
    expect(engine.value("Work", 1, 0)).toEqual({
      error: "#SPILL!",
      message: "needs 4 x 2 cells, but Work!A5 is not empty",
    });
    expect(engine.value("Work", 4, 0)).toBe("taken");
    set(engine, 0, 0, "3");
    expect(column(engine, 4)).toEqual([1, 2, 3, "taken"]);
  });

  test("a block that fails shows one error and spills again later", () => {
    const { engine } = engineWith({ A1: "3", A2: "=TEST.ROWS(A1)" });
    set(engine, 0, 0, "-1");
    expect(engine.value("Work", 1, 0)).toEqual({
      error: "#NUM!",
      message: "rows must be at least 1, got -1",
    });
    expect(engine.value("Work", 2, 0)).toBeNull();
    set(engine, 0, 0, "2");
    expect(column(engine, 3)).toEqual([1, 2, null]);
  });

  test("inside other functions a block is an array", () => {
    const { engine } = engineWith({ A1: "3", B1: "=SUM(TEST.ROWS(A1))", C1: "=INDEX(TEST.ROWS(A1),2,2)" });
    expect(engine.value("Work", 0, 1)).toBe(6);
    set(engine, 0, 0, "4");
    expect(engine.value("Work", 0, 1)).toBe(10);
    expect(engine.value("Work", 0, 2)).toBe("row 2");
    expect(engine.evaluate("=TEST.ROWS(2)")).toEqual([
      [1, null],
      [2, "row 2"],
    ]);
  });

  test("an array in parentheses or of the engine's own functions follows its source", () => {
    const { engine } = engineWith({
      A1: "2",
      A2: "=(TEST.ROWS(A1))",
      D1: "=TRANSPOSE(H1:H3)",
      H1: "7",
      H3: "9",
    });
    set(engine, 0, 0, "4");
    expect(column(engine, 5)).toEqual([1, 2, 3, 4, null]);
    expect(engine.value("Work", 0, 3)).toBe(7);
    expect(engine.spilledFrom("Work", 0, 4)).toEqual({ row: 0, column: 3 });
  });
});
