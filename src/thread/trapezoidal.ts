/**
 * ISO metric trapezoidal threads, Tr, 30 degrees, and the saw-tooth thread S of DIN 513 on the same sizes.
 *
 * Tr: basic height P/2; screw and nut are each deeper by a clearance ac. Tolerances follow the R40 rules of the M threads.
 * S: load flank 3, clearance flank 30 degrees; basic height 0.75 P, the screw deeper down to its rounded root.
 *
 * Source: ISO 2901, 2902, 2903, 2904 (fundamental deviations from pitch 5 up from memory); DIN 513-1, from memory, checked
 * by its geometry; limits of S are not held.
 */
import { NothingFound } from "./failures.ts";
import { type Form, type OfPitch, tan, times } from "./form.ts";
import { byPitch } from "./grammar.ts";
import { pitchSizes } from "./metric.ts";
import { tolerance } from "./metriclimits.ts";
import { type Classes, type Fitted, noClasses, type Series } from "./series.ts";
import { round } from "./text.ts";
import type { Limits } from "./thread.ts";

/** Clearance ac, mm. */
const crestClearance: OfPitch = (P) => (P <= 1.5 ? 0.15 : P <= 5 ? 0.25 : P <= 12 ? 0.5 : 1);

const basicFlat = 0.5 - 0.5 * tan(15);
const trapezoidDepth: OfPitch = (P) => P / 2 + crestClearance(P);

const trapezoidForm: Form = {
  name: "trapezoidal",
  loadFlank: 15,
  clearanceFlank: 15,
  addendum: times(1 / 4),
  dedendum: times(1 / 4),
  depth: { external: trapezoidDepth, internal: trapezoidDepth },
  crestFlat: times(basicFlat),
  rootFlat: (P) => basicFlat * P - 2 * crestClearance(P) * tan(15),
};

// Diameter, then the pitch of first choice and the others.
const sizes =
  pitchSizes(`8 1.5|9 2 1.5|10 2 1.5|11 2 3|12 3 2|14 3 2|16 4 2|18 4 2|20 4 2|22 5 3 8|24 5 3 8|26 5 3 8|28 5 3 8
30 6 3 10|32 6 3 10|34 6 3 10|36 6 3 10|38 7 3 10|40 7 3 10|42 7 3 10|44 7 3 12|46 8 3 12|48 8 3 12|50 8 3 12|52 8 3 12
55 9 3 14|60 9 3 14|65 10 4 16|70 10 4 16|75 10 4 16|80 10 4 16|85 12 4 18|90 12 4 18|95 12 4 18|100 12 4 20|105 12 4 20
110 12 4 20|115 12 6 22|120 14 6 22|125 14 6 22|130 14 6 22|135 14 6 24|140 14 6 24|145 14 6 24|150 16 6 24|155 16 6 24
160 16 6 28|165 16 6 28|170 16 6 28|175 16 8 28|180 18 8 28|185 18 8 32|190 18 8 32|195 18 8 32|200 18 8 32|210 20 8 36
220 20 8 36|230 20 8 36|240 22 8 36|250 22 12 40|260 22 12 40|270 24 12 40|280 24 12 40|290 24 12 44|300 24 12 44`);

/** Amounts of the fundamental deviations of the pitch diameter, micrometres. */
const deviations: Readonly<Record<string, readonly [c: number, e: number]>> = {
  "1.5": [140, 67],
  "2": [150, 71],
  "3": [170, 85],
  "4": [190, 95],
  "5": [212, 106],
  "6": [236, 118],
  "7": [250, 125],
  "8": [265, 132],
  "9": [280, 140],
  "10": [300, 150],
  "12": [335, 160],
  "14": [355, 180],
  "16": [375, 190],
  "18": [400, 200],
  "20": [425, 212],
  "22": [450, 224],
  "24": [475, 236],
  "28": [500, 250],
  "32": [530, 265],
  "36": [560, 280],
  "40": [600, 300],
  "44": [630, 315],
};

/** Amount of the fundamental deviation c or e, micrometres. */
export function trapezoidDeviation(position: string, P: number): number {
  const row = deviations[String(P)];
  if (!row) throw new NothingFound(`no class limits: ISO 2903 has no deviations for a pitch of ${P} mm`);
  return position === "c" ? row[0] : row[1];
}

function trapezoidLimits({ major: d, pitch: P, pitchDia, minor, member, fit }: Fitted): Limits {
  const mm = (value: number) => round(value, 3);
  const grade = fit[0]!;
  if (member === "internal") {
    return {
      major: { min: mm(d + 2 * crestClearance(P)) },
      pitch: { min: mm(pitchDia), max: mm(pitchDia + tolerance.TD2(grade, d, P) / 1000) },
      minor: { min: mm(minor.internal), max: mm(minor.internal + tolerance.TD1("4", P) / 1000) },
    };
  }
  const es = trapezoidDeviation(fit[1]!, P) / 1000;
  const Td2 = tolerance.Td2(grade, d, P) / 1000;
  return {
    major: { max: mm(d), min: mm(d - tolerance.Td("4", P) / 1000) },
    pitch: { max: mm(pitchDia - es), min: mm(pitchDia - es - Td2) },
    minor: { max: mm(minor.external), min: mm(minor.external - es - 1.25 * Td2) },
  };
}

const classes: Classes = {
  read(text, nut) {
    const name = /^[789][ceCE]$/.test(text)
      ? text.toLowerCase()
      : /^[78][hH]$/.test(text)
        ? text.toUpperCase()
        : undefined;
    if (name === undefined) return undefined;
    const internal = name.endsWith("H");
    return nut && !internal ? undefined : { member: internal ? "internal" : "external", name };
  },
  usual: (member) => (member === "internal" ? "7H" : "7e"),
  write: (fit) => `-${fit.name}`,
  accepted: "screw 7, 8 or 9 with e or c such as 7e; nut 7H, 8H",
  notHeld: { names: /^9H$/i, why: "the tolerances of the nut class 9H of ISO 2903 are not at hand" },
};

export const trapezoidal: Series = {
  name: "Tr",
  words: ["tr"],
  prefix: "Tr ",
  leadMark: " P",
  standard: "ISO 2902, ISO 2903, ISO 2904",
  unit: "mm",
  form: trapezoidForm,
  sizes,
  perInch: false,
  read: byPitch,
  list: (size, pitch) => `Tr ${size.name}x${pitch}`,
  classes,
  loosest: "9c",
  limits: trapezoidLimits,
  // Position e is printed for the pitches below 5 mm; the nut has no deviation.
  limitsNote: ({ pitch, fits, member }) =>
    member === "external" && (pitch >= 5 || fits.external.endsWith("c"))
      ? "the fundamental deviation is from memory of ISO 2903: check the limits before relying on them"
      : undefined,
};

/** DIN 513 begins at 10 mm with a pitch of 2 mm. */
const sawSizes = sizes
  .filter(({ major }) => major >= 10)
  .map((size) => ({ ...size, pitches: size.pitches.filter((pitch) => pitch >= 2) }));

const sawDepth = times(0.86777);

export const sawTooth: Series = {
  name: "S",
  words: ["s"],
  prefix: "S ",
  leadMark: " P",
  standard: "DIN 513",
  unit: "mm",
  form: {
    name: "saw-tooth 3/30",
    loadFlank: 3,
    clearanceFlank: 30,
    addendum: times(0.375),
    dedendum: times(0.375),
    depth: { external: sawDepth, internal: times(0.75) },
    rootRadius: times(0.12427),
    crestFlat: times(0.5 - 0.375 * (tan(3) + tan(30))),
  },
  sizes: sawSizes,
  perInch: false,
  read: byPitch,
  list: (size, pitch) => `S ${size.name}x${pitch}`,
  classes: noClasses,
  noLimits: "DIN 513-2 has the grades 7 to 9, whose figures for a saw-tooth thread are not at hand",
};
