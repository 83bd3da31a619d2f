/**
 * Drills by name: their sizes, and the stock drill nearest to a size.
 *
 * Source: ASME B94.11M for number and letter drills; a fraction or a size with its unit is taken as it is written.
 */
import { NothingFound, Unreadable } from "../thread/failures.ts";
import type { LengthUnit } from "../thread/thread.ts";
import { requireAbove } from "./bounds.ts";
import { type Drill, type Series, sizeIn, stockDrills } from "./drill-list.ts";

export type Rounding = "nearest" | "under" | "over";

/** Sizes nearer to each other than this share of them are one size. */
const SAME = 1e-9;

const WORDS = 'write "#7", "F", "1/4" or "6.8 mm"';

/** Diameter of a drill by its name. @throws as drillNamed */
export function drillSize(name: string, unit: LengthUnit): number {
  return sizeIn(drillNamed(name), unit);
}

/**
 * A drill by its name: `#7`, `No. 7`, `F`, `1/4`, `1 1/4 in`, `6.8 mm`, `0.257 in`. A comma is taken for the point.
 *
 * @throws Unreadable for a bare number, which may be a number drill or millimetres, and for other text
 * @throws NothingFound for a number drill outside 1 to 80
 * @throws RangeError for a size of 0
 */
export function drillNamed(name: string): Drill {
  const text = name.trim().replace(/\s+/g, " ").replace(",", ".");
  const stock = /^(?:#|no\.?|number) ?(\d+)$/i.exec(text)?.[1];
  if (stock !== undefined) return listed(`No. ${Number(stock)}`, "number drills run from No. 1 to No. 80");
  const letter = /^(?:letter )?([a-z])$/i.exec(text)?.[1];
  if (letter !== undefined) return listed(letter.toUpperCase(), "letter drills run from A to Z");
  const fraction = /^(?:(\d+)[ -])?(\d+)\/(\d+) ?(?:in|inch|"|″)?$/i.exec(text);
  if (fraction) {
    const [whole, top, bottom] = [Number(fraction[1] ?? 0), Number(fraction[2]), Number(fraction[3])];
    if (bottom === 0) throw new Unreadable(`cannot read "${name}" as a drill: the fraction is over 0`);
    return sized(text, "fraction", whole + top / bottom, "in");
  }
  const plain = /^(\d+\.?\d*|\.\d+) ?(mm|in|inch|"|″)?$/i.exec(text);
  if (!plain) throw new Unreadable(`cannot read "${name}" as a drill: ${WORDS}`);
  const size = Number(plain[1]);
  if (plain[2] === undefined) {
    const other =
      Number.isInteger(size) && size >= 1 && size <= 80
        ? `No. ${size} or ${size} mm`
        : `${size} mm or ${size} in`;
    throw new Unreadable(`${other}? ${plain[1]} alone may be either: ${WORDS}`);
  }
  return plain[2].toLowerCase() === "mm"
    ? sized(text, "metric", size, "mm")
    : sized(text, "fraction", size, "in");
}

function listed(name: string, otherwise: string): Drill {
  const found = stockDrills.find((drill) => drill.name === name);
  if (!found) throw new NothingFound(`there is no drill ${name}: ${otherwise}`);
  return found;
}

function sized(name: string, series: Series, size: number, unit: LengthUnit): Drill {
  requireAbove("size of the drill", size);
  return { name, series, size, unit };
}

/**
 * The stock drill for a size. Half way between two the smaller is named: a hole can be opened out.
 *
 * @param series "any" or the one to choose from
 * @param rounding "under" and "over" allow a drill of just this size
 * @throws RangeError unless size is above 0
 * @throws NothingFound when no drill of the series is that small or that large
 */
export function nearestDrill(
  size: number,
  series: Series | "any",
  rounding: Rounding,
  unit: LengthUnit,
): Drill {
  requireAbove("size", size);
  const within = size * SAME;
  const drills = stockDrills
    .filter((drill) => series === "any" || drill.series === series)
    .map((drill) => ({ drill, off: sizeIn(drill, unit) - size }))
    .filter(({ off }) => rounding === "nearest" || (rounding === "under" ? off <= within : off >= -within));
  if (drills.length === 0) {
    const kind = series === "any" ? "stock" : series;
    throw new NothingFound(`no ${kind} drill is ${size} ${unit} or ${rounding}`);
  }
  return drills.reduce((best, next) => {
    const gain = Math.abs(best.off) - Math.abs(next.off);
    if (Math.abs(gain) > within) return gain > 0 ? next : best;
    return next.off < best.off - within ? next : best;
  }).drill;
}

/** How a size lies outside the drills of a series; undefined when it is among them. */
export function beyond(
  size: number,
  series: Series | "any",
  unit: LengthUnit,
): "below the smallest" | "above the largest" | undefined {
  const sizes = stockDrills
    .filter((drill) => series === "any" || drill.series === series)
    .map((drill) => sizeIn(drill, unit));
  if (size < Math.min(...sizes) * (1 - SAME)) return "below the smallest";
  return size > Math.max(...sizes) * (1 + SAME) ? "above the largest" : undefined;
}
