import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { parseRange, splitSheet } from "../../src/engine/address.ts";
import { readJob } from "../../src/job/file.ts";
import { createJob } from "../../src/job/job.ts";
import { scenarioOf } from "../../src/job/scenario.ts";

function template(file: string) {
  const job = createJob(readJob(readFileSync(`sheets/${file}`, "utf8")));
  const type = (name: string, text: string) => {
    const { sheet, rest } = splitSheet(job.document.names[name]!)!;
    const { top, left } = parseRange(rest)!;
    expect(job.setCells([{ sheet, row: top, column: left, text }])).toBeUndefined();
  };
  return { job, type };
}

describe.each(readdirSync("sheets"))("the scenario of %s", (file) => {
  test("is told as shipped, in either unit", () => {
    const { job, type } = template(file);
    expect(scenarioOf(job)).toBe(job.document.scenario);
    // Forces are in newtons or in pounds; what was read off a part is another part in inches.
    if (["infeed-strategies.json", "name-that-thread.json"].includes(file)) return;
    for (const unit of ["in", "mm"]) {
      type("unit", unit);
      expect(scenarioOf(job), unit).toBe(job.document.scenario);
    }
  });
});

test.each([
  ["tool-check.json", "thread", "M12x1.75-6g"],
  ["internal-thread.json", "thread", "M16x2-6H"],
  ["lathe-metric.json", "leadscrew", "4"],
])("is no longer told in %s with another %s", (file, name, text) => {
  const { job, type } = template(file);
  type(name, text);
  expect(scenarioOf(job)).toBe("");
  job.undo();
  expect(scenarioOf(job)).toBe(job.document.scenario);
});

describe("the full thread job", () => {
  test("tells what of its lathe is still invented, until that is typed over or taken over", () => {
    const { job, type } = template("full-thread-job.json");
    type("thread", "M10x1.5-6g");
    expect(scenarioOf(job)).toBe("Still invented: the lathe's leadscrew, dials, backlash, gears, speeds.");
    for (const name of ["leadscrew", "slide_division", "slide_backlash", "cross_division", "cross_backlash"])
      type(name, "1");
    expect(scenarioOf(job)).toBe("Still invented: the lathe's gears, speeds.");
    type("gears", "21");
    type("speeds", "31");
    expect(scenarioOf(job)).toBe("");
  });

  test("with another lathe and its own thread tells of the thread alone", () => {
    const { job, type } = template("full-thread-job.json");
    type("lathe", "Mine");
    expect(scenarioOf(job)).toBe("Still invented: the thread: a stud that a workshop class makes.");
    type("thread", "M10x1.5-6g");
    expect(scenarioOf(job)).toBe("");
  });
});
