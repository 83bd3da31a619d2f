/** Arguments and answers that the functions of a designation share. */
import { NothingFound } from "../thread/failures.ts";
import { convertLength, type LengthUnit, type Member, type Thread } from "../thread/thread.ts";
import { type Noted, nothingGiven, type Result } from "./declare.ts";

export const designationParam = {
  name: "designation",
  type: "text",
  doc: "As the standards write it: M10x1.25-6g, 1/4-20 UNC, 1/2-12 BSW, 2 BA, G 1/2; or a note of THREAD.CUSTOM.",
} as const;

export const unitParam = {
  name: "unit",
  type: "text",
  options: ["mm", "in"],
  fallback: "mm",
  doc: "Unit of every length given and answered.",
} as const;

export const memberParam = {
  name: "member",
  type: "text",
  options: ["external", "internal"],
  optional: true,
  doc: "Screw or nut; left out, an internal class or the word nut in the designation means internal, else external.",
} as const;

/** What goes wrong with a designation, for every function that takes one. */
export function unreadableDesignation(formula: string) {
  return { when: "the designation cannot be read", formula, gives: "#VALUE!", says: "cannot read" } as const;
}

/** A stated member wins over the designation's own. */
export function memberOf(thread: Thread, stated: Member | undefined): Member {
  return stated ?? thread.member;
}

/** A length of the thread in the unit asked for, with the thread's doubt if it has one. */
export function lengthOf(thread: Thread, value: number, unit: LengthUnit): Result {
  return noted(thread, convertLength(value, thread.unit, unit));
}

/** A limit of size in the unit asked for, with the doubt about the thread or its limits if there is one. */
export function limitOf(thread: Thread, value: number, unit: LengthUnit): Result {
  const taken =
    thread.classTaken === undefined ? undefined : `${nothingGiven}: ${thread.classTaken} is taken`;
  const notes = [thread.note, thread.limitsNote, taken].filter((note) => note !== undefined);
  const length = convertLength(value, thread.unit, unit);
  return notes.length === 0 ? length : { value: length, note: notes.join("; ") };
}

/** A value with the thread's doubt if it has one. */
export function noted(thread: Thread, value: number): Result {
  return thread.note === undefined ? value : { value, note: thread.note };
}

/** A result that may have a note of its own, with the thread's doubt in front of it if there is one. */
export function alsoNoted(thread: Thread, result: number | Noted): Result {
  if (thread.note === undefined) return result;
  return typeof result === "number"
    ? { value: result, note: thread.note }
    : { value: result.value, note: `${thread.note}; ${result.note}` };
}

/** A text about these threads, with their doubts if there are any. */
export function notedText(threads: readonly Thread[], value: string): Result {
  const notes = [...new Set(threads.flatMap(({ note }) => note ?? []))];
  return notes.length === 0 ? value : { value, note: notes.join("; ") };
}

/** @throws NothingFound when the form has no such thing */
export function required(thread: Thread, value: number | undefined, what: string): number {
  if (value === undefined) throw new NothingFound(`the form of ${thread.designation} has no ${what}`);
  return value;
}
