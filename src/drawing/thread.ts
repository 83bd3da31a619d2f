/** Profile of a thread to scale: its diameters, pitch, flanks, root and crest, and how far its class lets them go. */
import type { LimitPair, ThreadFigure, ThreadShape } from "../lathe/figure.ts";
import type { LengthUnit } from "../thread/thread.ts";
import { angle, length, trimmed } from "./figures.ts";
import { boxOf, type Point, polar, spreadOut } from "./geometry.ts";
import { widthOf } from "./lettering.ts";
import { type Drawing, type Line, Plate, spots } from "./plate.ts";
import { formLines, grooveSides, type Place, surface } from "./profile.ts";

const diameters = ["major", "pitch", "minor"] as const;
type Diameter = (typeof diameters)[number];

/** From the places of a profile to paper: screws with the axis below, nuts too. */
interface Scene {
  readonly plate: Plate;
  readonly figure: ThreadFigure;
  readonly scale: number;
  readonly at: (place: Place) => Point;
  /** Where the profile ends. */
  readonly right: number;
  /** Up or down the page, the way the groove opens. */
  readonly open: 1 | -1;
  /** Where the metal ends that is drawn. */
  readonly back: number;
}

export function drawThread(figure: ThreadFigure, width: number, height: number): Drawing {
  const plate = new Plate(width, height);
  const scene = setOut(plate, figure);
  profile(scene);
  levels(scene);
  flanks(scene);
  pitchAndDepth(scene);
  rootAndCrest(scene);
  return plate.done(sayThread(figure));
}

/** Radii from which limits go furthest out and in. */
function reach({ shape, limits }: ThreadFigure): { out: number; inner: number } {
  const all = [
    shape.major,
    shape.minor,
    ...diameters.flatMap((one) => [limits[one].max, limits[one].min]),
  ].filter((value) => value !== undefined);
  return { out: Math.max(...all) / 2, inner: Math.min(...all) / 2 };
}

/** Pitches that are shown, to the left and to the right of the middle of the groove. */
const span = { from: -0.76, to: 0.9 } as const;

function setOut(plate: Plate, figure: ThreadFigure): Scene {
  const { shape } = figure;
  const { width, height, size } = plate;
  const open = formLines(shape).opens;
  // The side that the groove opens to has the dimensions, the other the metal.
  const dimensions = 5.2 * size;
  const metal = Math.max(1.9 * size, 0.12 * height);
  const { out, inner } = reach(figure);
  const top = open > 0 ? dimensions : metal;
  const bottom = height - (open > 0 ? metal : dimensions);
  const left = 2.6 * size;
  const words = diameters.flatMap((one) => [sizeWords(shape, one), limitWords(figure.limits[one], shape)]);
  const column = Math.max(...words.map((text) => widthOf(text, size))) + 50;
  const right = Math.max(left + 50, width - column);
  const pitches = span.to - span.from;
  const scale = Math.min((bottom - top) / (out - inner), (right - left) / (pitches * shape.pitch));
  const x0 = (left + right - (span.to + span.from) * shape.pitch * scale) / 2;
  const y0 = top + (bottom - top - (out - inner) * scale) / 2;
  return {
    plate,
    figure,
    scale,
    at: ([x, r]) => [x0 + x * scale, y0 + (out - r) * scale],
    right: x0 + span.to * shape.pitch * scale,
    open,
    back:
      open > 0 ? Math.min(height - 3, y0 + (out - inner) * scale + metal - 3) : Math.max(3, y0 - metal + 3),
  };
}

function profile({ plate, figure, at, back }: Scene): void {
  const { shape } = figure;
  const points = surface(shape, span.from, span.to).map(at);
  const [first, last] = [points[0]!, points.at(-1)!];
  // Where the metal is broken off: thin freehand lines.
  const torn = ([x, y]: Point, sign: 1 | -1) =>
    Array.from({ length: 9 }, (_, i): Point => [x - sign * (i % 2 === 0 ? 0 : 2), y + ((back - y) * i) / 8]);
  const [leftEdge, rightEdge] = [torn(first, 1), torn(last, -1)];
  const body: Point[] = [...points, ...rightEdge, ...leftEdge.slice().reverse()];
  plate.ground(body, "metal");
  plate.hatch(body);
  plate.line(points, "outline", "profile");
  for (const edge of [leftEdge, rightEdge]) plate.trace(edge, "thin");
  plate.line(
    [span.from, span.to].map((pitches) => at([pitches * shape.pitch, shape.pitchDia / 2])),
    "axis",
    "pitch-line",
  );
}

/** Diameters with their limits, at the right; the tolerance zones stand beside the profile, to scale. */
function levels({ plate, figure, at, right, open }: Scene): void {
  const { shape, limits } = figure;
  const { size, width, height } = plate;
  const heights = diameters.map((one) => at([0, sizeOf(shape, one) / 2])[1]);
  const order = [...diameters.keys()].sort((a, b) => heights[a]! - heights[b]!);
  const zone = { left: right + 6, right: right + 24 };
  const column = zone.right + 14;
  const twoLines = diameters.map((one) => limitWords(limits[one], shape) !== "");
  const lineHeight = 1.23 * size;
  const gap = 2 * lineHeight + 6;
  const [low, high] = open > 0 ? [3.5 * size, height - lineHeight - 6] : [lineHeight + 8, height - 3 * size];
  const places = spreadOut(
    order.map((i) => heights[i]!),
    Math.min(gap, Math.max(lineHeight + 3, (high - low) / 2)),
    low,
    high,
  );
  order.forEach((i, n) => {
    const one = diameters[i]!;
    const y = heights[i]!;
    const to = places[n]!;
    if (one !== "pitch")
      plate.line(
        [
          [right - 3, y],
          [zone.right + 2, y],
        ],
        "thin",
      );
    else
      plate.ground(
        [
          [right - 2, y],
          [zone.right + 2, y],
        ],
        "axis",
      );
    plate.line(
      [
        [zone.right + 2, y],
        [column, to],
        [width - 4, to],
      ],
      "thin",
    );
    const box = zoneBox(limits[one], at, zone);
    if (box) {
      plate.reserve(boxOf(box));
      plate.ground(box, "set-zone", `zone-${one}`);
      plate.hatch(box, 3.5, -45, "zone-lining");
    }
    const words: Line = {
      text: sizeWords(shape, one),
      look: one === "pitch" ? "bold" : "",
    };
    const limitLine: Line = { text: limitWords(limits[one], shape), look: "muted" };
    plate.label([words], [{ at: [column + 2, to], side: "ne" }], { gap: 1 });
    if (twoLines[i]) plate.label([limitLine], [{ at: [column + 2, to], side: "se" }], { gap: 1 });
  });
}

function sizeOf(shape: ThreadShape, diameter: Diameter): number {
  return diameter === "major" ? shape.major : diameter === "minor" ? shape.minor : shape.pitchDia;
}

function sizeWords(shape: ThreadShape, one: Diameter): string {
  return `${one} ø${length(sizeOf(shape, one), shape.unit)}`;
}

function limitWords({ max, min }: LimitPair, { unit }: ThreadShape): string {
  if (max !== undefined && min !== undefined) return `${length(min, unit)} to ${length(max, unit)}`;
  if (max !== undefined) return `at most ${length(max, unit)}`;
  return min === undefined ? "" : `at least ${length(min, unit)}`;
}

function zoneBox(
  { max, min }: LimitPair,
  at: Scene["at"],
  { left, right }: { left: number; right: number },
): Point[] | undefined {
  if (max === undefined || min === undefined) return undefined;
  const [top, bottom] = [at([0, max / 2])[1], at([0, min / 2])[1]];
  return [
    [left, top],
    [right, top],
    [right, bottom],
    [left, bottom],
  ];
}

/** The included angle, or both flanks where they differ, over the groove. */
function flanks({ plate, figure, at, open, scale }: Scene): void {
  const { shape } = figure;
  const { loadFlank: l, clearanceFlank: t } = shape;
  const { crest, bottom } = formLines(shape);
  const { size } = plate;
  const sides = grooveSides(shape, crest);
  const [out, direction] = open > 0 ? (["n", -90] as const) : (["s", 90] as const);
  const middle = at([0, crest]);
  if (l + t < 1) {
    plate.label("square flanks", spots(middle, out), { gap: 6 });
    return;
  }
  const slope = (degrees: number) => Math.tan((degrees * Math.PI) / 180);
  const deep = (sides.left + sides.right) / (slope(l) + slope(t));
  const apex: Place = [-sides.left + deep * slope(l), crest - open * deep];
  const centre = at(apex);
  const radius = deep * scale + 0.75 * size;
  // Both flanks drawn on past the crest, as extension lines of the angle.
  const [begin, end] = open > 0 ? [direction - l, direction + t] : [direction + l, direction - t];
  for (const [x, turn] of [
    [-sides.left, begin],
    [sides.right, end],
  ] as const) {
    plate.line([at([x, crest]), polar(centre, radius + 4, turn)], "thin");
  }
  plate.arc(centre, radius, begin, end, "thin", "angle");
  const sign = Math.sign(end - begin);
  const lean = Math.min(20, (4.5 / radius) * 57.3);
  const inside = (Math.abs(end - begin) * Math.PI * radius) / 180 > 26;
  plate.arrow(polar(centre, radius, begin), begin - sign * (90 - lean) + (inside ? 0 : 180));
  plate.arrow(polar(centre, radius, end), end + sign * (90 - lean) + (inside ? 0 : 180));
  if (l !== t) plate.line([at([apex[0], bottom]), polar(centre, radius + 4, direction)], "axis");
  const both = l === t ? angle(l + t) : `load ${angle(l)}, clearance ${angle(t)}`;
  for (const text of [both, angle(l + t)]) {
    const places = [
      ...spots(polar(centre, radius, direction), out),
      ...[-8, 8, -16, 16].flatMap((off) => spots(polar(centre, radius, direction + off), out)),
    ];
    if (plate.label([{ text, look: "bold" }], places, { gap: 2 })) return;
  }
}

function pitchAndDepth({ plate, figure, at, open }: Scene): void {
  const { shape } = figure;
  const { pitch, lead, starts, unit } = shape;
  const { crest, bottom } = formLines(shape);
  const { size } = plate;
  // From the middle of one crest to the middle of the next.
  const sides = grooveSides(shape, crest);
  const top = (sides.right - sides.left - pitch) / 2;
  const line = at([0, crest])[1] - open * 3.1 * size;
  const words = `P ${length(pitch, unit)}${starts > 1 ? `, lead ${length(lead, unit)}` : ""}`;
  plate.dimensionAlong(true, at([top, crest]), at([top + pitch, crest]), line, [{ text: words }]);
  const x = at([span.from * pitch, 0])[0];
  plate.dimensionAlong(false, [x + 3, at([0, crest])[1]], [x + 3, at([0, bottom])[1]], x - 0.7 * size, [
    { text: length(Math.abs(crest - bottom), unit) },
  ]);
}

function rootAndCrest({ plate, figure, at, back, open, right }: Scene): void {
  const { shape, rootFlat, crestFlat, taper, fit } = figure;
  const { crest, bottom } = formLines(shape);
  const { unit, pitch, rootRadius, crestRadius } = shape;
  const root = roundOrFlat(rootRadius, rootFlat, unit);
  const top = roundOrFlat(crestRadius, crestFlat, unit);
  const [inward, outward] = open > 0 ? (["s", "n"] as const) : (["n", "s"] as const);
  const most = 12;
  plate.label(root && `root ${root}`, spots(at([0, bottom]), inward), { gap: 3, most });
  const sides = grooveSides(shape, crest);
  const peak = at([(sides.right - sides.left + pitch) / 2, crest]);
  plate.label(top && `crest ${top}`, spots(peak, open > 0 ? "ne" : "se", inward), { gap: 4, most });
  if (fit !== "") {
    const zone: Point = [
      right + 15,
      open > 0 ? at([0, reach(figure).out])[1] : at([0, reach(figure).inner])[1],
    ];
    const corner: Point = [plate.width - 4, open > 0 ? plate.height - 3 : 3];
    plate.label([{ text: fit, look: "muted" }], spots(zone, outward), { gap: 3, most: 4 }) ||
      plate.label([{ text: `class ${fit}`, look: "muted" }], spots(corner, open > 0 ? "nw" : "sw"), {
        gap: 0,
        most,
      });
  }
  if (taper !== 0) {
    const text = `taper ${trimmed(taper, 4)} on diameter, shown at the gauge plane`;
    plate.label(text, spots([plate.width / 2, open > 0 ? plate.height : 0], open > 0 ? "n" : "s"), {
      gap: 3,
    }) ||
      plate.label(`taper ${trimmed(taper, 4)}`, spots([plate.width / 2, back], outward, inward), { gap: 3 });
  }
}

/** Radius or flat of a root or crest; "" where the form has neither. */
function roundOrFlat(radius: number | undefined, flat: number | undefined, unit: LengthUnit): string {
  return radius ? `r ${length(radius, unit)}` : flat ? `flat ${length(flat, unit)}` : "";
}

export function sayThread(figure: ThreadFigure): string {
  const { shape, fit, limits, taper } = figure;
  const { unit, loadFlank: l, clearanceFlank: t, starts, member } = shape;
  const of = (value: number) => `${length(value, unit)} ${unit}`;
  const parts = [
    `Profile of ${shape.designation}, ${member}, ${shape.hand}-hand, to scale`,
    `pitch ${of(shape.pitch)}${starts > 1 ? `, lead ${of(shape.lead)} in ${starts} starts` : ""}`,
    l === t ? `included angle ${angle(l + t)}` : `load flank ${angle(l)}, clearance flank ${angle(t)}`,
    ...diameters.map((one) => {
      const words = limitWords(limits[one], shape);
      return `${one} diameter ${of(sizeOf(shape, one))}${words && `, ${fit ? `class ${fit} ` : ""}${words}`}`;
    }),
  ];
  const root = roundOrFlat(shape.rootRadius, figure.rootFlat, unit);
  const crest = roundOrFlat(shape.crestRadius, figure.crestFlat, unit);
  if (root !== "") parts.push(`root ${root}`);
  if (crest !== "") parts.push(`crest ${crest}`);
  if (taper !== 0) parts.push(`taper ${trimmed(taper, 4)} on diameter, shown at the gauge plane`);
  return `${parts.join("; ")}.`;
}
