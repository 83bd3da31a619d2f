/**
 * What the page knows of a job that is reckoned in a worker: what its cells hold, and the last value of each formula.
 * What is typed as it stands, a number or words, is known without asking.
 */
import type { Drawn } from "../functions/declare.ts";
import { cellName, parseCell } from "./address.ts";
import { type Area, contains, cornerOf, keyOf } from "./cone.ts";
import { Contents, type EngineContent, type EngineEdit } from "./contents.ts";
import { enter, limits } from "./gate.ts";
import { type KnownValues, mostAreas, mostKnown, mostWords } from "./known-values.ts";
import {
  columnOf,
  mostInPacket,
  type Packet,
  packed,
  type Report,
  rowOf,
  type Spots,
  spotOf,
  spotsOf,
  type Told,
} from "./packets.ts";
import type { Cell } from "./plugin.ts";
import type { Origin } from "./reckoner.ts";
import { formulasIn, type Texts } from "./texts.ts";
import { type Known, ValueStore } from "./value-store.ts";
import type { CellValue, Place } from "./values.ts";

export interface Blocks {
  /** Areas that block functions take or would take. */
  readonly wanted: readonly Area[];
  readonly filled: readonly Area[];
}

/** The turn of values that were known before the first one was ordered; 0 stands for those that are not known. */
export const firstTurn = 1;

export class FarValues {
  readonly held = new Contents();
  blocks: Blocks = { wanted: [], filled: [] };
  private stores: ValueStore[] = [];
  /** Values of earlier turns are not known: those that were shown until the first ones came are gone with them. */
  private oldest = firstTurn;

  /**
   * Values that are known already are kept: of cells that have come from elsewhere, and of those where the formula is
   * the same.
   */
  load(content: EngineContent, origin?: Origin): void {
    const { stores } = this;
    const sheets = new Map(this.held.sheets.map(({ name, cells }, index) => [name, { index, cells }]));
    const blocks = new Blocked(this.blocks.filled);
    this.held.load(content);
    this.stores = this.held.sheets.map(() => new ValueStore(this.oldest));
    for (const [index, { name, cells }] of this.held.sheets.entries()) {
      for (const [cell, text] of stores.length === 0 ? [] : formulasIn(cells)) {
        const { row, column } = parseCell(cell)!;
        const place = { sheet: name, row, column };
        const was = origin ? origin(place) : place;
        const old = was && sheets.get(was.sheet);
        const before = old && (origin ? old.cells.get(cellName(was.row, was.column)) : old.cells.get(cell));
        if (!old || !before || (origin ? before[0] !== "=" : before !== text)) continue;
        const known = stores[old.index]!.known(was.row, was.column);
        if (known) this.stores[index]!.keep(row, column, known);
        blocks.follow(
          { sheet: old.index, row: was.row, col: was.column },
          { sheet: index, row, col: column },
        );
      }
    }
    for (const { from, to } of blocks.followed) this.putBlock(to, knownIn(stores[from.sheet]!, from));
    const filled = blocks.followed.map(({ to }) => to);
    this.blocks = { wanted: filled, filled };
  }

  /**
   * Values of another time, to show until newer ones come.
   *
   * @returns takes over one part after the other, the upper rows first
   */
  *recall({ packets, filled }: KnownValues): Generator<void> {
    const { stores } = this;
    const isFormula = ({ sheet, top, left }: Area) =>
      this.held.textAt({ sheet, row: top, col: left })[0] === "=";
    const areas = filled.filter(isFormula);
    this.blocks = { wanted: areas, filled: areas };
    for (const packet of packets) {
      if (stores !== this.stores || this.oldest > firstTurn) return;
      stores[packet.sheet]?.take(packet, firstTurn);
      yield;
    }
  }

  /** What is known, so that it can be kept: step by step, and of very many values the upper rows. */
  *known(): Generator<void, KnownValues> {
    const packets: Packet[] = [];
    let [left, words] = [mostKnown, mostWords];
    for (const [sheet, store] of this.stores.entries()) {
      let told: Told[] = [];
      for (const one of store.plain()) {
        if (!this.isReckoned(sheet, one.row, one.column)) continue;
        left -= 1;
        words -= typeof one.value === "string" ? one.value.length : 0;
        if (left < 0 || words < 0) break;
        if (told.push(one) < mostInPacket) continue;
        packets.push(packed(sheet, told));
        told = [];
        yield;
      }
      if (told.length > 0) packets.push(packed(sheet, told));
    }
    return { packets, filled: this.blocks.filled.slice(0, mostAreas) };
  }

  /** @returns cells that show the value of another one now, and have to be told even if theirs comes out as it was */
  type(edits: readonly EngineEdit[], origin?: Origin): Spots[] {
    if (!origin) {
      this.held.write(edits);
      return [];
    }
    const blocks = new Blocked(this.blocks.filled);
    const typed = edits.map((edit) => this.held.cellAt(edit));
    const formulas = this.held.sheets.map(({ cells }) => formulaSpots(cells));
    // All is read before anything is written: cells come to stand where others were.
    const came = this.moved(edits, typed, formulas, origin).map(({ cell, was }) => {
      const isFormula = was && formulas[was.sheet]?.has(spotOf(was.row, was.col));
      if (isFormula) blocks.follow(was, cell);
      return { cell, known: isFormula ? this.stores[was.sheet]?.known(was.row, was.col) : undefined };
    });
    const filled = blocks.followed.map(({ from, to }) => ({
      to,
      known: knownIn(this.stores[from.sheet]!, from),
    }));
    this.held.write(edits);
    for (const { sheet, row, col } of typed) this.stores[sheet]?.keep(row, col, undefined);
    for (const { cell, known } of came) this.stores[cell.sheet]?.keep(cell.row, cell.col, known);
    for (const { to, known } of filled) this.putBlock(to, known);
    const others = new Set([...typed, ...came.map(({ cell }) => cell)].map(keyOf));
    const stayed = this.blocks.filled.filter((area) => !others.has(keyOf(cornerOf(area))));
    const areas = [...stayed, ...filled.map(({ to }) => to)];
    this.blocks = { wanted: areas, filled: areas };
    return spotsOf(came.map(({ cell }) => cell));
  }

  /** Formulas that come from elsewhere, those that are typed anew among them; to be asked before they are typed. */
  private moved(
    edits: readonly EngineEdit[],
    typed: readonly Cell[],
    formulas: readonly ReadonlySet<number>[],
    origin: Origin,
  ): { cell: Cell; was: Cell | undefined }[] {
    const cellOf = (place: Place | undefined) => place && this.held.cellAt(place);
    const others = this.held.sheets.map(() => new Set<number>());
    for (const { sheet, row, col } of typed) others[sheet]?.add(spotOf(row, col));
    const found = edits.flatMap((edit, i) =>
      edit.text[0] === "=" ? [{ cell: typed[i]!, was: cellOf(origin(edit)) }] : [],
    );
    for (const [sheet, spots] of formulas.entries()) {
      const { name } = this.held.sheets[sheet]!;
      for (const spot of spots) {
        if (others[sheet]!.has(spot)) continue;
        const cell = { sheet, row: rowOf(spot), col: columnOf(spot) };
        const was = cellOf(origin({ sheet: name, row: cell.row, column: cell.col }));
        if (!was || was.sheet !== sheet || was.row !== cell.row || was.col !== cell.col)
          found.push({ cell, was });
      }
    }
    return found;
  }

  private putBlock(area: Area, known: ReturnType<typeof knownIn>): void {
    const store = this.stores[area.sheet]!;
    for (const { down, right, ...value } of known)
      if (area.top + down <= area.bottom && area.left + right <= area.right)
        store.keep(area.top + down, area.left + right, value);
  }

  take(report: Report): void {
    for (const packet of report.packets) this.stores[packet.sheet]?.take(packet, report.turn);
    if (report.blocks) this.blocks = report.blocks;
    if (!report.ended || this.oldest > firstTurn) return;
    this.oldest = firstTurn + 1;
    for (const store of this.stores) store.oldest = this.oldest;
  }

  valueAt({ sheet, row, col }: Cell): CellValue {
    const held = this.held.sheets[sheet];
    if (!held) return null;
    const name = cellName(row, col);
    const put = held.values.get(name);
    if (put !== undefined) return put;
    const text = held.cells.get(name) ?? "";
    if (text !== "" && text[0] !== "=") {
      const entry = enter(text);
      return "value" in entry ? entry.value : null;
    }
    const filled = text !== "" || this.blocks.filled.some((area) => contains(area, { sheet, row, col }));
    return filled ? (this.stores[sheet]?.value(row, col) ?? null) : null;
  }

  note(place: Place): string | undefined {
    return this.storeFor(place)?.note(place.row, place.column);
  }

  figure(place: Place): Drawn["figure"] | undefined {
    return this.storeFor(place)?.figure(place.row, place.column);
  }

  /** The turn that the value of a cell is of; 0 where none is known, undefined where none is awaited. */
  turn(place: Place): number | undefined {
    return this.storeFor(place)?.turn(place.row, place.column);
  }

  spilledFrom({ sheet, row, column }: Place): { row: number; column: number } | undefined {
    return this.anchorOf({ sheet: this.held.indexOf(sheet), row, col: column });
  }

  private anchorOf(cell: Cell): { row: number; column: number } | undefined {
    const { filled } = this.blocks;
    const area = filled.length === 0 ? undefined : filled.find((one) => contains(one, cell));
    const isAnchor = area?.top === cell.row && area.left === cell.col;
    return area && !isAnchor ? { row: area.top, column: area.left } : undefined;
  }

  /** True for a cell whose value the worker reckons. */
  private isReckoned(sheet: number, row: number, column: number): boolean {
    const text = this.held.sheets[sheet]?.cells.get(cellName(row, column)) ?? "";
    return text === "" ? this.anchorOf({ sheet, row, col: column }) !== undefined : text[0] === "=";
  }

  private storeFor({ sheet, row, column }: Place): ValueStore | undefined {
    const index = this.held.indexOf(sheet);
    return this.isReckoned(index, row, column) ? this.stores[index] : undefined;
  }
}

function formulaSpots(cells: Texts): ReadonlySet<number> {
  const spots = new Set<number>();
  for (const [key] of formulasIn(cells)) {
    const { row, column } = parseCell(key)!;
    spots.add(spotOf(row, column));
  }
  return spots;
}

/** Filled areas, found by the cell that their formula stands in; an area goes where its formula goes. */
class Blocked {
  private readonly anchors: ReadonlyMap<string, Area>;
  readonly followed: { readonly from: Area; readonly to: Area }[] = [];

  constructor(areas: readonly Area[]) {
    this.anchors = new Map(areas.map((area) => [keyOf(cornerOf(area)), area]));
  }

  follow(was: Cell, now: Cell): void {
    const from = this.anchors.size === 0 ? undefined : this.anchors.get(keyOf(was));
    if (!from) return;
    const bottom = Math.min(now.row + from.bottom - from.top, limits.rows - 1);
    const right = Math.min(now.col + from.right - from.left, limits.columns - 1);
    this.followed.push({ from, to: { sheet: now.sheet, top: now.row, left: now.col, bottom, right } });
  }
}

/** What is known of the cells of an area but for its first one, by their place in it. */
function knownIn(store: ValueStore, { top, left, bottom, right }: Area) {
  const found: (Known & { readonly down: number; readonly right: number })[] = [];
  for (let row = top; row <= bottom; row++)
    for (let column = left; column <= right; column++) {
      const known = row === top && column === left ? undefined : store.known(row, column);
      if (known) found.push({ ...known, down: row - top, right: column - left });
    }
  return found;
}
