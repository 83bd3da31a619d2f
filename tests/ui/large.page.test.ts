/** Jobs that are reckoned in a worker, on the built page with its real policy. */
import type { Page } from "playwright-core";
import { expect, test } from "vitest";
import { columnName } from "../../src/engine/address.ts";
import type { JobDocument } from "../../src/job/document.ts";
import { writeJob } from "../../src/job/file.ts";
import { madeDocument, madeSheet } from "../job/made.ts";
import { holdReading } from "./held-reading.ts";
import { newContext, openFile, openPage, useBrowser } from "./page.ts";

useBrowser();

/** Every cell is ten times its row plus its column, by way of the one to its left; all depend on B1. */
function chain(rows: number, columns: number): JobDocument {
  const cells: Record<string, string> = { A1: "Start", B1: "0" };
  for (let row = 2; row <= rows; row++) {
    cells[`A${row}`] = String(row * 10);
    for (let column = 1; column < columns; column++)
      cells[`${columnName(column)}${row}`] =
        column === 1 ? `=A${row}+1+$B$1` : `=${columnName(column - 1)}${row}+1`;
  }
  const size = { rows: Math.max(200, rows), columnCount: Math.max(26, columns) };
  return madeDocument([madeSheet("Chain", cells, size)], { title: "Chain" });
}

function cell(page: Page, row: number, column: number) {
  return page.locator(
    `sheet-grid [role=gridcell][aria-rowindex="${row + 1}"][aria-colindex="${column + 1}"]`,
  );
}

async function type(page: Page, text: string) {
  await page.keyboard.press("Control+Home");
  await page.keyboard.press("ArrowRight");
  await page.keyboard.type(text);
  await page.keyboard.press("Enter");
}

test("a job of 9,000 formulas shows its words at once, takes keys, and ends with the right values", async () => {
  const page = await openPage(await newContext());
  const workers: string[] = [];
  page.on("worker", (worker) => workers.push(worker.url()));
  await openFile(page, "chain.json", writeJob(chain(301, 31)));
  await expect.poll(() => cell(page, 1, 1).textContent(), { timeout: 30_000 }).toBe("Start");
  await expect.poll(() => cell(page, 2, 1).textContent(), { timeout: 30_000 }).toBe("20");
  // Column F of row 2: 20 and five.
  await expect.poll(() => cell(page, 2, 6).textContent(), { timeout: 30_000 }).toBe("25");
  // One has read the file, and is gone; the other one reckons.
  expect(workers.map((url) => /(file-worker|worker)-[^/]*\.js$/.exec(url)?.[1])).toEqual([
    "file-worker",
    "worker",
  ]);
  await page.getByRole("button", { name: "Skip to the sheet" }).focus();
  await page.keyboard.press("Enter");
  await type(page, "100");
  await expect.poll(() => cell(page, 1, 2).textContent()).toBe("100");
  await expect.poll(() => cell(page, 2, 6).textContent(), { timeout: 30_000 }).toBe("125");
  await type(page, "200");
  await type(page, "300");
  await expect.poll(() => cell(page, 3, 6).textContent(), { timeout: 30_000 }).toBe("335");
  await page.keyboard.press("Control+z");
  await expect.poll(() => cell(page, 3, 6).textContent(), { timeout: 30_000 }).toBe("235");
  await expect.poll(() => cell(page, 3, 6).getAttribute("class")).not.toMatch(/\bstale\b/);
  await page.keyboard.press("Control+End");
  await expect.poll(() => cell(page, 301, 31).textContent(), { timeout: 30_000 }).toBe("3240");
});

test("a large job that is opened again shows its last values at once, slanted, until it is reckoned", async () => {
  const context = await newContext();
  let page = await openPage(context);
  await openFile(page, "chain.json", writeJob(chain(301, 31)));
  await expect.poll(() => cell(page, 2, 6).textContent(), { timeout: 30_000 }).toBe("25");
  const keptCells = () =>
    page.evaluate(async () => {
      const opening = indexedDB.open("halfangle");
      await new Promise((done) => opening.addEventListener("success", done));
      const asked = opening.result.transaction("values").objectStore("values").getAll();
      await new Promise((done) => asked.addEventListener("success", done));
      opening.result.close();
      return (asked.result as { known: { packets: { spots: Int32Array }[] } }[]).flatMap(({ known }) =>
        known.packets.map(({ spots }) => spots.length),
      );
    });
  await expect.poll(keptCells, { timeout: 30_000 }).toEqual([8192, 808]);
  await page.close();
  // The worker that reckons is given nothing to do before this page lets it.
  await context.addInitScript(() => {
    const free = new Promise<void>((done) => addEventListener("let-go", () => done()));
    window.Worker = class extends Worker {
      readonly #held: boolean;
      constructor(script: string | URL, options?: WorkerOptions) {
        super(script, options);
        this.#held = /\/worker-/.test(String(script));
      }
      override postMessage(message: unknown) {
        if (this.#held) void free.then(() => super.postMessage(message));
        else super.postMessage(message);
      }
    };
  });
  page = await openPage(context, { reckoned: false });
  await expect.poll(() => cell(page, 2, 6).textContent(), { timeout: 30_000 }).toBe("25");
  expect(await cell(page, 2, 6).getAttribute("class")).toMatch(/\bstale\b/);
  expect(await cell(page, 2, 1).getAttribute("class")).not.toMatch(/\bstale\b/);
  await page.getByRole("progressbar", { name: "Values reckoned" }).waitFor();
  await page.evaluate(() => dispatchEvent(new Event("let-go")));
  await expect
    .poll(() => cell(page, 2, 6).getAttribute("class"), { timeout: 30_000 })
    .not.toMatch(/\bstale\b/);
  expect(await cell(page, 2, 6).textContent()).toBe("25");
});

test("one worker reckons the first job, and the next but one has it again", async () => {
  const page = await openPage(await newContext());
  const workers: string[] = [];
  page.on("worker", (worker) => workers.push(worker.url()));
  // The one that was started with the page has the template; when that is done, it goes on to the job after the next.
  await page.getByRole("button", { name: /^\d+ Passes \d/ }).waitFor();
  for (const rows of [5, 6, 7]) {
    await openFile(page, "chain.json", writeJob(chain(rows, 5)));
    await expect.poll(() => cell(page, rows, 4).textContent(), { timeout: 30_000 }).toBe(`${rows * 10 + 3}`);
  }
  expect(workers.map((url) => /worker-[^/]*\.js$/.test(url))).toEqual([true]);
});

test("a sheet of 100,000 rows is gone through to its end, and every row in view is there", async () => {
  const job = chain(2, 5);
  const [sheet] = job.sheets;
  const cells: Record<string, string> = { ...sheet!.cells };
  for (let row = 3; row <= 100_000; row += 7) cells[`A${row}`] = String(row);
  const page = await openPage(await newContext());
  await openFile(
    page,
    "long.json",
    writeJob({ ...job, sheets: [{ ...sheet!, rows: 100_000, columnCount: 30, cells }] }),
  );
  await expect.poll(() => cell(page, 1, 1).textContent(), { timeout: 30_000 }).toBe("Start");
  await page.getByRole("button", { name: "Skip to the sheet" }).focus();
  await page.keyboard.press("Enter");
  await page.keyboard.press("Control+End");
  // Every seventh from 3 on: the last is 99,998.
  await expect.poll(() => cell(page, 99_998, 1).textContent(), { timeout: 30_000 }).toBe("99998");
  const missing = await page.evaluate(() => {
    const view = document
      .querySelector("half-angle")!
      .shadowRoot!.querySelector("sheet-grid")!
      .shadowRoot!.querySelector<HTMLElement>(".scroll")!;
    const row = view.querySelector<HTMLElement>("[role=gridcell]")!.offsetHeight;
    const there = new Set(
      [...view.querySelectorAll(".row")].map((one) => Number(one.getAttribute("aria-rowindex")) - 2),
    );
    const gone: number[] = [];
    for (
      let at = Math.ceil(view.scrollTop / row);
      at < Math.floor((view.scrollTop + view.clientHeight - 30) / row);
      at++
    )
      if (!there.has(at) && at < 100_000) gone.push(at);
    return gone;
  });
  expect(missing).toEqual([]);
});

/** Figures in every cell but for two formulas in each row, and a row of what depends on B1. */
function figures(rows: number): JobDocument {
  const cells: Record<string, string> = { A1: "Start", B1: "1", E1: "=$B$1*3" };
  for (let row = 2; row <= rows; row++) {
    for (let column = 0; column < 28; column++)
      cells[`${columnName(column)}${row}`] = String(row * 100 + column);
    cells[`AC${row}`] = `=A${row}+B${row}`;
    if (row < 500) cells[`AD${row}`] = `=$B$1*${row}`;
  }
  return madeDocument([madeSheet("Figures", cells, { rows, columnCount: 30 })], { title: "Figures" });
}

test("a job of 190,000 figures is kept in parts, of which an edit writes one, and opens again as it was", async () => {
  const rows = 6600;
  const page = await openPage(await newContext());
  await openFile(page, "figures.json", writeJob(figures(rows)));
  await expect.poll(() => cell(page, 1, 5).textContent(), { timeout: 60_000 }).toBe("3");
  const parts = () =>
    page.evaluate(async () => {
      const opening = indexedDB.open("halfangle");
      await new Promise((done) => opening.addEventListener("success", done));
      const step = opening.result.transaction(["parts", "jobs"]);
      const asked = step.objectStore("parts").getAll();
      const jobs = step.objectStore("jobs").getAll();
      await new Promise((done) => step.addEventListener("complete", done));
      opening.result.close();
      const large = (jobs.result as { parts?: number; text: string }[]).find(({ parts }) => parts);
      return { texts: asked.result as string[], count: large?.parts, own: large?.text };
    });
  await expect.poll(async () => (await parts()).count, { timeout: 60_000 }).toBe(9);
  const before = await parts();
  expect([before.texts.join("") === writeJob(figures(rows)), before.own]).toEqual([true, ""]);
  await page.getByRole("button", { name: "Skip to the sheet" }).focus();
  await page.keyboard.press("Enter");
  await type(page, "5");
  await expect.poll(() => cell(page, 1, 5).textContent(), { timeout: 60_000 }).toBe("15");
  const changed = async () =>
    (await parts()).texts.flatMap((text, i) => (text === before.texts[i] ? [] : [i]));
  await expect.poll(changed, { timeout: 60_000 }).toEqual([1]);
  await page.keyboard.press("Control+End");
  await expect
    .poll(() => cell(page, rows, 28).textContent(), { timeout: 60_000 })
    .toBe(String(rows * 100 + 27));
  await page.reload();
  await expect
    .poll(() => cell(page, rows, 28).textContent(), { timeout: 60_000 })
    .toBe(String(rows * 100 + 27));
  await page.getByRole("button", { name: "Skip to the sheet" }).focus();
  await page.keyboard.press("Enter");
  await page.keyboard.press("Control+Home");
  await expect.poll(() => cell(page, 1, 5).textContent(), { timeout: 60_000 }).toBe("15");
  await expect
    .poll(() => cell(page, 1, 5).getAttribute("class"), { timeout: 60_000 })
    .not.toMatch(/\bstale\b/);
});

test("reading a long file is said, and can be stopped", async () => {
  const context = await newContext();
  await holdReading(context);
  const page = await openPage(context);
  const title = await page.evaluate(() => document.title);
  await openFile(page, "long.json", `${" ".repeat(5_000_000)}${writeJob(chain(301, 31))}`);
  const alert = page.getByRole("alert");
  await alert.getByText(/^Reading long\.json, 5 MB/).waitFor();
  await alert.getByRole("button", { name: "Stop" }).click();
  await alert
    .getByText("long.json was not opened: reading was stopped. The job on the desk is unchanged.")
    .waitFor();
  expect(await page.evaluate(() => document.title)).toBe(title);
});
