/** What completion offers while a formula is typed: functions, names and sheets of the job. */
import { sheetPrefix } from "../engine/address.ts";
import { type SheetFunction, signature } from "../functions/declare.ts";
import { generalFunctions } from "../functions/general.ts";
import type { Job } from "../job/job.ts";
import { distinctReferences, isSameRange, referencesOf } from "../job/references.ts";
import { namedText } from "./operations.ts";

export interface Offer {
  /** What is shown, and what is typed unless `typed` says otherwise. */
  readonly label: string;
  /** One line beside it. */
  readonly words: string;
  readonly kind: "function" | "name" | "sheet";
  /** The call with its arguments, for functions. */
  readonly call?: string;
}

/** More than this many help nobody to choose. */
const most = 40;

/** References shown with their values. */
export const mostDimensions = 8;

/** The inks and line patterns are four; further references have none. */
const mostInks = 4;

/** A stretch of the text that the grid shows in one of its inks. */
export interface Inked {
  readonly from: number;
  readonly to: number;
  /** From 1. */
  readonly ink: number;
}

/** References of a formula on `sheet`, in the inks that the grid gives them. */
export function inksOf(text: string, job: Job, sheet: string): Inked[] {
  const all = referencesOf(text, sheet, job.document.names);
  const inked = distinctReferences(all).slice(0, mostInks);
  return all.flatMap((one) => {
    const ink = inked.findIndex((other) => isSameRange(one, other)) + 1;
    return ink === 0 ? [] : [{ from: one.start, to: one.start + one.text.length, ink }];
  });
}

/** Offers for a word as far as it is typed: those that begin with it first, then those that hold it. */
export function offersFor(word: string, job: Job, functions: readonly SheetFunction[]): Offer[] {
  const wanted = word.toLowerCase();
  const rank = ({ label }: Offer) => {
    const at = label.toLowerCase().indexOf(wanted);
    return at < 0 ? undefined : at === 0 ? 0 : 1;
  };
  return [...namesOf(job), ...ours(functions), ...sheetsOf(job), ...general]
    .flatMap((offer) => {
      const found = rank(offer);
      return found === undefined ? [] : [{ offer, found }];
    })
    .sort((a, b) => a.found - b.found)
    .slice(0, most)
    .map(({ offer }) => offer);
}

function ours(functions: readonly SheetFunction[]): Offer[] {
  return functions.map((fn) => ({
    label: fn.name,
    words: fn.summary,
    kind: "function",
    call: signature(fn),
  }));
}

function namesOf(job: Job): Offer[] {
  return Object.entries(job.document.names).map(([name, target]) => ({
    label: name,
    words: [target, namedText(job, name.toLowerCase())].filter(Boolean).join(", "),
    kind: "name",
  }));
}

function sheetsOf(job: Job): Offer[] {
  return job.document.sheets.map(({ name, operation }) => ({
    label: sheetPrefix(name),
    words: operation === undefined ? "sheet of this job" : `operation ${operation}`,
    kind: "sheet",
  }));
}

const general: readonly Offer[] = generalFunctions.map(({ name, call, summary }) => ({
  label: name,
  words: summary,
  kind: "function",
  call,
}));
