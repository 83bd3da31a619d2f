/**
 * Parallel pipe threads G of Whitworth form, in mm.
 *
 * The height is rounded to three decimals before it is taken from the major diameter. Source: ISO 228-1.
 */
import { whitworthForm } from "./form.ts";
import { betweenSizeAndName, unreadable } from "./grammar.ts";
import {
  type Asked,
  type Basic,
  type Fitted,
  namedClasses,
  type Parts,
  type Series,
  type Size,
} from "./series.ts";
import { fractionText, fractionValue, inchSize, round } from "./text.ts";
import type { Limits } from "./thread.ts";

const inch = 25.4;

// Nominal size, threads per inch, major diameter in mm; * marks sizes that ISO 7-1 does not have.
const table = `1/16 28 7.723|1/8 28 9.728|1/4 19 13.157|3/8 19 16.662|1/2 14 20.955|5/8 14 22.911 *|3/4 14 26.441|7/8 14 30.201 *
1 11 33.249|1-1/8 11 37.897 *|1-1/4 11 41.91|1-1/2 11 47.803|1-3/4 11 53.746 *|2 11 59.614|2-1/4 11 65.71 *|2-1/2 11 75.184
2-3/4 11 81.534 *|3 11 87.884|3-1/2 11 100.33 *|4 11 113.03|4-1/2 11 125.73 *|5 11 138.43|5-1/2 11 151.13 *|6 11 163.83`;

const rows = table.split(/[|\n]/).map((row) => row.split(" "));

function toSize([name = "", tpi = "", major = ""]: readonly string[]): Size {
  return { name: fractionText(fractionValue(name)), major: Number(major), pitches: [inch / Number(tpi)] };
}

const parallelSizes = rows.map(toSize);
/** The sizes that ISO 7-1 has as well. */
export const jointSizes = rows.filter((row) => row[3] === undefined).map(toSize);

function basic(major: number, P: number): Basic {
  const height = round(whitworthForm.depth.external(P), 3);
  const minor = round(major - 2 * height, 3);
  return { pitchDia: round(major - height, 3), minor: { external: minor, internal: minor } };
}

/** Tolerances in mm by threads per inch: pitch diameter of nut and class A, minor diameter of the nut. */
const tolerances: Readonly<Record<number, readonly [pitch: number, minor: number]>> = {
  28: [0.107, 0.282],
  19: [0.125, 0.445],
  14: [0.142, 0.541],
  11: [0.18, 0.64],
};

function parallelLimits({ major, pitch, pitchDia, minor, member, fit }: Fitted): Limits {
  const mm = (value: number) => round(value, 3);
  const [small, minorTolerance] = tolerances[Math.round(inch / pitch)]!;
  // Above 2 in the coarse pitch has a wider tolerance.
  const T = major > 60 ? 0.217 : small;
  if (member === "internal") {
    return {
      major: { min: mm(major) },
      pitch: { min: mm(pitchDia), max: mm(pitchDia + T) },
      minor: { min: mm(minor.internal), max: mm(minor.internal + minorTolerance) },
    };
  }
  return {
    major: { max: mm(major), min: mm(major - 2 * T) },
    pitch: { max: mm(pitchDia), min: mm(pitchDia - (fit === "B" ? 2 : 1) * T) },
    minor: { max: mm(minor.external) },
  };
}

const pattern = new RegExp(String.raw`^(${inchSize})(?:\s*-\s*(\d+ 1\/2|\d+(?:\.\d+)?)(?![\d/]))?`);

/** Pipe sizes go by the nominal size: G 1/2, R 3/4, 1/2-14 NPT. */
export function byNominal(parts: Parts, series: Series): Asked {
  const inFront = pattern.exec(parts.before);
  const found = inFront ?? pattern.exec(parts.after);
  const given = parts.before || parts.after;
  const name = found ? fractionText(fractionValue(found[1]!)) : "";
  const size = series.sizes.find((candidate) => candidate.name === name);
  if (!found || !size) {
    throw unreadable(
      parts.text,
      `${series.name} has the sizes ${series.sizes.map((s) => s.name).join(", ")}, got "${given}"`,
    );
  }
  const leftOver = (inFront ? parts.before : parts.after).slice(found[0].length).trim();
  if (inFront && leftOver !== "") throw betweenSizeAndName(parts.text, found[0], leftOver, series);
  const own = size.pitches[0]!;
  const pitch = series.perInch ? 1 / own : own;
  const tpi = (series.unit === "in" ? 1 : inch) / pitch;
  if (found[2] !== undefined && Math.abs(fractionValue(found[2]) - tpi) > 1e-6) {
    throw unreadable(
      parts.text,
      `${series.name} ${name} has ${Number(tpi.toPrecision(6))} threads per inch, not ${found[2]}`,
    );
  }
  return {
    series,
    name,
    major: size.major,
    pitch,
    starts: 1,
    rest: inFront ? parts.after : leftOver,
    written: series.list(size, own),
  };
}

/** What G has in common with the threads of ISO 7-1. */
export const whitworthPipe = {
  unit: "mm",
  form: whitworthForm,
  perInch: false,
  read: byNominal,
  basic,
} as const;

export const pipeG: Series = {
  ...whitworthPipe,
  name: "G",
  words: ["g", "bspp", "bspf", "pf"],
  standard: "ISO 228-1",
  sizes: parallelSizes,
  list: (size) => `G ${size.name}`,
  classes: namedClasses(["A", "B"], [], { external: "A", internal: "" }, (fit) =>
    fit.member === "internal" ? " nut" : ` ${fit.name}`,
  ),
  loosest: "B",
  limits: parallelLimits,
};
