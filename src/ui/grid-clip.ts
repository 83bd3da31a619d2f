/**
 * The clipboard of the grid. As text, tab-separated values with quoting (the quoting of RFC 4180, tabs for commas):
 * plain numbers, never grouped or rounded. As HTML, a table that also carries what was typed and where, so that a
 * formula pasted here still points as far from its cell.
 */
import { type CellValue, isErrorValue } from "../engine/values.ts";
import { moveFormula } from "../job/formula-text.ts";
import { asNumbersHere, type PastedNumbers } from "./pasted-numbers.ts";

export interface Clipped {
  /** As typed. */
  readonly text: string;
  readonly value: CellValue;
}

const ourMark = /<table data-halfangle="(\d+),(\d+)">/;

export function asTabbed(rows: readonly (readonly Clipped[])[]): string {
  return rows.map((row) => row.map((cell) => quoted(bare(cell.value))).join("\t")).join("\n");
}

export function asTable(rows: readonly (readonly Clipped[])[], row: number, column: number): string {
  const body = rows.map((cells) => {
    const columns = cells.map(
      (cell) => `<td data-typed="${escaped(cell.text)}">${escaped(bare(cell.value))}</td>`,
    );
    return `<tr>${columns.join("")}</tr>`;
  });
  return `<meta charset="utf-8"><table data-halfangle="${row},${column}">${body.join("")}</table>`;
}

/** Whether the HTML of a clipboard was written by this page. */
export function isOurs(html: string): boolean {
  return ourMark.test(html);
}

/**
 * The texts to put in, from what the clipboard holds. A table of our own comes first, then tabbed text.
 *
 * @param row of the cell that takes the first text
 */
export function pastedTexts(html: string, text: string, row: number, column: number): PastedNumbers {
  const own = ownTable(html, row, column);
  return own ? { rows: own, read: undefined } : asNumbersHere(otherTable(html, text) ?? fromTabbed(text));
}

/** A table from elsewhere, where the plain text has lost its columns: of each cell the words and nothing else. */
function otherTable(html: string, text: string): string[][] | undefined {
  if (text.includes("\t") || !/<td[\s>]/i.test(html)) return undefined;
  const rows = html
    .split(/<tr[\s>]/i)
    .slice(1)
    .map((row) =>
      row
        .split(/<t[dh](?=[\s>])/i)
        .slice(1)
        .map((cell) => wordsOf(cell)),
    );
  return rows.some((row) => row.length > 1) ? rows : undefined;
}

function wordsOf(cell: string): string {
  const inside = cell.slice(cell.indexOf(">") + 1).split(/<\/t[dhr]>/i)[0]!;
  return unescaped(inside.replace(/<[^>]*>/g, "").replace(/&nbsp;|\s+/g, " ")).trim();
}

// The HTML is read by pattern and only when it carries our mark: nothing of it is parsed as a page or inserted.
function ownTable(html: string, row: number, column: number): string[][] | undefined {
  const at = ourMark.exec(html);
  if (!at) return undefined;
  const down = row - Number(at[1]);
  const right = column - Number(at[2]);
  const rows = html.slice(at.index).split("</tr>").slice(0, -1);
  return rows.map((line) =>
    Array.from(line.matchAll(/<td data-typed="([^"]*)"/g), ([, typed]) =>
      moveFormula(unescaped(typed!), down, right),
    ),
  );
}

/** Tab-separated text to cells; a quoted one may hold tabs, line ends and doubled quotes. */
export function fromTabbed(text: string): string[][] {
  const rows: string[][] = [[]];
  const cell = /(?:"((?:[^"]|"")*)"(?=[\t\r\n]|$)|([^\t\r\n]*))(\t|\r\n|\r|\n|$)/y;
  while (cell.lastIndex < text.length || rows.at(-1)!.length > 0) {
    const match = cell.exec(text);
    if (!match) break;
    const [, inQuotes, plain, end] = match;
    rows.at(-1)!.push(inQuotes === undefined ? plain! : inQuotes.replaceAll('""', '"'));
    if (end === "") break;
    if (end !== "\t") rows.push([]);
  }
  if (rows.at(-1)!.length === 0) rows.pop();
  return rows;
}

function bare(value: CellValue): string {
  if (value === null) return "";
  if (typeof value === "boolean") return value ? "TRUE" : "FALSE";
  return isErrorValue(value) ? value.error : String(value);
}

function quoted(text: string): string {
  return /[\t\r\n"]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}

const entities: Readonly<Record<string, string>> = { "&": "&amp;", "<": "&lt;", ">": "&gt;", '"': "&quot;" };

function escaped(text: string): string {
  return text.replace(/[&<>"]/g, (letter) => entities[letter]!);
}

function unescaped(text: string): string {
  return text
    .replaceAll("&quot;", '"')
    .replaceAll("&gt;", ">")
    .replaceAll("&lt;", "<")
    .replaceAll("&amp;", "&");
}
