/**
 * What-if tables in a job. Every value is compared with what a copy of the job shows when the inputs are typed into it.
 */
import { readFileSync } from "node:fs";
import { afterEach, beforeEach, describe, expect, test, vi } from "vitest";
import { parseCell } from "../../src/engine/address.ts";
import { limits } from "../../src/engine/gate.ts";
import type { CellValue, Place } from "../../src/engine/values.ts";
import type { JobDocument } from "../../src/job/document.ts";
import { readJob, writeJob } from "../../src/job/file.ts";
import { moveFormula } from "../../src/job/formula-text.ts";
import { createJob, type Job } from "../../src/job/job.ts";
import { insertLines } from "../../src/job/structure.ts";
import { planTable, type TableInput, type TableRequest } from "../../src/job/whatif.ts";
import { areaFrom, inputsOf, labelOf, placeFrom, placesFrom, wordsFor } from "../../src/job/whatif-places.ts";
import { madeDocument, madeSheet } from "./made.ts";

const fullJob = readJob(readFileSync(new URL("../../sheets/full-thread-job.json", import.meta.url), "utf8"));

const silent = () => {};

function jobOf(cells: Record<string, string>, more: Partial<JobDocument> = {}): Job {
  return createJob(madeDocument([madeSheet("Job", cells)], more), undefined, silent);
}

function at(job: Job, name: string, sheet = job.document.sheets[0]!.name): CellValue {
  const { row, column } = parseCell(name)!;
  return job.cell(sheet, row, column).value;
}

function type(job: Job, texts: Record<string, string>, sheet = job.document.sheets[0]!.name): void {
  job.setCells(Object.entries(texts).map(([name, text]) => ({ sheet, ...parseCell(name)!, text })));
}

function place(job: Job, text: string): Place {
  const found = placeFrom(job, text, job.document.sheets[0]!.name);
  if (typeof found === "string") throw new Error(found);
  return found;
}

const steps = (job: Job, text: string, first: number, step: number, count: number): TableInput => ({
  place: place(job, text),
  values: { kind: "steps", first, step, count },
});

function make(job: Job, request: Omit<TableRequest, "over">): string {
  const plan = planTable(job, { ...request, over: false });
  if ("problem" in plan) throw new Error(plan.problem);
  job.put(plan.document, plan.what);
  return plan.place.sheet;
}

describe("a table over the full thread job", () => {
  test("of 50 x 40 values shows in every cell what typing the two inputs gives", () => {
    const job = createJob(fullJob, undefined, silent);
    const copy = createJob(fullJob, undefined, silent);
    const surface = steps(job, "surface_speed", 6, 0.5, 50);
    const runout = steps(job, "runout", 2, 0.25, 40);
    const sheet = make(job, {
      results: [place(job, "speed_limit")],
      inputs: [surface, runout],
      at: undefined,
    });
    const result = place(copy, "speed_limit");
    let compared = 0;
    for (let row = 0; row < 50; row++) {
      for (let column = 0; column < 40; column++) {
        const [down, across] = [6 + row / 2, 2 + column / 4];
        copy.setCells([
          { ...surface.place, text: String(down) },
          { ...runout.place, text: String(across) },
        ]);
        const direct = copy.cell(result.sheet, result.row, result.column).value;
        expect([down, across, job.cell(sheet, row + 2, column + 1).value]).toEqual([down, across, direct]);
        compared += 1;
      }
    }
    expect(compared).toBe(2000);
    // Not all the same, or the comparison would say little.
    const shown = new Set(Array.from({ length: 50 }, (_, row) => job.cell(sheet, row + 2, 40).value));
    expect(shown.size).toBeGreaterThan(5);
  }, 240_000);

  test("through the pass plan and the wires it is the same, words and errors included", () => {
    const job = createJob(fullJob, undefined, silent);
    const copy = createJob(fullJob, undefined, silent);
    const results = ["plan_in_short", "wire_target", "slide_to_wind", "depth"].map((name) =>
      place(job, name),
    );
    const thread: TableInput = {
      place: place(job, "thread"),
      values: { kind: "list", texts: ["1/2-12 BSW", "1/2-13 UNC-2A", "M12x1.75-6g", "nonsense", ""] },
    };
    const sheet = make(job, { results, inputs: [thread], at: undefined });
    const designations = ["1/2-12 BSW", "1/2-13 UNC-2A", "M12x1.75-6g", "nonsense"];
    for (const [row, text] of designations.entries()) {
      copy.setCells([{ ...thread.place, text }]);
      for (const [column, { sheet: on, row: r, column: c }] of results.entries()) {
        const direct = copy.cell(on, r, c).value;
        const shown = job.cell(sheet, row + 2, column + 1).value;
        const plain = (value: CellValue) =>
          typeof value === "object" && value !== null ? [value.error, value.message] : value;
        expect([text, plain(shown)]).toEqual([text, plain(direct)]);
      }
    }
    expect(job.cell(sheet, 5, 2).value).toMatchObject({ error: "#VALUE!" });
  }, 60_000);
});

describe("in a job", () => {
  const cells = {
    A1: "Side",
    B1: "3",
    A2: "Height",
    B2: "4",
    A3: "Area",
    B3: "=B1*B2",
    A4: "Round",
    B4: "=2*(B1+B2)",
  };

  function withTable(): Job {
    const job = jobOf(cells, { names: { area: "Job!B3" } });
    make(job, {
      results: [place(job, "area"), place(job, "B4")],
      inputs: [steps(job, "B1", 1, 0.1, 3)],
      at: { sheet: "Job", row: 9, column: 3 },
    });
    return job;
  }

  test("a table of one input has a line for each value and a column for each result", () => {
    const job = withTable();
    const { cells: now } = job.document.sheets[0]!;
    expect(now).toMatchObject({
      D10: "What if Side changes",
      D11: "Side",
      E11: "Area",
      F11: "Round",
      D12: "1",
      D13: "1.1",
      D14: "1.2",
      E13: "=MULTIPLE.OPERATIONS(area,$B$1,$D13)",
      F14: "=MULTIPLE.OPERATIONS($B$4,$B$1,$D14)",
    });
    expect(["E12", "E13", "F12", "F14"].map((name) => at(job, name))).toEqual([4, 4.4, 10, 10.4]);
  });

  test("it is one step: undo takes all of it away and redo brings it back", () => {
    const job = withTable();
    const made = job.document;
    expect(job.canUndo).toBe("Made a what-if table of 6 values in Job!D10:F14");
    job.undo();
    expect(job.document.sheets[0]!.cells).toEqual(cells);
    expect(job.document.sheets[0]!.formats).toEqual({});
    expect(at(job, "E13")).toBeNull();
    job.redo();
    expect(job.document).toEqual(made);
    expect(at(job, "E13")).toBe(4.4);
  });

  test("it follows inputs, values of its own and formulas, and feeds other formulas", () => {
    const job = withTable();
    type(job, { H1: "=MAX(E12:E14)", H2: "=INDEX(E12:F14,2,2)" });
    expect([at(job, "H1"), at(job, "H2")]).toEqual([4.8, 10.2]);
    type(job, { B2: "5" });
    expect([at(job, "E12"), at(job, "H1"), at(job, "H2")]).toEqual([5, 6, 12.2]);
    type(job, { D14: "10" });
    expect([at(job, "E14"), at(job, "H1")]).toEqual([50, 50]);
    type(job, { B3: "=B1-B2" });
    expect([at(job, "E14"), at(job, "H1")]).toEqual([5, 5]);
    job.undo();
    expect(at(job, "E14")).toBe(50);
  });

  test("the result itself, and everything but the table, stays as it is", () => {
    const job = withTable();
    expect([at(job, "B1"), at(job, "B3"), at(job, "B4")]).toEqual([3, 12, 14]);
  });

  test("two inputs: the first goes down, the second across", () => {
    const job = jobOf(cells);
    const sheet = make(job, {
      results: [place(job, "B3")],
      inputs: [steps(job, "B1", 1, 1, 2), steps(job, "B2", 10, 10, 3)],
      at: undefined,
    });
    expect(sheet).toBe("What if");
    const { cells: now } = job.document.sheets[1]!;
    expect(now).toMatchObject({
      A1: "Area, by Side down and Height across",
      A2: "Area",
      B2: "10",
      D2: "30",
      A4: "2",
      C4: "=MULTIPLE.OPERATIONS(Job!$B$3,Job!$B$1,$A4,Job!$B$2,C$2)",
    });
    expect(["B3", "C3", "D3", "B4", "C4", "D4"].map((name) => at(job, name, sheet))).toEqual([
      10, 20, 30, 20, 40, 60,
    ]);
    job.undo();
    expect(job.document.sheets).toHaveLength(1);
  });

  test("values may stand in cells, blanks between them left out; the table then follows those", () => {
    const job = jobOf({ ...cells, J1: "7", J3: "8" });
    const area = areaFrom(job, "J1:J4", "Job");
    if (typeof area === "string") throw new Error(area);
    const sheet = make(job, {
      results: [place(job, "B3")],
      inputs: [{ place: place(job, "B1"), values: { kind: "cells", area } }],
      at: undefined,
    });
    expect(job.document.sheets[1]!.cells).toMatchObject({ A3: "=Job!J1", A4: "=Job!J3" });
    expect([at(job, "B3", sheet), at(job, "B4", sheet), at(job, "B5", sheet)]).toEqual([28, 32, null]);
    type(job, { J3: "9" });
    expect(at(job, "B4", sheet)).toBe(36);
  });

  test("looks come from the cells that are tabulated, and blanks that were written can be typed over", () => {
    const job = jobOf(cells);
    job.setFormat("Job", "B3", { as: "decimals", places: 3, unit: "mm2", role: "key" });
    job.setFormat("Job", "B1", { as: "length", places: 2, role: "input" });
    const sheet = make(job, {
      results: [place(job, "B3")],
      inputs: [steps(job, "B1", 1, 1, 2)],
      at: undefined,
    });
    const format = (name: string) => {
      const { row, column } = parseCell(name)!;
      return job.cell(sheet, row, column).format;
    };
    expect(format("B4")).toEqual({ as: "decimals", places: 3, unit: "mm2" });
    expect(format("A3")).toEqual({ as: "length", places: 2, role: "input" });
    expect(format("B2")).toEqual({ role: "column" });
    type(job, { A4: "25.4 mm" }, sheet);
    expect(at(job, "B4", sheet)).toBeCloseTo(101.6, 12);
  });

  test("rows put in, a sheet renamed and a cell copied leave it right", () => {
    const job = withTable();
    insertLines(job, "Job", "row", 1, 2);
    job.renameSheet("Job", "Side by side");
    // Row 12 is row 14 now, and so on: 1.1 x 4.
    expect(at(job, "E15")).toBe(4.4);
    type(job, { B4: "5" });
    expect(at(job, "E15")).toBe(5.5);
    type(job, { G15: moveFormula(job.cell("Side by side", 14, 4).text, 0, 2) });
    expect(at(job, "G15")).toBe(5.5);
    job.setCells([{ sheet: "Side by side", row: 14, column: 3, text: "2" }]);
    expect([at(job, "E15"), at(job, "F15"), at(job, "G15")]).toEqual([10, 14, 10]);
    for (let step = 0; step < 5; step++) job.undo();
    expect(at(job, "E13")).toBe(4.4);
  });

  test("a job with a table is kept and read back as it is", () => {
    const job = withTable();
    expect(readJob(writeJob(job.document))).toEqual(job.document);
    expect(at(createJob(readJob(writeJob(job.document)), undefined, silent), "E13")).toBe(4.4);
  });
});

describe("what cannot be", () => {
  const cells = { A1: "1", A2: "=A1*2", B1: "taken", D1: "=SEQUENCE(3)" };
  const job = jobOf(cells, { names: { wide: "Job!A1:A2" } });
  const base = { results: [place(job, "A2")], at: undefined, over: false };
  const problem = (request: Partial<TableRequest>) => {
    const plan = planTable(job, { ...base, inputs: [steps(job, "A1", 1, 1, 3)], ...request });
    return "problem" in plan ? plan.problem : "made";
  };

  test("is answered with the reason, and changes nothing", () => {
    expect(problem({})).toBe("made");
    expect(problem({ results: [] })).toBe("a table needs a result and an input");
    expect(
      problem({
        results: [place(job, "A2"), place(job, "A1")],
        inputs: [steps(job, "A1", 1, 1, 3), steps(job, "C1", 1, 1, 3)],
      }),
    ).toMatch(/two inputs shows one result/);
    expect(problem({ inputs: [steps(job, "A1", 1, 1, 3), steps(job, "A1", 1, 1, 3)] })).toMatch(
      /the same cell/,
    );
    expect(problem({ inputs: [steps(job, "A1", 1, 1, 501)] })).toMatch(/whole number from 1 to 500/);
    expect(problem({ inputs: [steps(job, "A1", 1, 1, 0)] })).toMatch(/whole number from 1 to 500/);
    expect(problem({ inputs: [steps(job, "A1", Number.NaN, 1, 3)] })).toMatch(/must be numbers/);
    expect(problem({ inputs: [steps(job, "A1", 1, 1, 200), steps(job, "C1", 1, 1, 200)] })).toMatch(
      /may have 20000 values/,
    );
    expect(
      problem({ inputs: [{ place: place(job, "A1"), values: { kind: "list", texts: [" "] } }] }),
    ).toMatch(/no values/);
    expect(problem({ inputs: [steps(job, "D2", 1, 1, 3)] })).toBe(
      "Job!D2 is filled by the formula in D1 and can't be replaced",
    );
    expect(job.document.sheets[0]!.cells).toEqual(cells);
    expect(job.canUndo).toBeUndefined();
  });

  test("nor is anything written over what is there, unless that is wished, and never over its own sources", () => {
    const taken = planTable(job, {
      ...base,
      inputs: [steps(job, "A1", 1, 1, 3)],
      at: { sheet: "Job", row: 0, column: 1 },
    });
    expect(taken).toEqual({ problem: "B1 is not empty", taken: "B1" });
    const inputs = [steps(job, "A1", 1, 1, 3)];
    expect(problem({ inputs, at: { sheet: "Job", row: 0, column: 1 }, over: true })).toBe("made");
    expect(problem({ inputs, at: { sheet: "Job", row: 0, column: 0 }, over: true })).toMatch(
      /cover what it is reckoned from/,
    );
    expect(problem({ inputs, at: { sheet: "Job", row: 0, column: 3 }, over: true })).toMatch(
      /filled by the formula in D1/,
    );
    expect(problem({ inputs, at: { sheet: "Job", row: limits.rows - 2, column: 8 } })).toMatch(
      /does not fit/,
    );
  });

  test("cells that are named wrongly are told apart", () => {
    expect(placeFrom(job, "wide", "Job")).toBe("wide is 2 cells: name one of them");
    expect(placeFrom(job, "nothing", "Job")).toBe('there is no cell or name "nothing"');
    expect(placeFrom(job, "Gone!A1", "Job")).toBe('there is no sheet "Gone"');
    expect(placeFrom(job, " ", "Job")).toMatch(/^name a cell/);
    expect(placesFrom(job, "wide; b1", "Job", 5)).toHaveLength(3);
    expect(placesFrom(job, "A1:A9", "Job", 5)).toBe("at most 5 cells, please");
  });
});

test("the blanks that a result depends on are offered, numbers before words", async () => {
  const job = createJob(fullJob, undefined, silent);
  const names = (await inputsOf(job, place(job, "wire_target"))).map((one) => wordsFor(job, one));
  expect(names).toContain("thread");
  expect(names).toContain("nose");
  expect(names.indexOf("nose")).toBeLessThan(names.indexOf("thread"));
  expect(names).not.toContain("runout");
  expect(labelOf(job, place(job, "depth"))).not.toBe("depth");
});

describe("in slices", () => {
  beforeEach(() => {
    // Every look at the clock is 6 ms later: two values to a slice.
    let time = 0;
    vi.spyOn(performance, "now").mockImplementation(() => {
      time += 6;
      return time;
    });
  });
  afterEach(() => {
    vi.restoreAllMocks();
  });

  function sliced() {
    const cells: Record<string, string> = { A1: "2", A2: "3", A3: "=A1^A2" };
    for (let row = 1; row <= 60; row++) {
      cells[`C${row}`] = String(row);
      cells[`D${row}`] = `=MULTIPLE.OPERATIONS($A$3,$A$1,C${row})`;
    }
    cells.F1 = "=SUM(D1:D60)";
    let work: (() => void) | undefined;
    const document = { ...jobOf(cells).document };
    const job = createJob(document, undefined, silent, (next) => {
      work = next;
    });
    const heard: string[] = [];
    job.subscribe(({ what, values }) => heard.push(values ? "values" : what));
    const turn = () => {
      const next = work;
      work = undefined;
      next?.();
      return next !== undefined;
    };
    return { job, turn, heard, cellD: (row: number) => job.cell("Job", row - 1, 3) };
  }
  const cubes = (to: number) => ((to * (to + 1)) / 2) ** 2;

  test("the job can be used at once; values come when the page has had its turn, and listeners hear of them", () => {
    const { job, turn, heard, cellD } = sliced();
    expect(job.reckoning).toEqual({ done: 2, of: 60, stopped: false });
    expect([cellD(1).value, cellD(1).stale, cellD(60).value, cellD(60).stale]).toEqual([
      1,
      undefined,
      null,
      true,
    ]);
    expect(job.cell("Job", 0, 5)).toMatchObject({ value: null, stale: true });
    while (turn());
    expect(job.reckoning).toBeUndefined();
    expect(at(job, "F1")).toBe(cubes(60));
    expect(heard).toContain("values");
    heard.length = 0;
    type(job, { A2: "1" });
    expect(heard).toEqual(["Typed in Job!A2"]);
    // What was there stays until the new value has come.
    expect(cellD(60)).toMatchObject({ value: 216_000, stale: true });
    expect(job.cell("Job", 0, 5).stale).toBe(true);
    while (turn());
    expect(at(job, "F1")).toBe(1830);
    expect(heard.slice(1)).toContain("values");
    expect(new Set(heard.slice(1)).size).toBe(1);
  });

  test("stopped, it leaves what is not known stale until it goes on or something is typed", () => {
    const { job, turn, cellD } = sliced();
    while (turn());
    type(job, { A2: "2" });
    job.stopReckoning();
    expect(job.reckoning).toEqual({ done: 2, of: 60, stopped: true });
    while (turn());
    expect(job.reckoning).toEqual({ done: 2, of: 60, stopped: true });
    expect(cellD(60)).toMatchObject({ value: 216_000, stale: true });
    job.goOnReckoning();
    turn();
    expect(job.reckoning).toEqual({ done: 4, of: 60, stopped: false });
    job.stopReckoning();
    type(job, { C1: "7" });
    while (turn());
    expect(job.reckoning).toBeUndefined();
    expect([cellD(60).value, cellD(60).stale, cellD(1).value]).toEqual([3600, undefined, 49]);
  });
});
