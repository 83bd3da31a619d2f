/**
 * Every command of the job, in an order that nobody would think of: after 2,000 steps the values are those of a job
 * that is built from the document alone, and undoing all of it gives the first file byte for byte.
 */
import { expect, test } from "vitest";
import { placeName } from "../../src/engine/address.ts";
import { readJob, writeJob } from "../../src/job/file.ts";
import { createJob, type Job } from "../../src/job/job.ts";
import { columns, first, randomFrom, rows, steps, worker } from "./random-work.ts";

/** All that the cells of a job show, by place. */
function shown(job: Job): Record<string, unknown> {
  const found: Record<string, unknown> = {};
  for (const { name } of job.document.sheets) {
    for (let row = 0; row < rows + 8; row++) {
      for (let column = 0; column < columns + 6; column++) {
        const { value, format, caution, spilledFrom } = job.cell(name, row, column);
        if (value !== null)
          found[placeName({ sheet: name, row, column })] = { value, format, caution, spilledFrom };
      }
    }
  }
  return found;
}

test("two thousand random steps leave what a new job of the same document has, and all can be undone", () => {
  const start = writeJob(first);
  const job = createJob(readJob(start), []);
  const act = worker(job, randomFrom(20261125));
  let done = 0;
  for (let step = 1; step <= steps; step++) {
    act();
    done = Math.max(done, job.stepsDone);
    if (step % 400 !== 0) continue;
    const text = writeJob(job.document);
    const again = readJob(text);
    expect(writeJob(again)).toBe(text);
    expect(shown(job)).toEqual(shown(createJob(again, [])));
  }
  expect(done).toBeGreaterThan(300);
  expect(done).toBeLessThan(1000);
  const last = writeJob(job.document);
  const count = job.stepsDone;
  job.goToStep(0);
  expect(writeJob(job.document)).toBe(start);
  expect(shown(job)).toEqual(shown(createJob(readJob(start), [])));
  job.goToStep(count);
  expect(writeJob(job.document)).toBe(last);
}, 240_000);
