// Against JCGM 100 (its example H.1, its table G.2), a sum of the t distribution, and a Monte Carlo run after JCGM 101.
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { verdict } from "../../src/lathe/decision.ts";
import { studentFactor } from "../../src/lathe/student.ts";
import {
  combined,
  effectiveFreedom,
  expanded,
  mean,
  spread,
  uncertaintyOfLimits,
  uncertaintyOfMean,
  uncertaintyOfResolution,
} from "../../src/lathe/uncertainty.ts";
import { veeOf } from "../../src/thread/groove.ts";
import { sensitivity } from "../../src/thread/wiremethods.ts";
import { overWires, pitchDiameterFrom, wiresOf } from "../../src/thread/wires.ts";
import { between, expectClose, seeded } from "./close.ts";

describe("the worked example of JCGM 100, H.1: an end gauge, in nanometres", () => {
  // Table H.1: 25 (18), 5.8 (24), 3.9 (5), 6.7 (8), 2.9 (50), 16.6 (2). Printed: u_c 32, freedom 16, t99 2.92, U99 93.
  test("comparator: 9.7 with 25.6 degrees of freedom", () => {
    expectClose(combined([5.8, 3.9, 6.7]), 9.7, 0.05);
    expectClose(effectiveFreedom([5.8, 3.9, 6.7], [24, 5, 8]), 25.6, 0.2);
  });

  test("limits become standard uncertainties", () => {
    // Plus or minus 0.05 degrees, anywhere alike: 0.029; a cycle of plus or minus 0.5 degrees: 0.35.
    expectClose(uncertaintyOfLimits(0.05, "even"), 0.029, 0.0005);
    expectClose(uncertaintyOfLimits(0.5, "ends"), 0.35, 0.005);
    // 50 mm x 11.5e-6 per degree x 0.029 degrees = 16.6 nm.
    expectClose(50e6 * 11.5e-6 * uncertaintyOfLimits(0.05, "even"), 16.6, 0.05);
  });

  test("together 32 with 16 degrees of freedom, 93 at 99 percent", () => {
    const [contributions, freedoms] = [
      [25, 9.7, 2.9, 16.6],
      [18, 25.6, 50, 2],
    ];
    expectClose(combined(contributions), 32, 0.5);
    expect(Math.floor(effectiveFreedom(contributions, freedoms))).toBe(16);
    expectClose(studentFactor(0.99, 16.7), 2.92, 0.005);
    expectClose(expanded(contributions, freedoms, 0.99), 93, 0.5);
  });
});

describe("Student's t", () => {
  // JCGM 100, table G.2, as printed to two decimals.
  test.each([
    [1, 0.6827, 1.84],
    [1, 0.95, 12.71],
    [1, 0.99, 63.66],
    [2, 0.95, 4.3],
    [2, 0.99, 9.92],
    [3, 0.95, 3.18],
    [4, 0.95, 2.78],
    [5, 0.95, 2.57],
    [5, 0.99, 4.03],
    [7, 0.95, 2.36],
    [8, 0.6827, 1.07],
    [10, 0.95, 2.23],
    [10, 0.9545, 2.28],
    [20, 0.95, 2.09],
    [50, 0.95, 2.01],
    [100, 0.95, 1.984],
    [1e9, 0.95, 1.96],
    [1e9, 0.9545, 2],
    [1e9, 0.99, 2.576],
  ])("for %d degrees of freedom at %d is %d", (freedom, probability, printed) => {
    expectClose(studentFactor(probability, freedom), printed, 0.0051);
  });

  test("leaves its share of the distribution, summed by steps, within it", () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 60 }), between(0.5, 0.995), (freedom, probability) => {
        const t = studentFactor(probability, freedom);
        const density = (x: number) => (1 + (x * x) / freedom) ** (-(freedom + 1) / 2);
        // Of all of it, by the angle whose tangent is x / root of freedom, so that the ends are reached.
        const sum = (to: number) => {
          const steps = 4000;
          let total = 0;
          for (let i = 0; i < steps; i++) {
            const angle = ((i + 0.5) / steps) * to;
            total += density(Math.tan(angle) * Math.sqrt(freedom)) / Math.cos(angle) ** 2;
          }
          return (total * to) / steps;
        };
        expectClose(sum(Math.atan(t / Math.sqrt(freedom))) / sum(Math.PI / 2), probability, 1e-6);
      }),
      { ...seeded, numRuns: 40 },
    );
  });

  test("falls as the freedom grows, without a step where the series changes", () => {
    for (const probability of [0.6827, 0.95, 0.99]) {
      const factors = [1, 2, 5, 20, 100, 398, 399, 400, 401, 1000, 1e6].map((n) =>
        studentFactor(probability, n),
      );
      for (let i = 1; i < factors.length; i++) expect(factors[i]!).toBeLessThan(factors[i - 1]!);
      const [a, b, c] = [399, 400, 401].map((n) => studentFactor(probability, n)) as [number, number, number];
      expectClose(a - b, b - c, 3e-7);
    }
  });
});

describe("repeat readings", () => {
  // By hand: deviations -1, 2, -2, 1, 0 micrometres, squares 10, / 4.
  const readings = [12.352, 12.355, 12.351, 12.354, 12.353];

  test("have a mean, a spread, and an uncertainty of the mean", () => {
    expectClose(mean(readings), 12.353, 1e-12);
    expectClose(spread(readings), Math.sqrt(2.5) / 1000, 1e-12);
    expectClose(uncertaintyOfMean(readings), Math.sqrt(0.5) / 1000, 1e-12);
  });

  test("scale with the unit of length and do not mind an offset", () => {
    fc.assert(
      fc.property(
        fc.array(between(-0.02, 0.02), { minLength: 2, maxLength: 12 }),
        between(1, 200),
        (errors, size) => {
          const those = errors.map((error) => size + error);
          expectClose(spread(those), spread(errors), 1e-12 * size);
          expectClose(spread(those.map((reading) => reading / 25.4)) * 25.4, spread(those), 1e-12 * size);
          expectClose(mean(those.map((reading) => reading / 25.4)) * 25.4, mean(those), 1e-12 * size);
        },
      ),
      seeded,
    );
  });
});

/** Even numbers from 0 to 1 from a seed: a multiply-and-shift generator. */
function randomFrom(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
}

describe("a pitch diameter over wires", () => {
  // M12x1.75 over 1.1 mm wires: every input drawn 40,000 times from its own distribution, after JCGM 101.
  test("spreads as the contributions say, and U holds 95 of 100 results", () => {
    const random = randomFrom(20261125);
    const normal = () => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
    const even = (halfWidth: number) => halfWidth * (2 * random() - 1);
    const wires = wiresOf(veeOf(1.75, 60), 1.1, undefined);
    const reading = overWires(10.8, wires);
    const limits = { wire: 0.002, pitch: 0.004, angle: 0.5 } as const;
    const [step, repeat] = [0.01, 0.003];
    const contributions = [
      uncertaintyOfResolution(step) * sensitivity("reading", reading, wires),
      repeat * sensitivity("reading", reading, wires),
      ...(["wire", "pitch", "angle"] as const).map(
        (input) => uncertaintyOfLimits(limits[input], "even") * sensitivity(input, reading, wires),
      ),
    ];
    const uncertainty = combined(contributions);
    const U = expanded(
      contributions,
      contributions.map(() => 1e9),
      0.95,
    );
    const found: number[] = [];
    for (let draw = 0; draw < 40_000; draw++) {
      const pitch = 1.75 + even(limits.pitch);
      const vee = veeOf(pitch, 60 + even(limits.angle));
      const read = reading + even(step / 2) + repeat * normal();
      found.push(pitchDiameterFrom(read, wiresOf(vee, 1.1 + even(limits.wire), undefined)));
    }
    // The spread of 40,000 draws is known to 0.4 percent, and their share within U to 0.2 percent.
    expectClose(spread(found) / uncertainty, 1, 0.015);
    expectClose(found.filter((E) => Math.abs(E - 10.8) <= U).length / found.length, 0.95, 0.01);
    expectClose(mean(found), 10.8, 0.05 * uncertainty);
  });
});

describe("the verdict of ISO 14253-1", () => {
  test.each([
    [10.684, "in"],
    [10.6839, "can't be told"],
    [10.6741, "can't be told"],
    [10.6739, "out"],
    [10.824, "in"],
    [10.8241, "can't be told"],
    [10.8339, "can't be told"],
    [10.8341, "out"],
  ] as const)("limits 10.679 to 10.829, U 0.005: %d is %s", (value, says) => {
    expect(verdict(value, 0.005, 10.679, 10.829)).toBe(says);
  });

  test("without uncertainty every size is in or out, and more uncertainty never proves more", () => {
    fc.assert(
      fc.property(between(10.6, 10.9), between(0, 0.1), between(0, 0.1), (value, one, other) => {
        const plain = verdict(value, 0, 10.679, 10.829);
        expect(plain).toBe(value >= 10.679 && value <= 10.829 ? "in" : "out");
        const [less, more] = [Math.min(one, other), Math.max(one, other)];
        const [sure, unsure] = [verdict(value, less, 10.679, 10.829), verdict(value, more, 10.679, 10.829)];
        if (unsure !== "can't be told") expect([unsure, sure]).toEqual([plain, plain]);
      }),
      seeded,
    );
  });

  test("tolerance narrower than twice the uncertainty can never be proved kept", () => {
    for (let value = 0.9; value < 1.1; value += 0.001)
      expect(verdict(value, 0.03, 0.98, 1.02)).not.toBe("in");
  });
});

describe("what cannot be reckoned", () => {
  test.each([
    [() => mean([]), "readings must be at least 1, got 0"],
    [() => spread([1]), "readings must be at least 2, got 1"],
    [() => combined([]), "contributions must be at least 1, got 0"],
    [() => effectiveFreedom([1, 2], [5]), "freedoms must be 2, one a contribution, got 1"],
    [() => effectiveFreedom([1], [0]), "freedoms must be greater than 0, got 0"],
    [() => effectiveFreedom([0], [5]), "contributions must not all be 0"],
    [() => studentFactor(0, 5), "probability must be above 0 and at most 0.9999, got 0"],
    [() => studentFactor(0.95, 0.9), "freedom must be 1 or more, got 0.9"],
    [() => uncertaintyOfLimits(-1, "even"), "half_width must be 0 or more, got -1"],
    [() => verdict(1, -0.1, 0, 2), "uncertainty must be 0 or more, got -0.1"],
    [() => verdict(1, 0.1), "lower or upper must be given, got neither"],
    [() => verdict(1, 0.1, 2, 1), "lower must not be above upper 1, got 2"],
  ])("refusal %# names argument, bound and value", (refused, message) => {
    expect(refused).toThrow(RangeError);
    expect(refused).toThrow(message);
  });
});
