/**
 * What the built page costs, as multiples of one frame of the same run: arrow key to painted selection, edit to painted
 * dependents, first paint of the grid, and rows missing while it scrolls. The limit for each is the same done to a bare
 * HTML table of the cells in view. And the longest time that the page was kept from anything else, for each thing that
 * a person does.
 */
import { type Browser, chromium, type Page } from "playwright-core";
import { preview } from "vite";
import { chromiumArguments, findBrowser } from "../../src/setup/browser.mjs";
import { type BenchJob, benchJobs } from "./page-jobs.ts";
import { installProbe, type Probe } from "./page-probe.ts";
import { measureTasks } from "./page-tasks.ts";

const rounds = 15;

declare global {
  interface Window {
    probe: Probe;
  }
}

const median = (times: readonly number[]): number =>
  [...times].sort((a, b) => a - b)[Math.floor(times.length / 2)] ?? Number.NaN;

async function opened(browser: Browser, address: string): Promise<Page> {
  const context = await browser.newContext({ viewport: { width: 1280, height: 800 }, locale: "en-GB" });
  const page = await context.newPage();
  page.on("pageerror", (error) => console.error(`the page reports: ${error}`));
  await page.goto(address);
  await page.getByRole("grid").first().waitFor();
  await page.evaluate(installProbe);
  return page;
}

/** Presses a key in the page, and waits until what it does has been painted. */
async function timed(page: Page, key: string, until: string): Promise<number> {
  const answer = page.evaluate((wanted) => window.probe.keyToPaint(wanted), until);
  await page.evaluate(() => window.probe.armed());
  await page.keyboard.press(key);
  return answer;
}

async function measure(page: Page, job: BenchJob, text: string): Promise<void> {
  const frame = median(await page.evaluate(() => window.probe.frames(40)));
  const times = (ms: number) => `${(ms / frame).toFixed(2).padStart(6)} frames`;
  await page.evaluate(() => window.probe.longest());
  for (let from = 0; from < text.length; from += 4_000_000)
    await page.evaluate((part) => window.probe.give(part), text.slice(from, from + 4_000_000));
  await page.evaluate(() => window.probe.longest());
  const first = await page.evaluate((name) => window.probe.open(name), job.name);
  const reckoned = await page.evaluate(() => window.probe.reckoned());
  const opening = await page.evaluate(() => window.probe.longest());
  const table = median(await page.evaluate((count) => window.probe.table(count), rounds));

  await page.evaluate(() => window.probe.stand());
  await page.keyboard.press("Control+Home");
  const arrows: number[] = [];
  for (let i = 0; i < rounds; i++)
    arrows.push(await timed(page, i % 2 === 0 ? "ArrowDown" : "ArrowUp", i % 2 === 0 ? "2,1" : "1,1"));
  const bareArrows = await page.evaluate((count) => window.probe.tableArrows(count), rounds);
  await page.evaluate(() => window.probe.longest());

  const edits: number[] = [];
  await page.keyboard.press("Control+Home");
  for (let i = 0; i < rounds; i++) {
    const { row, column } = job.typeInto;
    for (let step = 0; step < column; step++) await page.keyboard.press("ArrowRight");
    await page.keyboard.type(String(i + 2));
    const shown = job.shows(i + 2);
    edits.push(await timed(page, "Enter", `${shown.row + 1},${shown.column + 1}=${shown.text}`));
    if (row !== 0) throw new Error("the bench types into row 1");
    await page.keyboard.press("Control+Home");
    await page.evaluate(() => window.probe.reckoned());
  }
  const bareEdits = await page.evaluate((count) => window.probe.tableEdits(count), rounds);
  const editing = await page.evaluate(() => window.probe.longest());
  const bareFills = await page.evaluate((count) => window.probe.tableFills(count), rounds);
  const scroll = await page.evaluate(() => window.probe.scroll(60));
  const scrolling = await page.evaluate(() => window.probe.longest());

  console.log(`\n${job.name}: one frame is ${frame.toFixed(1)} ms`);
  const row = (name: string, ms: number, limit: number) =>
    console.log(
      `  ${name.padEnd(34)} ${times(ms)}   bare table ${times(limit)}   ratio ${(ms / limit).toFixed(2)}`,
    );
  row("arrow key to painted selection", median(arrows), median(bareArrows));
  row("edit to painted dependents", median(edits), median(bareEdits));
  row("first paint of the grid", first, table);
  console.log(`  ${"all values reckoned after opening".padEnd(34)} ${times(reckoned)}`);
  row("a frame of scrolling", median(scroll.times), median(bareFills));
  console.log(`  rows missing in ${scroll.frames} frames of scrolling: ${scroll.missing} of ${scroll.rows}`);
  console.log(
    `  longest task: opening ${opening.toFixed(0)} ms, editing ${editing.toFixed(0)} ms, scrolling ${scrolling.toFixed(0)} ms`,
  );
}

const server = await preview({
  root: "src",
  configFile: "vite.config.ts",
  logLevel: "warn",
  preview: { host: "127.0.0.1", port: 0 },
});
const browser = await chromium.launch({ executablePath: findBrowser() ?? "", args: chromiumArguments });
try {
  const at = server.httpServer.address();
  if (typeof at !== "object" || at === null) throw new Error("the page is served nowhere");
  const { writeJob } = await import("../../src/job/file.ts");
  for (const job of benchJobs()) {
    const page = await opened(browser, `http://localhost:${at.port}/`);
    await measure(page, job, writeJob(job.document));
    await page.context().close();
  }
  await measureTasks(browser, `http://localhost:${at.port}/`, 3);
} finally {
  await browser.close();
  await server.close();
}
