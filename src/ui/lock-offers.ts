/** What is offered where a locked cell took nothing: to free it, in one step that can be undone. */
import { parseRange } from "../engine/address.ts";
import { isLocked, lockedCells, setLocked, unlockAll } from "../job/locks.ts";
import type { PageActs } from "./page-acts.ts";
import type { Offer } from "./said.ts";

/** @param reason why the grid refused; none is offered where that is no lock */
export function lockOffers(acts: PageActs, reason: string): Offer[] {
  const cells = lockedCells(reason);
  const area = cells === undefined ? undefined : parseRange(cells);
  const { job, sheet } = acts;
  const on = job?.document.sheets.find(({ name }) => name === sheet);
  if (!job || !on || !area || !isLocked(on, area.top, area.left)) return [];
  const offer = (word: string, free: () => void): Offer => ({
    word,
    act() {
      acts.command(free);
      acts.parts.element("sheet-grid")?.focus();
    },
  });
  return [
    offer(`Unlock ${cells}`, () => setLocked(job, sheet, area, false)),
    offer(`Unlock all of ${sheet}`, () => unlockAll(job, sheet)),
  ];
}
