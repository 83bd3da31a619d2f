/** A drawing in a cell of the grid, as large as the cell or the merged cells that it stands in. */
import { css, type TemplateResult } from "lit";
import { drawingOf, leastFrame } from "../drawing/draw.ts";
import { drawingStyle } from "../drawing/style.ts";
import { drawingTemplate } from "../drawing/svg.ts";
import type { CellView } from "../job/job.ts";
import type { GridGeometry } from "./grid-geometry.ts";
import type { Area } from "./grid-window.ts";

type Figure = NonNullable<CellView["figure"]>;

/** Bar of a cell with a caution, px, and the rule on the right and below. */
const bar = 18;
const rule = 1;

/** In rows made high for a finger a drawing gets no higher than this, so that it can be seen at once. */
const tallest = 1.62;

/** A figure is drawn once for each size: while the sheet scrolls nothing is laid out anew. */
const made = new WeakMap<Figure, Map<string, TemplateResult>>();

/**
 * The drawing of a cell.
 *
 * @returns undefined for a cell without one, or with too little room: its text shows then
 */
export function drawnIn(
  { view, area, rows }: { readonly view: CellView; readonly area: Area; readonly rows?: number },
  { edges, row, scale }: GridGeometry,
): TemplateResult | undefined {
  if (!view.figure) return undefined;
  const caution = view.caution === undefined ? 0 : bar;
  const width = edges[area.right + 1]! - edges[area.left]! - rule - caution;
  const height = (rows ?? area.bottom - area.top + 1) * row - rule;
  return pictureOf(
    view.figure,
    width,
    Math.min(height, Math.max(tallest * width, leastFrame.height * scale)),
    scale,
  );
}

/**
 * A figure as large as a place on the screen; in large type with larger labels.
 *
 * @returns undefined where there is too little room
 */
export function pictureOf(
  figure: Figure,
  width: number,
  height: number,
  scale: number,
): TemplateResult | undefined {
  const [wide, high] = [Math.floor(width / scale), Math.floor(height / scale)];
  if (wide < leastFrame.width || high < leastFrame.height) return undefined;
  const sizes = made.get(figure) ?? new Map<string, TemplateResult>();
  made.set(figure, sizes);
  const size = `${wide} ${high}`;
  const known = sizes.get(size) ?? drawingTemplate(drawingOf(figure, wide, high));
  sizes.set(size, known);
  return known;
}

export const plateStyle = [
  drawingStyle,
  css`
    .c.plate {
      padding: 0;
      background: var(--paper);
    }
    .c.plate.caution {
      padding-left: ${bar}px;
      background:
        linear-gradient(var(--paper), var(--paper)) right / calc(100% - ${bar}px) 100% no-repeat,
        repeating-linear-gradient(45deg, var(--caution-hatch) 0 3px, var(--caution-wash) 3px 7px);
    }
    drawing-fold {
      flex: none;
    }
  `,
];
