/** What a key means on the grid. Keys in, intentions out; after the grid pattern of WAI-ARIA and common spreadsheet use. */
import type { Step } from "./edit-session.ts";
import type { Area } from "./grid-window.ts";

export interface Spot {
  readonly row: number;
  readonly column: number;
}

/** What the keys need to know of the sheet. */
export interface Ground {
  readonly rows: number;
  readonly columns: number;
  /** As far as room is made for a key that goes past the end; left out, the end is the end. */
  readonly most?: { readonly rows: number; readonly columns: number };
  /** Rows of one screen less a row. */
  readonly page: number;
  /** The person wants Tab to go on to the next cell; else it leaves the grid. */
  readonly tab?: boolean;
  /** Last row and column that hold anything. */
  readonly used: Spot;
  filled(row: number, column: number): boolean;
  /** The merged range over a cell, or the cell. */
  areaAt(row: number, column: number): Area;
  /** A hidden row becomes the next one that shows, downwards or upwards. */
  passRow(row: number, by: 1 | -1): number;
  passColumn(column: number, by: 1 | -1): number;
}

export type Intent =
  | { readonly act: "go"; readonly to: Spot; readonly extend: boolean }
  | { readonly act: "select"; readonly from: Spot; readonly to: Spot }
  | { readonly act: "type"; readonly text: string }
  | {
      readonly act:
        | "edit"
        | "choose"
        | "clear"
        | "undo"
        | "redo"
        | "fill down"
        | "fill right"
        | "collapse"
        | "menu"
        | "say"
        | "bold"
        | "italic"
        | "note"
        | "insert rows"
        | "insert columns"
        | "delete rows"
        | "delete columns"
        | "move up"
        | "move down"
        | "move left"
        | "move right";
    };

type Key = Pick<KeyboardEvent, "key" | "ctrlKey" | "metaKey" | "shiftKey" | "altKey"> & {
  readonly code?: string;
};

const arrows: Readonly<Record<string, Step>> = {
  ArrowUp: { rows: -1, columns: 0 },
  ArrowDown: { rows: 1, columns: 0 },
  ArrowLeft: { rows: 0, columns: -1 },
  ArrowRight: { rows: 0, columns: 1 },
};

const moves: Readonly<Record<string, "move up" | "move down" | "move left" | "move right">> = {
  ArrowUp: "move up",
  ArrowDown: "move down",
  ArrowLeft: "move left",
  ArrowRight: "move right",
};

/**
 * @param active the active cell
 * @param head the corner of the range that Shift moves
 */
export function intentOf(event: Key, active: Spot, head: Spot, ground: Ground): Intent | undefined {
  const command = event.ctrlKey || event.metaKey;
  const extend = event.shiftKey;
  const go = (row: number, column: number): Intent => ({
    act: "go",
    to: within(row, column, ground),
    extend,
  });
  const { row, column } = extend ? head : active;
  const arrow = arrows[event.key];
  if (arrow) {
    if (event.altKey && event.shiftKey) return { act: moves[event.key]! };
    if (event.altKey) return event.key === "ArrowDown" ? { act: "choose" } : undefined;
    const to = command ? blockEdge(row, column, arrow, ground) : beside(row, column, arrow, ground);
    return go(to.row, to.column);
  }
  if (event.altKey) {
    // The place of the key counts: with Alt some keyboards write another letter.
    if (event.code === "KeyN" && !command && !extend) return { act: "note" };
    const lines = event.shiftKey ? "columns" : "rows";
    if (event.key === "Insert") return { act: `insert ${lines}` };
    return event.key === "Delete" ? { act: `delete ${lines}` } : undefined;
  }
  if (event.key === "ContextMenu" || (event.key === "F10" && event.shiftKey)) return { act: "menu" };
  if (event.key === "F1" && event.shiftKey) return { act: "say" };
  switch (event.key) {
    case "Tab": {
      const step = { rows: 0, columns: event.shiftKey ? -1 : 1 };
      const to = beside(active.row, active.column, step, ground);
      return ground.tab && !command ? { act: "go", to, extend: false } : undefined;
    }
    case "Home":
      return command ? go(0, 0) : go(row, 0);
    case "End":
      return command ? go(ground.used.row, ground.used.column) : go(row, ground.columns - 1);
    case "PageUp":
      return go(row - ground.page, column);
    case "PageDown":
      return go(row + ground.page, column);
    case "Enter":
    case "F2":
      return { act: "edit" };
    case "Delete":
    case "Backspace":
      return { act: "clear" };
    case "Escape":
      return { act: "collapse" };
    case " ":
      if (command) return { act: "select", from: { row: 0, column }, to: { row: ground.rows - 1, column } };
      if (extend) return { act: "select", from: { row, column: 0 }, to: { row, column: ground.columns - 1 } };
      break;
  }
  if (command) return commandOf(event, ground);
  return event.key.length === 1 ? { act: "type", text: event.key } : undefined;
}

function commandOf(event: Key, ground: Ground): Intent | undefined {
  switch (event.key.toLowerCase()) {
    case "a":
      return {
        act: "select",
        from: { row: 0, column: 0 },
        to: { row: ground.rows - 1, column: ground.columns - 1 },
      };
    case "z":
      return { act: event.shiftKey ? "redo" : "undo" };
    case "y":
      return { act: "redo" };
    case "b":
      return { act: "bold" };
    case "i":
      return { act: "italic" };
    case "d":
      return { act: "fill down" };
    case "r":
      return event.shiftKey ? undefined : { act: "fill right" };
    default:
      return undefined;
  }
}

/** The next cell; a merged cell is left in one step. */
export function beside(row: number, column: number, step: Step, ground: Ground): Spot {
  const area = ground.areaAt(row, column);
  const to = within(
    step.rows > 0 ? area.bottom + step.rows : row + step.rows,
    step.columns > 0 ? area.right + step.columns : column + step.columns,
    ground,
  );
  return {
    row: step.rows === 0 ? to.row : ground.passRow(to.row, step.rows > 0 ? 1 : -1),
    column: step.columns === 0 ? to.column : ground.passColumn(to.column, step.columns > 0 ? 1 : -1),
  };
}

/** The last filled cell of the run, or the first filled one after a gap, or the edge of the sheet. */
function blockEdge(row: number, column: number, step: Step, ground: Ground): Spot {
  const inside = (at: Spot) =>
    at.row >= 0 && at.row < ground.rows && at.column >= 0 && at.column < ground.columns;
  const next = (at: Spot) => ({ row: at.row + step.rows, column: at.column + step.columns });
  const full = (at: Spot) => ground.filled(at.row, at.column);
  let at: Spot = { row, column };
  if (!inside(next(at))) return at;
  const inRun = full(at) && full(next(at));
  do at = next(at);
  while (inside(next(at)) && (inRun ? full(next(at)) : !full(at)));
  return at;
}

function within(row: number, column: number, { rows, columns, most = { rows, columns } }: Ground): Spot {
  return {
    row: Math.max(0, Math.min(most.rows - 1, row)),
    column: Math.max(0, Math.min(most.columns - 1, column)),
  };
}

export type EditIntent =
  | { readonly act: "leave"; readonly step: Step }
  | { readonly act: "drop" | "caret" | "break" };

/** What a key means while a text is edited; undefined leaves it to the field. Never call it during composition. */
export function editIntentOf(event: Key, replacing: boolean): EditIntent | undefined {
  const back = event.shiftKey ? -1 : 1;
  if (event.key === "Enter" && event.altKey) return { act: "break" };
  if (event.key === "Enter") return { act: "leave", step: { rows: back, columns: 0 } };
  if (event.key === "Tab") return { act: "leave", step: { rows: 0, columns: back } };
  if (event.key === "Escape") return { act: "drop" };
  if (event.key === "F2") return { act: "caret" };
  const arrow = arrows[event.key];
  const plain = !event.shiftKey && !event.ctrlKey && !event.metaKey && !event.altKey;
  return arrow && replacing && plain ? { act: "leave", step: arrow } : undefined;
}
