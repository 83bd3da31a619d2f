/**
 * How wide the letters of B612 are, so that labels can be laid out without a page. Measured in the typeface; both weights
 * have the same widths, and kerning only makes a text narrower.
 */

/** Characters by their width in hundredths of an em. */
const widths: readonly (readonly [number, string])[] = [
  [20, "'|"],
  [25, ",;·′"],
  [30, ".:Iij°"],
  [35, " !l"],
  [40, '"frt″'],
  [45, "()-[Js"],
  [50, "=]cz"],
  [53, "a"],
  [55, "$*/?\\FLS_`ekvxy–−≈≤≥"],
  [60, "+CEKPTYZbdghnopquø}±"],
  [75, "N^w~½"],
  [70, "&HU"],
  [80, "OQ×"],
  [85, "#"],
  [90, "%Mm"],
  [95, "W"],
  [100, "@"],
];

const widthOfCharacter = new Map(
  widths.flatMap(([width, characters]) => [...characters].map((character) => [character, width] as const)),
);
const figureWidth = 65;
/** For letters that are not in the table. */
const widest = 100;

/** Above and below the baseline, em: a little more than the typeface has, as browsers round both to whole pixels. */
export const ascent = 1;
export const descent = 0.305;

/** Width of a text at this size; never less than it is. */
export function widthOf(text: string, size: number): number {
  let hundredths = 0;
  for (const character of text) hundredths += widthOfCharacter.get(character) ?? fallbackWidth(character);
  return (hundredths * size) / 100;
}

function fallbackWidth(character: string): number {
  // Figures, and the capitals that are as wide: A B D G R V X < > µ.
  return /[0-9ABDGRVX<>µÅ{]/.test(character) ? figureWidth : widest;
}

/** `text` shortened so that it is no wider than `room`; "" when not even a few letters fit. */
export function shortened(text: string, size: number, room: number): string {
  if (widthOf(text, size) <= room) return text;
  let kept = text;
  while (kept.length > 3 && widthOf(`${kept}...`, size) > room) kept = kept.slice(0, -1);
  return kept.length > 3 ? `${kept.trimEnd()}...` : "";
}
