import { expect, test } from "vitest";
import { createJob, type Job } from "../../src/job/job.ts";
import { HelpActs } from "../../src/ui/help-acts.ts";
import type { PageActs } from "../../src/ui/page-acts.ts";
import { InProcess } from "../engine/in-process.ts";
import { madeDocument, madeSheet } from "../job/made.ts";

const place = { sheet: "One", row: 0, column: 1 };

function opened(reader: string) {
  const far = new InProcess();
  const document = madeDocument([madeSheet("One", { A1: "2", B1: "=A1*3", [reader]: "=B1+1" })]);
  const job = createJob(document, undefined, () => {}, undefined, far.setting);
  far.settle();
  return { job, far };
}

function help(): HelpActs {
  const acts = new HelpActs({ parts: { draw: async () => undefined } } as unknown as PageActs);
  acts.why = true;
  return acts;
}

/** Which cells it is said to go to, and what a little more of an input does. */
function told(acts: HelpActs, job: Job) {
  const { goesTo, ifWrong } = acts.whyOf(job, place);
  return { goesTo: goesTo.map(({ address }) => address), ifWrong };
}

/** What was asked for has come. */
async function answered({ far }: { far: InProcess }) {
  for (let i = 0; i < 5; i++) await far.awaiting(Promise.resolve());
}

test("Nothing is said of a cell that was found for the same cell of another job", async () => {
  const acts = help();
  const [one, other] = [opened("C1"), opened("D1")];
  told(acts, one.job);
  await answered(one);
  expect(told(acts, one.job)).toMatchObject({ goesTo: ["C1"], ifWrong: [expect.stringContaining("1 %")] });
  expect(told(acts, other.job)).toEqual({ goesTo: [], ifWrong: [] });
  await answered(other);
  expect(told(acts, other.job).goesTo).toEqual(["D1"]);
});

test("What could not be answered while reckoning was stopped is asked again", async () => {
  const acts = help();
  const one = opened("C1");
  one.job.setCells([{ sheet: "One", row: 0, column: 0, text: "4" }]);
  one.job.stopReckoning();
  told(acts, one.job);
  await answered(one);
  expect(told(acts, one.job).goesTo).toEqual([]);
  await answered(one);
  one.job.goOnReckoning();
  one.far.settle();
  told(acts, one.job);
  await answered(one);
  expect(told(acts, one.job)).toMatchObject({ goesTo: ["C1"], ifWrong: [expect.stringContaining("1 %")] });
});
