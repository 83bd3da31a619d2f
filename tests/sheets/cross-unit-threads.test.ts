// Trains by hand, from 25.4 = 127/5; tolerances of the classes as their standards print them.
import { expect, test } from "vitest";
import { faults, valueAt } from "./read.ts";
import { number, template, type } from "./template.ts";

const jobWith = template("cross-unit-threads");

const screws = { inch: '=CONVERT(1/8,"in",unit)', metric: '=CONVERT(3,"mm",unit)' };

const threads = ["M12x1.75-6g", "M6", "M20x2.5-6g", "0 BA", "1/4-20 UNC-2A", "1/2-12 BSW", "3/4-10 UNC-2A"];
test.each(
  threads.flatMap((thread) =>
    ["mm", "in"].flatMap((unit) =>
      Object.entries(screws).map(([screw, leadscrew]) => ({ thread, unit, screw, leadscrew })),
    ),
  ),
)("$thread in $unit on a $screw lead screw shows no error", ({ thread, unit, leadscrew }) => {
  expect(faults(jobWith({ thread, unit, leadscrew }))).toEqual([]);
});

test("the train does not depend on the unit of the job", () => {
  const trains = (unit: string) => {
    const job = jobWith({ unit });
    return ["train", "train_near", "Trains!B8", "Trains!B11"].map((name) => valueAt(job, name));
  };
  expect(trains("in")).toEqual(trains("mm"));
});

// 70/127 of 25.4/8 is 1.75. 63 x 1.27 / 80 is 1.000125, so 70/80 × 63/100 is 125 millionths long: 0.0015 over 12 mm, and
// cot 30 degrees of that on the pitch diameter, of a tolerance of 0.150 (ISO 965-1): 1.73 %.
test("M12 on 8 per inch: exact with 127, 125 millionths long with 63", () => {
  const job = jobWith({});
  expect(valueAt(job, "train")).toBe("70/127");
  expect(valueAt(job, "in_words")).toBe("70/127 is exact");
  expect(number(job, "lead_near")).toBeCloseTo(1.75 * 1.000125, 12);
  expect(number(job, "share_near")).toBeCloseTo((12 * 0.000125 * Math.sqrt(3)) / 0.15, 6);
  expect(valueAt(job, "near_in_words")).toBe(
    `With ${valueAt(job, "train_near")} the error takes 1.7 % of the pitch-diameter tolerance over this nut length, 0.0015 mm too long`,
  );
});

// The lead is reckoned again from the wheels that are named and the ratio of the position.
test("a gearbox is as near as the gears alone or nearer, and its ratio is in the lead", () => {
  const job = jobWith({});
  expect(Math.abs(number(job, "lead_boxed") - 1.75)).toBeLessThanOrEqual(
    Math.abs(number(job, "lead_near") - 1.75) + 1.75e-9,
  );
  const [, a, b, c, d, box] = /^(\d+)\/(\d+)(?: × (\d+)\/(\d+))?, box (\d)$/.exec(
    valueAt(job, "train_boxed") as string,
  )!;
  const ratio = [1 / 2, 1, 2][Number(box) - 1]!;
  const gears = (Number(a) * Number(c ?? 1)) / (Number(b) * Number(d ?? 1));
  expect(number(job, "lead_boxed")).toBeCloseTo(3.175 * gears * ratio, 12);
});

// Back: 1/4-20 is 1.27 mm, on 3 mm 127/300.
test("20 per inch on a 3 mm lead screw: exact with 127", () => {
  const job = jobWith({ thread: "1/4-20 UNC-2A", leadscrew: screws.metric });
  expect(number(job, "lead")).toBeCloseTo(1.27, 12);
  expect(valueAt(job, "train")).toMatch(/127/);
  expect(number(job, "lead_cut")).toBeCloseTo(1.27, 12);
  expect(valueAt(job, "train_near")).not.toMatch(/127/);
});

test("a wheel that does not fit the banjo is left out, and the caution says what the next best costs", () => {
  const job = jobWith({ largest_wheel: "100", engagement: "250" });
  expect(valueAt(job, "train")).toBe(valueAt(job, "train_near"));
  // 250 mm at 125 millionths is 0.03125; times cot 30 over 0.150 is 36 %.
  expect(number(job, "lead_share")).toBeCloseTo((250 * 0.000125 * Math.sqrt(3)) / 0.15, 6);
  expect(valueAt(job, "Trains!A20")).toContain("Even the best train takes 36 % of the tolerance");
  expect(valueAt(jobWith({ engagement: "250" }), "Trains!A20")).toBe(
    "Without the 127 wheel the error takes 36 % of the tolerance, more than the 25 % allowed.",
  );
});

test("half nuts: no mark for a metric thread on an inch screw, the stop after the least common multiple", () => {
  const job = jobWith({});
  expect(valueAt(job, "usable_marks")).toBe("none");
  expect(number(job, "stop_travel")).toBeCloseTo(889 / 4, 9); // 7/4 and 127/40
  expect(valueAt(job, "'Half nuts'!A7")).toContain("keep the half nuts closed");
  const own = jobWith({ leadscrew: screws.metric, wheel_teeth: "14", marks: "2" });
  expect(valueAt(own, "usable_marks")).toBe("1,2"); // 14 x 3 / 1.75 is 24
  expect(valueAt(own, "'Half nuts'!B6")).toBe(14);
});

test("a thread without limits is geared, and says that no share can be reckoned", () => {
  const job = jobWith({ thread: "Sq 1-4" });
  expect(valueAt(job, "Thread!A12")).toContain("No limits are held");
  expect(faults(job)).toEqual([]);
  expect(valueAt(job, "near_in_words")).toBe("no limits are held for this thread");
  expect(number(job, "lead_near")).toBeGreaterThan(6);
});

// 3 mm are three leads of 1 and two of 1.5: each closing finds a groove. They are half a lead of 6, and 1.7 of 1.75.
test.each([
  ["M6", "anywhere: no indicator needed"],
  ["M10x1.5-6g", "anywhere: no indicator needed"],
  ["M12x1.75-6g", ""],
  ["Tr 40x6", ""],
])("%s on a leadscrew of 3 mm: half nuts %j", (thread, says) => {
  const job = jobWith({ thread, leadscrew: screws.metric });
  expect(valueAt(job, "'Half nuts'!C4")).toBe(says);
});

// 25.4 / 3.175 and 25.4 / 3.
test("the leadscrew is said in threads per inch", () => {
  const job = jobWith({});
  for (const unit of ["mm", "in"])
    for (const [leadscrew, says] of [
      [screws.inch, "8 per inch; type the lead itself"],
      [screws.metric, "8.467 per inch; type the lead itself"],
    ] as const) {
      type(job, "unit", unit);
      type(job, "leadscrew", leadscrew);
      expect(valueAt(job, "Thread!C5"), unit).toBe(says);
    }
});
