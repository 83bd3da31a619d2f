/** Threads of any size and pitch that a series allows but does not list. */
import { around, findSize } from "./grammar.ts";
import type { Asked } from "./series.ts";

/** What the series lists instead; undefined for a listed size and pitch, and for series that list none. */
export function offTable({ series, major, pitch, name }: Asked): string | undefined {
  if (series.sizes.length === 0) return undefined;
  const head = (size: string) =>
    series.perInch ? `${size} ${series.name}` : (series.prefix ?? series.name) + size;
  const size = findSize(series.sizes, major);
  if (!size) {
    const near = around(series.sizes, major).map((each) => head(each.name));
    return `${head(name)} is no standard diameter: nearest ${near.join(" and ")}`;
  }
  if (size.pitches.some((listed) => (series.perInch ? 1 / listed : listed) === pitch)) return undefined;
  const listed = size.pitches.filter((each) => each > 0).map(short);
  const what = series.perInch ? "number of threads per inch" : "pitch";
  return `${short(series.perInch ? 1 / pitch : pitch)} is no standard ${what} for ${head(size.name)}: ${listed.join(", ")}`;
}

const short = (value: number): number => Number(value.toPrecision(7));
