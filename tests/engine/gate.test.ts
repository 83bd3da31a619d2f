import { describe, expect, test } from "vitest";
import { Engine } from "../../src/engine/engine.ts";
import { tokens } from "../../src/engine/formula.ts";
import { enter, limits } from "../../src/engine/gate.ts";
import { samples } from "./samples.ts";

function refusal(formula: string): string {
  const entry = enter(formula);
  return entry.kind === "refused" ? entry.reason : `let in as ${JSON.stringify(entry)}`;
}

function cellFor(typed: string) {
  const engine = new Engine(
    { sheets: [{ name: "Work", cells: { A1: typed, A2: "=A1" } }], names: {} },
    samples,
    () => {},
  );
  return { value: engine.value("Work", 0, 0), seen: engine.value("Work", 1, 0) };
}

describe("what is typed without an equals sign", () => {
  test.each([
    ["0.02", 0.02],
    ["-3", -3],
    ["+5", 5],
    ["1e-3", 0.001],
    ["1E5", 100000],
    [".5", 0.5],
    ["5.", 5],
    [" 7 ", 7],
    ["12%", 0.12],
    ["0.1", 0.1],
  ])("%s is the number %d", (typed, value) => {
    expect(cellFor(typed)).toEqual({ value, seen: value });
  });

  test.each([
    "1/4-20",
    "1 1/2",
    "1-8-12",
    "12.03.24",
    "1:10",
    "0,5",
    "1,234",
    "1e400",
    "0x10",
    "Infinity",
    "NaN",
    "$5",
    "5 mm",
    "%",
    "-",
    " text with spaces ",
    "(3)",
    "2026-11-25",
  ])("%s stays the text it is", (typed) => {
    expect(cellFor(typed)).toEqual({ value: typed, seen: typed });
  });

  test("TRUE and FALSE are truth values in any letter case", () => {
    expect([cellFor("TRUE").value, cellFor("false").value, cellFor(" True ").value]).toEqual([
      true,
      false,
      true,
    ]);
  });

  test("a leading apostrophe makes anything text and does not show", () => {
    expect(cellFor("'12").value).toBe("12");
    expect(cellFor("'=A2").value).toBe("=A2");
    expect(cellFor("''twice").value).toBe("'twice");
    expect(cellFor("'").value).toBe("");
  });
});

describe("formulas that are let in", () => {
  const reckoned = (formula: string) => cellFor(formula).value;

  test("spellings that the engine alone cannot read or store work", () => {
    expect(reckoned("=1E-7*1E7")).toBe(1);
    expect(reckoned("=2.50*.5")).toBe(1.25);
    expect(reckoned("=1+\u00a02")).toBe(3);
    expect(reckoned('="say ""half"" angle"')).toBe('say "half" angle');
    expect(reckoned('="C:\\dir"&"""')).toMatchObject({ error: "#ERROR!" });
    expect(reckoned('="C:\\dir\\"')).toBe("C:\\dir\\");
    expect(reckoned('=LEN("""")')).toBe(1);
    expect(reckoned('="1E5"&1E2')).toBe("1E5100");
    expect(reckoned("=sum(1,2)")).toBe(3);
  });

  test("TRUE and FALSE are known as words and as functions", () => {
    expect(reckoned("=IF(TRUE,1,2)+IF(FALSE(),1,2)")).toBe(3);
  });

  test("arithmetic keeps full doubles, and comparisons are exact", () => {
    expect(reckoned("=0.1+0.2")).toBe(0.1 + 0.2);
    expect(reckoned("=1-0.99999999999995")).toBe(1 - 0.99999999999995);
    expect(reckoned("=1/3")).toBe(1 / 3);
    expect(reckoned("=0.1+0.2=0.3")).toBe(false);
    expect(reckoned("=0.5+0.25=0.75")).toBe(true);
    expect(reckoned("=2>1")).toBe(true);
    expect(reckoned("=1<=1")).toBe(true);
    expect(reckoned("=1>1")).toBe(false);
    expect(reckoned("=1<>1")).toBe(false);
    expect(reckoned("=-1<0")).toBe(true);
  });

  test("no text is a date in arithmetic either", () => {
    for (const text of ["1/4-20", "1 1/2", "12.03.24", "1:10", "2026-11-25", "$5"]) {
      expect([text, reckoned(`="${text}"+0`)]).toMatchObject([text, { error: "#VALUE!" }]);
    }
  });

  test("wildcards in the criterion of a comparison are refused, not silently taken as letters", () => {
    expect(refusal('=COUNTIF(A1:A9,"M*")')).toContain("no wildcards");
    expect(refusal('=SUMIF(B1:B9,"?",C1:C9)')).toContain("no wildcards");
    expect(enter('=COUNTIF(A1:A9,">0")').kind).toBe("formula");
    expect(enter('=IF(A1="*",1,2)').kind).toBe("formula");
  });

  test("a pattern of many stars in a cell cannot hang the sheet", () => {
    const engine = new Engine(
      {
        sheets: [
          { name: "Work", cells: { A1: "a".repeat(3000), B1: "*a*a*a*a*a*a*a*b", C1: "=COUNTIF(A1:A1,B1)" } },
        ],
        names: {},
      },
      samples,
    );
    expect(engine.value("Work", 0, 2)).toBe(0);
  });
});

describe("formulas that are refused keep their text out of the engine and give a reason", () => {
  test.each([
    ["=", "nothing follows"],
    ["= ", "nothing follows"],
    ["=(1+2", "the ( at character 2 is not closed"],
    ["=1+2)", "the ) at character 5 closes nothing"],
    ["={1,2)", "does not fit"],
    ['="abc', "no closing quote"],
    ["='Tool A1", "is not closed"],
    ["=A1 @ 3", "character 5, @"],
    ["=SUM(B1:ZZZ40000)", "past the last"],
    ["=SUM(A1:A100001)", "row 100001 is past the last one, 100000"],
    ["=AAA1", "column AAA is past the last one, ZZ"],
    ["=SUM(A1:ZZ20000)", "may hold 100000 cells"],
    ["=COUNTIF($A$1:$Z$5000,1)", "may hold 100000 cells"],
    ["=SUM('My sheet'!A1:'My sheet'!ZZ9000)", "may hold 100000 cells"],
    ["=SUM(1:100001)", "past the last"],
    ["=SEQUENCE(30000,1000)", "SEQUENCE may make 100000"],
    ['=REPT("x",1e9)', "REPT may make 32767"],
    [`=${"(".repeat(65)}1${")".repeat(65)}`, "nested 64 deep, here 65"],
    [`=1${"+1".repeat(501)}`, "500 operators, this one has 501"],
    [`=${"-".repeat(600)}1`, "500 operators"],
    [`=SUM(${"1,".repeat(5000)}1)`, "8192 characters"],
  ])("%.40s", (formula, reason) => {
    expect(refusal(formula)).toContain(reason);
    const { value, seen } = cellFor(formula);
    expect(value).toMatchObject({ error: "#ERROR!", message: expect.stringContaining(reason) });
    expect(seen).toEqual({ ...(value as object), from: "Work!A1" });
  });

  test("the limits themselves are let in", () => {
    expect(cellFor(`=${"(".repeat(limits.nesting)}1${")".repeat(limits.nesting)}`).value).toBe(1);
    expect(cellFor(`=0${"+1".repeat(limits.operators)}`).value).toBe(500);
    expect(cellFor("=SUM(B1:Z4000)").value).toBe(0);
    expect(cellFor("=SUM(B1:B20000)").value).toBe(0);
    expect(cellFor("=SUM(ZZ1:ZZ9)").value).toBe(0);
    expect(cellFor(`=SUM(${"1,".repeat(4000)}1)`).value).toBe(4001);
  });

  test.each(["=1+", "=*2", "=SUM(1,,2))", "=1 2", "=A1:", "=THREAD..(", "=1..2", "=,"])(
    "%s cannot be read",
    (formula) => {
      expect(cellFor(formula).value).toMatchObject({ error: "#ERROR!" });
    },
  );

  test("a function that does not exist is named", () => {
    expect(cellFor("=THREAD.MAJOOR(1)").value).toMatchObject({
      error: "#NAME?",
      message: expect.stringContaining("THREAD.MAJOOR"),
    });
    expect(cellFor("=set_over*2").value).toMatchObject({
      error: "#NAME?",
      message: expect.stringContaining("set_over"),
    });
  });
});

test("the parts of a formula together are the whole formula", () => {
  for (const formula of [
    '=IF(A1>=0.5,"a""b",\'My, sheet\'!$B$2:C9)*1E-7%',
    "=Größe+#REF!&{1,2;3}",
    "=§ \u00a0'",
  ]) {
    expect(
      tokens(formula)
        .map((token) => token.text)
        .join(""),
    ).toBe(formula);
  }
});
