/**
 * Which thread is this? Candidates for a measured diameter and lead over every tabled size, the likeliest first.
 *
 * A used screw measures under its basic major diameter, a used nut over its basic minor diameter: as far as the
 * tolerance of the loosest class and a tenth of the pitch explain the difference it counts once, else twice. Source:
 * sizes of the standards; the order is common practice, no source.
 */
import { catalogue } from "./catalogue.ts";
import { NothingFound } from "./failures.ts";
import { readThread } from "./read.ts";
import type { Series } from "./series.ts";
import { convertLength, type LengthUnit, type Member, type Thread } from "./thread.ts";

/** A tabled size, lengths in millimetres. */
interface Known {
  readonly designation: string;
  /** Other threads that no measurement of size, pitch, angle and taper tells from this one. */
  readonly also: string[];
  readonly form: string;
  readonly note: string | undefined;
  readonly included: number;
  readonly taper: number;
  /** Basic major diameter; basic minor diameter of a nut. */
  readonly basic: number;
  readonly lead: number;
  /** How much a sound part may measure on the worn side of the basic size. */
  readonly wear: number;
}

const known: Partial<Record<Member, readonly Known[]>> = {};

/**
 * Every tabled size, gathered when first asked for, since most sheets never ask. What is alike stands once, under the
 * series that the catalogue names first.
 */
function allKnown(member: Member): readonly Known[] {
  const before = known[member];
  if (before) return before;
  const distinct = new Map<string, Known>();
  for (const series of catalogue) {
    for (const size of series.sizes) {
      for (const pitch of size.pitches.filter((given) => given > 0)) {
        const found = knownSize(series, series.list(size, pitch), size.name, member);
        const key = [found.basic, found.lead, found.included, found.taper].map((n) => n.toFixed(6)).join(" ");
        const alike = distinct.get(key);
        if (alike) alike.also.push(found.designation);
        else distinct.set(key, found);
      }
    }
  }
  const all = [...distinct.values()];
  known[member] = all;
  return all;
}

function knownSize(series: Series, designation: string, name: string, member: Member): Known {
  const thread = readThread(designation);
  const mm = (length: number) => convertLength(length, thread.unit, "mm");
  const internal = member === "internal";
  return {
    designation,
    also: [],
    form: thread.form.name,
    note: thread.note,
    included: thread.loadFlank + thread.clearanceFlank,
    taper: thread.taper,
    basic: mm(internal ? thread.minor.internal : thread.major),
    lead: mm(thread.pitch * thread.starts),
    wear: mm((internal ? boreTolerance(thread) : majorTolerance(series, thread, name)) + 0.1 * thread.pitch),
  };
}

/** Major tolerance of the loosest class of the screw; 0 where the standard has none. */
function majorTolerance(series: Series, thread: Thread, name: string): number {
  const { loosest, limits } = series;
  if (loosest === undefined || !limits) return 0;
  const { major, pitch, pitchDia, minor } = thread;
  const fitted = { name, major, pitch, pitchDia, minor, member: "external", fit: loosest } as const;
  return spread(() => limits(fitted).major);
}

/** Minor tolerance of the usual class of the nut; 0 where the standard has none. */
function boreTolerance(thread: Thread): number {
  return spread(() => thread.limits("internal").minor);
}

function spread(limitsOf: () => { readonly max?: number; readonly min?: number }): number {
  try {
    const { max, min } = limitsOf();
    return max === undefined || min === undefined ? 0 : max - min;
  } catch (error) {
    if (error instanceof NothingFound) return 0;
    throw error;
  }
}

export interface Measured {
  /** Over the crests of a screw; the bore of a nut when `member` says so. */
  readonly major: number;
  /** Lead for several starts. */
  readonly pitch: number;
  readonly unit: LengthUnit;
  /** Largest difference of lead, in `unit`; default 1 % of the pitch. */
  readonly tolerance?: number | undefined;
  /** Included angle in degrees, when it is known. */
  readonly included?: number | undefined;
  readonly member?: Member | undefined;
  /** Whether the diameter grows along the thread, when that is known. */
  readonly tapers?: boolean | undefined;
}

/** Lengths in the unit of the measurement. */
export interface Candidate {
  readonly designation: string;
  readonly also: readonly string[];
  readonly form: string;
  /** Doubt about its figures. */
  readonly note: string | undefined;
  readonly included: number;
  readonly basic: number;
  /** Measured less basic. */
  readonly off: number;
  readonly lead: number;
  /** Measured less basic. */
  readonly leadOff: number;
  /** From 1; candidates that the measurement puts equally near share a rank. */
  readonly rank: number;
}

/** Larger differences of the diameter than this share of the pitch are no match at all. */
const farthest = 1.5;

/**
 * Candidates in their order; none when nothing fits.
 *
 * @throws RangeError when a number is outside its domain
 */
export function candidates(measured: Measured): readonly Candidate[] {
  const { major, pitch, unit, tolerance = pitch / 100, included, member = "external", tapers } = measured;
  for (const [name, value] of Object.entries({ major, pitch, tolerance })) {
    if (!(value > 0)) throw new RangeError(`${name} must be greater than 0, got ${value}`);
  }
  const D = convertLength(major, unit, "mm");
  const lead = convertLength(pitch, unit, "mm");
  const room = convertLength(tolerance, unit, "mm") * (1 + 1e-9);
  const fitting = allKnown(member)
    .filter((c) => Math.abs(c.lead - lead) <= room && Math.abs(c.basic - D) <= farthest * lead)
    .filter((c) => included === undefined || Math.abs(c.included - included) < 0.01)
    .filter((c) => tapers === undefined || c.taper > 0 === tapers)
    .map((c) => ({ ...c, distance: distance(c, D, member), leadOff: Math.abs(c.lead - lead) }))
    .sort((a, b) => (alike(a.distance, b.distance) ? a.leadOff - b.leadOff : a.distance - b.distance));
  const own = (mm: number) => convertLength(mm, "mm", unit);
  let rank = 0;
  return fitting.map((c, i) => {
    const before = fitting[i - 1];
    if (!before || !alike(before.distance, c.distance) || !alike(before.leadOff, c.leadOff)) rank++;
    const { designation, also, form, note, included } = c;
    const [basic, ownLead] = [own(c.basic), own(c.lead)];
    return {
      designation,
      also,
      form,
      note,
      included,
      basic,
      off: major - basic,
      lead: ownLead,
      leadOff: pitch - ownLead,
      rank,
    };
  });
}

/**
 * Designation of the rank-th candidate; candidates of one size, pitch and (not known) angle are named together.
 *
 * @throws NothingFound when there is no such candidate
 * @throws RangeError when a number is outside its domain
 */
export function matchThread(measured: Measured, rank: number): string {
  if (!Number.isInteger(rank) || rank < 1)
    throw new RangeError(`rank must be a whole number from 1 up, got ${rank}`);
  const found = candidates(measured);
  const group = found.filter((each) => each.rank === rank);
  if (group.length === 0) {
    const last = found.at(-1);
    throw last ? new NothingFound(`only ${last.rank} candidates, got rank ${rank}`) : nothingFits(measured);
  }
  return group.map(({ designation }) => designation).join(" or ");
}

/** Error for a measurement that no tabled size fits. */
export function nothingFits({ major, pitch, unit, tolerance = pitch / 100, member }: Measured): NothingFound {
  const what = member === "internal" ? "bore" : "major diameter";
  return new NothingFound(
    `no thread with a lead of ${pitch} ${unit} within ${tolerance} and a ${what} near ${major} ${unit}`,
  );
}

function distance({ basic, wear }: Known, measured: number, member: Member): number {
  const worn = member === "internal" ? measured - basic : basic - measured;
  return worn >= -1e-9 && worn <= wear ? Math.abs(worn) : 2 * Math.abs(worn);
}

function alike(a: number, b: number): boolean {
  return Math.abs(a - b) < 1e-7;
}
