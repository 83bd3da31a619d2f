/**
 * What the page knows of a job that is reckoned in a worker: what its cells hold, and the last value of each formula.
 * What is typed as it stands, a number or words, is known without asking.
 */
import type { Drawn } from "../functions/declare.ts";
import { cellName, parseCell } from "./address.ts";
import { type Area, contains } from "./cone.ts";
import { Contents, type EngineContent, type EngineEdit } from "./contents.ts";
import { enter } from "./gate.ts";
import { type KnownValues, knownPart, mostAreas, mostKnown, mostWords } from "./known-values.ts";
import { type Packet, packed, type Report, type Told } from "./packets.ts";
import type { Cell } from "./plugin.ts";
import type { Reckoner } from "./reckoner.ts";
import { ValueStore } from "./value-store.ts";
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

  /** Values that are known already are kept where the formula is the same. */
  load(content: EngineContent): void {
    const before = new Map(this.held.sheets.map((sheet, i) => [sheet.name, { ...sheet, i }]));
    const { stores } = this;
    this.held.load(content);
    this.blocks = { wanted: [], filled: [] };
    this.stores = this.held.sheets.map(({ name, cells }) => {
      const store = new ValueStore(this.oldest);
      const old = before.get(name);
      if (!old) return store;
      for (const [cell, text] of cells) {
        if (text[0] !== "=" || old.cells.get(cell) !== text) continue;
        const { row, column } = parseCell(cell)!;
        store.copy(stores[old.i]!, row, column);
      }
      return store;
    });
  }

  /** Values that another engine has reckoned, to show until newer ones come. */
  seed(from: Reckoner, blocks: Blocks): void {
    this.blocks = blocks;
    const take = (sheet: number, row: number, column: number) => {
      const { name } = this.held.sheets[sheet]!;
      const store = this.stores[sheet]!;
      store.put(row, column, from.value(name, row, column), firstTurn);
      const note = from.note(name, row, column);
      const figure = from.figure(name, row, column);
      if (note !== undefined || figure) store.putBeside(row, column, { note, figure });
    };
    for (const [sheet, { cells }] of this.held.sheets.entries()) {
      for (const [name, text] of cells) {
        const { row, column } = parseCell(name)!;
        if (text[0] === "=") take(sheet, row, column);
      }
    }
    for (const { sheet, top, left, bottom, right } of blocks.filled)
      for (let row = top; row <= bottom; row++)
        for (let column = left; column <= right; column++) take(sheet, row, column);
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
        if (told.push(one) < knownPart) continue;
        packets.push(packed(sheet, told));
        told = [];
        yield;
      }
      if (told.length > 0) packets.push(packed(sheet, told));
    }
    return { packets, filled: this.blocks.filled.slice(0, mostAreas) };
  }

  type(edits: readonly EngineEdit[]): void {
    this.held.type(edits);
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
