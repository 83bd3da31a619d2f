/** Locked formulas of a shipped template on the built page: what a person meets who types over one. */
import { readFileSync } from "node:fs";
import type { Page } from "playwright-core";
import { expect, test } from "vitest";
import { faults } from "./axe.ts";
import { newContext, openPage, touchContext, useBrowser } from "./page.ts";

useBrowser();

const template = JSON.parse(readFileSync("sheets/full-thread-job.json", "utf8"));

function cell(page: Page, name: string) {
  const column = name.charCodeAt(0) - 64;
  return page.locator(
    `sheet-grid [role=gridcell][aria-rowindex="${Number(name.slice(1)) + 1}"][aria-colindex="${column + 1}"]`,
  );
}

const alert = (page: Page) => page.getByRole("alert");

test("a locked formula says so and is unlocked in one step, which can be undone", async () => {
  expect(template.names.major).toBe("Thread!B7");
  const page = await openPage(await newContext());
  await cell(page, "B7").click();
  expect(await cell(page, "B7").getAttribute("aria-readonly")).toBe("true");
  const shown = await cell(page, "B7").textContent();
  await page.keyboard.type("5");
  await alert(page).getByText("B7 is locked: unlock it in the cell menu.").waitFor();
  expect(await cell(page, "B7").textContent()).toBe(shown);
  expect(await faults(page)).toEqual([]);
  await alert(page).getByRole("button", { name: "Unlock B7" }).press("Enter");
  await expect.poll(() => alert(page).getByRole("button").count()).toBe(0);
  await page.keyboard.type("13");
  await page.keyboard.press("Enter");
  await expect.poll(() => cell(page, "B7").textContent()).toContain("13");
  // The cells round it stay locked.
  expect(await cell(page, "B8").getAttribute("aria-readonly")).toBe("true");
  await page.keyboard.press("Control+z");
  await expect.poll(() => cell(page, "B7").textContent()).toBe(shown);
  expect(await cell(page, "B7").getAttribute("aria-readonly")).toBeNull();
  await page.keyboard.press("Control+z");
  await expect.poll(() => cell(page, "B7").getAttribute("aria-readonly")).toBe("true");
});

test("clearing a block of formulas changes nothing, and all of the sheet is unlocked at once", async () => {
  const page = await openPage(await newContext());
  await cell(page, "B7").click();
  await page.keyboard.press("Shift+ArrowDown");
  await page.keyboard.press("Shift+ArrowDown");
  await page.keyboard.press("Delete");
  await alert(page).getByText("B7 is locked: unlock it first.").waitFor();
  await alert(page).getByRole("button", { name: "Unlock all of Thread" }).click();
  await expect.poll(() => cell(page, "B21").getAttribute("aria-readonly")).toBeNull();
  await page.keyboard.press("Delete");
  await expect.poll(() => cell(page, "B9").textContent()).toBe("");
});

test("blanks, choices and sign-offs are free", async () => {
  const page = await openPage(await newContext());
  await cell(page, "B2").click();
  await page.keyboard.type("M10");
  await page.keyboard.press("Enter");
  await expect.poll(() => cell(page, "B7").textContent()).toContain("10");
  await page.keyboard.type("in");
  await page.keyboard.press("Enter");
  await expect.poll(() => cell(page, "B7").textContent()).toContain("0.39370");
  await page.getByRole("checkbox", { name: "Sign off 10 Thread" }).check();
  expect(await alert(page).getByRole("button").count()).toBe(0);
});

test("by finger a locked formula is pressed twice and offers to be unlocked", async () => {
  const page = await openPage(await touchContext(820, 1180));
  await cell(page, "B7").tap();
  await cell(page, "B7").tap();
  await alert(page).getByRole("button", { name: "Unlock B7" }).tap();
  await expect.poll(() => cell(page, "B7").getAttribute("aria-readonly")).toBeNull();
});
