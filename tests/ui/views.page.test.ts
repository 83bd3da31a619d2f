/** Every view at every size: nothing lies over anything else, is cut off without a sign, or sticks out. */
import type { BrowserContextOptions, Page } from "playwright-core";
import { expect, test } from "vitest";
import { layoutFaults } from "./clear.ts";
import { newContext, openPage, useBrowser } from "./page.ts";

useBrowser();

/** Asks for a word of the rail, wherever the width has put it. */
async function word(page: Page, name: string): Promise<void> {
  const rail = page.locator("rail-words");
  const direct = rail.getByRole("button", { name, exact: true });
  if (!(await direct.first().isVisible())) {
    for (const menu of ["More", "Sheet", "Look", "Operation"]) {
      const opener = rail.getByRole("button", { name: menu, exact: true });
      if (!(await opener.isVisible())) continue;
      await opener.click();
      if (await direct.first().isVisible()) break;
      await page.keyboard.press("Escape");
    }
  }
  await direct.first().click();
}

const dialogs = (name: string | RegExp) => (page: Page) => page.getByRole("dialog", { name }).waitFor();

interface View {
  readonly name: string;
  open(page: Page): Promise<unknown>;
}

const opens = (name: string, title: string | RegExp = name): View => ({
  name,
  open: async (page) => {
    await word(page, name);
    await dialogs(title)(page);
  },
});

const views: readonly View[] = [
  { name: "the grid", open: async () => undefined },
  {
    name: "a formula that is written",
    open: async (page) => {
      const entry = page.getByRole("textbox", { name: "Entry line" });
      await entry.click();
      await page.keyboard.press("Control+a");
      await page.keyboard.type("=THREAD.PITCHDIA(thread,unit)");
      await page.getByText("Drop").waitFor();
    },
  },
  {
    name: "Why",
    open: async (page) => {
      await word(page, "Why");
      await page.getByRole("complementary", { name: "Why" }).waitFor();
    },
  },
  {
    name: "Find",
    open: async (page) => {
      await word(page, "Find");
      await page.getByRole("search", { name: "Find" }).waitFor();
    },
  },
  opens("Functions"),
  {
    name: "a function",
    open: async (page) => {
      await word(page, "Functions");
      await page.keyboard.type("best wire");
      await page.getByRole("heading", { name: /^WIRE\.BEST\(/ }).waitFor();
    },
  },
  opens("Card", /card/i),
  opens("Bench", /./),
  opens("Shelf", /./),
  {
    name: "Threads it knows",
    open: async (page) => {
      await word(page, "Shelf");
      await page.getByRole("button", { name: "Threads it knows" }).click();
      await dialogs("Threads it knows")(page);
    },
  },
  opens("Names"),
  opens("History"),
  opens("Print"),
  opens("Lathe", /./),
  opens("Trial", /./),
  opens("Seek", /./),
  opens("Title of the job"),
  {
    name: "the cell menu",
    open: async (page) => {
      await word(page, "Commands for cells");
      await page.getByRole("menu").waitFor();
    },
  },
  {
    name: "Format",
    open: async (page) => {
      await word(page, "Commands for cells");
      await page.getByRole("menuitem", { name: "Format..." }).click();
      await dialogs(/^Format of/)(page);
    },
  },
  {
    name: "Choices and limits",
    open: async (page) => {
      await word(page, "Commands for cells");
      await page.getByRole("menuitem", { name: "Choices and limits..." }).click();
      await dialogs(/^Choices and limits of/)(page);
    },
  },
  {
    name: "a menu of the rail",
    open: async (page) => {
      const rail = page.locator("rail-words");
      const more = rail.getByRole("button", { name: "More", exact: true });
      await ((await more.isVisible())
        ? more
        : rail.getByRole("button", { name: "Sheet", exact: true })
      ).click();
      await rail.getByRole("button", { name: "Names", exact: true }).waitFor();
    },
  },
];

interface Look {
  readonly name: string;
  readonly context: BrowserContextOptions;
  readonly settings?: string;
}

const touch: BrowserContextOptions = { hasTouch: true, isMobile: true };
const looks: readonly Look[] = [
  { name: "a desk screen of 1280 by 800", context: { viewport: { width: 1280, height: 800 } } },
  { name: "a tablet of 1180 by 820", context: { ...touch, viewport: { width: 1180, height: 820 } } },
  { name: "a phone of 390 by 844", context: { ...touch, viewport: { width: 390, height: 844 } } },
  {
    name: "a desk screen at 200 %",
    context: { viewport: { width: 640, height: 400 }, deviceScaleFactor: 2 },
  },
  {
    name: "a tablet at 200 %",
    context: { ...touch, viewport: { width: 590, height: 410 }, deviceScaleFactor: 2 },
  },
  {
    name: "a phone with large type",
    context: { ...touch, viewport: { width: 390, height: 844 } },
    settings: '{"large":true}',
  },
  {
    name: "a desk screen with large type for gloves",
    context: { viewport: { width: 1280, height: 800 } },
    settings: '{"large":true,"hand":"gloves","ground":"slate"}',
  },
  {
    name: "a desk screen in the person's own colours, without motion",
    context: { viewport: { width: 1280, height: 800 }, forcedColors: "active", reducedMotion: "reduce" },
  },
];

test.each(looks)(
  "on $name every view is clear",
  async ({ context, settings }) => {
    const page = await openPage(await newContext(context));
    if (settings !== undefined) {
      await page.evaluate((text) => localStorage.setItem("halfangle.settings", text), settings);
      await page.reload();
      await page.getByRole("grid").first().waitFor();
    }
    const faults: Record<string, readonly string[]> = {};
    for (const { name, open } of views) {
      await page.locator("sheet-grid [role=gridcell][aria-rowindex='3'][aria-colindex='3']").first().click();
      await open(page);
      const wrong = await layoutFaults(page);
      if (wrong.length > 0) faults[name] = wrong;
      // A field that is searched in is emptied first, and a panel may lie over another.
      for (let press = 0; press < 3 && name !== "the grid"; press++) await page.keyboard.press("Escape");
      await expect.poll(() => page.getByRole("dialog").count(), { message: `${name} closes` }).toBe(0);
      await expect.poll(() => page.getByRole("complementary", { name: "Why" }).count()).toBe(0);
    }
    expect(faults).toEqual({});
  },
  120_000,
);

test("the measuring itself sees what is wrong", async () => {
  const page = await openPage(await newContext());
  expect(await layoutFaults(page)).toEqual([]);
  await page.locator("route-card").evaluate((card) => {
    const words = card.shadowRoot!.querySelectorAll<HTMLElement>("button");
    words[4]!.style.transform = "translateY(-40px)";
    words[5]!.style.transform = "translateX(-90px)";
    const more = document.createElement("span");
    more.textContent = "words over words";
    const title = [...card.shadowRoot!.querySelectorAll("b")]
      .find((bold) => bold.textContent === "Full thread job")!
      .getBoundingClientRect();
    more.style.cssText = `position:fixed;left:${title.left + 70}px;top:${title.top}px`;
    card.shadowRoot!.append(more);
  });
  await page.locator("entry-line").evaluate((line) => {
    const balloon = line.shadowRoot!.querySelector<HTMLElement>(".balloon b")!;
    balloon.style.cssText = "display:block;width:9px;min-width:0;overflow:hidden";
  });
  const faults = (await layoutFaults(page)).join("\n");
  expect(faults).toMatch(/is hidden under/);
  expect(faults).toMatch(/lie over each other/);
  expect(faults).toMatch(/sticks out to the side/);
  expect(faults).toMatch(/is cut off without a sign/);
});
