/** Escape leaves whatever is open, one thing at a time, and the sheet is in hand again. */
import type { Page } from "playwright-core";
import { expect, test } from "vitest";
import { newContext, openFile, openJob, openPage, useBrowser } from "./page.ts";
import { sampleText } from "./sample-job.ts";

useBrowser();

/** Role and name of what has the focus, through all shadow trees. */
const focus = (page: Page) =>
  page.evaluate(() => {
    let at = document.activeElement;
    while (at?.shadowRoot?.activeElement) at = at.shadowRoot.activeElement;
    return `${at?.role ?? at?.localName} ${at?.textContent?.trim()}`;
  });

async function opened(): Promise<Page> {
  const page = await openPage(await newContext());
  await openJob(page, "sample.json", sampleText);
  await page.getByRole("gridcell", { name: "M10" }).click();
  await expect.poll(() => focus(page)).toBe("gridcell M10");
  return page;
}

const word = async (page: Page, name: string, menu?: string) => {
  const rail = page.getByRole("toolbar", { name: "Rail" });
  if (menu !== undefined) {
    await rail.getByRole("button", { name: menu, exact: true }).focus();
    await page.keyboard.press("Enter");
  }
  await rail.getByRole("button", { name, exact: true }).focus();
  await page.keyboard.press("Enter");
};

test.each([
  ["Shelf", undefined],
  ["Functions", undefined],
  ["Card", undefined],
  ["Bench", undefined],
  ["Print", undefined],
  ["Lathe", undefined],
  ["Trial", undefined],
  ["Seek", undefined],
  ["Names", "Sheet"],
  ["History", "Sheet"],
  ["Title of the job", "Sheet"],
])("from %s, by keys alone", async (name, menu) => {
  const page = await opened();
  await word(page, name, menu);
  await page.getByRole("dialog").waitFor();
  await page.keyboard.press("Escape");
  await page.getByRole("dialog").waitFor({ state: "hidden" });
  await expect.poll(() => focus(page)).toBe("gridcell M10");
});

test("from the list of threads first to the shelf, then to the sheet", async () => {
  const page = await opened();
  await word(page, "Shelf");
  await page.getByRole("button", { name: "Threads it knows" }).focus();
  await page.keyboard.press("Enter");
  await page.getByRole("dialog", { name: "Threads it knows" }).waitFor();
  await page.keyboard.press("Escape");
  await page.getByRole("dialog", { name: "Threads it knows" }).waitFor({ state: "hidden" });
  await expect.poll(() => focus(page)).toContain("Threads it knows");
  await page.keyboard.press("Escape");
  await expect.poll(() => focus(page)).toBe("gridcell M10");
});

test("from Why: out of the drawer, out of the sheet, off the rail, and by its word Close", async () => {
  const page = await opened();
  const why = page.getByRole("complementary", { name: "Why" });
  for (const from of ["drawer", "sheet", "rail", "close"]) {
    await word(page, "Why");
    await why.waitFor();
    if (from === "drawer") await why.getByRole("button", { name: "Close" }).focus();
    if (from === "sheet") await page.getByRole("gridcell", { name: "M10" }).focus();
    if (from === "close") await why.getByRole("button", { name: "Close" }).click();
    else await page.keyboard.press("Escape");
    await why.waitFor({ state: "detached" });
    await expect.poll(() => focus(page), { message: from }).toBe("gridcell M10");
  }
});

test("one press leaves one thing: menu, edit, range, mark and finding come before Why", async () => {
  const page = await opened();
  const why = page.getByRole("complementary", { name: "Why" });
  const rail = page.getByRole("toolbar", { name: "Rail" });
  await word(page, "Why");
  await rail.getByRole("button", { name: "Sheet", exact: true }).click();
  await rail.getByRole("button", { name: "Names", exact: true }).waitFor();
  await page.keyboard.press("Escape");
  await rail.getByRole("button", { name: "Names", exact: true }).waitFor({ state: "hidden" });
  await expect.poll(() => focus(page)).toContain("Sheet");
  await page.getByRole("gridcell", { name: "M10" }).click();
  await page.keyboard.type("x");
  await page.keyboard.press("Escape");
  await page.keyboard.press("Shift+ArrowDown");
  await page.keyboard.press("Escape");
  await page.keyboard.press("Control+c");
  await page.keyboard.press("Escape");
  await page.keyboard.press("Control+f");
  await page.getByRole("search", { name: "Find" }).waitFor();
  await page.keyboard.press("Escape");
  await page.getByRole("search", { name: "Find" }).waitFor({ state: "detached" });
  expect(await why.count()).toBe(1);
  await page.keyboard.press("Escape");
  await why.waitFor({ state: "detached" });
});

test("a message that is closed gives the sheet back", async () => {
  const page = await opened();
  await openFile(page, "no.json", "{");
  await page.getByRole("button", { name: "Close message" }).focus();
  await page.keyboard.press("Enter");
  await page.getByRole("button", { name: "Close message" }).waitFor({ state: "detached" });
  await expect.poll(() => focus(page)).toBe("gridcell M10");
});

test("an example of a function is in the entry line when its panel has closed", async () => {
  const page = await opened();
  await word(page, "Functions");
  await page.keyboard.type("best wire");
  await page
    .getByRole("button", { name: /^Put into B2/ })
    .first()
    .focus();
  await page.keyboard.press("Enter");
  await page.getByRole("dialog").waitFor({ state: "hidden" });
  await page.keyboard.type("+1");
  await expect
    .poll(() =>
      page
        .getByRole("textbox", { name: "Entry line" })
        .evaluate((one) => one.textContent || (one as HTMLTextAreaElement).value),
    )
    .toMatch(/^=WIRE\.BEST\(.*\)\+1$/);
});
