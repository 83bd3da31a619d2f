/**
 * What-if tables: results of the job against values of one or two inputs, written as cells that call
 * MULTIPLE.OPERATIONS. Once written they are cells like any other: they follow every change of the job.
 */
import { cellName, columnName, parseCell, sheetPrefix } from "../engine/address.ts";
import { limits } from "../engine/gate.ts";
import type { Place } from "../engine/values.ts";
import { type Area, sizeOf } from "./areas.ts";
import { emptySheet, withCells, withFormat, withSheet } from "./changes.ts";
import type { CellFormat, JobDocument } from "./document.ts";
import type { CellEdit, Job } from "./job.ts";
import { isLocked, lockReason } from "./locks.ts";
import { nameOfCell } from "./names.ts";
import { rangeName } from "./references.ts";
import { labelOf, type SheetArea, wordsFor } from "./whatif-places.ts";

/** Which values an input takes. */
export type Values =
  | { readonly kind: "cells"; readonly area: SheetArea }
  | { readonly kind: "steps"; readonly first: number; readonly step: number; readonly count: number }
  | { readonly kind: "list"; readonly texts: readonly string[] };

export interface TableInput {
  readonly place: Place;
  readonly values: Values;
}

export interface TableRequest {
  readonly results: readonly Place[];
  /** One, down the table; or two, the second across it. */
  readonly inputs: readonly TableInput[];
  /** Corner of the table on a sheet of the job; undefined for a new sheet. */
  readonly at: Place | undefined;
  /** True when it may be written over what is there. */
  readonly over: boolean;
}

/** A table that can be written: `job.put(document, what)`. */
export interface TablePlan {
  readonly document: JobDocument;
  readonly what: string;
  readonly place: SheetArea;
  readonly values: number;
}

export interface TableProblem {
  readonly problem: string;
  /** The first cell in the way, when that is what is wrong. */
  readonly taken?: string;
}

/** Values of one input, and cells of a table. */
export const mostValues = 500;
export const mostCells = 20_000;

const isProblem = <T>(given: T | TableProblem): given is TableProblem =>
  typeof given === "object" && given !== null && "problem" in given;

/** What `request` would write, or why it cannot. */
export function planTable(job: Job, request: TableRequest): TablePlan | TableProblem {
  const { results, inputs, at } = request;
  const [down, across] = inputs;
  if (results.length === 0 || !down) return { problem: "a table needs a result and an input" };
  if (across && results.length > 1)
    return { problem: "a table of two inputs shows one result: name only one" };
  if (across && isSame(across.place, down.place)) return { problem: "the two inputs are the same cell" };
  for (const { place } of inputs) {
    const { spilledFrom } = job.cell(place.sheet, place.row, place.column);
    if (spilledFrom !== undefined)
      return {
        problem: `${wordsFor(job, place)} is filled by the formula in ${spilledFrom} and can't be replaced`,
      };
  }
  const rows = textsOf(job, down.values, at?.sheet);
  if (isProblem(rows)) return rows;
  const columns = across ? textsOf(job, across.values, at?.sheet) : undefined;
  if (columns && isProblem(columns)) return columns;
  const width = 1 + (columns?.length ?? results.length);
  const sheet = at?.sheet ?? freeName(job);
  const corner = at ?? { sheet, row: 0, column: 0 };
  const area = {
    top: corner.row,
    left: corner.column,
    bottom: corner.row + 1 + rows.length,
    right: corner.column + width - 1,
  };
  if (rows.length * (width - 1) > mostCells)
    return { problem: `a table may have ${mostCells} values, this one has ${rows.length * (width - 1)}` };
  if (area.bottom >= limits.rows || area.right >= limits.columns)
    return { problem: `the table does not fit on the sheet from ${cellName(corner.row, corner.column)} on` };
  if (at && isOnTable(request, area)) return { problem: "the table would cover what it is reckoned from" };
  const taken = at && inTheWay(job, sheet, area, request.over);
  if (taken) return taken;
  const values = columns ? rows.length * columns.length : rows.length * results.length;
  return {
    document: written(job, { ...request, sheet, area, rows, columns }),
    what: `Made a what-if table of ${values} values in ${sheetPrefix(sheet)}${rangeName(area)}`,
    place: { sheet, ...area },
    values,
  };
}

interface Layout extends TableRequest {
  readonly sheet: string;
  readonly area: Area;
  readonly rows: readonly string[];
  readonly columns: readonly string[] | undefined;
}

/** A heading, a line that names the columns or holds the second input's values, and a row for each value of the first. */
function written(job: Job, layout: Layout): JobDocument {
  const { results, inputs, sheet, area, rows, columns } = layout;
  const { top, left } = area;
  const [down, across] = inputs.map(({ place }) => place) as [Place, Place | undefined];
  const edits: CellEdit[] = [];
  const put = (row: number, column: number, text: string) => edits.push({ sheet, row, column, text });
  const named = (place: Place) => `${labelOf(job, place)}${nameNote(job, place)}`;
  put(
    top,
    left,
    plainText(
      across
        ? `${named(results[0]!)}, by ${named(down)} down and ${named(across)} across`
        : `What if ${named(down)} changes`,
    ),
  );
  put(top + 1, left, plainText(labelOf(job, across ? results[0]! : down)));
  if (columns) for (const [i, text] of columns.entries()) put(top + 1, left + 1 + i, text);
  else for (const [i, place] of results.entries()) put(top + 1, left + 1 + i, plainText(labelOf(job, place)));
  for (const [r, text] of rows.entries()) {
    const row = top + 2 + r;
    put(row, left, text);
    const first = `${reference(job, down, sheet)},$${cellName(row, left)}`;
    for (let c = 0; c < (columns ?? results).length; c++) {
      const column = left + 1 + c;
      const second = across ? `,${reference(job, across, sheet)},${columnName(column)}$${top + 2}` : "";
      const result = reference(job, results[across ? 0 : c]!, sheet);
      put(row, column, `=MULTIPLE.OPERATIONS(${result},${first}${second})`);
    }
  }
  let { document } = job;
  if (!layout.at)
    document = { ...document, sheets: [...document.sheets, { ...emptySheet(sheet), operation: 0 }] };
  document = withCells(document, edits);
  return formatted(job, document, layout);
}

function formatted(job: Job, before: JobDocument, layout: Layout): JobDocument {
  const { results, inputs, sheet, area, columns } = layout;
  const { top, left, bottom, right } = area;
  const body = top + 2;
  let document = before;
  const lay = (part: Area, format: CellFormat) => {
    if (Object.keys(format).length > 0) document = withFormat(document, sheet, rangeName(part), format);
  };
  const line = (from: number, to: number) => ({ top: top + 1, left: from, bottom: top + 1, right: to });
  lay({ top, left, bottom: top, right: left }, { role: "head" });
  lay(line(left, columns ? left : right), { role: "column" });
  lay({ top: body, left, bottom, right: left }, axisFormat(job, inputs[0]!));
  if (columns) {
    lay(line(left + 1, right), { ...axisFormat(job, inputs[1]!), bold: true });
    lay({ top: body, left: left + 1, bottom, right }, looksOf(job, results[0]!));
  } else
    for (const [i, place] of results.entries())
      lay({ top: body, left: left + 1 + i, bottom, right: left + 1 + i }, looksOf(job, place));
  if (layout.at) return document;
  const widths: Record<string, number> = { [columnName(left)]: 180 };
  for (let column = left + 1; column <= right; column++)
    widths[columnName(column)] = widthOf(job, results[columns ? 0 : column - left - 1]!);
  return withSheet(document, sheet, (old) => ({ ...old, columns: { ...old.columns, ...widths } }));
}

/** As wide as the column that the result stands in, within reason. */
function widthOf(job: Job, { sheet, column }: Place): number {
  const found = job.document.sheets.find(({ name }) => name === sheet);
  return Math.max(112, Math.min(160, found?.columns[columnName(column)] ?? 0));
}

/** How numbers of a cell are shown; what it is for stays behind. */
function looksOf(job: Job, { sheet, row, column }: Place): CellFormat {
  const { as, places, unit, perTurn } = job.cell(sheet, row, column).format;
  const looks = { as, places, unit, perTurn };
  return Object.fromEntries(Object.entries(looks).filter(([, value]) => value !== undefined));
}

function axisFormat(job: Job, { place, values }: TableInput): CellFormat {
  return { ...looksOf(job, place), ...(values.kind === "cells" ? {} : { role: "input" }) };
}

function textsOf(job: Job, values: Values, onSheet: string | undefined): readonly string[] | TableProblem {
  if (values.kind === "list") {
    const texts = values.texts.map((text) => text.trim()).filter((text) => text !== "");
    return counted(texts.map((text) => (text.startsWith("=") ? `'${text}` : text)));
  }
  if (values.kind === "steps") {
    const { first, step, count } = values;
    if (!Number.isFinite(first) || !Number.isFinite(step))
      return { problem: "start and step must be numbers" };
    if (!Number.isInteger(count) || count < 1 || count > mostValues)
      return { problem: `how many must be a whole number from 1 to ${mostValues}` };
    // Fifteen digits: what a person wrote comes out as they would write it.
    return Array.from({ length: count }, (_, i) => String(Number((first + i * step).toPrecision(15))));
  }
  const { area } = values;
  if (sizeOf(area) > mostCells) return { problem: `${rangeName(area)} is too large` };
  const prefix = area.sheet === onSheet ? "" : sheetPrefix(area.sheet);
  const texts: string[] = [];
  for (let row = area.top; row <= area.bottom; row++)
    for (let column = area.left; column <= area.right; column++)
      if (job.cell(area.sheet, row, column).value !== null) texts.push(`=${prefix}${cellName(row, column)}`);
  return counted(texts);
}

function counted(texts: readonly string[]): readonly string[] | TableProblem {
  if (texts.length === 0) return { problem: "there are no values for the input" };
  return texts.length > mostValues
    ? { problem: `an input may take ${mostValues} values, here ${texts.length}` }
    : texts;
}

/** Absolute, so that the cells of the table can be copied. */
function reference(job: Job, { sheet, row, column }: Place, from: string): string {
  const name = nameOfCell(job.document, sheet, row, column);
  if (name !== undefined) return name;
  return `${sheet === from ? "" : sheetPrefix(sheet)}$${columnName(column)}$${row + 1}`;
}

function nameNote(job: Job, { sheet, row, column }: Place): string {
  const name = nameOfCell(job.document, sheet, row, column);
  const label = labelOf(job, { sheet, row, column }).toLowerCase();
  return name === undefined || name.toLowerCase() === label ? "" : ` (${name})`;
}

/** Text that is no formula, number or truth value, whatever it reads like. */
function plainText(text: string): string {
  return /^[='+\-.\d]/.test(text) || /^(true|false)$/i.test(text) ? `'${text}` : text;
}

function freeName(job: Job): string {
  const taken = new Set(job.document.sheets.map(({ name }) => name.toLowerCase()));
  let name = "What if";
  for (let n = 2; taken.has(name.toLowerCase()); n++) name = `What if ${n}`;
  return name;
}

function isOnTable({ results, inputs, at }: TableRequest, area: Area): boolean {
  const places = [...results, ...inputs.map(({ place }) => place)];
  const sources = inputs.flatMap(({ values }) =>
    values.kind === "cells" && values.area.sheet === at!.sheet ? [values.area] : [],
  );
  const covered = ({ row, column }: { row: number; column: number }) =>
    row >= area.top && row <= area.bottom && column >= area.left && column <= area.right;
  return (
    places.some((place) => place.sheet === at!.sheet && covered(place)) ||
    sources.some(
      (one) =>
        one.top <= area.bottom && area.top <= one.bottom && one.left <= area.right && area.left <= one.right,
    )
  );
}

function inTheWay(job: Job, sheet: string, area: Area, over: boolean): TableProblem | undefined {
  const on = job.document.sheets.find(({ name }) => name === sheet)!;
  for (let row = area.top; row <= area.bottom; row++) {
    for (let column = area.left; column <= area.right; column++) {
      const name = cellName(row, column);
      if (isLocked(on, row, column)) return { problem: lockReason(row, column) };
      const { spilledFrom } = job.cell(sheet, row, column);
      if (spilledFrom !== undefined) return { problem: `${name} is filled by the formula in ${spilledFrom}` };
    }
  }
  if (over) return undefined;
  const taken = Object.keys(on.cells).find((name) => {
    const { row, column } = parseCell(name)!;
    return row >= area.top && row <= area.bottom && column >= area.left && column <= area.right;
  });
  return taken === undefined ? undefined : { problem: `${taken} is not empty`, taken };
}

function isSame(one: Place, other: Place): boolean {
  return one.sheet === other.sheet && one.row === other.row && one.column === other.column;
}
