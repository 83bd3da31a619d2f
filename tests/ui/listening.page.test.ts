/** What the page says to those who hear it, and what it does with Tab. */
import type { Page } from "playwright-core";
import { expect, test } from "vitest";
import { newContext, openJob, openPage, touchContext, useBrowser } from "./page.ts";
import { sampleText } from "./sample-job.ts";

useBrowser();

const said = (page: Page) => page.locator("sheet-grid [role=status]").first().textContent();
const cell = (page: Page, name: string) => page.getByRole("gridcell", { name, exact: true });
const focused = (page: Page) =>
  page.evaluate(() => {
    let at = document.activeElement;
    while (at?.shadowRoot?.activeElement) at = at.shadowRoot.activeElement;
    return at?.role === "gridcell" ? `${at.ariaRowIndex}/${at.ariaColIndex}` : (at?.localName ?? "");
  });

async function opened(change: Record<string, string> = {}): Promise<Page> {
  const page = await openPage(await newContext());
  const job = JSON.parse(sampleText);
  Object.assign(job.sheets[0].cells, change);
  job.sheets[0].notes = { B4: "as the drawing has it" };
  await openJob(page, "sample.json", JSON.stringify(job));
  await cell(page, "M10").waitFor();
  return page;
}

test("Shift and F1 say what a cell holds: formula, value, name, note, error", async () => {
  const page = await opened({ B7: "=FLANK.INFEED(1,95)" });
  await cell(page, "8").click();
  await page.keyboard.press("Shift+F1");
  await expect.poll(() => said(page)).toBe("B5: formula =B4*2, gives 8");
  await cell(page, "4").click();
  await page.keyboard.press("Shift+F1");
  await expect.poll(() => said(page)).toBe("B4, wanted: typed 4; as the drawing has it");
  await page.keyboard.type("12.7mm");
  await page.keyboard.press("Enter");
  await page.keyboard.press("ArrowUp");
  await page.keyboard.press("Shift+F1");
  await expect.poll(() => said(page)).toMatch(/^B4, wanted: typed 12\.7mm, gives 12\.7/);
  await page.getByRole("gridcell", { name: /NUM/ }).click();
  await page.keyboard.press("Shift+F1");
  await expect.poll(() => said(page)).toMatch(/^B7: formula =FLANK\.INFEED\(1,95\), gives #NUM!; .*setover/);
  await page.keyboard.press("ArrowDown");
  await page.keyboard.press("Shift+F1");
  await expect.poll(() => said(page)).toBe("B8: nothing typed");
});

test("a finger asks the same in the cell menu", async () => {
  const page = await openPage(await touchContext(1180, 820));
  await page.getByRole("gridcell", { name: "1/2-12 BSW" }).first().tap();
  await page.getByRole("button", { name: "More" }).tap();
  await page.getByRole("button", { name: "Commands for cells" }).tap();
  await page.getByRole("menuitem", { name: "Say what the cell holds" }).tap();
  await expect.poll(() => said(page)).toMatch(/^B2, thread: typed 1\/2-12 BSW/);
});

test("Tab leaves the sheet, or goes to the next cell where that is wanted, and F6 leaves it always", async () => {
  const page = await opened();
  await cell(page, "M10").click();
  await page.keyboard.press("Tab");
  expect(await focused(page)).not.toMatch(/\d\/\d/);
  const look = page.getByRole("button", { name: "Look", exact: true });
  await look.click();
  await page.getByRole("button", { name: "Tab: next cell" }).click();
  await page.reload();
  await cell(page, "M10").click();
  await page.keyboard.press("Tab");
  await expect.poll(() => focused(page)).toBe("3/4");
  await page.keyboard.press("Tab");
  await page.keyboard.press("Shift+Tab");
  await page.keyboard.press("Shift+Tab");
  await page.keyboard.press("Shift+Tab");
  await expect.poll(() => focused(page)).toBe("3/2");
  await page.keyboard.press("F6");
  await expect.poll(() => focused(page)).not.toMatch(/\d\/\d/);
});

test("what a range, an undo and a refused edit come to is said", async () => {
  const page = await opened();
  await cell(page, "4").click();
  await page.keyboard.press("Shift+ArrowDown");
  await expect.poll(() => said(page)).toBe("B4:B5 selected, 2 by 1");
  await page.keyboard.press("Delete");
  await expect.poll(() => said(page)).toBe("Cleared B4:B5");
  await page.keyboard.press("Control+z");
  await expect
    .poll(() => page.locator("said-line [role=status]").textContent())
    .toMatch(/^Undone: Cleared B4:B5/);
});
