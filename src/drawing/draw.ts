/** From what a drawing shows to the drawing: one place that knows all kinds. */
import type { Figure } from "../lathe/figure.ts";
import { drawLines, sayLines } from "./lines.ts";
import { drawMarks, sayMarks } from "./marks.ts";
import { drawPasses, sayPasses } from "./passes.ts";
import type { Drawing } from "./plate.ts";
import { drawSetover } from "./setover.ts";
import { saySetover } from "./setover-words.ts";
import { drawThread, sayThread } from "./thread.ts";
import { drawTrain, sayTrain } from "./train.ts";
import { drawWires, sayWires } from "./wires.ts";

/** A frame smaller than this has no room for a drawing, px. */
export const leastFrame = { width: 150, height: 110 } as const;

/**
 * The drawing of a figure in a frame of this size. Labels keep their size; those that do not fit are left out.
 *
 * @throws RangeError when the frame is smaller than `leastFrame`
 */
export function drawingOf(figure: Figure, width: number, height: number): Drawing {
  if (!(width >= leastFrame.width && height >= leastFrame.height)) {
    throw new RangeError(
      `frame must be at least ${leastFrame.width} by ${leastFrame.height}, got ${width} by ${height}`,
    );
  }
  switch (figure.kind) {
    case "setover":
      return drawSetover(figure, width, height);
    case "thread":
      return drawThread(figure, width, height);
    case "passes":
      return drawPasses(figure, width, height);
    case "wires":
      return drawWires(figure, width, height);
    case "train":
      return drawTrain(figure, width, height);
    case "marks":
      return drawMarks(figure, width, height);
    case "lines":
      return drawLines(figure, width, height);
  }
}

/** What a drawing is called in one or two words. */
export function nameOfFigure(figure: Figure): string {
  const names: Readonly<Record<Figure["kind"], string>> = {
    setover: "Plan view",
    thread: "Profile",
    passes: "Groove",
    wires: figure.kind === "wires" && figure.shape.member === "internal" ? "Balls" : "Wires",
    train: "Change gears",
    marks: "Half nuts",
    lines: "Plot",
  };
  return names[figure.kind];
}

/** The whole of a drawing in words. */
export function describeFigure(figure: Figure): string {
  switch (figure.kind) {
    case "setover":
      return saySetover(figure);
    case "thread":
      return sayThread(figure);
    case "passes":
      return sayPasses(figure);
    case "wires":
      return sayWires(figure);
    case "train":
      return sayTrain(figure);
    case "marks":
      return sayMarks(figure);
    case "lines":
      return sayLines(figure);
  }
}
