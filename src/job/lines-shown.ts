/** Rows and columns by name (`5:7`, `C:D`), which of them are hidden, and which stay put while the sheet scrolls. */
import { cellName, columnIndex, columnName, parseCell } from "../engine/address.ts";
import { withSheet } from "./changes.ts";
import type { SheetDocument } from "./document.ts";
import type { Job } from "./job.ts";
import type { Axis, Span } from "./lines.ts";

/** `5:7` for rows, `C:D` for columns, as the open standard writes whole rows and columns. */
export function linesText(axis: Axis, { first, last }: Span): string {
  return axis === "row" ? `${first + 1}:${last + 1}` : `${columnName(first)}:${columnName(last)}`;
}

/** undefined when the text names no whole rows or columns. */
export function parseLines(text: string): (Span & { axis: Axis }) | undefined {
  const rows = /^([1-9]\d{0,6}):([1-9]\d{0,6})$/.exec(text);
  if (rows) return sorted("row", Number(rows[1]) - 1, Number(rows[2]) - 1);
  const columns = /^([A-Z]{1,3}):([A-Z]{1,3})$/.exec(text);
  return columns ? sorted("column", columnIndex(columns[1]!), columnIndex(columns[2]!)) : undefined;
}

function sorted(axis: Axis, a: number, b: number): Span & { axis: Axis } {
  return { axis, first: Math.min(a, b), last: Math.max(a, b) };
}

/** Those of one axis. */
export function linesOf(texts: readonly string[], axis: Axis): Span[] {
  return texts.flatMap((text) => {
    const found = parseLines(text);
    return found?.axis === axis ? [found] : [];
  });
}

/** Hides lines, or shows those of them that are hidden. */
export function setHidden(job: Job, sheet: string, axis: Axis, span: Span, hide: boolean): void {
  const found = job.document.sheets.find((each) => each.name === sheet);
  if (!found) return;
  const texts = found.hidden ?? [];
  const others = texts.filter((text) => parseLines(text)?.axis !== axis);
  const hidden = new Set<number>();
  for (const { first, last } of linesOf(texts, axis))
    for (let line = first; line <= last; line++) hidden.add(line);
  for (let line = span.first; line <= span.last; line++) {
    if (hide) hidden.add(line);
    else hidden.delete(line);
  }
  const now = [...others, ...runsOf([...hidden]).map((run) => linesText(axis, run))];
  if (JSON.stringify(now) === JSON.stringify(texts)) return;
  job.put(
    withSheet(job.document, sheet, ({ hidden: _, ...rest }) =>
      now.length > 0 ? { ...rest, hidden: now } : rest,
    ),
    `${hide ? "Hid" : "Showed"} ${axis}s ${linesText(axis, span).replace(":", " to ")} in ${sheet}`,
  );
}

function runsOf(lines: readonly number[]): Span[] {
  const runs: Span[] = [];
  for (const line of [...lines].sort((a, b) => a - b)) {
    const last = runs.at(-1);
    if (last && last.last + 1 === line) runs[runs.length - 1] = { ...last, last: line };
    else runs.push({ first: line, last: line });
  }
  return runs;
}

/** Keeps the first rows and columns in view; none of both lets all scroll. */
export function setFreeze(job: Job, sheet: string, rows: number, columns: number): void {
  const found = job.document.sheets.find((each) => each.name === sheet);
  const corner = rows > 0 || columns > 0 ? cellName(rows, columns) : undefined;
  if (!found || found.freeze === corner) return;
  const words = [
    rows > 0 ? `${rows} ${rows === 1 ? "row" : "rows"}` : "",
    columns > 0 ? `${columns} ${columns === 1 ? "column" : "columns"}` : "",
  ].filter(Boolean);
  job.put(
    withSheet(job.document, sheet, ({ freeze: _, ...rest }) =>
      corner === undefined ? rest : { ...rest, freeze: corner },
    ),
    corner === undefined ? `Let all of ${sheet} scroll` : `Froze ${words.join(" and ")} of ${sheet}`,
  );
}

/** How many rows and columns stay put. */
export function frozenOf(sheet: SheetDocument | undefined): { rows: number; columns: number } {
  const corner = sheet?.freeze === undefined ? undefined : parseCell(sheet.freeze);
  return corner ? { rows: corner.row, columns: corner.column } : { rows: 0, columns: 0 };
}
