// Forms from their standards, edges from triangles worked by hand.
import { expect, test } from "vitest";
import { faults, valueAt } from "./read.ts";
import { number, template } from "./template.ts";

const jobWith = template("tool-check");

const degrees = (radians: number) => (radians * 180) / Math.PI;

const threads = [
  "M10x1.5-6g",
  "1/2-12 BSW",
  "2 BA",
  "1/4-20 UNC-2A",
  "Tr 20x4",
  "1-5 Acme-2G",
  "2-4 Butt",
  "G 1/2",
];
test.each(threads.flatMap((thread) => ["mm", "in"].map((unit) => ({ thread, unit }))))(
  "$thread in $unit shows no error",
  ({ thread, unit }) => {
    expect(faults(jobWith({ thread, unit }))).toEqual([]);
  },
);

// BS 84: radius 0.137329 P, depth 0.640327 P of 1/12 in.
test("a Whitworth tool with the design radius cuts the design depth", () => {
  const job = jobWith({ thread: "1/2-12 BSW", unit: "in" });
  expect(valueAt(job, "nose_is")).toBe("radius");
  expect(number(job, "nose")).toBeCloseTo(0.137329 / 12, 6);
  expect(number(job, "depth")).toBeCloseTo(0.640327 / 12, 4);
});

// A sharp tool goes down the whole triangle from the pitch line, H/2, besides the addendum 3/8 H: 7/8 of 1.2990381.
test("a sharp nose goes deeper and is cautioned, one too blunt does not fit", () => {
  const sharp = jobWith({ nose: "0" });
  expect(number(sharp, "depth")).toBeCloseTo((7 / 8) * 1.2990381, 6);
  expect(valueAt(sharp, "Nose!A14")).toContain("A sharp point cuts deep");
  const blunt = jobWith({ nose: "0.3" });
  expect(valueAt(blunt, "Nose!A14")).toContain("does not fit the form");
});

// ISO 724: M10 has d2 9.026; atan(1.5 / (pi 9.026)) = 3.028 degrees.
test("clearance follows the lead angle, and a side that rubs is cautioned by how much", () => {
  const job = jobWith({});
  expect(number(job, "lead_angle")).toBeCloseTo(3.028, 3);
  const minor = number(job, "clearance_leading") - 3;
  expect(minor).toBeCloseTo(degrees(Math.atan(1.5 / (Math.PI * (10 - 1.22687 * 1.5)))), 4); // d3 of ISO 965-1
  expect(valueAt(job, "Clearance!A12")).toBe("");
  const rubs = jobWith({ own_leading: "2" });
  expect(number(rubs, "clears_leading")).toBeCloseTo(2 - minor, 9);
  expect(valueAt(rubs, "Clearance!A12")).toContain("rubs on the helix by 1.3 degrees");
  expect(valueAt(jobWith({ own_trailing: "-2.3" }), "Clearance!A12")).toContain("Less than a degree");
});

test("an edge ground as the sheet says cuts the flank of the form; without rake nothing changes", () => {
  const right = jobWith({ ground_leading: "=grind_leading", ground_trailing: "=grind_trailing" });
  expect(number(right, "cut_leading")).toBeCloseTo(30, 9);
  expect(number(right, "cut_trailing")).toBeCloseTo(30, 9);
  expect(number(right, "flank_out")).toBeCloseTo(0, 9);
  expect(valueAt(right, "Rake!A14")).toBe("");
  const flat = jobWith({ rake: "0" });
  expect(number(flat, "cut_leading")).toBeCloseTo(30, 9);
  expect(number(flat, "grind_trailing")).toBeCloseTo(30, 9);
});

test("a flank that rake turns by more than half a degree is cautioned", () => {
  // 8 degrees turn the leading flank by 0.48, 20 by well over a degree.
  expect(valueAt(jobWith({}), "Rake!A14")).toBe("");
  expect(valueAt(jobWith({ rake: "20" }), "Rake!A14")).toContain("more than half a degree off");
  expect(valueAt(jobWith({ rake: "-5" }), "Rake!A14")).toContain("Negative rake");
});

// Pythagoras: touched off at sqrt(25 - 0.04), fed by the depth, the tip stands at hypot(that, 0.2) from the axis.
test("a tool off centre leaves the core too large by what Pythagoras says", () => {
  const job = jobWith({});
  const depth = number(job, "depth");
  const reached = 5 - Math.hypot(Math.sqrt(25 - 0.04) - depth, 0.2);
  expect(number(job, "depth_reached")).toBeCloseTo(reached, 12);
  expect(number(job, "too_big")).toBeCloseTo(2 * (depth - reached), 12);
  // ISO 965-1: Td2 of 6g at pitch 1.5 over 5.6 to 11.2 mm is 132 micrometres.
  expect(number(job, "height_share")).toBeCloseTo((2 * (depth - reached)) / 0.132, 9);
  expect(valueAt(jobWith({ height_error: "1" }), "Height!A9")).toContain("set the tool on centre");
});

// M10-6g as printed in ASME B1.13M: pitch diameter 8.994/8.862, minor 8.128/7.938. The design root of ISO 68-1, H/6 round,
// lies 17/12 H under the major diameter: 10 - 1.84030 = 8.1597 at 9.0257 of ISO 724, 0.0977 less at the middle, 8.928.
test("the minor diameter with this nose is held against its printed limits", () => {
  const job = jobWith({});
  expect(number(job, "minor_cut")).toBeCloseTo(8.1597 - 0.0977, 4);
  expect(valueAt(job, "Nose!C12")).toBe("at mid pitch dia.; limits 7.938 to 8.128");
  expect(valueAt(job, "Nose!A15")).toBe("");
  // A sharp point cuts H deep, 8.928 - 0.866025 x 1.5; P/4 wide it stops 0.375 / (2 tan 30) short of that.
  const sharp = jobWith({ nose_is: "flat", nose: "0" });
  expect(number(sharp, "minor_cut")).toBeCloseTo(7.629, 3);
  expect(valueAt(sharp, "Nose!A15")).toMatch(/under its smallest by 0\.309\d mm/);
  const flat = jobWith({ nose_is: "flat", nose: "0.375" });
  expect(number(flat, "minor_cut")).toBeCloseTo(7.629 + 0.375 / Math.tan(Math.PI / 6), 3);
  expect(valueAt(flat, "Nose!A15")).toMatch(/over its largest by 0\.150\d mm/);
});

// atan(1.5 / (10 pi)) = 2.7336 degrees: a relief of 3 leaves 0.27, one of 2.5 leans out by 0.23.
test("a trailing side that would lean out is cautioned by how much, and one that does not is not", () => {
  const job = jobWith({});
  expect(number(job, "clearance_trailing")).toBeCloseTo(3 - 2.7336, 4);
  expect(valueAt(job, "Clearance!A13")).toBe("");
  expect(valueAt(jobWith({ relief: "2.5" }), "Clearance!A13")).toBe(
    "Trailing edge: -0.23° would lean out. Grind that side upright: the lead angle clears it by 2.73°.",
  );
});
