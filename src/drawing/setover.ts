/**
 * Plan view of the set-over: chuck, work, cross slide and top slide as they stand, headstock left, the person below.
 * The angle is drawn true; what is to be set is bold blue, the flank beside it muted and called by its name.
 */
import type { SetoverFigure } from "../lathe/figure.ts";
import { angle } from "./figures.ts";
import { type Box, boxOf, fitInto, type Point, polar } from "./geometry.ts";
import { type Drawing, type Line, Plate, type Spot, spots } from "./plate.ts";
import { scaleDetail } from "./setover-scale.ts";
import { workInChuck } from "./setover-work.ts";

/** Sizes of the slide, in the units that everything here is in before it is fitted to its frame. */
const slide = { half: 25, front: -70, back: 104, handle: 133, post: -52 };
const squareArc = 150;
const bedArc = 118;
const bedLine = 196;

const crossBack = 140;

const zeroWords = {
  square: "scale zeroed square",
  bed: "bed scale",
  obtuse: "bed scale, far end",
} as const;

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

/** Where everything stands before it is fitted: the pivot of the top slide is the origin. */
export interface Standing {
  /** 1 when the handle of a positive set-over goes right, -1 when it goes left. */
  readonly way: 1 | -1;
  /** Directions of the slide towards its handle, and of the zero line of a scale along the bed. */
  readonly handle: number;
  readonly zero: number;
  /** From the slide's own u (across) and v (towards the handle). */
  readonly onSlide: (u: number, v: number) => Point;
  readonly post: Point;
  readonly tip: Point;
  readonly axis: number;
  /** Right face of the jaws, and free end of the work. */
  readonly jaws: number;
  readonly end: number;
  readonly extent: Box;
  /** Where the cross slide ends on the person's side. */
  readonly crossBack: number;
}

function standing({ setover, flank, zeroLine, hand, member }: SetoverFigure): Standing {
  const way = (hand === "right") === (member === "external") ? 1 : -1;
  const turned = way * setover;
  const handle = 90 - turned;
  const onSlide = (u: number, v: number): Point => {
    const [x, y] = polar([0, 0], v, handle);
    return polar([x, y], u, handle - 90);
  };
  const post = onSlide(0, slide.post);
  const inside = member === "internal";
  const corners = [-slide.half, slide.half].flatMap((u) => [
    onSlide(u, slide.front),
    onSlide(1.2 * u, slide.handle + 6),
  ]);
  const slideBox = boxOf(corners);
  // Inside, the bar reaches from the post past the end of the work into the bore.
  const tip: Point = inside ? [post[0] - 96, post[1] - 40] : [post[0] + 18, post[1] - 42.5];
  const axis = inside ? tip[1] - 20 : tip[1] - 16;
  const jaws = Math.min(tip[0] - 62, way * Math.sign(setover) < 0 ? slideBox.left - 14 : Infinity);
  const end = inside ? tip[0] + 34 : tip[0] + 84;
  const zero = (zeroLine === "obtuse") === way > 0 ? 180 : 0;
  const arcs =
    zeroLine === "square"
      ? [polar([0, 0], squareArc + 22, handle), polar([0, 0], squareArc + 22, 90)]
      : [
          polar([0, 0], squareArc + 22, handle),
          polar([0, 0], squareArc + 22, 90),
          polar([0, 0], bedLine, zero),
        ];
  const extent = boxOf([
    ...corners,
    ...arcs,
    ...(flank === undefined ? [] : [polar([0, 0], squareArc + 14, 90 - way * flank)]),
    [-48, -60],
    [48, crossBack + 2],
    [jaws - 48, axis - 62],
    [jaws, axis + 62],
    [end + 26, axis],
    [0, slideBox.bottom],
  ]);
  return {
    way,
    handle,
    zero,
    onSlide,
    post,
    tip,
    axis,
    jaws,
    end,
    extent,
    crossBack,
  };
}

type At = (point: Point) => Point;

/** The drawing, and the enlarged scale below it or beside it where there is room. */
function rooms({ setover, flank }: SetoverFigure, plate: Plate): { plan: Box; detail?: Box } {
  const { width, height, size } = plate;
  const all: Box = {
    left: 10,
    top: 1.6 * size,
    right: width - 10,
    bottom: height - (height > 260 ? 2.8 : 1.6) * size,
  };
  const near = flank !== undefined && Math.abs(flank - setover) <= 8;
  if (near && height > 1.3 * width && width >= 270) {
    const split = height - Math.min(170, 0.31 * height);
    return {
      plan: { ...all, bottom: split - 2.4 * size },
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
  const half = 46;
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

function words(plate: Plate, figure: SetoverFigure, place: Standing, at: At, scale: number): void {
  const { setover, reading, flank, flankReading, zeroLine, swing } = figure;
  const { handle, zero, way, axis, jaws, end } = place;
  const { size } = plate;
  const big = 1.6 * size;
  const on = (radius: number, direction: number) => at(polar([0, 0], radius, direction));
  const past = flank !== undefined && setover > flank;
  const warning: Line[] = past
    ? [{ text: `past the flank by ${angle(setover - flank)}`, look: "warn bold" }]
    : [];
  if (zeroLine !== "square") {
    const block: Line[] = [
      { text: angle(reading), look: "set bold", size: big },
      { text: zeroWords[zeroLine], look: "muted" },
      ...(flankReading === undefined ? [] : [{ text: `flank ${angle(flankReading)}`, look: "muted" }]),
    ];
    const middle = (zero + handle) / 2;
    const around = [0, 8, -8, 16, -16, 26, -26, 36, -36].map((off) => ({
      at: on(bedArc, middle + off),
      side: sideOf(middle + off),
    }));
    const found = plate.label(block, around, { gap: 5 });
    if (!found) plate.label(block.slice(0, 2), around, { must: true, gap: 3 });
  }
  const fromSquare: Line[] = [
    { text: angle(setover), look: "set bold", size: zeroLine === "square" ? big : 1.3 * size },
    { text: zeroLine === "square" ? "set, from square" : "from square", look: "muted" },
    ...(flank === undefined ? [] : [{ text: `flank ${angle(flank)}`, look: "muted" }]),
  ];
  const foot = (90 + handle) / 2;
  const places: Spot[] = [
    { at: on(squareArc, foot), side: "s" },
    { at: on(squareArc, foot), side: "se" },
    { at: on(squareArc, foot), side: "sw" },
    { at: on(squareArc, 90), side: way > 0 ? "sw" : "se" },
    { at: on(squareArc - 8, 90), side: way > 0 ? "w" : "e" },
    { at: on(squareArc - 8, handle), side: way > 0 ? "e" : "w" },
    { at: on(squareArc + 8, handle), side: way > 0 ? "e" : "w" },
    { at: on(squareArc - 34, 90), side: way > 0 ? "w" : "e" },
  ];
  if (!plate.label(fromSquare, places, { gap: 5 }))
    plate.label(fromSquare.slice(0, 2), places, { must: true, gap: 3 });
  if (past) plate.label(warning, places, { must: true });
  cutArrow(plate, figure, place, at);
  plate.label("lathe axis", [
    { at: at([end + 24, axis]), side: "nw" },
    { at: at([end + 24, axis]), side: "ne" },
    { at: at([end + 24, axis]), side: "n" },
    { at: at([end + 24, axis]), side: "se" },
    { at: at([end + 24, axis]), side: "sw" },
  ]);
  plate.label(
    swing.split(", ").map((text) => ({ text })),
    [
      { at: on(slide.handle, handle), side: way > 0 ? "ne" : "nw" },
      { at: on(slide.handle + 20, handle), side: way > 0 ? "e" : "w" },
      { at: on(squareArc + 22, handle), side: way > 0 ? "e" : "w" },
      { at: on(slide.back - 10, handle - way * 18), side: way > 0 ? "e" : "w" },
      { at: at([way * 46, 100]), side: way > 0 ? "e" : "w" },
      { at: at([-way * 46, 60]), side: way > 0 ? "w" : "e" },
      { at: at([-way * 46, 20]), side: way > 0 ? "w" : "e" },
    ],
    { gap: 14 * scale },
  );
  if (zeroLine !== "square") {
    const tail = on(bedLine, zero);
    const flush = zero === 0 ? (["nw", "sw", "n", "s"] as const) : (["ne", "se", "n", "s"] as const);
    plate.label("0, along the bed", spots(tail, ...flush), { gap: 1 }) ||
      plate.label("0", spots(tail, ...flush), { gap: 1 });
  }
  plate.label("chuck", spots(at([jaws - 35, axis - 60]), "n", "ne", "s"), { gap: 1 });
  plate.label("cross slide", [
    { at: at([-46, place.crossBack - 6]), side: "w" },
    { at: at([46, place.crossBack - 6]), side: "e" },
    { at: at([-46, 100]), side: "w" },
    { at: at([0, place.crossBack]), side: "s" },
  ]);
}

/** Which way the carriage runs while cutting. */
function cutArrow(plate: Plate, { hand }: SetoverFigure, { tip }: Standing, at: At): void {
  const [near, far] = [at([tip[0] + 36, tip[1] + 24]), at([tip[0] + 76, tip[1] + 24])];
  const inward = hand === "right";
  plate.line([near, far], "thin", "cut");
  plate.arrow(inward ? near : far, inward ? 180 : 0);
  plate.label("cut", [
    { at: far, side: "e" },
    { at: near, side: "s" },
  ]);
}

function sideOf(direction: number): Spot["side"] {
  const turn = ((direction % 360) + 360) % 360;
  const sides = ["e", "se", "s", "sw", "w", "nw", "n", "ne"] as const;
  return sides[Math.round(turn / 45) % 8]!;
}

export function saySetover(figure: SetoverFigure): string {
  const { setover, reading, flank, flankReading, zeroLine, hand, member, swing } = figure;
  const parts = [
    `Plan view, headstock left: the top slide set over ${angle(setover)} from the line square to the lathe axis, ${hand}-hand ${member} thread, ${swing}`,
    zeroLine === "square"
      ? "a protractor zeroed square to the bed reads the same"
      : `a protractor zeroed ${zeroLine === "bed" ? "along the bed" : "along the bed from its other end"} reads ${angle(reading)}`,
  ];
  if (flank !== undefined && flankReading !== undefined) {
    parts.push(
      `the flank lies at ${angle(flank)}${zeroLine === "square" ? "" : `, where that scale reads ${angle(flankReading)}`}, not to be set`,
    );
    if (setover > flank) parts.push(`the setting is past the flank by ${angle(setover - flank)}`);
  }
  return `${parts.join("; ")}.`;
}
