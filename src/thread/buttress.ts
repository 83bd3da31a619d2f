/**
 * Buttress inch threads, load flank 7, clearance flank 45 degrees: pulling (Butt) and pushing (Push-Butt) alike in form.
 *
 * Basic height 0.6 P, the screw deeper down to its rounded root. Source: ASME B1.9, profile from memory, checked by its
 * geometry; tolerances and allowances as in its tables 4 and 5.
 */
import { type Form, tan, times } from "./form.ts";
import { byThreads } from "./grammar.ts";
import { type Fitted, namedClasses, type Series } from "./series.ts";
import { round } from "./text.ts";
import type { Limits } from "./thread.ts";

const depth = times(0.66271);

const form: Form = {
  name: "buttress 7/45",
  loadFlank: 7,
  clearanceFlank: 45,
  addendum: times(0.3),
  dedendum: times(0.3),
  depth: { external: depth, internal: depth },
  rootRadius: times(0.07141),
  crestFlat: times(0.5 - 0.3 * (tan(7) + 1)),
};

/** The tables reckon every diameter of a step, over its lower and up to its upper bound, with the middle of the step. */
const steps = [0.5, 0.7, 1, 1.5, 2.5, 4, 6, 10, 16, 24] as const;

function middleOfStep(D: number): number {
  const i = steps.findIndex((upper) => D <= upper);
  // A step's lower bound belongs to the step below; the first step has none below it.
  const upper = D === steps[0] ? 1 : i;
  return upper < 1 ? D : (steps[upper - 1]! + steps[upper]!) / 2;
}

/** Tolerance of the pitch diameter of class 2, inches, for ten pitches of engagement. */
export function buttressTolerance(D: number, P: number): number {
  return 0.002 * Math.cbrt(D) + 0.00278 * Math.sqrt(10 * P) + 0.00854 * Math.sqrt(P);
}

function limits({ major: D, pitch: P, pitchDia, minor, member, fit }: Fitted): Limits {
  const four = (value: number) => round(value, 4);
  const T = buttressTolerance(middleOfStep(D), P);
  const own = four(fit === "3" ? (2 * T) / 3 : T);
  if (member === "internal") {
    return {
      major: { min: four(D) },
      pitch: { min: four(pitchDia), max: four(pitchDia + own) },
      minor: { min: four(minor.internal), max: four(minor.internal + own) },
    };
  }
  // The allowance on every diameter of the screw is the class 3 tolerance.
  const allowance = four((2 * T) / 3);
  return {
    major: { max: four(D - allowance), min: four(D - allowance - own) },
    pitch: { max: four(pitchDia - allowance), min: four(pitchDia - allowance - own) },
    minor: { max: four(minor.external - allowance) },
  };
}

const common = {
  standard: "ASME B1.9",
  unit: "in",
  form,
  sizes: [],
  perInch: true,
  read: byThreads,
  limits,
  classes: namedClasses(["2", "3"], ["2", "3"], { external: "2", internal: "2" }, (fit) =>
    fit.member === "internal" ? `-${fit.name} nut` : `-${fit.name}`,
  ),
} as const;

export const buttress: Series = {
  ...common,
  name: "Butt",
  words: ["butt", "buttress"],
  list: (size, tpi) => `${size.name}-${tpi} Butt`,
};

export const pushButtress: Series = {
  ...common,
  name: "Push-Butt",
  words: ["pushbutt"],
  list: (size, tpi) => `${size.name}-${tpi} Push-Butt`,
};
