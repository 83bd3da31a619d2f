/** Cells of a job found by the name that the job gives them. */
import { parseRange, splitSheet } from "../engine/address.ts";
import type { CellValue, Place } from "../engine/values.ts";
import { cellText } from "./format.ts";
import type { Job } from "./job.ts";

/** Zero-based corners on a sheet. */
export interface NamedArea {
  readonly sheet: string;
  readonly top: number;
  readonly left: number;
  readonly bottom: number;
  readonly right: number;
}

/** Where a name of the job points; undefined when it has no such name. Case does not count, as in formulas. */
export function namedArea(job: Pick<Job, "document">, name: string): NamedArea | undefined {
  const { names } = job.document;
  const key = Object.keys(names).find((each) => each.toLowerCase() === name.toLowerCase());
  const place = key === undefined ? undefined : splitSheet(names[key]!);
  const area = place && parseRange(place.rest);
  return place && area ? { ...area, sheet: place.sheet } : undefined;
}

/** The (first) cell with this name; undefined where there is none. */
export function namedPlace(job: Pick<Job, "document">, name: string): Place | undefined {
  const area = namedArea(job, name);
  return area && { sheet: area.sheet, row: area.top, column: area.left };
}

/** What the (first) cell with this name shows; undefined when the job has no such name. */
export function namedShown(job: Job, name: string): string | undefined {
  const area = namedArea(job, name);
  return area && cellText(job.cell(area.sheet, area.top, area.left), job.unit);
}

/** Value of the (first) cell with this name; null where there is none. */
export function namedValue(job: Job, name: string): CellValue {
  const area = namedArea(job, name);
  return area ? job.cell(area.sheet, area.top, area.left).value : null;
}

/** Number in the cell with this name; undefined where there is none. */
export function namedNumber(job: Job, name: string): number | undefined {
  const value = namedValue(job, name);
  return typeof value === "number" ? value : undefined;
}

/** Text in the cell with this name; undefined where there is none or it is empty. */
export function namedWords(job: Job, name: string): string | undefined {
  const value = namedValue(job, name);
  return typeof value === "string" && value !== "" ? value : undefined;
}
