/** Limits of size for the class in a designation. */
import { NothingFound } from "./failures.ts";
import type { Member, Thread } from "./thread.ts";

export type Diameter = "major" | "pitch" | "minor";

/**
 * A limit of size, in the thread's own unit.
 *
 * @param member asked for another member than the designation's, the usual class of that member is taken
 * @throws NothingFound where the standard states no such limit
 */
export function limit(
  thread: Thread,
  diameter: Diameter,
  end: "max" | "min",
  member: Member = thread.member,
): number {
  const value = thread.limits(member)[diameter][end];
  if (value === undefined) {
    const who = member === "internal" ? "nut" : "screw";
    throw new NothingFound(
      `${thread.designation}: ${thread.standard} gives the ${who} no ${diameter} diameter ${end}`,
    );
  }
  return value;
}

/** Mean of the two limits of a diameter, in the thread's own unit. Errors as for limit. */
export function target(thread: Thread, diameter: Diameter): number {
  return (limit(thread, diameter, "max") + limit(thread, diameter, "min")) / 2;
}
