/**
 * The three lathe sheets hold one set of names, each a typed value or a length off the unit alone, so that a job can take
 * them over cell by cell. The second half does that with the full thread job, and looks at every number that is wound.
 */
import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { parseRange, splitSheet } from "../../src/engine/address.ts";
import type { CellValue } from "../../src/engine/values.ts";
import { readJob } from "../../src/job/file.ts";
import { createJob, type Job } from "../../src/job/job.ts";
import { faults, valueAt } from "./read.ts";

const read = (file: string) => readJob(readFileSync(`sheets/${file}.json`, "utf8"));
const lathes = ["lathe-inch", "lathe-metric", "lathe-mixed"].map((file) => ({ file, document: read(file) }));

/** The cells of a name, as typed, from the top. */
function typed(document: ReturnType<typeof read>, name: string): string[] {
  const { sheet, rest } = splitSheet(document.names[name]!)!;
  const { top, left, bottom } = parseRange(rest)!;
  const column = String.fromCharCode("A".charCodeAt(0) + left);
  const { cells } = document.sheets.find((each) => each.name === sheet)!;
  return Array.from({ length: bottom - top + 1 }, (_, i) => cells[`${column}${top + i + 1}`] ?? "");
}

function type(job: Job, name: string, texts: readonly string[]): void {
  const { sheet, rest } = splitSheet(job.document.names[name]!)!;
  const { top, left } = parseRange(rest)!;
  job.setCells(texts.map((text, i) => ({ sheet, row: top + i, column: left, text })));
}

const number = (job: Job, name: string) => valueAt(job, name) as number;

describe("the lathe sheets", () => {
  test("hold the same names at the same places", () => {
    for (const { document } of lathes) expect(document.names).toEqual(lathes[0]!.document.names);
  });

  test.each(lathes)("$file: what a name holds is typed, or a length off the unit alone", ({ document }) => {
    for (const name of Object.keys(document.names)) {
      for (const text of typed(document, name)) {
        // A ratio of a gearbox may be written as a fraction.
        expect(text, name).toMatch(/^([^=].*|=CONVERT\([\d./]+,"(mm|in)",unit\)|=\d+\/\d+|)$/);
      }
    }
  });

  test.each(lathes)("$file: the unit flips every length and nothing else", ({ document }) => {
    const [mm, inch] = ["mm", "in"].map((unit) => {
      const job = createJob(document);
      type(job, "unit", [unit]);
      expect(faults(job)).toEqual([]);
      return job;
    }) as [Job, Job];
    for (const name of Object.keys(document.names).filter((each) => each !== "unit")) {
      const isLength = typed(document, name)[0]!.includes("CONVERT");
      if (isLength) expect(number(inch, name) * 25.4, name).toBeCloseTo(number(mm, name), 10);
      else expect(valueAt(inch, name), name).toEqual(valueAt(mm, name));
    }
  });

  test.each(lathes)("$file: a dial is marked in the unit that its division is written in", ({ document }) => {
    for (const slide of ["slide", "cross"]) {
      const [unit] = typed(document, `${slide}_unit`);
      expect(typed(document, `${slide}_division`)[0]).toContain(`"${unit}"`);
      expect(typed(document, `${slide}_backlash`)[0]).toContain(`"${unit}"`);
    }
  });

  test.each(lathes)(
    "$file: each indicator wheel has its marks, and one of them is on the lathe",
    ({ document }) => {
      const [wheels, marks] = ["wheels", "wheel_marks"].map((name) =>
        typed(document, name).filter((text) => text !== ""),
      ) as [string[], string[]];
      expect(marks).toHaveLength(wheels.length);
      const [teeth] = typed(document, "wheel_teeth");
      expect(wheels).toContain(teeth);
      expect(typed(document, "marks")).toEqual([marks[wheels.indexOf(teeth!)]]);
    },
  );

  // 90 - 26.5 = 63.5 from the bed; past an end at 60 its complement is the set-over itself, by whole degrees 26.
  test("a scale that ends short is answered by the complement, in words", () => {
    const job = createJob(lathes[0]!.document);
    expect(valueAt(job, "Lathe!B34")).toBe(
      "63.5 is past the scale's end at 60: set its complement, 26 from the line square to the scale's zero, back towards the zero; the set-over is then 0.5 under",
    );
    type(job, "scale_high", ["90"]);
    expect(valueAt(job, "Lathe!B34")).toBe("set 64; the set-over is then 0.5 under");
    type(job, "scale_division", ["0.5"]);
    expect(valueAt(job, "Lathe!B34")).toBe("set 63.5");
    type(job, "scale_high", ["10"]);
    expect(valueAt(job, "Lathe!B34")).toBe("not on this scale: bevel gauge and indicator");
    type(job, "scale_low", ["20"]);
    expect(valueAt(job, "Lathe!A38")).toContain("lowest mark under its highest one");
  });
});

describe("a job on another lathe", () => {
  const text = readFileSync("sheets/full-thread-job.json", "utf8");
  const target = readJob(text);
  const shared = Object.keys(lathes[0]!.document.names).filter(
    (name) => name !== "unit" && target.names[name],
  );

  test("the names of a lathe that the full thread job has too", () => {
    expect(shared).toEqual(
      expect.arrayContaining([
        "leadscrew",
        "clearance",
        "gears",
        "wheel_teeth",
        "marks",
        "slide_division",
        "slide_per_turn",
        "cross_division",
        "cross_reads",
        "zero_line",
        "speeds",
        "reaction",
      ]),
    );
  });

  /** The full thread job with the values of a lathe put into the names that both have. */
  function onLathe(document: ReturnType<typeof read>, thread: string, unit: string): Job {
    const job = createJob(readJob(text));
    type(job, "thread", [thread]);
    type(job, "unit", [unit]);
    for (const name of shared) {
      const room = typed(target, name).length;
      const texts = typed(document, name);
      expect(texts.slice(room).join("")).toBe("");
      // Blank cells clear what the job shipped with.
      type(
        job,
        name,
        Array.from({ length: room }, (_, i) => texts[i] ?? ""),
      );
    }
    return job;
  }

  const threads = ["1/2-12 BSW", "M12x1.75-6g", "2 BA", "1/4-20 UNC-2A"];
  const cases = lathes.flatMap(({ file, document }) =>
    threads.flatMap((thread) => ["mm", "in"].map((unit) => ({ file, document, thread, unit }))),
  );

  test.each(cases)(
    "$thread in $unit on $file: every number that is wound is a whole division",
    ({ document, thread, unit }) => {
      const job = onLathe(document, thread, unit);
      expect(faults(job)).toEqual([]);
      const { sheet, rest } = splitSheet(job.document.names.plan!)!;
      const { top, left, bottom } = parseRange(rest)!;
      const slide = number(job, "slide_division");
      let wound = 0;
      for (let row = top; row <= bottom; row++) {
        const cell = (column: number): CellValue => job.cell(sheet, row, left + column).value;
        const wind = cell(2);
        if (typeof wind !== "number") continue;
        wound++;
        expect(Number.isInteger(wind) && wind > 0, `${row}: ${wind}`).toBe(true);
        expect(Number.isInteger(cell(3)), `${row}: total ${cell(3)}`).toBe(true);
        // The travel beside a slide pass is that many divisions of this lathe's dial.
        const travel = cell(5);
        if (typeof travel === "number")
          expect(travel / slide, `${row}: ${travel}`).toBeCloseTo(cell(3) as number, 6);
      }
      expect(wound).toBeGreaterThan(2);
      // What the wires ask for is whole divisions too.
      type(job, "measured", [String(number(job, "wire_target") + (unit === "mm" ? 0.3 : 0.012))]);
      for (const name of ["slide_to_wind", "cross_to_wind"])
        expect(Number.isInteger(valueAt(job, name)), name).toBe(true);
    },
  );

  test("the same thread is wound in other numbers on another lathe, and geared and marked in its own way", () => {
    const jobs = lathes.map(({ document }) => onLathe(document, "M12x1.75-6g", "mm"));
    const of = (name: string) => jobs.map((job) => valueAt(job, name));
    expect(new Set(of("train")).size).toBeGreaterThan(1);
    expect(new Set(of("scale_reading")).size).toBe(3);
    expect(new Set(of("slide_division").map((value) => (value as number).toFixed(6))).size).toBe(2);
    // 35 and 60 teeth on 3 mm make 1.75; 14 teeth there are 24 leads a turn, both marks serve.
    expect(valueAt(jobs[1]!, "lead_cut")).toBeCloseTo(1.75, 12);
    expect(valueAt(jobs[1]!, "usable_marks")).toBe("1,2");
    expect(valueAt(jobs[0]!, "usable_marks")).toBe("");
  });
});
