/** Sizes that go by a number of their own, which is no length: Pg 13.5, E27, Thury 3. */
import { betweenSizeAndName, unreadable } from "./grammar.ts";
import type { Asked, Parts, Series } from "./series.ts";

const pattern = /^(?:#|no\.?\s*)?(\d+(?:\.\d+)?)(?![\d./])/i;

/** The size of that number, before or behind the name of the series. */
export function byName(parts: Parts, series: Series): Asked {
  const inFront = pattern.exec(parts.before);
  const found = inFront ?? pattern.exec(parts.after);
  const size = series.sizes.find(({ name }) => Number(name) === Number(found?.[1]));
  if (!found || !size) {
    throw unreadable(
      parts.text,
      `${series.name} has the sizes ${series.sizes.map(({ name }) => name).join(", ")}`,
    );
  }
  const leftOver = (inFront ? parts.before : parts.after).slice(found[0].length).trim();
  if (inFront && leftOver !== "") throw betweenSizeAndName(parts.text, found[0], leftOver, series);
  const own = size.pitches[0]!;
  return {
    series,
    name: size.name,
    major: size.major,
    pitch: series.perInch ? 1 / own : own,
    starts: 1,
    rest: inFront ? parts.after : leftOver,
    written: series.list(size, own),
  };
}
