/** Ranges of cells as numbers: both corners belong to them, rows and columns count from 0. */

export interface Area {
  readonly top: number;
  readonly left: number;
  readonly bottom: number;
  readonly right: number;
}

export function holds(area: Area, row: number, column: number): boolean {
  return row >= area.top && row <= area.bottom && column >= area.left && column <= area.right;
}

/** True when all of `inner` lies in `outer`. */
export function isInside(inner: Area, outer: Area): boolean {
  return holds(outer, inner.top, inner.left) && holds(outer, inner.bottom, inner.right);
}

/** The cells that both have; undefined when there are none. */
export function common(a: Area, b: Area): Area | undefined {
  const area = {
    top: Math.max(a.top, b.top),
    left: Math.max(a.left, b.left),
    bottom: Math.min(a.bottom, b.bottom),
    right: Math.min(a.right, b.right),
  };
  return area.top <= area.bottom && area.left <= area.right ? area : undefined;
}

/** `area` without the cells of `hole`: up to four ranges, above, left, right and below. */
export function without(area: Area, hole: Area): Area[] {
  const cut = common(area, hole);
  if (!cut) return [area];
  const pieces = [
    { ...area, bottom: cut.top - 1 },
    { top: cut.top, bottom: cut.bottom, left: area.left, right: cut.left - 1 },
    { top: cut.top, bottom: cut.bottom, left: cut.right + 1, right: area.right },
    { ...area, top: cut.bottom + 1 },
  ];
  return pieces.filter((piece) => piece.top <= piece.bottom && piece.left <= piece.right);
}

export function moved(area: Area, rows: number, columns: number): Area {
  return {
    top: area.top + rows,
    left: area.left + columns,
    bottom: area.bottom + rows,
    right: area.right + columns,
  };
}

/** How many cells it has. */
export function sizeOf(area: Area): number {
  return (area.bottom - area.top + 1) * (area.right - area.left + 1);
}
