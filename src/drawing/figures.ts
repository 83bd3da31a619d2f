/** Numbers as a drawing writes them. */
import type { LengthUnit } from "../thread/thread.ts";

/** At least one decimal and at most two: 27.0, 26.5, 23.75. */
export function angle(degrees: number): string {
  const text = degrees.toFixed(2).replace(/0$/, "");
  return `${text === "-0.0" ? "0.0" : text.replace("-", "−")}°`;
}

/** A length with the decimals that a micrometer of that unit has. */
export function length(value: number, unit: LengthUnit = "mm"): string {
  return trimmed(value, unit === "mm" ? 3 : 4);
}

/** Up to `places` decimals, trailing zeros dropped. */
export function trimmed(value: number, places: number): string {
  const text = value.toFixed(places);
  const short = text.includes(".") ? text.replace(/\.?0+$/, "") : text;
  return short === "-0" ? "0" : short.replace("-", "−");
}

/** Four significant figures at most, for lengths whose unit nobody has said. */
export function plain(value: number): string {
  if (value === 0) return "0";
  const size = Math.floor(Math.log10(Math.abs(value)));
  if (size < -5 || size > 8) return value.toExponential(2).replace("e+", "e").replaceAll("-", "−");
  return trimmed(value, size < -1 ? 2 - size : Math.max(0, 3 - size));
}
