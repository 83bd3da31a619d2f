/**
 * Whitworth-form threads of one or two pitches for every diameter: the brass thread of 26 threads per inch, and the model
 * engineers' 32 and 40. No standard gives them limits. Source: form BS 84; pitches are common practice.
 */
import { whitworthForm } from "./form.ts";
import { byTable, findSize, inchSizes, readInchSize, unreadable } from "./grammar.ts";
import { type Asked, noClasses, type Parts, type Series } from "./series.ts";

const common = {
  unit: "in",
  form: whitworthForm,
  perInch: true,
  classes: noClasses,
  noLimits: "no standard gives them any",
} as const;

const brassThreads = 26;

export const bsb: Series = {
  ...common,
  name: "BSB",
  words: ["bsb", "brass"],
  standard: "common practice (BSB)",
  sizes: inchSizes("1/8 26|3/16 26|1/4 26|5/16 26|3/8 26|7/16 26|1/2 26|5/8 26|3/4 26|7/8 26|1 26"),
  read: readBrass,
  list: (size) => `${size.name}-${brassThreads} BSB`,
};

/** Any diameter, one pitch. */
function readBrass(parts: Parts, series: Series): Asked {
  const { name, major, tpi = brassThreads, rest } = readInchSize(parts, series);
  if (tpi !== brassThreads)
    throw unreadable(parts.text, `BSB has ${brassThreads} threads per inch, not ${tpi}`);
  return { series, name, major, pitch: 1 / tpi, starts: 1, rest, written: `${name}-${tpi} BSB` };
}

export const modelEngineer: Series = {
  ...common,
  name: "ME",
  words: ["me"],
  standard: "common practice (ME)",
  sizes: inchSizes(
    "1/8 40|5/32 40 32|3/16 40 32|7/32 40 32|1/4 40 32|9/32 40 32|5/16 40 32|3/8 40 32|7/16 40 32|1/2 40 32",
  ),
  read: readModelEngineer,
  list: (size, tpi) => `${size.name}-${tpi} ME`,
};

/** Where there are two pitches, one must be written. */
function readModelEngineer(parts: Parts, series: Series): Asked {
  const { name, major, tpi } = readInchSize(parts, series);
  const size = findSize(series.sizes, major);
  if (tpi === undefined && size && size.pitches.length > 1) {
    throw unreadable(
      parts.text,
      `${name} ME is made with 32 and 40 threads per inch: write ${name}-40 ME or ${name}-32 ME`,
    );
  }
  return byTable(parts, series);
}
