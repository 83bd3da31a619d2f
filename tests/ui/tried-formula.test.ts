import { expect, test } from "vitest";
import type { Job } from "../../src/job/job.ts";
import { TriedFormula } from "../../src/ui/tried-formula.ts";

/** A job that answers when the test says so. */
function slowJob() {
  const asked: { of: string; answer: (value: number) => void; fail: () => void }[] = [];
  const evaluate = (of: string) =>
    new Promise((answer, fail) => asked.push({ of, answer, fail: () => fail(new Error("stopped")) }));
  return { asked, job: { document: {}, evaluate } as unknown as Job };
}

/** All that only waits for promises has gone on. */
const settled = () => new Promise((done) => setImmediate(done));

test("one question is open at a time, and the last text is asked when it is answered", async () => {
  const { asked, job } = slowJob();
  let told = 0;
  const trial = new TriedFormula(() => told++);
  for (const text of ["=A1*2", "=A1*20", "=A1*200"]) {
    expect(trial.of(job, text)).toEqual({ value: undefined, late: true });
  }
  expect(asked.map(({ of }) => of)).toEqual(["=A1*2"]);
  asked[0]!.answer(4);
  await settled();
  expect(asked.map(({ of }) => of)).toEqual(["=A1*2", "=A1*200"]);
  expect(trial.of(job, "=A1*200")).toEqual({ value: 4, late: true });
  asked[1]!.answer(400);
  await settled();
  expect(trial.of(job, "=A1*200")).toEqual({ value: 400, late: false });
  expect([asked.length, told]).toEqual([2, 2]);
});

test("what is known of a text is asked again when the job changes", async () => {
  const { asked, job } = slowJob();
  const trial = new TriedFormula(() => {});
  trial.of(job, "=A1");
  asked[0]!.answer(1);
  await settled();
  expect(trial.of({ ...job, document: { ...job.document } } as Job, "=A1")).toEqual({ value: 1, late: true });
  expect(asked.length).toBe(2);
});

test("an answer for an edit that is over counts for nothing, and the next edit asks at once", async () => {
  const { asked, job } = slowJob();
  const trial = new TriedFormula(() => {});
  trial.of(job, "=A1");
  trial.forget();
  expect(trial.of(job, "=B1")).toEqual({ value: undefined, late: true });
  expect(asked.map(({ of }) => of)).toEqual(["=A1", "=B1"]);
  asked[0]!.answer(1);
  await settled();
  expect(trial.of(job, "=B1").value).toBeUndefined();
  asked[1]!.fail();
  await settled();
  expect(trial.of(job, "=B1")).toEqual({ value: undefined, late: false });
});
