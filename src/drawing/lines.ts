/** Plot of one or more series over a common x: axes with round steps, series told apart by line pattern and name. */
import { curveLinear, line as lineOf } from "d3-shape";
import type { LinesFigure } from "../lathe/figure.ts";
import { plain, trimmed } from "./figures.ts";
import type { Box, Point } from "./geometry.ts";
import { shortened, widthOf } from "./lettering.ts";
import { type Drawing, Plate } from "./plate.ts";

export interface Steps {
  readonly from: number;
  readonly to: number;
  readonly step: number;
  readonly ticks: readonly number[];
  readonly text: (value: number) => string;
}

/**
 * An axis that holds both values, in steps of 1, 2 or 5 times a power of ten.
 *
 * @param most steps wanted
 */
export function niceSteps(least: number, greatest: number, most: number): Steps {
  const spread = greatest - least || Math.abs(greatest) || 1;
  const [low, high] = greatest === least ? [least - spread / 2, greatest + spread / 2] : [least, greatest];
  const rough = spread / Math.max(1, most);
  const power = 10 ** Math.floor(Math.log10(rough));
  const step = [1, 2, 5, 10].map((one) => one * power).find((one) => one >= rough * (1 - 1e-9))!;
  const first = Math.floor(low / step + 1e-9);
  const last = Math.ceil(high / step - 1e-9);
  const ticks = Array.from({ length: last - first + 1 }, (_, i) => (first + i) * step);
  const places = Math.max(0, Math.min(12, -Math.floor(Math.log10(step) + 1e-9)));
  return { from: first * step, to: last * step, step, ticks, text: (value) => numberText(value, places) };
}

function numberText(value: number, places: number): string {
  const large = Math.abs(value) >= 1e6 || (value !== 0 && Math.abs(value) < 1e-6);
  return large ? value.toExponential(2).replace("e+", "e") : trimmed(value, places);
}

export function drawLines(figure: LinesFigure, width: number, height: number): Drawing {
  const plate = new Plate(width, height);
  const { size } = plate;
  const { series, as } = figure;
  const all = series.flatMap((one) => one.y);
  const named = series.length > 1;
  const top = (figure.yTitle ? 2.6 : 1) * size + (named ? 1.5 * size : 0);
  const bottom = height - (figure.xTitle ? 3.5 : 2.1) * size;
  const zero = as === "columns" ? [0] : [];
  const ySteps = niceSteps(
    Math.min(...all, ...zero),
    Math.max(...all, ...zero),
    Math.max(1, Math.floor((bottom - top) / (2.6 * size))),
  );
  const label = Math.max(...ySteps.ticks.map((tick) => widthOf(ySteps.text(tick), size)));
  const box: Box = { left: label + 12, right: width - 0.9 * size - 4, top, bottom };
  const xs = xScale(figure, box, size);
  const y = (value: number) => bottom - ((value - ySteps.from) / (ySteps.to - ySteps.from)) * (bottom - top);
  for (const tick of ySteps.ticks) {
    plate.ground(
      [
        [box.left - 4, y(tick)],
        [box.right, y(tick)],
      ],
      tick === 0 ? "thin" : "grid",
    );
    plate.label(ySteps.text(tick), [{ at: [box.left - 5, y(tick)], side: "w" }], { gap: 1 });
  }
  for (const { at, text } of xs.ticks) {
    plate.ground(
      [
        [at, bottom],
        [at, bottom + 4],
      ],
      "thin",
    );
    plate.label(text, [{ at: [at, bottom + 4], side: "s" }], { gap: 0 });
  }
  if (as === "columns") columns(plate, figure, xs.at, y, box);
  else curves(plate, figure, xs.at, y);
  plate.line(
    [
      [box.left, top],
      [box.left, bottom],
    ],
    "outline",
  );
  plate.line(
    [
      [box.left, bottom],
      [box.right, bottom],
    ],
    "outline",
  );
  titles(plate, figure, box);
  if (named) names(plate, figure, box);
  return plate.done(sayLines(figure));
}

interface XScale {
  readonly at: (index: number) => number;
  readonly ticks: readonly { readonly at: number; readonly text: string }[];
}

/** Columns stand side by side, whatever their x; lines are to scale. */
function xScale({ x, as }: LinesFigure, { left, right }: Box, size: number): XScale {
  if (as === "columns") {
    const step = (right - left) / x.length;
    const at = (index: number) => left + (index + 0.5) * step;
    const widest = Math.max(...x.map((value) => widthOf(plain(value), size)));
    const every = Math.max(1, Math.ceil((widest + 6) / step));
    return {
      at,
      ticks: x.flatMap((value, i) => (i % every === 0 ? [{ at: at(i), text: plain(value) }] : [])),
    };
  }
  const [least, greatest] = [Math.min(...x), Math.max(...x)];
  const steps = niceSteps(least, greatest, Math.max(1, Math.floor((right - left) / (5 * size))));
  const place = (value: number) => left + ((value - steps.from) / (steps.to - steps.from)) * (right - left);
  return {
    at: (index) => place(x[index]!),
    ticks: steps.ticks.map((tick) => ({ at: place(tick), text: steps.text(tick) })),
  };
}

function curves(
  plate: Plate,
  { x, series }: LinesFigure,
  at: (i: number) => number,
  y: (v: number) => number,
): void {
  series.forEach((one, n) => {
    const order = [...x.keys()].sort((a, b) => x[a]! - x[b]!);
    const points = order.map((i): Point => [at(i), y(one.y[i]!)]);
    const path = lineOf<Point>().curve(curveLinear).digits(4)(points);
    if (path !== null) plate.path(path, points, `series series-${n + 1}`, `series-${n + 1}`);
    if (points.length <= 40) for (const point of points) symbol(plate, point, n);
  });
}

/** Each series has its own sign, so that it is known without its pattern. */
function symbol(plate: Plate, [x, y]: Point, n: number): void {
  const r = 3;
  const look = `series-sign series-sign-${n + 1}`;
  if (n === 0) plate.circle([x, y], r, look);
  else if (n === 1)
    plate.ground(
      [
        [x - r, y - r],
        [x + r, y - r],
        [x + r, y + r],
        [x - r, y + r],
      ],
      look,
    );
  else if (n === 2)
    plate.ground(
      [
        [x, y - r - 1],
        [x + r + 1, y + r],
        [x - r - 1, y + r],
      ],
      look,
    );
  else
    plate.ground(
      [
        [x, y - r - 1],
        [x + r + 1, y],
        [x, y + r + 1],
        [x - r - 1, y],
      ],
      look,
    );
}

function columns(
  plate: Plate,
  { x, series }: LinesFigure,
  at: (i: number) => number,
  y: (v: number) => number,
  box: Box,
): void {
  const step = (box.right - box.left) / x.length;
  const wide = Math.max(1, Math.min(36, (0.74 * step) / series.length));
  series.forEach((one, n) => {
    one.y.forEach((value, i) => {
      const left = at(i) + (n - series.length / 2) * wide;
      const points: Point[] = [
        [left, y(0)],
        [left, y(value)],
        [left + wide, y(value)],
        [left + wide, y(0)],
      ];
      plate.closed(points, `column-${n + 1}`, `column-${n + 1}-${i + 1}`);
      if (n > 0) plate.hatch(points, n === 1 ? 4 : 6, n % 2 === 1 ? 45 : -45);
    });
  });
}

function titles(plate: Plate, { xTitle, yTitle }: LinesFigure, box: Box): void {
  const { size, width, height } = plate;
  const within = (text: string) => shortened(text, size, width - 12);
  plate.label([{ text: within(yTitle), look: "bold" }], [{ at: [4, 3], side: "se" }], { gap: 0 });
  plate.label(
    within(xTitle),
    [
      { at: [box.right, height - 3], side: "nw" },
      { at: [width / 2, height - 3], side: "n" },
    ],
    { gap: 0 },
  );
}

/** A key above the plot: a piece of each line with its name. */
function names(plate: Plate, { series, as }: LinesFigure, box: Box): void {
  const { size } = plate;
  const signs = 46 * series.length;
  const all = series.reduce((sum, one) => sum + widthOf(one.name, size), signs);
  const room = box.right - box.left;
  // Names keep their length while they all fit.
  const most = all <= room ? room : room / series.length - 46;
  let x = box.left;
  const y = box.top - 0.8 * size;
  series.forEach((one, n) => {
    const text = shortened(one.name, size, most);
    if (text === "" || x + 34 > box.right) return;
    if (as === "columns") {
      const points: Point[] = [
        [x, y - 5],
        [x + 24, y - 5],
        [x + 24, y + 5],
        [x, y + 5],
      ];
      plate.closed(points, `column-${n + 1}`);
      if (n > 0) plate.hatch(points, n === 1 ? 4 : 6, n % 2 === 1 ? 45 : -45);
    } else {
      plate.line(
        [
          [x, y],
          [x + 24, y],
        ],
        `series series-${n + 1}`,
      );
      symbol(plate, [x + 12, y], n);
    }
    plate.label(text, [{ at: [x + 26, y], side: "e" }], { gap: 2 });
    x += 36 + widthOf(text, size) + 8;
  });
}

export function sayLines({ as, x, series, xTitle, yTitle }: LinesFigure): string {
  const span = (values: readonly number[]) =>
    `${plain(Math.min(...values))} to ${plain(Math.max(...values))}`;
  const list = series.map(
    (one) => `${one.name} from ${plain(one.y[0]!)} to ${plain(one.y.at(-1)!)}, within ${span(one.y)}`,
  );
  return `${as === "columns" ? "Columns" : "Plot"}${yTitle ? ` of ${yTitle}` : ""} over ${xTitle || "x"} from ${span(x)}, ${x.length} points: ${list.join("; ")}.`;
}
