/**
 * British Association threads, 47.5 degrees, in mm: No. 0 to 16 of BS 93 and No. 17 to 25 of 1903.
 *
 * Pitch about 0.9 to the power of the number, diameter about 6 P^1.2, both as printed. The depth of 0.6 P is rounded to
 * 0.005 mm before it is taken from the diameter. Crest and root are arcs that touch both flanks.
 *
 * Source: BS 93:1951 sizes and tolerances; numbers above 16: the association's list of 1903.
 */
import { NothingFound } from "./failures.ts";
import { type Form, tan, tangentRadius, times } from "./form.ts";
import { betweenSizeAndName, unreadable } from "./grammar.ts";
import { type Asked, type Fitted, namedClasses, type Parts, type Series, type Size } from "./series.ts";
import { round } from "./text.ts";
import type { Limits, Member } from "./thread.ts";

const table = `6 1|5.3 .9|4.7 .81|4.1 .73|3.6 .66|3.2 .59|2.8 .53|2.5 .48|2.2 .43|1.9 .39|1.7 .35|1.5 .31|1.3 .28|1.2 .25|1 .23
.9 .21|.79 .19|.7 .17|.62 .15|.54 .14|.48 .12|.42 .11|.37 .1|.33 .09|.29 .08|.25 .07`;

const sizes: readonly Size[] = table.split(/[|\n]/).map((row, number) => {
  const [major = "", pitch = ""] = row.split(" ");
  return { name: String(number), major: Number(major), pitches: [Number(pitch)] };
});

const H = 1 / (2 * tan(23.75));
/** The exact tangent radius is 0.1808346 P; the radii that BS 93 prints are those of its first five figures. */
const radius = times(Math.floor(tangentRadius((H - 0.6) / 2, 23.75) * 1e5) / 1e5);
/** 0.6 P to the nearest 0.005 mm, from 0.19 mm pitch up, where BS 93 prints it. */
const depth = (P: number) => (P < 0.19 ? 0.6 * P : round(round(0.6 * P, 6) / 0.005, 0) * 0.005);

export const baForm: Form = {
  name: "British Association",
  loadFlank: 23.75,
  clearanceFlank: 23.75,
  addendum: (P) => depth(P) / 2,
  dedendum: (P) => depth(P) / 2,
  depth: { external: depth, internal: depth },
  rootRadius: radius,
  crestRadius: radius,
  roundRoot: true,
};

/** Tolerances of BS 93 as k P + c, mm; what a class says nothing of is left out. */
interface BaClass {
  readonly allowance: number;
  readonly major?: readonly [k: number, c: number];
  readonly pitch: readonly [k: number, c: number];
  readonly minor: readonly [k: number, c: number];
}

/** The class of a bolt or nut of that number. */
export function baClass(member: Member, fit: string, number: number): BaClass {
  if (member === "internal") return { allowance: 0, pitch: [0.12, 0.03], minor: [0.375, 0] };
  if (fit === "close") return { allowance: 0, major: [0.15, 0], pitch: [0.08, 0.02], minor: [0.16, 0.04] };
  const small = number > 10;
  return {
    allowance: small ? 0 : 0.025,
    major: [small ? 0.25 : 0.2, 0],
    pitch: [0.1, 0.025],
    minor: [0.2, 0.05],
  };
}

function baLimits({ name, major, pitch: P, pitchDia, minor, member, fit }: Fitted): Limits {
  const number = Number(name);
  if (number > 16)
    throw new NothingFound(`no class limits: BS 93 has tolerances for BA 0 to 16, got ${name} BA`);
  if (fit === "close" && member === "external" && number > 10)
    throw new NothingFound(`no class limits: close bolts are BA 0 to 10, got ${name} BA`);
  const { allowance, ...figures } = baClass(member, fit, number);
  const width = ([k, c]: readonly [number, number]) => k * P + c;
  // The formulas are printed in thousandths and hundred-thousandths: keep what they say, less binary dust.
  const mm = (value: number) => round(value, 5);
  if (member === "internal") {
    return {
      major: { min: mm(major) },
      pitch: { min: mm(pitchDia), max: mm(pitchDia + width(figures.pitch)) },
      minor: { min: mm(minor.internal), max: mm(minor.internal + width(figures.minor)) },
    };
  }
  const under = (value: number, tolerance: readonly [number, number]) => ({
    max: mm(value - allowance),
    min: mm(value - allowance - width(tolerance)),
  });
  return {
    major: under(major, figures.major!),
    pitch: under(pitchDia, figures.pitch),
    minor: under(minor.external, figures.minor),
  };
}

export const ba: Series = {
  name: "BA",
  words: ["ba"],
  standard: "BS 93",
  unit: "mm",
  form: baForm,
  sizes,
  perInch: false,
  read: byNumber,
  list: (size) => `${size.name} BA`,
  classes: namedClasses(["close", "normal"], ["normal"], { external: "normal", internal: "normal" }, (fit) =>
    fit.member === "internal" ? " nut" : ` ${fit.name}`,
  ),
  loosest: "normal",
  limits: baLimits,
};

function byNumber(parts: Parts, series: Series): Asked {
  const pattern = /^(?:#|no\.?\s*)?(\d+)(?![\d./])/i;
  const inFront = pattern.exec(parts.before);
  const found = inFront ?? pattern.exec(parts.after);
  const size = sizes[Number(found?.[1] ?? Number.NaN)];
  if (!found || !size) {
    throw unreadable(
      parts.text,
      `BA sizes are whole numbers from 0 to 25, got "${parts.before || parts.after}"`,
    );
  }
  const leftOver = (inFront ? parts.before : parts.after).slice(found[0].length).trim();
  if (inFront && leftOver !== "") throw betweenSizeAndName(parts.text, found[0], leftOver, series);
  return {
    series,
    name: size.name,
    major: size.major,
    pitch: size.pitches[0]!,
    starts: 1,
    rest: inFront ? parts.after : leftOver,
    written: `${size.name} BA`,
  };
}
