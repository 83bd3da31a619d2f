/**
 * Metric threads of instruments and clocks before the metric system was one: Löwenherz and Thury, mm.
 *
 * Löwenherz: an included angle of 53 degrees 8 minutes, which makes H = P; flats of P/8, depth 0.75 P. Source: machinists'
 * handbook, 31st ed. p. 2119.
 *
 * Thury, the Swiss thread that BA was made from: 47.5 degrees, P = 0.9^n and D = 6 P^1.2, crest rounded with P/6 and root
 * with P/5, depth 0.6 P. Source: the rule, from memory; makers' tables round on their own.
 */
import { byName } from "./byname.ts";
import { type Form, tan, times } from "./form.ts";
import { byPitch } from "./grammar.ts";
import { pitchSizes } from "./metric.ts";
import { noClasses, type Series, type Size } from "./series.ts";
import { round } from "./text.ts";

/** 53 degrees 8 minutes to the minute: the flank that makes H just P. */
const flank = (Math.atan(1 / 2) * 180) / Math.PI;

const lowenherzForm: Form = {
  name: "Löwenherz",
  loadFlank: flank,
  clearanceFlank: flank,
  addendum: times(3 / 8),
  dedendum: times(3 / 8),
  depth: { external: times(3 / 4), internal: times(3 / 4) },
  rootFlat: times(1 / 8),
  crestFlat: times(1 / 8),
};

export const lowenherz: Series = {
  name: "Lowenherz",
  words: ["lowenherz", "loewenherz"],
  prefix: "Lowenherz ",
  standard: "Löwenherz (1892)",
  unit: "mm",
  form: lowenherzForm,
  sizes:
    pitchSizes(`1 .25|1.2 .25|1.4 .3|1.7 .35|2 .4|2.3 .4|2.6 .45|3 .5|3.5 .6|4 .7|4.5 .75|5 .8|5.5 .9|6 1|7 1.1|8 1.2
9 1.3|10 1.4|12 1.6|14 1.8|16 2|18 2.2|20 2.4|22 2.8|24 2.8|26 3.2|28 3.2|30 3.6|32 3.6|36 4|40 4.4`),
  perInch: false,
  read: byPitch,
  list: (size, pitch) => `Lowenherz ${size.name}x${pitch}`,
  classes: noClasses,
  noLimits: "no standard in force gives them any",
};

const H47 = 1 / (2 * tan(23.75));
/** An arc of radius r between the flanks stands r (1/sin a - 1) off the sharp corner. */
const offCorner = 1 / Math.sin((23.75 * Math.PI) / 180) - 1;
const addendum = H47 / 2 - offCorner / 6;

const thuryForm: Form = {
  name: "Thury",
  loadFlank: 23.75,
  clearanceFlank: 23.75,
  addendum: times(addendum),
  dedendum: times(0.6 - addendum),
  depth: { external: times(0.6), internal: times(0.6) },
  rootRadius: times(1 / 5),
  crestRadius: times(1 / 6),
  roundRoot: true,
};

const thurySizes: readonly Size[] = Array.from({ length: 21 }, (_, n) => {
  const P = 0.9 ** n;
  return { name: String(n), major: Number((6 * P ** 1.2).toPrecision(2)), pitches: [round(P, 3)] };
});

export const thury: Series = {
  name: "Thury",
  words: ["thury"],
  prefix: "Thury ",
  standard: "Thury (1878)",
  unit: "mm",
  form: thuryForm,
  sizes: thurySizes,
  perInch: false,
  read: byName,
  list: (size) => `Thury ${size.name}`,
  classes: noClasses,
  noLimits: "no standard in force gives them any",
  note: "Thury sizes are by its rule, from memory: check them before relying on them",
};
