/** One lathe entered once, and every job cut on it. */
import type { Page } from "playwright-core";
import { expect, test } from "vitest";
import { faults } from "./axe.ts";
import { newContext, openPage, touchContext, useBrowser } from "./page.ts";

useBrowser();

/** The part of the page that has the focus, and what stands there. */
function focused(page: Page): Promise<string> {
  return page.evaluate(() => {
    const path: string[] = [];
    let at = document.activeElement;
    while (at?.shadowRoot?.activeElement) {
      path.push(at.localName);
      at = at.shadowRoot.activeElement;
    }
    return `${path.join(" ")}: ${(at?.textContent ?? "").trim().replace(/\s+/g, " ")}`;
  });
}

test("taking over a lathe changes gears and passes of the job, and one undo brings them back", async () => {
  const page = await openPage(await newContext());
  const route = page.getByRole("navigation");
  for (const name of ["Blank", "Tool", "Set-over", "Passes", "Measure"])
    await route.getByRole("button", { name: new RegExp(`^\\d+ ${name} \\d`) }).waitFor();
  const before = await route.textContent();
  await page.getByRole("button", { name: "Lathe", exact: true }).click();
  await page.getByRole("button", { name: "Take over Inch bench lathe" }).waitFor();
  // Where a scale stands at 0 is said in words of the trade, not by the word of its choice.
  for (const words of [
    /zeroed square to the bed/,
    /zeroed along the bed(?!,)/,
    /zeroed along the bed, at its far end/,
  ])
    await page.getByText(words).first().waitFor();
  expect(await faults(page)).toEqual([]);
  await page.getByRole("button", { name: "Take over Inch bench lathe" }).click();
  // 1/8 in leadscrew to 12 per inch is 2 to 3; 48 and 72 are that of its set with the largest sum of teeth.
  await route.getByText("48/72").waitFor();
  await page.getByRole("button", { name: "Undo", exact: true }).click();
  await expect.poll(() => route.textContent()).toBe(before);
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
  await mine.getByText(/leadscrew 3\.0000 mm, top slide division 0\.0200 mm/).waitFor();
  await mine.getByRole("button", { name: "Open its sheet My own" }).click();
  await page.getByRole("gridcell", { name: "Lead of the leadscrew" }).waitFor();
});

test("with the keyboard alone a lathe is made from a shipped one, changed, and taken over in another job", async () => {
  const page = await openPage(await newContext());
  const part = async (name: RegExp) => {
    for (let i = 0; i < 8 && !name.test(await focused(page)); i++) await page.keyboard.press("F6");
    expect(await focused(page)).toMatch(name);
  };
  const tabTo = async (name: string) => {
    for (let i = 0; i < 60 && !(await focused(page)).endsWith(`: ${name}`); i++)
      await page.keyboard.press("Tab");
    await page.keyboard.press("Enter");
  };
  const lathes = async () => {
    await part(/rail-words/);
    await tabTo("Lathe");
    await page.getByRole("button", { name: "Back to the job" }).waitFor();
  };
  await lathes();
  await tabTo("Start your own from it Metric with gearbox");
  await page.getByRole("gridcell", { name: "Metric with gearbox, mine" }).waitFor();
  // Nothing of it is called invented any more.
  expect(await page.getByRole("navigation").first().textContent()).not.toContain("Invented");
  await part(/sheet-grid/);
  for (const key of ["Control+Home", "ArrowDown", "ArrowRight"]) await page.keyboard.press(key);
  await page.keyboard.type("Back room");
  await page.keyboard.press("Enter");
  // From the unit under it to one division of the top slide.
  for (let i = 0; i < 7; i++) await page.keyboard.press("ArrowDown");
  await page.keyboard.type("0.025 mm");
  await page.keyboard.press("Enter");
  await page.keyboard.type("80");
  await page.keyboard.press("Enter");
  await part(/rail-words/);
  await tabTo("Shelf");
  await tabTo("Full thread job");
  await page.getByRole("gridcell", { name: "Which thread?" }).waitFor();
  await lathes();
  await tabTo("Take over Back room");
  await page.getByRole("dialog", { name: "Lathe" }).waitFor({ state: "hidden" });
  await page.getByRole("button", { name: "Set-over", exact: false }).first().click();
  await page.getByRole("gridcell", { name: "0.0250 mm" }).waitFor();
  await page.getByRole("gridcell", { name: "a turn: 2.000, the lead of its screw" }).waitFor();
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
