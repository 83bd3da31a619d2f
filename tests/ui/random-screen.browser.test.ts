/** Two thousand commands in an order that nobody would think of, and the grid shows what the job holds. */
import { expect, test } from "vitest";
import "../../src/ui/tokens.css";
import { readJob, writeJob } from "../../src/job/file.ts";
import { showValue } from "../../src/job/format.ts";
import { createJob, type Job } from "../../src/job/job.ts";
import { EditSession } from "../../src/ui/edit-session.ts";
import "../../src/ui/sheet-grid.ts";
import type { SheetGrid } from "../../src/ui/sheet-grid.ts";
import { first, randomFrom, steps, worker } from "../job/random-work.ts";

const plain = (text: string | null) => (text ?? "").replace(/\s+/g, " ").trim();

/** Cells on the screen whose words are not those of the job. */
function faults(grid: SheetGrid, job: Job): string[] {
  const cells = [...grid.renderRoot.querySelectorAll<HTMLElement>("[role=gridcell]")];
  expect(cells.length).toBeGreaterThan(50);
  return cells.flatMap((cell) => {
    const row = Number(cell.getAttribute("aria-rowindex")) - 2;
    const column = Number(cell.getAttribute("aria-colindex")) - 2;
    const { value, format } = job.cell(grid.sheet, row, column);
    const wanted = plain(showValue(value, format, job.unit).text);
    const seen = plain(cell.textContent);
    return seen === wanted ? [] : [`${grid.sheet} ${row} ${column}: "${seen}" for "${wanted}"`];
  });
}

test("what is on the screen is what the job holds, all the way and back to the start", async () => {
  const job = createJob(readJob(writeJob(first)), []);
  const random = randomFrom(20261126);
  const act = worker(job, random);
  document.body.style.height = "760px";
  const grid = document.createElement("sheet-grid");
  Object.assign(grid, { job, sheet: job.document.sheets[0]!.name, session: new EditSession() });
  grid.style.cssText = "display:block;width:1200px;height:740px";
  document.body.replaceChildren(grid);
  await grid.updateComplete;
  for (let step = 1; step <= steps; step++) {
    act();
    if (step % 20 !== 0) continue;
    const { sheets } = job.document;
    grid.sheet = sheets[Math.floor(random() * sheets.length)]!.name;
    grid.requestUpdate();
    await grid.updateComplete;
    expect(faults(grid, job)).toEqual([]);
  }
  job.goToStep(0);
  grid.sheet = job.document.sheets[0]!.name;
  await grid.updateComplete;
  expect(faults(grid, job)).toEqual([]);
}, 240_000);
