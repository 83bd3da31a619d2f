import { expect, test } from "vitest";
import { page, userEvent } from "vitest/browser";
import { fakeJob } from "./fake-job.ts";
import { cell, click, focused, grid, keys, selected, show } from "./grid-page.ts";
import { setOver, setOverNames, setOverSheet } from "./set-over.ts";

const field = (name: string) => page.getByRole("textbox", { name: `Cell ${name}` });
const setOverJob = () => fakeJob(setOver, setOverSheet, setOverNames);

test("typing replaces what was there, Enter keeps it and moves down", async () => {
  const job = fakeJob({ B2: { text: "12" } });
  await show(job, "B2");
  await keys("2");
  await expect.element(field("B2")).toHaveValue("2");
  await keys("5.4{Enter}");
  await expect.poll(focused).toBe("B3");
  expect(job.text("B2")).toBe("25.4");
  await expect.element(page.getByRole("gridcell", { name: "25.4", exact: true })).toBeVisible();
});

test("a number that may mean two things, and a fraction kept as text, are said as they are kept", async () => {
  await show(fakeJob({}), "B2");
  const status = page.getByRole("status");
  await keys("1,234{Enter}");
  await expect.element(status).toHaveTextContent("Read 1,234 as 1.234");
  await keys("7/16{Enter}");
  await expect.element(status).toHaveTextContent("Kept as text; 7/16 in for a length, =7/16 for a number");
  await navigator.clipboard.writeText("1,5\t1.234\n2,5\t12,345");
  await userEvent.paste();
  await expect.element(status).toHaveTextContent("Pasted 2 by 2 cells at B4:C5; read 12,345 as 12.345");
});

test("F2 and Enter edit what is there, with the caret at the end", async () => {
  const job = fakeJob({ B2: { text: "12" }, B3: { text: "7" } });
  await show(job, "B2");
  await keys("{F2}.5{Enter}");
  await expect.poll(() => job.text("B2")).toBe("12.5");
  await keys("{Enter}");
  await expect.element(field("B3")).toHaveValue("7");
  await keys("8{Enter}");
  await expect.poll(() => job.text("B3")).toBe("78");
});

test("Escape drops what was typed and the cell has the focus again", async () => {
  const job = fakeJob({ B2: { text: "12" } });
  await show(job, "B2");
  await keys("99{Escape}");
  await expect.poll(focused).toBe("B2");
  expect(job.text("B2")).toBe("12");
  expect(job.commands).toHaveLength(0);
});

test.each([
  ["{Enter}", "C4"],
  ["{Shift>}{Enter}{/Shift}", "C2"],
  ["{Tab}", "D3"],
  ["{Shift>}{Tab}{/Shift}", "B3"],
  ["{ArrowUp}", "C2"],
  ["{ArrowRight}", "D3"],
])("while replacing, %s keeps and goes to %s", async (pressed, to) => {
  const job = fakeJob({});
  await show(job, "C3");
  await keys(`5${pressed}`);
  await expect.poll(focused).toBe(to);
  expect(job.text("C3")).toBe("5");
});

test("arrow keys move the caret when the old text is edited", async () => {
  const job = fakeJob({ B2: { text: "12" } });
  await show(job, "B2");
  await keys("{F2}{ArrowLeft}.{Enter}");
  await expect.poll(() => job.text("B2")).toBe("1.2");
});

test("the same text again is no step of the history", async () => {
  const job = fakeJob({ B2: { text: "12" } });
  await show(job, "B2");
  await keys("{F2}{Enter}");
  await expect.poll(focused).toBe("B3");
  expect(job.commands).toHaveLength(0);
});

test("a click on another cell keeps what was typed", async () => {
  const job = fakeJob({});
  await show(job, "B2");
  await keys("1.75");
  await click("D6");
  await expect.poll(focused).toBe("D6");
  expect(job.text("B2")).toBe("1.75");
});

test("focus that goes elsewhere keeps what was typed", async () => {
  const job = fakeJob({});
  await show(job, "B2");
  const elsewhere = document.createElement("button");
  elsewhere.textContent = "Elsewhere";
  document.querySelector("main")!.append(elsewhere);
  await keys("1.75");
  await userEvent.click(page.getByRole("button", { name: "Elsewhere" }));
  await expect.poll(() => job.text("B2")).toBe("1.75");
});

test("a grid taken off the page keeps what was typed", async () => {
  const job = fakeJob({});
  await show(job, "B2");
  await keys("1.75");
  await expect.element(field("B2")).toHaveValue("1.75");
  grid().remove();
  expect(job.text("B2")).toBe("1.75");
});

test("an edit goes on while the sheet is scrolled away and back", async () => {
  const job = fakeJob({});
  await show(job, "B2");
  await keys("1.7");
  const scroller = grid().shadowRoot!.querySelector("[role=grid]")!;
  scroller.scrollTop = 3000;
  await expect.poll(() => cell("A120")).not.toBeNull();
  await keys("5{Enter}");
  await expect.poll(() => job.text("B2")).toBe("1.75");
});

test("nothing is done about keys that an input method is composing", async () => {
  const job = fakeJob({});
  await show(job, "B2");
  await keys("5");
  await expect.element(field("B2")).toHaveValue("5");
  const input = field("B2").element();
  for (const key of ["Enter", "Escape", "Tab"]) {
    input.dispatchEvent(
      new KeyboardEvent("keydown", { key, isComposing: true, bubbles: true, composed: true }),
    );
  }
  await expect.element(field("B2")).toHaveValue("5");
  expect(job.commands).toHaveLength(0);
});

test("a double click edits", async () => {
  await show(fakeJob({ B2: { text: "12" } }));
  await userEvent.dblClick(page.elementLocator(cell("B2")!));
  await expect.element(field("B2")).toHaveValue("12");
  await expect.poll(focused).toBe("Cell B2");
});

test("typing tells the page, and so does another active cell", async () => {
  await show(fakeJob({}));
  const told: unknown[] = [];
  for (const name of ["cell-active", "cell-typing"]) {
    document.body.addEventListener(name, (event) => told.push((event as CustomEvent).detail), { once: true });
  }
  await keys("{ArrowDown}5");
  await userEvent.type(field("A2"), "6");
  await expect.poll(() => told).toEqual([{ row: 1, column: 0 }, { text: "56" }]);
});

test("the cells of a formula are framed and numbered while it is edited", async () => {
  await show(setOverJob(), "B11");
  await keys("{F2}");
  await expect.poll(() => cell("B10")!.classList.contains("r1")).toBe(true);
  expect(cell("B5")!.querySelector(".tag")?.textContent).toBe("2");
  await expect.element(page.getByRole("gridcell", { name: "27.0°", exact: true })).toBeVisible();
  await keys("{Escape}");
  await expect.poll(() => cell("B10")!.querySelector(".tag")).toBeNull();
});

test("a value filled by a block formula is read-only and says which cell to change", async () => {
  const job = setOverJob();
  await show(job, "A24");
  expect(cell("A24")!.getAttribute("aria-readonly")).toBe("true");
  await keys("5");
  await expect
    .element(page.getByRole("status"))
    .toHaveTextContent("A24 is filled by the formula in A23: change it there");
  expect(job.commands).toHaveLength(0);
});

test.each(["{Enter}", "{F2}", "{Alt>}{ArrowDown}{/Alt}"])(
  "%s opens the choices of a cell",
  async (pressed) => {
    const job = setOverJob();
    await show(job, "B6");
    await keys(pressed);
    await expect.element(page.getByRole("listbox", { name: "Choices for B6" })).toBeVisible();
    await expect
      .element(page.getByRole("option", { name: "along the bed" }))
      .toHaveAttribute("aria-selected", "true");
    await keys("{ArrowDown}{Enter}");
    await expect.poll(focused).toBe("B7");
    expect(job.text("B6")).toBe("square to the bed");
  },
);

test("the first letters pick a word, Escape drops it", async () => {
  const job = setOverJob();
  await show(job, "B6");
  await keys("s");
  await expect
    .element(page.getByRole("option", { name: "square to the bed" }))
    .toHaveAttribute("aria-selected", "true");
  await keys("{Escape}");
  await expect.poll(focused).toBe("B6");
  expect(job.text("B6")).toBe("along the bed");
  await keys("s");
  await expect.element(page.getByRole("listbox")).toBeVisible();
  await keys("{Enter}");
  await expect.poll(() => job.text("B6")).toBe("square to the bed");
});

test("a click on a word of the choices keeps it", async () => {
  const job = setOverJob();
  await show(job, "B6");
  await keys("{Enter}");
  await userEvent.click(page.getByRole("option", { name: "along, far end" }));
  await expect.poll(() => job.text("B6")).toBe("along, far end");
  await expect.poll(focused).toBe("B6");
});

test("cells are copied and pasted, formulas move with their cell, as one step", async () => {
  const job = fakeJob({ A1: { text: "3" }, B1: { text: "=A1*2", value: 6 } });
  await show(job);
  await keys("{Shift>}{ArrowRight}{/Shift}");
  await userEvent.copy();
  expect(await navigator.clipboard.readText()).toBe("3\t6");
  grid().goTo(4, 2, { focus: true });
  await userEvent.paste();
  await expect.poll(() => job.text("D5")).toBe("=C5*2");
  expect(job.text("C5")).toBe("3");
  expect(job.commands).toHaveLength(1);
  await expect.poll(selected).toBe("C5:D5");
  await keys("{Control>}z{/Control}");
  await expect.poll(() => job.text("C5") + job.text("D5")).toBe("");
});

test("tabbed text from elsewhere goes into cells, and what was cut before stays where it is", async () => {
  const job = fakeJob({ A1: { text: "3" } });
  await show(job);
  await userEvent.cut();
  await navigator.clipboard.writeText('1\t"two\nlines"\r\n3\t');
  grid().goTo(1, 1, { focus: true });
  await userEvent.paste();
  await expect.poll(() => job.text("C2")).toBe("two\nlines");
  expect([job.text("B2"), job.text("B3"), job.text("C3"), job.text("A1")]).toEqual(["1", "3", "", "3"]);
});

test("one cell pasted on a range fills it, each formula with its own references", async () => {
  const job = fakeJob({ B1: { text: "=A1*2", value: 0 } });
  await show(job, "B1");
  await userEvent.copy();
  grid().goTo(1, 1, { focus: true });
  await keys("{Shift>}{ArrowDown}{/Shift}");
  await userEvent.paste();
  await expect.poll(() => job.text("B3")).toBe("=A3*2");
  expect(job.text("B2")).toBe("=A2*2");
});

test("Control and D fills down, Control and R to the right", async () => {
  const job = fakeJob({ A1: { text: "=Z9+1" } });
  await show(job);
  await keys("{Shift>}{ArrowDown}{/Shift}{Control>}d{/Control}");
  await expect.poll(() => job.text("A2")).toBe("=Z10+1");
  await keys("{Escape}{Shift>}{ArrowRight}{/Shift}{Control>}r{/Control}");
  await expect.poll(() => job.text("B1")).toBe("=AA9+1");
});

test("a tap selects, a second tap on the same cell edits, even when the page moves under the finger", async () => {
  await show(fakeJob({ B2: { text: "12" } }));
  const tap = () => {
    const element = cell("B2")!;
    const box = element.getBoundingClientRect();
    const at = {
      clientX: box.left + 20,
      clientY: box.top + 10,
      bubbles: true,
      composed: true,
      pointerType: "touch",
      isPrimary: true,
    };
    element.dispatchEvent(new PointerEvent("pointerdown", at));
    element.dispatchEvent(new PointerEvent("pointerup", at));
    // A browser gives the focus before the click, and the entry line may grow by then.
    element.focus();
    element.dispatchEvent(new PointerEvent("click", { ...at, clientY: at.clientY - 30 }));
  };
  tap();
  await expect.poll(focused).toBe("B2");
  await expect.element(field("B2")).not.toBeInTheDocument();
  tap();
  await expect.element(field("B2")).toHaveValue("12");
});

test("a finger that pans chooses nothing", async () => {
  await show(fakeJob({}), "A1");
  const at = {
    clientX: 200,
    clientY: 300,
    bubbles: true,
    composed: true,
    pointerType: "touch",
    isPrimary: true,
  };
  cell("B5")!.dispatchEvent(new PointerEvent("pointerdown", at));
  cell("B5")!.dispatchEvent(new PointerEvent("pointercancel", at));
  await keys("{ArrowDown}");
  await expect.poll(focused).toBe("A2");
});
