import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { JobDocument } from "../../src/job/document.ts";
import { readJob, writeJob } from "../../src/job/file.ts";
import { createJob, type Job, type JobChange } from "../../src/job/job.ts";
import { samples } from "../engine/samples.ts";

function documentWith(cells: Record<string, string>, more: Record<string, unknown> = {}): JobDocument {
  return readJob(
    JSON.stringify({
      format: "halfangle job",
      version: 1,
      title: "Made up",
      sheets: [
        { name: "Thread", cells },
        { name: "Bore 2", cells: { A1: "5" } },
      ],
      ...more,
    }),
  );
}
const jobWith = (cells: Record<string, string>, more: Record<string, unknown> = {}) =>
  createJob(documentWith(cells, more), samples, () => {});
const type = (job: Job, row: number, column: number, text: string, sheet = "Thread") =>
  job.setCells([{ sheet, row, column, text }]);

describe("cells", () => {
  test("show the text as typed, the value, and what belongs to the cell", () => {
    const job = jobWith(
      { A1: "8.5", B1: "=TEST.DOUBTFUL(A1)", A3: "=TEST.ROWS(2)", D1: "= 1E2 " },
      {
        names: { bore: "Thread!A1", all: "Thread!A1:B9" },
        sheets: [
          {
            name: "Thread",
            cells: { A1: "8.5", B1: "=TEST.DOUBTFUL(A1)", A3: "=TEST.ROWS(2)", D1: "= 1E2 " },
            formats: {
              B1: { places: 2 },
              "A1:B1": { as: "decimals", places: 1 },
              "A1:Z9": { places: 5, bold: true },
            },
            choices: { A1: ["8.5", "9"] },
            notes: { A1: "measured" },
          },
        ],
      },
    );
    expect(job.cell("Thread", 0, 0)).toEqual({
      text: "8.5",
      value: 8.5,
      format: { as: "decimals", places: 1, bold: true },
      choices: ["8.5", "9"],
      note: "measured",
      name: "bore",
    });
    expect(job.cell("Thread", 0, 1)).toEqual({
      text: "=TEST.DOUBTFUL(A1)",
      value: 8.5,
      format: { as: "decimals", places: 2, bold: true },
      caution: "bore 8.5 is above 8",
    });
    expect(job.cell("Thread", 3, 1)).toEqual({
      text: "",
      value: "row 2",
      format: { places: 5, bold: true },
      spilledFrom: "A3",
    });
    expect(job.cell("Thread", 0, 3)).toMatchObject({ text: "= 1E2 ", value: 100 });
    expect(job.cell("Thread", 99, 9)).toEqual({ text: "", value: null, format: {} });
    expect(job.cell("Nowhere", 0, 0)).toEqual({ text: "", value: null, format: {} });
  });

  test("text that the gate refuses stays as typed, with the reason as its value", () => {
    const job = jobWith({});
    type(job, 0, 0, "=(1");
    expect(job.cell("Thread", 0, 0)).toMatchObject({
      text: "=(1",
      value: { error: "#ERROR!", message: expect.stringContaining("not closed") },
    });
  });

  test("cells outside the largest sheet and on unknown sheets are left alone", () => {
    const job = jobWith({});
    type(job, 100_000, 0, "x");
    type(job, 0, 702, "x");
    type(job, -1, 0, "x");
    type(job, 0, 0, "x", "Nowhere");
    expect(job.canUndo).toBeUndefined();
  });

  test("a sheet grows with what is typed into it", () => {
    const job = jobWith({});
    type(job, 299, 30, "x");
    expect(job.document.sheets[0]).toMatchObject({ rows: 300, columnCount: 31 });
  });
});

describe("the unit", () => {
  test("is the value of the cell named unit, and mm without one", () => {
    expect(jobWith({}).unit).toBe("mm");
    const job = jobWith({ A1: "in", A2: '=IF(A1="in","IN","mm")' }, { names: { Unit: "Thread!A2" } });
    expect(job.unit).toBe("in");
    type(job, 0, 0, "mm");
    expect(job.unit).toBe("mm");
  });
});

describe("history", () => {
  test("every command is one step with its words, undone and done again", () => {
    const job = jobWith({ A1: "1", B1: "=A1*2" });
    const told: JobChange[] = [];
    const stop = job.subscribe((change) => told.push(change));
    type(job, 0, 0, "4");
    expect(job.cell("Thread", 0, 1).value).toBe(8);
    expect(job.canUndo).toBe("Typed in Thread!A1");
    job.setCells(
      [0, 1, 2].map((row) => ({ sheet: "Bore 2", row, column: 0, text: "" })),
      undefined,
    );
    expect(job.canUndo).toBe("Emptied 'Bore 2'!A1");
    job.undo();
    job.undo();
    expect(job.cell("Thread", 0, 1).value).toBe(2);
    expect(job.canUndo).toBeUndefined();
    expect(job.canRedo).toBe("Typed in Thread!A1");
    job.redo();
    expect(job.cell("Thread", 0, 1).value).toBe(8);
    stop();
    job.redo();
    expect(told.map((change) => change.what)).toEqual([
      "Typed in Thread!A1",
      "Emptied 'Bore 2'!A1",
      "Undid: Emptied 'Bore 2'!A1",
      "Undid: Typed in Thread!A1",
      "Did again: Typed in Thread!A1",
    ]);
    expect(told.at(-1)!.document).toMatchObject({ title: "Made up" });
  });

  test("typing what is there already is no step", () => {
    const job = jobWith({ A1: "1" });
    type(job, 0, 0, "1");
    type(job, 5, 5, "");
    job.signOff("Thread", false);
    job.moveSheet("Thread", 0);
    job.setColumnWidth("Nowhere", 0, 50);
    job.setFormat("Nowhere", "A1", { bold: true });
    job.setFormat("Thread", "nonsense", { bold: true });
    expect(job.canUndo).toBeUndefined();
  });

  test("of two texts for one cell in one step the last counts", () => {
    const job = jobWith({ A1: "1" });
    const both = (first: string, second: string) =>
      job.setCells([first, second].map((text) => ({ sheet: "Thread", row: 0, column: 0, text })));
    both("2", "1");
    expect(job.canUndo).toBeUndefined();
    both("2", "3");
    expect(job.cell("Thread", 0, 0).value).toBe(3);
    job.setColumnWidth("Thread", 0, 1e9);
    expect(readJob(writeJob(job.document)).sheets[0]!.columns).toEqual({ A: 4000 });
  });

  test("a step after an undo drops what could be done again", () => {
    const job = jobWith({});
    type(job, 0, 0, "1");
    job.undo();
    type(job, 0, 0, "2");
    expect(job.canRedo).toBeUndefined();
  });

  test("undo on nothing and redo on nothing change nothing", () => {
    const job = jobWith({});
    job.undo();
    job.redo();
    expect(job.canUndo).toBeUndefined();
  });
});

describe("formats", () => {
  test("a format laid over a range wins over all that was there, attribute by attribute", () => {
    const job = jobWith({});
    job.setFormat("Thread", "A1", { as: "decimals", places: 3 });
    job.setFormat("Thread", "A1:B2", { places: 1 });
    job.setFormat("Thread", "B1:C1", { bold: true });
    job.setFormat("Thread", "$b$2:a1", { places: 4 });
    expect(job.cell("Thread", 0, 0).format).toEqual({ as: "decimals", places: 4 });
    expect(job.cell("Thread", 0, 1).format).toEqual({ places: 4, bold: true });
    expect(job.cell("Thread", 0, 2).format).toEqual({ bold: true });
    expect(Object.keys(job.document.sheets[0]!.formats)).toContain("A1:B2");
  });

  test("of two ranges that overlap the later command wins", () => {
    const job = jobWith({});
    job.setFormat("Thread", "A1:B2", { places: 1 });
    job.setFormat("Thread", "B2:C3", { places: 4 });
    expect(job.cell("Thread", 1, 1).format).toEqual({ places: 4 });
    expect(job.cell("Thread", 0, 0).format).toEqual({ places: 1 });
  });

  test("widths and signing off are kept", () => {
    const job = jobWith({});
    job.setColumnWidth("Thread", 27, 150.4);
    job.signOff("Thread", true);
    expect(job.document.sheets[0]).toMatchObject({ columns: { AB: 150 }, signedOff: true });
    job.signOff("Thread", false);
    expect(job.document.sheets[0]).not.toHaveProperty("signedOff");
  });
});

describe("sheets", () => {
  test("a new sheet gets a free name", () => {
    const job = jobWith({});
    expect(job.addSheet()).toBe("Sheet 1");
    expect(job.addSheet()).toBe("Sheet 2");
    expect(job.addSheet("thread")).toBe("thread 2");
    expect(job.addSheet("Bore 2")).toBe("Bore 3");
    expect(job.addSheet("a:b")).toBe("Sheet 3");
    type(job, 0, 0, "='Bore 2'!A1", "Sheet 1");
    expect(job.cell("Sheet 1", 0, 0).value).toBe(5);
  });

  test("renaming a sheet takes formulas, names and checks along", async () => {
    const job = jobWith(
      { A1: "='Bore 2'!A1+'bore 2'!A1", A2: "'Bore 2'!A1 is text", A3: "=\"'Bore 2'!A1\"" },
      { names: { bore: "'Bore 2'!A1" }, check: { "'Bore 2'!A1": { value: 5, source: "typed" } } },
    );
    expect(job.renameSheet("Bore 2", "Hole")).toBeUndefined();
    expect(job.document.sheets[0]!.cells).toEqual({
      A1: "=Hole!A1+Hole!A1",
      A2: "'Bore 2'!A1 is text",
      A3: "=\"'Bore 2'!A1\"",
    });
    expect(job.document.names).toEqual({ bore: "Hole!A1" });
    expect(Object.keys(job.document.check)).toEqual(["Hole!A1"]);
    expect(job.cell("Thread", 0, 0).value).toBe(10);
    expect(await job.evaluate("=bore")).toBe(5);
    expect(job.renameSheet("Hole", "It's 2")).toBeUndefined();
    expect(job.cell("Thread", 0, 0)).toMatchObject({ text: "='It''s 2'!A1+'It''s 2'!A1", value: 10 });
    job.undo();
    job.undo();
    expect(job.cell("Thread", 0, 0)).toMatchObject({ text: "='Bore 2'!A1+'bore 2'!A1", value: 10 });
  });

  test("a name that cannot be used is answered with the reason", () => {
    const job = jobWith({});
    expect(job.renameSheet("Thread", "bore 2")).toContain("already");
    expect(job.renameSheet("Thread", " ")).toContain("must have a name");
    expect(job.renameSheet("Thread", "a!b")).toContain("none of");
    expect(job.renameSheet("Thread", "__proto__")).toContain("cannot be used");
    expect(job.renameSheet("Nowhere", "x")).toContain("no sheet");
    expect(job.canUndo).toBeUndefined();
    expect(job.renameSheet("Thread", "THREAD")).toBeUndefined();
  });

  test("removing a sheet leaves errors where it was used, and undo brings everything back", () => {
    const job = jobWith({ A1: "='Bore 2'!A1", A2: "=bore" }, { names: { bore: "'Bore 2'!A1" } });
    expect(job.removeSheet("Bore 2")).toBeUndefined();
    expect(job.cell("Thread", 0, 0)).toMatchObject({ text: "='Bore 2'!A1", value: { error: "#REF!" } });
    expect(job.cell("Thread", 1, 0).value).toMatchObject({ error: "#NAME?" });
    expect(job.removeSheet("Thread")).toContain("at least one sheet");
    job.undo();
    expect(job.cell("Thread", 0, 0).value).toBe(5);
    expect(job.cell("Thread", 1, 0).value).toBe(5);
  });

  test("sheets are moved", () => {
    const job = jobWith({});
    job.addSheet("Last");
    job.moveSheet("Last", 0);
    job.moveSheet("Thread", 99);
    expect(job.document.sheets.map((sheet) => sheet.name)).toEqual(["Last", "Bore 2", "Thread"]);
    expect(job.cell("Bore 2", 0, 0).value).toBe(5);
  });
});

describe("names", () => {
  test("a name can be given, used, moved and taken away", () => {
    const job = jobWith({ A1: "3", A2: "4", B1: "=pitch*2", B2: "=SUM(all_of_it)" });
    expect(job.cell("Thread", 0, 1).value).toMatchObject({ error: "#NAME?" });
    expect(job.setName("pitch", "Thread!$A$1")).toBeUndefined();
    expect(job.setName("all_of_it", "Thread!A1:A2")).toBeUndefined();
    expect(job.cell("Thread", 0, 1).value).toBe(6);
    expect(job.cell("Thread", 1, 1).value).toBe(7);
    expect(job.cell("Thread", 0, 0).name).toBe("pitch");
    expect(job.setName("Pitch", "Thread!A2")).toBeUndefined();
    expect(job.document.names).toEqual({ all_of_it: "Thread!A1:A2", Pitch: "Thread!A2" });
    expect(job.cell("Thread", 0, 1).value).toBe(8);
    job.removeName("Pitch");
    expect(job.cell("Thread", 0, 1).value).toMatchObject({ error: "#NAME?" });
    job.undo();
    expect(job.cell("Thread", 0, 1).value).toBe(8);
  });

  test.each([
    ["M10", "reads as a cell: write M_10"],
    ["d2", "write d_2"],
    ["RC1", "reads as"],
    ["pass1", "write pass_1"],
    ["E0", "write E_0"],
    ["pass_1", ""],
    ["Größe", ""],
    ["TRUE", "is a value"],
    ["set over", "write set_over"],
    ["2x", "begins with a letter"],
    ["a-b", "begins with a letter"],
    ["", "at least one letter"],
    ["__proto__", "cannot be used"],
    ["constructor", "cannot be used"],
  ])("the name %s is judged as the engine judges it", async (name, reason) => {
    const job = jobWith({ A1: "3" });
    const problem = job.setName(name, "Thread!A1");
    if (reason === "") expect([problem, await job.evaluate(`=${name}`)]).toEqual([undefined, 3]);
    else expect(problem).toContain(reason);
  });

  test("a name must stand for a place on a sheet that exists", () => {
    const job = jobWith({});
    expect(job.setName("a_b", "A1")).toContain("such as Thread!B2");
    expect(job.setName("a_b", "Gone!A1")).toContain('no sheet "Gone"');
    expect(job.setName("a_b", "Thread!A1:B2:C3")).toContain("such as");
  });
});

// A loaded machine takes its time over hundreds of engines.
const patience = 120_000;

describe("whatever is done to a job", () => {
  const text = fc.oneof(
    fc.constantFrom(
      "",
      "1",
      "2.5",
      "in",
      "'x",
      "=A1+1",
      "=SUM(A1:B3)",
      "=TEST.ROWS(2)",
      "=Thread!B2",
      "=(",
      "=B1/0",
      "=bore",
      "=1.50*A2",
    ),
    fc.string({ maxLength: 6 }),
  );
  const small = fc.nat({ max: 4 });
  const sheet = fc.nat({ max: 3 });
  const kind = fc.constantFrom(
    "add",
    "remove",
    "move",
    "rename",
    "name",
    "unname",
    "format",
    "undo",
    "redo",
    "undo",
    "redo",
  );
  const step = fc.oneof(
    {
      weight: 1,
      arbitrary: fc.record({ kind: fc.constant("type"), sheet, row: small, column: small, text }),
    },
    { weight: 1, arbitrary: fc.record({ kind, sheet, row: small, column: small, text: fc.constant("") }) },
  );
  const sheetsOf = (job: Job) => job.document.sheets.map((each) => each.name);

  interface Step {
    readonly kind: string;
    readonly sheet: number;
    readonly row: number;
    readonly column: number;
    readonly text: string;
  }

  function act(job: Job, { kind, sheet, row, column, text }: Step): void {
    const names = sheetsOf(job);
    const name = names[sheet % names.length]!;
    if (kind === "type") type(job, row, column, text, name);
    else if (kind === "format") job.setFormat(name, row % 2 ? "A1:B2" : "B2", { places: column });
    else if (kind === "add") job.addSheet();
    else if (kind === "remove") job.removeSheet(name);
    else if (kind === "move") job.moveSheet(name, row);
    else if (kind === "rename") job.renameSheet(name, `Sheet ${row} x`);
    else if (kind === "name") job.setName(row % 2 ? "bore" : "pitch_dia", `'${name}'!B${row + 1}`);
    else if (kind === "unname") job.removeName("bore");
    else if (kind === "undo") job.undo();
    else job.redo();
  }

  const valuesOf = (job: Job) =>
    sheetsOf(job).map((name) =>
      Array.from({ length: 7 }, (_, row) =>
        Array.from({ length: 7 }, (_, column) => job.cell(name, row, column)),
      ),
    );

  test(
    "undo back to the start gives the starting file byte for byte, and redo the last one",
    () => {
      fc.assert(
        fc.property(fc.array(step, { maxLength: 14 }), (steps) => {
          const start = documentWith(
            { A1: "1", B2: "=A1*2", C1: "=bore" },
            { names: { bore: "'Bore 2'!A1" } },
          );
          const first = writeJob(start);
          const job = createJob(start, samples, () => {});
          for (const step of steps) act(job, step);
          const last = writeJob(job.document);
          let undone = 0;
          while (job.canUndo !== undefined) {
            job.undo();
            undone += 1;
          }
          expect(writeJob(job.document)).toBe(first);
          for (; undone > 0; undone--) job.redo();
          expect(writeJob(job.document)).toBe(last);
        }),
        { seed: 20261125, numRuns: 25 },
      );
    },
    patience,
  );

  test(
    "its values are those of a job opened from its file, and the file is read back byte for byte",
    () => {
      fc.assert(
        fc.property(fc.array(step, { maxLength: 14 }), (steps) => {
          const job = createJob(
            documentWith({ A1: "1", B2: "=A1*2", D1: "=TEST.ROWS(A1+1)" }),
            samples,
            () => {},
          );
          for (const step of steps) act(job, step);
          const file = writeJob(job.document);
          const opened = readJob(file);
          expect(writeJob(opened)).toBe(file);
          expect(valuesOf(job)).toEqual(valuesOf(createJob(opened, samples, () => {})));
        }),
        { seed: 20261125, numRuns: 25 },
      );
    },
    patience,
  );
});
