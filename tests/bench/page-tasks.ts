/**
 * What keeps the page from anything else: each thing that a person does, and the longest task on the page's own thread
 * until nothing more comes of it. The limit for all of them is 50 ms.
 */
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Browser, Page } from "playwright-core";
import { writeJob } from "../../src/job/file.ts";
import { hugeJob, largeJob, plainRows } from "./page-jobs.ts";
import { installProbe } from "./page-probe.ts";
import { type Busy, busyDuring } from "./page-trace.ts";

interface Scenario {
  readonly name: string;
  /** What has to be so before, and is not measured. */
  readonly before?: (page: Page) => Promise<unknown>;
  readonly act: (page: Page) => Promise<unknown>;
}

const limit = 50;

const shownWord = (page: Page, word: string) => page.getByRole("button", { name: word, exact: true }).click();
const operation = (page: Page, name: RegExp) => page.getByRole("button", { name }).click();

async function stand(page: Page, down = 0, right = 0): Promise<void> {
  await page.evaluate(() => window.probe.stand());
  await page.keyboard.press("Control+Home");
  for (let i = 0; i < down; i++) await page.keyboard.press("ArrowDown");
  for (let i = 0; i < right; i++) await page.keyboard.press("ArrowRight");
}

/** All values are there, and what they changed has been painted. */
async function settled(page: Page): Promise<void> {
  await page.evaluate(() => window.probe.reckoned());
  await page.evaluate(() => window.probe.frames(12));
}

const paste = (rows: number, columns: number) => (page: Page) =>
  page.evaluate((text) => window.probe.paste(text), plainRows(rows, columns));

async function byMenu(page: Page, command: RegExp) {
  await page.keyboard.press("Shift+F10");
  await page.getByRole("menuitem", { name: command }).click();
}

async function trial(page: Page, runs: number) {
  await shownWord(page, "Trial");
  const dialog = page.getByRole("dialog", { name: "Trial: a what-if table" });
  await dialog.getByLabel("Results").fill("'Set-over'!B45:B46, 'Set-over'!B45:B46");
  await dialog.getByLabel("Cell to change").fill("wrong_by");
  await page.keyboard.press("Tab");
  await dialog.getByRole("combobox", { name: "Values" }).selectOption("start and step");
  await dialog.getByLabel("Start", { exact: true }).fill("0.001");
  await dialog.getByLabel("Step", { exact: true }).fill("0.001");
  await dialog.getByLabel("How many").fill(String(runs / 4));
  const why = await dialog.getByRole("status").textContent();
  if (!why?.startsWith(runs.toLocaleString("en-GB"))) throw new Error(`Trial says: ${why}`);
  await dialog.getByRole("button", { name: "Make the table" }).click();
  await dialog.waitFor({ state: "hidden" });
}

async function seek(
  page: Page,
  wanted: string,
  more: readonly (readonly [label: string, text: string])[] = [],
) {
  await shownWord(page, "Seek");
  const dialog = page.getByRole("dialog", { name: "Seek: the input for a wanted value" });
  for (const [label, text] of more) await dialog.getByLabel(label, { exact: true }).fill(text);
  if (more.length > 0) await page.keyboard.press("Tab");
  await dialog.getByLabel("Shall show").fill(wanted);
  await page.keyboard.press("Enter");
  await dialog.getByRole("status").filter({ hasText: /\w/ }).waitFor();
  await page.evaluate(() => window.probe.frames(60));
  await page.keyboard.press("Escape");
}

/** Looks through all that is shown, and then changes words that no formula has. */
const replaceAll = (words: string, by: string) => async (page: Page) => {
  const find = page.getByRole("textbox", { name: "Find", exact: true });
  await page.keyboard.press("Control+f");
  await find.fill("1");
  await page.getByRole("button", { name: "Next" }).click();
  await find.fill(words);
  await page.getByRole("textbox", { name: "Put in its place" }).fill(by);
  await page.getByRole("button", { name: "Replace all" }).click();
};

async function closeFind(page: Page) {
  await page.getByRole("search").getByRole("button", { name: "Close" }).click();
}

const undo = (page: Page) => page.keyboard.press("Control+z");

const typed = (text: string) => async (page: Page) => {
  await page.keyboard.type(text);
  await page.keyboard.press("Enter");
};

/** On the job that opens by itself at the first visit. */
const template: readonly Scenario[] = [
  { name: "the designation typed over", before: (page) => stand(page, 1, 1), act: typed("M20x1.5") },
  { name: "undo of it", act: undo },
  {
    name: "a formula typed, the coloured line fetched",
    before: (page) => stand(page, 3, 7),
    act: typed("=pitch*2"),
  },
  { name: "another formula typed", before: (page) => stand(page, 4, 7), act: typed("=major-pitch") },
  { name: "another sheet", act: (page) => operation(page, /^\d+ Set-over/) },
  { name: "the sheet of the passes", act: (page) => operation(page, /^\d+ Passes/) },
  { name: "the first sheet again", act: (page) => operation(page, /^\d+ Thread/) },
  {
    name: "a row inserted",
    before: (page) => stand(page, 5, 1),
    act: (page) => page.keyboard.press("Alt+Insert"),
  },
  { name: "undo of it", act: undo },
  { name: "100 rows pasted", before: (page) => stand(page, 40, 1), act: paste(100, 4) },
  { name: "they are sorted", act: (page) => byMenu(page, /^Sort by column \w+, largest/) },
  {
    name: "undo of both",
    act: async (page) => {
      await undo(page);
      await settled(page);
      await undo(page);
    },
  },
  { name: "Why opened", before: (page) => stand(page, 21, 1), act: (page) => shownWord(page, "Why") },
  { name: "Why of another cell", act: (page) => page.keyboard.press("ArrowUp") },
  { name: "Why shut", act: (page) => shownWord(page, "Why") },
  { name: "the function guide opened", act: (page) => shownWord(page, "Functions") },
  {
    name: "find and replace",
    before: (page) => page.keyboard.press("Escape"),
    act: replaceAll("pitch line", "line of the pitch"),
  },
  { name: "the card opened", before: closeFind, act: (page) => shownWord(page, "Card") },
  {
    name: "the bench opened",
    before: (page) => page.keyboard.press("Escape"),
    act: (page) => shownWord(page, "Bench"),
  },
  {
    name: "Trial of 2,000 runs",
    before: async (page) => {
      await page.keyboard.press("Escape");
      await stand(page, 21, 1);
    },
    act: (page) => trial(page, 2000),
  },
  { name: "undo of it", act: undo },
  {
    name: "Seek",
    before: (page) => stand(page, 21, 1),
    act: (page) =>
      seek(page, "0.01", [
        ["Cell", "'Set-over'!B45"],
        ["By changing", "wrong_by"],
      ]),
  },
];

const large: readonly Scenario[] = [
  { name: "B1 typed over", before: (page) => stand(page, 0, 1), act: typed("7") },
  { name: "undo of it", act: undo },
  {
    name: "a row inserted",
    before: (page) => stand(page, 5, 1),
    act: (page) => page.keyboard.press("Alt+Insert"),
  },
  { name: "undo of it", act: undo },
  { name: "1,000 cells pasted", before: (page) => stand(page, 20, 1), act: paste(100, 10) },
  { name: "undo of it", act: undo },
  {
    name: "rows sorted",
    before: (page) => stand(page, 20, 0),
    act: (page) => byMenu(page, /^Sort by column \w+, largest/),
  },
  { name: "undo of it", act: undo },
  { name: "Why opened", before: (page) => stand(page, 20, 12), act: (page) => shownWord(page, "Why") },
  { name: "Why of another cell", act: (page) => page.keyboard.press("ArrowLeft") },
  { name: "Why shut", act: (page) => shownWord(page, "Why") },
  { name: "Seek", before: (page) => stand(page, 20, 12), act: (page) => seek(page, "100") },
  { name: "find and replace", before: (page) => stand(page), act: replaceAll("try", "tried") },
];

const huge: readonly Scenario[] = [
  { name: "B1 typed over", before: (page) => stand(page, 0, 1), act: typed("7") },
  { name: "undo of it", act: undo },
  { name: "1,000 cells pasted", before: (page) => stand(page, 20, 3), act: paste(100, 10) },
  { name: "undo of it", act: undo },
];

interface Found {
  readonly name: string;
  readonly busy: Busy[];
}

/** Runs `times` times, and tells of each scenario the best one: what the machine did besides is not the page's. */
export async function measureTasks(browser: Browser, address: string, times: number): Promise<void> {
  const found = new Map<string, Found>();
  const folder = mkdtempSync(join(tmpdir(), "halfangle-bench-"));
  const note = async (page: Page, name: string, act: () => Promise<unknown>) => {
    const busy = await busyDuring(page, act);
    const known = found.get(name);
    if (known) known.busy.push(busy);
    else found.set(name, { name, busy: [busy] });
  };
  for (let i = 0; i < times; i++) {
    await withPage(browser, async (page) => {
      await note(page, "template: opened cold", () => firstVisit(page, address));
      await page.evaluate(installProbe);
      await through(page, "template", template, note);
    });
    for (const [job, scenarios] of [
      [largeJob(), large],
      [hugeJob(), huge],
    ] as const)
      await withPage(browser, async (page) => {
        await firstVisit(page, address);
        await page.evaluate(installProbe);
        const file = join(folder, `${job.name}.json`);
        if (i === 0) writeFileSync(file, writeJob(job.document));
        await note(page, `${job.name}: opened`, async () => {
          const chooser = page.waitForEvent("filechooser");
          await shownWord(page, "Open");
          await (await chooser).setFiles(file);
          await page.getByRole("gridcell", { name: "try", exact: true }).waitFor({ timeout: 120_000 });
          await settled(page);
        });
        await through(page, job.name, scenarios, note);
      });
  }
  rmSync(folder, { recursive: true });
  console.log(`\nlongest task on the page's thread, best of ${times} (limit ${limit} ms)`);
  for (const { name, busy } of found.values()) {
    const longest = Math.min(...busy.map((one) => one.longest));
    const own = Math.min(...busy.map((one) => one.own));
    const over = longest > limit ? "  OVER" : "";
    console.log(
      `  ${name.padEnd(56)} ${longest.toFixed(0).padStart(4)} ms, computing ${own.toFixed(0)} ms${over}`,
    );
  }
}

async function withPage(browser: Browser, work: (page: Page) => Promise<void>): Promise<void> {
  const context = await browser.newContext({ viewport: { width: 1280, height: 800 }, locale: "en-GB" });
  context.setDefaultTimeout(20_000);
  const page = await context.newPage();
  page.on("pageerror", (error) => console.error(`the page reports: ${error}`));
  await work(page);
  await context.close();
}

/** Until the values of the first template are all there. */
async function firstVisit(page: Page, address: string): Promise<void> {
  await page.goto(address);
  await page.getByRole("grid").first().waitFor();
  await page.waitForFunction(() => {
    const shell = document.querySelector("half-angle") as unknown as {
      desk: { job?: { reckoning: unknown } };
    };
    return shell.desk.job && shell.desk.job.reckoning === undefined;
  });
  await page.waitForLoadState("networkidle");
}

async function through(
  page: Page,
  on: string,
  scenarios: readonly Scenario[],
  note: (page: Page, name: string, act: () => Promise<unknown>) => Promise<void>,
): Promise<void> {
  let last = "";
  for (const { name, before, act } of scenarios) {
    if (before) {
      await before(page);
      await settled(page);
    }
    const whole = name === "undo of it" ? `undo: ${last}` : name;
    last = name;
    await note(page, `${on}: ${whole}`, async () => {
      await act(page);
      await settled(page);
    });
  }
}
