/** Figures for tests: drawn from the sheet functions, by seeded chance. */
import fc from "fast-check";
import type { Drawn } from "../../src/functions/declare.ts";
import { drawFunctions } from "../../src/functions/draw.ts";
import type { Figure, PassesFigure, SetoverFigure, WiresFigure } from "../../src/lathe/figure.ts";
import { catalogue } from "../../src/thread/catalogue.ts";
import { readThread } from "../../src/thread/read.ts";

export const seed = { seed: 20261125 };

/** Calls a function of the drawing family with arguments as they arrive from a sheet. */
export function drawn(name: string, ...args: unknown[]): Drawn {
  const fn = drawFunctions.find((each) => each.name === `DRAW.${name}`);
  if (!fn || !("compute" in fn)) throw new Error(`there is no DRAW.${name}`);
  const filled = fn.params.map((param, i) => args[i] ?? param.fallback);
  return (fn.compute as (...values: unknown[]) => Drawn)(...filled);
}

const tabled = catalogue.flatMap((series) =>
  series.sizes.flatMap((size) =>
    size.pitches
      .filter((pitch) => pitch > 0)
      .flatMap((pitch) => {
        const name = series.list(size, pitch);
        return series.member === "internal" ? [name] : [name, `${name} nut`];
      }),
  ),
);

/** Any thread of the tables, screw or nut, and metric and trapezoidal ones of any size, several starts, left hand. */
const designation = fc.oneof(
  { weight: 4, arbitrary: fc.constantFrom(...tabled) },
  {
    weight: 1,
    arbitrary: fc
      .tuple(
        fc.integer({ min: 3, max: 300 }),
        fc.constantFrom(0.35, 0.5, 1, 1.5, 2, 3, 4, 6),
        fc.constantFrom("", "-6g", "-6H", "-4h", " LH"),
      )
      .map(([size, pitch, rest]) => `M${size}x${pitch}${rest}`),
  },
  {
    weight: 1,
    arbitrary: fc
      .tuple(fc.integer({ min: 20, max: 100 }), fc.integer({ min: 2, max: 4 }), fc.constantFrom(2, 3, 4))
      .map(([size, starts, pitch]) => `Tr ${size}x${starts * pitch} P${pitch}-7e`),
  },
  { weight: 1, arbitrary: fc.constantFrom("2-4 Butt", "2-4 Push-Butt", "Sq 1-4", "1-13 UNS", "3/4-14 Whit") },
);

/** As many valid designations as wanted, the same ones every time. */
export function threads(count: number): string[] {
  const found: string[] = [];
  for (const text of fc.sample(designation, { ...seed, numRuns: 4 * count })) {
    if (found.length === count) break;
    try {
      readThread(text);
      found.push(text);
    } catch {
      // A size that is not there, such as a pitch too coarse for its diameter.
    }
  }
  return found;
}

export function threadFigure(text: string, unit?: "mm" | "in"): Figure {
  return drawn("THREAD", text, unit ?? readThread(text).unit).figure;
}

/** Undefined for square flanks, on which nothing rests, and where the lead is too steep for a wire. */
export function wiresFigure(text: string): WiresFigure | undefined {
  const { unit, pitch, loadFlank, clearanceFlank } = readThread(text);
  try {
    // (P/2) sec(A/2), the best wire of a symmetric form and near it for others.
    const wire = pitch / 2 / Math.cos(((loadFlank + clearanceFlank) * Math.PI) / 360);
    return drawn("WIRES", text, wire, unit).figure as WiresFigure;
  } catch (error) {
    if (error instanceof RangeError) return undefined;
    throw error;
  }
}

export const setoverFigures: fc.Arbitrary<SetoverFigure> = fc
  .tuple(
    fc.double({ min: -60, max: 75, noNaN: true }),
    fc.constantFrom("square", "bed", "obtuse"),
    fc.option(fc.double({ min: 0, max: 60, noNaN: true }), { nil: undefined }),
    fc.constantFrom("right", "left"),
    fc.constantFrom("external", "internal"),
  )
  .map((args) => drawn("SETOVER", ...args).figure as SetoverFigure);

export interface PassesAsked {
  readonly depths: readonly number[];
  readonly setover: number;
  readonly included: number;
  readonly nose: number;
  readonly trailing: number;
  readonly shape: "flat" | "radius";
  readonly next: number | undefined;
  readonly direction?: "in" | "out";
}

/** Grooves of every kind; `share` of the trailing flank (or below 0 of the leading one) is the set-over. */
export const passesAsked = (share: fc.Arbitrary<number>): fc.Arbitrary<PassesAsked> =>
  fc
    .record({
      steps: fc.array(fc.double({ min: 0.02, max: 1, noNaN: true }), { minLength: 1, maxLength: 16 }),
      scale: fc.double({ min: 0.05, max: 5, noNaN: true }),
      included: fc.double({ min: 20, max: 90, noNaN: true }),
      lean: fc.double({ min: 0.1, max: 0.9, noNaN: true }),
      nose: fc.double({ min: 0, max: 0.3, noNaN: true }),
      shape: fc.constantFrom("flat", "radius"),
      share,
      next: fc.option(fc.double({ min: 0, max: 1, noNaN: true }), { nil: undefined }),
    })
    .map(({ steps, scale, included, lean, nose, shape, share: part, next }) => {
      let depth = 0;
      const depths = steps.map((step) => {
        depth += step * scale;
        return depth;
      });
      const trailing = included * lean;
      const flank = part >= 0 ? trailing : included - trailing;
      return {
        depths,
        setover: Math.max(-80, Math.min(80, part * flank)),
        included,
        nose: nose * depth,
        trailing,
        shape,
        next: next === undefined ? undefined : 1 + Math.round(next * depths.length),
      };
    });

export function passesFigure({
  depths,
  setover,
  included,
  nose,
  trailing,
  shape,
  next,
  direction,
}: PassesAsked): PassesFigure {
  return drawn("PASSES", depths, setover, included, nose, trailing, shape, next, direction)
    .figure as PassesFigure;
}

/** Points of a path of straight lines. */
export function pointsOf(d: string): [number, number][] {
  return [...d.matchAll(/[ML](-?[\d.e-]+) (-?[\d.e-]+)/g)].map(([, x, y]) => [Number(x), Number(y)]);
}

/** Area inside a ring of points, by the shoelace formula. */
export function shoelace(points: readonly (readonly [number, number])[]): number {
  let twice = 0;
  points.forEach(([x, y], i) => {
    const [nx, ny] = points[(i + 1) % points.length]!;
    twice += x * ny - nx * y;
  });
  return Math.abs(twice) / 2;
}
