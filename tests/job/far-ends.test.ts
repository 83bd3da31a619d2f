/** What becomes of a job in a worker where something does not come: an answer, a worker, the engine itself. */
import { expect, test } from "vitest";
import { createJob, type JobChange } from "../../src/job/job.ts";
import { startJob } from "../../src/job/running.ts";
import { insertLines } from "../../src/job/structure.ts";
import { InProcess } from "../engine/in-process.ts";
import { madeDocument, madeSheet } from "./made.ts";

const small = madeDocument([madeSheet("One", { A1: "1", B1: "=A1*10" })]);

test("Whoever waits for values hears of rows let in where none had to be reckoned", () => {
  const far = new InProcess();
  const works: (() => void)[] = [];
  const setting = { ...far.setting, soon: (work: () => void) => works.push(work) };
  const job = createJob(small, undefined, () => {}, undefined, setting);
  far.settle();
  insertLines(job, "One", "row", 50, 1);
  expect(job.reckoning).toBeDefined();
  const waiting: JobChange[] = [];
  job.subscribe((change) => waiting.push(change));
  for (const work of works) work();
  expect(job.reckoning).toBeUndefined();
  expect(waiting).toMatchObject([{ values: true }]);
});

test("Where neither a worker nor the engine can be had that is told, and tried again when it is to go on", async () => {
  const far = new InProcess();
  let fetched = 0;
  const near = () => {
    fetched += 1;
    return Promise.reject(new Error("offline"));
  };
  const job = startJob(small, { far: far.setting, near });
  const troubles: unknown[] = [];
  job.subscribe(({ trouble }) => trouble !== undefined && troubles.push(trouble));
  far.breakDown("not allowed here");
  await Promise.resolve();
  await Promise.resolve();
  expect(troubles).toEqual([
    "Nothing is reckoned: there is no worker, and the engine cannot be fetched (offline).",
  ]);
  expect(job.reckoning).toMatchObject({ stopped: true });
  job.goOnReckoning();
  far.breakDown("not allowed here");
  expect(fetched).toBe(2);
});

test("A worker that holds very many cells is ended with its job", () => {
  const cells: Record<string, string> = {};
  for (let row = 1; row <= 20_001; row++) cells[`A${row}`] = String(row);
  const far = new InProcess();
  const job = createJob(madeDocument([madeSheet("One", cells)]), undefined, () => {}, undefined, far.setting);
  far.settle();
  job.close();
  expect(far.left).toBe(0);
});

test("A closed job starts no worker: nobody would end it", async () => {
  const far = new InProcess();
  const job = createJob(small, undefined, () => {}, undefined, far.setting);
  far.settle();
  job.close();
  job.setCells([{ sheet: "One", row: 0, column: 0, text: "2" }]);
  insertLines(job, "One", "row", 0, 1);
  job.undo();
  job.goOnReckoning();
  expect(far.started).toBe(1);
  expect(job.cell("One", 0, 0).value).toBe(2);
  expect(job.cell("One", 0, 1)).toMatchObject({ value: 10, stale: true });
  // Whoever waits for the values is told that none will come.
  expect(job.reckoning).toMatchObject({ stopped: true });
  await expect(job.evaluate("=A1")).rejects.toThrow("the job was closed");
  expect(far.started).toBe(1);
});
