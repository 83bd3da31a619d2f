/**
 * Finds the number for which a cell reaches a wanted value, between two limits.
 *
 * The limits are searched outward from the number that stands there now, so that the solution found is the nearest one.
 * Between two numbers where the value passes the wanted one, the place is closed in by the ITP method (Oliveira and
 * Takahashi, An Enhancement of the Bisection Method Average Performance Preserving Minmax Optimality, ACM Transactions
 * on Mathematical Software 47, 2020): never slower than halving, and as safe. A value in whole divisions jumps; there
 * the method ends with two numbers side by side and the values on both sides of the jump.
 */

export interface Sought {
  readonly wanted: number;
  readonly from: number;
  readonly to: number;
  /** Where to begin: the number that stands there now. */
  readonly start?: number | undefined;
}

/** A number and the value that it gives. */
export interface Point {
  readonly at: number;
  readonly gives: number;
}

export type Outcome =
  /** Gives the wanted value, as near as numbers can. */
  | { readonly kind: "found"; readonly point: Point }
  /** The value jumps past the wanted one. */
  | { readonly kind: "jump"; readonly below: Point; readonly above: Point }
  /** The value passes the wanted one only where it runs off to infinity. */
  | { readonly kind: "pole"; readonly near: number }
  /** The value never reaches the wanted one as far as was looked. */
  | { readonly kind: "none"; readonly least: Point; readonly most: Point; readonly nearest: Point }
  /** There is no number anywhere between the limits. */
  | { readonly kind: "empty" };

/** How often the value was asked for, and the nearest so far. */
export interface Progress {
  readonly tries: number;
  readonly nearest: Point | undefined;
}

/** Parts that the limits are cut into. A solution between two that both lie on one side of the wanted value may be missed. */
const parts = 64;

/** Asks for the value of one number after the other; it is given undefined where there is none, as in an error. */
export type Search = Generator<Asked, Outcome, number | undefined>;

export interface Asked extends Progress {
  readonly at: number;
}

/**
 * @throws RangeError if a limit or the wanted value is no finite number, or the limits are not in order
 */
export function solve(sought: Sought): Search {
  for (const name of ["wanted", "from", "to"] as const)
    if (!Number.isFinite(sought[name])) throw new RangeError(`${name} must be a number, got ${sought[name]}`);
  if (sought.from >= sought.to)
    throw new RangeError(`to must be more than from, ${sought.from}, got ${sought.to}`);
  return new Solver(sought).search();
}

/** A number with its value, and that less the wanted one; undefined where there is no value. */
interface Try {
  readonly at: number;
  readonly gives: number | undefined;
  readonly off: number | undefined;
}
type Known = Point & { readonly off: number };
type Tries = Generator<Asked, Known | undefined, number | undefined>;

const isKnown = (one: Try): one is Known => one.off !== undefined;

class Solver {
  private readonly tried = new Map<number, Try>();
  private nearest: Known | undefined;
  private least: Known | undefined;
  private most: Known | undefined;
  /** Nearest to the start first. */
  private readonly poles: number[] = [];
  private readonly jumps: { readonly below: Known; readonly above: Known }[] = [];

  constructor(private readonly sought: Sought) {}

  *search(): Search {
    const { from, to } = this.sought;
    const start = Math.min(to, Math.max(from, this.sought.start ?? (from + to) / 2));
    const step = (to - from) / parts;
    const inner = Array.from({ length: parts - 1 }, (_, i) => from + (i + 1) * step);
    const marks = [...new Set([from, ...inner, start, to])].sort((a, b) => a - b);
    const gaps = marks.slice(1).map((right, i) => ({ left: marks[i]!, right }));
    const distance = ({ left, right }: { left: number; right: number }) =>
      Math.max(0, left - start, start - right);
    for (const { left, right } of gaps.sort((a, b) => distance(a) - distance(b))) {
      const found = yield* this.between(yield* this.try(left), yield* this.try(right));
      if (found) return yield* this.tidied(found);
    }
    const touched = yield* this.touching(marks);
    if (touched) return yield* this.tidied(touched);
    return this.without();
  }

  private *try(at: number): Generator<Asked, Try, number | undefined> {
    const known = this.tried.get(at);
    if (known) return known;
    const value = yield { at, tries: this.tried.size, nearest: this.nearest && point(this.nearest) };
    const gives = value === undefined || !Number.isFinite(value) ? undefined : value;
    const now: Try = { at, gives, off: gives === undefined ? undefined : gives - this.sought.wanted };
    this.tried.set(at, now);
    if (isKnown(now)) {
      if (!this.nearest || Math.abs(now.off) < Math.abs(this.nearest.off)) this.nearest = now;
      if (!this.least || now.off < this.least.off) this.least = now;
      if (!this.most || now.off > this.most.off) this.most = now;
    }
    return now;
  }

  /** A solution between two numbers side by side, if the value passes the wanted one there. */
  private *between(left: Try, right: Try): Tries {
    if (isKnown(left) && isKnown(right)) return yield* this.passing(left, right);
    if (!isKnown(left) && !isKnown(right)) return undefined;
    // Somewhere between the two the values begin: look as far as they go.
    const known = isKnown(left) ? left : (right as Known);
    let edge = known;
    let beyond = isKnown(left) ? right : left;
    for (let halving = 0; halving < 52; halving++) {
      const middle = (edge.at + beyond.at) / 2;
      if (middle === edge.at || middle === beyond.at) break;
      const now = yield* this.try(middle);
      if (!isKnown(now)) {
        beyond = now;
        continue;
      }
      if (now.off === 0 || now.off < 0 !== edge.off < 0) return yield* this.passing(edge, now);
      edge = now;
    }
    return Math.abs(edge.off) <= 1e-7 * Math.abs(known.off) ? edge : undefined;
  }

  /** Closes in on the wanted value between two numbers, one below it and one above. */
  private *passing(one: Known, other: Known): Tries {
    if (one.off === 0) return one;
    if (other.off === 0) return other;
    if (one.off < 0 === other.off < 0) return undefined;
    let left = one.at < other.at ? one : other;
    let right = left === one ? other : one;
    const rising = left.off < 0;
    const before = Math.max(Math.abs(left.off), Math.abs(right.off));
    // Half of the distance between numbers side by side, there.
    const least = Math.max(Math.abs(left.at), Math.abs(right.at)) * 2 ** -53 + Number.MIN_VALUE;
    const slack = 0.2 / (right.at - left.at);
    const most = Math.ceil(Math.log2((right.at - left.at) / (2 * least))) + 1;
    for (let turn = 0; right.at - left.at > 2 * least; turn++) {
      const middle = left.at + (right.at - left.at) / 2;
      if (middle <= left.at || middle >= right.at) break;
      const next = yield* this.try(itp(left, right, middle, slack, least * 2 ** (most - turn)));
      // No value here: what is on both sides of it belongs to two different stretches.
      if (!isKnown(next)) {
        const found = (yield* this.between(left, next)) ?? (yield* this.between(next, right));
        const beside = yield* this.try(next.at - 1000 * least);
        if (!found && isKnown(beside) && Math.abs(beside.off) > 4 * before) this.poles.push(next.at);
        return found;
      }
      if (Math.abs(next.off) <= this.rounding) return next;
      if (next.off < 0 === rising) left = next;
      else right = next;
    }
    return yield* this.judged(left, right, least, before);
  }

  /** Whether two numbers side by side are a solution, a jump, or the edges of a pole. */
  private *judged(left: Known, right: Known, least: number, before: number): Tries {
    const [below, above] = left.off < 0 ? [left, right] : [right, left];
    const nearer = -below.off < above.off ? below : above;
    const jump = above.off - below.off;
    if (jump <= 1e-9 * before || Math.abs(nearer.off) <= 1e-12 * before) return nearer;
    // However steep, a value without a jump differs less over a step than over a thousand.
    const wide = yield* this.try(left.at - 1000 * least);
    const high = yield* this.try(right.at + 1000 * least);
    if (isKnown(wide) && isKnown(high) && jump < Math.abs(high.off - wide.off) / 2) {
      if (jump < 4 * before) return nearer;
    }
    if (jump >= 4 * before) this.poles.push(nearer.at);
    else this.jumps.push({ below, above });
    return undefined;
  }

  /** A solution where the value comes up to the wanted one and turns back. */
  private *touching(marks: readonly number[]): Tries {
    const known = marks.map((at) => this.tried.get(at)!);
    const turns = known.flatMap((middle, i) => {
      const [left, right] = [known[i - 1], known[i + 1]];
      if (!left || !right || !isKnown(left) || !isKnown(middle) || !isKnown(right)) return [];
      const low = Math.abs(middle.off);
      return low <= Math.abs(left.off) && low <= Math.abs(right.off) ? [{ left, middle, right }] : [];
    });
    turns.sort((a, b) => Math.abs(a.middle.off) - Math.abs(b.middle.off));
    for (const { left, middle, right } of turns.slice(0, 3)) {
      const found = yield* this.turning(left, middle, right);
      if (found) return found;
    }
    return undefined;
  }

  /** Follows the value to where it comes nearest, by golden section. */
  private *turning(left: Known, middle: Known, right: Known): Tries {
    const golden = (3 - Math.sqrt(5)) / 2;
    const start = Math.abs(left.off) + Math.abs(right.off);
    let [low, best, high] = [left.at, middle, right.at];
    for (let turn = 0; turn < 90 && high - low > 2 ** -52 * (Math.abs(low) + Math.abs(high)); turn++) {
      const inUpper = high - best.at > best.at - low;
      const at = inUpper ? best.at + golden * (high - best.at) : best.at - golden * (best.at - low);
      const now = yield* this.try(at);
      if (!isKnown(now)) return undefined;
      if (now.off === 0 || now.off < 0 !== best.off < 0) return yield* this.passing(best, now);
      if (Math.abs(now.off) < Math.abs(best.off)) {
        if (inUpper) low = best.at;
        else high = best.at;
        best = now;
      } else if (inUpper) high = at;
      else low = at;
    }
    return Math.abs(best.off) <= 1e-9 * Math.max(start, Math.abs(this.sought.wanted) * 1e-3)
      ? best
      : undefined;
  }

  /** The shortest number that does as well: nobody wants to read 0.30000000000000004. */
  private *tidied(found: Known): Search {
    const enough = Math.max(Math.abs(found.off), this.rounding);
    for (let digits = 1; digits < 16; digits++) {
      const at = Number(found.at.toPrecision(digits));
      if (at === found.at) break;
      if (at < this.sought.from || at > this.sought.to) continue;
      const now = yield* this.try(at);
      if (isKnown(now) && Math.abs(now.off) <= enough) return { kind: "found", point: point(now) };
    }
    return { kind: "found", point: point(found) };
  }

  private without(): Outcome {
    const { least, most, nearest, jumps, poles } = this;
    if (!least || !most || !nearest) return { kind: "empty" };
    if (jumps[0]) return { kind: "jump", below: point(jumps[0].below), above: point(jumps[0].above) };
    if (poles[0] !== undefined) return { kind: "pole", near: poles[0] };
    return {
      kind: "none",
      least: point(least),
      most: point(most),
      nearest: point(nearest),
    };
  }

  /** Differences that come of rounding alone. */
  private get rounding(): number {
    return 4 * 2 ** -53 * Math.max(Math.abs(this.sought.wanted), 2 ** -1022);
  }
}

function point({ at, gives }: Known): Point {
  return { at, gives };
}

/**
 * The next number of the ITP method: the secant, pulled towards the middle, and kept so near to the middle that the
 * whole takes no longer than halving.
 *
 * @param radius how far from the middle it may be at this turn, before half of the bracket is taken away
 */
function itp(left: Known, right: Known, middle: number, slack: number, radius: number): number {
  const width = right.at - left.at;
  const secant = (right.off * left.at - left.off * right.at) / (right.off - left.off);
  const side = Math.sign(middle - secant);
  const pull = slack * width * width;
  const truncated = pull <= Math.abs(middle - secant) ? secant + side * pull : middle;
  const reach = Math.max(0, radius - width / 2);
  const projected = Math.abs(truncated - middle) <= reach ? truncated : middle - side * reach;
  return projected > left.at && projected < right.at ? projected : middle;
}
