/** A job that reckons nothing: values are given, edits are remembered. For tests of the components alone. */
import { cellName, parseCell } from "../../src/engine/address.ts";
import type { CellValue } from "../../src/engine/values.ts";
import type { CellFormat, JobDocument, SheetDocument } from "../../src/job/document.ts";
import type { CellEdit, CellView, Job, JobChange } from "../../src/job/job.ts";

export interface FakeCell {
  text?: string;
  value?: CellValue;
  format?: CellFormat;
  choices?: readonly string[];
  note?: string;
  caution?: string;
  spilledFrom?: string;
}

type Cells = Record<string, FakeCell>;

export interface FakeJob extends Job {
  /** The edits of every command so far. */
  readonly commands: (readonly CellEdit[])[];
  text(cell: string): string;
}

const emptyDocument = {
  format: "halfangle job",
  version: 1,
  title: "Spindle nose cap",
  purpose: "Test of the grid",
  scenario: "Invented",
  source: "none",
  cautions: [],
  check: {},
} as const;

/** One sheet, named Tool unless `more` names another. Numbers typed become numbers, `=` texts keep their given value. */
export function fakeJob(
  cells: Cells,
  more: Partial<SheetDocument> = {},
  names: JobDocument["names"] = {},
): FakeJob {
  let now = cells;
  const past: Cells[] = [];
  const future: Cells[] = [];
  const whats: string[] = [];
  const commands: (readonly CellEdit[])[] = [];
  const listeners = new Set<(change: JobChange) => void>();
  const name = more.name ?? "Tool";
  const document = (): JobDocument => ({
    ...emptyDocument,
    names,
    sheets: [
      {
        name,
        columns: {},
        rows: 200,
        columnCount: 26,
        cells: Object.fromEntries(
          Object.entries(now).flatMap(([cell, { text }]) => (text ? [[cell, text]] : [])),
        ),
        formats: Object.fromEntries(
          Object.entries(now).flatMap(([cell, { format }]) => (format ? [[cell, format]] : [])),
        ),
        choices: {},
        notes: {},
        merged: [],
        ...more,
      },
    ],
  });
  let kept = document();
  let changes = 0;
  const changed = (what: string) => {
    changes += 1;
    kept = document();
    for (const listener of listeners) listener({ document: kept, what });
  };
  const unused = () => {
    throw new Error("the fake job has no such command");
  };
  return {
    commands,
    text: (cell) => now[cell]?.text ?? "",
    get document() {
      return kept;
    },
    unit: "mm",
    cell(sheet, row, column): CellView {
      const cell = sheet === name ? now[cellName(row, column)] : undefined;
      const text = cell?.text ?? "";
      return { ...cell, text, value: cell?.value ?? typed(text), format: cell?.format ?? {} };
    },
    setCells(edits, what = `Typed in ${edits.map((edit) => cellName(edit.row, edit.column)).join(", ")}`) {
      past.push(now);
      whats.push(what);
      future.length = 0;
      commands.push(edits);
      const next = { ...now };
      for (const { row, column, text } of edits) {
        const { value: _, ...rest } = next[cellName(row, column)] ?? {};
        next[cellName(row, column)] = { ...rest, text };
      }
      now = next;
      changed(what);
      return undefined;
    },
    get canUndo() {
      return past.length > 0 ? whats[past.length - 1] : undefined;
    },
    get canRedo() {
      return future.length > 0 ? whats[past.length] : undefined;
    },
    undo() {
      future.push(now);
      now = past.pop()!;
      changed("undo");
    },
    redo() {
      past.push(now);
      now = future.pop()!;
      changed("redo");
    },
    async evaluate(formula) {
      const cell = /([A-Z]+\d+)$/.exec(formula)?.[1];
      return cell && parseCell(cell) ? typed(now[cell]?.text ?? "") : { error: "#ERROR!", message: "" };
    },
    subscribe(listener) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    trial: unused,
    precedents: unused,
    readers: unused,
    reckoning: undefined,
    stopReckoning: unused,
    knownValues: unused,
    goOnReckoning: unused,
    close: () => {},
    get changes() {
      return changes;
    },
    put: unused,
    steps: [],
    stepsDone: 0,
    goToStep: unused,
    setFormat: unused,
    setColumnWidth: unused,
    addSheet: unused,
    renameSheet: unused,
    removeSheet: unused,
    moveSheet: unused,
    signOff: unused,
    setName: unused,
    removeName: unused,
  };
}

function typed(text: string): CellValue {
  if (text === "") return null;
  return text.startsWith("=") || Number.isNaN(Number(text)) ? text : Number(text);
}
