/** Seeking in a job. Wanted numbers are closed forms; in the shipped job, what it shows when the found input is typed in. */
import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { parseCell } from "../../src/engine/address.ts";
import type { Place } from "../../src/engine/values.ts";
import { emptySheet } from "../../src/job/changes.ts";
import { readJob } from "../../src/job/file.ts";
import { createJob, type Job } from "../../src/job/job.ts";
import { setLocked } from "../../src/job/locks.ts";
import type { Outcome } from "../../src/job/solve.ts";
import { outcomeWords, type SeekRequest, seek, takeFound } from "../../src/job/solve-job.ts";
import { placeFrom } from "../../src/job/whatif-places.ts";
import { likelyInput, numberFrom, suggestedLimits, suggestedValues } from "../../src/job/whatif-suggest.ts";

const fullJob = readJob(readFileSync(new URL("../../sheets/full-thread-job.json", import.meta.url), "utf8"));
const silent = () => {};

function jobOf(cells: Record<string, string>): Job {
  const sheets = [{ ...emptySheet("Job"), cells }];
  return createJob({ ...fullJob, names: {}, check: {}, sheets }, undefined, silent);
}

function place(job: Job, text: string): Place {
  const found = placeFrom(job, text, "Job");
  if (typeof found === "string") throw new Error(found);
  return found;
}

function request(
  job: Job,
  result: string,
  wanted: number,
  input: string,
  from: number,
  to: number,
): SeekRequest {
  return { result: place(job, result), wanted, input: place(job, input), from, to };
}

async function run(job: Job, asked: SeekRequest): Promise<Outcome> {
  const outcome = await seek(job, asked);
  if (typeof outcome !== "object") throw new Error(outcome);
  return outcome;
}

const plain = { value: String, input: String };

describe("a wanted value", () => {
  test("is reached through cells between, and the input is found as a closed form has it", async () => {
    const job = jobOf({ A1: "1", A2: "=A1*A1", A3: "=A2+1" });
    const asked = request(job, "A3", 3, "A1", 0, 10);
    const outcome = await run(job, asked);
    expect(outcome.kind === "found" && outcome.point.at).toBeCloseTo(Math.SQRT2, 14);
    expect(job.cell("Job", 0, 0).text).toBe("1");
    if (outcome.kind !== "found") return;
    expect(takeFound(job, asked, outcome.point)).toBeUndefined();
    expect(job.cell("Job", 2, 0).value).toBeCloseTo(3, 14);
    expect(job.canUndo).toBe(`Sought Job!A3 3 by Job!A1: ${outcome.point.at}`);
    job.undo();
    expect(job.cell("Job", 0, 0).text).toBe("1");
  });

  test("is reached over the wires of the full thread job", async () => {
    const job = createJob(fullJob, undefined, silent);
    const wanted = 12.65;
    const asked = request(job, "wire_target", wanted, "target", 10.5, 12);
    setLocked(job, "Thread", { top: 21, left: 1, bottom: 21, right: 1 }, false);
    const outcome = await run(job, asked);
    if (outcome.kind !== "found") throw new Error(outcome.kind);
    takeFound(job, asked, outcome.point);
    const { sheet, row, column } = asked.result;
    expect(job.cell(sheet, row, column).value).toBeCloseTo(wanted, 12);
  });

  test("takes its unit and arithmetic where it is typed", async () => {
    const job = jobOf({ A1: "5", A2: "27" });
    expect(await numberFrom(job, "12.5", "Job")).toBe(12.5);
    expect(await numberFrom(job, "1/2 in", "Job")).toBe(12.7);
    expect(await numberFrom(job, "27°30'", "Job")).toBe(27.5);
    expect(await numberFrom(job, "A1/2", "Job")).toBe(2.5);
    expect(await numberFrom(job, "=A2+1", "Job")).toBe(28);
    for (const text of ["", " ", "nonsense", "12,5,7"])
      expect(await numberFrom(job, text, "Job")).toBeUndefined();
  });
});

describe("what comes of it is said", () => {
  const words = async (cells: Record<string, string>, wanted: number, from: number, to: number) => {
    const job = jobOf({ A1: "1", ...cells });
    const asked = request(job, "B1", wanted, "A1", from, to);
    return outcomeWords(job, asked, await run(job, asked), plain);
  };

  test("as a solution", async () => {
    expect(await words({ B1: "=2*A1" }, 7, 0, 10)).toBe("found: Job!A1 3.5 gives Job!B1 7");
  });

  test("as a jump, in whole divisions of a dial", async () => {
    expect(await words({ B1: "=DIAL.ROUND(A1,0.02)" }, 0.31, 0, 1)).toMatch(
      /^no value gives exactly 0\.31: Job!B1 jumps from 0\.3 to 0\.32 near Job!A1 0\.31\d*$/,
    );
  });

  test("as a pole, as no solution with how far the value goes, and as no number", async () => {
    expect(await words({ B1: "=1/(A1-0.3)" }, 0, 0, 1)).toMatch(/never 0; it runs off without end near 0\.3/);
    expect(await words({ B1: "=A1^2+1" }, 0, -1, 3)).toBe(
      "no solution: with Job!A1 from -1 to 3, Job!B1 goes from 1 to 10; nearest is 1 at 0",
    );
    expect(await words({ B1: '="word"&A1' }, 0, -1, 3)).toBe(
      "no solution: with Job!A1 from -1 to 3, Job!B1 is no number anywhere",
    );
    expect(await words({ B1: "=SQRT(-1-A1^2)" }, 0, -1, 3)).toMatch(/is no number anywhere; now it says: /);
  });
});

describe("nothing is sought", () => {
  const job = jobOf({ A1: "1", A2: "=A1", A3: "5", B1: "=SEQUENCE(3)", C1: "locked" });
  setLocked(job, "Job", { top: 0, left: 2, bottom: 0, right: 2 }, true);
  test.each([
    [
      "where the limits are no limits",
      request(job, "A2", 1, "A1", 3, 3),
      "the second limit must be more than the first",
    ],
    [
      "without a number",
      request(job, "A2", Number.NaN, "A1", 1, 3),
      "the wanted value and the limits must be numbers",
    ],
    [
      "by changing the cell itself",
      request(job, "A1", 1, "A1", 1, 3),
      "Job!A1 can't be sought by changing itself",
    ],
    ["by what a block fills", request(job, "A2", 1, "B2", 1, 3), "Job!B2 is filled by the formula in B1"],
    ["by what is locked", request(job, "A2", 1, "C1", 1, 3), "C1 is locked: unlock it first"],
    ["by what does not matter", request(job, "A2", 1, "A3", 1, 3), "Job!A2 does not depend on Job!A3"],
  ])("%s", async (_, asked, reason) => {
    expect(await seek(job, asked)).toBe(reason);
  });
});

test("limits and values to begin with lie about the present value", async () => {
  const job = jobOf({ A1: "5", A2: "-3", A3: "0", A4: "M10", A5: "0.29" });
  const limits = (cell: string) => suggestedLimits(job, { sheet: "Job", ...parseCell(cell)! });
  expect([limits("A1"), limits("A2"), limits("A3"), limits("A4")]).toEqual([
    { from: 0, to: 10 },
    { from: -6, to: 0 },
    { from: -1, to: 1 },
    { from: -1, to: 1 },
  ]);
  const values = (cell: string) => suggestedValues(job, { sheet: "Job", ...parseCell(cell)! });
  expect(values("A1")).toEqual({ first: 4, step: 0.2, count: 11 });
  expect(values("A5")).toEqual({ first: 0.24, step: 0.01, count: 11 });
  expect(values("A4")).toEqual(["M10"]);
  expect(values("A3")).toEqual({ first: -5, step: 1, count: 11 });
});

test("the input that is offered first is one that the result depends on where it stands", async () => {
  const job = createJob(fullJob, undefined, silent);
  expect(await likelyInput(job, place(job, "speed_limit"))).toEqual(place(job, "runout"));
  expect(await likelyInput(job, place(job, "wire_target"))).toEqual(place(job, "target"));
  const plainJob = jobOf({ A1: "2", A2: "3", B1: "=IF(A1>1,A2,A1)" });
  expect(await likelyInput(plainJob, place(plainJob, "B1"))).toBeDefined();
}, 30_000);
