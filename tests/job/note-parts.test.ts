/** What was taken where nothing was given is no caution: both are told apart, in a real sheet. */
import { expect, test } from "vitest";
import { createJob } from "../../src/job/job.ts";
import { partsOfNote } from "../../src/job/note-parts.ts";
import { distinctReferences, referencesOf } from "../../src/job/references.ts";
import { labelOf, whyOf } from "../../src/job/why.ts";
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

test("a note that several arguments share is said once", () => {
  expect(partsOfNote("from memory; no class given: 6g is taken; from memory")).toEqual({
    doubt: "from memory",
    taken: "no class given: 6g is taken",
  });
});

test("a cell is named by short words beside it, not by a sentence, an answer or what its formula reads", () => {
  const sentence = "What the drawing asks for where it says nothing else about the class of the thread";
  const cells = {
    A1: "Length",
    B1: "furlong",
    C1: '=CONVERT(1,B1,"m")',
    A2: sentence,
    B2: "1",
    A3: '="a"&"b"',
  };
  const job = createJob(madeDocument([madeSheet("A", { ...cells, B3: "2" })]));
  const named = (row: number, column: number) => labelOf(job, { sheet: "A", row, column });
  expect([named(0, 2), named(1, 1), named(2, 1)]).toEqual(["Length", "", ""]);
});

test("a cell that a formula names twice is listed once, so that the others have room", () => {
  const found = distinctReferences(referencesOf("=A4*A4+B4*$A$4+C4+D4", "A"));
  expect(found.map(({ text }) => text)).toEqual(["A4", "B4", "C4", "D4"]);
});
