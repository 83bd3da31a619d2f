// Starts by hand: a start is its share of a lead, of a turn, of the teeth.
import { describe, expect, test } from "vitest";
import { parseRange, splitSheet } from "../../src/engine/address.ts";
import type { Job } from "../../src/job/job.ts";
import { faults, valueAt } from "./read.ts";
import { template } from "./template.ts";

const jobWith = template("many-starts");

/** A column of the table, as far as the thread has starts. */
function column(job: Job, letter: string): unknown[] {
  const { top, bottom } = parseRange(splitSheet(job.document.names.start_table!)!.rest)!;
  return Array.from({ length: bottom - top + 1 }, (_, i) =>
    valueAt(job, `Starts!${letter}${top + 1 + i}`),
  ).filter((value) => value !== "");
}

const threads = ["Tr 24x10 P5", "M20x3-P1.5", "M30x4.5-P1.5", "Tr 40x14 P7-7e", "1/2-12 BSW 3 starts", "M10"];
test.each(threads.flatMap((thread) => ["mm", "in"].map((unit) => ({ thread, unit }))))(
  "$thread in $unit shows no error",
  ({ thread, unit }) => {
    expect(faults(jobWith({ thread, unit }))).toEqual([]);
  },
);

describe("three starts of M30x4.5-P1.5 on a 3 mm lead screw with 12 teeth and 12 marks", () => {
  const job = jobWith({
    thread: "M30x4.5-P1.5",
    leadscrew: "3",
    wheel_teeth: "12",
    marks: "12",
    slide_division: "0.05",
    slide_per_turn: "40",
    faceplate: "12",
  });

  test("lie a pitch apart on the slide and a third of a turn on the faceplate", () => {
    expect(column(job, "B")).toEqual([0, 1.5, 3]);
    expect(column(job, "C")).toEqual(["0", "30", "1 turn + 20"]);
    expect(column(job, "E")).toEqual([0, 4, 8]);
  });

  // A mark is 3 mm of travel. 3 mm behind is 1.5 ahead of the next lead of 4.5; 6 behind is 3 ahead; 9 behind is none.
  test("are met by every third mark", () => {
    expect(column(job, "G")).toEqual(["3,6,9,12", "1,4,7,10", "2,5,8,11"]);
  });

  test("do not part 100 teeth, nor 10 divisions", () => {
    const other = jobWith({ thread: "M30x4.5-P1.5", leadscrew: "3", faceplate: "10" });
    expect(column(other, "E")).toEqual([0, "does not part", "does not part"]);
    const driver = Number(/^\d+/.exec(valueAt(other, "train") as string)![0]);
    expect(column(other, "F")).toEqual(
      driver % 3 === 0 ? [0, driver / 3, (2 * driver) / 3] : [0, "does not part", "does not part"],
    );
  });
});

// 10 / 3 = 3.3; half a leadscrew's pitch of 3 and twice it are borne.
test.each([
  ["Tr 24x10 P5", "The lead is 3.3 times that of the leadscrew"],
  ["M20x3-P1.5", ""],
  ["M40x6-P3", ""],
  ["M10", "This thread has one start: there is nothing to index."],
])("%s on a leadscrew of 3 mm: %j", (thread, says) => {
  const said = valueAt(jobWith({ thread, leadscrew: "3" }), "Thread!A16") as string;
  if (says === "") expect(said).toBe("");
  else expect(said).toContain(says);
});

// 25.4 / 3 and 25.4 / 3.175.
test("the leadscrew is said in threads per inch", () => {
  expect(valueAt(jobWith({ leadscrew: "3" }), "Thread!C10")).toMatch(/^8\.467 per inch;/);
  expect(valueAt(jobWith({ unit: "in", leadscrew: "0.125" }), "Thread!C10")).toMatch(/^8 per inch;/);
});

test("whole divisions that leave a start out of its place are cautioned by how far", () => {
  // 2.54 / 2 = 1.27 on a dial of 0.05: 25 divisions are 1.25, so 0.02 short; 1/200 of the pitch is 0.00635.
  const job = jobWith({ thread: "1/2-20 UN 2 starts", slide_division: "0.05" });
  expect(column(job, "D")[1]).toBeCloseTo(-0.02, 12);
  const { bottom } = parseRange(splitSheet(job.document.names.start_table!)!.rest)!;
  expect(valueAt(job, `Starts!A${bottom + 7}`)).toContain("0.0200 mm out of its place");
});

describe("the speed", () => {
  // 60 x 8 / (10 x 1) = 48: the hand; 35 ft/min on 24 mm is 10.668 x 1000 / (24 pi) = 141.5: the tool.
  test("is capped by the hand, and says so", () => {
    const job = jobWith({});
    expect(valueAt(job, "speed_cap")).toBeCloseTo(48, 9);
    expect(valueAt(job, "speed_for_surface")).toBeCloseTo(141.49, 2);
    expect(valueAt(job, "spindle_speed")).toBe(45);
    expect(valueAt(job, "runout_time")).toBeCloseTo((60 * 8) / (45 * 10), 9);
    expect(valueAt(job, "Speed!A13")).toBe("The hand sets the limit here: 48 rev/min instead of 141.");
  });

  test("is the tool's where the run-out is long, and the caution goes", () => {
    const job = jobWith({ runout: "100" });
    expect(valueAt(job, "spindle_speed")).toBe(110);
    expect(valueAt(job, "Speed!A13")).toBe("");
  });

  test("is refused where even the slowest is too fast", () => {
    const job = jobWith({ runout: "3" });
    expect(valueAt(job, "spindle_speed")).toBe("none is slow enough");
    expect(valueAt(job, "Speed!A13")).toContain("The slowest speed, 30 rev/min, is too fast");
    expect(faults(job)).toEqual([]);
  });

  test("that no table knows is asked for, and may be typed", () => {
    const job = jobWith({ material: "bronze", tool: "carbide" });
    expect(valueAt(job, "spindle_speed")).toMatchObject({ error: "#N/A" });
    expect(valueAt(job, "Speed!A13")).toContain("type your own surface speed");
    const typed = jobWith({ material: "bronze", tool: "carbide", surface_speed: "20" });
    expect(valueAt(typed, "spindle_speed")).toBe(45);
    expect(faults(typed)).toEqual([]);
  });
});
