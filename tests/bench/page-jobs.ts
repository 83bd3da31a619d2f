/** The jobs that the page is measured with: invented figures, only their number matters. */
import { columnName } from "../../src/engine/address.ts";
import { emptySheet } from "../../src/job/changes.ts";
import type { JobDocument } from "../../src/job/document.ts";

export interface BenchJob {
  readonly name: string;
  readonly document: JobDocument;
  /** Cell that is typed into, and the cells in view that depend on it, as they show for what is typed. */
  readonly typeInto: { readonly row: number; readonly column: number };
  readonly shows: (typed: number) => { readonly row: number; readonly column: number; readonly text: string };
}

function jobOf(title: string, rows: number, columnCount: number, cells: Record<string, string>): JobDocument {
  const columns = Object.fromEntries(
    Array.from({ length: columnCount }, (_, i): [string, number] => [columnName(i), 80]),
  );
  return {
    format: "halfangle job",
    version: 1,
    title,
    purpose: "",
    scenario: "Invented for measuring",
    source: "",
    cautions: [],
    names: {},
    sheets: [{ ...emptySheet("Sums"), rows, columnCount, columns, cells }],
    check: {},
  };
}

/** Row 1: B1 is typed into, every cell right of it is B1 times its number. The others as `cell` says. */
function cellsOf(
  columns: number,
  rows: readonly number[],
  cell: (row: number, column: number) => string,
): Record<string, string> {
  const cells: Record<string, string> = { A1: "try", B1: "1" };
  for (let column = 2; column < columns; column++) cells[`${columnName(column)}1`] = `=$B$1*${column}`;
  for (const row of rows)
    for (let column = 0; column < columns; column++) cells[`${columnName(column)}${row}`] = cell(row, column);
  return cells;
}

const span = (first: number, last: number): number[] =>
  Array.from({ length: last - first + 1 }, (_, i) => first + i);

const firstRow = {
  typeInto: { row: 0, column: 1 },
  shows: (typed: number) => ({ row: 0, column: 4, text: String(typed * 4) }),
};

/** Half of the cells typed, half reckoned. */
const small = cellsOf(10, span(2, 30), (row, column) =>
  column < 5 ? String(row + column / 10) : `=${columnName(column - 5)}${row}*2+$B$1`,
);

/** Every formula depends on the one to its left, and all of them on B1. */
const large = cellsOf(31, span(2, 300), (row, column) =>
  column === 0 ? String(row / 10) : `=${columnName(column - 1)}${row}*1.01+$B$1`,
);

/** 3,000,000 cells: figures, but for 80,000 formulas of their own row and 1,000 that depend on B1. */
function huge(): Record<string, string> {
  return cellsOf(30, span(2, 100_000), (row, column) => {
    if (column === 28 && row <= 80_001) return `=A${row}*1.01+B${row}`;
    if (column === 29 && row <= 1001) return `=$B$1*${row}`;
    return String(((row * 31 + column * 7) % 9973) / 8);
  });
}

/** For pasting: rows of numbers in no order, with tabs between. */
export function plainRows(rows: number, columns: number): string {
  const number = (row: number, column: number) => ((row * 7919 + column * 104_729) % 1000) / 10;
  return span(1, rows)
    .map((row) =>
      span(1, columns)
        .map((column) => number(row, column))
        .join("\t"),
    )
    .join("\n");
}

export const largeJob = (): BenchJob => ({
  name: "9,000 formulas",
  document: jobOf("9,000 formulas", 300, 31, large),
  ...firstRow,
});

export const hugeJob = (): BenchJob => ({
  name: "100,000 x 30",
  document: jobOf("100,000 x 30", 100_000, 30, huge()),
  ...firstRow,
});

export const benchJobs = (): readonly BenchJob[] => [
  { name: "300 cells", document: jobOf("300 cells", 200, 26, small), ...firstRow },
  largeJob(),
  hugeJob(),
];
