/**
 * The groove in layers, to scale in the axial plane: what is cut, what comes next, what is to come, and what lies outside
 * the form that is wanted. Headstock left: the leading flank is on the left where the carriage runs towards it while cutting,
 * on the right where it runs away from it.
 */
import { grooveOf } from "../lathe/chip-area.ts";
import type { PassesFigure } from "../lathe/figure.ts";
import { alongSetover, cutGroove } from "../lathe/groove.ts";
import { compareOutlines, type Outline, profileAt } from "../lathe/groove-outline.ts";
import { depthAt, type Piece } from "../lathe/groove-piece.ts";
import { angle, plain } from "./figures.ts";
import { type Point, polar } from "./geometry.ts";
import { type Drawing, type Line, Plate, type Spot, spots } from "./plate.ts";

interface Layers {
  /** For each pass the areas that it takes, in the unit of the depths: x towards the leading side, y below the surface. */
  readonly taken: readonly (readonly Point[][])[];
  readonly overcut: readonly Point[][];
  readonly groove: Outline;
  readonly form: Outline;
}

export function drawPasses(figure: PassesFigure, width: number, height: number): Drawing {
  const plate = new Plate(width, height);
  const { size } = plate;
  const layers = layersOf(figure);
  const depth = figure.depths.at(-1)!;
  const xs = [...layers.groove, ...layers.form].flatMap((piece) => [piece.x0, piece.x1]);
  // The tool touches off at 0.
  xs.push(0);
  const [trail, lead] = [Math.min(...xs), Math.max(...xs)];
  const top = 4.4 * size;
  const foot = 2 + (figure.chip ? 1.3 : 0) + (figure.overcut > 0 ? 1.3 : 0);
  const bottom = height - foot * size;
  const side = 3.4 * size;
  const scale = Math.min((bottom - top) / (1.1 * depth), (width - 2 * side - 10) / (1.2 * (lead - trail)));
  const middle = (lead + trail) / 2;
  const x0 = (width - 0.5 * side) / 2;
  const way = wayOf(figure);
  const at = ([x, y]: Point): Point => [x0 + way * (x - middle) * scale, top + y * scale];

  metal(plate, layers, at, top, bottom, way);
  chips(plate, figure, layers, at);
  outlines(plate, layers, at);
  numbers(plate, figure, layers, at, scale);
  words(plate, figure, layers, { at, top, trail, lead, depth });
  return plate.done(sayPasses(figure));
}

/** Where the carriage runs on paper while cutting: -1 left, 1 right. */
function wayOf({ direction }: PassesFigure): 1 | -1 {
  return direction === "out" ? 1 : -1;
}

function layersOf(figure: PassesFigure): Layers {
  const { setover, depths } = figure;
  const tool = grooveOf(figure.leading + figure.trailing, figure.nose, figure.trailing, figure.shape);
  const places = depths.map((depth) => {
    // The slide has gone this far along its line when the tool is this deep.
    const along = alongSetover(1, setover);
    return { axial: (depth * along.axial) / along.radial, radial: depth };
  });
  const cut = cutGroove(tool, places);
  const groove = cut.at(-1)!.outline;
  const form = profileAt(tool, places.at(-1)!);
  const taken = places.map((place, i) =>
    ringsBetween(cut[i - 1]?.outline ?? [], profileAt(tool, place, i + 1)),
  );
  return { taken, overcut: ringsBetween(form, groove), groove, form };
}

/** Rings round what lies between an outline and the deeper parts of another. */
function ringsBetween(shallow: Outline, deep: Outline): Point[][] {
  const rings: Point[][] = [];
  let top: Point[] = [];
  let bottom: Point[] = [];
  let end = Number.NaN;
  const close = () => {
    if (bottom.length > 1) rings.push([...bottom, ...top.reverse()]);
    top = [];
    bottom = [];
  };
  for (const { before, after, deeper } of compareOutlines(shallow, deep)) {
    if (deeper === "before" || !after) continue;
    if (after.x0 !== end) close();
    bottom.push(...pointsOf(after));
    top.push(
      ...(before
        ? pointsOf(before)
        : ([
            [after.x0, 0],
            [after.x1, 0],
          ] as Point[])),
    );
    end = after.x1;
  }
  close();
  return rings;
}

/** Round pieces in steps so small that the area is right to a ten-thousandth. */
function pointsOf(piece: Piece): Point[] {
  if (piece.kind === "line")
    return [
      [piece.x0, piece.y0],
      [piece.x1, piece.y1],
    ];
  const { cx, radius, x0, x1 } = piece;
  const turn = (x: number) => Math.acos(Math.max(-1, Math.min(1, (x - cx) / radius)));
  const [from, to] = [turn(x0), turn(x1)];
  const steps = Math.max(1, Math.ceil(Math.abs(to - from) / 0.03));
  return Array.from({ length: steps + 1 }, (_, i) => {
    const x = i === 0 ? x0 : i === steps ? x1 : cx + radius * Math.cos(from + ((to - from) * i) / steps);
    return [x, depthAt(piece, x)];
  });
}

type At = (point: Point) => Point;

function outlineOf(outline: Outline): Point[] {
  return outline.flatMap(pointsOf);
}

function metal(
  plate: Plate,
  { groove, form }: Layers,
  at: At,
  top: number,
  bottom: number,
  way: 1 | -1,
): void {
  // An outline runs from the trailing side to the leading one: here it is wanted from the left to the right.
  const cut = outlineOf(groove.length > 0 ? groove : form).map(at);
  if (way < 0) cut.reverse();
  const down = Math.min(bottom + 4, plate.height - 3);
  const edge = 4;
  const body: Point[] = [
    [edge, top],
    ...cut,
    [plate.width - edge, top],
    [plate.width - edge, down],
    [edge, down],
  ];
  plate.ground(body, "metal");
  plate.hatch(body, 7);
  plate.line([[edge, top], cut[0]!], "outline", "surface");
  plate.line([cut.at(-1)!, [plate.width - edge, top]], "outline", "surface");
}

/** How far a pass is: its look and its place in words. */
function stateOf({ next }: PassesFigure, pass: number): "done" | "next" | "to-come" {
  if (next === undefined || pass < next) return "done";
  return pass === next ? "next" : "to-come";
}

function chips(plate: Plate, figure: PassesFigure, { taken, overcut }: Layers, at: At): void {
  taken.forEach((rings, i) => {
    const state = stateOf(figure, i + 1);
    for (const ring of rings) {
      const look = state === "done" ? `layer chip${i % 2 === 0 ? "" : "-2"}` : `layer ${state}`;
      plate.ground(ring.map(at), look, `pass-${i + 1}`);
    }
  });
  for (const ring of overcut) {
    const points = ring.map(at);
    plate.ground(points, "warn-ground", "overcut");
    plate.hatch(points, 4, 45, "warn-lining");
    plate.hatch(points, 4, -45, "warn-lining");
  }
}

function outlines(plate: Plate, { groove, form, overcut }: Layers, at: At): void {
  plate.line(outlineOf(groove).map(at), "outline", "groove");
  if (overcut.length > 0) plate.line(outlineOf(form).map(at), "flank", "form");
}

/** Numbers in the layers that are thick enough. */
function numbers(plate: Plate, figure: PassesFigure, { taken }: Layers, at: At, scale: number): void {
  const { depths, setover, leading } = figure;
  const { size } = plate;
  const slope = Math.tan((leading * Math.PI) / 180) + Math.tan((setover * Math.PI) / 180);
  depths.forEach((depth, i) => {
    const before = depths[i - 1] ?? 0;
    // Thickness of the layer along the axis, on the leading flank.
    const thick = (depth - before) * slope * scale;
    const middle = (depth + before) / 2;
    const ring = taken[i]!.find((points) => points.length > 2);
    if (!ring || thick < size * (i < 9 ? 0.95 : 1.5)) return;
    const y = Math.min(0.35 * depth, middle);
    const x = leadingAt(ring, y);
    if (x === undefined) return;
    const [px, py] = at([x, y]);
    const state = stateOf(figure, i + 1);
    plate.label(
      [{ text: String(i + 1), look: state === "next" ? "on-set bold" : "" }],
      [{ at: [px - (wayOf(figure) * thick) / 2, py], side: "over" }],
    );
  });
}

/** Leading side of a ring at this depth. */
function leadingAt(ring: readonly Point[], depth: number): number | undefined {
  let found: number | undefined;
  ring.forEach(([x, y], i) => {
    const [x1, y1] = ring[(i + 1) % ring.length]!;
    if (y < depth === y1 < depth) return;
    const cross = x + ((x1 - x) * (depth - y)) / (y1 - y);
    if (found === undefined || cross > found) found = cross;
  });
  return found;
}

interface Set {
  readonly at: At;
  readonly top: number;
  readonly trail: number;
  readonly lead: number;
  readonly depth: number;
}

function words(plate: Plate, figure: PassesFigure, { overcut }: Layers, set: Set): void {
  const { at, top, trail, lead, depth } = set;
  const { setover, next, depths, chip } = figure;
  const { size, width, height } = plate;
  // The line that the slide travels on, above the surface, where the tool comes from.
  const from = at([0, 0]);
  const length = Math.min(2.4 * size, top - 6) / Math.max(0.35, Math.cos((setover * Math.PI) / 180));
  const way = wayOf(figure);
  const direction = -90 - way * setover;
  const lean = Math.abs(Math.sin((setover * Math.PI) / 180));
  const right = setover >= 0 === way < 0;
  const beside = right ? width - from[0] : from[0];
  const reach = Math.min(Math.max(24, length), (beside - 4) / Math.max(0.01, lean));
  const line: [Point, Point] = [from, polar(from, reach, direction)];
  plate.line(line, "set", "infeed");
  plate.arrow(from, direction + 180, "set");
  plate.label(
    [{ text: `${angle(setover)} set-over`, look: "set bold" }],
    spots(line[1], right ? "e" : "w", right ? "ne" : "nw", right ? "w" : "e", "n"),
    { must: true },
  );
  const [left0, right0] = [at([lead, 0])[0], at([trail, 0])[0]].sort((a, b) => a - b) as [number, number];
  const x = Math.min(width - 1.2 * size, right0 + 1.6 * size);
  plate.dimensionAlong(false, [right0 + 2, top], at([depthPlace(figure), depth]), x, [
    { text: plain(depth) },
  ]);
  // What is on the leading side, and what is on the other.
  const [leads, trails] = (way < 0 ? ["left", "right"] : ["right", "left"]) as [Edge, Edge];
  cutArrow(plate, leads, top - 2.7 * size);
  const flankPlaces = (edge: Edge): Spot[] =>
    edge === "left"
      ? [
          { at: [4, top], side: "ne" },
          { at: [left0, top], side: "nw" },
          { at: [4, 4], side: "se" },
        ]
      : [
          { at: [width - 4, top], side: "nw" },
          { at: [width - 4, 4], side: "sw" },
        ];
  plate.label("leading flank", flankPlaces(leads), { gap: 2 });
  plate.label("trailing flank", flankPlaces(trails), { gap: 2 });
  const last: Line[] = [];
  if (chip && next !== undefined && next <= depths.length) {
    last.push(
      { text: `Next: pass ${next} of ${depths.length}`, look: "set bold" },
      { text: `chip ${plain(chip.leading)} on the leading, ${plain(chip.trailing)} on the trailing flank` },
    );
  } else if (next !== undefined) last.push({ text: `All ${depths.length} passes cut`, look: "bold" });
  else last.push({ text: `${depths.length} passes, to scale` });
  if (overcut.length > 0) {
    last.push({ text: `Overcut ${plain(figure.overcut)} outside the form, cross-lined`, look: "warn bold" });
  }
  const foot: Point = [6, height - 2];
  if (!plate.label(last, spots(foot, "ne"), { gap: 0 }))
    plate.label(last.slice(0, 1), spots(foot, "ne"), { gap: 0 });
}

type Edge = "left" | "right";

/** Which way the carriage runs while cutting, at the edge that it runs to. */
function cutArrow(plate: Plate, edge: Edge, y: number): void {
  const [tip, end] = edge === "left" ? [6, 38] : [plate.width - 6, plate.width - 38];
  plate.line(
    [
      [tip, y],
      [end, y],
    ],
    "thin",
    "cut",
  );
  plate.arrow([tip, y], edge === "left" ? 180 : 0);
  plate.label("cut", spots([end + (edge === "left" ? 2 : -2), y], edge === "left" ? "e" : "w"), { gap: 2 });
}

/** Axial place of the deepest pass. */
function depthPlace({ depths, setover }: PassesFigure): number {
  return depths.at(-1)! * Math.tan((setover * Math.PI) / 180);
}

export function sayPasses(figure: PassesFigure): string {
  const { depths, setover, leading, trailing, next, chip, overcut, direction } = figure;
  const parts = [
    `Groove in the axial plane, ${depths.length} ${depths.length === 1 ? "pass" : "passes"} to a depth of ${plain(depths.at(-1)!)}, set over ${angle(setover)} from the line square to the axis, flanks ${angle(leading)} leading and ${angle(trailing)} trailing`,
  ];
  parts.push(
    direction === "in"
      ? "cut to the left, towards the headstock"
      : "cut to the right, away from the headstock",
  );
  if (next !== undefined) {
    parts.push(
      next > depths.length
        ? "all passes are cut"
        : `pass ${next} is next, to a depth of ${plain(depths[next - 1]!)}`,
    );
  }
  if (chip) {
    parts.push(
      `its chip is ${plain(chip.leading)} thick on the leading and ${plain(chip.trailing)} on the trailing flank`,
    );
  }
  if (overcut > 0)
    parts.push(`the passes overcut the form by ${plain(overcut)} along the axis at the surface`);
  return `${parts.join("; ")}.`;
}
