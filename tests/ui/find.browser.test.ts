/** Finding in a large job: the page can be used meanwhile, and it can be stopped. */
import "../../src/ui/find-bar.ts";
import { afterEach, beforeEach, expect, test, vi } from "vitest";
import type { FindBar } from "../../src/ui/find-bar.ts";
import { realJob } from "./real-job.ts";

beforeEach(() => {
  vi.useFakeTimers({ toFake: ["setTimeout"] });
});

afterEach(() => {
  vi.useRealTimers();
  vi.restoreAllMocks();
  document.body.replaceChildren();
});

const cellsOf = (rows: number) =>
  Object.fromEntries(Array.from({ length: rows }, (_, i) => [`A${i + 1}`, "7"]));

async function opened(rows: number) {
  const bar: FindBar = document.createElement("find-bar");
  bar.job = realJob(cellsOf(rows));
  document.body.append(bar);
  await bar.open();
  const shown = async () => {
    await bar.updateComplete;
    return bar.shadowRoot!.querySelector("form")!.textContent!.replaceAll(/\s+/g, " ");
  };
  const look = async (text: string) => {
    const field = bar.shadowRoot!.querySelector("input")!;
    field.value = text;
    field.dispatchEvent(new InputEvent("input", { bubbles: true }));
    return shown();
  };
  return { bar, shown, look };
}

function press(bar: FindBar, word: string) {
  [...bar.shadowRoot!.querySelectorAll("button")].find(({ textContent }) => textContent === word)!.click();
}

test("a small job is looked through at once, a large one in slices", async () => {
  const small = await opened(9);
  expect(await small.look("7")).toContain("9 cells");
  const { shown, look } = await opened(6000);
  expect(await look("7")).not.toMatch(/cells|Looking/);
  vi.runAllTimers();
  expect(await shown()).toContain("6,000 cells");
  expect(await shown()).not.toContain("Looking");
});

test("one that takes long is told of and stopped by its word, and another question takes its place", async () => {
  const { shown, look, bar } = await opened(12_000);
  await look("7");
  const now = performance.now();
  vi.spyOn(performance, "now").mockReturnValue(now + 1000);
  vi.advanceTimersToNextTimer();
  expect(await shown()).toContain("Looking, 25 %");
  press(bar, "Stop");
  expect(await shown()).toContain("stopped");
  vi.runAllTimers();
  expect(await shown()).not.toMatch(/Looking|cells/);
  await look("7");
  vi.advanceTimersToNextTimer();
  await look("8");
  vi.runAllTimers();
  expect(await shown()).toContain("not found");
});

test("cells that change meanwhile are looked at once more", async () => {
  const { bar, shown, look } = await opened(6000);
  await look("7");
  vi.advanceTimersToNextTimer();
  bar.job!.setCells([{ sheet: "Tool", row: 0, column: 0, text: "8" }]);
  vi.runAllTimers();
  expect(await shown()).toContain("5,999 cells");
});

test("all are replaced by what stood there as that was asked for", async () => {
  const { bar, shown, look } = await opened(6000);
  await look("7");
  const by = bar.shadowRoot!.querySelectorAll("input")[1]!;
  const type = (text: string) => {
    by.value = text;
    by.dispatchEvent(new InputEvent("input", { bubbles: true }));
  };
  type("8");
  press(bar, "Replace all");
  type("8.5");
  vi.runAllTimers();
  expect(await shown()).toContain("replaced in 6,000 cells");
  expect([0, 5999].map((row) => bar.job!.cell("Tool", row, 0).text)).toEqual(["8", "8"]);
});

test("nothing is found or replaced in a job that another has taken the place of", async () => {
  const { bar, shown, look } = await opened(6000);
  const first = bar.job!;
  await look("7");
  press(bar, "Replace all");
  bar.job = realJob({ A1: "7" });
  await shown();
  vi.runAllTimers();
  expect(await shown()).not.toMatch(/cells|replaced/);
  expect(first.canUndo).toBeUndefined();
  expect(await look("7")).toContain("1 cell");
  bar.job = realJob({});
  expect(await shown()).not.toContain("1 cell");
});
