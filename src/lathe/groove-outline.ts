/**
 * Outlines: one tool profile where it stands in the work, and what two outlines make together.
 *
 * The finished groove is the union of the tool profiles of all passes, since they lie on one helix; as a depth for every
 * x it is the deepest of them. Holds for a cutting edge in the axial plane. Source: geometry.
 */
import { cos, radians, requireWithin, tan } from "./bounds.ts";
import type { Groove } from "./chip-area.ts";
import { areaUnder, crossings, depthAt, type Edge, type Piece, partOf } from "./groove-piece.ts";

/** Where the tip of the tool (the middle of a flat nose) stands: axial towards the leading side, radial below the surface. */
export interface Place {
  readonly axial: number;
  readonly radial: number;
}

/** Pieces from the trailing to the leading side, without overlap. Between them is the surface, at depth 0. */
export type Outline = readonly Piece[];

/** A point of the axial plane: x towards the leading side, y below the surface. */
export interface Point {
  readonly x: number;
  readonly y: number;
}

/** One stroke of a drawing: straight, or round about a centre on the side of the surface. */
export interface Stroke {
  readonly from: Point;
  readonly to: Point;
  readonly arc?: { readonly centre: Point; readonly radius: number };
  /** "wall": straight down beside a square flank; "surface": where nothing was cut. */
  readonly edge: Edge | "wall" | "surface";
  readonly pass: number;
}

/**
 * Half the width of a tool profile at a height above its tip, on one side.
 *
 * @param height 0 or more
 */
export function halfWidth(tool: Groove, side: "leading" | "trailing", height: number): number {
  const flank = tool[side];
  if (tool.shape === "flat" || tool.nose === 0) return tool.nose / 2 + height * tan(flank);
  const contact = contactHeight(tool, side);
  if (height <= contact) return Math.sqrt(height * (2 * tool.nose - height));
  return tool.nose * cos(flank) + (height - contact) * tan(flank);
}

/** Height above the tip at which the flank begins. */
function contactHeight(tool: Groove, side: "leading" | "trailing"): number {
  return tool.shape === "flat" ? 0 : tool.nose * (1 - Math.sin(radians(tool[side])));
}

/**
 * Outline that a tool leaves in one place; empty when it does not reach below the surface.
 *
 * @param pass number that its pieces carry
 */
export function profileAt(tool: Groove, { axial, radial }: Place, pass = 0): Outline {
  requireWithin("radial place", radial, -Number.MAX_VALUE);
  requireWithin("axial place", axial, -Number.MAX_VALUE);
  if (radial <= 0) return [];
  const pieces: Piece[] = [];
  const line = (edge: Edge, x0: number, y0: number, x1: number, y1: number) => {
    if (x1 > x0) pieces.push({ kind: "line", edge, pass, x0, y0, x1, y1 });
  };
  const edgeOf = (side: "leading" | "trailing") => {
    const height = Math.min(radial, contactHeight(tool, side));
    return { out: halfWidth(tool, side, radial), nose: halfWidth(tool, side, height), y: radial - height };
  };
  const [back, front] = [edgeOf("trailing"), edgeOf("leading")];
  line("trailing", axial - back.out, 0, axial - back.nose, back.y);
  if (tool.shape === "flat") {
    line("nose", axial - back.nose, radial, axial + front.nose, radial);
  } else if (tool.nose > 0) {
    const centre = { cx: axial, cy: radial - tool.nose, radius: tool.nose };
    pieces.push({
      kind: "arc",
      edge: "nose",
      pass,
      x0: axial - back.nose,
      x1: axial + front.nose,
      ...centre,
    });
  }
  line("leading", axial + front.nose, front.y, axial + front.out, 0);
  return pieces;
}

/** A strip between two places on the axis where neither outline changes its piece. */
export interface Strip {
  readonly before?: Piece;
  readonly after?: Piece;
  /** The outline that is the deeper one here. */
  readonly deeper: "before" | "after";
}

/** Both outlines cut into strips, each with the one that is the deeper; strips where both are at the surface left out. */
export function compareOutlines(before: Outline, after: Outline): readonly Strip[] {
  const pieces = [...before, ...after];
  const ends = pieces.flatMap(({ x0, x1 }) => [x0, x1]).sort((a, b) => a - b);
  // A flank that is cut along itself is not deeper by its rounding.
  const same = 1e-12 * Math.max(0, ...pieces.map((piece) => depthAt(piece, (piece.x0 + piece.x1) / 2)));
  const strips: Strip[] = [];
  let b = 0;
  let a = 0;
  for (let i = 0; i + 1 < ends.length; i++) {
    const [x0, x1] = [ends[i]!, ends[i + 1]!];
    if (!(x1 > x0)) continue;
    while (b < before.length && before[b]!.x1 <= x0) b++;
    while (a < after.length && after[a]!.x1 <= x0) a++;
    const [old, now] = [covering(before[b], x0), covering(after[a], x0)];
    if (old && now) addStrips(strips, old, now, x0, x1, same);
    else if (old) strips.push({ before: partOf(old, x0, x1), deeper: "before" });
    else if (now) strips.push({ after: partOf(now, x0, x1), deeper: "after" });
  }
  return strips;
}

function covering(piece: Piece | undefined, x: number): Piece | undefined {
  return piece !== undefined && piece.x0 <= x ? piece : undefined;
}

function addStrips(strips: Strip[], before: Piece, after: Piece, x0: number, x1: number, same: number): void {
  const cuts = [x0, ...crossings(before, after, x0, x1), x1];
  for (let i = 0; i + 1 < cuts.length; i++) {
    const [from, to] = [cuts[i]!, cuts[i + 1]!];
    if (!(to > from)) continue;
    const middle = (from + to) / 2;
    const deeper = depthAt(after, middle) > depthAt(before, middle) + same ? "after" : "before";
    strips.push({ before: partOf(before, from, to), after: partOf(after, from, to), deeper });
  }
}

/** The deeper of both outlines everywhere. */
export function deepest(strips: readonly Strip[]): Outline {
  const outline: Piece[] = [];
  for (const strip of strips) {
    const piece = strip[strip.deeper]!;
    const last = outline.at(-1);
    if (last && continues(last, piece)) outline[outline.length - 1] = joined(last, piece);
    else outline.push(piece);
  }
  return outline;
}

/** True when two parts were cut from one piece. */
function continues(a: Piece, b: Piece): boolean {
  return a.x1 === b.x0 && a.pass === b.pass && a.edge === b.edge && a.kind === b.kind;
}

function joined(a: Piece, b: Piece): Piece {
  return a.kind === "line" && b.kind === "line" ? { ...a, x1: b.x1, y1: b.y1 } : { ...a, x1: b.x1 };
}

/** Area between an outline and the surface. */
export function outlineArea(outline: Outline): number {
  return outline.reduce((sum, piece) => sum + areaUnder(piece), 0);
}

/** Depth of an outline at x; 0 at the surface. On a wall the deeper side. */
export function outlineDepth(outline: Outline, x: number): number {
  let depth = 0;
  for (const piece of outline) {
    if (piece.x0 <= x && x <= piece.x1) depth = Math.max(depth, depthAt(piece, x));
  }
  return depth;
}

/**
 * An outline as strokes to draw, from the trailing to the leading side; walls join what lies apart.
 *
 * One run of strokes for each stretch below the surface; a run begins and ends at the surface.
 */
export function strokesOf(outline: Outline): readonly (readonly Stroke[])[] {
  const runs: Piece[][] = [];
  let end: number | undefined;
  for (const piece of outline) {
    if (end === undefined || piece.x0 > end) runs.push([]);
    runs.at(-1)!.push(piece);
    end = piece.x1;
  }
  return runs.map((run) => chain(run, { x: run[0]!.x0, y: 0 }, { x: run.at(-1)!.x1, y: 0 }));
}

/** Strokes from one point to another along pieces; walls join what lies apart, the surface fills a gap. */
export function chain(pieces: Outline, from: Point, to: Point): readonly Stroke[] {
  const strokes: Stroke[] = [];
  let at = from;
  const straightTo = (next: Point, edge: Stroke["edge"], pass: number) => {
    if (next.x !== at.x || Math.abs(next.y - at.y) > 1e-12 * Math.abs(from.x - to.x)) {
      strokes.push({ from: at, to: next, edge, pass });
    }
    at = next;
  };
  const acrossTo = (x: number, pass: number) => {
    if (!(x > at.x)) return;
    straightTo({ x: at.x, y: 0 }, "wall", pass);
    straightTo({ x, y: 0 }, "surface", pass);
  };
  for (const piece of pieces) {
    acrossTo(piece.x0, piece.pass);
    straightTo({ x: piece.x0, y: depthAt(piece, piece.x0) }, "wall", piece.pass);
    const next = { x: piece.x1, y: depthAt(piece, piece.x1) };
    const { edge, pass } = piece;
    if (piece.kind === "line") straightTo(next, edge, pass);
    else {
      const arc = { centre: { x: piece.cx, y: piece.cy }, radius: piece.radius };
      strokes.push({ from: at, to: next, arc, edge, pass });
      at = next;
    }
  }
  const pass = pieces.at(-1)?.pass ?? 0;
  acrossTo(to.x, pass);
  straightTo(to, "wall", pass);
  return strokes;
}
