/** Square threads: depth and width of the groove are half the pitch. No standard; Source: common practice, handbook proportions. */
import { type Form, times } from "./form.ts";
import { byPitch, byThreads } from "./grammar.ts";
import { noClasses, type Parts, type Series } from "./series.ts";

const half = times(1 / 2);

const form: Form = {
  name: "square",
  loadFlank: 0,
  clearanceFlank: 0,
  addendum: times(1 / 4),
  dedendum: times(1 / 4),
  depth: { external: half, internal: half },
  rootFlat: half,
  crestFlat: half,
};

const common = {
  name: "Sq",
  standard: "common practice (square thread)",
  form,
  sizes: [],
  classes: noClasses,
  noLimits: "no standard gives them any",
} as const;

/** Sq 1-4 is one inch, four threads per inch; Sq 40x7 is millimetres. */
export const square: Series = {
  ...common,
  words: ["sq", "square"],
  unit: "in",
  perInch: true,
  read: (parts: Parts, series: Series) =>
    /\dx/i.test((parts.before + parts.after).replace(/\s/g, ""))
      ? byPitch(parts, squareMetric)
      : byThreads(parts, series),
  list: (size, tpi) => `Sq ${size.name}-${tpi}`,
};

const squareMetric: Series = {
  ...common,
  words: [],
  prefix: "Sq ",
  unit: "mm",
  perInch: false,
  read: byPitch,
  list: (size, pitch) => `Sq ${size.name}x${pitch}`,
};
