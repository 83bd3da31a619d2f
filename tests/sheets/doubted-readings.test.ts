/** A reading that cannot be one of this thread is doubted, one in its limits is no caution. */
import { expect, test } from "vitest";
import { cardOf } from "../../src/job/card.ts";
import type { Job } from "../../src/job/job.ts";
import { valueAt } from "./read.ts";
import { number, template, type } from "./template.ts";

const again = "doubtful: measure again";
const said = (job: Job) => cardOf(job).warnings.filter((words) => words.includes("reading"));

// 2052 for 20.5 is a slip of the point; a screw has never more to lose on diameter than twice its depth of cut.
test("a slip of the point over the wires is neither too big nor under size", () => {
  const job = template("full-thread-job")({ thread: "Tr 20x4-7e" });
  const wanted = number(job, "wire_target");
  const most = 2 * number(job, "depth");
  for (const slip of [wanted * 100, wanted / 10, wanted + most + 0.01, wanted - most - 0.01]) {
    type(job, "measured", String(slip));
    for (const name of ["verdict", "slide_to_wind", "cross_to_wind", "rest", "pitch_dia_now", "Measure!B16"])
      expect(valueAt(job, name), `${slip}: ${name}`).toBe(again);
    expect(said(job).join()).toContain("look at the wires and the unit, and measure again");
  }
  type(job, "measured", String(wanted + most - 0.01));
  expect(valueAt(job, "verdict")).toBe("too big: go on");
  type(job, "measured", String(wanted));
  expect(valueAt(job, "verdict")).toBe("in limits: stop");
  expect(said(job)).toEqual([]);
  expect(valueAt(job, "Measure!A21")).toBe("");
});

test("nor between balls in a nut", () => {
  const job = template("internal-thread")({});
  const wanted = number(job, "ball_target");
  const most = 2 * number(job, "depth");
  for (const slip of [wanted * 10, wanted / 10, wanted + most + 0.01, wanted - most - 0.01]) {
    type(job, "measured", String(slip));
    for (const name of ["verdict", "Measure!B16", "Measure!B17", "Measure!B18"])
      expect(valueAt(job, name), `${slip}: ${name}`).toBe(again);
    expect(said(job).join()).toContain("look at the balls and the unit");
  }
  type(job, "measured", String(wanted - most + 0.01));
  expect(valueAt(job, "verdict")).toBe("out");
  type(job, "measured", String(wanted));
  expect(valueAt(job, "verdict")).toBe("in");
  expect(valueAt(job, "Measure!A20")).toBe("");
  type(job, "measured", String(number(job, "ball_min") - 0.1));
  expect(valueAt(job, "Measure!A20")).toContain("Still under size");
});

test("nor over the wires of a form of one's own", () => {
  const job = template("custom-form")({});
  const wanted = number(job, "wire_target");
  const most = 2 * number(job, "depth");
  for (const slip of [wanted * 25.4, wanted + most + 0.001, wanted - most - 0.001]) {
    type(job, "measured", String(slip));
    expect([valueAt(job, "Wires!B16"), valueAt(job, "Wires!B17")], `${slip}`).toEqual([again, again]);
  }
  for (const near of [wanted + most - 0.001, wanted - most + 0.001]) {
    type(job, "measured", String(near));
    expect(typeof valueAt(job, "Wires!B16"), `${near}`).toBe("number");
  }
  type(job, "measured", String(wanted * 25.4));
  expect(said(job).join()).toContain("look at the wires and the unit");
  type(job, "measured", String(wanted + 0.01));
  expect(typeof valueAt(job, "Wires!B16")).toBe("number");
  expect(said(job)).toEqual([]);
});
