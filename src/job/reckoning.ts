/**
 * The evaluator without a screen: opens a job, types values into named cells, and gives back values as JSON, one a line.
 */
import { parseRange, placeName, splitSheet } from "../engine/address.ts";
import { limits } from "../engine/gate.ts";
import { type CellValue, isErrorValue } from "../engine/values.ts";
import { emptySheet } from "./changes.ts";
import type { JobDocument } from "./document.ts";
import { JobFileError, readJob } from "./file.ts";
import { type CellEdit, createJob, type Job } from "./job.ts";
import { outcomeWords, seek, takeFound } from "./solve-job.ts";
import { placeFrom } from "./whatif-places.ts";
import { numberFrom } from "./whatif-suggest.ts";

export interface Reckoned {
  /** For stdout: one JSON value a line. */
  readonly out: string;
  /** For stderr. */
  readonly err: string;
  /** 0, or 2 for bad usage. */
  readonly status: 0 | 2;
}

export const usage =
  'usage: reckon [--job FILE] [--set NAME=VALUE]... [--seek "NAME=VALUE by NAME from LOW to HIGH"]... [--get NAME|Sheet!A1|Sheet!A1:C9]... [FORMULA]...';

/** What the person asked for cannot be done: a message and status 2. */
class BadUsage extends Error {}

interface Wishes {
  readonly jobs: readonly string[];
  readonly sets: readonly { readonly target: string; readonly value: string }[];
  readonly seeks: readonly Sought[];
  readonly gets: readonly string[];
  readonly formulas: readonly string[];
}

/** `result=wanted by input from low to high`, all as typed. */
interface Sought {
  readonly result: string;
  readonly wanted: string;
  readonly input: string;
  readonly from: string;
  readonly to: string;
}

interface Area {
  readonly sheet: string;
  readonly top: number;
  readonly left: number;
  readonly bottom: number;
  readonly right: number;
}

const noJob: JobDocument = {
  format: "halfangle job",
  version: 1,
  title: "",
  purpose: "",
  scenario: "",
  source: "",
  cautions: [],
  names: {},
  sheets: [emptySheet("Sheet1")],
  check: {},
};

/**
 * @param words as on the command line
 * @param readFile gives the text of a file, or throws
 */
export async function reckon(
  words: readonly string[],
  readFile: (path: string) => string,
): Promise<Reckoned> {
  try {
    const wishes = wishesIn(words);
    const job = createJob(opened(wishes.jobs, readFile), undefined, () => {});
    const locked = job.setCells(wishes.sets.flatMap(({ target, value }) => editsFor(job, target, value)));
    if (locked !== undefined) throw new BadUsage(locked);
    const found: CellValue[] = [];
    for (const sought of wishes.seeks) found.push(await seekIn(job, sought));
    const gets = wishes.gets.map((target) => read(job, areaOf(job, target)));
    const reckoned = await Promise.all(wishes.formulas.map((formula) => job.evaluate(formula)));
    return {
      out: [...found, ...gets, ...reckoned].map((value) => `${JSON.stringify(plain(value))}\n`).join(""),
      err: "",
      status: 0,
    };
  } catch (error) {
    if (error instanceof BadUsage) return { out: "", err: `reckon: ${error.message}\n`, status: 2 };
    throw error;
  }
}

function wishesIn(words: readonly string[]): Wishes {
  const jobs: string[] = [];
  const sets: { target: string; value: string }[] = [];
  const seeks: Sought[] = [];
  const gets: string[] = [];
  const formulas: string[] = [];
  for (let i = 0; i < words.length; i++) {
    const word = words[i]!;
    if (word.startsWith("=")) formulas.push(word);
    else if (word === "--job") jobs.push(following(words, i++));
    else if (word === "--get") gets.push(following(words, i++));
    else if (word === "--set") {
      const [, target, value] = /^([^=]+)=([\s\S]*)$/.exec(following(words, i++)) ?? [];
      if (target === undefined || value === undefined)
        throw new BadUsage(`--set takes NAME=VALUE, got "${words[i]}"`);
      sets.push({ target: target.trim(), value });
    } else if (word === "--seek") seeks.push(soughtIn(following(words, i++)));
    else if (word.startsWith("-")) throw new BadUsage(`there is no option ${word}\n${usage}`);
    else throw new BadUsage(`a formula begins with "=", got "${word}"\n${usage}`);
  }
  if (jobs.length > 1) throw new BadUsage("--job may be given once");
  if (gets.length + formulas.length + jobs.length + sets.length + seeks.length === 0)
    throw new BadUsage(`nothing to reckon\n${usage}`);
  return { jobs, sets, seeks, gets, formulas };
}

function soughtIn(text: string): Sought {
  const [, result, wanted, input, from, to] =
    /^\s*([^=]+?)\s*=\s*(.+?)\s+by\s+(.+?)\s+from\s+(.+?)\s+to\s+(.+?)\s*$/.exec(text) ?? [];
  if (!result || !wanted || !input || !from || !to)
    throw new BadUsage(`--seek takes "NAME=VALUE by NAME from LOW to HIGH", got "${text}"`);
  return { result, wanted, input, from, to };
}

/** The number that was found, which then stands in the input; an error that says why there is none. */
async function seekIn(job: Job, sought: Sought): Promise<CellValue> {
  const first = job.document.sheets[0]!.name;
  const [result, input] = [sought.result, sought.input].map((name) => {
    const place = placeFrom(job, name, first);
    if (typeof place === "string") throw new BadUsage(place);
    return place;
  });
  const number = async (text: string) => (await numberFrom(job, text, first)) ?? Number.NaN;
  const [wanted, from, to] = [
    await number(sought.wanted),
    await number(sought.from),
    await number(sought.to),
  ];
  const request = { result: result!, input: input!, wanted, from, to };
  const outcome = await seek(job, request);
  if (typeof outcome === "string") throw new BadUsage(outcome);
  if (!outcome) throw new Error("a search that nobody has ended has ended without anything");
  if (outcome.kind === "found") {
    takeFound(job, request, outcome.point);
    return outcome.point.at;
  }
  return { error: "#N/A", message: outcomeWords(job, request, outcome, { value: String, input: String }) };
}

function following(words: readonly string[], i: number): string {
  const next = words[i + 1];
  if (next === undefined) throw new BadUsage(`${words[i]} needs a value after it\n${usage}`);
  return next;
}

function opened([path]: readonly string[], readFile: (path: string) => string): JobDocument {
  if (path === undefined) return noJob;
  let text: string;
  try {
    text = readFile(path);
  } catch (error) {
    throw new BadUsage(`${path} cannot be read: ${error instanceof Error ? error.message : String(error)}`);
  }
  try {
    return readJob(text);
  } catch (error) {
    if (error instanceof JobFileError) throw new BadUsage(`${path}, ${error.message}`);
    throw error;
  }
}

/** Where a name or an address points. */
function areaOf(job: Job, target: string): Area {
  const { names, sheets } = job.document;
  const name = Object.keys(names).find((each) => each.toLowerCase() === target.toLowerCase());
  const found = splitSheet(name === undefined ? target : names[name]!);
  const range = found && parseRange(found.rest);
  if (!found || !range) throw new BadUsage(`there is no name "${target}"${known(Object.keys(names), job)}`);
  const sheet = sheets.find((each) => each.name.toLowerCase() === found.sheet.toLowerCase());
  if (!sheet)
    throw new BadUsage(`there is no sheet "${found.sheet}": ${sheets.map((each) => each.name).join(", ")}`);
  if (range.bottom >= limits.rows || range.right >= limits.columns)
    throw new BadUsage(`${target} is larger than a sheet can be`);
  return { sheet: sheet.name, ...range };
}

function known(names: readonly string[], job: Job): string {
  if (job.document === noJob) return ": no job was given with --job";
  return names.length === 0 ? ": the job has none" : `: the job has ${names.join(", ")}`;
}

/** A single cell takes the value as it is typed; a range takes a list and empties the rest. */
function editsFor(job: Job, target: string, value: string): CellEdit[] {
  const area = areaOf(job, target);
  const places = placesIn(area);
  if (places.length === 1) return [{ sheet: area.sheet, ...places[0]!, text: value }];
  const values = value.trim() === "" ? [] : value.split(/[,;]/).map((each) => each.trim());
  if (values.length > places.length) {
    const where = placeName({ sheet: area.sheet, row: area.top, column: area.left });
    throw new BadUsage(
      `${target} has room for ${places.length} values from ${where} on, got ${values.length}`,
    );
  }
  return places.map((place, i) => ({ sheet: area.sheet, ...place, text: values[i] ?? "" }));
}

function placesIn({ top, left, bottom, right }: Area): { row: number; column: number }[] {
  const places: { row: number; column: number }[] = [];
  for (let row = top; row <= bottom; row++)
    for (let column = left; column <= right; column++) places.push({ row, column });
  return places;
}

function read(job: Job, area: Area): CellValue | CellValue[][] {
  const { sheet, top, left, bottom, right } = area;
  if (top === bottom && left === right) return job.cell(sheet, top, left).value;
  return Array.from({ length: bottom - top + 1 }, (_, row) =>
    Array.from({ length: right - left + 1 }, (_, column) => job.cell(sheet, top + row, left + column).value),
  );
}

/** Errors without the cell where they began: scripts get exactly two keys. */
function plain(value: CellValue | CellValue[][]): unknown {
  if (Array.isArray(value)) return value.map((row) => row.map(plain));
  return isErrorValue(value) ? { error: value.error, message: value.message } : value;
}
