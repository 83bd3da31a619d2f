/** The lathes that ship, taken over into the full thread job and into a small job of the other unit. */
import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { cardOf } from "../../src/job/card.ts";
import { readJob } from "../../src/job/file.ts";
import { createJob, type Job } from "../../src/job/job.ts";
import { isLathe, takeLathe, withInvented } from "../../src/job/lathe.ts";
import { valueAt } from "../sheets/read.ts";

const shipped = (name: string) => createJob(readJob(readFileSync(`sheets/${name}.json`, "utf8")));
const lathes = ["lathe-inch", "lathe-metric", "lathe-mixed"];

function smallJob(unit: string): Job {
  return createJob(
    readJob(
      JSON.stringify({
        format: "halfangle job",
        version: 1,
        title: "Made up",
        names: {
          unit: "Job!A1",
          slide_division: "Job!A2",
          gears: "Job!B1:B30",
          lathe: "Job!A3",
          speeds: "Job!C1:C2",
        },
        sheets: [{ name: "Job", cells: { A1: unit, A2: "7", B1: "99", B30: "98", C1: "1" } }],
      }),
    ),
  );
}

describe("a lathe is taken over", () => {
  test.each(lathes)("%s is known as one by its sheet", (name) => {
    expect(isLathe(shipped(name).document)).toBe(true);
    expect(isLathe(smallJob("mm").document)).toBe(false);
  });

  test("a division of a thousandth is 0.0254 mm in a job in millimetres, and follows its unit", () => {
    const job = smallJob("mm");
    job.setCells(takeLathe(job, shipped("lathe-inch")).edits);
    expect(valueAt(job, "slide_division")).toBeCloseTo(0.0254, 12);
    job.setCells([{ sheet: "Job", row: 0, column: 0, text: "in" }]);
    expect(valueAt(job, "slide_division")).toBeCloseTo(0.001, 12);
    expect(valueAt(job, "unit")).toBe("in");
  });

  test("a length that was typed into the lathe's sheet goes over in its own unit", () => {
    const lathe = shipped("lathe-metric");
    const { sheets } = lathe.document;
    expect(sheets[0]!.name).toBe("Lathe");
    lathe.setCells([{ sheet: "Lathe", row: 9, column: 1, text: "0.05" }]);
    const job = smallJob("in");
    job.setCells(takeLathe(job, lathe).edits);
    expect(valueAt(job, "slide_division")).toBeCloseTo(0.05 / 25.4, 12);
  });

  test("a list takes the place of the whole list before", () => {
    const job = smallJob("mm");
    const lathe = shipped("lathe-inch");
    job.setCells(takeLathe(job, lathe).edits);
    const listed = (from: Job, sheet: string, column: number, rows: number, first: number) =>
      Array.from({ length: rows }, (_, row) => from.cell(sheet, row + first, column).value).filter(
        (value) => value !== null,
      );
    expect(listed(job, "Job", 1, 30, 0)).toEqual(listed(lathe, "Lathe", 5, 26, 1));
  });

  test("a list that does not fit is left alone, and that is said", () => {
    const job = smallJob("mm");
    const { left, taken } = takeLathe(job, shipped("lathe-inch"));
    expect(left.join()).toMatch(/^speeds has \d+ values, and this job has room for 2$/);
    expect(taken).not.toContain("speeds");
    expect(taken).toEqual(expect.arrayContaining(["lathe", "slide_division", "gears"]));
  });

  test("a value that is an error on the lathe's sheet leaves the job as it is, and that is said", () => {
    const lathe = shipped("lathe-metric");
    lathe.setCells([{ sheet: "Lathe", row: 9, column: 1, text: '=CONVERT(0.02,"mm",unit)7' }]);
    const job = smallJob("mm");
    const { edits, left, taken } = takeLathe(job, lathe);
    job.setCells(edits);
    expect(left).toContain("slide_division is #ERROR! on the lathe's sheet");
    expect(taken).not.toContain("slide_division");
    expect(valueAt(job, "slide_division")).toBe(7);
  });

  test("it is one step to undo", () => {
    const job = smallJob("mm");
    const before = JSON.stringify(job.document);
    job.setCells(takeLathe(job, shipped("lathe-mixed")).edits, "Lathe taken over");
    expect(job.canUndo).toBe("Lathe taken over");
    job.undo();
    expect(JSON.stringify(job.document)).toBe(before);
  });
});

describe("what is still invented", () => {
  const invented = (job: Job) => cardOf(job).warnings.filter((text) => text.includes("invented"));
  const speeds = (lathe: Job, first: string) => {
    const [row, column] = [1, 9];
    expect(lathe.document.names.speeds).toBe("Lathe!J2:J17");
    lathe.setCells([{ sheet: "Lathe", row, column, text: first }]);
  };

  test("goes with a lathe on to the card of the job that takes it, and goes again with the next lathe", () => {
    const job = shipped("full-thread-job");
    const lathe = shipped("lathe-metric");
    // With a thread of the person's own nothing else is invented.
    job.setCells([{ sheet: "Thread", row: 1, column: 1, text: "M12" }]);
    job.setCells(takeLathe(job, lathe).edits);
    expect(invented(job)).toHaveLength(1);
    expect(invented(job)[0]).toContain("Still the invented lathe's value: leadscrew");
    expect(invented(job)[0]).toContain("gears, spindle speeds.");
    // Speeds of one's own are not among it any more.
    speeds(lathe, "36");
    job.setCells(takeLathe(job, lathe).edits);
    expect(invented(job)[0]).toContain("gears.");
    expect(invented(job)[0]).not.toContain("spindle speeds");
    job.setCells(
      takeLathe(job, lathe).edits.map((edit) => ({
        ...edit,
        text: edit.text.startsWith("Still") ? "" : edit.text,
      })),
    );
    expect(invented(job)).toEqual([]);
  });

  test("is told on a lathe that is made from a job whose lathe is invented, in a cell that can be emptied", () => {
    const plan = shipped("lathe-metric").document;
    const made = createJob(withInvented(plan, shipped("full-thread-job")));
    expect(valueAt(made, "lathe_invented")).toBe(
      "Made from a job whose lathe is invented: look at every value, then empty this cell.",
    );
    const { row, column } = { row: 38, column: 0 };
    expect(plan.names.lathe_invented).toBe("Lathe!A39");
    expect(made.setCells([{ sheet: "Lathe", row, column, text: "" }])).toBeUndefined();
    expect(valueAt(made, "lathe_invented")).toBeNull();
    // From a job that tells nothing invented the sheet goes on to find out by itself.
    expect(withInvented(plan, smallJob("mm"))).toBe(plan);
  });
});
