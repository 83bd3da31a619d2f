/**
 * The best trains for a lead from the gears at hand, with or without a gearbox behind them.
 *
 * Every simple train and every compound train that meshes is a candidate, in every position of the gearbox. Errors are
 * compared as exact fractions; the floating-point error only sorts out the many that cannot matter.
 *
 * Source: geometry; clearance is common practice.
 */
import Fraction from "fraction.js";
import { NothingFound } from "../thread/failures.ts";
import { requireAbove, requireWhole, requireWithin } from "./bounds.ts";
import { exactly } from "./exact.ts";
import { setsOf } from "./gear-sets.ts";
import { type Boxed, type Train, trainText } from "./gears.ts";
import { smallestFirst } from "./smallest.ts";

/** Relative errors nearer to each other than this count as equal. */
const EQUAL = new Fraction(1, 1_000_000_000);
/** More than the rounding of a relative error held as a number. */
const ROUNDING = 1e-13;
/** Trains to look through grow with the fourth power of this. */
const MOST_SIZES = 48;
/** No gearbox has more, and every train is looked at in each. */
const MOST_POSITIONS = 64;

/** What is at hand besides the gears. */
export interface Room {
  /** Teeth that a pair must reach beyond the gear on the neighbouring stud: 2 + shaft or nut diameter / module. */
  readonly clearance?: number;
  /** Teeth of the largest wheel for which there is room; left out: any. */
  readonly largest?: number | undefined;
}

interface Ranked {
  readonly boxed: Boxed;
  readonly error: Fraction;
}

/**
 * The rank-th best train: by relative error (equal within 1e-9), then fewer gears, larger sum of teeth, larger first
 * driver.
 *
 * @param gears one number a gear at hand, repeats for several of a size; up to 48 sizes
 * @param rank whole, 1 for the best
 * @throws RangeError for a lead, gear, rank or room outside its range
 * @throws NothingFound when the gears make fewer trains than rank
 */
export function bestTrain(
  lead: number,
  leadscrewLead: number,
  gears: readonly number[],
  rank = 1,
  room: Room = {},
): Train {
  return bestBoxedTrain(lead, leadscrewLead, gears, [1], rank, room).train;
}

/**
 * The rank-th best train and position of a gearbox: by relative error, then as bestTrain, then the lower position.
 *
 * @param ratios turns of the lead screw for one of the gearbox's input, position by position; up to 64, each above 0
 * @throws as bestTrain
 */
export function bestBoxedTrain(
  lead: number,
  leadscrewLead: number,
  gears: readonly number[],
  ratios: readonly number[],
  rank = 1,
  { clearance = 15, largest }: Room = {},
): Boxed {
  const ratio = exactly("lead", lead).div(exactly("leadscrew_lead", leadscrewLead));
  const place = requireWhole("rank", rank, 1);
  requireWithin("clearance", clearance, 0);
  if (largest !== undefined) requireAbove("largest", largest);
  const held = gears
    .map((teeth) => requireWhole("gears", teeth, 1))
    .filter((teeth) => largest === undefined || teeth <= largest);
  const sizes = [...new Set(held)].sort((a, b) => a - b);
  if (sizes.length > MOST_SIZES) {
    throw new RangeError(`gears must be of at most ${MOST_SIZES} sizes, got ${sizes.length}`);
  }
  if (ratios.length > MOST_POSITIONS) {
    throw new RangeError(`ratios must be of at most ${MOST_POSITIONS} positions, got ${ratios.length}`);
  }
  const twice = new Set(sizes.filter((size) => held.indexOf(size) !== held.lastIndexOf(size)));
  const sets = setsOf(sizes, twice, clearance);
  const count = sets.length * ratios.length;
  if (place > count) throw new NothingFound(tooFew(place, count, held, largest));
  /** What the gears must give in each position. */
  const wanted = ratios.map((box) => ratio.div(exactly("ratios", box)));
  const furthest = least(sets.ratios, wanted, place);
  const near: Ranked[] = [];
  wanted.forEach((target, position) => {
    const value = target.valueOf();
    for (let i = 0; i < sets.length; i++) {
      if (Math.abs(sets.ratios[i]! / value - 1) > furthest) continue;
      const train = sets.train(i);
      near.push({ boxed: { train, position: position + 1 }, error: exactError(train, target) });
    }
  });
  return inOrder(near)[place - 1]!.boxed;
}

/** How far off a train may be and still be among the best so many: what is further cannot matter. */
function least(ratios: Float64Array, wanted: readonly Fraction[], place: number): number {
  let best = new Float64Array(0);
  let bound = Infinity;
  for (const target of wanted) {
    const value = target.valueOf();
    // The best of the positions before leave few to look at.
    const pool = new Float64Array(best.length + ratios.length);
    pool.set(best);
    let count = best.length;
    for (let i = 0; i < ratios.length; i++) {
      const error = Math.abs(ratios[i]! / value - 1);
      if (error <= bound) pool[count++] = error;
    }
    best = smallestFirst(pool.subarray(0, count), place).slice();
    if (best.length === place) bound = best.reduce((high, each) => Math.max(high, each));
  }
  return bound + EQUAL.valueOf() + ROUNDING * (1 + bound);
}

function tooFew(place: number, count: number, held: readonly number[], largest: number | undefined): string {
  if (count > 0) {
    return `rank must be at most ${count}, the number of trains that these gears make, got ${place}`;
  }
  const gears = held.length === 0 ? "no gears" : `the gears ${held.join(", ")}`;
  return `no train can be made of ${gears}${largest === undefined ? "" : ` up to ${largest} teeth`}`;
}

function exactError(train: Train, wanted: Fraction): Fraction {
  const [drivers, driven] = train.reduce(([a, b], [driver, driven]) => [a * driver, b * driven], [1, 1]);
  return new Fraction(drivers, driven).div(wanted).sub(1).abs();
}

/** Sorted by error; runs of equal errors, counted from the smallest of the run, by how handy they are. */
function inOrder(trains: readonly Ranked[]): readonly Ranked[] {
  const byError = [...trains].sort((x, y) => x.error.compare(y.error));
  const runs: Ranked[][] = [];
  for (const train of byError) {
    const run = runs.at(-1);
    if (run && train.error.sub(run[0]!.error).compare(EQUAL) <= 0) run.push(train);
    else runs.push([train]);
  }
  return runs.flatMap((run) => run.sort((x, y) => handier(x.boxed, y.boxed)));
}

function handier(x: Boxed, y: Boxed): number {
  const teeth = (train: Train) => train.flat().reduce((sum, size) => sum + size, 0);
  return (
    x.train.length - y.train.length ||
    teeth(y.train) - teeth(x.train) ||
    y.train[0]![0] - x.train[0]![0] ||
    x.position - y.position ||
    // Any fixed order will do for the rest.
    trainText(x.train).localeCompare(trainText(y.train))
  );
}
