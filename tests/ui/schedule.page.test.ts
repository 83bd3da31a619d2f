/**
 * A person's own pass schedule from an empty operation, once by keyboard alone and once by finger alone: typed, named,
 * filled down, a pass put in, taken back, and an error traced to where it began. 12 passes of equal area to 1.2 mm: after
 * pass 3 the depth is 1.2 x the root of 3/12 = 0.6 for a sharp tool, and 0.6 / cos 27 = 0.6734 on the slide.
 */
import type { Locator, Page } from "playwright-core";
import { expect, test } from "vitest";
import { newContext, openFile, openPage, touchContext, useBrowser } from "./page.ts";
import { sampleText } from "./sample-job.ts";

useBrowser();

const balloon = (page: Page) => page.locator("entry-line .balloon");
const stands = (page: Page, cell: string) =>
  expect.poll(async () => (await balloon(page).textContent())?.trim()).toBe(cell);
const cellAt = (page: Page, row: number, column: number): Locator =>
  page.locator(`sheet-grid [role=gridcell][aria-rowindex="${row + 1}"][aria-colindex="${column + 1}"]`);
const shows = (page: Page, row: number, column: number, text: RegExp) =>
  expect.poll(() => cellAt(page, row, column).textContent()).toMatch(text);

test("by keyboard alone", async () => {
  const page = await openPage(await newContext());
  await openFile(page, "sample.json", sampleText);
  const { keyboard } = page;
  const press = async (...keys: string[]) => {
    for (const key of keys) await keyboard.press(key);
  };
  /** Goes on with a key to the control that begins with these words. */
  const keyTo = async (key: string, words: string) => {
    for (let step = 0; step < 60; step++) {
      const here = await page.evaluate(() => {
        let at = document.activeElement;
        while (at?.shadowRoot?.activeElement) at = at.shadowRoot.activeElement;
        return at?.textContent?.replace(/\s+/g, " ").trim() ?? "";
      });
      if (here.startsWith(words)) return;
      await press(key);
    }
    throw new Error(`no ${words} was reached with ${key}`);
  };
  const tabTo = (words: string) => keyTo("Tab", words);
  const fromMenu = async (words: string) => {
    await press("Shift+F10");
    await page.getByRole("menu").waitFor();
    await keyTo("ArrowDown", words);
    await press("Enter");
  };

  /** F6 to a part of the page. */
  const toRegion = async (name: string) => {
    for (let step = 0; step < 8; step++) {
      const here = await page.evaluate(
        () => document.querySelector("half-angle")!.shadowRoot!.activeElement?.localName,
      );
      if (here === name) return;
      await press("F6");
    }
    throw new Error(`no ${name} was reached with F6`);
  };

  await toRegion("rail-words");
  await tabTo("Operation");
  await press("Enter");
  await tabTo("Add operation");
  await press("Enter");
  await page.getByRole("button", { name: /^30 / }).waitFor();
  await toRegion("sheet-grid");
  await press("Control+Home");
  await stands(page, "A1");

  // The inputs, each named from the cell menu.
  for (const [label, value, name] of [
    ["Depth", "1.2", "cut"],
    ["Set-over", "27", "swing"],
    ["Passes", "12", "count"],
  ] as const) {
    await keyboard.type(label);
    await press("Tab");
    await keyboard.type(value);
    await press("Enter", "ArrowUp", "Home", "ArrowRight");
    await fromMenu("Name B");
    await page.getByRole("dialog").getByRole("textbox").first().waitFor();
    await keyboard.type(name);
    await press("Enter");
    await page.getByRole("dialog").waitFor({ state: "hidden" });
    await press("ArrowDown", "Home");
  }
  await stands(page, "A4");
  for (const text of ["Pass", "Depth", "Slide"]) {
    await keyboard.type(text);
    await press("Tab");
  }
  await press("ArrowDown", "Home");
  await keyboard.type("1");
  await press("Tab");
  await keyboard.type('=PASS.DEPTH(cut,A5,count,"area",60,0)');
  await press("Tab");
  await keyboard.type("=FLANK.INFEED(B5,swing)");
  await press("Enter", "Home");
  await stands(page, "A6");
  await keyboard.type("=A5+1");
  await press("Enter", "ArrowUp");
  for (let row = 0; row < 10; row++) await press("Shift+ArrowDown");
  await press("Control+d");
  await press("ArrowUp", "ArrowRight");
  await stands(page, "B5");
  await press("Shift+ArrowRight");
  for (let row = 0; row < 11; row++) await press("Shift+ArrowDown");
  await press("Control+d");
  await shows(page, 7, 2, /^0\.6/);
  await shows(page, 7, 3, /^0\.673/);
  await shows(page, 16, 1, /^12/);
  await shows(page, 16, 2, /^1\.2/);

  // A pass put in between, and taken back.
  await press("ArrowDown", "ArrowDown", "Home", "Shift+Space");
  await fromMenu("Insert row");
  await shows(page, 17, 2, /^1\.2/);
  await shows(page, 7, 2, /^$/);
  await press("Control+z");
  await shows(page, 7, 2, /^0\.6/);

  // An error, and why.
  await press("Control+Home", "ArrowRight", "ArrowDown");
  await stands(page, "B2");
  await keyboard.type("95");
  await press("Enter");
  await shows(page, 7, 3, /#NUM!/);
  for (let row = 0; row < 4; row++) await press("ArrowDown");
  await press("ArrowRight");
  await stands(page, "C7");
  await toRegion("rail-words");
  await tabTo("Why");
  await press("Enter");
  const why = page.getByRole("complementary", { name: "Why" });
  await why
    .getByText(/setover must be/)
    .first()
    .waitFor();
  await why.getByRole("button", { name: "B2 Set-over" }).waitFor();
});

test("by finger alone", async () => {
  const page = await openPage(await touchContext(1180, 820));
  const more = async (word: string) => {
    await page.getByRole("button", { name: "More" }).tap();
    await page.locator("rail-words").getByRole("button", { name: word, exact: true }).tap();
  };
  const entry = page.getByRole("textbox", { name: "Entry line" });
  /** Taps the cell, types on the screen's keyboard into the line above, and keeps it. */
  const put = async (row: number, column: number, text: string) => {
    await cellAt(page, row, column).tap();
    await entry.tap();
    await entry.fill(text);
    await page.getByRole("button", { name: /^Keep/ }).tap();
  };
  const menuOn = async (row: number, column: number, item: RegExp) => {
    const box = (await cellAt(page, row, column).boundingBox())!;
    const touch = await page.context().newCDPSession(page);
    const point = { x: box.x + 20, y: box.y + box.height / 2 };
    await touch.send("Input.dispatchTouchEvent", { type: "touchStart", touchPoints: [point] });
    await page.getByRole("menu").waitFor();
    await touch.send("Input.dispatchTouchEvent", { type: "touchEnd", touchPoints: [] });
    await page.getByRole("menuitem", { name: item }).first().tap();
  };

  await more("Add operation");
  await expect.poll(() => cellAt(page, 1, 1).textContent()).toBe("");
  await put(1, 1, "Depth");
  await put(1, 2, "1.2");
  await put(2, 1, "Set-over");
  await put(2, 2, "27");
  for (const [row, name] of [
    [1, "cut"],
    [2, "swing"],
  ] as const) {
    await menuOn(row, 2, /^Name B\d/);
    const dialog = page.getByRole("dialog");
    await dialog.getByRole("textbox").first().fill(name);
    await page.keyboard.press("Enter");
    await dialog.waitFor({ state: "hidden" });
  }
  await put(4, 1, "1");
  await put(5, 1, "=A4+1");
  await put(4, 2, '=PASS.DEPTH(cut,A4,12,"area",60,0)');
  await put(4, 3, "=FLANK.INFEED(B4,swing)");
  // The range is drawn by its grip, then filled from the menu.
  await fillDown(page, 5, 1, 7);
  await fillDown(page, 4, 2, 7);
  await fillDown(page, 4, 3, 7);
  await shows(page, 6, 2, /^0\.6/);
  await shows(page, 6, 3, /^0\.673/);
  await menuOn(6, 1, /^Insert row above|^Insert 1 row above|^Insert row/);
  await shows(page, 7, 2, /^0\.6/);
  await page.getByRole("button", { name: "Undo", exact: true }).tap();
  await shows(page, 6, 2, /^0\.6/);
  await put(2, 2, "95");
  await shows(page, 6, 3, /#NUM!/);
  await cellAt(page, 6, 3).tap();
  await more("Why");
  const why = page.getByRole("complementary", { name: "Why" });
  await why
    .getByText(/setover must be/)
    .first()
    .waitFor();
});

/** Draws the range from a cell down to a row with the lower grip, and fills it down from the cell menu. */
async function fillDown(page: Page, row: number, column: number, to: number): Promise<void> {
  await cellAt(page, row, column).tap();
  const grip = page.locator("sheet-grid .grip.to");
  const start = (await grip.boundingBox())!;
  const end = (await cellAt(page, to, column).boundingBox())!;
  const touch = await page.context().newCDPSession(page);
  const from = { x: start.x + start.width / 2, y: start.y + start.height / 2 };
  const into = { x: end.x + end.width / 2, y: end.y + end.height / 2 };
  await touch.send("Input.dispatchTouchEvent", { type: "touchStart", touchPoints: [from] });
  await touch.send("Input.dispatchTouchEvent", { type: "touchMove", touchPoints: [into] });
  await touch.send("Input.dispatchTouchEvent", { type: "touchEnd", touchPoints: [] });
  const box = (await cellAt(page, row, column).boundingBox())!;
  const point = { x: box.x + 20, y: box.y + box.height / 2 };
  await touch.send("Input.dispatchTouchEvent", { type: "touchStart", touchPoints: [point] });
  await page.getByRole("menu").waitFor();
  await touch.send("Input.dispatchTouchEvent", { type: "touchEnd", touchPoints: [] });
  await page.getByRole("menuitem", { name: /^Fill down/ }).tap();
}
