/** How wide the contents of a column are. */
import { showValue } from "../job/format.ts";
import type { SheetMap } from "./sheet-map.ts";

/** Cells looked at; a longer table is as wide as its beginning. */
const mostRows = 2000;
/** Paddings and rule of a cell, px. */
const around = 18;
/** Type size of cells at normal type, px. */
const typeSize = 14;

/** Width that the longest content of a column needs at normal type, px; the usual width when it holds nothing. */
export function widthOfTexts(map: SheetMap, column: number, element: Element): number {
  const pen = document.createElement("canvas").getContext("2d");
  if (!pen) return 96;
  const { fontFamily } = getComputedStyle(element);
  let widest = 0;
  for (let row = 0; row <= Math.min(map.used.row, mostRows); row++) {
    const area = map.areaAt(row, column);
    const { value, format, choices } = map.view(row, column);
    // A heading runs on over its neighbours, and a merged cell has their room too.
    if (area.left !== area.right || format.role === "head" || value === null) continue;
    const heavy = format.bold || format.role === "key" || format.role === "column" ? "700" : "400";
    pen.font = `${heavy} ${typeSize}px ${fontFamily}`;
    const room = around + (choices?.length ? 20 : 0) + (format.role === "caution" ? 20 : 0);
    widest = Math.max(widest, pen.measureText(showValue(value, format, map.job.unit).text).width + room);
  }
  return widest === 0 ? 96 : Math.ceil(widest);
}
