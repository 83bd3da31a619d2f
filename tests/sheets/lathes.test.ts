/**
 * The three lathe sheets hold one set of names, each a typed value or a length off the unit alone, so that a job can take
 * them over cell by cell. The second half takes each of them over into the full thread job, and looks at every number that
 * is wound.
 */
import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { parseRange, splitSheet } from "../../src/engine/address.ts";
import type { CellValue } from "../../src/engine/values.ts";
import { cardOf } from "../../src/job/card.ts";
import { readJob } from "../../src/job/file.ts";
import { createJob, type Job } from "../../src/job/job.ts";
import { inventedName, takeLathe } from "../../src/job/lathe.ts";
import { stepsOf } from "../../src/job/steps.ts";
import { faults, put, valueAt } from "./read.ts";

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
  put(
    job,
    texts.map((text, i) => ({ sheet, row: top + i, column: left, text })),
  );
}

const number = (job: Job, name: string) => valueAt(job, name) as number;
/** What is told of the values is reckoned from them. */
const namesOf = (names: object) => Object.keys(names).filter((each) => each !== inventedName);

describe("the lathe sheets", () => {
  test("hold the same names at the same places", () => {
    for (const { document } of lathes) expect(document.names).toEqual(lathes[0]!.document.names);
  });

  test.each(lathes)("$file: what a name holds is typed, or a length off the unit alone", ({ document }) => {
    for (const name of namesOf(document.names)) {
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
    for (const name of namesOf(document.names).filter((each) => each !== "unit")) {
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

  // 90 - 26.5 = 63.5 from the bed; past an end at 60 it is counted from square, by whole degrees 26.
  // 25.4 / 3.175, 3 and 3.175.
  test("the leadscrew is said in threads per inch", () => {
    const said = lathes.map(({ document }) => valueAt(createJob(document), "Lathe!C5") as string);
    expect(said.map((words) => words.split(";")[0])).toEqual(["8 per inch", "8.467 per inch", "8 per inch"]);
  });

  // From square 29, 26.5, 22.75, 14 and 13.5; from the bed 61, 63.5, 67.25, 76 and 76.5. Half way the smaller set-over is set.
  test("every common form is set by whole degrees, past the scale's end counted from square", () => {
    const job = createJob(lathes[0]!.document);
    const rows = () => [33, 34, 35, 36, 37].map((row) => valueAt(job, `Lathe!B${row}`) as string);
    const beside = " beside a pencil mark, as below";
    expect(rows()).toEqual([
      `set 29${beside}`,
      `set 26${beside}; the set-over is then 0.5 under`,
      `set 23${beside}; the set-over is then 0.25 over`,
      `set 14${beside}`,
      `set 13${beside}; the set-over is then 0.5 under`,
    ]);
    type(job, "scale_high", ["90"]);
    expect(rows()).toEqual([
      "set 61",
      "set 64; the set-over is then 0.5 under",
      "set 67; the set-over is then 0.25 over",
      "set 76",
      "set 77; the set-over is then 0.5 under",
    ]);
  });

  test("a scale that ends short is answered by a pencil mark, in words", () => {
    const job = createJob(lathes[0]!.document);
    expect(valueAt(job, "Lathe!B34")).toBe(
      "set 26 beside a pencil mark, as below; the set-over is then 0.5 under",
    );
    expect(valueAt(job, "Lathe!A40")).toContain("stand the slide square to the bed");
    type(job, "scale_high", ["90"]);
    expect(valueAt(job, "Lathe!B34")).toBe("set 64; the set-over is then 0.5 under");
    expect(valueAt(job, "Lathe!A40")).toBe("");
    type(job, "scale_division", ["0.5"]);
    expect(valueAt(job, "Lathe!B34")).toBe("set 63.5");
    type(job, "scale_high", ["10"]);
    expect(valueAt(job, "Lathe!B34")).toBe("not on this scale: bevel gauge and indicator");
    type(job, "scale_low", ["20"]);
    expect(valueAt(job, "Lathe!A38")).toContain("lowest mark under its highest one");
  });
});

describe("what is still the invented lathe's", () => {
  const lengths = ["leadscrew", "slide_division", "slide_backlash", "cross_division", "cross_backlash"];

  test.each(lathes)("$file: is told until it is typed over, also by the same value", ({ document }) => {
    const job = createJob(document);
    const told = () => valueAt(job, "Lathe!A39") as string;
    const marked = () =>
      ["C5", "C10", "C13", "C17", "C20"].filter((cell) =>
        (valueAt(job, `Lathe!${cell}`) as string).endsWith("; still the invented lathe's"),
      ).length;
    expect(told()).toBe(
      "Still the invented lathe's value: leadscrew, top slide division, top slide backlash, cross slide division, cross slide backlash, gears, spindle speeds. Type your own over it, also where yours is the same.",
    );
    expect(marked()).toBe(5);
    for (const [index, name] of lengths.entries()) {
      type(job, name, [String(number(job, name))]);
      expect(marked(), name).toBe(4 - index);
    }
    expect(told()).toMatch(/value: gears, spindle speeds\./);
    type(job, "speeds", ["47"]);
    expect(told()).toMatch(/value: gears\./);
    type(job, "gears", ["22"]);
    expect(told()).toBe("");
    type(job, "unit", [document === lathes[0]!.document ? "mm" : "in"]);
    expect(told()).toBe("");
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
        "largest_wheel",
        "box_ratios",
        "scale_counts",
        "scale_low",
        "scale_high",
        "scale_division",
        "slide_unit",
        "slide_reads",
        "slide_backlash",
        "cross_unit",
        "cross_per_turn",
        "cross_backlash",
        "wheels",
        "wheel_marks",
      ]),
    );
  });

  /** The full thread job for a thread, on a lathe that was taken over. */
  function onLathe(document: ReturnType<typeof read>, thread: string, unit: string): Job {
    const job = createJob(target);
    const at = (name: string, value: string) => {
      const { sheet, rest } = splitSheet(target.names[name]!)!;
      const { top, left } = parseRange(rest)!;
      return { sheet, row: top, column: left, text: value };
    };
    const { edits, left } = takeLathe(job, createJob(document));
    expect(left).toEqual([]);
    put(job, [...edits, at("thread", thread), at("unit", unit)]);
    return job;
  }

  /** What a lathe's sheet lists under a name. */
  function listed(document: ReturnType<typeof read>, name: string): number[] {
    const texts = typed(document, name).filter((text) => text !== "");
    return texts.map((text) => {
      const [top, bottom = "1"] = text.replace("=", "").split("/");
      return Number(top) / Number(bottom);
    });
  }

  const threads = ["1/2-12 BSW", "M12x1.75-6g", "2 BA", "1/4-20 UNC-2A", "M20x2.5-6g"];
  const cases = lathes.flatMap(({ file, document }) =>
    threads.flatMap((thread) => ["mm", "in"].map((unit) => ({ file, document, thread, unit }))),
  );

  test.each(cases)(
    "$thread in $unit on $file: every number that is wound is a whole division of that lathe",
    ({ document, thread, unit }) => {
      const job = onLathe(document, thread, unit);
      expect(faults(job)).toEqual([]);
      const { sheet, rest } = splitSheet(job.document.names.plan!)!;
      const { top, left, bottom } = parseRange(rest)!;
      const slide = number(job, "slide_division");
      // As its sheet has it, in the unit of the job.
      const [, length, mark] = /CONVERT\(([\d.]+),"(\w+)"/.exec(typed(document, "slide_division")[0]!)!;
      const inMillimetres = Number(length) * (mark === "in" ? 25.4 : 1);
      expect(slide * (unit === "in" ? 25.4 : 1)).toBeCloseTo(inMillimetres, 12);
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
      for (const name of ["slide_to_wind", "cross_to_wind", "slide_lost"])
        expect(Number.isInteger(valueAt(job, name)), name).toBe(true);

      // The bench and the card count the same dial.
      const [perTurn] = listed(document, "slide_per_turn");
      const plan = stepsOf(job);
      expect(plan.perTurn).toBe(perTurn);
      let stands = 0;
      for (const { kind, wind, from, to } of plan.steps) {
        if (kind !== "slide") continue;
        const [before, after] = [from!, to!].map(({ turns, division }) => {
          expect(Number.isInteger(turns) && Number.isInteger(division)).toBe(true);
          expect(division).toBeLessThan(perTurn!);
          return turns * perTurn! + division;
        });
        expect(before).toBe(stands);
        expect(after).toBe(stands + wind!);
        stands = after!;
      }
      expect(stands).toBeGreaterThan(perTurn! / 10);
      const card = new Map(
        [...cardOf(job).settings, ...cardOf(job).measure].map(({ label, value }) => [label, value]),
      );
      expect(card.get("Dial at touch-off")).toBe(`0 of ${perTurn}`);
      expect(card.get("Backlash, top and cross")).toMatch(/^\d+ and \d+ div$/);
      expect(card.get("Gears, driver/driven")).toBe(valueAt(job, "train"));
    },
  );

  test.each(cases.filter(({ unit }) => unit === "mm"))(
    "$thread on $file is set by wheels, marks and speeds that this lathe has",
    ({ document, thread, unit }) => {
      const job = onLathe(document, thread, unit);
      const [, wheels, , position] = /^([\d/ ×]+)(, box (\d+))?$/.exec(valueAt(job, "train") as string)!;
      const ratios = listed(document, "box_ratios");
      const left = listed(document, "gears").filter(
        (teeth) => teeth <= listed(document, "largest_wheel")[0]!,
      );
      for (const teeth of wheels!.split(/[/×]/).map(Number)) {
        expect(left, `${wheels}`).toContain(teeth);
        left.splice(left.indexOf(teeth), 1);
      }
      // A lathe without a gearbox lists 1 alone, and no position is named.
      const ratio = position === undefined ? 1 : ratios[Number(position) - 1]!;
      expect(position === undefined).toBe(ratios.length === 1);
      const [drivers, driven] = [0, 1].map((side) =>
        wheels!.split("×").reduce((product, pair) => product * Number(pair.split("/")[side]), 1),
      );
      const screw = number(job, "leadscrew");
      expect((screw * ratio * drivers!) / driven!).toBeCloseTo(number(job, "lead_cut"), 10);
      // The trains of these lathes are near enough for any thread here: under a part in a thousand.
      expect(Math.abs(number(job, "lead_cut") / number(job, "lead") - 1)).toBeLessThan(1e-3);
      expect(listed(document, "speeds")).toContain(valueAt(job, "spindle_speed"));
      expect(number(job, "spindle_speed")).toBeLessThanOrEqual(number(job, "speed_limit"));
      const [division] = listed(document, "scale_division");
      // Past the end of its scale the inch lathe is set beside a pencil mark: the cell says so behind the figure.
      const said = valueAt(job, "scale_set");
      expect(`${said}`).toMatch(/^[\d.]+(°, pencil mark)?$/);
      const set = Number.parseFloat(`${said}`);
      expect(set / division!).toBeCloseTo(Math.round(set / division!), 9);
      expect(set).toBeLessThanOrEqual(listed(document, "scale_high")[0]!);
      // Never past the flank: half way between two marks goes to the smaller set-over.
      expect(number(job, "setover")).toBeLessThanOrEqual(number(job, "flank"));
      const best = valueAt(job, "best_wheel");
      if (best !== "none") expect(listed(document, "wheels")).toContain(best);
    },
  );

  // 90 - 26 = 64 from the bed; the scale of that lathe ends at 60 and has whole degrees.
  test("a scale that ends short is set by a pencil mark, and cell, sheet, drawing and card say so", () => {
    const job = onLathe(lathes[0]!.document, "1/2-12 BSW", "in");
    expect([valueAt(job, "setover"), valueAt(job, "scale_reading"), valueAt(job, "scale_set")]).toEqual([
      26,
      64,
      "26°, pencil mark",
    ]);
    const said =
      "Set-over 26: 64 is past your scale's end at 60. 64 from the bed is 26 from square to the bed (90 - 64). Stand the slide square to the bed, pencil a mark beside the scale's 0, then swing the slide back towards its zero until the pencil mark shows 26.";
    expect(cardOf(job).warnings).toContain(`Set-over: ${said}`);
    expect(valueAt(job, "card_drawing")).toContain("off your scale at 60°");
    type(job, "scale_high", ["90"]);
    expect(valueAt(job, "scale_set")).toBe(64);
    expect(cardOf(job).warnings.join()).not.toContain("pencil");
    expect(valueAt(job, "card_drawing")).not.toContain("off your scale");
    type(job, "scale_high", ["20"]);
    expect(valueAt(job, "scale_set")).toBe("not on it");
    expect(cardOf(job).warnings.join()).toContain("set it by a bevel gauge and prove it by indicator");
    // 117 from the bed's other end is 63 the other way round.
    type(job, "zero_line", ["obtuse"]);
    type(job, "scale_high", ["90"]);
    expect(valueAt(job, "scale_set")).toBe("64°, other side");
  });

  // 14 teeth of 3 mm are 42 mm, no whole number of leads of 1.25; 15 teeth are 45 mm, 36 leads, at each of its 3 marks 12.
  test("a wheel that never serves is answered by one of the set that does", () => {
    const job = onLathe(lathes[1]!.document, "M8-6g", "mm");
    expect(valueAt(job, "lead_cut")).toBeCloseTo(1.25, 12);
    expect([valueAt(job, "usable_marks"), valueAt(job, "best_wheel"), valueAt(job, "best_marks")]).toEqual([
      "",
      15,
      "1,2,3",
    ]);
    expect(cardOf(job).warnings.join()).toContain("put the one of 15 teeth on and close on 1,2,3");
    type(job, "wheel_teeth", ["15"]);
    type(job, "marks", ["3"]);
    expect(valueAt(job, "usable_marks")).toBe("1,2,3");
  });

  // A dial that reads diameter moves its slide half a division: twice the divisions for the same travel.
  test("a top slide whose dial reads diameter is wound twice as far", () => {
    const job = onLathe(lathes[1]!.document, "M12x1.75-6g", "mm");
    const reached = () =>
      number(job, "slide_moves") * stepsOf(job).steps.findLast(({ kind }) => kind === "slide")!.total!;
    const before = [stepsOf(job).steps.findLast(({ kind }) => kind === "slide")!.total!, reached()];
    type(job, "slide_reads", ["diameter"]);
    expect(valueAt(job, "slide_moves")).toBeCloseTo(0.01, 12);
    expect(stepsOf(job).steps.findLast(({ kind }) => kind === "slide")!.total! / before[0]!).toBeCloseTo(
      2,
      1,
    );
    expect(reached()).toBeCloseTo(before[1]!, 1);
  });

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
