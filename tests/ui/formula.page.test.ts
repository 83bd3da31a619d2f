/** Writing a formula in the entry line: colours, completion, the argument in words, dollar signs, and the plain field under a finger. */
import type { Page } from "playwright-core";
import { expect, test } from "vitest";
import { faults } from "./axe.ts";
import { emptyOperation, newContext, openJob, openPage, touchContext, useBrowser } from "./page.ts";
import { sampleText } from "./sample-job.ts";

useBrowser();

const entry = (page: Page) => page.getByRole("textbox", { name: "Entry line" });

/** The sample job with the field that has colours, which is fetched the first time the line is used. */
async function coloured(): Promise<Page> {
  const page = await openPage(await newContext());
  await openJob(page, "sample.json", sampleText);
  await page.getByRole("gridcell", { name: "8", exact: true }).click();
  await entry(page).click();
  await page.keyboard.press("Escape");
  await page.locator("formula-field").waitFor();
  return page;
}

test("a function is completed from its beginning, and its arguments are told one by one", async () => {
  const page = await coloured();
  await entry(page).click();
  await page.keyboard.press("Control+A");
  await page.keyboard.type("=FLANK.INF");
  const offer = page.getByRole("option", { name: /^FLANK\.INFEED/ });
  await offer.waitFor();
  expect(await faults(page)).toEqual([]);
  // What is offered is on its way, and no mistake yet.
  expect(await page.getByText("is not known").count()).toBe(0);
  await page.keyboard.press("Tab");
  await expect.poll(() => page.getByRole("listbox").count()).toBe(0);
  await page.getByText("1 depth").waitFor();
  await page.keyboard.type("wanted,");
  await page.getByText("2 setover").waitFor();
  await page.keyboard.type("60)");
  await page.keyboard.press("Enter");
  // 4 / cos 60 = 8.
  await page.getByRole("gridcell", { name: "8", exact: true }).waitFor();
  await page.keyboard.press("ArrowUp");
  await expect.poll(() => entry(page).textContent()).toBe("=FLANK.INFEED(wanted,60)");
});

test("names of the job are offered with their value", async () => {
  const page = await coloured();
  await entry(page).click();
  await page.keyboard.press("Control+A");
  await page.keyboard.type("=2*wan");
  await page.getByRole("option", { name: /wanted.*Thread!B4, 4/ }).waitFor();
  await page.keyboard.press("Escape");
  await page.keyboard.press("Escape");
});

test("F4 turns the dollar signs of the reference at the caret", async () => {
  const page = await coloured();
  await entry(page).click();
  for (const text of ["=$B$4*2", "=B$4*2", "=$B4*2", "=B4*2"]) {
    if (text === "=$B$4*2") for (let step = 0; step < 3; step++) await page.keyboard.press("ArrowLeft");
    await page.keyboard.press("F4");
    await expect.poll(() => entry(page).textContent()).toBe(text);
  }
});

test("a formula that cannot be reckoned is explained in words while it is typed", async () => {
  const page = await coloured();
  await entry(page).click();
  await page.keyboard.press("Control+A");
  await page.keyboard.type("=FLANK.INFEED(1,95)");
  await page
    .getByText(/setover must be/i)
    .first()
    .waitFor();
});

test("what is typed is kept when another cell is chosen, and undone in one step", async () => {
  const page = await coloured();
  await entry(page).click();
  await page.keyboard.press("Control+A");
  await page.keyboard.type("=B4*3");
  await page.getByRole("gridcell", { name: "Unit" }).click();
  await page.getByRole("gridcell", { name: "12", exact: true }).waitFor();
  await page.getByRole("button", { name: "Undo", exact: true }).click();
  await page.getByRole("gridcell", { name: "8", exact: true }).waitFor();
});

test("under a finger the plain field stays", async () => {
  const page = await openPage(await touchContext(1180, 820));
  await entry(page).tap();
  await page.getByRole("grid").first().waitFor();
  expect(await page.locator("formula-field").count()).toBe(0);
  expect(await entry(page).evaluate((element) => element.localName)).toBe("textarea");
});

test("under a finger a number has the keyboard of figures, and letters when they are asked for", async () => {
  const page = await openPage(await touchContext(1180, 820));
  const keys = () => entry(page).getAttribute("inputmode");
  await page.getByRole("gridcell", { name: "1/2-12 BSW" }).first().tap();
  expect(await keys()).toBe("text");
  await page.getByRole("button", { name: /^40/ }).tap();
  await page.getByRole("gridcell", { name: "1.00°" }).first().tap();
  await expect.poll(keys).toBe("decimal");
  await entry(page).tap();
  await page.keyboard.type("3");
  await page.getByRole("button", { name: "Letters" }).tap();
  await expect.poll(keys).toBe("text");
  await page.getByRole("button", { name: /^Drop/ }).tap();
  await expect.poll(keys).toBe("decimal");
});

test("a formula written in its cell has colours, completion and arrow keys that leave it", async () => {
  const page = await coloured();
  await page.getByRole("gridcell", { name: "8", exact: true }).click();
  await page.keyboard.type("=2*wante");
  const field = page.getByRole("textbox", { name: "Cell B5" });
  await field.waitFor();
  await page.getByRole("option", { name: /^wanted/ }).waitFor();
  await page.keyboard.press("Tab");
  await expect.poll(() => page.getByRole("listbox").count()).toBe(0);
  await expect.poll(() => field.textContent()).toBe("=2*wanted");
  expect(await page.locator("sheet-grid formula-field .ink.a1").textContent()).toBe("wanted");
  await page.keyboard.type("+1");
  await page.keyboard.press("Enter");
  await page.getByRole("gridcell", { name: "9", exact: true }).waitFor();
  await page.keyboard.press("ArrowUp");
  await page.keyboard.press("F2");
  await expect.poll(() => field.textContent()).toBe("=2*wanted+1");
  await page.keyboard.press("Escape");
  await page.getByRole("gridcell", { name: "9", exact: true }).waitFor();
});

test("while a formula is written in its cell, the line above tells the argument under the caret", async () => {
  const page = await openPage(await newContext());
  await emptyOperation(page);
  await entry(page).click();
  await page.locator("entry-line formula-field").waitFor();
  await page.locator('sheet-grid [role=gridcell][aria-rowindex="3"][aria-colindex="3"]').click();
  await page.keyboard.type("=SETOVER.SCALE(27,");
  const line = page.getByRole("region", { name: "Entry line" });
  const told = () => line.locator(".argument").textContent();
  await expect.poll(told).toMatch(/^2 scale/);
  await page.keyboard.press("F2");
  for (let step = 0; step < 3; step++) await page.keyboard.press("ArrowLeft");
  await expect.poll(told).toMatch(/^1 setover/);
});

test("a formula in the last column, where what is typed scrolls the sheet, is typed as anywhere", async () => {
  const page = await openPage(await newContext({ viewport: { width: 1600, height: 800 } }));
  await emptyOperation(page);
  await page.getByRole("gridcell").first().click();
  await page.keyboard.type("=1+1");
  await page.keyboard.press("Enter");
  // The field with colours is fetched with the first formula.
  await page.waitForFunction(() => customElements.get("formula-field") !== undefined);
  await page.keyboard.press("End");
  await expect.poll(() => page.locator("entry-line .balloon").textContent()).toBe("Z2");
  await page.keyboard.type("=THREAD.DEPTH(A3", { delay: 50 });
  const field = page.getByRole("textbox", { name: "Cell Z2" });
  await expect.poll(() => field.textContent()).toBe("=THREAD.DEPTH(A3)");
  await page.keyboard.type(")+1");
  await expect.poll(() => field.textContent()).toBe("=THREAD.DEPTH(A3)+1");
});
