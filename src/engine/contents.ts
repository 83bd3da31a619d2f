/** What the cells of an engine hold: texts as typed, and values that stand in cells without having been typed. */
import type { RawCellContent } from "hyperformula";
import { cellName, parseCell, placeName } from "./address.ts";
import { type Entry, enter, limits } from "./gate.ts";
import { eachPacked, PackedCells, type Piece } from "./packed-cells.ts";
import type { Cell } from "./plugin.ts";
import { LaidOver, type Texts } from "./texts.ts";
import type { CellValue, ErrorValue, Place } from "./values.ts";

export interface EngineContent {
  readonly sheets: readonly {
    readonly name: string;
    readonly cells: Readonly<Record<string, string>>;
    /** The same in pieces, where there are so many that they should not be copied. */
    readonly pieces?: readonly Piece[];
    /** The same as they are to be kept, in place of `cells`. */
    readonly texts?: Texts;
    /** Values that stand in cells without having been typed, errors among them. */
    readonly values?: Readonly<Record<string, CellValue>>;
  }[];
  /** Name to `Sheet!B2` or `Sheet!B2:B9`. */
  readonly names: Readonly<Record<string, string>>;
}

export interface EngineEdit extends Place {
  /** As typed; "" empties the cell. */
  readonly text: string;
}

/** A value put where nothing is typed. */
export interface ValueEdit extends Place {
  readonly value: CellValue;
}

/** What goes into a cell of the engine. */
export interface CellEntry {
  readonly cell: Cell;
  readonly entry: Entry;
}

export class Contents {
  names: EngineContent["names"] = {};
  sheets: { name: string; cells: Texts; values: Map<string, CellValue> }[] = [];

  load(content: EngineContent): void {
    this.names = content.names;
    this.sheets = content.sheets.map(({ name, cells, pieces, texts, values }) => ({
      name,
      cells: texts ?? (pieces ? new LaidOver((cell) => cells[cell], pieces) : new Map(Object.entries(cells))),
      values: new Map(Object.entries(values ?? {})),
    }));
  }

  /**
   * Takes over what differs only by further sheets after those there are.
   *
   * @returns what is new; undefined when more than that differs, and nothing was taken over
   */
  extend(content: EngineContent): { sheets: string[]; entries: CellEntry[] } | undefined {
    const known = this.sheets.length;
    if (content.names !== this.names || content.sheets.length <= known || known === 0) return undefined;
    const same = this.sheets.every(({ name, cells, values }, i) => {
      const other = content.sheets[i]!;
      if (name !== other.name || values.size > 0 || other.values || other.texts) return false;
      const texts = Object.entries(other.cells);
      return texts.length === cells.size && texts.every(([cell, text]) => cells.get(cell) === text);
    });
    if (!same) return undefined;
    const before = this.sheets;
    this.load(content);
    this.sheets = [...before, ...this.sheets.slice(known)];
    const entries = this.entries().filter(({ cell }) => cell.sheet >= known);
    return { sheets: this.sheets.slice(known).map(({ name }) => name), entries };
  }

  /** @throws RangeError if a sheet is unknown or a cell lies outside the largest sheet */
  type(edits: readonly EngineEdit[]): CellEntry[] {
    this.write(edits);
    return edits.map((edit) => ({ cell: this.cellAt(edit), entry: enter(edit.text) }));
  }

  /** The same for whoever only keeps the texts. */
  write(edits: readonly EngineEdit[]): void {
    for (const edit of edits) this.requirePlace(edit);
    for (const { sheet, row, column, text } of edits) {
      const { cells, values } = this.sheets[this.indexOf(sheet)]!;
      const name = cellName(row, column);
      values.delete(name);
      if (text === "") cells.delete(name);
      else cells.set(name, text);
    }
  }

  put(edits: readonly ValueEdit[]): CellEntry[] {
    return edits.map((edit) => {
      this.sheets[this.indexOf(edit.sheet)]!.values.set(cellName(edit.row, edit.column), edit.value);
      return { cell: this.cellAt(edit), entry: entryOf(edit.value) };
    });
  }

  /** Everything that cells hold. */
  entries(): CellEntry[] {
    return this.sheets.flatMap(({ cells, values }, sheet) => {
      const at = (name: string, entry: () => Entry) => {
        const place = parseCell(name);
        return place ? [{ cell: { sheet, row: place.row, col: place.column }, entry: entry() }] : [];
      };
      const texts = [...cells].filter(([name]) => !values.has(name));
      return [
        ...texts.flatMap(([name, text]) => at(name, () => enter(text))),
        ...[...values].flatMap(([name, value]) => at(name, () => entryOf(value))),
      ];
    });
  }

  /**
   * The same, told one after the other: slabs of many figures first, which no one could hold as entries at once.
   * @returns the entries of all others
   */
  eachFigure(tell: (sheet: number, row: number, column: number, entry: Entry) => void): CellEntry[] {
    const others: CellEntry[] = [];
    for (const [sheet, { cells, values }] of this.sheets.entries()) {
      const rest = new Map<string, string>();
      if (cells instanceof LaidOver) {
        const { over } = cells;
        for (const piece of cells.pieces) {
          if (!(piece instanceof PackedCells)) {
            for (const [name, text] of Object.entries(piece)) rest.set(name, text);
            continue;
          }
          eachPacked(piece.packed, (row, column, text) => {
            const first = text[0];
            if (first === "=" || first === "'") rest.set(cellName(row, column), text);
            else if (over.size === 0 && values.size === 0) tell(sheet, row, column, enter(text));
            else {
              const name = cellName(row, column);
              if (!over.has(name) && !values.has(name)) tell(sheet, row, column, enter(text));
            }
          });
        }
        for (const [name, text] of over) rest.set(name, text);
      } else for (const [name, text] of cells) rest.set(name, text);
      for (const [name, text] of rest) {
        const place = text === "" || values.has(name) ? undefined : parseCell(name);
        if (place) others.push({ cell: { sheet, row: place.row, col: place.column }, entry: enter(text) });
      }
      for (const [name, value] of values) {
        const place = parseCell(name);
        if (place) others.push({ cell: { sheet, row: place.row, col: place.column }, entry: entryOf(value) });
      }
    }
    return others;
  }

  textAt({ sheet, row, col }: Cell): string {
    return this.sheets[sheet]?.cells.get(cellName(row, col)) ?? "";
  }

  indexOf(name: string): number {
    return this.sheets.findIndex((sheet) => sheet.name === name);
  }

  cellAt({ sheet, row, column }: Place): Cell {
    return { sheet: this.indexOf(sheet), row, col: column };
  }

  placeAt({ sheet, row, col }: Cell): Place {
    return { sheet: this.sheets[sheet]!.name, row, column: col };
  }

  /** `Sheet!A1`. */
  nameOf(cell: Cell): string {
    return placeName(this.placeAt(cell));
  }

  private requirePlace({ sheet, row, column }: Place): void {
    if (this.indexOf(sheet) < 0) throw new RangeError(`there is no sheet "${sheet}"`);
    const inside = row >= 0 && row < limits.rows && column >= 0 && column < limits.columns;
    if (!inside)
      throw new RangeError(
        `cell must lie within ${limits.rows} rows and ${limits.columns} columns, got row ${row + 1}, column ${column + 1}`,
      );
  }
}

function entryOf(value: CellValue): Entry {
  if (value === null) return { kind: "empty" };
  if (typeof value === "number") return { kind: "number", value };
  if (typeof value === "boolean") return { kind: "boolean", value };
  if (typeof value === "string") return { kind: "text", value };
  return { kind: "refused", error: value.error, reason: value.message };
}

/** An entry as the engine below takes it. @param refuse what stands in a cell for an error */
export function rawOf(entry: Entry, refuse: (error: ErrorValue) => string): RawCellContent {
  switch (entry.kind) {
    case "empty":
      return null;
    case "text":
      return `'${entry.value}`;
    case "refused":
      return refuse({ error: entry.error ?? "#ERROR!", message: entry.reason });
    case "formula":
      return entry.formula;
    default:
      return entry.value;
  }
}
