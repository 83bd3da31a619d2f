/** What is said wherever figures are shown without a mark of their own: on the card, on paper, at the bench. */
import type { Job } from "./job.ts";

/** "" while all is known, and in the moment that it takes to reckon what was just typed. */
export function behindWords({ reckoning }: Pick<Job, "reckoning">): string {
  const isLate = reckoning && (reckoning.stopped || reckoning.of > 0);
  return isLate ? "Not all of it is reckoned: figures may be those of before." : "";
}
