import { expect, test } from "vitest";
import { faults, valueAt } from "./read.ts";
import { number, template } from "./template.ts";

const jobWith = template("infeed-strategies");
const ways = ["straight", "single", "modified", "alternating", "finished"] as const;

test.each([
  ["M12x1.75-6g", "mm"],
  ["1/2-12 BSW", "in"],
  ["1/4-20 UNC-2A", "mm"],
  ["2 BA", "in"],
  ["1-5 Acme-2G", "in"],
])("%s in %s shows no error, and every way takes out its finished groove", (thread, unit) => {
  const job = jobWith({ thread, unit });
  expect(faults(job)).toEqual([]);
  for (const way of ways) {
    expect(number(job, `area_sum_${way}`) / number(job, `area_groove_${way}`), way).toBeCloseTo(1, 9);
  }
});

// Straight in, s sin 30 on both flanks; at the trailing flank, s sin 60 on the leading one only; backed off by half a
// degree, s sin 0.5 on the trailing one.
test("the flanks share the chip as each way of infeed has it", () => {
  const job = jobWith({ rule: "even" });
  const sine = (degrees: number) => Math.sin((degrees * Math.PI) / 180);
  const wound = (way: string) => valueAt(job, `'${way}'!D6`) as number;
  expect(number(job, "chip_leading_straight")).toBeCloseTo(number(job, "chip_trailing_straight"), 12);
  expect(number(job, "chip_trailing_single")).toBeCloseTo(0, 12);
  expect(number(job, "chip_leading_single")).toBeCloseTo(wound("Single flank") * 0.02 * sine(60), 9);
  expect(number(job, "chip_trailing_modified")).toBeCloseTo(wound("Modified flank") * 0.02 * sine(0.5), 9);
});

test("in inches the same divisions are wound, and the forces are the same in pounds", () => {
  const mm = jobWith({ unit: "mm" });
  const inch = jobWith({ unit: "in" });
  for (const way of ways) {
    expect(number(inch, `slide_total_${way}`)).toBe(number(mm, `slide_total_${way}`));
    expect(number(inch, `cross_total_${way}`)).toBe(number(mm, `cross_total_${way}`));
    // 1 lbf is 4.4482216 N.
    expect(number(inch, `force_${way}`) * 4.4482216152605).toBeCloseTo(number(mm, `force_${way}`), 6);
    expect(number(inch, `minutes_${way}`)).toBeCloseTo(number(mm, `minutes_${way}`), 9);
  }
});

test("a lathe that bears less than the force to plan for is warned", () => {
  expect(valueAt(jobWith({ force_limit: "200" }), "Compare!A23")).toContain("take a first pass of");
});

test("the first pass for a force keeps straight in under it", () => {
  const light = jobWith({ force_limit: "400" });
  const job = jobWith({ force_limit: "400", first_depth: String(number(light, "first_for_force")) });
  // Whole divisions may take up to 1.05 times the area allowed.
  expect(number(job, "force_high_straight")).toBeLessThanOrEqual(400 * 1.05);
  expect(number(job, "passes_straight")).toBeGreaterThanOrEqual(number(light, "passes_for_force"));
});

test("the way with the least force is named", () => {
  const job = jobWith({});
  const forces = ways.map((way) => number(job, `force_high_${way}`));
  const names = [
    "Straight in",
    "Single flank",
    "Modified flank",
    "Alternating flanks",
    "Flank then straight",
  ];
  expect(valueAt(job, "gentlest")).toBe(names[forces.indexOf(Math.min(...forces))]);
  expect(valueAt(job, "Compare!A23")).toBe("");
});

test("rake widens what the tool cuts, and the set-over follows the flank that is cut", () => {
  // By hand: the top face from root 4.8718186 to surface 6 at 10 degrees is 1.0125 times the depth; the helix takes from
  // one flank what it gives to the other.
  const job = jobWith({ rake: "10" });
  const tan = (name: string) => Math.tan((number(job, name) * Math.PI) / 180);
  expect(tan("cut_leading") + tan("cut_flank")).toBeCloseTo(1.1691053, 6);
  expect(valueAt(job, "Compare!C3")).toBe(number(job, "cut_flank"));
  expect(faults(job)).toEqual([]);
});
