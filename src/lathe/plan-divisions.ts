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
 * allowed. Then the least cut wins, since a tool that rubs cuts nothing, and the reasons say so.
 *
 * Source: common practice, no source.
 */
import { ceilWhole } from "./bounds.ts";
import { depthForArea, type Groove, grooveArea } from "./chip-area.ts";

/** Room over the allowed area before a pass is added: whole divisions cannot hit it exactly. */
const AREA_ROOM = 1.05;
/** More ideal passes than this and the first cut is not meant for this depth. */
const MOST_IDEAL = 4000;
/** How many passes may be added in search of a plan. */
const MOST_ADDED = 400;

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
  const { total, most, least, step, groove } = work;
  const allowed = grooveArea(most * step, groove);
  const ideal = Math.max(1, ceilWhole(grooveArea(total * step, groove) / allowed));
  if (ideal > MOST_IDEAL) throw tooSmall(`${ideal} passes of equal area`);
  const lastAtLeast = total - Math.min(least, total);
  const lastArea = grooveArea(total * step, groove) - grooveArea(lastAtLeast * step, groove);
  const leastFits = lastArea <= AREA_ROOM * allowed;
  let firstFault: string | undefined;
  for (let count = ideal; count <= ideal + MOST_ADDED; count++) {
    const { divisions, lifted } = liftThin(equalArea(count, work), least);
    const fault = findFault(divisions, leastFits ? divisions.length : lifted, allowed, work);
    if (fault === undefined) {
      return {
        divisions,
        reasons: explain({ ideal, count, firstFault, divisions, lifted, leastFits, work, allowed }),
      };
    }
    firstFault ??= fault;
  }
  throw new RangeError(
    `no plan is made: first_cut (${most} divisions) and least_cut (${least} divisions) do not fit ${total} divisions, ${firstFault}; raise first_cut or lower least_cut`,
  );
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

/** Why these passes will not do, or undefined. The area of the first `watched` passes is held to the limit. */
function findFault(
  divisions: readonly number[],
  watched: number,
  allowed: number,
  { most, step, groove }: SlideWork,
): string | undefined {
  if (divisions[0]! > most) {
    return `pass 1 would wind ${divisions[0]} divisions where first_cut allows ${most}`;
  }
  const areas = passAreas(divisions, step, groove);
  const over = areas.findIndex((area, k) => k < watched && area > AREA_ROOM * allowed);
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

interface Outcome {
  readonly ideal: number;
  readonly count: number;
  readonly firstFault: string | undefined;
  readonly divisions: readonly number[];
  readonly lifted: number;
  readonly leastFits: boolean;
  readonly work: SlideWork;
  readonly allowed: number;
}

function explain({
  ideal,
  count,
  firstFault,
  divisions,
  lifted,
  leastFits,
  work,
  allowed,
}: Outcome): string[] {
  const reasons: string[] = [];
  if (firstFault !== undefined) {
    reasons.push(`Reckoned for ${count} passes of equal area instead of ${ideal}: ${firstFault}.`);
  }
  if (lifted < divisions.length) {
    const which =
      lifted + 1 === divisions.length
        ? `Pass ${lifted + 1} is`
        : `Passes ${lifted + 1} to ${divisions.length} are`;
    const plural = work.least === 1 ? "division" : "divisions";
    reasons.push(
      `${which} held at the least cut of ${work.least} ${plural} or just over: equal area would make them thinner.`,
    );
  }
  if (work.total < work.least) {
    reasons.push(`All ${work.total} divisions together are less than the least cut of ${work.least}.`);
  }
  if (!leastFits) {
    const times = Math.max(...passAreas(divisions, work.step, work.groove)) / allowed;
    reasons.push(
      `At the least cut the chip area still rises to ${times.toFixed(2)} times that of the first cut; a thinner pass would rub. A blunter nose, a larger first cut or a smaller least cut evens it out.`,
    );
  }
  return reasons;
}

function falling(a: number, b: number): number {
  return b - a;
}

function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0);
}
