/** What the engine says beside a value, parted: doubts about it, and what was taken where nothing was given. */
import { nothingGiven } from "../functions/declare.ts";

export function partsOfNote(note: string | undefined): { doubt?: string; taken?: string } {
  if (note === undefined || !note.includes(nothingGiven)) return note === undefined ? {} : { doubt: note };
  const parts = note.split("; ");
  const isTaken = (part: string) => part.startsWith(nothingGiven);
  const doubts = parts.filter((part) => !isTaken(part));
  return {
    ...(doubts.length > 0 && { doubt: doubts.join("; ") }),
    taken: [...new Set(parts.filter(isTaken))].join("; "),
  };
}
