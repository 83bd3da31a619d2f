// Specific cutting forces of tests/published/cutting_force.csv; each row names its own source.
import { expect, test } from "vitest";
import { coefficientsOf, cuttingForce, type Material, specificForce } from "../../src/lathe/cutting-force.ts";
import { publishedRows, type Row, testRows } from "./rows.ts";

const rows = publishedRows("cutting_force");

/** Chip thickness of a feed at an entering angle of 45 degrees. */
const thickness = (row: Row) => Number(/feed ([\d.]+)/.exec(row.quantity)![1]) * Math.SQRT1_2;

testRows(rows, (row) => {
  const metal = coefficientsOf(row.designation as Material);
  if (row.quantity === "kc1") return metal.kc11;
  if (row.quantity === "mc") return metal.mc;
  return specificForce(metal, thickness(row), "mm") / 1000;
});

test("the spread holds what the other printed table gives for steels of like strength", () => {
  // St 50-2, 520 N/mm2, stands between groups 1 (420) and 2 (650); St 60-2 has 620.
  const steels = rows.filter(({ designation }) => designation.startsWith("St "));
  expect(steels).toHaveLength(12);
  for (const row of steels) {
    const h = thickness(row);
    const group = coefficientsOf("medium carbon steel");
    const [low, high] = (["low", "high"] as const).map((estimate) =>
      cuttingForce([h], [1], group, "mm", estimate),
    );
    expect(row.value * 1000 * h).toBeGreaterThan(low!);
    expect(row.value * 1000 * h).toBeLessThan(high!);
  }
});
