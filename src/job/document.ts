/**
 * A job as it is kept: every cell as the person typed it, and apart from that names, formats, sizes and checks.
 * The text file (file.ts) is this, one to one. Values are never kept: they are reckoned again from here.
 */

/** How a number is shown. The value stays an unrounded double. */
export type ShowAs =
  | "plain" // up to `places` decimals (default 6), trailing zeros dropped
  | "decimals" // fixed `places`
  | "length" // fixed places by the job's unit (default 4 in mm, 5 in inches... see format.ts), with that unit beside it
  | "angle" // fixed `places`, degree sign
  | "dms" // degrees, minutes, seconds
  | "fraction" // nearest 1/64 inch, as 1 1/2
  | "thou" // thousandths of an inch
  | "percent"
  | "date" // days since 1899-12-30, as 2026-11-25
  | "turns" // divisions of a dial as full turns and divisions: 1 turn + 12
  | "text";

/** What a cell is for; the look follows from it. */
export type Role =
  | "input" // a blank for the person to fill in
  | "key" // what the hand goes and sets
  | "head" // heading across the sheet
  | "label" // words that name the value beside them
  | "note" // unit, range or remark
  | "caution" // shown as a caution while it holds text other than ""
  | "column"; // heading of a table column

export type Edge = "top" | "right" | "bottom" | "left";

/** What an input takes. A value outside is kept as typed, and the cell carries a caution that says so. */
export interface Allowed {
  /** A number in the cell's unit, or with its own: `0.2 mm`. */
  readonly least?: number | string;
  readonly most?: number | string;
  readonly whole?: boolean;
  /** One of the words that may be chosen there, and nothing else. */
  readonly listed?: boolean;
  /** Said instead of the plain sentence about what is allowed. */
  readonly message?: string;
}

export interface CellFormat {
  readonly as?: ShowAs;
  readonly places?: number;
  /** Shown beside the number, as `rev/min` or `div`; for `length` the job's unit stands there by itself. */
  readonly unit?: string;
  readonly role?: Role;
  /** Divisions in one turn of the dial, for `turns`: a number, or the name of the cell that holds it. */
  readonly perTurn?: number | string;
  readonly bold?: boolean;
  readonly italic?: boolean;
  /** A ground one step darker. */
  readonly shade?: boolean;
  /** Edges with a line. */
  readonly border?: readonly Edge[];
  readonly align?: "left" | "right" | "center";
}

export interface SignedFor {
  /** The answer of the operation, as the sheet showed it. */
  readonly result?: string;
  /** What was set by hand, as typed, by rows. */
  readonly set?: readonly string[];
}

export interface SheetDocument {
  readonly name: string;
  /** Number on the route card, in tens; 0 for a sheet that is no operation and has no sign-off box, as a what-if table. */
  readonly operation?: number;
  /** Cell whose value the route card shows as the answer of this operation, as `B5`. */
  readonly result?: string;
  readonly signedOff?: boolean;
  /** What it was signed off for; a sign-off without it holds whatever changes. */
  readonly signedFor?: SignedFor;
  /** Column widths in px at normal type, by letter; others are 96. */
  readonly columns: Readonly<Record<string, number>>;
  /** Rows and columns there is room for; never under 200 by 26. */
  readonly rows: number;
  readonly columnCount: number;
  /** `A1` to the text as typed. Empty cells are absent. */
  readonly cells: Readonly<Record<string, string>>;
  /** `A1` or `A1:B9` to format; a later range is overruled by an earlier one, and by a single cell. */
  readonly formats: Readonly<Record<string, CellFormat>>;
  /** `A1` to the words that may be chosen there. */
  readonly choices: Readonly<Record<string, readonly string[]>>;
  /** `A1` to a remark kept with the cell. */
  readonly notes: Readonly<Record<string, string>>;
  /** Ranges shown as one cell. */
  readonly merged: readonly string[];
  /** Ranges that typing leaves alone. */
  readonly locked?: readonly string[];
  /** What inputs take, by cell or range. */
  readonly allowed?: Readonly<Record<string, Allowed>>;
  /** Rows and columns that are not shown: `5:7`, `C:D`. */
  readonly hidden?: readonly string[];
  /** The first cell that scrolls: the rows above it and the columns left of it stay. */
  readonly freeze?: string;
}

export interface Check {
  readonly value: number | string;
  readonly within?: number;
  readonly source: string;
}

export interface JobDocument {
  readonly format: "halfangle job";
  readonly version: number;
  readonly title: string;
  readonly purpose: string;
  /** Says that the scenario is invented, where it is. */
  readonly scenario: string;
  readonly source: string;
  /** Cautions for the notes line. */
  readonly cautions: readonly string[];
  /** Name to `Sheet!B2` or `Sheet!B2:B9`. */
  readonly names: Readonly<Record<string, string>>;
  readonly sheets: readonly SheetDocument[];
  /** `Sheet!B2` to what it must show as shipped. */
  readonly check: Readonly<Record<string, Check>>;
  /** Keys of later versions or other tools, kept as they are. */
  readonly [unknown: string]: unknown;
}
