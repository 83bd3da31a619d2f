/**
 * How many divisions of the slide each pass takes: equal chip area, whole divisions, falling, none thinner than cuts.
 *
 * 1. The area of the first cut at its limit is allowed for every pass; passes = total area / that, rounded up.
 * 2. Ideal depths of equal area are rounded to divisions cumulatively, so that rounding never adds up; the differences
 *    are sorted falling.
 * 3. From the first pass under the least cut on, every pass takes the least cut; divisions over go one each to the first
 *    of those.
 * 4. If pass 1 then exceeds the first cut, or any pass takes more than 1.05 times the area allowed, one more pass, again.
 *
 * A sharp tool with a small first cut can make 4 impossible: deep in the groove even the least cut is more than the area
 * allowed. Then each pass takes what that area holds but never less than the least cut, since a tool that rubs cuts
 * nothing, and the reasons say so.
 *
 * Source: common practice, no source.
 */
import { ceilWhole, floorWhole } from "./bounds.ts";
import { depthForArea, type Groove, grooveArea } from "./chip-area.ts";

/** Room over the allowed area before a pass is added: whole divisions cannot hit it exactly. */
const AREA_ROOM = 1.05;
/** From this many ideal passes on equal area is not searched for: the least cut rules anyway. */
const MOST_IDEAL = 1000;
/** How many passes may be added in search of equal area. */
const MOST_ADDED = 400;
/** No person winds more passes than this. */
export const MOST_PASSES = 400;

export interface SlideWork {
  /** Divisions to wind in all. */
  readonly total: number;
  /** Limit of the first cut, and the least cut, in divisions; 1 <= least <= most. */
  readonly most: number;
  readonly least: number;
  /** Radial depth of one division. */
  readonly step: number;
  readonly groove: Groove;
}

export interface SlidePasses {
  /** Divisions of each pass, falling; they add up to the total. */
  readonly divisions: readonly number[];
  /** A sentence for every adjustment. */
  readonly reasons: readonly string[];
}

/** @throws RangeError when no such plan exists: the message says which limits clash */
export function divideSlide(work: SlideWork): SlidePasses {
  const allowed = grooveArea(work.most * work.step, work.groove);
  const slide = byEqualArea(work, allowed) ?? byAreaLimit(work, allowed);
  const first = slide.divisions[0]!;
  if (first > work.most) {
    throw new RangeError(
      `no plan is made: first_cut (${work.most} divisions) and least_cut (${work.least} divisions) do not fit ${work.total} divisions, raise first_cut or lower least_cut`,
    );
  }
  if (slide.divisions.length > MOST_PASSES) throw tooSmall(`${slide.divisions.length} passes`);
  return slide;
}

/** Steps 1 to 4; undefined where no number of passes satisfies them. */
function byEqualArea(work: SlideWork, allowed: number): SlidePasses | undefined {
  const { total, least, step, groove } = work;
  const area = (upTo: number) => grooveArea(upTo * step, groove);
  const ideal = Math.max(1, ceilWhole(area(total) / allowed));
  // The last pass is the least cut or more, and the deepest is the widest: if that is too much, all search is in vain.
  const lastArea = area(total) - area(total - Math.min(least, total));
  if (ideal > MOST_IDEAL || lastArea > AREA_ROOM * allowed) return undefined;
  let firstFault: string | undefined;
  for (let count = ideal; count <= ideal + MOST_ADDED; count++) {
    const { divisions, lifted } = liftThin(equalArea(count, work), least);
    const fault = findFault(divisions, allowed, work);
    if (fault === undefined) {
      const reasons: string[] = [];
      if (firstFault !== undefined) {
        reasons.push(`Reckoned for ${count} passes of equal area instead of ${ideal}: ${firstFault}.`);
      }
      if (lifted < divisions.length) reasons.push(heldSentence(lifted, divisions.length, work));
      return { divisions, reasons };
    }
    firstFault ??= fault;
  }
  return undefined;
}

/**
 * Each pass takes as many divisions as the area allowed holds, and never less than the least cut.
 *
 * For a sharp tool with a small first cut, whose passes of equal area would be too thin to cut.
 */
function byAreaLimit(work: SlideWork, allowed: number): SlidePasses {
  const { total, most, least, step, groove } = work;
  const divisions: number[] = [];
  let held = Number.POSITIVE_INFINITY;
  let done = 0;
  while (done < total) {
    if (divisions.length > MOST_PASSES) throw tooSmall(`more than ${MOST_PASSES} passes`);
    const reach = floorWhole(depthForArea(grooveArea(done * step, groove) + allowed, groove) / step) - done;
    if (reach < least) held = Math.min(held, divisions.length);
    const wind = Math.min(divisions.at(-1) ?? most, Math.max(least, reach), total - done);
    divisions.push(wind);
    done += wind;
  }
  const tidy = joinShort(divisions, least);
  const times = Math.max(...passAreas(tidy, step, groove)) / allowed;
  const reasons = [
    "Passes take what the chip area of the first cut allows: equal area would make some too thin.",
  ];
  if (held < tidy.length) reasons.push(heldSentence(held, tidy.length, work));
  if (times > AREA_ROOM) {
    reasons.push(
      `At the least cut the chip area still rises to ${times.toFixed(2)} times that of the first cut; a thinner pass would rub. A blunter nose, a larger first cut or a smaller least cut evens it out.`,
    );
  }
  return { divisions: tidy, reasons };
}

/** A last pass under `least` is shared out: with the one before if both then cut, else one each to passes like that. */
export function joinShort(divisions: readonly number[], least: number): number[] {
  const short = divisions.at(-1)!;
  const before = divisions.at(-2);
  if (short >= least || before === undefined) return [...divisions];
  if (before + short >= 2 * least) {
    const half = Math.floor((before + short) / 2);
    return [...divisions.slice(0, -2), before + short - half, half];
  }
  const passes = divisions.slice(0, -1);
  const from = passes.indexOf(before);
  for (let k = 0; k < short; k++) {
    const to = from + (k % (passes.length - from));
    passes[to] = passes[to]! + 1;
  }
  return passes.sort(falling);
}

export function heldSentence(from: number, count: number, { least, total }: SlideWork): string {
  if (total < least) return `All ${total} divisions together are less than the least cut of ${least}.`;
  const which = from + 1 === count ? `Pass ${count} is` : `Passes ${from + 1} to ${count} are`;
  return `${which} held at the least cut of ${least} ${least === 1 ? "division" : "divisions"} or just over: equal area would make them thinner.`;
}

/** Refusal of a plan that nobody would cut. */
export function tooSmall(what: string): RangeError {
  return new RangeError(`the first cut or division is too small for this depth: ${what}`);
}

/** Divisions of `count` passes of equal area, rounded cumulatively, falling. */
function equalArea(count: number, { total, step, groove }: SlideWork): number[] {
  const area = grooveArea(total * step, groove);
  const divisions: number[] = [];
  let before = 0;
  for (let pass = 1; pass <= count; pass++) {
    const upTo = pass === count ? total : Math.round(depthForArea((area * pass) / count, groove) / step);
    divisions.push(upTo - before);
    before = upTo;
  }
  return divisions.sort(falling);
}

/**
 * From the first pass under `least` on, every pass takes `least`; divisions over go one each to the first of those.
 *
 * @returns the passes, and how many of them at the start were left alone
 */
function liftThin(passes: readonly number[], least: number): { divisions: number[]; lifted: number } {
  let from = passes.findIndex((pass) => pass < least);
  if (from < 0) return { divisions: [...passes], lifted: passes.length };
  let pool = sum(passes.slice(from));
  // Too little left for one pass at the least cut: it joins the pass before.
  while (pool < least && from > 0) {
    from -= 1;
    pool += passes[from]!;
  }
  const count = Math.max(1, Math.floor(pool / least));
  const each = Math.floor(pool / count);
  const over = pool - each * count;
  const tail = Array.from({ length: count }, (_, k) => (k < over ? each + 1 : each));
  return { divisions: [...passes.slice(0, from), ...tail].sort(falling), lifted: from };
}

/** Why these passes will not do, or undefined. */
function findFault(
  divisions: readonly number[],
  allowed: number,
  { most, step, groove }: SlideWork,
): string | undefined {
  if (divisions[0]! > most)
    return `pass 1 would wind ${divisions[0]} divisions where first_cut allows ${most}`;
  const areas = passAreas(divisions, step, groove);
  const over = areas.findIndex((area) => area > AREA_ROOM * allowed);
  if (over < 0) return undefined;
  const times = (areas[over]! / allowed).toFixed(2);
  return `pass ${over + 1} would take ${times} times the chip area of the first cut`;
}

function passAreas(divisions: readonly number[], step: number, groove: Groove): number[] {
  let total = 0;
  return divisions.map((wind) => {
    const before = grooveArea(total * step, groove);
    total += wind;
    return grooveArea(total * step, groove) - before;
  });
}

export function falling(a: number, b: number): number {
  return b - a;
}

function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0);
}
