/**
 * How a shop card is divided into pages and how high its parts are, in millimetres, before anything is drawn: the browser
 * prints at once, and what stands on paper must not be cut off. Lines that are too long for their room are counted as what they
 * wrap to, by the widths of the letters.
 */
import { widthOf } from "../drawing/lettering.ts";
import type { Card, CardLine } from "../job/card.ts";
import type { Step } from "../job/steps.ts";

export interface PassSheet {
  readonly steps: readonly Step[];
  readonly first: boolean;
  readonly columns: number;
  /** Class of the height that a pass has. */
  readonly height: string;
  /** A row for what was not planned, on the last card. */
  readonly spare: boolean;
}

/** Millimetres in a CSS px. */
const px = 127 / 480;
/** Inside of the frame. */
const inside = { width: 127.6, height: 189.5 } as const;
const heading = 11;
const heads = 5;
export const factsWidth = 56;
export const figureWidth = 55;
/** Height that the drawing takes. */
const figureHeight = 66;
/** Heights of a pass, the roomiest first. */
const steps = [
  { name: "h6", height: 6.2 },
  { name: "h5", height: 5 },
  { name: "h4", height: 4.2 },
  { name: "h3", height: 3.9 },
] as const;
const mostColumns = 3;

/** As many passes on the first card as it has room for, in columns that are no longer than they must be. */
export function pagesOf(card: Card, notes: readonly string[]): PassSheet[] {
  const taken =
    heading +
    Math.max(settingsHeight(card), card.drawing ? figureHeight : 0) +
    (card.measure.length > 0 ? measureHeight(card.measure) : 0) +
    Math.max(notesHeight(notes), factsHeight(card.facts));
  const pages: PassSheet[] = [];
  let left = card.plan?.steps ?? [];
  do {
    const first = pages.length === 0;
    const room = Math.max(0, inside.height - (first ? taken : heading) - heads);
    const wanted = left.length + 1;
    const tightest = steps.at(-1)!.height;
    const columns = Math.ceil(wanted / 2) * tightest <= room ? 2 : mostColumns;
    const deep = Math.min(Math.ceil(wanted / columns), Math.floor(room / tightest));
    const step = steps.find(({ height }) => deep * height <= room) ?? steps.at(-1)!;
    const here = left.slice(0, columns * deep);
    left = left.slice(here.length);
    // The row for what was not planned may itself need the room.
    const spare = left.length === 0 && here.length < columns * deep;
    pages.push({ steps: here, first, columns, height: step.name, spare });
  } while (left.length > 0);
  return pages;
}

function settingsHeight({ settings, drawing }: Card): number {
  const room = inside.width - (drawing ? figureWidth : 0) - 6;
  const height = settings.map(({ label, value, key }) => {
    const size = key ? (value.length > 12 ? 13.5 : 19) : 11;
    const width = (widthOf(label, key ? 12.5 : 11) + widthOf(value, size)) * px;
    return (Math.ceil(width / room) * size * 1.2 + 1) * px + 1.1;
  });
  return sum(height);
}

/** More readings than this are set smaller. */
export const roomyMeasures = 5;

/** A label that is wider than its value wraps. */
function measureHeight(lines: readonly CardLine[]): number {
  const size = lines.length > roomyMeasures ? 10 : 11;
  const wraps = lines.some(({ label, value }) => widthOf(label, size - 1) > widthOf(value, size));
  return wraps ? 14.5 : 11;
}

function notesHeight(notes: readonly string[]): number {
  const many = notes.length > manyNotes;
  const size = many ? 9 : 9.6;
  const room = inside.width - factsWidth - 8.5;
  const lines = sum(notes.map((note) => linesFor(note, size, room)));
  return lines * size * (many ? 1.12 : 1.2) * px + 3;
}

/** From so many notes on they are set closer. */
export const manyNotes = 8;

function factsHeight(facts: readonly CardLine[]): number {
  const row = 7.2;
  const rows: number[] = [];
  for (let at = 0; at < facts.length; at += 2)
    rows.push(
      Math.max(...facts.slice(at, at + 2).map(({ value }) => linesFor(value, 10.5, factsWidth / 2 - 4))),
    );
  return sum(rows.map((lines) => row + (lines - 1) * 10.5 * 1.2 * px)) + 2 * row + 1;
}

/** Lines that a text wraps to; words do not fill every line to its end. */
function linesFor(text: string, size: number, room: number): number {
  let lines = 1;
  let used = 0;
  for (const word of text.split(" ")) {
    const width = widthOf(`${word} `, size) * px;
    if (used > 0 && used + width > room) {
      lines += 1;
      used = 0;
    }
    used += width;
  }
  return lines;
}

function sum(numbers: readonly number[]): number {
  return numbers.reduce((total, number) => total + number, 0);
}
