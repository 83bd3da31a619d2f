import { expect, test } from "vitest";
import { page, userEvent } from "vitest/browser";
import { largestSheet } from "../../src/job/changes.ts";
import { cell, click, focused, grid, keys, selected, show } from "./grid-page.ts";
import { realJob, toolOf } from "./real-job.ts";

const menu = page.getByRole("menu");
const item = (name: string | RegExp) => menu.getByRole("menuitem", { name, exact: typeof name === "string" });
const dialog = page.getByRole("dialog");
const status = page.getByRole("status");

/** Words of what has the focus. */
function inHand(): string | undefined {
  let at = document.activeElement;
  while (at?.shadowRoot?.activeElement) at = at.shadowRoot.activeElement;
  return at?.textContent?.trim();
}

/** Opens the cell menu from the keyboard and chooses one of its commands. */
async function choose(name: string | RegExp) {
  await keys("{Shift>}{F10}{/Shift}");
  await item(name).click();
}

test("Shift and F10 open the cell menu, its keys go through it, and Escape gives the focus back to the cell", async () => {
  await show(realJob({ B2: "1" }), "B2");
  await keys("{Shift>}{F10}{/Shift}");
  await expect.element(menu).toHaveAccessibleName("Commands for cell B2");
  await expect.poll(inHand).toMatch(/^Cut/);
  await keys("{ArrowDown}");
  await expect.poll(inHand).toMatch(/^Copy/);
  await keys("{End}{ArrowDown}");
  await expect.poll(inHand).toMatch(/^Cut/);
  await keys("form");
  await expect.poll(inHand).toBe("Format...");
  await keys("{Escape}");
  await expect.element(menu).not.toBeInTheDocument();
  await expect.poll(focused).toBe("B2");
});

test("the menu key and a right click open it too, and a right click chooses its cell first", async () => {
  await show(realJob({}));
  await keys("{ContextMenu}");
  await expect.element(menu).toBeVisible();
  await keys("{Escape}");
  await userEvent.click(page.elementLocator(cell("C4")!), { button: "right" });
  await expect.element(menu).toHaveAccessibleName("Commands for cell C4");
});

test("Alt and Insert put a row in, Alt and Delete take it out, and references follow", async () => {
  const job = realJob({ A1: "1", A2: "2", B1: "=A2*2" });
  await show(job, "A2");
  await keys("{Alt>}{Insert}{/Alt}");
  await expect.poll(() => toolOf(job).cells).toEqual({ A1: "1", A3: "2", B1: "=A3*2" });
  await expect.element(status).toHaveTextContent("Inserted row 2 in Tool");
  await keys("{Alt>}{Delete}{/Alt}");
  await expect.poll(() => toolOf(job).cells).toEqual({ A1: "1", A2: "2", B1: "=A2*2" });
});

test("with Shift the same keys put columns in and take them out, as many as are chosen", async () => {
  const job = realJob({ B1: "2", C1: "=B1" });
  await show(job, "B1");
  await keys("{Shift>}{ArrowRight}{/Shift}{Alt>}{Shift>}{Insert}{/Shift}{/Alt}");
  await expect.poll(() => toolOf(job).cells).toEqual({ D1: "2", E1: "=D1" });
  await keys("{Alt>}{Shift>}{Delete}{/Shift}{/Alt}");
  await expect.poll(() => toolOf(job).cells).toEqual({ B1: "2", C1: "=B1" });
});

test("Alt, Shift and an arrow move the chosen row, and the choice goes with it", async () => {
  const job = realJob({ A1: "a", A2: "b", B1: "=A2" });
  await show(job, "A2");
  await keys("{Alt>}{Shift>}{ArrowUp}{/Shift}{/Alt}");
  await expect.poll(() => toolOf(job).cells).toEqual({ A1: "b", A2: "a", B2: "=A1" });
  await expect.poll(focused).toBe("A1");
});

test("a table is sorted by the column of the cell in hand", async () => {
  const job = realJob({ A1: "x", B1: "3", A2: "y", B2: "1", A3: "z", B3: "2" });
  await show(job, "B2");
  await choose("Sort by column B, smallest first");
  await expect
    .poll(() => toolOf(job).cells)
    .toEqual({ A1: "y", B1: "1", A2: "z", B2: "2", A3: "x", B3: "3" });
  await expect.poll(selected).toBe("A1:B3");
});

test("with one column chosen the rows of the table go with it", async () => {
  const job = realJob({ A1: "x", B1: "3", A2: "y", B2: "1" });
  await show(job, "B1");
  await keys("{Shift>}{ArrowDown}{/Shift}");
  await choose("Sort by column B, smallest first");
  await expect.poll(() => toolOf(job).cells).toEqual({ A1: "y", B1: "1", A2: "x", B2: "3" });
});

test("with a whole column chosen no command speaks of all rows, and the key for rows means the column", async () => {
  const job = realJob({ A1: "1", B1: "2" });
  await show(job);
  await keys("{Control>} {/Control}{Shift>}{F10}{/Shift}");
  await expect.element(item("Delete column")).toBeVisible();
  expect(menu.getByRole("menuitem", { name: /200 rows/ }).elements()).toEqual([]);
  await keys("{Escape}");
  await expect.poll(focused).toBe("A1");
  await keys("{Alt>}{Delete}{/Alt}");
  await expect.poll(() => toolOf(job).cells).toEqual({ A1: "2" });
});

test("hidden rows are passed over by the arrow keys and can be shown again", async () => {
  const job = realJob({ A1: "1", A4: "4" });
  await show(job, "A2");
  await keys("{Shift>}{ArrowDown}{/Shift}");
  await choose("Hide 2 rows");
  await expect.poll(() => cell("A2")).toBeNull();
  await expect.poll(focused).toBe("A4");
  await keys("{ArrowUp}");
  await expect.poll(focused).toBe("A1");
  const [first, fourth] = [cell("A1")!, cell("A4")!].map((one) => one.getBoundingClientRect());
  expect(fourth!.top).toBeCloseTo(first!.bottom, 0);
  await choose("Show hidden rows");
  await expect.poll(() => cell("A2")).not.toBeNull();
  grid().goTo(2, 0, { focus: true });
  await expect.poll(focused).toBe("A3");
  job.undo();
  await expect.poll(focused).toBe("A4");
});

test("frozen rows and columns stay in view while the sheet scrolls, and can still be pressed", async () => {
  const job = realJob({ A1: "corner", B1: "top", A2: "side", B90: "far" });
  await show(job, "B2");
  await choose("Freeze what is above and left of B2");
  await expect.poll(() => toolOf(job).freeze).toBe("B2");
  grid().goTo(150, 20, { focus: true });
  await expect.poll(focused).toBe("U151");
  const box = grid().getBoundingClientRect();
  const seen = (name: string) => {
    const at = cell(name)?.getBoundingClientRect();
    return at !== undefined && at.top >= box.top && at.left >= box.left && at.bottom <= box.bottom + 1;
  };
  await expect.poll(() => ["A1", "U1", "A151", "U151"].filter((name) => !seen(name))).toEqual([]);
  await click("U1");
  await expect.poll(focused).toBe("U1");
  await choose("Let all of it scroll");
  await expect.poll(() => toolOf(job).freeze).toBeUndefined();
});

test("lines that would fill the view are not frozen in it", async () => {
  await show(realJob({ A30: "1" }, { freeze: "A29" }), "A30");
  await expect.poll(focused).toBe("A30");
  expect(grid().shadowRoot!.querySelector(".frozen")).toBeNull();
});

test("what was cut is marked, and moves with its references when it is pasted", async () => {
  const job = realJob({ A1: "5", B1: "=A1*2", C1: "=SUM(A1:B1)" });
  await show(job);
  await keys("{Shift>}{ArrowRight}{/Shift}");
  await userEvent.cut();
  await expect.poll(() => grid().shadowRoot!.querySelector(".held")!.hasAttribute("hidden")).toBe(false);
  expect(toolOf(job).cells.A1).toBe("5");
  grid().goTo(4, 3, { focus: true });
  await userEvent.paste();
  await expect.poll(() => toolOf(job).cells).toEqual({ D5: "5", E5: "=D5*2", C1: "=SUM(D5:E5)" });
  expect(job.steps).toHaveLength(1);
  await expect.element(status).toHaveTextContent("Moved A1:B1 of Tool to D5");
});

test("Escape drops the mark of what was copied", async () => {
  await show(realJob({ A1: "5" }));
  await userEvent.copy();
  const held = () => grid().shadowRoot!.querySelector(".held")!.hasAttribute("hidden");
  await expect.poll(held).toBe(false);
  await keys("{Escape}");
  await expect.poll(held).toBe(true);
});

test("copy in the cell menu copies, with the table for other programs and the formula for here", async () => {
  const job = realJob({ A1: "2", B1: "=A1*3" });
  await show(job, "B1");
  await choose("Copy");
  await expect.poll(() => navigator.clipboard.readText()).toBe("6");
  grid().goTo(1, 1, { focus: true });
  await expect.poll(focused).toBe("B2");
  await choose("Paste");
  await expect.poll(() => toolOf(job).cells.B2).toBe("=A2*3");
});

test("a table of another program is pasted as its words, decimal commas as points, never as markup", async () => {
  const job = realJob({});
  await show(job);
  const html =
    "<table><tr><td>12,5</td><td><b>M10</b> &amp; <i>nut</i></td></tr><tr><td>1,234</td><td>x</td></tr></table>";
  await navigator.clipboard.write([
    new ClipboardItem({
      "text/html": new Blob([html], { type: "text/html" }),
      "text/plain": new Blob(["12,5 M10"], { type: "text/plain" }),
    }),
  ]);
  await userEvent.paste();
  await expect.poll(() => toolOf(job).cells).toEqual({ A1: "12.5", B1: "M10 & nut", A2: "1.234", B2: "x" });
});

test("a very large paste asks first, and a sheet grows for one that is past its end", async () => {
  const job = realJob({});
  await show(job);
  await navigator.clipboard.writeText(Array.from({ length: 6000 }, (_, i) => String(i)).join("\n"));
  await userEvent.paste();
  await expect.element(dialog).toHaveTextContent("6000 cells");
  await dialog.getByRole("button", { name: "Cancel" }).click();
  expect(toolOf(job).cells).toEqual({});
  await expect.poll(focused).toBe("A1");
  await navigator.clipboard.writeText(Array.from({ length: 300 }, (_, i) => String(i)).join("\n"));
  await userEvent.paste();
  await expect.poll(() => toolOf(job).rows).toBe(300);
  await expect.element(status).toHaveTextContent("Pasted 300 by 1 cells at A1:A300");
});

test("what is pasted past the largest sheet is left out, and that is said", async () => {
  const last = `A${largestSheet.rows}`;
  const job = realJob({}, { rows: largestSheet.rows });
  await show(job, last);
  await navigator.clipboard.writeText("1\n2");
  await userEvent.paste();
  await expect.element(status).toHaveTextContent("what lies past the largest sheet is left out");
  expect(toolOf(job).cells).toEqual({ [last]: "1" });
});

test("Control and D fill the cell in hand from the one above, and two numbers go on in steps", async () => {
  const job = realJob({ A1: "=B1", C1: "1", C2: "1.5" });
  await show(job, "A2");
  await keys("{Control>}d{/Control}");
  await expect.poll(() => toolOf(job).cells.A2).toBe("=B2");
});

test("the fill handle drags what is chosen into the cells it passes", async () => {
  const job = realJob({ A1: "1", A2: "3" });
  await show(job);
  await keys("{Shift>}{ArrowDown}{/Shift}");
  await drag(grid().shadowRoot!.querySelector<HTMLElement>(".fill")!, cell("A5")!);
  await expect.poll(() => toolOf(job).cells).toEqual({ A1: "1", A2: "3", A3: "5", A4: "7", A5: "9" });
  await expect.poll(selected).toBe("A1:A5");
});

test("the edge of a column is dragged to a width, in one step, and pressed twice fits its contents", async () => {
  const job = realJob({ A1: "short", A2: "a good deal longer than the column is wide" });
  await show(job);
  const edge = grid().shadowRoot!.querySelector<HTMLElement>("[data-column='0']")!;
  const at = edge.getBoundingClientRect();
  await drag(edge, { x: at.x + at.width / 2 + 60, y: at.y + 5 });
  await expect.poll(() => toolOf(job).columns.A).toBe(156);
  expect(job.steps).toHaveLength(1);
  await userEvent.dblClick(page.elementLocator(edge));
  await expect.poll(() => toolOf(job).columns.A).toBeGreaterThan(250);
  const text = cell("A2")!;
  await expect.poll(() => text.scrollWidth <= text.clientWidth).toBe(true);
});

test("the width of a column is set by keyboard alone", async () => {
  const job = realJob({});
  await show(job, "B1");
  await choose("Width of column...");
  const field = dialog.getByRole("textbox", { name: /^Width, px/ });
  await userEvent.fill(field, "9");
  await keys("{Enter}");
  await expect.element(dialog.getByRole("alert")).toHaveTextContent("A width is a number from 24 to 1000.");
  await userEvent.fill(field, "200");
  await keys("{Enter}");
  await expect.poll(() => toolOf(job).columns.B).toBe(200);
  await expect.poll(focused).toBe("B1");
});

test("Control and B makes the chosen cells bold, and again no longer", async () => {
  const job = realJob({ A1: "1" });
  await show(job);
  await keys("{Control>}b{/Control}");
  await expect.poll(() => cell("A1")!.classList.contains("bold")).toBe(true);
  await keys("{Control>}b{/Control}");
  await expect.poll(() => cell("A1")!.classList.contains("bold")).toBe(false);
});

test("a format is set from one question, in one step", async () => {
  const job = realJob({ B2: "92" });
  await show(job, "B2");
  await choose("Format...");
  await userEvent.selectOptions(
    dialog.getByRole("combobox", { name: "Show numbers as" }),
    "dial turns and divisions",
  );
  await userEvent.fill(dialog.getByRole("textbox", { name: /^Divisions in a turn/ }), "40");
  await dialog.getByRole("checkbox", { name: "line at the bottom" }).click();
  await dialog.getByRole("button", { name: "Set" }).click();
  await expect.element(page.getByRole("gridcell", { name: "2 turns + 12" })).toBeVisible();
  expect(toolOf(job).formats).toEqual({ B2: { as: "turns", perTurn: 40, border: ["bottom"] } });
  expect(job.steps).toHaveLength(1);
});

test("a note is written with Alt and N, and the cell tells it", async () => {
  const job = realJob({});
  await show(job, "B2");
  await keys("{Alt>}n{/Alt}");
  await userEvent.fill(dialog.getByRole("textbox", { name: "Note" }), "over the wires, twice");
  await dialog.getByRole("button", { name: "Keep" }).click();
  await expect.poll(() => cell("B2")!.getAttribute("aria-description")).toBe("over the wires, twice");
});

test("choices and limits are set in one step, and a value outside is kept with a caution that is said", async () => {
  const job = realJob({});
  await show(job, "B2");
  await choose("Choices and limits...");
  await userEvent.fill(dialog.getByRole("textbox", { name: /^Least/ }), "20");
  await userEvent.fill(dialog.getByRole("textbox", { name: /^Most/ }), "10");
  await dialog.getByRole("button", { name: "Set" }).click();
  await expect.element(dialog.getByRole("alert")).toHaveTextContent("The least, 20, is over the most, 10.");
  await userEvent.fill(dialog.getByRole("textbox", { name: /^Least/ }), "2");
  await dialog.getByRole("button", { name: "Set" }).click();
  await expect.poll(focused).toBe("B2");
  expect(job.steps).toHaveLength(1);
  await keys("12{Enter}");
  await expect.element(status).toHaveTextContent("Caution: over the most allowed, 10");
  expect(toolOf(job).cells.B2).toBe("12");
  await expect.poll(() => cell("B2")!.classList.contains("caution")).toBe(true);
});

test("a chosen range is named, and a name that cannot be used is refused in the question", async () => {
  const job = realJob({ A1: "1", A2: "2" });
  await show(job);
  await keys("{Shift>}{ArrowDown}{/Shift}");
  await choose("Name A1:A2...");
  const field = dialog.getByRole("textbox", { name: /^Name/ });
  await userEvent.fill(field, "M10");
  await keys("{Enter}");
  await expect.element(dialog.getByRole("alert")).toHaveTextContent("M10 reads as a cell: write M_10.");
  await userEvent.fill(field, "wires");
  await keys("{Enter}");
  await expect.poll(() => job.document.names).toEqual({ wires: "Tool!A1:A2" });
});

test("a locked cell takes no typing and says so, and can be unlocked", async () => {
  const job = realJob({ A1: "=1+1" });
  await show(job);
  await choose("Lock all formulas");
  await expect.poll(() => cell("A1")!.getAttribute("aria-readonly")).toBe("true");
  await keys("5");
  await expect.element(status).toHaveTextContent("A1 is locked: unlock it in the cell menu");
  await keys("{Delete}");
  await expect.element(status).toHaveTextContent("A1 is locked: unlock it first");
  await choose("Unlock");
  await expect.poll(() => cell("A1")!.hasAttribute("aria-readonly")).toBe(false);
  await keys("5{Enter}");
  await expect.poll(() => toolOf(job).cells.A1).toBe("5");
});

test("two cells are merged and split again", async () => {
  const job = realJob({ A1: "wide" });
  await show(job);
  await keys("{Shift>}{ArrowRight}{/Shift}");
  await choose("Merge");
  await expect.poll(() => cell("A1")!.getAttribute("aria-colspan")).toBe("2");
  await choose("Split merged cells");
  await expect.poll(() => cell("A1")!.hasAttribute("aria-colspan")).toBe(false);
});

test("Alt and Enter break the line in a text", async () => {
  const job = realJob({});
  await show(job);
  await keys("one{Alt>}{Enter}{/Alt}two{Enter}");
  await expect.poll(() => toolOf(job).cells.A1).toBe("one\ntwo");
});

test("while a formula waits for a cell, a press gives its address, and a drag its range", async () => {
  const job = realJob({ A1: "1", A2: "2" });
  await show(job, "C1");
  await keys("=SUM(");
  await click("A1");
  const field = page.getByRole("textbox", { name: "Cell C1" });
  await expect.element(field).toHaveValue("=SUM(A1");
  await click("A2");
  await expect.element(field).toHaveValue("=SUM(A2");
  await drag(cell("A1")!, cell("A2")!);
  await expect.element(field).toHaveValue("=SUM(A1:A2");
  await keys("){Enter}");
  await expect.poll(() => job.cell("Tool", 0, 2).value).toBe(3);
});

test("a quantity becomes the number in the cell, and the entry line shows it as typed", async () => {
  const job = realJob({}, { formats: { B1: { as: "length" } } });
  await show(job, "B1");
  await keys('1/2"');
  await expect.element(page.getByRole("group", { name: "Gives" })).toHaveTextContent("gives 12.7000 mm");
  await keys("{Enter}{ArrowUp}");
  await expect.element(page.getByRole("gridcell", { name: "12.7000 mm" })).toBeVisible();
  await expect.element(page.getByRole("textbox", { name: "Entry line" })).toHaveValue('1/2"');
});

/** Drags with the mouse from the middle of one element to the middle of another, or to a point. */
async function drag(from: HTMLElement, to: HTMLElement | { x: number; y: number }) {
  const middle = (one: HTMLElement) => {
    const box = one.getBoundingClientRect();
    return { x: box.x + box.width / 2, y: box.y + box.height / 2 };
  };
  const start = middle(from);
  const end = to instanceof HTMLElement ? middle(to) : to;
  const scroller = grid().shadowRoot!.querySelector(".scroll")!;
  const fire = (target: Element, type: string, at: { x: number; y: number }) =>
    target.dispatchEvent(
      new PointerEvent(type, {
        bubbles: true,
        composed: true,
        cancelable: true,
        isPrimary: true,
        pointerId: 1,
        pointerType: "mouse",
        clientX: at.x,
        clientY: at.y,
      }),
    );
  const captured = scroller.setPointerCapture;
  // There is no real pointer to capture.
  scroller.setPointerCapture = () => {};
  fire(from, "pointerdown", start);
  for (const part of [0.3, 0.7, 1])
    fire(scroller, "pointermove", {
      x: start.x + (end.x - start.x) * part,
      y: start.y + (end.y - start.y) * part,
    });
  fire(scroller, "pointerup", end);
  scroller.setPointerCapture = captured;
  await grid().updateComplete;
}
