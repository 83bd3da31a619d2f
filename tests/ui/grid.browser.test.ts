import axe from "axe-core";
import { expect, test } from "vitest";
import { page, userEvent } from "vitest/browser";
import { EditSession } from "../../src/ui/edit-session.ts";
import { fakeJob } from "./fake-job.ts";
import { cell, click, focused, grid, keys, selected, show } from "./grid-page.ts";
import { setOver, setOverNames, setOverSheet } from "./set-over.ts";

const setOverJob = () => fakeJob(setOver, setOverSheet, setOverNames);

test("rows, columns and cells have the roles and indexes of a grid whose heads count as the first", async () => {
  await show(setOverJob());
  const element = page.getByRole("grid", { name: "Sheet Tool" });
  await expect.element(element).toHaveAttribute("aria-rowcount", "201");
  await expect.element(element).toHaveAttribute("aria-colcount", "27");
  await expect
    .element(page.getByRole("columnheader", { name: "A", exact: true }))
    .toHaveAttribute("aria-colindex", "2");
  await expect
    .element(page.getByRole("rowheader", { name: "1", exact: true }))
    .toHaveAttribute("aria-rowindex", "2");
  const title = page.getByRole("gridcell", { name: "Angle of the top slide" });
  await expect.element(title).toHaveAttribute("aria-rowindex", "2");
  await expect.element(title).toHaveAttribute("aria-colindex", "2");
  await expect.element(title).toHaveAttribute("aria-selected", "true");
  expect(cell("B3")?.parentElement?.ariaRowIndex).toBe("4");
});

test("the name of a cell is what it shows, with its unit", async () => {
  await show(setOverJob());
  for (const name of ["27.5°", "0.02 mm", "100 div", "1.5212 mm", "226 rev/min", "63.0°", "along the bed"]) {
    await expect.element(page.getByRole("gridcell", { name, exact: true })).toBeVisible();
  }
  expect(cell("B11")?.textContent?.trim()).toBe("1.5212 mm");
});

test("the cell in hand is brought into view with the first drawing", async () => {
  const session = new EditSession();
  session.stand({ sheet: "Tool", row: 150, column: 1 });
  const grid = document.createElement("sheet-grid");
  Object.assign(grid, { job: setOverJob(), sheet: "Tool", session });
  const main = document.createElement("main");
  main.style.cssText = "position:fixed;inset:0;display:grid;grid-template:minmax(0, 1fr) / minmax(0, 1fr)";
  main.append(grid);
  document.body.replaceChildren(main);
  await expect.poll(() => cell("B151")?.getBoundingClientRect().bottom).toBeLessThanOrEqual(innerHeight);
});

test("an error cell is invalid, shows code and short words, and says the rest", async () => {
  await show(setOverJob());
  const wrong = page.getByRole("gridcell", { name: "#NUM! past limit" });
  await expect.element(wrong).toHaveAttribute("aria-invalid", "true");
  await expect
    .element(wrong)
    .toHaveAttribute("aria-description", "setover must be under 90, got 95; began in Tool!B18");
  await expect.element(wrong).toHaveAttribute("title", "setover must be under 90, got 95; began in Tool!B18");
});

test("a caution has the hatched bar, and only while it says something", async () => {
  const job = fakeJob({
    A1: { text: "Too deep", format: { role: "caution" } },
    A2: { text: "", value: "", format: { role: "caution" } },
  });
  await show(job);
  expect(getComputedStyle(cell("A1")!).backgroundImage).toContain("repeating-linear-gradient");
  expect(getComputedStyle(cell("A2")!).backgroundImage).toBe("none");
});

test("a merged range is one cell with its spans, left in one step", async () => {
  await show(setOverJob(), "A21");
  const caution = page.getByRole("gridcell", { name: "0.5° past the flank: overcuts it by 0.011 mm" });
  await expect.element(caution).toHaveAttribute("aria-colspan", "3");
  expect(cell("B21")).toBeNull();
  await keys("{ArrowRight}");
  await expect.poll(focused).toBe("D21");
});

test("arrow keys move one cell and stop at the edges", async () => {
  await show(setOverJob());
  await keys("{ArrowUp}{ArrowLeft}");
  await expect.poll(focused).toBe("A1");
  await keys("{ArrowDown}{ArrowDown}{ArrowRight}{ArrowUp}");
  await expect.poll(focused).toBe("B2");
});

test.each([
  ["B5", "{End}", "Z5"],
  ["F5", "{Home}", "A5"],
  ["F90", "{Control>}{Home}{/Control}", "A1"],
  ["A1", "{Control>}{End}{/Control}", "C23"],
  ["A3", "{Control>}{ArrowDown}{/Control}", "A24"],
  ["A30", "{Control>}{ArrowUp}{/Control}", "A24"],
  ["A30", "{Control>}{ArrowDown}{/Control}", "A200"],
  ["D3", "{Control>}{ArrowLeft}{/Control}", "C3"],
])("from %s the keys %s go to %s", async (from, pressed, to) => {
  await show(setOverJob(), from);
  await keys(pressed);
  await expect.poll(focused).toBe(to);
});

test("a page down and a page up come back to the same cell", async () => {
  await show(setOverJob(), "B2");
  await keys("{PageDown}");
  await expect.poll(() => grid().active.row).toBeGreaterThan(10);
  await keys("{PageUp}");
  await expect.poll(focused).toBe("B2");
});

test("there is room for 200 rows and 26 columns, and the far corner can be typed in", async () => {
  const job = fakeJob({});
  await show(job);
  grid().goTo(199, 25, { focus: true });
  await expect.poll(focused).toBe("Z200");
  await keys("7{Enter}");
  await expect.element(page.getByRole("gridcell", { name: "7", exact: true })).toBeVisible();
  expect(job.text("Z200")).toBe("7");
});

test("Tab leaves the grid, which is one stop", async () => {
  await show(setOverJob(), "B4");
  const after = document.createElement("button");
  document.querySelector("main")!.append(after);
  await keys("{Tab}");
  await expect.poll(() => document.activeElement).toBe(after);
  expect(grid().shadowRoot!.querySelectorAll("[role=gridcell][tabindex='0']")).toHaveLength(1);
});

test("the active row stays drawn, with its focus, when the sheet is scrolled far away", async () => {
  await show(setOverJob(), "B4");
  const scroller = grid().shadowRoot!.querySelector("[role=grid]")!;
  const before = cell("B4");
  scroller.scrollTop = 4000;
  await expect.poll(() => cell("A150")).not.toBeNull();
  expect(cell("A20")).toBeNull();
  expect(cell("B4")).toBe(before);
  expect(focused()).toBe("B4");
  scroller.scrollTop = 0;
  await expect.poll(() => cell("A20")).not.toBeNull();
  expect(focused()).toBe("B4");
});

test("columns out of view are not drawn, and come when they are scrolled to", async () => {
  await show(setOverJob());
  expect(cell("Z1")).toBeNull();
  grid().shadowRoot!.querySelector("[role=grid]")!.scrollLeft = 9000;
  await expect.poll(() => cell("Z1")).not.toBeNull();
  expect(cell("A1")).not.toBeNull();
  expect(cell("B2")).toBeNull();
});

test("Shift extends the range, Escape gives it up", async () => {
  await show(setOverJob(), "A2");
  await keys("{Shift>}{ArrowDown}{ArrowRight}{/Shift}");
  await expect.poll(selected).toBe("A2:B3");
  expect(focused()).toBe("A2");
  await expect.element(page.getByRole("status")).toHaveTextContent("A2:B3 selected");
  await keys("{Escape}");
  await expect.poll(selected).toBe("A2");
});

test("row, column and sheet are selected by keys, the active cell stays", async () => {
  await show(fakeJob({}), "C3");
  await keys("{Shift>} {/Shift}");
  await expect.element(page.getByRole("status")).toHaveTextContent("A3:Z3 selected");
  await keys("{Control>} {/Control}");
  await expect.element(page.getByRole("status")).toHaveTextContent("C1:C200 selected");
  await keys("{Control>}a{/Control}");
  await expect.element(page.getByRole("status")).toHaveTextContent("A1:Z200 selected");
  expect(focused()).toBe("C3");
});

test("a click selects, a click with Shift extends, a drag draws a range", async () => {
  await show(setOverJob());
  await click("B3");
  await expect.poll(focused).toBe("B3");
  await click("C5", { modifiers: ["Shift"] });
  await expect.poll(selected).toBe("B3:C5");
  await userEvent.dragAndDrop(page.elementLocator(cell("A2")!), page.elementLocator(cell("B4")!));
  await expect.poll(selected).toBe("A2:B4");
});

test("Delete clears the range in one step, and undo brings it back", async () => {
  const job = fakeJob({ A1: { text: "1" }, B1: { text: "2" }, A2: { text: "3" } });
  await show(job);
  await keys("{Shift>}{ArrowDown}{ArrowRight}{/Shift}{Delete}");
  await expect.poll(() => job.text("A1") + job.text("B1") + job.text("A2")).toBe("");
  expect(job.commands).toHaveLength(1);
  expect(job.canUndo).toBe("Cleared A1:B2");
  await keys("{Control>}z{/Control}");
  await expect.element(page.getByRole("gridcell", { name: "3", exact: true })).toBeVisible();
  await keys("{Control>}y{/Control}");
  await expect.poll(() => job.text("A1")).toBe("");
  await keys("{Control>}z{/Control}");
  await expect.poll(() => job.text("A1")).toBe("1");
  await keys("{Control>}{Shift>}z{/Shift}{/Control}");
  await expect.poll(() => job.text("A1")).toBe("");
});

test("a page that takes undo steps itself is asked first", async () => {
  const job = fakeJob({ A1: { text: "1" } });
  await show(job);
  const asked: unknown[] = [];
  grid().addEventListener("undo-step", (event) => {
    asked.push((event as CustomEvent).detail);
    event.preventDefault();
  });
  await keys("{Delete}{Control>}z{/Control}");
  await expect.poll(() => asked).toEqual(["undo"]);
  expect(job.text("A1")).toBe("");
});

test("the zone marks of the active cell have their wedges", async () => {
  await show(setOverJob(), "B4");
  const on = grid().shadowRoot!.querySelectorAll(".on");
  expect([...on].map((mark) => mark.textContent?.trim())).toEqual(["B", "4"]);
  expect(getComputedStyle(on[0]!, "::before").borderBottomColor).toBe("rgb(39, 55, 155)");
});

test("under a finger rows are 52 px high and the active cell keeps in view", async () => {
  await show(setOverJob(), "B4");
  document.documentElement.setAttribute("data-hand", "touch");
  await expect.poll(() => cell("B5")!.getBoundingClientRect().height).toBe(52);
  await expect
    .poll(() => cell("B5")!.getBoundingClientRect().top - cell("B4")!.getBoundingClientRect().top)
    .toBe(52);
  document.documentElement.removeAttribute("data-hand");
  await expect.poll(() => cell("B5")!.getBoundingClientRect().height).toBe(28);
});

test("numbers of a column stand point under point, their units in one lane", async () => {
  await show(setOverJob());
  const pointAt = (name: string) => {
    const walker = document.createTreeWalker(cell(name)!.querySelector(".n")!, NodeFilter.SHOW_TEXT);
    let node = walker.nextNode();
    while (node && !node.textContent!.includes(".")) node = walker.nextNode();
    const range = document.createRange();
    range.setStart(node!, node!.textContent!.indexOf("."));
    range.setEnd(node!, node!.textContent!.indexOf(".") + 1);
    return range.getBoundingClientRect().left;
  };
  const unitAt = (name: string) => cell(name)!.querySelector(".u")!.getBoundingClientRect().left;
  expect(Math.abs(pointAt("B10") - pointAt("B12"))).toBeLessThan(1.5);
  expect(Math.abs(pointAt("B10") - pointAt("B4"))).toBeLessThan(3);
  expect(Math.abs(unitAt("B10") - unitAt("B13"))).toBeLessThan(1);
});

test("a number too wide for its slots is shown whole without them", async () => {
  const job = fakeJob(
    { A1: { text: "12345.6789", format: { as: "length" } }, A2: { text: "1", format: { as: "length" } } },
    { columns: { A: 132 } },
  );
  await show(job);
  const element = cell("A1")!;
  expect(element.textContent?.trim()).toBe("12345.6789 mm");
  expect(element.scrollWidth).toBeLessThanOrEqual(element.clientWidth);
});

test("long words run on over empty cells and stop at a filled one", async () => {
  await show(fakeJob({ A1: { text: "a remark that is longer than its column" }, C1: { text: "stop" } }));
  const run = cell("A1")!.querySelector(".run")!.getBoundingClientRect();
  expect(run.right).toBeGreaterThan(cell("B1")!.getBoundingClientRect().left + 20);
  expect(run.right).toBeLessThanOrEqual(cell("C1")!.getBoundingClientRect().left);
});

test("axe finds nothing in the grid and the entry line, at rest, in an edit and with choices open", async () => {
  await show(setOverJob(), "B11");
  const faults = async () =>
    (await axe.run(document.querySelector("main")!)).violations.map(
      ({ id, nodes }) => `${id}: ${nodes.map((node) => node.html).join(" ")}`,
    );
  expect(await faults()).toEqual([]);
  await keys("{Shift>}{ArrowDown}{/Shift}");
  expect(await faults()).toEqual([]);
  await keys("{F2}");
  expect(await faults()).toEqual([]);
  await keys("{Escape}");
  grid().goTo(5, 1, { focus: true });
  await keys("{Enter}");
  await expect.element(page.getByRole("listbox", { name: "Choices for B6" })).toBeVisible();
  expect(await faults()).toEqual([]);
});

test("keys that pass the end of the sheet make room, the view follows the moving end, and its size shows", async () => {
  await show(fakeJob({}), "D3");
  await keys("{Shift>}{ArrowRight}{ArrowRight}{ArrowRight}{/Shift}");
  for (let page = 0; page < 40 && grid().area.bottom < 210; page++) await keys("{Shift>}{PageDown}{/Shift}");
  const { bottom } = grid().area;
  expect(bottom).toBeGreaterThanOrEqual(210);
  const head = page.getByRole("rowheader", { name: `${bottom + 1}`, exact: true });
  await expect.element(head).toBeInViewport();
  expect(grid().session.chosen).toBe(`${bottom - 1} by 4`);
  await expect.element(page.getByRole("status")).toHaveTextContent(`selected, ${bottom - 1} by 4`);
});
