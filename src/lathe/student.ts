/**
 * Student's t for whole degrees of freedom: the factor that an estimate from few readings has to be widened by.
 *
 * Source: the finite series of M. Abramowitz and I. A. Stegun, Handbook of mathematical functions, 26.7.3 and 26.7.4, solved by
 * halving; from 400 degrees of freedom their 26.7.5; compared with JCGM 100, table G.2, in the tests.
 */

/** Degrees of freedom from which the series in 1/freedom is exact to ten digits. */
const MANY = 400;
const HALVINGS = 80;

/** Share of the distribution between -t and t. @param freedom a whole number of 1 or more */
function shareWithin(t: number, freedom: number): number {
  const angle = Math.atan(t / Math.sqrt(freedom));
  const [sine, cosine] = [Math.sin(angle), Math.cos(angle)];
  const square = cosine * cosine;
  const odd = freedom % 2 === 1;
  // Odd: cos + (2/3) cos^3 + ...; even: 1 + (1/2) cos^2 + ...; each to the power freedom - 2.
  let term = odd ? cosine : 1;
  let sum = freedom === 1 ? 0 : term;
  for (let n = odd ? 3 : 2; n <= freedom - 2; n += 2) {
    term *= (square * (n - 1)) / n;
    sum += term;
  }
  return odd ? (2 / Math.PI) * (angle + sine * sum) : sine * sum;
}

/** Share of the normal distribution between -z and z, by the series of A&S 26.2.11. */
function normalShare(z: number): number {
  let term = z;
  let sum = z;
  for (let n = 3; term > 1e-18 * sum; n += 2) {
    term *= (z * z) / n;
    sum += term;
  }
  return (2 * sum * Math.exp((-z * z) / 2)) / Math.sqrt(2 * Math.PI);
}

function byHalving(share: (x: number) => number, wanted: number, most: number): number {
  let [low, high] = [0, most];
  for (let step = 0; step < HALVINGS; step++) {
    const middle = (low + high) / 2;
    if (share(middle) < wanted) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/**
 * The t that leaves `probability` between -t and t.
 *
 * @param probability above 0 and at most 0.9999
 * @param freedom degrees of freedom; what is past the whole number is dropped, as JCGM 100, G.4.1, has it
 * @throws RangeError outside those ranges, or for less than one degree of freedom
 */
export function studentFactor(probability: number, freedom: number): number {
  if (!(probability > 0 && probability <= 0.9999)) {
    throw new RangeError(`probability must be above 0 and at most 0.9999, got ${probability}`);
  }
  if (!(freedom >= 1)) throw new RangeError(`freedom must be 1 or more, got ${freedom}`);
  const whole = Math.floor(freedom + 1e-9);
  if (whole < MANY) return byHalving((t) => shareWithin(t, whole), probability, 1e4);
  const z = byHalving(normalShare, probability, 8);
  const [z3, z5, z7] = [z ** 3, z ** 5, z ** 7];
  return (
    z +
    (z3 + z) / (4 * whole) +
    (5 * z5 + 16 * z3 + 3 * z) / (96 * whole ** 2) +
    (3 * z7 + 19 * z5 + 17 * z3 - 15 * z) / (384 * whole ** 3)
  );
}
