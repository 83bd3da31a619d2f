/**
 * Taper pipe threads along their axis. The standard states the diameters at the gauge plane; the cone carries them on,
 * taper 1 in 16 on diameter, the form square to the axis of the work.
 *
 * Source: geometry; the diameters are those of the thread's standard.
 */
import { NothingFound } from "../thread/failures.ts";
import type { Thread } from "../thread/thread.ts";
import { diameterAlong } from "./taper.ts";

/** "gauge": small end to gauge plane; "useful": full thread; "vanish": run-out of a die; "tolerance": of "gauge", either way. */
export type TaperLength = "gauge" | "useful" | "vanish" | "tolerance";

/**
 * A length along the axis by which a taper thread is cut and gauged, in the thread's own unit.
 *
 * @throws NothingFound for a parallel thread, and where the standard gives no such length
 */
export function taperLength({ designation, gauge, standard }: Thread, which: TaperLength): number {
  if (!gauge) throw new NothingFound(`designation must be of a taper pipe thread, got ${designation}`);
  const { length, useful, vanish, lengthTolerance } = gauge;
  const found = { gauge: length, useful, vanish, tolerance: lengthTolerance }[which];
  if (found === undefined)
    throw new NothingFound(`${standard} gives no length for the ${which} of ${designation}`);
  return found;
}

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
