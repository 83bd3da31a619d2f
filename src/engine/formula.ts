/** Formula text cut into its parts, for checks and for rewriting; the engine parses it. */

export interface Token {
  readonly kind: "string" | "sheet" | "number" | "word" | "open" | "close" | "operator" | "space" | "unknown";
  readonly text: string;
  /** Where it begins in the formula, from 0. */
  readonly at: number;
}

/**
 * Text in quotes with doubled quotes inside; a sheet name with its exclamation mark; a number; a word (function, name,
 * cell or error value such as #N/A, with dollar signs); brackets; operators and separators; white space.
 */
const part =
  /("(?:[^"]|"")*")|('(?:[^']|'')+'!|[\p{L}_][\p{L}\p{N}_.]*!)|((?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?(?![\p{L}_]))|(#[A-Z]+[/0]*[A-Z0]*[!?]?|\$?[\p{L}_\d][\p{L}\p{N}_.$]*)|([({])|([)}])|(<=|>=|<>|[-+*/^&=<>%,;:])|([\s\u00a0]+)|([\s\S])/gu;

const kinds = ["string", "sheet", "number", "word", "open", "close", "operator", "space", "unknown"] as const;

/** Cuts `formula` (with its leading "=") into parts that together are the whole text. */
export function tokens(formula: string): Token[] {
  const found: Token[] = [];
  for (const match of formula.matchAll(part)) {
    const kind = kinds[match.slice(1).findIndex((group) => group !== undefined)]!;
    found.push({ kind, text: match[0], at: match.index });
  }
  return found;
}

/** The sheet that a token of kind "sheet" names. */
export function sheetOf(token: Token): string {
  const name = token.text.slice(0, -1);
  return name.startsWith("'") ? name.slice(1, -1).replaceAll("''", "'") : name;
}

/** `formula` with references to the sheet `from` turned into references to `to` (a prefix such as `Bore!`). */
export function renameSheetIn(formula: string, from: string, prefix: string): string {
  const wanted = from.toLowerCase();
  return tokens(formula)
    .map((token) => (token.kind === "sheet" && sheetOf(token).toLowerCase() === wanted ? prefix : token.text))
    .join("");
}
