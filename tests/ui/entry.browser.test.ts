import { expect, test } from "vitest";
import { page, userEvent } from "vitest/browser";
import { fakeJob } from "./fake-job.ts";
import { cell, click, entry, focused, grid, keys, show } from "./grid-page.ts";
import { setOver, setOverNames, setOverSheet } from "./set-over.ts";

const setOverJob = () => fakeJob(setOver, setOverSheet, setOverNames);
const line = page.getByRole("region", { name: "Entry line" });

test("the entry line shows the cell as typed, what it gives, and what its formula names", async () => {
  await show(setOverJob(), "B11");
  await expect.element(entry).toHaveValue("=FLANK.INFEED(depth, setover)");
  await expect.element(line.getByText("B11")).toBeVisible();
  await expect.element(page.getByRole("group", { name: "Gives" })).toHaveTextContent("1.5212 mm");
  const values = page.getByRole("list", { name: "Values in the formula" });
  await expect.element(values).toHaveTextContent(/depth.*1\.3554 mm.*setover.*27\.0°/);
});

test("an error is told in full, in words", async () => {
  await show(setOverJob(), "B20");
  await expect
    .element(line.getByText("Setover must be under 90, got 95. It began in Tool!B18."))
    .toBeVisible();
  await expect.element(page.getByRole("group", { name: "Gives" })).toHaveTextContent("#NUM!");
});

test("the caution of a cell stands in the lane", async () => {
  await show(setOverJob(), "B19");
  await expect.element(line.getByText("0.5 degrees past the flank.")).toBeVisible();
});

test("what is typed in the entry line shows in the cell, Enter keeps it and goes on in the grid", async () => {
  const job = fakeJob({ B2: { text: "12" } });
  await show(job, "B2");
  await userEvent.fill(entry, "1.75");
  await expect.poll(() => cell("B2")!.textContent?.trim()).toBe("1.75");
  await keys("{Enter}");
  await expect.poll(focused).toBe("B3");
  expect(job.text("B2")).toBe("1.75");
});

test("what is typed in the cell shows in the entry line", async () => {
  await show(fakeJob({}), "B2");
  await keys("25.4");
  await expect.element(entry).toHaveValue("25.4");
});

test("the same edit goes on when the caret goes from the cell to the entry line", async () => {
  const job = fakeJob({});
  await show(job, "B2");
  await keys("25");
  await userEvent.click(entry);
  expect(job.commands).toHaveLength(0);
  await keys("{End}.4{Enter}");
  await expect.poll(() => job.text("B2")).toBe("25.4");
  expect(job.commands).toHaveLength(1);
});

test("Keep and Drop are there while something is edited", async () => {
  const job = fakeJob({});
  await show(job, "B2");
  await expect.element(page.getByRole("button", { name: "Keep" })).not.toBeInTheDocument();
  await userEvent.fill(entry, "1.75");
  await userEvent.click(page.getByRole("button", { name: "Drop" }));
  await expect.poll(focused).toBe("B2");
  expect(job.text("B2")).toBe("");
  await userEvent.fill(entry, "1.5");
  await userEvent.click(page.getByRole("button", { name: "Keep" }));
  await expect.poll(focused).toBe("B3");
  expect(job.text("B2")).toBe("1.5");
});

test("Escape in the entry line drops what was typed", async () => {
  const job = fakeJob({ B2: { text: "12" } });
  await show(job, "B2");
  await userEvent.fill(entry, "99");
  await keys("{Escape}");
  await expect.poll(focused).toBe("B2");
  await expect.element(entry).toHaveValue("12");
  expect(job.commands).toHaveLength(0);
});

test("a click on a cell keeps what was typed in the entry line", async () => {
  const job = fakeJob({});
  await show(job, "B2");
  await userEvent.fill(entry, "1.75");
  await click("D6");
  await expect.poll(() => job.text("B2")).toBe("1.75");
  await expect.element(entry).toHaveValue("");
});

test("a formula says what it would give while it is typed", async () => {
  await show(fakeJob({ A1: { text: "42" } }), "B2");
  await userEvent.fill(entry, "=A1");
  await expect.element(page.getByRole("group", { name: "Gives" })).toHaveTextContent("42");
});

test("a choice typed in any case is kept as it is listed", async () => {
  const job = setOverJob();
  await show(job, "B6");
  await userEvent.fill(entry, "SQUARE to the bed");
  await keys("{Enter}");
  await expect.poll(() => job.text("B6")).toBe("square to the bed");
});

test("the entry line follows when others change the cell or stand on another one", async () => {
  const job = fakeJob({ B2: { text: "12" }, C3: { text: "7" } });
  await show(job, "B2");
  job.setCells([{ sheet: "Tool", row: 1, column: 1, text: "13" }]);
  await expect.element(entry).toHaveValue("13");
  grid().session.stand({ sheet: "Tool", row: 2, column: 2 });
  await expect.element(entry).toHaveValue("7");
  await expect.poll(() => cell("C3")!.getAttribute("aria-selected")).toBe("true");
});

test.each([
  [1280, 800],
  [1180, 820],
  [390, 844],
])("at %i by %i nothing of the entry line or the grid sticks out", async (width, height) => {
  await page.viewport(width, height);
  await show(setOverJob(), "B11");
  await keys("{F2}");
  for (const part of ["entry-line", "sheet-grid"]) {
    const box = document.querySelector(part)!.getBoundingClientRect();
    expect(box.right).toBeLessThanOrEqual(width);
  }
  expect(document.documentElement.scrollWidth).toBeLessThanOrEqual(width);
  const keep = page.getByRole("button", { name: "Keep" }).element().getBoundingClientRect();
  expect(keep.right).toBeLessThanOrEqual(width);
  await keys("{Escape}");
  await page.viewport(1280, 800);
});
