/** A drawing on the page, and what the browser itself measures to be wrong with it. */
import { render } from "lit";
import { drawingOf } from "../../src/drawing/draw.ts";
import { drawingStyle } from "../../src/drawing/style.ts";
import { drawingTemplate } from "../../src/drawing/svg.ts";
import type { Figure } from "../../src/lathe/figure.ts";

/** What holds the drawing on the page. */
export const plate = document.createElement("div");
const root = plate.attachShadow({ mode: "open" });

/** To be called before anything is drawn: the typeface is part of what is measured. */
export async function openPlate(): Promise<void> {
  await Promise.all(["400 12px B612", "700 12px B612"].map((font) => document.fonts.load(font)));
  root.adoptedStyleSheets = [drawingStyle.styleSheet!];
}

/** Draws a figure on the page at its own size, in the corner. */
export function show(figure: Figure, width: number, height: number): SVGSVGElement {
  if (!plate.isConnected) document.body.replaceChildren(plate);
  plate.style.cssText = `position:fixed;left:0;top:0;width:${width}px;height:${height}px`;
  render(drawingTemplate(drawingOf(figure, width, height)), root);
  return root.querySelector("svg")!;
}

/** What the browser itself measures to lie over other text or to leave the frame. */
export function faults(picture: SVGSVGElement): string[] {
  const found: string[] = [];
  const frame = picture.getBoundingClientRect();
  const texts = [...picture.querySelectorAll("text")].map((text) => ({
    says: text.textContent,
    box: text.getBoundingClientRect(),
  }));
  texts.forEach(({ says, box }, i) => {
    for (const other of texts.slice(i + 1)) {
      const { box: its } = other;
      const across = Math.min(box.right, its.right) - Math.max(box.left, its.left);
      const down = Math.min(box.bottom, its.bottom) - Math.max(box.top, its.top);
      if (across > 0.1 && down > 0.1) found.push(`"${says}" lies over "${other.says}"`);
    }
  });
  const slack = 0.05;
  for (const element of picture.children) {
    const box = element.getBoundingClientRect();
    const inside =
      box.left >= frame.left - slack &&
      box.top >= frame.top - slack &&
      box.right <= frame.right + slack &&
      box.bottom <= frame.bottom + slack;
    if (!inside) found.push(`${element.getAttribute("class")} "${element.textContent}" leaves the frame`);
  }
  return found;
}
