/** Work in the chuck for the plan view of the set-over: a screw from outside, or a sleeve in section with its bore. */
import type { SetoverFigure } from "../lathe/figure.ts";
import type { Point } from "./geometry.ts";
import type { Plate } from "./plate.ts";
import type { At, Standing } from "./setover-place.ts";

const half = 16;
const wall = 18;
const tooth = 5.5;
const pitch = 8.5;

export function workInChuck(
  plate: Plate,
  { member, hand }: SetoverFigure,
  place: Standing,
  at: At,
  scale: number,
): void {
  const { jaws, axis, end } = place;
  const rect = (left: number, top: number, right: number, bottom: number): Point[] =>
    (
      [
        [left, top],
        [right, top],
        [right, bottom],
        [left, bottom],
      ] as Point[]
    ).map(at);
  const outside = member === "external" ? half : 20 + wall;
  plate.closed(rect(jaws - 42, axis - 60, jaws - 16, axis + 60), "outline metal");
  plate.closed(rect(jaws - 16, axis - outside - 24, jaws, axis - outside), "outline metal-2");
  plate.closed(rect(jaws - 16, axis + outside, jaws, axis + outside + 24), "outline metal-2");
  if (member === "external") screw(plate, place, hand === "left", at);
  else sleeve(plate, place, at, scale);
  plate.line([at([jaws - 48, axis]), at([end + 26, axis])], "axis", "lathe-axis");
}

function screw(plate: Plate, { jaws, axis, end, tip }: Standing, left: boolean, at: At): void {
  const start = Math.max(jaws + 6, tip[0] - 26);
  const count = Math.floor((end - start) / pitch);
  const top: Point[] = [];
  const bottom: Point[] = [];
  for (let i = 0; i < count; i++) {
    const x = start + i * pitch;
    top.push([x, axis - half], [x + pitch / 2, axis - half + tooth]);
    bottom.push([x, axis + half - tooth], [x + pitch / 2, axis + half]);
  }
  const stop = start + count * pitch;
  const outline: Point[] = [
    [jaws - 10, axis - half],
    [start, axis - half],
    ...top,
    [stop, axis - half],
    [stop, axis + half - tooth],
    ...bottom.reverse(),
    [start, axis + half],
    [jaws - 10, axis + half],
  ];
  plate.closed(outline.map(at), "outline paper");
  for (let i = 0; i < count; i++) {
    const x = start + i * pitch;
    const [from, to]: [Point, Point] = left
      ? [
          [x + pitch / 2, axis - half + tooth],
          [x + pitch, axis + half - tooth],
        ]
      : [
          [x + pitch / 2, axis - half + tooth],
          [x, axis + half - tooth],
        ];
    plate.line([at(from), at(to)], "faint");
  }
}

/** Cut along the axis: both walls lined, the near one threaded where the tool works. */
function sleeve(plate: Plate, { jaws, axis, end, tip }: Standing, at: At, scale: number): void {
  const bore = tip[1] - axis;
  const start = Math.max(jaws + 4, tip[0] - 26);
  const count = Math.floor((end - start) / pitch);
  for (const sign of [-1, 1]) {
    const teeth: Point[] = [];
    for (let i = 0; i < count; i++) {
      const x = start + i * pitch;
      teeth.push([x, axis + sign * (bore - tooth)], [x + pitch / 2, axis + sign * bore]);
    }
    const outline: Point[] = [
      [jaws - 10, axis + sign * (20 + wall)],
      [jaws - 10, axis + sign * (bore - tooth)],
      ...teeth,
      [end, axis + sign * (bore - tooth)],
      [end, axis + sign * (20 + wall)],
    ];
    const points = outline.map(at);
    plate.closed(points, "outline paper");
    plate.hatch(points, Math.max(3.5, 5 * scale));
  }
}
