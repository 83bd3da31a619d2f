import { describe, expect, test } from "vitest";
import { parseRange, splitSheet } from "../../src/engine/address.ts";
import { type CellValue, isErrorValue } from "../../src/engine/values.ts";
import type { Job } from "../../src/job/job.ts";
import { faults, put, valueAt } from "./read.ts";
import { number, template, type } from "./template.ts";

const jobWith = template("full-thread-job");

/** The divisions wound, pass by pass: numbered rows of the plan. */
function divisions(job: Job): CellValue[] {
  return planRows(job)
    .filter((row) => typeof row[0] === "number")
    .map((row) => row[2]!);
}

function planRows(job: Job): CellValue[][] {
  const { sheet, rest } = splitSheet(job.document.names.plan!)!;
  const { top, left, bottom, right } = parseRange(rest)!;
  const rows: CellValue[][] = [];
  for (let row = top; row <= bottom; row++) {
    const values: CellValue[] = [];
    for (let column = left; column <= right; column++) values.push(job.cell(sheet, row, column).value);
    if (values[0] !== null) rows.push(values);
  }
  return rows;
}

describe("any thread in either unit", () => {
  const threads = [
    "1/2-12 BSW",
    "M12x1.75-6g",
    "2 BA",
    "1/4-20 UNC-2A",
    "M6",
    "1-8 UNC-2A",
    "1/4 BSF",
    "0 BA",
    "M30x3.5",
  ];
  test.each(threads.flatMap((thread) => ["mm", "in"].map((unit) => ({ thread, unit }))))(
    "$thread in $unit shows no error",
    ({ thread, unit }) => {
      expect(faults(jobWith({ thread, unit }))).toEqual([]);
    },
  );

  test("the unit flips every length and leaves angles, gears, marks and divisions alone", () => {
    const mm = jobWith({ thread: "M12x1.75-6g", unit: "mm" });
    const inch = jobWith({ thread: "M12x1.75-6g", unit: "in" });
    const lengths = [
      "major",
      "pitch",
      "target",
      "blank",
      "nose",
      "depth",
      "slide_travel",
      "slide_division",
      "leadscrew",
      "lead_cut",
      "wire",
      "wire_target_max",
      "wire_target_min",
    ];
    for (const name of lengths) expect(number(inch, name) * 25.4, name).toBeCloseTo(number(mm, name), 9);
    for (const name of ["setover", "scale_reading", "train", "usable_marks", "spindle_speed"])
      expect(valueAt(inch, name), name).toBe(valueAt(mm, name));
    expect(divisions(inch)).toEqual(divisions(mm));
  });
});

describe("a 55-degree thread", () => {
  // Half of 55 is 27.5 from square; 90 - 27.5 along the bed; 90 + 27.5 from the scale's other end (common practice, no source).
  test("reads 27.5 from square, 62.5 along the bed and 117.5 from the other end", () => {
    const job = jobWith({ thread: "1/2-12 BSW", back_off: "0" });
    expect(number(job, "setover")).toBeCloseTo(27.5, 12);
    for (const [zero, reads] of [
      ["square", 27.5],
      ["bed", 62.5],
      ["obtuse", 117.5],
    ] as const) {
      type(job, "zero_line", zero);
      expect(number(job, "scale_reading"), zero).toBeCloseTo(reads, 12);
    }
  });
});

describe("the plan of passes", () => {
  // Two worked examples of common shop practice, computed independently of this code.
  test("1/2-12 BSW on a 0.02 mm dial takes 12 slide passes and two divisions straight in", () => {
    const job = jobWith(
      {
        back_off: "0.5",
        nose: "0.2906798",
        blank: "=major",
        target: "=major-0.640327*pitch",
        first_depth: "0.3",
        least_cut: "0.06",
        straight_in: "0.04",
      },
      "target",
    );
    expect(number(job, "depth")).toBeCloseTo(1.3553593, 6);
    expect(divisions(job)).toEqual([14, 9, 7, 7, 6, 5, 5, 4, 4, 4, 4, 4]);
    expect(
      planRows(job)
        .filter((row) => row[0] === "X")
        .map((row) => row[2]),
    ).toEqual([1, 1]);
  });

  test("M20x2.5-6g on a 0.001 in dial takes 17 slide passes and two thou straight in", () => {
    const job = jobWith(
      {
        thread: "M20x2.5-6g",
        unit: "in",
        back_off: "0.5",
        nose_is: "flat",
        nose: "=pitch/8",
        blank: "=19.8/25.4",
        target: "=18.249/25.4",
        slide_division: "0.001",
        cross_division: "0.001",
        first_depth: "0.012",
        least_cut: "0.002",
        straight_in: "0.002",
      },
      "target",
    );
    expect(number(job, "depth")).toBeCloseTo(0.062496, 7);
    expect(divisions(job)).toEqual([11, 7, 6, 5, 4, 4, 4, 4, 3, 3, 3, 3, 3, 3, 2, 2, 2]);
    expect(
      planRows(job)
        .filter((row) => row[0] === "X")
        .map((row) => row[2]),
    ).toEqual([1, 1]);
  });
});

describe("a designation that cannot be read", () => {
  test("puts an error that says what a designation looks like into every dependent cell", () => {
    const job = jobWith({ thread: "M12y" });
    for (const name of [
      "major",
      "pitch",
      "target",
      "blank",
      "nose",
      "depth",
      "setover",
      "scale_reading",
      "train",
      "usable_marks",
      "spindle_speed",
      "wire",
      "wire_target_max",
      "wire_target",
    ]) {
      const value = valueAt(job, name);
      expect(isErrorValue(value), name).toBe(true);
      expect(isErrorValue(value) && value.message, name).toMatch(/M12x1\.75-6g|M10x1\.5-6g/);
    }
    expect(isErrorValue(planRows(job)[0]![0]!)).toBe(true);
    type(job, "thread", "1/2-12 BSW");
    expect(faults(job)).toEqual([]);
  });
});

describe("a reading over the wires", () => {
  test("becomes whole divisions still to wind, which never pass the reading wanted", () => {
    const job = jobWith({});
    const wanted = number(job, "wire_target");
    type(job, "measured", String(wanted + 0.11));
    // (0.11 / 2) / cos 26.5 = 0.06146 of slide travel: 3 divisions of 0.02; 0.055 radial: 2 divisions of the cross slide.
    expect(valueAt(job, "slide_to_wind")).toBe(3);
    expect(valueAt(job, "cross_to_wind")).toBe(2);
    expect(valueAt(job, "verdict")).toBe("too big: go on");
    type(job, "measured", String(wanted));
    expect(valueAt(job, "slide_to_wind")).toBe(0);
    expect(valueAt(job, "verdict")).toBe("in limits: stop");
    type(job, "measured", String(number(job, "wire_target_min") - 0.01));
    expect(valueAt(job, "verdict")).toBe("under size");
  });

  // A cross dial that reads diameter shows twice what it goes in: 0.055 radial are 5 of its divisions of 0.02.
  test("says what is left on the diameter and on the radius, in divisions as the cross dial shows them", () => {
    const job = jobWith({});
    const wanted = number(job, "wire_target");
    type(job, "measured", String(wanted + 0.11));
    expect(number(job, "Measure!B16")).toBeCloseTo(0.11, 9);
    expect(number(job, "rest")).toBeCloseTo(0.055, 9);
    expect(number(job, "Card!B21")).toBeCloseTo(0.04, 12);
    type(job, "cross_reads", "diameter");
    expect(valueAt(job, "cross_to_wind")).toBe(5);
    expect(number(job, "Card!B21")).toBeCloseTo(0.02, 12);
    type(job, "measured", String(wanted - 0.001));
    expect(number(job, "Measure!B16")).toBeCloseTo(-0.001, 9);
    expect(number(job, "rest")).toBe(0);
    for (const [off, says, told] of [
      ["=wire_target_max", "in limits: stop", ""],
      ["=wire_target_max+0.0001", "too big: go on", ""],
      ["=wire_target_min", "in limits: stop", ""],
      ["=wire_target_min-0.0023", "under size", "Under the smallest reading by 0.0023 mm."],
    ] as const) {
      type(job, "measured", off);
      expect(valueAt(job, "verdict"), off).toBe(says);
      expect(valueAt(job, "Measure!A21"), off).toBe(told);
    }
  });

  // The pitch diameter falls by twice the radial infeed, and the reading with it, as the wires stay the same.
  test("gives back the pitch diameter that it was reckoned from", () => {
    const job = jobWith({});
    type(job, "measured", "=wire_target");
    expect(number(job, "pitch_dia_now")).toBeCloseTo(number(job, "target"), 9);
  });

  test("that was taken for another thread, wire or unit is left out of the verdict, and said to be", () => {
    const job = jobWith({}, "wire");
    const wanted = String(number(job, "wire_target"));
    type(job, "measured", wanted);
    type(job, "readings", "pass 8");
    put(job, [{ sheet: "Measure", row: 24, column: 1, text: wanted }]);
    expect(valueAt(job, "measured_for")).toBe("1/2-12 BSW, wire 1.1000 mm");
    expect(valueAt(job, "verdict")).toBe("in limits: stop");
    for (const [name, text] of [
      ["thread", "M12x1.75-6g"],
      ["wire", '=CONVERT(1.35,"mm",unit)'],
      ["unit", "in"],
    ] as const) {
      type(job, name, text);
      for (const left of ["verdict", "slide_to_wind", "cross_to_wind", "pitch_dia_now", "rest"])
        expect(valueAt(job, left), `${name}: ${left}`).toBe("taken for another");
      expect(valueAt(job, "Measure!A21")).toMatch(
        /^The reading was taken for 1\/2-12 BSW, wire 1\.1000 mm, not for .*: measure again and type the new one\.$/,
      );
      expect(valueAt(job, "Measure!A22")).toMatch(/^1 of the readings in the log/);
      job.undo();
      expect(valueAt(job, "verdict"), name).toBe("in limits: stop");
      expect(valueAt(job, "Measure!A22")).toBe("");
    }
    type(job, "thread", "M12x1.75-6g");
    type(job, "measured", String(number(job, "wire_target")));
    expect(valueAt(job, "verdict")).toBe("in limits: stop");
  });
});

describe("the tool", () => {
  // Pitch diameter 8.994/8.862, minor 8.128/7.938: M10-6g as printed in ASME B1.13M. A sharp point cuts H = 0.866025 P deep:
  // 8.928 - 0.866025 x 1.5 = 7.629, which is 0.309 under 7.938.
  test("of one's own gives a minor diameter that is held against its limits", () => {
    const job = jobWith({ thread: "M10x1.5-6g" });
    expect(valueAt(job, "Tool!C7")).toBe("its limits: 7.938 to 8.128");
    expect(valueAt(job, "Tool!A19")).toBe("");
    type(job, "nose_is", "flat");
    type(job, "nose", "0");
    expect(number(job, "minor_cut")).toBeCloseTo(7.629, 3);
    expect(valueAt(job, "Tool!A19")).toMatch(/under its smallest by 0\.309\d mm: the core is weak/);
    // P/4 wide, the basic root, the tool stops short of the sharp point by 0.375/2 / tan 30 = 0.3248: 7.629 + 2 x 0.3248.
    type(job, "nose", "0.375");
    expect(number(job, "minor_cut")).toBeCloseTo(8.2785, 3);
    expect(valueAt(job, "Tool!A19")).toMatch(/over its largest by 0\.150\d mm: the nut may foul/);
  });

  // 1/2-28 UNEF-2A: a largest minor diameter of 0.4602 and no smallest, worked in ASME B1.1.
  test("has only a largest minor diameter where the standard gives no other", () => {
    expect(valueAt(jobWith({ thread: "1/2-28 UNEF-2A", unit: "in" }), "Tool!C7")).toBe("no more than 0.4602");
  });

  test("that is one's own is told apart from the shape of the form, which has to be chosen", () => {
    const job = jobWith({ nose: "0.2" });
    expect(valueAt(job, "Tool!A21")).toContain("read as radius");
    type(job, "nose_is", "flat");
    expect(valueAt(job, "Tool!A21")).toBe("");
    expect(valueAt(jobWith({}), "Tool!A21")).toBe("");
  });

  // atan(2.11667 / (pi 12.5603)) = 3.0705 degrees: 5 of relief less that is 1.9295, 3 of relief less that is below 0.
  test("is cautioned about a trailing side that would lean out, and not where it does not", () => {
    const job = jobWith({});
    expect(number(job, "trailing_clearance")).toBeCloseTo(1.9295, 4);
    expect(valueAt(job, "Tool!A18")).toBe("");
    type(job, "relief", "3");
    expect(valueAt(job, "Tool!A18")).toContain("Trailing edge: -0.07° would lean out");
    expect(valueAt(job, "Tool!A18")).toContain("the lead angle clears it by 3.07°");
  });

  // A helix of that lead on that diameter, unrolled: its lead over its turn. A sharper nose cuts deeper, and is steeper there.
  test("grinds the leading side for the diameter that it cuts down to", () => {
    for (const nose of ["", "0.1"]) {
      const job = jobWith({ thread: "1/2-13 UNC-2A", ...(nose === "" ? {} : { nose_is: "flat", nose }) });
      const helix = Math.atan(25.4 / 13 / (Math.PI * number(job, "minor_cut"))) * (180 / Math.PI);
      expect(valueAt(job, "Tool!B10")).toBeCloseTo(5 + helix, 9);
    }
  });

  // The steepest common threads of one start: 3.72 degrees for 1/4-20, 4.24 for 6-32 (ASME B1.1), 3.10 for 0 BA.
  test("as shipped leans out on no common thread of one start", () => {
    for (const thread of [
      "1/4-20 UNC-2A",
      "6-32 UNC-2A",
      "0 BA",
      "3/8-16 BSW",
      "M6",
      "Tr 20x4-7e",
      "1-5 Acme-2G",
    ])
      expect(valueAt(jobWith({ thread }), "Tool!A18"), thread).toBe("");
  });
});

describe("the design depth", () => {
  // 17/24 H of ISO 68-1, 5/8 H of ASME B1.1 with a flat root and 0.595 with UNR's, 2/3 H of BS 84.
  test.each([
    ["M10x1.5-6g", "0.613 P to a rounded root; yours: see Tool"],
    ["1/2-13 UNC-2A", "0.541 P to a flat root; yours: see Tool"],
    ["1/2-13 UNRC-2A", "0.595 P to a rounded root; yours: see Tool"],
    ["1/2-12 BSW", "0.640 P to a rounded root; yours: see Tool"],
  ])("of %s says which one it is", (thread, words) => {
    expect(valueAt(jobWith({ thread }), "Thread!C15")).toBe(words);
  });
});

describe("half nuts and gearbox in words", () => {
  // 3 mm of travel are two leads of 1.5: each closing finds a groove. 3 mm are 2.4 leads of 1.25.
  test("where every closing of the half nuts is right no indicator is asked for", () => {
    const job = jobWith({ thread: "M10x1.5-6g", leadscrew: "3" });
    expect(valueAt(job, "half_nuts")).toBe("anywhere: no indicator needed");
    expect(valueAt(job, "Card!B9")).toBe("anywhere");
    type(job, "thread", "M8x1.25-6g");
    expect(valueAt(job, "half_nuts")).not.toContain("anywhere");
    type(job, "wheel_teeth", "16");
    expect(valueAt(job, "half_nuts")).toBe("keep them closed");
    expect(valueAt(job, "Card!B9")).toBe("keep them closed");
  });

  test("some marks, and all of them", () => {
    // 16 teeth of 1/8 in are 2 in; a mark stands for 1/4 in, 3 leads of 12 per inch but 3 1/4 of 13.
    expect(valueAt(jobWith({}), "half_nuts")).toBe("on every mark");
    expect(valueAt(jobWith({ thread: "1/2-13 UNC-2A" }), "half_nuts")).toBe("on marks 4, 8");
  });

  test("wheels that are no number are cautioned about where they are typed", () => {
    const job = jobWith({ wheel_teeth: "30/80", wheels: "30/80", gears: "30/80" });
    for (const [row, column] of [
      [13, 1],
      [27, 1],
      [1, 5],
    ] as const)
      expect(job.cell("Gears and marks", row, column).caution).toBe("a number is wanted here");
    expect(isErrorValue(valueAt(job, "usable_marks"))).toBe(true);
    expect(valueAt(job, "'Gears and marks'!C19")).toBe("of travel, with no indicator");
  });

  test("no gearbox is said, and the positions of one are counted", () => {
    const job = jobWith({});
    expect(valueAt(job, "gearbox")).toBe("no gearbox");
    put(job, [{ sheet: "Gears and marks", row: 1, column: 6, text: "2" }]);
    expect(valueAt(job, "gearbox")).toBe("1 position");
    expect(valueAt(job, "train")).toMatch(/, box 1$/);
    put(job, [{ sheet: "Gears and marks", row: 1, column: 6, text: "1" }]);
    expect(valueAt(job, "gearbox")).toBe("no gearbox");
    expect(valueAt(job, "train")).not.toContain("box");
  });
});
