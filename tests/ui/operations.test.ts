/** What the route card counts, with numbers and errors laid out by hand. */
import { describe, expect, test, vi } from "vitest";
import { createJob, type Job } from "../../src/job/job.ts";
import { planTable } from "../../src/job/whatif.ts";
import { duplicateSheet } from "../../src/job/whole-sheets.ts";
import { factsOf, nextNumber, operationsOf, troubleWords } from "../../src/ui/operations.ts";
import { madeDocument, madeSheet } from "../job/made.ts";

/** A sheet for each row: its name, the number it says, and its cells. */
function jobOf(
  ...sheets: readonly [name: string, operation?: number, cells?: Record<string, string>][]
): Job {
  return createJob(
    madeDocument(
      sheets.map(([name, operation, cells = {}]) =>
        madeSheet(name, cells, operation === undefined ? {} : { operation }),
      ),
    ),
  );
}

const numbers = (job: Job) => operationsOf(job).map(({ number }) => number);

describe("numbers on the route card", () => {
  test("are those of the sheets; a sheet without one comes ten on, or half way to the next", () => {
    expect(numbers(jobOf(["A"], ["B"], ["C"]))).toEqual([10, 20, 30]);
    const mixed = jobOf(["A", 10], ["B"], ["C", 20], ["D"]);
    expect(numbers(mixed)).toEqual([10, 15, 20, 30]);
    expect(nextNumber(operationsOf(mixed))).toBe(40);
  });

  test("a what-if table's own sheet has none, nor has a copy of it, and the others are counted without it", () => {
    const job = jobOf(["A", 10, { B1: "2", B2: "=B1*2" }], ["B", 20]);
    const made = planTable(job, {
      results: [{ sheet: "A", row: 1, column: 1 }],
      inputs: [{ place: { sheet: "A", row: 0, column: 1 }, values: { kind: "list", texts: ["1", "3"] } }],
      at: undefined,
      over: false,
    });
    if ("problem" in made) throw new Error(made.problem);
    job.put(made.document, made.what);
    const name = job.document.sheets.at(-1)!.name;
    duplicateSheet(job, name);
    job.addSheet("Last");
    expect(numbers(job)).toEqual([10, 20, undefined, undefined, 30]);
    const fact = (sheet: string) => factsOf(job, sheet, "").find(({ label }) => label === "Operation")?.value;
    expect([fact("A"), fact(name)]).toEqual(["10 of 30", "none"]);
  });
});

describe("errors on the route card", () => {
  test("are counted sheet by sheet, with the first by rows, and follow the cells", () => {
    const job = jobOf(
      ["A", 10, { C9: "=1/0", B2: '=SQRT("x")', A3: "=B2", A1: "#N/A as text" }],
      ["B", 20, { A1: "=A!B1" }],
    );
    const [a, b] = operationsOf(job);
    expect(a).toMatchObject({ errors: 3, firstError: { sheet: "A", row: 1, column: 1 } });
    expect(b).toMatchObject({ errors: 0, firstError: undefined });
    job.setCells([{ sheet: "A", row: 0, column: 1, text: "=NOSUCH(1)" }]);
    expect(operationsOf(job).map(({ errors }) => errors)).toEqual([4, 1]);
    job.undo();
    expect(operationsOf(job).map(({ errors }) => errors)).toEqual([3, 0]);
  });

  test("of a large job come later, in slices, and are told", async () => {
    const cells = Object.fromEntries(Array.from({ length: 2000 }, (_, row) => [`A${row + 1}`, "=1/B1"]));
    const job = jobOf(["A", 10, cells]);
    const counted = vi.fn();
    expect(operationsOf(job, counted)[0]!.errors).toBe(0);
    await vi.waitFor(() => expect(counted).toHaveBeenCalledOnce());
    expect(operationsOf(job)[0]!.errors).toBe(2000);
    job.setCells([{ sheet: "A", row: 0, column: 1, text: "2" }]);
    // The last count stands until the new one is there.
    expect(operationsOf(job)[0]!.errors).toBe(2000);
    await vi.waitFor(() => expect(operationsOf(job)[0]!.errors).toBe(0));
  });

  test("are said before cautions, each in its number", () => {
    expect(troubleWords({ errors: 0, cautions: 0 })).toBe("");
    expect(troubleWords({ errors: 1, cautions: 0 })).toBe("1\u00a0error");
    expect(troubleWords({ errors: 2, cautions: 1 })).toBe("2\u00a0errors, 1\u00a0caution");
  });
});
