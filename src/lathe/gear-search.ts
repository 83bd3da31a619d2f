/**
 * The best trains for a lead from the gears at hand.
 *
 * Every simple train and every compound train that meshes is a candidate. Errors are compared as exact fractions; the
 * floating-point error only sorts out the many that cannot matter.
 *
 * Source: geometry; clearance is common practice.
 */
import Fraction from "fraction.js";
import { NothingFound } from "../thread/failures.ts";
import { requireWhole, requireWithin } from "./bounds.ts";
import { exactly } from "./exact.ts";
import { type Train, trainText } from "./gears.ts";

/** Relative errors nearer to each other than this count as equal. */
const EQUAL = new Fraction(1, 1_000_000_000);
/** More than the rounding of a relative error held as a number. */
const ROUNDING = 1e-13;
/** Trains to look through grow with the fourth power of this. */
const MOST_SIZES = 48;

interface Ranked {
  readonly train: Train;
  readonly error: Fraction;
}

/**
 * The rank-th best train: by relative error (equal within 1e-9), then fewer gears, larger sum of teeth, larger first
 * driver.
 *
 * @param gears one number a gear at hand, repeats for several of a size; up to 48 sizes
 * @param rank whole, 1 for the best
 * @param clearance how many teeth a pair must reach beyond the gear on the neighbouring stud: 2 + shaft or nut
 *   diameter / module
 * @throws RangeError for a lead, gear, rank or clearance outside its range
 * @throws NothingFound when the gears make fewer trains than rank
 */
export function bestTrain(
  lead: number,
  leadscrewLead: number,
  gears: readonly number[],
  rank = 1,
  clearance = 15,
): Train {
  const wanted = exactly("lead", lead).div(exactly("leadscrew_lead", leadscrewLead));
  const place = requireWhole("rank", rank, 1);
  requireWithin("clearance", clearance, 0);
  const held = gears.map((teeth) => requireWhole("gears", teeth, 1));
  const sizes = [...new Set(held)].sort((a, b) => a - b);
  if (sizes.length > MOST_SIZES) {
    throw new RangeError(`gears must be of at most ${MOST_SIZES} sizes, got ${sizes.length}`);
  }
  const twice = new Set(sizes.filter((size) => held.indexOf(size) !== held.lastIndexOf(size)));
  const sets = setsOf(sizes, twice, clearance, wanted.valueOf());
  if (place > sets.length) {
    throw new NothingFound(
      sets.length === 0
        ? `no train can be made of ${gears.length === 0 ? "no gears" : `the gears ${gears.join(", ")}`}`
        : `rank must be at most ${sets.length}, the number of trains that these gears make, got ${place}`,
    );
  }
  const least = sets.errors.slice().sort()[place - 1]!;
  const furthest = least + EQUAL.valueOf() + ROUNDING * (1 + least);
  const near: Ranked[] = [];
  for (let i = 0; i < sets.length; i++) {
    if (sets.errors[i]! > furthest) continue;
    const train = arranged(sets.sides[sets.drivers[i]!]!, sets.sides[sets.driven[i]!]!);
    near.push({ train, error: exactError(train, wanted) });
  }
  return inOrder(near)[place - 1]!.train;
}

/** One or two gears on one side of a train. */
type Side = readonly [number] | readonly [low: number, high: number];

/**
 * All sets of drivers and driven that make a train, with their relative errors, near enough to sort out what cannot
 * matter. Kept as columns of numbers: a box of 25 gears makes some 75,000, and a train apiece would cost more than the search.
 */
interface Sets {
  readonly sides: readonly Side[];
  readonly length: number;
  /** Places among the sides. */
  readonly drivers: Uint16Array;
  readonly driven: Uint16Array;
  readonly errors: Float64Array;
}

function setsOf(
  sizes: readonly number[],
  twice: ReadonlySet<number>,
  clearance: number,
  ratio: number,
): Sets {
  const singles = sizes.map((size): Side => [size]);
  const pairs = sizes.flatMap((low, i) =>
    sizes.slice(twice.has(low) ? i : i + 1).map((high): Side => [low, high]),
  );
  const sides = [...singles, ...pairs];
  const most = singles.length ** 2 + pairs.length ** 2;
  const [drivers, driven] = [new Uint16Array(most), new Uint16Array(most)];
  const errors = new Float64Array(most);
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
      errors[length] = Math.abs((low * (high ?? 1)) / (lowDriven * (highDriven ?? 1)) / ratio - 1);
      length++;
    }
  }
  return { sides, length, drivers, driven, errors: errors.subarray(0, length) };
}

/** Teeth by which the tighter of the two pairs of a/b × c/d reaches past the gear on the next stud. */
function room(a: number, b: number, c: number, d: number): number {
  return Math.min(a + b - c, c + d - b);
}

/** The most room that these drivers and driven can have in any of their four arrangements. */
function mostRoom(a: number, c: number, b: number, d: number): number {
  return Math.max(room(a, b, c, d), room(a, d, c, b), room(c, b, a, d), room(c, d, a, b));
}

function exactError(train: Train, wanted: Fraction): Fraction {
  const [drivers, driven] = train.reduce(([a, b], [driver, driven]) => [a * driver, b * driven], [1, 1]);
  return new Fraction(drivers, driven).div(wanted).sub(1).abs();
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

/** Sorted by error; runs of equal errors, counted from the smallest of the run, by the other three. */
function inOrder(trains: readonly Ranked[]): readonly Ranked[] {
  const byError = [...trains].sort((x, y) => x.error.compare(y.error));
  const runs: Ranked[][] = [];
  for (const train of byError) {
    const run = runs.at(-1);
    if (run && train.error.sub(run[0]!.error).compare(EQUAL) <= 0) run.push(train);
    else runs.push([train]);
  }
  return runs.flatMap((run) => run.sort(handier));
}

function handier({ train: x }: Ranked, { train: y }: Ranked): number {
  const teeth = (train: Train) => train.flat().reduce((sum, size) => sum + size, 0);
  return (
    x.length - y.length ||
    teeth(y) - teeth(x) ||
    y[0]![0] - x[0]![0] ||
    // Any fixed order will do for the rest.
    trainText(x).localeCompare(trainText(y))
  );
}
