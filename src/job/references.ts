/**
 * The cells that a formula names: where they stand in its text, so that the page can frame them. Reads text only;
 * reckons nothing.
 */
import { cellName, parseRange, sheetPrefix, splitSheet } from "../engine/address.ts";
import type { JobDocument, SheetDocument } from "./document.ts";
import { formulasOf } from "./error-count.ts";
import { tooManyCells } from "./large-cells.ts";

export interface Reference {
  /** As typed: `B5`, `'Tool'!B2:B9`, `setover`. */
  readonly text: string;
  readonly start: number;
  readonly sheet: string;
  readonly top: number;
  readonly left: number;
  readonly bottom: number;
  readonly right: number;
}

const address = String.raw`\$?[A-Za-z]{1,3}\$?[1-9]\d{0,6}`;
// In order: text in quotes, a reference with or without its sheet, a word that may be a function or a name.
const tokens = new RegExp(
  String.raw`"(?:[^"]|"")*"|((?:'(?:[^']|'')+'|[A-Za-z_][\w.]*)!)?(${address}(?::${address})?)(?![\w.(])|([A-Za-z_\\][\w.]*)(\s*\()?`,
  "g",
);

/** The references of a formula on `sheet`, in the order typed; none when the text is no formula. */
export function referencesOf(formula: string, sheet: string, names: JobDocument["names"] = {}): Reference[] {
  if (!formula.startsWith("=")) return [];
  const found: Reference[] = [];
  for (const match of formula.matchAll(tokens)) {
    const [text, prefix, cells, word, call] = match;
    const start = match.index;
    if (cells !== undefined) {
      const on = prefix === undefined ? sheet : splitSheet(`${prefix}A1`)!.sheet;
      found.push({ text, start, sheet: on, ...parseRange(cells)! });
    } else if (word !== undefined && call === undefined) {
      const named = namedRange(word, names);
      if (named) found.push({ text, start, ...named });
    }
  }
  return found;
}

/** True where both stand for the same cells, however they are written. */
export function isSameRange(one: Reference, other: Reference): boolean {
  return one.sheet === other.sheet && rangeName(one) === rangeName(other);
}

/** Each range once, as it was first typed. */
export function distinctReferences(references: readonly Reference[]): Reference[] {
  const known = new Map<string, Reference>();
  for (const one of references) {
    const key = `${one.sheet}!${rangeName(one)}`;
    if (!known.has(key)) known.set(key, one);
  }
  return [...known.values()];
}

function namedRange(word: string, names: JobDocument["names"]) {
  const key = Object.keys(names).find((name) => name.toLowerCase() === word.toLowerCase());
  const target = key === undefined ? undefined : splitSheet(names[key]!);
  const range = target && parseRange(target.rest);
  return target && range ? { sheet: target.sheet, ...range } : undefined;
}

/** The formula with every plain reference sent to `sheet`, so that it can be reckoned from anywhere in the job. */
export function onSheet(formula: string, sheet: string): string {
  return formula.replace(tokens, (text, prefix: string | undefined, cells: string | undefined) =>
    cells === undefined || prefix !== undefined ? text : sheetPrefix(sheet) + cells,
  );
}

/** `B5` or `B5:B9`. */
export function rangeName(range: { top: number; left: number; bottom: number; right: number }): string {
  const first = cellName(range.top, range.left);
  const last = cellName(range.bottom, range.right);
  return first === last ? first : `${first}:${last}`;
}

/**
 * How many formulas on other sheets read cells of this one, by their addresses or by a name; undefined where there are
 * too many cells to look through at once.
 */
export function formulasReading({ sheets, names }: JobDocument, sheet: string): number | undefined {
  const others = sheets.filter(({ name }) => name !== sheet);
  if (tooManyCells(others) !== undefined) return undefined;
  const reads = ({ name, cells }: SheetDocument) =>
    formulasOf({ cells }).filter((key) =>
      referencesOf(cells[key]!, name, names).some((reference) => reference.sheet === sheet),
    ).length;
  return others.reduce((sum, other) => sum + reads(other), 0);
}
