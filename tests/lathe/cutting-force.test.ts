// Kienzle's formula by hand; the coefficients are held against printed tables in tests/published/cutting_force.test.ts.
import fc from "fast-check";
import { unit as mathUnit } from "mathjs";
import { expect, test } from "vitest";
import {
  areaForForce,
  coefficientsOf,
  cuttingForce,
  materials,
  specificForce,
  spindlePower,
  spindleTorque,
} from "../../src/lathe/cutting-force.ts";
import { threadTime } from "../../src/lathe/thread-time.ts";
import { between, expectClose, seeded } from "./close.ts";

const mild = coefficientsOf("mild steel");

test("a chip 1 mm wide and 1 mm thick takes kc1.1", () => {
  expect(cuttingForce([1], [1], mild, "mm")).toBe(1350);
  expect(specificForce(mild, 1, "mm")).toBe(1350);
});

// 1350 x 0.08^0.79, reckoned apart.
test("a thin chip takes more for its area, spread from 0.8 to 1.8 times", () => {
  expectClose(cuttingForce([0.08], [1], mild, "mm"), 183.55865137);
  expectClose(cuttingForce([0.08], [1], mild, "mm", "low"), 146.8469211);
  expectClose(cuttingForce([0.08], [1], mild, "mm", "high"), 330.40557247);
  expect(cuttingForce([0], [0], mild, "mm")).toBe(0);
});

test("a metal of mc 0 takes its kc1.1 for any chip, and mc 1 is none", () => {
  expectClose(cuttingForce([0.05], [1], { kc11: 2000, mc: 0 }, "mm"), 100, 1e-12);
  expect(() => cuttingForce([0.05], [1], { kc11: 2000, mc: 1 }, "mm")).toThrow(
    "mc must be from 0 to below 1",
  );
});

// 1350 (0.1^-0.21 x 0.05 + 0.075^-0.21 x 0.03), reckoned apart.
test("the forces on the edges add up, and an edge that only slides adds none", () => {
  expectClose(cuttingForce([0.05, 0, 0.03], [0.5, 0, 0.4], mild, "mm"), 179.2459465256, 1e-9);
});

test("every metal gives a force, the thinner chip the larger specific one", () => {
  for (const material of materials) {
    const metal = coefficientsOf(material);
    expect(metal.is).not.toBe("");
    expect(specificForce(metal, 0.05, "mm")).toBeGreaterThan(specificForce(metal, 0.5, "mm"));
  }
});

const metals = fc.constantFrom(...materials);
const estimates = fc.constantFrom("likely", "low", "high" as const);

test("in inches and pounds it is the same force", () => {
  fc.assert(
    fc.property(metals, between(0.01, 0.5), between(0.3, 3), estimates, (material, area, width, estimate) => {
      const metal = coefficientsOf(material);
      const newtons = cuttingForce([area], [width], metal, "mm", estimate);
      const pounds = cuttingForce([area / 25.4 ** 2], [width / 25.4], metal, "in", estimate);
      expectClose(mathUnit(pounds, "lbf").toNumber("N") / newtons, 1, 1e-9);
    }),
    seeded,
  );
});

test("the area for a force gives that force again", () => {
  fc.assert(
    fc.property(metals, between(10, 2000), between(0.3, 3), estimates, (material, force, width, estimate) => {
      const metal = coefficientsOf(material);
      for (const unit of ["mm", "in"] as const) {
        const edge = unit === "mm" ? width : width / 25.4;
        const area = areaForForce(force, edge, metal, unit, estimate);
        expectClose(cuttingForce([area], [edge], metal, unit, estimate) / force, 1, 1e-9);
      }
    }),
    seeded,
  );
});

test("torque and power are those of mechanics in either unit", () => {
  const torque = spindleTorque(200, 12, "mm");
  expectClose(torque, mathUnit(200, "N").toNumber("N") * 0.006, 1e-12);
  const pounds = spindleTorque(mathUnit(200, "N").toNumber("lbf"), 12 / 25.4, "in");
  // 1 lbf ft is 4.4482216152605 N x 0.3048 m.
  expectClose(pounds * 4.4482216152605 * 0.3048, torque, 1e-12);
  const watts = spindlePower(torque, 150, "mm");
  expectClose(watts, (torque * 2 * Math.PI * 150) / 60, 1e-12);
  // One horsepower is 745.69987 W.
  expectClose(spindlePower(pounds, 150, "in") * 745.6998715822702, watts, 1e-9);
});

// 12 passes of 30 / 1.75 turns at 100 rev/min; 11 returns and 11 settings, by hand.
test("time is cutting, coming back and setting; the last pass needs neither of these", () => {
  const run = { passes: 12, travel: 30, lead: 1.75, rpm: 100, setting: 15, back: 5 };
  const time = threadTime(run);
  expectClose(time.cutting, 123.42857143);
  expect(time.back).toBe(55);
  expect(time.setting).toBe(165);
  expectClose(time.all, 343.42857143);
  expectClose(threadTime({ ...run, returnRpm: 150 }).back, 75.42857143);
  expectClose(threadTime({ ...run, passes: 1 }).all, 10.28571429);
});

test.each<[() => unknown, string]>([
  [() => cuttingForce([-1], [1], mild, "mm"), "area must be 0 or more, got -1"],
  [() => cuttingForce([1], [0], mild, "mm"), "width must be greater than 0, got 0"],
  [() => cuttingForce([1], [1], { kc11: 0, mc: 0.2 }, "mm"), "kc must be greater than 0, got 0"],
  [() => cuttingForce([1], [1], { kc11: 1000, mc: 1 }, "mm"), "mc must be from 0 to below 1, got 1"],
  [() => cuttingForce([1, 1], [1], mild, "mm"), "area and width must hold as many numbers, got 2 and 1"],
  [() => areaForForce(0, 1, mild, "mm"), "force must be greater than 0, got 0"],
  [() => areaForForce(1e300, 1e-300, mild, "mm"), "area is too large for a number to hold"],
  [() => spindleTorque(-1, 1, "mm"), "force must be 0 or more, got -1"],
  [() => spindlePower(1, -1, "mm"), "rpm must be 0 or more, got -1"],
  [
    () => threadTime({ passes: 0, travel: 1, lead: 1, rpm: 1, setting: 0, back: 0 }),
    "passes must be a whole number of 1 or more, got 0",
  ],
  [
    () => threadTime({ passes: 1, travel: 1, lead: 1, rpm: 1, setting: 0, back: 0, returnRpm: 0 }),
    "return_rpm must be greater than 0, got 0",
  ],
])("force and time refusal %# says why", (call, says) => {
  expect(call).toThrow(RangeError);
  expect(call).toThrow(says);
});
