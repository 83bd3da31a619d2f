import type { Page } from "playwright-core";
import { expect, test } from "vitest";
import { faults } from "./axe.ts";
import { newContext, openFile, openJob, openPage, touchContext, useBrowser } from "./page.ts";
import { sampleText } from "./sample-job.ts";

useBrowser();

const parts = ["route-card", "rail-words", "entry-line", "sheet-grid", "title-block"];

/** Parts of the page that lie over each other or stick out of the window, px allowed: 1. */
function layoutFaults(page: Page): Promise<string[]> {
  return page.evaluate((names) => {
    const shell = document.querySelector("half-angle")!.shadowRoot!;
    const boxes = names.map((name) => ({ name, box: shell.querySelector(name)!.getBoundingClientRect() }));
    const found: string[] = [];
    for (const { name, box } of boxes) {
      if (box.width < 40 || box.height < 20) found.push(`${name} is ${box.width} by ${box.height}`);
      if (box.left < -1 || box.right > innerWidth + 1) found.push(`${name} sticks out`);
      for (const other of boxes) {
        if (other.name <= name) continue;
        const wide = Math.min(box.right, other.box.right) - Math.max(box.left, other.box.left);
        const high = Math.min(box.bottom, other.box.bottom) - Math.max(box.top, other.box.top);
        if (wide > 1 && high > 1) found.push(`${name} and ${other.name} overlap by ${wide} by ${high}`);
      }
    }
    const { scrollWidth, clientWidth } = document.documentElement;
    if (scrollWidth > clientWidth) found.push(`the page is ${scrollWidth} wide in ${clientWidth}`);
    return found;
  }, parts);
}

/** Words and sign-off boxes that are lower or narrower than `least`, px. */
function smallTargets(page: Page, least: number): Promise<string[]> {
  return page.evaluate((px) => {
    const shell = document.querySelector("half-angle")!.shadowRoot!;
    const roots = ["route-card", "rail-words"].map((name) => shell.querySelector(name)!.shadowRoot!);
    const menus = [...roots[1]!.querySelectorAll("word-menu")].map((menu) => menu.shadowRoot!);
    return [...roots, ...menus]
      .flatMap((root) => [...root.querySelectorAll<HTMLElement>("button, label")])
      .map((element) => ({ name: element.textContent?.trim(), box: element.getBoundingClientRect() }))
      .filter(({ box }) => box.width > 0 && (box.height < px || box.width < px))
      .map(({ name, box }) => `${name}: ${box.width} by ${box.height}`);
  }, least);
}

test.each(["paper", "slate"])(
  "axe finds nothing wrong on %s, on the page and on the shelf",
  async (ground) => {
    const context = await newContext({ colorScheme: ground === "slate" ? "dark" : "light" });
    const page = await openPage(context);
    expect(await page.locator("html").getAttribute("data-theme")).toBe(ground);
    expect(await faults(page)).toEqual([]);
    await page.getByRole("button", { name: "Shelf", exact: true }).click();
    await page
      .getByRole("button", { name: /^Start a copy/ })
      .first()
      .waitFor();
    expect(await faults(page)).toEqual([]);
  },
);

test("axe finds nothing wrong with a message and a caution on the page", async () => {
  const page = await openPage(await newContext());
  await openJob(page, "sample.json", sampleText);
  await openFile(page, "no.json", "{");
  await page
    .getByRole("alert")
    .getByText(/^no\.json/)
    .waitFor();
  expect(await faults(page)).toEqual([]);
});

test.each([
  { name: "a desk screen", width: 1280, height: 800 },
  { name: "a desk screen at 200 % zoom", width: 640, height: 400 },
  { name: "a desk screen at 400 % zoom", width: 320, height: 256 },
  { name: "a wide screen", width: 1920, height: 1080 },
])("nothing overlaps or sticks out on $name", async ({ width, height }) => {
  const page = await openPage(await newContext({ viewport: { width, height } }));
  expect(await layoutFaults(page)).toEqual([]);
  await page.evaluate(() => localStorage.setItem("halfangle.settings", '{"large":true}'));
  await page.reload();
  await page.getByRole("grid").first().waitFor();
  expect(await layoutFaults(page)).toEqual([]);
});

test.each([
  { name: "a tablet", width: 1180, height: 820 },
  { name: "a tablet held upright", width: 820, height: 1180 },
  { name: "a phone", width: 390, height: 844 },
])(
  "on $name fingers find targets of 48 px, and nothing overlaps or sticks out",
  async ({ width, height }) => {
    const page = await openPage(await touchContext(width, height));
    expect(await page.locator("html").getAttribute("data-hand")).toBe("touch");
    expect(await layoutFaults(page)).toEqual([]);
    expect(await smallTargets(page, 48)).toEqual([]);
    expect(await faults(page)).toEqual([]);
  },
);

test("the layout follows the width: card, strip at the left, strip on top", async () => {
  const page = await openPage(await newContext());
  const nav = page.getByRole("navigation", { name: "Route card" });
  const shape = async () => {
    const box = (await nav.boundingBox())!;
    return box.width > 150 && box.height > 300 ? "card" : box.height > box.width ? "strip" : "top";
  };
  expect(await shape()).toBe("card");
  await page.setViewportSize({ width: 1000, height: 700 });
  await expect.poll(shape).toBe("strip");
  await page.setViewportSize({ width: 400, height: 700 });
  await expect.poll(shape).toBe("top");
});

test("in the person's own colours the operation in hand and the words that are on still stand out", async () => {
  const page = await openPage(await newContext({ forcedColors: "active" }));
  const here = page.locator("route-card .here");
  expect(await here.evaluate((element) => getComputedStyle(element).outlineStyle)).toBe("solid");
  expect(await faults(page)).toEqual([]);
});
