/** One lathe entered once, and every job cut on it. */
import { expect, test } from "vitest";
import { faults } from "./axe.ts";
import { newContext, openPage, touchContext, useBrowser } from "./page.ts";

useBrowser();

test("taking over a lathe changes gears and passes of the job, and one undo brings them back", async () => {
  const page = await openPage(await newContext());
  const route = page.getByRole("navigation");
  const before = await route.textContent();
  await page.getByRole("button", { name: "Lathe", exact: true }).click();
  await page.getByRole("button", { name: "Take over Inch bench lathe" }).waitFor();
  expect(await faults(page)).toEqual([]);
  await page.getByRole("button", { name: "Take over Inch bench lathe" }).click();
  // 1/8 in leadscrew to 12 per inch is 2 to 3; 48 and 72 are that of its set with the largest sum of teeth.
  await route.getByText("48/72").waitFor();
  await page.getByRole("button", { name: "Undo", exact: true }).click();
  expect(await route.textContent()).toBe(before);
});

test("a lathe that is kept is there again after a reload, and another job takes it", async () => {
  const page = await openPage(await newContext());
  await page.getByRole("button", { name: "Lathe", exact: true }).click();
  await page.getByRole("button", { name: "Take over Metric with gearbox" }).click();
  await page.getByRole("button", { name: "Lathe", exact: true }).click();
  await page.getByRole("textbox", { name: "Name of the lathe in this job" }).fill("My own");
  await page.keyboard.press("Enter");
  await page.getByRole("button", { name: "Take over My own" }).waitFor();
  await page.reload();
  await page.getByRole("grid").waitFor();
  await page.getByRole("button", { name: "Lathe", exact: true }).click();
  const mine = page.getByRole("listitem").filter({ hasText: "My own" });
  await mine.getByText(/lead screw 3\.0000 mm, top slide division 0\.0200 mm/).waitFor();
  await mine.getByRole("button", { name: "Open its sheet My own" }).click();
  await page.getByRole("gridcell", { name: "Lead of the leadscrew" }).waitFor();
});

test("it is chosen with a finger on a tablet and on a phone", async () => {
  for (const [width, height] of [
    [1180, 820],
    [390, 844],
  ] as const) {
    const page = await openPage(await touchContext(width, height));
    await page.getByRole("button", { name: "More" }).tap();
    await page.getByRole("button", { name: "Lathe", exact: true }).tap();
    const take = page.getByRole("button", { name: "Take over Inch bench lathe" });
    const box = (await take.boundingBox())!;
    expect(box.height).toBeGreaterThanOrEqual(44);
    expect(box.x + box.width).toBeLessThanOrEqual(width);
    await take.tap();
    await page.getByRole("dialog", { name: "Lathe" }).waitFor({ state: "hidden" });
  }
});
