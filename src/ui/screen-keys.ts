/** Which keys a screen's own keyboard shows for a cell: figures where a number belongs, letters when they are asked for. */
import type { CellView } from "../job/job.ts";

const figures = new Set(["decimals", "length", "angle", "thou", "percent"]);

/** @param letters the person wants letters: for a formula, a fraction or a unit */
export function screenKeys({ text, value, format }: CellView, letters: boolean): "decimal" | "text" {
  if (letters || text.startsWith("=")) return "text";
  return typeof value === "number" || figures.has(format.as ?? "") ? "decimal" : "text";
}
