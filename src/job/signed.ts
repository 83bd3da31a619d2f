/**
 * What a sign-off was given for: the answer of the operation as it was shown, and what was set by hand on its sheet. When
 * either is another one now, the sign-off was for another job. Values that are still on their way tell nothing.
 */
import { parseCell } from "../engine/address.ts";
import type { JobDocument, SheetDocument, SignedFor } from "./document.ts";
import { cellText } from "./format.ts";
import { formatOf } from "./formats.ts";
import type { Job } from "./job.ts";
import { slabsIn } from "./large-cells.ts";

/** Values set by hand that are remembered of one sheet, the first by rows. */
export const mostSet = 200;
/** Longest text that is told as it is, in characters. */
const mostTold = 24;

interface Set {
  readonly cell: string;
  readonly text: string;
}

const sets = new WeakMap<SheetDocument, readonly Set[]>();
/** What was found last, which stands while values are on their way. */
const found = new WeakMap<SignedFor, string>();

/** What a sign-off of this sheet would be given for now; an answer that is on its way is put in when it has come. */
export function signedForNow(job: Job, sheet: SheetDocument): SignedFor {
  const answer = answerOf(job, sheet);
  const set = setByHand(sheet).map(({ text }) => text);
  return {
    ...(answer === undefined || answer.stale ? {} : { result: answer.text }),
    ...(set.length === 0 && !answer?.stale ? {} : { set }),
  };
}

/** The document with the answers put in that sign-offs were given before; undefined where none has come. */
export function answersPutIn(job: Job): JobDocument | undefined {
  const { document } = job;
  let some = false;
  const sheets = document.sheets.map((sheet) => {
    const answer = waits(sheet) ? answerOf(job, sheet) : undefined;
    if (!answer || answer.stale) return sheet;
    some = true;
    return { ...sheet, signedFor: { ...sheet.signedFor, result: answer.text } };
  });
  return some ? { ...document, sheets } : undefined;
}

/**
 * The document after a step, which is not done yet. The answer that a sign-off waits for will not come any more where
 * the step changes what is reckoned: then it was given for the one that is shown.
 */
export function answersAsShown(job: Job, after: JobDocument): JobDocument {
  const { document } = job;
  const isSame = ({ cells }: SheetDocument, index: number) => cells === document.sheets[index]?.cells;
  if (after.names === document.names && after.sheets.every(isSame)) return after;
  const shown = new Map(
    document.sheets.filter(waits).map((sheet) => [sheet.signedFor, answerOf(job, sheet)?.text]),
  );
  if (shown.size === 0) return after;
  const sheets = after.sheets.map((sheet) => {
    const result = shown.get(sheet.signedFor);
    return result === undefined ? sheet : { ...sheet, signedFor: { ...sheet.signedFor, result } };
  });
  return { ...after, sheets };
}

function waits({ signedOff, signedFor }: SheetDocument): boolean {
  return signedOff === true && signedFor !== undefined && signedFor.result === undefined;
}

/** That the sign-off of this sheet was given for something else, in words; "" where it holds, and where there is none. */
export function signedForAnother(job: Job, sheet: SheetDocument): string {
  const { signedFor } = sheet;
  if (!sheet.signedOff || signedFor === undefined) return "";
  const answer = answerOf(job, sheet);
  const ofHand = otherSet(signedFor.set ?? [], setByHand(sheet));
  if (answer?.stale) return ofHand || (found.get(signedFor) ?? "");
  const { result } = signedFor;
  const then = result !== undefined && result !== (answer?.text ?? "") ? told(result, answer?.text) : ofHand;
  const words = then === "" ? "" : `signed for another: ${then}`;
  found.set(signedFor, words);
  return words;
}

/** The answer of the operation as the sheet shows it; undefined when it names none. */
export function answerOf(
  job: Job,
  sheet: SheetDocument,
): { readonly text: string; readonly stale: boolean } | undefined {
  const place = sheet.result === undefined ? undefined : parseCell(sheet.result);
  if (!place) return undefined;
  const view = job.cell(sheet.name, place.row, place.column);
  return { text: cellText(view, job.unit), stale: view.stale ?? false };
}

/** The filled blanks of a sheet; where it has none, the numbers that were typed. By rows. */
function setByHand(sheet: SheetDocument): readonly Set[] {
  const known = sets.get(sheet);
  if (known) return known;
  // Looking through as many cells would hold up every drawing of the route card.
  const cells = slabsIn(sheet.cells).length > 0 ? {} : sheet.cells;
  const typed = Object.entries(cells).flatMap(([cell, text]) => {
    const place = parseCell(cell);
    return place ? [{ cell, text, ...place }] : [];
  });
  const blanks = typed.filter(({ row, column }) => formatOf(sheet, row, column).role === "input");
  const chosen = blanks.length > 0 ? blanks : typed.filter(({ text }) => /^\s*[-+]?\.?\d/.test(text));
  const set = chosen
    .sort((a, b) => a.row - b.row || a.column - b.column)
    .slice(0, mostSet)
    .map(({ cell, text }) => ({ cell, text }));
  sets.set(sheet, set);
  return set;
}

/** Without addresses, so that rows that are let in leave a sign-off as it is. */
function otherSet(then: readonly string[], now: readonly Set[]): string {
  if (then.length !== now.length) return `${many(then.length)} set by hand then, ${now.length} now`;
  const at = now.findIndex(({ text }, index) => text !== then[index]);
  return at < 0 ? "" : `${now[at]!.cell} ${told(then[at]!, now[at]!.text)}`;
}

function many(values: number): string {
  return `${values} ${values === 1 ? "value" : "values"}`;
}

function told(then: string, now = ""): string {
  return `${short(then)} then, ${short(now)} now`;
}

function short(text: string): string {
  if (text.trim() === "") return "nothing";
  return text.length > mostTold ? `${text.slice(0, mostTold - 1)}…` : text;
}
