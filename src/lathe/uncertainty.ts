/**
 * How far a measured size may be off, after the Guide to the expression of uncertainty in measurement, JCGM 100.
 *
 *     contribution       |sensitivity| x standard uncertainty of an input, in the unit of the result
 *     combined           root of the sum of the squares (independent inputs), 5.1.2
 *     effective freedom  combined^4 / sum of contribution^4 / freedom (Welch-Satterthwaite), G.4.1
 *     expanded           combined x Student's t for that freedom, G.4.1
 *
 * A freedom of 1e9 stands for one that is as good as without limit.
 */
import { finite, requireAbove, requireWithin } from "./bounds.ts";
import { studentFactor } from "./student.ts";

/** Mean of readings. @throws RangeError if there are none */
export function mean(readings: readonly number[]): number {
  if (readings.length === 0) throw new RangeError("readings must be at least 1, got 0");
  // Taken from the first reading, so that the digits that all share are not summed.
  const from = readings[0]!;
  return finite(
    "mean",
    from + readings.reduce((sum, reading) => sum + (reading - from), 0) / readings.length,
  );
}

/** Standard deviation of single readings, n - 1 in the denominator: JCGM 100, 4.2.2. @throws RangeError for less than two */
export function spread(readings: readonly number[]): number {
  if (readings.length < 2) throw new RangeError(`readings must be at least 2, got ${readings.length}`);
  const middle = mean(readings);
  const squares = readings.reduce((sum, reading) => sum + (reading - middle) ** 2, 0);
  return finite("spread", Math.sqrt(squares / (readings.length - 1)));
}

/** Standard uncertainty of the mean of the readings: JCGM 100, 4.2.3. @throws RangeError for less than two */
export function uncertaintyOfMean(readings: readonly number[]): number {
  return spread(readings) / Math.sqrt(readings.length);
}

/** How likely the places between two limits are. */
export type Likely = "even" | "middle" | "ends";

const DIVISORS = { even: Math.sqrt(3), middle: Math.sqrt(6), ends: Math.sqrt(2) } as const;

/**
 * Standard uncertainty of what is known to lie within limits: JCGM 100, 4.3.7 and 4.3.9 (all places alike, or the middle likelier),
 * H.1.3.4 (a cycle, mostly near its ends).
 *
 * @param halfWidth from the middle to a limit, 0 or more
 */
export function uncertaintyOfLimits(halfWidth: number, likely: Likely): number {
  requireWithin("half_width", halfWidth, 0);
  return halfWidth / DIVISORS[likely];
}

/** Standard uncertainty of reading to whole steps: step / (2 root 3), JCGM 100, F.2.2.1. @param step 0 or more */
export function uncertaintyOfResolution(step: number): number {
  requireWithin("step", step, 0);
  return step / Math.sqrt(12);
}

/** Combined standard uncertainty. @throws RangeError if there are no contributions */
export function combined(contributions: readonly number[]): number {
  if (contributions.length === 0) throw new RangeError("contributions must be at least 1, got 0");
  return finite("combined uncertainty", Math.hypot(...contributions));
}

/**
 * Effective degrees of freedom, not rounded.
 *
 * @param freedoms one for each contribution, above 0
 * @throws RangeError if they are not as many, one is not above 0, or every contribution is 0
 */
export function effectiveFreedom(contributions: readonly number[], freedoms: readonly number[]): number {
  if (freedoms.length !== contributions.length) {
    throw new RangeError(
      `freedoms must be ${contributions.length}, one a contribution, got ${freedoms.length}`,
    );
  }
  const whole = combined(contributions);
  if (whole === 0) throw new RangeError("contributions must not all be 0");
  const sum = contributions.reduce((total, contribution, i) => {
    requireAbove("freedoms", freedoms[i]!);
    return total + (contribution / whole) ** 4 / freedoms[i]!;
  }, 0);
  return 1 / sum;
}

/**
 * Expanded uncertainty.
 *
 * @param probability that the size lies within it: above 0 and at most 0.9999
 * @throws RangeError as for the effective freedom, or when that is below 1
 */
export function expanded(
  contributions: readonly number[],
  freedoms: readonly number[],
  probability: number,
): number {
  const freedom = effectiveFreedom(contributions, freedoms);
  return studentFactor(probability, freedom) * combined(contributions);
}
