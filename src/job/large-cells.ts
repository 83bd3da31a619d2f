/**
 * The cells of a large sheet, kept in slabs of rows, so that a changed copy shares all but one slab with the old one:
 * copying a hundred thousand cells for every key press would hold up the page. Everyone else reads them as what they
 * are in a small sheet, a record of texts by cell. Slabs of a file that was read in a worker stay packed until one of
 * their cells is looked at.
 */
import { cellsOf, notableOf, PackedCells, type Piece, slabRows, textIn } from "../engine/packed-cells.ts";
import type { SheetDocument } from "./document.ts";
import { grouped } from "./grouped.ts";

export type Cells = SheetDocument["cells"];

/** Sheets with fewer cells are kept as plain records. */
export const largeSheet = 3000;
/** Slabs by their number; no slab is empty, and none is changed once it is in. */
type Slabs = readonly (Piece | undefined)[];

const slabsOf = new WeakMap<object, Slabs>();

/** The same cells, in slabs if they are many. */
export function inSlabs(cells: Cells): Cells {
  if (slabsOf.has(cells)) return cells;
  const names = Object.keys(cells);
  if (names.length < largeSheet) return cells;
  const slabs: Record<string, string>[] = [];
  for (const name of names) {
    const at = slabAt(name);
    slabs[at] ??= {};
    slabs[at][name] = cells[name]!;
  }
  return made(slabs);
}

/** A changed copy; "" takes a cell away. */
export function withTexts(cells: Cells, texts: ReadonlyMap<string, string>): Cells {
  const slabs = slabsOf.get(cells);
  if (!slabs) return changed(cells, texts);
  const bySlab = new Map<number, Map<string, string>>();
  for (const [name, text] of texts) {
    const at = slabAt(name);
    const own = bySlab.get(at);
    if (own) own.set(name, text);
    else bySlab.set(at, new Map([[name, text]]));
  }
  const copy = [...slabs];
  for (const [at, own] of bySlab) {
    const slab = changed(cellsOf(copy[at] ?? {}), own);
    copy[at] = Object.keys(slab).length > 0 ? slab : undefined;
  }
  return made(copy);
}

/**
 * What `find` finds in the cells, piece by piece: what was found in pieces that an earlier version of the sheet shares
 * is known. It is not given plain figures where that would take long: it may look for anything else.
 */
export function foundIn<T>(cells: Cells, known: WeakMap<object, T>, find: (cells: Cells) => T): T[] {
  return measuredIn(cells, known, (piece) => find(notableOf(piece)));
}

/** The same, with the figures of packed slabs counted and not told. */
export function measuredIn<T>(cells: Cells, known: WeakMap<object, T>, find: (piece: Piece) => T): T[] {
  return (slabsOf.get(cells) ?? [cells]).flatMap((piece) => {
    if (!piece) return [];
    let found = known.get(piece);
    if (found === undefined) {
      found = find(piece);
      known.set(piece, found);
    }
    return [found];
  });
}

/** The slabs of a large sheet; none where it is kept as a plain record. */
export function slabsIn(cells: Cells): readonly Piece[] {
  return (slabsOf.get(cells) ?? []).filter((slab) => slab !== undefined);
}

/** All cells with their texts. Asking a large sheet as a record takes several times as long. */
export function textsIn(cells: Cells): [cell: string, text: string][] {
  const slabs = slabsIn(cells);
  return slabs.length === 0 ? Object.entries(cells) : slabs.flatMap((slab) => Object.entries(cellsOf(slab)));
}

/** Cells of slabs that were taken apart; they must be whole ones. */
export function fromSlabs(slabs: readonly Piece[]): Cells {
  const placed: Piece[] = [];
  for (const slab of slabs) {
    const [first] = slab instanceof PackedCells ? [`A${slab.packed.top + 1}`] : Object.keys(slab);
    if (first !== undefined) placed[slabAt(first)] = slab;
  }
  return made(Array.from(placed));
}

/** Names of cells whose texts may differ: all but those of shared slabs. */
export function mayDiffer(before: Cells, after: Cells): Set<string> {
  const [old, now] = [slabsOf.get(before), slabsOf.get(after)];
  const names = new Set<string>();
  if (!old || !now) {
    for (const cells of [before, after]) for (const name of Object.keys(cells)) names.add(name);
    return names;
  }
  for (let at = 0; at < Math.max(old.length, now.length); at++) {
    if (old[at] === now[at]) continue;
    for (const slab of [old[at], now[at]])
      for (const name of Object.keys(cellsOf(slab ?? {}))) names.add(name);
  }
  return names;
}

/** Cells of a job that can still be gone through one by one while the person waits. */
const mostGoneThrough = 300_000;

const counts = new WeakMap<object, number>();

/** How many cells hold something. */
export function countCells(sheets: readonly { readonly cells: Cells }[]): number {
  const countOf = (piece: Piece) =>
    piece instanceof PackedCells ? piece.packed.count : Object.keys(piece).length;
  let count = 0;
  for (const { cells } of sheets) for (const each of measuredIn(cells, counts, countOf)) count += each;
  return count;
}

/** Why what goes through every cell cannot be done; undefined where it can. */
export function tooManyCells(sheets: readonly { readonly cells: Cells }[]): string | undefined {
  const count = countCells(sheets);
  return count > mostGoneThrough
    ? `this goes through every cell, and a job of ${grouped(count)} cells has too many for that: ${grouped(mostGoneThrough)} at most`
    : undefined;
}

const corners = new WeakMap<object, { readonly row: number; readonly column: number }>();

/** Last row and last column that hold something; 0 where nothing does. */
export function lastUsed(cells: Cells): { readonly row: number; readonly column: number } {
  let row = 0;
  let column = 0;
  for (const corner of measuredIn(cells, corners, cornerOf)) {
    row = Math.max(row, corner.row);
    column = Math.max(column, corner.column);
  }
  return { row, column };
}

function cornerOf(cells: Piece): { readonly row: number; readonly column: number } {
  if (cells instanceof PackedCells) return cells.packed.last;
  let row = 0;
  let column = 0;
  for (const name of Object.keys(cells)) {
    let [down, right] = [0, 0];
    for (let i = 0; i < name.length; i++) {
      const code = name.charCodeAt(i);
      if (code < 65) down = down * 10 + code - 48;
      else right = right * 26 + code - 64;
    }
    row = Math.max(row, down - 1);
    column = Math.max(column, right - 1);
  }
  return { row, column };
}

function changed(cells: Cells, texts: ReadonlyMap<string, string>): Record<string, string> {
  const copy = { ...cells };
  for (const [name, text] of texts) {
    if (text === "") delete copy[name];
    else copy[name] = text;
  }
  return copy;
}

function slabAt(name: string): number {
  let row = 0;
  for (let i = 0; i < name.length; i++) {
    const digit = name.charCodeAt(i) - 48;
    if (digit >= 0 && digit <= 9) row = row * 10 + digit;
  }
  return Math.floor((row - 1) / slabRows);
}

function made(slabs: Slabs): Cells {
  const textAt = (name: string | symbol) => {
    const piece = typeof name === "string" && /^[A-Z]/.test(name) ? slabs[slabAt(name)] : undefined;
    return piece && textIn(piece, name as string);
  };
  const cells = new Proxy<Record<string, string>>(
    {},
    {
      get: (target, name) => textAt(name) ?? Reflect.get(target, name),
      has: (_, name) => textAt(name) !== undefined,
      ownKeys: () => slabs.flatMap((slab) => (slab ? Object.keys(cellsOf(slab)) : [])),
      getOwnPropertyDescriptor: (_, name) => {
        const value = textAt(name);
        return value === undefined
          ? undefined
          : { value, writable: false, enumerable: true, configurable: true };
      },
      set: () => false,
      deleteProperty: () => false,
    },
  );
  slabsOf.set(cells, slabs);
  return cells;
}
