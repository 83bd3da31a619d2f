/** What a cell, a sheet or a person may be called: names that formulas can use, and no others. */
import { parseCell, parseRange, placeName, splitSheet } from "../engine/address.ts";
import type { JobDocument } from "./document.ts";

/** Keys that mean something to the language the app is written in, so no name may be one. */
const hostile = new Set(["__proto__", "constructor", "prototype"]);

/** Why `name` cannot name a cell; undefined if it can. */
export function nameProblem(name: string): string | undefined {
  if (name === "") return "a name must have at least one letter";
  if (name.length > 100) return `a name may have 100 characters, this one has ${name.length}`;
  if (/\s/.test(name)) return `a name has no spaces: write ${name.trim().replace(/\s+/g, "_")}`;
  if (/^[A-Za-z]+\d+$/.test(name)) return `${name} reads as a cell: write ${name.replace(/(\d)/, "_$1")}`;
  if (/^r\d*c\d*$/i.test(name)) return `${name} reads as a cell: use another name`;
  if (/^(true|false)$/i.test(name)) return `${name.toUpperCase()} is a value: use another name`;
  if (!/^[A-Za-z\u00c0-\u02af_][A-Za-z0-9\u00c0-\u02af._]*$/.test(name)) {
    return "a name begins with a letter and goes on with letters, digits, points and underscores";
  }
  if (hostile.has(name.toLowerCase())) return `${name} cannot be used as a name`;
  return undefined;
}

/** Why `target` is no place of this job that can be named; undefined if it is one. */
export function targetProblem(target: string, sheets: readonly string[]): string | undefined {
  const found = splitSheet(target);
  if (!found || !parseRange(found.rest))
    return `a name stands for a cell or a range such as Thread!B2 or Thread!B2:B9, got "${target}"`;
  return sheets.includes(found.sheet) ? undefined : `there is no sheet "${found.sheet}"`;
}

/** Why `name` cannot be the name of a sheet beside `others`; undefined if it can. */
export function sheetNameProblem(name: string, others: readonly string[]): string | undefined {
  if (name.trim() === "") return "a sheet must have a name";
  if (name !== name.trim()) return "a sheet's name neither begins nor ends with a space";
  if (name.length > 60) return `a sheet's name may have 60 characters, this one has ${name.length}`;
  // biome-ignore lint/suspicious/noControlCharactersInRegex: those are what must not be in a name
  if (/[!:*?[\]\\/\u0000-\u001f]/.test(name)) return "a sheet's name has none of ! : * ? [ ] / \\";
  if (name.startsWith("'") || name.endsWith("'"))
    return "a sheet's name neither begins nor ends with a quote";
  if (hostile.has(name.toLowerCase())) return `${name} cannot be used as a name`;
  const same = others.find((other) => other.toLowerCase() === name.toLowerCase());
  return same === undefined ? undefined : `there is a sheet "${same}" already`;
}

/** The name of exactly this cell, if it has one. */
export function nameOfCell(
  document: JobDocument,
  sheet: string,
  row: number,
  column: number,
): string | undefined {
  return namesByPlace(document.names).get(placeName({ sheet, row, column }));
}

const cache = new WeakMap<object, Map<string, string>>();

function namesByPlace(names: Readonly<Record<string, string>>): Map<string, string> {
  let found = cache.get(names);
  if (!found) {
    found = new Map();
    for (const [name, target] of Object.entries(names)) {
      const split = splitSheet(target);
      const cell = split && parseCell(split.rest);
      if (split && cell) found.set(placeName({ sheet: split.sheet, ...cell }), name);
    }
    cache.set(names, found);
  }
  return found;
}
