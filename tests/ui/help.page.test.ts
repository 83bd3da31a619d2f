/** Finding a function and finding out why, by keyboard, by finger and on a small screen. */
import { expect, test } from "vitest";
import { faults } from "./axe.ts";
import { newContext, openJob, openPage, touchContext, useBrowser } from "./page.ts";
import { sampleText } from "./sample-job.ts";

useBrowser();

test("a function is found by a word, and its example is put into the cell, there to be kept", async () => {
  const page = await openPage(await newContext());
  await openJob(page, "sample.json", sampleText);
  await page.getByRole("gridcell", { name: "8", exact: true }).click();
  await page.getByRole("button", { name: "Functions", exact: true }).click();
  await page.keyboard.type("best wire");
  await page.getByRole("heading", { name: /^WIRE\.BEST\(/ }).waitFor();
  expect(await faults(page)).toEqual([]);
  await page.getByRole("button", { name: /^Put into B5 ?: =WIRE\.BEST\(1\.75, 60\)/ }).click();
  const entry = page.getByRole("textbox", { name: "Entry line" });
  await expect.poll(() => entry.evaluate((element) => element.matches(":focus"))).toBe(true);
  await page.keyboard.press("Enter");
  await page.getByRole("gridcell", { name: /^1\.010363/ }).waitFor();
});

test("why leads from an error to the cell where it began, by keyboard", async () => {
  const page = await openPage(await newContext());
  const broken = JSON.parse(sampleText);
  Object.assign(broken.sheets[0].cells, {
    A7: "Travel",
    B7: "=FLANK.INFEED(1,95)",
    A8: "Twice",
    B8: "=B7*2",
  });
  await openJob(page, "broken.json", JSON.stringify(broken));
  await page.getByRole("gridcell", { name: /NUM/ }).nth(1).click();
  await page.keyboard.press("F6");
  await page.getByRole("button", { name: "Why", exact: true }).focus();
  await page.keyboard.press("Enter");
  const drawer = page.getByRole("complementary", { name: "Why" });
  await drawer.getByText(/It began in/).waitFor();
  expect(await faults(page)).toEqual([]);
  await drawer.getByRole("button", { name: "B7 Travel" }).first().focus();
  await page.keyboard.press("Enter");
  await drawer.getByRole("heading", { name: "Travel" }).waitFor();
  await drawer
    .getByText(/setover/)
    .first()
    .waitFor();
});

test("while why is open the grid marks what the cell comes from and what it goes to, in words", async () => {
  const page = await openPage(await newContext());
  await openJob(page, "sample.json", sampleText);
  await page.getByRole("button", { name: "Why", exact: true }).click();
  await page.getByRole("gridcell", { name: "8", exact: true }).click();
  await page.getByRole("complementary", { name: "Why" }).getByRole("button", { name: /^B4/ }).waitFor();
  const marked = (word: string) =>
    page
      .locator(`[role=gridcell].traced.${word}`)
      .evaluateAll((cells) => cells.map((cell) => cell.textContent));
  await expect.poll(() => marked("from")).toEqual(["from4"]);
  await page.getByRole("gridcell", { name: "4", exact: true }).click();
  await expect.poll(() => marked("to")).toEqual(["to8"]);
  await page.getByRole("button", { name: "Close" }).click();
  await expect.poll(() => marked("to")).toEqual([]);
});

test.each([
  [1180, 820],
  [390, 844],
])("both fit on %i by %i and are worked with a finger", async (width, height) => {
  const page = await openPage(await touchContext(width, height));
  await page.getByRole("button", { name: "More" }).tap();
  await page.getByRole("button", { name: "Functions", exact: true }).tap();
  const dialog = page.getByRole("dialog", { name: "Functions" });
  await dialog.getByRole("button", { name: "Dial", exact: true }).tap();
  await dialog.getByRole("button", { name: /^DIAL.ROUND/ }).tap();
  await dialog.getByRole("heading", { name: /^DIAL.ROUND\(/ }).waitFor();
  const sticksOut = await dialog.evaluate((element) => element.scrollWidth - element.clientWidth);
  expect(sticksOut).toBeLessThanOrEqual(0);
  await dialog.getByRole("button", { name: "Back to the job" }).tap();
  await page.getByRole("button", { name: "More" }).tap();
  await page.getByRole("button", { name: "Why", exact: true }).tap();
  const drawer = page.getByRole("complementary", { name: "Why" });
  const box = (await drawer.boundingBox())!;
  expect(box.x).toBeGreaterThanOrEqual(0);
  expect(box.x + box.width).toBeLessThanOrEqual(width + 1);
  await drawer.getByRole("button", { name: "Close" }).tap();
  await drawer.waitFor({ state: "detached" });
});

test.each([
  [1180, 820],
  [390, 844],
])("why does not cover the cell that it is about, %i by %i", async (width, height) => {
  const page = await openPage(await touchContext(width, height));
  const cell = page.locator("sheet-grid .c.active");
  await page.getByRole("gridcell", { name: "Pitch diameter" }).first().tap();
  const rail = page.getByRole("toolbar", { name: "Rail" });
  await rail.getByRole("button", { name: "More", exact: true }).tap();
  await page.getByRole("button", { name: "Why", exact: true }).tap();
  const drawer = page.getByRole("complementary", { name: "Why" });
  await drawer.waitFor();
  const covered = async () => {
    const [mine, over] = [(await cell.boundingBox())!, (await page.locator("why-drawer").boundingBox())!];
    return mine.x + mine.width > over.x + 1 && mine.y + mine.height > over.y + 1;
  };
  await expect.poll(covered).toBe(false);
});
