/** Filling: what stands in the cells of a range goes on into the cells beside it. */
import type { Area } from "./areas.ts";
import { moveFormula } from "./formula-text.ts";
import type { CellEdit, Job } from "./job.ts";

/** The part of `area` that the range `from` is to fill: below, above, right or left of it. */
export function fillEdits(job: Job, sheet: string, from: Area, area: Area): CellEdit[] {
  const down = area.left === from.left && area.right === from.right;
  const text = (row: number, column: number) => job.cell(sheet, row, column).text;
  const edits: CellEdit[] = [];
  const lines = down ? [from.left, from.right] : [from.top, from.bottom];
  for (let line = lines[0]!; line <= lines[1]!; line++) {
    const [first, last] = down ? [from.top, from.bottom] : [from.left, from.right];
    const source: string[] = [];
    for (let at = first; at <= last; at++) source.push(down ? text(at, line) : text(line, at));
    const next = series(source);
    const [start, end] = down ? [area.top, area.bottom] : [area.left, area.right];
    for (let at = start; at <= end; at++) {
      if (at >= first && at <= last) continue;
      const { value, from: origin } = next(at - first);
      const by = at - (first + origin);
      edits.push({
        sheet,
        row: down ? at : line,
        column: down ? line : at,
        text: moveFormula(value, down ? by : 0, down ? 0 : by),
      });
    }
  }
  return edits;
}

/** Two or more numbers a step apart go on by that step; anything else is repeated. */
function series(source: readonly string[]): (at: number) => { value: string; from: number } {
  const numbers = source.map(decimal);
  const [first, second] = numbers;
  const known = numbers.every((each) => each !== undefined);
  if (known && source.length >= 2) {
    const places = Math.max(...numbers.map((each) => each!.places));
    const scaled = numbers.map((each) => each!.figures * 10 ** (places - each!.places));
    const step = scaled[1]! - scaled[0]!;
    const even = scaled.every((each, i) => each === scaled[0]! + i * step);
    if (even && first && second) {
      return (at) => ({ value: written(scaled[0]! + at * step, places), from: 0 });
    }
  }
  const count = source.length;
  return (at) => {
    const from = ((at % count) + count) % count;
    return { value: source[from]!, from };
  };
}

/** A plain decimal number as whole figures and places, so that 0.1 and 0.2 go on with 0.3. */
function decimal(text: string): { figures: number; places: number } | undefined {
  const found = /^\s*([+-]?\d{1,12})(?:\.(\d{0,6}))?\s*$/.exec(text);
  if (!found) return undefined;
  const places = found[2]?.length ?? 0;
  return { figures: Number(`${found[1]}${found[2] ?? ""}`), places };
}

function written(figures: number, places: number): string {
  if (places === 0) return String(figures);
  const digits = String(Math.abs(figures)).padStart(places + 1, "0");
  const text = `${digits.slice(0, -places)}.${digits.slice(-places)}`;
  return figures < 0 ? `-${text}` : text;
}
