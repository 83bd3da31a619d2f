/** Text and formulas of several lines: what is broken into lines stays so, wherever it is written on. */
import type { Page } from "playwright-core";
import { expect, test } from "vitest";
import { emptyOperation, newContext, openPage, touchContext, useBrowser } from "./page.ts";

useBrowser();

const entry = (page: Page) => page.getByRole("textbox", { name: "Entry line" });
const cellAt = (page: Page, row: number, column: number) =>
  page.locator(`sheet-grid [role=gridcell][aria-rowindex="${row + 1}"][aria-colindex="${column + 1}"]`);
const holds = (page: Page, row: number, column: number, text: string) =>
  expect.poll(async () => (await cellAt(page, row, column).textContent())?.trim()).toBe(text);

test("lines typed in a cell are kept when the text is written on in the entry line, with its colours", async () => {
  const page = await openPage(await newContext());
  await emptyOperation(page);
  await cellAt(page, 2, 2).click();
  await page.keyboard.type("one");
  await page.keyboard.press("Alt+Enter");
  await page.keyboard.type("two");
  await page.keyboard.press("Enter");
  await holds(page, 2, 2, "one\ntwo");
  await cellAt(page, 2, 2).click();
  await page.getByText("2 lines.").waitFor();
  await entry(page).click();
  await page.locator("entry-line formula-field").waitFor();
  await page.keyboard.press("Control+End");
  await page.keyboard.type("!");
  await page.keyboard.press("Alt+Enter");
  await page.keyboard.type("three");
  await page.keyboard.press("Enter");
  await holds(page, 2, 2, "one\ntwo!\nthree");
  // One undo step, and nothing of the lines is lost on the way back.
  await page.keyboard.press("Control+z");
  await holds(page, 2, 2, "one\ntwo");
});

test("a formula may be broken into lines, and what is pasted into one is joined", async () => {
  const page = await openPage(await newContext({ permissions: ["clipboard-read", "clipboard-write"] }));
  await emptyOperation(page);
  await entry(page).click();
  await page.locator("entry-line formula-field").waitFor();
  await cellAt(page, 2, 2).click();
  await page.keyboard.type("=1+");
  await page.keyboard.press("Alt+Enter");
  await page.keyboard.type("2");
  await page.keyboard.press("Enter");
  await holds(page, 2, 2, "3");
  await cellAt(page, 2, 2).click();
  await page.keyboard.press("F2");
  await page.keyboard.type("+4");
  await page.keyboard.press("Enter");
  await holds(page, 2, 2, "7");
  await page.evaluate(() => navigator.clipboard.writeText("5 +\n  6"));
  await page.keyboard.type("=");
  await page.keyboard.press("Control+v");
  await page.keyboard.press("Enter");
  await holds(page, 3, 2, "11");
  await cellAt(page, 3, 2).click();
  await expect.poll(() => entry(page).textContent()).toBe("=5 + 6");
});

test("under a finger the plain field keeps lines, and a word makes a new one", async () => {
  const page = await openPage(await touchContext(1180, 820));
  await emptyOperation(page);
  await cellAt(page, 2, 2).tap();
  await entry(page).tap();
  await page.keyboard.type("one");
  await page.getByRole("button", { name: "New line" }).tap();
  await page.keyboard.type("two");
  await page.getByRole("button", { name: /^Keep/ }).tap();
  await holds(page, 2, 2, "one\ntwo");
  await cellAt(page, 2, 2).tap();
  await entry(page).tap();
  await page.keyboard.press("Control+End");
  await page.keyboard.type("?");
  await page.getByRole("button", { name: /^Keep/ }).tap();
  await holds(page, 2, 2, "one\ntwo?");
});

test("a decimal comma counts as one when it is typed, and the entry line shows it as typed", async () => {
  const page = await openPage(await newContext());
  await emptyOperation(page);
  await cellAt(page, 2, 2).click();
  await page.keyboard.type("1,5");
  await page.keyboard.press("Enter");
  await page.keyboard.type("=B2*2");
  await page.keyboard.press("Enter");
  await holds(page, 2, 2, "1.5");
  await holds(page, 3, 2, "3");
  await cellAt(page, 2, 2).click();
  await expect.poll(() => entry(page).inputValue()).toBe("1,5");
});
