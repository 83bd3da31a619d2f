/**
 * Plan view of the set-over: chuck, work, cross slide and top slide as they stand, headstock left, the person below.
 * The angle is drawn true; what is to be set is bold blue, the flank beside it muted and called by its name.
 */
import type { SetoverFigure } from "../lathe/figure.ts";
import { type Box, fitInto, type Point, polar } from "./geometry.ts";
import { type Drawing, Plate } from "./plate.ts";
import {
  type At,
  bedArc,
  bedLine,
  crossHalf,
  type Standing,
  slide,
  squareArc,
  standing,
} from "./setover-place.ts";
import { scaleDetail } from "./setover-scale.ts";
import { saySetover, words } from "./setover-words.ts";
import { workInChuck } from "./setover-work.ts";

export function drawSetover(figure: SetoverFigure, width: number, height: number): Drawing {
  const plate = new Plate(width, height);
  const { plan, detail } = rooms(figure, plate);
  const place = standing(figure);
  const { scale, at } = fitInto(place.extent, plan, 1.7);
  const pivot = at([0, 0]);

  crossSlide(plate, place, at, scale);
  workInChuck(plate, figure, place, at, scale);
  topSlide(plate, place, at, scale);
  toolPost(plate, figure, place, at, scale);
  angles(plate, figure, place, at, scale, pivot);
  words(plate, figure, place, at, scale);
  if (detail) scaleDetail(plate, figure, detail);
  return plate.done(saySetover(figure));
}

/** The drawing, and the enlarged scale below it or beside it where there is room. */
function rooms({ setover, flank, mark }: SetoverFigure, plate: Plate): { plan: Box; detail?: Box } {
  const { width, height, size } = plate;
  const all: Box = {
    left: 10,
    top: 1.6 * size,
    right: width - 10,
    bottom: height - (height > 260 ? 2.8 : 1.6) * size,
  };
  // The enlarged scale is a full one: another mark would contradict it.
  const near = mark === undefined && flank !== undefined && Math.abs(flank - setover) <= 8;
  if (near && height > 1.3 * width && width >= 270) {
    const split = height - Math.min(170, 0.31 * height);
    return {
      plan: { ...all, bottom: split - 3.1 * size },
      detail: { left: 10, right: width - 10, top: split, bottom: height - 6 },
    };
  }
  if (near && width > 1.45 * height && width >= 560 && height >= 220) {
    const split = 0.6 * width;
    return {
      plan: { ...all, right: split - size },
      detail: { left: split, right: width - 10, top: 10, bottom: Math.min(height - 6, 220) },
    };
  }
  return { plan: all };
}

function crossSlide(plate: Plate, place: Standing, at: At, scale: number): void {
  const half = crossHalf;
  const box: Point[] = [
    [-half, -58],
    [half, -58],
    [half, place.crossBack],
    [-half, place.crossBack],
  ];
  plate.ground(box.map(at), "outline metal");
  for (const x of [-half + 12, half - 12]) plate.line([at([x, -58]), at([x, place.crossBack])], "faint");
  // The base of the top slide with its scale.
  const base = 37;
  plate.circle(at([0, 0]), base * scale, "outline paper");
  const step = base * scale > 44 ? 5 : 10;
  for (let degree = 0; degree < 360; degree += step) {
    const long = degree % 30 === 0;
    const [from, to] = [base, base - (long ? 9 : 5)].map((r) => at(polar([0, 0], r, degree)));
    plate.ground([from!, to!], long ? "thin" : "faint");
  }
}

function topSlide(plate: Plate, { onSlide }: Standing, at: At, scale: number): void {
  const { half, front, back, handle } = slide;
  const box = (u: number, v0: number, v1: number) =>
    [onSlide(-u, v0), onSlide(u, v0), onSlide(u, v1), onSlide(-u, v1)].map(at);
  plate.closed(box(half, front, back), "outline metal-2");
  for (const u of [-15, 15]) plate.line([onSlide(u, front), onSlide(u, back)].map(at), "thin");
  plate.closed(box(30, back, back + 12), "outline metal");
  plate.closed(box(11, back + 12, back + 23), "outline paper");
  plate.closed(box(24, back + 23, handle - 4), "outline metal");
  for (const u of [-19, 19]) plate.circle(at(onSlide(u, handle - 3)), 6 * scale, "outline metal-2");
}

function toolPost(
  plate: Plate,
  { member }: SetoverFigure,
  { post, tip }: Standing,
  at: At,
  scale: number,
): void {
  const [x, y] = post;
  const rect = (left: number, top: number, right: number, bottom: number): Point[] =>
    (
      [
        [left, top],
        [right, top],
        [right, bottom],
        [left, bottom],
      ] as Point[]
    ).map(at);
  plate.closed(rect(x - 22, y - 22, x + 22, y + 22), "outline metal");
  plate.circle(at(post), 7 * scale, "thin");
  const cross = 5;
  for (const sign of [1, -1]) {
    plate.line([at([x - cross, y - sign * cross]), at([x + cross, y + sign * cross])], "thin");
  }
  if (member === "internal") {
    // A bar along the bore; its bit points at the person.
    const [tx, ty] = tip;
    plate.closed(rect(tx - 8, ty - 24, x + 18, ty - 12), "outline paper");
    plate.closed(
      (
        [
          [tx - 6, ty - 12],
          [tx + 6, ty - 12],
          [tx + 6, ty - 7],
          [tx, ty],
          [tx - 6, ty - 7],
        ] as Point[]
      ).map(at),
      "outline set-fill",
      "tool",
    );
    return;
  }
  const [tx, ty] = tip;
  plate.closed(
    (
      [
        [tx - 8, y + 26],
        [tx - 8, ty + 15],
        [tx, ty],
        [tx + 8, ty + 15],
        [tx + 8, y + 26],
      ] as Point[]
    ).map(at),
    "outline paper",
  );
  plate.ground(
    (
      [
        [tx - 7, ty + 14],
        [tx, ty + 1],
        [tx + 7, ty + 14],
      ] as Point[]
    ).map(at),
    "set-fill",
    "tool",
  );
}

function angles(
  plate: Plate,
  figure: SetoverFigure,
  place: Standing,
  at: At,
  scale: number,
  pivot: Point,
): void {
  const { setover, flank, zeroLine } = figure;
  const { handle, zero, way } = place;
  const on = (radius: number, direction: number) => at(polar([0, 0], radius, direction));
  plate.line([on(60, 270), on(squareArc + 20, 90)], "axis", "square");
  if (zeroLine !== "square") plate.line([on(26, zero), on(bedLine, zero)], "faint", "zero");
  if (flank !== undefined && Math.abs(flank - setover) > 3) {
    plate.line([pivot, on(squareArc + 12, 90 - way * flank)], "flank", "flank");
  }
  plate.line([pivot, on(squareArc + 22, handle)], "set", "setting");
  plate.circle(pivot, 3, "set-fill");
  measure(plate, pivot, squareArc * scale, 90, handle);
  if (zeroLine !== "square") measure(plate, pivot, bedArc * scale, zero, handle);
}

/** An angle dimension: arc with an arrow at each end, from outside where the angle is small. */
function measure(plate: Plate, pivot: Point, radius: number, from: number, to: number): void {
  const length = (Math.abs(to - from) * Math.PI * radius) / 180;
  if (length < 0.5) return;
  const sign = Math.sign(to - from);
  // The head is a chord of the arc: turned by half of what it spans.
  const lean = Math.min(20, (4.5 / radius) * 57.3);
  if (length > 26) {
    plate.arc(pivot, radius, from, to, "set-thin");
    plate.arrow(polar(pivot, radius, from), from - sign * (90 - lean), "set");
    plate.arrow(polar(pivot, radius, to), to + sign * (90 - lean), "set");
    return;
  }
  const tail = (16 / radius) * 57.3;
  plate.arc(pivot, radius, from - sign * tail, from, "set-thin");
  plate.arc(pivot, radius, to, to + sign * tail, "set-thin");
  plate.arrow(polar(pivot, radius, from), from + sign * (90 - lean), "set");
  plate.arrow(polar(pivot, radius, to), to - sign * (90 - lean), "set");
}
