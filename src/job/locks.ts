/** Cells that are locked against slips of the hand: typing, clearing, pasting and deleting leave them alone. */
import { cellName, parseRange } from "../engine/address.ts";
import { type Area, common, holds, without } from "./areas.ts";
import { withSheet } from "./changes.ts";
import type { SheetDocument } from "./document.ts";
import type { Job } from "./job.ts";
import { rangeName } from "./references.ts";

export function isLocked(sheet: SheetDocument, row: number, column: number): boolean {
  return (sheet.locked ?? []).some((key) => holds(parseRange(key)!, row, column));
}

/** The first locked range that reaches into `area`, as `B5`. */
export function lockedIn(sheet: SheetDocument, area: Area): string | undefined {
  return (sheet.locked ?? []).find((key) => common(parseRange(key)!, area));
}

/** Locks a range, or frees it. */
export function setLocked(job: Job, sheet: string, area: Area, locked: boolean): void {
  const found = job.document.sheets.find((each) => each.name === sheet);
  if (!found) return;
  const others = (found.locked ?? []).flatMap((key) => without(parseRange(key)!, area).map(rangeName));
  const now = locked ? [...others, rangeName(area)] : others;
  if (JSON.stringify(now) === JSON.stringify(found.locked ?? [])) return;
  putLocks(job, sheet, now, `${locked ? "Locked" : "Unlocked"} ${rangeName(area)} in ${sheet}`);
}

/** Locks every cell of a sheet that holds a formula, so that only the blanks can be typed into. */
export function lockFormulas(job: Job, sheet: string): void {
  const found = job.document.sheets.find((each) => each.name === sheet);
  if (!found) return;
  const formulas = Object.entries(found.cells)
    .filter(([, text]) => text.startsWith("="))
    .map(([key]) => parseRange(key)!)
    .filter(({ top, left }) => !isLocked(found, top, left))
    .sort((a, b) => a.left - b.left || a.top - b.top);
  if (formulas.length === 0) return;
  // Neighbours in a column make one range.
  const ranges: Area[] = [];
  for (const area of formulas) {
    const last = ranges.at(-1);
    if (last && last.left === area.left && last.bottom + 1 === area.top)
      ranges[ranges.length - 1] = { ...last, bottom: area.top };
    else ranges.push(area);
  }
  putLocks(
    job,
    sheet,
    [...(found.locked ?? []), ...ranges.map(rangeName)],
    `Locked the formulas of ${sheet}`,
  );
}

function putLocks(job: Job, sheet: string, locked: readonly string[], what: string): void {
  job.put(
    withSheet(job.document, sheet, ({ locked: _, ...rest }) =>
      locked.length > 0 ? { ...rest, locked } : rest,
    ),
    what,
  );
}

/** Why a cell cannot be typed into. */
export function lockReason(row: number, column: number): string {
  return `${cellName(row, column)} is locked: unlock it first`;
}
