import { describe, expect, test } from "vitest";
import { sheetFunctions } from "../../src/functions/index.ts";
import { findFunctions, jobSteps } from "../../src/functions/steps.ts";

const names = (sought: string, step?: string) =>
  findFunctions(
    sheetFunctions,
    sought,
    jobSteps.find(({ name }) => name === step),
  ).map(({ name }) => name);

describe("the guide", () => {
  test("files every function under exactly one step of the job", () => {
    for (const { name, family } of sheetFunctions)
      expect([name, jobSteps.filter(({ families }) => families.includes(family)).length]).toEqual([name, 1]);
    for (const { name } of jobSteps) expect(names("", name).length, name).toBeGreaterThan(0);
  });

  test("finds by the beginning of a name first, then by words in any place", () => {
    expect(names("wire")[0]).toMatch(/^WIRE\./);
    expect(names("half nuts")).toContain("ENGAGE.MARKS");
    expect(names("MARKS engage")[0]).toBe("ENGAGE.MARKS");
  });

  test("finds nothing where one of the words is nowhere", () => {
    expect(names("wire zebra")).toEqual([]);
  });

  test("keeps to the step that is chosen", () => {
    expect(names("", "Dial").every((name) => name.startsWith("DIAL."))).toBe(true);
  });
});
