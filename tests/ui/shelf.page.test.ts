/** The person's own jobs on the shelf: other titles, copies, files, and what was deleted put back. */
import { readFileSync } from "node:fs";
import type { Page } from "playwright-core";
import { expect, test } from "vitest";
import { readJob } from "../../src/job/file.ts";
import { newContext, openJob, openPage, ready, useBrowser } from "./page.ts";
import { sampleText } from "./sample-job.ts";

useBrowser();

async function shelfWithSample() {
  const page = await openPage(await newContext());
  await openJob(page, "sample.json", sampleText);
  await page.getByText(/^here, \d\d:\d\d$/).waitFor();
  await page.getByRole("button", { name: "Shelf", exact: true }).click();
  const shelf = page.getByRole("dialog", { name: "Shelf" });
  const rows = shelf.getByRole("table").getByRole("row");
  await rows.nth(2).waitFor();
  return { page, shelf, rows };
}

test("a job that is not open gets another title, and keeps it over a reload", async () => {
  const { page, shelf } = await shelfWithSample();
  await shelf.getByRole("button", { name: "Rename Full thread job" }).click();
  await page.keyboard.type("Vice screw");
  await page.keyboard.press("Escape");
  await shelf.getByRole("button", { name: "Full thread job", exact: true }).waitFor();
  await shelf.getByRole("button", { name: "Rename Full thread job" }).click();
  await page.keyboard.type("Vice screw");
  await page.keyboard.press("Enter");
  await shelf.getByRole("button", { name: "Vice screw", exact: true }).waitFor();
  await page.reload();
  await ready(page);
  await page.getByRole("button", { name: "Shelf", exact: true }).click();
  await shelf.getByRole("button", { name: "Vice screw", exact: true }).click();
  await shelf.waitFor({ state: "hidden" });
  await page.waitForFunction(() => document.title.includes("Vice screw"));
});

test("the open job gets another title as a step that can be undone", async () => {
  const { page, shelf } = await shelfWithSample();
  await shelf.getByRole("button", { name: "Rename Sample <b>bolt</b>" }).click();
  await page.keyboard.type("Bolt");
  await page.keyboard.press("Enter");
  await shelf.getByRole("button", { name: "Bolt", exact: true }).waitFor();
  await shelf.getByRole("button", { name: "Back to the job" }).click();
  await page.getByRole("button", { name: "Undo", exact: true }).click();
  await page.waitForFunction(() => document.title.includes("Sample <b>bolt</b>"));
});

test("a copy of a job is a job of its own", async () => {
  const { page, shelf, rows } = await shelfWithSample();
  await shelf.getByRole("button", { name: "Copy Sample <b>bolt</b>" }).click();
  await rows.nth(3).waitFor();
  await shelf.getByRole("button", { name: "Sample <b>bolt</b> 2", exact: true }).click();
  await shelf.waitFor({ state: "hidden" });
  await page.getByRole("checkbox", { name: "Sign off 20 Passes" }).check();
  await page.getByRole("button", { name: "Shelf", exact: true }).click();
  await rows.filter({ hasText: "bolt</b> 2" }).getByText("1 of 2 signed off").waitFor();
  await rows.filter({ hasText: "Sample" }).filter({ hasText: "0 of 2 signed off" }).waitFor();
});

test("any job of the shelf is saved to a file that opens again", async () => {
  const { page, shelf } = await shelfWithSample();
  const download = page.waitForEvent("download");
  await shelf.getByRole("button", { name: "To a file Full thread job" }).click();
  const file = await download;
  expect(file.suggestedFilename()).toBe("full-thread-job.json");
  expect(readJob(readFileSync((await file.path())!, "utf8")).title).toBe("Full thread job");
});

test("each of several deleted jobs can be put back, also after the shelf was left", async () => {
  const { page, shelf, rows } = await shelfWithSample();
  await shelf.getByRole("button", { name: "Copy Full thread job" }).click();
  await rows.nth(3).waitFor();
  await shelf.getByRole("button", { name: "Delete Full thread job", exact: true }).click();
  await rows.nth(3).waitFor({ state: "detached" });
  await shelf.getByRole("button", { name: "Delete Full thread job 2" }).click();
  await rows.nth(2).waitFor({ state: "detached" });
  await shelf.getByRole("button", { name: "Undo delete of Full thread job", exact: true }).click();
  await rows.nth(2).waitFor();
  await shelf.getByRole("button", { name: "Back to the job" }).click();
  await shelf.waitFor({ state: "hidden" });
  await page.getByRole("button", { name: "Shelf", exact: true }).click();
  await shelf.getByRole("button", { name: "Undo delete of Full thread job 2" }).click();
  await rows.nth(3).waitFor();
});

interface Stored {
  readonly id: string;
  readonly title: string;
  readonly text: string;
  readonly revision: number;
}

/** Writes "Full thread job" anew, as another tab does; its text in halves, as that of a very large job is, or as given. */
function rewrite(page: Page, text?: string): Promise<string> {
  return page.evaluate(async (given) => {
    const asked = indexedDB.open("halfangle");
    await new Promise((done) => asked.addEventListener("success", done));
    const step = asked.result.transaction(["jobs", "parts", "values"], "readwrite");
    const all = step.objectStore("jobs").getAll();
    let id = "";
    all.addEventListener("success", () => {
      const job = (all.result as Stored[]).find(({ title }) => title === "Full thread job")!;
      id = job.id;
      const next = { ...job, revision: job.revision + 1 };
      const known = { revision: next.revision, when: Date.now(), known: [] };
      if (given !== undefined) step.objectStore("jobs").put({ ...next, text: given });
      else {
        const half = job.text.length / 2;
        step.objectStore("parts").put(job.text.slice(0, half), [job.id, 0]);
        step.objectStore("parts").put(job.text.slice(half), [job.id, 1]);
        step.objectStore("values").put(known, job.id);
        step.objectStore("jobs").put({ ...next, text: "", parts: 2 });
      }
    });
    await new Promise((over) => step.addEventListener("complete", over));
    asked.result.close();
    return id;
  }, text);
}

/** How much is stored of a job besides its record. */
function besides(page: Page, id: string): Promise<{ parts: number; values: number }> {
  return page.evaluate(async (of) => {
    const asked = indexedDB.open("halfangle");
    await new Promise((done) => asked.addEventListener("success", done));
    const step = asked.result.transaction(["parts", "values"]);
    const parts = step.objectStore("parts").count(IDBKeyRange.bound([of, 0], [of, 9]));
    const values = step.objectStore("values").count(of);
    await new Promise((over) => step.addEventListener("complete", over));
    asked.result.close();
    return { parts: parts.result, values: values.result };
  }, id);
}

test("a very large job is put back whole, also when another tab has been opened since; later it is gone whole", async () => {
  const { page, shelf, rows } = await shelfWithSample();
  const id = await rewrite(page);
  await shelf.getByRole("button", { name: "Delete Full thread job" }).click();
  await rows.nth(2).waitFor({ state: "detached" });
  const other = await openPage(page.context());
  await other.close();
  await shelf.getByRole("button", { name: "Undo delete of Full thread job" }).click();
  await rows.nth(2).waitFor();
  expect(await besides(page, id)).toEqual({ parts: 2, values: 1 });
  await shelf.getByRole("button", { name: "Full thread job", exact: true }).click();
  await page.waitForFunction(() => document.title.includes("Full thread job"));
  await ready(page);

  await page.getByRole("button", { name: "Shelf", exact: true }).click();
  await shelf.getByRole("button", { name: "Sample <b>bolt</b>", exact: true }).click();
  await page.waitForFunction(() => document.title.includes("Sample"));
  await page.getByRole("button", { name: "Shelf", exact: true }).click();
  await shelf.getByRole("button", { name: "Delete Full thread job" }).click();
  await rows.nth(2).waitFor({ state: "detached" });
  await page.reload();
  await expect.poll(() => besides(page, id)).toEqual({ parts: 0, values: 0 });
});

test("a deleted job is put back as another tab wrote it last", async () => {
  const { page, shelf, rows } = await shelfWithSample();
  const text = readFileSync("sheets/full-thread-job.json", "utf8").replace(
    "Full thread job",
    "Written since",
  );
  await rewrite(page, text);
  await shelf.getByRole("button", { name: "Delete Full thread job" }).click();
  await rows.nth(2).waitFor({ state: "detached" });
  await shelf.getByRole("button", { name: "Undo delete of Full thread job" }).click();
  await rows.nth(2).waitFor();
  await shelf.getByRole("button", { name: "Full thread job", exact: true }).click();
  await page.waitForFunction(() => document.title.includes("Written since"));
});

test("a template that is started again is numbered, and an empty job is there to be started", async () => {
  const { page, shelf } = await shelfWithSample();
  const start = async (name: string, title: string) => {
    await shelf.getByRole("button", { name, exact: true }).click();
    await shelf.waitFor({ state: "hidden" });
    await page.waitForFunction((wanted) => document.title.includes(` - ${wanted} - `), title);
    await page.getByText(/^here, \d\d:\d\d$/).waitFor();
    await page.getByRole("button", { name: "Shelf", exact: true }).click();
    await shelf.getByRole("button", { name: title, exact: true }).waitFor();
  };
  await start("Start a copy of Full thread job", "Full thread job 2");
  await start("Start a copy of Full thread job", "Full thread job 3");
  await start("Start an empty job", "Empty job");
  await start("Start an empty job", "Empty job 2");
  await shelf.getByRole("button", { name: "Back to the job" }).click();
  await page.getByRole("grid", { name: "Sheet Sheet 1" }).waitFor();
});

test("the shelf counts sign-offs as the route card does, those with a caution among them", async () => {
  const page = await openPage(await newContext());
  const job = JSON.parse(sampleText);
  Object.assign(job.sheets[1].cells, { D7: "=1/0" });
  for (const sheet of job.sheets) sheet.signedOff = true;
  await openJob(page, "sample.json", JSON.stringify(job));
  await page.locator("route-card").getByText("2 of 2 signed off").waitFor();
  await page.getByRole("button", { name: "Shelf", exact: true }).click();
  const shelf = page.getByRole("dialog", { name: "Shelf" });
  await shelf.getByText("2 of 2 signed off, cautions or errors on 1").waitFor();
});
