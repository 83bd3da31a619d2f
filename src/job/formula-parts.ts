/** What the text of a formula is made of, for whoever shows it while it is typed. Reads text only; half a formula will do. */
import { type Token, tokens } from "../engine/formula.ts";

export type PartKind = "function" | "name" | "reference" | "sheet" | "text" | "number" | "bracket" | "sign";

export interface Part {
  readonly kind: PartKind;
  readonly from: number;
  readonly to: number;
}

/** The call that the caret stands in. */
export interface CallAt {
  /** In capitals. */
  readonly name: string;
  /** Argument that the caret stands in, from 0. */
  readonly argument: number;
  /** Where the name begins. */
  readonly from: number;
}

const cell = /^\$?[A-Za-z]{1,3}\$?[1-9]\d{0,6}$/;

/** Parts with a meaning, in order; white space is left out. None when the text is no formula. */
export function formulaParts(text: string): Part[] {
  if (!text.startsWith("=")) return [];
  const all = tokens(text);
  return all.flatMap((token, index) => {
    const kind = kindOf(token, nextSolid(all, index));
    return kind ? [{ kind, from: token.at, to: token.at + token.text.length }] : [];
  });
}

function kindOf({ kind, text }: Token, next: string | undefined): PartKind | undefined {
  if (kind === "string") return "text";
  if (kind === "sheet" || kind === "number") return kind;
  if (kind === "open" || kind === "close") return "bracket";
  if (kind === "word") return next === "(" ? "function" : cell.test(text) ? "reference" : "name";
  return kind === "space" ? undefined : "sign";
}

/** A quote that is still open swallows what follows it. */
function isOpenQuote({ kind, text }: Token): boolean {
  return kind === "unknown" && text === '"';
}

function nextSolid(all: readonly Token[], index: number): string | undefined {
  return all.slice(index + 1).find(({ kind }) => kind !== "space")?.text;
}

/** The innermost call around the caret; undefined outside of any. */
export function callAt(text: string, caret: number): CallAt | undefined {
  if (!text.startsWith("=")) return undefined;
  const open: { name: string; from: number; argument: number }[] = [];
  let before: Token | undefined;
  for (const token of tokens(text)) {
    if (token.at >= caret) break;
    if (isOpenQuote(token)) break;
    if (token.kind === "open")
      open.push({
        name: before?.kind === "word" && token.text === "(" ? before.text.toUpperCase() : "",
        from: before?.at ?? token.at,
        argument: 0,
      });
    if (token.kind === "close") open.pop();
    if (token.text === "," || token.text === ";") {
      const last = open.at(-1);
      if (last) last.argument += 1;
    }
    if (token.kind !== "space") before = token;
  }
  return open.findLast(({ name }) => name !== "");
}

/** The word that is being typed before the caret, for completion; undefined where none is. */
export function wordBefore(
  text: string,
  caret: number,
): { readonly from: number; readonly word: string } | undefined {
  if (!text.startsWith("=")) return undefined;
  const before = tokens(text.slice(0, caret));
  const token = before.some(isOpenQuote) ? undefined : before.at(-1);
  return token?.kind === "word" && /^[\p{L}_]/u.test(token.text)
    ? { from: token.at, word: token.text }
    : undefined;
}

/**
 * The reference at the caret with its dollar signs moved on: B5, $B$5, B$5, $B5 and again B5.
 *
 * @returns undefined where no reference stands
 */
export function turnDollars(
  text: string,
  caret: number,
): { readonly text: string; readonly caret: number } | undefined {
  const part = formulaParts(text).find(
    ({ kind, from, to }) => kind === "reference" && from <= caret && caret <= to,
  );
  if (!part) return undefined;
  const [, columnDollar, letters, rowDollar, digits] = /^(\$?)([A-Za-z]{1,3})(\$?)(\d+)$/.exec(
    text.slice(part.from, part.to),
  )!;
  const order = ["", "$$", " $", "$ "];
  const now = `${columnDollar || " "}${rowDollar || " "}`;
  const at = order.indexOf(now.trim() === "" ? "" : now);
  const [column = " ", row = " "] = [...(order[(at + 1) % order.length] || "  ")];
  const turned = `${column.trim()}${letters}${row.trim()}${digits}`;
  return { text: text.slice(0, part.from) + turned + text.slice(part.to), caret: part.from + turned.length };
}
