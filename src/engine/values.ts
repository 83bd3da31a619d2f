/** What a cell can hold once reckoned, and where a cell is. No engine types: every other folder may use these. */

export interface ErrorValue {
  readonly error: string;
  /** Which argument, what was given, what is accepted. */
  readonly message: string;
  /** Cell where the error began, as `Sheet!A1`, when that is another cell. */
  readonly from?: string;
}

export type CellValue = number | string | boolean | null | ErrorValue;

/** Zero-based row and column on a named sheet. */
export interface Place {
  readonly sheet: string;
  readonly row: number;
  readonly column: number;
}

export function isErrorValue(value: unknown): value is ErrorValue {
  return typeof value === "object" && value !== null && "error" in value;
}
