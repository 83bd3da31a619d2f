// Diameters and lengths against ASME B1.20.1 and ISO 7-1 as printed; the swing of tool and slide against vectors.
import { expect, test } from "vitest";
import { faults, valueAt } from "./read.ts";
import { number, template } from "./template.ts";

const jobWith = template("taper-pipe");

const threads = ["1/2-14 NPT", "1/8-27 NPT", "2-11.5 NPT", "4-8 NPT", "R 1/2", "R 1/8", "R 2 1/2"];
test.each(threads.flatMap((thread) => ["mm", "in"].map((unit) => ({ thread, unit }))))(
  "$thread in $unit shows no error",
  ({ thread, unit }) => {
    expect(faults(jobWith({ thread, unit }))).toEqual([]);
    expect(faults(jobWith({ thread, unit, short_by: "=gauge_tolerance" }))).toEqual([]);
  },
);

// ASME B1.20.1, inches: L1, E0 and E1 as printed.
test.each([
  ["1/4-18 NPT", 0.2278, 0.47739, 0.49163],
  ["1/2-14 NPT", 0.32, 0.75843, 0.77843],
  ["1-11.5 NPT", 0.4, 1.21363, 1.23863],
  ["2 1/2-8 NPT", 0.682, 2.71953, 2.76216],
])("%s has its printed gauge length and pitch diameters in either unit", (thread, length, small, gauge) => {
  for (const [unit, size] of [
    ["in", 1],
    ["mm", 25.4],
  ] as const) {
    const job = jobWith({ thread, unit });
    expect(number(job, "gauge_length") / size).toBeCloseTo(length, 9);
    expect(Math.abs(number(job, "pitch_small") / size - small)).toBeLessThan(1.1e-5);
    expect(Math.abs(number(job, "pitch_gauge") / size - gauge)).toBeLessThan(1.1e-5);
  }
});

// ISO 7-1: basic gauge length 8.2, major diameter at the gauge plane 20.955, useful thread 13.2.
test("R 1/2 has its gauge plane where ISO 7-1 prints it", () => {
  const job = jobWith({ thread: "R 1/2", unit: "mm" });
  expect(number(job, "gauge_length")).toBeCloseTo(8.2, 9);
  expect(number(job, "useful_length")).toBeCloseTo(13.2, 9);
  expect(number(job, "crest_small")).toBeCloseTo(20.955 - 8.2 / 16, 6);
  expect(number(job, "crest_end")).toBeCloseTo(20.955 + 5 / 16, 6);
});

/**
 * Seen from above: x to the tailstock, y away from you. The tailstock comes towards you by the half angle; the slide of a
 * right-hand thread moves into the work and toward the headstock, at the set-over from the line square to the work.
 */
test("with the tailstock set over the slide still stands at the set-over from the line square to the work", () => {
  for (const [zero, line, way] of [
    ["square", 90, 1],
    ["bed", 0, 1],
    ["obtuse", 180, -1],
  ] as const) {
    const job = jobWith({ zero_line: zero });
    const half = number(job, "half_angle");
    // Directions counter-clockwise from x, degrees. The work leans clockwise, and so does the line square to it.
    const square = 90 - half;
    const travel = square + number(job, "setover");
    const reading = number(job, "scale_offset");
    // Square: the scale counts from 90 on; bed: from the headstock end, which is 180 - reading; obtuse: from the other end.
    const told = zero === "square" ? line + way * reading : zero === "bed" ? 180 - reading : reading;
    expect(told, zero).toBeCloseTo(travel, 9);
  }
});

// 1/16 on diameter over 6 in between centres; atan(1/32); 1/16 of a foot.
test("tailstock, attachment and what a foot shows", () => {
  const job = jobWith({});
  expect(number(job, "tailstock_offset")).toBeCloseTo(0.1875, 12);
  expect(number(job, "half_angle")).toBeCloseTo(1.7899106, 7);
  expect(valueAt(job, "Taper!B12")).toBe(0.75);
});

test("a gauge that stops short says how much is still to go, one that goes too far that it is under size", () => {
  const short = jobWith({ short_by: "0.16" });
  // 0.16 along the axis is 0.01 on diameter, 0.005 radially.
  expect(number(short, "pitch_found") - number(short, "pitch_gauge")).toBeCloseTo(0.01, 12);
  expect(number(short, "rest")).toBeCloseTo(0.005, 12);
  expect(number(short, "slide_to_wind")).toBeCloseTo(0.005 / Math.cos((29 * Math.PI) / 180), 12);
  expect(valueAt(short, "verdict")).toBe("too big: go on");
  // A turn either way is allowed: 1/14 in.
  expect(valueAt(jobWith({ short_by: "0.07" }), "verdict")).toBe("in limits: stop");
  const far = jobWith({ short_by: "-0.08" });
  expect(valueAt(far, "verdict")).toBe("under size");
  expect(valueAt(far, "'Gauge it'!A9")).toContain("0.009 in further than it may");
});

test("a parallel thread is told apart", () => {
  expect(valueAt(jobWith({ thread: "M10" }), "Thread!A21")).toContain(
    "parallel: this sheet is for NPT and R",
  );
});
