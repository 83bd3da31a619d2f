/**
 * How a value is shown: the text a person reads, and its parts for the slots of a cell. The value stays unrounded.
 *
 * Rounding is half away from zero on the shortest decimal that names the double, so that 2.675 to two places
 * is 2.68, as on paper. Minus zero is never shown. Nothing here converts a unit: the value is in the unit shown.
 */
import { type CellValue, type ErrorValue, isErrorValue } from "../engine/values.ts";
import type { CellFormat, ShowAs } from "./document.ts";

/** A number in its slots: `integer` ends at the point, `fraction` starts with it. */
export interface NumberParts {
  readonly integer: string;
  /** "" or the point and the decimals. */
  readonly fraction: string;
  /** The degree sign hugs its figure, so it stands apart from the unit. */
  readonly degree: boolean;
  readonly unit: string;
}

export interface Shown {
  /** All of it in reading order; an error is its code and short words. */
  readonly text: string;
  readonly align: "left" | "right" | "center";
  readonly parts?: NumberParts;
  readonly error?: { readonly code: string; readonly words: string };
}

/** Decimals of a length where the format names none: a tenth of a micron and a hundredth of a thou. */
export const lengthPlaces = { mm: 4, in: 5 } as const;

const otherPlaces: Readonly<Partial<Record<ShowAs, number>>> = {
  decimals: 3,
  angle: 2,
  dms: 0,
  thou: 1,
  percent: 1,
};

const shortWords: Readonly<Record<string, string>> = {
  "#NUM!": "past limit",
  "#VALUE!": "unreadable",
  "#N/A": "not found",
  "#REF!": "cell is gone",
  "#NAME?": "unknown name",
  "#DIV/0!": "divided by 0",
  "#SPILL!": "no room",
  "#CYCLE!": "in a circle",
  "#ERROR!": "no formula",
};

/** Fixed decimals of a format in a job of `unit`; undefined when the number of them is free. */
export function fixedPlaces(format: CellFormat, unit: "mm" | "in"): number | undefined {
  const as = format.as ?? "plain";
  if (as === "length") return format.places ?? lengthPlaces[unit];
  if (as === "decimals" || as === "angle" || as === "thou" || as === "percent")
    return format.places ?? otherPlaces[as];
  return undefined;
}

/** The unit that stands beside a number of this format, "" when there is none. */
export function unitBeside(format: CellFormat, unit: "mm" | "in"): string {
  if (format.unit !== undefined) return format.unit;
  if (format.as === "length") return unit;
  if (format.as === "fraction") return "in";
  if (format.as === "thou") return "thou";
  return format.as === "percent" ? "%" : "";
}

/**
 * What a cell shows.
 *
 * @param unit the job's unit, for `length`
 */
export function showValue(value: CellValue, format: CellFormat = {}, unit: "mm" | "in" = "mm"): Shown {
  if (isErrorValue(value)) return showError(value, format);
  if (value === null) return { text: "", align: format.align ?? "left" };
  if (typeof value === "boolean") return { text: value ? "TRUE" : "FALSE", align: format.align ?? "center" };
  if (typeof value === "string") {
    return { text: value, align: format.align ?? (format.role === "column" ? "right" : "left") };
  }
  return showNumber(value, format, unit);
}

function showError(value: ErrorValue, format: CellFormat): Shown {
  const words = shortWords[value.error] ?? "";
  return {
    text: words === "" ? value.error : `${value.error} ${words}`,
    align: format.align ?? "right",
    error: { code: value.error, words },
  };
}

function showNumber(value: number, format: CellFormat, unit: "mm" | "in"): Shown {
  const align = format.align ?? "right";
  const beside = unitBeside(format, unit);
  const withUnit = (text: string) => (beside === "" ? text : `${text} ${beside}`);
  switch (format.as) {
    case "text":
      return { text: plain(value, 15), align: format.align ?? "left" };
    case "fraction":
      return { text: withUnit(sixtyFourths(value)), align };
    case "date": {
      const text = dateText(value);
      if (text !== undefined) return { text, align };
      return showNumber(value, { ...format, as: "plain" }, unit);
    }
    case "turns":
      return { text: withUnit(turnsText(value, format)), align };
    case "dms":
      return { text: degreesMinutesSeconds(value, format.places ?? 0), align };
    default: {
      const figures = figuresOf(value, format, unit);
      const degree = format.as === "angle";
      const point = figures.search(/[.E]/);
      const integer = point < 0 ? figures : figures.slice(0, point);
      return {
        text: withUnit(degree ? `${figures}°` : figures),
        align,
        parts: { integer, fraction: figures.slice(integer.length), degree, unit: beside },
      };
    }
  }
}

function figuresOf(value: number, format: CellFormat, unit: "mm" | "in"): string {
  const places = fixedPlaces(format, unit);
  if (places === undefined) return plain(value, format.places ?? 6);
  const shift = format.as === "thou" ? 3 : format.as === "percent" ? 2 : 0;
  return fixed(value, places, shift);
}

/** At most `places` decimals, none of them a trailing zero. What would show as 0 and is not 0 gets an exponent. */
function plain(value: number, places: number): string {
  if (value === 0) return "0";
  const size = Math.abs(value);
  const text = size < 1e15 ? fixed(value, places) : "0";
  if (Number(text) === 0) {
    const [figures, power] = value.toExponential(5).split("e");
    return `${dropZeros(figures!)}E${Number(power)}`;
  }
  return dropZeros(text);
}

function dropZeros(text: string): string {
  return text.includes(".") ? text.replace(/\.?0+$/, "") : text;
}

/** Exactly `places` decimals of value times 10^shift; the shift is made on the decimal, so 0.07 becomes 7. */
function fixed(value: number, places: number, shift = 0): string {
  const [figures, power] = String(Math.abs(value)).split("e");
  const scaled = Math.round(Number(`${figures}e${Number(power ?? 0) + places + shift}`));
  // Past 2^53 the double has no decimals left to round.
  if (!Number.isSafeInteger(scaled)) return (value * 10 ** shift).toFixed(places);
  const digits = String(scaled).padStart(places + 1, "0");
  const whole = digits.slice(0, digits.length - places);
  const text = places === 0 ? whole : `${whole}.${digits.slice(digits.length - places)}`;
  return value < 0 && scaled !== 0 ? `-${text}` : text;
}

/** Nearest 64th in lowest terms: 1 1/2. A value halfway goes away from zero. */
function sixtyFourths(value: number): string {
  const parts = Math.round(Math.abs(value) * 64);
  const whole = Math.floor(parts / 64);
  let above = parts % 64;
  let below = 64;
  while (above !== 0 && above % 2 === 0) {
    above /= 2;
    below /= 2;
  }
  const sign = value < 0 && parts !== 0 ? "-" : "";
  if (above === 0) return `${sign}${whole}`;
  return whole === 0 ? `${sign}${above}/${below}` : `${sign}${whole} ${above}/${below}`;
}

const firstDay = Date.UTC(1899, 11, 30);

/** The day that is `value` days after 1899-12-30, as ISO 8601 writes it; undefined past the year 9999. */
function dateText(value: number): string | undefined {
  const days = Math.floor(value);
  return days >= 0 && days <= 2_958_465
    ? new Date(firstDay + days * 86_400_000).toISOString().slice(0, 10)
    : undefined;
}

/** Divisions as full turns and the divisions beyond them, rounded to `places` of a division. */
function turnsText(value: number, { perTurn, places = 1 }: CellFormat): string {
  const size = Math.abs(value);
  if (typeof perTurn !== "number") return plain(value, places);
  // Rounded first, so that 49.96 of 50 is one turn.
  const divisions = Number(fixed(size, places));
  const turns = Math.floor(divisions / perTurn);
  const rest = plain(divisions - turns * perTurn, places);
  const sign = value < 0 && divisions !== 0 ? "-" : "";
  if (turns === 0) return `${sign}${rest}`;
  const words = `${turns} ${turns === 1 ? "turn" : "turns"}`;
  return `${sign}${rest === "0" ? words : `${words} + ${rest}`}`;
}

/** Degrees, minutes, seconds; `places` decimals of a second. 60 never stands in a slot: it is carried. */
function degreesMinutesSeconds(value: number, places: number): string {
  const inOne = 10 ** places;
  const parts = Math.round(Math.abs(value) * 3600 * inOne);
  const degrees = Math.floor(parts / (3600 * inOne));
  const minutes = Math.floor(parts / (60 * inOne)) % 60;
  const seconds = ((parts % (60 * inOne)) / inOne)
    .toFixed(places)
    .padStart(places === 0 ? 2 : places + 3, "0");
  const sign = value < 0 && parts !== 0 ? "-" : "";
  return `${sign}${degrees}°${String(minutes).padStart(2, "0")}′${seconds}″`;
}

/** A cell in few words: of an error the code alone. */
export function cellText(
  { value, format }: { readonly value: CellValue; readonly format: CellFormat },
  unit: "mm" | "in",
): string {
  return isErrorValue(value) ? value.error : showValue(value, format, unit).text;
}

/** The text alone, for places that have no slots. */
export function shownText(value: CellValue, format: CellFormat = {}, unit: "mm" | "in" = "mm"): string {
  return showValue(value, format, unit).text;
}
