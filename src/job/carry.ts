/**
 * What goes with a cell besides its text, put where the cell is copied or filled to: its format, and with a copy its note
 * and choices. A blank stays the blank that it is. Neighbours of one format make one range, and where nothing differs
 * nothing is written.
 */
import { cellName, parseRange } from "../engine/address.ts";
import { type Area, common, isInside, without } from "./areas.ts";
import { withSheet } from "./changes.ts";
import type { CellFormat, JobDocument, SheetDocument } from "./document.ts";
import { addRange, formatOf } from "./formats.ts";
import { rangeName } from "./references.ts";

type Looks = Pick<SheetDocument, "formats" | "notes" | "choices">;

/** Cells that something is carried from. */
export interface Carried {
  /** Of their sheet as it was when they were copied. */
  readonly looks: Looks;
  readonly area: Area;
  /** Where the first of them goes; further copies of the area lie round that one. */
  readonly first: { readonly row: number; readonly column: number };
}

interface Piece {
  readonly area: Area;
  readonly format: CellFormat;
}

/** What stays when the texts of a sheet are let go. */
export function looksOf({ formats, notes, choices }: SheetDocument): Looks {
  return { formats, notes, choices };
}

/** The same document when nothing differs. */
export function withLooks(
  document: JobDocument,
  name: string,
  goal: Area,
  from: Carried,
  how: "copied" | "filled",
): JobDocument {
  const sheet = document.sheets.find((each) => each.name === name);
  if (!sheet) return document;
  const formats = formatsAfter(sheet, goal, from);
  const all = how === "copied";
  const notes = all ? keyedAfter(sheet, (looks) => looks.notes, goal, from) : sheet.notes;
  const choices = all ? keyedAfter(sheet, (looks) => looks.choices, goal, from) : sheet.choices;
  if (formats === sheet.formats && notes === sheet.notes && choices === sheet.choices) return document;
  return withSheet(document, name, (old) => ({ ...old, formats, notes, choices }));
}

/** The cell that is carried to this one. */
function origin({ area, first }: Carried, row: number, column: number): [number, number] {
  const within = (by: number, count: number) => ((by % count) + count) % count;
  return [
    area.top + within(row - first.row, area.bottom - area.top + 1),
    area.left + within(column - first.column, area.right - area.left + 1),
  ];
}

function formatsAfter(sheet: SheetDocument, goal: Area, from: Carried): SheetDocument["formats"] {
  // Only what reaches into the cells in question is looked through for each of them.
  const before = { formats: reaching(sheet.formats, goal) };
  const source = { formats: reaching(from.looks.formats, from.area) };
  if (Object.keys(before.formats).length + Object.keys(source.formats).length === 0) return sheet.formats;
  const differing = new Set<string>();
  const pieces: Piece[] = [];
  let above = new Map<string, number>();
  for (let row = goal.top; row <= goal.bottom; row++) {
    const here = new Map<string, number>();
    let run: { left: number; format: CellFormat; text: string } | undefined;
    const end = (right: number) => {
      if (!run) return;
      const key = `${run.left} ${right} ${run.text}`;
      const joined = above.get(key);
      if (joined === undefined)
        pieces.push({ area: { top: row, left: run.left, bottom: row, right }, format: run.format });
      else pieces[joined] = { ...pieces[joined]!, area: { ...pieces[joined]!.area, bottom: row } };
      here.set(key, joined ?? pieces.length - 1);
      run = undefined;
    };
    for (let column = goal.left; column <= goal.right; column++) {
      const now = formatOf(before, row, column);
      const format = laidOver(now, formatOf(source, ...origin(from, row, column)));
      const text = textOf(format);
      const differs = text !== textOf(now);
      if (differs) differing.add(cellName(row, column));
      if (run && (!differs || run.text !== text)) end(column - 1);
      if (differs) run ??= { left: column, format, text };
    }
    end(goal.right);
    above = here;
  }
  return pieces.length === 0 ? sheet.formats : replaced(sheet.formats, pieces, differing);
}

/**
 * A blank stays one, and keeps how its number is read and shown if it says so: what is typed there later is read by that.
 * Every other cell looks as what is carried there.
 */
function laidOver(now: CellFormat, carried: CellFormat): CellFormat {
  if (now.role !== "input") return carried;
  const { as, places, unit, perTurn, ...looks } = carried;
  const saysHow = [now.as, now.places, now.unit, now.perTurn].some((each) => each !== undefined);
  return { ...(saysHow ? looks : carried), ...now };
}

const texts = new WeakMap<CellFormat, string>();

/** The same for formats that say the same. */
function textOf(format: CellFormat): string {
  let text = texts.get(format);
  if (text === undefined) {
    text = JSON.stringify(Object.entries(format).sort(([a], [b]) => (a < b ? -1 : 1)));
    texts.set(format, text);
  }
  return text;
}

function reaching(formats: SheetDocument["formats"], area: Area): SheetDocument["formats"] {
  return Object.fromEntries(Object.entries(formats).filter(([key]) => common(parseRange(key)!, area)));
}

/** Gives every piece its format and no other. `differing`: the cells of the pieces. */
function replaced(
  formats: SheetDocument["formats"],
  pieces: readonly Piece[],
  differing: ReadonlySet<string>,
): SheetDocument["formats"] {
  const after: Record<string, CellFormat> = {};
  // The first range wins.
  for (const { area, format } of pieces) if (Object.keys(format).length > 0) after[rangeName(area)] = format;
  for (const [key, format] of Object.entries(formats)) {
    if (!key.includes(":")) {
      if (!differing.has(key)) after[key] = format;
      continue;
    }
    const place = parseRange(key)!;
    const hit = pieces.filter(({ area }) => common(area, place));
    // A range that says nothing which the piece does not say itself may lie under it whole.
    const cut = hit.filter((piece) => Object.keys(format).some((each) => !Object.hasOwn(piece.format, each)));
    const left = cut.reduce((rest, { area }) => rest.flatMap((part) => without(part, area)), [place]);
    for (const part of left) if (!hit.some(({ area }) => isInside(part, area))) addRange(after, part, format);
  }
  return after;
}

/** What is kept cell by cell. A blank keeps its own where none is carried. */
function keyedAfter<T>(
  sheet: SheetDocument,
  part: (looks: Looks) => Readonly<Record<string, T>>,
  goal: Area,
  from: Carried,
): Readonly<Record<string, T>> {
  const now = part(sheet);
  const source = part(from.looks);
  if (Object.keys(now).length + Object.keys(source).length === 0) return now;
  const after: Record<string, T> = { ...now };
  let same = true;
  for (let row = goal.top; row <= goal.bottom; row++) {
    for (let column = goal.left; column <= goal.right; column++) {
      const key = cellName(row, column);
      const carried = source[cellName(...origin(from, row, column))];
      if (JSON.stringify(carried) === JSON.stringify(now[key])) continue;
      if (carried !== undefined) after[key] = carried;
      else if (formatOf(sheet, row, column).role === "input") continue;
      else delete after[key];
      same = false;
    }
  }
  return same ? now : after;
}
