/** Jobs whose values come from a worker: the same values as on the page's own thread, and never an old one over a new one. */
import { readdirSync, readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { cellName, parseCell } from "../../src/engine/address.ts";
import { isErrorValue } from "../../src/engine/values.ts";
import type { JobDocument } from "../../src/job/document.ts";
import { readJob } from "../../src/job/file.ts";
import { createJob, type Job } from "../../src/job/job.ts";
import { seek } from "../../src/job/solve-job.ts";
import { deleteLines, insertLines } from "../../src/job/structure.ts";
import { InProcess } from "../engine/in-process.ts";
import { madeDocument, madeSheet } from "./made.ts";
import { randomFrom } from "./random-work.ts";

const templates = readdirSync("sheets").filter((name) => name.endsWith(".json"));

function open(name: string): JobDocument {
  return readJob(readFileSync(`sheets/${name}`, "utf8"));
}

function farJob(document: JobDocument, far = new InProcess()) {
  const job = createJob(document, undefined, () => {}, undefined, far.setting);
  return { job, far };
}

/** What every cell shows of itself, but for empty ones. */
function shown(job: Job): Record<string, unknown> {
  const cells: Record<string, unknown> = {};
  for (const { name, rows, columnCount } of job.document.sheets) {
    for (let row = 0; row < Math.min(rows, 90); row++) {
      for (let column = 0; column < Math.min(columnCount, 14); column++) {
        const { value, caution, spilledFrom, figure, stale } = job.cell(name, row, column);
        if (value === null && caution === undefined) continue;
        cells[`${name}!${cellName(row, column)}`] = { value, caution, spilledFrom, figure, stale };
      }
    }
  }
  return cells;
}

/** Changes a blank, takes a step back, moves rows: the same in each of the jobs. */
function act(jobs: readonly Job[], random: () => number): void {
  const { sheets } = jobs[0]!.document;
  const sheet = sheets[Math.floor(random() * sheets.length)]!;
  const kind = random();
  const at = Math.floor(random() * 30);
  const typed = Object.keys(sheet.cells).filter((cell) => !sheet.cells[cell]!.startsWith("="));
  const cell = typed[Math.floor(random() * typed.length)];
  const text = ["M12", "1/2-12 BSW", "in", "mm", "", "27.5", "1.25", "=1+", "=2*3"][
    Math.floor(random() * 9)
  ]!;
  for (const job of jobs) {
    if (kind < 0.15) job.undo();
    else if (kind < 0.2) job.redo();
    else if (kind < 0.28) insertLines(job, sheet.name, "row", at, 1);
    else if (kind < 0.34) deleteLines(job, sheet.name, "row", at, 1);
    else if (cell !== undefined) job.setCells([{ sheet: sheet.name, ...parseCell(cell)!, text }]);
  }
}

test.each(templates)(
  "%s has the values in a worker that it has on the thread",
  { timeout: 60_000 },
  (name) => {
    const near = createJob(open(name), undefined, () => {});
    const { job, far } = farJob(open(name));
    far.settle();
    expect(job.reckoning).toBeUndefined();
    expect(shown(job)).toEqual(shown(near));
    expect(job.unit).toBe(near.unit);
  },
);

test.each(["full-thread-job.json", templates.find((name) => name !== "full-thread-job.json")!])(
  "%s keeps them through edits, steps back and moved rows, in whatever order the mail is read",
  { timeout: 120_000 },
  (name) => {
    const near = createJob(open(name), undefined, () => {});
    const { job, far } = farJob(open(name));
    const random = randomFrom(20261125);
    for (let round = 0; round < 12; round++) {
      for (let edits = 0; edits < 3; edits++) {
        act([near, job], random);
        const mail = random();
        if (mail < 0.3) far.work();
        else if (mail < 0.5) far.read();
      }
      far.settle();
      expect(job.document).toEqual(near.document);
      expect(shown(job)).toEqual(shown(near));
    }
  },
);

const small = madeDocument([madeSheet("One", { A1: "1", B1: "=A1*10", C1: "=B1+1", A2: "7", B2: "=A2+1" })]);

const type = (job: Job, cell: string, text: string) =>
  job.setCells([{ sheet: "One", ...parseCell(cell)!, text }]);
const view = (job: Job, cell: string) => {
  const { row, column } = parseCell(cell)!;
  return job.cell("One", row, column);
};

test("What is typed shows at once, and reckoned cells their last value, marked as stale", () => {
  const { job, far } = farJob(small);
  expect(view(job, "A1").value).toBe(1);
  expect(view(job, "B1")).toMatchObject({ text: "=A1*10", value: null, stale: true });
  far.settle();
  expect(view(job, "B1").value).toBe(10);
  expect(view(job, "B1").stale).toBeUndefined();
  type(job, "A1", "2");
  expect(view(job, "A1").value).toBe(2);
  expect(view(job, "A1").stale).toBeUndefined();
  expect(view(job, "C1")).toMatchObject({ value: 11, stale: true });
  far.settle();
  expect(view(job, "C1").value).toBe(21);
});

test("A batch of an earlier edit leaves newer values alone", () => {
  const { job, far } = farJob(small);
  far.settle();
  type(job, "A1", "2");
  far.work();
  const late = far.reports.splice(0);
  type(job, "A1", "3");
  far.settle();
  expect(view(job, "C1").value).toBe(31);
  far.reports.push(...late);
  far.read();
  expect(view(job, "C1").value).toBe(31);
  expect(view(job, "B1").value).toBe(30);
});

test("A batch of before rows were inserted does not land in the cells that stand there now", () => {
  const { job, far } = farJob(small);
  far.settle();
  type(job, "A1", "2");
  far.work();
  insertLines(job, "One", "row", 0, 1);
  far.read();
  expect(view(job, "B1").value).toBeNull();
  far.settle();
  expect(view(job, "B2").value).toBe(20);
  expect(view(job, "B3").value).toBe(8);
});

test("Only what an edit changes is told, in packed batches", () => {
  const { job, far } = farJob(small);
  far.settle();
  type(job, "A2", "8");
  far.work();
  expect(far.reports.map(({ packets }) => packets.map(({ spots }) => [...spots]))).toEqual([[[1024 + 1]]]);
});

test("Many values come in one message, and more of them in several", () => {
  const cells: Record<string, string> = { A1: "1" };
  for (let row = 1; row <= 10_000; row++) cells[`B${row}`] = `=$A$1*${row}`;
  const { job, far } = farJob({ ...small, sheets: [{ ...small.sheets[0]!, rows: 10_000, cells }] });
  far.settle();
  let told = 0;
  job.subscribe(({ values }) => {
    if (values) told += 1;
  });
  type(job, "A1", "2");
  far.settle();
  expect(view(job, "B10000").value).toBe(20_000);
  expect(told).toBeGreaterThan(0);
  expect(told).toBeLessThan(20);
});

test("A long edit tells how far it is, what it changes, and what is known by then", () => {
  let time = 0;
  // Every look at the clock is 40 ms later than the one before.
  const far = new InProcess(undefined, () => (time += 40));
  const cells: Record<string, string> = { A1: "1", D1: "4", E1: "=D1" };
  for (let row = 1; row <= 400; row++) cells[`B${row}`] = `=$A$1*${row}`;
  const { job } = farJob({ ...small, sheets: [{ ...small.sheets[0]!, cells }] }, far);
  far.settle();
  type(job, "A1", "2");
  far.work();
  const seen: (readonly [number, number])[] = [];
  const states = far.reports.splice(0).map((report) => {
    far.reports.push(report);
    far.read();
    if (job.reckoning) seen.push([job.reckoning.done, job.reckoning.of]);
    return { reach: report.reach !== undefined, far: view(job, "E1").stale, last: view(job, "B400").stale };
  });
  expect(seen.length).toBeGreaterThan(2);
  expect(seen.at(-1)![1]).toBe(401);
  expect(seen.map(([done]) => done)).toEqual([...seen.map(([done]) => done)].sort((a, b) => a - b));
  const known = states.findIndex(({ reach }) => reach);
  expect(states[known]).toMatchObject({ far: undefined, last: true });
  expect(states.at(-1)).toMatchObject({ far: undefined, last: undefined });
});

test("What is stopped stays stale, and goes on with all that was typed since", () => {
  const { job, far } = farJob(small);
  far.settle();
  type(job, "A1", "2");
  job.stopReckoning();
  expect(job.reckoning).toMatchObject({ stopped: true });
  expect(far.watched).toBe(false);
  far.settle();
  expect(view(job, "B1")).toMatchObject({ value: 10, stale: true });
  job.goOnReckoning();
  far.settle();
  expect(job.reckoning).toBeUndefined();
  expect(view(job, "C1").value).toBe(21);
  type(job, "A1", "4");
  job.stopReckoning();
  type(job, "A2", "9");
  far.settle();
  expect([view(job, "B1").value, view(job, "B2").value]).toEqual([40, 10]);
});

test("A worker that hangs is started again without the formula that was typed last, and says so", () => {
  const { job, far } = farJob(small);
  far.settle();
  expect(far.watched).toBe(false);
  const troubles: (string | undefined)[] = [];
  job.subscribe(({ trouble }) => troubles.push(trouble));
  far.hangs = true;
  type(job, "D1", "=A1*2");
  type(job, "A1", "5");
  expect(far.watched).toBe(true);
  far.ringAlarm();
  far.settle();
  expect(far.started).toBe(2);
  expect(view(job, "C1").value).toBe(51);
  const { value, text } = view(job, "D1");
  expect(text).toBe("=A1*2");
  expect(isErrorValue(value) && value.message).toContain("left out");
  expect(troubles.filter((text) => text !== undefined)).toEqual([
    expect.stringContaining("The formula in D1 was left out"),
  ]);
  job.undo();
  job.undo();
  far.settle();
  expect(view(job, "D1").value).toBeNull();
  expect(view(job, "C1").value).toBe(11);
  type(job, "D1", "=A1*3");
  far.settle();
  expect(view(job, "D1").value).toBe(3);
});

test("A job that hangs as it is opened stops, and can be gone on with", () => {
  const { job, far } = farJob(small);
  far.hangs = true;
  far.ringAlarm();
  expect(job.reckoning).toMatchObject({ stopped: true });
  job.goOnReckoning();
  far.settle();
  expect(view(job, "C1").value).toBe(11);
});

test("A worker that breaks down is started again once; without any worker the thread reckons itself", () => {
  const { job, far } = farJob(small);
  far.settle();
  type(job, "A1", "3");
  far.breakDown("out of memory");
  far.settle();
  expect(far.started).toBe(2);
  expect(view(job, "C1").value).toBe(31);

  const none = farJob(small);
  none.far.breakDown("not allowed here");
  expect(view(none.job, "C1").value).toBe(11);
  type(none.job, "A1", "3");
  expect(view(none.job, "C1").value).toBe(31);
});

test("An engine that is told of moved rows a little later knows of them when it is asked", () => {
  const far = new InProcess();
  const works: (() => void)[] = [];
  const setting = { ...far.setting, soon: (work: () => void) => works.push(work) };
  const job = createJob(small, undefined, () => {}, undefined, setting);
  far.settle();
  const { value } = view(job, "C1");
  insertLines(job, "One", "row", 0, 1);
  expect(job.reckoning).toEqual({ done: 0, of: 0, stopped: false });
  expect(view(job, "C2").value).toBe(value);
  insertLines(job, "One", "row", 0, 1);
  job.undo();
  for (const work of works) work();
  far.settle();
  expect(view(job, "C2")).toMatchObject({ value });
  expect(job.reckoning).toBeUndefined();
});

test("A worker that has nothing to do is left to the next job, one that is at work is ended", () => {
  const { job, far } = farJob(small);
  far.settle();
  job.close();
  expect(far.left).toBe(1);
  const { job: busy, far: other } = farJob(small);
  other.settle();
  type(busy, "A1", "3");
  busy.close();
  expect(other.left).toBe(0);
});

test("Formulas are tried in the worker as on the thread", async () => {
  const cells = { ...small.sheets[0]!.cells, A5: "=SEQUENCE(3,1)", D1: "=SUM(A5:A7)*A1" };
  const document = { ...small, names: { pitch: "One!A1" }, sheets: [{ ...small.sheets[0]!, cells }] };
  const near = createJob(document, undefined, () => {});
  const { job, far } = farJob(document);
  far.settle();
  for (const formula of [
    "=B1+C1",
    "=SUM(A1:C2)",
    "=pitch*2",
    "=SUM(A5:A7)",
    "=A6+1",
    "=1/0",
    "=NOPE(1)",
    "=MULTIPLE.OPERATIONS(D1,A1,4)",
    "plain",
    "=SUM(",
    "=B1+C1",
  ]) {
    const given = job.evaluate(formula, "One");
    far.settle();
    expect([formula, await given]).toEqual([formula, await near.evaluate(formula, "One")]);
  }
});

/** `D1` reads a block, a name and a cell; `E1` and `C3` read it. */
const questioned: JobDocument = {
  ...small,
  names: { pitch: "One!A1", sum: "One!D1" },
  sheets: [
    {
      ...small.sheets[0]!,
      cells: {
        ...small.sheets[0]!.cells,
        A5: "=SEQUENCE(3,1)",
        D1: "=SUM(A5:A7)*pitch+A2",
        E1: "=SUM(C1:D9)",
        C3: "=sum+1",
        F3: "=E1",
      },
    },
  ],
};
const at = (cell: string) => ({ sheet: "One", ...parseCell(cell)! });

test("Questions are answered by the worker as on the thread, and nothing else changes", async () => {
  const near = createJob(questioned, undefined, () => {});
  const { job, far } = farJob(questioned);
  // Asked before the worker has read anything of the job.
  const early = far.awaiting(job.precedents(at("D1")));
  expect(await early).toEqual(await near.precedents(at("D1")));
  expect(await far.awaiting(job.readers(at("D1"), 9))).toEqual([at("E1"), at("C3")]);
  expect(await near.readers(at("D1"), 9)).toEqual([at("E1"), at("C3")]);
  expect(await far.awaiting(job.readers(at("D1"), 1))).toEqual([at("E1")]);
  expect(await far.awaiting(job.readers(at("F3"), 9))).toEqual([]);
  const [far_, near_] = [
    await far.awaiting(job.trial([at("D1"), at("B2")], [at("A1")])),
    await near.trial([at("D1"), at("B2")], [at("A1")]),
  ];
  expect(far_.dependent).toEqual([true, false]);
  // (1 + 2 + 3) times 7, and 7 of A2.
  expect(await far.awaiting(far_.at([7]))).toEqual([49, 8]);
  expect(await near_.at([7])).toEqual([49, 8]);
  expect(view(job, "D1").value).toBe(13);
  // What was typed since counts.
  type(job, "A2", "10");
  expect(await far.awaiting(far_.at([7]))).toEqual([52, 11]);
  // A1 with 6 A1 + 10 = 34.
  expect(
    await far.awaiting(seek(job, { result: at("D1"), input: at("A1"), wanted: 34, from: 0, to: 10 })),
  ).toMatchObject({ kind: "found", point: { at: 4 } });
  expect(view(job, "A1").value).toBe(1);
});

test("A question that is not answered is told so, and is asked again where another content is sent", async () => {
  const { job, far } = farJob(questioned);
  far.settle();
  const stopped = job.precedents(at("D1"));
  type(job, "A1", "3");
  job.stopReckoning();
  await expect(stopped).rejects.toThrow("it was stopped");
  await expect(job.readers(at("D1"), 9)).rejects.toThrow("reckoning is stopped");
  job.goOnReckoning();
  far.settle();
  // The order with the question is dropped with all that was on the way, and given again.
  const asked = job.readers(at("D1"), 9);
  far.orders = [];
  job.setName("other", "One!A2");
  expect(await far.awaiting(asked)).toEqual([at("E1"), at("C3")]);
  far.hangs = true;
  const hanging = job.precedents(at("D1"));
  expect(far.watched).toBe(true);
  far.ringAlarm();
  await expect(hanging).rejects.toThrow("nothing came of it for 20 s");
  far.settle();
  expect(view(job, "C1").value).toBe(31);
  expect(job.reckoning).toBeUndefined();
  const broken = job.precedents(at("D1"));
  far.breakDown("out of memory");
  await expect(broken).rejects.toThrow("out of memory");
});

test("A search is ended between two steps", async () => {
  const { job, far } = farJob(questioned);
  far.settle();
  let steps = 0;
  const request = { result: at("D1"), input: at("A1"), wanted: 1e9, from: 0, to: 10 };
  const outcome = await far.awaiting(seek(job, request, () => ++steps < 4));
  expect([outcome, steps]).toEqual([undefined, 4]);
});

test("A worker that has very many cells to take in is waited for longer", () => {
  const cells: Record<string, string> = { A1: "1" };
  const { far } = farJob({ ...small, sheets: [{ ...small.sheets[0]!, cells }] });
  const short = far.patience;
  for (let row = 1; row <= 50_000; row++) cells[`B${row}`] = "1";
  const long = farJob({ ...small, sheets: [{ ...small.sheets[0]!, rows: 50_000, cells }] }).far.patience;
  expect(short).toBeGreaterThanOrEqual(20_000);
  expect(long - short).toBeCloseTo(1000, -1);
});
