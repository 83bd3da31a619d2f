/** Reading numbers out of designations as people type them. */

/** Signs that stand for the same thing are made alike; letter case is kept, since 6H and 6h differ. */
export function plainText(text: string): string {
  let plain = text.trim();
  if (/[^\x20-\x7e]/.test(plain)) {
    plain = plain
      .replace(/[×✕⨯]/g, "x")
      .replace(/[‐‑‒–—−]/g, "-")
      .replace(/[″”“]/g, '"')
      .replace(/⁄/g, "/")
      .replace(/ö/gi, "oe")
      .replace(/[¼½¾⅛⅜⅝⅞]/g, (sign) => ` ${commonFractions[sign]}`)
      .replace(/[\s\u00a0\u202f]+/g, " ")
      .trim();
  }
  if (plain.includes(",")) plain = plain.replace(/(\d),(?=\d)/g, "$1.");
  // B.S.W. is BSW.
  if (/[a-z]\./i.test(plain)) {
    plain = plain.replace(/(?<![a-z])(?:[a-z]\.){2,}/gi, (initials) => initials.replaceAll(".", ""));
  }
  // A custom note keeps its unit.
  if (/["']|in/i.test(plain) && !/^custom/i.test(plain)) {
    plain = plain.replace(/(\d)\s*(?:"|''|in(?:ch(?:es)?)?\b\.?)/gi, "$1 ");
  }
  return /\s\s|\s$/.test(plain) ? plain.replace(/\s+/g, " ").trim() : plain;
}

const commonFractions: Readonly<Record<string, string>> = {
  "¼": "1/4",
  "½": "1/2",
  "¾": "3/4",
  "⅛": "1/8",
  "⅜": "3/8",
  "⅝": "5/8",
  "⅞": "7/8",
};

/** Pattern of an inch size: 1 1/8, 1-1/8, 3/8, 0.250, 2. */
export const inchSize = String.raw`\d+[\s-]+\d+\/\d+|\d+\/\d+|\d*\.\d+|\d+`;

/** @returns the number that "1 1/8", "1-1/8", "3/8" or "0.25" stands for; NaN when it is none */
export function fractionValue(text: string): number {
  const parts = /^(?:(\d+)[\s-]+)?(\d+)\/(\d+)$/.exec(text);
  if (!parts) return text === "" ? Number.NaN : Number(text);
  return Number(parts[1] ?? 0) + Number(parts[2]) / Number(parts[3]);
}

/**
 * An inch length as the trade writes it: 1 1/8, 3/32 for halves down to sixty-fourths, else decimals.
 *
 * @param value inches, not negative
 */
export function fractionText(value: number): string {
  const whole = Math.floor(value);
  const sixtyFourths = (value - whole) * 64;
  if (sixtyFourths !== Math.round(sixtyFourths)) return String(value);
  if (sixtyFourths === 0) return String(whole);
  let over = sixtyFourths;
  let under = 64;
  while (over % 2 === 0) {
    over /= 2;
    under /= 2;
  }
  return `${whole > 0 ? `${whole} ` : ""}${over}/${under}`;
}

/** Rounded to `places` decimals, halves away from zero in decimal arithmetic (0.00125 to 4 places is 0.0013). */
export function round(value: number, places: number): number {
  const scale = 10 ** places;
  const scaled = Math.abs(value) * scale;
  // A product such as 2.3376 * 1e4 can land an ulp under the half that the decimal digits say.
  return (Math.sign(value) * Math.round(scaled + scaled * 1e-13)) / scale;
}
