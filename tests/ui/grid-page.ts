/** Puts a grid and its entry line on the page of a browser test, and finds their cells. */
import { html, render } from "lit";
import { page, userEvent } from "vitest/browser";
import "../../src/ui/tokens.css";
import "../../src/ui/page.css";
import { cellName, parseCell } from "../../src/engine/address.ts";
import type { Job } from "../../src/job/job.ts";
import { EditSession } from "../../src/ui/edit-session.ts";
import "../../src/ui/entry-line.ts";
import "../../src/ui/sheet-grid.ts";
import type { SheetGrid } from "../../src/ui/sheet-grid.ts";

/** Shows the sheet Tool of the job, ready for keys in A1 unless `at` names another cell. */
export async function show(job: Job, at = "A1"): Promise<SheetGrid> {
  const session = new EditSession();
  const main = document.createElement("main");
  main.style.cssText =
    "position:fixed;inset:0;display:grid;grid-template:auto minmax(0, 1fr) / minmax(0, 1fr)";
  document.body.replaceChildren(main);
  render(
    html`<h1 class="sr" style="position:absolute;clip-path:inset(50%)">Test</h1>
      <entry-line .job=${job} .session=${session}></entry-line>
      <sheet-grid .job=${job} sheet="Tool" .session=${session}></sheet-grid>`,
    main,
  );
  const grid = main.querySelector("sheet-grid")!;
  // The entry line is drawn by itself, and the grid has what it leaves.
  await main.querySelector("entry-line")!.updateComplete;
  await new Promise(requestAnimationFrame);
  await grid.updateComplete;
  const { row, column } = parseCell(at)!;
  grid.goTo(row, column, { focus: true });
  await grid.updateComplete;
  return grid;
}

export function grid(): SheetGrid {
  return document.querySelector("sheet-grid")!;
}

/** The element of a cell, null while it is not drawn. */
export function cell(name: string): HTMLElement | null {
  const { row, column } = parseCell(name)!;
  return grid().shadowRoot!.querySelector(
    `[role=gridcell][aria-rowindex="${row + 2}"][aria-colindex="${column + 2}"]`,
  );
}

/** Name of the cell that has the focus, or what else has it. */
export function focused(): string {
  const inner = document.activeElement?.shadowRoot?.activeElement;
  if (inner?.getAttribute("role") !== "gridcell")
    return inner?.ariaLabel ?? inner?.localName ?? "nothing in the grid";
  return cellName(Number(inner.ariaRowIndex) - 2, Number(inner.ariaColIndex) - 2);
}

export async function keys(text: string): Promise<void> {
  await userEvent.keyboard(text);
}

export async function click(
  name: string,
  options: { modifiers?: ("Shift" | "Control")[] } = {},
): Promise<void> {
  await userEvent.click(page.elementLocator(cell(name)!), options);
}

/** The selected cells from first to last, as `B2:C3`. */
export function selected(): string {
  const all = [...grid().shadowRoot!.querySelectorAll("[role=gridcell][aria-selected=true]")];
  const name = (one: Element) => cellName(Number(one.ariaRowIndex) - 2, Number(one.ariaColIndex) - 2);
  return all.length === 1 ? name(all[0]!) : `${name(all[0]!)}:${name(all.at(-1)!)}`;
}

export const entry = page.getByRole("textbox", { name: "Entry line" });
