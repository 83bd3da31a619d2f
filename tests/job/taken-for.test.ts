import { describe, expect, test } from "vitest";
import { readingEdits, readingsOf } from "../../src/job/bench.ts";
import { proofOf } from "../../src/job/bench-proof.ts";
import type { SheetDocument } from "../../src/job/document.ts";
import { readJob } from "../../src/job/file.ts";
import { showValue } from "../../src/job/format.ts";
import { createJob, type Job } from "../../src/job/job.ts";
import { InProcess } from "../engine/in-process.ts";

const names = {
  unit: "Job!C1",
  thread: "Job!B1",
  measured: "Job!B2",
  measured_for: "Job!C2",
  reading_for: "Job!B3",
  readings: "Job!A5:B7",
  readings_for: "Job!C5:C7",
};

function jobWith(more: Partial<SheetDocument> = {}, far?: InProcess) {
  const job = createJob(
    readJob(
      JSON.stringify({
        format: "halfangle job",
        version: 1,
        title: "Taken for",
        purpose: "",
        scenario: "",
        source: "",
        cautions: [],
        names,
        sheets: [{ name: "Job", cells: { B1: "M12", B3: '=thread&", wire 1.1 mm"' }, ...more }],
        check: {},
      }),
    ),
    undefined,
    () => {},
    undefined,
    far?.setting,
  );
  const type = (cell: string, text: string) => {
    const column = "ABC".indexOf(cell[0]!);
    return job.setCells([{ sheet: "Job", row: Number(cell.slice(1)) - 1, column, text }]);
  };
  const value = (cell: string) => job.cell("Job", Number(cell.slice(1)) - 1, "ABC".indexOf(cell[0]!)).value;
  return { job, type, value };
}

describe("what a reading was taken for", () => {
  test("is written beside it in the same step, and stays when the thread changes", () => {
    const { job, type, value } = jobWith();
    type("B2", "12.9");
    expect(value("C2")).toBe("M12, wire 1.1 mm");
    expect(job.canUndo).toBe("Typed in Job!B2");
    type("B1", "M16");
    expect([value("C2"), value("B3")]).toEqual(["M12, wire 1.1 mm", "M16, wire 1.1 mm"]);
    job.undo();
    job.undo();
    expect([value("B2"), value("C2")]).toEqual([null, null]);
    job.redo();
    expect([value("B2"), value("C2")]).toEqual([12.9, "M12, wire 1.1 mm"]);
  });

  test("goes with a reading that is emptied, and a formula belongs to nothing", () => {
    const { type, value } = jobWith();
    type("B2", "12.9");
    type("B2", "");
    expect(value("C2")).toBeNull();
    type("B2", "12.9");
    type("B2", "=12.8+0.1");
    expect(value("C2")).toBeNull();
  });

  test("is not the thread of an edit before, where the new one is not reckoned yet", () => {
    const far = new InProcess();
    const { type, value } = jobWith({}, far);
    far.settle();
    type("B1", "M16");
    type("B2", "12.9");
    far.settle();
    expect(value("C2")).toBe("a thread not reckoned yet");
    type("B2", "12.8");
    expect(value("C2")).toBe("M16, wire 1.1 mm");
  });

  test("is what the same edit says where it says so, as a paste of both does", () => {
    const { job, value } = jobWith();
    job.setCells([
      { sheet: "Job", row: 1, column: 1, text: "12.9" },
      { sheet: "Job", row: 1, column: 2, text: "M10" },
    ]);
    expect(value("C2")).toBe("M10");
  });

  test("is left alone where it is locked, and the reading is kept", () => {
    const { type, value } = jobWith({ locked: ["C2"] });
    expect(type("B2", "12.9")).toBeUndefined();
    expect([value("B2"), value("C2")]).toEqual([12.9, null]);
  });

  test("is kept row by row in the log, and tells the rows that are for another thread", () => {
    const { job, type, value } = jobWith();
    job.setCells(readingEdits(job, "12.9", undefined));
    type("B1", "M16");
    job.setCells(readingEdits(job, "16.9", undefined));
    expect([value("C5"), value("C6"), value("C2")]).toEqual([
      "M12, wire 1.1 mm",
      "M16, wire 1.1 mm",
      "M16, wire 1.1 mm",
    ]);
    expect(readingsOf(job)).toEqual([
      { after: "before pass 1", reading: "12.9", index: 0, forOther: true },
      { after: "before pass 1", reading: "16.9", index: 1 },
    ]);
  });

  test("is nothing in a job that does not name it", () => {
    const { job, type } = jobWith();
    job.removeName("measured_for");
    job.removeName("readings_for");
    type("B2", "12.9");
    expect(job.document.sheets[0]!.cells).toEqual({ B1: "M12", B2: "12.9", B3: '=thread&", wire 1.1 mm"' });
  });
});

describe("a reading that was typed in the other unit", () => {
  const shown = (job: Job, row: number) => {
    const { value, format } = job.cell("Job", row, 1);
    return showValue(value, format, job.unit).text;
  };
  const lengths = { B2: { as: "length" }, "B5:B7": { as: "length" } } as const;

  test("keeps the unit that it was taken in beside its figures, on the sheet and at the bench", () => {
    const { job, type } = jobWith({
      cells: { B1: "M12", B3: '=thread&", wire 1.1 "&unit', C1: "mm" },
      formats: lengths,
    });
    type("B2", "20.331");
    type("B5", "20.4");
    expect([shown(job, 1), shown(job, 4)]).toEqual(["20.3310 mm", "20.4000 mm"]);
    type("C1", "in");
    expect([shown(job, 1), shown(job, 4)]).toEqual(["20.3310 mm", "20.4000 mm"]);
    expect(proofOf(job).words).toContain("the reading 20.3310 mm was taken for M12, wire 1.1 mm");
    expect(readingsOf(job).map(({ reading }) => reading)).toEqual(["20.4000 mm"]);
    type("B2", "0.8");
    expect(shown(job, 1)).toBe("0.80000 in");
    type("C1", "mm");
    expect(shown(job, 1)).toBe("0.80000 in");
  });

  // 25.4 mm are an inch: what was typed with its unit, or reckoned, follows the job.
  test("follows where it says its unit itself, and where it is a formula", () => {
    const { job, type } = jobWith({
      cells: { B1: "M12", B3: '=thread&", wire 1.1 "&unit', C1: "mm" },
      formats: lengths,
    });
    type("B2", "25.4mm");
    type("B5", '=CONVERT(1,"in",unit)');
    expect([shown(job, 1), shown(job, 4)]).toEqual(["25.4000 mm", "25.4000 mm"]);
    type("C1", "in");
    expect([shown(job, 1), shown(job, 4)]).toEqual(["1.00000 in", "1.00000 in"]);
  });
});
