/**
 * Cells of some rows as one text: thousands of figures take little room so, and go from one thread to another at once.
 * They are taken apart where one of them is looked at, and only the last ones looked at are kept apart.
 */
import { cellName, parseCell } from "./address.ts";

export type Cells = Readonly<Record<string, string>>;

/** Rows of a slab. */
export const slabRows = 64;

export interface Packed {
  /** The first row, from 0. */
  readonly top: number;
  readonly text: string;
  /** The cells that hold anything but a plain figure. */
  readonly notable: Cells;
  readonly count: number;
  /** The last row and column that hold something, from 0. */
  readonly last: { readonly row: number; readonly column: number };
}

/** Cells by their names, or a packed slab of them. */
export type Piece = Cells | PackedCells;

const betweenCells = "\u0001";
const betweenRows = "\u0002";
/** A text of its own with a sign between is not packed. */
// biome-ignore lint/suspicious/noControlCharactersInRegex: those are the signs
const hasSign = /[\u0001\u0002]/;
const figure = /^-?\d{1,15}(\.\d{1,15})?$/;

/** Slabs that are kept apart: those of a few screens. */
const mostApart = 24;
const apart = new Map<PackedCells, Cells>();

export class PackedCells {
  private lines: (string | readonly string[])[] | undefined;

  constructor(readonly packed: Packed) {}

  /** The text of one cell; undefined where nothing stands. */
  text(row: number, column: number): string | undefined {
    this.lines ??= looked(this).packed.text.split(betweenRows);
    const at = row - this.packed.top;
    let line = this.lines[at];
    if (typeof line === "string") {
      line = line.split(betweenCells);
      this.lines[at] = line;
    }
    return line?.[column] || undefined;
  }

  textAt(cell: string): string | undefined {
    const place = parseCell(cell);
    return place && this.text(place.row, place.column);
  }

  /** Forgets what it was taken apart into. */
  close(): void {
    this.lines = undefined;
  }

  /** By name, row by row. */
  get cells(): Cells {
    let cells = apart.get(this);
    if (cells) return cells;
    cells = unpacked(this.packed);
    if (apart.size >= mostApart) apart.delete(apart.keys().next().value!);
    apart.set(this, cells);
    return cells;
  }
}

/** Slabs whose lines are kept apart, the one looked at last at the end. */
const looks = new Set<PackedCells>();

function looked(slab: PackedCells): PackedCells {
  looks.add(slab);
  if (looks.size > mostApart) {
    const [oldest] = looks;
    oldest!.close();
    looks.delete(oldest!);
  }
  return slab;
}

/** Where a cell is known to be in the right slab. */
export function textIn(piece: Piece, cell: string): string | undefined {
  if (piece instanceof PackedCells) return piece.textAt(cell);
  return Object.hasOwn(piece, cell) ? piece[cell] : undefined;
}

export function cellsOf(piece: Piece): Cells {
  return piece instanceof PackedCells ? piece.cells : piece;
}

/** All but plain figures, where that is known without looking at each. */
export function notableOf(piece: Piece): Cells {
  return piece instanceof PackedCells ? piece.packed.notable : piece;
}

/** @returns undefined where packing would gain nothing */
export function packedOf(cells: Cells): Packed | undefined {
  const rows: (string | undefined)[][] = [];
  const notable: Record<string, string> = {};
  let count = 0;
  let [top, bottom, right] = [Number.POSITIVE_INFINITY, 0, 0];
  for (const [name, text] of Object.entries(cells)) {
    const place = parseCell(name);
    if (!place || text === "" || hasSign.test(text)) return undefined;
    const { row, column } = place;
    top = Math.min(top, Math.floor(row / slabRows) * slabRows);
    bottom = Math.max(bottom, row);
    right = Math.max(right, column);
    const line = rows[row - top] ?? [];
    rows[row - top] = line;
    line[column] = text;
    if (!figure.test(text)) notable[name] = text;
    count += 1;
  }
  // Few cells far apart are mostly signs between.
  if (count < slabRows || count * 4 < (bottom - top + 1) * (right + 1)) return undefined;
  const lines = Array.from({ length: bottom - top + 1 }, (_, i) => rows[i]?.join(betweenCells) ?? "");
  return { top, text: lines.join(betweenRows), notable, count, last: { row: bottom, column: right } };
}

function unpacked({ top, text }: Packed): Cells {
  const cells: Record<string, string> = {};
  for (const [i, line] of text.split(betweenRows).entries()) {
    if (line === "") continue;
    for (const [column, one] of line.split(betweenCells).entries())
      if (one !== "") cells[cellName(top + i, column)] = one;
  }
  return cells;
}

/** Row by row and column by column, without taking them apart by name. */
export function eachPacked(
  { top, text }: Packed,
  tell: (row: number, column: number, text: string) => void,
): void {
  for (const [i, line] of text.split(betweenRows).entries()) {
    if (line === "") continue;
    for (const [column, one] of line.split(betweenCells).entries())
      if (one !== "") tell(top + i, column, one);
  }
}
