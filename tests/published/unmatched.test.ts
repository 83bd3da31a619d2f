import { expect, test } from "vitest";
import { publishedRows } from "./rows.ts";
import { unmatched } from "./unmatched.ts";

const files = ["acme", "ba_cycle", "metric", "pipe", "trap_buttress_round", "unified", "whitworth"];

test("fewer than ten published rows about threads are not met, and each of them is a row of a file", () => {
  const ids = new Set(files.flatMap((file) => publishedRows(file).map((row) => row.id)));
  expect(ids.size).toBeGreaterThan(2000);
  expect(Object.keys(unmatched).filter((id) => !ids.has(id))).toEqual([]);
  expect(Object.keys(unmatched).length).toBeLessThan(10);
});
