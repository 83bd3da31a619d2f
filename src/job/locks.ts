/**
 * Cells that are locked against slips of the hand: typing, clearing, pasting and deleting leave them alone. Templates ship
 * with their formulas locked and their blanks free; whoever wants to change a formula unlocks it.
 */
import { cellName, parseRange } from "../engine/address.ts";
import { type Area, common, holds, without } from "./areas.ts";
import { withSheet } from "./changes.ts";
import type { JobDocument, SheetDocument } from "./document.ts";
import { formatOf } from "./formats.ts";
import type { Job } from "./job.ts";
import { textsIn } from "./large-cells.ts";
import { rangeName } from "./references.ts";

const read = new WeakMap<readonly string[], readonly Area[]>();

/** Every cell that is painted asks, so that the ranges are read once. */
function areasOf({ locked }: SheetDocument): readonly Area[] {
  if (!locked) return [];
  let areas = read.get(locked);
  if (!areas) {
    areas = locked.map((key) => parseRange(key)!);
    read.set(locked, areas);
  }
  return areas;
}

export function isLocked(sheet: SheetDocument, row: number, column: number): boolean {
  return areasOf(sheet).some((area) => holds(area, row, column));
}

/** The first locked range that reaches into `area`, as `B5`. */
function lockedIn(sheet: SheetDocument, area: Area): string | undefined {
  return (sheet.locked ?? []).find((key) => common(parseRange(key)!, area));
}

/** Why cells of `area` must stay as they are; undefined where none of them is locked. */
export function lockReasonIn(sheet: SheetDocument, area: Area): string | undefined {
  const cells = lockedIn(sheet, area);
  return cells === undefined ? undefined : isLockedWords(cells);
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

/** Frees every cell of a sheet. */
export function unlockAll(job: Job, sheet: string): void {
  if (job.document.sheets.some(({ name, locked }) => name === sheet && locked))
    putLocks(job, sheet, [], `Unlocked ${sheet}`);
}

/**
 * Locks every cell of a sheet that holds a formula, so that only the blanks can be typed into: a blank that comes with a
 * proposal stays free.
 */
export function lockFormulas(job: Job, sheet: string): void {
  const found = job.document.sheets.find((each) => each.name === sheet);
  if (!found) return;
  const formulas = textsIn(found.cells)
    .filter(([, text]) => text.startsWith("="))
    .map(([key]) => parseRange(key)!)
    .filter(({ top, left }) => formatOf(found, top, left).role !== "input" && !isLocked(found, top, left))
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

/** Frees what has just been put in among locked cells: it holds nothing yet that could be lost. */
export function withUnlocked(document: JobDocument, sheet: string, area: Area): JobDocument {
  const found = document.sheets.find((each) => each.name === sheet);
  if (!found || lockedIn(found, area) === undefined) return document;
  return withLocks(
    document,
    sheet,
    found.locked!.flatMap((key) => without(parseRange(key)!, area).map(rangeName)),
  );
}

function withLocks(document: JobDocument, sheet: string, locked: readonly string[]): JobDocument {
  return withSheet(document, sheet, ({ locked: _, ...rest }) =>
    locked.length > 0 ? { ...rest, locked } : rest,
  );
}

function putLocks(job: Job, sheet: string, locked: readonly string[], what: string): void {
  job.put(withLocks(job.document, sheet, locked), what);
}

/** Why a cell cannot be typed into. */
export function lockReason(row: number, column: number): string {
  return isLockedWords(cellName(row, column));
}

function isLockedWords(cells: string): string {
  return `${cells} is locked: unlock it first`;
}

/** The cells that such a reason names, as `B5`; undefined for any other reason. */
export function lockedCells(reason: string): string | undefined {
  return /^([A-Z]+\d+(?::[A-Z]+\d+)?) is locked/.exec(reason)?.[1];
}
