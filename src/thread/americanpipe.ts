/**
 * American pipe threads that seal, 60 degrees, inches: taper NPT, and parallel NPSC in couplings.
 *
 * E0 = D - (0.05 D + 1.1) P at the small end, E1 = E0 + L1/16 at the hand-tight plane, D the outside diameter of the pipe.
 * The diameters of NPT are those at the hand-tight plane: E1 with a height of 0.8 P about it. NPSC has E1 all along; a
 * coupling may be a turn and a half of the taper gauge wide or narrow.
 *
 * Source: ASME B1.20.1, tables 2 and 4; limits of NPT are lengths of engagement.
 */
import { type Form, tan, times } from "./form.ts";
import { type Gauge, pipeTaper } from "./gauge.ts";
import { byNominal } from "./pipe.ts";
import { type Fitted, noClasses, type Series, type Size } from "./series.ts";
import { fractionText, fractionValue, round } from "./text.ts";
import type { Limits } from "./thread.ts";

// Nominal size, threads per inch, outside diameter of the pipe, hand-tight engagement L1.
const table = `1/16 27 .3125 .16|1/8 27 .405 .1615|1/4 18 .54 .2278|3/8 18 .675 .24|1/2 14 .84 .32|3/4 14 1.05 .339|1 11.5 1.315 .4
1-1/4 11.5 1.66 .42|1-1/2 11.5 1.9 .42|2 11.5 2.375 .436|2-1/2 8 2.875 .682|3 8 3.5 .766|3-1/2 8 4 .821|4 8 4.5 .844
5 8 5.563 .937|6 8 6.625 .958|8 8 8.625 1.063|10 8 10.75 1.21|12 8 12.75 1.36`;

/** Every nominal size with its pipe, and E1, on which the straight threads of the family rest as well. */
export const pipeMiddles = table.split(/[|\n]/).map((row) => {
  const [name = "", ...figures] = row.split(" ");
  const [tpi = 0, outside = 0, handTight = 0] = figures.map(Number);
  const P = 1 / tpi;
  const small = outside - (0.05 * outside + 1.1) * P;
  const pitchDia = small + handTight * pipeTaper;
  return { name: fractionText(fractionValue(name)), tpi, outside, handTight, small, pitchDia };
});

function gauge(name: string, _: number, P: number): Gauge {
  const { outside, handTight, small } = pipeMiddles.find((row) => row.name === name)!;
  return {
    length: handTight,
    // One turn large or small of the gauge.
    lengthTolerance: P,
    planeTolerance: P,
    useful: (0.8 * outside + 6.8) * P,
    vanish: 3.47 * P,
    smallEnd: small,
    outside,
  };
}

/** Sizes whose major diameter stands an addendum outside E1. */
export function sizesOf(form: Form, largest: number): readonly Size[] {
  return pipeMiddles
    .filter((row) => fractionValue(row.name) <= largest)
    .map(({ name, tpi, pitchDia }) => ({
      name,
      major: pitchDia + 2 * form.addendum(1 / tpi),
      pitches: [tpi],
    }));
}

const flat = times(0.5 - 0.8 * tan(30));
const pipeForm: Form = {
  name: "American pipe",
  loadFlank: 30,
  clearanceFlank: 30,
  addendum: times(0.4),
  dedendum: times(0.4),
  depth: { external: times(0.8), internal: times(0.8) },
  rootFlat: flat,
  crestFlat: flat,
};

const common = {
  standard: "ASME B1.20.1",
  unit: "in",
  perInch: true,
  read: byNominal,
  classes: noClasses,
} as const;

export const npt: Series = {
  ...common,
  name: "NPT",
  words: ["npt"],
  form: pipeForm,
  sizes: sizesOf(pipeForm, 12),
  list: (size, tpi) => `${size.name}-${tpi} NPT`,
  taper: pipeTaper,
  gauge,
  noLimits: "ASME B1.20.1 gauges a taper thread along its axis, one turn either way of the hand-tight plane",
};

/** A turn and a half of a taper of 1 in 16. */
const couplingTurns = 1.5 * pipeTaper;

function couplingLimits({ pitch: P, pitchDia }: Fitted): Limits {
  const pitchMin = round(pitchDia - couplingTurns * P, 4);
  return {
    major: {},
    pitch: { min: pitchMin, max: round(pitchDia + couplingTurns * P, 4) },
    minor: { min: round(pitchMin - 0.8 * P, 3) },
  };
}

export const npsc: Series = {
  ...common,
  name: "NPSC",
  words: ["npsc", "nps"],
  form: pipeForm,
  sizes: sizesOf(pipeForm, 4),
  list: (size, tpi) => `${size.name}-${tpi} NPSC`,
  member: "internal",
  limits: couplingLimits,
};
