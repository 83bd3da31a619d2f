/** Every declaration keeps its word in a real engine: examples, failures, and help that is filled in. */
import { describe, expect, test } from "vitest";
import { Engine } from "../../src/engine/engine.ts";
import type { CellValue } from "../../src/engine/values.ts";
import { type Example, isRequired, type SheetFunction } from "../../src/functions/declare.ts";
import { sheetFunctions } from "../../src/functions/index.ts";

const faults: string[] = [];
const engine = new Engine(
  { sheets: [{ name: "Sheet1", cells: {} }], names: {} },
  sheetFunctions,
  (what, error) => faults.push(`${what}: ${String(error)}`),
);

/** Half a unit of the seventh significant digit, unless the example says more. */
function allowance({ value, within }: Example): number {
  if (within !== undefined) return within;
  return typeof value === "number" && value !== 0
    ? 0.5 * 10 ** (Math.floor(Math.log10(Math.abs(value))) - 6)
    : 1e-12;
}

/** A block is compared by its first cell, or, where the example is text, by its rows as text. */
function comparable(value: CellValue | CellValue[][], example: Example): unknown {
  if (!Array.isArray(value)) return value;
  if (typeof example.value === "number") return value[0]?.[0];
  const rows = value.map((row) => row.map((cell) => cell ?? "").join(", "));
  return [rows.join("; "), rows[0], value[0]?.[0]].find((text) => text === example.value) ?? rows.join("; ");
}

const cases = <T>(pick: (fn: SheetFunction) => readonly T[]) =>
  sheetFunctions.flatMap((fn) => pick(fn).map((each) => ({ fn, ...each })));

describe("examples", () => {
  test.each(cases((fn) => fn.examples))("$formula is $value", (example) => {
    const got = comparable(engine.evaluate(example.formula), example);
    if (typeof example.value !== "number") {
      expect(got).toBe(example.value);
      return;
    }
    expect(got).toBeTypeOf("number");
    expect(Math.abs((got as number) - example.value)).toBeLessThanOrEqual(allowance(example));
  });
});

describe("failures", () => {
  test.each(cases((fn) => fn.failures))("$formula is $gives: $when", ({ formula, gives, says }) => {
    const got = engine.evaluate(formula);
    expect(got).toMatchObject({ error: gives });
    const { message } = got as { message: string };
    expect(message).toContain(says ?? "");
    expect(message.trim()).not.toBe("");
    expect(message).not.toMatch(/\.$|NaN|Infinity|undefined/);
  });
});

test("no declaration is an internal error anywhere", () => {
  for (const fn of sheetFunctions)
    for (const { formula } of [...fn.examples, ...fn.failures]) engine.evaluate(formula);
  expect(faults).toEqual([]);
});

describe("what help and completion show", () => {
  test("names are unique, capitals in words joined by points, and none of the engine's own", () => {
    const names = sheetFunctions.map((fn) => fn.name);
    expect(new Set(names).size).toBe(names.length);
    for (const name of names) expect(name).toMatch(/^[A-Z]+(\.[A-Z]+)?$/);
    const bare = new Engine({ sheets: [{ name: "Sheet1", cells: {} }], names: {} }, []);
    for (const name of names)
      expect([name, bare.evaluate(`=${name}()`)]).toMatchObject([name, { error: "#NAME?" }]);
  });

  test.each(sheetFunctions.map((fn) => ({ name: fn.name, fn })))("$name is described in full", ({ fn }) => {
    expect(fn.summary.trim()).not.toBe("");
    expect(fn.source.trim()).not.toBe("");
    expect(fn.returns.doc.trim()).not.toBe("");
    expect(fn.examples.length).toBeGreaterThan(0);
    const names = fn.params.map((param) => param.name);
    expect(new Set(names).size).toBe(names.length);
    for (const param of fn.params) {
      expect(param.name).toMatch(/^[a-z][a-z0-9]*(_[a-z0-9]+)*$/);
      expect(param.doc.trim()).not.toBe("");
      if (param.options) {
        expect(param.type).toBe("text");
        expect(new Set(param.options.map((option) => option.toLowerCase())).size).toBe(param.options.length);
        if (param.fallback !== undefined) expect(param.options).toContain(param.fallback);
      }
      if (param.fallback !== undefined && param.type !== "numbers") {
        expect(typeof param.fallback).toBe(param.type === "number" ? "number" : "string");
      }
    }
    // Positions are all that tells arguments apart, so what must be given comes first.
    const required = fn.params.map(isRequired);
    expect(required).toEqual([...required].sort((a, b) => Number(b) - Number(a)));
    for (const { formula } of [...fn.examples, ...fn.failures]) {
      expect(formula.startsWith("=")).toBe(true);
      expect(formula.toUpperCase()).toContain(`${fn.name}(`);
    }
  });

  test.each(sheetFunctions.filter((fn) => fn.params.some(isRequired)).map((fn) => ({ name: fn.name, fn })))(
    "$name without arguments names what is missing",
    ({ fn }) => {
      const first = fn.params.find(isRequired)!;
      expect(engine.evaluate(`=${fn.name}()`)).toMatchObject({
        error: "#VALUE!",
        message: expect.stringContaining(`${first.name} is missing`),
      });
    },
  );

  test.each(sheetFunctions.map((fn) => ({ name: fn.name, fn })))(
    "$name refuses one argument too many",
    ({ fn }) => {
      const commas = ",".repeat(fn.params.length);
      expect(engine.evaluate(`=${fn.name}(${commas}1)`)).toMatchObject({
        error: "#VALUE!",
        message: expect.stringContaining(fn.params.length === 0 ? "takes no arguments" : "takes at most"),
      });
    },
  );
});
