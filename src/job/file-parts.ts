/**
 * The text of a very large job in parts, so that a changed cell needs no more than its part to be written again, and no
 * part takes long.
 */

import { cellName } from "../engine/address.ts";
import { cellsOf, eachPacked, PackedCells, type Piece } from "../engine/packed-cells.ts";
import type { JobDocument } from "./document.ts";
import { cellLines, deep, jobText } from "./file.ts";
import { slabsIn } from "./large-cells.ts";

export interface TextPart {
  /** What it is made of: a part of the same things has the same text. */
  readonly of: readonly unknown[];
  text(): string;
}

/** Slabs of one part. */
const together = 16;
/** Sheets of fewer slabs are written whole. */
const many = 100;
/** Stands where a large sheet has its cells; no text of a job holds it, since JSON has another word for it. */
const gap = "\u0000";

/** @returns undefined for a job that is written whole; else parts that together are what `writeJob` writes */
export function partsOf(document: JobDocument): readonly TextPart[] | undefined {
  const large = document.sheets.map(({ cells }) => slabsIn(cells)).filter((slabs) => slabs.length >= many);
  if (large.length === 0) return undefined;
  const frame = jobText(document, (cells) => (slabsIn(cells).length >= many ? gap : undefined)).split(gap);
  return frame.flatMap((text, i) => {
    const slabs = large[i];
    const own: TextPart[] = [{ of: [text], text: () => text }];
    if (!slabs) return own;
    for (let from = 0; from < slabs.length; from += together) {
      const some = slabs.slice(from, from + together);
      const last = from + together >= slabs.length;
      const begin = from === 0 ? "{\n" : ",\n";
      const end = last ? `\n${deep}}` : "";
      own.push({ of: [begin, end, ...some], text: () => begin + some.map(slabLines).join(",\n") + end });
    }
    return own;
  });
}

/** Whether a part has the text that another one has; it may be said of the same text that it has not. */
export function isSamePart(one: TextPart, other: TextPart | undefined): boolean {
  return one.of.length === other?.of.length && one.of.every((each, i) => each === other.of[i]);
}

function slabLines(slab: Piece): string {
  if (!(slab instanceof PackedCells)) return cellLines(cellsOf(slab));
  const lines: string[] = [];
  eachPacked(slab.packed, (row, column, text) =>
    lines.push(`${deep}  "${cellName(row, column)}": ${JSON.stringify(text)}`),
  );
  return lines.join(",\n");
}
