/** What the route card and the title block show of a job. Reads only; nothing is reckoned here. */
import { parseCell, parseRange, splitSheet } from "../engine/address.ts";
import type { CellValue, Place } from "../engine/values.ts";
import type { SheetDocument } from "../job/document.ts";
import { ErrorCount } from "../job/error-count.ts";
import { cellText } from "../job/format.ts";
import type { Job } from "../job/job.ts";
import { answerOf, signedForAnother } from "../job/signed.ts";
import { later } from "./later.ts";

export interface Operation {
  /** Name of its sheet. */
  readonly name: string;
  /** Undefined for a sheet that stands beside the operations, as a what-if table does: nobody signs it off. */
  readonly number: number | undefined;
  /** The answer of the operation, as the sheet shows it; "" when it names none. */
  readonly result: string;
  readonly cautions: number;
  /** Cells that hold an error. */
  readonly errors: number;
  readonly firstError: Place | undefined;
  /** For what the operation is now; what was signed for another is not signed. */
  readonly signedOff: boolean;
  /** What it was signed for and is no more, in words; "" where it is not signed, or for this. */
  readonly signedFor: string;
}

export interface Fact {
  readonly label: string;
  readonly value: string;
}

/** Cells looked at for cautions on one sheet; a format laid over a whole column must not stall the card. */
const mostCells = 500;

/** What was found of a job, as long as that is as it was. */
interface Found {
  readonly errors: ErrorCount;
  counted: () => void;
  of: { readonly changes: number; readonly operations: readonly Operation[] } | undefined;
}

const founds = new WeakMap<Job, Found>();

/** @param counted called when errors have been counted later; the last that was given is called */
export function operationsOf(job: Job, counted?: () => void): readonly Operation[] {
  const found = founds.get(job) ?? newFound(job);
  if (counted) found.counted = counted;
  const { changes } = job;
  if (found.of?.changes !== changes) found.of = { changes, operations: operationsNow(job, found.errors) };
  return found.of.operations;
}

/** The same, once the errors have been counted. */
export async function countedOperations(job: Job): Promise<readonly Operation[]> {
  const operations = operationsOf(job);
  const counting = founds.get(job)?.errors.counting;
  if (!counting) return operations;
  await counting;
  return countedOperations(job);
}

function newFound(job: Job): Found {
  const found: Found = { errors: new ErrorCount(job, later), counted: () => {}, of: undefined };
  found.errors.tell = () => {
    found.of = undefined;
    found.counted();
  };
  founds.set(job, found);
  return found;
}

function operationsNow(job: Job, errors: ErrorCount): Operation[] {
  const numbers = numbersOf(job.document.sheets);
  return job.document.sheets.map((sheet, index) => {
    const { count, first } = errors.on(sheet.name);
    const signedFor = signedForAnother(job, sheet);
    return {
      name: sheet.name,
      number: numbers[index],
      result: answerOf(job, sheet)?.text ?? "",
      cautions: cautionsOn(job, sheet),
      errors: count,
      firstError: first,
      signedOff: (sheet.signedOff ?? false) && signedFor === "",
      signedFor,
    };
  });
}

/** "40 Set-over"; the bare name where it has no number. */
export function numberedName({ number, name }: Pick<Operation, "number" | "name">): string {
  return number === undefined ? name : `${number} ${name}`;
}

/** The number that the next operation would have. */
export function nextNumber(operations: readonly Operation[]): number {
  return Math.max(0, ...operations.map(({ number }) => number ?? 0)) + 10;
}

/** A sheet without a number of its own comes ten after the one before it, or half way to the one that follows. */
function numbersOf(sheets: readonly SheetDocument[]): (number | undefined)[] {
  let last = 0;
  return sheets.map(({ operation }, index) => {
    if (operation === 0) return undefined;
    const following = sheets.slice(index + 1).find((sheet) => (sheet.operation ?? 0) > last)?.operation;
    const half = Math.floor((last + (following ?? 0)) / 2);
    const free = following === undefined || last + 10 < following || half <= last ? last + 10 : half;
    last = operation ?? free;
    return last;
  });
}

/** "2 errors, 1 caution"; "" when there is neither. */
export function troubleWords({ errors, cautions }: Pick<Operation, "errors" | "cautions">): string {
  const counted = (many: number, word: string) =>
    many === 0 ? [] : [`${many}\u00a0${word}${many === 1 ? "" : "s"}`];
  return [...counted(errors, "error"), ...counted(cautions, "caution")].join(", ");
}

/** Facts of the title block: those whose cells the job names, in the order of a drawing. */
export function factsOf(job: Job, here: string, saved: string): Fact[] {
  const operations = operationsOf(job);
  const number = operations.find((operation) => operation.name === here)?.number;
  const last = operations.findLast((operation) => operation.number !== undefined)?.number;
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
    { label: "Operation", value: number === undefined ? "none" : `${number} of ${last}` },
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
  return place && cell ? cellText(job.cell(place.sheet, cell.row, cell.column), job.unit) : undefined;
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
