// The search is held against plain counting with whole numbers: every choice of gears, every place for each.
import fc from "fast-check";
import { expect, test } from "vitest";
import { bestBoxedTrain, bestTrain } from "../../src/lathe/gear-search.ts";
import { type Train, trainText } from "../../src/lathe/gears.ts";
import { NothingFound } from "../../src/thread/failures.ts";
import { seeded } from "./close.ts";

const box = [20, 25, 30, 35, 38, 40, 45, 50, 55, 60, 63, 65, 70];

/** A train with what it is ranked by. */
interface Counted {
  readonly key: string;
  readonly error: bigint;
  readonly gears: number;
  readonly teeth: number;
  readonly a: number;
}

/** Which drivers and driven, how much room at the studs, and the first driver: b and d may still change places. */
function keyOf(train: Train): string {
  const side = (place: 0 | 1) => train.map((pair) => pair[place]).sort((x, y) => x - y);
  return `${side(0)}/${side(1)} room ${roomOf(train)} first ${train[0]![0]}`;
}

function roomOf([first, second]: Train): number {
  return second ? Math.min(first![0] + first![1] - second[0], second[0] + second[1] - first![1]) : 0;
}

/** Errors are held in this part of a lead, rounded down; finer than "equal within 1e-9". */
const GRAIN = 10n ** 30n;

/** All trains for a lead of `top / bottom` leadscrew leads, best first, counted out one gear at a time. */
function countedOut(top: bigint, bottom: bigint, gears: readonly number[], clearance: number): Counted[] {
  const found = new Map<string, Train>();
  const offer = (train: Train) => {
    const set = keyOf(train).split(" ")[0]!;
    const held = found.get(set);
    const more = held ? roomOf(train) - roomOf(held) || train[0]![0] - held[0]![0] : 1;
    if (more > 0) found.set(set, train);
  };
  gears.forEach((a, i) => {
    gears.forEach((b, j) => {
      if (i === j) return;
      offer([[a, b]]);
      gears.forEach((c, k) => {
        gears.forEach((d, l) => {
          if (new Set([i, j, k, l]).size < 4 || [b, d].includes(a) || [b, d].includes(c)) return;
          if (a + b < c + clearance || c + d < b + clearance) return;
          offer([
            [a, b],
            [c, d],
          ]);
        });
      });
    });
  });
  const all = [...found.values()].map((train): Counted => {
    const drivers = BigInt(train.reduce((product, [driver]) => product * driver, 1));
    const driven = BigInt(train.reduce((product, [, gear]) => product * gear, 1));
    const off = drivers * bottom - driven * top;
    return {
      key: keyOf(train),
      error: ((off < 0n ? -off : off) * GRAIN) / (driven * top),
      gears: 2 * train.length,
      teeth: train.flat().reduce((sum, size) => sum + size, 0),
      a: train[0]![0],
    };
  });
  const ordered: Counted[] = [];
  while (all.length > 0) {
    all.sort((x, y) => (x.error < y.error ? -1 : 1));
    const least = all[0]!.error;
    const equal = all.filter(({ error }) => error <= least + GRAIN / 10n ** 9n);
    equal.sort((x, y) => x.gears - y.gears || y.teeth - x.teeth || y.a - x.a);
    ordered.push(...equal);
    for (const train of equal) all.splice(all.indexOf(train), 1);
  }
  return ordered;
}

test("trains of a common box of gears", () => {
  expect(trainText(bestTrain(1.5, 3.175, box))).toBe("65/50 × 20/55");
  expect(trainText(bestTrain(1.75, 3, box))).toBe("35/60");
});

// 127 teeth: 25.4 = 127/5, so an exact train exists and no error is nearer.
test("an exact train comes first, leads that numbers cannot hold included", () => {
  expect(trainText(bestTrain(1.5, 25.4 / 8, [...box, 127]))).toBe("60/127");
  expect(trainText(bestTrain(25.4 / 12, 25.4 / 8, [30, 45, 80]))).toBe("30/45");
  expect(trainText(bestTrain(1 / 12, 1 / 8, [30, 45, 80]))).toBe("30/45");
});

const some = fc.array(fc.constantFrom(20, 24, 30, 36, 40, 45, 50, 60, 63, 127), {
  minLength: 2,
  maxLength: 7,
});
const lead = fc.integer({ min: 4, max: 120 });

test("every rank is the one that counting out finds", () => {
  fc.assert(
    fc.property(
      lead,
      fc.integer({ min: 20, max: 60 }),
      some,
      fc.integer({ min: 0, max: 40 }),
      (n, m, gears, gap) => {
        // A lead of n/20 mm on a leadscrew of 127/m mm, as on an inch lathe.
        const expected = countedOut(BigInt(n * m), 20n * 127n, gears, gap);
        const keys = expected.map((_, i) =>
          keyOf(bestTrain(n / 20, 127 / m, gears, i + 1, { clearance: gap })),
        );
        expect([...keys].sort()).toEqual(expected.map(({ key }) => key).sort());
        const rankedBy = ({ error, gears: count, teeth, a }: Counted) => [error, count, teeth, a];
        const byKey = new Map(expected.map((train) => [train.key, train]));
        expect(keys.map((key) => rankedBy(byKey.get(key)!))).toEqual(expected.map(rankedBy));
        expect(() => bestTrain(n / 20, 127 / m, gears, expected.length + 1, { clearance: gap })).toThrow(
          NothingFound,
        );
      },
    ),
    { ...seeded, numRuns: 50 },
  );
});

// 50 random boxes of gears, each behind a gearbox of up to three ratios.
test("behind a gearbox every rank is the one that counting out finds, position by position", () => {
  const ratios = fc.array(fc.constantFrom([1, 1], [1, 2], [2, 1], [2, 3], [3, 4], [27, 20]), {
    minLength: 1,
    maxLength: 3,
  });
  const few = fc.array(fc.constantFrom(20, 24, 30, 36, 40, 45, 50, 60, 63, 127), {
    minLength: 2,
    maxLength: 6,
  });
  fc.assert(
    fc.property(lead, fc.integer({ min: 20, max: 60 }), few, ratios, (n, m, gears, positions) => {
      const counted = positions.flatMap(([top, bottom], i) =>
        countedOut(BigInt(n * m * bottom!), 20n * 127n * BigInt(top!), gears, 15).map((train) => ({
          ...train,
          position: i + 1,
        })),
      );
      const boxes = positions.map(([top, bottom]) => top! / bottom!);
      const found = counted.map((_, i) => bestBoxedTrain(n / 20, 127 / m, gears, boxes, i + 1));
      const name = (key: string, position: number) => `${key} box ${position}`;
      const errors = new Map(counted.map((each) => [name(each.key, each.position), each.error]));
      const names = found.map(({ train, position }) => name(keyOf(train), position));
      expect([...names].sort()).toEqual([...errors.keys()].sort());
      names.forEach((each, i) => {
        // "Equal within 1e-9" may turn two neighbours, nothing more.
        if (i > 0)
          expect(errors.get(each)! + GRAIN / 10n ** 9n).toBeGreaterThanOrEqual(errors.get(names[i - 1]!)!);
      });
      expect(() => bestBoxedTrain(n / 20, 127 / m, gears, boxes, counted.length + 1)).toThrow(NothingFound);
    }),
    { ...seeded, numRuns: 50 },
  );
});

// 3 mm from a 4 mm screw: 30/80 gives 1.5, so the position that doubles; 60/80 does it in the first that is 1 to 1.
test("of equal trains the lower position of the gearbox is named", () => {
  expect(bestBoxedTrain(3, 4, [30, 80], [0.5, 1, 2, 2])).toEqual({ train: [[30, 80]], position: 3 });
  expect(bestBoxedTrain(3, 4, [30, 60, 80], [0.5, 2, 1])).toEqual({ train: [[60, 80]], position: 3 });
});

test("ratios that no number holds are taken as the fractions that they are", () => {
  // 2/3 of 45/30 is 1 exactly; nothing nearer exists, so nothing may be put before it.
  expect(bestBoxedTrain(4, 4, [30, 45, 50], [2 / 3, 1.0000000001])).toEqual({
    train: [[45, 30]],
    position: 1,
  });
});

test("a wheel larger than the banjo takes is left out, one of just that size is not", () => {
  expect(trainText(bestTrain(1.5, 3.175, [...box, 127], 1, { largest: 127 }))).toBe("60/127");
  expect(trainText(bestTrain(1.5, 3.175, [...box, 127], 1, { largest: 126 }))).toBe("65/50 × 20/55");
  expect(() => bestTrain(1.5, 3.175, box, 1, { largest: 19 })).toThrow(
    "no train can be made of no gears up to 19 teeth",
  );
});

test("the order in which the gears lie does not matter", () => {
  fc.assert(
    fc.property(lead, some, (n, gears) => {
      const turned = [...gears].reverse();
      expect(bestTrain(n / 20, 3.175, turned)).toEqual(bestTrain(n / 20, 3.175, gears));
    }),
    { ...seeded, numRuns: 40 },
  );
});

test("two gears of a size are used only where two are at hand", () => {
  expect(trainText(bestTrain(1, 4, [20, 20, 40, 40]))).toBe("20/40 × 20/40");
  expect(trainText(bestTrain(1, 4, [20, 40, 40]))).toBe("20/40");
  expect(trainText(bestTrain(4, 4, [40, 40, 50]))).toBe("40/40");
  expect(trainText(bestTrain(4, 4, [40, 50]))).toBe("40/50");
});

// a + b >= c + clearance and c + d >= b + clearance, both just met: 60 + 20 = 65 + 15, 65 + 30 > 20 + 15.
test("a compound train needs its clearance, and just enough is enough", () => {
  const exact = (clearance: number) => trainText(bestTrain(13, 2, [60, 20, 65, 30], 1, { clearance }));
  // Drivers 60, 65, driven 20, 30. The roomiest is 65/20 × 60/30: 65 + 20 - 60 = 25, 60 + 30 - 20 = 70; or
  // 65/30 × 60/20: 35 and 50, which is better.
  expect(exact(15)).toBe("65/30 × 60/20");
  expect(exact(35)).toBe("65/30 × 60/20");
  expect(exact(36)).not.toContain("×");
});

// Circles drawn to scale: two wheels in mesh stand half the sum of their pitch diameters apart, a tooth stands a module
// above its pitch circle. The wheel of the next pair must not touch the stud or nut of the one before, on either shaft.
test.each([1, 1.25, 2])(
  "2 and stud diameter over module is the room at which a wheel of module %d just clears",
  (module) => {
    const gap = ([one, other]: readonly [number, number], next: number, stud: number) =>
      (module * (one + other)) / 2 - module * (next / 2 + 1) - stud / 2;
    const clears = (stud: number) => {
      const found = bestTrain(13, 2, [60, 20, 65, 30], 1, { clearance: 2 + stud / module });
      const [first, second] = found;
      return second ? Math.min(gap(first!, second[0], stud), gap(second, first![1], stud)) : undefined;
    };
    // Of these four the roomiest arrangement, 65/30 × 60/20, just clears a stud of 33 modules.
    expect(clears(33 * module)).toBeCloseTo(0, 9);
    expect(clears(20 * module)).toBeCloseTo((13 * module) / 2, 9);
    expect(clears(33.01 * module)).toBeUndefined();
  },
);

// 25/30 × 20/35 has 35 and 25 teeth of room, 20/30 × 25/35 has 25 and 30: the tighter is 25 both ways. With 30, 20 over
// 35, 40: 45 and 25 for 30/35 × 20/40, 30 and 25 for 20/40 × 30/35.
test("of arrangements with equal room the one with the larger first driver is named", () => {
  expect(trainText(bestTrain(10, 21, [20, 25, 30, 35]))).toBe("25/30 × 20/35");
  expect(trainText(bestTrain(3, 7, [20, 30, 35, 40]))).toBe("30/35 × 20/40");
});

test("of equal errors fewer gears come first, then more teeth", () => {
  expect([1, 2].map((rank) => trainText(bestTrain(1, 2, [20, 30, 40, 60], rank)))).toEqual([
    "30/60",
    "20/40",
  ]);
});

test("errors within 1e-9 of the lead are equal, and the larger sum of teeth decides", () => {
  const first = (lead: number) =>
    trainText(bestTrain(lead, 1, [1000, 2000, 2001, 999], 1, { clearance: 5000 }));
  // 1000/999 and 2001/2000 are 1.001001 and 1.0005: half way the one with 4001 teeth is as near as the one with 1999.
  const half = (1000 / 999 + 2001 / 2000) / 2;
  expect(first(half)).toBe("2001/2000");
  expect(first(half + 3e-10)).toBe("2001/2000");
  expect(first(half + 3e-9)).toBe("1000/999");
  expect(first(half - 3e-9)).toBe("2001/2000");
});

test("a box of 25 sizes and of 48 is searched, to the last rank", () => {
  const sizes = (count: number) => Array.from({ length: count }, (_, i) => 20 + 2 * i);
  expect(bestTrain(1.5, 3, sizes(25))).toEqual([[34, 68]]);
  expect(bestTrain(1.5, 3, sizes(48))).toEqual([[56, 112]]);
  expect(() => bestTrain(1.5, 3, sizes(49))).toThrow("gears must be of at most 48 sizes, got 49");
});

test.each([
  [() => bestTrain(1.5, 4, []), "no train can be made of no gears"],
  [() => bestTrain(1.5, 4, [40]), "no train can be made of the gears 40"],
  [
    () => bestTrain(1.5, 4, [30, 80], 3),
    "rank must be at most 2, the number of trains that these gears make, got 3",
  ],
])("nothing found %# says why", (refused, says) => {
  expect(refused).toThrow(NothingFound);
  expect(refused).toThrow(says);
});

test.each([
  [() => bestTrain(0, 4, [30, 80]), "lead must be greater than 0, got 0"],
  [() => bestTrain(1.5, -4, [30, 80]), "leadscrew_lead must be greater than 0, got -4"],
  [() => bestTrain(1.5, 4, [30, 80.5]), "gears must be a whole number of 1 or more, got 80.5"],
  [() => bestTrain(1.5, 4, [30, 80], 0), "rank must be a whole number of 1 or more, got 0"],
  [() => bestTrain(1.5, 4, [30, 80], 1, { largest: 0 }), "largest must be greater than 0, got 0"],
  [() => bestBoxedTrain(1.5, 4, [30, 80], [1, -1]), "ratios must be greater than 0, got -1"],
  [
    () => bestBoxedTrain(1.5, 4, [30, 80], Array(65).fill(1)),
    "ratios must be of at most 64 positions, got 65",
  ],
  [() => bestTrain(1.5, 4, [30, 80], 1, { clearance: -1 }), "clearance must be 0 or more, got -1"],
])("refusal %# names argument, bound and value", (refused, says) => {
  expect(refused).toThrow(RangeError);
  expect(refused).toThrow(says);
});

// By hand: 50 + 45 - 60 = 35 and 60 + 20 - 45 = 35, and 62 + 40 - 60 = 42 and 60 + 20 - 40 = 40; any other order of
// the same gears has less room.
test.each([
  [[20, 45, 50, 60], 10 / 3, 35, "50/45 × 60/20"],
  [[20, 40, 60, 62], 4.65, 40, "62/40 × 60/20"],
])("%j with coarse leads take the order that leaves room at the studs", (gears, ratio, room, train) => {
  expect(trainText(bestTrain(ratio, 1, gears, 1, { clearance: room }))).toBe(train);
  expect(trainText(bestTrain(ratio, 1, gears, 1, { clearance: room + 1 }))).not.toBe(train);
});
