// Expected numbers are closed forms written out by hand beside each check, or printed rows with their source; the rules
// of sharing out are common practice, no source.
import fc from "fast-check";
import { expect, test } from "vitest";
import { type Groove, grooveArea, grooveOf } from "../../src/lathe/chip-area.ts";
import { deviationFrom } from "../../src/lathe/groove.ts";
import { outlineArea } from "../../src/lathe/groove-outline.ts";
import { type ScheduleRequest, type Strategy, schedule, strategies } from "../../src/lathe/strategies.ts";
import { reducedDepth, type ShareRule } from "../../src/lathe/strategy-shares.ts";
import { publishedRows } from "../published/rows.ts";
import { between, expectClose, seeded } from "./close.ts";

const rad = (degrees: number) => (degrees * Math.PI) / 180;

/** A sharp 60-degree tool, 1.2 deep, dials of 0.02. */
const sharp: ScheduleRequest = {
  strategy: "straight in",
  depth: 1.2,
  groove: grooveOf(60, 0),
  slideDivision: 0.02,
  firstDepth: 0.3,
  leastDepth: 0.04,
  spring: 0,
};

const crossWinds = (request: ScheduleRequest) => schedule(request).passes.map(({ cross }) => cross);
const slideWinds = (request: ScheduleRequest) => schedule(request).passes.map(({ slide }) => slide);

// 60 divisions, at most 15 a pass: four of 15.
test("equal depth takes the fewest passes of one size", () => {
  expect(crossWinds({ ...sharp, rule: "even" })).toEqual([15, 15, 15, 15]);
  // 61 divisions: five passes, the odd division first.
  expect(crossWinds({ ...sharp, depth: 1.22, rule: "even" })).toEqual([13, 12, 12, 12, 12]);
});

// 15, 12, 9.6, 7.68, 6.144, 4.9152, 3.932 ...: cumulative 15, 27, 36.6, 44.28, 50.424, 55.339, 59.27, then the rest of 60.
// Rounded 15, 27, 37, 44, 50, 55, 59, 60; the last, 1, is under the least of 2, so 4 + 1 are shared as 3 and 2.
test("each pass takes the ratio of the one before, and the last two share what is left", () => {
  expect(crossWinds({ ...sharp, rule: "ratio", ratio: 0.8 })).toEqual([15, 12, 10, 7, 6, 5, 3, 2]);
});

// 10, 5, 2.5, then held at 3: cumulative 10, 15, 18, 21 ... to 60.
test("a ratio that falls under the least cut is held there, and the schedule says so", () => {
  const request = { ...sharp, firstDepth: 0.2, leastDepth: 0.06, rule: "ratio", ratio: 0.5 } as const;
  expect(crossWinds(request)).toEqual([10, 5, ...Array(15).fill(3)]);
  expect(schedule(request).reasons).toEqual([
    "Passes 3 to 17 are held at the least cut of 3 divisions or just over: equal area would make them thinner.",
  ]);
});

test("equal area of a sharp tool follows the square root of the pass number to a division", () => {
  const { passes } = schedule({ ...sharp, firstDepth: 0.4, leastDepth: 0, slideDivision: 0.001 });
  expect(passes).toHaveLength(9); // (1.2 / 0.4)^2
  passes.forEach(({ layer }, k) => {
    expectClose(layer.place.radial, 1.2 * Math.sqrt((k + 1) / 9), 0.0005 + 1e-9);
  });
});

test("printed square-root rows are met by a fine dial, straight in and along the flank", () => {
  const rows = publishedRows("passes_infeed").filter(({ quantity }) =>
    quantity.startsWith("cumulative depth after pass"),
  );
  expect(rows.length).toBeGreaterThanOrEqual(10);
  for (const row of rows) {
    const [, pass, passes] = /pass (\d+) of (\d+)/.exec(row.quantity)!;
    const depth = Number(/depth ([\d.]+)/.exec(row.designation)![1]);
    for (const strategy of ["straight in", "single flank"] as const) {
      const made = schedule({
        strategy,
        depth,
        groove: grooveOf(60, 0),
        slideDivision: 0.0001,
        firstDepth: depth / Math.sqrt(Number(passes)) + 0.0001,
        leastDepth: 0,
        spring: 0,
        ends: "exact",
      });
      expect(made.passes).toHaveLength(Number(passes));
      const reached = made.passes[Number(pass) - 1]!.layer.place.radial;
      // Half a division of rounding besides that of the printed figure.
      expectClose(reached, row.value, row.tolerance + 0.0001);
    }
  }
});

// An insert maker's lists for powered lathes go by a rule that is not told: flatter than equal area. They are compared,
// not met: UN external 24, 16, 14, 12, 10, 8 and Whitworth external 19 and 14 per inch state all three figures.
test("printed numbers of passes of an insert maker lie between equal depth and equal area of a sharp tool", () => {
  const byName = new Map<string, Record<string, number>>();
  for (const row of publishedRows("passes_infeed")) {
    if (row.standard.includes("insert maker"))
      byName.set(row.designation, { ...byName.get(row.designation), [row.quantity]: row.value });
  }
  const whole = [...byName].flatMap(([name, figures]) => {
    const [depth, first, count] = ["total depth", "first pass depth", "number of passes"].map(
      (q) => figures[q],
    );
    return depth && first && count ? [{ name, depth, first, count }] : [];
  });
  expect(whole.length).toBeGreaterThanOrEqual(8);
  for (const { name, depth, first, count } of whole) {
    const passes = (rule: ShareRule) =>
      schedule({ ...sharp, depth, firstDepth: first, leastDepth: 0, slideDivision: 0.01, rule }).passes
        .length - 1;
    expect(count, name).toBeGreaterThanOrEqual(passes("even"));
    expect(count, name).toBeLessThanOrEqual(passes("area"));
  }
});

test("printed depths of the passes of an insert maker fall, from more evenly shared first passes than equal area", () => {
  const lists = new Map<string, Map<number, number>>();
  for (const { designation, quantity, value } of publishedRows("passes_infeed")) {
    const pass = /^pass (\d+) depth$/.exec(quantity);
    if (pass) lists.set(designation, (lists.get(designation) ?? new Map()).set(Number(pass[1]), value));
  }
  expect(lists.size).toBe(5);
  for (const [name, list] of lists) {
    const depths = [...list].sort(([a], [b]) => a - b).map(([, depth]) => depth);
    expect(depths, name).toEqual([...depths].sort((a, b) => b - a));
    const [first, second] = [list.get(1), list.get(2)];
    // Equal area of a sharp tool would have the second pass take sqrt 2 - 1 of the first.
    if (first && second) expect(second / first, name).toBeGreaterThan(Math.SQRT2 - 1);
  }
});

// Along a set-over a the slide travels depth / cos a: 1.2 / cos 30 is 69.28 divisions of 0.02.
test("along the flank the slide winds depth / cos a", () => {
  const exact = schedule({ ...sharp, strategy: "single flank", ends: "exact" });
  expect(exact.setover).toBe(30);
  expectClose(exact.passes.at(-1)!.slideTotal * 0.02, 1.2 / Math.cos(rad(30)), 1e-12);
  expect(exact.reasons.join(" ")).toContain("The last pass winds 0.28 of a division more");
  const whole = schedule({ ...sharp, strategy: "single flank" });
  expect(whole.passes.at(-1)!.slideTotal).toBe(69);
  expectClose(whole.rest, 1.2 - 69 * 0.02 * Math.cos(rad(30)), 1e-12);
  expect(whole.reasons.at(-1)).toBe(
    "The schedule ends 0.004885 short of the depth: whole divisions are rounded down, and only a measurement may ask for more.",
  );
});

test("straight in shares the chip between the flanks, single flank gives it to the leading one", () => {
  const [, straight] = schedule({ ...sharp, rule: "even" }).passes;
  // 15 divisions of 0.02, sin 30 on both.
  expectClose(straight!.layer.chip.leading, 0.15, 1e-12);
  expectClose(straight!.layer.chip.trailing, 0.15, 1e-12);
  for (const { layer, slide } of schedule({ ...sharp, strategy: "single flank" }).passes) {
    expectClose(layer.chip.leading, slide * 0.02 * Math.sin(rad(60)), 1e-12);
    expectClose(layer.chip.trailing, 0, 1e-12);
    expect(layer.width.trailing).toBe(0);
  }
});

test("a backed-off set-over lets the trailing edge skim s sin(back-off)", () => {
  const made = schedule({ ...sharp, strategy: "modified flank", backOff: 1 });
  expect(made.setover).toBe(29);
  for (const { layer, slide } of made.passes) {
    expectClose(layer.chip.trailing, slide * 0.02 * Math.sin(rad(1)), 1e-12);
  }
});

// By hand, 60 degrees, 15 divisions of 0.02 each time: 0.3 tan 30 = 0.1732 is 8 divisions of the top slide, to and fro.
test("alternating flanks step to the leading side, then back, by whole divisions under depth x tan f", () => {
  const request = { ...sharp, strategy: "alternating flanks", rule: "even" } as const;
  expect(slideWinds(request)).toEqual([8, -8, 8, -8]);
  expect(crossWinds(request)).toEqual([15, 15, 15, 15]);
  const { passes } = schedule(request);
  expect(passes.map(({ what }) => what)).toEqual([
    "in, then a side step along the trailing flank",
    "in, then a side step along the leading flank",
    "in, then a side step along the trailing flank",
    "in, then a side step along the leading flank",
  ]);
  // Square to the trailing flank the tool moves 0.3 sin 30 - 0.16 cos 30; to the leading one 0.3 sin 30 + 0.16 cos 30.
  expectClose(passes[2]!.layer.chip.trailing, 0.15 - 0.16 * Math.cos(rad(30)), 1e-12);
  expectClose(passes[2]!.layer.chip.leading, 0.15 + 0.16 * Math.cos(rad(30)), 1e-12);
});

test("flank then straight keeps back two divisions of the cross slide when straight_in is left out", () => {
  const request = { ...sharp, strategy: "flank then straight", crossDivision: 0.04 } as const;
  expect(schedule(request)).toEqual(schedule({ ...request, straightIn: 0.08 }));
  // floor(1.12 / (0.02 cos 29.5)) = 64 divisions of the slide, where a single division kept back would leave 66.
  expect(
    schedule(request)
      .passes.filter(({ slide }) => slide > 0)
      .at(-1)!.slideTotal,
  ).toBe(64);
});

test("a tool may be backed off past square as far as its leading flank, and no further", () => {
  // A flank of 7 trails and one of 45 leads: 7 - 20 is 13 degrees past square, 7 - 53 is past the leading flank.
  const request = { ...sharp, strategy: "modified flank", groove: grooveOf(52, 0, 7) } as const;
  expect(schedule({ ...request, backOff: 20 }).setover).toBe(-13);
  expect(() => schedule({ ...request, backOff: 53 })).toThrow(
    "back_off must be from 0 to the included angle 52",
  );
});

test("flank then straight keeps back what straight_in asks for, and ends with it on the cross slide", () => {
  const request = {
    ...sharp,
    strategy: "flank then straight",
    straightIn: 0.06,
    crossDivision: 0.04,
    crossReads: "diameter",
    spring: 2,
  } as const;
  const { passes, rest } = schedule(request);
  // floor(1.14 / (0.02 cos 29.5)) = 65 divisions of the slide; 1.2 - 65 x 0.02 cos 29.5 = 0.06853 is 3 divisions of 0.02.
  expect(passes.filter(({ slide }) => slide > 0).at(-1)!.slideTotal).toBe(65);
  expect(passes.map(({ what }) => what).slice(-5)).toEqual([
    "straight in, cross slide",
    "straight in, cross slide",
    "straight in, cross slide",
    "spring",
    "spring",
  ]);
  expectClose(rest, 1.2 - 65 * 0.02 * Math.cos(rad(29.5)) - 0.06, 1e-12);
  expectClose(passes.at(-3)!.layer.chip.trailing, 0.02 * Math.sin(rad(30)), 1e-12);
  expectClose(schedule({ ...request, ends: "exact" }).reached, 1.2, 1e-12);
});

const requests: fc.Arbitrary<ScheduleRequest> = fc
  .record({
    strategy: fc.constantFrom<Strategy>(...strategies),
    rule: fc.constantFrom<ShareRule>("area", "even", "ratio"),
    ends: fc.constantFrom<"whole" | "exact">("whole", "exact"),
    depth: between(0.3, 3),
    leading: fc.oneof(between(5, 45), fc.constant(0)),
    trailing: between(1, 45),
    nose: between(0, 0.4),
    shape: fc.constantFrom<"flat" | "radius">("flat", "radius"),
    slideDivision: fc.constantFrom(0.01, 0.02, 0.025, 0.0254),
    crossDivision: fc.constantFrom(0.01, 0.02, 0.05, 0.0254),
    crossReads: fc.constantFrom<"radius" | "diameter">("radius", "diameter"),
    first: between(0.2, 0.5),
    least: between(0, 0.06),
    ratio: between(0.5, 1),
    backOff: between(0, 1),
    spring: fc.integer({ min: 0, max: 2 }),
  })
  .map(({ leading, trailing, nose, shape, first, least, ...rest }) => ({
    ...rest,
    groove: grooveOf(leading + trailing, nose, trailing, shape),
    firstDepth: first,
    leastDepth: least,
  }));

/** The request as made, or skipped where its limits clash: those refusals have a test of their own. */
function made(request: ScheduleRequest) {
  try {
    return schedule(request);
  } catch (refusal) {
    expect((refusal as Error).message).toMatch(/do not fit|too small for this depth|must not be more than/);
    return undefined;
  }
}

test("whatever the strategy, rule, tool and dials: the pass areas add up to the finished groove, and nothing is overcut", () => {
  let kept = 0;
  fc.assert(
    fc.property(requests, (request) => {
      const answer = made(request);
      if (!answer) return;
      kept++;
      const { passes, reached } = answer;
      const sum = passes.reduce((total, { layer }) => total + layer.area, 0);
      expectClose(sum / grooveArea(reached, request.groove), 1, 1e-9);
      const last = passes.at(-1)!.layer;
      expectClose(outlineArea(last.outline) / sum, 1, 1e-9);
      const { over, left, trailing, leading } = deviationFrom(last.outline, request.groove, last.place);
      for (const figure of [over, left, trailing, leading]) expectClose(figure, 0, 1e-9);
    }),
    { ...seeded, numRuns: 200 },
  );
  expect(kept).toBeGreaterThan(150);
});

test("dials are wound by whole divisions that add up, and end on the depth", () => {
  fc.assert(
    fc.property(requests, (request) => {
      const answer = made(request);
      if (!answer) return;
      const { passes, reached, rest } = answer;
      const cross = request.crossReads === "diameter" ? request.crossDivision! / 2 : request.crossDivision!;
      let [crossTotal, slideTotal] = [0, 0];
      const cuts = passes.filter(({ what }) => what !== "spring");
      passes.forEach((pass) => {
        crossTotal += pass.cross;
        slideTotal += pass.slide;
        expectClose(pass.crossTotal, crossTotal, 1e-9);
        expectClose(pass.slideTotal, slideTotal, 1e-9);
      });
      cuts.slice(0, request.ends === "exact" ? -1 : undefined).forEach((pass) => {
        expect(Number.isInteger(pass.cross) && Number.isInteger(pass.slide)).toBe(true);
      });
      expectClose(reached + rest, request.depth, 1e-9);
      if (request.ends === "exact") expectClose(reached, request.depth, 1e-9);
      else {
        const onSlide = !["straight in", "alternating flanks", "flank then straight"].includes(
          request.strategy,
        );
        expect(rest).toBeLessThan(onSlide ? request.slideDivision : cross);
      }
    }),
    { ...seeded, numRuns: 150 },
  );
});

test("no pass is over the first cut or under the least one, and they fall", () => {
  fc.assert(
    fc.property(requests, (request) => {
      const answer = made({ ...request, ends: "whole" });
      if (!answer || request.strategy === "flank then straight") return;
      let before = 0;
      const depths = answer.passes
        .filter(({ what }) => what !== "spring")
        .map(({ layer }) => {
          const deeper = layer.place.radial - before;
          before = layer.place.radial;
          return deeper;
        });
      expect(depths[0]!).toBeLessThanOrEqual(request.firstDepth + 1e-9);
      depths.forEach((depth, k) => {
        if (depths.length > 1) expect(depth).toBeGreaterThanOrEqual(request.leastDepth - 1e-9);
        if (k > 0) expect(depth).toBeLessThanOrEqual(depths[k - 1]! + 1e-9);
      });
    }),
    { ...seeded, numRuns: 150 },
  );
});

// h (1 - r^k) / (1 - r^n) for 1, r = 0.5, 3 passes: 4/7, 6/7, 1.
test("a falling ratio sums as a geometric series", () => {
  expectClose(reducedDepth(1, 1, 3, 0.5), 4 / 7, 1e-12);
  expectClose(reducedDepth(1, 2, 3, 0.5), 6 / 7, 1e-12);
  expect(reducedDepth(1, 3, 3, 0.5)).toBe(1);
  expectClose(reducedDepth(1.2, 1, 4, 1), 0.3, 1e-12);
  expectClose(reducedDepth(1.2, 1, 4, 1 - 1e-12), 0.3, 1e-9);
});

const buttress: Groove = grooveOf(52, 0.3, 7);
test.each<[Partial<ScheduleRequest>, string]>([
  [{ depth: 0 }, "depth must be greater than 0, got 0"],
  [{ depth: 0.01 }, "depth 0.01 must leave one division (0.02 radially) at least"],
  [{ slideDivision: 0 }, "slide_division must be greater than 0"],
  [{ crossDivision: -1 }, "division must be greater than 0"],
  [{ firstDepth: 0.01 }, "first_depth must be one division (0.02 radially) or more, got 0.01"],
  [
    { leastDepth: 0.4 },
    "least_depth must not be more than first_depth in whole divisions, got 20 and 15 divisions",
  ],
  [{ leastDepth: -1 }, "least_depth must be 0 or more"],
  [{ spring: 0.5 }, "spring must be a whole number"],
  [{ rule: "ratio", ratio: 0 }, "ratio must be greater than 0 and at most 1, got 0"],
  [{ rule: "even", firstDepth: 0.22, leastDepth: 0.22 }, "do not fit 60 divisions"],
  [{ rule: "even", firstDepth: 0.02, depth: 9, leastDepth: 0 }, "too small for this depth"],
  [{ slideDivision: 1e-6 }, "too small for this depth"],
  [{ strategy: "flank then straight", straightIn: 1.2 }, "beside straight_in 1.2"],
  [{ strategy: "modified flank", backOff: -1 }, "back_off must be from 0 to the included angle 60, got -1"],
  [
    { strategy: "modified flank", groove: buttress, backOff: 53 },
    "back_off must be from 0 to the included angle 52",
  ],
])("schedule refusal %# says why", (change, says) => {
  const refused = () => schedule({ ...sharp, ...change });
  expect(refused).toThrow(RangeError);
  expect(refused).toThrow(says);
});
