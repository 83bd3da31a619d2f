/** The list of threads, reached from the shelf. */
import { expect, test } from "vitest";
import { faults } from "./axe.ts";
import { newContext, openPage, touchContext, useBrowser } from "./page.ts";

useBrowser();

test("the shelf opens the list of threads by keys, and Escape goes back to the shelf", async () => {
  const page = await openPage(await newContext());
  await page.getByRole("button", { name: "Shelf", exact: true }).click();
  await page.getByRole("button", { name: "Threads it knows" }).focus();
  await page.keyboard.press("Enter");
  const list = page.getByRole("dialog", { name: "Threads it knows" });
  await list.getByRole("row", { name: /ISO metric M/ }).waitFor();
  expect(await faults(page)).toEqual([]);
  await page.keyboard.press("Escape");
  await list.waitFor({ state: "hidden" });
  await page.getByRole("dialog", { name: "Shelf" }).waitFor();
});

test("on a phone it is reached with a finger and fits the screen", async () => {
  const page = await openPage(await touchContext(390, 844));
  await page.getByRole("button", { name: "More" }).tap();
  await page.getByRole("button", { name: "Shelf", exact: true }).tap();
  await page.getByRole("button", { name: "Threads it knows" }).tap();
  const field = page.getByRole("textbox", { name: "Try a designation" });
  await field.fill("M12x1.7");
  await page.getByText(/no standard pitch for M12/).waitFor();
  expect(await faults(page)).toEqual([]);
  for (const control of [field, page.getByRole("button", { name: "Back", exact: true })]) {
    const box = (await control.boundingBox())!;
    expect(box.height).toBeGreaterThanOrEqual(44);
    expect(box.x + box.width).toBeLessThanOrEqual(390);
  }
});
