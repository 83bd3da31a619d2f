/** Which rows and columns are in view. Pixels in, indexes out; touches no element. */

/** Zero-based, both ends belong to it. */
export interface Span {
  readonly first: number;
  readonly last: number;
}

export interface Area {
  readonly top: number;
  readonly left: number;
  readonly bottom: number;
  readonly right: number;
}

/** Rows drawn beyond each edge, so that a turn of the wheel finds them there. */
const spare = 4;

/**
 * Rows in view. The length stays the same while scrolling: then rows that leave can be used for those that come.
 *
 * @param height of the view without its column heads, px
 */
export function rowsInView(scrolled: number, height: number, row: number, count: number): Span {
  const length = Math.min(count, Math.ceil(height / row) + 1 + 2 * spare);
  const first = Math.max(0, Math.min(Math.floor(scrolled / row) - spare, count - length));
  return { first, last: first + length - 1 };
}

/**
 * Columns in view, with one to spare on each side.
 *
 * @param edges left edge of every column and the right edge of the last, px
 * @param width of the view without its row heads, px
 */
export function columnsInView(scrolled: number, width: number, edges: readonly number[]): Span {
  const last = edges.length - 2;
  return {
    first: Math.max(0, indexAt(scrolled, edges) - 1),
    last: Math.min(last, indexAt(scrolled + width, edges) + 1),
  };
}

/** Column at `x`; the first or last where x lies outside. */
export function indexAt(x: number, edges: readonly number[]): number {
  let index = 0;
  while (index < edges.length - 2 && edges[index + 1]! <= x) index++;
  return index;
}

/** The windows grown so that every merged cell that shows has its first row and column drawn. */
export function withMerged(
  rows: Span,
  columns: Span,
  merged: readonly Area[],
): { rows: Span; columns: Span } {
  const showing = merged.filter(
    (area) =>
      area.top <= rows.last &&
      area.bottom >= rows.first &&
      area.left <= columns.last &&
      area.right >= columns.first,
  );
  return {
    rows: { first: Math.min(rows.first, ...showing.map((area) => area.top)), last: rows.last },
    columns: { first: Math.min(columns.first, ...showing.map((area) => area.left)), last: columns.last },
  };
}

/** Every index of the span, and `pinned` in its place among them. */
export function indexes(span: Span, pinned: number): number[] {
  const list = Array.from({ length: span.last - span.first + 1 }, (_, index) => span.first + index);
  if (pinned < span.first) list.unshift(pinned);
  if (pinned > span.last) list.push(pinned);
  return list;
}

/**
 * A slot for every row shown. Rows that stay keep theirs, so that focus and caret stay with the active row; rows that
 * come take those of rows that went, so that no elements are made while scrolling.
 */
export function reuse(before: ReadonlyMap<number, number>, rows: readonly number[]): Map<number, number> {
  const shown = new Set(rows);
  const free = [...before].flatMap(([row, slot]) => (shown.has(row) ? [] : [slot]));
  let next = Math.max(-1, ...before.values());
  return new Map(rows.map((row) => [row, before.get(row) ?? free.pop() ?? ++next]));
}

/** How many rows and columns: "198 by 4"; undefined for a single cell. */
export function sizeWords({ top, left, bottom, right }: Area): string | undefined {
  const [wide, high] = [right - left + 1, bottom - top + 1];
  return wide === 1 && high === 1 ? undefined : `${high} by ${wide}`;
}

export function contains(area: Area, row: number, column: number): boolean {
  return row >= area.top && row <= area.bottom && column >= area.left && column <= area.right;
}

/** Where to scroll on one axis so that `start` to `end` shows; unchanged when it does. */
export function reveal(scrolled: number, view: number, start: number, end: number): number {
  if (start < scrolled || end - start > view) return start;
  return end > scrolled + view ? end - view : scrolled;
}
