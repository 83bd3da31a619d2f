/**
 * Turns what a formula hands to a declared function into what its `compute` takes.
 *
 * The engine's own coercion is not used: it takes TRUE for a diameter of 1, an empty cell for 0, and its messages
 * name no argument. Here every refusal says which argument, what was given and what is accepted.
 */
import { type Given, isRequired, type Param, type SheetFunction, signature } from "../functions/declare.ts";

/** A refusal on the way in, to become #VALUE! in the cell. */
export class Refused {
  constructor(readonly message: string) {}
}

/** What the engine can hand over, told apart with the caller's own copy of the engine. */
export interface Kit {
  readonly isError: (value: unknown) => boolean;
  readonly isRange: (value: unknown) => value is { readonly data: readonly (readonly unknown[])[] };
  readonly empty: unknown;
}

/** Reads one argument; answers with the value, an error of the engine to hand on, or a refusal. */
export type Reader = (value: unknown) => Given | Refused | object;

/** How the arguments of `fn` are read, in order. */
export function readersOf(fn: SheetFunction, kit: Kit): Reader[] {
  return fn.params.map((param) => readerOf(param, kit));
}

/** What `param` gets when it is left out. */
export function leftOut(param: Param): Given | Refused {
  if (param.fallback !== undefined) return param.fallback;
  if (!isRequired(param)) return undefined;
  return new Refused(`${param.name} is missing: ${accepted(param)}`);
}

/** Message for a call with more arguments than the function has. */
export function tooMany(fn: SheetFunction, given: number): string {
  const most = fn.params.length;
  return `${fn.name} takes ${most === 0 ? "no arguments" : `at most ${most} argument${most === 1 ? "" : "s"}`}, got ${given}: ${signature(fn)}`;
}

function readerOf(param: Param, kit: Kit): Reader {
  if (param.type === "numbers") return (value) => readNumbers(param, value, kit);
  const absent = leftOut(param);
  const read = param.type === "number" ? readNumber : textReader(param);
  return (value) => {
    if (kit.isError(value)) return value as object;
    let single = value;
    if (kit.isRange(value)) {
      const { data } = value;
      if (data.length !== 1 || data[0]?.length !== 1) {
        return new Refused(
          `${param.name} must be one value, got a range of ${data.length} x ${data[0]?.length ?? 0} cells`,
        );
      }
      single = data[0][0];
      if (kit.isError(single)) return single as object;
    }
    if (single === kit.empty || single === undefined || single === null) return absent;
    return read(param, single);
  };
}

function readNumber(param: Param, value: unknown): number | Refused {
  if (typeof value === "number") return value;
  const number = asNumber(value);
  return number ?? new Refused(`${param.name} must be a number, got ${given(value)}`);
}

function textReader(param: Param): (param: Param, value: unknown) => string | Refused {
  const { options } = param;
  if (!options) {
    return (_, value) => asText(value) ?? new Refused(`${param.name} must be text, got ${given(value)}`);
  }
  const spelling = new Map(options.map((option) => [option.toLowerCase(), option]));
  const words = options.map((option) => `"${option}"`).join(", ");
  return (_, value) =>
    spelling.get((asText(value) ?? "").trim().toLowerCase()) ??
    new Refused(`${param.name} must be ${options.length > 1 ? "one of " : ""}${words}, got ${given(value)}`);
}

function readNumbers(param: Param, value: unknown, kit: Kit): Given | Refused | object {
  const cells = kit.isRange(value) ? value.data.flat() : [value];
  const numbers: number[] = [];
  for (const cell of cells) {
    if (kit.isError(cell)) return cell as object;
    // A block function fills its empty places with "", so that counts as blank in a range.
    if (cell === kit.empty || cell === undefined || cell === null || cell === "") continue;
    const number = asNumber(cell);
    if (number === undefined) return new Refused(`${param.name} must hold numbers only, got ${given(cell)}`);
    numbers.push(number);
  }
  return numbers.length === 0 ? leftOut(param) : numbers;
}

/** Plain decimal notation, as it is read from a cell, an argument and the keyboard alike. */
export function plainNumber(text: string): number | undefined {
  const trimmed = text.trim();
  if (!/^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d+)?$/i.test(trimmed)) return undefined;
  const number = Number(trimmed);
  return Number.isFinite(number) ? number : undefined;
}

function asNumber(value: unknown): number | undefined {
  if (typeof value === "number") return value;
  if (typeof value === "string") return plainNumber(value);
  return extended(value);
}

function asText(value: unknown): string | undefined {
  if (typeof value === "string") return value;
  const number = typeof value === "number" ? value : extended(value);
  return number === undefined ? undefined : String(number);
}

/** The engine wraps percentages, dates and money in objects. */
function extended(value: unknown): number | undefined {
  if (typeof value !== "object" || value === null || !("val" in value)) return undefined;
  return typeof value.val === "number" ? value.val : undefined;
}

function given(value: unknown): string {
  if (typeof value === "boolean") return value ? "TRUE" : "FALSE";
  if (typeof value !== "string") return String(asText(value) ?? "something else");
  const shown = value.length > 40 ? `${value.slice(0, 40)}...` : value;
  const withPoint = plainNumber(value.replace(",", "."));
  return `text "${shown}"${value.includes(",") && withPoint !== undefined ? ` (write ${withPoint})` : ""}`;
}

function accepted(param: Param): string {
  if (param.options) return `say ${param.options.map((option) => `"${option}"`).join(" or ")}`;
  return param.doc.replace(/\.$/, "");
}
