/** Where cells go in a step that moves them, so that what is known of a cell can follow it, there and back. */
import type { Place } from "../engine/values.ts";
import { type Axis, type LineChange, lineAfter, lineBefore } from "./lines.ts";

export interface Moves {
  /** Where a cell is afterwards; undefined when it is gone. */
  to(place: Place): Place | undefined;
  /** Where the cell that is here afterwards was before; undefined when it is new. */
  from(place: Place): Place | undefined;
}

/** Every cell stays where it is, though its formula may read otherwise. */
export const inPlace: Moves = { to: (place) => place, from: (place) => place };

export function reversed({ to, from }: Moves): Moves {
  return { to: from, from: to };
}

/** One step after the other. */
export function joined(first: Moves, then: Moves): Moves {
  return {
    to(place) {
      const half = first.to(place);
      return half && then.to(half);
    },
    from(place) {
      const half = then.from(place);
      return half && first.from(half);
    },
  };
}

export function sheetRenamed(name: string, newName: string): Moves {
  const called = (place: Place, one: string, other: string) =>
    place.sheet === one ? { ...place, sheet: other } : place;
  return {
    to: (place) => called(place, name, newName),
    from: (place) => called(place, newName, name),
  };
}

export function linesMoved(sheet: string, axis: Axis, change: LineChange): Moves {
  const along = (place: Place, follow: (change: LineChange, line: number) => number | undefined) => {
    if (place.sheet !== sheet) return place;
    const line = follow(change, place[axis]);
    return line === undefined ? undefined : { ...place, [axis]: line };
  };
  return { to: (place) => along(place, lineAfter), from: (place) => along(place, lineBefore) };
}

/** Rows of some columns in another order. @param rows the new row of each */
export function rowsSorted(
  sheet: string,
  columns: { readonly left: number; readonly right: number },
  rows: ReadonlyMap<number, number>,
): Moves {
  const back = new Map([...rows].map(([row, to]) => [to, row]));
  const along = (place: Place, by: ReadonlyMap<number, number>) => {
    const inside = place.sheet === sheet && place.column >= columns.left && place.column <= columns.right;
    return inside ? { ...place, row: by.get(place.row) ?? place.row } : place;
  };
  return { to: (place) => along(place, rows), from: (place) => along(place, back) };
}
