/** A drawing as SVG. Looks are classes (style.ts), so that no style attribute is needed and both grounds work. */
import { html, nothing, type SVGTemplateResult, svg, type TemplateResult } from "lit";
import type { Drawing, Label, Shape } from "./plate.ts";

/** The whole picture; it scales into its place and says what it shows. */
export function drawingTemplate(drawing: Drawing): TemplateResult {
  const { width, height, shapes, labels, says } = drawing;
  return html`<svg
    class="drawing"
    role="img"
    aria-label=${says}
    viewBox="0 0 ${width} ${height}"
    preserveAspectRatio="xMidYMin meet"
  >${shapes.map(shapeTemplate)}${labels.map(labelTemplate)}</svg>`;
}

function shapeTemplate({ d, look, part }: Shape): SVGTemplateResult {
  return svg`<path class=${look} d=${d} data-part=${part ?? nothing}></path>`;
}

function labelTemplate({ text, look, size, x, y, upright }: Label): SVGTemplateResult {
  const [left, base] = [round(x), round(y)];
  const turn = upright ? `rotate(-90 ${left} ${base})` : nothing;
  return svg`<text class=${look || nothing} x=${left} y=${base} font-size=${round(size)} transform=${turn}>${text}</text>`;
}

function round(value: number): number {
  return Math.round(value * 100) / 100;
}
