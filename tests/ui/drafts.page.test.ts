/** What is half typed when the page goes away. */
import { expect, test } from "vitest";
import { newContext, openPage, ready, useBrowser } from "./page.ts";

useBrowser();

test("what is half typed outlives the tab: it is offered again, and the cell keeps what it held till it is kept", async () => {
  const context = await newContext();
  const page = await openPage(context);
  await page.getByText(/^here, \d\d:\d\d$/).waitFor();
  await page.getByRole("gridcell", { name: "1/2-12 BSW", exact: true }).click();
  await page.keyboard.type("7/16-1");
  await page.close({ runBeforeUnload: true });
  const next = await openPage(context);
  const offer = next.getByRole("alert").filter({ hasText: "half typed in Thread!B2: 7/16-1" });
  await offer.waitFor();
  await next.getByRole("gridcell", { name: "1/2-12 BSW", exact: true }).waitFor();
  await offer.getByRole("button", { name: "Go on typing it" }).click();
  await next.locator("sheet-grid input, sheet-grid textarea").first().waitFor();
  await next.keyboard.type("4 BSW");
  await next.keyboard.press("Enter");
  await next.getByRole("gridcell", { name: "7/16-14 BSW", exact: true }).waitFor();
  // It is offered once.
  await next.reload();
  await ready(next);
  expect(await next.getByText(/half typed/).count()).toBe(0);
});

test("what is kept or dropped before the page goes is not offered", async () => {
  const page = await openPage(await newContext());
  await page.getByRole("gridcell", { name: "1/2-12 BSW", exact: true }).click();
  await page.keyboard.type("7/16-1");
  await page.keyboard.press("Escape");
  await page.reload();
  await ready(page);
  expect(await page.getByText(/half typed/).count()).toBe(0);
});
