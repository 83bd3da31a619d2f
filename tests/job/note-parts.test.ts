/** What was taken where nothing was given is no caution: both are told apart, in a real sheet. */
import { expect, test } from "vitest";
import { createJob } from "../../src/job/job.ts";
import { whyOf } from "../../src/job/why.ts";
import { madeDocument, madeSheet } from "./made.ts";

test("a class that is taken is told beside the value and in Why, and makes no caution", () => {
  const cells = { A1: '=THREAD.TARGET("M12","pitch")', A2: '=THREAD.TARGET("M12x1.7","pitch")', A3: "=A1*2" };
  const job = createJob(madeDocument([madeSheet("A", cells)]));
  const taken = "no class given: 6g is taken";
  expect(job.cell("A", 0, 0)).toMatchObject({ taken });
  expect(job.cell("A", 0, 0).caution).toBeUndefined();
  expect(whyOf(job, { sheet: "A", row: 0, column: 0 }, [], [], [])).toMatchObject({ taken });
  const both = job.cell("A", 1, 0);
  expect(both.taken).toBe(taken);
  expect(both.caution).toContain("no standard pitch for M12");
  expect(both.caution).not.toContain("class given");
  expect(job.cell("A", 2, 0).taken).toBeUndefined();
});
