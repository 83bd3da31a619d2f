import { describe, expect, test } from "vitest";
import { JobFileError, longestFile, migrate, readJob, writeJob } from "../../src/job/file.ts";
import { createJob } from "../../src/job/job.ts";

const canonical = `{
  "format": "halfangle job",
  "version": 1,
  "title": "Bush for a lifting screw",
  "purpose": "Test of the file",
  "scenario": "Invented for this test.",
  "source": "",
  "cautions": [
    "Guards on."
  ],
  "names": {
    "unit": "Thread!B1",
    "gears": "'Change gears'!A1:A9"
  },
  "sheets": [
    {
      "name": "Thread",
      "operation": 10,
      "result": "B2",
      "signedOff": true,
      "columns": { "A": 180 },
      "cells": {
        "A1": "unit",
        "B1": "mm",
        "A2": "1/4-20 UNC",
        "B2": "=1/4*25.4",
        "AA2": "\\"quoted\\" – 1 1/2",
        "A10": "'12"
      },
      "formats": {
        "B2": { "as": "decimals", "places": 3, "colour": "teal" },
        "A1:A9": { "role": "label" }
      },
      "choices": {
        "B1": ["mm", "in"]
      },
      "notes": {
        "B2": "a remark"
      },
      "merged": ["A1:B1"],
      "plan": { "kept": [1, true, null] }
    },
    {
      "name": "Change gears",
      "rows": 300,
      "cells": {}
    }
  ],
  "check": {
    "Thread!B2": { "value": 6.35, "within": 0.001, "source": "1/4 x 25.4" }
  },
  "later": { "deep": { "x": "y" } }
}
`.replace('"columns": { "A": 180 }', '"columns": {\n        "A": 180\n      }');

function refusal(text: string): JobFileError {
  try {
    readJob(text);
  } catch (error) {
    if (error instanceof JobFileError) return error;
    throw error;
  }
  throw new Error("the file was accepted");
}

const lineWith = (words: string, text = canonical) => text.slice(0, text.indexOf(words)).split("\n").length;

describe("writing", () => {
  test("a canonical file is read and written byte for byte, unknown keys included", () => {
    expect(writeJob(readJob(canonical))).toBe(canonical);
  });

  test("other spacing, another order of cells and keys end in the same text", () => {
    const raw = JSON.parse(canonical);
    raw.sheets[0].cells = Object.fromEntries(Object.entries(raw.sheets[0].cells).reverse());
    raw.sheets[0].formats.B2 = { colour: "teal", places: 3, as: "decimals" };
    const { later, ...rest } = raw;
    const shuffled = Object.fromEntries([...Object.entries(rest).reverse(), ["later", later]]);
    expect(writeJob(readJob(JSON.stringify(shuffled)))).toBe(canonical);
  });

  test("every cell is one line of its own, so a changed cell is one changed line", () => {
    const document = readJob(canonical);
    const job = createJob(document);
    job.setCells([{ sheet: "Thread", row: 1, column: 0, text: "5/16-18 UNC" }]);
    const before = canonical.split("\n");
    const after = writeJob(job.document).split("\n");
    expect(after.length).toBe(before.length);
    expect(after.filter((line, i) => line !== before[i])).toEqual(['        "A2": "5/16-18 UNC",']);
  });

  test("what is left out is filled in when reading", () => {
    const document = readJob(
      '{"format":"halfangle job","version":1,"title":"t","sheets":[{"name":"S","cells":{}}]}',
    );
    expect(document).toMatchObject({ purpose: "", cautions: [], names: {}, check: {} });
    expect(document.sheets[0]).toMatchObject({
      rows: 200,
      columnCount: 26,
      columns: {},
      formats: {},
      merged: [],
    });
  });
});

describe("a damaged file is refused with the line and the reason", () => {
  test.each([
    ['"1/4-20 UNC",', '"1/4-20 UNC"', "A10", "a comma or } is expected"],
    ['"unit": "Thread!B1"', '"unit" "Thread!B1"', '"unit" ', "a colon is expected"],
    ['"version": 1', '"version": one', "one", "a value is expected"],
    ['"a remark"', '"a \t remark"', "remark", "must be escaped"],
    ['"A1": "unit"', '"A1": 5', '"A1": 5', "sheets / 1 / cells / A1: must be text"],
    ['"A10"', '"10A"', "10A", "must be a cell such as B2"],
    ['"A10"', '"A999999"', "A99999", "must be a cell such as B2"],
    ['"places": 3', '"places": 99', '"places"', "may be at most 15"],
    ['"as": "decimals"', '"as": "roman"', "roman", "must be one of plain"],
    ['"unit": "Thread!B1"', '"M10": "Thread!B1"', "M10", "M10 reads as a cell"],
    ['"Thread!B1"', '"Thraed!B1"', "Thraed", 'there is no sheet "Thraed"'],
    ['"Change gears",', '"THREAD",', "THREAD", 'there is a sheet "Thread" already'],
    ['"title": "Bush', '"titel": "Bush', '"format"', "title is missing"],
    ['"version": 1', '"version": 7', '"version"', "made by a later program"],
    ['"version": 1', '"version": 0', '"version"', "cannot be read"],
    ['"halfangle job"', '"something"', '"format"', "another kind of file"],
    ['"B1": "mm"', '"A1": "mm"', '"A1": "mm"', 'the key "A1" stands here a second time'],
    ['"later"', '"__proto__"', "__proto__", "__proto__ cannot be a key"],
    ['"name": "Thread"', '"name": "constructor"', "constructor", "cannot be used as a name"],
  ])("%s turned into %s", (from, to, at, reason) => {
    const damaged = canonical.replace(from, to);
    expect(damaged).not.toBe(canonical);
    const found = refusal(damaged);
    const line = reason === "title is missing" ? 1 : lineWith(at, damaged);
    // A missing comma shows at the next key, a missing key at the object that should have it.
    expect(found.line).toBe(
      from.endsWith(",") && reason.startsWith("a comma") ? lineWith('"B2": "=1', damaged) : line,
    );
    expect(found.reason).toContain(reason);
    expect(found.message).toBe(`line ${found.line}: ${found.reason}`);
  });

  test("a file cut anywhere is refused, near its end, and says that it is cut off", () => {
    const length = canonical.trimEnd().length;
    for (let at = 0; at < length; at += 7) {
      const cut = canonical.slice(0, at);
      const found = refusal(cut);
      expect(found.reason).toMatch(/cut off|expected/);
      expect(found.line).toBeGreaterThan(cut.split("\n").length - 3);
    }
    expect(refusal(canonical.slice(0, length / 2)).reason).toContain("cut off");
  });

  test("text after the end, nothing at all, and the wrong kind of value are refused", () => {
    expect(refusal(`${canonical}{}`)).toMatchObject({
      line: canonical.split("\n").length,
      reason: expect.stringContaining("nothing may follow"),
    });
    expect(refusal("").reason).toContain("cut off");
    expect(refusal("[]").reason).toBe("a job file is an object in braces");
    expect(refusal("[".repeat(10_000)).reason).toContain("nested deeper");
    expect(refusal('"x"').reason).toBe("a job file is an object in braces");
  });

  test("a file beyond the largest size is refused before it is read", () => {
    expect(refusal(" ".repeat(longestFile + 1)).reason).toContain("characters");
  });

  test("hostile keys change nothing but the file they are in", () => {
    refusal(canonical.replace('"A10": "\'12"', '"__proto__": "x"'));
    expect(({} as Record<string, unknown>).x).toBeUndefined();
    expect(Object.prototype.toString.call({})).toBe("[object Object]");
  });

  test("the reader agrees with the language's own on what JSON is", () => {
    const samples = [
      "1",
      "-0",
      "1e5",
      "01",
      "1.",
      ".5",
      "+1",
      "tru",
      "truex",
      '"\\u00e9"',
      '"\\x"',
      "[1,]",
      "{,}",
      "[1 2]",
      "{'a':1}",
      "nul",
      "1e",
      "[]]",
    ];
    for (const sample of samples) {
      const text = canonical.replace('"x": "y"', `"x": ${sample}`);
      let valid = true;
      try {
        JSON.parse(text);
      } catch {
        valid = false;
      }
      expect([sample, valid]).toEqual([sample, !isRefused(text)]);
    }
  });
});

function isRefused(text: string): boolean {
  try {
    readJob(text);
    return false;
  } catch {
    return true;
  }
}

test("a job of an older version is taken through every step to the current one", () => {
  const steps = {
    1: (job: Record<string, unknown>) => ({ ...job, title: job.name }),
    2: (job: Record<string, unknown>) => ({ ...job, purpose: `${job.title}!` }),
  };
  const refuse = (message: string): never => {
    throw new Error(message);
  };
  expect(migrate({ version: 1, name: "a" }, steps, 3, refuse)).toEqual({
    version: 3,
    name: "a",
    title: "a",
    purpose: "a!",
  });
  expect(() => migrate({ version: 0 }, steps, 3, refuse)).toThrow("version 0");
  expect(() => migrate({ version: 4 }, steps, 3, refuse)).toThrow("later program");
});
