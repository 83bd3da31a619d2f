/** A plan of many passes is whole: it ends with a measurement, at the depth that is wanted. */
import { expect, test } from "vitest";
import { stepsOf } from "../../src/job/steps.ts";
import { valueAt } from "./read.ts";
import { number, template } from "./template.ts";

const radians = Math.PI / 180;

test("a coarse buttress on a fine dial: every division of 289, then measure, straight in, spring, measure", () => {
  const job = template("full-thread-job")({
    thread: "2-4 Push-Butt",
    unit: "in",
    trails: "clearance",
    blank: "2",
    nose_is: "radius",
    nose: "0.0178525",
  });
  // ASME B1.9: 45 degrees on the clearance flank, 1 backed off.
  expect(number(job, "setover")).toBe(44);
  const division = 0.02 / 25.4;
  const whole = Math.floor((number(job, "depth") - 0.04 / 25.4) / (division * Math.cos(44 * radians)));
  expect(valueAt(job, "Passes!C9")).toBe(whole);
  // So many of its divisions go in by their cosine.
  const reached = whole * division * Math.cos(44 * radians);
  expect(valueAt(job, "Passes!C10")).toBeCloseTo(reached, 9);
  const { steps } = stepsOf(job);
  expect(steps.filter(({ kind }) => kind === "slide").reduce((sum, { wind = 0 }) => sum + wind, 0)).toBe(
    whole,
  );
  const kinds = steps.map(({ kind }) => kind).filter((kind, i, all) => kind !== all[i - 1]);
  expect(kinds).toEqual(["scratch", "slide", "measure", "straight in", "spring", "measure"]);
});

test.each([
  ["full-thread-job", { thread: "Tr 60x9-7e", first_depth: "0.1", least_cut: "0.04" }],
  ["internal-thread", { thread: "Tr 60x9-7H", first_depth: "0.1", least_cut: "0.04" }],
  ["custom-form", { first_depth: "0.004", least_cut: "0.0015", slide_division: "0.0005" }],
  ["pass-schedule", { thread: "Tr 60x9-7e", first_cut: "0.06", least_cut: "0.02" }],
] as const)("%s goes on to the last measurement after more than 70 passes", (name, inputs) => {
  const job = template(name)(inputs);
  const { steps } = stepsOf(job);
  const many = (which: string) => steps.filter(({ kind }) => kind === which).length;
  expect(many("slide")).toBeGreaterThan(70);
  expect(steps.at(-1)?.kind).toBe("measure");
  // Counted again: what the sheet says in short.
  expect(valueAt(job, "plan_in_short")).toBe(
    name === "pass-schedule"
      ? `${many("slide")} + ${many("straight in")}`
      : `${many("slide")} + ${many("spring")} spring`,
  );
});

test("the schedule of a long plan stops where its winding adds up to, at the depth of its last pass", () => {
  const job = template("pass-schedule")({ thread: "Tr 60x9-7e", first_cut: "0.06", least_cut: "0.02" });
  const { steps } = stepsOf(job);
  const wound = (which: string) =>
    steps.reduce((sum, { kind, wind = 0 }) => sum + (kind === which ? wind : 0), 0);
  expect(number(job, "slide_stops")).toBeCloseTo(wound("slide"), 9);
  // Thousandths of an inch at the set-over, and divisions of 0.05 on diameter straight in.
  const reached =
    wound("slide") * 0.0254 * Math.cos(number(job, "setover") * radians) + wound("straight in") * 0.025;
  expect(number(job, "depth_planned")).toBeCloseTo(reached, 9);
});

test.each([
  ["internal-thread", "Passes!C10", { thread: "Tr 60x9-7H", first_depth: "0.06" }],
  ["custom-form", "Passes!C11", { first_depth: "0.003" }],
] as const)("%s says where there is no plan instead of counting none", (name, place, inputs) => {
  expect(valueAt(template(name)(inputs), place)).toMatchObject({
    message: expect.stringContaining("raise first_cut or lower least_cut"),
  });
});

// A division on diameter takes 0.0005 in radially: 0.195 are 390 of them, and what less than a division of the slide
// (0.0254 at its angle) had left comes to some more.
test("several hundred passes straight in have room, and the sheet counts them all", () => {
  const job = template("pass-schedule")({
    thread: "Tr 60x9-7e",
    first_cut: "0.06",
    least_cut: "0.02",
    straight_in: "0.195",
    cross_division: "0.001",
  });
  const { steps, trouble } = stepsOf(job);
  expect(trouble).toBeUndefined();
  expect(steps.at(-1)?.kind).toBe("measure");
  const many = (which: string) => steps.filter(({ kind }) => kind === which).length;
  expect(many("slide")).toBeGreaterThan(70);
  expect(many("straight in")).toBeGreaterThanOrEqual(390);
  expect(many("straight in")).toBeLessThan(390 + 0.0254 / 0.0005);
  expect(valueAt(job, "plan_in_short")).toBe(`${many("slide")} + ${many("straight in")}`);
});
