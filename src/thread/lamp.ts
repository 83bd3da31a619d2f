/**
 * Threads of lamp caps and holders, E10 to E40, mm: two arcs of one radius that run into each other half way down.
 *
 * The number is a name: the basic sizes here are those of the largest cap. Arcs of radius r, depth h: 4 r h = h^2 + P^2/4;
 * where they meet they stand at an angle that serves as the flank, tan a = (2 r - h)/(P/2). Source: IEC 60061-1 and
 * DIN 40400, from memory; the radii that they print (0.531, 0.822, 1.025, 1.187, 1.85) follow from these diameters.
 */
import { byName } from "./byname.ts";
import type { Form } from "./form.ts";
import { type Asked, type Fitted, noClasses, type Parts, type Series, type Size } from "./series.ts";
import { round } from "./text.ts";
import type { Limits } from "./thread.ts";

const inch = 25.4;

// Size, threads per inch, largest major and minor diameter of the cap, tolerance of all, clearance of the holder.
const table = `10 14 9.53 8.51 .17 .08|14 9 13.89 12.29 .19 .08|27 7 26.45 24.26 .3 .1|33 6 33.05 30.45 .4 .1
40 4 39.5 35.9 .45 .1`;

const rows = table.split(/[|\n]/).map((row) => {
  const [name = "", ...figures] = row.split(" ");
  const [tpi = 0, major = 0, minor = 0, tolerance = 0, clearance = 0] = figures.map(Number);
  return { name, pitch: inch / tpi, major, minor, tolerance, clearance };
});

type Row = (typeof rows)[number];

function arcs({ major, minor, pitch: P }: Row): Form {
  const h = (major - minor) / 2;
  const r = (h * h + (P * P) / 4) / (4 * h);
  const flank = (Math.atan((2 * r - h) / (P / 2)) * 180) / Math.PI;
  return {
    name: "lamp",
    loadFlank: flank,
    clearanceFlank: flank,
    addendum: () => h / 2,
    dedendum: () => h / 2,
    depth: { external: () => h, internal: () => h },
    rootRadius: () => r,
    crestRadius: () => r,
    roundRoot: true,
  };
}

const rowOf = (name: string): Row => rows.find((row) => row.name === name)!;

function limits({ name, member }: Fitted): Limits {
  const { major, minor, tolerance, clearance } = rowOf(name);
  const two = (value: number) => round(value, 2);
  const cap = (value: number) => ({ max: value, min: two(value - tolerance) });
  const holder = (value: number) => ({
    min: two(value + clearance),
    max: two(value + clearance + tolerance),
  });
  const side = member === "internal" ? holder : cap;
  return { major: side(major), pitch: {}, minor: side(minor) };
}

const sizes: readonly Size[] = rows.map(({ name, major, pitch }) => ({ name, major, pitches: [pitch] }));

function readLamp(parts: Parts, series: Series): Asked {
  const asked = byName(parts, series);
  return { ...asked, form: arcs(rowOf(asked.name)) };
}

export const lamp: Series = {
  name: "E",
  words: ["e"],
  standard: "IEC 60061-1, DIN 40400",
  unit: "mm",
  // Every size brings its own form; this one only fills the place.
  form: arcs(rows[0]!),
  sizes,
  perInch: false,
  read: readLamp,
  list: (size) => `E${size.name}`,
  classes: noClasses,
  limits,
  note: "lamp threads are from memory of IEC 60061-1; they have no straight flank, the angle is that where the arcs meet",
};
