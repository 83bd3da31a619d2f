/** The contents of an engine as the cutting of a cone reads them: references come from the engine's own reading of a formula. */
import type { HyperFormula } from "hyperformula";
import { cellName, parseCell } from "./address.ts";
import { type Area, keyOf, type Reads, type Whole } from "./cone.ts";
import type { Cell } from "./plugin.ts";

/** Names of the job have their cells on a sheet of the engine's own, with a number below zero. */
const isName = (sheet: number) => sheet < 0;

type Reference = Cell | { readonly start: Cell; readonly end: Cell };

/** What `cell` reads; a name counts as the cells that it stands for. */
export function readsIn(hf: HyperFormula, cell: Cell): Reads {
  const cells: Cell[] = [];
  const areas: Area[] = [];
  const open: Reference[] = hf.getCellPrecedents(cell);
  for (let next = 0; next < open.length; next++) {
    const at = open[next]!;
    if ("start" in at) {
      const { start, end } = at;
      areas.push({ sheet: start.sheet, top: start.row, left: start.col, bottom: end.row, right: end.col });
    } else if (isName(at.sheet)) open.push(...hf.getCellPrecedents(at));
    else cells.push(at);
  }
  return { cells, areas };
}

/** Has cells reckoned again. Entering their formulas once more would do as well, but costs more than what the values cost. */
export function markDirty({ dependencyGraph }: HyperFormula, cells: readonly Cell[]): void {
  for (const cell of cells) {
    const vertex = dependencyGraph.getCell(cell);
    if (vertex) dependencyGraph.graph.markNodeAsDirty(vertex);
  }
}

/** The cells whose own formula reads `cell`: by its address, within a range, or by a name. */
export function readersIn(hf: HyperFormula, cell: Cell): Cell[] {
  const found: Cell[] = [];
  const open: Reference[] = hf.getCellDependents(cell) as Reference[];
  for (let next = 0; next < open.length; next++) {
    const at = open[next]!;
    // A range may be read by way of a longer one that it is a part of.
    if ("start" in at || isName(at.sheet)) open.push(...(hf.getCellDependents(at as never) as Reference[]));
    else found.push(at);
  }
  return found;
}

/** Every cell whose value is reckoned from one of `cells`, in the form of `keyOf`. */
export function dependentsIn(hf: HyperFormula, cells: Iterable<Cell>): Set<string> {
  const found = new Set<string>();
  const open: Reference[] = [...cells];
  for (let at = open.pop(); at; at = open.pop()) {
    for (const reader of hf.getCellDependents(at as never) as Reference[]) {
      const key = "start" in reader ? `${keyOf(reader.start)}:${keyOf(reader.end)}` : keyOf(reader);
      if (found.has(key)) continue;
      found.add(key);
      open.push(reader);
    }
  }
  return found;
}

/** Cells of `area` with something typed in them. */
export function typedIn(sheets: Whole["sheets"], area: Area): Cell[] {
  const { sheet } = area;
  const texts = sheets[sheet]?.cells;
  if (!texts) return [];
  const found: Cell[] = [];
  if ((area.bottom - area.top + 1) * (area.right - area.left + 1) <= texts.size) {
    for (let row = area.top; row <= area.bottom; row++)
      for (let col = area.left; col <= area.right; col++)
        if (texts.has(cellName(row, col))) found.push({ sheet, row, col });
    return found;
  }
  for (const name of texts.keys()) {
    const place = parseCell(name);
    if (!place) continue;
    const { row, column: col } = place;
    if (row >= area.top && row <= area.bottom && col >= area.left && col <= area.right)
      found.push({ sheet, row, col });
  }
  return found;
}
