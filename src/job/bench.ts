/**
 * What the bench view needs of a job besides its steps: the facts to keep in sight, and the log of readings.
 *
 * Read by names: `usable_marks`, `spindle_speed`, `wire` or `ball`, the readings that are wanted (bench-proof.ts), `verdict`,
 * `slide_to_wind`, `cross_to_wind` and `bench_drawing`. A reading goes into the cell named `measured`, and into the next free row of the
 * range named `readings`: after which pass, and what was read.
 */
import { engagesAnywhere } from "../lathe/engage.ts";
import { wantedIn } from "./bench-proof.ts";
import { cellText } from "./format.ts";
import type { CellEdit, CellView, Job } from "./job.ts";
import { namedArea, namedNumber, namedPlace, namedShown } from "./named.ts";
import { quantityAt } from "./readings.ts";
import type { Step } from "./steps.ts";
import { isForOther } from "./taken-for.ts";

export interface BenchFact {
  readonly label: string;
  readonly value: string;
}

export interface BenchReading {
  readonly after: string;
  readonly reading: string;
  /** Where it stands in the log, from 0. */
  readonly index: number;
  /** True where it was taken for another thread or wire, and says nothing of this one. */
  readonly forOther?: true;
}

/** Half-nut marks and speed, those that the job names. */
export function benchFacts(job: Job): BenchFact[] {
  const marks = namedShown(job, "usable_marks");
  const fact = (label: string, value: string | undefined): BenchFact[] =>
    value === undefined ? [] : [{ label, value }];
  return [
    ...cutTowards(job),
    ...(closesAnywhere(job)
      ? fact("Half nuts", "close anywhere")
      : keepsClosed(job)
        ? fact("Half nuts", "keep closed")
        : fact("Close half nuts on", marks === undefined ? undefined : marksInWords(marks))),
    ...fact("No faster than", namedShown(job, "spindle_speed")),
  ];
}

/** A spindle that turns forward cuts a right-hand thread towards the headstock, a left-hand one away from it. */
function cutTowards(job: Job): BenchFact[] {
  const way = namedShown(job, "direction") || { right: "in", left: "out" }[namedShown(job, "hand") ?? ""];
  if (way !== "in" && way !== "out") return [];
  return [{ label: "Cut", value: way === "in" ? "to the headstock" : "from the headstock" }];
}

/** True when no mark may be used, so that the half nuts are never opened. */
export function keepsClosed(job: Job): boolean {
  return namedShown(job, "usable_marks")?.trim() === "" && !closesAnywhere(job);
}

/** True where the nuts find a groove each time they close, with no look at the indicator. */
function closesAnywhere(job: Job): boolean {
  const lead = namedNumber(job, "lead_cut") ?? 0;
  const leadscrew = namedNumber(job, "leadscrew") ?? 0;
  return lead > 0 && leadscrew > 0 && engagesAnywhere(lead, leadscrew);
}

/**
 * What the sheet says of the last reading.
 *
 * @param doubted true where it does not go with what was wound: the sheet's "go on" is then left out
 */
export function benchVerdict(job: Job, doubted = false): BenchFact[] {
  const fact = (label: string, name: string): BenchFact[] => {
    const value = namedShown(job, name);
    return value === undefined || value === "" ? [] : [{ label, value }];
  };
  const { over, first, aim, last, grows } = wantedIn(job);
  return [
    ...fact(over === "balls" ? "Ball" : "Wires", over === "balls" ? "ball" : "wire"),
    ...fact(grows ? "Smallest" : "Largest", first),
    ...fact("Aim at", aim),
    ...fact(grows ? "Largest" : "Smallest", last),
    ...fact("Last reading", "measured"),
    ...(doubted ? [] : fact("Verdict", "verdict")),
    ...(namedNumber(job, "slide_to_wind") === undefined
      ? []
      : fact("Still to wind, top slide", "slide_to_wind")),
    ...(namedNumber(job, "cross_to_wind") === undefined
      ? []
      : fact("or straight in, cross slide", "cross_to_wind")),
  ];
}

/**
 * The groove in layers with the pass in hand as the next one, from the drawing in the cell named `bench_drawing`.
 *
 * @param at index of the step in hand
 */
export function benchFigure(job: Job, steps: readonly Step[], at: number): CellView["figure"] {
  const area = namedArea(job, "bench_drawing");
  const figure = area && job.cell(area.sheet, area.top, area.left).figure;
  if (figure?.kind !== "passes") return figure;
  const cut = steps.slice(0, at).filter(({ kind }) => kind === "slide").length;
  const { chip: _, ...groove } = figure;
  const chip = steps.filter(({ kind }) => kind === "slide")[cut]?.chip;
  return { ...groove, next: Math.min(cut, figure.depths.length) + 1, ...(chip ? { chip } : {}) };
}

/** The log, in the order it was taken. */
export function readingsOf(job: Job): BenchReading[] {
  const area = namedArea(job, "readings");
  if (!area) return [];
  const log: BenchReading[] = [];
  for (let row = area.top; row <= area.bottom; row++) {
    const reading = cellText(job.cell(area.sheet, row, area.right), job.unit);
    if (reading === "") continue;
    const after = cellText(job.cell(area.sheet, row, area.left), job.unit);
    log.push({ after, reading, index: row - area.top, ...(isForOther(job, row) ? { forOther: true } : {}) });
  }
  return log;
}

/** True when the job has a cell for readings. */
export function takesReadings(job: Job): boolean {
  return namedArea(job, "measured") !== undefined;
}

/** The number that a reading stands for, a quantity such as `0.5 in` among them; undefined when it is none. */
export function readingIn(job: Job, text: string): number | undefined {
  const place = namedPlace(job, "measured");
  const quantity = place && quantityAt(job.document, place, text, job.unit);
  const number = quantity ?? (/^\s*\d*\.?\d+\s*$/.test(text) ? Number(text) : Number.NaN);
  return number > 0 && Number.isFinite(number) ? number : undefined;
}

/**
 * Cells to set for a reading. A full log keeps its rows and only the cell `measured` changes.
 *
 * @param text the reading as typed
 * @param after the step it was taken after
 */
export function readingEdits(job: Job, text: string, after: Step | undefined): CellEdit[] {
  const edits: CellEdit[] = [];
  const measured = namedPlace(job, "measured");
  if (measured) edits.push({ ...measured, text });
  const area = namedArea(job, "readings");
  if (!area) return edits;
  for (let row = area.top; row <= area.bottom; row++) {
    if (job.cell(area.sheet, row, area.right).text !== "") continue;
    edits.push({
      sheet: area.sheet,
      row,
      column: area.left,
      text: after ? stepName(after) : "before pass 1",
    });
    edits.push({ sheet: area.sheet, row, column: area.right, text });
    break;
  }
  return edits;
}

/**
 * Cells to set so that a reading is out of the log: those below it move up. Where it is the last, and the one in the cell
 * `measured`, that takes the one before it again, if that was of this thread and wire.
 *
 * @param index of its row in the log
 */
export function takenOut(job: Job, index: number): CellEdit[] {
  const area = namedArea(job, "readings");
  if (!area) return [];
  const beside = namedArea(job, "readings_for");
  const columns = [
    { sheet: area.sheet, top: area.top, column: area.left },
    { sheet: area.sheet, top: area.top, column: area.right },
    ...(beside ? [{ sheet: beside.sheet, top: beside.top, column: beside.left }] : []),
  ];
  const textAt = ({ sheet, top, column }: (typeof columns)[number], row: number) =>
    row > area.bottom - area.top ? "" : job.cell(sheet, top + row, column).text;
  const reading = (row: number) => textAt(columns[1]!, row);
  let end = index;
  while (reading(end + 1) !== "") end += 1;
  const edits = columns.flatMap((column) =>
    Array.from({ length: end - index + 1 }, (_, down): CellEdit => {
      const row = index + down;
      const text = row < end ? textAt(column, row + 1) : "";
      return { sheet: column.sheet, row: column.top + row, column: column.column, text };
    }),
  );
  const measured = namedPlace(job, "measured");
  const stands = measured && job.cell(measured.sheet, measured.row, measured.column).text;
  if (!measured || end > index || stands !== reading(index)) return edits;
  const holds = index > 0 && !isForOther(job, area.top + index - 1);
  return [...edits, { ...measured, text: holds ? reading(index - 1) : "" }];
}

/** Empties the reading that stands in the job, for another piece of work; the log keeps its rows. */
export function withoutReading(job: Job): string | undefined {
  const place = namedPlace(job, "measured");
  if (!place || job.cell(place.sheet, place.row, place.column).text === "") return undefined;
  return job.setCells([{ ...place, text: "" }], "Started again at the bench: the reading emptied");
}

/** A step in words: "pass 8", "spring pass", "straight in". */
export function stepName({ kind, pass }: Step): string {
  if (kind === "slide") return `pass ${pass}`;
  return {
    scratch: "scratch pass",
    measure: "measuring",
    "straight in": "straight in",
    spring: "spring pass",
  }[kind];
}

/** "1,2,3,4" as "1 to 4". */
export function marksInWords(marks: string): string {
  const numbers = marks.split(",").map(Number);
  const whole = numbers.length > 2 && numbers.every((number, index) => number === numbers[0]! + index);
  return whole ? `${numbers[0]} to ${numbers.at(-1)}` : numbers.join(", ");
}
