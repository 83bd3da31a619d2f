/** Trial and Seek on the built page, driven by role, name and key alone. */
import type { Page } from "playwright-core";
import { expect, test } from "vitest";
import { faults } from "./axe.ts";
import { newContext, openJob, openPage, touchContext, useBrowser } from "./page.ts";
import { sampleJob, sampleText } from "./sample-job.ts";

useBrowser();

async function openSample(text = sampleText): Promise<Page> {
  const page = await openPage(await newContext());
  await openJob(page, "sample.json", text);
  await page.getByRole("button", { name: "20 Passes" }).waitFor();
  return page;
}

/** Stands in a cell of the sheet in hand, reached with the arrow keys from its first cell. */
async function stand(page: Page, down: number, right: number) {
  await page.getByRole("button", { name: "Skip to the sheet" }).focus();
  await page.keyboard.press("Enter");
  await page.keyboard.press("Control+Home");
  for (let i = 0; i < down; i++) await page.keyboard.press("ArrowDown");
  for (let i = 0; i < right; i++) await page.keyboard.press("ArrowRight");
  // What takes the focus next, without a key or a press, must not lose it to the cell that is still to be drawn.
  await expect
    .poll(() => cell(page, down + 1, right + 1).evaluate((element) => element.matches(":focus")))
    .toBe(true);
}

async function press(page: Page, word: string) {
  await page.getByRole("button", { name: word, exact: true }).focus();
  await page.keyboard.press("Enter");
}

function cell(page: Page, row: number, column: number) {
  return page.locator(
    `sheet-grid [role=gridcell][aria-rowindex="${row + 1}"][aria-colindex="${column + 1}"]`,
  );
}

test("a what-if table is made by keyboard, on a sheet of its own, and one undo takes it away", async () => {
  const page = await openSample();
  await stand(page, 4, 1);
  await press(page, "Trial");
  const dialog = page.getByRole("dialog", { name: "Trial: a what-if table" });
  expect(await dialog.getByLabel("Results").inputValue()).toBe("B5");
  await expect.poll(() => dialog.getByLabel("Cell to change").inputValue()).toBe("wanted");
  await dialog.getByLabel("Start", { exact: true }).focus();
  await page.keyboard.press("Control+a");
  await page.keyboard.type("1");
  await page.keyboard.press("Tab");
  await page.keyboard.type("0.5");
  await page.keyboard.press("Tab");
  await page.keyboard.type("4");
  await expect
    .poll(() => dialog.getByRole("status").textContent())
    .toBe("4 values, written to What if A1:B6. Undo takes the whole table away.");
  await page.keyboard.press("Enter");
  await dialog.waitFor({ state: "hidden" });
  await page.getByRole("button", { name: /^What if/ }).waitFor();
  // It is no operation: nobody signs it off, and it has no number.
  expect(await page.getByRole("checkbox", { name: /^Sign off/ }).count()).toBe(2);
  await page.getByText("0 of 2 signed off").waitFor();
  // Twice the values typed: 1, 1.5, 2, 2.5.
  await expect.poll(() => cell(page, 3, 2).textContent()).toBe("2");
  await expect.poll(() => cell(page, 6, 2).textContent()).toBe("5");
  await page.keyboard.press("Control+z");
  await page.getByRole("button", { name: /^What if/ }).waitFor({ state: "detached" });
  await page
    .getByRole("status")
    .filter({ hasText: /Undone: Made a what-if table of 4 values/ })
    .first()
    .waitFor({ state: "attached" });
});

test("a table of two inputs is written beside what is there, and never over it unasked", async () => {
  const page = await openSample();
  await page.getByRole("button", { name: "20 Passes" }).click();
  await stand(page, 0, 1);
  await press(page, "Trial");
  const dialog = page.getByRole("dialog");
  await dialog.getByLabel("Results").fill("B1");
  await dialog.getByRole("checkbox", { name: "a second input, across" }).check();
  const second = dialog.getByRole("group", { name: "Second input, across the table" });
  await second.getByLabel("Cell to change").fill("Thread!A4");
  await second.getByRole("combobox", { name: "Values" }).selectOption("a list");
  await second.getByLabel("Values, with semicolons between").fill("one; two");
  await dialog.getByRole("radio", { name: "from a cell of the job on" }).check();
  await dialog.getByLabel("Its first cell").fill("A1");
  const sum = () => dialog.getByRole("status").textContent();
  await expect.poll(sum).toBe("The table would cover what it is reckoned from.");
  await dialog.getByLabel("Its first cell").fill("A2");
  await expect.poll(sum).toBe("A2 is not empty.");
  await dialog.getByRole("button", { name: "Make the table" }).focus();
  await page.keyboard.press("Enter");
  expect(await dialog.isVisible()).toBe(true);
  await dialog.getByRole("checkbox", { name: "write over what is there" }).check();
  await expect.poll(sum).toMatch(/^22 values, written to Passes A2:C14/);
  await dialog.getByLabel("Its first cell").fill("D4");
  await expect.poll(sum).toMatch(/^22 values, written to Passes D4:F16/);
  await dialog.getByRole("button", { name: "Make the table" }).click();
  await dialog.waitFor({ state: "hidden" });
  // Wanted from 3 by 0.2: three times that, whatever stands in A4.
  await expect.poll(() => cell(page, 6, 5).textContent()).toBe("9");
  await expect.poll(() => cell(page, 7, 6).textContent()).toBe("9.6");
});

test("an input is sought by keyboard, shown, kept, and taken back by one undo", async () => {
  const page = await openSample();
  await page.getByRole("button", { name: "20 Passes" }).click();
  await stand(page, 0, 1);
  await press(page, "Seek");
  const dialog = page.getByRole("dialog", { name: "Seek: the input for a wanted value" });
  expect(await dialog.getByLabel("Cell", { exact: true }).inputValue()).toBe("B1");
  await expect.poll(() => dialog.getByLabel("By changing").inputValue()).toBe("wanted");
  // The focus is where the wanted value goes.
  await page.keyboard.type("7.5");
  await page.keyboard.press("Enter");
  await expect.poll(() => dialog.getByRole("status").textContent()).toBe("Found: wanted 2.5 gives B1 7.5.");
  await page.keyboard.press("Enter");
  await dialog.waitFor({ state: "hidden" });
  await expect.poll(() => cell(page, 1, 2).textContent()).toBe("7.5");
  await page
    .getByRole("status")
    .filter({ hasText: "Sought Passes!B1 7.5 by wanted: 2.5" })
    .first()
    .waitFor({ state: "attached" });
  await page.keyboard.press("Control+z");
  await expect.poll(() => cell(page, 1, 2).textContent()).toBe("12");
});

test("what has no solution is said in a sentence, and Escape leads back to the job", async () => {
  const page = await openSample();
  await page.getByRole("button", { name: "20 Passes" }).click();
  await stand(page, 0, 1);
  await press(page, "Seek");
  const dialog = page.getByRole("dialog");
  const said = () => dialog.getByRole("status").textContent();
  await page.keyboard.type("100");
  await page.keyboard.press("Enter");
  await expect
    .poll(said)
    .toBe("No solution: with wanted from 0 to 8, B1 goes from 0 to 24; nearest is 24 at 8.");
  await dialog.getByLabel("Shall show").fill("five");
  await page.keyboard.press("Enter");
  await expect.poll(said).toBe("The wanted value and the limits must be numbers.");
  await dialog.getByLabel("Cell", { exact: true }).fill("Nowhere!B1");
  await page.keyboard.press("Enter");
  await expect.poll(said).toBe('Cell: there is no sheet "Nowhere".');
  await page.keyboard.press("Escape");
  await dialog.waitFor({ state: "hidden" });
  await expect.poll(() => cell(page, 1, 2).textContent()).toBe("12");
});

/** While a table is under way the page shares its thread with it. */
const patience = { timeout: 20_000 };

/** A sheet whose table takes long enough to be seen at work on any computer: 1,500 values of 90 pass plans each. */
function slowJob(): string {
  const plan = 'PASS.PLAN(A1,27,55,0.29,0.02,0.3,0.06,0.04,0.02,27.5,"radius","radius",2,50)';
  const cells: Record<string, string> = {
    A1: "1.3",
    B1: `=${Array.from({ length: 90 }, () => `INDEX(${plan},3,7)`).join("+")}`,
  };
  for (let row = 1; row <= 1500; row++) {
    cells[`D${row}`] = String(1 + row / 3000);
    cells[`E${row}`] = `=MULTIPLE.OPERATIONS($B$1,$A$1,D${row})`;
  }
  const [first, second] = sampleJob.sheets;
  const sheets = [
    { ...first, result: "A1", rows: 1500, cells, formats: {} },
    { ...second, cells: {}, formats: {} },
  ];
  return JSON.stringify({ ...sampleJob, names: {}, sheets });
}

test("while a long table is reckoned the page can be used, tells how far it is, and can stop and go on", async () => {
  const page = await openSample(slowJob());
  const progress = page.getByRole("progressbar", { name: "Values reckoned" });
  const told = async () => Number(await progress.getAttribute("value"));
  await progress.waitFor();
  // Typing works meanwhile.
  await stand(page, 0, 5);
  await page.keyboard.type("=1+1");
  await page.keyboard.press("Enter");
  await expect.poll(() => cell(page, 1, 6).textContent(), patience).toBe("2");
  await page.getByRole("button", { name: "Stop" }).focus();
  await page.keyboard.press("Enter");
  await page.getByText(/^Stopped, [\d,]+ of 1,500 values$/).waitFor();
  const stopped = await told();
  expect(stopped).toBeLessThan(1500);
  await stand(page, 0, 0);
  await page.keyboard.press("Control+End");
  const last = cell(page, 1500, 5);
  await last.waitFor();
  expect(await last.getAttribute("aria-description")).toBe("not reckoned yet");
  expect(await last.textContent()).toBe("");
  expect(await faults(page)).toEqual([]);
  expect(await told()).toBe(stopped);
  await page.getByRole("button", { name: "Go on" }).focus();
  await page.keyboard.press("Enter");
  await expect.poll(told, patience).toBeGreaterThan(stopped);
});

test.each(["paper", "slate"])("axe finds nothing wrong with both panels on %s", async (ground) => {
  const context = await newContext({ colorScheme: ground === "slate" ? "dark" : "light" });
  const page = await openPage(context);
  await openJob(page, "sample.json", sampleText);
  await page.getByRole("button", { name: "20 Passes" }).click();
  await stand(page, 0, 1);
  await press(page, "Trial");
  await page.getByRole("checkbox", { name: "a second input, across" }).check();
  expect(await faults(page)).toEqual([]);
  await page.keyboard.press("Escape");
  await press(page, "Seek");
  await page.keyboard.type("7.5");
  await page.keyboard.press("Enter");
  await page.getByRole("button", { name: /^Keep/ }).waitFor();
  expect(await faults(page)).toEqual([]);
});

test.each([
  { name: "a tablet", width: 1180, height: 820 },
  { name: "a phone", width: 390, height: 844 },
])("on $name both panels fit the window, and fingers find their fields", async ({ width, height }) => {
  const page = await openPage(await touchContext(width, height));
  for (const word of ["Trial", "Seek"]) {
    await page.getByRole("button", { name: "More", exact: true }).click();
    await page.getByRole("button", { name: word, exact: true }).click();
    const dialog = page.getByRole("dialog");
    await dialog.waitFor();
    const box = (await dialog.boundingBox())!;
    expect(box.x).toBeGreaterThanOrEqual(0);
    expect(box.x + box.width).toBeLessThanOrEqual(width);
    expect(box.y + box.height).toBeLessThanOrEqual(height);
    const low = await dialog
      .locator("input:not([type=checkbox]):not([type=radio]), select, button")
      .evaluateAll((all) =>
        all.filter((one) => one.getBoundingClientRect().height < 48).map((one) => one.outerHTML),
      );
    expect(low).toEqual([]);
    expect(await faults(page)).toEqual([]);
    await page.keyboard.press("Escape");
    await dialog.waitFor({ state: "hidden" });
  }
});
