/**
 * Bore of a nut and percentage of thread engagement.
 *
 * "basic" counts the height of the basic nut thread as 100 %; "drill" counts 0.649519 P, as older drill charts do for
 * 60-degree forms. Source: geometry; the older percentage as in machinists' handbooks.
 */
import { Unreadable } from "./failures.ts";
import type { Thread } from "./thread.ts";

export type Percentage = "basic" | "drill";

/** Height that counts as 100 %, in the thread's own unit. @throws Unreadable for "drill" on other than 60 degrees */
export function engagementHeight(thread: Thread, of: Percentage): number {
  if (of === "basic") return (thread.major - thread.minor.internal) / 2;
  if (Math.abs(thread.loadFlank - 30) > 1e-9 || Math.abs(thread.clearanceFlank - 30) > 1e-9) {
    throw new Unreadable(`"drill" is for 60-degree threads only, got ${thread.designation}: use "basic"`);
  }
  return ((3 / 4) * Math.sqrt(3) * thread.pitch) / 2;
}

/** Bore that leaves this percentage of engagement. @throws RangeError when it is not above 0 and up to 100 */
export function boreFor(thread: Thread, percent: number, of: Percentage): number {
  if (!(percent > 0 && percent <= 100)) {
    throw new RangeError(`engagement_percent must be above 0 and not above 100, got ${percent}`);
  }
  return thread.major - (2 * engagementHeight(thread, of) * percent) / 100;
}

/** Percentage of engagement that a bore leaves. @throws RangeError when it is not between 0 and the major diameter */
export function engagementOf(thread: Thread, bore: number, of: Percentage): number {
  if (!(bore > 0 && bore <= thread.major)) {
    throw new RangeError(
      `bore must be above 0 and not above the major diameter ${thread.major}, got ${bore}`,
    );
  }
  return ((thread.major - bore) / (2 * engagementHeight(thread, of))) * 100;
}
