/**
 * What a drawing shows: plain numbers and words, checked and reckoned before they come here, so that whoever draws has
 * only places on paper to find. Lengths of one figure are in one unit, angles in degrees from the line square to the axis.
 */
import type { LengthUnit } from "../thread/thread.ts";
import type { NoseShape } from "./chip-area.ts";
import type { Train } from "./gears.ts";
import type { Hand, Member, Scale } from "./setover.ts";

/** Chuck, work and slides from above. */
export interface SetoverFigure {
  readonly kind: "setover";
  readonly setover: number;
  /** Where this lathe's protractor has its zero, and what it reads at the set-over and at the flank. */
  readonly zeroLine: Scale;
  readonly reading: number;
  /** Mark of this lathe's own scale there, where that is another figure than the full reading. */
  readonly mark?: number;
  /** First and last mark of that scale, counted from its zero; absent: it goes all the way round. */
  readonly ends?: { readonly low: number; readonly high: number };
  readonly flank?: number;
  readonly flankReading?: number;
  readonly hand: Hand;
  readonly member: Member;
  /** Which way the handle goes and how the cut is put on. */
  readonly swing: string;
}

/** The end of the scale that this reading is past; undefined while it is on the scale. */
export function endPassed({ ends }: SetoverFigure, reading: number): number | undefined {
  if (!ends) return undefined;
  const size = Math.abs(reading);
  const end = size > ends.high + 1e-9 ? ends.high : size < ends.low - 1e-9 ? ends.low : undefined;
  return end === undefined || reading >= 0 ? end : -end;
}

/** One thread in its axial plane. Diameters and radii in `unit`. */
export interface ThreadShape {
  readonly designation: string;
  readonly unit: LengthUnit;
  readonly member: Member;
  readonly pitch: number;
  readonly lead: number;
  readonly starts: number;
  readonly hand: Hand;
  readonly loadFlank: number;
  readonly clearanceFlank: number;
  readonly major: number;
  readonly pitchDia: number;
  readonly minor: number;
  readonly rootRadius?: number;
  readonly crestRadius?: number;
}

/** Largest and smallest that the class allows; absent where the standard states none. */
export interface LimitPair {
  readonly max?: number;
  readonly min?: number;
}

export interface ThreadFigure {
  readonly kind: "thread";
  readonly shape: ThreadShape;
  /** Class of fit, "" where the standard has none. */
  readonly fit: string;
  readonly limits: Readonly<Record<"major" | "pitch" | "minor", LimitPair>>;
  readonly crestFlat?: number;
  readonly rootFlat?: number;
  /** Taper on diameter per length. */
  readonly taper: number;
}

/** The groove in layers, as the tool cuts it. */
export interface PassesFigure {
  readonly kind: "passes";
  /** Radial depth after each pass, growing. */
  readonly depths: readonly number[];
  readonly setover: number;
  readonly leading: number;
  readonly trailing: number;
  readonly nose: number;
  readonly shape: NoseShape;
  /** Pass that comes next, from 1; one more than there are when all are cut. Absent: all drawn alike. */
  readonly next?: number;
  /** Chip on each flank in the next pass. */
  readonly chip?: { readonly leading: number; readonly trailing: number };
  /** Axial overcut outside the finished form at the surface. */
  readonly overcut: number;
  /** Where the carriage runs while cutting: towards the headstock, or away from it. */
  readonly direction: "in" | "out";
}

/** Wires on a screw, or balls in a nut. */
export interface WiresFigure {
  readonly kind: "wires";
  readonly shape: ThreadShape;
  readonly wire: number;
  /** Over the wires, or between the balls, for this pitch diameter. */
  readonly reading: number;
  readonly at: number;
  /** The pitch diameter that the reading is for is the middle of its class limits, not the basic one. */
  readonly aimed: boolean;
  readonly best: number;
}

export interface TrainFigure {
  readonly kind: "train";
  readonly train: Train;
  /** Turns of the last driven gear to one of the spindle. */
  readonly ratio: number;
  /** Position of a gearbox behind the train, where the train names one. */
  readonly box?: number;
}

export interface MarksFigure {
  readonly kind: "marks";
  readonly usable: readonly number[];
  readonly marks: number;
}

export interface LinesFigure {
  readonly kind: "lines";
  readonly as: "lines" | "columns";
  readonly x: readonly number[];
  readonly series: readonly { readonly name: string; readonly y: readonly number[] }[];
  readonly xTitle: string;
  readonly yTitle: string;
}

export type Figure =
  | SetoverFigure
  | ThreadFigure
  | PassesFigure
  | WiresFigure
  | TrainFigure
  | MarksFigure
  | LinesFigure;
