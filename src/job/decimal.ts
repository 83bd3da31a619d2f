/**
 * Numbers as people and other programs write them. A point is a decimal point always; a comma is a decimal comma, and
 * where one of both comes last, that one is. What could have meant thousands is doubtful, and whoever reads it says so.
 */
export interface Decimal {
  /** With a decimal point and without marks between thousands. */
  readonly text: string;
  /** True where three figures after a comma leave two ways to read it. */
  readonly doubtful: boolean;
}

const leading = /^[+\-−]?[\d.,'’]*/;
const comma = /^([+-]?)(\d*),(\d+)$/;
const commaLast = /^([+-]?)(\d{1,3}(?:([.\s'])\d{3})(?:\3\d{3})*),(\d+)$/;
const pointLast = /^([+-]?)(\d{1,3}(?:([,\s'])\d{3})(?:\3\d{3})*)\.(\d+)$/;

/** undefined for anything else, a number with nothing but a point included: it reads as it stands. */
export function readDecimal(written: string): Decimal | undefined {
  const text = written.trim().replace(/^−/, "-").replaceAll("’", "'");
  if (text.length > 60) return undefined;
  const single = comma.exec(text);
  if (single) {
    const [, sign, whole, decimals] = single as unknown as [string, string, string, string];
    // Nobody writes thousands after a nought, and no number of thousands has more than three figures before them.
    const doubtful = decimals.length === 3 && /^[1-9]\d{0,2}$/.test(whole);
    return { text: `${signOf(sign)}${whole || "0"}.${decimals}`, doubtful };
  }
  const both = commaLast.exec(text) ?? pointLast.exec(text) ?? undefined;
  return both && { text: `${signOf(both[1]!)}${figures(both[2]!)}.${both[4]}`, doubtful: false };
}

/** "1,234 as 1.234" of a number, with a unit or without, that could have meant thousands. */
export function doubtIn(written: string): string | undefined {
  const number = leading.exec(written.trim())![0];
  const found = readDecimal(number);
  return found?.doubtful ? `${number} as ${found.text}` : undefined;
}

/** The number that a text begins with, put with a decimal point. */
export function withPoint(written: string): string {
  return written.replace(leading, (number) => readDecimal(number)?.text ?? number);
}

/** `1,234.5`: whoever writes this means thousands by a comma. */
export function groupsByComma(written: string): boolean {
  return written.includes(",") && pointLast.test(written.trim());
}

/** `1,5` or `1.234,5`: whoever writes this means decimals by a comma. */
export function hasDecimalComma(written: string): boolean {
  const found = readDecimal(written);
  return found !== undefined && !found.doubtful && !groupsByComma(written) && written.includes(",");
}

/** `1,234` where its neighbours show that commas part thousands. */
export function thousands(written: string): string | undefined {
  const text = written.trim();
  return /^[+-]?\d{1,3}(?:,\d{3})+$/.test(text) ? text.replace(/[+,]/g, "") : undefined;
}

function signOf(sign: string): string {
  return sign === "-" ? "-" : "";
}

function figures(grouped: string): string {
  return grouped.replace(/\D/g, "");
}
