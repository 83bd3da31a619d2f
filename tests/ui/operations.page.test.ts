import type { Page } from "playwright-core";
import { expect, test } from "vitest";
import { newContext, openFile, openJob, openPage, useBrowser } from "./page.ts";
import { sampleText } from "./sample-job.ts";

useBrowser();

async function openSample(): Promise<Page> {
  const page = await openPage(await newContext());
  await openJob(page, "sample.json", sampleText);
  await page.getByRole("button", { name: "20 Passes" }).waitFor();
  return page;
}

function operations(page: Page): Promise<string[]> {
  return page.getByRole("navigation", { name: "Route card" }).locator(".row .nm").allTextContents();
}

test("an operation can be renamed on the route card by keyboard, and back by undo", async () => {
  const page = await openSample();
  await page.getByRole("button", { name: "20 Passes" }).focus();
  await page.keyboard.press("F2");
  await page.keyboard.type("Cuts");
  await page.keyboard.press("Enter");
  await page.getByRole("button", { name: "20 Cuts" }).waitFor();
  await page.keyboard.press("Control+z");
  await page.getByRole("button", { name: "20 Passes" }).waitFor();
  await page.getByRole("status").filter({ hasText: "Undone" }).first().waitFor({ state: "attached" });
});

test("renaming the operation in hand leaves it in hand, with the focus, also when that is taken back", async () => {
  const page = await openSample();
  const inFocus = () =>
    page.evaluate(() => {
      let focused = document.activeElement;
      while (focused?.shadowRoot?.activeElement) focused = focused.shadowRoot.activeElement;
      return focused?.textContent?.replace(/\s+/g, " ").trim() ?? "";
    });
  const here = page.locator('route-card [aria-current="page"] .nm');
  await page.getByRole("button", { name: "20 Passes" }).click();
  await page.keyboard.press("F2");
  await page.keyboard.type("Cuts");
  await page.keyboard.press("Enter");
  await page.getByRole("button", { name: "20 Cuts" }).waitFor();
  await expect.poll(inFocus).toContain("20 Cuts");
  expect(await here.textContent()).toBe("Cuts");
  await page.getByRole("grid", { name: "Sheet Cuts" }).waitFor();
  // From the card, Home and End lead to the ends of its list.
  await page.keyboard.press("Home");
  await expect.poll(inFocus).toContain("10 Thread");
  await page.keyboard.press("End");
  await expect.poll(inFocus).toContain("Add operation");
  await page.keyboard.press("Control+z");
  await expect.poll(() => here.textContent()).toBe("Passes");
  await page.getByRole("button", { name: "Operation", exact: true }).click();
  await page.getByRole("button", { name: "Copy operation" }).click();
  await expect.poll(() => here.textContent()).toBe("Passes 2");
  expect(await inFocus()).toBe("Operation");
});

test("arrow keys, Home and End go through the words of a menu, and Escape back to its word", async () => {
  const page = await openSample();
  const word = page.getByRole("button", { name: "Operation", exact: true });
  const focused = (name: string) =>
    expect.poll(() =>
      page.getByRole("button", { name, exact: true }).evaluate((each) => each.matches(":focus")),
    );
  await word.focus();
  await page.keyboard.press("ArrowDown");
  await focused("Sign off").toBe(true);
  await page.keyboard.press("ArrowDown");
  await focused("Rename operation").toBe(true);
  await page.keyboard.press("End");
  await focused("Delete operation").toBe(true);
  await page.keyboard.press("Home");
  await focused("Sign off").toBe(true);
  await page.keyboard.press("Escape");
  await focused("Operation").toBe(true);
  // Opened by a press, it is entered by an arrow too.
  await page.keyboard.press("Enter");
  await page.keyboard.press("ArrowUp");
  await focused("Delete operation").toBe(true);
});

test("an operation that others read is deleted only when that is said again", async () => {
  const page = await openPage(await newContext());
  const job = JSON.parse(sampleText);
  Object.assign(job.sheets[0].cells, { D7: "=Passes!B2+1", D8: "=Passes!B3", D9: "=D8" });
  await openJob(page, "sample.json", JSON.stringify(job));
  await page.getByRole("button", { name: /^20 Passes/ }).focus();
  await page.keyboard.press("Delete");
  const asked = page.getByRole("dialog", { name: "Delete Passes?" });
  await asked.getByText("2 formulas on other operations read it and will show an error.").waitFor();
  await page.keyboard.press("Escape");
  await asked.waitFor({ state: "hidden" });
  await page.getByRole("button", { name: /^20 Passes/ }).focus();
  await page.keyboard.press("Delete");
  await asked.getByRole("button", { name: "Delete it" }).click();
  await expect.poll(() => operations(page)).toEqual(["Thread"]);
  await page
    .getByRole("status")
    .filter({ hasText: "Undo takes it back" })
    .first()
    .waitFor({ state: "attached" });
});

test("a sign-off for another value is said, not counted, and given again in one press", async () => {
  const page = await openPage(await newContext());
  const box = page.getByRole("checkbox", { name: /^Sign off 40 Set-over/ });
  await box.click();
  await page.getByText("1 of 10 signed off").waitFor();
  await page.getByRole("gridcell", { name: "1/2-12 BSW", exact: true }).click();
  await page.keyboard.type("M12x1.75");
  await page.keyboard.press("Enter");
  await page
    .locator("route-card")
    .getByText(/^signed for another: 26\.50° then, 29\.\d+° now$/)
    .waitFor();
  await page.getByText("0 of 10 signed off").waitFor();
  expect(await box.isChecked()).toBe(false);
  await box.click();
  await page.getByText("1 of 10 signed off").waitFor();
  expect(await box.isChecked()).toBe(true);
  await page.getByRole("button", { name: "Undo", exact: true }).click();
  await page.getByText("0 of 10 signed off").waitFor();
  await page.getByRole("button", { name: "Undo", exact: true }).click();
  await page.getByText("1 of 10 signed off").waitFor();
});

test("Escape closes a message, and of files that are refused the newest is told only", async () => {
  const page = await openSample();
  for (const name of ["one.json", "two.json"]) {
    await openFile(page, name, "no job");
    await page.getByRole("alert").getByText(`${name} was not opened`).waitFor();
  }
  expect(await page.getByText(/was not opened/).count()).toBe(1);
  await page.getByRole("button", { name: "Skip to the sheet" }).focus();
  await page.keyboard.press("Enter");
  await page.keyboard.press("Escape");
  await expect.poll(() => page.getByText(/was not opened/).count()).toBe(0);
});

test("an operation can be added, moved and deleted, and undo takes each step back", async () => {
  const page = await openSample();
  await page.getByRole("button", { name: "Add operation" }).first().click();
  await expect.poll(() => operations(page)).toHaveLength(3);
  const added = (await operations(page))[2]!;
  await page.getByRole("button", { name: "Operation", exact: true }).click();
  await page.getByRole("button", { name: "Move up" }).click();
  await expect.poll(() => operations(page)).toEqual(["Thread", added, "Passes"]);
  await page.getByRole("button", { name: "Operation", exact: true }).click();
  await page.getByRole("button", { name: "Delete operation" }).click();
  await expect.poll(() => operations(page)).toEqual(["Thread", "Passes"]);
  await page.getByRole("button", { name: "Undo", exact: true }).click();
  await expect.poll(() => operations(page)).toEqual(["Thread", added, "Passes"]);
  await page.getByRole("button", { name: "Undo", exact: true }).click();
  await page.getByRole("button", { name: "Undo", exact: true }).click();
  await expect.poll(() => operations(page)).toEqual(["Thread", "Passes"]);
  expect(await page.getByRole("button", { name: "Undo", exact: true }).isDisabled()).toBe(true);
});

test("F6 goes from part to part of the page and back, and the skip link to the sheet", async () => {
  const page = await openSample();
  const inFocus = () =>
    page.evaluate(() => document.querySelector("half-angle")!.shadowRoot!.activeElement?.localName);
  await page.getByRole("button", { name: "Skip to the sheet" }).focus();
  await page.keyboard.press("Enter");
  expect(await inFocus()).toBe("sheet-grid");
  const ring = [];
  for (let step = 0; step < 5; step++) {
    await page.keyboard.press("F6");
    ring.push(await inFocus());
  }
  expect(ring).toEqual(["title-block", "route-card", "rail-words", "entry-line", "sheet-grid"]);
  await page.keyboard.press("Shift+F6");
  expect(await inFocus()).toBe("entry-line");
});

test("ground, large type and hand are remembered", async () => {
  const page = await openSample();
  // In large type the rail has no room for all its words.
  const look = page.getByRole("button", { name: /^(Look|More)$/ });
  await look.click();
  await page.getByRole("button", { name: "Slate" }).click();
  await look.click();
  await page.getByRole("button", { name: "Large type" }).click();
  await look.click();
  await page.getByRole("button", { name: "gloves, lathe stopped" }).click();
  await page.reload();
  const root = page.locator("html");
  expect(await root.getAttribute("data-theme")).toBe("slate");
  expect(await root.getAttribute("data-type")).toBe("large");
  expect(await root.getAttribute("data-hand")).toBe("gloves");
});

test("each operation remembers its active cell, also over a reload, and brings it back into view", async () => {
  const page = await openSample();
  await page.getByRole("button", { name: "Skip to the sheet" }).focus();
  await page.keyboard.press("Enter");
  for (let step = 0; step < 3; step++) await page.keyboard.press("PageDown");
  await page.keyboard.press("ArrowRight");
  const balloon = page.locator("entry-line .balloon");
  await expect.poll(() => balloon.textContent()).toMatch(/B\d\d/);
  const there = (await balloon.textContent())!.trim();
  await page.getByRole("button", { name: "20 Passes" }).click();
  await expect.poll(async () => (await balloon.textContent())?.trim()).toBe("A1");
  await page.getByRole("button", { name: "10 Thread" }).click();
  await expect.poll(async () => (await balloon.textContent())?.trim()).toBe(there);
  const row = page.getByRole("rowheader", { name: there.slice(1), exact: true });
  await expect
    .poll(() => row.evaluate((element) => element.getBoundingClientRect().bottom < innerHeight))
    .toBe(true);

  await page.reload();
  await page.getByRole("grid").first().waitFor();
  await expect.poll(async () => (await balloon.textContent())?.trim()).toBe(there);
});

test("undo in the sheet says what it took back", async () => {
  const page = await openSample();
  await page.getByRole("button", { name: "Skip to the sheet" }).focus();
  await page.keyboard.press("Enter");
  await page.keyboard.type("note");
  await page.keyboard.press("Enter");
  await page.keyboard.press("Control+z");
  await page
    .getByRole("status")
    .filter({ hasText: /^\s*Undone: .+A1/ })
    .first()
    .waitFor({ state: "attached" });
});

test("errors are counted on the route card, and an operation with one is signed off only when that is said again", async () => {
  const page = await openPage(await newContext());
  const job = JSON.parse(sampleText);
  Object.assign(job.sheets[1].cells, { D7: "=1/0", C12: '=SQRT("x")' });
  await openJob(page, "sample.json", JSON.stringify(job));
  await page.getByRole("button", { name: /^20 Passes 12, 2 errors/ }).waitFor();
  expect(await page.locator("route-card .tally").textContent()).toMatch(/2\s+errors/);
  const box = page.getByRole("checkbox", { name: "Sign off 20 Passes" });
  await box.click();
  const asked = page
    .getByRole("alert")
    .filter({ hasText: "20 Passes is not signed off: it holds 2 errors." });
  await asked.waitFor();
  expect(await box.isChecked()).toBe(false);
  await asked.getByRole("button", { name: "Go to the first error" }).click();
  const balloon = page.locator("entry-line .balloon");
  await expect.poll(async () => (await balloon.textContent())?.trim()).toBe("D7");
  expect(await asked.count()).toBe(0);
  await box.click();
  await asked.getByRole("button", { name: "Sign off all the same" }).click();
  await expect.poll(() => box.isChecked()).toBe(true);
  await page.getByText("1 of 2 signed off").waitFor();
  // From another operation the tally leads there too.
  await page.getByRole("button", { name: "10 Thread" }).click();
  await page.getByRole("button", { name: "Go to the first", exact: true }).click();
  await expect.poll(async () => (await balloon.textContent())?.trim()).toBe("D7");
  // Without an error nothing is asked.
  await page.getByRole("checkbox", { name: "Sign off 10 Thread" }).click();
  await page.getByText("2 of 2 signed off").waitFor();
});
