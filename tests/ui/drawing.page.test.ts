/** Drawings of the shipped job on the built page, under its real content policy. */
import { readFile } from "node:fs/promises";
import type { Page } from "playwright-core";
import { expect, test } from "vitest";
import { newContext, openPage, touchContext, useBrowser } from "./page.ts";

useBrowser();

/** The set-over sheet with its drawing in hand. */
async function planView(): Promise<Page> {
  const page = await openPage(await newContext());
  await page
    .getByRole("button", { name: /Set-over/ })
    .first()
    .click();
  await page.getByRole("gridcell", { name: /^Plan view, headstock left/ }).click();
  return page;
}

async function saved(page: Page, word: string): Promise<{ name: string; bytes: Buffer }> {
  await page.keyboard.press("Shift+F10");
  const download = page.waitForEvent("download");
  await page.getByRole("menuitem", { name: word }).press("Enter");
  const file = await download;
  return { name: file.suggestedFilename(), bytes: await readFile(await file.path()) };
}

test("with the keyboard alone a drawing is saved as SVG and as PNG, and the policy refuses neither", async () => {
  const page = await planView();
  const svg = await saved(page, "Save drawing as SVG");
  expect(svg.name).toBe("plan-view.svg");
  expect(svg.bytes.toString()).toMatch(/^<\?xml[^>]*>\n<svg [^>]*viewBox="0 0 720 540"/);
  expect(svg.bytes.toString()).not.toContain("var(");
  const png = await saved(page, "Save drawing as PNG");
  expect(png.name).toBe("plan-view.png");
  // The signature that every PNG begins with (ISO/IEC 15948).
  expect([...png.bytes.subarray(0, 8)]).toEqual([137, 80, 78, 71, 13, 10, 26, 10]);
  expect(png.bytes.length).toBeGreaterThan(10_000);
});

test("every sheet of the shipped job that has drawings shows them, on a desk and on a phone", async () => {
  const names = [
    /^Profile of 1\/2 BSW/,
    /^Plan view, headstock/,
    /^Change gears: /,
    /^Groove in the axial plane, /,
    /^Three wires/,
  ];
  const desk = await openPage(await newContext());
  for (const [i, operation] of ["Thread", "Set-over", "Gears and marks", "Passes", "Measure"].entries()) {
    await desk
      .getByRole("button", { name: new RegExp(operation) })
      .first()
      .click();
    await desk.getByRole("gridcell", { name: names[i]! }).waitFor();
  }
  const phone = await openPage(await touchContext(390, 844));
  await phone.getByRole("button", { name: "Profile", exact: true }).waitFor();
  await phone.getByRole("img", { name: names[0]! }).first().waitFor();
});
