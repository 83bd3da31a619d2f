/**
 * Threads of steel conduit: the British BSCon of Whitworth form, inches, and the German Pg of 80 degrees, mm.
 *
 * Pg is rounded by a tenth of H at crest and root, which leaves a depth of 0.8 H = 0.4767 P; its table rounds the depth to
 * 0.01 mm. Source: BS 31 (sizes from memory), form BS 84; DIN 40430, sizes as in an open library of thread data.
 */
import { byName } from "./byname.ts";
import { type Form, tan, tangentRadius, times, whitworthForm } from "./form.ts";
import { byTable, inchSizes } from "./grammar.ts";
import { noClasses, type Series, type Size } from "./series.ts";
import { round } from "./text.ts";
import { whitworthBasic } from "./whitworth.ts";

export const bsCon: Series = {
  name: "BSCon",
  words: ["bscon", "conduit"],
  standard: "BS 31",
  unit: "in",
  form: whitworthForm,
  perInch: true,
  sizes: inchSizes("1/2 18|5/8 18|3/4 16|1 16|1-1/4 16|1-1/2 14|2 14|2-1/2 14"),
  read: byTable,
  list: (size, tpi) => `${size.name}-${tpi} BSCon`,
  classes: noClasses,
  noLimits: "BS 31 has some, whose figures are not at hand",
  basic: whitworthBasic,
  note: "sizes of conduit threads are from memory of BS 31: check them before relying on them",
};

const inch = 25.4;
const H80 = 1 / (2 * tan(40));
const depth80 = times(0.8 * H80);

const pgForm: Form = {
  name: "conduit, 80 degrees",
  loadFlank: 40,
  clearanceFlank: 40,
  addendum: times(0.4 * H80),
  dedendum: times(0.4 * H80),
  depth: { external: depth80, internal: depth80 },
  rootRadius: times(tangentRadius(0.1 * H80, 40)),
  crestRadius: times(tangentRadius(0.1 * H80, 40)),
  roundRoot: true,
};

// Size, threads per inch, major diameter in mm.
const pgSizes: readonly Size[] =
  `7 20 12.5|9 18 15.2|11 18 18.6|13.5 18 20.4|16 18 22.5|21 16 28.3|29 16 37|36 16 47|42 16 54|48 16 59.3`
    .split("|")
    .map((row) => {
      const [name = "", tpi, major] = row.split(" ");
      return { name, major: Number(major), pitches: [inch / Number(tpi)] };
    });

export const pg: Series = {
  name: "Pg",
  words: ["pg"],
  prefix: "Pg ",
  standard: "DIN 40430",
  unit: "mm",
  form: pgForm,
  perInch: false,
  sizes: pgSizes,
  read: byName,
  list: (size) => `Pg ${size.name}`,
  classes: noClasses,
  noLimits: "DIN 40430 has some, whose figures are not at hand",
  basic: (major, P) => {
    const depth = round(pgForm.depth.external(P), 2);
    const minor = round(major - 2 * depth, 2);
    return { pitchDia: round(major - depth, 2), minor: { external: minor, internal: minor } };
  },
};
