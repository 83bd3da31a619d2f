import axe from "axe-core";
import { afterEach, beforeEach, expect, test } from "vitest";
import { page, userEvent } from "vitest/browser";
import { knownThreads } from "../../src/functions/threadlist.ts";
import type { ThreadList } from "../../src/ui/thread-list.ts";
import "../../src/ui/thread-list.ts";
import "../../src/ui/tokens.css";

let list: ThreadList;

beforeEach(async () => {
  document.documentElement.lang = "en-GB";
  document.title = "threads";
  list = document.createElement("thread-list");
  document.body.append(list);
  await list.updateComplete;
});

afterEach(() => {
  list.remove();
  delete document.documentElement.dataset.theme;
});

async function shown(): Promise<void> {
  list.show();
  await list.updateComplete;
}

const rows = () => page.getByRole("table", { name: "Threads it knows" }).getByRole("row").elements().slice(1);
const tried = page.getByRole("textbox", { name: "Try a designation" });
const answer = () => page.getByRole("status").element().textContent!.replace(/\s+/g, " ").trim();

test("every family of series has a row: how it is written, from where, which limits, how sure", async () => {
  await shown();
  expect(rows().length).toBe(knownThreads().length);
  const { series, example, sizes, limits, sure } = knownThreads()[0]!;
  const first = rows()[0]!.textContent!.replace(/\s+/g, " ");
  for (const text of [series, sizes, limits, sure, ...example.split(", ")]) expect(first).toContain(text);
});

test("what rests on memory is marked beside the words that say so", async () => {
  await shown();
  const cells = [...list.renderRoot.querySelectorAll("td")];
  const marked = cells.filter((cell) => cell.matches(".memory"));
  expect(marked.length).toBeGreaterThan(3);
  expect(marked).toEqual(cells.filter((cell) => cell.textContent!.includes("memory")));
});

// ISO 724: pitch diameter of M12x1.75 is 10.863 mm; ISO 261 lists 1.75, 1.5, 1.25 and 1 for M12.
test("a designation is tried while it is typed: read, read with a note, or refused with the nearest", async () => {
  await shown();
  await tried.fill("M12x1.75-6g");
  expect(answer()).toMatch(/^M12-6g: major 12 mm, pitch 1\.75 mm, pitch diameter 10\.863\d* mm, 60 degrees;/);
  await tried.fill("M12x1.7");
  expect(answer()).toContain("Note: 1.7 is no standard pitch for M12: 1.75, 1.5, 1.25, 1");
  await tried.fill("7/16-15 UNF");
  expect(answer()).toContain('read UNF 7/16, stopped at "15"');
  expect(answer()).toContain("nearest: 7/16-20 UNF");
  await tried.fill("");
  expect(answer()).toBe("");
});

test("keys alone reach the field and the list, and Escape closes it", async () => {
  await shown();
  await userEvent.keyboard("{Tab}");
  const reached = new Set<string>();
  for (let i = 0; i < 4; i++) {
    const at = list.renderRoot instanceof ShadowRoot ? list.renderRoot.activeElement : null;
    if (at) reached.add(at.localName);
    await userEvent.keyboard("{Tab}");
  }
  expect([...reached]).toEqual(expect.arrayContaining(["input", "div"]));
  await userEvent.keyboard("{Escape}");
  expect(page.getByRole("dialog").elements()).toEqual([]);
});

test.each(["paper", "slate"])("axe finds nothing wrong on %s, wide and narrow", async (ground) => {
  if (ground === "slate") document.documentElement.dataset.theme = "slate";
  await shown();
  await tried.fill("7/16-15 UNF");
  for (const width of [1280, 390]) {
    await page.viewport(width, 844);
    const { violations } = await axe.run(list);
    expect(violations.map(({ id, nodes }) => `${id} ${nodes[0]?.html}`)).toEqual([]);
    const dialog = list.renderRoot.querySelector("dialog")!;
    expect(dialog.getBoundingClientRect().right).toBeLessThanOrEqual(width);
    const body = list.renderRoot.querySelector(".body")!;
    expect(body.scrollWidth).toBeLessThanOrEqual(body.clientWidth);
  }
  await page.viewport(1280, 800);
});
