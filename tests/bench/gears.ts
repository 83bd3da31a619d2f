/**
 * What the search for change gears costs: a set of 25 wheels, plain and behind a gearbox of 26 positions, as ratios to
 * looking through every compound train of that set once, in plain loops, for the least error alone.
 *
 * Milliseconds depend on the machine; the ratios are what to compare. Variants take turns, medians are printed.
 */
import { bestBoxedTrain, bestTrain } from "../../src/lathe/gear-search.ts";

const rounds = 15;
const gears = Array.from({ length: 25 }, (_, i) => 20 + 3 * i);
const positions = Array.from({ length: 26 }, (_, i) => (i + 6) / 12);
const screw = 3.175;

/** Least relative error of any a/b × c/d, meshing or not. */
function plainLoops(lead: number): number {
  let least = Infinity;
  for (const a of gears) {
    for (const c of gears) {
      if (c <= a) continue;
      for (const b of gears) {
        if (b === a || b === c) continue;
        for (const d of gears) {
          if (d <= b || d === a || d === c) continue;
          least = Math.min(least, Math.abs((a * c * screw) / (b * d * lead) - 1));
        }
      }
    }
  }
  return least;
}

const variants = [
  { name: "least error in plain loops", run: plainLoops },
  { name: "best train of 25 wheels", run: (lead: number) => bestTrain(lead, screw, gears) },
  { name: "30th best train of 25 wheels", run: (lead: number) => bestTrain(lead, screw, gears, 30) },
  {
    name: "best train of 25 wheels in 26 positions",
    run: (lead: number) => bestBoxedTrain(lead, screw, gears, positions),
  },
].map((variant) => ({ ...variant, times: [] as number[] }));

for (let round = 0; round < rounds; round++) {
  // A lead apiece, so that nothing could be remembered from the round before.
  const lead = 0.5 + round * 0.173;
  for (const variant of variants) {
    const start = performance.now();
    variant.run(lead);
    variant.times.push(performance.now() - start);
  }
}

const median = (times: readonly number[]): number =>
  [...times].sort((a, b) => a - b)[Math.floor(times.length / 2)]!;
const base = median(variants[0]!.times);
console.log(
  `\nchange gears, medians of ${rounds} rounds; the slowest round is the first, before the code is warm`,
);
for (const { name, times } of variants) {
  console.log(
    `${name.padEnd(42)} ${median(times).toFixed(1).padStart(7)} ms ${(median(times) / base).toFixed(1).padStart(6)} x plain loops` +
      `   slowest ${Math.max(...times).toFixed(1)} ms`,
  );
}
