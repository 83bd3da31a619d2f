/** What a sign-off was given for, and when it is no longer that. Values are laid out by hand. */
import { describe, expect, test } from "vitest";
import { readJob, writeJob } from "../../src/job/file.ts";
import { createJob, type Job, type JobChange } from "../../src/job/job.ts";
import { signedForAnother } from "../../src/job/signed.ts";
import { insertLines } from "../../src/job/structure.ts";
import { duplicateSheet } from "../../src/job/whole-sheets.ts";
import { operationsOf } from "../../src/ui/operations.ts";
import { InProcess } from "../engine/in-process.ts";
import { madeDocument, madeSheet } from "./made.ts";

/** Set-over: a blank B1, and B2 twice the thread's angle, which is the answer. */
function made(): Job {
  return createJob(madeAs());
}

/** The same, its values on their way until the worker is let do. */
function far(document = madeAs()): { job: Job; worker: InProcess } {
  const worker = new InProcess();
  return { job: createJob(document, undefined, () => {}, undefined, worker.setting), worker };
}

function madeAs() {
  const thread = madeSheet("Thread", { B1: "13.25", A1: "Half angle" });
  const setover = madeSheet(
    "Set-over",
    { A1: "Scale end", B1: "left", B2: "=2*Thread!B1" },
    { result: "B2", formats: { B1: { role: "input" }, B2: { as: "angle", places: 2 } } },
  );
  return madeDocument([thread, setover]);
}

const type = (job: Job, sheet: string, row: number, text: string) =>
  job.setCells([{ sheet, row, column: 1, text }]);
const words = (job: Job) => signedForAnother(job, job.document.sheets[1]!);
const signed = (job: Job) => operationsOf(job)[1]!.signedOff;

describe("a sign-off", () => {
  test("does not hold for another answer, says both, holds for the first again, and is given again", () => {
    const job = made();
    job.signOff("Set-over", true);
    expect([words(job), signed(job)]).toEqual(["", true]);
    type(job, "Thread", 0, "14.5");
    expect([words(job), signed(job)]).toEqual(["signed for another: 26.50° then, 29.00° now", false]);
    job.undo();
    expect([words(job), signed(job)]).toEqual(["", true]);
    job.redo();
    job.signOff("Set-over", true);
    expect(job.canUndo).toBe("Signed off again Set-over");
    expect([words(job), signed(job)]).toEqual(["", true]);
    job.undo();
    expect(signed(job)).toBe(false);
    job.signOff("Set-over", false);
    expect(job.document.sheets[1]).not.toHaveProperty("signedFor");
  });

  test("does not hold for something else that was set by hand", () => {
    const job = made();
    job.signOff("Set-over", true);
    type(job, "Set-over", 0, "right");
    expect(words(job)).toBe("signed for another: B1 left then, right now");
    type(job, "Set-over", 0, "");
    expect(words(job)).toBe("signed for another: 1 value set by hand then, 0 now");
    type(job, "Set-over", 0, "left");
    expect(words(job)).toBe("");
    // What is no value of the sheet is not signed for.
    job.setCells([{ sheet: "Set-over", row: 0, column: 0, text: "End of the scale" }]);
    expect(words(job)).toBe("");
  });

  test("holds for rows that are let in, and where the sheet has no blanks its numbers count", () => {
    const job = made();
    job.signOff("Set-over", true);
    job.signOff("Thread", true);
    expect(insertLines(job, "Set-over", "row", 0, 2)).toBeUndefined();
    expect(words(job)).toBe("");
    type(job, "Thread", 0, "14.5");
    expect(signedForAnother(job, job.document.sheets[0]!)).toBe(
      "signed for another: B1 13.25 then, 14.5 now",
    );
  });

  test("is not another one while values are on their way", () => {
    const job = made();
    job.signOff("Set-over", true);
    const waiting = (of: Job, stale: boolean): Job =>
      new Proxy(of, {
        get: (target, key) => {
          if (key === "cell")
            return (...place: Parameters<Job["cell"]>) => ({
              ...target.cell(...place),
              ...(stale ? { stale } : {}),
            });
          const found = Reflect.get(target, key, target);
          return typeof found === "function" ? found.bind(target) : found;
        },
      });
    type(job, "Thread", 0, "14.5");
    expect(words(waiting(job, true))).toBe("");
    expect(words(waiting(job, false))).toContain("29.00° now");
    // What was found stands.
    expect(words(waiting(job, true))).toContain("29.00° now");
  });

  test("is there at once, and what it was given for follows with the values, without a step of its own", () => {
    const { job, worker } = far();
    worker.settle();
    type(job, "Thread", 0, "14.5");
    job.signOff("Set-over", true);
    expect(job.document.sheets[1]).toMatchObject({ signedOff: true, signedFor: { set: ["left"] } });
    expect(job.document.sheets[1]!.signedFor).not.toHaveProperty("result");
    job.undo();
    expect(job.document.sheets[1]!.signedOff).toBeUndefined();
    job.redo();
    const told: JobChange[] = [];
    job.subscribe((change) => told.push(change));
    worker.settle();
    expect(job.steps).toEqual(["Typed in Thread!B1", "Signed off Set-over"]);
    expect(job.document.sheets[1]!.signedFor).toEqual({ result: "29.00°", set: ["left"] });
    // Whoever keeps the job has to hear of it.
    expect(told.some(({ values, document }) => !values && document === job.document)).toBe(true);
    job.goToStep(0);
    job.goToStep(2);
    worker.settle();
    expect(job.document.sheets[1]!.signedFor).toEqual({ result: "29.00°", set: ["left"] });
    type(job, "Thread", 0, "15");
    worker.settle();
    expect([words(job), signed(job)]).toEqual(["signed for another: 29.00° then, 30.00° now", false]);
  });

  test("is not for an answer that comes of something typed after it", () => {
    const { job, worker } = far();
    worker.settle();
    type(job, "Thread", 0, "14.5");
    job.signOff("Set-over", true);
    job.signOff("Thread", true);
    expect(job.document.sheets[1]!.signedFor).not.toHaveProperty("result");
    type(job, "Thread", 0, "15");
    worker.settle();
    // What was shown as it was signed.
    expect([words(job), signed(job)]).toEqual(["signed for another: 26.50° then, 30.00° now", false]);
    job.undo();
    worker.settle();
    expect([words(job), signed(job)]).toEqual(["", true]);
    job.redo();
    type(job, "Thread", 0, "13.25");
    worker.settle();
    expect([words(job), signed(job)]).toEqual(["", true]);
  });

  test("that was taken back before the values came has what it was given for when it is done again", () => {
    const { job, worker } = far();
    job.signOff("Set-over", true);
    job.undo();
    worker.settle();
    job.redo();
    expect(job.document.sheets[1]!.signedFor).toEqual({ result: "26.50°", set: ["left"] });
  });

  test("that was kept before the values came has what it was given for when the job is opened", () => {
    const thread = madeSheet("Thread", { B1: "13.25" });
    const setover = madeSheet("Set-over", { B2: "=2*Thread!B1" }, { result: "B2" });
    const early = far(madeDocument([thread, setover])).job;
    early.signOff("Set-over", true);
    const text = writeJob(early.document);
    expect(text).toContain('"signedOff": true');
    const { job, worker } = far(readJob(text));
    worker.settle();
    expect(job.document.sheets[1]!.signedFor).toMatchObject({ result: "26.5" });
    expect([job.canUndo, signed(job)]).toEqual([undefined, true]);
    type(job, "Thread", 0, "14.5");
    worker.settle();
    expect(words(job)).toBe("signed for another: 26.5 then, 29 now");
  });

  test("is kept in the file, and one of an older file holds", () => {
    const job = made();
    job.signOff("Set-over", true);
    const text = writeJob(job.document);
    expect(text).toContain('"signedFor": { "result": "26.50°", "set": ["left"] }');
    expect(readJob(text).sheets[1]!.signedFor).toEqual({ result: "26.50°", set: ["left"] });
    expect(writeJob(readJob(text))).toBe(text);
    const turned = text.replace(
      '{ "result": "26.50°", "set": ["left"] }',
      '{"set":["left"],"result":"26.50°"}',
    );
    expect(writeJob(readJob(turned))).toBe(text);
    const older = createJob(readJob(text.replace(/^ *"signedFor".*\n/m, "")));
    type(older, "Thread", 0, "14.5");
    expect(operationsOf(older)[1]!.signedOff).toBe(true);
    expect(duplicateSheet(job, "Set-over")).toBe("Set-over 2");
    expect(job.document.sheets[2]).not.toHaveProperty("signedFor");
  });

  test.each([
    ["no braces", '"signed"', /braces/],
    ["a number as the answer", '{ "result": 26.5 }', /must be text/],
    ["one text", '{ "set": "left" }', /must be a list of texts/],
    ["too many texts", `{ "set": [${'"1", '.repeat(200)}"1"] }`, /200 texts at most/],
  ])("of a file that has %s is refused", (_, bad, reason) => {
    const job = made();
    job.signOff("Set-over", true);
    const text = writeJob(job.document).replace('{ "result": "26.50°", "set": ["left"] }', bad);
    expect(() => readJob(text)).toThrow(reason);
  });
});
