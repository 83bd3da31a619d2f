/** Large sheets keep their cells in slabs; to everyone they are the record that a small sheet has. */
import { expect, test } from "vitest";
import { withCells } from "../../src/job/changes.ts";
import { JobFileError, prepareText, readJob, writeJob } from "../../src/job/file.ts";
import { createJob } from "../../src/job/job.ts";
import { foundIn, inSlabs, largeSheet, lastUsed, mayDiffer, withTexts } from "../../src/job/large-cells.ts";
import { readForPage, readInParts, readSoon, type StartReading } from "../../src/job/read-far.ts";
import { insertLines } from "../../src/job/structure.ts";
import { madeDocument, madeSheet } from "./made.ts";

function column(count: number): Record<string, string> {
  return Object.fromEntries(Array.from({ length: count }, (_, i) => [`B${i + 1}`, String(i)]));
}

const count = 20_000;
const plain = column(count);
const large = inSlabs(plain);

const document = madeDocument([madeSheet("One", plain, { rows: 30_000 })]);

test("Few cells stay the very record that they were", () => {
  const few = column(largeSheet - 1);
  expect(inSlabs(few)).toBe(few);
  expect(inSlabs(large)).toBe(large);
});

test("Many cells read as the record: by name, in turn, all at once", () => {
  expect(large === plain).toBe(false);
  expect(large.B1).toBe("0");
  expect(large.B20000).toBe("19999");
  expect([large.B20001, large.A1, large.constructor === Object]).toEqual([undefined, undefined, true]);
  expect("B7" in large).toBe(true);
  expect("A7" in large).toBe(false);
  expect(Object.keys(large)).toEqual(Object.keys(plain));
  expect({ ...large }).toEqual(plain);
  expect(JSON.stringify(large)).toBe(JSON.stringify(plain));
});

test("A changed copy has the changes, the old one has not, and they share the rest", () => {
  const changed = withTexts(
    large,
    new Map([
      ["B5", "new"],
      ["C70", "more"],
      ["B20000", ""],
    ]),
  );
  expect([changed.B5, changed.C70, changed.B20000, changed.B6]).toEqual(["new", "more", undefined, "5"]);
  expect([large.B5, large.C70, large.B20000]).toEqual(["4", undefined, "19999"]);
  expect(Object.keys(changed)).toHaveLength(count);
  expect(mayDiffer(large, changed).size).toBeLessThan(4 * 64);
  expect(mayDiffer(large, large).size).toBe(0);
  let looks = 0;
  const known = new WeakMap<object, number>();
  const look = () => ++looks;
  foundIn(large, known, look);
  const all = looks;
  foundIn(changed, known, look);
  expect(looks - all).toBe(3);
});

test("The last used row and column are known of every copy", () => {
  expect(lastUsed(large)).toEqual({ row: 19_999, column: 1 });
  expect(lastUsed(withTexts(large, new Map([["Z9", "x"]])))).toEqual({ row: 19_999, column: 25 });
  expect(lastUsed(withTexts(large, new Map([["B20000", ""]])))).toEqual({ row: 19_998, column: 1 });
  expect(lastUsed({})).toEqual({ row: 0, column: 0 });
});

test("A slab that is emptied is gone", () => {
  const names = Object.keys(plain).slice(0, 64);
  const changed = withTexts(large, new Map(names.map((name) => [name, ""])));
  expect(Object.keys(changed)).toEqual(Object.keys(plain).slice(64));
});

test("A job of many cells is edited, undone, written and read as any other", { timeout: 60_000 }, () => {
  const text = writeJob(document);
  const job = createJob(readJob(text), undefined, () => {});
  job.setCells([{ sheet: "One", row: 20_500, column: 0, text: "=B3+1" }]);
  expect(job.cell("One", 20_500, 0).value).toBe(3);
  expect(insertLines(job, "One", "row", 0, 1)).toBeUndefined();
  expect(job.cell("One", 20_501, 0).text).toBe("=B4+1");
  expect(job.cell("One", 20_501, 0).value).toBe(3);
  const after = writeJob(job.document);
  expect(readJob(after)).toEqual(job.document);
  expect(after).toContain('"A20502": "=B4+1"');
  job.undo();
  job.undo();
  expect(writeJob(job.document)).toBe(text);
});

test("Typing what is there already changes nothing, also among many", () => {
  const read = readJob(writeJob(document));
  expect(withCells(read, [{ sheet: "One", row: 4, column: 1, text: "4" }])).toBe(read);
});

test("What prepares the text of a large job leaves nothing to do but for what is changed, and writes the same", async () => {
  const read = readJob(writeJob(document));
  const pause = () => Promise.resolve();
  const waiting = prepareText(read, pause);
  expect(waiting).toBeInstanceOf(Promise);
  await waiting;
  expect(prepareText(read, pause)).toBeUndefined();
  expect(writeJob(read)).toBe(writeJob(document));
  expect(
    prepareText(withCells(read, [{ sheet: "One", row: 4, column: 1, text: "x" }]), pause),
  ).toBeUndefined();
});

/** A worker that is none; what it sends is copied. */
const reading: StartReading = (source, heard) => {
  void readForPage(source, (part) => heard(structuredClone(part)));
  return () => {};
};

test("A long file is read by a worker as it is read here, in many parts", { timeout: 60_000 }, async () => {
  const text = writeJob(document);
  expect(await readSoon(text, reading)).toEqual(readJob(text));
  expect(writeJob(await readSoon(text, reading))).toBe(text);
  const parts: string[] = [];
  readInParts(text, ({ part }) => parts.push(part));
  expect(parts.length).toBeGreaterThan(4);
});

test("A long file itself is read by the worker, and reading it can be stopped", {
  timeout: 60_000,
}, async () => {
  const text = writeJob(document);
  const stop = new AbortController();
  expect(await readSoon(new Blob([text]), reading, stop.signal)).toEqual(readJob(text));
  const never: StartReading = () => () => {};
  const stopped = readSoon(new Blob([text]), never, stop.signal);
  stop.abort();
  await expect(stopped).rejects.toThrow("reading was stopped");
});

test("A file too long for the page is not read without a worker", async () => {
  const dying: StartReading = (_source, _heard, died) => {
    queueMicrotask(() => died("out of memory"));
    return () => {};
  };
  const long = new Blob([" ".repeat(9_000_000)]);
  await expect(readSoon(long, dying)).rejects.toThrow(/no worker that could read 9 MB \(out of memory\)/);
});

test("A worker that cannot read a file says so", async () => {
  const gone = Object.assign(new Blob([" ".repeat(9_000_000)]), {
    text: () => Promise.reject(new Error("the file has been taken away")),
  });
  await expect(readSoon(gone, reading)).rejects.toThrow(/the file has been taken away/);
  const text = writeJob(document);
  const once = Object.assign(new Blob([text]), {
    texts: 0,
    text() {
      this.texts += 1;
      return this.texts === 1 ? Promise.reject(new Error("not now")) : Promise.resolve(text);
    },
  });
  expect(await readSoon(once, reading)).toEqual(readJob(text));
});

test("A long file that is damaged is refused with the line and the reason", async () => {
  const text = writeJob(document).replace('"B5": "4"', '"B5": 4');
  const refusal = readSoon(text, reading);
  await expect(refusal).rejects.toBeInstanceOf(JobFileError);
  await expect(refusal).rejects.toThrow(/^line \d+: .*must be text/);
});

test("Without a worker a long file is read all the same", async () => {
  const text = writeJob(document);
  const none: StartReading = (_source, _heard, died) => {
    queueMicrotask(() => died("not allowed here"));
    return () => {};
  };
  expect(await readSoon(text, none)).toEqual(readJob(text));
});
