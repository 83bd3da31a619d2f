/**
 * American National threads, the forerunner of Unified: NC, NF and NEF with a root flat of P/8, depth 0.649519 P; and the
 * sharp V thread that went before them, depth 0.866025 P.
 *
 * The sizes are those of the Unified series. Source: handbook proportions of the American National form, from memory; the
 * limits of its classes of fit are not held.
 */
import { americanForm, sharpForm } from "./form.ts";
import { byTable, byThreads } from "./grammar.ts";
import { type Classes, namedClasses, noClasses, type Series, type Size } from "./series.ts";
import { coarseSizes, extraFineSizes, fineSizes } from "./unified.ts";

/** Drawings name the class, as in 1/2-13 NC-2. */
const numbered = ["1", "2", "3", "4"];
const classes: Classes = namedClasses(
  numbered,
  numbered,
  { external: "", internal: "" },
  ({ name, member }) => [name && `-${name}`, member === "internal" ? " nut" : ""].join(""),
);

function national(name: string, words: readonly string[], sizes: readonly Size[]): Series {
  return {
    name,
    words,
    standard: "American National form (before ASME B1.1)",
    unit: "in",
    form: americanForm,
    sizes,
    numberSizes: true,
    perInch: true,
    read: byTable,
    list: (size, tpi) => `${size.name}-${tpi} ${name}`,
    classes,
    noLimits: "the classes 1 to 4 of before ASME B1.1 stand in tables that are not at hand",
  };
}

export const americanNational: readonly Series[] = [
  national("NC", ["nc", "uss"], coarseSizes),
  national("NF", ["nf", "sae"], fineSizes),
  national("NEF", ["nef"], extraFineSizes),
];

/** Any size and pitch; no standard in force lists sizes. */
export const sharpV: Series = {
  name: "Sharp V",
  words: ["sharpv"],
  standard: "sharp V form (before the American National form)",
  unit: "in",
  form: sharpForm,
  sizes: [],
  numberSizes: true,
  perInch: true,
  read: byThreads,
  list: (size, tpi) => `${size.name}-${tpi} Sharp V`,
  classes: noClasses,
  noLimits: "no standard in force gives them any",
};
