/** Panels over the page are fetched apart from it: where that takes long, and where it fails. */
import type { Route } from "playwright-core";
import { expect, test } from "vitest";
import { address, newContext, ready, useBrowser } from "./page.ts";

useBrowser();

const panels = /\/(card-dialog|guide-dialog|thread-list)-[^/]*\.js$/;

/** A first visit. What fails here is meant to. @param route what becomes of some of the panels */
async function visit(route: (route: Route) => unknown) {
  const context = await newContext({ serviceWorkers: "block" });
  await context.route(panels, (each) => void route(each));
  const page = await context.newPage();
  await page.goto(address);
  await ready(page);
  const rail = page.getByRole("toolbar", { name: "Rail" });
  const word = (name: string) => rail.getByRole("button", { name, exact: true }).click();
  return { context, page, word };
}

test("of several words pressed while their panels are being fetched, the last one counts", async () => {
  const held: Route[] = [];
  const { page, word } = await visit((route) => held.push(route));
  await expect.poll(() => held.length).toBe(3);
  await word("Card");
  await word("Functions");
  await word("Functions");
  for (const route of held) await route.continue();
  await page.getByRole("dialog", { name: "Functions" }).waitFor();
  await page.keyboard.press("Escape");
  await expect.poll(() => page.getByRole("dialog").count()).toBe(0);
  const inGrid = () => page.locator("sheet-grid").evaluate((grid) => grid.matches(":focus-within"));
  await expect.poll(inGrid).toBe(true);
  await word("Card");
  await page.getByRole("dialog", { name: "Card" }).waitFor();
});

test("one that cannot be fetched is told of, and is tried again the next time", async () => {
  const { context, page, word } = await visit((route) => route.abort());
  await word("Card");
  const told = () => page.getByRole("alert").allTextContents();
  await expect.poll(told).toContainEqual(expect.stringContaining("could not be fetched"));
  await context.unrouteAll();
  await word("Card");
  await page.getByRole("dialog", { name: "Card" }).waitFor();
});

test("what is said of one that is asked for on the shelf does not stand behind it", async () => {
  const { page, word } = await visit((route) => route.abort());
  await word("Shelf");
  await page.getByRole("dialog").getByRole("button", { name: "Threads it knows" }).click();
  await page.getByRole("alert").getByText("could not be fetched").waitFor();
  await expect.poll(() => page.getByRole("dialog").count()).toBe(0);
});
