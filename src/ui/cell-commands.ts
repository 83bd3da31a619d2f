/** What can be done to the chosen cells: the table that the cell menu and the keys of the grid read. */
import { cellName, columnName } from "../engine/address.ts";
import { setAllowed } from "../job/allowed.ts";
import { clearFormats, mergeCells, setNote, setWidths, splitCells } from "../job/blocks.ts";
import type { CellFormat } from "../job/document.ts";
import { cellText } from "../job/format.ts";
import type { Job } from "../job/job.ts";
import type { Axis } from "../job/lines.ts";
import { frozenOf, setFreeze, setHidden } from "../job/lines-shown.ts";
import { isLocked, lockFormulas, setLocked } from "../job/locks.ts";
import { rangeName } from "../job/references.ts";
import { type SortWay, sortRows, tableAround } from "../job/sort.ts";
import { deleteLines, insertLines, moveLines } from "../job/structure.ts";
import { askFormat, askLimits, askName, askNote, askWidth } from "./cell-questions.ts";
import { descriptionOf } from "./cell-view.ts";
import { drawingCommands } from "./drawing-commands.ts";
import { clearArea, fillArea, type Refused } from "./grid-commands.ts";
import type { GridHost } from "./grid-host.ts";
import { reckoned } from "./reckoned.ts";
import type { SheetMap } from "./sheet-map.ts";

/** The grid with a sheet in it. */
export interface Ready extends GridHost {
  readonly job: Job;
  readonly map: SheetMap;
}

export interface CellCommand {
  readonly id: string;
  readonly group: "Cells" | "Rows" | "Columns" | "Look" | "Input" | "Sheet";
  readonly keys?: string;
  /** undefined where it makes no sense. */
  label(on: Ready): string | undefined;
  /** What was done or why not; what has been said already gives nothing. */
  run(on: Ready): string | Refused | undefined | Promise<string | Refused | undefined>;
}

/** Tells what a command of the job did, or why it could not. */
function told(on: Ready, reason: string | undefined): string | Refused {
  return reason === undefined ? (on.job.canUndo ?? "") : { reason };
}

function lines(on: Ready, axis: Axis) {
  const { area } = on;
  return axis === "row"
    ? { at: area.top, count: area.bottom - area.top + 1 }
    : { at: area.left, count: area.right - area.left + 1 };
}

const counted = (count: number, axis: Axis) =>
  `${count === 1 ? "" : `${count} `}${axis}${count === 1 ? "" : "s"}`;

const tooMuch: Refused = { reason: "all of the sheet is chosen: choose the rows or columns that are meant" };

function isEverything(on: Ready): boolean {
  const { rowLines, columnLines } = on.map;
  return lines(on, "row").count >= rowLines.all && lines(on, "column").count >= columnLines.all;
}

function insert(on: Ready, axis: Axis): string | Refused {
  const { at, count } = lines(on, axis);
  return told(on, insertLines(on.job, on.sheet, axis, at, count));
}

function remove(on: Ready, axis: Axis): string | Refused {
  const { at, count } = lines(on, axis);
  return told(on, deleteLines(on.job, on.sheet, axis, at, count));
}

function lineCommands(axis: Axis): CellCommand[] {
  const group = axis === "row" ? "Rows" : "Columns";
  const before = axis === "row" ? "above" : "on the left";
  const many = (on: Ready) => counted(lines(on, axis).count, axis);
  // Whole columns are chosen: nobody means all the rows.
  const isAll = (on: Ready) => lines(on, axis).count >= on.map[all].all;
  const other = axis === "row" ? "column" : "row";
  const alt = axis === "row" ? "Alt" : "Alt Shift";
  const words: readonly [string, string] = axis === "row" ? ["up", "down"] : ["left", "right"];
  const all = axis === "row" ? "rowLines" : "columnLines";
  const move = (by: -1 | 1): CellCommand => ({
    id: `move ${words[by < 0 ? 0 : 1]}`,
    group,
    keys: `Alt Shift ${axis === "row" ? (by < 0 ? "↑" : "↓") : by < 0 ? "←" : "→"}`,
    label: (on) =>
      isAll(on) || (by < 0 && lines(on, axis).at === 0)
        ? undefined
        : `Move ${many(on)} ${words[by < 0 ? 0 : 1]}`,
    run(on) {
      const { at, count } = lines(on, axis);
      if (by < 0 && at === 0) return "";
      const { area, active } = on;
      const reason = moveLines(on.job, on.sheet, axis, at, count, by < 0 ? at - 1 : at + count + 1);
      if (reason === undefined) {
        const [down, right] = axis === "row" ? [by, 0] : [0, by];
        on.goTo(active.row + down, active.column + right, { focus: true });
        on.choose(
          { row: area.top + down, column: area.left + right },
          { row: area.bottom + down, column: area.right + right },
        );
      }
      return told(on, reason);
    },
  });
  return [
    {
      id: `insert ${axis}s`,
      group,
      keys: `${alt} Insert`,
      label: (on) => (isAll(on) ? undefined : `Insert ${many(on)} ${before}`),
      run: (on) => (isEverything(on) ? tooMuch : insert(on, isAll(on) ? other : axis)),
    },
    {
      id: `delete ${axis}s`,
      group,
      keys: `${alt} Delete`,
      label: (on) => (isAll(on) ? undefined : `Delete ${many(on)}`),
      run: (on) => (isEverything(on) ? tooMuch : remove(on, isAll(on) ? other : axis)),
    },
    move(-1),
    move(1),
    {
      id: `hide ${axis}s`,
      group,
      label: (on) => (lines(on, axis).count < on.map[all].count ? `Hide ${many(on)}` : undefined),
      run(on) {
        const { at, count } = lines(on, axis);
        setHidden(on.job, on.sheet, axis, { first: at, last: at + count - 1 }, true);
        on.goTo(on.active.row, on.active.column, { focus: true });
        return on.job.canUndo;
      },
    },
    {
      id: `show ${axis}s`,
      group,
      label: (on) => (on.map[all].count < on.map[all].all ? `Show hidden ${axis}s` : undefined),
      run(on) {
        const { at, count } = lines(on, axis);
        // One row alone shows all; several show those between them.
        const last = on.map[all].all - 1;
        const span = count === 1 ? { first: 0, last } : { first: at, last: at + count - 1 };
        setHidden(on.job, on.sheet, axis, span, false);
        return on.job.canUndo;
      },
    },
  ];
}

/** The rows that are sorted, never a column apart from those beside it. */
function table(on: Ready) {
  const { area, active } = on;
  const around = () => tableAround(on.job, on.sheet, active.row, active.column);
  if (area.top === area.bottom) return around();
  if (area.left < area.right) return area;
  const { left, right } = around();
  return { ...area, left, right };
}

function sort(way: SortWay): CellCommand {
  return {
    id: `sort ${way}`,
    group: "Cells",
    label: (on) =>
      `Sort by column ${columnName(on.active.column)}, ${way === "up" ? "smallest" : "largest"} first`,
    async run(on) {
      const { job, sheet, active } = on;
      const area = table(on);
      // The order depends on values that may be on their way.
      await reckoned(job);
      const reason = sortRows(job, sheet, area, active.column, way);
      if (reason === undefined && on.job === job && on.sheet === sheet)
        on.choose({ row: area.top, column: area.left }, { row: area.bottom, column: area.right });
      return told(on, reason);
    },
  };
}

function toggle(id: "bold" | "italic" | "shade", word: string, keys?: string): CellCommand {
  const has = (on: Ready) => on.map.view(on.active.row, on.active.column).format[id] === true;
  return {
    id,
    group: "Look",
    ...(keys ? { keys } : {}),
    label: (on) => (has(on) ? `Not ${word.toLowerCase()}` : word),
    run(on) {
      const format: CellFormat = { [id]: !has(on) };
      on.job.setFormat(on.sheet, rangeName(on.area), format);
      return on.job.canUndo;
    },
  };
}

const several = ({ area }: Ready) => area.top !== area.bottom || area.left !== area.right;

const locked = ({ map, active }: Ready) =>
  map.sheet !== undefined && isLocked(map.sheet, active.row, active.column);

export const cellCommands: readonly CellCommand[] = [
  { id: "cut", group: "Cells", keys: "Ctrl X", label: () => "Cut", run: () => undefined },
  { id: "copy", group: "Cells", keys: "Ctrl C", label: () => "Copy", run: () => undefined },
  { id: "paste", group: "Cells", keys: "Ctrl V", label: () => "Paste", run: () => undefined },
  {
    id: "clear",
    group: "Cells",
    keys: "Delete",
    label: () => "Clear",
    run: (on) => clearArea(on.map, on.area) || "Nothing to clear",
  },
  {
    id: "fill down",
    group: "Cells",
    keys: "Ctrl D",
    label: () => "Fill down",
    run: (on) => fill(on, "down"),
  },
  {
    id: "fill right",
    group: "Cells",
    keys: "Ctrl R",
    label: () => "Fill right",
    run: (on) => fill(on, "right"),
  },
  { id: "say", group: "Cells", keys: "Shift F1", label: () => "Say what the cell holds", run: spoken },
  sort("up"),
  sort("down"),
  {
    id: "merge",
    group: "Cells",
    label: (on) => (several(on) && !isMerged(on) ? "Merge" : undefined),
    run: (on) => told(on, mergeCells(on.job, on.sheet, on.area)),
  },
  {
    id: "split",
    group: "Cells",
    label: (on) => (isMerged(on) ? "Split merged cells" : undefined),
    run: (on) => told(on, splitCells(on.job, on.sheet, on.area)),
  },
  ...drawingCommands,
  ...lineCommands("row"),
  ...lineCommands("column"),
  { id: "width", group: "Columns", label: () => "Width of column...", run: askWidth },
  {
    id: "fit",
    group: "Columns",
    label: (on) => `Fit ${counted(lines(on, "column").count, "column")} to contents`,
    run(on) {
      fitColumns(on, on.area.left, on.area.right);
      return on.job.canUndo;
    },
  },
  { id: "format", group: "Look", label: () => "Format...", run: askFormat },
  toggle("bold", "Bold", "Ctrl B"),
  toggle("italic", "Slanted", "Ctrl I"),
  toggle("shade", "Darker ground"),
  {
    id: "plain",
    group: "Look",
    label: () => "Take formats away",
    run(on) {
      clearFormats(on.job, on.sheet, on.area);
      return on.job.canUndo;
    },
  },
  { id: "note", group: "Input", keys: "Alt N", label: () => "Note...", run: askNote },
  {
    id: "no note",
    group: "Input",
    label: ({ map, active }) =>
      map.view(active.row, active.column).note === undefined ? undefined : "Take the note away",
    run(on) {
      setNote(on.job, on.sheet, on.active.row, on.active.column, "");
      return on.job.canUndo;
    },
  },
  { id: "limits", group: "Input", label: () => "Choices and limits...", run: askLimits },
  {
    id: "no limits",
    group: "Input",
    label: ({ map }) => (Object.keys(map.sheet?.allowed ?? {}).length > 0 ? "Take limits away" : undefined),
    run(on) {
      setAllowed(on.job, on.sheet, on.area, undefined);
      return on.job.canUndo;
    },
  },
  { id: "name", group: "Input", label: ({ area }) => `Name ${rangeName(area)}...`, run: askName },
  {
    id: "lock",
    group: "Input",
    label: (on) => (locked(on) ? "Unlock" : "Lock"),
    run(on) {
      setLocked(on.job, on.sheet, on.area, !locked(on));
      return on.job.canUndo;
    },
  },
  {
    id: "lock formulas",
    group: "Sheet",
    label: () => "Lock all formulas",
    run(on) {
      lockFormulas(on.job, on.sheet);
      return on.job.canUndo;
    },
  },
  {
    id: "unlock all",
    group: "Sheet",
    label: ({ map }) => (map.sheet?.locked ? "Unlock all cells" : undefined),
    run(on) {
      const { rows, columns } = on.map;
      setLocked(on.job, on.sheet, { top: 0, left: 0, bottom: rows - 1, right: columns - 1 }, false);
      return on.job.canUndo;
    },
  },
  {
    id: "freeze",
    group: "Sheet",
    label: ({ active }) =>
      active.row > 0 || active.column > 0
        ? `Freeze what is above and left of ${cellName(active.row, active.column)}`
        : undefined,
    run(on) {
      setFreeze(on.job, on.sheet, on.active.row, on.active.column);
      return on.job.canUndo;
    },
  },
  {
    id: "unfreeze",
    group: "Sheet",
    label: ({ map }) => {
      const { rows, columns } = frozenOf(map.sheet);
      return rows + columns > 0 ? "Let all of it scroll" : undefined;
    },
    run(on) {
      setFreeze(on.job, on.sheet, 0, 0);
      return on.job.canUndo;
    },
  },
];

/** For those who hear the sheet: what was typed, what it gives, and what the cell says besides. */
function spoken({ map, job, active: { row, column } }: Ready): string {
  const view = map.view(row, column);
  const { text } = view;
  const cell = [cellName(row, column), view.name].filter(Boolean).join(", ");
  const shown = cellText(view, job.unit);
  const held = text.startsWith("=") ? `formula ${text}` : text === "" ? "nothing typed" : `typed ${text}`;
  const gives = shown === "" || shown === text ? "" : `, gives ${shown}`;
  return [`${cell}: ${held}${gives}`, descriptionOf(view)].filter(Boolean).join("; ");
}

function isMerged({ map, area }: Ready): boolean {
  return map.merged.some(
    (one) =>
      one.top <= area.bottom && one.bottom >= area.top && one.left <= area.right && one.right >= area.left,
  );
}

/** One row alone is filled from the one above it, one column from the one on its left. */
function fill(on: Ready, way: "down" | "right"): string | Refused {
  const { area } = on;
  const alone =
    way === "down" ? area.top === area.bottom && area.top > 0 : area.left === area.right && area.left > 0;
  const from = way === "down" ? { ...area, top: area.top - 1 } : { ...area, left: area.left - 1 };
  return fillArea(on.map, alone ? from : area, way);
}

/** Makes columns as wide as what they hold. */
export function fitColumns(on: Ready, first: number, last: number): void {
  const columns = Array.from({ length: last - first + 1 }, (_, i) => first + i);
  const widthFor = (column: number) => Math.max(24, Math.min(600, on.widthOf(column)));
  setWidths(on.job, on.sheet, new Map(columns.map((column) => [column, widthFor(column)])));
}
