/** The worker's side: holds the engine, does what the page orders in turn, and reports what has been reckoned. */
import type { SheetFunction } from "../functions/declare.ts";
import { parseCell } from "./address.ts";
import { type Area, keyOf } from "./cone.ts";
import type { EngineContent } from "./contents.ts";
import { Engine, type Log } from "./engine.ts";
import type { Packed } from "./packed-cells.ts";
import {
  columnOf,
  mostInPacket,
  type Order,
  type Packet,
  packed,
  type Reply,
  type Report,
  rowOf,
  type Spots,
  spotOf,
  spotsOf,
  type Told,
} from "./packets.ts";
import type { Cell } from "./plugin.ts";
import { Answering, type Question } from "./questions.ts";
import { formulasIn, fromParts, type Texts } from "./texts.ts";
import type { CellValue } from "./values.ts";
import { dependentsIn } from "./whole.ts";

/** How often the page hears how far a long turn is, and gets what is known by then, ms. */
const pause = 100;
/** A turn that has taken longer than this tells which cells it will change, ms. */
const patience = 200;
type Draft = {
  name: string;
  packed: Packed[];
  /** Over what is packed. */
  cells: Map<string, string>;
  values: Record<string, CellValue>;
};

export class FarSide {
  private readonly engine: Engine;
  private readonly answering: Answering;
  private draft: { names: Readonly<Record<string, string>>; sheets: Draft[] } = { names: {}, sheets: [] };
  private turn = 0;
  private done = 0;
  private of = 0;
  /** Values of the tables that are under way, those that are known by now included. */
  private tabled = 0;
  private begun = 0;
  private lastly = 0;
  /** Cells that were reckoned and not reported yet, by sheet and spot. */
  private fresh = new Map<number, Map<number, Cell>>();
  private typed: readonly Cell[] = [];
  private reached = false;
  private wanted: readonly Area[] = [];
  private built = false;
  private filled: readonly Area[] = [];

  constructor(
    private readonly post: (message: Report | Reply) => void,
    functions: readonly SheetFunction[],
    log?: Log,
    private readonly now: () => number = () => performance.now(),
    /** Lets an order that has come meanwhile go first; without it a turn is done in one go. */
    private readonly later?: (work: () => void) => void,
  ) {
    const nothing: EngineContent = { sheets: [], names: {} };
    this.engine = new Engine(nothing, functions, log, true, (cell, changed) => this.heard(cell, changed));
    this.answering = new Answering(this.engine);
  }

  take(order: Order): void {
    switch (order.order) {
      case "begin":
        this.draft = {
          names: order.names,
          sheets: order.sheets.map((name) => ({ name, packed: [], cells: new Map(), values: {} })),
        };
        return;
      case "part": {
        const { packed, cells, values } = this.draft.sheets[order.sheet]!;
        packed.push(...(order.packed ?? []));
        for (const [name, text] of order.cells) cells.set(name, text);
        for (const [name, value] of order.values) values[name] = value;
        return;
      }
      case "build": {
        const { names } = this.draft;
        const sheets = this.draft.sheets.map(({ name, packed, cells, values }) => {
          const texts = packed.length === 0 ? cells : fromParts(packed, cells);
          return { name, cells: {}, texts, values };
        });
        this.draft = { names: {}, sheets: [] };
        this.filled = [];
        this.built = true;
        this.fresh.clear();
        this.run(order.turn, countFormulas(sheets), [], () => {
          this.engine.load({ names, sheets });
          this.addUnread();
        });
        return;
      }
      case "type": {
        const typed = order.edits.map((edit) => this.engine.inner.held.cellAt(edit));
        this.run(order.turn, 0, typed, () => {
          this.engine.setCells(order.edits);
          for (const [i, { text }] of order.edits.entries()) if (text[0] === "=") this.add(typed[i]!);
          for (const { sheet, spots } of order.tell)
            for (const spot of spots) this.add({ sheet, row: rowOf(spot), col: columnOf(spot) });
        });
        return;
      }
      case "ask":
        this.answer(order.id, order.question);
    }
  }

  private answer(id: number, question: Question): void {
    try {
      this.post({ answers: id, answer: this.answering.answer(question) });
    } catch (error) {
      this.post({ answers: id, failed: error instanceof Error ? error.message : String(error) });
    }
  }

  private run(turn: number, of: number, typed: readonly Cell[], work: () => void): void {
    this.answering.forget();
    this.turn = turn;
    this.done = 0;
    this.of = of;
    this.typed = typed;
    this.reached = false;
    this.begun = this.lastly = this.now();
    work();
    this.reckonTables();
  }

  /** Values of what-if tables come a slice at a time: the page hears of them, and the next order need not wait for all. */
  private reckonTables(): void {
    const { turn, later } = this;
    const left = this.engine.tablesLeft;
    // What is under way goes on; nothing of it is counted twice.
    this.tabled = left === 0 ? 0 : Math.max(this.tabled, left);
    for (;;) {
      // Not measured from the last report: values that arrive are reported too, and a slice would never end.
      const end = this.now() + pause;
      if (this.engine.reckonTables(() => this.now() >= end)) break;
      this.report(false, true);
      if (!later) continue;
      // A turn that has begun since goes on with what this one has left.
      later(() => this.turn === turn && this.reckonTables());
      return;
    }
    this.report(true);
  }

  private heard(cell: Cell, changed: boolean): void {
    this.done += 1;
    if (changed || this.engine?.inner.beside.knows(cell)) this.add(cell);
    if (this.done % 16 === 0 && this.now() - this.lastly >= pause) this.report(false);
  }

  private add(cell: Cell): void {
    let cells = this.fresh.get(cell.sheet);
    if (!cells) {
      cells = new Map();
      this.fresh.set(cell.sheet, cells);
    }
    cells.set(spotOf(cell.row, cell.col), cell);
  }

  /** Formulas that cannot be read have their value without having been reckoned. */
  private addUnread(): void {
    const { hf, held } = this.engine.inner;
    const { dependencyGraph } = hf;
    for (const [sheet, { cells }] of held.sheets.entries()) {
      for (const [name] of formulasIn(cells)) {
        const place = parseCell(name);
        const cell = place && { sheet, row: place.row, col: place.column };
        const vertex = cell && dependencyGraph.getCell(cell);
        if (vertex && !("getAddress" in vertex)) this.add(cell);
      }
    }
  }

  /** In the middle of a turn only plain values are sent: blocks may still move, and notes are still being told. */
  private report(ended: boolean, entered = ended): void {
    if (ended) this.addBlocks();
    const packets = [...this.fresh].flatMap(([sheet, cells]) => this.packets(sheet, cells, ended));
    if (ended) this.fresh.clear();
    const { turn } = this;
    const left = this.engine.tablesLeft;
    const done = left > 0 && this.tabled > 0 ? this.tabled - left : this.done;
    const of = left > 0 && this.tabled > 0 ? this.tabled : Math.max(this.of, done);
    const reach = this.reachNow(ended);
    const last = packets.pop();
    // A packet a message: each is a piece of work of its own for the page.
    for (const packet of packets) this.post({ turn, done, of, ended: false, more: true, packets: [packet] });
    this.post({
      turn,
      done,
      of,
      ended,
      ...(entered ? { entered } : {}),
      packets: last ? [last] : [],
      ...(reach ? { reach } : {}),
      ...(ended ? this.blocksNow() : {}),
    });
    this.lastly = this.now();
  }

  private packets(sheet: number, cells: Map<number, Cell>, ended: boolean): Packet[] {
    const { engine } = this;
    const { beside, held, spills } = engine.inner;
    const name = held.sheets[sheet]?.name;
    if (name === undefined) return [];
    const told: Told[] = [];
    for (const [spot, cell] of cells) {
      const { row, col: column } = cell;
      const noted = beside.knows(cell);
      if (!ended && (noted || spills.isAnchor(cell))) continue;
      cells.delete(spot);
      const value = engine.value(name, row, column);
      if (!noted) told.push({ row, column, value });
      else {
        const note = engine.note(name, row, column);
        told.push({ row, column, value, note, figure: engine.figure(name, row, column) });
      }
    }
    const packets: Packet[] = [];
    for (let i = 0; i < told.length; i += mostInPacket)
      packets.push(packed(sheet, told.slice(i, i + mostInPacket)));
    return packets;
  }

  /** Cells of blocks that were reckoned, and cells that a block has left. */
  private addBlocks(): void {
    const { hf, spills } = this.engine.inner;
    const filled = spills.filled(hf);
    const before = new Set(this.filled.map(nameOfArea));
    const now = new Set(filled.map(nameOfArea));
    for (const area of this.filled) if (!now.has(nameOfArea(area))) this.addArea(area);
    for (const area of filled) {
      const reckoned = this.fresh.get(area.sheet)?.has(spotOf(area.top, area.left));
      if (reckoned || !before.has(nameOfArea(area))) this.addArea(area);
    }
    this.filled = filled;
  }

  private addArea({ sheet, top, left, bottom, right }: Area): void {
    for (let row = top; row <= bottom; row++)
      for (let col = left; col <= right; col++) this.add({ sheet, row, col });
  }

  private blocksNow(): Pick<Report, "blocks"> {
    const { hf, spills } = this.engine.inner;
    const wanted = spills.blocks(hf);
    // After a build the page may still show blocks of another time.
    if (wanted.length === 0 && this.wanted.length === 0 && !this.built) return {};
    this.wanted = wanted;
    this.built = false;
    return { blocks: { wanted, filled: this.filled } };
  }

  private reachNow(ended: boolean): Spots[] | undefined {
    const late = !ended && !this.reached && this.typed.length > 0 && this.now() - this.begun >= patience;
    if (!late) return undefined;
    this.reached = true;
    const { hf } = this.engine.inner;
    const keys = [...this.typed.map(keyOf), ...dependentsIn(hf, this.typed)];
    const cells = keys.flatMap((key) => {
      const [sheet, row, col] = key.split(",").map(Number) as [number, number, number];
      return key.includes(":") || sheet < 0 ? [] : [{ sheet, row, col }];
    });
    const reach = spotsOf(cells);
    this.of = reach.reduce((sum, { spots }) => sum + spots.length, 0);
    return reach;
  }
}

function countFormulas(sheets: readonly { readonly texts: Texts }[]): number {
  let count = 0;
  for (const { texts } of sheets) for (const _ of formulasIn(texts)) count += 1;
  return count;
}

function nameOfArea({ sheet, top, left, bottom, right }: Area): string {
  return `${sheet},${top},${left},${bottom},${right}`;
}
