import { expect, test } from "vitest";
import { grouped } from "../../src/job/grouped.ts";

test("counts are grouped as the platform groups them in English", () => {
  for (const count of [0, 7, 999, 1000, 12_345, 300_000, 1_234_567, 3_000_000])
    expect(grouped(count)).toBe(count.toLocaleString("en-GB"));
});
