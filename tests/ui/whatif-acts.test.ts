import { expect, test, vi } from "vitest";
import { createJob } from "../../src/job/job.ts";
import type { PageActs } from "../../src/ui/page-acts.ts";
import { WhatIfActs } from "../../src/ui/whatif-acts.ts";
import { madeDocument, madeSheet } from "../job/made.ts";

test("What-if panels do not show a job that another has taken the place of while they were fetched", async () => {
  const made = () => createJob(madeDocument([madeSheet("One", { A1: "2", B1: "=A1*3" })]));
  const [one, other] = [made(), made()];
  const show = vi.fn();
  const parts = {
    desk: { place: { row: 0, column: 1 } },
    element: () => ({ area: { top: 0, left: 1, bottom: 0, right: 1 } }),
    panel: async () => ({ show }),
  };
  const page = { job: one, sheet: "One", parts, commit: () => true };
  const acts = new WhatIfActs(page as unknown as PageActs);
  const shown = [acts.showTrial(), acts.showSeek()];
  page.job = other;
  await Promise.all(shown);
  expect(show).not.toHaveBeenCalled();
  await acts.showTrial();
  await acts.showSeek();
  expect(show.mock.calls.map(([job]) => job === other)).toEqual([true, true]);
});
