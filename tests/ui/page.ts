/** A real browser on the built page. Whatever the page reports as wrong fails the test that opened it. */
import {
  type Browser,
  type BrowserContext,
  type BrowserContextOptions,
  chromium,
  type Page,
} from "playwright-core";
import { afterAll, afterEach, beforeAll, expect, inject } from "vitest";
import { chromiumArguments, findBrowser } from "../../src/setup/browser.mjs";

let browser: Browser;
const contexts: BrowserContext[] = [];
const wrong: string[] = [];

export const address = inject("pageAddress");

/** To be called at the head of a test file: starts the browser, and checks after each test that nothing went wrong. */
export function useBrowser(): void {
  beforeAll(async () => {
    browser = await chromium.launch({ executablePath: findBrowser() ?? "", args: chromiumArguments });
  });
  afterAll(() => browser.close());
  afterEach(async () => {
    await Promise.all(contexts.splice(0).map((context) => context.close()));
    expect(wrong.splice(0)).toEqual([]);
  });
}

/** A context like a person's own browser: nothing kept in it yet. */
export async function newContext(options: BrowserContextOptions = {}): Promise<BrowserContext> {
  const context = await browser.newContext({
    locale: "en-GB",
    timezoneId: "UTC",
    viewport: { width: 1280, height: 800 },
    ...options,
  });
  contexts.push(context);
  context.setDefaultTimeout(10_000);
  await context.addInitScript(() => {
    document.addEventListener("securitypolicyviolation", (event) => {
      console.error(`policy violation: ${event.violatedDirective} ${event.blockedURI} ${event.sample}`);
    });
  });
  return context;
}

/** The page in a tab of `context`, with its job on the desk, and all of its values unless they are not waited for. */
export async function openPage(context: BrowserContext, { reckoned = true } = {}): Promise<Page> {
  const page = await context.newPage();
  page.on("pageerror", (error) => wrong.push(`${error.stack ?? error}`));
  page.on("console", (message) => {
    if (message.type() === "error" || message.type() === "warning") wrong.push(`console: ${message.text()}`);
  });
  page.on("requestfailed", (request) => {
    // A page that is left breaks off what it was still fetching.
    const reason = request.failure()?.errorText;
    if (reason !== "net::ERR_ABORTED") wrong.push(`failed: ${request.url()} ${reason}`);
  });
  page.on("request", (request) => {
    const { protocol, host } = new URL(request.url());
    if (protocol.startsWith("http") && host !== new URL(address).host)
      wrong.push(`asked elsewhere: ${request.url()}`);
  });
  await page.goto(address);
  if (reckoned) await ready(page);
  else await page.getByRole("grid").first().waitFor();
  return page;
}

/** Waits until a job is on the desk, and the cells in view have their values. */
export async function ready(page: Page): Promise<void> {
  await page.getByRole("grid").first().waitFor();
  await expect.poll(() => page.locator("sheet-grid .stale").count(), { timeout: 20_000 }).toBe(0);
}

export function touchContext(width: number, height: number): Promise<BrowserContext> {
  return newContext({ viewport: { width, height }, hasTouch: true, isMobile: true });
}

/** Adds an empty operation to the job and takes it in hand, wherever the width has put the word for it. */
export async function emptyOperation(page: Page): Promise<void> {
  const rail = page.getByRole("toolbar", { name: "Rail" });
  const more = rail.getByRole("button", { name: "More", exact: true });
  const menu = (await more.isVisible()) ? more : rail.getByRole("button", { name: "Operation", exact: true });
  await menu.click();
  await rail.getByRole("button", { name: "Add operation" }).click();
  await page.getByRole("grid", { name: "Sheet Sheet 1" }).waitFor();
}

/** Opens a file that is a job, and waits until that is on the desk with its values. */
export async function openJob(page: Page, name: string, text: string): Promise<void> {
  const { title } = JSON.parse(text) as { title: string };
  await openFile(page, name, text);
  await expect.poll(() => page.title()).toContain(`${title} - Halfangle`);
  await ready(page);
}

/** Gives a file from disk to the word Open, whatever comes of it. */
export async function openFile(page: Page, name: string, text: string): Promise<void> {
  const chooser = page.waitForEvent("filechooser");
  await page.getByRole("button", { name: "Open", exact: true }).click();
  await (await chooser).setFiles({ name, mimeType: "application/json", buffer: Buffer.from(text) });
}
