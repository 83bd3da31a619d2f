/**
 * Leads as exact fractions: 3.175 is 127/40, and 25.4/12, which no number holds exactly, is 127/60.
 *
 * Source: continued fractions. A fraction p/q that lies within 1/(2 q q) of a number is one of its convergents, so a
 * lead that was meant as a fraction is found as that fraction.
 */
import Fraction from "fraction.js";
import { requireAbove, requireWithin } from "./bounds.ts";

/** A number that a few multiplications and divisions have rounded is off by no more than its size over this. */
const ROUNDING = 2n ** 48n;

/** Far beyond any lead, and near enough that no arithmetic with such fractions leaves what a number can hold. */
const FARTHEST = 1e9;

/**
 * @returns the first convergent that agrees to the last few bits
 * @throws RangeError unless value is above 0, and from 1e-9 to 1e9
 */
export function exactly(name: string, value: number): Fraction {
  requireAbove(name, value);
  requireWithin(name, value, 1 / FARTHEST, FARTHEST);
  const [top, bottom] = binaryFraction(value);
  let [n, d] = [top, bottom];
  let [p0, q0, p, q] = [0n, 1n, 1n, 0n];
  for (;;) {
    const whole = n / d;
    [p0, p] = [p, whole * p + p0];
    [q0, q] = [q, whole * q + q0];
    [n, d] = [d, n - whole * d];
    const off = top * q - p * bottom;
    if (d === 0n || (off < 0n ? -off : off) * ROUNDING <= top * q) return new Fraction(p, q);
  }
}

/** What the number holds, bit for bit. */
function binaryFraction(value: number): readonly [bigint, bigint] {
  let bottom = 1n;
  let top = value;
  while (!Number.isInteger(top)) {
    top *= 2;
    bottom *= 2n;
  }
  return [BigInt(top), bottom];
}
