import { expect, test } from "vitest";
import { Engine } from "../../src/engine/engine.ts";
import { sheetFunctions } from "../../src/functions/index.ts";

function engineWith(cells: Record<string, string>): Engine {
  return new Engine({ sheets: [{ name: "S", cells }], names: {} }, sheetFunctions, (what, error) => {
    throw new Error(what, { cause: error });
  });
}

const set = (engine: Engine, row: number, text: string) =>
  engine.setCells([{ sheet: "S", row, column: 0, text }]);

test("a drawing is text to formulas, and what it shows stands beside it", () => {
  const engine = engineWith({ A1: "27", A2: '=DRAW.SETOVER(A1,"bed")', A3: "=LEN(A2)>10", A4: "=A2" });
  // 90 - 27 along the bed.
  expect(engine.value("S", 1, 0)).toBe("Set-over 27°, bed scale 63°: handle right, wind in");
  expect(engine.figure("S", 1, 0)).toMatchObject({ kind: "setover", setover: 27, reading: 63 });
  expect(engine.value("S", 2, 0)).toBe(true);
  // A cell that only repeats the text is no drawing.
  expect(engine.value("S", 3, 0)).toBe(engine.value("S", 1, 0));
  expect(engine.figure("S", 3, 0)).toBeUndefined();
});

test("it follows its inputs, and goes when the formula takes another branch or becomes an error", () => {
  const engine = engineWith({ A1: "27", A2: '=IF(A1>0,DRAW.SETOVER(A1),"none")' });
  set(engine, 0, "20");
  expect(engine.figure("S", 1, 0)).toMatchObject({ setover: 20 });
  set(engine, 0, "-1");
  expect(engine.value("S", 1, 0)).toBe("none");
  expect(engine.figure("S", 1, 0)).toBeUndefined();
  set(engine, 0, "95");
  expect(engine.value("S", 1, 0)).toMatchObject({ error: "#NUM!" });
  expect(engine.figure("S", 1, 0)).toBeUndefined();
  set(engine, 0, "15");
  expect(engine.figure("S", 1, 0)).toMatchObject({ setover: 15 });
  set(engine, 1, "words");
  expect(engine.figure("S", 1, 0)).toBeUndefined();
});

test("inside another formula it is its text only", () => {
  const engine = engineWith({ A1: '=DRAW.TRAIN("40/60")&"!"' });
  expect(engine.value("S", 0, 0)).toBe("Change gears 40/60: leadscrew 0.66667 to 1!");
  expect(engine.figure("S", 0, 0)).toBeUndefined();
});

test("a doubt about it is a note beside it", () => {
  const engine = engineWith({ A1: '=DRAW.SETOVER(30,"square",27.5)', A2: "=DRAW.SETOVER(27,,27.5)" });
  expect(engine.note("S", 0, 0)).toMatch(/past the trailing flank of 27.5 degrees/);
  expect(engine.figure("S", 0, 0)).toBeDefined();
  expect(engine.note("S", 1, 0)).toBeUndefined();
});

test("it is there again after the engine was built anew", () => {
  const engine = engineWith({ A1: '=DRAW.MARKS("4,8",8)' });
  engine.rebuild();
  expect(engine.figure("S", 0, 0)).toEqual({ kind: "marks", usable: [4, 8], marks: 8 });
});
