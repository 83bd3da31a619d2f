/**
 * Pipe threads of Whitworth form for joints that are tight on the thread: taper R and Rc, parallel Rp, in mm.
 *
 * Diameters of taper threads are those at the gauge plane. The standard counts lengths and tolerances in turns and prints
 * them in mm to one decimal. A turn off the gauge plane is a sixteenth of the pitch on every diameter there, which is what
 * the limits of size say. Source: ISO 7-1, turns from memory; its printed millimetres agree.
 */
import { type Gauge, pipeTaper } from "./gauge.ts";
import { jointSizes, whitworthPipe } from "./pipe.ts";
import { type Basic, type Fitted, noClasses, type Series } from "./series.ts";
import { round } from "./text.ts";
import type { Limits } from "./thread.ts";

/** Turns from the small end to the gauge plane, and of useful thread beyond it. */
const turns: Readonly<Record<string, readonly [gauge: number, fitting: number]>> = {
  "1/16": [4.375, 2.75],
  "1/8": [4.375, 2.75],
  "1/4": [4.5, 2.75],
  "3/8": [4.75, 2.75],
  "1/2": [4.5, 2.75],
  "3/4": [5.25, 2.75],
  "1": [4.5, 2.75],
  "1 1/4": [5.5, 2.75],
  "1 1/2": [5.5, 2.75],
  "2": [6.875, 3.25],
  "2 1/2": [7.5625, 4],
  "3": [8.9375, 4],
  "4": [11, 4.5],
  "5": [12.375, 5],
  "6": [12.375, 5],
};

/** Turns by which the gauge plane may be off, either way: of the screw, of the nut. */
const off = (major: number) => (major > 60 ? { screw: 1.5, nut: 1.5 } : { screw: 1, nut: 1.25 });

function gauge(name: string, major: number, P: number, { pitchDia }: Basic): Gauge {
  const [gaugeTurns, fittingTurns] = turns[name]!;
  const mm = (count: number) => round(count * P, 1);
  const length = mm(gaugeTurns);
  return {
    length,
    lengthTolerance: mm(off(major).screw),
    planeTolerance: mm(off(major).nut),
    useful: round(length + mm(fittingTurns), 1),
    smallEnd: pitchDia - length * pipeTaper,
  };
}

function limits({ major, pitch, pitchDia, minor, member }: Fitted): Limits {
  const { screw, nut } = off(major);
  const room = (member === "internal" ? nut : screw) * pitch * pipeTaper;
  const around = (value: number) => ({
    min: round(value - round(room, 3), 3),
    max: round(value + round(room, 3), 3),
  });
  return { major: around(major), pitch: around(pitchDia), minor: around(minor[member]) };
}

const common = {
  ...whitworthPipe,
  standard: "ISO 7-1",
  sizes: jointSizes,
  classes: noClasses,
  limits,
} as const;

export const pipeR: Series = {
  ...common,
  name: "R",
  words: ["r", "bspt", "pt"],
  list: (size) => `R ${size.name}`,
  taper: pipeTaper,
  gauge,
};

export const pipeRc: Series = {
  ...pipeR,
  name: "Rc",
  words: ["rc"],
  member: "internal",
  list: (size) => `Rc ${size.name}`,
};

export const pipeRp: Series = {
  ...common,
  name: "Rp",
  words: ["rp"],
  member: "internal",
  list: (size) => `Rp ${size.name}`,
};
