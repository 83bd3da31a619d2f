/**
 * Lengths and angles as a person writes them: `12.7mm`, `1/2"`, `1 3/16 in`, `20 thou`, `27°30'`. Read exactly: the
 * number is a ratio of whole numbers until it becomes the double nearest to it.
 */

import { withPoint } from "./decimal.ts";

export type QuantityKind = "length" | "angle";

export interface Quantity {
  readonly kind: QuantityKind;
  /** As a ratio of whole numbers: of a length in millimetres, of an angle in degrees. */
  readonly above: bigint;
  readonly below: bigint;
}

interface Unit {
  readonly kind: QuantityKind;
  /** Of it in one millimetre or degree, as a ratio. */
  readonly ratio: readonly [above: bigint, below: bigint];
}

const length = (above: bigint, below = 1n): Unit => ({ kind: "length", ratio: [above, below] });
const angle = (above: bigint, below = 1n): Unit => ({ kind: "angle", ratio: [above, below] });

// One inch is 127/5 mm exactly (international inch, 1959).
const units: Readonly<Record<string, Unit>> = {
  mm: length(1n),
  cm: length(10n),
  m: length(1000n),
  µm: length(1n, 1000n),
  um: length(1n, 1000n),
  micron: length(1n, 1000n),
  microns: length(1n, 1000n),
  in: length(127n, 5n),
  "in.": length(127n, 5n),
  inch: length(127n, 5n),
  inches: length(127n, 5n),
  '"': length(127n, 5n),
  ft: length(1524n, 5n),
  thou: length(127n, 5000n),
  deg: angle(1n),
  degree: angle(1n),
  degrees: angle(1n),
  "°": angle(1n),
};

const number = String.raw`(?:(\d+)[\s-]+)?(\d+(?:[.,]\d*)?|[.,]\d+)(?:\s*/\s*(\d+))?`;
const single = new RegExp(String.raw`^([+-]?)\s*${number}\s*([a-zµ.]*|"|°)$`, "i");
const divided =
  /^([+-]?)\s*(\d+)\s*(?:°|deg)\s*(?:(\d+(?:[.,]\d+)?)\s*(?:'|min)\s*)?(?:(\d+(?:[.,]\d+)?)\s*(?:"|sec)\s*)?$/i;

/** undefined when the text is none of these. A number that names no unit is no quantity. */
export function readQuantity(typed: string): Quantity | undefined {
  const text = typed
    .trim()
    .replace(/[′’]/g, "'")
    .replace(/[″”]|''/g, '"')
    .replace(/μ/g, "µ")
    .replace(/−/g, "-");
  if (text.length > 60) return undefined;
  return dividedAngle(text) ?? singleNumber(withPoint(text));
}

function singleNumber(text: string): Quantity | undefined {
  const found = single.exec(text);
  if (!found) return undefined;
  const [, sign, whole, first, below, name] = found;
  const unit = Object.hasOwn(units, name!.toLowerCase()) ? units[name!.toLowerCase()]! : undefined;
  const value = ratioOf(whole, first!, below);
  if (!unit || !value) return undefined;
  return quantity(unit.kind, sign!, value[0] * unit.ratio[0], value[1] * unit.ratio[1]);
}

/** `1/2`, `1 1/2` and `3-7/8` as numbers without a unit; undefined for anything else, decimals included. */
export function readFraction(typed: string): { above: bigint; below: bigint } | undefined {
  const found = /^([+-]?)\s*(?:(\d+)[\s-]+)?(\d+)\s*\/\s*(\d+)$/.exec(typed.trim());
  if (!found || typed.length > 60) return undefined;
  const [, sign, whole, first, below] = found;
  const value = ratioOf(whole, first!, below);
  return value && { above: sign === "-" ? -value[0] : value[0], below: value[1] };
}

function ratioOf(
  whole: string | undefined,
  first: string,
  below: string | undefined,
): readonly [bigint, bigint] | undefined {
  const [front = "", decimals = ""] = first.split(/[.,]/);
  // `1 1/2` is one and a half; `1 2.5` is nothing.
  if (whole !== undefined && (below === undefined || decimals !== "")) return undefined;
  const bottom = below === undefined ? 1n : BigInt(below);
  if (bottom === 0n) return undefined;
  const scale = 10n ** BigInt(decimals.length);
  return [BigInt(front + decimals) + BigInt(whole ?? 0) * bottom * scale, bottom * scale];
}

function dividedAngle(text: string): Quantity | undefined {
  const found = divided.exec(text);
  const [, sign, degrees, minutes, seconds] = found ?? [];
  if (!found || (minutes === undefined && seconds === undefined)) return undefined;
  const [minuteAbove, minuteBelow] = ratioOf(undefined, minutes ?? "0", undefined)!;
  const [secondAbove, secondBelow] = ratioOf(undefined, seconds ?? "0", undefined)!;
  if (minuteAbove >= 60n * minuteBelow || secondAbove >= 60n * secondBelow) return undefined;
  const below = 3600n * minuteBelow * secondBelow;
  const above = BigInt(degrees!) * below + minuteAbove * 60n * secondBelow + secondAbove * minuteBelow;
  return quantity("angle", sign!, above, below);
}

function quantity(kind: QuantityKind, sign: string, above: bigint, below: bigint): Quantity {
  return { kind, above: sign === "-" ? -above : above, below };
}

/** The number of a quantity in a unit: `mm`, `in` or `deg`. */
export function inUnit({ above, below }: Quantity, unit: "mm" | "in" | "deg"): number {
  return unit === "in" ? nearest(above * 5n, below * 127n) : nearest(above, below);
}

/** The double nearest to a ratio of whole numbers. */
export function nearest(above: bigint, below: bigint): number {
  const common = divisor(above < 0n ? -above : above, below);
  const [a, b] = [above / common, below / common];
  const most = BigInt(Number.MAX_SAFE_INTEGER);
  if (-most <= a && a <= most && b <= most) return Number(a) / Number(b);
  // 30 figures more than a double holds, and the reader of decimal numbers rounds to the nearest.
  const figures = (a * 10n ** 60n) / b;
  return Number(`${figures}e-60`);
}

function divisor(a: bigint, b: bigint): bigint {
  return b === 0n ? a || 1n : divisor(b, a % b);
}
