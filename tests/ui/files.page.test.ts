import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { newContext, openFile, openJob, openPage, useBrowser } from "./page.ts";
import { sampleJob, sampleText } from "./sample-job.ts";

useBrowser();

test("a file's words are shown as words, never as markup", async () => {
  const page = await openPage(await newContext());
  await openJob(page, "sample.json", sampleText);
  await page.getByText("Sample <b>bolt</b>", { exact: true }).first().waitFor();
  expect(await page.title()).toContain("Sample <b>bolt</b>");
});

test("a broken file is refused with the reason, and the job on the desk stays", async () => {
  const page = await openPage(await newContext());
  await openJob(page, "sample.json", sampleText);
  await page.getByRole("button", { name: "20 Passes" }).click();
  const alert = page.getByRole("alert");

  await openFile(page, "cut.json", sampleText.slice(0, 300));
  await alert.getByText(/^cut\.json was not opened: .+ The job on the desk is unchanged\.$/).waitFor();
  await openFile(page, "other.json", '{ "rows": [1, 2] }');
  await alert.getByText(/^other\.json was not opened: .+ The job on the desk is unchanged\.$/).waitFor();
  await openFile(page, "wrong.json", JSON.stringify({ ...sampleJob, sheets: [{ name: 4 }] }, null, 1));
  await alert.getByText(/^wrong\.json was not opened: .*line \d+.*$/).waitFor();

  expect(await page.getByRole("button", { name: "20 Passes" }).getAttribute("aria-current")).toBe("page");
  await page.getByRole("button", { name: "Close message" }).first().click();
  await alert.getByText(/^cut\.json/).waitFor({ state: "detached" });
});

test("a saved file opens as the same job", async () => {
  const page = await openPage(await newContext());
  await openJob(page, "sample.json", sampleText);
  await page.getByRole("checkbox", { name: "Sign off 10 Thread" }).check();
  await page.getByText("1 of 2 signed off").waitFor();
  const download = page.waitForEvent("download");
  await page.keyboard.press("Control+s");
  const saved = await download;
  expect(saved.suggestedFilename()).toBe("sample-b-bolt-b.json");
  const text = readFileSync(await saved.path(), "utf8");
  expect(JSON.parse(text).sheets[0]).toMatchObject({
    name: "Thread",
    signedOff: true,
    cells: sampleJob.sheets[0]!.cells,
  });

  const other = await openPage(await newContext());
  await openJob(other, "again.json", text);
  await other.getByRole("checkbox", { name: "Sign off 10 Thread", checked: true }).waitFor();
});

test("a job file dropped on the page is opened", async () => {
  const page = await openPage(await newContext());
  const dropped = await page.evaluateHandle((text) => {
    const files = new DataTransfer();
    files.items.add(new File([text], "sample.json", { type: "application/json" }));
    return files;
  }, sampleText);
  await page.dispatchEvent("half-angle", "drop", { dataTransfer: dropped });
  await page.getByRole("button", { name: "20 Passes" }).waitFor();
});

test("a template starts as a copy, and the job before stays on the shelf", async () => {
  const page = await openPage(await newContext());
  await openJob(page, "sample.json", sampleText);
  await page.getByRole("button", { name: "20 Passes" }).waitFor();
  await page.getByRole("button", { name: "Shelf", exact: true }).click();
  const shelf = page.getByRole("dialog", { name: "Shelf" });
  await shelf
    .getByRole("button", { name: /^Start a copy/ })
    .first()
    .click();
  await shelf.waitFor({ state: "hidden" });
  expect(await page.title()).not.toContain("Sample");
  await page.getByRole("button", { name: "Shelf", exact: true }).click();
  await shelf.getByRole("button", { name: "Sample <b>bolt</b>", exact: true }).click();
  await page.getByRole("button", { name: "20 Passes" }).waitFor();
});
