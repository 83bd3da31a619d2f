// Expected values and words are those agreed for the sheet functions; they can be counted on a dial.
import fc from "fast-check";
import { expect, test } from "vitest";
import { dialDivisions, dialReading, roundToDial, splitTurns } from "../../src/lathe/dial.ts";
import { between, expectClose, seeded } from "./close.ts";

test("a diameter dial shows twice the travel", () => {
  expectClose(dialDivisions(0.5, 0.02, "diameter"), 50, 1e-12);
  expectClose(dialDivisions(0.5, 0.02), 25, 1e-12);
  expectClose(dialDivisions(-0.5, 0.02), -25, 1e-12);
});

test("travel is rounded to whole divisions", () => {
  expectClose(roundToDial(1.047, 0.02), 1.04, 1e-12);
  expectClose(roundToDial(1.047, 0.02, "nearest", "diameter"), 1.05, 1e-12);
  expectClose(roundToDial(1.047, 0.02, "under"), 1.04, 1e-12);
  expectClose(roundToDial(1.041, 0.02, "over"), 1.06, 1e-12);
});

test("a travel that is whole but for rounding stays as it is", () => {
  expect(roundToDial(0.3, 0.1, "under")).toBe(0.3);
  expect(roundToDial(0.3, 0.1, "over")).toBe(0.3);
});

test("a tie goes to the smaller travel, and the sign is kept", () => {
  expectClose(roundToDial(0.05, 0.02), 0.04, 1e-12);
  expectClose(roundToDial(-0.05, 0.02), -0.04, 1e-12);
  expectClose(roundToDial(-0.045, 0.02, "under"), -0.04, 1e-12);
  expectClose(roundToDial(-0.045, 0.02, "over"), -0.06, 1e-12);
  expect(Object.is(roundToDial(-0.001, 0.02, "under"), 0)).toBe(true);
});

test("under is at most nearest, nearest at most over, and all are whole divisions", () => {
  const travel = between(0, 50);
  const division = fc.constantFrom(0.001, 0.01, 0.02, 0.025, 0.05);
  fc.assert(
    fc.property(travel, division, fc.constantFrom("radius", "diameter"), (length, size, reads) => {
      const [under, nearest, over] = (["under", "nearest", "over"] as const).map((how) =>
        roundToDial(length, size, how, reads),
      );
      expect(under!).toBeLessThanOrEqual(nearest!);
      expect(nearest!).toBeLessThanOrEqual(over!);
      const step = reads === "diameter" ? size / 2 : size;
      expect(Math.abs(nearest! - length)).toBeLessThanOrEqual(step / 2 + 1e-9);
      for (const rounded of [under!, nearest!, over!]) {
        expectClose(rounded / step, Math.round(rounded / step), 1e-8);
        expect(roundToDial(-rounded, size, "under", reads)).toBe(-rounded + 0);
      }
    }),
    seeded,
  );
});

test.each([
  [dialReading(1.04, 0.02, 40), "1 turn + 12"],
  [dialReading(0.7999, 0.02, 40), "1 turn"],
  [dialReading(0.24, 0.02, 40), "12"],
  [dialReading(1.04, 0.02, 40, 30), "1 turn, stop at 2"],
  [dialReading(0, 0.02, 40), "0"],
  [dialReading(1.66, 0.02, 40), "2 turns + 3"],
  [dialReading(1.048, 0.02, 40), "1 turn + 12.4"],
  [dialReading(-1.04, 0.02, 40), "back 1 turn + 12"],
  [dialReading(-0.24, 0.02, 40), "back 12"],
  [dialReading(-0.0009, 0.02, 40), "0"],
  [dialReading(0.52, 0.02, 40, undefined, "diameter"), "1 turn + 12"],
  [dialReading(0.24, 0.02, 40, 30), "stop at 2"],
  [dialReading(-0.24, 0.02, 40, 2), "back stop at 30"],
  [dialReading(0.8, 0.02, 40, 0), "1 turn, stop at 0"],
  [dialReading(0.6, 0.02, 40, 10), "stop at 0"],
  // A dial of 33.3 divisions: 0.1 in of an inch screw on a dial marked 0.003 in, or the like.
  [dialReading(0.4, 0.01, 33.3), "1 turn + 6.7"],
  [dialReading(0.333, 0.01, 33.3), "1 turn"],
  [dialReading(0.665, 0.01, 33.28), "1 turn + 33.2"],
  [dialReading(0.666, 0.01, 33.34), "1 turn + 33.3"],
  [dialReading(0.6655, 0.01, 33.28), "2 turns"],
  // 133.1 is three turns and 33.26, which rounds to more than a turn.
  [dialReading(1.331, 0.01, 33.28), "4 turns"],
])("reading %# says %s", (said, expected) => {
  expect(said).toBe(expected);
});

test("a rest that rounds to a whole turn counts as one, as a dial of 40 shows 0 for 39.96", () => {
  expect(splitTurns(39.96, 40)).toEqual({ turns: 1, rest: 0 });
  expect(splitTurns(39.94, 40)).toEqual({ turns: 0, rest: 39.9 });
});

test("turns and rest add up to the divisions, and the rest is less than a turn", () => {
  const perTurn = fc.constantFrom(33.3, 40, 50, 62.5, 100, 125);
  fc.assert(
    fc.property(fc.integer({ min: 0, max: 5000 }), perTurn, (tenths, turn) => {
      const said = dialReading((tenths / 10) * 0.02, 0.02, turn);
      const match = /^(?:(\d+) turns?)?(?: \+ )?([\d.]+)?$/.exec(said)!;
      const rest = Number(match[2] ?? 0);
      expect(rest).toBeLessThan(turn);
      expectClose(Number(match[1] ?? 0) * turn + rest, tenths / 10, 0.0501);
    }),
    seeded,
  );
});

test.each([
  [() => dialDivisions(1, 0), "division must be greater than 0, got 0"],
  [() => roundToDial(1, -0.02), "division must be greater than 0, got -0.02"],
  [() => dialReading(1, 0.02, 0), "per_turn must be greater than 0, got 0"],
  [() => dialReading(1, 0.02, 40, 41), "start must be from 0 to 40, got 41"],
  [() => dialDivisions(1e300, 1e-300), "number of divisions is too large"],
])("refusal %# names argument, bound and value", (refused, says) => {
  expect(refused).toThrow(RangeError);
  expect(refused).toThrow(says);
});
