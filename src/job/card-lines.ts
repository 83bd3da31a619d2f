/**
 * Lines of the shop card for a job that does not say which it wants: what its sheets mark as set by hand, how it is
 * measured, and the drawing of the set-over.
 */
import { parseCell, parseRange } from "../engine/address.ts";
import { isErrorValue } from "../engine/values.ts";
import { askedFor } from "../lathe/still-to-wind.ts";
import { wantedIn } from "./bench-proof.ts";
import type { CardLine } from "./card.ts";
import { showValue } from "./format.ts";
import type { Job } from "./job.ts";
import { foundIn } from "./large-cells.ts";
import { type NamedArea, namedArea, namedNumber, namedWords } from "./named.ts";
import { labelOf } from "./whatif-places.ts";

/** Lines there are; a card has room for fewer than a job can mark. */
const mostLines = 16;
const mostOnSheet = 5;
/** What the hand sets first, and what is no setting but an answer to a reading. */
const settingNames = ["scale_set", "scale_reading"];
const answerNames = ["slide_to_wind", "cross_to_wind", "verdict"];

/** The words beside the cells that hold what is set, sheet by sheet; of cells side by side the first. */
export function markedLines(job: Job): CardLine[] {
  const answers = answerNames.flatMap((name) => namedArea(job, name) ?? []);
  const setting = settingNames.flatMap((name) => namedArea(job, name) ?? [])[0];
  const setover = namedArea(job, "setover");
  const lines = job.document.sheets.flatMap((sheet) => {
    const found: CardLine[] = [];
    let last = -1;
    for (const { row, column } of keyCells(sheet.formats)) {
      const at = { sheet: sheet.name, row, column };
      const cell = job.cell(sheet.name, row, column);
      if (row === last || found.length >= mostOnSheet || cell.format.role !== "key") continue;
      if (isErrorValue(cell.value) || answers.some((area) => isAt(area, at))) continue;
      const value = showValue(cell.value, cell.format, job.unit).text;
      if (value === "") continue;
      last = row;
      // No angle without the line that it is measured from.
      const label = setover && isAt(setover, at) ? "Set-over from square" : labelOf(job, at);
      found.push({ label, value, key: setting !== undefined && isAt(setting, at) });
    }
    return found;
  });
  const swing = namedWords(job, "swing");
  const after = lines.findIndex(({ key }) => key) + 1;
  if (swing !== undefined) lines.splice(after, 0, { label: "Swing", value: swing, key: false });
  return lines.slice(0, mostLines);
}

/** The readings that are wanted, and what a division of either slide takes off them. */
export function measureLines(job: Job): CardLine[] {
  const { over, first, aim, last, grows } = wantedIn(job);
  if (namedNumber(job, aim) === undefined) return [];
  const line = (label: string, name: string, key = false): CardLine[] => {
    const area = namedArea(job, name);
    if (!area) return [];
    const { value, format } = job.cell(area.sheet, area.top, area.left);
    return isErrorValue(value) || value === null
      ? []
      : [{ label, value: showValue(value, format, job.unit).text, key }];
  };
  const division = (label: string, name: string, setover: number | undefined, reads: string): CardLine[] => {
    const travel = namedNumber(job, name);
    if (travel === undefined || setover === undefined || travel <= 0 || Math.abs(setover) >= 90) return [];
    const off = askedFor(1, travel, setover, reads === "diameter" ? "diameter" : "radius");
    return [{ label, value: showValue(off, { as: "length" }, job.unit).text, key: false }];
  };
  const slide = namedArea(job, "slide_moves") ? "slide_moves" : "slide_division";
  const crossReads = namedWords(job, "cross_reads") ?? "radius";
  return [
    ...line(over === "balls" ? "Ball" : "Wires", over === "balls" ? "ball" : "wire"),
    ...line(grows ? "Smallest" : "Largest", first),
    ...line("Aim at", aim, true),
    ...line(grows ? "Largest" : "Smallest", last),
    ...division("Top slide, 1 div", slide, namedNumber(job, "setover"), "radius"),
    ...division("Cross slide, 1 div", "cross_division", 0, crossReads),
  ];
}

const setoverDrawings = new WeakMap<object, readonly string[]>();

/** The cell that draws the set-over. */
export function setoverDrawing({ document }: Job): NamedArea | undefined {
  for (const { name, cells } of document.sheets) {
    const drawings = foundIn(cells, setoverDrawings, (piece) =>
      Object.keys(piece).filter((key) => /^=\s*DRAW\.SETOVER\(/i.test(piece[key]!)),
    ).flat();
    const at = drawings[0] === undefined ? undefined : parseCell(drawings[0]);
    if (at) return { sheet: name, top: at.row, left: at.column, bottom: at.row, right: at.column };
  }
  return undefined;
}

/** Cells that are formatted as keys, by rows. */
function keyCells(formats: Readonly<Record<string, { readonly role?: string }>>) {
  const cells: { row: number; column: number }[] = [];
  for (const [range, { role }] of Object.entries(formats)) {
    const area = role === "key" ? parseRange(range) : undefined;
    if (!area) continue;
    const bottom = Math.min(area.bottom, area.top + mostLines);
    for (let row = area.top; row <= bottom; row++) cells.push({ row, column: area.left });
  }
  return cells.sort((a, b) => a.row - b.row || a.column - b.column);
}

function isAt({ sheet, top, left }: NamedArea, at: { sheet: string; row: number; column: number }): boolean {
  return sheet === at.sheet && top === at.row && left === at.column;
}
