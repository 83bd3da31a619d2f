/**
 * The pieces that an outline in the axial plane is made of: straight lines, and arcs of a round nose.
 *
 * x runs along the axis towards the leading side, y is the depth below the surface. No edge undercuts, so an outline is
 * a depth for every x, and each piece a line or the lower half of a circle over x0 to x1. Areas, lengths and crossings
 * are closed forms. Lengths in any one unit. Source: geometry.
 */

/** Which edge of the tool made a piece. A sharp tool has no nose to make one. */
export type Edge = "leading" | "nose" | "trailing";

interface Origin {
  readonly edge: Edge;
  /** Number of the pass, from 1; 0 in a form that no pass has made. */
  readonly pass: number;
  readonly x0: number;
  readonly x1: number;
}

/** Straight from (x0, y0) to (x1, y1). */
export interface LinePiece extends Origin {
  readonly kind: "line";
  readonly y0: number;
  readonly y1: number;
}

/** Round about (cx, cy), below its centre. */
export interface ArcPiece extends Origin {
  readonly kind: "arc";
  readonly cx: number;
  readonly cy: number;
  readonly radius: number;
}

export type Piece = LinePiece | ArcPiece;

/** Depth of a piece at x. */
export function depthAt(piece: Piece, x: number): number {
  if (piece.kind === "arc") return piece.cy + halfChord(piece.radius, x - piece.cx);
  const { x0, x1, y0, y1 } = piece;
  // Weighted from the nearer end, so that both ends come out exactly.
  const share = (x - x0) / (x1 - x0);
  return share < 0.5 ? y0 + (y1 - y0) * share : y1 - (y1 - y0) * (1 - share);
}

/** The part of a piece between two places on it. */
export function partOf(piece: Piece, x0: number, x1: number): Piece {
  if (x0 === piece.x0 && x1 === piece.x1) return piece;
  if (piece.kind === "arc") return { ...piece, x0, x1 };
  return { ...piece, x0, x1, y0: depthAt(piece, x0), y1: depthAt(piece, x1) };
}

/** Area between a piece and the surface. */
export function areaUnder(piece: Piece): number {
  const { x0, x1 } = piece;
  if (piece.kind === "line") return ((piece.y0 + piece.y1) / 2) * (x1 - x0);
  const { cx, cy, radius } = piece;
  const half = (u: number) => (u * halfChord(radius, u) + radius * radius * Math.asin(sine(u, radius))) / 2;
  return cy * (x1 - x0) + half(x1 - cx) - half(x0 - cx);
}

/** Length of the edge that makes a piece. */
export function lengthOf(piece: Piece): number {
  if (piece.kind === "line") return Math.hypot(piece.x1 - piece.x0, piece.y1 - piece.y0);
  const { cx, radius } = piece;
  return radius * (Math.asin(sine(piece.x1 - cx, radius)) - Math.asin(sine(piece.x0 - cx, radius)));
}

/** Where two pieces cross between x0 and x1, both ends left out; rising. */
export function crossings(a: Piece, b: Piece, x0: number, x1: number): readonly number[] {
  const found = a.kind === "line" ? (b.kind === "line" ? twoLines(a, b) : lineArc(a, b)) : arcWith(a, b);
  return found.filter((x) => x > x0 && x < x1).sort((p, q) => p - q);
}

function arcWith(a: ArcPiece, b: Piece): number[] {
  return b.kind === "line" ? lineArc(b, a) : twoArcs(a, b);
}

function twoLines(a: LinePiece, b: LinePiece): number[] {
  const slope = (a.y1 - a.y0) / (a.x1 - a.x0) - (b.y1 - b.y0) / (b.x1 - b.x0);
  if (slope === 0) return [];
  // From a place on both, so that nothing large cancels.
  const from = Math.max(a.x0, b.x0);
  return [from - (depthAt(a, from) - depthAt(b, from)) / slope];
}

function lineArc(line: LinePiece, arc: ArcPiece): number[] {
  const dx = line.x1 - line.x0;
  const dy = line.y1 - line.y0;
  const length = Math.hypot(dx, dy);
  const [ux, uy] = [dx / length, dy / length];
  // Foot of the centre on the line, then half the chord to either side.
  const along = (arc.cx - line.x0) * ux + (arc.cy - line.y0) * uy;
  const off = (arc.cx - line.x0) * uy - (arc.cy - line.y0) * ux;
  if (Math.abs(off) > arc.radius) return [];
  const half = halfChord(arc.radius, off);
  return [along - half, along + half].filter((t) => line.y0 + t * uy >= arc.cy).map((t) => line.x0 + t * ux);
}

function twoArcs(a: ArcPiece, b: ArcPiece): number[] {
  const dx = b.cx - a.cx;
  const dy = b.cy - a.cy;
  const between = Math.hypot(dx, dy);
  if (between === 0) return [];
  const along = (between * between + a.radius * a.radius - b.radius * b.radius) / (2 * between);
  if (Math.abs(along) > a.radius) return [];
  const half = halfChord(a.radius, along);
  return [half, -half]
    .map((h) => ({
      x: a.cx + (along * dx - h * dy) / between,
      y: a.cy + (along * dy + h * dx) / between,
    }))
    .filter(({ y }) => y >= a.cy && y >= b.cy)
    .map(({ x }) => x);
}

/** Half of the chord of a circle at this distance from its centre. */
function halfChord(radius: number, distance: number): number {
  return Math.sqrt(Math.max(0, (radius - distance) * (radius + distance)));
}

function sine(u: number, radius: number): number {
  return Math.max(-1, Math.min(1, u / radius));
}
