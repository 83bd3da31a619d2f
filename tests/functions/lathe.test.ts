import fc from "fast-check";
import { expect, test } from "vitest";
import { dialFunctions } from "../../src/functions/dial.ts";
import { engageFunctions } from "../../src/functions/engage.ts";
import { formFunctions } from "../../src/functions/form.ts";
import { gearFunctions } from "../../src/functions/gears.ts";
import { infeedFunctions } from "../../src/functions/infeed.ts";
import { latheFunctions } from "../../src/functions/lathe.ts";
import { passFunctions } from "../../src/functions/passes.ts";
import { setoverFunctions } from "../../src/functions/setover.ts";
import { speedFunctions } from "../../src/functions/speed.ts";
import { startFunctions } from "../../src/functions/starts.ts";
import { taperFunctions } from "../../src/functions/taper.ts";
import { toolFunctions } from "../../src/functions/tool.ts";
import { unitFunctions } from "../../src/functions/units.ts";
import { Unreadable } from "../../src/thread/failures.ts";
import { caller, parted } from "./call.ts";

const functions = [
  ...formFunctions,
  ...setoverFunctions,
  ...infeedFunctions,
  ...passFunctions,
  ...dialFunctions,
  ...speedFunctions,
  ...toolFunctions,
  ...taperFunctions,
  ...unitFunctions,
  ...gearFunctions,
  ...engageFunctions,
  ...startFunctions,
  ...latheFunctions,
];
const call = caller(functions);

test("a set-over past the trailing flank carries a note, one inside it none", () => {
  expect(parted(call("SETOVER.ANGLE", 60, -1))).toEqual({
    value: 31,
    note: "past the trailing flank of 30 degrees: this cuts outside the form",
  });
  expect(call("SETOVER.ANGLE", 60, 0.5)).toBe(29.5);
  expect(parted(call("SETOVER.FORTHREAD", "M10", -0.5)).note).toContain("past the trailing flank of 30");
  expect(parted(call("SETOVER.ANGLE", 60, 31)).note).toContain("the trailing edge does most of the work");
});

// A 30 degree included thread of BS 84 Whitworth is 27.5 a side; the others are as their standards draw them.
test("the set-over for a thread is its trailing flank less the back-off", () => {
  expect(call("SETOVER.FORTHREAD", "1/2-12 BSW")).toBe(27.5);
  expect(call("SETOVER.FORTHREAD", "0 BA", 1)).toBe(22.75);
  expect(call("SETOVER.FORTHREAD", "M10", 0.5, "clearance")).toBe(29.5);
});

test("unequal flanks have to be told apart by which one trails", () => {
  expect(call("SETOVER.FORTHREAD", "2-4 Butt", 1, "load")).toBe(6);
  expect(call("SETOVER.FORTHREAD", "2-4 Butt", 1, "clearance")).toBe(44);
  expect(() => call("SETOVER.FORTHREAD", "2-4 Butt")).toThrow(Unreadable);
  expect(() => call("SETOVER.FORTHREAD", "2-4 Butt")).toThrow('say which flank trails, "load" (7 degrees)');
});

test("a flank that the set-over is past shows no chip and says why", () => {
  expect(parted(call("FLANK.CHIP", 0.1, 35, 30, "trailing"))).toEqual({
    value: 0,
    note: "set-over past the trailing flank: earlier passes cut outside the finished form",
  });
  expect(parted(call("FLANK.CHIP", 0.1, -35, 30, "leading")).note).toContain("past the leading flank");
  expect(parted(call("FLANK.CHIP", 0.1, 29, 30, "trailing")).note).toBe("");
});

test("a reading under what is wanted says that the screw is past its size", () => {
  const { value, note } = parted(call("FLANK.CORRECTION", 12.3, 12.35, 27));
  expect(value).toBeLessThan(0);
  expect(note).toContain("stop cutting");
});

test("the plan is one block of ten columns, and the reasons take the same arguments", () => {
  const given = [
    1.3553593,
    27,
    55,
    0.2906798,
    0.02,
    0.3,
    0.06,
    0.04,
    0.02,
    27.5,
    "radius",
    "radius",
    2,
    50,
  ] as const;
  const rows = call("PASS.PLAN", ...given) as readonly (readonly unknown[])[];
  expect(rows).toHaveLength(1 + 12 + 1 + 2 + 2 + 1);
  expect(rows.every((row) => row.length === 10)).toBe(true);
  expect(rows[0]).toEqual(["scratch", "scratch pass, check the pitch", "", "", "", "", "", "", "", ""]);
  expect(rows[1]!.slice(0, 5)).toEqual([1, "slide", 14, 14, "14"]);
  expect(rows.at(-4)!.slice(0, 6)).toEqual(["X", "straight in, cross slide", 1, 2, "2", ""]);
  expect(rows.at(-2)!.slice(0, 2)).toEqual(["S", "spring"]);
  expect(call("PASS.REASONS", ...given)).toMatch(
    /^Reckoned for 12 passes of equal area instead of 11: .+\. Straight in ends/,
  );
});

test("whatever the numbers, a function answers with finite numbers or refuses with a reason", () => {
  const number = fc.oneof(
    fc.double({ noNaN: true, noDefaultInfinity: true }),
    fc.double({ min: -100, max: 100, noNaN: true }),
    fc.constantFrom(0, -0, 1e-300, -1e-300, 1e300, 5e-324, 30, 60, 90, 180),
  );
  // Designations, trains and names of units are text of their own kind, tested elsewhere.
  const ofNumbers = functions.filter(({ params }) =>
    params.every((each) => each.type !== "text" || each.options),
  );
  expect(ofNumbers.length).toBeGreaterThan(40);
  for (const fn of ofNumbers) {
    const givens = fn.params.map((param) =>
      param.options
        ? fc.constantFrom(...param.options)
        : param.type === "numbers"
          ? fc.array(number, { minLength: 1, maxLength: 6 })
          : param.fallback === undefined && !param.optional
            ? number
            : fc.option(number, { nil: undefined }),
    );
    fc.assert(
      fc.property(fc.tuple(...givens), (given) => {
        let result: unknown;
        try {
          result = parted(call(fn.name, ...given)).value;
        } catch (error) {
          expect(error).toBeInstanceOf(RangeError);
          expect((error as Error).message).not.toMatch(/NaN|Invalid/);
          return;
        }
        const values = (Array.isArray(result) ? result : [result]).flat() as unknown[];
        for (const value of values) {
          if (typeof value === "number") expect(Number.isFinite(value), fn.name).toBe(true);
          else expect(value).not.toMatch(/NaN|Infinity|undefined/);
        }
      }),
      { seed: 20261125, numRuns: 300 },
    );
  }
});
