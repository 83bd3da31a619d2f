/** Figures of before are said to be such, also where nothing slants them. */
import { expect, test } from "vitest";
import { cardOf } from "../../src/job/card.ts";
import { createJob } from "../../src/job/job.ts";
import { InProcess } from "../engine/in-process.ts";
import { madeDocument, madeSheet } from "./made.ts";

test("A card says that reckoning was stopped, or takes long, and nothing in the moment that it takes else", () => {
  let time = 0;
  const far = new InProcess(undefined, () => {
    time += 20;
    return time;
  });
  const cells: Record<string, string> = { A1: "1" };
  for (let row = 2; row <= 100; row++) cells[`A${row}`] = `=A${row - 1}+1`;
  const document = madeDocument([madeSheet("One", cells, { result: "A100" })]);
  const job = createJob(document, undefined, () => {}, undefined, far.setting);
  far.settle();
  const type = (text: string) => job.setCells([{ sheet: "One", row: 0, column: 0, text }]);
  const words = "Not all of it is reckoned: figures may be those of before.";
  expect(cardOf(job).warnings).toEqual([]);
  type("2");
  expect(cardOf(job).warnings).toEqual([]);
  job.stopReckoning();
  expect(cardOf(job)).toMatchObject({ warnings: [words], settings: [{ value: "100" }] });
  job.goOnReckoning();
  far.settle();
  expect(cardOf(job)).toMatchObject({ warnings: [], settings: [{ value: "101" }] });
  type("3");
  far.work();
  // All but the last thing that the worker says of it.
  far.reports.pop();
  far.read();
  expect(cardOf(job).warnings).toEqual([words]);
});
