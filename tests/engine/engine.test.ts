import { describe, expect, test } from "vitest";
import { Engine, type EngineContent } from "../../src/engine/engine.ts";
import { samples } from "./samples.ts";

const quiet = () => {};

function engineWith(cells: Record<string, string>, more: Partial<EngineContent> = {}) {
  const faults: string[] = [];
  const engine = new Engine({ sheets: [{ name: "Work", cells }], names: {}, ...more }, samples, (what) =>
    faults.push(what),
  );
  return { engine, faults };
}
const at = (row: number, column: number, text: string, sheet = "Work") => ({ sheet, row, column, text });

describe("sheets and names", () => {
  const two: EngineContent = {
    sheets: [
      { name: "Work", cells: { A1: "2", B1: "='Change gears'!A1*A1", C1: "=depth+unit_2" } },
      { name: "Change gears", cells: { A1: "=SUM(gears)", A2: "20", A3: "30" } },
    ],
    names: { depth: "Work!A1", gears: "'Change gears'!A2:A9", unit_2: "'Change gears'!A2" },
  };

  test("formulas reach other sheets and names, whatever the order", () => {
    const engine = new Engine(two, samples);
    expect(engine.value("Work", 0, 1)).toBe(100);
    expect(engine.value("Work", 0, 2)).toBe(22);
    engine.setCells([at(3, 0, "50", "Change gears")]);
    expect(engine.value("Work", 0, 1)).toBe(200);
  });

  test("a name that the engine cannot take is left out and logged, the rest works", () => {
    const { engine, faults } = engineWith(
      { A1: "=1+1" },
      { names: { M10: "Work!A1", gone: "Nowhere!A1", broken: "A1" } },
    );
    expect(engine.value("Work", 0, 0)).toBe(2);
    expect(faults.length).toBeGreaterThanOrEqual(2);
  });

  test("a reference to a sheet that does not exist is an error that says so", () => {
    const { engine } = engineWith({ A1: "=Gone!B2" });
    expect(engine.value("Work", 0, 0)).toMatchObject({
      error: "#REF!",
      message: expect.stringContaining("sheet"),
    });
  });

  test("another content replaces everything", () => {
    const engine = new Engine(two, samples);
    engine.load({ sheets: [{ name: "Only", cells: { A1: "=1" } }], names: {} });
    expect(engine.value("Only", 0, 0)).toBe(1);
    expect(engine.value("Work", 0, 1)).toBeNull();
  });

  test("a sheet is added beside one that a formula names and nobody made", () => {
    const faults: string[] = [];
    const names = {};
    const engine = new Engine({ sheets: [{ name: "Work", cells: { A1: "1" } }], names }, samples, (what) =>
      faults.push(what),
    );
    engine.setCells([at(0, 1, "=Gone!A1")]);
    const work = { name: "Work", cells: { A1: "1", B1: "=Gone!A1" } };
    engine.load({ sheets: [work, { name: "Later", cells: { A1: "4", B1: "=A1*2" } }], names });
    expect(engine.value("Later", 0, 1)).toBe(8);
    engine.setCells([at(0, 0, "5", "Later")]);
    expect(engine.value("Later", 0, 1)).toBe(10);
    expect(faults).toEqual([]);
  });

  test("sheets named like numbers or words of the language keep their places", () => {
    const sheets = ["2", "1", "toString", "Sheet 10"].map((name, i) => ({
      name,
      cells: { A1: String(i), B1: "='2'!A1+'1'!A1*10" },
    }));
    const engine = new Engine({ sheets, names: {} }, samples);
    expect(sheets.map(({ name }) => engine.value(name, 0, 0))).toEqual([0, 1, 2, 3]);
    expect(engine.value("toString", 0, 1)).toBe(10);
  });
});

describe("a formula in the context of the sheets", () => {
  test("gives values, arrays and errors, and changes nothing", () => {
    const { engine } = engineWith({ A1: "2", A2: "x" }, { names: { depth: "Work!A1" } });
    expect(engine.evaluate("=depth*2")).toBe(4);
    expect(engine.evaluate("=A1:A3")).toEqual([[2], ["x"], [null]]);
    expect(engine.evaluate("=A1:A1")).toBe(2);
    expect(engine.evaluate("=1/0")).toMatchObject({ error: "#DIV/0!", message: "division by zero" });
    expect(engine.evaluate("=1+")).toMatchObject({ error: "#ERROR!" });
    expect(engine.evaluate("=B1")).toBeNull();
    expect(engine.evaluate("5")).toBe(5);
    expect(engine.note("Work", 0, 0)).toBeUndefined();
    engine.evaluate("=TEST.DOUBTFUL(9)");
    expect(engine.note("Work", 0, 0)).toBeUndefined();
  });

  test("is read as on the sheet that is named", () => {
    const sheets = [
      { name: "One", cells: { A1: "1" } },
      { name: "Two", cells: { A1: "2" } },
    ];
    const engine = new Engine({ sheets, names: {} }, samples);
    expect(engine.evaluate("=A1")).toBe(1);
    expect(engine.evaluate("=A1", "Two")).toBe(2);
  });
});

describe("errors", () => {
  test("a circle is an error in words and recovers", () => {
    const { engine } = engineWith({ A1: "=B1", B1: "=A1" });
    expect(engine.value("Work", 0, 0)).toMatchObject({
      error: "#CYCLE!",
      message: "the cell depends on itself",
    });
    engine.setCells([at(0, 1, "4")]);
    expect(engine.value("Work", 0, 0)).toBe(4);
  });

  test("the cell where an error began is told on other sheets too, in quotes where the name needs them", () => {
    const sheets = [
      { name: "Work", cells: { A1: "='Change gears'!A1" } },
      { name: "Change gears", cells: { A1: "=1/0" } },
    ];
    const engine = new Engine({ sheets, names: {} }, samples);
    expect(engine.value("Work", 0, 0)).toMatchObject({ from: "'Change gears'!A1" });
    expect(engine.value("Change gears", 0, 0)).not.toHaveProperty("from");
  });
});

describe("what breaks the engine", () => {
  test("a formula that throws inside the engine is kept out with a reason, and the rest carries on", () => {
    const { engine, faults } = engineWith({ A1: "3", A2: '=REPT("x",A1)', A3: "=A1+1" });
    expect(engine.value("Work", 1, 0)).toBe("xxx");
    engine.setCells([at(0, 0, "1000000000")]);
    expect(faults.length).toBeGreaterThan(0);
    expect(engine.value("Work", 1, 0)).toMatchObject({
      error: "#ERROR!",
      message: expect.stringContaining("cannot be reckoned"),
    });
    expect(engine.value("Work", 2, 0)).toBe(1000000001);
    engine.setCells([at(0, 0, "2")]);
    expect(engine.value("Work", 1, 0)).toBe("xx");
    expect(engine.value("Work", 2, 0)).toBe(3);
  });

  test("a content that breaks the engine when it is opened is opened all the same", () => {
    const { engine } = engineWith({
      A1: "1000000000",
      A2: '=REPT("x",A1)',
      A3: '=REPT("y",A1)',
      A4: "=A1+1",
      A5: "=TEST.ROWS(3)",
    });
    for (const row of [1, 2]) expect(engine.value("Work", row, 0)).toMatchObject({ error: "#ERROR!" });
    expect(engine.value("Work", 3, 0)).toBe(1000000001);
    expect(engine.value("Work", 6, 0)).toBe(3);
  });

  test("a formula tried out that throws is an error, and the sheet stays whole", () => {
    const { engine } = engineWith({ A1: "1000000000", A2: "=A1+1" });
    expect(engine.evaluate('=REPT("x",A1)')).toMatchObject({ error: "#ERROR!" });
    expect(engine.value("Work", 1, 0)).toBe(1000000001);
  });

  test("building anew from the contents gives the same values", () => {
    const cells = {
      A1: "3",
      A2: "=TEST.ROWS(A1)",
      D1: "=SUM(A2:A9)",
      E1: "=TEST.DOUBTFUL(9)",
      F1: "'12",
      F2: "=F1&1",
    };
    const { engine } = engineWith(cells);
    const all = () =>
      Array.from({ length: 8 }, (_, row) =>
        Array.from({ length: 8 }, (_, column) => [
          engine.value("Work", row, column),
          engine.note("Work", row, column),
        ]),
      );
    const before = all();
    engine.rebuild();
    expect(all()).toEqual(before);
    expect(before[0]![3]).toEqual([6, undefined]);
  });
});

describe("the room of the engine", () => {
  test("grows when a cell or a reference lies beyond it", () => {
    const { engine } = engineWith({ A1: "=B9000", A2: "=SUM(A3:A5)" });
    expect(engine.value("Work", 0, 0)).toBeNull();
    engine.setCells([at(8999, 1, "7")]);
    expect(engine.value("Work", 0, 0)).toBe(7);
    engine.setCells([at(4, 600, "8"), at(1, 1, "=WC5")]);
    expect(engine.value("Work", 1, 1)).toBe(8);
    expect(engine.evaluate("=B9000+WC5")).toBe(15);
    expect(engine.evaluate("=ZZ100000")).toBeNull();
  });

  test("ends where a sheet ends", () => {
    const { engine } = engineWith({});
    expect(() => engine.setCells([at(100_000, 0, "1")])).toThrow("within 100000 rows");
    expect(() => engine.setCells([at(0, 702, "1")])).toThrow("702 columns");
    expect(() => engine.setCells([at(0, 0, "1", "Gone")])).toThrow('no sheet "Gone"');
    expect(engine.value("Work", 30_000, 0)).toBeNull();
  });
});

test("two engines do not see each other's functions", () => {
  const first = new Engine(
    { sheets: [{ name: "Work", cells: { A1: "=TEST.ADD(1,2)" } }], names: {} },
    samples,
  );
  const second = new Engine(
    { sheets: [{ name: "Work", cells: { A1: "=TEST.ADD(1,2)" } }], names: {} },
    [],
    quiet,
  );
  expect(first.value("Work", 0, 0)).toBe(3);
  expect(second.value("Work", 0, 0)).toMatchObject({ error: "#NAME?" });
});

test("IF reckons the branch that it takes, and is otherwise what the engine has", () => {
  const { engine, faults } = engineWith({ A1: "1", B1: "5", B2: "6" });
  expect(engine.evaluate("=IF(A1,B1,TEST.POISON(1))")).toBe(5);
  expect(engine.evaluate("=IF(A1>1,TEST.POISON(1),B2)")).toBe(6);
  expect(faults).toEqual([]);
  expect(engine.evaluate("=IF(A1>1,2)")).toBe(false);
  expect(engine.evaluate("=IF(1/0,2,3)")).toMatchObject({ error: "#DIV/0!" });
  expect(engine.evaluate('=IF("text",2,3)')).toMatchObject({ error: "#VALUE!" });
  expect(engine.evaluate("=IF(C9,2,3)")).toBe(3);
  expect(engine.evaluate("=ARRAYFORMULA(IF(B1:B2>5,1,0))")).toEqual([[0], [1]]);
});
