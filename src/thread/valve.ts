/**
 * Tyre valve threads of 60 degrees: 5V2 (the French and the English valve's tip), 6V1 (the French valve's stem), 8V1 (the
 * car valve). Source: ISO 4570, from memory; 5V2 and 6V1 as in an encyclopaedia.
 */
import { unifiedForm } from "./form.ts";
import { unreadable } from "./grammar.ts";
import { type Asked, noClasses, type Parts, type Series, type Size } from "./series.ts";

const inch = 25.4;

const sizes: readonly Size[] = [
  { name: "5V2", major: 5.2, pitches: [inch / 24] },
  { name: "6V1", major: 6, pitches: [inch / 32] },
  { name: "8V1", major: 0.305 * inch, pitches: [inch / 32] },
];

/** The letter stands between two figures: 8V1. */
function readValve(parts: Parts, series: Series): Asked {
  const figure = /^\d(?!\d)/.exec(parts.after)?.[0] ?? "";
  const size = sizes.find(({ name }) => name === `${parts.before}V${figure}`);
  if (!size)
    throw unreadable(parts.text, `valve threads held are ${sizes.map(({ name }) => name).join(", ")}`);
  return {
    series,
    name: size.name,
    major: size.major,
    pitch: size.pitches[0]!,
    starts: 1,
    rest: parts.after.slice(1).trim(),
    written: size.name,
  };
}

export const valve: Series = {
  name: "V",
  words: ["v"],
  standard: "ISO 4570",
  unit: "mm",
  form: { ...unifiedForm, name: "tyre valve" },
  sizes,
  perInch: false,
  read: readValve,
  list: (size) => size.name,
  classes: noClasses,
  noLimits: "ISO 4570 has some, whose figures are not at hand",
  note: "tyre valve threads are from memory of ISO 4570: check them before relying on them",
};
