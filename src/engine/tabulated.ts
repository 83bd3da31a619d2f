/**
 * The values of what-if tables: which cells ask for them, which are known, and which have still to be reckoned.
 *
 * A cell asks while the engine reckons it, and gets what is known: the value, or the last one it had. What is not
 * known is reckoned afterwards, all of one table in one small engine, and the cells that waited are reckoned again.
 * Everything here can be thrown away; the last values are kept to be shown meanwhile.
 */
import { type Answer, Cone, keyOf, Precedents, type Whole } from "./cone.ts";
import type { Trial } from "./multiple-operations.ts";
import type { Cell } from "./plugin.ts";
import type { CellValue } from "./values.ts";

/** Stands in a cell whose value has never been known; whatever depends on it shows the same. */
const notYet = "not reckoned yet";

/** One result against one set of inputs. */
interface Result {
  readonly cell: Cell;
  /** Undefined until something is asked for, and after an edit that may change the result. */
  precedents: Precedents | undefined;
  /** Answers by the values of the inputs. */
  readonly known: Map<string, Answer>;
}

/** All results that are asked for with the same inputs. */
interface Group {
  readonly inputs: readonly Cell[];
  readonly results: Map<string, Result>;
  /** Those that the small engine holds when it is this group's turn. */
  held: readonly Result[];
}

interface Wish {
  readonly group: Group;
  readonly result: Result;
  readonly values: readonly CellValue[];
  readonly key: string;
  /** Key of the cell that wants it; undefined for a formula that is tried out. */
  readonly asker: string | undefined;
}

interface Asker {
  readonly cell: Cell;
  /** When it was last reckoned. A formula may ask for other things each time. */
  run: number;
  wishes: Wish[];
}

/** Enough for formulas that are tried out while they are typed. */
const mostIdleGroups = 24;

export class Tabulated {
  private readonly groups = new Map<string, Group>();
  private readonly askers = new Map<string, Asker>();
  private readonly waiting = new Map<string, Cell>();
  /** What was last known in a cell, by the cell and the result that it asked for. */
  private readonly last = new Map<string, Answer>();
  private tried: Wish[] = [];
  private readonly cone = new Cone();
  /** Whose cells the small engine holds; none after an edit that may have changed them. */
  private inCone: Group | undefined;
  private run = 0;
  /** Groups whose next sets of inputs have been put in order. */
  private plan: Turn[] = [];

  /** @param again reckons cells with what is known now */
  constructor(
    private readonly whole: () => Whole,
    private readonly again: (cells: readonly Cell[]) => void,
  ) {}

  /** How many cells wait for a value. */
  get left(): number {
    return this.waiting.size;
  }

  isWaiting(cell: Cell): boolean {
    return this.waiting.has(keyOf(cell));
  }

  waitingCells(): Iterable<Cell> {
    return this.waiting.values();
  }

  /** A reckoning begins: what cells ask for from now on takes the place of what they asked for before. */
  begin(): void {
    this.run += 1;
    this.plan = [];
  }

  /** Everything is built anew. */
  clear(): void {
    this.groups.clear();
    this.askers.clear();
    this.waiting.clear();
    this.inCone = undefined;
    this.begin();
  }

  /** Cells are not where they were, so that what they held last is no guide. */
  forgetLast(): void {
    this.last.clear();
  }

  /** The contents of `cell` are about to change. */
  forget(cell: Cell): void {
    this.askers.delete(keyOf(cell));
    this.waiting.delete(keyOf(cell));
  }

  /** Cells of the job are about to change, or have: results that depend on them are no longer known. */
  touch(cells: readonly Cell[]): void {
    const lost = new Set<Result>();
    for (const group of this.groups.values()) {
      for (const result of group.results.values()) {
        if (!result.precedents || !cells.some((cell) => result.precedents!.has(cell))) continue;
        result.precedents = undefined;
        result.known.clear();
        lost.add(result);
        if (this.inCone === group) this.inCone = undefined;
      }
    }
    if (lost.size === 0) return;
    for (const [key, asker] of this.askers)
      if (asker.wishes.some(({ result }) => lost.has(result))) this.waiting.set(key, asker.cell);
    this.plan = [];
    this.dropIdle();
  }

  /** What `cell` gets for `trial`; undefined cells are formulas that are only tried out. */
  ask(trial: Trial, cell: Cell | undefined): Answer {
    const key = cell && keyOf(cell);
    const wish = this.wishFor(trial, key);
    const known = wish.result.known.get(wish.key);
    if (!cell || key === undefined) {
      if (!known) this.tried.push(wish);
      return known ?? unknown;
    }
    let asker = this.askers.get(key);
    if (!asker) {
      asker = { cell, run: -1, wishes: [] };
      this.askers.set(key, asker);
    }
    if (asker.run !== this.run) {
      asker.run = this.run;
      asker.wishes = [];
      this.waiting.delete(key);
    }
    asker.wishes.push(wish);
    const memory = `${key} ${keyOf(wish.result.cell)}`;
    if (known) {
      this.last.set(memory, known);
      return known;
    }
    this.waiting.set(key, cell);
    return this.last.get(memory) ?? unknown;
  }

  /**
   * Reckons waiting values until none is left or `enough` says so.
   *
   * @returns true when none is left
   */
  advance(enough: () => boolean = () => false): boolean {
    while (this.waiting.size > 0) {
      if (this.plan.length === 0) this.plan = this.turns();
      const done: Wish[] = [];
      while (this.plan.length > 0) {
        const turn = this.plan.pop()!;
        done.push(...this.reckon(turn));
        if (enough()) break;
      }
      this.deliver(done);
      if (enough()) break;
    }
    return this.waiting.size === 0;
  }

  /** Reckons what was asked for without a cell. @returns false when nothing was */
  settleTried(): boolean {
    const wishes = this.ready(this.tried.filter(({ result, key }) => !result.known.has(key)));
    this.tried = [];
    for (const turn of this.inOrder(wishes).reverse()) this.reckon(turn);
    this.dropIdle();
    return wishes.length > 0;
  }

  private wishFor({ result: cell, inputs }: Trial, asker: string | undefined): Wish {
    const name = inputs.map((input) => keyOf(input.cell)).join(" ");
    let group = this.groups.get(name);
    if (!group) {
      group = { inputs: inputs.map((input) => input.cell), results: new Map(), held: [] };
      this.groups.set(name, group);
    }
    let result = group.results.get(keyOf(cell));
    if (!result) {
      result = { cell, precedents: undefined, known: new Map() };
      group.results.set(keyOf(cell), result);
    }
    const values = inputs.map((input) => input.value);
    return { group, result, values, key: JSON.stringify(values), asker };
  }

  /** Forgets groups that no cell asks for any more, but for those of formulas tried out of late. */
  private dropIdle(): void {
    if (this.groups.size <= mostIdleGroups) return;
    const asked = new Set(
      [...this.askers.values()].flatMap(({ wishes }) => wishes.map(({ group }) => group)),
    );
    const idle = [...this.groups].filter(([, group]) => !asked.has(group));
    for (const [name] of idle.slice(0, -mostIdleGroups)) this.groups.delete(name);
  }

  private turns(): Turn[] {
    const open = [...this.waiting.keys()].flatMap((key) =>
      (this.askers.get(key)?.wishes ?? []).filter((wish) => !wish.result.known.has(wish.key)),
    );
    const wishes = this.ready(open);
    if (wishes.length === 0) {
      // Tables that wait for each other in a ring: the engine finds rings before, so this is no more than a guard.
      for (const { result, key } of open) result.known.set(key, ring);
      this.deliver(open);
    }
    return this.inOrder(wishes);
  }

  /** What can be reckoned now: everything whose precedents wait for nothing themselves. */
  private ready(wishes: readonly Wish[]): Wish[] {
    const known = new Map<Result, boolean>();
    return wishes.filter(({ group, result }) => {
      let is = known.get(result);
      if (is === undefined) {
        result.precedents ??= new Precedents(this.whole(), [result.cell], group.inputs);
        const { precedents } = result;
        is = ![...this.waiting.values()].some((cell) => precedents.reads(cell));
        known.set(result, is);
      }
      return is;
    });
  }

  /** Sets of inputs in the order that changes as little as possible from one to the next; the last comes first. */
  private inOrder(wishes: readonly Wish[]): Turn[] {
    const turns = new Map<Group, Map<string, Turn>>();
    for (const wish of wishes) {
      const { group, values, key } = wish;
      const sets = turns.get(group) ?? new Map<string, Turn>();
      turns.set(group, sets);
      const turn = sets.get(key);
      if (turn) turn.wishes.push(wish);
      else sets.set(key, { group, values, key, wishes: [wish] });
    }
    return [...turns].flatMap(([group, sets]) => {
      const wanted = new Set([...sets.values()].flatMap((turn) => turn.wishes.map((wish) => wish.result)));
      if (this.inCone !== group || [...wanted].some((result) => !group.held.includes(result))) {
        group.held = [...wanted];
        if (this.inCone === group) this.inCone = undefined;
      }
      const slow = slowest(this.whole(), group);
      const column = new Map<string, number>();
      for (const { values } of sets.values()) {
        const value = JSON.stringify(values[slow]);
        if (!column.has(value)) column.set(value, column.size);
      }
      const place = ({ values }: Turn) => column.get(JSON.stringify(values[slow]))!;
      return [...sets.values()].sort((a, b) => place(a) - place(b)).reverse();
    });
  }

  private reckon({ group, values, key, wishes }: Turn): readonly Wish[] {
    if (this.inCone !== group) {
      const cells = group.held.map((result) => result.cell);
      this.cone.adopt(new Precedents(this.whole(), cells, group.inputs));
      this.inCone = group;
    }
    const answers = this.cone.at(values);
    for (const [i, result] of group.held.entries()) {
      // Only what is asked for: other results of the same inputs may wait for something themselves.
      if (wishes.some((wish) => wish.result === result)) result.known.set(key, answers[i]!);
    }
    return wishes;
  }

  private deliver(done: readonly Wish[]): void {
    const askers = new Set(done.flatMap((wish) => wish.asker ?? []));
    const cells = [...askers].flatMap((key) => {
      const cell = this.waiting.get(key);
      const wishes = this.askers.get(key)?.wishes ?? [];
      return cell && wishes.every((wish) => wish.result.known.has(wish.key)) ? [cell] : [];
    });
    if (cells.length === 0) return;
    const plan = this.plan;
    this.begin();
    for (const cell of cells) this.waiting.delete(keyOf(cell));
    this.again(cells);
    // What the cells asked for now is known; only tables that depend on them have something new to ask.
    this.plan = plan;
  }
}

/** One set of inputs, and who wants to know. */
interface Turn {
  readonly group: Group;
  readonly values: readonly CellValue[];
  readonly key: string;
  readonly wishes: Wish[];
}

const unknown: Answer = { value: { error: "#N/A", message: notYet } };
const ring: Answer = {
  value: { error: "#CYCLE!", message: "what-if tables depend on each other in a ring" },
};

/** The input that more cells depend on: it should change least often. */
function slowest(whole: Whole, group: Group): number {
  if (group.inputs.length < 2) return 0;
  const results = group.held.map((result) => result.cell);
  const costs = group.inputs.map((input) => new Precedents(whole, results, [input]).onTheWay.size);
  return costs[0]! >= costs[1]! ? 0 : 1;
}
