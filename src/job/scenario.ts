/**
 * The scenario of a job in words, as long as it is still the job's. A job that names a cell `scenario` has it from there:
 * that one can tell what is still invented and what is not. Any other has the words of its file while it shows what its
 * `check` values say that it showed as shipped, in either unit.
 */
import { parseRange, splitSheet } from "../engine/address.ts";
import type { Check } from "./document.ts";
import type { Job } from "./job.ts";
import { namedArea, namedWords } from "./named.ts";

export function scenarioOf(job: Job): string {
  if (namedArea(job, "scenario")) return stillInvented(namedWords(job, "scenario") ?? "");
  const { scenario, check } = job.document;
  return scenario !== "" && Object.entries(check).every((each) => isAsShipped(job, ...each)) ? scenario : "";
}

/** Words about what is invented, as a sentence that says so. */
export function stillInvented(words: string): string {
  return words === "" || /invented/i.test(words) ? words : `Still invented: ${words.replace(/\.$/, "")}.`;
}

function isAsShipped(job: Job, place: string, { value, within = 1e-9 }: Check): boolean {
  const at = splitSheet(place);
  const area = at && parseRange(at.rest);
  if (!at || !area) return true;
  const { value: now, stale } = job.cell(at.sheet, area.top, area.left);
  if (stale || now === null) return true;
  if (typeof value !== "number" || typeof now !== "number") return now === value;
  // A length is checked in the unit that the job shipped with.
  return [now, now * 25.4, now / 25.4].some((shown) => Math.abs(shown - value) <= within);
}
