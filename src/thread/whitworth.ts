/**
 * Whitworth form threads in inches: BSW, BSF and specials of any pitch.
 *
 * The standard rounds the depth of thread to four decimals before it takes it from the diameter, and prints tolerances
 * to four decimals. Source: BS 84 (form, sizes); its tolerance formulas are from memory and agree with every printed
 * value checked.
 */
import { whitworthForm } from "./form.ts";
import { byTable, byThreads, inchSizes, readInchSize } from "./grammar.ts";
import { type Basic, type Fitted, namedClasses, type Series } from "./series.ts";
import { round } from "./text.ts";
import type { Limits } from "./thread.ts";

const coarse = `1/16 60|3/32 48|1/8 40|5/32 32|3/16 24|7/32 24|1/4 20|5/16 18|3/8 16|7/16 14|1/2 12|9/16 12|5/8 11|11/16 11
3/4 10|13/16 10|7/8 9|15/16 9|1 8|1-1/8 7|1-1/4 7|1-3/8 6|1-1/2 6|1-5/8 5|1-3/4 5|1-7/8 4.5|2 4.5|2-1/8 4.5|2-1/4 4|2-3/8 4
2-1/2 4|2-5/8 4|2-3/4 3.5|2-7/8 3.5|3 3.5|3-1/4 3.25|3-1/2 3.25|3-3/4 3|4 3|4-1/2 2.875|5 2.75|5-1/2 2.625|6 2.5`;

const fine = `3/16 32|7/32 28|1/4 26|9/32 26|5/16 22|3/8 20|7/16 18|1/2 16|9/16 16|5/8 14|11/16 14|3/4 12|13/16 12|7/8 11|1 10
1-1/8 9|1-1/4 9|1-3/8 8|1-1/2 8|1-5/8 8|1-3/4 7|2 7|2-1/4 6|2-1/2 6|2-3/4 6|3 5|3-1/4 5|3-1/2 4.5|3-3/4 4.5|4 4.5|4-1/4 4`;

/** Basic sizes of BS 84, inches: the depth rounded to four decimals, then subtracted. */
export function whitworthBasic(major: number, P: number): Basic {
  const depth = round(whitworthForm.depth.external(P), 4);
  const minor = major - 2 * depth;
  return { pitchDia: major - depth, minor: { external: minor, internal: minor } };
}

/** T of BS 84 annex B for a length of engagement of one diameter, inches, unrounded. */
export function whitworthTolerance(D: number, P: number): number {
  return 0.002 * Math.cbrt(D) + 0.003 * Math.sqrt(D) + 0.005 * Math.sqrt(P);
}

/** What the tolerances of BS 84 are made of; inches, P the pitch. */
export const whitworthRules = {
  /** Share of T on the effective diameter. */
  share: { bolt: { close: 2 / 3, medium: 1, free: 1.5 }, nut: { medium: 1, normal: 1.5 } },
  /** Times the root of P, more on the major and on the minor diameter of the bolt than on its effective diameter. */
  bolt: { major: 0.01, minor: { close: 0.013, medium: 0.02, free: 0.02 } },
  /** More than 0.2 P on the minor diameter of the nut. */
  nutMinor: (P: number) => (1 / P > 25.9 ? 0.004 : 1 / P > 21.9 ? 0.005 : 0.007),
} as const;

type BoltFit = keyof typeof whitworthRules.share.bolt;
type NutFit = keyof typeof whitworthRules.share.nut;

/** Limits of bolts (close, medium, free) and nuts (medium, normal), inches to four decimals. */
export function whitworthLimits({ major, pitch: P, pitchDia, minor, member, fit }: Fitted): Limits {
  const T = whitworthTolerance(major, P);
  const four = (value: number) => round(value, 4);
  if (member === "internal") {
    const own = four(whitworthRules.share.nut[fit as NutFit] * T);
    return {
      major: { min: four(major) },
      pitch: { min: four(pitchDia), max: four(pitchDia + own) },
      minor: {
        min: four(minor.internal),
        max: four(minor.internal + four(0.2 * P + whitworthRules.nutMinor(P))),
      },
    };
  }
  // Medium and free bolts up to 3/4 in have an allowance; larger ones and the close class have none.
  const allowance = fit === "close" || major > 0.75 ? 0 : four(0.3 * T);
  const share = whitworthRules.share.bolt[fit as BoltFit] * T;
  const root = Math.sqrt(P);
  const under = (value: number, more: number) => ({
    max: four(value - allowance),
    min: four(value - allowance - four(share + more * root)),
  });
  return {
    major: under(major, whitworthRules.bolt.major),
    pitch: under(pitchDia, 0),
    minor: under(minor.external, whitworthRules.bolt.minor[fit as BoltFit]),
  };
}

const classes = namedClasses(
  ["close", "medium", "free"],
  ["medium", "normal"],
  { external: "medium", internal: "medium" },
  (fit) => ` ${fit.name}${fit.member === "internal" ? " nut" : ""}`,
);

const whitworth = {
  standard: "BS 84",
  unit: "in",
  form: whitworthForm,
  perInch: true,
  classes,
  loosest: "free",
  basic: whitworthBasic,
  limits: whitworthLimits,
} as const;

export const bsw: Series = {
  ...whitworth,
  name: "BSW",
  words: ["bsw", "whitworth", "bsww"],
  sizes: inchSizes(coarse),
  read: byTable,
  list: (size) => `${size.name} BSW`,
};

export const bsf: Series = {
  ...whitworth,
  name: "BSF",
  words: ["bsf"],
  sizes: inchSizes(fine),
  read: byTable,
  list: (size) => `${size.name} BSF`,
};

/** Whitworth threads of any diameter and pitch; a size alone is the BSW one. */
export const whitSpecial: Series = {
  ...whitworth,
  name: "Whit",
  words: ["whit", "whits"],
  sizes: [],
  read: (parts, series) =>
    readInchSize(parts, series).tpi === undefined ? byTable(parts, bsw) : byThreads(parts, series),
  list: (size, tpi) => `${size.name}-${tpi} Whit`,
};
