/**
 * Taking over a lathe: the values of one job go into another wherever both give a cell the same name.
 *
 * What makes a job a lathe is a sheet named Lathe. A length is written with CONVERT, so that it means the same in a job
 * of another unit and follows when that changes.
 */
import { isErrorValue } from "../engine/values.ts";
import { withCells } from "./changes.ts";
import type { JobDocument } from "./document.ts";
import type { CellEdit, Job } from "./job.ts";
import { withUnlocked } from "./locks.ts";
import { type NamedArea, namedArea, namedWords } from "./named.ts";
import { scenarioOf } from "./scenario.ts";

export interface TakenOver {
  readonly edits: readonly CellEdit[];
  /** Names whose values are taken. */
  readonly taken: readonly string[];
  /** What could not be taken, in words. */
  readonly left: readonly string[];
}

export const latheSheet = "Lathe";

export function isLathe({ sheets }: JobDocument): boolean {
  return sheets.some(({ name }) => name === latheSheet);
}

/** Names the cell that says which values of a lathe are still those of an invented one. */
export const inventedName = "lathe_invented";

/** Every job has a unit of its own. */
const own = new Set(["unit"]);

/**
 * @param job that takes: one that is to be cut on the lathe, or a lathe that is made from such a job
 * @param lathe running job that gives
 */
export function takeLathe(job: Pick<Job, "document">, lathe: Job): TakenOver {
  const edits: CellEdit[] = [];
  const taken: string[] = [];
  const left: string[] = [];
  for (const name of Object.keys(lathe.document.names)) {
    const from = namedArea(lathe, name);
    const to = namedArea(job, name);
    if (!from || !to || own.has(name)) continue;
    if (from.sheet !== latheSheet && to.sheet !== latheSheet) continue;
    // A lathe's own sheet finds out by itself.
    if (name === inventedName && to.sheet === latheSheet) continue;
    const fault = faultIn(lathe, from);
    if (fault !== undefined) {
      left.push(`${name} is ${fault} on the lathe's sheet`);
      continue;
    }
    const texts = textsOf(lathe, from);
    const room = to.bottom - to.top + 1;
    const many = texts.findLastIndex((text) => text !== "") + 1;
    if (many > room) left.push(`${name} has ${many} values, and this job has room for ${room}`);
    else {
      taken.push(name);
      for (let row = 0; row < room; row++)
        edits.push({ sheet: to.sheet, row: to.top + row, column: to.left, text: texts[row] ?? "" });
    }
  }
  return { edits, taken, left };
}

/**
 * The lathe `made` from the values of a job, with what that says is still invented where the lathe's own sheet says such
 * things. That cell is freed, since the person empties it when it is true no more.
 */
export function withInvented(made: JobDocument, job: Job): JobDocument {
  const at = namedArea({ document: made }, inventedName);
  const told = namedWords(job, inventedName) ?? (/\blathe\b/.test(scenarioOf(job)) ? fromInvented : "");
  if (!at || told === "") return made;
  const marked = withCells(made, [{ sheet: at.sheet, row: at.top, column: at.left, text: asText(told) }]);
  return withUnlocked(marked, at.sheet, at);
}

const fromInvented = "Made from a job whose lathe is invented: look at every value, then empty this cell.";

/** What is wrong in one of these cells; undefined when nothing is. */
function faultIn(lathe: Job, { sheet, top, bottom, left }: NamedArea): string | undefined {
  for (let row = top; row <= bottom; row++) {
    const { value } = lathe.cell(sheet, row, left);
    if (isErrorValue(value)) return value.error;
  }
  return undefined;
}

function textsOf(lathe: Job, { sheet, top, bottom, left }: NamedArea): string[] {
  return Array.from({ length: bottom - top + 1 }, (_, index) => textOf(lathe, sheet, top + index, left));
}

/** What to type in another job so that it shows the same. */
function textOf(lathe: Job, sheet: string, row: number, column: number): string {
  const { text, value, format } = lathe.cell(sheet, row, column);
  // It names no other cell, so it means the same anywhere.
  if (/^=CONVERT\([\d\s./*+-]+,\s*"\w+",\s*unit\)$/i.test(text)) return text;
  if (value === null) return "";
  if (typeof value === "number" && format.as === "length") return `=CONVERT(${value},"${lathe.unit}",unit)`;
  return typeof value === "string" ? asText(value) : String(value);
}

/** Text that would be read as a number or a formula is led by an apostrophe. */
function asText(text: string): string {
  return /^[\d+\-.=']/.test(text) ? `'${text}` : text;
}
