/** Profile of a thread to scale: its diameters, pitch, flanks, root and crest, and how far its class lets them go. */
import type { LimitPair, ThreadFigure, ThreadShape } from "../lathe/figure.ts";
import { angle, length, trimmed } from "./figures.ts";
import { type Point, polar, spreadOut } from "./geometry.ts";
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
  readonly left: number;
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

function setOut(plate: Plate, figure: ThreadFigure): Scene {
  const { shape } = figure;
  const { width, height, size } = plate;
  const open = formLines(shape).opens;
  // The side that the groove opens to has the dimensions, the other the metal.
  const dimensions = 4.6 * size;
  const metal = Math.max(18, 0.12 * height);
  const { out, inner } = reach(figure);
  const top = open > 0 ? dimensions : metal;
  const bottom = height - (open > 0 ? metal : dimensions);
  const left = 3.4 * size;
  const right = Math.max(0.5 * width, width - 12.5 * size) - 30;
  const scale = Math.min((bottom - top) / (out - inner), (right - left) / (2.2 * shape.pitch));
  const across = 2.2 * shape.pitch * scale;
  const x0 = left + 0.35 * shape.pitch * scale;
  const free = bottom - top - (out - inner) * scale;
  const y0 = top + free / 2;
  return {
    plate,
    figure,
    scale,
    at: ([x, r]) => [x0 + (x + 0.25 * shape.pitch) * scale, y0 + (out - r) * scale],
    left,
    right: left + across,
    open,
    back:
      open > 0 ? Math.min(height - 3, y0 + (out - inner) * scale + metal - 3) : Math.max(3, y0 - metal + 3),
  };
}

function profile({ plate, figure, at, back }: Scene): void {
  const { shape } = figure;
  const points = surface(shape, -0.6, 1.6).map(at);
  const [first, last] = [points[0]!, points.at(-1)!];
  const body: Point[] = [...points, [last[0], back], [first[0], back]];
  plate.ground(body, "metal");
  plate.hatch(body);
  plate.line(points, "outline", "profile");
  // Where the metal is broken off: thin freehand lines.
  for (const [[x, y], sign] of [
    [first, 1],
    [last, -1],
  ] as const) {
    const waves = Array.from(
      { length: 9 },
      (_, i): Point => [x + sign * (i % 2 === 0 ? 0 : 2), y + ((back - y) * i) / 8],
    );
    plate.ground(waves, "thin open");
  }
  plate.line(
    [at([-0.6 * shape.pitch, shape.pitchDia / 2]), at([1.6 * shape.pitch, shape.pitchDia / 2])],
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
          [at([1.3 * shape.pitch, 0])[0], y],
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
      plate.ground(box, "set-zone", `zone-${one}`);
      plate.hatch(box, 3.5, -45, "zone-lining");
    }
    const words: Line = {
      text: `${one} ø${length(sizeOf(shape, one), shape.unit)}`,
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

/** The included angle, or both flanks where they differ, over the first groove. */
function flanks({ plate, figure, at, open, scale }: Scene): void {
  const { shape } = figure;
  const { loadFlank: l, clearanceFlank: t, pitch } = shape;
  const { crest } = formLines(shape);
  const sides = grooveSides(shape, crest);
  const away = open > 0 ? -1 : 1;
  const reachOut = 1.5 * plate.size;
  const rise = (from: Point, degrees: number, sign: number): Point =>
    polar(from, reachOut, away < 0 ? -90 + sign * degrees : 90 - sign * degrees);
  const from = at([-sides.left, crest]);
  const to = at([sides.right, crest]);
  const middle: Point = [at([0, crest])[0], (from[1] + to[1]) / 2];
  if (l + t < 1) {
    plate.label("flanks square to the axis", spots([middle[0], middle[1]], away < 0 ? "n" : "s"), { gap: 6 });
    return;
  }
  plate.line([from, rise(from, l, -1)], "thin");
  plate.line([to, rise(to, t, 1)], "thin");
  const apexDepth =
    (sides.left + sides.right) / (Math.tan((l * Math.PI) / 180) + Math.tan((t * Math.PI) / 180));
  const apex = at([-sides.left + apexDepth * Math.tan((l * Math.PI) / 180), crest - open * apexDepth]);
  const radius = apexDepth * scale + 0.95 * plate.size;
  const direction = away < 0 ? -90 : 90;
  const [begin, end] = away < 0 ? [direction - l, direction + t] : [direction + l, direction - t];
  plate.arc(apex, radius, begin, end, "thin", "angle");
  const sign = Math.sign(end - begin);
  const lean = Math.min(20, (4.5 / radius) * 57.3);
  const wide = (Math.abs(end - begin) * Math.PI * radius) / 180 > 26;
  plate.arrow(polar(apex, radius, begin), begin - sign * (90 - lean) + (wide ? 0 : 180));
  plate.arrow(polar(apex, radius, end), end + sign * (90 - lean) + (wide ? 0 : 180));
  const words: Line[] =
    l === t
      ? [{ text: angle(l + t), look: "bold" }]
      : [{ text: `load ${angle(l)}, clearance ${angle(t)}`, look: "bold" }];
  if (l !== t) plate.line([at([0, formLines(shape).bottom]), polar(apex, radius + 4, direction)], "axis");
  const top = polar(apex, radius, direction);
  const out = away < 0 ? "n" : "s";
  plate.label(
    words,
    [
      ...spots(top, out),
      ...spots(polar(apex, radius + 2, direction - 12), away < 0 ? "nw" : "se"),
      ...spots(polar(apex, radius + 2, direction + 12), away < 0 ? "ne" : "sw"),
    ],
    { gap: 2 },
  ) || plate.label([{ text: angle(l + t), look: "bold" }], spots(top, out), { gap: 2 });
  void pitch;
}

function pitchAndDepth({ plate, figure, at, open }: Scene): void {
  const { shape } = figure;
  const { pitch, lead, starts, unit } = shape;
  const { crest, bottom } = formLines(shape);
  const { size, height } = plate;
  // From flank to flank at the pitch line, where a crest may be round, over the second groove.
  const side = pitch / 4;
  const line =
    open > 0
      ? Math.max(2.2 * size, at([0, crest])[1] - 2 * size)
      : Math.min(height - 2.2 * size, at([0, crest])[1] + 2 * size);
  const words = [{ text: `P ${length(pitch, unit)}` }];
  if (starts > 1) words.push({ text: `lead ${length(lead, unit)}, ${starts} starts` });
  plate.dimensionAlong(
    true,
    at([side, shape.pitchDia / 2]),
    at([side + pitch, shape.pitchDia / 2]),
    line,
    words,
  );
  const x = at([-0.6 * pitch, 0])[0];
  plate.dimensionAlong(false, at([-0.5 * pitch, crest]), at([-0.5 * pitch, bottom]), x - 0.9 * size, [
    { text: length(Math.abs(crest - bottom), unit) },
  ]);
}

function rootAndCrest({ plate, figure, at, back, open }: Scene): void {
  const { shape, rootFlat, crestFlat, taper } = figure;
  const { crest, bottom } = formLines(shape);
  const { unit, pitch, rootRadius, crestRadius } = shape;
  const root = rootRadius
    ? `r ${length(rootRadius, unit)}`
    : rootFlat
      ? `flat ${length(rootFlat, unit)}`
      : "";
  const top = crestRadius
    ? `r ${length(crestRadius, unit)}`
    : crestFlat
      ? `flat ${length(crestFlat, unit)}`
      : "";
  const inward = open > 0 ? "s" : "n";
  plate.label(root && `root ${root}`, spots(at([0, bottom]), inward), { gap: 3 });
  plate.label(top && `crest ${top}`, spots(at([0.5 * pitch, crest]), inward, "s", "n"), { gap: 5 });
  if (taper !== 0) {
    plate.label(
      `taper ${trimmed(taper, 4)} on diameter, at the gauge plane`,
      spots([plate.width / 2, back], open > 0 ? "n" : "s"),
    );
  }
}

export function sayThread({ shape, fit, limits, taper }: ThreadFigure): string {
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
  if (taper !== 0) parts.push(`taper ${trimmed(taper, 4)} on diameter, shown at the gauge plane`);
  return `${parts.join("; ")}.`;
}
