/** How printed lists of tapping drills choose; common practice, inferred from the lists. */
import { nearestDrill } from "../../src/lathe/drills.ts";
import { NothingFound } from "../../src/thread/failures.ts";
import { convertLength, type Thread } from "../../src/thread/thread.ts";

/**
 * The largest metric stock drill within the limits of the nut; for a taper thread the smallest one over the basic bore.
 *
 * @returns mm, undefined where the stock ends before
 */
export function tappingDrill(thread: Thread): number | undefined {
  const parallel = thread.taper === 0;
  const bore = parallel ? thread.limits("internal").minor.max! : thread.minor.internal;
  try {
    const size = convertLength(bore, thread.unit, "mm");
    return nearestDrill(size, "metric", parallel ? "under" : "over", "mm").size;
  } catch (error) {
    if (error instanceof NothingFound) return undefined;
    throw error;
  }
}
