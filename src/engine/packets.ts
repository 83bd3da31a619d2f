/** What the page and the worker say to each other, and values packed for the way: one message for many cells. */
import type { Drawn } from "../functions/declare.ts";
import type { Area } from "./cone.ts";
import type { EngineEdit } from "./contents.ts";
import type { Packed } from "./packed-cells.ts";
import type { Answer, Question } from "./questions.ts";
import type { CellValue } from "./values.ts";

type Figure = Drawn["figure"];

/**
 * From the page. A turn is one edit, numbered from 1; contents are sent in parts, so that a large job does not hold up
 * the page.
 */
export type Order =
  | {
      readonly order: "begin";
      readonly names: Readonly<Record<string, string>>;
      readonly sheets: readonly string[];
    }
  | {
      readonly order: "part";
      readonly sheet: number;
      readonly cells: readonly (readonly [name: string, text: string])[];
      readonly values: readonly (readonly [name: string, value: CellValue])[];
      readonly packed?: readonly Packed[];
    }
  | { readonly order: "build"; readonly turn: number }
  | {
      readonly order: "type";
      readonly turn: number;
      readonly edits: readonly EngineEdit[];
      /** Cells whose value is told even if it comes out as it was. */
      readonly tell: readonly Spots[];
    }
  | { readonly order: "ask"; readonly id: number; readonly question: Question };

/** From the worker: what comes of a question, or why nothing does. */
export interface Reply {
  /** The number of the question. */
  readonly answers: number;
  readonly answer?: Answer;
  readonly failed?: string;
}

/** From the worker, several in a turn: what has been reckoned, and how far it is. */
export interface Report {
  readonly turn: number;
  /** Cells reckoned in this turn so far. */
  readonly done: number;
  /** Cells to reckon in this turn; 0 while that is not known. */
  readonly of: number;
  /** True in the last report of the turn. */
  readonly ended: boolean;
  /** What was typed is in the engine; what may still be missing are values of what-if tables. */
  readonly entered?: boolean;
  /** More of the same follows at once: nothing needs to be shown in between. */
  readonly more?: true;
  readonly packets: readonly Packet[];
  /** The cells that this turn changes or may change, once it has taken a while. */
  readonly reach?: readonly Spots[];
  /** Areas that block functions take or would take, and those that they fill; where they are not as before. */
  readonly blocks?: { readonly wanted: readonly Area[]; readonly filled: readonly Area[] };
}

/** Cells of one sheet: each its row times 1024 and its column. */
export interface Spots {
  readonly sheet: number;
  readonly spots: Int32Array;
}

export interface Packet extends Spots {
  /** The value where it is a number, NaN where it is another one: those stand in `others` in the same order. */
  readonly numbers: Float64Array;
  readonly others: readonly CellValue[];
  /** Notes and drawings beside the values, by the place in `spots`. */
  readonly beside: readonly (readonly [
    place: number,
    note: string | undefined,
    figure: Figure | undefined,
  ])[];
}

export interface Told {
  readonly row: number;
  readonly column: number;
  readonly value: CellValue;
  readonly note?: string | undefined;
  readonly figure?: Figure | undefined;
}

/** Cells of one packet: the page takes it over in a few ms. */
export const mostInPacket = 8192;

const columns = 1024;

export const spotOf = (row: number, column: number): number => row * columns + column;
export const rowOf = (spot: number): number => Math.floor(spot / columns);
export const columnOf = (spot: number): number => spot % columns;

export function packed(sheet: number, cells: readonly Told[]): Packet {
  const spots = new Int32Array(cells.length);
  const numbers = new Float64Array(cells.length);
  const others: CellValue[] = [];
  const beside: [number, string | undefined, Figure | undefined][] = [];
  for (const [i, { row, column, value, note, figure }] of cells.entries()) {
    spots[i] = spotOf(row, column);
    if (typeof value === "number") numbers[i] = value;
    else {
      numbers[i] = Number.NaN;
      others.push(value);
    }
    if (note !== undefined || figure !== undefined) beside.push([i, note, figure]);
  }
  return { sheet, spots, numbers, others, beside };
}

/** Cells by sheet. */
export function spotsOf(
  cells: readonly { readonly sheet: number; readonly row: number; readonly col: number }[],
): Spots[] {
  const bySheet = new Map<number, number[]>();
  for (const { sheet, row, col } of cells) {
    const spots = bySheet.get(sheet);
    if (spots) spots.push(spotOf(row, col));
    else bySheet.set(sheet, [spotOf(row, col)]);
  }
  return [...bySheet].map(([sheet, spots]) => ({ sheet, spots: Int32Array.from(spots) }));
}

/** Buffers that a message hands over instead of copying them. */
export function buffersOf(message: Report | Reply): ArrayBufferLike[] {
  if ("answers" in message) return [];
  const { packets, reach } = message;
  const own = packets.flatMap(({ spots, numbers }) => [spots.buffer, numbers.buffer]);
  return [...own, ...(reach ?? []).map(({ spots }) => spots.buffer)];
}
