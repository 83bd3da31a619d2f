/**
 * What the search for change gears costs: a set of 25 wheels, plain and behind a gearbox of 26 positions, as ratios to
 * looking through every compound train of that set once, in plain loops, for the least error alone.
 *
 * Milliseconds depend on the machine; the ratios are what to compare. Variants take turns, medians are printed.
 */
import { bestBoxedTrain, bestTrain } from "../../src/lathe/gear-search.ts";

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

const searches = [
  { name: "least error in plain loops", run: plainLoops },
  { name: "best train of 25 wheels", run: (lead: number) => bestTrain(lead, screw, gears) },
  { name: "30th best train of 25 wheels", run: (lead: number) => bestTrain(lead, screw, gears, 30) },
  {
    name: "best train of 25 wheels in 26 positions",
    run: (lead: number) => bestBoxedTrain(lead, screw, gears, positions),
  },
] as const;

/** Prints what each search takes, the slowest round too: the first, before the code is warm. */
export function gearTimes(rounds: number, median: (times: readonly number[]) => number): void {
  const variants = searches.map((search) => ({ ...search, times: [] as number[] }));
  for (let round = 0; round < rounds; round++) {
    // A lead apiece, so that nothing could be remembered from the round before.
    const lead = 0.5 + round * 0.173;
    for (const { run, times } of variants) {
      const start = performance.now();
      run(lead);
      times.push(performance.now() - start);
    }
  }
  const base = median(variants[0]!.times);
  console.log(`\nchange gears, medians of ${rounds} rounds; a search is to stay below 50 ms`);
  for (const { name, times } of variants) {
    console.log(
      `${name.padEnd(50)} ${median(times).toFixed(1).padStart(8)} ms ${(median(times) / base).toFixed(1).padStart(6)} x plain loops` +
        `   slowest ${Math.max(...times).toFixed(1)} ms`,
    );
  }
}
