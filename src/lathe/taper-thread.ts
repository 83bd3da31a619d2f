/**
 * Taper pipe threads along their axis. The standard states the diameters at the gauge plane; the cone carries them on,
 * taper 1 in 16 on diameter, the form square to the axis of the work.
 *
 * Source: geometry; the diameters are those of the thread's standard.
 */
import type { Thread } from "../thread/thread.ts";
import { diameterAlong } from "./taper.ts";

/**
 * A diameter of the thread at a distance from the gauge plane, in the thread's own unit.
 *
 * @param distance towards the large end; negative towards the small one
 * @throws RangeError when the cone has run out there
 */
export function taperDiameter(thread: Thread, which: "pitch" | "major" | "minor", distance: number): number {
  const here = { pitch: thread.pitchDia, major: thread.major, minor: thread.minor[thread.member] }[which];
  return diameterAlong(here, thread.taper, distance);
}
