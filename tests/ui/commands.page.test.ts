/** Finding, names, history and the commands of cells on the built page, with its real content policy. */
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import type { Page } from "playwright-core";
import { expect, test } from "vitest";
import { newContext, openJob, openPage, touchContext, useBrowser } from "./page.ts";
import { sampleText } from "./sample-job.ts";

useBrowser();

const axe = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");

async function faults(page: Page): Promise<string[]> {
  await page.evaluate(`${axe};undefined`);
  return page.evaluate(async () => {
    const { axe } = globalThis as unknown as { axe: typeof import("axe-core") };
    const { violations } = await axe.run(document);
    return violations.flatMap(({ id, nodes }) =>
      nodes.map((node) => `${id}: ${node.target.flat().join(" ")} ${node.failureSummary}`),
    );
  });
}

async function opened(): Promise<Page> {
  const page = await openPage(await newContext());
  await openJob(page, "sample.json", sampleText);
  await page.getByRole("gridcell", { name: "M10" }).waitFor();
  return page;
}

const sheetWord = async (page: Page, word: string) => {
  await page.getByRole("button", { name: "Sheet", exact: true }).click();
  await page.getByRole("button", { name: word }).click();
};

test("Control and F find a word on every operation, replace it, and Undo takes it back", async () => {
  const page = await opened();
  await page.getByRole("gridcell", { name: "M10" }).click();
  await page.keyboard.press("Control+f");
  const find = page.getByRole("search", { name: "Find" });
  await find.getByRole("textbox", { name: "Find" }).fill("wanted");
  await find.getByText("3 cells").waitFor();
  await page.keyboard.press("Enter");
  await find.getByText("1 of 3, Thread A4").waitFor();
  await page.keyboard.press("Shift+Enter");
  await find.getByText("3 of 3, Passes A2").waitFor();
  await page.getByRole("grid", { name: "Sheet Passes" }).waitFor();
  expect(await faults(page)).toEqual([]);
  await find.getByRole("textbox", { name: "Put in its place" }).fill("Depth");
  await find.getByRole("checkbox", { name: "in all operations" }).uncheck();
  await find.getByText("2 cells").waitFor();
  await find.getByRole("checkbox", { name: "in all operations" }).check();
  await find.getByRole("textbox", { name: "Find" }).fill("designation");
  await find.getByRole("button", { name: "Replace all" }).click();
  await find.getByText("replaced in 1 cell; Undo takes it back").waitFor();
  await page.keyboard.press("Escape");
  await find.waitFor({ state: "detached" });
  await page.getByRole("button", { name: "10 Thread" }).click();
  await page.getByRole("gridcell", { name: "Depth", exact: true }).waitFor();
  await page.getByRole("button", { name: "Undo", exact: true }).click();
  await page.getByRole("gridcell", { name: "Designation" }).waitFor();
});

test("names are listed with what they show, made, renamed in formulas, gone to and deleted", async () => {
  const page = await opened();
  await sheetWord(page, "Names");
  const names = page.getByRole("dialog", { name: "Names" });
  await names.getByRole("row", { name: /^thread Thread!B2 M10/ }).waitFor();
  expect(await faults(page)).toEqual([]);
  await names.getByRole("textbox", { name: "New name" }).fill("M10");
  await names.getByRole("button", { name: "Name it" }).click();
  await names.getByText("M10 reads as a cell: write M_10.").waitFor();
  await names.getByRole("textbox", { name: "New name" }).fill("twice");
  await names.getByRole("textbox", { name: "for", exact: true }).fill("Thread!B5");
  await names.getByRole("button", { name: "Name it" }).click();
  await names.getByRole("row", { name: /^twice Thread!B5 8/ }).waitFor();
  await names.getByRole("button", { name: "Rename wanted" }).click();
  await page.keyboard.type("goal");
  await page.keyboard.press("Enter");
  await names.getByRole("row", { name: /^goal/ }).waitFor();
  await names.getByRole("button", { name: "Delete twice" }).click();
  await names.getByRole("row", { name: /^twice/ }).waitFor({ state: "detached" });
  await names.getByRole("button", { name: "Go to goal" }).click();
  await names.waitFor({ state: "hidden" });
  await page.getByRole("button", { name: "20 Passes" }).click();
  await page.getByRole("gridcell", { name: "12", exact: true }).click();
  await page.getByRole("region", { name: "Entry line" }).getByText("goal").first().waitFor();
});

test("history says what each step was and goes back to any of them", async () => {
  const page = await opened();
  await page.getByRole("gridcell", { name: "4", exact: true }).click();
  await page.keyboard.type("5\n6\n");
  await page.getByRole("checkbox", { name: "Sign off 20 Passes" }).check();
  await sheetWord(page, "History");
  const history = page.getByRole("dialog", { name: "History" });
  const steps = history.getByRole("listitem");
  await expect.poll(() => steps.count()).toBe(4);
  expect(await steps.nth(0).textContent()).toContain("Signed off Passes");
  expect(await steps.nth(2).textContent()).toContain("Typed in Thread!B4");
  expect(await faults(page)).toEqual([]);
  await steps.nth(3).getByRole("button").click();
  await history.getByText("the job now").waitFor();
  expect(await steps.nth(3).textContent()).toContain("the job now");
  await history.getByRole("button", { name: "Back to the job" }).click();
  await page.getByRole("gridcell", { name: "4", exact: true }).waitFor();
  expect(await page.getByRole("checkbox", { name: "Sign off 20 Passes" }).isChecked()).toBe(false);
  await page.getByRole("button", { name: "Redo", exact: true }).click();
  await page.getByRole("gridcell", { name: "5", exact: true }).waitFor();
});

test("the title is changed, and an operation is copied with its cells", async () => {
  const page = await opened();
  await sheetWord(page, "Title of the job");
  const ask = page.getByRole("dialog", { name: "Title of the job" });
  await ask.getByRole("textbox", { name: "Title" }).fill("Stud for a vice");
  await page.keyboard.press("Enter");
  await page.getByText("Stud for a vice").first().waitFor();
  await page.getByRole("button", { name: "Operation", exact: true }).click();
  await page.getByRole("button", { name: "Copy operation" }).click();
  await page.getByRole("button", { name: /Thread 2/ }).waitFor();
  await page.getByRole("grid", { name: "Sheet Thread 2" }).waitFor();
});

test("with a mouse the fill handle fills and the edge of a column draws its width", async () => {
  const page = await opened();
  await page.getByRole("gridcell", { name: "8", exact: true }).click();
  const fill = (await page.locator("sheet-grid .fill").boundingBox())!;
  const middle = { x: fill.x + fill.width / 2, y: fill.y + fill.height / 2 };
  await page.mouse.move(middle.x, middle.y);
  await page.mouse.down();
  await page.mouse.move(middle.x - 10, middle.y + 20, { steps: 3 });
  await page.mouse.move(middle.x - 10, middle.y + 40, { steps: 3 });
  await page.mouse.up();
  // =B4*2 filled down two rows: =B5*2 is 16 and =B6*2 is 32.
  await page.getByRole("gridcell", { name: "32", exact: true }).waitFor();
  const head = page.getByRole("columnheader", { name: "B", exact: true });
  const before = (await head.boundingBox())!;
  const edge = { x: before.x + before.width, y: before.y + 8 };
  await page.mouse.move(edge.x, edge.y);
  await page.mouse.down();
  await page.mouse.move(edge.x + 70, edge.y, { steps: 4 });
  await page.mouse.up();
  await expect.poll(async () => (await head.boundingBox())!.width).toBeCloseTo(before.width + 70, -1);
  await page.mouse.dblclick(edge.x + 70, edge.y);
  await expect.poll(async () => (await head.boundingBox())!.width).toBeLessThan(before.width);
});

test("a press gives its address to the formula in the entry line, at the caret, with colours or without", async () => {
  const page = await opened();
  const entry = page.getByRole("textbox", { name: "Entry line" });
  const b4 = page.getByRole("gridcell", { name: "4", exact: true });
  const b5 = page.getByRole("gridcell", { name: "8", exact: true });
  await b5.click();
  await page.keyboard.press("ArrowRight");
  await entry.click();
  await page.locator("formula-field").waitFor();
  await page.keyboard.type("=SUM(");
  await b4.click();
  await b5.click();
  await page.keyboard.type(",");
  await b4.click();
  await page.keyboard.type(")");
  await page.keyboard.press("Enter");
  // 8 + 4.
  await page.getByRole("gridcell", { name: "12", exact: true }).waitFor();
});

test("in a cell with colours too a press gives its address, and one in the field itself moves the caret", async () => {
  const page = await opened();
  const b4 = page.getByRole("gridcell", { name: "4", exact: true });
  await page.getByRole("gridcell", { name: "8", exact: true }).click();
  await page.getByRole("textbox", { name: "Entry line" }).click();
  await page.locator("formula-field").waitFor();
  await page.getByRole("gridcell", { name: "8", exact: true }).click();
  await page.keyboard.press("ArrowRight");
  await page.keyboard.type("=SUM(");
  const field = page.getByRole("textbox", { name: "Cell C5" });
  await page.locator("sheet-grid formula-field").waitFor();
  await b4.click();
  await expect.poll(() => field.textContent()).toBe("=SUM(B4)");
  await field.click({ position: { x: 2, y: 8 } });
  await page.locator("sheet-grid formula-field").waitFor();
  await page.keyboard.press("End");
  await page.keyboard.type("+1");
  await page.keyboard.press("Enter");
  await page.getByRole("gridcell", { name: "5", exact: true }).waitFor();
});

test("copied cells go to another operation with the keys, and cut ones are followed there", async () => {
  const context = await newContext({ permissions: ["clipboard-read", "clipboard-write"] });
  const page = await openPage(context);
  await openJob(page, "sample.json", sampleText);
  await page.getByRole("gridcell", { name: "4", exact: true }).click();
  await page.keyboard.press("Control+x");
  await page.getByRole("button", { name: "20 Passes" }).click();
  await page.getByRole("grid", { name: "Sheet Passes" }).waitFor();
  await page.getByRole("columnheader", { name: "D", exact: true }).click();
  await page.keyboard.press("Control+v");
  await page.getByRole("gridcell", { name: "4", exact: true }).waitFor();
  await page.getByRole("button", { name: "10 Thread" }).click();
  await page.getByRole("gridcell", { name: "8", exact: true }).click();
  await page.getByRole("region", { name: "Entry line" }).getByText("Passes!").first().waitFor();
});

test("on a touch screen a tap chooses, a second tap edits, and the grips draw a range", async () => {
  const page = await openPage(await touchContext(1180, 820));
  const cell = (name: string | RegExp) =>
    page.getByRole("gridcell", { name, exact: typeof name === "string" });
  const client = await page.context().newCDPSession(page);
  await cell("Pitch").tap();
  expect(await page.locator("sheet-grid textarea").count()).toBe(0);
  const grip = (await page.locator("sheet-grid .grip.to").boundingBox())!;
  expect(grip.width).toBeGreaterThanOrEqual(44);
  const at = { x: grip.x + grip.width / 2, y: grip.y + grip.height / 2 };
  const touch = (type: "touchStart" | "touchMove" | "touchEnd", y?: number) =>
    client.send("Input.dispatchTouchEvent", {
      type,
      touchPoints: y === undefined ? [] : [{ x: at.x - 10, y }],
    });
  await touch("touchStart", at.y - 5);
  for (const by of [30, 60, 104]) await touch("touchMove", at.y + by);
  await touch("touchEnd");
  await expect.poll(() => page.locator("sheet-grid [aria-selected=true]").count()).toBeGreaterThan(2);
  await cell("Pitch").tap();
  await cell("Pitch").tap();
  await page.locator("sheet-grid .edit").waitFor();
});

test.each(["light", "dark"] as const)(
  "axe finds nothing wrong with menu and question open, %s ground",
  async (colorScheme) => {
    const page = await openPage(await newContext({ colorScheme }));
    await page.getByRole("gridcell").first().click({ button: "right" });
    await page.getByRole("menu").waitFor();
    expect(await faults(page)).toEqual([]);
    await page.getByRole("menuitem", { name: "Format..." }).click();
    await page.getByRole("dialog", { name: /^Format of/ }).waitFor();
    expect(await faults(page)).toEqual([]);
  },
);

test("the words of the rail have room at every width, or go under More", async () => {
  const page = await openPage(await newContext());
  for (const width of [1100, 1200, 1252, 1270, 1280, 1440, 1700]) {
    await page.setViewportSize({ width, height: 800 });
    const over = () =>
      page.locator("rail-words .rail").evaluate((rail) => {
        const last = Math.max(...[...rail.children].map((word) => word.getBoundingClientRect().right));
        return Math.max(0, Math.round(last - rail.getBoundingClientRect().right));
      });
    await expect.poll(over, { message: `${width} px wide` }).toBe(0);
  }
});

test("on a touch screen a long press opens the menu with words of 48 px, and a pan does not", async () => {
  const page = await openPage(await touchContext(1180, 820));
  const client = await page.context().newCDPSession(page);
  const box = (await page.getByRole("grid").first().boundingBox())!;
  const at = { x: box.x + 200, y: box.y + 250 };
  const touch = (type: "touchStart" | "touchMove" | "touchEnd", points: { x: number; y: number }[]) =>
    client.send("Input.dispatchTouchEvent", { type, touchPoints: points });
  await touch("touchStart", [at]);
  await page.getByRole("menu").waitFor();
  await touch("touchEnd", []);
  const small = await page
    .getByRole("menuitem")
    .evaluateAll((items) =>
      items.map((item) => item.getBoundingClientRect().height).filter((height) => height < 48),
    );
  expect(small).toEqual([]);
  expect(await page.getByRole("menuitem").count()).toBeGreaterThan(10);
  await page.keyboard.press("Escape");
  await page.getByRole("menu").waitFor({ state: "hidden" });
  await touch("touchStart", [at]);
  for (const y of [30, 60, 120]) await touch("touchMove", [{ x: at.x, y: at.y - y }]);
  await touch("touchEnd", []);
  await expect
    .poll(() => page.locator("sheet-grid .scroll").evaluate((one) => one.scrollTop))
    .toBeGreaterThan(20);
  expect(await page.getByRole("menu").count()).toBe(0);
});

test("on a touch screen the chosen column has a grip of 44 px that draws its width", async () => {
  const page = await openPage(await touchContext(1180, 820));
  const head = page.getByRole("columnheader", { name: "B", exact: true });
  await head.tap();
  const grip = page.locator("sheet-grid .hc.on .width");
  const before = (await head.boundingBox())!;
  const box = (await grip.boundingBox())!;
  expect(box.width).toBeGreaterThanOrEqual(44);
  const client = await page.context().newCDPSession(page);
  const y = box.y + box.height / 2;
  const touch = (type: "touchStart" | "touchMove" | "touchEnd", x?: number) =>
    client.send("Input.dispatchTouchEvent", { type, touchPoints: x === undefined ? [] : [{ x, y }] });
  const x = box.x + box.width / 2;
  await touch("touchStart", x);
  for (const by of [20, 50, 80]) await touch("touchMove", x + by);
  await touch("touchEnd");
  await expect.poll(async () => (await head.boundingBox())!.width).toBeCloseTo(before.width + 80, -1);
});
