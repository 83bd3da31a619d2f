/** What a person asks for while values are still on their way. */
import { afterEach, beforeEach, expect, test, vi } from "vitest";
import type { JobDocument } from "../../src/job/document.ts";
import { createJob } from "../../src/job/job.ts";
import { sortRows } from "../../src/job/sort.ts";
import { BenchActs } from "../../src/ui/bench-acts.ts";
import { GridClipboard } from "../../src/ui/grid-clipboard.ts";
import type { GridHost } from "../../src/ui/grid-host.ts";
import { PageActs, type PageParts } from "../../src/ui/page-acts.ts";
import { printArea } from "../../src/ui/paper.ts";
import { PaperActs } from "../../src/ui/paper-acts.ts";
import "../../src/ui/sheet-grid.ts";
import "../../src/ui/tokens.css";
import { SheetMap } from "../../src/ui/sheet-map.ts";
import { InProcess } from "../engine/in-process.ts";
import { madeDocument, madeSheet } from "../job/made.ts";

function farJob(document: JobDocument) {
  const far = new InProcess();
  const job = createJob(document, undefined, () => {}, undefined, far.setting);
  far.settle();
  return { far, job };
}

function page(job: ReturnType<typeof farJob>["job"]) {
  const alarms: { text: string; words: string[] }[] = [];
  const said = {
    say: () => {},
    settle: () => {},
    alarm: (text: string, offers: { word: string }[] = []) =>
      alarms.push({ text, words: offers.map(({ word }) => word) }),
  };
  const parts = {
    desk: { job, openId: "one", sheet: "One" },
    session: { commit: () => true },
    said,
    draw: async () => undefined,
    element: () => null,
  };
  return { alarms, acts: new PageActs(parts as unknown as PageParts) };
}

/** All that only waits for promises has gone on. */
const settled = () => vi.advanceTimersByTimeAsync(0);

beforeEach(() => {
  vi.useFakeTimers();
});

afterEach(() => {
  vi.useRealTimers();
  localStorage.clear();
});

test("rows are not sorted by values that have been replaced", () => {
  const cells = { A1: "1", B1: "=A1*2", A2: "2", B2: "=A2*2", A3: "3", B3: "=A3*2" };
  const { far, job } = farJob(madeDocument([madeSheet("One", cells)]));
  job.setCells([{ sheet: "One", row: 0, column: 0, text: "9" }]);
  const area = { top: 0, left: 0, bottom: 2, right: 1 };
  expect(sortRows(job, "One", area, 1, "up")).toBe("B1 is not reckoned yet, and the order depends on it");
  far.settle();
  expect(sortRows(job, "One", area, 1, "up")).toBeUndefined();
  expect([0, 1, 2].map((row) => job.cell("One", row, 0).text)).toEqual(["2", "3", "9"]);
});

test("values of before look like such when newer ones are late, and not sooner", async () => {
  const { far, job } = farJob(madeDocument([madeSheet("One", { A1: "1", B1: "=A1*2" })]));
  vi.useRealTimers();
  const grid = document.createElement("sheet-grid");
  Object.assign(grid, { job, sheet: "One" });
  document.body.append(grid);
  const slanted = async () => {
    await grid.updateComplete;
    const cell = grid.shadowRoot!.querySelector('[aria-rowindex="2"][aria-colindex="3"]');
    return cell && [cell.textContent!.trim(), getComputedStyle(cell).fontStyle];
  };
  await expect.poll(slanted).toEqual(["2", "normal"]);
  vi.useFakeTimers();
  job.setCells([{ sheet: "One", row: 0, column: 0, text: "4" }]);
  expect(await slanted()).toEqual(["2", "normal"]);
  vi.advanceTimersByTime(300);
  expect(await slanted()).toEqual(["2", "italic"]);
  far.settle();
  expect(await slanted()).toEqual(["8", "normal"]);
  // Another job has its own time, however long the one before was awaited.
  job.setCells([{ sheet: "One", row: 0, column: 0, text: "5" }]);
  await slanted();
  vi.advanceTimersByTime(300);
  expect(await slanted()).toEqual(["8", "italic"]);
  const other = farJob(madeDocument([madeSheet("One", { A1: "7", B1: "=A1*2" })]));
  other.job.setCells([{ sheet: "One", row: 0, column: 0, text: "3" }]);
  grid.job = other.job;
  expect(await slanted()).toEqual(["14", "normal"]);
  vi.advanceTimersByTime(300);
  expect(await slanted()).toEqual(["14", "italic"]);
  grid.remove();
});

test("an operation is signed off when it is known to hold no error, else only when that is said again", async () => {
  const { far, job } = farJob(madeDocument([madeSheet("One", { A1: "1", B1: "=1/A1" })]));
  const { acts, alarms } = page(job);
  const signed = () => job.document.sheets[0]!.signedOff ?? false;
  job.setCells([{ sheet: "One", row: 0, column: 0, text: "0" }]);
  acts.sign();
  // It may be the last that is done before the page is left.
  expect([signed(), job.canUndo]).toEqual([true, "Signed off One"]);
  far.settle();
  await settled();
  expect(alarms).toEqual([
    {
      text: "10 One is not signed off: it holds 1\u00a0error.",
      words: ["Go to the first error", "Sign off all the same"],
    },
  ]);
  expect(signed()).toBe(false);
  job.setCells([{ sheet: "One", row: 0, column: 0, text: "4" }]);
  job.stopReckoning();
  acts.sign();
  await settled();
  expect(alarms.at(-1)).toEqual({
    text: "10 One is not signed off: not all of it is reckoned.",
    words: ["Sign off all the same"],
  });
  expect([signed(), job.canUndo]).toEqual([false, "Typed in One!A1"]);
  job.goOnReckoning();
  far.settle();
  acts.sign();
  await settled();
  expect(signed()).toBe(true);
});

test("an operation of a job so large that errors are counted in slices is not signed off with one either", async () => {
  const others = Array.from({ length: 2000 }, (_, row) => [`C${row + 1}`, "=1"]);
  const cells = { A1: "1", ...Object.fromEntries(others), B2000: "=1/A1" };
  const { far, job } = farJob(madeDocument([madeSheet("One", cells)]));
  const { acts, alarms } = page(job);
  job.setCells([{ sheet: "One", row: 0, column: 0, text: "0" }]);
  acts.sign();
  far.settle();
  await vi.runAllTimersAsync();
  expect(alarms.map(({ text }) => text)).toEqual(["10 One is not signed off: it holds 1\u00a0error."]);
  expect(job.document.sheets[0]!.signedOff).toBeUndefined();
  job.setCells([{ sheet: "One", row: 0, column: 0, text: "4" }]);
  far.settle();
  acts.sign();
  await vi.runAllTimersAsync();
  expect([job.document.sheets[0]!.signedOff, alarms.length]).toEqual([true, 1]);
});

test("a sign-off that is taken back before the values have come stays so, and nothing is said of errors", async () => {
  const { far, job } = farJob(madeDocument([madeSheet("One", { A1: "1", B1: "=1/A1" })]));
  const { acts, alarms } = page(job);
  job.setCells([{ sheet: "One", row: 0, column: 0, text: "0" }]);
  acts.sign();
  job.undo();
  far.settle();
  await settled();
  expect(alarms).toEqual([]);
  expect(job.steps).toEqual(["Typed in One!A1", "Signed off One"]);
});

test("figures of before are said to be such at the bench and on paper", async () => {
  const sheet = madeSheet("One", { A1: "1", B1: "=A1*2", A10: "1", C10: "=B1", D10: "=B1" });
  const { far, job } = farJob(madeDocument([sheet], { names: { plan: "One!A10:J20" } }));
  const { acts } = page(job);
  Object.assign(acts.parts, { element: (tag: string) => (tag === "bench-view" ? { open: true } : null) });
  const bench = new BenchActs(acts);
  new PaperActs(acts);
  const words = "Not all of it is reckoned: figures may be those of before.";
  const printed = () => {
    dispatchEvent(new Event("beforeprint"));
    const area = printArea();
    return (area.shadowRoot ?? area).textContent;
  };
  expect(bench.view?.behind).toBe("");
  expect(printed()).not.toContain(words);
  job.setCells([{ sheet: "One", row: 0, column: 0, text: "4" }]);
  job.stopReckoning();
  expect(bench.view?.behind).toBe(words);
  expect(printed()).toContain(words);
  job.goOnReckoning();
  far.settle();
  expect(printed()).not.toContain(words);
});

test("figures of before are said to be such where they are copied or cut, the formulas are those of now", () => {
  const { far, job } = farJob(
    madeDocument([madeSheet("One", { A1: "1", B1: "=A1*2", C1: "=B1+1", D1: "=3" })]),
  );
  const copied = (right: number, cut = false) => {
    const said: string[] = [];
    const area = { top: 0, left: 0, bottom: 0, right };
    const host = {
      job,
      sheet: "One",
      map: new SheetMap(job, "One"),
      area,
      say: (text: string) => said.push(text),
    };
    const data = new DataTransfer();
    new GridClipboard(host as unknown as GridHost).put(data, cut);
    const typed = [...data.getData("text/html").matchAll(/data-typed="([^"]*)"/g)].map(([, text]) => text);
    return { text: data.getData("text/plain"), typed, said };
  };
  job.setCells([
    { sheet: "One", row: 0, column: 0, text: "4" },
    { sheet: "One", row: 0, column: 1, text: "=A1*3" },
  ]);
  expect(copied(0)).toEqual({ text: "4", typed: ["4"], said: ["Copied A1"] });
  expect(copied(1)).toEqual({
    text: "4\t2",
    typed: ["4", "=A1*3"],
    said: ["Copied A1:B1; 1 figure is not reckoned yet: as text it may be that of before"],
  });
  expect(copied(2, true).said).toEqual([
    "Cut A1:C1, paste moves it; 2 figures are not reckoned yet: as text they may be those of before",
  ]);
  far.settle();
  expect(copied(1)).toEqual({ text: "4\t12", typed: ["4", "=A1*3"], said: ["Copied A1:B1"] });
});

test("a reading belongs to the step at which it was typed, also where the person has gone on by then", async () => {
  const rows = ["scratch", "1", "2", "measure"].map((pass, i) => [`A${i + 10}`, pass]);
  const winds = { C11: "30", D11: "30", C12: "15", D12: "45", B1: "", C1: "=D1*2", D1: "1" };
  const sheet = madeSheet("One", { ...Object.fromEntries(rows), ...winds });
  const names = { plan: "One!A10:J20", measured: "One!B1", readings: "One!F1:G9" };
  const { far, job } = farJob(madeDocument([sheet], { names }));
  const bench = new BenchActs(page(job).acts);
  bench.did({ act: "go", at: 1 });
  job.setCells([{ sheet: "One", row: 0, column: 3, text: "2" }]);
  bench.did({ act: "reading", text: "12.7" });
  bench.did({ act: "go", at: 2 });
  far.settle();
  await settled();
  expect(job.cell("One", 0, 1).text).toBe("12.7");
  expect(JSON.parse(localStorage.getItem("halfangle.bench")!).one).toMatchObject({
    at: 2,
    rounds: [{ at: 1, reading: 12.7 }],
  });
});
