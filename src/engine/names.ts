/** Names of a job as the engine takes them. */
import type { HyperFormula } from "hyperformula";
import { cellName, parseCell, sheetPrefix, splitSheet } from "./address.ts";
import type { Cell } from "./plugin.ts";

/** Gives the names to the engine. @returns those that it cannot take */
export function addNames(hf: HyperFormula, names: Readonly<Record<string, string>>): string[] {
  hf.addNamedExpression("TRUE", "=TRUE()");
  hf.addNamedExpression("FALSE", "=FALSE()");
  const refused: string[] = [];
  for (const [name, target] of Object.entries(names)) {
    const formula = absolute(target);
    if (formula && hf.isItPossibleToAddNamedExpression(name, formula)) hf.addNamedExpression(name, formula);
    else refused.push(name);
  }
  return refused;
}

/** Targets by names in small letters: a table of thousands of cells asks for the same few names. */
const targets = new WeakMap<Readonly<Record<string, string>>, ReadonlyMap<string, string>>();

/** The one cell that `name` stands for, or why there is none. */
export function cellOf(
  names: Readonly<Record<string, string>>,
  name: string,
  sheetIndex: (sheet: string) => number,
): Cell | string {
  let known = targets.get(names);
  if (!known) {
    known = new Map(Object.entries(names).map(([each, target]) => [each.toLowerCase(), target]));
    targets.set(names, known);
  }
  const target = known.get(name.toLowerCase());
  if (target === undefined) return `${name} is not known`;
  const found = splitSheet(target);
  const place = found && parseCell(found.rest);
  const sheet = found ? sheetIndex(found.sheet) : -1;
  if (!place || sheet < 0) return `${name} is ${target}`;
  return { sheet, row: place.row, col: place.column };
}

/** `Sheet!B2:B9` as the formula of a name: with dollar signs, else it would move with the cell that uses it. */
function absolute(target: string): string | undefined {
  const found = splitSheet(target);
  const corners = found?.rest.split(":").map(parseCell);
  if (!found || !corners || corners.length > 2) return undefined;
  const dollars = corners.map(
    (corner) => corner && cellName(corner.row, corner.column).replace(/^([A-Z]+)/, "$$$1$$"),
  );
  return dollars.includes(undefined) ? undefined : `=${sheetPrefix(found.sheet)}${dollars.join(":")}`;
}
