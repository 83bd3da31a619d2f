/**
 * What whole schedules and their grooves cost: five strategies of one thread, as ratios to the areas alone by the closed
 * form of one tool, which knows neither chips nor overcut.
 */
import { grooveArea, grooveOf } from "../../src/lathe/chip-area.ts";
import { cutGroove } from "../../src/lathe/groove.ts";
import { type ScheduleRequest, schedule, strategies } from "../../src/lathe/strategies.ts";

const request: Omit<ScheduleRequest, "strategy"> = {
  depth: 1.128,
  groove: grooveOf(60, 0.2526, undefined, "radius"),
  slideDivision: 0.02,
  firstDepth: 0.25,
  leastDepth: 0.04,
};
const made = strategies.map((strategy) => schedule({ ...request, strategy }));
const places = made.map(({ passes }) => passes.map(({ layer }) => layer.place));
const passes = places.flat().length;
const repeats = 50;

const sumOf = (numbers: readonly number[]) => numbers.reduce((sum, each) => sum + each, 0);
const areaOf = ({ radial }: { readonly radial: number }) => grooveArea(radial, request.groove);

/** Each gives the area of all five finished grooves. */
const variants = [
  {
    name: "areas alone, closed form of one tool",
    run: () =>
      sumOf(
        places.map((each) => sumOf(each.map((at, k) => areaOf(at) - (k > 0 ? areaOf(each[k - 1]!) : 0)))),
      ),
  },
  {
    name: "the groove cut pass by pass",
    run: () => sumOf(places.flatMap((each) => cutGroove(request.groove, each).map(({ area }) => area))),
  },
  {
    name: "the whole schedules",
    run: () =>
      sumOf(
        strategies.flatMap((strategy) =>
          schedule({ ...request, strategy }).passes.map(({ layer }) => layer.area),
        ),
      ),
  },
];

/** Prints what a pass takes in each. */
export function infeedTimes(rounds: number, median: (times: readonly number[]) => number): void {
  const timed = variants.map((variant) => ({ ...variant, times: [] as number[] }));
  for (let round = 0; round < rounds; round++) {
    const areas = timed.map(({ run, times }) => {
      const start = performance.now();
      let area = 0;
      for (let k = 0; k < repeats; k++) area = run();
      times.push(performance.now() - start);
      return area;
    });
    // A measurement of something that was not reckoned is worth nothing.
    if (areas.some((area) => Math.abs(area - areas[0]!) > 1e-9)) {
      throw new Error(`areas differ: ${areas.join(", ")}`);
    }
  }
  const base = median(timed[0]!.times);
  console.log(`\nfive infeed strategies, ${passes} passes, medians of ${rounds} rounds`);
  for (const { name, times } of timed) {
    const time = median(times);
    console.log(
      `${name.padEnd(50)} ${((time / repeats / passes) * 1000).toFixed(2).padStart(8)} us a pass ${(time / base).toFixed(1).padStart(6)} x closed form`,
    );
  }
}
