/** What a reading at the bench proves and asks for. The names are typed by hand; the cuts follow from the geometry. */
import { describe, expect, test } from "vitest";
import { benchVerdict, readingEdits, readingIn, readingsOf, takenOut } from "../../src/job/bench.ts";
import { doubtOf } from "../../src/job/bench-doubt.ts";
import { proofOf } from "../../src/job/bench-proof.ts";
import { askedInWords, planMark, runOf } from "../../src/job/bench-run.ts";
import { readJob } from "../../src/job/file.ts";
import { createJob, type Job } from "../../src/job/job.ts";
import { stepsOf } from "../../src/job/steps.ts";

const planRows = [
  ["scratch", "scratch pass, check the pitch"],
  ["1", "slide", "30", "30", "", "", "0.52"],
  ["2", "slide", "15", "45", "", "", "0.78"],
  ["3", "slide", "5", "50", "", "", "0.86"],
  ["measure", "stop, isolate, deburr, measure"],
  ["X", "straight in, cross slide", "1", "1", "", "", "0.88"],
  ["X", "straight in, cross slide", "1", "2", "", "", "0.9"],
  ["S", "spring", "", "", "", "", "0.9"],
  ["measure", "stop, isolate, measure again"],
];
const measuring = 4;

/** A screw over wires: 12.5 to 12.7, aimed at 12.6; set over by 30 degrees, 0.02 mm on both slides, 40 to the turn. */
const screw: Record<string, string> = {
  wire_target_max: "12.7",
  wire_target: "12.6",
  wire_target_min: "12.5",
  slide_division: "0.02",
  slide_per_turn: "40",
  setover: "30",
  straight_in: "0.04",
  cross_division: "0.02",
  least_cut: "0.05",
  depth: "0.91",
  measured: "",
};

function jobWith(named: Record<string, string>): Job {
  const cells: Record<string, string> = {};
  const names: Record<string, string> = { plan: "Job!A50:J70" };
  Object.entries(named).forEach(([name, text], row) => {
    names[name] = `Job!B${row + 1}`;
    if (text !== "") cells[`B${row + 1}`] = text;
  });
  planRows.forEach((row, at) => {
    row.forEach((text, column) => {
      if (text !== "") cells[`${"ABCDEFGHIJ"[column]}${at + 50}`] = text;
    });
  });
  const sheets = [{ name: "Job", cells, formats: { "B1:B20": { as: "plain" } } }];
  return createJob(
    readJob(JSON.stringify({ format: "halfangle job", version: 1, title: "Made up", names, sheets })),
  );
}

function read(job: Job, text: string): void {
  job.setCells(readingEdits(job, text, undefined));
}

/** What comes after a reading, in short. */
function asked(job: Job, reading: number, at = measuring): string[] {
  const run = runOf(job, stepsOf(job), [{ at, reading }]);
  return run.slice(at + 1).map(({ pass, wind }) => (wind === undefined ? pass : `${pass} +${wind}`));
}

describe("what a reading proves", () => {
  test("nothing before there is one, nor when it is no number", () => {
    const job = jobWith(screw);
    expect(proofOf(job)).toEqual({
      state: "no reading",
      words: "Still to be proven: no reading has been taken.",
    });
    read(job, "about 12");
    expect(proofOf(job).words).toBe("Still to be proven: the reading about 12 is no number.");
  });

  test.each([
    ["12.7", "in limits"],
    ["12.5", "in limits"],
    ["12.701", "too much left"],
    ["12.499", "past"],
  ])("a screw that reads %s is: %s", (text, state) => {
    const job = jobWith(screw);
    read(job, text);
    expect(proofOf(job).state).toBe(state);
  });

  test.each([
    ["19.2", "in limits"],
    ["19.199", "too much left"],
    ["19.401", "past"],
  ])("a nut's reading grows: %s is: %s", (text, state) => {
    const { wire_target: _, wire_target_max: __, wire_target_min: ___, ...others } = screw;
    const job = jobWith({ ...others, ball: "1.5", ball_min: "19.2", ball_target: "19.3", ball_max: "19.4" });
    read(job, text);
    expect(proofOf(job).state).toBe(state);
    expect(benchVerdict(job).slice(0, 4)).toEqual([
      { label: "Ball", value: "1.5" },
      { label: "Smallest", value: "19.2" },
      { label: "Aim at", value: "19.3" },
      { label: "Largest", value: "19.4" },
    ]);
  });

  test("a verdict of the sheet that does not agree leaves it open", () => {
    const job = jobWith({ ...screw, verdict: "can't be told" });
    read(job, "12.69");
    expect(proofOf(job)).toMatchObject({
      state: "doubtful",
      words: `Still to be proven: the sheet's verdict is "can't be told".`,
    });
  });

  test("a reading for another thread or wire proves nothing, and says for what it was taken", () => {
    const job = jobWith({
      ...screw,
      thread: "M12",
      reading_for: '=thread&", wire 1.1 mm"',
      measured_for: "",
    });
    read(job, "12.6");
    expect(proofOf(job).state).toBe("in limits");
    const row = Object.keys({ ...screw }).length;
    job.setCells([{ sheet: "Job", row, column: 1, text: "M14" }]);
    expect(proofOf(job)).toEqual({
      state: "of another",
      words:
        "Still to be proven: the reading 12.6000 mm was taken for M12, wire 1.1 mm. Measure again over the wires for M14, wire 1.1 mm.",
    });
  });

  test("without limits, or without a cell for readings, it is to be gauged", () => {
    const { wire_target_max: _, wire_target_min: __, ...others } = screw;
    const job = jobWith(others);
    read(job, "12.6");
    expect(proofOf(job)).toMatchObject({ state: "no limits", rest: 0 });
    const { measured: ___, ...without } = screw;
    expect(proofOf(jobWith(without)).state).toBe("no cell");
  });

  test("a reading that would leave more than the whole depth is doubted", () => {
    const job = jobWith(screw);
    read(job, "127");
    expect(proofOf(job)).toMatchObject({ state: "doubtful", rest: 57.2 });
    expect(asked(job, 127)).toEqual(["measure"]);
    const again = runOf(job, stepsOf(job), [{ at: measuring, reading: 127 }]).slice(measuring + 1);
    expect(askedInWords(again)).toBe("Next: measure again.");
    // 2052 for 20.5 and 1.26 for 12.6 alike; 12.4 is a thread cut too deep. From an uncut blank a thread 0.91 deep loses
    // 1.82 on diameter: nothing reads more than that over 12.6, nor, cut as deep again, more than that under it.
    for (const [reading, state] of [
      [12.6 + 1.81, "too much left"],
      [12.6 + 1.83, "doubtful"],
      [12.6 - 1.81, "past"],
      [12.6 - 1.83, "doubtful"],
      [2052, "doubtful"],
      [1.26, "doubtful"],
      [12.4, "past"],
    ] as const) {
      read(job, String(reading));
      expect(proofOf(job).state).toBe(state);
    }
    expect(asked(job, 1.26)).toEqual(["measure"]);
  });
});

describe("what a reading asks for", () => {
  test("nothing when it is in its limits, or past them", () => {
    const job = jobWith(screw);
    expect(asked(job, 12.69)).toEqual([]);
    expect(asked(job, 12.4)).toEqual([]);
  });

  test("straight in what is left, in whole divisions, spring passes, and another reading", () => {
    // (12.71 - 12.6) / 2 = 0.055 is 2 divisions of 0.02 and a bit; not what the plan had, which is as many by chance.
    const job = jobWith(screw);
    expect(asked(job, 12.71)).toEqual(["X +1", "X +1", "S", "measure"]);
    expect(
      askedInWords(runOf(job, stepsOf(job), [{ at: measuring, reading: 12.71 }]).slice(measuring + 1)),
    ).toBe(
      "Next: 2 divisions straight in on the cross slide, 1 spring pass, then measure. What is left is for the cross slide.",
    );
    // (12.78 - 12.6) / 2 = 0.09: 0.05 for the top slide is 2.9 divisions of 0.0173, under the least cut of 3.
    expect(asked(jobWith(screw), 12.78)).toEqual(["X +1", "X +1", "X +1", "X +1", "S", "measure"]);
  });

  test("the top slide where much is left, no pass heavier than the lightest of the plan, and another reading", () => {
    // (13 - 12.6) / 2 = 0.2; 0.16 / 0.0173205 = 9.2 divisions.
    const job = jobWith(screw);
    expect(asked(job, 13)).toEqual(["4 +5", "5 +4", "measure"]);
    const run = runOf(job, stepsOf(job), [{ at: measuring, reading: 13 }]);
    // 50 divisions are 1 turn of 40 and 10.
    expect(run[measuring + 1]).toMatchObject({
      from: { turns: 1, division: 10 },
      to: { turns: 1, division: 15 },
    });
    expect(run[measuring + 2]!.rest).toBeCloseTo(0.2 - 9 * 0.02 * Math.cos(Math.PI / 6), 12);
    expect(askedInWords(run.slice(measuring + 1))).toBe(
      "Next: 2 passes on the top slide, 9 divisions in all, then measure. The rest is kept for the cross slide.",
    );
  });

  test("on a dial that reads diameter, by what the slide moves and not by what the dial shows", () => {
    // 0.16 / (0.01 cos 30) = 18.5 divisions; the least cut is 5 of them, so 3 are left.
    expect(asked(jobWith({ ...screw, slide_moves: "0.01" }), 13)).toEqual([
      "4 +5",
      "5 +5",
      "6 +5",
      "measure",
    ]);
  });

  test("as many of the planned passes as are left by a reading between them", () => {
    // After pass 1: (13.6 - 12.6) / 2 = 0.5; 0.46 / 0.0173205 = 26.6 divisions: 15, 5, and 5 again; 1 is under the least cut.
    expect(asked(jobWith(screw), 13.6, 1)).toEqual(["2 +15", "3 +5", "4 +5", "measure"]);
  });

  test("round after round, with the cross slide counted on", () => {
    const job = jobWith(screw);
    const run = runOf(job, stepsOf(job), [
      { at: measuring, reading: 12.76 },
      { at: measuring + 6, reading: 12.72 },
    ]);
    // 0.08 / 0.02 = 4, then 0.06 / 0.02 = 3.
    expect(run.slice(measuring + 1).map(({ pass, to }) => (to ? `${pass} ${to.division}` : pass))).toEqual([
      "X 1",
      "X 2",
      "X 3",
      "X 4",
      "S",
      "measure",
      "X 5",
      "X 6",
      "X 7",
      "S",
      "measure",
    ]);
  });

  test("spring passes and another reading when less than a division is left", () => {
    // Wide of the limits by a hair: 0.015 is less than a division of 0.02.
    const job = jobWith({ ...screw, wire_target_max: "12.62" });
    expect(asked(job, 12.63)).toEqual(["S", "measure"]);
    expect(askedInWords(runOf(job, stepsOf(job), [{ at: measuring, reading: 12.63 }]).slice(5))).toBe(
      "Next: 1 spring pass, then measure. Less than a division of the cross slide is left.",
    );
  });

  test("what the plan has, where the job does not name what the slides do", () => {
    const { cross_division: _, ...others } = screw;
    expect(asked(jobWith(others), 12.8)).toEqual(["X +1", "X +1", "S", "measure"]);
  });
});

describe("a reading and what was wound", () => {
  // 0.9 deep in all, 0.52 after pass 1 and 0.78 after pass 2; one division is 0.0173 radially.
  const doubt = (job: Job, ...rounds: { at: number; reading: number }[]) =>
    doubtOf(job, stepsOf(job), rounds);

  test("go together within a quarter of the depth so far", () => {
    const job = jobWith(screw);
    // After pass 1 0.38 is left: 12.6 + 0.76 is due, and 0.13 radially is allowed.
    expect(doubt(job, { at: 1, reading: 13.36 })).toBeUndefined();
    expect(doubt(job, { at: 1, reading: 13.61 })).toBeUndefined();
    expect(doubt(job, { at: 1, reading: 13.63 })).toEqual({
      due: expect.closeTo(0.38, 9),
      left: expect.closeTo(0.515, 9),
    });
    expect(doubt(job, { at: 1, reading: 13.09 })).toEqual({
      due: expect.closeTo(0.38, 9),
      left: expect.closeTo(0.245, 9),
    });
    expect(doubt(job)).toBeUndefined();
  });

  test("before anything was cut all is left, and two divisions are allowed", () => {
    const job = jobWith(screw);
    expect(doubt(job, { at: 0, reading: 14.4 })).toBeUndefined();
    expect(doubt(job, { at: 0, reading: 14.32 })).toEqual({
      due: expect.closeTo(0.9, 9),
      left: expect.closeTo(0.86, 9),
    });
  });

  test("a good reading is what the next is held to, a doubted one is not", () => {
    const job = jobWith(screw);
    // 0.48 left after pass 1 is allowed; pass 2 winds 15 divisions of 0.02 cos 30: 0.2598, so that 0.2202 is due.
    const first = { at: 1, reading: 13.56 };
    expect(doubt(job, first, { at: 2, reading: 13.04 })).toBeUndefined();
    expect(doubt(job, first, { at: 2, reading: 12.68 })).toEqual({
      due: expect.closeTo(0.48 - 15 * 0.02 * Math.cos(Math.PI / 6), 9),
      left: expect.closeTo(0.04, 9),
    });
    // 0.10 left after pass 1 is doubted: three divisions follow by it, so that 0.38 less 3 of 0.0173 is due.
    const wrong = { at: 1, reading: 12.8 };
    expect(asked(job, 12.8, 1)).toEqual(["2 +3", "measure"]);
    expect(doubt(job, wrong, { at: 2, reading: 13.24 })).toBeUndefined();
    expect(doubt(job, wrong, { at: 2, reading: 12.7 })).toEqual({
      due: expect.closeTo(0.38 - 3 * 0.02 * Math.cos(Math.PI / 6), 9),
      left: expect.closeTo(0.05, 9),
    });
  });

  test("nothing is said of one that is no reading of this thread, nor where the job does not say what a slide does", () => {
    expect(doubt(jobWith(screw), { at: 1, reading: 127 })).toBeUndefined();
    const { slide_division: _, ...others } = screw;
    expect(doubt(jobWith(others), { at: 1, reading: 12.6 })).toBeUndefined();
  });

  test("a nut's reading is held to it the other way", () => {
    const { wire_target: _, wire_target_max: __, wire_target_min: ___, ...others } = screw;
    const job = jobWith({ ...others, ball: "1.5", ball_min: "19.2", ball_target: "19.3", ball_max: "19.4" });
    expect(doubt(job, { at: 1, reading: 18.54 })).toBeUndefined();
    expect(doubt(job, { at: 1, reading: 19.2 })).toEqual({
      due: expect.closeTo(0.38, 9),
      left: expect.closeTo(0.05, 9),
    });
  });
});

test("a reading is a number or a quantity", () => {
  const job = jobWith(screw);
  expect(readingIn(job, " 12.7 ")).toBe(12.7);
  expect(readingIn(job, "0.5 in")).toBe(12.7);
  expect(readingIn(job, "12,965")).toBe(12.965);
  for (const text of ["", "abc", "-1", "0", "=1+1"]) expect(readingIn(job, text)).toBeUndefined();
});

describe("a reading taken out of the log", () => {
  const logged = (...readings: string[]) => {
    const job = jobWith({ ...screw, thread: "M12", reading_for: "=thread", measured_for: "" });
    job.setName("readings", "Job!D1:E4");
    job.setName("readings_for", "Job!F1:F4");
    for (const text of readings) read(job, text);
    return job;
  };
  const measured = (job: Job) => job.cell("Job", Object.keys(screw).indexOf("measured"), 1).text;
  const log = (job: Job) => readingsOf(job).map(({ reading }) => reading);

  test("leaves no gap, and what stands beside the others goes with them", () => {
    const job = logged("13.6", "13.2", "12.9", "12.7");
    job.setCells(takenOut(job, 1));
    expect(log(job)).toEqual(["13.6", "12.9", "12.7"]);
    expect(measured(job)).toBe("12.7");
    expect([0, 1, 2, 3].map((row) => job.cell("Job", row, 5).text)).toEqual(["M12", "M12", "M12", ""]);
    read(job, "12.65");
    expect(log(job)).toEqual(["13.6", "12.9", "12.7", "12.65"]);
    job.undo();
    job.undo();
    expect(log(job)).toEqual(["13.6", "13.2", "12.9", "12.7"]);
  });

  test("that is the last gives way to the one before it, and the only one to none", () => {
    const job = logged("13.6", "13.2");
    job.setCells(takenOut(job, 1));
    expect(log(job)).toEqual(["13.6"]);
    expect(measured(job)).toBe("13.6");
    job.setCells(takenOut(job, 0));
    expect(log(job)).toEqual([]);
    expect(proofOf(job).state).toBe("no reading");
  });

  test("gives way to none where the one before it was of another thread", () => {
    const job = logged("13.6");
    job.setCells([{ sheet: "Job", row: Object.keys(screw).length, column: 1, text: "M14" }]);
    read(job, "13.2");
    job.setCells(takenOut(job, 1));
    expect(measured(job)).toBe("");
    expect(readingsOf(job)).toMatchObject([{ reading: "13.6", forOther: true }]);
    expect(job.cell("Job", 0, 5).text).toBe("M12");
  });
});

test("a plan is known by its passes", () => {
  const one = jobWith(screw);
  const mark = planMark(stepsOf(one));
  expect(mark).toBe("scratch 1+30 2+15 3+5 measure X+1 X+1 S measure");
  one.setCells([{ sheet: "Job", row: 50, column: 2, text: "29" }]);
  expect(planMark(stepsOf(one))).not.toBe(mark);
});
