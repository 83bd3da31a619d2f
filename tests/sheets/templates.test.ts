import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { readJob, writeJob } from "../../src/job/file.ts";
import { createJob } from "../../src/job/job.ts";
import { faults, valueAt } from "./read.ts";

const templates = readdirSync("sheets").map((file) => ({
  file,
  text: readFileSync(`sheets/${file}`, "utf8"),
}));

describe.each(templates)("sheets/$file", ({ text }) => {
  test("is canonical text", () => {
    expect(writeJob(readJob(text))).toBe(text);
  });

  test("shows no error as shipped", () => {
    expect(faults(createJob(readJob(text)))).toEqual([]);
  });

  test("holds its check values, each with a source", () => {
    const document = readJob(text);
    const job = createJob(document);
    expect(Object.keys(document.check).length).toBeGreaterThan(0);
    for (const [place, check] of Object.entries(document.check)) {
      expect(check.source).not.toBe("");
      const value = valueAt(job, place);
      if (typeof check.value === "number") {
        expect(Math.abs((value as number) - check.value), place).toBeLessThanOrEqual(check.within ?? 1e-9);
      } else expect(value, place).toBe(check.value);
    }
  });
});
