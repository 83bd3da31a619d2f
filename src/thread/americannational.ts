/**
 * American National threads, the forerunner of Unified: NC, NF and NEF with a root flat of P/8, depth 0.649519 P.
 *
 * The sizes are those of the Unified series. Source: handbook proportions of the American National form, from memory; its
 * classes of fit are not held.
 */
import { americanForm } from "./form.ts";
import { byTable } from "./grammar.ts";
import { noClasses, type Series, type Size } from "./series.ts";
import { coarseSizes, extraFineSizes, fineSizes } from "./unified.ts";

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
    classes: noClasses,
    noLimits: "the classes 1 to 4 of before ASME B1.1 stand in tables that are not at hand",
  };
}

export const americanNational: readonly Series[] = [
  national("NC", ["nc", "uss"], coarseSizes),
  national("NF", ["nf", "sae"], fineSizes),
  national("NEF", ["nef"], extraFineSizes),
];
