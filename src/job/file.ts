/**
 * The job as a text file: canonical JSON with one cell a line, row by row, each value as the person typed it, so that a
 * comparison of two files shows exactly the cells that changed.
 */
import * as v from "valibot";
import { columnIndex, parseCell } from "../engine/address.ts";
import { cellsOf, type Piece } from "../engine/packed-cells.ts";
import type { JobDocument, SheetDocument } from "./document.ts";
import { JsonError, type Located, parseJson } from "./json.ts";
import { inSlabs, slabsIn } from "./large-cells.ts";
import { currentVersion, jobSchema } from "./schema.ts";

/** Longest text that is opened, in characters: far beyond any job, and still no burden. */
export const longestFile = 120_000_000;

export class JobFileError extends Error {
  override readonly name = "JobFileError";
  /** @param line where in the text, from 1 */
  constructor(
    readonly line: number,
    readonly reason: string,
  ) {
    super(`line ${line}: ${reason}`);
  }
}

type Raw = Record<string, unknown>;

/** By the version that a file has: what makes the next version of it. */
const migrations: Readonly<Record<number, (job: Raw) => Raw>> = {};

/**
 * Reads and checks a job file.
 * @throws JobFileError with the line and the reason
 */
export function readJob(text: string): JobDocument {
  return checked(located(text));
}

/**
 * The same in two steps.
 * @param turn lets the page have its turn between them
 */
export async function readJobInTurns(text: string, turn: () => Promise<unknown>): Promise<JobDocument> {
  const found = located(text);
  await turn();
  return checked(found);
}

function located(text: string): Located {
  if (text.length > longestFile)
    throw new JobFileError(1, `a job file may have ${longestFile} characters, this one has ${text.length}`);
  return parsed(text);
}

function checked(located: Located): JobDocument {
  if (typeof located.value !== "object" || located.value === null || Array.isArray(located.value)) {
    throw new JobFileError(1, "a job file is an object in braces");
  }
  const result = v.safeParse(jobSchema, brought(located), { abortPipeEarly: true });
  if (!result.success) {
    const [issue] = result.issues;
    const path = (issue.path ?? []).map((item) => item.key as string | number);
    throw new JobFileError(located.lineOf(path), reasonOf(path, issue));
  }
  const document = result.output as unknown as JobDocument;
  return {
    ...document,
    sheets: document.sheets.map((sheet) => ({ ...sheet, cells: inSlabs(sheet.cells) })),
  };
}

function parsed(text: string): Located {
  try {
    return parseJson(text);
  } catch (error) {
    if (error instanceof JsonError)
      throw new JobFileError(error.line, `${error.message} (column ${error.column})`);
    throw error;
  }
}

/** The job in the current version. */
function brought(located: Located): unknown {
  return migrate(located.value as Raw, migrations, currentVersion, (message) => {
    throw new JobFileError(located.lineOf(["version"]), message);
  });
}

/** Takes a job through one migration after the other until it has the version `to`. */
export function migrate(
  job: Raw,
  steps: Readonly<Record<number, (job: Raw) => Raw>>,
  to: number,
  refuse: (message: string) => never,
): Raw {
  let current = job;
  const version = current.version;
  if (typeof version !== "number") return job;
  if (version > to)
    refuse(`the file has version ${version}, made by a later program; this one reads up to ${to}`);
  for (let at = version; at < to; at++) {
    const step = steps[at];
    if (!step) refuse(`the file has version ${version}, which cannot be read`);
    current = { ...step(current), version: at + 1 };
  }
  return current;
}

function reasonOf(
  path: readonly (string | number)[],
  issue: { message: string; received: string; kind: string; type: string },
): string {
  const where = path.map((key) => (typeof key === "number" ? String(key + 1) : key)).join(" / ");
  if (issue.received === "undefined") return `${where || "the job"} is missing`;
  return where === "" ? issue.message : `${where}: ${issue.message}`;
}

/** The job as canonical text: reading and writing it again gives the same bytes. */
export function writeJob(document: JobDocument): string {
  return jobText(document, () => undefined);
}

/** @param instead what is written in place of the cells of a sheet; undefined for the cells themselves */
export function jobText(
  document: JobDocument,
  instead: (cells: SheetDocument["cells"]) => string | undefined,
): string {
  const { format, version, title, purpose, scenario, source, cautions, names, sheets, check, ...unknown } =
    document;
  return `${braces("", [
    ["format", inline(format)],
    ["version", inline(version)],
    ["title", inline(title)],
    ["purpose", inline(purpose)],
    ["scenario", inline(scenario)],
    ["source", inline(source)],
    ["cautions", list("  ", cautions.map(inline))],
    ["names", lines("  ", Object.entries(names))],
    [
      "sheets",
      list(
        "  ",
        sheets.map((sheet) => sheetText(sheet, instead(sheet.cells))),
      ),
    ],
    ["check", lines("  ", inOrder(check, ["value", "within", "source"]))],
    ...kept(unknown),
  ])}\n`;
}

/** Before what stands in a sheet. */
export const deep = "      ";

function sheetText(sheet: SheetDocument, instead: string | undefined): string {
  const {
    name,
    operation,
    result,
    signedOff,
    signedFor,
    columns,
    rows,
    columnCount,
    cells,
    formats,
    choices,
    notes,
    merged,
    locked,
    allowed,
    hidden,
    freeze,
    ...unknown
  } = sheet;
  const entries: [string, string | undefined][] = [
    ["name", inline(name)],
    ["operation", operation === undefined ? undefined : inline(operation)],
    ["result", result === undefined ? undefined : inline(result)],
    ["signedOff", signedOff === undefined ? undefined : inline(signedOff)],
    ["signedFor", signedFor && filled(inline(orderly(signedFor, signedForKeys)))],
    ["columns", filled(lines(deep, sorted(columns, columnIndex)))],
    ["rows", rows === 200 ? undefined : inline(rows)],
    ["columnCount", columnCount === 26 ? undefined : inline(columnCount)],
    ["cells", instead ?? cellsText(cells)],
    // The order of formats tells which one wins, so it stays.
    ["formats", filled(lines(deep, inOrder(formats, formatKeys)))],
    ["choices", filled(lines(deep, sorted(choices, placeOrder)))],
    ["notes", filled(lines(deep, sorted(notes, placeOrder)))],
    ["merged", merged.length === 0 ? undefined : inline(merged)],
    ["locked", locked === undefined || locked.length === 0 ? undefined : inline(locked)],
    ["allowed", allowed && filled(lines(deep, inOrder(allowed, allowedKeys)))],
    ["hidden", hidden === undefined || hidden.length === 0 ? undefined : inline(hidden)],
    ["freeze", freeze === undefined ? undefined : inline(freeze)],
    ...kept(unknown),
  ];
  return braces("    ", entries);
}

/** Lines of slabs that have been written: of a large sheet most are written once only. */
const written = new WeakMap<object, string>();

function cellsText(cells: SheetDocument["cells"]): string {
  const slabs = slabsIn(cells);
  if (slabs.length === 0) return lines(deep, sorted(cells, placeOrder));
  return `{\n${slabs.map(slabText).join(",\n")}\n${deep}}`;
}

function slabText(slab: Piece): string {
  let text = written.get(slab);
  if (text === undefined) {
    text = cellLines(cellsOf(slab));
    written.set(slab, text);
  }
  return text;
}

/** Row by row, a cell a line, without what stands around them. */
export function cellLines(cells: SheetDocument["cells"]): string {
  return lines(deep, sorted(cells, placeOrder)).slice(2, -deep.length - 2);
}

/**
 * Does beforehand what writing a very large job would keep the page from anything else for.
 *
 * @param pause settles after the page has had its turn
 * @returns undefined when the job is not so large
 */
export function prepareText(document: JobDocument, pause: () => Promise<void>): Promise<void> | undefined {
  const slabs = document.sheets.flatMap(({ cells }) => slabsIn(cells)).filter((slab) => !written.has(slab));
  if (slabs.length < 20) return undefined;
  return (async () => {
    let end = performance.now() + 8;
    for (const slab of slabs) {
      slabText(slab);
      if (performance.now() < end) continue;
      await pause();
      end = performance.now() + 8;
    }
  })();
}

const formatKeys = ["as", "places", "unit", "perTurn", "role", "bold", "italic", "shade", "border", "align"];
const signedForKeys = ["result", "set"];
const allowedKeys = ["least", "most", "whole", "listed", "message"];

/** Each entry with the keys that are named first, the others after them. */
function inOrder(record: Readonly<Record<string, object>>, keys: readonly string[]): [string, object][] {
  return Object.entries(record).map(([name, entry]) => {
    return [name, orderly(entry, keys)];
  });
}

function orderly(entry: object, keys: readonly string[]): object {
  const rank = (key: string) => (keys.includes(key) ? keys.indexOf(key) : keys.length);
  return Object.fromEntries(Object.entries(entry).sort(([a], [b]) => rank(a) - rank(b)));
}

function kept(unknown: Raw): [string, string][] {
  return Object.entries(unknown).map(([key, value]) => [key, inline(value)]);
}

function braces(indent: string, entries: readonly (readonly [string, string | undefined])[]): string {
  const written = entries
    .filter(([, text]) => text !== undefined)
    .map(([key, text]) => `${indent}  ${JSON.stringify(key)}: ${text}`);
  return written.length === 0 ? "{}" : `{\n${written.join(",\n")}\n${indent}}`;
}

/** One entry a line. */
function lines(indent: string, entries: readonly (readonly [string, unknown])[]): string {
  return braces(
    indent,
    entries.map(([key, value]) => [key, inline(value)]),
  );
}

function list(indent: string, texts: readonly string[]): string {
  return texts.length === 0
    ? "[]"
    : `[\n${texts.map((text) => `${indent}  ${text}`).join(",\n")}\n${indent}]`;
}

function filled(text: string): string | undefined {
  return text === "{}" ? undefined : text;
}

/** On one line, with a space after colons and commas. */
function inline(value: unknown): string {
  if (Array.isArray(value)) return value.length === 0 ? "[]" : `[${value.map(inline).join(", ")}]`;
  if (typeof value === "object" && value !== null) {
    const entries = Object.entries(value).map(([key, each]) => `${JSON.stringify(key)}: ${inline(each)}`);
    return entries.length === 0 ? "{}" : `{ ${entries.join(", ")} }`;
  }
  return JSON.stringify(value);
}

function sorted<T>(record: Readonly<Record<string, T>>, order: (key: string) => number): [string, T][] {
  return Object.entries(record).sort(([a], [b]) => order(a) - order(b));
}

function placeOrder(cell: string): number {
  const place = parseCell(cell);
  return place ? place.row * 20_000 + place.column : 0;
}
