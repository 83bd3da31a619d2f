/**
 * What a reading was taken for. A reading of one thread says nothing of the next, so that whoever types it, at the bench
 * or on the sheet, has what it belongs to written beside it in the same step.
 *
 * Read by names: `reading_for` is a formula that says what a reading belongs to, as thread, wire and unit; it is written as
 * text into `measured_for` beside the cell `measured`, and into `readings_for` beside the last column of `readings`.
 * The sheet compares the two. What is typed as a formula follows the job by itself and belongs to nothing.
 */
import { cellName } from "../engine/address.ts";
import type { Place } from "../engine/values.ts";
import type { CellFormat, JobDocument } from "./document.ts";
import { fixedPlaces } from "./format.ts";
import type { CellEdit, CellView, Job } from "./job.ts";
import { type NamedArea, namedArea, namedValue } from "./named.ts";
import type { LengthUnit } from "./readings.ts";

/** Cells to write beside the readings among `edits`; none for those that are written by `edits` themselves. */
export function takenFor(job: Job, edits: readonly CellEdit[]): CellEdit[] {
  const pairs = pairsOf(job);
  if (pairs.length === 0) return [];
  const belongs = nowFor(job);
  return edits.flatMap(({ sheet, row, column, text }) =>
    pairs.flatMap(({ readings, beside }): CellEdit[] => {
      if (sheet !== readings.sheet || column !== readings.right) return [];
      if (row < readings.top || row > readings.bottom) return [];
      const at = { sheet: beside.sheet, row: beside.top + row - readings.top, column: beside.left };
      if (edits.some((each) => each.sheet === at.sheet && each.row === at.row && each.column === at.column))
        return [];
      const typed = text.trim();
      return [{ ...at, text: typed === "" || typed.startsWith("=") ? "" : asText(belongs) }];
    }),
  );
}

/** What `reading_for` says; where that is still of an earlier edit, that it was not known, so that no wrong thread proves a reading. */
function nowFor(job: Job): string {
  const area = namedArea(job, "reading_for");
  if (!area) return "";
  const { value, stale } = job.cell(area.sheet, area.top, area.left);
  if (stale) return "a thread not reckoned yet";
  return typeof value === "string" ? value : "";
}

/** True when the reading in this row of the log was taken for something else than what is measured now. */
export function isForOther(job: Job, row: number): boolean {
  const log = namedArea(job, "readings");
  const beside = namedArea(job, "readings_for");
  const now = namedValue(job, "reading_for");
  if (!log || !beside || typeof now !== "string") return false;
  const { value } = job.cell(beside.sheet, beside.top + row - log.top, beside.left);
  return typeof value === "string" && value !== "" && value !== now;
}

/**
 * The format of a reading that was typed bare and in the other unit than the job's now: its figures have not followed, so
 * that the unit they were taken in stands beside them. Undefined for any other cell.
 */
export function formatAsTaken(
  document: JobDocument,
  { sheet, row, column }: Place,
  { text, format }: Pick<CellView, "text" | "format">,
  unit: LengthUnit,
): CellFormat | undefined {
  if (format.as !== "length" || format.unit !== undefined || !bareNumber.test(text)) return undefined;
  for (const { readings, beside } of pairsOf({ document })) {
    if (sheet !== readings.sheet || column !== readings.right) continue;
    if (row < readings.top || row > readings.bottom) continue;
    const at = document.sheets.find(({ name }) => name === beside.sheet);
    const belongs = at?.cells[cellName(beside.top + row - readings.top, beside.left)] ?? "";
    const taken = / (mm|in)$/.exec(belongs)?.[1] as LengthUnit | undefined;
    if (taken === undefined || taken === unit) continue;
    return { ...format, unit: taken, places: fixedPlaces(format, taken)! };
  }
  return undefined;
}

const bareNumber = /^\s*(?:\d+\.?\d*|\.\d+)\s*$/;

function pairsOf(job: Pick<Job, "document">): { readonly readings: NamedArea; readonly beside: NamedArea }[] {
  const names = [
    ["measured", "measured_for"],
    ["readings", "readings_for"],
  ] as const;
  return names.flatMap(([of, by]) => {
    const beside = namedArea(job, by);
    const readings = beside && namedArea(job, of);
    return readings ? [{ readings, beside }] : [];
  });
}

/** A designation such as `-1/4` is no formula. */
function asText(words: string): string {
  return /^[=+\-']/.test(words) ? `'${words}` : words;
}
