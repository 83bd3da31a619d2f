/** Which thread is this? Candidates for a measured major diameter and pitch, the likeliest first. */
import { catalogue } from "./catalogue.ts";
import { NothingFound } from "./failures.ts";
import { readThread } from "./read.ts";
import type { Series } from "./series.ts";
import { convertLength, type LengthUnit, type Thread } from "./thread.ts";

interface Candidate {
  readonly designation: string;
  readonly included: number;
  readonly taper: number;
  /** Millimetres. */
  readonly major: number;
  readonly pitch: number;
  /** How much a sound screw may measure under the basic major diameter. */
  readonly under: number;
}

let candidates: readonly Candidate[] | undefined;

/**
 * Every tabled size, gathered when first asked for, since most sheets never ask. What no measurement of size, pitch, angle
 * and taper tells apart stands once, under the series that the catalogue names first.
 */
function allCandidates(): readonly Candidate[] {
  if (candidates) return candidates;
  const distinct = new Map<string, Candidate>();
  for (const series of catalogue) {
    for (const size of series.sizes) {
      for (const pitch of size.pitches.filter((given) => given > 0)) {
        const found = candidate(series, series.list(size, pitch));
        const key = [found.major, found.pitch, found.included, found.taper]
          .map((n) => n.toFixed(6))
          .join(" ");
        if (!distinct.has(key)) distinct.set(key, found);
      }
    }
  }
  candidates = [...distinct.values()];
  return candidates;
}

function candidate(series: Series, designation: string): Candidate {
  const thread = readThread(designation);
  const mm = (length: number) => convertLength(length, thread.unit, "mm");
  return {
    designation,
    included: thread.loadFlank + thread.clearanceFlank,
    taper: thread.taper,
    major: mm(thread.major),
    pitch: mm(thread.pitch * thread.starts),
    under: mm(majorTolerance(series, thread)) + 0.1 * mm(thread.pitch),
  };
}

/** Major tolerance of the loosest class of the screw; 0 where the standard has none. */
function majorTolerance(series: Series, thread: Thread): number {
  const { name, pitchDia, minor, major, pitch } = {
    ...thread,
    name: series.sizes.find((s) => s.major === thread.major)?.name ?? "",
  };
  if (series.loosest === undefined || !series.limits) return 0;
  try {
    const limits = series.limits({
      name,
      major,
      pitch,
      pitchDia,
      minor,
      member: "external",
      fit: series.loosest,
    });
    const { max, min } = limits.major;
    return max === undefined || min === undefined ? 0 : max - min;
  } catch (error) {
    if (error instanceof NothingFound) return 0;
    throw error;
  }
}

export interface Measured {
  readonly major: number;
  /** Lead for several starts. */
  readonly pitch: number;
  readonly unit: LengthUnit;
  /** Largest difference of lead, in `unit`; default 1 % of the pitch. */
  readonly tolerance?: number | undefined;
  /** Included angle in degrees, when it is known. */
  readonly included?: number | undefined;
}

/** Larger differences of the major diameter than this share of the pitch are no match at all. */
const farthest = 1.5;

/**
 * Designation of the rank-th candidate; candidates of one size, pitch and (not known) angle are named together.
 *
 * @throws NothingFound when there is no such candidate
 * @throws RangeError when a number is outside its domain
 */
export function matchThread(
  { major, pitch, unit, tolerance = pitch / 100, included }: Measured,
  rank: number,
): string {
  for (const [name, value] of Object.entries({ major, pitch, tolerance })) {
    if (!(value > 0)) throw new RangeError(`${name} must be greater than 0, got ${value}`);
  }
  if (!Number.isInteger(rank) || rank < 1)
    throw new RangeError(`rank must be a whole number from 1 up, got ${rank}`);
  const D = convertLength(major, unit, "mm");
  const lead = convertLength(pitch, unit, "mm");
  const room = convertLength(tolerance, unit, "mm") * (1 + 1e-9);
  const fitting = allCandidates()
    .filter((c) => Math.abs(c.pitch - lead) <= room && Math.abs(c.major - D) <= farthest * lead)
    .filter((c) => included === undefined || Math.abs(c.included - included) < 0.01)
    .map((c) => ({ ...c, distance: distance(c, D), off: Math.abs(c.pitch - lead) }))
    .sort((a, b) => (alike(a.distance, b.distance) ? a.off - b.off : a.distance - b.distance));
  const groups: string[][] = [];
  let last: (typeof fitting)[number] | undefined;
  for (const c of fitting) {
    if (last && alike(last.distance, c.distance) && alike(last.off, c.off))
      groups.at(-1)!.push(c.designation);
    else groups.push([c.designation]);
    last = c;
  }
  const group = groups[rank - 1];
  if (!group) {
    throw new NothingFound(
      groups.length === 0
        ? `no thread with a lead of ${pitch} ${unit} within ${tolerance} and a major diameter near ${major} ${unit}`
        : `only ${groups.length} candidates, got rank ${rank}`,
    );
  }
  return group.join(" or ");
}

/** A used screw measures under its basic size: as far as that explains the difference it counts once, else twice. */
function distance({ major, under }: Candidate, measured: number): number {
  const below = major - measured;
  return below >= -1e-9 && below <= under ? Math.abs(below) : 2 * Math.abs(below);
}

function alike(a: number, b: number): boolean {
  return Math.abs(a - b) < 1e-7;
}
