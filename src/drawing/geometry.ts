/** Points and angles on paper: x to the right, y down, pixels. Angles in degrees, 0 to the right, 90 down. */

export type Point = readonly [x: number, y: number];

export interface Box {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

export function cosine(degrees: number): number {
  return Math.cos((degrees * Math.PI) / 180);
}

export function sine(degrees: number): number {
  return Math.sin((degrees * Math.PI) / 180);
}

/** The point `radius` away from `centre` in this direction. */
export function polar([x, y]: Point, radius: number, degrees: number): Point {
  return [x + radius * cosine(degrees), y + radius * sine(degrees)];
}

/** Points of an arc, both ends included, near enough together to look and to measure round. */
export function arcPoints(centre: Point, radius: number, from: number, to: number): Point[] {
  const steps = Math.max(2, Math.ceil(Math.abs(to - from) / 3));
  return Array.from({ length: steps + 1 }, (_, i) => polar(centre, radius, from + ((to - from) * i) / steps));
}

/** Smallest upright box round the points. */
export function boxOf(points: readonly Point[]): Box {
  const box = { left: Infinity, top: Infinity, right: -Infinity, bottom: -Infinity };
  for (const [x, y] of points) {
    box.left = Math.min(box.left, x);
    box.right = Math.max(box.right, x);
    box.top = Math.min(box.top, y);
    box.bottom = Math.max(box.bottom, y);
  }
  return box;
}

export function boxesMeet(a: Box, b: Box, gap = 0): boolean {
  return a.left < b.right + gap && b.left < a.right + gap && a.top < b.bottom + gap && b.top < a.bottom + gap;
}

export function contains(outer: Box, inner: Box): boolean {
  return (
    inner.left >= outer.left &&
    inner.right <= outer.right &&
    inner.top >= outer.top &&
    inner.bottom <= outer.bottom
  );
}

/** Length of the part of a segment that lies inside the box. */
export function lengthInside([[x0, y0], [x1, y1]]: readonly [Point, Point], box: Box): number {
  // Most lines are nowhere near.
  if ((x0 < box.left && x1 < box.left) || (x0 > box.right && x1 > box.right)) return 0;
  if ((y0 < box.top && y1 < box.top) || (y0 > box.bottom && y1 > box.bottom)) return 0;
  let from = 0;
  let to = 1;
  for (const [start, change, low, high] of [
    [x0, x1 - x0, box.left, box.right],
    [y0, y1 - y0, box.top, box.bottom],
  ] as const) {
    if (change === 0) {
      if (start < low || start > high) return 0;
      continue;
    }
    const [a, b] = [(low - start) / change, (high - start) / change];
    from = Math.max(from, Math.min(a, b));
    to = Math.min(to, Math.max(a, b));
  }
  return to > from ? (to - from) * Math.hypot(x1 - x0, y1 - y0) : 0;
}

/** How local places come onto paper: the same scale both ways, so that angles stay true. */
export interface Fit {
  readonly scale: number;
  readonly at: (point: Point) => Point;
}

/**
 * The largest scale at which `box` fits into `room`, put in its middle.
 *
 * @param most largest scale wanted
 */
export function fitInto(box: Box, room: Box, most = Infinity): Fit {
  const [width, height] = [box.right - box.left, box.bottom - box.top];
  const scale = Math.min((room.right - room.left) / width, (room.bottom - room.top) / height, most);
  const x0 = (room.left + room.right - scale * (box.left + box.right)) / 2;
  const y0 = (room.top + room.bottom - scale * (box.top + box.bottom)) / 2;
  return { scale, at: ([x, y]) => [x0 + scale * x, y0 + scale * y] };
}

/**
 * Section lining: parallel lines across a polygon (ISO 128, thin continuous lines at 45 degrees to the outline).
 *
 * @param spacing between lines
 * @param angle of the lines, 45 or -45
 * @param holes polygons inside that stay clear
 */
export function sectionLining(
  polygon: readonly Point[],
  spacing: number,
  angle: 45 | -45 = 45,
  holes: readonly (readonly Point[])[] = [],
): [Point, Point][] {
  const sign = angle > 0 ? 1 : -1;
  // Lines x + sign * y = c: their distance is that of c over the root of 2.
  const level = ([x, y]: Point) => x + sign * y;
  const step = spacing * Math.SQRT2;
  const levels = polygon.map(level);
  const lines: [Point, Point][] = [];
  for (let c = Math.ceil(Math.min(...levels) / step) * step; c <= Math.max(...levels); c += step) {
    const cuts: Point[] = [];
    for (const ring of [polygon, ...holes]) {
      for (const [i, a] of ring.entries()) {
        const b = ring[(i + 1) % ring.length]!;
        const [la, lb] = [level(a) - c, level(b) - c];
        if (la < 0 === lb < 0) continue;
        const share = la / (la - lb);
        cuts.push([a[0] + share * (b[0] - a[0]), a[1] + share * (b[1] - a[1])]);
      }
    }
    cuts.sort((a, b) => a[0] - b[0]);
    for (let i = 0; i + 1 < cuts.length; i += 2) {
      const [from, to] = [cuts[i]!, cuts[i + 1]!];
      if (to[0] - from[0] > 0.5) lines.push([from, to]);
    }
  }
  return lines;
}

/**
 * Places for things that want to stand at `wanted`, at least `gap` apart and between `low` and `high`, in their order.
 *
 * @param wanted growing
 */
export function spreadOut(wanted: readonly number[], gap: number, low: number, high: number): number[] {
  const places = [...wanted];
  for (let i = 0; i < places.length; i++) {
    places[i] = Math.max(places[i]!, i === 0 ? low : places[i - 1]! + gap);
  }
  for (let i = places.length - 1; i >= 0; i--) {
    places[i] = Math.min(places[i]!, i === places.length - 1 ? high : places[i + 1]! - gap);
  }
  return places;
}
