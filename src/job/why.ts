/**
 * Why a cell shows what it shows: its formula with the values filled in, what it comes from and what it goes to, what a
 * change of each input does to it, and the functions it rests on. Reads the job; changes nothing.
 */
import { cellName, parseCell, splitSheet } from "../engine/address.ts";
import { type CellValue, isErrorValue, type Place } from "../engine/values.ts";
import type { SheetFunction } from "../functions/declare.ts";
import type { Role } from "./document.ts";
import { cellText, showValue } from "./format.ts";
import type { CellView, Job } from "./job.ts";
import { distinctReferences, isSameRange, type Reference, rangeName, referencesOf } from "./references.ts";

export interface WhyLink {
  readonly place: Place;
  /** Last cell of a range; the same as `place` for a single one. */
  readonly last: { readonly row: number; readonly column: number };
  /** `B5`, or with its sheet where that is another one. */
  readonly address: string;
  /** Words that stand beside the cell, or its name. */
  readonly label: string;
  /** As the sheet shows it; for a range how many cells it has. */
  readonly value: string;
}

export interface Why {
  readonly address: string;
  readonly name: string | undefined;
  readonly label: string;
  readonly value: string;
  /** What a cell is that no formula fills, in words: `A figure that was typed here.` */
  readonly is: string | undefined;
  /** True for words that no formula names: nothing comes of them. */
  readonly words: boolean;
  /** As typed; undefined where no formula stands. */
  readonly formula: string | undefined;
  /** The formula with values in place of cells. */
  readonly filled: string | undefined;
  readonly error:
    | { readonly code: string; readonly message: string; readonly from: WhyLink | undefined }
    | undefined;
  readonly caution: string | undefined;
  readonly taken: string | undefined;
  readonly note: string | undefined;
  readonly comesFrom: readonly WhyLink[];
  readonly goesTo: readonly WhyLink[];
  /** What a little more of an input does: "1 % more depth: +0.0152 mm". */
  readonly ifWrong: readonly string[];
  readonly functions: readonly SheetFunction[];
}

/** Cells listed in each direction. */
export const mostLinks = 12;
const mostInputs = 4;

/**
 * @param readers the cells whose formula reads this one, as far as they are known
 * @param ifWrong what a little more of an input does, as far as it is known
 */
export function whyOf(
  job: Job,
  place: Place,
  known: readonly SheetFunction[],
  readers: readonly Place[],
  ifWrong: readonly string[],
): Why {
  const view = viewAt(job, place);
  const anchor = view.spilledFrom === undefined ? undefined : anchorOf(view.spilledFrom, place.sheet);
  const text = anchor ? viewAt(job, anchor).text : view.text;
  const formula = text.startsWith("=") ? text : undefined;
  const on = anchor?.sheet ?? place.sheet;
  const references = formula ? referencesOf(formula, on, job.document.names) : [];
  const goesTo = readers.slice(0, mostLinks).map((reader) => linkTo(job, reader, place.sheet));
  return {
    address: cellName(place.row, place.column),
    name: view.name,
    label: formula === undefined && isWords(view) ? wordsName(view) : labelOf(job, place),
    is: formula ? undefined : whatItIs(view),
    words: formula === undefined && isWords(view) && goesTo.length === 0,
    value: cellText(view, job.unit),
    formula,
    filled: formula && filledIn(job, formula, references),
    error: errorOf(job, view.value, place.sheet),
    caution: view.caution,
    taken: view.taken,
    note: view.note,
    comesFrom: [
      ...(anchor ? [linkTo(job, anchor, place.sheet)] : []),
      ...distinctReferences(references).map((reference) => linkOver(job, reference, place.sheet)),
    ].slice(0, mostLinks),
    goesTo,
    ifWrong,
    functions: formula ? functionsIn(formula, known) : [],
  };
}

const wordRoles: Partial<Record<Role, string>> = {
  head: "Heading",
  label: "Label",
  column: "Heading of a column",
  note: "Note",
};

/** A heading, a label or a note: the cells beside it do not say what it is. */
function isWords({ format, value }: CellView): boolean {
  return typeof value === "string" && value !== "" && format.role !== undefined && format.role in wordRoles;
}

function wordsName({ format }: CellView): string {
  return wordRoles[format.role!]!;
}

function whatItIs(view: CellView): string {
  if (view.text === "") return "An empty cell.";
  if (isWords(view)) return "Words, as they were typed: nothing is reckoned here.";
  return typeof view.value === "string" ? "Words that were typed here." : "A figure that was typed here.";
}

/** Words to the left of a cell, else the heading of its column, else nothing. */
export function labelOf(job: Job, { sheet, row, column }: Place): string {
  // What the formula reads is a value to it, and words that a formula gives are an answer.
  const read = referencesOf(job.cell(sheet, row, column).text, sheet, job.document.names);
  const words = (r: number, c: number) => {
    const { value, text } = job.cell(sheet, r, c);
    const isRead = read.some((one) => one.sheet === sheet && !many(one) && one.top === r && one.left === c);
    return typeof value === "string" && isNameLike(value) && !isRead && text[0] !== "=" ? value : undefined;
  };
  for (let c = column - 1; c >= 0; c--) {
    const found = words(row, c);
    const { role } = job.cell(sheet, row, c).format;
    if (found !== undefined && role !== "note" && role !== "input") return found;
  }
  for (let r = row - 1; r >= 0; r--) {
    const cell = job.cell(sheet, r, column);
    if (cell.format.role === "column" && typeof cell.value === "string") return cell.value;
  }
  return "";
}

/** A name is short; a sentence that happens to stand beside a cell is none. */
function isNameLike(text: string): boolean {
  const words = text.trim();
  return words !== "" && words.length <= 48 && words.split(/\s+/).length <= 7;
}

function filledIn(job: Job, formula: string, references: readonly Reference[]): string {
  let text = "";
  let at = 0;
  for (const reference of references) {
    text += formula.slice(at, reference.start) + figureOf(job, reference);
    at = reference.start + reference.text.length;
  }
  return text + formula.slice(at);
}

function figureOf(job: Job, reference: Reference): string {
  if (many(reference)) return `[${countOf(reference)} cells]`;
  const view = job.cell(reference.sheet, reference.top, reference.left);
  if (typeof view.value === "number") {
    const { parts, text } = showValue(view.value, { ...view.format, align: "right" }, job.unit);
    return parts ? `${parts.integer}${parts.fraction}${parts.degree ? "°" : ""}` : text;
  }
  if (typeof view.value === "string") return `"${view.value}"`;
  return view.value === null ? "[empty]" : cellText(view, job.unit);
}

function errorOf(job: Job, value: CellValue, sheet: string): Why["error"] {
  if (!isErrorValue(value)) return undefined;
  const from = value.from === undefined ? undefined : anchorOf(value.from, sheet);
  return { code: value.error, message: value.message, from: from && linkTo(job, from, sheet) };
}

/** What a little more of each input of a formula does: "1 % more depth: +0.0152 mm". */
export async function sensitivityOf(job: Job, place: Place): Promise<string[]> {
  const view = viewAt(job, place);
  const { value, text: formula } = view;
  if (typeof value !== "number" || !formula.startsWith("=")) return [];
  const references = referencesOf(formula, place.sheet, job.document.names);
  const inputs = distinctReferences(references).filter((reference) => !many(reference));
  const lines: string[] = [];
  for (const input of inputs.slice(0, mostInputs)) {
    const cell = job.cell(input.sheet, input.top, input.left);
    if (typeof cell.value !== "number" || cell.value === 0) continue;
    const degree = cell.format.as === "angle";
    const more = degree ? 1 : cell.value / 100;
    const got = await job.evaluate(withMore(formula, references, input, more), place.sheet);
    if (typeof got !== "number") continue;
    const change = got - value;
    const shown = showValue(Math.abs(change), view.format, job.unit).text;
    const label = labelOf(job, { sheet: input.sheet, row: input.top, column: input.left }) || input.text;
    lines.push(`${degree ? "1°" : "1 %"} more ${label.toLowerCase()}: ${change < 0 ? "−" : "+"}${shown}`);
  }
  return lines;
}

/** The formula with every mention of one input made a little larger. */
function withMore(formula: string, references: readonly Reference[], input: Reference, more: number): string {
  let text = "";
  let at = 0;
  for (const reference of references) {
    if (!isSameRange(reference, input)) continue;
    text += `${formula.slice(at, reference.start)}(${reference.text}+(${more}))`;
    at = reference.start + reference.text.length;
  }
  return text + formula.slice(at);
}

function functionsIn(formula: string, known: readonly SheetFunction[]): SheetFunction[] {
  const bare = formula.replace(/"(?:[^"]|"")*"/g, '""');
  const called = new Set(
    [...bare.matchAll(/([A-Za-z][A-Za-z.]*)\s*\(/g)].map((match) => match[1]!.toUpperCase()),
  );
  return known.filter(({ name }) => called.has(name));
}

function linkOver(job: Job, reference: Reference, here: string): WhyLink {
  const place = { sheet: reference.sheet, row: reference.top, column: reference.left };
  const link = linkTo(job, place, here);
  if (!many(reference)) return link;
  const prefix = reference.sheet === here ? "" : `${reference.sheet} `;
  return {
    ...link,
    last: { row: reference.bottom, column: reference.right },
    address: `${prefix}${rangeName(reference)}`,
    value: `${countOf(reference)} cells`,
  };
}

function linkTo(job: Job, place: Place, here: string): WhyLink {
  const view = viewAt(job, place);
  const address = cellName(place.row, place.column);
  return {
    place,
    last: { row: place.row, column: place.column },
    address: place.sheet === here ? address : `${place.sheet} ${address}`,
    label: labelOf(job, place) || view.name || "",
    value: cellText(view, job.unit),
  };
}

function anchorOf(text: string, sheet: string): Place | undefined {
  const named = splitSheet(text) ?? { sheet, rest: text };
  const cell = parseCell(named.rest);
  return cell && { sheet: named.sheet, ...cell };
}

function viewAt(job: Job, { sheet, row, column }: Place): CellView {
  return job.cell(sheet, row, column);
}

function many({ top, left, bottom, right }: Reference): boolean {
  return top !== bottom || left !== right;
}

function countOf({ top, left, bottom, right }: Reference): number {
  return (bottom - top + 1) * (right - left + 1);
}
