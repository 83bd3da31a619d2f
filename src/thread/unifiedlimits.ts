/**
 * Limits of size of Unified threads, inches.
 *
 * The pitch is taken to 8 decimals, tolerances to 6, limits to 4 (the nut's minor diameter of 1B and 2B to 3 from
 * No. 6 up). Some tables in print were reckoned in an older way and differ by one unit: those cells are listed and the
 * print wins. Source: ASME B1.1, tolerance formulas and tables of limits; B1.1 for the printed exceptions as well.
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

/** Cells of the printed tables that are not what the formulas give. */
interface Printed {
  readonly allowance?: number;
  readonly majorTolerance?: number;
  readonly pitchMin2A?: number;
  readonly minorMax2B?: number;
}

const printed: Readonly<Record<string, Printed>> = {};

export interface UnifiedRules {
  /** Length of engagement as a function of diameter and pitch. */
  readonly engagement: (D: number, P: number) => number;
  /** Radial truncation of the screw's minor diameter at maximum material, as a share of the pitch on diameter. */
  readonly minorDrop: number;
}

/** Limits by the rules of a Unified series. */
export function unifiedLimits(rules: UnifiedRules) {
  return ({ name, major: D, pitch, pitchDia, member, fit }: Fitted): Limits => {
    const P = round(pitch, 8);
    const T2A = unifiedTolerance(D, P, rules.engagement(D, P));
    const T = round(share[fit]! * T2A, 6);
    const known = printed[`${name}-${Math.round(1e6 / pitch) / 1e6}`];
    const d2 = round(pitchDia, 4);
    if (member === "internal") {
      const decimals = fit === "3B" || D < 0.138 ? 4 : 3;
      // The printed minimum has three decimals from No. 6 up, in class 3B with a 0 behind.
      const minorMin = round(D - 1.08253175 * P, D < 0.138 ? 4 : 3);
      const minorMax = known?.minorMax2B !== undefined && fit !== "3B" ? known.minorMax2B : minorMin + minorTolerance(fit, D, P);
      return {
        major: { min: round(D, 4) },
        pitch: { min: d2, max: round(pitchDia + T, 4) },
        minor: { min: minorMin, max: round(minorMax, decimals) },
      };
    }
    const es = fit === "3A" ? 0 : (known?.allowance ?? round(0.3 * T2A, 6));
    const Td = known?.majorTolerance ?? round((fit === "1A" ? 0.09 : 0.06) * Math.cbrt(P) ** 2, 6);
    const dMax = D - es;
    return {
      major: { max: round(dMax, 4), min: round(dMax - Td, 4) },
      pitch: {
        max: round(pitchDia - es, 4),
        min: fit === "2A" && known?.pitchMin2A !== undefined ? known.pitchMin2A : round(pitchDia - es - T, 4),
      },
      minor: { max: round(dMax - rules.minorDrop * P, 4) },
    };
  };
}

/** Tolerance of the nut's minor diameter. */
function minorTolerance(fit: string, D: number, P: number): number {
  const long = 0.05 * Math.cbrt(P) ** 2 + (0.03 * P) / D - 0.002;
  if (fit === "3B") {
    const least = P < 1 / 12.5 ? 0.23 * P - 1.5 * P * P : 0.12 * P;
    return round(Math.max(Math.min(long, 0.394 * P), least), 6);
  }
  const normal = P <= 0.25 ? 0.25 * P - 0.4 * P * P : 0.15 * P;
  if (D >= 0.25) return round(normal, 6);
  return round(Math.max(Math.min(long, 0.394 * P), normal), 6);
}
