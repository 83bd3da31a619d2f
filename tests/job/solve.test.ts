/** The search for a number that gives a wanted value. Solutions are closed forms, or roots found by mathjs. */
import fc from "fast-check";
import * as math from "mathjs";
import { describe, expect, test } from "vitest";
import { type Asked, type Outcome, type Progress, type Sought, solve } from "../../src/job/solve.ts";

function run(
  valueAt: (x: number) => number | undefined,
  sought: Sought,
): { outcome: Outcome; tries: number; last: Progress | undefined } {
  let tries = 0;
  let last: Progress | undefined;
  const search = solve(sought);
  for (let turn = search.next(); ; ) {
    if (turn.done) return { outcome: turn.value, tries, last };
    tries += 1;
    last = turn.value;
    turn = search.next(valueAt(turn.value.at));
  }
}

function found(valueAt: (x: number) => number | undefined, sought: Sought): number {
  const { outcome } = run(valueAt, sought);
  expect(outcome.kind).toBe("found");
  return outcome.kind === "found" ? outcome.point.at : Number.NaN;
}

describe("a value without jumps", () => {
  test.each([
    ["a square root", (x: number) => x * x, { wanted: 2, from: 0, to: 4 }, Math.SQRT2],
    ["a cosine", Math.cos, { wanted: 0.5, from: 0, to: 3 }, Math.PI / 3],
    ["a logarithm", Math.log, { wanted: 1, from: 0.1, to: 10 }, Math.E],
    ["a falling line", (x: number) => 7 - 3 * x, { wanted: -2, from: -10, to: 10 }, 3],
    ["a cube root, infinitely steep", (x: number) => Math.cbrt(x - 0.3), { wanted: 0, from: -1, to: 1 }, 0.3],
    [
      "a cube root that no number makes nought",
      (x: number) => Math.cbrt(x * x - 2),
      { wanted: 0, from: 0, to: 4 },
      Math.SQRT2,
    ],
    ["tiny numbers", (x: number) => x * x, { wanted: 4e-18, from: 0, to: 1e-8 }, 2e-9],
    ["large numbers", (x: number) => x ** 3, { wanted: 1e30, from: 0, to: 3e10 }, 1e10],
    ["a high power", (x: number) => x ** 21, { wanted: 1e-9, from: 0, to: 3 }, 10 ** (-9 / 21)],
  ])("%s is found to the last digits", (_, valueAt, sought, expected) => {
    const at = found(valueAt, sought);
    expect(Math.abs(at - expected)).toBeLessThanOrEqual(4e-15 * Math.abs(expected));
  });

  test("it takes few tries once the place is closed in", () => {
    const { tries } = run((x) => Math.exp(x), { wanted: 3, from: 0, to: 2, start: 1.1 });
    expect(tries).toBeLessThan(40);
  });

  test("the solution nearest to the number that stands there is taken", () => {
    const sine = (start: number) => found(Math.sin, { wanted: 0, from: -10, to: 10, start });
    expect(sine(2.8)).toBeCloseTo(Math.PI, 14);
    expect(sine(-6)).toBeCloseTo(-2 * Math.PI, 14);
    expect(sine(0.4)).toBe(0);
  });

  test("a number that does already is kept", () => {
    expect(found((x) => x * 2, { wanted: 5, from: 0, to: 10, start: 2.5 })).toBe(2.5);
  });

  test("the limits themselves may be the solution", () => {
    expect(found((x) => x + 1, { wanted: 3, from: 2, to: 9 })).toBe(2);
    expect(found((x) => x + 1, { wanted: 10, from: 2, to: 9 })).toBe(9);
  });

  test("a value that only comes up to the wanted one and turns back is found", () => {
    expect(found((x) => (x - 1.7) ** 2 + 3, { wanted: 3, from: -10, to: 10 })).toBeCloseTo(1.7, 7);
    expect(found((x) => Math.abs(x - 1.7), { wanted: 0, from: -10, to: 10 })).toBeCloseTo(1.7, 12);
    // Two solutions between the same marks.
    expect(Math.abs(found((x) => (x - 1.7) ** 2, { wanted: 1e-4, from: -10, to: 10 }) - 1.7)).toBeCloseTo(
      0.01,
      12,
    );
  });

  test("a short number is preferred where it does as well", () => {
    expect(found((x) => 3 * x, { wanted: 0.9, from: 0, to: 1 })).toBe(0.3);
    expect(found((x) => (x > 27.2 && x < 27.6 ? 5 : x), { wanted: 5, from: 20, to: 30 })).toBe(27.3);
  });

  test("cubics have the roots that mathjs finds", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.1, max: 5, noNaN: true }),
        fc.double({ min: -5, max: -0.1, noNaN: true }),
        fc.double({ min: 0.5, max: 3, noNaN: true }),
        (c0, c1, c3) => {
          const at = found((x) => c0 + c1 * x + c3 * x ** 3, { wanted: 0, from: -20, to: 20 });
          const roots = math.polynomialRoot(c0, c1, 0, c3).map((root) => math.complex(root as never));
          const distances = roots.map((root) => math.number(math.abs(math.subtract(root, at)) as number));
          expect(Math.min(...distances)).toBeLessThan(1e-5);
          // Near a double root of the cubic its value tells more than the place.
          expect(Math.abs(c0 + c1 * at + c3 * at ** 3)).toBeLessThan(1e-11);
        },
      ),
      { seed: 20261125, numRuns: 200 },
    );
  });
});

describe("a value that jumps", () => {
  const divisions = (x: number) => Math.round(x / 0.02) * 0.02;

  test("past the wanted one is told with both sides of the jump", () => {
    const { outcome } = run((x) => Math.floor(x), { wanted: 2.5, from: 0, to: 10 });
    expect(outcome).toMatchObject({ kind: "jump", below: { gives: 2 }, above: { at: 3, gives: 3 } });
    expect(outcome.kind === "jump" && 3 - outcome.below.at).toBeLessThan(1e-14);
  });

  test("falling is told the same way", () => {
    const { outcome } = run((x) => 1 - Math.floor(x / 3), { wanted: 0.5, from: 0, to: 5 });
    expect(outcome).toMatchObject({ kind: "jump", below: { at: 3, gives: 0 }, above: { gives: 1 } });
  });

  test("whole divisions are found where one gives the wanted value, and not where none does", () => {
    const at = found(divisions, { wanted: 0.3, from: 0, to: 10 });
    expect(divisions(at)).toBeCloseTo(0.3, 14);
    expect(at).toBe(0.3);
    expect(run(divisions, { wanted: 0.31, from: 0, to: 10 }).outcome).toMatchObject({ kind: "jump" });
  });

  test("a step no wider than a hundred-thousandth of the limits is still found", () => {
    const step = (x: number) => (x < 7.7772 ? -1 : x < 7.7773 ? 0 : 1);
    const at = found(step, { wanted: 0, from: 0, to: 10 });
    expect(step(at)).toBe(0);
  });

  test("a solution elsewhere is taken before a jump near by", () => {
    const broken = (x: number) => (x < 1 ? x - 3 : x < 2 ? 5 : 8 - x);
    expect(found(broken, { wanted: 0, from: 0, to: 10, start: 1.2 })).toBe(8);
  });

  test("a pole is no jump: the value runs off on both sides", () => {
    expect(run((x) => 1 / (x - 0.3), { wanted: 0, from: 0, to: 1 }).outcome).toMatchObject({
      kind: "pole",
      near: expect.closeTo(0.3, 12),
    });
    expect(found(Math.tan, { wanted: 0, from: 1, to: 4 })).toBeCloseTo(Math.PI, 14);
  });
});

describe("no solution", () => {
  test("is told with how far the value goes, and where it comes nearest", () => {
    const { outcome } = run((x) => x * x + 1, { wanted: 0, from: -1, to: 3 });
    expect(outcome).toMatchObject({ kind: "none", least: { gives: 1 }, most: { at: 3, gives: 10 } });
    expect(outcome.kind === "none" && Math.abs(outcome.nearest.at)).toBeLessThan(1e-7);
  });

  test("is told as such where there is no value at all", () => {
    expect(run(() => undefined, { wanted: 0, from: 0, to: 1 }).outcome).toEqual({ kind: "empty" });
    expect(run(() => Number.NaN, { wanted: 0, from: 0, to: 1 }).outcome).toEqual({ kind: "empty" });
  });
});

describe("a value that is not there everywhere", () => {
  test("is followed to where it begins", () => {
    const root = (x: number) => (x < 0.123 ? undefined : Math.sqrt(x - 0.123));
    expect(found(root, { wanted: 0.01, from: 0, to: 10 })).toBeCloseTo(0.1231, 12);
    expect(found(root, { wanted: 0, from: 0, to: 10 })).toBeCloseTo(0.123, 12);
  });

  test("is searched on both sides of a gap", () => {
    const gap = (x: number) => (x > 4 && x < 4.2 ? undefined : x);
    expect(run(gap, { wanted: 4.1, from: 0, to: 10 }).outcome).toMatchObject({ kind: "none" });
    expect(found(gap, { wanted: 4.25, from: 0, to: 10 })).toBe(4.25);
  });
});

test("limits that make no sense are refused with the reason", () => {
  const refusal = (sought: Sought) => () => solve(sought);
  expect(refusal({ wanted: 1, from: 2, to: 2 })).toThrow(/^to must be more than from, 2, got 2$/);
  expect(refusal({ wanted: Number.NaN, from: 0, to: 2 })).toThrow(/^wanted must be a number, got NaN$/);
  expect(refusal({ wanted: 0, from: Number.NEGATIVE_INFINITY, to: 2 })).toThrow(/^from must be a number/);
});

test("progress tells the tries and the nearest so far, and the search can be left at any time", () => {
  const search = solve({ wanted: 5, from: 0, to: 100 });
  const step = (before?: number) =>
    search.next(before === undefined ? undefined : before ** 3).value as Asked;
  let { at, tries } = step();
  expect(tries).toBe(0);
  ({ at, tries } = step(at));
  expect(tries).toBe(1);
  let best = Number.POSITIVE_INFINITY;
  for (let i = 0; i < 30; i++) {
    const asked = step(at);
    const { nearest } = asked;
    ({ at } = asked);
    const off = Math.abs(nearest!.gives - 5);
    expect(off).toBeLessThanOrEqual(best);
    best = off;
  }
  expect(search.return({ kind: "empty" })).toEqual({ done: true, value: { kind: "empty" } });
});
