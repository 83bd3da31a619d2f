/**
 * The plate that a drawing is made on: lines with their line type (ISO 128), dimensions (ISO 129) and labels.
 *
 * A label is put on the first of its places where it is inside the frame, clear of the labels before it and crosses the
 * fewest lines; one that has no place is left out, so the important ones come first. Everything a drawing says is in its
 * description too.
 */
import {
  arcPoints,
  type Box,
  boxesMeet,
  contains,
  lengthInside,
  type Point,
  polar,
  sectionLining,
} from "./geometry.ts";
import { ascent, descent, widthOf } from "./lettering.ts";

/** A line or a surface. `look` is what classes it has, `part` what a test or a style finds it by. */
export interface Shape {
  readonly d: string;
  readonly look: string;
  readonly part?: string;
}

export interface Label {
  readonly text: string;
  readonly look: string;
  readonly size: number;
  /** Left end of the baseline. */
  readonly x: number;
  readonly y: number;
  /** Turned to read from the right: 90 degrees against the clock about its left end. */
  readonly upright: boolean;
  readonly box: Box;
}

export interface Drawing {
  readonly width: number;
  readonly height: number;
  readonly shapes: readonly Shape[];
  readonly labels: readonly Label[];
  /** The drawing in words. */
  readonly says: string;
}

/** Where a label lies as seen from its point. */
export type Side = "n" | "ne" | "e" | "se" | "s" | "sw" | "w" | "nw" | "over";

export interface Spot {
  readonly at: Point;
  readonly side: Side;
}

export interface Line {
  readonly text: string;
  readonly look?: string;
  readonly size?: number;
}

export interface LabelWish {
  /** Between the point and the label. */
  readonly gap?: number;
  /** Put anywhere near when none of its places is good. */
  readonly must?: boolean;
  /** Left out rather than crossing more than this length of lines, px. */
  readonly most?: number;
  readonly upright?: boolean;
}

/** Labels keep this far from each other and from the frame. */
const clear = 2;
/** A label that crosses so much had better look for another place. */
const fairCost = 45;
/** How finely a place is looked for, px. */
const searchStep = 14;
const arrowLength = 9;
const arrowHalf = 2.6;

export class Plate {
  readonly width: number;
  readonly height: number;
  /** Size of plain labels, px. */
  readonly size: number;
  readonly frame: Box;
  private readonly shapes: Shape[] = [];
  private readonly labels: Label[] = [];
  /** Lines that labels had better not cross. */
  private readonly lines: (readonly [Point, Point])[] = [];
  private readonly taken: Box[] = [];

  constructor(width: number, height: number) {
    this.width = width;
    this.height = height;
    this.size = 12 * Math.max(1, Math.min(1.5, width / 420, height / 330));
    this.frame = { left: 0, top: 0, right: width, bottom: height };
  }

  line(points: readonly Point[], look: string, part?: string): void {
    this.put(pathOf(points), look, part);
    this.remember(points);
  }

  closed(points: readonly Point[], look: string, part?: string): void {
    this.put(`${pathOf(points)}Z`, look, part);
    this.remember([...points, points[0]!]);
  }

  /** A line whose path is made elsewhere; `points` are those it runs through. */
  path(d: string, points: readonly Point[], look: string, part?: string): void {
    this.put(d, look, part);
    this.remember(points);
  }

  /** A line that labels may lie on. */
  trace(points: readonly Point[], look: string, part?: string): void {
    this.put(pathOf(points), look, part);
  }

  /** A surface that labels may lie on. */
  ground(points: readonly Point[], look: string, part?: string): void {
    this.put(`${pathOf(points)}Z`, look, part);
  }

  circle(centre: Point, radius: number, look: string, part?: string): void {
    const [x, y] = centre;
    const r = figure(radius);
    this.put(
      `M${figure(x - radius)} ${figure(y)}a${r} ${r} 0 1 0 ${figure(2 * radius)} 0a${r} ${r} 0 1 0 ${figure(-2 * radius)} 0Z`,
      look,
      part,
    );
    this.remember(arcPoints(centre, radius, 0, 360));
  }

  arc(centre: Point, radius: number, from: number, to: number, look: string, part?: string): void {
    this.line(arcPoints(centre, radius, from, to), look, part);
  }

  /** Filled head with its point at `tip`, pointing in this direction. */
  arrow(tip: Point, direction: number, look = "ink"): void {
    const back = polar(tip, arrowLength, direction + 180);
    const points = [tip, polar(back, arrowHalf, direction + 90), polar(back, arrowHalf, direction - 90)];
    this.put(`${pathOf(points)}Z`, `fill-${look}`);
  }

  /** Section lining in one path. */
  hatch(
    polygon: readonly Point[],
    spacing = 6,
    angle: 45 | -45 = 45,
    look = "lining",
    holes: readonly (readonly Point[])[] = [],
  ): void {
    const lines = sectionLining(polygon, spacing, angle, holes);
    if (lines.length > 0) this.put(lines.map(pathOf).join(""), look);
  }

  /** Labels stay out of this box. */
  reserve(box: Box): void {
    this.taken.push(box);
  }

  /**
   * A dimension between two points that are level or plumb: extension lines to the dimension line, arrows, and the text
   * above the line. Arrows come from outside where there is no room between.
   *
   * @param at y of the dimension line of a level dimension, x of a plumb one
   * @returns whether the text found room
   */
  dimension(a: Point, b: Point, at: number, lines: readonly Line[], look = "ink"): boolean {
    const level = Math.abs(a[1] - at) > Math.abs(a[0] - at) || a[1] === b[1];
    return this.dimensionAlong(level, a, b, at, lines, look);
  }

  /** As `dimension`, told which way it runs. */
  dimensionAlong(
    level: boolean,
    a: Point,
    b: Point,
    at: number,
    lines: readonly Line[],
    look = "ink",
  ): boolean {
    const on = ([x, y]: Point): Point => (level ? [x, at] : [at, y]);
    const past = (from: Point): Point => {
      const [x, y] = on(from);
      const way = Math.sign(level ? at - from[1] : at - from[0]) * 3;
      return level ? [x, y + way] : [x + way, y];
    };
    for (const end of [a, b]) this.line([end, past(end)], "thin");
    const [from, to] = [on(a), on(b)];
    const length = Math.hypot(to[0] - from[0], to[1] - from[1]);
    const direction = (Math.atan2(to[1] - from[1], to[0] - from[0]) * 180) / Math.PI;
    const inside = length > 2.6 * arrowLength;
    const shaft: readonly [Point, Point] = inside
      ? [from, to]
      : [polar(from, 2 * arrowLength, direction + 180), polar(to, 2 * arrowLength, direction)];
    this.line(shaft, look === "ink" ? "thin" : `thin ${look}`);
    this.arrow(to, inside ? direction : direction + 180, look);
    this.arrow(from, inside ? direction + 180 : direction, look);
    const middle: Point = [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2];
    const outer = shaft[1];
    if (level) {
      return this.label(lines, [
        { at: middle, side: "n" },
        { at: outer, side: direction === 0 ? "e" : "w" },
        { at: shaft[0], side: direction === 0 ? "w" : "e" },
        { at: middle, side: "s" },
      ]);
    }
    const text = lines.map((line) => line.text).join(" ");
    const upright = widthOf(text, lines[0]!.size ?? this.size) + 6 < length;
    return (
      (upright && this.label(lines, [{ at: middle, side: "w" }], { upright: true, gap: 2 })) ||
      this.label(lines, [
        { at: middle, side: "w" },
        { at: middle, side: "e" },
        { at: outer, side: "s" },
        { at: shaft[0], side: "n" },
      ])
    );
  }

  /** Puts lines of text under each other at the best of the spots. @returns whether there was room */
  label(text: string | readonly Line[], spots: readonly Spot[], wish: LabelWish = {}): boolean {
    const lines = typeof text === "string" ? [{ text }] : text.filter((line) => line.text !== "");
    if (lines.length === 0 || spots.length === 0) return true;
    let best: { labels: Label[]; cost: number } | undefined;
    const tryOut = (spot: Spot, fine: number) => {
      if (best && fine >= best.cost) return;
      const labels = this.lay(lines, spot, wish);
      if (!this.free(labels)) return;
      const cost = this.crossings(labels, (best?.cost ?? Infinity) - fine) + fine;
      if (!best || cost < best.cost) best = { labels, cost };
    };
    spots.forEach((spot, i) => {
      tryOut(spot, i * 4);
    });
    if (wish.must && (!best || best.cost > fairCost)) {
      for (const { at, far } of this.placesBy(spots[0]!.at)) {
        const fine = 20 + 0.6 * far;
        if (best && fine >= best.cost) break;
        tryOut({ at, side: "over" }, fine);
      }
    }
    if (!best || best.cost > (wish.most ?? Infinity)) return false;
    for (const label of best.labels) {
      this.labels.push(label);
      this.taken.push(label.box);
    }
    return true;
  }

  /** The finished drawing. */
  done(says: string): Drawing {
    const { width, height, shapes, labels } = this;
    return { width, height, shapes, labels, says };
  }

  private put(d: string, look: string, part?: string): void {
    this.shapes.push(part === undefined ? { d, look } : { d, look, part });
  }

  private remember(points: readonly Point[]): void {
    for (let i = 0; i + 1 < points.length; i++) this.lines.push([points[i]!, points[i + 1]!]);
  }

  private lay(lines: readonly Line[], { at: [x, y], side }: Spot, wish: LabelWish): Label[] {
    const gap = wish.gap ?? 4;
    const sizes = lines.map((line) => line.size ?? this.size);
    const widths = lines.map((line, i) => widthOf(line.text, sizes[i]!));
    const width = Math.max(...widths);
    const heights = sizes.map((size) => size * (ascent + descent));
    const height = heights.reduce((sum, one) => sum + one, 0);
    const [w, h] = wish.upright ? [height, width] : [width, height];
    const left = x + (side.includes("e") && side !== "over" ? gap : side.includes("w") ? -gap - w : -w / 2);
    const top = y + (side.startsWith("n") ? -gap - h : side.startsWith("s") ? gap : -h / 2);
    let down = 0;
    return lines.map((line, i) => {
      const size = sizes[i]!;
      const slack = width - widths[i]!;
      // Flush towards the point, so that the lines of a block hang together with what they name.
      const indent =
        side === "over" || side === "n" || side === "s" ? slack / 2 : side.includes("w") ? slack : 0;
      const base = down + size * ascent;
      const box = wish.upright
        ? {
            left: left + down,
            right: left + down + heights[i]!,
            top: top + h - indent - widths[i]!,
            bottom: top + h - indent,
          }
        : {
            left: left + indent,
            right: left + indent + widths[i]!,
            top: top + down,
            bottom: top + down + heights[i]!,
          };
      const place: Point = wish.upright ? [left + base, box.bottom] : [box.left, top + base];
      down += heights[i]!;
      return {
        text: line.text,
        look: line.look ?? "",
        size,
        x: place[0],
        y: place[1],
        upright: wish.upright ?? false,
        box,
      };
    });
  }

  /** Places all over the frame, the nearest first. */
  private placesBy([x0, y0]: Point): { at: Point; far: number }[] {
    const places: { at: Point; far: number }[] = [];
    for (let y = searchStep; y < this.height; y += searchStep) {
      for (let x = searchStep; x < this.width; x += searchStep) {
        places.push({ at: [x, y], far: Math.hypot(x - x0, y - y0) });
      }
    }
    return places.sort((a, b) => a.far - b.far);
  }

  private free(labels: readonly Label[]): boolean {
    // Less a hair: places are sums of many parts.
    const edge = clear - 0.01;
    const inner: Box = { left: edge, top: edge, right: this.width - edge, bottom: this.height - edge };
    return labels.every(
      ({ box }) => contains(inner, box) && !this.taken.some((other) => boxesMeet(box, other, clear)),
    );
  }

  /** Length of lines under the labels, counted no further than `most`. */
  private crossings(labels: readonly Label[], most: number): number {
    let length = 0;
    for (const { box } of labels) {
      // What is above the capitals and below the baseline of a line of text is empty.
      const ink = { ...box, top: box.top + 0.2 * (box.bottom - box.top), bottom: box.bottom - 2 };
      for (const line of this.lines) {
        length += lengthInside(line, ink);
        if (length >= most) return length;
      }
    }
    return length;
  }
}

/** Path through the points, to a thousandth of a pixel. */
export function pathOf(points: readonly Point[]): string {
  return points.map(([x, y], i) => `${i === 0 ? "M" : "L"}${figure(x)} ${figure(y)}`).join("");
}

function figure(value: number): string {
  return String(Math.round(value * 1e4) / 1e4 + 0);
}

export function spots(at: Point, ...sides: readonly Side[]): Spot[] {
  return sides.map((side) => ({ at, side }));
}
