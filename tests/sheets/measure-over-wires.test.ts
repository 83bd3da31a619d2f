// Figures against handbook formulas and JCGM 100 done by hand here; windings against sines and cosines.
import { describe, expect, test } from "vitest";
import type { Job } from "../../src/job/job.ts";
import { faults, valueAt } from "./read.ts";
import { number, template, type } from "./template.ts";

const jobWith = template("measure-over-wires");

describe("any screw in either unit", () => {
  const threads = [
    "M12x1.75-6g",
    "1/4-20 UNC-2A",
    "1/2-12 BSW",
    "2 BA",
    "1-5 Acme-2G",
    "Tr 20x4",
    "2-4 Butt",
    "M20x3-P1.5-6g",
    "M6",
  ];
  test.each(threads.flatMap((thread) => ["mm", "in"].map((unit) => ({ thread, unit }))))(
    "$thread in $unit shows no error",
    ({ thread, unit }) => {
      const job = jobWith({ thread, unit, major_measured: "=major_min" });
      expect(faults(job)).toEqual([]);
      type(job, "squeeze_counts", "yes");
      expect(faults(job)).toEqual([]);
      // Nothing measured yet.
      type(job, "readings", "", "");
      type(job, "log_readings", "", "");
      expect(faults(job)).toEqual([]);
    },
  );

  test("the unit flips every length and leaves the verdict and the divisions alone", () => {
    const [mm, inch] = [jobWith({ unit: "mm" }), jobWith({ unit: "in" })];
    for (const name of [
      "wire",
      "wire_best",
      "reading_target",
      "pitch_dia_now",
      "uncertainty",
      "squeeze",
      "lag",
      "next_reading",
    ])
      expect(number(inch, name) * 25.4, name).toBeCloseTo(number(mm, name), 9);
    for (const name of ["verdict", "effective_freedom", "slide_to_middle", "cross_to_most", "share"]) {
      const [one, other] = [valueAt(mm, name), valueAt(inch, name)];
      if (typeof one === "number") expect(other as number, name).toBeCloseTo(one, 6);
      else expect(other, name).toBe(one);
    }
  });
});

describe("M12x1.75-6g over 1.1 mm wires", () => {
  // By hand: mean 12.537, deviations 0, 1, -1, 1, -1 micrometres: squares 4e-6, / 4, root 0.001.
  const typed = { thread: "M12x1.75-6g", unit: "mm" };
  const readings = ["12.537", "12.538", "12.536", "12.538", "12.536"];

  function measured(): Job {
    const job = jobWith(typed);
    type(job, "readings", ...readings);
    return job;
  }

  test("mean and spread of five readings", () => {
    const job = measured();
    expect(number(job, "reading_mean")).toBeCloseTo(12.537, 9);
    expect(number(job, "reading_spread")).toBeCloseTo(0.001, 9);
    // Handbook H28 to the second order: E = M - 3 w + 0.866025 P - 0.076 w (P/E)^2, within its 0.0002.
    expect(number(job, "pitch_dia_now")).toBeCloseTo(12.537 - 3.3 + 0.866025 * 1.75 - 0.00221, 3);
  });

  test("expanded uncertainty is what JCGM 100 gives for its eight contributions", () => {
    const job = measured();
    const [root3, a] = [Math.sqrt(3), Math.PI / 6];
    const contributions = [
      0.001 / Math.sqrt(5),
      0.01 / Math.sqrt(12),
      0.004 / root3,
      (3 * 0.001) / root3,
      // d(E)/d(angle) = (w cos a - P/2) / (2 sin^2 a) for a radian of the included angle.
      (((1.1 * Math.cos(a) - 0.875) / (2 * Math.sin(a) ** 2)) * (Math.PI / 180) * 0.5) / root3,
      (0.866025 * 0.005) / root3,
      (10.754 * 11.5e-6 * 2) / root3,
      number(job, "squeeze") / root3,
    ];
    const combined = Math.hypot(...contributions);
    // The lead, which the short formulas leave out, changes it by less than a hundredth.
    expect(Math.abs(number(job, "combined") / combined - 1)).toBeLessThan(0.01);
    const freedoms = [4, 1e6, 50, 50, 50, 50, 50, 50];
    const sum = contributions.reduce((total, c, i) => total + c ** 4 / freedoms[i]!, 0);
    expect(Math.abs(number(job, "effective_freedom") / (combined ** 4 / sum) - 1)).toBeLessThan(0.03);
    // Student's t for some 200 degrees of freedom at 95 %: 1.97 (JCGM 100, table G.2: 1.984 at 100, 1.960 without limit).
    expect(number(job, "uncertainty") / number(job, "combined")).toBeGreaterThan(1.96);
    expect(number(job, "uncertainty") / number(job, "combined")).toBeLessThan(1.984);
  });

  test("the verdict is in, out, or not to be told", () => {
    const job = measured();
    expect(valueAt(job, "verdict")).toBe("in");
    const U = number(job, "uncertainty");
    for (const [reading, says] of [
      [`=reading_min+${0.5 * U}`, "can't be told"],
      [`=reading_min-${0.5 * U}`, "can't be told"],
      [`=reading_min-${1.6 * U}`, "out"],
      [`=reading_max+${1.6 * U}`, "out"],
      [`=reading_min+${1.2 * U}`, "in"],
      [`=reading_max-${1.2 * U}`, "in"],
    ] as const) {
      type(job, "readings", reading, reading, reading);
      // Three equal readings have no spread, so that U differs a little from the one above: a tenth at most.
      expect(valueAt(job, "verdict"), reading).toBe(says);
    }
    // What the sheet says is the least and the greatest reading that proves it.
    const [least, most] = [number(job, "proved_least"), number(job, "proved_most")];
    for (const [reading, says] of [
      [least + 0.0001, "in"],
      [least - 0.0001, "can't be told"],
      [most - 0.0001, "in"],
      [most + 0.0001, "can't be told"],
    ] as const) {
      type(job, "readings", `${reading}`, `${reading}`, `${reading}`);
      expect(valueAt(job, "verdict"), `${reading}`).toBe(says);
    }
  });

  test("a wire over its size takes three times as much off the pitch diameter", () => {
    const job = measured();
    const before = number(job, "pitch_dia_now");
    for (const name of ["pair_one", "pair_two", "opposite"]) type(job, name, "1.101");
    // 1 + cosec 30 = 3.
    expect(number(job, "pitch_dia_now") - before).toBeCloseTo(-0.003, 5);
  });

  test("a micrometer that reads high, and a squeeze made up for, move it by as much", () => {
    const job = measured();
    const before = number(job, "pitch_dia_now");
    type(job, "zero_error", "0.004");
    expect(number(job, "pitch_dia_now") - before).toBeCloseTo(-0.004, 5);
    type(job, "squeeze_counts", "yes");
    expect(number(job, "pitch_dia_now") - before).toBeCloseTo(number(job, "squeeze") - 0.004, 5);
  });
});

describe("still to wind", () => {
  test("whole divisions of either slide, to largest, middle and smallest, never past", () => {
    const job = jobWith({ setover: "29", readings: "" });
    const over = 0.3;
    type(job, "readings", `=reading_target+${over}`, "");
    const slide = 2 * 0.02 * Math.cos((29 * Math.PI) / 180);
    expect(number(job, "slide_to_middle")).toBe(Math.floor(over / slide));
    expect(number(job, "cross_to_middle")).toBe(Math.floor(over / 0.04));
    // Limits 10.679 to 10.829 (ISO 965-2): half of 0.15 on either side, and the reading falls by nearly as much.
    expect(number(job, "slide_to_most")).toBe(Math.floor((over - 0.075) / slide));
    expect(number(job, "slide_to_least")).toBe(Math.floor((over + 0.075) / slide));
    type(job, "cross_reads", "diameter");
    expect(number(job, "cross_to_middle")).toBe(Math.floor(over / 0.02));
  });

  test("the log shows what was asked and got, and predicts the next reading", () => {
    const job = jobWith({ setover: "29" });
    type(job, "log_readings", "13", "12.88", "12.80");
    // 4 and 3 divisions of 0.02 at 29 degrees.
    const [one, two] = [0.16 * Math.cos((29 * Math.PI) / 180), 0.12 * Math.cos((29 * Math.PI) / 180)];
    const lag = one + two - 0.2;
    expect(number(job, "lag")).toBeCloseTo(lag, 9);
    const before = two + (one - 0.12);
    const share = (0.12 * one + 0.08 * before) / (one ** 2 + before ** 2);
    expect(number(job, "share")).toBeCloseTo(share, 9);
    type(job, "next_slide", "0");
    expect(number(job, "next_reading")).toBeCloseTo(12.8 - share * lag, 9);
    expect(number(job, "next_furthest")).toBeCloseTo(12.8 - lag, 9);
  });

  test("a pass that would pass the smallest reading is warned of", () => {
    const job = jobWith({ next_slide: "6" });
    const cautions = () =>
      [19, 20, 21]
        .map((row) => job.cell("Still to wind", row, 0).value)
        .filter((value) => typeof value === "string");
    expect(cautions().join()).toContain("The next pass would pass the smallest reading by");
    type(job, "next_slide", "1");
    expect(cautions().join()).not.toContain("would pass");
  });
});

// ISO 965-2: 10.679 to 10.829 for M12-6g. The reading follows the pitch diameter nearly as much: 0.1 past a limit is out.
test("a verdict says by how much, and readings of another wire count for nothing", () => {
  const job = jobWith({});
  for (const [reading, limit, says] of [
    ["=reading_min-0.1", 10.679, "Under the smallest by "],
    ["=reading_max+0.1", 10.829, "Over the largest by "],
  ] as const) {
    type(job, "readings", reading, reading, reading);
    expect(valueAt(job, "verdict")).toBe("out");
    const past = Math.abs(number(job, "pitch_dia_now") - limit);
    expect(past).toBeCloseTo(0.1, 2);
    expect(valueAt(job, "Verdict!A14")).toContain(`${says}${past.toFixed(4)} mm`);
  }
  type(job, "readings", "12.54", "12.54", "12.54");
  expect(valueAt(job, "reading_count")).toBe(3);
  expect(valueAt(job, "reading_for")).toBe("M12x1.75-6g, wire 1.1000 mm");
  type(job, "thread", "M12x1.5-6g");
  expect(valueAt(job, "reading_count")).toBe(0);
  expect(valueAt(job, "Readings!A21")).toContain("3 of your readings were taken for another thread or wire");
});
