/**
 * The groove, pass by pass: area of each pass layer, the chip on every edge, what is left, what is overcut.
 *
 *      surface  ____          trailing | leading        ____    x axial, towards the leading side
 *                   \  pass 1    \     |     /         /        y depth below the surface
 *                    \____________\____|____/         /
 *                     \  pass 2        |             /          The tool is at (0, 0) when it touches off.
 *                      \_______________|____________/
 *
 * Lengths in any one unit, angles in degrees. Source: geometry.
 */
import { cos, radians, sin } from "./bounds.ts";
import type { Groove } from "./chip-area.ts";
import {
  chain,
  compareOutlines,
  deepest,
  halfWidth,
  type Outline,
  outlineDepth,
  type Place,
  profileAt,
  type Strip,
  type Stroke,
} from "./groove-outline.ts";
import { areaUnder, depthAt, type Edge, lengthOf, type Piece } from "./groove-piece.ts";

/** A figure for each edge of the tool. */
export type PerEdge = Readonly<Record<Edge, number>>;

/** What one pass takes. */
export interface Layer {
  /** From 1. */
  readonly pass: number;
  readonly place: Place;
  /** Area that this pass takes out of the axial plane. */
  readonly area: number;
  /** Length of each edge that cuts: below the surface, not yet cut free, and moving into the work. */
  readonly width: PerEdge;
  /** The area shared out between the edges as width x chip, the nose with its mean chip; ridges by what lies over each. */
  readonly areaOf: PerEdge;
  /**
   * Uncut chip thickness: how far each edge has moved square to itself past where it has been before. On a round nose
   * (and at a sharp point) the largest of all directions between the two flanks. 0 on all where a pass only takes ridges
   * that earlier ones have left between them.
   */
  readonly chip: PerEdge;
  /** The groove after this pass. */
  readonly outline: Outline;
}

/** How a groove differs from the form that was wanted. */
export interface Deviation {
  /** Area cut outside the form, and area of the form not yet cut. */
  readonly over: number;
  readonly left: number;
  /** Axial overcut outside the form at the surface, on each side; 0 where there is none. */
  readonly trailing: number;
  readonly leading: number;
}

/** Where the tool touches off. */
const TOUCH: Place = { axial: 0, radial: 0 };

/**
 * Cuts a groove.
 *
 * @param places of the tool at each pass, in order, from touch-off at (0, 0)
 * @returns a layer for every place; one that takes nothing (a spring pass) has area 0
 */
export function cutGroove(tool: Groove, places: readonly Place[]): readonly Layer[] {
  const layers: Layer[] = [];
  let hull: readonly Place[] = [TOUCH];
  let outline: Outline = [];
  places.forEach((place, k) => {
    const pass = k + 1;
    const strips = compareOutlines(outline, profileAt(tool, place, pass));
    const taken = takenBy(tool, place, strips, outline);
    outline = deepest(strips);
    const { chip, mean } = edgeCut(tool, place, hull);
    layers.push({ pass, place, area: taken.area, ...shareOut(taken, chip, mean, place), chip, outline });
    hull = deepHull([...hull, place]);
  });
  return layers;
}

interface Taken {
  readonly area: number;
  /** Length of each edge that is new below the surface, and the area straight above it. */
  readonly width: PerEdge;
  readonly above: PerEdge;
}

function takenBy(tool: Groove, place: Place, strips: readonly Strip[], before: Outline): Taken {
  const width = { leading: 0, nose: 0, trailing: 0 };
  const above = { leading: 0, nose: 0, trailing: 0 };
  for (const strip of strips) {
    if (strip.deeper === "before" || !strip.after) continue;
    above[strip.after.edge] += areaUnder(strip.after) - (strip.before ? areaUnder(strip.before) : 0);
    width[strip.after.edge] += lengthOf(strip.after);
  }
  const area = above.leading + above.nose + above.trailing;
  // A square flank stands upright, so that no strip holds it.
  for (const [side, sign] of [["leading", 1] as const, ["trailing", -1] as const]) {
    if (tool[side] !== 0 || area === 0) continue;
    const foot = place.radial - (tool.shape === "radius" ? tool.nose : 0);
    const x = place.axial + sign * halfWidth(tool, side, place.radial);
    width[side] = Math.max(0, foot - outlineDepth(before, x));
  }
  return { area, width, above };
}

/** Shares an area out between the edges. An edge that slides along itself makes no chip. */
function shareOut(
  { area, width, above }: Taken,
  chip: PerEdge,
  mean: PerEdge,
  { radial }: Place,
): { width: PerEdge; areaOf: PerEdge } {
  const cutting = (edge: Edge) => (chip[edge] > 1e-12 * radial ? width[edge] : 0);
  const weight = (edge: Edge) => cutting(edge) * mean[edge];
  const all = weight("leading") + weight("nose") + weight("trailing");
  // Inside all earlier passes it takes the ridges that those have left between them.
  if (!(all > 0)) return { width, areaOf: above };
  const part = (edge: Edge) => (area * weight(edge)) / all;
  return {
    width: { leading: cutting("leading"), nose: cutting("nose"), trailing: cutting("trailing") },
    areaOf: { leading: part("leading"), nose: part("nose"), trailing: part("trailing") },
  };
}

/**
 * How far each edge has moved square to itself past all the places where it has been: the most, and the mean.
 *
 * @param hull of those places
 */
function edgeCut(tool: Groove, place: Place, hull: readonly Place[]): { chip: PerEdge; mean: PerEdge } {
  // A direction is the angle from straight in, towards the leading side.
  const past = (direction: number) => {
    const [nx, ny] = [Math.sin(direction), Math.cos(direction)];
    let least = Number.POSITIVE_INFINITY;
    for (const { axial, radial } of hull) {
      least = Math.min(least, (place.axial - axial) * nx + (place.radial - radial) * ny);
    }
    return Math.max(0, least);
  };
  const front = radians(90 - tool.leading);
  const back = -radians(90 - tool.trailing);
  const flanks = { leading: past(front), trailing: past(back) };
  if (tool.shape === "flat" && tool.nose > 0) {
    const chip = { ...flanks, nose: past(0) };
    return { chip, mean: chip };
  }
  // Between the flanks the way is longest towards a corner of the places' hull, or square to one of its sides.
  const ways = hull.map(({ axial, radial }) => Math.atan2(place.axial - axial, place.radial - radial));
  for (let i = 0; i + 1 < hull.length; i++) {
    const [a, b] = [hull[i]!, hull[i + 1]!];
    ways.push(Math.atan2(a.radial - b.radial, b.axial - a.axial));
  }
  const inside = ways.filter((way) => way > back && way < front).map(past);
  const most = Math.max(flanks.leading, flanks.trailing, ...inside);
  const mean = (flanks.leading + 4 * past((front + back) / 2) + flanks.trailing) / 6;
  return { chip: { ...flanks, nose: most }, mean: { ...flanks, nose: mean } };
}

/** The corners, from the trailing to the leading side, of the hull of places as it is seen from the root. */
function deepHull(places: readonly Place[]): readonly Place[] {
  const sorted = [...places].sort((a, b) => a.axial - b.axial || b.radial - a.radial);
  const hull: Place[] = [];
  for (const place of sorted) {
    while (hull.length >= 2 && !isDeeper(hull.at(-2)!, hull.at(-1)!, place)) hull.pop();
    if (hull.at(-1)?.axial !== place.axial) hull.push(place);
  }
  return hull;
}

/** True when `middle` lies below the line from one place to the other. */
function isDeeper(from: Place, middle: Place, to: Place): boolean {
  return (
    (middle.radial - from.radial) * (to.axial - from.axial) >
    (to.radial - from.radial) * (middle.axial - from.axial)
  );
}

/** How a groove differs from `form` standing at `place`. */
export function deviationFrom(outline: Outline, form: Groove, place: Place): Deviation {
  const wanted = profileAt(form, place);
  let over = 0;
  let left = 0;
  for (const { before, after, deeper } of compareOutlines(wanted, outline)) {
    const gap = (after ? areaUnder(after) : 0) - (before ? areaUnder(before) : 0);
    if (deeper === "after") over += gap;
    else left -= gap;
  }
  const trailing = (wanted[0]?.x0 ?? 0) - (outline[0]?.x0 ?? 0);
  const leading = (outline.at(-1)?.x1 ?? 0) - (wanted.at(-1)?.x1 ?? 0);
  return { over, left: Math.max(0, left), trailing: Math.max(0, trailing), leading: Math.max(0, leading) };
}

/**
 * Axial overcut on one side at a level below the surface: how far the passes reach outside `form` standing at `place`.
 *
 * @returns 0 where nothing is overcut, and below the form
 */
export function overcutAt(
  tool: Groove,
  places: readonly Place[],
  form: Groove,
  place: Place,
  side: "leading" | "trailing",
  level: number,
): number {
  if (level >= place.radial) return 0;
  const sign = side === "leading" ? 1 : -1;
  const wanted = sign * place.axial + halfWidth(form, side, place.radial - level);
  let reach = wanted;
  for (const { axial, radial } of places) {
    if (radial >= level) reach = Math.max(reach, sign * axial + halfWidth(tool, side, radial - level));
  }
  return reach - wanted;
}

/**
 * The shapes that a pass takes out, most often one: closed loops, first along what this pass made, then back along what
 * was there before.
 *
 * @param layers as cutGroove gave them for this tool
 * @param pass from 1
 */
export function layerLoops(
  tool: Groove,
  layers: readonly Layer[],
  pass: number,
): readonly (readonly Stroke[])[] {
  const layer = layers[pass - 1];
  if (!layer) return [];
  const before = layers[pass - 2]?.outline ?? [];
  const shapes: { made: Piece[]; was: Piece[] }[] = [];
  let end = Number.NEGATIVE_INFINITY;
  for (const strip of compareOutlines(before, profileAt(tool, layer.place, pass))) {
    if (strip.deeper === "before" || !strip.after) continue;
    if (strip.after.x0 > end) shapes.push({ made: [], was: [] });
    shapes.at(-1)!.made.push(strip.after);
    if (strip.before) shapes.at(-1)!.was.push(strip.before);
    end = strip.after.x1;
  }
  return shapes.map(({ made, was }) => {
    const [x0, x1] = [made[0]!.x0, made.at(-1)!.x1];
    const from = { x: x0, y: topAt(was, x0) };
    const to = { x: x1, y: topAt(was, x1) };
    return [...chain(made, from, to), ...backwards(chain(was, from, to))];
  });
}

/** Depth of what was there at the end of a shape. */
function topAt(was: readonly Piece[], x: number): number {
  const piece = was.find(({ x0, x1 }) => x0 === x || x1 === x);
  return piece ? depthAt(piece, x) : 0;
}

function backwards(strokes: readonly Stroke[]): readonly Stroke[] {
  return [...strokes].reverse().map((stroke) => ({ ...stroke, from: stroke.to, to: stroke.from }));
}

/** Where the tool stands after slide travel `travel` along a set-over from the line square to the axis. */
export function alongSetover(travel: number, setover: number): Place {
  return { axial: travel * sin(setover), radial: travel * cos(setover) };
}
