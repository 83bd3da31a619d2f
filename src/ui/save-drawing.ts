/**
 * A drawing as a file of its own: SVG, or PNG for where SVG is not taken. Every line carries its ink itself, in the
 * colours of the ground that is on, so that the file looks the same anywhere.
 */

import fontRegular from "@fontsource/b612/files/b612-latin-400-normal.woff2?url";
import fontBold from "@fontsource/b612/files/b612-latin-700-normal.woff2?url";
import { render } from "lit";
import { drawingOf, nameOfFigure } from "../drawing/draw.ts";
import { drawingStyle } from "../drawing/style.ts";
import { drawingTemplate } from "../drawing/svg.ts";
import type { CellView } from "../job/job.ts";
import { fileName, saveBlob } from "./files.ts";

type Figure = NonNullable<CellView["figure"]>;

/** A thing to do with the drawing of a cell, under the word that offers it. */
export interface DrawingAction {
  readonly word: string;
  /** @returns name of the file */
  readonly act: () => Promise<string>;
}

/** Size of a saved drawing, px. */
const frame = { width: 720, height: 540 } as const;
/** Pixels of a PNG to one of the drawing. */
const fineness = 2;

const namespace = "http://www.w3.org/2000/svg";

const inks = [
  "fill",
  "stroke",
  "stroke-width",
  "stroke-dasharray",
  "stroke-linejoin",
  "paint-order",
  "font-weight",
] as const;

/** What can be done with the drawing of a cell; nothing for a cell without one. */
export function drawingActions({ figure }: CellView): readonly DrawingAction[] {
  if (!figure) return [];
  return [
    {
      word: "Save drawing as SVG",
      act: async () => {
        const text = `<?xml version="1.0" encoding="UTF-8"?>\n${svgText(figure)}`;
        return saved(nameOf(figure, "svg"), new Blob([text], { type: "image/svg+xml" }));
      },
    },
    { word: "Save drawing as PNG", act: async () => saved(nameOf(figure, "png"), await pngOf(figure)) },
  ];
}

function saved(name: string, blob: Blob): string {
  saveBlob(name, blob);
  return name;
}

function nameOf(figure: Figure, ending: string): string {
  const subject = "shape" in figure && typeof figure.shape === "object" ? ` ${figure.shape.designation}` : "";
  return fileName(`${nameOfFigure(figure)}${subject}`).replace(/json$/, ending);
}

/**
 * The drawing as text of an SVG file.
 *
 * @param type style sheet with the typeface, for a picture that cannot fetch it
 */
export function svgText(figure: Figure, type = ""): string {
  const { width, height } = frame;
  // Styles are only known to an element that stands in the page.
  const host = document.createElement("div");
  host.hidden = true;
  const root = host.attachShadow({ mode: "open" });
  root.adoptedStyleSheets = [drawingStyle.styleSheet!];
  document.body.append(host);
  try {
    render(drawingTemplate(drawingOf(figure, width, height)), root);
    const shown = root.querySelector("svg")!;
    const picture = document.createElementNS(namespace, "svg");
    picture.setAttribute("viewBox", `0 0 ${width} ${height}`);
    picture.setAttribute("width", String(width));
    picture.setAttribute("height", String(height));
    picture.setAttribute("role", "img");
    picture.setAttribute("font-family", "B612, sans-serif");
    add(picture, "title", {}, shown.getAttribute("aria-label") ?? "");
    if (type !== "") add(picture, "style", {}, type);
    const paper = getComputedStyle(document.documentElement).getPropertyValue("--paper").trim();
    add(picture, "rect", { width: String(width), height: String(height), fill: paper });
    for (const element of shown.children) picture.append(inked(element));
    return new XMLSerializer().serializeToString(picture);
  } finally {
    host.remove();
  }
}

/** A copy that carries what its classes say. */
function inked(element: Element): Element {
  const copy = document.createElementNS(namespace, element.localName);
  for (const { name, value } of element.attributes) if (name !== "class") copy.setAttribute(name, value);
  const style = getComputedStyle(element);
  for (const ink of inks) {
    const value = style.getPropertyValue(ink);
    if (value !== "" && value !== "normal") copy.setAttribute(ink, value);
  }
  copy.textContent = element.textContent;
  return copy;
}

function add(to: Element, name: string, attributes: Readonly<Record<string, string>>, text = ""): void {
  const element = document.createElementNS(namespace, name);
  for (const [key, value] of Object.entries(attributes)) element.setAttribute(key, value);
  element.textContent = text;
  to.append(element);
}

/** @throws Error when the browser cannot make the picture */
export async function pngOf(figure: Figure): Promise<Blob> {
  const { width, height } = frame;
  const picture = new Image();
  picture.src = `data:image/svg+xml;charset=utf-8,${encodeURIComponent(svgText(figure, await typeface()))}`;
  await picture.decode();
  const canvas = document.createElement("canvas");
  canvas.width = fineness * width;
  canvas.height = fineness * height;
  const paint = canvas.getContext("2d");
  if (!paint) throw new Error("this browser gave no canvas to draw on");
  paint.drawImage(picture, 0, 0, canvas.width, canvas.height);
  return new Promise((resolve, reject) => {
    canvas.toBlob(
      (blob) => (blob ? resolve(blob) : reject(new Error("the picture could not be made"))),
      "image/png",
    );
  });
}

/** A picture may fetch nothing, so the typeface goes into it. */
async function typeface(): Promise<string> {
  const faces = await Promise.all(
    (
      [
        [fontRegular, 400],
        [fontBold, 700],
      ] as const
    ).map(async ([address, weight]) => {
      const bytes = new Uint8Array(await (await fetch(address)).arrayBuffer());
      let letters = "";
      for (const byte of bytes) letters += String.fromCharCode(byte);
      return `@font-face{font-family:B612;font-weight:${weight};src:url(data:font/woff2;base64,${btoa(letters)})}`;
    }),
  );
  return faces.join("");
}
