/** The published figures that the tests compare with, one row each, read from the csv files beside this file. */
import { readFileSync } from "node:fs";
import papa from "papaparse";
import { expect, test } from "vitest";
import { unmatched } from "./unmatched.ts";

export interface Row {
  readonly id: string;
  readonly standard: string;
  readonly designation: string;
  readonly quantity: string;
  readonly unit: string;
  /** As printed; a number in every row that a test compares as one. */
  readonly text: string;
  readonly value: number;
  readonly tolerance: number;
  readonly source: string;
  readonly confidence: string;
}

/** All rows of one file, in its order. */
export function publishedRows(file: string): readonly Row[] {
  const text = readFileSync(new URL(`${file}.csv`, import.meta.url), "utf8");
  const { data, errors } = papa.parse<Record<string, string>>(text, { header: true, skipEmptyLines: true });
  if (errors.length > 0) throw new Error(`${file}.csv row ${errors[0]!.row}: ${errors[0]!.message}`);
  return data.map((row) => ({
    id: row.id!,
    standard: row.standard!,
    designation: row.designation!,
    quantity: row.quantity!,
    unit: row.unit!,
    text: row.value!,
    value: Number(row.value),
    tolerance: Number(row.tolerance),
    source: row.source!,
    confidence: row.confidence!,
  }));
}

/**
 * A test for every row: what we compute agrees to the printed rounding. The rows that cannot agree stand in unmatched.ts.
 *
 * @param computed undefined for a row that nothing answers, which fails
 */
export function testRows(rows: readonly Row[], computed: (row: Row) => number | undefined): void {
  for (const row of rows) {
    if (row.id in unmatched) continue;
    test(`${row.id} agrees with its source (${row.source})`, () => {
      const value = computed(row);
      expect(value, "nothing answers this row").toBeDefined();
      // A row printed without rounding is exact but for binary dust.
      expect(Math.abs(value! - row.value), `${value} against ${row.text}`).toBeLessThanOrEqual(
        row.tolerance + 1e-9,
      );
    });
  }
  const listed = rows.filter(({ id }) => id in unmatched);
  test.each(listed)("$id does not agree, for the reason that is listed", (row) => {
    const value = computed(row);
    expect(value !== undefined && Math.abs(value - row.value) <= row.tolerance).toBe(false);
  });
}
