/**
 * Limits of size of Unified threads, inches.
 *
 * The pitch is taken to 8 decimals and Td2 to 6; the diameter, the allowance and every tolerance are rounded to 4 before
 * they are added, which gives every printed limit but those listed. The nut's minor diameter has 3 decimals from No. 6
 * up (the maximum of class 3B has 4). Source: ASME B1.1, tolerance formulas and tables of limits.
 */
import type { Fitted } from "./series.ts";
import { round } from "./text.ts";
import type { Limits } from "./thread.ts";

/** Pitch-diameter tolerance as a share of that of class 2A. */
const share: Readonly<Record<string, number>> = {
  "1A": 1.5,
  "2A": 1,
  "3A": 0.75,
  "1B": 1.95,
  "2B": 1.3,
  "3B": 0.975,
};

/**
 * Td2 of class 2A, inches, to six decimals.
 *
 * @param D basic major diameter, in
 * @param P pitch, in
 * @param LE length of engagement, in: D for UNC, UNF, 4-, 6- and 8-UN, else 9 P
 */
export function unifiedTolerance(D: number, P: number, LE: number): number {
  return round(0.0015 * Math.cbrt(D) + 0.0015 * Math.sqrt(LE) + 0.015 * Math.cbrt(P) ** 2, 6);
}

/** Printed limits that no rounding of the formulas gives: "size-threads class". */
const printedMinorMax: Readonly<Record<string, number>> = { "2 1/2-16 2A": 2.4238, "5/8-11 3A": 0.5168 };

export interface UnifiedRules {
  /** Length of engagement as a function of diameter and pitch. */
  readonly engagement: (D: number, P: number) => number;
  /** From the largest major to the largest minor diameter of the screw, and from basic major to minor of the nut, in P. */
  readonly screwDrop: number;
  readonly nutDrop: number;
  /** Least root radius in P, where the standard bounds the minor diameter from below by it. */
  readonly leastRoot?: number;
  readonly nutTolerance: (fit: string, D: number, P: number) => number;
}

/** Limits by the rules of a Unified series. */
export function unifiedLimits(rules: UnifiedRules) {
  return ({ name, major, pitch, pitchDia, member, fit }: Fitted): Limits => {
    const four = (value: number) => round(value, 4);
    const P = round(pitch, 8);
    const D = four(major);
    const d2 = four(D - (major - pitchDia));
    const T2A = unifiedTolerance(major, P, rules.engagement(major, P));
    const T = four(share[fit]! * T2A);
    if (member === "internal") {
      const decimals = major < 0.138 ? 4 : 3;
      const D1 = four(D - rules.nutDrop * P);
      const minorMax = D1 + four(rules.nutTolerance(fit, major, P));
      return {
        major: { min: D },
        pitch: { min: d2, max: four(d2 + T) },
        minor: { min: round(D1, decimals), max: round(minorMax, fit === "3B" ? 4 : decimals) },
      };
    }
    const allowance = fit === "3A" ? 0 : four(0.3 * T2A);
    const Td = four((fit === "1A" ? 0.09 : 0.06) * Math.cbrt(P) ** 2);
    const pitchMax = d2 - allowance;
    const flatRoot = rules.screwDrop < 1.1;
    const minorMax = printedMinorMax[`${name}-${Math.round(1 / P)} ${fit}`];
    return {
      major: { max: four(D - allowance), min: four(D - allowance - Td) },
      pitch: { max: four(pitchMax), min: four(pitchMax - T) },
      minor: {
        max: (flatRoot ? undefined : minorMax) ?? four(D - allowance - rules.screwDrop * P),
        // An arc of that radius between the flanks of the smallest pitch diameter: H/2 - r below its pitch line.
        ...(rules.leastRoot !== undefined && {
          min: four(pitchMax - T - (Math.sqrt(3) / 2 - 2 * rules.leastRoot) * P),
        }),
      },
    };
  };
}

/** Tolerance of the minor diameter of a Unified nut, inches. Source: ASME B1.1. */
export function nutTolerance(fit: string, D: number, P: number): number {
  const long = 0.05 * Math.cbrt(P) ** 2 + (0.03 * P) / D - 0.002;
  if (fit === "3B")
    return Math.max(Math.min(long, 0.394 * P), P < 1 / 12.5 ? 0.23 * P - 1.5 * P * P : 0.12 * P);
  const normal = P <= 0.25 ? 0.25 * P - 0.4 * P * P : 0.15 * P;
  return D >= 0.25 ? normal : Math.max(Math.min(long, 0.394 * P), normal);
}
