/**
 * A person's own pass schedule from an empty operation, once by keyboard alone and once by finger alone: typed, named,
 * filled down, a pass put in, taken back, and an error traced to where it began. 12 passes of equal area to 1.2 mm: after
 * pass 3 the depth is 1.2 x the root of 3/12 = 0.6 for a sharp tool, and 0.6 / cos 27 = 0.6734 on the slide.
 */
import type { Locator, Page } from "playwright-core";
import { expect, test } from "vitest";
import { newContext, openJob, openPage, touchContext, useBrowser } from "./page.ts";
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
  await openJob(page, "sample.json", sampleText);
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
  const menuOn = async (at: Locator, item: RegExp) => {
    await restOn(page, at);
    await page.getByRole("menuitem", { name: item }).first().tap();
  };

  await more("Add operation");
  await expect.poll(() => cellAt(page, 1, 1).textContent()).toBe("");
  // The inputs, each named from the menu that a resting finger opens.
  for (const [row, label, value, name] of [
    [1, "Depth", "1.2", "cut"],
    [2, "Set-over", "27", "swing"],
    [3, "Passes", "12", "count"],
  ] as const) {
    await put(row, 1, label);
    await put(row, 2, value);
    await menuOn(cellAt(page, row, 2), /^Name B\d/);
    const dialog = page.getByRole("dialog");
    await dialog.getByRole("textbox").first().fill(name);
    await dialog.getByRole("button", { name: "Name it" }).tap();
    await dialog.waitFor({ state: "hidden" });
  }
  await put(4, 1, "Pass");
  await put(4, 2, "Depth");
  await put(4, 3, "Slide");
  await put(5, 1, "1");
  await put(5, 2, '=PASS.DEPTH(cut,A5,count,"area",60,0)');
  await put(5, 3, "=FLANK.INFEED(B5,swing)");
  await put(6, 1, "=A5+1");
  // A formula may also be pointed together: an address comes from a tap on its cell.
  await put(5, 4, "=C5");
  await cellAt(page, 5, 5).tap();
  await entry.tap();
  await entry.fill("=1*");
  await cellAt(page, 5, 3).tap();
  await page.getByRole("button", { name: /^Keep/ }).tap();
  await shows(page, 5, 5, /^0\.38878/);
  // Ranges are drawn by their grip, then filled from the menu, to the twelfth pass.
  await fillDown(page, 6, 1, 16);
  await fillDown(page, 5, 2, 16);
  await fillDown(page, 5, 3, 16);
  await shows(page, 7, 2, /^0\.6/);
  await shows(page, 7, 3, /^0\.673/);
  await shows(page, 16, 1, /^12/);
  await shows(page, 16, 2, /^1\.2/);

  // A pass put in between by the head of its row, and taken back.
  const seventh = page.getByRole("rowheader", { name: "7", exact: true });
  await seventh.tap();
  await menuOn(seventh, /^Insert row/);
  await shows(page, 17, 2, /^1\.2/);
  await shows(page, 7, 2, /^$/);
  await page.getByRole("button", { name: "Undo", exact: true }).tap();
  await shows(page, 7, 2, /^0\.6/);

  // An error, and why.
  await put(2, 2, "95");
  await shows(page, 7, 3, /#NUM!/);
  await cellAt(page, 7, 3).tap();
  await more("Why");
  const why = page.getByRole("complementary", { name: "Why" });
  await why
    .getByText(/setover must be/)
    .first()
    .waitFor();
  await why.getByRole("button", { name: "B2 Set-over" }).tap();
  await stands(page, "B2");
  await why.getByRole("button", { name: "Close" }).tap();
  await put(2, 2, "27");
  await shows(page, 7, 3, /^0\.673/);
});

/** A finger rests until the menu opens. */
async function restOn(page: Page, at: Locator): Promise<void> {
  const box = (await at.boundingBox())!;
  const touch = await page.context().newCDPSession(page);
  const point = { x: box.x + 20, y: box.y + box.height / 2 };
  await touch.send("Input.dispatchTouchEvent", { type: "touchStart", touchPoints: [point] });
  await page.getByRole("menu").waitFor();
  await touch.send("Input.dispatchTouchEvent", { type: "touchEnd", touchPoints: [] });
}

/** Draws the range from a cell down to a row with the lower grip, and fills it down from the cell menu. */
async function fillDown(page: Page, row: number, column: number, to: number): Promise<void> {
  const letter = String.fromCharCode(64 + column);
  await cellAt(page, row, column).tap();
  await expect.poll(() => cellAt(page, row, column).getAttribute("aria-selected")).toBe("true");
  const start = (await page.locator("sheet-grid .grip.to").boundingBox())!;
  const grid = (await page.getByRole("grid").first().boundingBox())!;
  const touch = await page.context().newCDPSession(page);
  const x = start.x + start.width / 2;
  const move = (y: number) =>
    touch.send("Input.dispatchTouchEvent", { type: "touchMove", touchPoints: [{ x, y }] });
  await touch.send("Input.dispatchTouchEvent", {
    type: "touchStart",
    touchPoints: [{ x, y: start.y + start.height / 2 }],
  });
  // The row is further down than the view: the finger rests at the edge until the sheet has come that far, then goes to it.
  await move(grid.y + grid.height - 8);
  const last = cellAt(page, to + 1, column);
  await expect.poll(() => last.count(), { timeout: 10_000 }).toBe(1);
  await expect
    .poll(async () => (await last.boundingBox())!.y, { timeout: 10_000 })
    .toBeLessThan(grid.y + grid.height - 40);
  await move(grid.y + grid.height / 2);
  // The sheet may go on a little more: the finger follows the cell.
  const drawn = async () => {
    const end = (await cellAt(page, to, column).boundingBox())!;
    await move(end.y + end.height / 2);
    return page.locator("sheet-grid [role=status]").first().textContent();
  };
  const count = to - row + 1;
  await expect.poll(drawn).toBe(`${letter}${row}:${letter}${to} selected, ${count} by 1`);
  await touch.send("Input.dispatchTouchEvent", { type: "touchEnd", touchPoints: [] });
  await restOn(page, cellAt(page, to, column));
  await page.getByRole("menuitem", { name: /^Fill down/ }).tap();
  await page.locator("sheet-grid .scroll").evaluate((scroll) => scroll.scrollTo(0, 0));
}
