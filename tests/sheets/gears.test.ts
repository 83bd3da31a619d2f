/** Change gears and half nuts of the two whole jobs, reckoned again from the wheels that are named. */
import { describe, expect, test } from "vitest";
import type { Job } from "../../src/job/job.ts";
import { valueAt } from "./read.ts";
import { number, template, type } from "./template.ts";

const inchScrew = '=CONVERT(1/8,"in",unit)';
const metricScrew = '=CONVERT(3,"mm",unit)';

/** The lead that a train as written cuts. */
function leadOf(train: string, leadscrew: number, ratio = 1): number {
  const pairs = train.replace(/, box \d$/, "").split(" × ");
  return pairs.reduce((lead, pair) => {
    const [driver, driven] = pair.split("/").map(Number) as [number, number];
    return (lead * driver) / driven;
  }, leadscrew * ratio);
}

const choices = (job: Job) =>
  [7, 8, 9].map((row) => [
    valueAt(job, `'Gears and marks'!B${row}`),
    number(job, `'Gears and marks'!C${row}`),
  ]) as [string, number][];
const trains = (job: Job) => choices(job).map(([train]) => train);

/** Three different trains, the nearest to the lead first, each cutting what its wheels say. */
function expectThree(job: Job, lead: number, leadscrew: number, ratio = 1): void {
  const three = choices(job);
  expect(new Set(trains(job)).size).toBe(3);
  for (const [train, cut] of three) expect(cut, train).toBeCloseTo(leadOf(train, leadscrew, ratio), 10);
  const off = three.map(([, cut]) => Math.abs(cut / lead - 1)) as [number, number, number];
  expect(off[0]).toBeLessThanOrEqual(off[1] + 1e-12);
  expect(off[1]).toBeLessThanOrEqual(off[2] + 1e-12);
  expect(off[2]).toBeLessThan(1e-3);
}

describe.each([
  {
    name: "full-thread-job",
    inch: "1/2-12 BSW",
    turn: "1/2-13 UNC-2A",
    m8: "M8-6g",
    m10: "M10x1.5-6g",
    m20: "M20x2.5-6g",
    two: "M24x4-P2-6g",
    tolerance: 0.17,
    engaged: { engagement: "20" },
  },
  {
    name: "internal-thread",
    inch: "1/2-12 BSW nut",
    turn: "1/2-13 UNC-2B",
    m8: "M8-6H",
    m10: "M10x1.5-6H",
    m20: "M20x2.5-6H",
    two: "M24x4-P2-6H",
    tolerance: 0.224,
    engaged: {},
  },
])("$name", ({ name, inch, turn, m8, m10, m20, two, tolerance, engaged }) => {
  const jobWith = template(name);

  test.each([
    [m20, 2.5, "mm", metricScrew, 3],
    [two, 4, "mm", metricScrew, 3],
    [inch, 25.4 / 12, "mm", metricScrew, 3],
    [inch, 1 / 12, "in", inchScrew, 1 / 8],
    [m20, 2.5, "mm", inchScrew, 25.4 / 8],
  ])("three trains for %s, lead %d %s, the nearest first", (thread, lead, unit, leadscrew, length) => {
    const job = jobWith({ thread, leadscrew, unit });
    expectThree(job, lead, length);
    expect(valueAt(job, "'Gears and marks'!B3")).toBeCloseTo(lead, 12);
    const [first] = /^\d+/.exec(trains(job)[0]!)!;
    expect(valueAt(job, "'Gears and marks'!I2")).toContain(first);
  });

  test("a gearbox has its ratio in the lead of each choice", () => {
    const job = jobWith({ thread: inch, leadscrew: metricScrew, box_ratios: "2" });
    expect(valueAt(job, "gearbox")).toBe("1 position");
    for (const train of trains(job)) expect(train).toMatch(/, box 1$/);
    expectThree(job, 25.4 / 12, 3, 2);
    type(job, "box_ratios", "1", "2");
    expect(valueAt(job, "gearbox")).toBe("2 positions");
    type(job, "box_ratios", "1", "");
    expect(valueAt(job, "gearbox")).toBe("no gearbox");
  });

  // 63/80, 63/79 and 79/100 of 3.175 are 2.5003125, 2.53196 and 2.50825: no two of them cut the same lead.
  test.each(["", "2"])("each choice cuts the lead of its own wheels, box %j", (box_ratios) => {
    const job = jobWith({
      thread: m20,
      leadscrew: inchScrew,
      box_ratios,
      clearance: "400",
      largest_wheel: "200",
    });
    type(job, "gears", ...(box_ratios === "" ? ["63", "79", "80", "100"] : ["63", "79", "160", "200"]));
    const ratio = box_ratios === "" ? 1 : 2;
    const cut = choices(job).map(([train, lead]) => {
      expect(lead, train).toBeCloseTo(leadOf(train, 3.175, ratio), 10);
      return lead;
    });
    expect(new Set(cut.map((lead) => lead.toFixed(6))).size).toBe(3);
    expect(number(job, "lead_cut")).toBeCloseTo(2.5003125, 10);
    const off = cut.map((lead) => Math.abs(lead - 2.5));
    expect(off).toEqual([...off].sort((one, other) => one - other));
  });

  // A wheel on the next stud has to clear the pair before it: no two wheels of these reach 400 teeth beyond a third.
  test.each(["", "2"])(
    "room at the stud and the largest wheel hold for every choice, box %j",
    (box_ratios) => {
      const roomy = jobWith({ thread: inch, leadscrew: metricScrew, box_ratios });
      expect(trains(roomy).every((train) => train.includes("×"))).toBe(true);
      type(roomy, "clearance", "400");
      expect(trains(roomy).join()).not.toContain("×");
      const large = jobWith({ thread: m20, leadscrew: inchScrew, box_ratios });
      for (const train of trains(large)) expect(train).toContain("127");
      expect(valueAt(large, "'Gears and marks'!A22")).toBe("");
      type(large, "largest_wheel", "100");
      expect(trains(large).join()).not.toContain("127");
      expect(valueAt(large, "'Gears and marks'!A22")).toContain("The wheel of 127 teeth is larger");
    },
  );

  // 63/80 and 77/98 of 3.175 are 2.5003125 and 2.494643: 1/8000 too long and 3/1400 too short; over 20 mm 0.0025 and -0.04286.
  // cot 30 of that on the pitch diameter, of ISO 965-1's tolerance at pitch 2.5 over 11.2 to 22.4: 0.17 for 6g, 0.224 for 6H.
  test.each([
    ["63", "80", 1 / 8000],
    ["77", "98", -3 / 1400],
  ])("%s/%s alone: the lead error, and its share of the tolerance", (driver, driven, error) => {
    const job = jobWith({ thread: m20, leadscrew: inchScrew, ...engaged });
    type(job, "gears", driver, driven);
    expect(valueAt(job, "train")).toBe(`${driver}/${driven}`);
    expect(number(job, "'Gears and marks'!B10")).toBeCloseTo(2.5 * error, 10);
    expect(number(job, "'Gears and marks'!B11")).toBeCloseTo(20 * error, 10);
    const share = (20 * Math.abs(error) * Math.sqrt(3)) / tolerance;
    expect(number(job, "'Gears and marks'!B12")).toBeCloseTo(share, 6);
    expect(valueAt(job, "'Gears and marks'!A21")).toBe(
      share < 0.25
        ? ""
        : `The lead error takes ${Math.round(100 * share)}% of the pitch diameter's tolerance over this length.`,
    );
  });

  // 3 mm are two leads of 1.5; 16 teeth of 1/8 in are 2 in, a mark 1/4 in: 3 1/4 leads of 13 per inch, whole at each fourth.
  test("half nuts in words, and marks from where the first cut was started", () => {
    const job = jobWith({ thread: m10, leadscrew: metricScrew, wheel_teeth: "15", marks: "3" });
    type(job, "wheels", "15");
    type(job, "wheel_marks", "3");
    expect(valueAt(job, "half_nuts")).toBe("anywhere: no indicator needed");
    expect(valueAt(job, "'Gears and marks'!C19")).toBe("of travel: every closing is right");
    // A mark stands for 5 turns of 3 mm: 15 mm, 6 leads of 2.5.
    type(job, "thread", m20);
    expect(valueAt(job, "half_nuts")).toBe("on every mark");
    expect(number(job, "'Gears and marks'!B19")).toBeCloseTo(15, 9);
    expect(valueAt(job, "'Gears and marks'!C19")).toBe("of travel, with no indicator");
    expect(valueAt(job, "'Gears and marks'!A20")).toBe("");
    expect(valueAt(job, "'Gears and marks'!C14")).toBe("the best that you have");
    expect(job.cell("Gears and marks", 12, 8).figure).toMatchObject({
      kind: "marks",
      marks: 3,
      usable: [1, 2, 3],
    });
    const inches = { thread: turn, leadscrew: inchScrew, wheel_teeth: "16", marks: "8" };
    expect(valueAt(jobWith(inches), "half_nuts")).toBe("on marks 4, 8");
    expect(valueAt(jobWith({ ...inches, first_mark: "1" }), "half_nuts")).toBe("on marks 1, 5");
  });

  // 14 teeth of 3 mm are 42 mm, 33.6 leads of 1.25 and no mark is whole; 15 are 45 mm, 12 leads at each of 3 marks.
  test("a wheel that never serves is answered by one of the set that does", () => {
    const job = jobWith({ thread: m8, leadscrew: metricScrew, wheel_teeth: "14", marks: "2" });
    type(job, "wheels", "14", "15");
    type(job, "wheel_marks", "2", "3");
    const found = () => ["usable_marks", "best_wheel", "best_marks"].map((cell) => valueAt(job, cell));
    expect(found()).toEqual(["", 15, "1,2,3"]);
    expect(valueAt(job, "'Gears and marks'!C14")).toBe("sooner: the one of 15");
    expect(valueAt(job, "'Gears and marks'!A20")).toContain("put the one of 15 teeth on and close on 1,2,3");
    type(job, "wheels", "14", "");
    type(job, "wheel_marks", "2", "");
    expect(found()).toEqual(["", "none", "none"]);
    expect(valueAt(job, "'Gears and marks'!A20")).toContain(
      "keep the half nuts closed and reverse the spindle",
    );
  });

  // 25.4 / 3 and 25.4 / 3.175.
  test.each(["mm", "in"])("the leadscrew is said in threads per inch, in %s", (unit) => {
    const said = (leadscrew: string) => valueAt(jobWith({ unit, leadscrew }), "'Gears and marks'!C2");
    expect(said(metricScrew)).toBe("8.467 per inch; type the lead");
    expect(said(inchScrew)).toBe("8 per inch; type the lead");
  });
});
