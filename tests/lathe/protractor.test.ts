/**
 * Every word that is printed is carried out again with vectors: the zero line is laid down, turned by what the words say,
 * and held against the line along which the slide has to travel.
 */
import fc from "fast-check";
import { expect, test } from "vitest";
import { markFor, markWords, type Protractor } from "../../src/lathe/protractor.ts";
import { NothingFound } from "../../src/thread/failures.ts";
import { between, expectClose, seeded } from "./close.ts";

type Vector = readonly [x: number, y: number];

const radians = (degrees: number) => (degrees * Math.PI) / 180;
/** Turned counter-clockwise, seen from above. */
const turned = ([x, y]: Vector, degrees: number): Vector => {
  const [c, s] = [Math.cos(radians(degrees)), Math.sin(radians(degrees))];
  return [x * c - y * s, x * s + y * c];
};
/** x along the bed towards the tailstock, y square to it, away from the person: a slide set over by a leans to x. */
const slideLine = (setover: number): Vector => [Math.sin(radians(setover)), Math.cos(radians(setover))];
/** Sine of the angle between two lines; 0 when they are one line, whichever way round. */
const apart = (a: Vector, b: Vector) => Math.abs(a[0] * b[1] - a[1] * b[0]);

/** Each zero line, and which way its figures grow: all grow from the zero across the line square to the bed. */
const zeroes = {
  square: { line: [0, 1], way: -1 },
  bed: { line: [1, 0], way: 1 },
  obtuse: { line: [-1, 0], way: -1 },
} as const;

/** The line that the words tell a person to set. */
function asTold(words: string, zero: Protractor["zero"]): { line: Vector; reading: number } {
  const { line, way } = zeroes[zero];
  const plain = /^set ([\d.]+)( to the other side of zero)?(?:;|$)/.exec(words);
  if (plain) {
    const reading = Number(plain[1]);
    return { line: turned(line, (plain[2] ? -way : way) * reading), reading };
  }
  const found =
    /^([\d.]+) (?:is past your scale's end at [\d.]+|is before your scale's beginning at [\d.]+|(to the other side of zero is off your scale))\. ([\d.]+) from (square to the bed|the bed|the bed's other end) is ([\d.]+) from (square to the bed|the bed) \(([\d.]+) - ([\d.]+)\)\. Stand the slide (square to|along) the bed, pencil a mark beside the scale's 0, then swing the slide (back towards|on, away from) its zero until the pencil mark shows ([\d.]+)(?:;|$)/.exec(
      words,
    );
  if (!found) throw new Error(`not understood: ${words}`);
  const [, wanted, other, again, counted, off, across, more, less, stand, swing] = found;
  const reading = Number(found[11]);
  expect(again).toBe(wanted);
  expectClose(Number(more) - Number(less), Number(off), 1.1e-4);
  expect(counted).toBe({ square: "square to the bed", bed: "the bed", obtuse: "the bed's other end" }[zero]);
  expect([across, stand]).toEqual(
    zero === "square" ? ["the bed", "along"] : ["square to the bed", "square to"],
  );
  // The line square to the zero is met on the side where the slide has to go.
  const side = other ? -way : way;
  return {
    line: turned(turned(line, side * 90), (swing === "back towards" ? -side : side) * reading),
    reading,
  };
}

const scales = fc.record({
  zero: fc.constantFrom("square", "bed", "obtuse"),
  low: fc.constantFrom(0, 0, 0, 10, 30),
  high: fc.constantFrom(40, 45, 60, 90, 180),
  division: fc.constantFrom(0, 0.25, 0.5, 1, 2, 5),
  counts: fc.constantFrom("both", "one"),
} as const);

test("carried out with vectors, the words give the set-over to half a division, and the mark is on the scale", () => {
  const met = new Map<string, number>();
  let none = 0;
  fc.assert(
    fc.property(fc.oneof(between(0, 35), between(-90, 90)), scales, (setover, scale) => {
      let words: string;
      try {
        words = markWords(setover, scale);
      } catch (error) {
        expect(error).toBeInstanceOf(NothingFound);
        none++;
        return;
      }
      const mark = markFor(setover, scale);
      met.set(mark.from, (met.get(mark.from) ?? 0) + 1);
      const told = asTold(words, scale.zero);
      expectClose(told.reading, mark.reading, 5.1e-5);
      // The line that is told is that of the set-over that is promised ...
      expect(apart(told.line, slideLine(mark.setover))).toBeLessThan(1e-6);
      // ... which is the wanted one but for half a division, and the words say by how much.
      expect(Math.abs(mark.setover - setover)).toBeLessThanOrEqual(scale.division / 2 + 1e-9);
      const [, off = "0", side = "under"] = /set-over is then ([\d.]+) (under|over)$/.exec(words) ?? [];
      const size = Math.abs(mark.setover) - Math.abs(setover);
      expectClose(Number(off) * (side === "over" ? 1 : -1), size, 1.1e-4);
      expect(mark.reading).toBeGreaterThanOrEqual(scale.low - 1e-9);
      expect(mark.reading).toBeLessThanOrEqual(scale.high + 1e-9);
      if (scale.division > 0)
        expectClose(mark.reading / scale.division, Math.round(mark.reading / scale.division), 1e-9);
    }),
    { ...seeded, numRuns: 4000 },
  );
  for (const from of ["zero", "other side", "square"]) expect(met.get(from), from).toBeGreaterThan(50);
  expect(none).toBeGreaterThan(50);
});

const plainScale = { low: 0, high: 60, division: 0, counts: "both" } as const;

// 27.5 from square is 90 - 27.5 = 62.5 from the bed, and 90 + 27.5 = 117.5 from its other end.
test("27.5 from square is 62.5 from the bed: past a scale that ends at 60, it is 27.5 from square", () => {
  expect(markWords(27.5, { ...plainScale, zero: "square" })).toBe("set 27.5");
  expect(markWords(27.5, { ...plainScale, zero: "bed", high: 90 })).toBe("set 62.5");
  expect(markWords(27.5, { ...plainScale, zero: "bed" })).toBe(
    "62.5 is past your scale's end at 60. 62.5 from the bed is 27.5 from square to the bed (90 - 62.5). Stand the slide square to the bed, pencil a mark beside the scale's 0, then swing the slide back towards its zero until the pencil mark shows 27.5",
  );
  expect(markWords(27.5, { ...plainScale, zero: "obtuse", high: 180 })).toBe("set 117.5");
  // 117.5 one way round is 62.5 the other.
  expect(markWords(27.5, { ...plainScale, zero: "obtuse", high: 90 })).toBe(
    "set 62.5 to the other side of zero",
  );
  expect(markWords(27.5, { ...plainScale, zero: "obtuse" })).toBe(
    "117.5 is past your scale's end at 60. 117.5 from the bed's other end is 27.5 from square to the bed (117.5 - 90). Stand the slide square to the bed, pencil a mark beside the scale's 0, then swing the slide on, away from its zero until the pencil mark shows 27.5",
  );
  expect(markWords(27.5, { ...plainScale, zero: "square", low: 30, high: 180 })).toBe(
    "set 152.5 to the other side of zero",
  );
  // -50 from square lies 40 from the bed, on the side that the scale does not reach.
  expect(markWords(-50, { ...plainScale, zero: "square", high: 45 })).toBe(
    "50 to the other side of zero is off your scale. 50 from square to the bed is 40 from the bed (90 - 50). Stand the slide along the bed, pencil a mark beside the scale's 0, then swing the slide back towards its zero until the pencil mark shows 40",
  );
  expect(markWords(27.5, { ...plainScale, zero: "square", low: 30, high: 90 })).toBe(
    "27.5 is before your scale's beginning at 30. 27.5 from square to the bed is 62.5 from the bed (90 - 27.5). Stand the slide along the bed, pencil a mark beside the scale's 0, then swing the slide back towards its zero until the pencil mark shows 62.5",
  );
});

test("half way between two marks the smaller set-over is taken, on every scale and side", () => {
  const whole = { low: 0, high: 180, division: 1, counts: "both" } as const;
  for (const zero of ["square", "bed", "obtuse"] as const) {
    expect(markFor(26.5, { ...whole, zero }).setover).toBeCloseTo(26, 12);
    expect(markFor(-26.5, { ...whole, zero }).setover).toBeCloseTo(-26, 12);
    expect(markFor(26.6, { ...whole, zero }).setover).toBeCloseTo(27, 12);
  }
  expect(markWords(26.5, { ...whole, zero: "bed" })).toBe("set 64; the set-over is then 0.5 under");
  expect(markWords(26.6, { ...whole, zero: "bed" })).toBe("set 63; the set-over is then 0.4 over");
});

test.each([
  [() => markFor(91, { ...plainScale, zero: "bed" }), "setover must be from -90 to 90, got 91"],
  [() => markFor(30, { ...plainScale, zero: "bed", low: 60 }), "low must be less than high, got 60 and 60"],
  [() => markFor(30, { ...plainScale, zero: "bed", low: -1 }), "low must be from 0 to 360, got -1"],
  [() => markFor(30, { ...plainScale, zero: "bed", division: -1 }), "division must be from 0 to 90, got -1"],
  [
    () => markFor(27.5, { ...plainScale, zero: "bed", high: 20 }),
    "no mark from 0 to 20 gives a set-over of 27.5: set it by a bevel gauge and prove it by indicator",
  ],
  [() => markFor(27.5, { ...plainScale, zero: "bed", counts: "one" }), "no mark from 0 to 60"],
])("refusal %# says what is wrong", (refused, says) => {
  expect(refused).toThrow(RangeError);
  expect(refused).toThrow(says);
});
