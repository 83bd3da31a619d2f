/**
 * Custom notes: a thread of no standard, written as text that reads back like any designation.
 *
 * "Custom 20x2.5 mm, flanks 30/30, depth 1.5, root 0.5, starts 2": major and pitch, load and clearance flank, radial
 * depth, width of the root flat. The pitch line is where thread and groove are equally wide. Source: geometry.
 */
import { type Form, tan } from "./form.ts";
import { unreadable } from "./grammar.ts";
import type { Asked, Parts, Series } from "./series.ts";
import type { LengthUnit } from "./thread.ts";

export interface CustomThread {
  readonly major: number;
  readonly pitch: number;
  readonly loadFlank: number;
  readonly clearanceFlank: number;
  /** Radial depth. */
  readonly depth: number;
  /** Width of the root flat; left out, crest and root are alike. */
  readonly rootFlat?: number | undefined;
  readonly starts?: number | undefined;
  readonly unit: LengthUnit;
}

/**
 * The note for a custom thread, all lengths in `unit`.
 *
 * @throws RangeError when the numbers do not describe a thread
 */
export function customNote(thread: CustomThread): string {
  customForm(thread);
  const { major, pitch, loadFlank, clearanceFlank, depth, rootFlat, starts = 1, unit } = thread;
  const root = rootFlat === undefined ? "" : `, root ${rootFlat}`;
  const several = starts === 1 ? "" : `, starts ${starts}`;
  return `Custom ${major}x${pitch} ${unit}, flanks ${loadFlank}/${clearanceFlank}, depth ${depth}${root}${several}`;
}

const short = (value: number): number => Number(value.toPrecision(7));

function above(name: string, value: number, bound: number): void {
  if (!(value > bound) || !Number.isFinite(value))
    throw new RangeError(`${name} must be greater than ${bound}, got ${value}`);
}

function customForm({
  major,
  pitch: P,
  loadFlank,
  clearanceFlank,
  depth,
  rootFlat,
  starts = 1,
}: CustomThread): Form {
  above("major", major, 0);
  above("pitch", P, 0);
  above("depth", depth, 0);
  for (const [name, flank] of [
    ["load_flank", loadFlank],
    ["clearance_flank", clearanceFlank],
  ] as const) {
    if (!(flank > -30 && flank < 80))
      throw new RangeError(`${name} must be between -30 and 80 degrees, got ${flank}`);
  }
  if (loadFlank + clearanceFlank < 0)
    throw new RangeError(
      `load_flank and clearance_flank must not sum below 0, got ${loadFlank + clearanceFlank}`,
    );
  if (2 * depth >= major)
    throw new RangeError(`depth must be less than half the major ${major}, got ${depth}`);
  if (!Number.isInteger(starts) || starts < 1 || starts > 24)
    throw new RangeError(`starts must be a whole number from 1 to 24, got ${starts}`);
  const slopes = tan(loadFlank) + tan(clearanceFlank);
  const root = rootFlat ?? (P - depth * slopes) / 2;
  const crest = P - root - depth * slopes;
  const room = P * 1e-9;
  if (root < -room || crest < -room) {
    throw new RangeError(
      `depth must leave a root and crest of 0 or more: root ${short(root)}, crest ${short(crest)} at depth ${depth}`,
    );
  }
  if (slopes > 1e-9 ? root > P / 2 || crest > P / 2 : Math.abs(root - P / 2) > room) {
    throw new RangeError(
      `root_flat must put the pitch line between crest and root (each up to half the pitch), got ${root}`,
    );
  }
  const dedendum = slopes > 1e-9 ? (P / 2 - root) / slopes : depth / 2;
  return {
    name: "custom",
    loadFlank,
    clearanceFlank,
    addendum: () => depth - dedendum,
    dedendum: () => dedendum,
    depth: { external: () => depth, internal: () => depth },
    rootFlat: () => Math.max(0, root),
    crestFlat: () => Math.max(0, crest),
  };
}

const number = String.raw`(-?\d*\.?\d+(?:e-?\d+)?)`;
const piece = (what: string, pattern: string) => ({
  what,
  pattern: new RegExp(String.raw`^[\s,;]*${pattern}`, "i"),
});

/** The note in the order in which it is read; root and starts may be absent. */
const pieces = {
  size: piece("major x pitch and their unit", String.raw`${number}\s*x\s*${number}\s*(mm|in)?(?![a-z])`),
  flanks: piece("flanks load/clearance", String.raw`flanks ${number}\s*/\s*${number}`),
  depth: piece("the depth", `depth ${number}`),
  root: piece("root", `root ${number}`),
  starts: piece("starts", String.raw`starts (\d+)\b`),
};

/** Reads the note that customNote writes. */
function readCustom(parts: Parts, series: Series): Asked {
  let left = parts.after;
  const stop = () => ({
    read: `Custom ${parts.after.slice(0, parts.after.length - left.length)}`.trim(),
    at: left.replace(/^[\s,;]+/, ""),
  });
  const take = ({ pattern }: { pattern: RegExp }): readonly string[] | undefined => {
    const found = pattern.exec(left);
    left = left.slice(found?.[0].length ?? 0);
    return found?.slice(1);
  };
  const need = (wanted: (typeof pieces)[keyof typeof pieces]) => {
    const found = take(wanted);
    if (found) return found;
    const why = `${wanted.what} is wanted, as in the text that THREAD.CUSTOM gives`;
    throw unreadable(parts.text, why, stop());
  };
  const [major, pitch, unit] = need(pieces.size);
  const [loadFlank, clearanceFlank] = need(pieces.flanks);
  const [depth] = need(pieces.depth);
  const root = take(pieces.root)?.[0];
  const starts = take(pieces.starts)?.[0];
  if (left.trim() !== "") throw unreadable(parts.text, "only root and starts may follow the depth", stop());
  const thread: CustomThread = {
    major: Number(major),
    pitch: Number(pitch),
    unit: unit?.toLowerCase() === "in" ? "in" : "mm",
    loadFlank: Number(loadFlank),
    clearanceFlank: Number(clearanceFlank),
    depth: Number(depth),
    rootFlat: root === undefined ? undefined : Number(root),
    starts: starts === undefined ? undefined : Number(starts),
  };
  return {
    series: thread.unit === "in" ? customInch : series,
    name: "custom",
    major: thread.major,
    pitch: thread.pitch,
    starts: thread.starts ?? 1,
    rest: "",
    written: customNote(thread),
    form: customForm(thread),
  };
}

export const custom: Series = {
  name: "Custom",
  words: ["custom"],
  standard: "none: a custom thread",
  unit: "mm",
  // Every note brings its own form; this one only fills the place.
  form: customForm({ major: 10, pitch: 1, loadFlank: 30, clearanceFlank: 30, depth: 0.5, unit: "mm" }),
  sizes: [],
  perInch: false,
  read: readCustom,
  list: (size, pitch) => `Custom ${size.name}x${pitch}`,
  classes: {
    read: () => undefined,
    usual: () => "",
    write: () => "",
    accepted: "none",
  },
};

const customInch: Series = { ...custom, unit: "in" };
