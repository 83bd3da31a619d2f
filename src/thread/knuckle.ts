/**
 * Round (knuckle) threads of DIN 405: mm diameters, pitches in threads per inch, 30 degrees, Rd 40x1/6.
 *
 * Screw and nut are P/2 deep with arcs that touch the flanks; the nut is shifted outward by the clearance ac = 0.05 P.
 * Source: DIN 405-1, from memory, checked by its geometry; printed pitch diameters agree. Its limits are not held.
 */
import { type Form, tan, tangentRadius, times } from "./form.ts";
import { findSize, unreadable } from "./grammar.ts";
import { type Asked, noClasses, type Parts, type Series, type Size } from "./series.ts";

const inch = 25.4;
const H = 1 / (2 * tan(15));
/** Arc that ends `reach` pitches from the pitch line. */
const arc = (reach: number) => times(tangentRadius(H / 2 - reach, 15));

const form: Form = {
  name: "round",
  loadFlank: 15,
  clearanceFlank: 15,
  addendum: times(0.25),
  dedendum: times(0.2),
  depth: { external: times(0.5), internal: times(0.5) },
  rootRadius: arc(0.25),
  crestRadius: arc(0.25),
  nutRootRadius: arc(0.3),
  roundRoot: true,
};

/** Threads per inch by diameter up to and including the first figure. */
const steps: readonly (readonly [upTo: number, tpi: number])[] = [
  [12, 10],
  [38, 8],
  [100, 6],
  [200, 4],
];

const diameters = `8 9 10 11 12 14 16 18 20 22 24 26 28 30 32 34 36 38 40 42 44 46 48 50 52 55 58 60 62 65 68 70 72 75 78 80 82
85 88 90 92 95 98 100 105 110 115 120 125 130 135 140 145 150 155 160 165 170 175 180 185 190 195 200`;

const sizes: readonly Size[] = diameters.split(/\s/).map((name) => {
  const major = Number(name);
  return { name, major, pitches: [inch / steps.find(([upTo]) => major <= upTo)![1]] };
});

const pattern = /^(\d*\.?\d+)(?:\s*x\s*1\s*\/\s*(\d*\.?\d+))?/i;

function readRound(parts: Parts, series: Series): Asked {
  const given = parts.before === "" ? parts.after : `${parts.before} ${parts.after}`;
  const found = pattern.exec(given);
  const major = Number(found?.[1]);
  const usual = findSize(sizes, major)?.pitches[0];
  const tpi = found?.[2] === undefined ? usual && inch / usual : Number(found[2]);
  if (!found || !(major > 0) || tpi === undefined || !(tpi > 0)) {
    throw unreadable(
      parts.text,
      `a round thread is written Rd 40x1/6: diameter in mm, pitch as a fraction of an inch, got "${given}"`,
    );
  }
  const threads = Number(tpi.toPrecision(12));
  return {
    series,
    name: String(major),
    major,
    pitch: inch / threads,
    starts: 1,
    rest: given.slice(found[0].length),
    written: `Rd ${major}x1/${threads}`,
  };
}

export const round405: Series = {
  name: "Rd",
  words: ["rd"],
  standard: "DIN 405",
  unit: "mm",
  form,
  sizes,
  perInch: false,
  read: readRound,
  list: (size, pitch) => `Rd ${size.name}x1/${Number((inch / pitch).toPrecision(12))}`,
  classes: noClasses,
  noLimits: "DIN 405-2 has the classes 7h, 7e and 7H, whose figures are not at hand",
};
