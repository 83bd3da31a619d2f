// Elastic compression against closed forms, a handbook's formula and Hertz's integrals summed here another way.
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  compressionOverWires,
  crossedApproach,
  lineApproach,
  STEEL,
  yielding,
} from "../../src/thread/compression.ts";
import { veeOf } from "../../src/thread/groove.ts";
import { between, expectClose, seeded } from "../lathe/close.ts";

const steel = { force: 5, anvil: 6.5, wireModulus: STEEL, workModulus: STEEL };
const bothSteel = 2 * yielding(STEEL);

/** Hertz, with the elliptic integrals summed over equal steps: of such a periodic function the sum is exact to rounding. */
function hertz(force: number, one: number, other: number, give: number): number {
  const integral = (f: (sine: number) => number) => {
    const steps = 20_000;
    let sum = 0;
    for (let i = 0; i < steps; i++) sum += f(Math.sin(((i + 0.5) / steps) * (Math.PI / 2)) ** 2);
    return (sum / steps) * (Math.PI / 2);
  };
  const [small, large] = [Math.min(one, other), Math.max(one, other)];
  const integrals = (k: number) => {
    const e2 = 1 - k * k;
    return { K: integral((s) => 1 / Math.sqrt(1 - e2 * s)), E: integral((s) => Math.sqrt(1 - e2 * s)), e2 };
  };
  let [low, high] = [1e-3, 0.999];
  for (let step = 0; step < 50; step++) {
    const k = (low + high) / 2;
    const { K, E } = integrals(k);
    // K. L. Johnson, Contact mechanics, eq. 4.26 and 4.27.
    if ((E / (k * k) - K) / (K - E) > large / small) low = k;
    else high = k;
  }
  const { K, E, e2 } = integrals(low);
  const long = Math.cbrt(((3 / 2) * force * give * large * (K - E)) / e2);
  return ((3 / 2) * force * give * K) / long;
}

describe("crossed cylinders", () => {
  // Two of equal diameter touch as a ball of that diameter touches a plane: (9 F^2 / (16 R E*^2))^(1/3), 1/E* = pi (V1 + V2).
  test("of equal diameter give way like a ball on a plane", () => {
    fc.assert(
      fc.property(between(0.1, 50), between(0.5, 20), (force, diameter) => {
        const ball = Math.cbrt((9 * (force * Math.PI * bothSteel) ** 2) / (16 * (diameter / 2)));
        expectClose(crossedApproach(force, diameter, diameter, bothSteel), ball, 1e-9 * ball);
      }),
      seeded,
    );
  });

  // NIST Monograph 180, The gauge block handbook, appendix D: 2.231 P^(2/3) (V1 + V2)^(2/3) D^(-1/3); its example 1, 1 N on a
  // 6 mm diamond ball against steel, V = 43e-8 and 139e-8: 0.18 um.
  test("agree with the formula and the worked example of the gauge block handbook", () => {
    expectClose(crossedApproach(1, 6, 6, 182e-8) * 1000, 0.18, 0.005);
    expectClose(crossedApproach(1, 6, 6, 182e-8), 2.231 * 182e-8 ** (2 / 3) * 6 ** (-1 / 3), 1e-8);
    // Its V for steel, which also fits 208 GPa.
    expectClose(yielding(STEEL) * 1e8, 139, 0.5);
  });

  test.each([
    [5, 1, 21.726],
    [2.5, 0.5, 3],
    [10, 3, 70.7],
    [1, 0.17, 12],
  ])("%d N on diameters %d and %d give way as Hertz's integrals say", (force, one, other) => {
    const expected = hertz(force, one, other, bothSteel);
    expectClose(crossedApproach(force, one, other, bothSteel), expected, 1e-7 * expected);
    expect(crossedApproach(force, other, one, bothSteel)).toBe(crossedApproach(force, one, other, bothSteel));
  });
});

describe("a cylinder on a plane", () => {
  test("gives way as the pressure on the strip says, summed over the strip", () => {
    // Half-ellipse pressure over the half width b, b^2 = 2 p (V1 + V2) D, along 2 a: displacement under the middle,
    // (V1 + V2) times the sum of load / distance. Along the strip the sum of 1 / distance is 2 asinh(a / x).
    const [force, D, length] = [5, 1, 6.5];
    const p = force / length;
    const b = Math.sqrt(2 * p * bothSteel * D);
    let sum = 0;
    const steps = 200_000;
    for (let i = 0; i < steps; i++) {
      const x = ((i + 0.5) / steps) * b;
      sum += Math.sqrt(1 - (x / b) ** 2) * 2 * Math.asinh(length / 2 / x) * (b / steps);
    }
    const under = bothSteel * ((2 * p) / (Math.PI * b)) * 2 * sum;
    expectClose(lineApproach(force, D, length, bothSteel), under, 1e-4 * under);
  });

  test("does not give way without force", () => {
    expect(lineApproach(0, 1, 6.5, bothSteel)).toBe(0);
  });
});

describe("over three wires", () => {
  // Hertz's equations solved to 25 digits with another library's elliptic integrals.
  test.each([
    [10.863, veeOf(1.75, 60), 1, 5, 0.002299251584],
    [50, veeOf(4, 52, 7), 3, 10, 0.002535242896],
  ])("pitch diameter %d squeezes by micrometres", (E, vee, wire, force, expected) => {
    expectClose(compressionOverWires(E, vee, wire, { ...steel, force }), expected, 1e-10);
  });

  test("soft work gives way more, no force not at all, and more force more", () => {
    const vee = veeOf(1.75, 60);
    const of = (change: object) => compressionOverWires(10.863, vee, 1, { ...steel, ...change });
    expect(of({ workModulus: 100 })).toBeGreaterThan(of({}));
    expect(of({ force: 10 })).toBeGreaterThan(of({}));
    expect(of({ force: 0 })).toBe(0);
  });

  test.each([
    [{ force: -1 }, "force must be 0 or more, got -1"],
    [{ anvil: 0 }, "anvil must be greater than 0, got 0"],
    [{ workModulus: 0 }, "modulus must be greater than 0, got 0"],
  ])("%o is refused", (change, message) => {
    expect(() => compressionOverWires(10, veeOf(1.5, 60), 0.9, { ...steel, ...change })).toThrow(message);
  });

  test("a flank square to the axis is refused", () => {
    expect(() => compressionOverWires(10, veeOf(1.5, 45, 0), 0.9, steel)).toThrow(
      "both flanks must be above 0 degrees",
    );
  });
});
