import { HyperFormula } from "hyperformula";
import { expect, test } from "vitest";
import { generalFunctions } from "../../src/functions/general.ts";
import { sheetFunctions } from "../../src/functions/index.ts";

/** Operators under another name, that nobody writes. */
const internal = /^HF\./;

test("every function that the engine brings has its line in completion and help, and no other", () => {
  const ours = new Set(sheetFunctions.map(({ name }) => name));
  const brought = HyperFormula.getRegisteredFunctionNames("enGB").filter(
    (name) => !internal.test(name) && !ours.has(name),
  );
  expect(generalFunctions.map(({ name }) => name).sort()).toEqual(brought.sort());
});

test("each says its arguments and what it gives in one line", () => {
  for (const { name, call, summary } of generalFunctions) {
    expect(call).toMatch(new RegExp(`^${name.replaceAll(".", "\\.")}\\(.*\\)$`));
    expect(summary).toMatch(/^\S.{2,70}$/);
  }
});
