/**
 * A series of threads: how its designations are written, which sizes it has, its form, classes and limits. A new series
 * is a new value of this type; nothing that reads or computes asks which series it has before it.
 */
import type { Form } from "./form.ts";
import type { Gauge } from "./gauge.ts";
import type { LengthUnit, Limits, Member } from "./thread.ts";

export interface Size {
  /** As a designation names it: "10", "1/4", "No. 6" is "6". */
  readonly name: string;
  readonly major: number;
  /** Pitches, or threads per inch where the series counts those; the first is the one meant when none is written. */
  readonly pitches: readonly number[];
}

/** A designation taken apart: the words that every series shares are out, the rest stands before or after the name. */
export interface Parts {
  readonly text: string;
  readonly before: string;
  readonly after: string;
  readonly nut: boolean;
  /** From "2 starts", when that is written. */
  readonly starts: number | undefined;
}

/** What a designation asks for, in the unit of its series. */
export interface Asked {
  readonly series: Series;
  /** Size as the designation names it. */
  readonly name: string;
  readonly major: number;
  readonly pitch: number;
  readonly starts: number;
  /** Class text still to be read. */
  readonly rest: string;
  /** Canonical text without class and hand. */
  readonly written: string;
  /** Form of this one thread, where the series has no form of its own. */
  readonly form?: Form;
}

/** Size, pitch and class for which limits are wanted. */
export interface Fitted {
  readonly name: string;
  readonly major: number;
  readonly pitch: number;
  readonly pitchDia: number;
  readonly minor: Readonly<Record<Member, number>>;
  readonly member: Member;
  readonly fit: string;
}

export interface Fit {
  readonly member: Member;
  readonly name: string;
}

export interface Classes {
  /** @returns the class that `text` names, undefined when it names none of this series */
  readonly read: (text: string, nut: boolean) => Fit | undefined;
  /** Class that is meant when none is written. */
  readonly usual: (member: Member, major: number) => string;
  /** Class of the other member that goes with this one, where the standard pairs them. */
  readonly mate?: (name: string) => string;
  /** Text put behind the designation. */
  readonly write: (fit: Fit) => string;
  /** For error messages. */
  readonly accepted: string;
  /** Classes that the standard has besides, and why their limits are not at hand. */
  readonly notHeld?: { readonly names: RegExp; readonly why: string };
}

export interface Basic {
  readonly pitchDia: number;
  readonly minor: Readonly<Record<Member, number>>;
}

export interface Series {
  readonly name: string;
  /** Words that announce the series, in small letters without spaces or hyphens. */
  readonly words: readonly string[];
  readonly standard: string;
  /** What stands in front of the diameter, when it is not the bare name: "Tr ". */
  readonly prefix?: string;
  /** What stands between lead and pitch of several starts, when it is not "-P". */
  readonly leadMark?: string;
  /** Internal for series that only nuts have. */
  readonly member?: Member;
  readonly unit: LengthUnit;
  readonly form: Form;
  readonly sizes: readonly Size[];
  /** True for inch series with number sizes, which the threads per inch tell apart from inches. */
  readonly numberSizes?: true;
  /** True when `Size.pitches` counts threads per inch. */
  readonly perInch: boolean;
  /** Throws Unreadable when the parts are not a designation of the series. */
  readonly read: (parts: Parts, series: Series) => Asked;
  /** Designation of a tabled size, as written in lists. */
  readonly list: (size: Size, pitch: number) => string;
  readonly classes: Classes;
  /** Loosest class of the screw, whose major tolerance bounds what a measured screw may be under. */
  readonly loosest?: string;
  readonly taper?: number;
  /** Basic sizes where the standard rounds; else the form decides. */
  readonly basic?: (major: number, pitch: number) => Basic;
  readonly limits?: (fitted: Fitted) => Limits;
  /** Why there are no limits, for messages: what the standard does instead, or what is not at hand. */
  readonly noLimits?: string;
  /** Lengths by which a taper thread is gauged. */
  readonly gauge?: (name: string, major: number, pitch: number, basic: Basic) => Gauge;
  /** Doubt about every figure of the series. */
  readonly note?: string;
  /** Doubt about class limits only: of the whole series, or of one size and class. */
  readonly limitsNote?:
    | string
    | ((asked: {
        readonly name: string;
        readonly pitch: number;
        readonly fits: Readonly<Record<Member, string>>;
        readonly member: Member;
      }) => string | undefined);
}

/** Basic sizes as the form gives them, unrounded. */
export function basicByForm(form: Form, major: number, pitch: number): Basic {
  const pitchDia = major - 2 * form.addendum(pitch);
  return {
    pitchDia,
    minor: {
      external: major - 2 * form.depth.external(pitch),
      internal: pitchDia - 2 * form.dedendum(pitch),
    },
  };
}

/** Classes that are plain words or letters, matched without regard to case. */
export function namedClasses(
  external: readonly string[],
  internal: readonly string[],
  usual: Readonly<Record<Member, string>>,
  written: (fit: Fit) => string,
): Classes {
  const find = (names: readonly string[], text: string) =>
    names.find((name) => name.toLowerCase() === text.toLowerCase());
  return {
    read(text, nut) {
      const outside = nut ? undefined : find(external, text);
      if (outside !== undefined) return { member: "external", name: outside };
      const inside = find(internal, text);
      return inside === undefined ? undefined : { member: "internal", name: inside };
    },
    usual: (member) => usual[member],
    write: written,
    accepted:
      external.length + internal.length === 0
        ? "none"
        : `screw ${external.join(", ") || "none"}; nut ${internal.join(", ") || "none"}`,
  };
}

/** A series without classes of fit; the word nut names its nuts. */
export const noClasses: Classes = namedClasses([], [], { external: "", internal: "" }, (fit) =>
  fit.member === "internal" ? " nut" : "",
);
