/** Where chuck, work and slides stand in the plan view of the set-over, before it is fitted to its frame. */
import type { SetoverFigure } from "../lathe/figure.ts";
import { type Box, boxOf, type Point, polar } from "./geometry.ts";

/** Sizes of the slide, in the units that all of the plan view is in. */
export const slide = { half: 25, front: -70, back: 104, handle: 133, post: -52 } as const;
/** Radii of the two angle dimensions, and length of the line along the bed. */
export const squareArc = 150;
export const bedArc = 118;
export const bedLine = 196;
/** Half the width of the cross slide. */
export const crossHalf = 46;

const crossBack = 140;

export type At = (point: Point) => Point;

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

export function standing({ setover, flank, zeroLine, hand, member }: SetoverFigure): Standing {
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
