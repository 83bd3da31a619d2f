/**
 * Every set of drivers and driven gears that makes a train, simple or compound, and the arrangement of a set that has the
 * most room at the studs.
 *
 * Source: geometry; clearance is common practice.
 */
import type { Train } from "./gears.ts";

/** One or two gears on one side of a train. */
type Side = readonly [number] | readonly [low: number, high: number];

/**
 * All sets of drivers and driven that make a train, with the ratio of each. Kept as columns of numbers: a box of 25 gears
 * makes some 75,000, and a train apiece would cost more than the search.
 */
export interface Sets {
  readonly length: number;
  /** Drivers over driven. */
  readonly ratios: Float64Array;
  readonly train: (i: number) => Train;
}

/**
 * @param sizes different ones, rising
 * @param twice those of which two are at hand
 * @param clearance how many teeth a pair must reach beyond the gear on the neighbouring stud
 */
export function setsOf(sizes: readonly number[], twice: ReadonlySet<number>, clearance: number): Sets {
  const singles = sizes.map((size): Side => [size]);
  const pairs = sizes.flatMap((low, i) =>
    sizes.slice(twice.has(low) ? i : i + 1).map((high): Side => [low, high]),
  );
  const sides = [...singles, ...pairs];
  const most = singles.length ** 2 + pairs.length ** 2;
  // Places among the sides.
  const [drivers, driven] = [new Uint16Array(most), new Uint16Array(most)];
  const ratios = new Float64Array(most);
  let length = 0;
  for (let i = 0; i < sides.length; i++) {
    const [low, high] = sides[i]!;
    const simple = high === undefined;
    const last = simple ? singles.length : sides.length;
    for (let j = simple ? 0 : singles.length; j < last; j++) {
      const [lowDriven, highDriven] = sides[j]!;
      if (simple) {
        if (low === lowDriven && !twice.has(low)) continue;
      } else {
        // A size on both sides would only cancel itself.
        if (low === lowDriven || low === highDriven || high === lowDriven || high === highDriven) continue;
        if (mostRoom(low, high, lowDriven, highDriven!) < clearance) continue;
      }
      drivers[length] = i;
      driven[length] = j;
      ratios[length] = (low * (high ?? 1)) / (lowDriven * (highDriven ?? 1));
      length++;
    }
  }
  return {
    length,
    ratios: ratios.subarray(0, length),
    train: (i) => arranged(sides[drivers[i]!]!, sides[driven[i]!]!),
  };
}

/** Teeth by which the tighter of the two pairs of a/b × c/d reaches past the gear on the next stud. */
function room(a: number, b: number, c: number, d: number): number {
  return Math.min(a + b - c, c + d - b);
}

/** The most room that these drivers and driven can have in any of their four arrangements. */
function mostRoom(a: number, c: number, b: number, d: number): number {
  return Math.max(room(a, b, c, d), room(a, d, c, b), room(c, b, a, d), room(c, d, a, b));
}

/**
 * The drivers and driven as a train: a/b, or a/b × c/d with the most room at the studs; a tie goes to the larger a, then
 * to the larger b.
 */
function arranged([low, high]: Side, [lowDriven, highDriven]: Side): Train {
  if (high === undefined || highDriven === undefined) return [[low, lowDriven]];
  // The first of equals stays: the larger a and the larger b are tried first.
  const ways = [
    [high, highDriven, low, lowDriven],
    [high, lowDriven, low, highDriven],
    [low, highDriven, high, lowDriven],
    [low, lowDriven, high, highDriven],
  ] as const;
  let best: (typeof ways)[number] = ways[0];
  for (const way of ways) if (room(...way) > room(...best)) best = way;
  const [a, b, c, d] = best;
  return [
    [a, b],
    [c, d],
  ];
}
