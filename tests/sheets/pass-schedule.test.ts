import { expect, test } from "vitest";
import { stepsOf } from "../../src/job/steps.ts";
import { faults, valueAt } from "./read.ts";
import { template } from "./template.ts";

const jobWith = template("pass-schedule");

const threads = ["M16x2-6g", "1/2-12 BSW", "2 BA", "1/4-20 UNC-2A", "Tr 20x4", "1-5 Acme-2G", "2-4 Butt"];

test.each(threads.flatMap((thread) => ["mm", "in"].map((unit) => ({ thread, unit }))))(
  "$thread in $unit shows no error",
  ({ thread, unit }) => {
    expect(faults(jobWith({ thread, unit }))).toEqual([]);
  },
);

// Two worked plans of common shop practice, computed independently of this code.
test("1/2-12 BSW on a 0.02 mm dial winds 12 slide passes, then two divisions straight in", () => {
  const job = jobWith({
    thread: "1/2-12 BSW",
    back_off: "0.5",
    target: "=12.7-0.640327*25.4/12",
    slide_division: "0.02",
    cross_division: "0.02",
    cross_reads: "radius",
    first_cut: "0.3",
    least_cut: "0.06",
    straight_in: "0.04",
    slide_per_turn: "50",
  });
  const steps = stepsOf(job).steps;
  expect(steps.filter(({ kind }) => kind === "slide").map(({ wind }) => wind)).toEqual([
    14, 9, 7, 7, 6, 5, 5, 4, 4, 4, 4, 4,
  ]);
  expect(steps.filter(({ kind }) => kind === "straight in")).toHaveLength(2);
  expect(valueAt(job, "slide_stops")).toBeCloseTo(73, 9);
});

test("M20x2.5-6g on a dial of a thousandth winds 17 slide passes, then two thousandths straight in", () => {
  const job = jobWith({
    thread: "M20x2.5-6g",
    unit: "in",
    back_off: "0.5",
    blank: "=19.8/25.4",
    target: "=18.249/25.4",
    nose_is: "flat",
    nose: "=2.5/8/25.4",
    slide_division: "0.001",
    cross_division: "0.001",
    cross_reads: "radius",
    first_cut: "0.012",
    least_cut: "0.002",
    straight_in: "0.002",
  });
  const winds = stepsOf(job)
    .steps.filter(({ kind }) => kind === "slide")
    .map(({ wind }) => wind);
  expect(winds).toEqual([11, 7, 6, 5, 4, 4, 4, 4, 3, 3, 3, 3, 3, 3, 2, 2, 2]);
});

test("the bench finds every step: scratch, slide, measure, straight in, spring and measure again", () => {
  const kinds = stepsOf(jobWith({})).steps.map(({ kind }) => kind);
  expect(kinds[0]).toBe("scratch");
  expect(kinds.slice(-6)).toEqual(["measure", "straight in", "straight in", "spring", "spring", "measure"]);
});

test("a set-over past the trailing flank is refused with the reason, and the sheet cautions", () => {
  const job = jobWith({ back_off: "-1" });
  expect(valueAt(job, "Schedule!A16")).toContain("Set-over past the trailing flank");
  expect(valueAt(job, "plan")).toMatchObject({
    error: "#NUM!",
    message: expect.stringContaining("no plan is made: setover 31 is above the trailing flank 30"),
  });
});

test("the drawing shows depth and both chips of every numbered pass", () => {
  const job = jobWith({});
  const passes = stepsOf(job).steps.filter(({ kind }) => kind === "slide");
  expect(job.cell("Schedule", 1, 11).figure).toMatchObject({
    kind: "lines",
    x: passes.map(({ pass }) => Number(pass)),
    series: [
      passes.map(({ depth }) => depth),
      passes.map(({ chip }) => chip!.leading),
      passes.map(({ chip }) => chip!.trailing),
    ].map((y) => ({ y })),
  });
});
