import * as hyperformula from "hyperformula";
import { expect, test } from "vitest";
import { cutDepth, makePlugin, readThread, sheetFunctions } from "../src/index.ts";

test("the add-in puts every function into a caller's own engine", () => {
  const { HyperFormula } = hyperformula;
  const { plugin, translations } = makePlugin(hyperformula, sheetFunctions);
  HyperFormula.registerFunctionPlugin(plugin, { enGB: translations });
  const sheet = [['=THREAD.ANGLE("1/2-12 BSW")', "=SETOVER.ANGLE(A1)", "=SETOVER.ANGLE()", "=SUM(A1:B1)"]];
  const engine = HyperFormula.buildFromArray(sheet, { licenseKey: "gpl-v3" });
  expect(engine.getSheetValues(0)[0]!.slice(0, 2)).toEqual([55, 27.5]);
  expect(engine.getCellValue({ sheet: 0, row: 0, col: 2 })).toMatchObject({
    value: "#VALUE!",
    message: expect.stringContaining("included"),
  });
  expect(engine.getCellValue({ sheet: 0, row: 0, col: 3 })).toBe(82.5);
  HyperFormula.unregisterFunctionPlugin(plugin);
});

test("the computations work without a sheet", () => {
  // H = (sqrt(3)/2) P, and a sharp tool reaches P/2 / (2 tan 30) beyond the pitch line: computed independently.
  const depth = cutDepth(readThread("M10"), 0, "flat", "external");
  expect(Math.abs(depth - 1.1366583)).toBeLessThanOrEqual(5e-8);
});
