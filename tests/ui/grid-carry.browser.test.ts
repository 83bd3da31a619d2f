/** Cells that are copied, cut or filled keep their looks; text from elsewhere brings none. */
import { expect, test } from "vitest";
import { page, userEvent } from "vitest/browser";
import type { SheetDocument } from "../../src/job/document.ts";
import { writeJob } from "../../src/job/file.ts";
import { createJob, type Job } from "../../src/job/job.ts";
import { madeDocument, madeSheet } from "../job/made.ts";
import { cell, grid, keys, show } from "./grid-page.ts";
import { realJob, toolOf } from "./real-job.ts";

const shown = (name: string) => cell(name)!.textContent!.trim();
const status = page.getByRole("status");

const angle: Partial<SheetDocument> = {
  formats: { A1: { as: "dms", bold: true } },
  notes: { A1: "half the thread angle" },
  choices: { A1: ["29.5", "30"] },
};

async function pasteAt(row: number, column: number) {
  grid().goTo(row, column, { focus: true });
  await userEvent.paste();
}

test("a copied cell keeps its number format, looks, note and choices, in one step that undo takes back", async () => {
  const job = realJob({ A1: "29.5" }, angle);
  const start = writeJob(job.document);
  await show(job);
  await userEvent.copy();
  await pasteAt(2, 1);
  await expect.poll(() => shown("B3")).toBe("29°30′00″");
  expect(cell("B3")!.classList.contains("bold")).toBe(true);
  expect(job.cell("Tool", 2, 1)).toMatchObject({
    note: "half the thread angle",
    choices: ["29.5", "30"],
  });
  expect(job.steps).toHaveLength(1);
  await keys("{Control>}z{/Control}");
  await expect.poll(() => writeJob(job.document)).toBe(start);
});

test("the same text pasted again brings the format alone, and a cell without one takes it away", async () => {
  const job = realJob({ A1: "29.5", B1: "29.5", C1: "29.5" }, angle);
  await show(job);
  await userEvent.copy();
  await pasteAt(0, 1);
  await expect.poll(() => shown("B1")).toBe("29°30′00″");
  grid().goTo(0, 2, { focus: true });
  await userEvent.copy();
  await pasteAt(0, 1);
  await expect.poll(() => shown("B1")).toBe("29.5");
  expect(toolOf(job).formats).toEqual(angle.formats);
});

test("to another sheet and to another job the looks go along; what was cut in one job is copied to another", async () => {
  const two = (): Job =>
    createJob(madeDocument([madeSheet("Tool", { A1: "29.5" }, angle), madeSheet("Nut", {})]), []);
  const job = two();
  await show(job);
  await userEvent.copy();
  grid().sheet = "Nut";
  await grid().updateComplete;
  await pasteAt(1, 1);
  await expect.poll(() => job.cell("Nut", 1, 1).format).toEqual({ as: "dms", bold: true });
  grid().sheet = "Tool";
  await grid().updateComplete;
  grid().goTo(0, 0, { focus: true });
  await userEvent.cut();
  const other = createJob(madeDocument([madeSheet("Tool", { A1: "7" })]), []);
  grid().job = other;
  await grid().updateComplete;
  await pasteAt(2, 2);
  await expect.poll(() => shown("C3")).toBe("29°30′00″");
  expect(toolOf(other).cells).toEqual({ A1: "7", C3: "29.5" });
  expect(toolOf(job).cells).toEqual({ A1: "29.5" });
});

test("what is cut moves with its format, note and choices", async () => {
  const job = realJob({ A1: "29.5" }, angle);
  await show(job);
  await userEvent.cut();
  await pasteAt(2, 1);
  await expect.poll(() => shown("B3")).toBe("29°30′00″");
  const { formats, notes, choices } = toolOf(job);
  expect([formats, notes, choices]).toEqual([
    { B3: { as: "dms", bold: true } },
    { B3: "half the thread angle" },
    { B3: ["29.5", "30"] },
  ]);
});

test("text from elsewhere brings no format, not even the text that was copied here before", async () => {
  const formats = { ...angle.formats, C1: { as: "length" } } as const;
  const job = realJob({ A1: "29.5" }, { formats });
  await show(job);
  await userEvent.copy();
  await navigator.clipboard.writeText("29.5");
  await pasteAt(0, 1);
  await expect.poll(() => shown("B1")).toBe("29.5");
  await pasteAt(0, 2);
  await expect.poll(() => shown("C1")).toBe("29.5000 mm");
  await navigator.clipboard.write([
    new ClipboardItem({
      "text/html": new Blob(["<table><tr><td><b>29.5</b></td></tr></table>"], { type: "text/html" }),
      "text/plain": new Blob(["29.5"], { type: "text/plain" }),
    }),
  ]);
  await pasteAt(1, 1);
  await expect.poll(() => shown("B2")).toBe("29.5");
  expect(toolOf(job).formats).toEqual(formats);
});

test("copy and paste of the cell menu carry the looks as well", async () => {
  const job = realJob({ A1: "29.5" }, angle);
  await show(job);
  const choose = async (name: string) => {
    await keys("{Shift>}{F10}{/Shift}");
    await page.getByRole("menu").getByRole("menuitem", { name, exact: true }).click();
  };
  await choose("Copy");
  await expect.poll(() => navigator.clipboard.readText()).toBe("29.5");
  grid().goTo(3, 0, { focus: true });
  await choose("Paste");
  await expect.poll(() => shown("A4")).toBe("29°30′00″");
});

test("a blank stays one under a paste, and a locked cell refuses text and looks together", async () => {
  const job = realJob(
    { A1: "29.5", C1: "1" },
    { formats: { ...angle.formats, B1: { role: "input" } }, locked: ["C1"] },
  );
  await show(job);
  await userEvent.copy();
  await pasteAt(0, 1);
  await expect.poll(() => job.cell("Tool", 0, 1).format).toEqual({ as: "dms", bold: true, role: "input" });
  await pasteAt(0, 2);
  await expect.element(status).toHaveTextContent("C1 is locked");
  expect(job.steps).toHaveLength(1);
  expect(job.cell("Tool", 0, 2).format).toEqual({});
});

test("Control and D, Control and R, the fill handle and a double press on it fill with the format", async () => {
  const job = realJob({ A1: "29.5", B1: "1", B2: "2", B3: "3" }, angle);
  await show(job, "A2");
  await keys("{Control>}d{/Control}");
  await expect.poll(() => shown("A2")).toBe("29°30′00″");
  expect(job.steps).toHaveLength(1);
  job.undo();
  grid().goTo(0, 1, { focus: true });
  await keys("{Control>}r{/Control}");
  await expect.poll(() => shown("B1")).toBe("29°30′00″");
  job.undo();
  grid().goTo(0, 0, { focus: true });
  await grid().updateComplete;
  const handle = grid().shadowRoot!.querySelector<HTMLElement>(".fill")!;
  await userEvent.dblClick(page.elementLocator(handle));
  await expect.poll(() => [shown("A2"), shown("A3")]).toEqual(["29°30′00″", "29°30′00″"]);
  expect(job.steps).toHaveLength(1);
  // Notes and choices belong to their cell.
  expect([toolOf(job).notes, toolOf(job).choices]).toEqual([angle.notes, angle.choices]);
});
