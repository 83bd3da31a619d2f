import fc from "fast-check";
import { expect } from "vitest";

/** Holds when both agree to `within`; the default is half of the seventh decimal that is printed. */
export function expectClose(actual: number, expected: number, within = 5.1e-8): void {
  expect(Math.abs(actual - expected), `${actual} against ${expected}`).toBeLessThanOrEqual(within);
}

/** Properties are drawn from one seed, so that a failure can be repeated. */
export const seeded = { seed: 20261125 } as const;

/** Numbers spread evenly over a range, in 1/100,000 of it; fc.double draws by bit pattern, so mostly next to 0. */
export function between(low: number, high: number): fc.Arbitrary<number> {
  return fc.integer({ min: 0, max: 100_000 }).map((k) => low + ((high - low) * k) / 100_000);
}
