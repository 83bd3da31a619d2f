/** What an input takes, and what is said of a value that lies outside. The value is kept: the person may know better. */
import { parseRange } from "../engine/address.ts";
import { type CellValue, isErrorValue } from "../engine/values.ts";
import { type Area, holds, without } from "./areas.ts";
import { withSheet } from "./changes.ts";
import type { Allowed, CellFormat, SheetDocument } from "./document.ts";
import type { Draft } from "./one-step.ts";
import { inUnit, readQuantity } from "./quantity.ts";
import type { LengthUnit } from "./readings.ts";
import { rangeName } from "./references.ts";

/** What the cell takes; undefined when nothing is said. A single cell overrules ranges, the first range the others. */
export function allowedAt(sheet: SheetDocument, row: number, column: number): Allowed | undefined {
  const found = Object.entries(sheet.allowed ?? {}).filter(([key]) => holds(parseRange(key)!, row, column));
  return (found.find(([key]) => !key.includes(":")) ?? found[0])?.[1];
}

/** Lays limits over a range, or takes them away. */
export function setAllowed(job: Draft, sheet: string, area: Area, allowed: Allowed | undefined): void {
  const found = job.document.sheets.find((each) => each.name === sheet);
  if (!found) return;
  const others = Object.entries(found.allowed ?? {}).flatMap(([key, old]) =>
    without(parseRange(key)!, area).map((piece): [string, Allowed] => [rangeName(piece), old]),
  );
  const now = Object.fromEntries(allowed ? [...others, [rangeName(area), allowed]] : others);
  if (JSON.stringify(now) === JSON.stringify(found.allowed ?? {})) return;
  job.put(
    withSheet(job.document, sheet, ({ allowed: _, ...rest }) =>
      Object.keys(now).length > 0 ? { ...rest, allowed: now } : rest,
    ),
    `${allowed ? "Set" : "Took away"} the limits of ${rangeName(area)} in ${sheet}`,
  );
}

/** A bound in the cell's unit; undefined when it is none. */
function boundIn(
  bound: number | string | undefined,
  format: CellFormat,
  unit: LengthUnit,
): number | undefined {
  if (typeof bound !== "string") return bound;
  const found = readQuantity(bound);
  if (!found) return undefined;
  const inches = format.as === "fraction" || format.as === "thou" || format.unit === "in";
  const millimetres = format.unit === "mm" && format.as !== "length";
  const length = inches ? "in" : millimetres ? "mm" : unit;
  return inUnit(found, found.kind === "angle" ? "deg" : length);
}

/** Why the value lies outside of what the cell takes; undefined when it does not. An empty cell is never outside. */
export function outsideReason(
  value: CellValue,
  allowed: Allowed,
  format: CellFormat,
  choices: readonly string[] | undefined,
  unit: LengthUnit,
): string | undefined {
  if (value === null || value === "" || isErrorValue(value)) return undefined;
  const plain = plainReason(value, allowed, format, choices, unit);
  return plain === undefined ? undefined : (allowed.message ?? plain);
}

function plainReason(
  value: number | string | boolean,
  allowed: Allowed,
  format: CellFormat,
  choices: readonly string[] | undefined,
  unit: LengthUnit,
): string | undefined {
  if (allowed.listed && choices) {
    const known = choices.some((word) => word.toLowerCase() === String(value).trim().toLowerCase());
    if (!known) return `not one of ${choices.join(", ")}`;
  }
  const least = boundIn(allowed.least, format, unit);
  const most = boundIn(allowed.most, format, unit);
  if (least === undefined && most === undefined && !allowed.whole) return undefined;
  if (typeof value !== "number") return "a number is wanted here";
  if (least !== undefined && value < least) return `under the least allowed, ${said(allowed.least!)}`;
  if (most !== undefined && value > most) return `over the most allowed, ${said(allowed.most!)}`;
  return allowed.whole && !Number.isInteger(value) ? "a whole number is wanted here" : undefined;
}

function said(bound: number | string): string {
  return typeof bound === "number" ? String(bound) : bound;
}

/** Why `allowed` cannot be set; undefined when it can. */
export function allowedProblem({ least, most }: Allowed): string | undefined {
  for (const bound of [least, most])
    if (typeof bound === "string" && !readQuantity(bound))
      return `${bound} is no number and no quantity such as 0.2 mm`;
  return typeof least === "number" && typeof most === "number" && least > most
    ? `the least, ${least}, is over the most, ${most}`
    : undefined;
}
