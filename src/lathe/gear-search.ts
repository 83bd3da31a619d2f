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

interface Candidate {
  readonly train: Train;
  /** Relative, near enough to sort out what cannot matter. */
  readonly roughly: number;
}

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
  const ratio = wanted.valueOf();
  const all = [...simpleTrains(sizes, twice), ...compoundTrains(sizes, twice, clearance)].map(
    (train): Candidate => ({ train, roughly: Math.abs(ratioOf(train) / ratio - 1) }),
  );
  if (place > all.length) {
    throw new NothingFound(
      all.length === 0
        ? `no train can be made of ${gears.length === 0 ? "no gears" : `the gears ${gears.join(", ")}`}`
        : `rank must be at most ${all.length}, the number of trains that these gears make, got ${place}`,
    );
  }
  const errors = Float64Array.from(all, ({ roughly }) => roughly).sort();
  const furthest = errors[place - 1]! + EQUAL.valueOf() + ROUNDING * (1 + errors[place - 1]!);
  const near = all.filter(({ roughly }) => roughly <= furthest);
  return inOrder(near.map(({ train }) => ({ train, error: exactError(train, wanted) })))[place - 1]!.train;
}

function ratioOf(train: Train): number {
  return train.reduce((ratio, [driver, driven]) => (ratio * driver) / driven, 1);
}

function exactError(train: Train, wanted: Fraction): Fraction {
  const [drivers, driven] = train.reduce(([a, b], [driver, driven]) => [a * driver, b * driven], [1, 1]);
  return new Fraction(drivers, driven).div(wanted).sub(1).abs();
}

function* simpleTrains(sizes: readonly number[], twice: ReadonlySet<number>): Generator<Train> {
  for (const driver of sizes) {
    for (const driven of sizes) if (driver !== driven || twice.has(driver)) yield [[driver, driven]];
  }
}

/** Each set of two drivers and two driven that meshes, once. A size on both sides would only cancel itself. */
function* compoundTrains(
  sizes: readonly number[],
  twice: ReadonlySet<number>,
  clearance: number,
): Generator<Train> {
  const pairs = sizes.flatMap((low, i) =>
    sizes.slice(twice.has(low) ? i : i + 1).map((high): readonly [number, number] => [low, high]),
  );
  for (const drivers of pairs) {
    for (const driven of pairs) {
      if (driven.some((size) => size === drivers[0] || size === drivers[1])) continue;
      const train = arranged(drivers, driven, clearance);
      if (train !== undefined) yield train;
    }
  }
}

/**
 * a/b × c/d with the most room at the studs: the smaller of a + b - c and c + d - b as great as it can be; a tie goes to
 * the larger a, then to the larger b.
 */
function arranged(
  [lowDriver, highDriver]: readonly [number, number],
  [lowDriven, highDriven]: readonly [number, number],
  clearance: number,
): Train | undefined {
  let most = -Infinity;
  let best: Train | undefined;
  // The first of equals stays: the larger a and the larger b are tried first.
  for (const [a, c] of [
    [highDriver, lowDriver],
    [lowDriver, highDriver],
  ] as const) {
    for (const [b, d] of [
      [highDriven, lowDriven],
      [lowDriven, highDriven],
    ] as const) {
      const room = Math.min(a + b - c, c + d - b);
      if (room > most) {
        most = room;
        best = [
          [a, b],
          [c, d],
        ];
      }
    }
  }
  return most >= clearance ? best : undefined;
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
