/**
 * Metric threads before ISO: the French SF of 1894 and the international SI of 1898, mm, 60 degrees with flats of P/8 like
 * the American National form. An SI root was rounded and up to H/16 deeper, which its basic depth leaves out.
 *
 * Source: machinists' handbook, sizes from memory.
 */
import { americanForm } from "./form.ts";
import { byPitch } from "./grammar.ts";
import { pitchSizes } from "./metric.ts";
import { noClasses, type Series } from "./series.ts";

function old(name: string, year: number, table: string): Series {
  return {
    name,
    words: [name.toLowerCase()],
    prefix: `${name} `,
    standard: `${name} (${year})`,
    unit: "mm",
    form: { ...americanForm, name: `metric ${name}` },
    sizes: pitchSizes(table),
    perInch: false,
    read: byPitch,
    list: (size, pitch) => `${name} ${size.name}x${pitch}`,
    classes: noClasses,
    noLimits: "no standard in force gives them any",
    note: `sizes of ${name} are from memory: check them before relying on them`,
  };
}

export const frenchMetric = old(
  "SF",
  1894,
  `3 .5|4 .75|5 .75|6 1|7 1|8 1|9 1|10 1.5|12 1.5|14 2|16 2|18 2.5|20 2.5|22 2.5|24 3|26 3|28 3|30 3.5|32 3.5|34 3.5
36 4|38 4|40 4|42 4.5|44 4.5|46 4.5|48 5|50 5`,
);

export const internationalMetric = old(
  "SI",
  1898,
  `6 1|7 1|8 1.25|9 1.25|10 1.5|11 1.5|12 1.75|14 2|16 2|18 2.5|20 2.5|22 2.5|24 3|27 3|30 3.5|33 3.5|36 4|39 4|42 4.5
45 4.5|48 5|52 5|56 5.5|60 5.5|64 6|68 6|72 6.5|76 6.5|80 7`,
);
