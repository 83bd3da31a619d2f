import { readdirSync, readFileSync } from "node:fs";
import type { Page } from "playwright-core";
import { expect, test } from "vitest";
import { newContext, openPage, ready, useBrowser } from "./page.ts";

useBrowser();

const template = JSON.parse(readFileSync("sheets/full-thread-job.json", "utf8"));
const [, sheet, letter, row] = /^'?([^'!]+)'?!([A-Z])(\d+)$/.exec(template.names.thread)!;

/** The answers that the route card shows, by operation. */
async function answers(page: Page): Promise<string[]> {
  return page.getByRole("navigation", { name: "Route card" }).locator(".row .res").allTextContents();
}

async function typeThread(page: Page, designation: string): Promise<void> {
  await page.getByRole("button", { name: new RegExp(`^\\d+ ${sheet}`) }).focus();
  await page.keyboard.press("Enter");
  // From the route card: rail, entry line, sheet.
  for (let step = 0; step < 3; step++) await page.keyboard.press("F6");
  await page.keyboard.press("Control+Home");
  for (let right = 0; right < letter!.charCodeAt(0) - 65; right++) await page.keyboard.press("ArrowRight");
  for (let down = 1; down < Number(row); down++) await page.keyboard.press("ArrowDown");
  await page.keyboard.type(designation);
  await page.keyboard.press("Enter");
}

test("the first visit opens the shipped template, says that it is invented, and keeps it", async () => {
  const page = await openPage(await newContext());
  expect(await page.title()).toContain(template.title);
  await page.getByRole("navigation", { name: "Route card" }).getByText(template.scenario).waitFor();
  await page.getByText(template.cautions[0]).waitFor();
  await page.getByText(/^here, \d\d:\d\d$/).waitFor();
  const names = template.sheets.map(({ name }: { name: string }) => name);
  const shown = page.getByRole("navigation", { name: "Route card" }).locator(".row .nm");
  expect(await shown.allTextContents()).toEqual(names);
});

test("another thread typed by keyboard alone changes the answers, is kept over a reload, and can be undone", async () => {
  const page = await openPage(await newContext());
  const before = await answers(page);
  await typeThread(page, "M12");
  const thread = page.getByText("M12", { exact: true });
  const changed = async () => (await answers(page)).filter((answer, index) => answer !== before[index]);
  await expect.poll(async () => (await changed()).length).toBeGreaterThan(3);
  await ready(page);
  const after = await answers(page);
  expect(await page.getByRole("definition").allTextContents()).toContain("M12");

  await page.reload();
  await ready(page);
  await expect.poll(() => answers(page)).toEqual(after);
  await thread.first().waitFor();

  await typeThread(page, "M16");
  await expect.poll(() => answers(page)).not.toEqual(after);
  await page.keyboard.press("Control+z");
  await expect.poll(() => answers(page)).toEqual(after);
  await page.keyboard.press("Control+y");
  await expect.poll(() => answers(page)).not.toEqual(after);
});

test("what is being typed is kept when another operation is chosen", async () => {
  const page = await openPage(await newContext());
  await typeThread(page, "M20");
  await page.keyboard.press("ArrowUp");
  await page.keyboard.type("M24");
  await page.getByRole("button", { name: /^20 / }).click();
  await page.getByRole("button", { name: /^10 .*M24/ }).click();
  await expect.poll(() => page.getByRole("definition").allTextContents()).toContain("M24");
  const active = page.getByRole("gridcell", { name: /M24/ }).first();
  await active.waitFor();
});

test("every shipped template stands on the shelf and opens without an error", async () => {
  const page = await openPage(await newContext());
  const count = readdirSync("sheets").filter((name) => name.endsWith(".json")).length;
  for (let index = 0; index < count; index++) {
    await page.getByRole("button", { name: "Shelf", exact: true }).click();
    const start = page.getByRole("button", { name: /^Start a copy/ });
    await start.nth(count - 1).waitFor();
    expect(await start.count()).toBe(count);
    await start.nth(index).click();
    await page.getByRole("dialog", { name: "Shelf" }).waitFor({ state: "hidden" });
    await ready(page);
    expect(await page.getByRole("alert").textContent()).not.toContain("not opened");
  }
});
