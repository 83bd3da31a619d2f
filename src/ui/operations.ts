/** What the route card and the title block show of a job. Reads only; nothing is reckoned here. */
import { parseCell, parseRange, splitSheet } from "../engine/address.ts";
import { type CellValue, isErrorValue } from "../engine/values.ts";
import type { SheetDocument } from "../job/document.ts";
import { showValue } from "../job/format.ts";
import type { Job } from "../job/job.ts";

export interface Operation {
  /** Name of its sheet. */
  readonly name: string;
  readonly number: number;
  /** The answer of the operation, as the sheet shows it; "" when it names none. */
  readonly result: string;
  readonly cautions: number;
  readonly signedOff: boolean;
}

export interface Fact {
  readonly label: string;
  readonly value: string;
}

/** Cells looked at for cautions on one sheet; a format laid over a whole column must not stall the card. */
const mostCells = 500;

export function operationsOf(job: Job): Operation[] {
  return job.document.sheets.map((sheet, index) => ({
    name: sheet.name,
    number: sheet.operation ?? (index + 1) * 10,
    result: resultOf(job, sheet),
    cautions: cautionsOn(job, sheet),
    signedOff: sheet.signedOff ?? false,
  }));
}

/** Facts of the title block: those whose cells the job names, in the order of a drawing. */
export function factsOf(job: Job, here: string, saved: string): Fact[] {
  const operations = operationsOf(job);
  const number = operations.find((operation) => operation.name === here)?.number;
  const last = operations.at(-1)?.number;
  const named = (label: string, ...names: readonly string[]): Fact[] => {
    const parts = names
      .map((name) => namedText(job, name))
      .filter((part) => part !== undefined && part !== "");
    return parts.length > 0 ? [{ label, value: parts.join(", ") }] : [];
  };
  return [
    { label: "Job", value: job.document.title },
    ...named("Thread", "thread"),
    { label: "Unit", value: job.unit },
    { label: "Operation", value: number === undefined ? here : `${number} of ${last}` },
    ...named("Lathe", "lathe"),
    ...named("Leadscrew", "leadscrew"),
    ...named("Hand, starts", "hand", "starts"),
    ...named("Issue", "issue"),
    { label: "Saved", value: saved },
  ];
}

/** What the cell with this name shows; undefined when the job has no such name. */
export function namedText(job: Job, name: string): string | undefined {
  const key = Object.keys(job.document.names).find((candidate) => candidate.toLowerCase() === name);
  const place = key === undefined ? undefined : splitSheet(job.document.names[key]!);
  const cell = place && parseCell(place.rest);
  return place && cell ? textAt(job, place.sheet, cell.row, cell.column) : undefined;
}

function resultOf(job: Job, sheet: SheetDocument): string {
  const cell = sheet.result === undefined ? undefined : parseCell(sheet.result);
  return cell ? textAt(job, sheet.name, cell.row, cell.column) : "";
}

function textAt(job: Job, sheet: string, row: number, column: number): string {
  const { value, format } = job.cell(sheet, row, column);
  return isErrorValue(value) ? value.error : showValue(value, format, job.unit).text;
}

function cautionsOn(job: Job, sheet: SheetDocument): number {
  let seen = 0;
  const found = new Set<string>();
  for (const [range, format] of Object.entries(sheet.formats)) {
    const area = format.role === "caution" ? parseRange(range) : undefined;
    if (!area) continue;
    for (let row = area.top; row <= area.bottom && seen < mostCells; row++) {
      for (let column = area.left; column <= area.right && seen < mostCells; column++) {
        seen += 1;
        const cell = job.cell(sheet.name, row, column);
        if (cell.format.role === "caution" && speaks(cell.value)) found.add(`${row} ${column}`);
      }
    }
  }
  return found.size;
}

/** A caution cell speaks up by holding words; while all is well its formula gives "". */
function speaks(value: CellValue): boolean {
  return typeof value === "string" && value !== "";
}
