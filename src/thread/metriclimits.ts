/**
 * Limits of size of ISO metric threads.
 *
 * Tolerances in micrometres from mm. Grade 6 comes from the formulas of the standard, rounded to the R40 series of
 * preferred numbers; the other grades stand whole R40 steps away from it. A few printed grade-6 values are not the
 * nearest preferred number: those are listed, and the print wins. Deviations are the printed table.
 *
 * Source: ISO 965-1 (clause 13 and tables), limits as in ISO 965-2; the table of deviations is from memory and agrees
 * with every printed value checked.
 */
import { NothingFound } from "./failures.ts";
import type { Fitted } from "./series.ts";
import { round } from "./text.ts";
import type { Limits } from "./thread.ts";

const r40 = [
  1, 1.06, 1.12, 1.18, 1.25, 1.32, 1.4, 1.5, 1.6, 1.7, 1.8, 1.9, 2, 2.12, 2.24, 2.36, 2.5, 2.65, 2.8, 3, 3.15,
  3.35, 3.55, 3.75, 4, 4.25, 4.5, 4.75, 5, 5.3, 5.6, 6, 6.3, 6.7, 7.1, 7.5, 8, 8.5, 9, 9.5,
] as const;

/** Place of the nearest preferred number, counted in steps from 1. */
function r40Step(value: number): number {
  const decade = Math.floor(Math.log10(value));
  const mantissa = value / 10 ** decade;
  let best = 0;
  for (let i = 1; i <= r40.length; i++) {
    const candidate = i === r40.length ? 10 : r40[i]!;
    const current = best === r40.length ? 10 : r40[best]!;
    if (Math.abs(candidate - mantissa) < Math.abs(current - mantissa)) best = i;
  }
  return decade * 40 + best;
}

/** Preferred number at a step, in whole micrometres as the tables print it: a half goes to the even number. */
function r40Value(step: number): number {
  const decade = Math.floor(step / 40);
  const value = round(r40[step - decade * 40]! * 10 ** decade, 6);
  const floor = Math.floor(value);
  if (value - floor === 0.5) return floor % 2 === 0 ? floor : floor + 1;
  return Math.round(value);
}

const diameterSteps = [0.99, 1.4, 2.8, 5.6, 11.2, 22.4, 45, 90, 180, 355] as const;

/** Index of the diameter step, over its lower and up to its upper bound; -1 outside the standard. */
function diameterStep(d: number): number {
  if (d < diameterSteps[0]) return -1;
  return diameterSteps.findIndex((upper, i) => i > 0 && d <= upper) - 1;
}

/** Printed grade-6 values that are not the nearest preferred number: "pitch/lower end of diameter step". */
const printedPitch6: Readonly<Record<string, number>> = { "0.5/2.8": 75, "5/45": 250, "3/180": 250 };
const printedMinor6: Readonly<Record<string, number>> = { "0.25": 71, "0.5": 140, "1": 236, "2.5": 450 };
const printedMajor6: Readonly<Record<string, number>> = { "4": 475 };

const externalPitchSteps: Readonly<Record<string, number>> = {
  3: -12,
  4: -8,
  5: -4,
  6: 0,
  7: 4,
  8: 8,
  9: 12,
};
const internalPitchSteps: Readonly<Record<string, number>> = { 4: -3, 5: 1, 6: 5, 7: 9, 8: 13 };
const internalMinorSteps: Readonly<Record<string, number>> = { 4: -8, 5: -4, 6: 0, 7: 4, 8: 8 };
const externalMajorSteps: Readonly<Record<string, number>> = { 4: -8, 6: 0, 8: 8 };

/** Td2 of grade 6 as an R40 step. */
function pitchStep6(d: number, P: number): number {
  const i = diameterStep(d);
  if (i < 0)
    throw new NothingFound(`no class limits: ISO 965-1 covers diameters from 0.99 to 355 mm, got ${d}`);
  const lower = diameterSteps[i]!;
  const mean = Math.sqrt(lower * diameterSteps[i + 1]!);
  return r40Step(printedPitch6[`${P}/${lower}`] ?? 90 * P ** 0.4 * mean ** 0.1);
}

/** TD1 of grade 6 as an R40 step. */
function minorStep6(P: number): number {
  const formula = P < 1 ? 433 * P - 190 * P ** 1.22 : 230 * P ** 0.7;
  return r40Step(printedMinor6[String(P)] ?? formula);
}

/** Td of grade 6 as an R40 step. */
function majorStep6(P: number): number {
  return r40Step(printedMajor6[String(P)] ?? 180 * P ** (2 / 3) - 3.15 / Math.sqrt(P));
}

/** Amount of the fundamental deviations e, f, g (and G), micrometres; 0 where the standard has none. */
const printedDeviations: Readonly<Record<string, readonly [e: number, f: number, g: number]>> = {
  "0.2": [0, 0, 17],
  "0.25": [0, 0, 18],
  "0.3": [0, 0, 18],
  "0.35": [0, 34, 19],
  "0.4": [0, 34, 19],
  "0.45": [0, 35, 20],
  "0.5": [50, 36, 20],
  "0.6": [53, 36, 21],
  "0.7": [56, 38, 22],
  "0.75": [56, 38, 22],
  "0.8": [60, 38, 24],
  "1": [60, 40, 26],
  "1.25": [63, 42, 28],
  "1.5": [67, 45, 32],
  "1.75": [71, 48, 34],
  "2": [71, 52, 38],
  "2.5": [80, 58, 42],
  "3": [85, 63, 48],
  "3.5": [90, 70, 53],
  "4": [95, 75, 60],
  "4.5": [100, 80, 63],
  "5": [106, 85, 71],
  "5.5": [112, 90, 75],
  "6": [118, 95, 80],
  "8": [140, 118, 100],
};

/**
 * Amounts of the deviations a to d of screws, for thick coatings, micrometres. From memory of ISO 965-1:2013; those of c
 * are the ones that ISO 2903 gives trapezoidal screws of the same pitch.
 */
const coatedDeviations: Readonly<Record<string, readonly [a: number, b: number, c: number, d: number]>> = {
  "1": [290, 200, 130, 85],
  "1.25": [295, 205, 135, 90],
  "1.5": [300, 212, 140, 95],
  "1.75": [310, 220, 145, 100],
  "2": [315, 225, 150, 105],
  "2.5": [325, 235, 160, 110],
  "3": [335, 245, 170, 115],
  "3.5": [345, 255, 180, 125],
  "4": [355, 265, 190, 130],
  "4.5": [365, 280, 200, 135],
  "5": [375, 290, 212, 140],
  "5.5": [385, 300, 224, 150],
  "6": [395, 310, 236, 155],
  "8": [425, 340, 265, 180],
};

/** @returns whether the tables of ISO 965-1 have this pitch, mm */
export function isPreferredPitch(P: number): boolean {
  return String(P) in printedDeviations;
}

/**
 * Amount of the fundamental deviation, micrometres, by the printed table, else by the formula of the standard.
 *
 * @param position letter a to h, in either case; a to d have no formula
 * @throws NothingFound where the standard has none
 */
export function deviation(position: string, P: number): number {
  const letter = position.toLowerCase();
  if (letter === "h") return 0;
  const coated = "abcd".indexOf(letter);
  if (coated >= 0) {
    const tabled = coatedDeviations[String(P)]?.[coated];
    if (tabled !== undefined) return tabled;
    throw new NothingFound(`no class limits: position ${letter} is not used at pitch ${P} mm`);
  }
  const column = "efg".indexOf(letter);
  const amount = printedDeviations[String(P)]?.[column] ?? r40Value(r40Step([50, 30, 15][column]! + 11 * P));
  if (amount === 0)
    throw new NothingFound(`no class limits: position ${letter} is not used at pitch ${P} mm`);
  return amount;
}

/** Tolerances, micrometres, as ISO 965-1 names them. */
export const tolerance = {
  /** Td2: pitch diameter of the screw, grades 3 to 9. */
  Td2: (grade: string, d: number, P: number) =>
    graded(grade, externalPitchSteps, "pitch diameter", pitchStep6(d, P)),
  /** TD2: pitch diameter of the nut, grades 4 to 8. */
  TD2: (grade: string, d: number, P: number) =>
    graded(grade, internalPitchSteps, "pitch diameter", pitchStep6(d, P)),
  /** TD1: minor diameter of the nut, grades 4 to 8. */
  TD1: (grade: string, P: number) => graded(grade, internalMinorSteps, "minor diameter", minorStep6(P)),
  /** Td: major diameter of the screw, grades 4, 6, 8. */
  Td: (grade: string, P: number) => graded(grade, externalMajorSteps, "major diameter", majorStep6(P)),
} as const;

function graded(
  grade: string,
  steps: Readonly<Record<string, number>>,
  diameter: string,
  step6: number,
): number {
  const steps6 = steps[grade];
  if (steps6 === undefined) {
    throw new NothingFound(
      `no class limits: ${diameter} grades are ${Object.keys(steps).join(", ")}, got ${grade}`,
    );
  }
  return r40Value(step6 + steps6);
}

/** How much deeper the smallest permitted root radius, 0.125 P, reaches than H/6 of the design form, on diameter. */
const rootSpread = 2 * (Math.sqrt(3) / 12 - 0.125);

/** A class such as 6g, 5g6g, 6H or 4H5H: the pitch diameter first, then the crest. */
export const metricClass = /^([3-9][a-hE-H])\s*([3-9][a-hE-H])?$/;

/** Doubt about the limits of a class by its position. */
export function positionNote(fit: string): string | undefined {
  return /[a-d]/.test(fit)
    ? "limits of positions a to d are from memory of ISO 965-1: check them before relying on them"
    : undefined;
}

/**
 * Limits of size, mm, in whole micrometres as the tables print them. The minor diameter of the screw runs from the
 * design form at the upper limit to the smallest permitted root radius, 0.125 P, at the lower.
 *
 * @param spread how much deeper the smallest permitted root radius reaches than the design form, in P, on diameter
 * @throws NothingFound where the standard has no tolerance
 */
export function metricLimits(
  { major: d, pitch: P, member, fit, ...basic }: Fitted,
  spread: number = rootSpread,
): Limits {
  const [, first = "", second = first] = metricClass.exec(fit) ?? [];
  const [pitchGrade = "", position = ""] = first;
  const [crestGrade = "", crestPosition = ""] = second;
  const um = (value: number) => round(value / 1000, 3);
  const d2 = round(basic.pitchDia, 3);
  const D1 = round(basic.minor.internal, 3);
  if (member === "internal") {
    const pitchMin = d2 + um(deviation(position, P));
    const minorMin = D1 + um(deviation(crestPosition, P));
    return {
      major: { min: round(d + um(deviation(position, P)), 3) },
      pitch: { min: round(pitchMin, 3), max: round(pitchMin + um(tolerance.TD2(pitchGrade, d, P)), 3) },
      minor: { min: round(minorMin, 3), max: round(minorMin + um(tolerance.TD1(crestGrade, P)), 3) },
    };
  }
  const majorMax = d - um(deviation(crestPosition, P));
  const pitchMax = d2 - um(deviation(position, P));
  const pitchTolerance = um(tolerance.Td2(pitchGrade, d, P));
  const minorMax = round(basic.minor.external - um(deviation(position, P)), 3);
  return {
    major: { max: round(majorMax, 3), min: round(majorMax - um(tolerance.Td(crestGrade, P)), 3) },
    pitch: { max: round(pitchMax, 3), min: round(pitchMax - pitchTolerance, 3) },
    minor: { max: minorMax, min: round(minorMax - round(pitchTolerance + spread * P, 3), 3) },
  };
}
