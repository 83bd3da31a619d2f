/**
 * Acme and Stub Acme threads, 29 degrees, inches.
 *
 * The screw is cut deeper than the basic height by half a clearance of 0.020 in (10 threads per inch and coarser) or
 * 0.010 in; the nut's major diameter is larger by the same clearance. Centralizing threads, whose class says C, run on
 * their crests instead: little clearance at the major diameter, and a nut of 0.45 P. Source: ASME B1.5 and B1.8; the
 * coefficients of allowance and tolerance are from memory and give the limits that two tables in print have.
 */
import { type Form, type OfPitch, tan, times } from "./form.ts";
import { byThreads, inchSizes } from "./grammar.ts";
import { type Asked, type Fitted, namedClasses, type Parts, type Series } from "./series.ts";
import { round } from "./text.ts";
import type { Limits, Member } from "./thread.ts";

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

/** More on the major diameter of the nut than the screw's basic one, times the root of D. */
const centralAllowance = 0.001;

/** Tolerance of the major diameter times the root of D. */
const centralTolerances: Readonly<Record<string, Readonly<Record<Member, number>>>> = {
  "2C": { external: 0.0035, internal: 0.0035 },
  "3C": { external: 0.0015, internal: 0.0035 },
  "4C": { external: 0.001, internal: 0.002 },
};

/** Pitch diameters are those of the general purpose class of the same number. */
function centralLimits(fitted: Fitted): Limits {
  const { major: D, pitch: P, minor, member, fit } = fitted;
  const general = acmeLimits({ ...fitted, fit: fit.replace("C", "G") });
  // The table lets a half fall: 0.00175 is 0.0017.
  const four = (value: number) => round(value - 1e-9, 4);
  const tolerance = four(centralTolerances[fit]![member] * Math.sqrt(D));
  if (member === "external") {
    return { ...general, major: { max: round(D, 4), min: round(D - tolerance, 4) } };
  }
  const majorMin = D + four(centralAllowance * Math.sqrt(D));
  const minorMin = round(minor.internal, 4);
  return {
    pitch: general.pitch,
    major: { min: round(majorMin, 4), max: round(majorMin + tolerance, 4) },
    minor: { min: minorMin, max: round(minorMin + four(Math.max(0.05 * P, 0.005)), 4) },
  };
}

const general = acmeForm("Acme", 0.5);

/** Source: ASME B1.5-1988, tables 8a, 10 and 12, as in a machinists' handbook, 27th ed. p. 1837 to 1842. */
const centralAcme: Series = {
  ...common,
  name: "Acme",
  words: [],
  standard: "ASME B1.5",
  form: general,
  basic: (D, P) => ({
    pitchDia: D - P / 2,
    minor: { external: D - 2 * general.depth.external(P), internal: D - 0.9 * P },
  }),
  limits: centralLimits,
  list: (size, tpi) => `${size.name}-${tpi} Acme`,
  classes: {
    ...classes(["2C", "3C", "4C"]),
    notHeld: {
      names: /^[56]C$/i,
      why: "5C and 6C are of older editions of ASME B1.5, not for new work, and their limits are not at hand",
    },
  },
};

/** Only the class tells a centralizing thread. */
function readAcme(parts: Parts, series: Series): Asked {
  const asked = byThreads(parts, series);
  if (!/^[\s,(-]*(?:class\s*)?\dC/i.test(asked.rest)) return asked;
  const nutDepth: OfPitch = (P) => (0.9 * P + centralAllowance * Math.sqrt(asked.major)) / 2;
  const form = {
    ...general,
    name: "centralizing Acme",
    depth: { external: general.depth.external, internal: nutDepth },
  };
  return { ...asked, series: centralAcme, form };
}

export const acme: Series = {
  ...common,
  name: "Acme",
  words: ["acme"],
  standard: "ASME B1.5",
  form: general,
  read: readAcme,
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
