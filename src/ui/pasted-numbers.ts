/**
 * Numbers of other programs as they are typed here: with a decimal point and without marks between thousands. What the
 * rest of the block shows decides; then the person's own way of writing; what may be either stays as it is, as text.
 */
type Mark = "," | ".";

const commaSure = /^[+-]?(?:\d{1,3}(?:[.\s']\d{3})+,\d+|\d*,(?:\d{1,2}|\d{4,})|0,\d{3})$/;
const pointSure = /^[+-]?(?:\d{1,3}(?:[,\s']\d{3})+\.\d+|\d{1,3}(?:,\d{3}){2,})$/;

/** @param locale as the browser names it */
export function asNumbersHere(
  rows: readonly (readonly string[])[],
  locale = globalThis.navigator?.language ?? "en",
): string[][] {
  const all = rows.flat().map((text) => text.trim());
  const comma = all.some((text) => commaSure.test(text));
  const point = all.some((text) => pointSure.test(text));
  if (comma && point) return rows.map((row) => row.map((text) => alone(text)));
  const sure: Mark | undefined = comma ? "," : point ? "." : undefined;
  const own = sure ?? (decimalMark(locale) === "," ? "," : undefined);
  return rows.map((row) => row.map((text) => (own ? plain(text, own, sure !== undefined) : text)));
}

/** Rows that mix both ways: each by itself, and only where it can be nothing else. */
function alone(text: string): string {
  if (commaSure.test(text.trim())) return plain(text, ",", true);
  return pointSure.test(text.trim()) ? plain(text, ".", true) : text;
}

function plain(text: string, decimal: Mark, sure: boolean): string {
  const other = decimal === "," ? "." : ",";
  const form = new RegExp(
    String.raw`^\s*([+-]?)(\d{1,3}(?:[${other}\s']\d{3})+|\d*)(?:[${decimal}](\d+))?\s*$`,
  );
  const found = form.exec(text);
  if (!found) return text;
  const [, sign, whole, decimals] = found as unknown as [string, string, string, string | undefined];
  const grouped = /\D/.test(whole);
  if (whole === "" && decimals === undefined) return text;
  // With nothing else to go by, 1.250 is a number as it stands.
  if (grouped && decimals === undefined && !sure) return text;
  if (!grouped && decimals === undefined) return text;
  return `${sign}${whole.replace(/\D/g, "") || "0"}${decimals === undefined ? "" : `.${decimals}`}`;
}

function decimalMark(locale: string): string {
  try {
    return new Intl.NumberFormat(locale).formatToParts(1.5).find(({ type }) => type === "decimal")!.value;
  } catch {
    return ".";
  }
}
