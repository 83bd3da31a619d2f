/**
 * American straight pipe threads for mechanical joints, 60 degrees, inches: NPSM, free fitting, and NPSL, loose with locknuts.
 *
 * NPSM is truncated like a Unified thread about E1, the pitch diameter of NPT at its hand-tight plane. NPSL is the largest
 * thread that the pipe gives: its pitch diameter stands whole half turns of the taper gauge over E1, and its tolerance is
 * a turn and a half, so every figure of its table follows from those turns.
 *
 * Source: ASME B1.20.1 table 5 as in a machinists' handbook, 27th ed. p. 1865: NPSM to 3/4; the rest of NPSM, and the
 * turns of NPSL, from memory.
 */
import { pipeMiddles, sizesOf } from "./americanpipe.ts";
import { NothingFound } from "./failures.ts";
import { type Form, tan, times, unifiedForm } from "./form.ts";
import { pipeTaper } from "./gauge.ts";
import { byNominal } from "./pipe.ts";
import { type Fitted, namedClasses, noClasses, type Series } from "./series.ts";
import { fractionText, fractionValue, round } from "./text.ts";
import type { Limits } from "./thread.ts";

// Screw: major largest and smallest, pitch largest and smallest; nut: minor smallest and largest, pitch smallest and largest.
const freeFitting = `1/8 .397 .39 .3725 .3689 .358 .364 .3736 .3783|1/4 .526 .517 .4903 .4859 .468 .481 .4916 .4974
3/8 .662 .653 .6256 .6211 .603 .612 .627 .6329|1/2 .823 .813 .7769 .7718 .747 .759 .7784 .7851
3/4 1.034 1.024 .9873 .982 .958 .97 .9889 .9958|1 1.293 1.281 1.2369 1.2311 1.201 1.211 1.2386 1.2462
1-1/4 1.638 1.626 1.5816 1.5756 1.546 1.555 1.5834 1.5912|1-1/2 1.877 1.865 1.8205 1.8144 1.785 1.794 1.8223 1.8302
2 2.351 2.339 2.2944 2.2882 2.259 2.268 2.2963 2.3044|2-1/2 2.841 2.826 2.76 2.7526 2.708 2.727 2.7622 2.772
3 3.467 3.452 3.3862 3.3786 3.334 3.353 3.3885 3.3984|3-1/2 3.968 3.953 3.8865 3.8788 3.835 3.848 3.8888 3.8988
4 4.466 4.451 4.3848 4.3771 4.333 4.346 4.3871 4.3971|5 5.528 5.513 5.4469 5.439 5.395 5.408 5.4493 5.4598
6 6.585 6.57 6.5036 6.4955 6.452 6.464 6.506 6.5165`;

/** The last size whose row is in print before us. */
const lastSeen = 0.75;

const tabled: ReadonlyMap<string, readonly number[]> = new Map(
  freeFitting.split(/[|\n]/).map((row) => {
    const [name = "", ...figures] = row.split(" ");
    return [fractionText(fractionValue(name)), figures.map(Number)] as const;
  }),
);

function freeLimits({ name, member }: Fitted): Limits {
  const row = tabled.get(name);
  if (!row) throw new NothingFound(`no limits of size: ASME B1.20.1 has NPSM from 1/8 to 6, got ${name}`);
  const at = (i: number) => row[i]!;
  return member === "internal"
    ? { major: {}, pitch: { min: at(6), max: at(7) }, minor: { min: at(4), max: at(5) } }
    : { major: { max: at(0), min: at(1) }, pitch: { max: at(2), min: at(3) }, minor: {} };
}

export const npsm: Series = {
  name: "NPSM",
  words: ["npsm"],
  standard: "ASME B1.20.1",
  unit: "in",
  perInch: true,
  form: unifiedForm,
  sizes: sizesOf(unifiedForm, 6),
  read: byNominal,
  list: (size, tpi) => `${size.name}-${tpi} NPSM`,
  classes: namedClasses(["2A"], ["2B"], { external: "2A", internal: "2B" }, (fit) => `-${fit.name}`),
  loosest: "2A",
  limits: freeLimits,
  limitsNote: ({ name }) =>
    fractionValue(name) > lastSeen
      ? "limits of NPSM above 3/4 are from memory of ASME B1.20.1: check them before relying on them"
      : undefined,
};

/** Depth that the standard adds to the largest pitch diameter for the major one, and takes for the minor. */
const truncated = 0.666025;
const flat = times(0.5 - truncated * tan(30));

const looseForm: Form = {
  name: "American pipe, loose",
  loadFlank: 30,
  clearanceFlank: 30,
  addendum: times(truncated / 2),
  dedendum: times(truncated / 2),
  depth: { external: times(truncated), internal: times(truncated) },
  rootFlat: flat,
  crestFlat: flat,
};

/** Turns over E1 of the largest screw; the nut begins a turn further out. */
const turnsOver = (name: string): number => (name === "1/8" ? 4.5 : name === "1/4" ? 3.5 : 4);

function looseLimits({ pitch: P, pitchDia, member }: Fitted): Limits {
  const four = (value: number) => round(value, 4);
  const turn = P * pipeTaper;
  if (member === "internal") {
    return { major: {}, pitch: { min: four(pitchDia + turn), max: four(pitchDia + 2.5 * turn) }, minor: {} };
  }
  return {
    major: { max: round(pitchDia + truncated * P, 3) },
    pitch: { max: four(pitchDia), min: four(pitchDia - 1.5 * turn) },
    minor: {},
  };
}

export const npsl: Series = {
  name: "NPSL",
  words: ["npsl"],
  standard: "ASME B1.20.1",
  unit: "in",
  perInch: true,
  form: looseForm,
  sizes: pipeMiddles
    .filter(({ name }) => fractionValue(name) >= 0.125)
    .map(({ name, tpi, pitchDia }) => ({
      name,
      major: pitchDia + turnsOver(name) * (pipeTaper / tpi) + 2 * looseForm.addendum(1 / tpi),
      pitches: [tpi],
    })),
  read: byNominal,
  list: (size, tpi) => `${size.name}-${tpi} NPSL`,
  classes: noClasses,
  limits: looseLimits,
  limitsNote: "limits of NPSL are from memory of ASME B1.20.1: check them before relying on them",
};
