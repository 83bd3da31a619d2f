/**
 * American hose couplings, inches: NH of fire hose and garden hose, NPSH on the threads of pipe. American National form.
 *
 * The nipple (screw) stands an allowance under the coupling (nut). The basic sizes of fire hose are those of the coupling,
 * of garden and pipe hose those of the nipple, as the standards print them. Both members have a pitch tolerance T; major
 * and minor diameters have twice that.
 *
 * Source: NFPA 1963-1993 as in a machinists' handbook, 27th ed. p. 1875 and 1876; garden hose and NPSH: ASME B1.20.7, from
 * memory (1.0625 and 1.0725 in, and the nipples' major diameters to 0.001 in, are in print).
 */
import { pipeMiddles } from "./americanpipe.ts";
import { americanForm } from "./form.ts";
import { unreadable } from "./grammar.ts";
import { byNominal } from "./pipe.ts";
import { type Asked, type Fitted, noClasses, type Parts, type Series, type Size } from "./series.ts";
import { fractionText, fractionValue, inchSize, round } from "./text.ts";
import type { Limits } from "./thread.ts";

interface Coupling {
  readonly size: Size;
  /** What the nipple stands under basic, and the coupling over it. */
  readonly under: number;
  readonly over: number;
  readonly T: number;
  readonly remembered: boolean;
}

// Size, threads per inch, basic major diameter of the coupling, allowance, T.
const fireHose = `3/4 8 1.387 .012 .0111|1 8 1.387 .012 .0111|1-1/2 9 2.002 .012 .0111|2-1/2 7.5 3.0836 .015 .016
3 6 3.6389 .015 .018|3-1/2 6 4.2639 .02 .018|4 4 5.0359 .025 .025|4-1/2 4 5.7859 .025 .025|5 4 6.285 .025 .025
6 4 7.05 .025 .025`;

const fire: readonly Coupling[] = fireHose.split(/[|\n]/).map((row) => {
  const [name = "", ...figures] = row.split(" ");
  const [tpi = 0, major = 0, under = 0, T = 0] = figures.map(Number);
  const size = { name: fractionText(fractionValue(name)), major, pitches: [tpi] };
  return { size, under, over: 0, T, remembered: false };
});

const garden: Coupling = {
  size: { name: "3/4", major: 1.0625, pitches: [11.5] },
  under: 0,
  over: 0.01,
  T: 0.0085,
  remembered: true,
};

/** Twice the height, by threads per inch, where the tables do not round it to the nearest. */
const printedHeights: Readonly<Record<number, number>> = { 6: 0.2166 };

const threadsOf = (pitch: number) => Number((1 / pitch).toPrecision(6));

function limitsOf(
  { under, over, T }: Pick<Coupling, "under" | "over" | "T">,
  { major, pitch, pitchDia, member }: Fitted,
): Limits {
  const four = (value: number) => round(value, 4);
  const heights = printedHeights[threadsOf(pitch)] ?? four(2 * americanForm.depth.external(pitch));
  if (member === "internal") {
    const majorMin = four(major + over);
    const pitchMin = four(pitchDia + over);
    const minorMin = four(majorMin - heights);
    return {
      major: { min: majorMin },
      pitch: { min: pitchMin, max: four(pitchMin + T) },
      minor: { min: minorMin, max: four(minorMin + 2 * T) },
    };
  }
  const majorMax = four(major - under);
  const pitchMax = four(pitchDia - under);
  return {
    major: { max: majorMax, min: four(majorMax - 2 * T) },
    pitch: { max: pitchMax, min: four(pitchMax - T) },
    minor: { max: four(majorMax - heights) },
  };
}

const couplings = [garden, ...fire];

const find = (name: string, tpi: number) =>
  couplings.find(({ size }) => size.name === name && size.pitches[0] === tpi);

const pattern = new RegExp(String.raw`^(${inchSize})(?:\s*[-x*\s]\s*(\d*\.?\d+)(?![\d/]))?`);

/** The nominal size is that of the hose; 3/4 is garden hose with 11.5 threads per inch and fire hose with 8. */
function readHose(parts: Parts, series: Series): Asked {
  const given = parts.before === "" ? parts.after : parts.before;
  const found = pattern.exec(given);
  const name = found ? fractionText(fractionValue(found[1]!)) : "3/4";
  const ofSize = couplings.filter(({ size }) => size.name === name);
  const coupling = found?.[2] === undefined ? ofSize[0] : find(name, Number(found[2]));
  if (!coupling) {
    const has = (ofSize.length > 0 ? ofSize : couplings).map(({ size }) => `${size.name}-${size.pitches[0]}`);
    throw unreadable(parts.text, `hose couplings are ${has.join(", ")} NH`);
  }
  const left = given.slice(found?.[0].length ?? 0).trim();
  const tpi = coupling.size.pitches[0]!;
  return {
    series,
    name,
    major: coupling.size.major,
    pitch: 1 / tpi,
    starts: 1,
    rest: parts.before === "" ? left : `${left} ${parts.after}`.trim(),
    written: series.list(coupling.size, tpi),
  };
}

export const hose: Series = {
  name: "NH",
  words: ["nh", "nst", "nht", "nhr", "ght"],
  standard: "NFPA 1963, ASME B1.20.7",
  unit: "in",
  form: americanForm,
  perInch: true,
  sizes: couplings.map(({ size }) => size),
  read: readHose,
  list: (size, tpi) => `${size.name}-${tpi} NH`,
  classes: noClasses,
  limits: (fitted) => limitsOf(find(fitted.name, threadsOf(fitted.pitch))!, fitted),
  limitsNote: ({ name, pitch }) =>
    find(name, threadsOf(pitch))?.remembered
      ? "limits of garden hose threads are from memory of ASME B1.20.7: check them before relying on them"
      : undefined,
};

/** Allowance and T by threads per inch. */
const pipeHose: Readonly<Record<number, readonly [over: number, T: number]>> = {
  14: [0.0075, 0.007],
  11.5: [0.01, 0.0085],
  8: [0.012, 0.0111],
};

export const npsh: Series = {
  name: "NPSH",
  words: ["npsh"],
  standard: "ASME B1.20.7",
  unit: "in",
  form: americanForm,
  perInch: true,
  sizes: pipeMiddles
    .filter(({ name }) => fractionValue(name) >= 0.5 && fractionValue(name) <= 4)
    .map(({ name, tpi, pitchDia }) => ({
      name,
      major: round(pitchDia + 2 * americanForm.addendum(1 / tpi), 4),
      pitches: [tpi],
    })),
  read: byNominal,
  list: (size, tpi) => `${size.name}-${tpi} NPSH`,
  classes: noClasses,
  limits: (fitted) => {
    const [over, T] = pipeHose[threadsOf(fitted.pitch)]!;
    return limitsOf({ under: 0, over, T }, fitted);
  },
  limitsNote: "limits of NPSH are from memory of ASME B1.20.7: check them before relying on them",
};
