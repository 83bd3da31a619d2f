/** The pass plan as steps, the shop card and the bench log, read from a job whose cells were typed by hand. */
import { describe, expect, test } from "vitest";
import {
  benchFacts,
  keepsClosed,
  marksInWords,
  readingEdits,
  readingsOf,
  stepName,
} from "../../src/job/bench.ts";
import { cardOf } from "../../src/job/card.ts";
import { readJob } from "../../src/job/file.ts";
import { createJob, type Job } from "../../src/job/job.ts";
import { stepsOf, stopText, windOn } from "../../src/job/steps.ts";

/** Nine columns used of the ten that the plan has; the stops follow from 40 divisions at touch-off and 100 to the turn. */
const planRows = [
  ["scratch", "scratch pass, check the pitch"],
  ["1", "slide", "22", "22", "", "", "0.4"],
  ["2", "slide", "39", "61", "", "", "0.9"],
  ["measure", "stop, isolate, deburr, measure"],
  ["X", "straight in, cross slide", "2", "2", "", "", "0.94"],
  ["S", "spring", "", "", "", "", "0.94"],
];

function jobWith(
  names: Record<string, string>,
  more: Record<string, string> = {},
  formats: Record<string, object> = {},
): Job {
  const cells: Record<string, string> = { ...more };
  planRows.forEach((row, at) => {
    row.forEach((text, column) => {
      if (text !== "") cells[`${"ABCDEFGHIJ"[column]}${at + 20}`] = text;
    });
  });
  return createJob(
    readJob(
      JSON.stringify({
        format: "halfangle job",
        version: 1,
        title: "Made up",
        scenario: "Invented.",
        cautions: ["Stop the spindle before measuring."],
        names,
        sheets: [
          {
            name: "Job",
            result: "B1",
            cells,
            formats: { B2: { as: "angle", places: 1, role: "key" }, A9: { role: "caution" }, ...formats },
          },
        ],
      }),
    ),
  );
}

const all = {
  plan: "Job!A20:J40",
  slide_per_turn: "Job!B5",
  touch_off: "Job!B6",
  thread: "Job!B1",
  card_settings: "Job!A1:B4",
  measured: "Job!B10",
  readings: "Job!A11:B12",
  usable_marks: "Job!B7",
};
const filled = {
  A1: "Thread",
  B1: "M12",
  A2: "Set the bed scale to",
  B2: "61",
  A3: "Nothing beside it",
  B5: "100",
  B6: "40",
  B7: "'2,4,6,8",
  A9: "Too fast by 20 rev/min.",
};

describe("steps of a plan", () => {
  test("stand in the order of the plan and say what kind they are", () => {
    const { steps, depth } = stepsOf(jobWith(all, filled));
    expect(steps.map(({ kind, pass }) => `${kind} ${pass}`)).toEqual([
      "scratch scratch",
      "slide 1",
      "slide 2",
      "measure measure",
      "straight in X",
      "spring S",
    ]);
    expect(depth).toBe(0.94);
  });

  test("count the stops on from the dial at touch-off, turn by turn", () => {
    const { steps, perTurn } = stepsOf(jobWith(all, filled));
    // 40 + 22 = 62; 62 + 39 = 101, which is a turn and one division.
    expect(steps[1]).toMatchObject({
      wind: 22,
      from: { turns: 0, division: 40 },
      to: { turns: 0, division: 62 },
    });
    expect(steps[2]).toMatchObject({ from: { turns: 0, division: 62 }, to: { turns: 1, division: 1 } });
    expect(stopText(steps[2]!.to!, perTurn)).toBe("1 + 1");
  });

  test("count the cross slide from its own touch-off, in plain divisions", () => {
    const { steps } = stepsOf(jobWith(all, filled));
    expect(steps[4]).toMatchObject({ from: { turns: 0, division: 0 }, to: { turns: 0, division: 2 } });
  });

  test("wound back are counted from touch-off, and the dial runs down from there", () => {
    const { steps, back, perTurn } = stepsOf(
      jobWith({ ...all, swing: "Job!B8" }, { ...filled, B8: "handle left, wind back" }),
    );
    expect(back).toBe(true);
    // 22 back from 40 shows 18; 61 back is 21 short of a turn of 100: 40 - 61 + 100 = 79.
    expect(steps[1]).toMatchObject({
      from: { turns: 0, division: 0, shows: 40 },
      to: { turns: 0, division: 22, shows: 18 },
    });
    expect(steps[2]!.to).toEqual({ turns: 0, division: 61, shows: 79 });
    expect(steps[4]!.to).toEqual({ turns: 0, division: 2 });
    expect(windOn(steps[2]!.to!, 45, "slide", perTurn)).toEqual({ turns: 1, division: 6, shows: 34 });
    expect(stepsOf(jobWith(all, filled)).back).toBe(false);
  });

  test("are plain divisions where the job does not say how many a turn has", () => {
    const { slide_per_turn: _, ...names } = all;
    const { steps, perTurn } = stepsOf(jobWith(names, filled));
    expect(perTurn).toBeUndefined();
    expect(stopText(steps[2]!.to!, perTurn)).toBe("101");
  });

  test("say why there are none", () => {
    expect(stepsOf(jobWith({}, filled)).trouble).toBe("No range of this job is named plan");
    expect(stepsOf(jobWith({ plan: "Job!M1:M2" }, filled)).trouble).toBe("The range named plan is empty");
    // Six rows from 20 on: 25 is the last.
    const cut = stepsOf(jobWith({ plan: "Job!A20:J24" }, filled));
    expect(cut.steps).toEqual([]);
    expect(cut.trouble).toContain("The plan goes on below the range named plan");
    expect(stepsOf(jobWith({ plan: "Job!A20:J25" }, filled)).steps).toHaveLength(6);
    // The plan of a function ends where that does, whatever stands below it.
    const block = { L1: '=PASS.PLAN(0.3,27,55,0.2,0.02,0.3,0.06,0.04,0.02,27.5,"radius","radius",1,50)' };
    const whole = stepsOf(jobWith({ plan: "Job!L1:U40" }, block)).steps.length;
    const plan = `Job!L1:U${whole}`;
    expect(stepsOf(jobWith({ plan }, { ...block, [`L${whole + 1}`]: "3" })).steps).toHaveLength(whole);
    expect(stepsOf(jobWith({ plan: `Job!L1:U${whole - 1}` }, block)).trouble).toContain("goes on below");
    const broken = jobWith({ plan: "Job!L1:L2" }, { L1: '=SQRT("x")' });
    expect(stepsOf(broken)).toMatchObject({ steps: [] });
    expect(stepsOf(broken).trouble).not.toBe("");
  });
});

describe("the shop card", () => {
  test("takes its lines from the range that the job names, as the sheet shows them", () => {
    const card = cardOf(jobWith(all, filled));
    expect(card.heading).toBe("M12");
    expect(card.settings).toEqual([
      { label: "Thread", value: "M12", key: false },
      { label: "Set the bed scale to", value: "61.0°", key: true },
    ]);
  });

  test("says the cautions of the sheets with the sheet they stand on", () => {
    expect(cardOf(jobWith(all, filled)).warnings).toEqual(["Job: Too fast by 20 rev/min."]);
    expect(cardOf(jobWith(all, { ...filled, A9: "" })).warnings).toEqual([]);
  });

  test("shows the results of the operations where the job neither names nor marks lines", () => {
    const { card_settings: _, ...names } = all;
    expect(cardOf(jobWith(names, filled, { B2: {} })).settings).toEqual([
      { label: "Job", value: "M12", key: false },
    ]);
  });

  test("names both slides, the set-over and the measuring where the job marks but does not list them", () => {
    // A hole: set over 29, divisions of 0.02 on both slides, the cross dial reads diameter.
    const { card_settings: _, ...names } = all;
    const marked = {
      ...names,
      setover: "Job!B30",
      scale_reading: "Job!B31",
      swing: "Job!B32",
      ball: "Job!B33",
      ball_min: "Job!B34",
      ball_target: "Job!B35",
      ball_max: "Job!B36",
      slide_division: "Job!B37",
      cross_division: "Job!B38",
      cross_reads: "Job!B39",
      slide_to_wind: "Job!B45",
    };
    const card = cardOf(
      jobWith(
        marked,
        {
          ...filled,
          A30: "Set-over",
          B30: "29",
          A31: "Set the scale to",
          B31: "61",
          B32: "handle left, wind back",
          B33: "1.2",
          B34: "12.83",
          B35: "12.94",
          B36: "13.04",
          B37: "0.02",
          B38: "0.02",
          B39: "diameter",
          A45: "Still to wind",
          B45: "3",
          A46: "Over the crests",
          B46: "20",
          C46: "21",
        },
        {
          "B30:B31": { as: "angle", places: 2, role: "key" },
          B45: { role: "key" },
          "B46:C46": { role: "key" },
        },
      ),
    );
    expect(card.settings).toEqual([
      { label: "Set the bed scale to", value: "61.0°", key: false },
      { label: "Set-over from square", value: "29.00°", key: false },
      { label: "Set the scale to", value: "61.00°", key: true },
      { label: "Swing", value: "handle left, wind back", key: false },
      { label: "Over the crests", value: "20", key: false },
    ]);
    // 2 x 0.02 cos 29 = 0.0350 and, by half of what the dial shows, 2 x 0.01 = 0.02.
    expect(card.measure).toEqual([
      { label: "Ball", value: "1.2", key: false },
      { label: "Smallest", value: "12.83", key: false },
      { label: "Aim at", value: "12.94", key: true },
      { label: "Largest", value: "13.04", key: false },
      { label: "Top slide, 1 div", value: "0.0350 mm", key: false },
      { label: "Cross slide, 1 div", value: "0.0200 mm", key: false },
    ]);
  });

  // A top slide of 0.02 on diameter moves by 0.01: 2 x 0.01 cos 60.
  test("tells of a division of the top slide what the slide moves, not what its dial shows", () => {
    const named = { wire_target: "Job!B30", setover: "Job!B31", slide_division: "Job!B32" };
    const cells = { B30: "12.6", B31: "60", B32: "0.02", B33: "0.01" };
    const told = (names: Record<string, string>) =>
      cardOf(jobWith(names, cells)).measure.find(({ label }) => label === "Top slide, 1 div")?.value;
    expect(told(named)).toBe("0.0200 mm");
    expect(told({ ...named, slide_moves: "Job!B33" })).toBe("0.0100 mm");
  });

  test("has no plan where the job has none, and says what is wrong with one that cannot be made", () => {
    const { plan: _, ...names } = all;
    expect(cardOf(jobWith(names, filled)).plan).toBeUndefined();
    expect(cardOf(jobWith({ ...all, plan: "Job!M1:M2" }, filled)).plan?.trouble).toBe(
      "The range named plan is empty",
    );
  });

  test("says that the scenario is invented where it is", () => {
    expect(cardOf(jobWith(all, filled)).facts).toContainEqual({
      label: "Scenario",
      value: "invented",
      key: false,
    });
  });
});

describe("at the bench", () => {
  test("a reading goes into its cell and into the next free row of the log", () => {
    const job = jobWith(all, filled);
    const { steps } = stepsOf(job);
    job.setCells(readingEdits(job, "12.9", steps[1]));
    job.setCells(readingEdits(job, "12.7", steps[2]));
    expect(job.cell("Job", 9, 1).value).toBe(12.7);
    expect(readingsOf(job)).toEqual([
      { after: "pass 1", reading: "12.9", index: 0 },
      { after: "pass 2", reading: "12.7", index: 1 },
    ]);
  });

  test("a full log is left alone, and the reading still counts", () => {
    const job = jobWith(all, filled);
    for (const text of ["12.9", "12.8", "12.7"]) job.setCells(readingEdits(job, text, undefined));
    expect(job.cell("Job", 9, 1).value).toBe(12.7);
    expect(readingsOf(job).map(({ reading }) => reading)).toEqual(["12.9", "12.8"]);
  });

  test("half-nut marks are said in words", () => {
    expect(marksInWords("1,2,3,4,5,6,7,8")).toBe("1 to 8");
    expect(marksInWords("2,4,6,8")).toBe("2, 4, 6, 8");
    expect(marksInWords("1,2")).toBe("1, 2");
    expect(marksInWords("8")).toBe("8");
    expect(benchFacts(jobWith(all, filled))).toEqual([{ label: "Close half nuts on", value: "2, 4, 6, 8" }]);
    const none = jobWith(all, { ...filled, B7: "'" });
    expect(benchFacts(none)).toEqual([{ label: "Half nuts", value: "keep closed" }]);
    expect(keepsClosed(none)).toBe(true);
    expect(keepsClosed(jobWith(all, filled))).toBe(false);
    // 3 mm of the leadscrew are two leads of 1.5, and 2.4 of 1.25.
    const named = { ...all, lead_cut: "Job!C1", leadscrew: "Job!C2" };
    const anywhere = jobWith(named, { ...filled, B7: "'", C1: "1.5", C2: "3" });
    expect(benchFacts(anywhere)).toEqual([{ label: "Half nuts", value: "close anywhere" }]);
    expect(keepsClosed(anywhere)).toBe(false);
    expect(keepsClosed(jobWith(named, { ...filled, B7: "'", C1: "1.25", C2: "3" }))).toBe(true);
  });

  test("steps have a name to be called by", () => {
    expect(stepsOf(jobWith(all, filled)).steps.map(stepName)).toEqual([
      "scratch pass",
      "pass 1",
      "pass 2",
      "measuring",
      "straight in",
      "spring pass",
    ]);
  });
});
