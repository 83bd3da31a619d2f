/**
 * Wires in the grooves of a screw, or balls in those of a nut, to scale: where they touch, what is measured over them.
 * Two stand on one side and one opposite; the work between is broken away.
 */
import type { WiresFigure } from "../lathe/figure.ts";
import { centrePerDiameter, sharpHeight } from "../thread/groove.ts";
import { length } from "./figures.ts";
import { type Point, polar } from "./geometry.ts";
import { type Drawing, Plate, spots } from "./plate.ts";
import { formLines, type Place, surface } from "./profile.ts";

/** Centre and points of contact of a round thing in the groove at 0, in the axial plane. */
export function seatIn(figure: WiresFigure): { centre: Place; first: Place; second: Place } {
  const { shape, wire, at } = figure;
  const { loadFlank: first, clearanceFlank: second, pitch } = shape;
  const { opens } = formLines(shape);
  const vee = { pitch, first, second };
  const apex = at / 2 - (opens * sharpHeight(vee)) / 2;
  const radius = apex + opens * wire * centrePerDiameter(vee);
  const radians = Math.PI / 180;
  // The groove is half a pitch wide at the pitch line; the apex lies under the middle only when both flanks are alike.
  const rise = opens * (at / 2 - apex);
  const apexX = -pitch / 4 + rise * Math.tan(first * radians);
  const along = opens * (radius - apex);
  // Square to the first flank, from it to the centre, is half a wire.
  const x = apexX - along * Math.tan(first * radians) + wire / 2 / Math.cos(first * radians);
  const half = wire / 2;
  return {
    centre: [x, radius],
    first: [x - half * Math.cos(first * radians), radius - opens * half * Math.sin(first * radians)],
    second: [x + half * Math.cos(second * radians), radius - opens * half * Math.sin(second * radians)],
  };
}

export function drawWires(figure: WiresFigure, width: number, height: number): Drawing {
  const plate = new Plate(width, height);
  const { size } = plate;
  const { shape, wire } = figure;
  const { opens, crest, bottom } = formLines(shape);
  const { centre } = seatIn(figure);
  const outer = centre[1] + wire / 2;
  const inner = centre[1] - wire / 2;
  // Radii that each half has to show, from the axis outwards.
  const [far, near] = opens > 0 ? [Math.max(outer, crest), bottom] : [bottom, Math.min(inner, crest)];
  const metal = Math.min(1.5 * size, 0.06 * height);
  const head = Math.min(1.9 * size, 0.08 * height);
  const middle = Math.min(3.2 * size, 0.14 * height);
  const words = isNarrow(plate) ? 3.9 * size : 0;
  const room = (height - words - 2 * head - middle - 2 * metal) / 2;
  const narrow = isNarrow(plate);
  const across = width - (narrow ? 6.4 : 13) * size;
  const scale = Math.min(room / (far - near), across / (2.35 * shape.pitch));
  const x0 = 2.2 * size + 0.6 * shape.pitch * scale;
  const band = (far - near) * scale;
  const top = (height - words - (2 * band + middle + 2 * metal)) / 2 + (opens > 0 ? 0 : metal);
  const upper = ([x, r]: Place): Point => [x0 + x * scale, top + (far - r) * scale];
  const axis = opens > 0 ? top + band + metal + middle / 2 : top + band + middle / 2;
  // The lower half is the upper one turned over, half a pitch on.
  const lower = ([x, r]: Place): Point => [
    x0 + (x + 0.5 * shape.pitch) * scale,
    2 * axis - (top + (far - r) * scale),
  ];
  const back = opens > 0 ? top + band + metal : top - metal;
  half(plate, figure, upper, [0, 1], back, -0.6, 1.6);
  half(plate, figure, lower, [0], 2 * axis - back, -1.1, 1.1);
  const [from, to] = [upper([-0.6 * shape.pitch, 0])[0], upper([1.6 * shape.pitch, 0])[0]];
  plate.line(
    [
      [from - 8, axis],
      [to + 8, axis],
    ],
    "axis",
    "lathe-axis",
  );
  for (const y of [axis - 0.7 * size, axis + 0.7 * size]) breakLine(plate, from - 4, to + 4, y);
  reading(plate, figure, upper, lower, to);
  contact(plate, figure, upper, lower);
  return plate.done(sayWires(figure));
}

function isNarrow({ width, height }: Plate): boolean {
  return width < 350 && height > 0.8 * width && height > 220;
}

function half(
  plate: Plate,
  figure: WiresFigure,
  at: (place: Place) => Point,
  grooves: readonly number[],
  back: number,
  begin: number,
  end: number,
): void {
  const { shape, wire, at: pitchDia } = figure;
  // The thread as it is cut to the size that is measured.
  const points = surface({ ...shape, pitchDia }, begin, end).map(at);
  const body: Point[] = [...points, [points.at(-1)![0], back], [points[0]![0], back]];
  plate.ground(body, "metal");
  plate.hatch(body);
  plate.line(points, "outline", "profile");
  const { centre, first, second } = seatIn(figure);
  const radius = Math.abs(at([wire / 2, 0])[0] - at([0, 0])[0]);
  for (const k of grooves) {
    const shift = ([x, r]: Place): Point => at([x + k * shape.pitch, r]);
    const [x, y] = shift(centre);
    plate.circle([x, y], radius, "outline chip", "wire");
    plate.ground(
      [
        [x - 5, y],
        [x + 5, y],
      ],
      "axis",
    );
    plate.ground(
      [
        [x, y - 5],
        [x, y + 5],
      ],
      "axis",
    );
    for (const place of [first, second]) plate.circle(shift(place), 3, "set-ring", "contact");
  }
}

function breakLine(plate: Plate, from: number, to: number, y: number): void {
  const count = Math.max(6, Math.round((to - from) / 14));
  const points = Array.from(
    { length: count + 1 },
    (_, i): Point => [from + ((to - from) * i) / count, y + (i % 2 === 0 ? 1.6 : -1.6)],
  );
  plate.trace(points, "thin");
}

function reading(
  plate: Plate,
  figure: WiresFigure,
  upper: (place: Place) => Point,
  lower: (place: Place) => Point,
  right: number,
): void {
  const { shape, wire, reading: value, at, aimed } = figure;
  const { unit, pitch, member } = shape;
  const { size } = plate;
  const { centre } = seatIn(figure);
  const side = member === "external" ? 1 : -1;
  const face: Place = [centre[0], centre[1] + side * (wire / 2)];
  const a = upper([face[0] + pitch, face[1]]);
  const b = lower(face);
  const narrow = isNarrow(plate);
  const x = right + (narrow ? 2.6 : 1.6) * size;
  const ball = member === "internal";
  plate.line([a, [x + 3, a[1]]], "thin");
  plate.line([b, [x + 3, b[1]]], "thin");
  const [low, high] = [Math.min(a[1], b[1]), Math.max(a[1], b[1])];
  plate.line(
    [
      [x, low],
      [x, high],
    ],
    "thin set",
    "reading",
  );
  plate.arrow([x, low], -90, "set");
  plate.arrow([x, high], 90, "set");
  const middle: Point = [x, (low + high) / 2];
  const words = [
    { text: length(value, unit), look: "set bold", size: 1.35 * size },
    { text: ball ? "between balls" : "over wires", look: "muted" },
    { text: aimed ? "middle of the" : "at the basic", look: "muted" },
    { text: aimed ? "class limits" : "pitch diameter", look: "muted" },
    { text: `ø${length(at, unit)}`, look: "muted" },
  ];
  if (narrow) {
    // The figure along its line, the words below.
    plate.label(words.slice(0, 1), spots(middle, "w"), { upright: true, gap: 2, must: true });
    const below = ball ? "between balls, " : "over wires, ";
    const which = `${aimed ? "middle of the class limits" : "basic pitch diameter"} ø${length(at, unit)}`;
    const foot: Point = [6, plate.height - 3];
    plate.label(
      [
        { text: `${below}for the`, look: "muted" },
        { text: which, look: "muted" },
      ],
      spots(foot, "ne"),
      { gap: 0 },
    );
    return;
  }
  plate.label(words, spots(middle, "e"), { gap: 6 }) ||
    plate.label(words.slice(0, 2), spots(middle, "e"), { gap: 6 }) ||
    plate.label(words.slice(0, 1), spots(middle, "e", "w"), { must: true });
}

function contact(
  plate: Plate,
  figure: WiresFigure,
  upper: (place: Place) => Point,
  lower: (place: Place) => Point,
): void {
  const { shape, wire, best } = figure;
  const { unit, pitch, member } = shape;
  const name = member === "internal" ? "ball" : "wire";
  const { centre, second } = seatIn(figure);
  const out = member === "external" ? 1 : -1;
  const [x, y] = upper([centre[0] + pitch / 2, centre[1] + out * (wire / 2)]);
  const size = `${name} ø${length(wire, unit)}`;
  plate.label(
    [
      { text: size, look: "bold" },
      { text: `best ${length(best, unit)}`, look: "muted" },
    ],
    [
      ...spots([4, 2], "se"),
      { at: [x, y], side: out > 0 ? "n" : "s" },
      { at: lower([centre[0] + 0.55 * pitch, centre[1] + out * (wire / 2)]), side: out > 0 ? "se" : "ne" },
    ],
  ) ||
    plate.label(size, [
      { at: [x, y], side: out > 0 ? "n" : "s" },
      { at: lower([centre[0], centre[1] + out * (wire / 2)]), side: out > 0 ? "s" : "n" },
      { at: [plate.width - 4, 4], side: "sw" },
    ]);
  const mark = lower(second);
  plate.label(
    "touches here",
    [
      { at: polar(mark, 6, 45), side: "e" },
      { at: mark, side: "e" },
      { at: lower([second[0] + 0.2 * pitch, second[1]]), side: "se" },
      { at: lower([second[0] + 0.2 * pitch, second[1]]), side: "ne" },
    ],
    { gap: 8 },
  );
}

export function sayWires({ shape, wire, reading: value, at, aimed, best }: WiresFigure): string {
  const { unit, member, designation } = shape;
  const of = (value: number) => `${length(value, unit)} ${unit}`;
  const screw = member === "external";
  return `${screw ? "Three wires" : "Three balls"} of ${of(wire)} in ${designation}, two on one side and one opposite; best ${screw ? "wire" : "ball"} ${of(best)}; ${screw ? "over the wires" : "between the inner faces of the balls"} ${of(value)} for ${aimed ? "the middle of the class limits" : "the basic size"}, a pitch diameter of ${of(at)}. The marks show where they touch the flanks.`;
}
