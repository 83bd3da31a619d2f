/** Whole rows and columns, drawn ranges and formulas pointed at, with the mouse, the finger and the keys on the built page. */
import type { CDPSession, Locator, Page } from "playwright-core";
import { expect, test } from "vitest";
import { emptyOperation, newContext, openJob, openPage, touchContext, useBrowser } from "./page.ts";
import { sampleText } from "./sample-job.ts";

useBrowser();

interface Point {
  readonly x: number;
  readonly y: number;
}

const head = (page: Page, kind: "row" | "column", name: string) =>
  page.getByRole(`${kind}header`, { name, exact: true });
const cellAt = (page: Page, row: number, column: number) =>
  page.locator(`sheet-grid [role=gridcell][aria-rowindex="${row + 1}"][aria-colindex="${column + 1}"]`);

async function middle(selector: Locator): Promise<Point> {
  const box = (await selector.boundingBox())!;
  return { x: box.x + box.width / 2, y: box.y + box.height / 2 };
}

/** What the grid has said last, to those who listen. */
const said = (page: Page) => page.locator("sheet-grid [role=status]").first().textContent();
const selection = async (page: Page) =>
  /^(\S+) selected(?:, \d+ by \d+)?$/.exec((await said(page)) ?? "")?.[1];
const chosen = (page: Page, range: string) => expect.poll(() => selection(page)).toBe(range);

async function opened(): Promise<Page> {
  const page = await openPage(await newContext());
  await openJob(page, "sample.json", sampleText);
  await page.getByRole("gridcell", { name: "M10" }).waitFor();
  return page;
}

async function drag(page: Page, from: Point, to: Point): Promise<void> {
  await page.mouse.move(from.x, from.y);
  await page.mouse.down();
  await page.mouse.move((from.x + to.x) / 2, (from.y + to.y) / 2, { steps: 3 });
  await page.mouse.move(to.x, to.y, { steps: 3 });
  await page.mouse.up();
}

test("the mouse drags over row heads and column heads, and Shift and a click take in all between", async () => {
  const page = await opened();
  await drag(page, await middle(head(page, "row", "3")), await middle(head(page, "row", "5")));
  await chosen(page, "A3:Z5");
  await drag(page, await middle(head(page, "row", "6")), await middle(head(page, "row", "4")));
  await chosen(page, "A4:Z6");
  await drag(page, await middle(head(page, "column", "B")), await middle(head(page, "column", "D")));
  await chosen(page, "B1:D200");
  await head(page, "row", "2").click();
  await head(page, "row", "7").click({ modifiers: ["Shift"] });
  await chosen(page, "A2:Z7");
  await head(page, "row", "1").click({ modifiers: ["Shift"] });
  await chosen(page, "A1:Z2");
  // A right click on one of them keeps all of them.
  await head(page, "row", "3").click();
  await head(page, "row", "5").click({ modifiers: ["Shift"] });
  await head(page, "row", "4").click({ button: "right" });
  await page.getByRole("menuitem", { name: "Delete 3 rows" }).waitFor();
  await page.keyboard.press("Escape");
  // And one on another row takes that.
  await head(page, "row", "8").click({ button: "right" });
  await page.getByRole("menuitem", { name: "Delete row", exact: false }).first().waitFor();
});

test("taking a row or a column does not scroll the sheet away, and Shift and an arrow take in the next", async () => {
  const page = await opened();
  const scroll = page.locator("sheet-grid .scroll");
  await scroll.evaluate((element) => element.scrollTo(300, 1400));
  await head(page, "row", "60").click();
  await chosen(page, "A60:Z60");
  await page.keyboard.press("Shift+ArrowDown");
  await chosen(page, "A60:Z61");
  await head(page, "column", "F").click();
  await chosen(page, "F1:F200");
  await page.keyboard.press("Shift+ArrowRight");
  await chosen(page, "F1:G200");
  expect(await scroll.evaluate(({ scrollLeft, scrollTop }) => [scrollLeft, scrollTop])).toEqual([300, 1400]);
});

class Finger {
  constructor(private readonly client: CDPSession) {}
  static async on(page: Page): Promise<Finger> {
    return new Finger(await page.context().newCDPSession(page));
  }
  async send(
    type: "touchStart" | "touchMove" | "touchEnd" | "touchCancel",
    ...touchPoints: (Point & { id?: number })[]
  ) {
    await this.client.send("Input.dispatchTouchEvent", { type, touchPoints });
  }
  async drag(from: Point, to: Point): Promise<void> {
    await this.send("touchStart", from);
    for (const share of [0.3, 0.6, 1])
      await this.send("touchMove", {
        x: from.x + (to.x - from.x) * share,
        y: from.y + (to.y - from.y) * share,
      });
    await this.send("touchEnd");
  }
}

test("a finger takes a row by its head, draws more of them by the grip, and deletes them all", async () => {
  const page = await openPage(await touchContext(1180, 820));
  const finger = await Finger.on(page);
  await emptyOperation(page);
  await cellAt(page, 7, 1).tap();
  await page.keyboard.type("seven");
  await page.keyboard.press("Enter");
  await head(page, "row", "4").tap();
  await chosen(page, "A4:Z4");
  const grip = page.locator("sheet-grid .grip.to");
  const from = await middle(grip);
  expect((await grip.boundingBox())!.width).toBeGreaterThanOrEqual(44);
  expect(from.x).toBeLessThan(1180);
  await finger.drag(from, await middle(head(page, "row", "6")).then(({ y }) => ({ x: from.x, y })));
  await chosen(page, "A4:Z6");
  // A long press within them keeps them.
  const inside = await middle(head(page, "row", "5"));
  await finger.send("touchStart", inside);
  await page.getByRole("menuitem", { name: "Delete 3 rows" }).waitFor();
  await finger.send("touchEnd");
  await page.getByRole("menuitem", { name: "Delete 3 rows" }).tap();
  await expect.poll(() => cellAt(page, 4, 1).textContent()).toBe("seven");
  await head(page, "column", "B").tap();
  const side = await middle(grip);
  expect(side.y).toBeLessThan(820);
  const to = await middle(head(page, "column", "D"));
  await finger.drag(side, { x: to.x, y: side.y });
  await chosen(page, "B1:D200");
});

test("a second finger moves nothing, and a touch that is taken away leaves the range as it was", async () => {
  const page = await openPage(await touchContext(1180, 820));
  const finger = await Finger.on(page);
  await emptyOperation(page);
  await cellAt(page, 3, 2).tap();
  await expect.poll(() => cellAt(page, 3, 2).getAttribute("aria-selected")).toBe("true");
  const grip = await middle(page.locator("sheet-grid .grip.to"));
  const target = await middle(cellAt(page, 5, 2));
  const palm = { x: 900, y: 600, id: 2 };
  await finger.send("touchStart", { ...grip, id: 1 });
  await finger.send("touchMove", { ...grip, x: target.x, y: target.y, id: 1 });
  await chosen(page, "B3:B5");
  await finger.send("touchStart", { x: target.x, y: target.y, id: 1 }, palm);
  await finger.send("touchMove", { x: target.x, y: target.y, id: 1 }, { ...palm, y: 300 });
  await finger.send("touchEnd", { x: target.x, y: target.y, id: 1 });
  await chosen(page, "B3:B5");
  await finger.send("touchEnd");
  // Drawn on, and broken off by the system.
  const again = await middle(page.locator("sheet-grid .grip.to"));
  await finger.send("touchStart", again);
  await finger.send("touchMove", { x: again.x, y: again.y + 120 });
  await expect.poll(() => selection(page)).toMatch(/^B3:B[6-9]/);
  await finger.send("touchCancel");
  await chosen(page, "B3:B5");
});

test("the sheet goes on under a finger that rests at its edge while it draws", async () => {
  const page = await openPage(await touchContext(1180, 820));
  const finger = await Finger.on(page);
  await emptyOperation(page);
  await cellAt(page, 3, 2).tap();
  await expect.poll(() => cellAt(page, 3, 2).getAttribute("aria-selected")).toBe("true");
  const grip = await middle(page.locator("sheet-grid .grip.to"));
  const grid = (await page.getByRole("grid").first().boundingBox())!;
  await finger.send("touchStart", grip);
  await finger.send("touchMove", { x: grip.x, y: grid.y + grid.height - 8 });
  const last = async () => Number(/:B(\d+)$/.exec((await selection(page)) ?? "")?.[1] ?? 0);
  await expect.poll(last, { timeout: 10_000 }).toBeGreaterThan(30);
  await finger.send("touchEnd");
  expect(await page.locator("sheet-grid .scroll").evaluate(({ scrollTop }) => scrollTop)).toBeGreaterThan(
    500,
  );
});

test("while the fill handle is drawn the cells that it would fill are framed", async () => {
  const page = await opened();
  await page.getByRole("gridcell", { name: "8", exact: true }).click();
  const from = await middle(page.locator("sheet-grid .fill"));
  await page.mouse.move(from.x, from.y);
  await page.mouse.down();
  await page.mouse.move(from.x - 10, from.y + 40, { steps: 4 });
  const frame = page.locator("sheet-grid .filling");
  await expect.poll(async () => (await frame.boundingBox())?.height ?? 0).toBeGreaterThan(60);
  await page.mouse.up();
  await frame.waitFor({ state: "hidden" });
});

test("arrow keys point while a formula waits for a cell, with Shift a range, and move on once it does not", async () => {
  const page = await opened();
  await cellAt(page, 9, 2).click();
  await page.keyboard.type("=SUM(");
  for (let step = 0; step < 4; step++) await page.keyboard.press("ArrowUp");
  const field = page.getByRole("textbox", { name: "Cell B9" });
  const typed = () =>
    field.evaluate((element) =>
      element instanceof HTMLTextAreaElement ? element.value : (element.textContent ?? ""),
    );
  await expect.poll(typed).toMatch(/^=SUM\(B5\)?$/);
  await page.keyboard.press("Shift+ArrowUp");
  await expect.poll(typed).toMatch(/^=SUM\(B4:B5\)?$/);
  await page.keyboard.type(")*");
  await page.keyboard.press("ArrowUp");
  await page.keyboard.press("Control+ArrowUp");
  await expect.poll(typed).toMatch(/\*B\d$/);
  await page.keyboard.type("*0+1");
  // It waits for nothing now: the arrow keeps what is typed and moves.
  await page.keyboard.press("ArrowDown");
  await expect.poll(() => cellAt(page, 9, 2).textContent()).toBe("1");
});

test("a double press on the fill handle fills down along what is beside, and does not open the cell", async () => {
  const page = await openPage(await newContext());
  await emptyOperation(page);
  await cellAt(page, 1, 1).click();
  for (const text of ["1", "2", "3", "4"]) await page.keyboard.type(`${text}\n`);
  await cellAt(page, 1, 2).click();
  await page.keyboard.type("=A1*10");
  await page.keyboard.press("Enter");
  await page.keyboard.press("ArrowUp");
  await expect.poll(() => cellAt(page, 1, 2).getAttribute("class")).toMatch(/\bactive\b/);
  const fill = await middle(page.locator("sheet-grid .fill"));
  await page.mouse.dblclick(fill.x, fill.y);
  await expect.poll(() => cellAt(page, 4, 2).textContent()).toBe("40");
  expect(await cellAt(page, 5, 2).textContent()).toBe("");
  expect(await page.locator("sheet-grid .edit").count()).toBe(0);
  await page.keyboard.press("Control+z");
  await expect.poll(() => cellAt(page, 4, 2).textContent()).toBe("");
});

test("a right press within the chosen range keeps it, one beside it takes the cell there in hand", async () => {
  const page = await openPage(await newContext());
  await emptyOperation(page);
  const to = await middle(cellAt(page, 4, 3));
  await cellAt(page, 2, 2).hover();
  await page.mouse.down();
  await page.mouse.move(to.x, to.y);
  await page.mouse.up();
  await chosen(page, "B2:C4");
  await cellAt(page, 3, 3).click({ button: "right" });
  await page.getByRole("menu", { name: "Commands for B2:C4" }).waitFor();
  await chosen(page, "B2:C4");
  await page.keyboard.press("Escape");
  await cellAt(page, 6, 2).click({ button: "right" });
  await page.getByRole("menu", { name: "Commands for cell B6" }).waitFor();
});
