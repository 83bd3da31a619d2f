/**
 * What every thread looks like once its designation is read, whatever its standard.
 *
 * Lengths are in the thread's own unit (`unit`), unrounded unless its standard prints rounded basic sizes; diameters,
 * never radii; angles in degrees from the line square to the axis.
 */
import type { Form } from "./form.ts";
import type { Gauge } from "./gauge.ts";

export type LengthUnit = "mm" | "in";
export type Member = "external" | "internal";

/** Limits of size. A limit that the standard does not state is absent. */
export interface Limits {
  readonly major: { readonly max?: number; readonly min?: number };
  readonly pitch: { readonly max?: number; readonly min?: number };
  readonly minor: { readonly max?: number; readonly min?: number };
}

export interface Thread {
  /** The designation as its standard writes it, with the class if one was given. Reads back to the same thread. */
  readonly designation: string;
  /** Series as the standard names it: "M", "UNC", "BSW", "BA" ... */
  readonly series: string;
  /** The standard that the figures come from. */
  readonly standard: string;
  readonly unit: LengthUnit;
  /** Internal when an internal class or the word `nut` was given. */
  readonly member: Member;
  /** Class of fit of either member: as given, else the usual one of the standard; "" where the standard has none. */
  readonly fits: Readonly<Record<Member, string>>;
  /** Absent where the class was given, or the standard has none. */
  readonly classTaken?: string;
  readonly hand: "right" | "left";
  readonly starts: number;
  readonly pitch: number;
  /** Flank that carries the load, and the other; alike on a symmetric form. */
  readonly loadFlank: number;
  readonly clearanceFlank: number;
  /** Taper on diameter per length; 0 when parallel. */
  readonly taper: number;
  readonly major: number;
  readonly pitchDia: number;
  /** Minor diameter of the design form of the screw, and basic minor diameter of the nut. */
  readonly minor: Readonly<Record<Member, number>>;
  /** Radial depth of the design form of either member. */
  readonly depth: Readonly<Record<Member, number>>;
  /** Root and crest of the design form of the screw; absent where the form has no such thing. */
  readonly rootRadius?: number;
  readonly rootFlat?: number;
  readonly crestFlat?: number;
  readonly crestRadius?: number;
  readonly form: Form;
  /** Lengths by which a taper thread is gauged; absent on parallel threads. */
  readonly gauge?: Gauge;
  /** Limits of its class; of the other member's class when that member is asked for. Throws NothingFound without any. */
  readonly limits: (member?: Member) => Limits;
  /** Why the figures are doubtful: data from memory ... */
  readonly note?: string;
  /** Why the class limits are. */
  readonly limitsNote?: string;
}

/** @param value length in `from` @returns the same length in `to` */
export function convertLength(value: number, from: LengthUnit, to: LengthUnit): number {
  if (from === to) return value;
  return to === "mm" ? value * 25.4 : value / 25.4;
}
