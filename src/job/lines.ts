/** What inserting, deleting and moving whole rows or columns does to the numbers of the others. */

export type Axis = "row" | "column";

/** Counted from 0, in the numbers before the change. */
export type LineChange =
  | { readonly act: "insert"; readonly at: number; readonly count: number }
  | { readonly act: "delete"; readonly at: number; readonly count: number }
  /** `to` is the line that they come to stand before. */
  | { readonly act: "move"; readonly at: number; readonly count: number; readonly to: number };

export interface Span {
  readonly first: number;
  readonly last: number;
}

/** The new number of a line; undefined when it is deleted. */
export function lineAfter(change: LineChange, line: number): number | undefined {
  const { at, count } = change;
  const end = at + count;
  if (change.act === "insert") return line < at ? line : line + count;
  if (change.act === "delete") return line < at ? line : line < end ? undefined : line - count;
  const { to } = change;
  if (line >= at && line < end) return line - at + (to > at ? to - count : to);
  if (to > at) return line >= end && line < to ? line - count : line;
  return line >= to && line < at ? line + count : line;
}

/** The number that a line had before; undefined when it was put in. */
export function lineBefore(change: LineChange, line: number): number | undefined {
  const { at, count } = change;
  if (change.act === "insert") return line < at ? line : line < at + count ? undefined : line - count;
  if (change.act === "delete") return line < at ? line : line + count;
  const { to } = change;
  return lineAfter(
    to > at ? { act: "move", at: to - count, count, to: at } : { act: "move", at: to, count, to: at + count },
    line,
  );
}

/**
 * Where a reference to `first` to `last` points afterwards; undefined when all of it is deleted. It grows with what is
 * put inside, shrinks by what is taken out, and keeps lines that change places within it.
 */
export function spanAfter(change: LineChange, first: number, last: number): Span | undefined {
  // Nearly all references are these: a sheet may have hundreds of thousands.
  if (first === last || change.act === "insert") {
    const [from, to] = [lineAfter(change, first), lineAfter(change, last)];
    return from === undefined || to === undefined ? undefined : { first: from, last: to };
  }
  if (change.act !== "move") {
    const ends = linesAfter(change, first, last);
    return ends.length === 0 ? undefined : { first: ends[0]!.first, last: ends.at(-1)!.last };
  }
  const runs = linesAfter(change, first, last);
  if (runs.length === 1) return runs[0]!;
  // Lines were taken out of it, or others stand in it now: it holds to the lines that stayed.
  const { at, count } = change;
  const stayed = [
    [first, Math.min(last, at - 1)],
    [Math.max(first, at + count), last],
  ].filter(([a, b]) => a! <= b!);
  return {
    first: lineAfter(change, stayed[0]![0]!)!,
    last: lineAfter(change, stayed.at(-1)![1]!)!,
  };
}

/** Where the very lines `first` to `last` are afterwards: runs in rising order. Lines put inside count as theirs. */
export function linesAfter(change: LineChange, first: number, last: number): Span[] {
  const { at } = change;
  const end = at + change.count;
  // Between these places all lines go the same way.
  const cuts = change.act === "insert" ? [] : change.act === "delete" ? [at, end] : [at, end, change.to];
  const starts = [first, ...cuts.filter((cut) => cut > first && cut <= last)].sort((a, b) => a - b);
  const runs = starts.flatMap((start, i) => {
    const stop = (starts[i + 1] ?? last + 1) - 1;
    const from = lineAfter(change, start);
    const to = lineAfter(change, stop);
    return start > stop || from === undefined || to === undefined ? [] : [{ first: from, last: to }];
  });
  runs.sort((a, b) => a.first - b.first);
  const joined: Span[] = [];
  for (const run of runs) {
    const before = joined.at(-1);
    if (before && before.last + 1 >= run.first) joined[joined.length - 1] = { ...before, last: run.last };
    else joined.push(run);
  }
  return joined;
}
