/**
 * MULTIPLE.OPERATIONS in the engine. Expected values are closed forms, or the same cells reckoned directly with the
 * inputs typed in.
 */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { cellName, parseCell } from "../../src/engine/address.ts";
import { Engine, type EngineContent } from "../../src/engine/engine.ts";
import { makePlugin } from "../../src/engine/plugin.ts";
import type { CellValue } from "../../src/engine/values.ts";
import { declare, type SheetFunction } from "../../src/functions/declare.ts";
import { sheetFunctions } from "../../src/functions/index.ts";

const faults: string[] = [];

/** Rows of numbers 1, 2, ... as many as asked. */
const steps = declare({
  name: "STEPS",
  family: "units",
  summary: "Numbers from one up.",
  params: [{ name: "count", type: "number", doc: "How many." }],
  returns: { type: "block", doc: "One in a row." },
  failures: [],
  examples: [{ formula: "=STEPS(1)", value: 1 }],
  source: "counting",
  compute: (count) => Array.from({ length: count }, (_, i) => [i + 1]),
});

const doubtful = declare({
  name: "DOUBT",
  family: "units",
  summary: "A number, doubtful above ten.",
  params: [{ name: "value", type: "number", doc: "Any." }],
  returns: { type: "number", doc: "The same." },
  failures: [],
  examples: [{ formula: "=DOUBT(1)", value: 1 }],
  source: "made up",
  compute: (value) => (value > 10 ? { value, note: "more than ten" } : value),
});

const functions: readonly SheetFunction[] = [
  ...sheetFunctions.filter(({ family }) => family === "what if"),
  steps,
  doubtful,
];

function engineOf(cells: Record<string, string>, names: EngineContent["names"] = {}, later = false): Engine {
  return new Engine(
    {
      sheets: [
        { name: "Job", cells },
        { name: "Other", cells: { A1: "4" } },
      ],
      names,
    },
    functions,
    (what, error) => faults.push(`${what}: ${String(error)}`),
    later,
  );
}

function at(engine: Engine, name: string): CellValue {
  const { row, column } = parseCell(name)!;
  return engine.value("Job", row, column);
}

function type(engine: Engine, texts: Record<string, string>): void {
  engine.setCells(Object.entries(texts).map(([name, text]) => ({ sheet: "Job", ...parseCell(name)!, text })));
}

describe("one and two inputs", () => {
  test("a cell shows what another would with its input replaced, also through cells between", () => {
    const engine = engineOf({
      A1: "3",
      B1: "=A1*A1",
      C1: "=B1+1",
      D1: "7",
      E1: "=MULTIPLE.OPERATIONS(C1,A1,D1)",
    });
    expect(at(engine, "E1")).toBe(50);
    expect(at(engine, "C1")).toBe(10);
  });

  test("two inputs are replaced at once", () => {
    const engine = engineOf({
      A1: "3",
      A2: "5",
      B1: "=A1*10+A2",
      E1: "=MULTIPLE.OPERATIONS(B1,A1,D1,A2,D2)",
      D1: "1",
      D2: "2",
    });
    expect(at(engine, "E1")).toBe(12);
  });

  test("text, truth values and empty cells are replacements as well", () => {
    const engine = engineOf({
      A1: "3",
      B1: '=IF(ISBLANK(A1),"none",A1&"")',
      D1: "word",
      D2: "TRUE",
      E1: "=MULTIPLE.OPERATIONS(B1,A1,D1)",
      E2: "=MULTIPLE.OPERATIONS(B1,A1,D2)",
      E3: "=MULTIPLE.OPERATIONS(B1,A1,D3)",
      E4: "=MULTIPLE.OPERATIONS(B1,A1,2*4)",
    });
    expect(["E1", "E2", "E3", "E4"].map((cell) => at(engine, cell))).toEqual(["word", "TRUE", "none", "8"]);
  });

  test("references through ranges, names and other sheets are replaced too", () => {
    const engine = engineOf(
      {
        A1: "1",
        A2: "2",
        A3: "3",
        B1: "=SUM(A1:A3)+Other!A1",
        B2: "=total*2",
        E1: "=MULTIPLE.OPERATIONS(total,second,10)",
        E2: "=MULTIPLE.OPERATIONS(B2,Other!A1,0)",
      },
      { total: "Job!B1", second: "Job!A2" },
    );
    expect(at(engine, "E1")).toBe(18);
    expect(at(engine, "E2")).toBe(12);
  });

  test("it works inside a larger formula and in a formula that is tried out", () => {
    const engine = engineOf({
      A1: "3",
      B1: "=A1^2",
      E1: "=MULTIPLE.OPERATIONS(B1,A1,5)-MULTIPLE.OPERATIONS(B1,A1,4)",
      E2: "=MULTIPLE.OPERATIONS(B1,A1,MULTIPLE.OPERATIONS(B1,A1,2))",
    });
    expect(at(engine, "E1")).toBe(9);
    expect(at(engine, "E2")).toBe(16);
    expect(engine.evaluate("=MULTIPLE.OPERATIONS(B1,A1,6)+1")).toBe(37);
    expect(engine.evaluate("=MULTIPLE.OPERATIONS(B1,A1,MULTIPLE.OPERATIONS(B1,A1,3))")).toBe(81);
  });

  test("a result that does not depend on the input stays what it is", () => {
    const engine = engineOf({ A1: "3", B1: "5", E1: "=MULTIPLE.OPERATIONS(B1,A1,9)" });
    expect(at(engine, "E1")).toBe(5);
  });
});

describe("live", () => {
  const table = {
    A1: "3",
    A2: "10",
    A3: "0",
    B1: "=IF(A3=1,A1+A2,A1*A2)",
    C1: "2",
    D1: "=MULTIPLE.OPERATIONS(B1,A1,C1)",
    D2: "=SUM(D1:D1)+1",
  };

  test("when the replacement, another input or a formula on the way changes", () => {
    const engine = engineOf(table);
    expect(at(engine, "D1")).toBe(20);
    type(engine, { C1: "4" });
    expect([at(engine, "D1"), at(engine, "D2")]).toEqual([40, 41]);
    type(engine, { A2: "100" });
    expect(at(engine, "D1")).toBe(400);
    type(engine, { A3: "1" });
    expect(at(engine, "D1")).toBe(104);
    type(engine, { B1: "=A1-A2" });
    expect([at(engine, "D1"), at(engine, "D2")]).toEqual([-96, -95]);
  });

  test("also when the result itself keeps its value, since only the replaced one takes the branch that changed", () => {
    const engine = engineOf({
      A1: "1",
      A2: "5",
      B1: "=IF(A1>2,A2,0)",
      D1: "=MULTIPLE.OPERATIONS(B1,A1,3)",
      D2: "=D1*2",
    });
    expect([at(engine, "D1"), at(engine, "D2")]).toEqual([5, 10]);
    type(engine, { A2: "6" });
    expect(at(engine, "B1")).toBe(0);
    expect([at(engine, "D1"), at(engine, "D2")]).toEqual([6, 12]);
  });

  test("a cell that is emptied or filled in a range on the way counts", () => {
    const engine = engineOf({ A1: "1", B1: "=SUM(A1:A9)", D1: "=MULTIPLE.OPERATIONS(B1,A1,100)" });
    expect(at(engine, "D1")).toBe(100);
    type(engine, { A5: "7" });
    expect(at(engine, "D1")).toBe(107);
    type(engine, { A5: "" });
    expect(at(engine, "D1")).toBe(100);
  });

  test("a block on the way grows with the input, as far as there is room", () => {
    const engine = engineOf({
      A1: "2",
      B1: "=STEPS(A1)",
      C1: "=SUM(B1:B20)",
      D1: "=MULTIPLE.OPERATIONS(C1,A1,6)",
    });
    expect(at(engine, "C1")).toBe(3);
    expect(at(engine, "D1")).toBe(21);
    type(engine, { B5: "in the way" });
    expect(at(engine, "C1")).toBe(3);
    expect(at(engine, "D1")).toMatchObject({ error: "#SPILL!" });
    type(engine, { B5: "" });
    expect(at(engine, "D1")).toBe(21);
  });

  test("a table of a table follows both, and each feeds other formulas", () => {
    const engine = engineOf({
      A1: "2",
      A2: "3",
      B1: "=A1+A2",
      C1: "=MULTIPLE.OPERATIONS(B1,A1,10)",
      C2: "=MULTIPLE.OPERATIONS(B1,A1,20)",
      D1: "=C1*C2",
      E1: "=MULTIPLE.OPERATIONS(D1,A2,1)",
    });
    // C1 = 10 + A2, C2 = 20 + A2, D1 = their product, E1 with A2 = 1
    expect([at(engine, "D1"), at(engine, "E1")]).toEqual([13 * 23, 11 * 21]);
    type(engine, { B1: "=A1-A2" });
    expect([at(engine, "D1"), at(engine, "E1")]).toEqual([7 * 17, 9 * 19]);
  });

  test("a table waits for another one that its result reads, whatever its own input is", () => {
    const engine = engineOf({
      A1: "2",
      A2: "3",
      A3: "7",
      B1: "=A1*A2",
      // Entered first, reckoned last.
      A4: "=MULTIPLE.OPERATIONS(D1,A3,100)",
      C1: "=MULTIPLE.OPERATIONS(B1,A1,10)",
      D1: "=C1+A3",
    });
    expect(at(engine, "A4")).toBe(130);
    type(engine, { A2: "4" });
    expect(at(engine, "A4")).toBe(140);
  });

  test("a change of names or sheets keeps the table right", () => {
    const cells = { A1: "3", B1: "=A1+1", D1: "=MULTIPLE.OPERATIONS(out,in,9)" };
    const engine = engineOf(cells, { out: "Job!B1", in: "Job!A1" });
    expect(at(engine, "D1")).toBe(10);
    engine.load({ sheets: [{ name: "Job", cells }], names: { out: "Job!A1", in: "Job!A1" } });
    expect(at(engine, "D1")).toBe(9);
  });
});

describe("errors", () => {
  test("an error on the way is the error of the cell, and so is one in a replacement", () => {
    const engine = engineOf({
      A1: "2",
      B1: "=10/A1",
      D1: "=MULTIPLE.OPERATIONS(B1,A1,0)",
      C2: "=NA()",
      D2: "=MULTIPLE.OPERATIONS(B1,A1,C2)",
      D3: "=IFERROR(D1,-1)",
      D4: '=MULTIPLE.OPERATIONS(B1,A1,"x")',
    });
    expect(at(engine, "D1")).toMatchObject({ error: "#DIV/0!", message: "division by zero" });
    expect(at(engine, "D2")).toMatchObject({ error: "#N/A" });
    expect(at(engine, "D3")).toBe(-1);
    expect(at(engine, "D4")).toMatchObject({ error: "#VALUE!" });
  });

  test("a cell that tabulates itself, or what depends on it, is a cycle", () => {
    const engine = engineOf({
      A1: "2",
      B1: "=A1*2",
      D1: "=MULTIPLE.OPERATIONS(D1,A1,5)",
      E1: "=MULTIPLE.OPERATIONS(F1,A1,5)",
      F1: "=E1+B1",
    });
    for (const cell of ["D1", "E1", "F1"])
      expect(at(engine, cell)).toMatchObject({ error: "#CYCLE!", message: "the cell depends on itself" });
  });

  test.each([
    ["=MULTIPLE.OPERATIONS(1,A1,2)", "formula_cell must be a cell"],
    ["=MULTIPLE.OPERATIONS(A1,nothing,2)", "row_cell must be one cell: nothing is not known"],
    ["=MULTIPLE.OPERATIONS(A1,wide,2)", "row_cell must be one cell: wide is Job!A1:A3"],
    ["=MULTIPLE.OPERATIONS(A1,A2,A1:A3)", "row_replacement must be one cell or value"],
    ["=MULTIPLE.OPERATIONS(A1,A2)", "row_replacement is missing"],
    ["=MULTIPLE.OPERATIONS(A1,A2,3,,4)", "column_cell is missing"],
  ])("%s says what is wrong", (formula, message) => {
    const engine = engineOf({ A1: "1", A2: "2", A3: "3" }, { wide: "Job!A1:A3" });
    expect(engine.evaluate(formula)).toMatchObject({
      error: "#VALUE!",
      message: expect.stringContaining(message),
    });
  });

  test("outside a job, in somebody's own sheet, the function says that it cannot work", () => {
    const fake = {
      CellError: class {
        constructor(
          readonly type: string,
          readonly message: string,
        ) {}
      },
    };
    const engine = {
      ...fake,
      FunctionPlugin: class {},
      SimpleRangeValue: class {},
      ErrorType: { VALUE: "VALUE" },
    };
    const { plugin } = makePlugin({ ...engine, FunctionArgumentType: {} } as never, functions.slice(0, 1));
    const ref = {
      type: "CELL_REFERENCE",
      reference: { toSimpleCellAddress: () => ({ sheet: 0, row: 0, col: 0 }) },
    };
    const host = Object.create((plugin as unknown as { prototype: object }).prototype);
    host.evaluateAst = () => 1;
    expect(host.call_MULTIPLE_OPERATIONS({ args: [ref, ref, ref] }, {})).toMatchObject({
      type: "VALUE",
      message: "MULTIPLE.OPERATIONS works in the cells of a job only",
    });
  });
});

test("a doubtful value keeps its note", () => {
  const engine = engineOf({
    A1: "2",
    B1: "=DOUBT(A1)",
    D1: "=MULTIPLE.OPERATIONS(B1,A1,11)",
    D2: "=MULTIPLE.OPERATIONS(B1,A1,9)",
  });
  expect(engine.note("Job", 0, 3)).toBe("more than ten");
  expect(engine.note("Job", 1, 3)).toBeUndefined();
});

describe("in slices", () => {
  const rows = 30;
  const cells: Record<string, string> = { A1: "2", A2: "5", B1: "=A1*A2", H1: `=SUM(D1:D${rows})` };
  for (let row = 1; row <= rows; row++) {
    cells[`C${row}`] = String(row);
    cells[`D${row}`] = `=MULTIPLE.OPERATIONS($B$1,$A$1,C${row})`;
  }
  const sum = (factor: number) => (factor * rows * (rows + 1)) / 2;

  test("values come bit by bit, and those that are to come are stale and no value to reckon with", () => {
    const engine = engineOf(cells, {}, true);
    expect(engine.tablesLeft).toBe(rows);
    expect(engine.isStale("Job", 0, 3)).toBe(true);
    expect(engine.isStale("Job", 0, 7)).toBe(true);
    expect(at(engine, "H1")).toMatchObject({ error: "#N/A", message: "not reckoned yet" });
    let turns = 0;
    while (!engine.reckonTables(() => true)) {
      turns += 1;
      expect(engine.tablesLeft).toBe(rows - turns);
    }
    expect(turns).toBe(rows - 1);
    expect([at(engine, "D30"), at(engine, "H1")]).toEqual([150, sum(5)]);
    expect(engine.isStale("Job", 0, 7)).toBe(false);
  });

  test("after an edit the last value stands there until the new one is known", () => {
    const engine = engineOf(cells, {}, true);
    engine.reckonTables();
    type(engine, { A2: "7" });
    expect(at(engine, "D30")).toBe(150);
    expect(engine.isStale("Job", 29, 3)).toBe(true);
    expect([at(engine, "H1"), engine.isStale("Job", 0, 7)]).toEqual([sum(5), true]);
    expect(engine.isStale("Job", 0, 1)).toBe(false);
    engine.reckonTables();
    expect([at(engine, "D30"), at(engine, "H1")]).toEqual([210, sum(7)]);
  });

  test("an edit in the middle of it starts what depends on it again, and nothing is mixed up", () => {
    const engine = engineOf(cells, {}, true);
    engine.reckonTables(() => true);
    type(engine, { A2: "3", C2: "100" });
    engine.reckonTables();
    expect([at(engine, "D1"), at(engine, "D2"), at(engine, "H1")]).toEqual([3, 300, sum(3) + 98 * 3]);
  });

  test("an input that is typed over does not start its own table again", () => {
    const engine = engineOf(cells, {}, true);
    engine.reckonTables();
    type(engine, { A1: "8" });
    expect(engine.tablesLeft).toBe(0);
    expect([at(engine, "B1"), at(engine, "D30")]).toEqual([40, 150]);
  });
});

test("any small sheet gives by replacement what it gives when the inputs are typed", () => {
  const engine = engineOf({
    G1: "=MULTIPLE.OPERATIONS(C3,A1,F1)",
    G2: "=MULTIPLE.OPERATIONS(C3,A2,F2,A3,F3)",
  });
  const place = fc.constantFrom("A1", "A2", "A3", "B1", "B2", "B3", "C1", "C2", "C3");
  const term = fc.oneof(place, fc.integer({ min: -3, max: 9 }).map(String), fc.constant("SUM(A1:A3)"));
  // Cells read only cells of rows and columns before them, so that there is no cycle.
  const formula = fc.tuple(term, fc.constantFrom("+", "-", "*", "/"), term);
  const value = fc.oneof(fc.integer({ min: -5, max: 20 }).map(String), fc.constantFrom("", "word", "TRUE"));
  fc.assert(
    fc.property(
      fc.array(formula, { minLength: 6, maxLength: 6 }),
      fc.array(value, { minLength: 6, maxLength: 6 }),
      (formulas, values) => {
        const before = (cell: string, text: string) => (/^[A-C]\d$/.test(text) && text >= cell ? "A1" : text);
        const [A1, A2, A3, F1, F2, F3] = values as [string, string, string, string, string, string];
        const cells: Record<string, string> = {};
        for (const [i, [left, sign, right]] of formulas.entries()) {
          const name = cellName(i % 3, 1 + Math.floor(i / 3));
          cells[name] = `=${before(name, left)}${sign}${before(name, right)}`;
        }
        type(engine, { ...cells, A1, A2, A3, F1, F2, F3 });
        const plain = (value: CellValue) =>
          typeof value === "object" && value !== null ? value.error : value;
        const got = [plain(at(engine, "G1")), plain(at(engine, "G2"))];
        type(engine, { A1: F1 });
        const one = plain(at(engine, "C3"));
        type(engine, { A1, A2: F2, A3: F3 });
        expect(got).toEqual([one, plain(at(engine, "C3"))]);
      },
    ),
    { seed: 20261125, numRuns: 40 },
  );
}, 30_000);

test("nothing of it was a fault of the engine", () => {
  expect(faults).toEqual([]);
});

describe("a further sheet", () => {
  const cells = { A1: "3", B1: "=A1*2", C1: "=Later!A1+1", D1: "=MULTIPLE.OPERATIONS(B1,A1,10)" };
  const first = { name: "Job", cells };

  test("is taken over without what was there being reckoned again, and formulas that waited for it find it", () => {
    const names = {};
    let reckoned = 0;
    const counting = declare({
      ...doubtful,
      params: doubtful.params as never,
      compute: (value: number) => {
        reckoned += 1;
        return value;
      },
    });
    const withCount = { name: "Job", cells: { ...cells, E1: "=DOUBT(A1)" } };
    const engine = new Engine({ sheets: [withCount], names }, [...functions.slice(0, 2), counting], () => {});
    expect(at(engine, "C1")).toMatchObject({ error: "#REF!" });
    expect(reckoned).toBe(1);
    engine.load({
      sheets: [
        withCount,
        { name: "Later", cells: { A1: "=Job!B1", A2: "=MULTIPLE.OPERATIONS(A1,Job!A1,4)" } },
      ],
      names,
    });
    expect(reckoned).toBe(1);
    expect([at(engine, "C1"), at(engine, "D1")]).toEqual([7, 20]);
    expect(engine.value("Later", 1, 0)).toBe(8);
    engine.load({ sheets: [withCount], names });
    expect([at(engine, "B1"), at(engine, "D1"), engine.value("Later", 1, 0)]).toEqual([6, 20, null]);
  });

  test("is no reason to overlook what else is different", () => {
    const engine = new Engine({ sheets: [first], names: {} }, functions, () => {});
    const sheets = [
      { name: "Job", cells: { ...cells, A1: "4" } },
      { name: "Later", cells: { A1: "1" } },
    ];
    engine.load({ sheets, names: {} });
    expect([at(engine, "B1"), at(engine, "C1")]).toEqual([8, 2]);
    engine.load({ sheets: [...sheets, { name: "More", cells: {} }], names: { side: "Job!A1" } });
    expect(engine.evaluate("=side")).toBe(4);
  });
});
