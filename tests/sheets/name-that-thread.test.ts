import { describe, expect, test } from "vitest";
import { isErrorValue } from "../../src/engine/values.ts";
import type { Job } from "../../src/job/job.ts";
import { readThread } from "../../src/thread/read.ts";
import { faults, valueAt } from "./read.ts";
import { template } from "./template.ts";

const jobWith = template("name-that-thread");

/** One diameter at every place, and a leaf of the pitch gauge. */
const measured = (diameter: number, leaf: number, unit = "mm", more: Record<string, string> = {}) =>
  jobWith({
    unit,
    first_place: String(diameter),
    second_place: String(diameter),
    third_place: String(diameter),
    fourth_place: String(diameter),
    found_by: "gauge, pitch",
    leaf: String(leaf),
    end_dia: "",
    ...more,
  });

const cautions = (job: Job) =>
  Array.from({ length: 12 }, (_, i) => valueAt(job, `Candidates!A${21 + i}`))
    .filter((value) => typeof value === "string" && value !== "")
    .join(" ");

// Basic sizes of ISO 261, BS 84, ASME B1.1, BS 93, ISO 228-1 and ISO 2904, measured with a little wear.
describe("a worn thread in either unit", () => {
  const threads = [
    ["M10", 9.9, 1.5, "60"],
    ["M12x1.25", 11.93, 1.25, "60"],
    ["1/2 BSW", 12.58, 25.4 / 12, "55"],
    ["1/2-13 UNC", 12.6, 25.4 / 13, "60"],
    ["3/8-26 BSB", 9.47, 25.4 / 26, "55"],
    ["M10x1", 9.93, 1, "60"],
    ["2 BA", 4.64, 0.81, "47.5"],
    ["G 1/2", 20.9, 25.4 / 14, "55"],
    ["Tr 20x4", 19.8, 4, "30"],
    ["1-5 Acme", 25.3, 5.08, "29"],
  ] as const;
  test.each(
    threads.flatMap(([name, d, P, angle]) => ["mm", "in"].map((unit) => ({ name, d, P, angle, unit }))),
  )("$name measured in $unit is named", ({ name, d, P, angle, unit }) => {
    const size = unit === "mm" ? 1 : 25.4;
    const job = measured(d / size, P / size, unit, { angle_seen: angle });
    expect(faults(job)).toEqual([]);
    expect(valueAt(job, "likeliest")).toBe(name);
    const basic = readThread(name);
    const own = basic.unit === unit ? 1 : unit === "mm" ? 25.4 : 1 / 25.4;
    expect(valueAt(job, "dia_off")).toBeCloseTo(d / size - basic.major * own, 9);
    expect(cautions(job)).not.toContain("over");
  });
});

test("the lengths that came with the job follow the unit", () => {
  const [mm, inch] = ["mm", "in"].map((unit) => jobWith({ unit }));
  for (const name of ["measured_dia", "uneven", "pitch", "pitch_error", "dia_off", "pitch_off", "lead"])
    expect((valueAt(inch!, name) as number) * 25.4, name).toBeCloseTo(valueAt(mm!, name) as number, 9);
  expect(valueAt(inch!, "likeliest")).toBe("1/2 BSW");
  expect(valueAt(inch!, "tell_apart")).toContain("measure 10 pitches: 0.8333 against 0.7692 in");
});

test("threads counted, a pitch gauge and an inch gauge give the same pitch", () => {
  const pitches = [
    jobWith({ counted: "12", counted_length: "25.4", length_error: "0.2" }),
    jobWith({ found_by: "gauge, pitch", leaf: "=25.4/12" }),
    jobWith({ found_by: "gauge, per inch", leaf: "12" }),
  ].map((job) => valueAt(job, "pitch") as number);
  for (const pitch of pitches) expect(pitch).toBeCloseTo(25.4 / 12, 12);
});

// ISO 7-1: R 1/2 grows 1 in 16, so 0.625 mm over 10 mm.
test("two diameters tell a taper from a parallel thread", () => {
  const pipe = { angle_seen: "55", apart: "10" };
  const taper = measured(20.9, 25.4 / 14, "mm", { ...pipe, end_dia: "20.3", inner_dia: "20.925" });
  expect([valueAt(taper, "along"), valueAt(taper, "likeliest")]).toEqual(["tapers", "R 1/2"]);
  const parallel = measured(20.9, 25.4 / 14, "mm", { ...pipe, end_dia: "20.9", inner_dia: "20.88" });
  expect([valueAt(parallel, "along"), valueAt(parallel, "likeliest")]).toEqual(["parallel", "G 1/2"]);
  const untried = measured(20.9, 25.4 / 14, "mm", pipe);
  expect(valueAt(untried, "along")).toBe("not known");
  expect(valueAt(untried, "tell_apart")).toContain("diameter at two places");
  expect(cautions(untried)).toContain("The first two fit these figures equally well");
});

// The taper test that came with the job was made on another stud: 12.55 mm against 9.94 mm.
test("a taper test that was made on another piece is cautioned about", () => {
  const stale = measured(9.94, 1, "mm", { end_dia: "12.53" });
  expect(cautions(stale)).toContain("up to 2.6100 mm off the one taken as measured");
  const own = measured(9.94, 1, "mm", { end_dia: "9.92", inner_dia: "9.95" });
  expect(cautions(own)).not.toContain("taper test");
});

// ISO 724: minor diameter of the nut of M10 is 8.376 mm.
test("a nut is named by its bore, left-hand and several starts are written behind the name", () => {
  const job = measured(8.45, 1.5, "mm", {
    member_is: "internal",
    angle_seen: "60",
    hand: "left",
    starts: "2",
  });
  expect(valueAt(job, "likeliest")).toBe("M10");
  expect(valueAt(job, "dia_off")).toBeCloseTo(8.45 - 8.376, 3);
  const thread = readThread(valueAt(job, "written") as string);
  expect([thread.member, thread.hand, thread.starts, thread.pitch]).toEqual(["internal", "left", 2, 1.5]);
  expect(cautions(job)).toContain("A bore says little");
  expect(cautions(job)).toContain("left-hand thread");
});

test("cautions give the amount: over size, worn, uneven, a poor pitch", () => {
  const angle = { angle_seen: "60" };
  expect(cautions(measured(10.1, 1.5, "mm", angle))).toContain("It measures 0.1000 mm over M10");
  expect(cautions(measured(9.8, 1.5, "mm", angle))).toContain("It measures 0.2000 mm under its basic size");
  expect(cautions(measured(9.98, 1.5, "mm", angle))).toBe("");
  expect(cautions(measured(9.98, 1.5, "mm", { ...angle, first_place: "9.7" }))).toContain(
    "differ by 0.2800 mm",
  );
  expect(cautions(jobWith({}))).toContain("The pitch may be off by 6.0 %");
});

test("a thread that is in no list gives an error that says so", () => {
  const value = valueAt(measured(10, 7.77), "Candidates!A3");
  expect(isErrorValue(value) && value.message).toContain("no thread with a lead of 7.77 mm");
});
