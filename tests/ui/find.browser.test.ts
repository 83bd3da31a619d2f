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
  const stop = [...bar.shadowRoot!.querySelectorAll("button")].find(
    ({ textContent }) => textContent === "Stop",
  );
  stop!.click();
  expect(await shown()).toContain("stopped");
  vi.runAllTimers();
  expect(await shown()).not.toMatch(/Looking|cells/);
  await look("7");
  vi.advanceTimersToNextTimer();
  await look("8");
  vi.runAllTimers();
  expect(await shown()).toContain("not found");
});
