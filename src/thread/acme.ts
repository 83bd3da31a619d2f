/**
 * Acme and Stub Acme threads, 29 degrees, inches.
 *
 * The screw is cut deeper than the basic height by half a clearance of 0.020 in (10 threads per inch and coarser) or
 * 0.010 in; the nut's major diameter is larger by the same clearance. Source: ASME B1.5 and B1.8; the coefficients of
 * allowance and tolerance are from memory and give the limits that two tables in print have.
 */
import { type Form, type OfPitch, tan, times } from "./form.ts";
import { byThreads, inchSizes } from "./grammar.ts";
import { type Fitted, namedClasses, type Series } from "./series.ts";
import { round } from "./text.ts";
import type { Limits } from "./thread.ts";

/** Clearance between major, and between minor diameters of screw and nut. */
const clearance: OfPitch = (P) => (P > 1 / 10.5 ? 0.02 : 0.01);

/** @param height basic height in pitches: 1/2 or 0.3 */
function acmeForm(name: string, height: number): Form {
  const depth: OfPitch = (P) => height * P + clearance(P) / 2;
  const crest = 0.5 - height * tan(14.5);
  return {
    name,
    loadFlank: 14.5,
    clearanceFlank: 14.5,
    addendum: times(height / 2),
    dedendum: times(height / 2),
    depth: { external: depth, internal: depth },
    crestFlat: times(crest),
    rootFlat: (P) => crest * P - clearance(P) * tan(14.5),
  };
}

/** Allowance per root of D, and tolerance per root of P and of D, of the pitch diameter. */
const classFigures: Readonly<Record<string, readonly [allowance: number, ofP: number, ofD: number]>> = {
  "2G": [0.008, 0.03, 0.006],
  "3G": [0.006, 0.014, 0.0028],
  "4G": [0.004, 0.01, 0.002],
};

/** Allowance on the pitch diameter of the screw, inches, unrounded. */
export function acmeAllowance(fit: string, D: number): number {
  return classFigures[fit]![0] * Math.sqrt(D);
}

/** Tolerance of the pitch diameter, inches, unrounded. */
export function acmeTolerance(fit: string, D: number, P: number): number {
  const [, ofP, ofD] = classFigures[fit]!;
  return ofP * Math.sqrt(P) + ofD * Math.sqrt(D);
}

function acmeLimits({ major: D, pitch: P, pitchDia, minor, member, fit }: Fitted): Limits {
  const four = (value: number) => round(value, 4);
  const tolerance = acmeTolerance(fit, D, P);
  const T = four(tolerance);
  const crestTolerance = four(Math.max(0.05 * P, 0.005));
  if (member === "internal") {
    const majorMin = D + clearance(P);
    return {
      major: { min: four(majorMin), max: four(majorMin + clearance(P)) },
      pitch: { min: four(pitchDia), max: four(pitchDia + T) },
      minor: { min: four(minor.internal), max: four(minor.internal + crestTolerance) },
    };
  }
  const pitchMax = pitchDia - four(acmeAllowance(fit, D));
  return {
    major: { max: four(D), min: four(D - crestTolerance) },
    pitch: { max: four(pitchMax), min: four(pitchMax - T) },
    minor: { max: four(minor.external), min: four(four(minor.external) - four(1.5 * tolerance)) },
  };
}

const sizes =
  inchSizes(`1/4 16|5/16 14|3/8 12|7/16 12|1/2 10|5/8 8|3/4 6|7/8 6|1 5|1-1/8 5|1-1/4 5|1-3/8 4|1-1/2 4|1-3/4 4
2 4|2-1/4 3|2-1/2 3|2-3/4 3|3 2|3-1/2 2|4 2|4-1/2 2|5 2`);

const common = {
  unit: "in",
  perInch: true,
  sizes,
  read: byThreads,
  limits: acmeLimits,
} as const;

function classes(names: readonly string[]) {
  const named = namedClasses(names, names, { external: "2G", internal: "2G" }, (fit) =>
    fit.member === "internal" ? `-${fit.name} nut` : `-${fit.name}`,
  );
  return { ...named, mate: (name: string) => name };
}

export const acme: Series = {
  ...common,
  name: "Acme",
  words: ["acme"],
  standard: "ASME B1.5",
  form: acmeForm("Acme", 0.5),
  list: (size, tpi) => `${size.name}-${tpi} Acme`,
  classes: classes(["2G", "3G", "4G"]),
  loosest: "2G",
};

export const stubAcme: Series = {
  ...common,
  name: "Stub Acme",
  words: ["stubacme"],
  standard: "ASME B1.8",
  form: acmeForm("Stub Acme", 0.3),
  list: (size, tpi) => `${size.name}-${tpi} Stub Acme`,
  classes: classes(["2G"]),
  loosest: "2G",
};
