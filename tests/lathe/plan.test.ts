// The two worked plans were computed independently of this code; the rules of the rest are common practice, no source.
import fc from "fast-check";
import { expect, test } from "vitest";
import { grooveArea, grooveOf } from "../../src/lathe/chip-area.ts";
import { type PlanRequest, type PlanRow, planPasses } from "../../src/lathe/plan.ts";
import { between, expectClose, seeded } from "./close.ts";

/** 1/2-12 BSW, round nose of its own radius, dial of 0.02 mm and 50 to the turn. */
const whitworth: PlanRequest = {
  depth: 1.3553593,
  setover: 27,
  groove: grooveOf(55, 0.2906798, undefined, "radius"),
  slideDivision: 0.02,
  firstCut: 0.3,
  leastCut: 0.06,
  straightIn: 0.04,
  perTurn: 50,
};

/** M20x2.5-6g from a blank of 19.80 mm to 18.249 over the pitch diameter, flat of P/8, dial of a thousandth of an inch. */
const metric: PlanRequest = {
  depth: 0.062496,
  setover: 29.5,
  groove: grooveOf(60, 2.5 / 8 / 25.4),
  slideDivision: 0.001,
  firstCut: 0.012,
  leastCut: 0.002,
  straightIn: 0.002,
};

const slide = (rows: readonly PlanRow[]) => rows.filter((row) => row.what === "slide");
const winds = (request: PlanRequest) => slide(planPasses(request).rows).map((row) => row.wind);

test("the Whitworth plan takes 12 slide passes, 73 divisions, and two straight in", () => {
  const { rows } = planPasses(whitworth);
  expect(winds(whitworth)).toEqual([14, 9, 7, 7, 6, 5, 5, 4, 4, 4, 4, 4]);
  const last = slide(rows).at(-1)!;
  expect(last.total).toBe(73);
  expectClose(last.depth!, 1.3009, 5e-5);
  expect(rows.filter((row) => row.pass === "X").map((row) => row.wind)).toEqual([1, 1]);
});

test("the metric plan on an inch dial takes 17 slide passes, 69 divisions, and two straight in", () => {
  const { rows } = planPasses(metric);
  expect(winds(metric)).toEqual([11, 7, 6, 5, 4, 4, 4, 4, 3, 3, 3, 3, 3, 3, 2, 2, 2]);
  const last = slide(rows).at(-1)!;
  expect(last.total).toBe(69);
  expectClose(last.depth!, 0.06005, 5e-6);
  expect(rows.filter((row) => row.pass === "X")).toHaveLength(2);
});

test("rows come in the order of the work, in words", () => {
  const { rows } = planPasses(whitworth);
  expect(rows[0]).toEqual({ pass: "scratch", what: "scratch pass, check the pitch" });
  expect(rows[13]).toEqual({ pass: "measure", what: "stop, isolate, deburr, measure" });
  expect(rows.slice(14).map((row) => [row.pass, row.what])).toEqual([
    ["X", "straight in, cross slide"],
    ["X", "straight in, cross slide"],
    ["S", "spring"],
    ["S", "spring"],
    ["measure", "stop, isolate, measure again"],
  ]);
});

test("readings are totals, as turns and divisions of the dial", () => {
  const readings = slide(planPasses(whitworth).rows).map((row) => row.reading);
  expect(readings.slice(0, 2)).toEqual(["14", "23"]);
  expect(readings.at(-1)).toBe("1 turn + 23");
  const started = slide(planPasses({ ...whitworth, start: 10 }).rows).map((row) => row.reading);
  expect(started.at(-1)).toBe("1 turn, stop at 33");
  const plain = slide(planPasses({ ...whitworth, perTurn: 0, start: 10 }).rows).map((row) => row.reading);
  expect(plain.at(-1)).toBe("83");
});

test("each row tells the chip on both flanks and its area", () => {
  const rows = slide(planPasses(whitworth).rows);
  // s sin(a + l) and s sin(t - a) for 14 divisions of 0.02.
  expectClose(rows[0]!.chipLeading!, 0.28 * Math.sin((54.5 * Math.PI) / 180), 1e-12);
  expectClose(rows[0]!.chipTrailing!, 0.28 * Math.sin((0.5 * Math.PI) / 180), 1e-12);
  expectClose(rows[1]!.travel!, 23 * 0.02, 1e-12);
  const straight = planPasses(whitworth).rows.find((row) => row.pass === "X")!;
  expectClose(straight.chipTrailing!, 0.02 * Math.sin((27.5 * Math.PI) / 180), 1e-12);
});

test("straight in, each flank of a buttress takes its own sine", () => {
  const { rows } = planPasses({ ...whitworth, setover: 6, groove: grooveOf(52, 0.3, 7) });
  const straight = rows.find((row) => row.pass === "X")!;
  expectClose(straight.chipLeading!, 0.02 * Math.sin(Math.PI / 4), 1e-12);
  expectClose(straight.chipTrailing!, 0.02 * Math.sin((7 * Math.PI) / 180), 1e-12);
});

test("a least cut between two divisions is rounded up, a first cut down", () => {
  const { rows, reasons } = planPasses({ ...whitworth, leastCut: 0.085, firstCut: 0.31 });
  expect(Math.min(...slide(rows).map((row) => row.wind!))).toBe(5);
  expect(reasons).toContain("The least cut is rounded up to 5 divisions, 0.1.");
  expect(reasons).toContain("The first cut is rounded down to 15 divisions, 0.3.");
});

test("a cross dial that reads diameter halves the straight-in step", () => {
  const { rows } = planPasses({ ...whitworth, crossReads: "diameter" });
  const straight = rows.filter((row) => row.pass === "X");
  expect(straight).toHaveLength(5); // 0.0545 left, 0.01 a division
  expectClose(straight[1]!.depth! - straight[0]!.depth!, 0.01, 1e-12);
  expect(planPasses({ ...whitworth, crossReads: "diameter" }).reasons).toContain(
    "The slide stops on a whole division, which leaves 5 divisions for the cross slide instead of 4.",
  );
});

test("where less than a division of the cross slide is left, the plan says so and ends with the slide", () => {
  const { rows, reasons } = planPasses({ ...whitworth, straightIn: 0, crossDivision: 0.05 });
  expect(rows.filter((row) => row.pass === "X")).toEqual([]);
  // floor(1.3553593 / (0.02 cos 27)) = 76 divisions reach 1.35433.
  expect(reasons.at(-1)).toBe(
    "The slide ends 0.001029 short of the depth, less than a division of the cross slide: only a measurement may ask for more.",
  );
});

test("nothing is measured again when nothing was cut after the first measurement", () => {
  const { rows } = planPasses({ ...whitworth, straightIn: 0, crossDivision: 0.05, spring: 0 });
  expect(rows.filter((row) => row.pass === "measure")).toHaveLength(1);
});

test("two cross-slide divisions are kept back when straight_in is left out", () => {
  expect(winds({ ...whitworth, straightIn: undefined })).toEqual(winds(whitworth));
});

test("the plan says why it took a pass more, and what is left", () => {
  const { reasons } = planPasses(whitworth);
  expect(reasons).toHaveLength(2);
  expect(reasons[0]).toMatch(
    /^Reckoned for 12 passes of equal area instead of 11: pass \d+ would take 1\.\d\d times/,
  );
  expect(reasons[1]).toBe(
    "Straight in ends 0.01449 short of the depth: whole divisions are rounded down, and only a measurement may ask for more.",
  );
});

test("thin passes are lifted to the least cut, and the plan says so", () => {
  const request = { ...whitworth, leastCut: 0.1 };
  expect(Math.min(...winds(request).map(Number))).toBe(5);
  expect(planPasses(request).reasons.join(" ")).toContain("held at the least cut of 5 divisions");
});

test("a sharp tool with a small first cut still gets a plan, with the least cut kept and the reason told", () => {
  const request: PlanRequest = { ...whitworth, groove: grooveOf(55, 0), firstCut: 0.15 };
  const { rows, reasons } = planPasses(request);
  expect(Math.min(...slide(rows).map((row) => row.wind!))).toBe(3);
  expect(reasons.join(" ")).toMatch(
    /At the least cut the chip area still rises to [\d.]+ times that of the first cut/,
  );
  expect(reasons.join(" ")).toContain("The first cut is rounded down to 7 divisions, 0.14.");
});

test("one pass that fits needs no adjustment", () => {
  const { rows, reasons } = planPasses({
    depth: 0.54,
    setover: 0,
    groove: grooveOf(60, 0),
    slideDivision: 0.02,
    firstCut: 0.5,
    leastCut: 0.02,
    straightIn: 0.04,
    spring: 0,
  });
  expect(rows.map((row) => row.wind)).toEqual([undefined, 25, undefined, 1, 1, undefined]);
  expect(reasons).toEqual([]);
});

const requests: fc.Arbitrary<PlanRequest> = fc
  .record({
    depth: between(0.3, 3),
    included: between(29, 60),
    share: between(0.3, 0.5),
    back: between(0, 3),
    nose: between(0, 0.4),
    shape: fc.constantFrom<"flat" | "radius">("flat", "radius"),
    slideDivision: fc.constantFrom(0.01, 0.02, 0.025, 0.0254),
    crossDivision: fc.constantFrom(0.01, 0.02, 0.025, 0.05, 0.0254),
    crossReads: fc.constantFrom<"radius" | "diameter">("radius", "diameter"),
    first: fc.integer({ min: 6, max: 25 }),
    least: fc.integer({ min: 1, max: 4 }),
  })
  .map(({ included, share, back, nose, shape, first, least, ...rest }) => ({
    ...rest,
    setover: included * share - back,
    groove: grooveOf(included, nose, included * share, shape),
    firstCut: first * rest.slideDivision,
    leastCut: least * rest.slideDivision,
  }));

/** Radial depth of a division of the cross slide. */
const crossStep = ({ crossDivision, crossReads }: PlanRequest) =>
  crossDivision! / (crossReads === "diameter" ? 2 : 1);

test("slide passes fall, stay between the limits, and end on whole divisions with the groove's area", () => {
  fc.assert(
    fc.property(requests, (request) => {
      const rows = slide(planPasses(request).rows);
      const { slideDivision: q, groove } = request;
      const wind = rows.map((row) => row.wind!);
      expect(wind[0]!).toBeLessThanOrEqual(request.firstCut / q + 1e-9);
      wind.forEach((divisions, k) => {
        expect(divisions).toBe(Math.round(divisions));
        expect(divisions).toBeGreaterThanOrEqual(request.leastCut / q - 1e-9);
        if (k > 0) expect(divisions).toBeLessThanOrEqual(wind[k - 1]!);
      });
      const step = q * Math.cos((request.setover * Math.PI) / 180);
      const total = Math.floor((request.depth - 2 * crossStep(request)) / step + 1e-9);
      const last = rows.at(-1)!;
      expect(last.total).toBe(total);
      expect(wind.reduce((a, b) => a + b)).toBe(total);
      expectClose(last.depth!, total * step, 1e-12);
      const area = rows.reduce((sum, row) => sum + row.area!, 0);
      expectClose(area / grooveArea(last.depth!, groove), 1, 1e-9);
    }),
    { ...seeded, numRuns: 300 },
  );
});

test("no pass takes more than 1.05 of the first cut's area unless the reasons say that the least cut does", () => {
  fc.assert(
    fc.property(requests, (request) => {
      const { rows, reasons } = planPasses(request);
      const step = request.slideDivision * Math.cos((request.setover * Math.PI) / 180);
      const most = Math.floor(request.firstCut / request.slideDivision + 1e-9);
      const allowed = grooveArea(most * step, request.groove);
      const largest = Math.max(...slide(rows).map((row) => row.area!));
      const told = reasons.some((reason) => reason.startsWith("At the least cut"));
      expect(largest <= 1.05 * allowed || told).toBe(true);
    }),
    { ...seeded, numRuns: 300 },
  );
});

test("straight in never passes the depth and leaves less than a division", () => {
  fc.assert(
    fc.property(requests, (request) => {
      const { rows } = planPasses(request);
      const reached = rows.at(-2)!.depth!;
      expect(reached).toBeLessThanOrEqual(request.depth + 1e-9);
      expect(request.depth - reached).toBeLessThan(crossStep(request));
    }),
    seeded,
  );
});

test("the plan in inches is the plan in millimetres", () => {
  const inches: PlanRequest = {
    ...whitworth,
    depth: whitworth.depth / 25.4,
    groove: grooveOf(55, 0.2906798 / 25.4, undefined, "radius"),
    slideDivision: 0.02 / 25.4,
    firstCut: 0.3 / 25.4,
    leastCut: 0.06 / 25.4,
    straightIn: 0.04 / 25.4,
  };
  expect(winds(inches)).toEqual(winds(whitworth));
});

test.each<[Partial<PlanRequest>, string]>([
  [
    { setover: 27.6 },
    "no plan is made: setover 27.6 is above the trailing flank 27.5, so the earlier passes would cut outside",
  ],
  [{ setover: -28 }, "no plan is made: setover -28 is beyond the leading flank 27.5 on the other side"],
  [{ depth: 0 }, "depth must be greater than 0, got 0"],
  [{ depth: 0.05 }, "depth 0.05 less straight_in 0.04 must leave one division of the slide"],
  [{ slideDivision: 0 }, "slide_division must be greater than 0, got 0"],
  [{ crossDivision: 0 }, "division must be greater than 0, got 0"],
  [{ firstCut: 0.01 }, "first_cut must be one slide_division 0.02 or more, got 0.01"],
  [
    { leastCut: 0.4 },
    "least_cut must not be more than first_cut in whole divisions, got 20 and 15 divisions",
  ],
  [{ leastCut: -1 }, "least_cut must be 0 or more, got -1"],
  [{ spring: 1.5 }, "spring must be a whole number of 0 or more, got 1.5"],
  [{ straightIn: -0.1 }, "straight_in must be 0 or more, got -0.1"],
  [{ slideDivision: 1e-7, firstCut: 0.3 }, "the first cut or division is too small for this depth"],
  [
    { slideDivision: 0.001, firstCut: 0.001, leastCut: 0 },
    "the first cut or division is too small for this depth",
  ],
  [{ depth: 12, firstCut: 0.02, leastCut: 0 }, "the first cut or division is too small for this depth"],
  [{ straightIn: 1, crossDivision: 0.001 }, "straight_in and spring must make at most 400 passes"],
  [{ firstCut: 0.1, leastCut: 0.1 }, "do not fit 73 divisions"],
  [{ perTurn: -1 }, "per_turn must be 0 or more, got -1"],
])("plan refusal %# says why", (change, says) => {
  const refused = () => planPasses({ ...whitworth, ...change });
  expect(refused).toThrow(RangeError);
  expect(refused).toThrow(says);
});
