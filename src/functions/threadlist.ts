/** The list of known threads, and what a designation is read as, for whoever has no sheet at hand. */
import { type Coverage, coverage } from "../thread/coverage.ts";
import { readThread } from "../thread/read.ts";
import type { Thread } from "../thread/thread.ts";

/** One row for each family of series, in the order of the catalogue. */
export function knownThreads(): readonly Coverage[] {
  return coverage();
}

export type { Coverage };

/** How a designation is read. */
export interface Reading {
  readonly read: boolean;
  /** The thread and its basic sizes, or how far it was read and what is nearest. */
  readonly words: string;
  /** Doubts about its figures and its limits; "" without any. */
  readonly doubt: string;
}

/** @param designation as a person types it */
export function tryDesignation(designation: string): Reading {
  try {
    const thread = readThread(designation);
    const doubts = [thread.note, thread.limitsNote].filter((note) => note !== undefined);
    return { read: true, words: inWords(thread), doubt: doubts.join("; ") };
  } catch (error) {
    if (!(error instanceof RangeError)) throw error;
    return { read: false, words: error.message, doubt: "" };
  }
}

function inWords({
  designation,
  standard,
  unit,
  major,
  pitch,
  starts,
  pitchDia,
  loadFlank,
  clearanceFlank,
}: Thread): string {
  const size = (value: number) => `${Number(value.toFixed(unit === "mm" ? 4 : 5))} ${unit}`;
  const lead = starts === 1 ? "" : `, ${starts} starts, lead ${size(pitch * starts)}`;
  return `${designation}: major ${size(major)}, pitch ${size(pitch)}${lead}, pitch diameter ${size(pitchDia)}, ${loadFlank + clearanceFlank} degrees; ${standard}`;
}
