/**
 * British Standard Cycle threads, 60 degrees, crest and root rounded with a radius of P/6: depth H - P/3 = 0.5327 P.
 *
 * Source: BS 811:1950, from memory; printed core diameters agree. Its limits are not held.
 */
import { type Form, times } from "./form.ts";
import { byTable, inchSizes } from "./grammar.ts";
import { noClasses, type Series } from "./series.ts";

const H = Math.sqrt(3) / 2;
const depth = times(H - 1 / 3);
const half = times((H - 1 / 3) / 2);

const cycleForm: Form = {
  name: "cycle",
  loadFlank: 30,
  clearanceFlank: 30,
  addendum: half,
  dedendum: half,
  depth: { external: depth, internal: depth },
  rootRadius: times(1 / 6),
  crestRadius: times(1 / 6),
  roundRoot: true,
};

export const bsc: Series = {
  name: "BSC",
  words: ["bsc", "cei", "cycle"],
  standard: "BS 811",
  unit: "in",
  form: cycleForm,
  perInch: true,
  sizes: inchSizes(
    `1/8 40|5/32 32|3/16 32|7/32 26|1/4 26|17/64 26|9/32 26|5/16 26|3/8 26|7/16 26 20|1/2 26 20|9/16 26 20|5/8 26 20
11/16 26 20|3/4 26 20|1 26|1-3/8 24|1-7/16 24|1-1/2 24`,
  ),
  read: byTable,
  list: (size, tpi) => `${size.name}-${tpi} BSC`,
  classes: noClasses,
  noLimits: "BS 811 has close, medium and free bolts and nuts, whose figures are not at hand",
};
