/** What the engine says beside a value, parted: doubts about it, and what was taken where nothing was given. */
import { nothingGiven } from "../functions/declare.ts";

export function partsOfNote(note: string | undefined): { doubt?: string; taken?: string } {
  if (note === undefined) return {};
  // What several arguments share is said once.
  const parts = [...new Set(note.split("; "))];
  const isTaken = (part: string) => part.startsWith(nothingGiven);
  const doubts = parts.filter((part) => !isTaken(part));
  return {
    ...(doubts.length > 0 && { doubt: doubts.join("; ") }),
    ...(doubts.length < parts.length && { taken: parts.filter(isTaken).join("; ") }),
  };
}
