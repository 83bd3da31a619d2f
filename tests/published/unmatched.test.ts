import { expect, test } from "vitest";
import { publishedRows } from "./rows.ts";
import { notMet, unmatched } from "./unmatched.ts";

const files = ["acme", "ba_cycle", "drills", "metric", "pipe", "trap_buttress_round", "unified", "whitworth"];

test("fewer than ten published figures of threads are not met, nor ten chosen drills, and each is a row of a file", () => {
  const ids = new Set(files.flatMap((file) => publishedRows(file).map((row) => row.id)));
  expect(ids.size).toBeGreaterThan(2000);
  expect(Object.keys(unmatched).filter((id) => !ids.has(id))).toEqual([]);
  expect(Object.keys(notMet.figures).length).toBeLessThan(10);
  expect(Object.keys(notMet.drillChoices).length).toBeLessThan(10);
});
